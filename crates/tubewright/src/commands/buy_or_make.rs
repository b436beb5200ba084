//! Buy or make.

use super::{Done, Failure, load, print};
use crate::cli::shop::BuyOrMake;
use crate::terminal::paragraph;
use serde_json::json;
use tubewright_build::quantity::Currency as Written;
use tubewright_stock::{BuyOrMake as Part, Currency, Money, buy_or_make};

/// Compares both sums at the shop's rate.
///
/// # Errors
/// The folder cannot be read or names no currency.
pub(crate) fn run(arguments: &BuyOrMake) -> Result<Done, Failure> {
    let loaded = load::load(&arguments.at.folder)?;
    let written = loaded.model.stock.currency.unwrap_or(Written::NONE);
    let currency = Currency::new(written.code()).ok_or_else(|| {
        Failure::Choice("stock.toml names no currency; write one at its top".to_owned())
    })?;
    let practice = loaded.model.stock.practice.resolved(written);
    let scale = f64::from(10u32.pow(written.minor_digits().min(4)));
    let money = |major: f64| Money::new((major * scale).round() as i64, currency);
    let sums = buy_or_make(&Part {
        price: money(arguments.price),
        drive_min: arguments.drive,
        wait_min: arguments.wait,
        make_min: arguments.make,
        material: money(arguments.material),
        rate: money(practice.rate.major_per_unit),
    });
    let cheaper = if sums.make.minor < sums.buy.minor {
        "make"
    } else {
        "buy"
    };
    if arguments.at.json {
        let text = json!({
            "buy": sums.buy.to_string(), "make": sums.make.to_string(),
            "cheaper": cheaper, "even-at-minutes": sums.even_min,
        });
        print(&format!("{text:#}\n"))?;
    } else {
        print(&paragraph(
            &format!(
                "Buying costs {} with the road and the wait, making {}: {cheaper} it. Both cost the same when making takes {:.0} minutes.",
                sums.buy, sums.make, sums.even_min
            ),
            0,
        ))?;
    }
    Ok(Done::Clean)
}
