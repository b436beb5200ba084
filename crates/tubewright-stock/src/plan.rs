//! The plan: what to buy, what comes out of what, what it costs, and how sure that is.

use tubewright_geometry::{Angle, Length};

use crate::cutting::Proof;
use crate::item::{StockPiece, StockShape};
use crate::money::Money;

/// What is ordered of one offer.
#[derive(Clone, Debug, PartialEq)]
pub struct Buy {
    /// Index of the offer in the request.
    pub offer: usize,
    /// The item.
    pub item: String,
    /// The supplier.
    pub supplier: String,
    /// Pieces.
    pub quantity: u32,
    /// Price of each at this quantity.
    pub each: Money,
    /// Quantity times price.
    pub total: Money,
}

/// A delivery charge.
#[derive(Clone, Debug, PartialEq)]
pub struct Delivery {
    /// The supplier.
    pub supplier: String,
    /// The charge.
    pub charge: Money,
}

/// Where a stock item comes from.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Source {
    /// Lies in the shop under this name.
    OnHand(String),
    /// Bought: the item.
    Bought(String),
}

/// An end of a stock item.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum StockEnd {
    /// The end of leg A, or the end that a straight is measured from.
    A,
    /// The other.
    B,
}

/// Where a part lies in its stock item, measured from a physical end of the item.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PartPlace {
    /// In a straight tube.
    Bar {
        /// From end A.
        start: Length,
        /// Length.
        length: Length,
    },
    /// In a bend.
    Arc {
        /// From the tangent line of leg A.
        start: Angle,
        /// Angle.
        sweep: Angle,
        /// Kept of leg A; only when `start` is zero.
        keeps_a: Length,
        /// Kept of leg B; only when the arc is used to its end.
        keeps_b: Length,
    },
    /// In a leg that is left over.
    Leg {
        /// Which leg.
        end: StockEnd,
        /// From the leg's physical end.
        start: Length,
        /// Length.
        length: Length,
    },
}

/// What a part is in the run.
#[derive(Clone, Debug, PartialEq)]
pub struct Serves {
    /// Mark of the piece.
    pub mark: String,
    /// Length of that straight which the part gives; zero for the bend itself.
    pub length: Length,
}

/// One physical part.
#[derive(Clone, Debug, PartialEq)]
pub struct CutPart {
    /// Pieces that it is, from upstream to downstream: a bend with the straights its legs serve.
    pub serves: Vec<Serves>,
    /// Where it lies.
    pub place: PartPlace,
    /// Whether the flow runs from end B to end A of the stock item.
    pub is_reversed: bool,
}

/// One stock item that is cut.
#[derive(Clone, Debug, PartialEq)]
pub struct CutStock {
    /// Where it comes from.
    pub source: Source,
    /// Number among those of the same source, from 1.
    pub number: u32,
    /// Its geometry: nominal, or measured when on hand.
    pub stock: StockPiece,
    /// Usable from here (ends trimmed off), for straights.
    pub trimmed: Length,
    /// Its parts from end A to end B: those in leg A, those in the arc, those in leg B.
    pub parts: Vec<CutPart>,
}

impl CutStock {
    /// The longest straight that is left in one piece: of a bar after its last part, in thousandths
    /// the stated kerf taken off; zero for bends.
    #[must_use]
    pub fn straight_left(&self, kerf: Length) -> Length {
        let StockShape::Straight { length } = self.stock.shape else {
            return Length::ZERO;
        };
        let used = self
            .parts
            .iter()
            .filter_map(|part| match part.place {
                PartPlace::Bar { start, length } => Some(start + length),
                PartPlace::Arc { .. } | PartPlace::Leg { .. } => None,
            })
            .fold(Length::ZERO, Length::max);
        (length - used - kerf).max(Length::ZERO)
    }

    /// How much longer a part could be left toward end A and toward end B of the item, with what the saw
    /// eats beyond it taken off. Of a bar all that is left counts, for the parts behind it can move along,
    /// and counts at end B. Of a bend only the straight steel of its legs counts, up to the next part: an end
    /// that lies inside the arc has none.
    #[must_use]
    pub fn room_beyond(&self, part: &CutPart, kerf: Length) -> [Length; 2] {
        let StockShape::Bend {
            angle,
            leg_a,
            leg_b,
            ..
        } = self.stock.shape
        else {
            return [Length::ZERO, self.straight_left(kerf)];
        };
        let over = |length: Length| (length - kerf).max(Length::ZERO);
        let same = |a: Angle, b: Angle| (a.rad() - b.rad()).abs() < ARC_END_RAD;
        match part.place {
            PartPlace::Arc {
                start,
                sweep,
                keeps_a,
                keeps_b,
            } => {
                let at = |is_at: bool, leg: Length, end: StockEnd, keeps: Length| {
                    let taken = self
                        .leg_parts(end)
                        .fold(Length::ZERO, |taken, [_, to]| taken.max(to));
                    if is_at {
                        over(leg - keeps - taken)
                    } else {
                        Length::ZERO
                    }
                };
                [
                    at(same(start, Angle::ZERO), leg_a, StockEnd::A, keeps_a),
                    at(same(start + sweep, angle), leg_b, StockEnd::B, keeps_b),
                ]
            }
            // Toward the arc, up to the next part in the leg or to what a bend keeps of it.
            PartPlace::Leg { end, start, length } => {
                let leg = match end {
                    StockEnd::A => leg_a,
                    StockEnd::B => leg_b,
                };
                let kept = self.parts.iter().filter_map(|other| match other.place {
                    PartPlace::Arc {
                        keeps_a, keeps_b, ..
                    } => Some(match end {
                        StockEnd::A => keeps_a,
                        StockEnd::B => keeps_b,
                    }),
                    PartPlace::Bar { .. } | PartPlace::Leg { .. } => None,
                });
                let until = leg - kept.fold(Length::ZERO, Length::max);
                let to = start + length;
                let next = self.leg_parts(end).filter(|[from, _]| *from >= to);
                let until = next.fold(until, |until, [from, _]| until.min(from));
                match end {
                    StockEnd::A => [Length::ZERO, over(until - to)],
                    StockEnd::B => [over(until - to), Length::ZERO],
                }
            }
            PartPlace::Bar { .. } => [Length::ZERO; 2],
        }
    }

    /// From and to of the parts that are sawn from a leg, from its physical end.
    fn leg_parts(&self, leg: StockEnd) -> impl Iterator<Item = [Length; 2]> {
        self.parts.iter().filter_map(move |part| match part.place {
            PartPlace::Leg { end, start, length } if end == leg => Some([start, start + length]),
            _ => None,
        })
    }
}

/// An arc that ends so near to a leg ends at it, radians.
pub(crate) const ARC_END_RAD: f64 = 1e-6;

/// A component used as it is.
#[derive(Clone, Debug, PartialEq)]
pub struct ComponentUse {
    /// Mark of the piece.
    pub mark: String,
    /// The item.
    pub item: String,
    /// Where it comes from.
    pub source: Source,
}

/// Why a piece is missing from the plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MissingWhy {
    /// Nothing in the catalogue or on hand can give it, whatever the quantity.
    NothingFits,
    /// What could give it is not to be had in the quantity needed.
    NotEnough,
}

/// A piece that the plan cannot make.
#[derive(Clone, Debug, PartialEq)]
pub struct Missing {
    /// Its mark.
    pub mark: String,
    /// Why.
    pub why: MissingWhy,
}

/// The plan.
#[derive(Clone, Debug, PartialEq)]
pub struct StockPlan {
    /// What to buy.
    pub buys: Vec<Buy>,
    /// Delivery charges.
    pub deliveries: Vec<Delivery>,
    /// Stock that is cut.
    pub cuts: Vec<CutStock>,
    /// Components.
    pub components: Vec<ComponentUse>,
    /// Pieces that cannot be made; empty in a full plan.
    pub missing: Vec<Missing>,
    /// Spares that cannot be had: item and number.
    pub missing_spares: Vec<(String, u32)>,
    /// Welds between the parts of all runs.
    pub welds: u32,
    /// Purchases and deliveries.
    pub price: Money,
    /// Purchases, deliveries and welds: what was made least.
    pub cost: Money,
    /// No plan costs less than this by the linear relaxation alone, rounded down; with missing
    /// pieces it counts their penalty and says nothing about price.
    pub relaxation: Money,
    /// Whether anything could be cheaper.
    pub proof: Proof,
}

impl StockPlan {
    /// Whether every piece and spare is there.
    #[must_use]
    pub fn is_full(&self) -> bool {
        self.missing.is_empty() && self.missing_spares.is_empty()
    }
}
