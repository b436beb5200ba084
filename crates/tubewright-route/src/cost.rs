//! What a route costs, in money-like units that the person can set.

use crate::loss;
use crate::problem::Tube;

/// Version of the list of terms: raised when a term is added or means something else. 2: mitres, and parts where
/// runs meet, lose flow.
pub const TERMS_VERSION: u32 = 2;

/// Whether the legs of stock bends count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Legs {
    /// A bend is its arc only; every straight is bought and welded in.
    Ignored,
    /// A leg of a stock bend serves as the neighbouring straight, without a weld. A bend that is cut
    /// to angle keeps its leg before the arc and loses the one behind.
    ServeAsStraight,
}

/// Loss of ground clearance in money.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GroundTerm {
    /// Clearance in mm above which more is worth nothing.
    pub wanted_mm: f64,
    /// Money for each mm less than that at the lowest place.
    pub per_mm: f64,
}

/// The terms of the objective. Hard rules (clearance, order, radius) are never traded for them.
#[derive(Clone, Debug, PartialEq)]
pub struct CostModel {
    /// Which model it is, as shown.
    pub name: String,
    /// [`TERMS_VERSION`] of the list of terms.
    pub version: u32,
    /// Each weld: one before each piece and one behind the last.
    pub weld: f64,
    /// Each bend that is cut to angle.
    pub cut: f64,
    /// Flow proxy, each radian of bend. An estimate until the flow model replaces it.
    pub flow_per_rad: f64,
    /// Flow proxy, each mm of tube. An estimate until the flow model replaces it.
    pub flow_per_mm: f64,
    /// Flow proxy, each dynamic head that is lost at a mitre ([`crate::loss`]). An estimate, as the others.
    pub flow_per_head: f64,
    /// Legs of stock bends.
    pub legs: Legs,
    /// Ground clearance.
    pub ground: Option<GroundTerm>,
}

/// What a shop's time and material cost; the base of [`CostModel::shop`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShopRates {
    /// Money an hour.
    pub per_hour: f64,
    /// Minutes for fitting, tacking and welding one joint.
    pub weld_minutes: f64,
    /// Filler and gas for one joint.
    pub weld_material: f64,
    /// Minutes for one saw cut with dressing.
    pub cut_minutes: f64,
    /// Flow loss, money each degree of bend.
    pub flow_per_degree: f64,
    /// Flow loss, money each metre of tube.
    pub flow_per_metre: f64,
    /// Ground clearance.
    pub ground: Option<GroundTerm>,
}

impl CostModel {
    /// The model of the route problem form: stock price of each bend, cut, straight by the metre,
    /// weld, flow proxy. Legs are ignored and bends are bought one by one.
    #[must_use]
    pub fn route_problem(weld: f64, cut: f64, per_degree: f64, per_metre: f64) -> Self {
        Self {
            name: "route-problem".to_owned(),
            version: TERMS_VERSION,
            weld,
            cut,
            flow_per_rad: per_degree.to_degrees(),
            flow_per_mm: per_metre / 1000.0,
            // The form has no such thing as an outlet that is sawn off.
            flow_per_head: 0.0,
            legs: Legs::Ignored,
            ground: None,
        }
    }

    /// The shop's model: time at the shop's rate, legs of stock bends used as straights. Sharing one
    /// stock bend among several cuts is left to the cutting plan, which ranks the alternatives anew.
    #[must_use]
    pub fn shop(rates: &ShopRates) -> Self {
        Self {
            name: "shop".to_owned(),
            version: TERMS_VERSION,
            weld: rates.per_hour * rates.weld_minutes / 60.0 + rates.weld_material,
            cut: rates.per_hour * rates.cut_minutes / 60.0,
            flow_per_rad: rates.flow_per_degree.to_degrees(),
            flow_per_mm: rates.flow_per_metre / 1000.0,
            flow_per_head: loss::per_head(rates.flow_per_degree),
            legs: Legs::ServeAsStraight,
            ground: rates.ground,
        }
    }

    /// Price of a mm of straight tube with its share of the flow proxy.
    pub(crate) fn straight_per_mm(&self, tube: &Tube) -> f64 {
        tube.straight_price_per_m / 1000.0 + self.flow_per_mm
    }

    /// What each radian of bend costs beside its price: turning and length.
    pub(crate) fn bend_per_rad(&self, tube: &Tube) -> f64 {
        self.flow_per_rad + self.flow_per_mm * tube.clr_mm
    }
}
