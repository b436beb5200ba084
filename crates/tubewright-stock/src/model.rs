//! From a request to the cutting problem, with the way back.

use std::collections::{BTreeMap, BTreeSet};

use tubewright_geometry::Length;

use crate::cutting::{Bin, Choice, CuttingProblem, Equality, Part, Purchase, Tier};
use crate::demand::{PieceDemand, PieceShape, RunDemand};
use crate::error::PlanError;
use crate::item::{ItemKind, OnHandKind, StockPiece, StockShape};
use crate::plan::Serves;
use crate::possible::{check_piece, check_tube};
use crate::request::StockRequest;
use crate::size::{angle_thousandths, length_of, length_thousandths, loss_thousandths};

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

/// One way to make a straight beside bends.
#[derive(Clone, Copy)]
struct Mode {
    /// Leg kept by the bend before it and by the bend after it.
    on_bends: [i64; 2],
    is_own_part: bool,
}

impl StockModel {
    pub(crate) fn of(request: &StockRequest) -> Result<Self, PlanError> {
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
            model.add_run(run, request);
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

    /// The family of a stock item: same tube, and for bends the nearest demanded radius within
    /// tolerance.
    fn stock_family(&self, stock: &StockPiece, clr_tolerance: Length) -> Option<u32> {
        let (od, wall, material) = stock.tube.key();
        match stock.shape {
            StockShape::Straight { .. } => self
                .families
                .get(&FamilyKey::Straight(od, wall, material.to_owned()))
                .copied(),
            StockShape::Bend { clr, .. } => {
                let clr = length_thousandths(clr);
                let reach = length_thousandths(clr_tolerance);
                self.families
                    .iter()
                    .filter_map(|(key, family)| match key {
                        FamilyKey::Bend(o, w, m, wanted)
                            if (*o, *w, m.as_str()) == (od, wall, material) =>
                        {
                            Some(((wanted - clr).abs(), *family))
                        }
                        _ => None,
                    })
                    .filter(|(off, _)| *off <= reach)
                    .min()
                    .map(|(_, family)| family)
            }
        }
    }

    fn add_bins(&mut self, request: &StockRequest) -> Result<(), PlanError> {
        let mut names = BTreeSet::new();
        for item in &request.items {
            if !names.insert(&item.name) {
                return Err(PlanError::Twice {
                    what: "item",
                    name: item.name.clone(),
                });
            }
            let spare = request
                .spares
                .iter()
                .filter(|spare| spare.item == item.name)
                .map(|spare| spare.count)
                .fold(0, u32::saturating_add);
            let on_hand: Vec<(String, u32)> = request
                .on_hand
                .iter()
                .filter(|it| matches!(&it.kind, OnHandKind::Item(name) if *name == item.name))
                .map(|it| (it.name.clone(), it.count))
                .collect();
            let source = BinStock {
                item: Some(item.name.clone()),
                on_hand,
                stock: None,
                trim: Length::ZERO,
            };
            match &item.kind {
                ItemKind::Stock(stock) => {
                    self.add_bin("item", &item.name, stock, source, spare, request)?;
                }
                ItemKind::Component => {
                    let family = self.family(FamilyKey::Item(item.name.clone()));
                    let bin = plain_bin(family, COMPONENT, &source, spare);
                    self.push_bin(bin, source);
                }
            }
        }
        for spare in &request.spares {
            if !names.contains(&spare.item) {
                return Err(PlanError::Unknown {
                    what: "item",
                    name: spare.item.clone(),
                });
            }
        }
        let mut on_hand_names = BTreeSet::new();
        for it in &request.on_hand {
            if !on_hand_names.insert(&it.name) {
                return Err(PlanError::Twice {
                    what: "on hand",
                    name: it.name.clone(),
                });
            }
            match &it.kind {
                OnHandKind::Item(name) if !names.contains(name) => {
                    return Err(PlanError::Unknown {
                        what: "item",
                        name: name.clone(),
                    });
                }
                OnHandKind::Item(_) => {}
                OnHandKind::Measured(stock) => {
                    let source = BinStock {
                        item: None,
                        on_hand: vec![(it.name.clone(), it.count)],
                        stock: None,
                        trim: Length::ZERO,
                    };
                    self.add_bin("on hand", &it.name, stock, source, 0, request)?;
                }
            }
        }
        Ok(())
    }

    fn add_bin(
        &mut self,
        what: &'static str,
        name: &str,
        stock: &StockPiece,
        mut source: BinStock,
        spare: u32,
        request: &StockRequest,
    ) -> Result<(), PlanError> {
        let rules = &request.rules;
        let no_size = |detail: String| PlanError::NoSize {
            what,
            name: name.to_owned(),
            detail,
        };
        check_tube(stock).map_err(no_size)?;
        let family = match self.stock_family(stock, rules.clr_tolerance) {
            Some(family) => family,
            // Nothing asks for it; it is kept when it is a spare.
            None if spare > 0 => self.family(FamilyKey::Item(format!("spare {name}"))),
            None if self.leg_family(stock).is_some() => {
                self.family(FamilyKey::Item(format!("legs of {name}")))
            }
            None => return Ok(()),
        };
        let kerf = loss_thousandths(rules.kerf.mm());
        let bin = match stock.shape {
            StockShape::Straight { length } => {
                // Trims belong to bought ends; an offcut has been cut already.
                let trim = if source.item.is_some() {
                    rules.end_trim
                } else {
                    Length::ZERO
                };
                source.trim = trim;
                let usable = length - trim * 2.0;
                if usable.mm() < 0.001 {
                    return Ok(());
                }
                let size = length_thousandths(usable);
                Bin {
                    kerf,
                    ..plain_bin(family, size, &source, spare)
                }
            }
            StockShape::Bend {
                angle,
                leg_a,
                leg_b,
                clr,
            } => {
                let Some(arc_kerf) = rules.arc_kerf(stock) else {
                    return Err(no_size(format!(
                        "a centre-line radius of {clr} leaves no inside for a tube of {} and a kerf of {}",
                        stock.tube.od, rules.kerf
                    )));
                };
                Bin {
                    kerf: loss_thousandths(arc_kerf.deg()),
                    legs: [length_thousandths(leg_a), length_thousandths(leg_b)],
                    leg_kerf: kerf,
                    leg_family: self.leg_family(stock),
                    ..plain_bin(family, angle_thousandths(angle), &source, spare)
                }
            }
        };
        source.stock = Some(stock.clone());
        self.push_bin(bin, source);
        Ok(())
    }

    fn push_bin(&mut self, bin: Bin, source: BinStock) {
        self.problem.bins.push(bin);
        self.bins.push(source);
    }

    /// Family of the straights that the legs of a bend can give.
    fn leg_family(&self, stock: &StockPiece) -> Option<u32> {
        let StockShape::Bend { .. } = stock.shape else {
            return None;
        };
        let (od, wall, material) = stock.tube.key();
        self.families
            .get(&FamilyKey::Straight(od, wall, material.to_owned()))
            .copied()
    }

    fn add_purchases(&mut self, request: &StockRequest) -> Result<(), PlanError> {
        let currency = request.rates.weld.currency;
        let in_currency = |money: crate::money::Money| {
            if money.currency == currency {
                Ok(money.minor)
            } else {
                Err(PlanError::Currencies {
                    first: currency.to_string(),
                    second: money.currency.to_string(),
                })
            }
        };
        let mut names = BTreeSet::new();
        for supplier in &request.suppliers {
            if !names.insert(&supplier.name) {
                return Err(PlanError::Twice {
                    what: "supplier",
                    name: supplier.name.clone(),
                });
            }
            self.problem.delivery.push(in_currency(supplier.delivery)?);
        }
        for (index, offer) in request.offers.iter().enumerate() {
            let supplier = request
                .suppliers
                .iter()
                .position(|supplier| supplier.name == offer.supplier)
                .ok_or_else(|| PlanError::Unknown {
                    what: "supplier",
                    name: offer.supplier.clone(),
                })?;
            if !request.items.iter().any(|item| item.name == offer.item) {
                return Err(PlanError::Unknown {
                    what: "item",
                    name: offer.item.clone(),
                });
            }
            let is_it = |bin: &BinStock| bin.item.as_deref() == Some(offer.item.as_str());
            let Some(bin) = self.bins.iter().position(is_it) else {
                continue;
            };
            let tiers = offer
                .prices
                .iter()
                .map(|price| {
                    Ok(Tier {
                        from: price.from,
                        each: in_currency(price.each)?,
                    })
                })
                .collect::<Result<_, PlanError>>()?;
            self.problem.purchases.push(Purchase {
                bin,
                supplier,
                pack: offer.pack,
                tiers,
                available: offer.available,
            });
            self.offers.push(index);
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

    /// Which legs the stock of a family has, distinct, longest first.
    fn legs_of(&self, family: u32) -> Vec<i64> {
        let mut legs: Vec<i64> = self
            .problem
            .bins
            .iter()
            .filter(|bin| bin.family == family)
            .flat_map(|bin| bin.legs)
            .filter(|leg| *leg > 0)
            .collect();
        legs.sort_unstable_by(|a, b| b.cmp(a));
        legs.dedup();
        legs
    }

    fn add_run(&mut self, run: &RunDemand, request: &StockRequest) {
        let modes: Vec<Vec<Mode>> = (0..run.pieces.len())
            .map(|at| self.modes(run, at, request.rules.least_leg))
            .collect();
        let joints = run.pieces.len().saturating_sub(1) as u32;
        let mergeable = modes.iter().filter(|modes| modes.len() > 1).count() as u32;
        self.least_welds += run.welds_at_ends + joints - mergeable.min(joints);
        // Choices of the straights first: those of the bends refer to them.
        let choices: Vec<Vec<(Mode, usize)>> = run
            .pieces
            .iter()
            .zip(&modes)
            .map(|(piece, modes)| self.add_straight(piece, modes, request.rates.weld.minor))
            .collect();
        for (at, piece) in run.pieces.iter().enumerate() {
            match &piece.shape {
                PieceShape::Straight { .. } => {}
                PieceShape::Bend { .. } => self.add_bend(run, at, &choices),
                PieceShape::Component { item } => {
                    let family = self.family(family_key(piece));
                    let class = self.class(family, COMPONENT, [0, 0]);
                    self.want(Wanted {
                        class,
                        serves: vec![serves(piece, 0)],
                        legs: [0, 0],
                        component: Some(item.clone()),
                    });
                }
            }
        }
    }

    fn want(&mut self, wanted: Wanted) {
        if let Some(part) = self.problem.parts.get_mut(wanted.class) {
            part.count += 1;
        }
        self.wanted.push(wanted);
    }

    fn add_choice(&mut self, cost: i64, wanted: Option<Wanted>) -> usize {
        let needs = wanted.iter().map(|wanted| (wanted.class, 1)).collect();
        self.problem.choices.push(Choice { cost, needs });
        self.choice_wanted.push(wanted);
        self.choice_wanted.len() - 1
    }

    /// The ways to make a straight: a part of its own, on the leg of the bend before or after it,
    /// or shared by both legs. Empty for other pieces.
    fn modes(&self, run: &RunDemand, at: usize, least_leg: Length) -> Vec<Mode> {
        let Some(piece) = run.pieces.get(at) else {
            return Vec::new();
        };
        let Some(length) = cut_length(piece) else {
            return Vec::new();
        };
        let legs_beside = |neighbour: Option<usize>| {
            neighbour
                .and_then(|index| run.pieces.get(index))
                .filter(|bend| matches!(bend.shape, PieceShape::Bend { .. }))
                .filter(|bend| bend.tube.is_same_as(&piece.tube))
                .and_then(|bend| self.families.get(&family_key(bend)))
                .map(|family| self.legs_of(*family))
                .unwrap_or_default()
        };
        let before = legs_beside(at.checked_sub(1));
        let after = legs_beside(Some(at + 1));
        let (longest_before, longest_after) = (
            before.first().copied().unwrap_or(0),
            after.first().copied().unwrap_or(0),
        );
        let mut shares = BTreeSet::new();
        if length <= longest_before {
            shares.insert([length, 0]);
        }
        if length <= longest_after {
            shares.insert([0, length]);
        }
        // Shared: one of the two legs is used whole, else the split could be moved until it is.
        let least = length_thousandths(least_leg).max(1);
        let splits = before
            .iter()
            .map(|leg| [*leg, length - leg])
            .chain(after.iter().map(|leg| [length - leg, *leg]));
        for [a, b] in splits {
            if a >= least && b >= least && a <= longest_before && b <= longest_after {
                shares.insert([a, b]);
            }
        }
        let own = Mode {
            on_bends: [0, 0],
            is_own_part: true,
        };
        let shared = shares.into_iter().map(|on_bends| Mode {
            on_bends,
            is_own_part: false,
        });
        core::iter::once(own).chain(shared).collect()
    }

    fn add_straight(
        &mut self,
        piece: &PieceDemand,
        modes: &[Mode],
        weld_cost: i64,
    ) -> Vec<(Mode, usize)> {
        let Some(length) = cut_length(piece) else {
            return Vec::new();
        };
        let family = self.family(family_key(piece));
        let class = self.class(family, length, [0, 0]);
        let own = Wanted {
            class,
            serves: vec![serves(piece, length)],
            legs: [0, 0],
            component: None,
        };
        if modes.len() < 2 {
            self.want(own);
            return Vec::new();
        }
        let choices: Vec<(Mode, usize)> = modes
            .iter()
            .map(|mode| {
                // A part of its own has one joint more than a leg that serves.
                let choice = if mode.is_own_part {
                    self.add_choice(weld_cost, Some(own.clone()))
                } else {
                    self.add_choice(0, None)
                };
                (*mode, choice)
            })
            .collect();
        self.problem.equalities.push(Equality {
            terms: choices.iter().map(|(_, choice)| (*choice, 1)).collect(),
            rhs: 1,
        });
        choices
    }

    fn add_bend(&mut self, run: &RunDemand, at: usize, choices: &[Vec<(Mode, usize)>]) {
        let (Some(piece), PieceShape::Bend { angle, .. }) = (
            run.pieces.get(at),
            run.pieces.get(at).map_or(&NO_SHAPE, |piece| &piece.shape),
        ) else {
            return;
        };
        let size = angle_thousandths(*angle);
        let family = self.family(family_key(piece));
        let before = at.checked_sub(1).and_then(|index| choices.get(index));
        let after = choices.get(at + 1);
        let options = |straight: Option<&Vec<(Mode, usize)>>, side: usize| -> Vec<i64> {
            let kept: BTreeSet<i64> = straight
                .into_iter()
                .flatten()
                .map(|(mode, _)| mode.on_bends[side])
                .chain([0])
                .collect();
            kept.into_iter().collect()
        };
        // The straight before keeps its second share on this bend, the one after its first.
        let (upstream, downstream) = (options(before, 1), options(after, 0));
        let mut variants: Vec<([i64; 2], usize)> = Vec::new();
        for legs in upstream
            .iter()
            .flat_map(|u| downstream.iter().map(move |d| [*u, *d]))
        {
            let class = self.class(family, size, legs);
            let neighbour = |index: Option<usize>, length: i64| {
                index
                    .filter(|_| length > 0)
                    .and_then(|index| run.pieces.get(index))
                    .map(|piece| serves(piece, length))
            };
            let mut all: Vec<Serves> = Vec::with_capacity(3);
            all.extend(neighbour(at.checked_sub(1), legs[0]));
            all.push(serves(piece, 0));
            all.extend(neighbour(Some(at + 1), legs[1]));
            let wanted = Wanted {
                class,
                serves: all,
                legs,
                component: None,
            };
            if upstream.len() == 1 && downstream.len() == 1 {
                self.want(wanted);
                return;
            }
            let choice = self.add_choice(0, Some(wanted));
            variants.push((legs, choice));
        }
        for (straight, side, kept_at) in [(before, 1, 0), (after, 0, 1)] {
            let Some(straight) = straight.filter(|modes| !modes.is_empty()) else {
                continue;
            };
            for kept in options(Some(straight), side) {
                let of_bend = variants
                    .iter()
                    .filter(|(legs, _)| legs[kept_at] == kept)
                    .map(|(_, choice)| (*choice, 1));
                let of_straight = straight
                    .iter()
                    .filter(|(mode, _)| mode.on_bends[side] == kept)
                    .map(|(_, choice)| (*choice, -1));
                self.problem.equalities.push(Equality {
                    terms: of_bend.chain(of_straight).collect(),
                    rhs: 0,
                });
            }
        }
    }
}

/// Components have no size; any will do.
const COMPONENT: i64 = 1000;

const NO_SHAPE: PieceShape = PieceShape::Straight {
    length: Length::ZERO,
};

fn plain_bin(family: u32, size: i64, source: &BinStock, spare: u32) -> Bin {
    Bin {
        family,
        size,
        kerf: 0,
        legs: [0, 0],
        leg_kerf: 0,
        leg_family: None,
        on_hand: source
            .on_hand
            .iter()
            .map(|(_, count)| *count)
            .fold(0, u32::saturating_add),
        spare,
    }
}

fn serves(piece: &PieceDemand, length: i64) -> Serves {
    Serves {
        mark: piece.mark.clone(),
        length: length_of(length),
    }
}

/// Length of a straight as cut, in thousandths of mm.
fn cut_length(piece: &PieceDemand) -> Option<i64> {
    match piece.shape {
        PieceShape::Straight { length } => Some(length_thousandths(length + piece.allowance)),
        PieceShape::Bend { .. } | PieceShape::Component { .. } => None,
    }
}

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
