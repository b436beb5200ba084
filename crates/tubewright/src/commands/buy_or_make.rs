//! Buy or make.

use super::{Done, Failure, load, print};
use crate::cli::shop::BuyOrMake;
use crate::terminal::paragraph;
use serde_json::json;
use tubewright_plan::stock::{BuyOrMakeAsked, buy_or_make_at_the_shop};

/// Compares both sums at the shop's rate.
///
/// # Errors
/// The folder cannot be read, names no currency, or a number is none.
pub(crate) fn run(arguments: &BuyOrMake) -> Result<Done, Failure> {
    let loaded = load::load(&arguments.at.folder)?;
    let asked = BuyOrMakeAsked {
        price: arguments.price,
        drive_min: arguments.drive,
        wait_min: arguments.wait,
        make_min: arguments.make,
        material: arguments.material,
    };
    let found = buy_or_make_at_the_shop(&loaded.model.stock, asked)
        .map_err(|error| Failure::Choice(error.to_string()))?;
    if arguments.at.json {
        let sums = &found.sums;
        let text = json!({
            "buy": sums.buy.to_string(), "make": sums.make.to_string(),
            "cheaper": found.cheaper(), "even-at-minutes": sums.even_min,
            "rate": found.rate.to_string(), "rate-assumed": found.is_rate_assumed,
        });
        print(&format!("{text:#}\n"))?;
    } else {
        print(&paragraph(&found.words(), 0))?;
    }
    Ok(Done::Clean)
}
