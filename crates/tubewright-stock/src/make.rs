//! Buy or make: what a bought part costs with its drive and wait, against the shop's own hours.

use crate::money::Money;

/// A part that can be bought or made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BuyOrMake {
    /// Price with tax and delivery.
    pub price: Money,
    /// Minutes on the road for it, there and back, of which nothing else is done.
    pub drive_min: f64,
    /// Minutes of waiting that stop the job.
    pub wait_min: f64,
    /// Minutes to make it, set-up counted.
    pub make_min: f64,
    /// Material for making it.
    pub material: Money,
    /// The shop's rate for an hour.
    pub rate: Money,
}

/// Both sums.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BuyOrMakeSums {
    /// Buying: price, drive and wait at the shop's rate.
    pub buy: Money,
    /// Making: material and hours at the shop's rate.
    pub make: Money,
    /// Minutes of making at which both cost the same.
    pub even_min: f64,
}

/// Compares; sums are rounded to minor units, half away from zero.
#[must_use]
pub fn buy_or_make(part: &BuyOrMake) -> BuyOrMakeSums {
    let rate = part.rate.minor as f64 / 60.0;
    let hours = |minutes: f64| (minutes * rate).round() as i64;
    let buy = part.price.minor + hours(part.drive_min + part.wait_min);
    let make = part.material.minor + hours(part.make_min);
    let even = (buy - part.material.minor) as f64 / rate;
    BuyOrMakeSums {
        buy: Money::new(buy, part.price.currency),
        make: Money::new(make, part.price.currency),
        even_min: if even.is_finite() { even.max(0.0) } else { 0.0 },
    }
}
