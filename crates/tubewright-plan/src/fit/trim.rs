//! What a part that closes its stretch is left longer by, until the gap that it closes is measured.

use tubewright_fit::PoseSpread;
use tubewright_fit::budget::{closing_trim_mm, closing_trims_mm};
use tubewright_geometry::{Length, UnitVector};
use tubewright_stock::{CutPart, PartPlace};

use crate::lengths::Lengths;

/// How much longer a part that closes its stretch is left until the gap is measured, and whether its item has the
/// steel for it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Trim {
    /// A straight, or a bend that turns too little to be anything else here: in all, at either end.
    Along(Longer),
    /// A bend: at its upstream end and at its downstream end, along each.
    Legs(Longer, Longer),
}

/// How much longer one end is left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Longer {
    /// By how much, so that it is long enough 19 times in 20, mm.
    pub mm: f64,
    /// Whether the item that the part is sawn from has as much beyond that end.
    pub is_there: bool,
}

impl Trim {
    /// The trim of a part between two open ends whose places are sure to these spreads, upstream and downstream;
    /// its directions where the gas enters and leaves, and its part of the cutting plan with the steel beyond it
    /// toward ends A and B of the item.
    pub(super) fn of(
        [upstream, downstream]: [PoseSpread; 2],
        [into, out]: [UnitVector; 2],
        room: Option<(&CutPart, [Length; 2])>,
    ) -> Self {
        let is_arc = room.is_some_and(|(part, _)| matches!(part.place, PartPlace::Arc { .. }));
        // Toward the upstream end and the downstream end.
        let room_mm = room.map_or([0.0; 2], |(part, [a, b])| {
            let [a, b] = [a.mm(), b.mm()];
            if part.is_reversed { [b, a] } else { [a, b] }
        });
        let legs = is_arc
            .then(|| closing_trims_mm(&upstream, &downstream, into, out))
            .flatten();
        let longer = |mm: f64, room_mm: f64| Longer {
            mm,
            is_there: room_mm >= mm + LEAST_LEFT_MM,
        };
        match legs {
            Some([first, second]) => {
                Self::Legs(longer(first, room_mm[0]), longer(second, room_mm[1]))
            }
            None => Self::Along(longer(
                closing_trim_mm(&upstream, &downstream, into),
                room_mm[0].max(room_mm[1]),
            )),
        }
    }

    /// What each end is left longer, upstream and downstream; a straight at one of them, which does not matter.
    #[must_use]
    pub fn ends(&self) -> [Option<Longer>; 2] {
        match *self {
            Self::Along(longer) => [None, Some(longer)],
            Self::Legs(upstream, downstream) => [Some(upstream), Some(downstream)],
        }
    }

    /// What is left longer and where, lengths as `l` writes them: *6 mm longer at its upstream end and 4 mm longer
    /// at its downstream end*.
    #[must_use]
    pub fn words(&self, l: Lengths) -> String {
        let longer = |longer: Longer| format!("{} longer", l.about(l.up_to_tape_mm(longer.mm)));
        match *self {
            Self::Along(along) => longer(along),
            Self::Legs(upstream, downstream) => format!(
                "{} at its upstream end and {} at its downstream end",
                longer(upstream),
                longer(downstream)
            ),
        }
    }

    /// What to do where the item has no steel for it; `None` where it has.
    #[must_use]
    pub fn lack_words(&self) -> Option<&'static str> {
        match *self {
            Self::Along(along) => (!along.is_there).then_some(NO_STEEL),
            Self::Legs(upstream, downstream) => match [upstream.is_there, downstream.is_there] {
                [true, true] => None,
                [false, true] => Some(NO_STEEL_UPSTREAM),
                [true, false] => Some(NO_STEEL_DOWNSTREAM),
                [false, false] => Some(NO_STEEL),
            },
        }
    }
}

const NO_STEEL: &str = "The item has no steel for that: it is cut to the marks. Where the gap is then too wide, make the \
    part again from what is on the shelf, longer; never pull it in.";
const NO_STEEL_UPSTREAM: &str = "The item has no steel for its upstream end: butt that end first. Where the gap is then too \
    wide along it, make the part that it meets there again, longer; never pull it in.";
const NO_STEEL_DOWNSTREAM: &str = "The item has no steel for its downstream end: butt that end first. Where the gap is then \
    too wide along it, make the part that it meets there again, longer; never pull it in.";

/// Trims are rounded up to what a tape reads; so much more must be there, mm.
const LEAST_LEFT_MM: f64 = 1.6;
