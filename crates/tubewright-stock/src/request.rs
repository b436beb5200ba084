//! Everything that a stock plan is made from.

use crate::cutting::Effort;
use crate::demand::RunDemand;
use crate::item::{Item, Offer, OnHand, Spare, Supplier};
use crate::rules::{Rates, ShopRules};

/// What is asked, what can be bought, what lies there, and how the shop cuts.
#[derive(Clone, Debug, PartialEq)]
pub struct StockRequest {
    /// The catalogue.
    pub items: Vec<Item>,
    /// Offers.
    pub offers: Vec<Offer>,
    /// Suppliers.
    pub suppliers: Vec<Supplier>,
    /// On hand.
    pub on_hand: Vec<OnHand>,
    /// Runs.
    pub runs: Vec<RunDemand>,
    /// Spares to have left over.
    pub spares: Vec<Spare>,
    /// The saw.
    pub rules: ShopRules,
    /// Prices of work.
    pub rates: Rates,
    /// Work that may be spent.
    pub effort: Effort,
}
