//! The body that carries a start does not block it: the first stub of a run is not held against it.

use super::chain::{Element, Part};
use super::room::Contact;
use super::system::{Anchor, System, clip};

impl System<'_, '_> {
    /// Everything nearer than `limit` mm (over the gap) to an element of chain `c`, without the bodies
    /// that carry the start of its run as far as the stub goes.
    pub(super) fn contacts(&self, c: usize, element: &Element, limit: f64, out: &mut Vec<Contact>) {
        let room = &self.ctx.room;
        room.near(&element.tube, limit, out);
        let rest_mm = self.ctx.problem.rules.stub_mm - element.along;
        let own = match self.chains.get(c) {
            Some(chain) if matches!(chain.start, Anchor::Fixed(_)) && rest_mm > 0.0 => self
                .ctx
                .problem
                .runs
                .get(chain.run)
                .filter(|run| chain.start_is_of(run))
                .map_or(&[][..], |run| &run.own_bodies),
            _ => &[],
        };
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
