//! From a request to the cutting problem, with the way back.

mod runs;
mod stock;

use std::collections::{BTreeMap, BTreeSet};

use tubewright_geometry::Length;

use crate::cutting::{CuttingProblem, Part};
use crate::demand::{PieceDemand, PieceShape};
use crate::error::PlanError;
use crate::item::StockPiece;
use crate::plan::Serves;
use crate::possible::check_piece;
use crate::request::StockRequest;
use crate::size::length_thousandths;

/// One physical part that is wanted.
#[derive(Clone, Debug)]
pub(crate) struct Wanted {
    pub(crate) class: usize,
    pub(crate) serves: Vec<Serves>,
    /// Legs it keeps at its upstream and downstream end, thousandths of mm.
    pub(crate) legs: [i64; 2],
    /// The item, for components.
    pub(crate) component: Option<String>,
}

/// What a bin is in steel.
#[derive(Clone, Debug)]
pub(crate) struct BinStock {
    /// The item, when it is one of the catalogue.
    pub(crate) item: Option<String>,
    /// Names on hand with their counts.
    pub(crate) on_hand: Vec<(String, u32)>,
    /// Geometry; `None` for components.
    pub(crate) stock: Option<StockPiece>,
    /// Trimmed off at end A.
    pub(crate) trim: Length,
}

/// The problem and what its numbers stand for.
pub(crate) struct StockModel {
    pub(crate) problem: CuttingProblem,
    pub(crate) bins: Vec<BinStock>,
    /// Offer of each purchase.
    pub(crate) offers: Vec<usize>,
    /// Parts wanted in any case.
    pub(crate) wanted: Vec<Wanted>,
    /// Part of each choice, when it asks for one.
    pub(crate) choice_wanted: Vec<Option<Wanted>>,
    /// Joints between parts when every straight is a part of its own less one for each straight
    /// that can be merged.
    pub(crate) least_welds: u32,
    families: BTreeMap<FamilyKey, u32>,
    classes: BTreeMap<(u32, i64, [i64; 2]), usize>,
}

#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum FamilyKey {
    Straight(i64, i64, String),
    Bend(i64, i64, String, i64),
    Item(String),
}

/// Most choices of a job whose straights are also split so that one or two others still come out of the
/// leg: beyond, the search takes longer than the steel is worth.
const MOST_CHOICES: usize = 150;

impl StockModel {
    /// The problem of a request. Where a straight is shared by two legs, it is split so that a leg is used
    /// up, and in a job of a car's usual size also so that one or two others come out of the leg.
    pub(crate) fn of(request: &StockRequest) -> Result<Self, PlanError> {
        let model = Self::with(request, true)?;
        if model.problem.choices.len() <= MOST_CHOICES {
            return Ok(model);
        }
        Self::with_few_splits(request)
    }

    /// The same with the fewest places to split a straight that two legs share.
    pub(crate) fn with_few_splits(request: &StockRequest) -> Result<Self, PlanError> {
        Self::with(request, false)
    }

    fn with(request: &StockRequest, all_splits: bool) -> Result<Self, PlanError> {
        let mut model = Self {
            problem: CuttingProblem::default(),
            bins: Vec::new(),
            offers: Vec::new(),
            wanted: Vec::new(),
            choice_wanted: Vec::new(),
            least_welds: 0,
            families: BTreeMap::new(),
            classes: BTreeMap::new(),
        };
        model.name_families(request)?;
        model.add_bins(request)?;
        model.add_purchases(request)?;
        for run in &request.runs {
            model.add_run(run, request, all_splits);
        }
        Ok(model)
    }

    fn family(&mut self, key: FamilyKey) -> u32 {
        let next = self.families.len() as u32;
        *self.families.entry(key).or_insert(next)
    }

    /// Families are named by what is demanded; stock is sorted into them.
    fn name_families(&mut self, request: &StockRequest) -> Result<(), PlanError> {
        let mut marks = BTreeSet::new();
        for piece in request.runs.iter().flat_map(|run| &run.pieces) {
            if !marks.insert(&piece.mark) {
                return Err(PlanError::Twice {
                    what: "mark",
                    name: piece.mark.clone(),
                });
            }
            check_piece(piece)?;
            if let PieceShape::Component { item } = &piece.shape
                && !request.items.iter().any(|known| known.name == *item)
            {
                return Err(PlanError::Unknown {
                    what: "item",
                    name: item.clone(),
                });
            }
            self.family(family_key(piece));
        }
        Ok(())
    }

    fn class(&mut self, family: u32, size: i64, legs: [i64; 2]) -> usize {
        // A bend can be turned round: the order of its legs makes no other class.
        let legs = [legs[0].max(legs[1]), legs[0].min(legs[1])];
        let parts = &mut self.problem.parts;
        *self.classes.entry((family, size, legs)).or_insert_with(|| {
            parts.push(Part {
                family,
                size,
                legs,
                count: 0,
            });
            parts.len() - 1
        })
    }
}

/// Components have no size; any will do.
const COMPONENT: i64 = 1000;

fn family_key(piece: &PieceDemand) -> FamilyKey {
    let (od, wall, material) = piece.tube.key();
    match &piece.shape {
        PieceShape::Straight { .. } => FamilyKey::Straight(od, wall, material.to_owned()),
        PieceShape::Bend { clr, .. } => {
            FamilyKey::Bend(od, wall, material.to_owned(), length_thousandths(*clr))
        }
        PieceShape::Component { item } => FamilyKey::Item(item.clone()),
    }
}
