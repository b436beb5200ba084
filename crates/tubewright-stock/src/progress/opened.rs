//! Items that were opened: what came out of them, and the stretches that are left.

use std::collections::BTreeMap;

use tubewright_geometry::{Angle, Length};

use super::{Sawn, SteelRecord, Stretch};
use crate::demand::{PieceDemand, PieceShape};
use crate::item::{ItemKind, OnHandKind, StockPiece, StockShape};
use crate::plan::{CutPart, CutStock, PartPlace, Serves, Source, StockEnd};
use crate::request::StockRequest;
use crate::rules::ShopRules;

/// A stretch left over counts from here on, mm: no part that is welded in is shorter (common practice,
/// no source).
const LEAST_LEFT_MM: f64 = 5.0;

/// An arc left over counts from here on, degrees (common practice, no source).
const LEAST_LEFT_DEG: f64 = 1.0;

/// Two thousandths of a degree are rounding: a plan counts whole thousandths, and a place at the end of
/// an arc is the sum of a start, a sweep and what was left of the arc.
const NOTHING: f64 = 2e-3;

/// One opened item.
#[derive(Clone, Debug)]
pub(crate) struct Opened {
    pub(super) from: String,
    pub(super) number: u32,
    is_on_hand: bool,
    stock: StockPiece,
    /// Parts and whether they are good.
    parts: Vec<(CutPart, bool)>,
    /// Whether the record says where every part lay.
    is_known: bool,
}

/// The opened items, by name and number.
pub(super) fn opened(request: &StockRequest, record: &SteelRecord) -> Vec<Opened> {
    let mut known: BTreeMap<(&str, u32), Vec<&Sawn>> = BTreeMap::new();
    let mut unknown: Vec<&Sawn> = Vec::new();
    for sawn in &record.sawn {
        match &sawn.of {
            Some((number, _)) => known.entry((&sawn.from, *number)).or_default().push(sawn),
            None => unknown.push(sawn),
        }
    }
    let mut last: BTreeMap<&str, u32> = BTreeMap::new();
    for (from, number) in known.keys() {
        let last = last.entry(from).or_insert(0);
        *last = (*last).max(*number);
    }
    let mut out: Vec<Opened> = Vec::new();
    for ((from, number), sawn) in known {
        let Some((stock, is_on_hand)) = stock_of(request, from) else {
            // The item is not in the stock file any more: the part is good, nothing of it is left.
            out.extend(
                sawn.into_iter()
                    .filter_map(|sawn| alone(request, sawn, number)),
            );
            continue;
        };
        out.push(Opened {
            from: from.to_owned(),
            number,
            is_on_hand,
            stock,
            parts: sawn
                .iter()
                .filter_map(|sawn| Some((sawn.of.as_ref()?.1.clone(), sawn.is_good)))
                .collect(),
            is_known: true,
        });
    }
    for sawn in unknown {
        let number = last.entry(&sawn.from).or_insert(0);
        *number += 1;
        out.extend(alone(request, sawn, *number));
    }
    out.sort_by(|a, b| (&a.from, a.number).cmp(&(&b.from, b.number)));
    out
}

fn stock_of(request: &StockRequest, name: &str) -> Option<(StockPiece, bool)> {
    let item = |name: &str| {
        request
            .items
            .iter()
            .find(|item| item.name == name)
            .and_then(|item| match &item.kind {
                ItemKind::Stock(stock) => Some(stock.clone()),
                ItemKind::Component => None,
            })
    };
    let on_hand = request.on_hand.iter().find(|it| it.name == name);
    match on_hand.map(|it| &it.kind) {
        Some(OnHandKind::Measured(stock)) => Some((stock.clone(), true)),
        Some(OnHandKind::Item(of)) => item(of).map(|stock| (stock, true)),
        None => item(name).map(|stock| (stock, false)),
    }
}

/// A part of which only the mark is known: it is the piece and nothing else.
fn alone(request: &StockRequest, sawn: &Sawn, number: u32) -> Option<Opened> {
    let demand = request
        .runs
        .iter()
        .flat_map(|run| &run.pieces)
        .find(|piece| piece.mark == sawn.mark)?;
    let part = match &sawn.of {
        Some((_, part)) => part.clone(),
        None => whole_part(demand)?,
    };
    let found = stock_of(request, &sawn.from);
    Some(Opened {
        from: sawn.from.clone(),
        number,
        is_on_hand: found.as_ref().is_some_and(|(_, is_on_hand)| *is_on_hand),
        stock: found.map_or_else(|| just_big_enough(demand, &part), |(stock, _)| stock),
        parts: vec![(part, sawn.is_good)],
        is_known: false,
    })
}

fn whole_part(demand: &PieceDemand) -> Option<CutPart> {
    let (length, place) = match demand.shape {
        PieceShape::Straight { length } => {
            let length = length + demand.pulls[0] + demand.pulls[1];
            let start = Length::ZERO;
            (length, PartPlace::Bar { start, length })
        }
        PieceShape::Bend { angle, .. } => (
            Length::ZERO,
            PartPlace::Arc {
                start: Angle::ZERO,
                sweep: angle,
                keeps_a: Length::ZERO,
                keeps_b: Length::ZERO,
            },
        ),
        PieceShape::Component { .. } => return None,
    };
    Some(CutPart {
        serves: vec![Serves {
            mark: demand.mark.clone(),
            length,
        }],
        place,
        is_reversed: false,
    })
}

fn just_big_enough(demand: &PieceDemand, part: &CutPart) -> StockPiece {
    let shape = match (&demand.shape, part.place) {
        (
            PieceShape::Bend { clr, .. },
            PartPlace::Arc {
                start,
                sweep,
                keeps_a,
                keeps_b,
            },
        ) => StockShape::Bend {
            angle: start + sweep,
            clr: *clr,
            leg_a: keeps_a,
            leg_b: keeps_b,
        },
        (_, PartPlace::Bar { start, length } | PartPlace::Leg { start, length, .. }) => {
            StockShape::Straight {
                length: start + length,
            }
        }
        (_, PartPlace::Arc { .. }) => StockShape::Straight {
            length: Length::ZERO,
        },
    };
    StockPiece {
        tube: demand.tube.clone(),
        shape,
    }
}

impl Opened {
    /// The item with its good parts, when it has any.
    pub(super) fn made(&self) -> Option<CutStock> {
        let parts: Vec<CutPart> = self
            .parts
            .iter()
            .filter(|(_, is_good)| *is_good)
            .map(|(part, _)| part.clone())
            .collect();
        (!parts.is_empty()).then(|| CutStock {
            source: if self.is_on_hand {
                Source::OnHand(self.from.clone())
            } else {
                Source::Bought(self.from.clone())
            },
            number: self.number,
            stock: self.stock.clone(),
            trimmed: Length::ZERO,
            parts,
        })
    }

    /// What is left of it, worth keeping, with the kerf off at every cut side.
    pub(super) fn left(&self, rules: &ShopRules) -> Vec<(Stretch, StockPiece)> {
        if !self.is_known {
            return Vec::new();
        }
        match self.stock.shape {
            StockShape::Straight { length } => self
                .left_of_bar(rules, length.mm())
                .into_iter()
                .map(|(from_mm, to)| (Stretch::Bar { from_mm }, self.straight(to - from_mm)))
                .collect(),
            StockShape::Bend {
                angle,
                clr,
                leg_a,
                leg_b,
            } => self.left_of_bend(rules, angle, clr, [leg_a, leg_b]),
        }
    }

    fn straight(&self, length_mm: f64) -> StockPiece {
        StockPiece {
            tube: self.stock.tube.clone(),
            shape: StockShape::Straight {
                length: Length::from_mm(length_mm),
            },
        }
    }

    fn left_of_bar(&self, rules: &ShopRules, whole_mm: f64) -> Vec<(f64, f64)> {
        let taken = self.taken(|place| match place {
            PartPlace::Bar { start, length } => Some((start.mm(), (start + length).mm())),
            _ => None,
        });
        stretches(&taken, whole_mm, rules.kerf.mm())
            .into_iter()
            .filter(|(from, to)| to - from >= LEAST_LEFT_MM)
            .collect()
    }

    fn taken(&self, place: impl Fn(PartPlace) -> Option<(f64, f64)>) -> Vec<(f64, f64)> {
        let mut taken: Vec<(f64, f64)> = self
            .parts
            .iter()
            .filter_map(|(part, _)| place(part.place))
            .collect();
        taken.sort_by(|a, b| a.0.total_cmp(&b.0));
        taken
    }

    fn left_of_bend(
        &self,
        rules: &ShopRules,
        angle: Angle,
        clr: Length,
        legs: [Length; 2],
    ) -> Vec<(Stretch, StockPiece)> {
        let arc_kerf = rules.arc_kerf(&self.stock).map_or(0.0, Angle::deg);
        let taken = self.taken(|place| match place {
            PartPlace::Arc { start, sweep, .. } => Some((start.deg(), (start + sweep).deg())),
            _ => None,
        });
        let free: Vec<(f64, f64)> = stretches(&taken, angle.deg(), arc_kerf)
            .into_iter()
            .filter(|(from, to)| to - from >= LEAST_LEFT_DEG)
            .collect();
        let mut left = Vec::new();
        for &(from_deg, to_deg) in &free {
            // A leg stays with the arc that it grew on, less what was cut from its open end.
            let leg = |end: StockEnd, leg: Length| {
                let cut_off = self.off_leg(rules, end);
                let stays = if reaches(end, (from_deg, to_deg), angle) {
                    leg.mm() - cut_off
                } else {
                    0.0
                };
                (Length::from_mm(f64::max(0.0, stays)), cut_off)
            };
            let (leg_a, off_a) = leg(StockEnd::A, legs[0]);
            let (leg_b, off_b) = leg(StockEnd::B, legs[1]);
            let shape = StockShape::Bend {
                angle: Angle::from_deg(to_deg - from_deg),
                clr,
                leg_a,
                leg_b,
            };
            left.push((
                Stretch::Arc {
                    from_deg,
                    legs_from_mm: [off_a, off_b],
                },
                StockPiece {
                    tube: self.stock.tube.clone(),
                    shape,
                },
            ));
        }
        for (end, leg) in [StockEnd::A, StockEnd::B].into_iter().zip(legs) {
            let has_root = free.iter().any(|arc| reaches(end, *arc, angle));
            left.extend(self.left_of_leg(rules, angle, end, leg.mm(), has_root));
        }
        left
    }

    /// How far from its open end a leg is used up, with the kerf, mm.
    fn off_leg(&self, rules: &ShopRules, end: StockEnd) -> f64 {
        self.taken_of_leg(end)
            .into_iter()
            .map(|(_, to)| to + rules.kerf.mm())
            .fold(0.0, f64::max)
    }

    fn taken_of_leg(&self, end: StockEnd) -> Vec<(f64, f64)> {
        self.taken(|place| match place {
            PartPlace::Leg {
                end: of,
                start,
                length,
            } if of == end => Some((start.mm(), (start + length).mm())),
            _ => None,
        })
    }

    /// What is left of a leg by itself, less what was cut from it and what the part at its root keeps of
    /// it: all of it where no arc worth keeping is left at its root, else what lies between the cuts.
    fn left_of_leg(
        &self,
        rules: &ShopRules,
        angle: Angle,
        end: StockEnd,
        leg_mm: f64,
        has_root: bool,
    ) -> Vec<(Stretch, StockPiece)> {
        let at_a = end == StockEnd::A;
        let kept = self.parts.iter().find_map(|(part, _)| match part.place {
            PartPlace::Arc {
                start,
                sweep,
                keeps_a,
                keeps_b,
            } => reaches(end, (start.deg(), (start + sweep).deg()), angle).then_some(if at_a {
                keeps_a.mm()
            } else {
                keeps_b.mm()
            }),
            _ => None,
        });
        let whole_mm = leg_mm - kept.unwrap_or(0.0) - rules.kerf.mm();
        let mut free = stretches(&self.taken_of_leg(end), whole_mm, rules.kerf.mm());
        if has_root {
            free.retain(|(_, to)| *to < whole_mm);
        }
        free.into_iter()
            .filter(|(from, to)| to - from >= LEAST_LEFT_MM)
            .map(|(from_mm, to)| (Stretch::Leg { at_a, from_mm }, self.straight(to - from_mm)))
            .collect()
    }
}

/// Whether a stretch of the arc, degrees from the tangent line of leg A, reaches the root of this leg.
fn reaches(end: StockEnd, (from_deg, to_deg): (f64, f64), angle: Angle) -> bool {
    match end {
        StockEnd::A => from_deg <= NOTHING,
        StockEnd::B => to_deg >= angle.deg() - NOTHING,
    }
}

/// What is between the taken stretches, a kerf away from each.
fn stretches(taken: &[(f64, f64)], whole: f64, kerf: f64) -> Vec<(f64, f64)> {
    let mut free = Vec::new();
    let mut from = 0.0;
    for (start, end) in taken {
        if start - kerf > from {
            free.push((from, start - kerf));
        }
        from = f64::max(from, end + kerf);
    }
    if whole > from {
        free.push((from, whole));
    }
    free
}

#[cfg(test)]
mod tests {
    use super::stretches;

    #[test]
    fn a_kerf_is_lost_at_every_cut_side_and_none_at_the_ends() {
        assert_eq!(
            stretches(&[(100.0, 300.0), (500.0, 1000.0)], 1000.0, 2.0),
            [(0.0, 98.0), (302.0, 498.0)]
        );
        assert_eq!(stretches(&[], 400.0, 2.0), [(0.0, 400.0)]);
        assert!(stretches(&[(0.0, 400.0)], 400.0, 2.0).is_empty());
    }
}
