//! What a part that closes its stretch is left longer by, until the gap that it closes is measured.

use tubewright_fit::PoseSpread;
use tubewright_fit::budget::{closing_trim_mm, closing_trims_mm};
use tubewright_geometry::{Length, UnitVector};
use tubewright_stock::{CutPart, PartPlace};

use crate::lengths::Lengths;

/// How much longer a part that closes its stretch is left until the gap is measured, and whether its item has the
/// steel for it. A bend is left longer at both ends, along each; a straight, or a bend that turns too little to be
/// anything else here, at the end where its item has more.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trim {
    /// At its upstream end.
    pub upstream: Option<Longer>,
    /// At its downstream end.
    pub downstream: Option<Longer>,
}

/// How much longer one end is left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Longer {
    /// By how much, so that it is long enough 19 times in 20, mm.
    pub mm: f64,
    /// Whether the item that the part is sawn from has as much beyond that end.
    pub is_there: bool,
}

/// Trims are rounded up to what a tape reads; so much more must be there, mm.
const LEAST_LEFT_MM: f64 = 1.6;

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
        let [up_mm, down_mm] =
            room.map_or([0.0; 2], |(part, [a, b])| in_flow(part, [a.mm(), b.mm()]));
        let longer = |mm: f64, room_mm: f64| {
            Some(Longer {
                mm,
                is_there: room_mm >= mm + LEAST_LEFT_MM,
            })
        };
        let legs = is_arc
            .then(|| closing_trims_mm(&upstream, &downstream, into, out))
            .flatten();
        if let Some([first_mm, second_mm]) = legs {
            return Self {
                upstream: longer(first_mm, up_mm),
                downstream: longer(second_mm, down_mm),
            };
        }
        let mm = closing_trim_mm(&upstream, &downstream, into);
        if up_mm > down_mm {
            Self {
                upstream: longer(mm, up_mm),
                downstream: None,
            }
        } else {
            Self {
                upstream: None,
                downstream: longer(mm, down_mm),
            }
        }
    }

    /// Whether it takes up a gap along two legs.
    #[must_use]
    pub const fn has_two_legs(&self) -> bool {
        self.upstream.is_some() && self.downstream.is_some()
    }

    /// By how much each end is really left longer, upstream and downstream, mm: where there is the steel for it.
    #[must_use]
    pub fn left_mm(&self) -> [Option<f64>; 2] {
        [self.upstream, self.downstream]
            .map(|end| end.filter(|longer| longer.is_there).map(|longer| longer.mm))
    }

    /// By how much it is really left longer toward ends A and B of its item, mm.
    pub(crate) fn left_on_item_mm(&self, part: &CutPart) -> [f64; 2] {
        in_flow(part, self.left_mm().map(|mm| mm.unwrap_or(0.0)))
    }

    /// What is left longer and where, lengths as `l` writes them: *left 6 mm longer at its upstream end and 4 mm longer
    /// at its downstream end*.
    #[must_use]
    pub fn words(&self, l: Lengths) -> String {
        let ends = self.told(l, true);
        if ends.is_empty() {
            return "cut to its marks".to_owned();
        }
        format!("left {}", ends.join(" and "))
    }

    /// What the item has no steel for and what to do then; `None` where it has.
    #[must_use]
    pub fn lack_words(&self, l: Lengths) -> Option<String> {
        let lacks = self.told(l, false);
        let lacks = (!lacks.is_empty()).then(|| lacks.join(" and "))?;
        let then = match (self.has_two_legs(), self.left_mm()) {
            (true, [Some(_), None] | [None, Some(_)]) => {
                "butt that end first. Where the gap is then too wide along it, make the part that it meets there again, \
                 longer; never pull it in"
            }
            _ => {
                "where the gap is too wide, make the part again, longer, from what is on the shelf; never pull it in"
            }
        };
        Some(format!(
            "It should be {lacks}, and its item has no steel for that: {then}."
        ))
    }

    /// The ends that are left longer, or those that should be and are not: *6 mm longer at its upstream end*.
    fn told(&self, l: Lengths, is_there: bool) -> Vec<String> {
        let ends = [("upstream", self.upstream), ("downstream", self.downstream)];
        ends.into_iter()
            .filter_map(|(name, end)| Some((name, end?)))
            .filter(|(_, longer)| longer.is_there == is_there)
            .map(|(name, longer)| {
                let by = format!("{} longer", l.about(l.up_to_tape_mm(longer.mm)));
                if self.has_two_legs() {
                    format!("{by} at its {name} end")
                } else {
                    by
                }
            })
            .collect()
    }
}

/// What belongs to ends A and B of an item for the upstream and downstream end of its part, or the other way round.
const fn in_flow(part: &CutPart, [a, b]: [f64; 2]) -> [f64; 2] {
    if part.is_reversed { [b, a] } else { [a, b] }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tubewright_geometry::{Angle, Point, Vector};

    fn bend(is_reversed: bool) -> CutPart {
        CutPart {
            serves: Vec::new(),
            place: PartPlace::Arc {
                start: Angle::ZERO,
                sweep: Angle::from_deg(90.0),
                keeps_a: Length::ZERO,
                keeps_b: Length::ZERO,
            },
            is_reversed,
        }
    }

    fn trim(part: &CutPart, out: UnitVector, room_mm: [f64; 2]) -> Trim {
        let sure = PoseSpread::sure(Point::ORIGIN);
        // 3 mm along where the gas enters, 4 along where it leaves square to that.
        let loose = sure
            .clone()
            .with_shift(UnitVector::X, 3.0)
            .with_shift(UnitVector::Y, 4.0);
        Trim::of(
            [sure, loose],
            [UnitVector::X, out],
            Some((part, room_mm.map(Length::from_mm))),
        )
    }

    /// Square legs: 19 in 20 of 3 and of 4 mm, 5.9 and 7.8. End A of the item is upstream, unless the flow runs from B
    /// to A.
    #[test]
    fn each_end_of_a_bend_is_told_as_its_item_has_it() {
        let l = Lengths::Millimetres;
        let both = trim(&bend(false), UnitVector::Y, [20.0, 20.0]);
        assert_eq!(
            both.words(l),
            "left 6 mm longer at its upstream end and 8 mm longer at its downstream end"
        );
        assert_eq!(both.lack_words(l), None);
        let reversed = trim(&bend(true), UnitVector::Y, [0.0, 20.0]);
        assert_eq!(reversed.words(l), "left 6 mm longer at its upstream end");
        let lack = reversed.lack_words(l).unwrap();
        assert!(
            lack.starts_with("It should be 8 mm longer at its downstream end, and"),
            "{lack}"
        );
        assert!(lack.contains("butt that end first"), "{lack}");
        let [a, b] = reversed.left_on_item_mm(&bend(true));
        assert!(a.abs() < 1e-12 && (b - 1.96 * 3.0).abs() < 0.01, "{a} {b}");
        let none = trim(&bend(false), UnitVector::Y, [1.0, 1.0]);
        assert_eq!(none.words(l), "cut to its marks");
        assert!(!none.lack_words(l).unwrap().contains("butt"));
    }

    /// Ten degrees: a length and nothing else, at the end where the item has more.
    #[test]
    fn a_bend_that_hardly_turns_is_left_longer_where_its_item_has_more() {
        let (sine, cosine) = tubewright_geometry::math::sin_cos(10.0_f64.to_radians());
        let out = Vector::new(cosine, sine, 0.0).direction().unwrap();
        let trim = trim(&bend(false), out, [20.0, 2.0]);
        assert!(!trim.has_two_legs());
        assert_eq!(trim.words(Lengths::Millimetres), "left 6 mm longer");
        let [a, b] = trim.left_on_item_mm(&bend(false));
        assert!((a - 1.96 * 3.0).abs() < 0.01 && b.abs() < 1e-12, "{a} {b}");
    }
}
