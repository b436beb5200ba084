//! Tube sizes with what is sold of them, as the route solver needs them.

use tubewright_build::model::{Item, ItemKind, OnHandWhat, Stock, StockShape};
use tubewright_geometry::math;
use tubewright_route::problem::{StockBend, Tube};

/// Largest difference between two centre-line radii that count as one, mm: catalogues round 95.25
/// to 95.3.
const SAME_CLR_MM: f64 = 0.6;

/// Why a run's tube cannot be routed.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum TubeError {
    /// No bend of the size is offered or on hand.
    #[error(
        "no bend of the tube “{0}” is on offer or on hand; add an item of kind “bend” and an offer for it to stock.toml"
    )]
    NoBends(String),
    /// No straight of the size is offered or on hand.
    #[error(
        "no straight of the tube “{0}” is on offer or on hand; add an item of kind “straight” and an offer for it to stock.toml"
    )]
    NoStraights(String),
}

/// Cheapest price of one piece with tax, in the stock file's currency; nothing when it lies on hand;
/// `None` when it can be had neither way.
#[must_use]
pub fn price_of_one(stock: &Stock, item: &Item) -> Option<f64> {
    let is_on_hand = stock.on_hand.iter().any(|on_hand| match &on_hand.what {
        OnHandWhat::Item(name) => *name == item.name && on_hand.count > 0,
        OnHandWhat::Stock { .. } => false,
    });
    if is_on_hand {
        return Some(0.0);
    }
    stock
        .offers
        .iter()
        .filter(|offer| offer.item == item.name && offer.quantity != Some(0))
        .map(|offer| {
            let tax = offer.tax.as_ref().map_or(0.0, |tax| tax.fraction());
            offer.price.major() * (1.0 + tax)
        })
        .min_by(f64::total_cmp)
}

/// The tube with its stock bends of one centre-line radius: the radius with most angles on sale, the
/// larger of equals (it breathes better).
///
/// # Errors
/// [`TubeError`] when nothing of the size can be had.
pub fn route_tube(stock: &Stock, tube: &tubewright_build::model::Tube) -> Result<Tube, TubeError> {
    let mut bends: Vec<(f64, StockBend)> = Vec::new();
    let mut straight_per_m: Option<f64> = None;
    for item in stock
        .items
        .iter()
        .filter(|item| item.tube.as_ref() == Some(&tube.name))
    {
        let (ItemKind::Stock(shape), Some(price)) = (&item.kind, price_of_one(stock, item)) else {
            continue;
        };
        match shape {
            // A bend beyond a right angle is cut into smaller ones by the cutting plan; the router
            // turns at most a right angle at a time.
            StockShape::Bend { angle, clr, legs } if angle.rad() <= math::FRAC_PI_2 + 1e-9 => {
                bends.push((
                    clr.mm(),
                    StockBend {
                        angle_rad: angle.rad(),
                        price,
                        leg_in_mm: legs[0].mm(),
                        leg_out_mm: legs[1].mm(),
                    },
                ));
            }
            StockShape::Bend { .. } => {}
            StockShape::Straight { length } => {
                let per_m = price / (length.mm() / 1000.0);
                straight_per_m = Some(straight_per_m.map_or(per_m, |best| best.min(per_m)));
            }
        }
    }
    let count_near = |clr: f64| {
        bends
            .iter()
            .filter(|(other, _)| (other - clr).abs() <= SAME_CLR_MM)
            .count()
    };
    let clr_mm = bends
        .iter()
        .map(|(clr, _)| *clr)
        .max_by(|a, b| {
            (count_near(*a), *a)
                .partial_cmp(&(count_near(*b), *b))
                .unwrap_or(core::cmp::Ordering::Equal)
        })
        .ok_or_else(|| TubeError::NoBends(tube.name.to_string()))?;
    let mut of_this: Vec<StockBend> = bends
        .iter()
        .filter(|(clr, _)| (clr - clr_mm).abs() <= SAME_CLR_MM)
        .map(|(_, bend)| *bend)
        .collect();
    of_this.sort_by(|a, b| {
        a.angle_rad
            .total_cmp(&b.angle_rad)
            .then_with(|| a.price.total_cmp(&b.price))
    });
    of_this.dedup_by(|later, first| (later.angle_rad - first.angle_rad).abs() < 1e-6);
    Ok(Tube {
        id: tube.name.to_string(),
        od_mm: tube.od.mm(),
        wall_mm: tube.wall.mm(),
        clr_mm,
        stock: of_this,
        straight_price_per_m: straight_per_m
            .ok_or_else(|| TubeError::NoStraights(tube.name.to_string()))?,
    })
}
