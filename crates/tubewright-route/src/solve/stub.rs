//! The body that carries a start does not block it: the first stub of a run is not held against it.

use super::chain::{Element, Part};
use super::lines::clip;
use super::room::Contact;
use super::system::System;

impl System<'_, '_> {
    /// Everything nearer than `limit` mm (over the gap) to an element of chain `c`, without the bodies
    /// that carry the start of its run as far as the stub goes.
    pub(super) fn contacts(&self, c: usize, element: &Element, limit: f64, out: &mut Vec<Contact>) {
        let room = &self.ctx.room;
        room.near(&element.tube, limit, out);
        let run = self
            .chains
            .get(c)
            .and_then(|chain| Some((chain, self.ctx.problem.runs.get(chain.run)?)))
            .filter(|(chain, run)| chain.start_is_of(&self.ctx.slides, run))
            .map(|(_, run)| run);
        // An outlet that is sawn off further back comes out of them further along.
        let back = run
            .and_then(|run| run.start_room)
            .map_or(0.0, |room| room.back_mm);
        let rest_mm = self.ctx.problem.rules.stub_mm + back - element.along;
        let own = run
            .filter(|_| rest_mm > 0.0)
            .map_or(&[][..], |run| &run.own_bodies);
        if own.is_empty() || element.part != Part::Tube {
            return;
        }
        out.retain(|contact| !own.contains(&contact.body));
        let length = element.tube.line.length();
        if length <= rest_mm {
            return;
        }
        let from = rest_mm / length;
        let mut element = element.tube;
        element.line = clip(&element.line, from, 1.0);
        let mut behind = Vec::new();
        room.near(&element, limit, &mut behind);
        out.extend(
            behind
                .into_iter()
                .filter(|contact| own.contains(&contact.body))
                .map(|contact| Contact {
                    share: from + contact.share * (1.0 - from),
                    ..contact
                }),
        );
    }
}
