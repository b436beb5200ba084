//! Proves a plan from the request and the plan alone. Nothing here is shared with the solver or
//! the layout: it works on lengths and angles, not on patterns.

mod money;
mod pieces;
mod steel;

use crate::plan::StockPlan;
use crate::request::StockRequest;

/// Something that is wrong with a plan.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum Fault {
    /// A piece is neither made nor named as missing, or made twice.
    #[error("piece {mark} is made {times} times")]
    MadeTimes {
        /// Its mark.
        mark: String,
        /// How often.
        times: u32,
    },
    /// A piece is made with the wrong size.
    #[error("piece {mark} is cut to {got}, wanted {wanted} (mm or degrees)")]
    WrongSize {
        /// Its mark.
        mark: String,
        /// As cut.
        got: f64,
        /// As wanted.
        wanted: f64,
    },
    /// A piece comes out of the wrong tube or radius.
    #[error("piece {mark} comes out of the wrong stock: {why}")]
    WrongStock {
        /// Its mark.
        mark: String,
        /// Tube or radius.
        why: &'static str,
    },
    /// A part serves pieces that are no neighbours, or in the wrong order.
    #[error("the part with piece {mark} serves pieces that are no neighbours")]
    NoNeighbours {
        /// First mark.
        mark: String,
    },
    /// Parts overlap, have no kerf between them, or reach beyond the stock.
    #[error("{source_name} number {number}: {why} at part {mark}")]
    BadCut {
        /// Where the stock comes from.
        source_name: String,
        /// Which.
        number: u32,
        /// First mark of the part.
        mark: String,
        /// What is wrong.
        why: &'static str,
    },
    /// More is cut than lies there or is bought.
    #[error("{name}: {used} used, {there} there")]
    TooMany {
        /// Item or on hand.
        name: String,
        /// Cut, used or kept as spare.
        used: u32,
        /// On hand or bought.
        there: u32,
    },
    /// A purchase breaks its offer.
    #[error("purchase of {item} from {supplier}: {why}")]
    BadBuy {
        /// Item.
        item: String,
        /// Supplier.
        supplier: String,
        /// What is wrong.
        why: &'static str,
    },
    /// A sum does not add up.
    #[error("{what}: the plan says {said}, adding up gives {added}")]
    BadSum {
        /// Which sum.
        what: &'static str,
        /// Minor units or welds as stated.
        said: i64,
        /// As added up.
        added: i64,
    },
}

/// Everything that is wrong with a plan; empty when it is proven.
///
/// Checks that each mark is made once and to size or named as missing, that parts lie inside their
/// stock with a kerf between them, that legs are kept only at uncut ends, that no more is used than
/// is on hand or bought, that purchases keep pack, price and availability, and that all sums add up.
/// It does not check that the plan is the cheapest.
#[must_use]
pub fn verify(request: &StockRequest, plan: &StockPlan) -> Vec<Fault> {
    let mut faults = pieces::faults(request, plan);
    faults.extend(steel::faults(request, plan));
    faults.extend(money::faults(request, plan));
    faults
}

/// Half a thousandth of a millimetre or degree: sizes are whole thousandths.
const SIZE_TOLERANCE: f64 = 0.0006;
