//! Catalogue, on hand, buying and cutting plan, saw marks.
//!
//! A rounded run asks for pieces; the catalogue, the suppliers and the shelf say what there is.
//! [`plan_stock`] makes the cheapest plan that cuts every piece, with kerf, with the legs of bends
//! used as straights, with packs, price breaks, availability and delivery charges, and proves that
//! nothing is cheaper; [`verify()`] proves any plan from the request alone.

mod bend_cut;
mod budget;
pub mod cutting;
mod demand;
mod errands;
mod error;
mod item;
mod layout;
mod make;
mod marks;
mod model;
mod money;
mod plan;
mod plan_stock;
mod possible;
mod progress;
mod request;
mod roads;
mod rules;
mod size;
mod spare;
mod substitute;
mod verify;
pub mod weld;

pub use bend_cut::{ArcReach, KerfAngles, arc_reach, kerf_angles, set_back};
pub use budget::{ChainPiece, Covariance, Tolerances, closing_trim, end_covariance};
pub use cutting::{Effort, Proof};
pub use demand::{PieceDemand, PieceShape, RunDemand};
pub use errands::{ErrandError, MOST_STOPS, Round, Stop, best_round};
pub use error::PlanError;
pub use item::{
    Item, ItemKind, Offer, OnHand, OnHandKind, PriceBreak, Spare, StockPiece, StockShape, Supplier,
    TubeSpec,
};
pub use make::{BuyOrMake, BuyOrMakeSums, buy_or_make};
pub use marks::{
    Cut, CutCard, FaceBy, FitMark, ItemLimits, KerfSide, Reach, RingGap, SawFinding, SawTrouble,
    cut_cards, fit_marks, item_limits, ring_gaps,
};
pub use money::{Currency, Money};
pub use plan::{
    Buy, ComponentUse, CutPart, CutStock, Delivery, Missing, MissingWhy, PartPlace, Serves, Source,
    StockEnd, StockPlan,
};
pub use plan_stock::plan_stock;
pub use progress::{JobProgress, Sawn, SteelRecord, welds};
pub use request::StockRequest;
pub use roads::{Road, minutes_between};
pub use rules::{KerfRule, Rates, ShopRules};
pub use size::{angle_of, angle_thousandths, length_of, length_thousandths};
pub use spare::{ExtraBend, Spares, remnant, spares};
pub use substitute::{CHEAPER_THOUGH_OUT, Substitute, at_most, substitutes, without};
pub use verify::{Fault, verify};
