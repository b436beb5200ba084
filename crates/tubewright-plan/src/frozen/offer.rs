//! What a new solution would change of the chosen plan, and what that costs in steel that is cut.

use std::collections::BTreeMap;
use tubewright_build::model::{EntryKind, Shop, Stock};

use super::carry::{is_turned_alike, longest_common};
use crate::routes::{PlannedRun, price_of_one};

/// A piece that is cut already and that the offer has no use for.
#[derive(Clone, Debug, PartialEq)]
pub struct CutSteel {
    /// Its mark.
    pub mark: String,
    /// What it was cut from.
    pub from: String,
    /// What one of those costs now, with tax, in the stock file's currency; nothing for what lay on
    /// the shelf; `None` when it is not on offer.
    pub price: Option<f64>,
}

/// What an offer changes of one run.
#[derive(Clone, Debug, PartialEq)]
pub struct RunOffer {
    /// The run.
    pub run: String,
    /// Marks of pieces that stay, in order.
    pub stay: Vec<String>,
    /// Marks of pieces that go, in order.
    pub go: Vec<String>,
    /// Marks of new pieces, in order.
    pub come: Vec<String>,
    /// Marks of pieces that stay and are clocked otherwise.
    pub turned: Vec<String>,
    /// Joints that are tacked or welded and would be undone.
    pub undone: Vec<String>,
}

/// What an offer changes.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    /// The runs that change; a run that stays as it is is left out.
    pub runs: Vec<RunOffer>,
    /// Pieces that are cut already and would be of no use.
    pub cut_steel: Vec<CutSteel>,
}

impl Offer {
    /// Whether it changes nothing.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        self.runs.is_empty()
    }

    /// What the steel costs that is cut already, in the stock file's currency, as far as its prices
    /// are known.
    #[must_use]
    pub fn steel_price(&self) -> f64 {
        self.cut_steel.iter().filter_map(|cut| cut.price).sum()
    }
}

/// Compares a solution with the chosen runs. Both carry their marks.
#[must_use]
pub fn offer_of(
    shop: &Shop,
    stock: &Stock,
    chosen: &[PlannedRun],
    offered: &[PlannedRun],
) -> Offer {
    let made = Made::of(shop);
    let mut runs = Vec::new();
    let mut cut_steel = Vec::new();
    for new in offered {
        let Some(old) = chosen.iter().find(|old| old.name == new.name) else {
            runs.push(RunOffer {
                run: new.name.clone(),
                stay: Vec::new(),
                go: Vec::new(),
                come: new.pieces.iter().map(|piece| piece.mark.clone()).collect(),
                turned: Vec::new(),
                undone: Vec::new(),
            });
            continue;
        };
        let kept = longest_common(&new.pieces, &old.pieces);
        let mark = |run: &PlannedRun, index: usize| {
            run.pieces
                .get(index)
                .map(|piece| piece.mark.clone())
                .unwrap_or_default()
        };
        let mut offer = RunOffer {
            run: new.name.clone(),
            stay: Vec::new(),
            go: Vec::new(),
            come: Vec::new(),
            turned: Vec::new(),
            undone: Vec::new(),
        };
        for (index, was) in kept.iter().enumerate() {
            match *was {
                None => offer.come.push(mark(new, index)),
                Some(was) => {
                    let alike = match (new.pieces.get(index), old.pieces.get(was)) {
                        (Some(a), Some(b)) => is_turned_alike(&a.kind, &b.kind),
                        _ => true,
                    };
                    if alike {
                        offer.stay.push(mark(old, was));
                    } else {
                        offer.turned.push(mark(old, was));
                    }
                }
            }
        }
        for (index, piece) in old.pieces.iter().enumerate() {
            if kept.contains(&Some(index)) {
                continue;
            }
            offer.go.push(piece.mark.clone());
            if let Some(from) = made.cut.get(&piece.mark) {
                cut_steel.push(CutSteel {
                    mark: piece.mark.clone(),
                    from: from.clone(),
                    price: stock
                        .items
                        .iter()
                        .find(|item| item.name == **from)
                        .map_or(Some(0.0), |item| price_of_one(stock, item)),
                });
            }
        }
        let joints = |run: &PlannedRun| -> Vec<String> {
            let of_pieces = run.pieces.iter().map(|piece| piece.joint.clone());
            of_pieces.chain([run.last_joint.clone()]).collect()
        };
        let still = joints(new);
        offer.undone = joints(old)
            .into_iter()
            .filter(|joint| made.joined.contains(joint) && !still.contains(joint))
            .collect();
        let is_changed = !(offer.go.is_empty() && offer.come.is_empty() && offer.turned.is_empty());
        if is_changed {
            runs.push(offer);
        }
    }
    Offer { runs, cut_steel }
}

/// What was made of the plan so far.
struct Made {
    /// What each piece was cut from; spoiled pieces are not there any more.
    cut: BTreeMap<String, String>,
    /// Joints that are tacked or welded.
    joined: Vec<String>,
}

impl Made {
    fn of(shop: &Shop) -> Self {
        let mut made = Self {
            cut: BTreeMap::new(),
            joined: Vec::new(),
        };
        for entry in &shop.entries {
            match &entry.what {
                EntryKind::Cut { piece, from, .. } => {
                    made.cut.insert(piece.clone(), from.to_string());
                }
                EntryKind::Spoiled { piece } => {
                    made.cut.remove(piece);
                }
                EntryKind::Tacked { joint, .. } | EntryKind::Welded { joint } => {
                    made.joined.push(joint.clone());
                }
                _ => {}
            }
        }
        made
    }
}
