//! What is made already, what lies in the shop now, and what is therefore still to be made.
//!
//! The record says which part lay where in which item. From that alone follow the parts that are
//! good, the stretches that are left of every opened item, and the request for the rest: no earlier
//! plan is asked, so that a plan that changes moves no steel.

mod opened;
mod rest;

use std::collections::{BTreeMap, BTreeSet};

use crate::error::PlanError;
use crate::plan::{CutPart, CutStock, PartPlace, Source, StockPlan};
use crate::plan_stock::plan_stock;
use crate::request::StockRequest;

pub(crate) use opened::Opened;

/// One part that was sawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Sawn {
    /// The item, or the thing on hand, that it came from.
    pub from: String,
    /// Which of several of these, from 1 in the order in which they were begun, and the part as it lay
    /// in it; `None` when the record does not say. Then the whole item counts as used up.
    pub of: Option<(u32, CutPart)>,
    /// The piece that the record names.
    pub mark: String,
    /// Whether it is good: a spoiled part is steel that is gone.
    pub is_good: bool,
}

/// What the record says of the steel.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SteelRecord {
    /// Every part that was sawn, in order.
    pub sawn: Vec<Sawn>,
    /// Pieces of each item that were brought home.
    pub brought: BTreeMap<String, u32>,
    /// Items that are out, with the supplier when one is named.
    pub out: BTreeSet<(String, Option<String>)>,
}

/// The job as far as it has come.
#[derive(Clone, Debug, PartialEq)]
pub struct JobProgress {
    /// What is still to be made, from what lies there now and what can still be had.
    pub rest: StockRequest,
    /// Opened stock with the good parts that came out of it.
    pub made: Vec<CutStock>,
    /// Where each thing on the shelf that the request does not know comes from.
    origins: BTreeMap<String, Origin>,
    /// Numbers that are opened of each name.
    begun: BTreeMap<String, BTreeSet<u32>>,
}

/// Where something on the shelf comes from.
#[derive(Clone, Debug, PartialEq)]
enum Origin {
    /// Bought and brought home: the item.
    Brought(String),
    /// Left of an opened item.
    Left {
        from: String,
        number: u32,
        stretch: Stretch,
    },
}

/// What stretch of an opened item is left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Stretch {
    /// Of a straight: from so far from its end A, mm.
    Bar { from_mm: f64 },
    /// Of the arc, from so far from the tangent line of leg A, degrees; legs stay on it, less what was
    /// cut from their open ends, mm of A and of B.
    Arc {
        from_deg: f64,
        legs_from_mm: [f64; 2],
    },
    /// Of a leg that came off: from so far from its open end, mm.
    Leg { at_a: bool, from_mm: f64 },
}

impl JobProgress {
    /// How far the job is. `request` is for the whole job with the shelf as the stock file has it.
    #[must_use]
    pub fn of(request: &StockRequest, record: &SteelRecord) -> Self {
        let opened = opened::opened(request, record);
        let made: Vec<CutStock> = opened.iter().filter_map(Opened::made).collect();
        let mut rest = rest::still_to_make(request, made.iter().flat_map(|cut| &cut.parts));
        rest.offers.retain(|offer| {
            !record.out.iter().any(|(item, supplier)| {
                *item == offer.item && supplier.as_ref().is_none_or(|s| *s == offer.supplier)
            })
        });
        let mut begun: BTreeMap<String, BTreeSet<u32>> = BTreeMap::new();
        let mut brought = record.brought.clone();
        for it in &opened {
            begun.entry(it.from.clone()).or_default().insert(it.number);
            // One of this name is opened: of what was brought home, else of the shelf.
            if let Some(count) = brought.get_mut(&it.from).filter(|count| **count > 0) {
                *count -= 1;
            } else if let Some(on_hand) = rest
                .on_hand
                .iter_mut()
                .find(|on_hand| on_hand.name == it.from && on_hand.count > 0)
            {
                on_hand.count -= 1;
            }
        }
        rest.on_hand.retain(|it| it.count > 0);
        let mut origins = BTreeMap::new();
        for (item, count) in brought {
            if count > 0 && request.items.iter().any(|known| known.name == item) {
                let name = format!("brought home: {item}");
                rest.on_hand.push(crate::OnHand {
                    name: name.clone(),
                    kind: crate::OnHandKind::Item(item.clone()),
                    count,
                });
                origins.insert(name, Origin::Brought(item));
            }
        }
        for it in &opened {
            for (number, (stretch, stock)) in (1..).zip(it.left(&request.rules)) {
                let name = format!("rest {number} of {} no. {}", it.from, it.number);
                rest.on_hand.push(crate::remnant(&name, stock));
                origins.insert(
                    name,
                    Origin::Left {
                        from: it.from.clone(),
                        number: it.number,
                        stretch,
                    },
                );
            }
        }
        Self {
            rest,
            made,
            origins,
            begun,
        }
    }

    /// Whether nothing is made and nothing of the shelf has changed.
    #[must_use]
    pub fn is_untouched(&self) -> bool {
        self.made.is_empty() && self.begun.is_empty() && self.origins.is_empty()
    }

    /// The plan for what is still to be made. Items are numbered on from those that are opened.
    ///
    /// # Errors
    ///
    /// As [`plan_stock`].
    pub fn plan(&self) -> Result<StockPlan, PlanError> {
        let mut plan = plan_stock(&self.rest)?;
        self.number_on(&mut plan);
        Ok(plan)
    }

    /// Numbers the items of a plan of the rest on from those that are opened.
    pub fn number_on(&self, plan: &mut StockPlan) {
        let brought = |item: &str| {
            self.rest
                .on_hand
                .iter()
                .filter(|it| {
                    matches!(self.origins.get(&it.name), Some(Origin::Brought(of)) if of == item)
                })
                .map(|it| it.count)
                .sum::<u32>()
        };
        for cut in &mut plan.cuts {
            let (name, before) = match &cut.source {
                Source::Bought(item) => (item, brought(item)),
                Source::OnHand(name) => match self.origins.get(name) {
                    Some(Origin::Brought(item)) => (item, 0),
                    Some(Origin::Left { .. }) => continue,
                    None => (name, 0),
                },
            };
            cut.number = self.free_number(name, before + cut.number);
        }
    }

    /// The n-th number of a name that is not opened yet.
    fn free_number(&self, name: &str, n: u32) -> u32 {
        let mut number = n;
        for begun in self.begun.get(name).into_iter().flatten() {
            if *begun <= number {
                number += 1;
            }
        }
        number
    }

    /// A part of a plan of the rest as the record has it: in the item that it really comes from.
    #[must_use]
    pub fn sawn(&self, cut: &CutStock, part: &CutPart, mark: &str) -> Sawn {
        let (from, number, part) = match &cut.source {
            Source::Bought(item) => (item.clone(), cut.number, part.clone()),
            Source::OnHand(name) => match self.origins.get(name) {
                Some(Origin::Brought(item)) => (item.clone(), cut.number, part.clone()),
                Some(Origin::Left {
                    from,
                    number,
                    stretch,
                }) => (from.clone(), *number, stretch.in_item(part)),
                None => (name.clone(), cut.number, part.clone()),
            },
        };
        Sawn {
            from,
            of: Some((number, part)),
            mark: mark.to_owned(),
            is_good: true,
        }
    }

    /// A plan of the rest with the parts that are made before it: every part of the job.
    #[must_use]
    pub fn whole(&self, plan: &StockPlan) -> StockPlan {
        let mut whole = plan.clone();
        whole.cuts = self.made.iter().chain(&plan.cuts).cloned().collect();
        whole
    }
}

/// Welds of the whole job, of which `whole` holds every part: one between neighbouring parts of a run,
/// and those at its ends to what another run asks for.
#[must_use]
pub fn welds(request: &StockRequest, whole: &StockPlan) -> u32 {
    let of_run = |run: &crate::RunDemand| {
        let is_of_it = |mark: &str| run.pieces.iter().any(|piece| piece.mark == mark);
        let cut = whole
            .cuts
            .iter()
            .flat_map(|cut| &cut.parts)
            .filter(|part| part.serves.iter().any(|serves| is_of_it(&serves.mark)))
            .count();
        let components = whole
            .components
            .iter()
            .filter(|component| is_of_it(&component.mark))
            .count();
        let parts = u32::try_from(cut + components).unwrap_or(u32::MAX);
        parts.saturating_sub(1) + run.welds_at_ends
    };
    request.runs.iter().map(of_run).sum()
}

impl Stretch {
    /// A part that lies in what is left, as it lies in the item.
    fn in_item(self, part: &CutPart) -> CutPart {
        use tubewright_geometry::{Angle, Length};
        let mut out = part.clone();
        out.place = match (self, part.place) {
            (Self::Bar { from_mm }, PartPlace::Bar { start, length }) => PartPlace::Bar {
                start: start + Length::from_mm(from_mm),
                length,
            },
            (Self::Leg { at_a, from_mm }, PartPlace::Bar { start, length }) => PartPlace::Leg {
                end: if at_a {
                    crate::StockEnd::A
                } else {
                    crate::StockEnd::B
                },
                start: start + Length::from_mm(from_mm),
                length,
            },
            (
                Self::Arc { from_deg, .. },
                PartPlace::Arc {
                    start,
                    sweep,
                    keeps_a,
                    keeps_b,
                },
            ) => PartPlace::Arc {
                start: start + Angle::from_deg(from_deg),
                sweep,
                keeps_a,
                keeps_b,
            },
            (Self::Arc { legs_from_mm, .. }, PartPlace::Leg { end, start, length }) => {
                let [of_a, of_b] = legs_from_mm;
                let from_mm = if end == crate::StockEnd::A {
                    of_a
                } else {
                    of_b
                };
                PartPlace::Leg {
                    end,
                    start: start + Length::from_mm(from_mm),
                    length,
                }
            }
            (_, place) => place,
        };
        out
    }
}
