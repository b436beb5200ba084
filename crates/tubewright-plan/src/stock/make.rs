//! Buy or make, at the shop's own rate.

use tubewright_build::model::Stock;
use tubewright_stock::{BuyOrMake, BuyOrMakeSums, Currency, Money, buy_or_make};

/// A part that can be bought or made, in plain numbers of the stock file's currency.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BuyOrMakeAsked {
    /// Price with tax and delivery.
    pub price: f64,
    /// Minutes on the road for it, there and back.
    pub drive_min: f64,
    /// Minutes of waiting that stop the job.
    pub wait_min: f64,
    /// Minutes to make it, set-up counted.
    pub make_min: f64,
    /// Material for making it.
    pub material: f64,
}

/// Why the two cannot be compared.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum BuyOrMakeError {
    /// No currency.
    #[error("stock.toml names no currency; write one at its top")]
    NoCurrency,
    /// A number that cannot be one.
    #[error("{what} cannot be {value}: give a number from 0 to {MOST}")]
    NoNumber {
        /// Which of them.
        what: &'static str,
        /// What was given.
        value: f64,
    },
    /// Hours that cost nothing decide nothing.
    #[error("the shop's hour counts nothing: write rate under [practice] in stock.toml")]
    NoRate,
}

/// Largest amount and most minutes.
const MOST: f64 = 1e6;

/// Both sums with the rate that they were reckoned at.
#[derive(Clone, Debug, PartialEq)]
pub struct BuyOrMakeFound {
    /// The sums.
    pub sums: BuyOrMakeSums,
    /// The shop's hour.
    pub rate: Money,
    /// Whether nobody wrote that rate into the stock file.
    pub is_rate_assumed: bool,
}

/// Compares price, drive and wait with the hours of the shop.
///
/// # Errors
/// [`BuyOrMakeError`].
pub fn buy_or_make_at_the_shop(
    stock: &Stock,
    asked: BuyOrMakeAsked,
) -> Result<BuyOrMakeFound, BuyOrMakeError> {
    for (what, value) in [
        ("the price", asked.price),
        ("the minutes on the road", asked.drive_min),
        ("the minutes of waiting", asked.wait_min),
        ("the minutes to make it", asked.make_min),
        ("the material", asked.material),
    ] {
        if !(0.0..=MOST).contains(&value) {
            return Err(BuyOrMakeError::NoNumber { what, value });
        }
    }
    let written = stock.currency.ok_or(BuyOrMakeError::NoCurrency)?;
    let currency = Currency::new(written.code()).ok_or(BuyOrMakeError::NoCurrency)?;
    let practice = stock.practice.resolved(written);
    let scale = f64::from(10_u32.pow(written.minor_digits().min(4)));
    let money = |major: f64| Money::new((major * scale).round() as i64, currency);
    let rate = money(practice.rate.major_per_unit);
    if rate.minor <= 0 {
        return Err(BuyOrMakeError::NoRate);
    }
    Ok(BuyOrMakeFound {
        sums: buy_or_make(&BuyOrMake {
            price: money(asked.price),
            drive_min: asked.drive_min,
            wait_min: asked.wait_min,
            make_min: asked.make_min,
            material: money(asked.material),
            rate,
        }),
        rate,
        is_rate_assumed: practice.defaulted.iter().any(|it| it.key == "rate"),
    })
}

impl BuyOrMakeFound {
    /// Which of the two is cheaper.
    #[must_use]
    pub fn cheaper(&self) -> &'static str {
        if self.sums.make.minor < self.sums.buy.minor {
            "make"
        } else {
            "buy"
        }
    }

    /// Both sums and where they meet, as sentences.
    #[must_use]
    pub fn words(&self) -> String {
        let Self { sums, rate, .. } = self;
        let rate_words = if self.is_rate_assumed {
            ", which nobody wrote: put your own rate under [practice] in stock.toml"
        } else {
            ""
        };
        format!(
            "Buying costs {} with the road and the wait, making {}: {} it. Both cost the same when making takes {:.0} minutes. The shop's hour counts {rate}{rate_words}.",
            sums.buy,
            sums.make,
            self.cheaper(),
            sums.even_min,
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tubewright_build::{Texts, read};

    fn stock(head: &str) -> Stock {
        let text = format!("format = \"tubewright-stock/1\"\n{head}");
        let texts = Texts {
            build: None,
            stock: Some(&text),
            shop: None,
        };
        read(texts).model.stock
    }

    const ASKED: BuyOrMakeAsked = BuyOrMakeAsked {
        price: 42.0,
        drive_min: 30.0,
        wait_min: 0.0,
        make_min: 90.0,
        material: 6.0,
    };

    #[test]
    fn both_sums_are_at_the_rate_of_the_shop() {
        let stock = stock("currency = \"EUR\"\n[practice]\nrate = \"60 EUR/h\"\n");
        let found = buy_or_make_at_the_shop(&stock, ASKED).unwrap();
        // 42 + half an hour; 6 + an hour and a half.
        assert_eq!(found.sums.buy.minor, 7_200);
        assert_eq!(found.sums.make.minor, 9_600);
        assert_eq!((found.cheaper(), found.is_rate_assumed), ("buy", false));
        assert!(
            found
                .words()
                .ends_with("takes 66 minutes. The shop's hour counts 60.00 EUR.")
        );
    }

    #[test]
    fn a_rate_that_nobody_wrote_is_said() {
        let found = buy_or_make_at_the_shop(&stock("currency = \"EUR\"\n"), ASKED).unwrap();
        assert!(found.is_rate_assumed);
        assert!(found.words().contains("nobody wrote"), "{}", found.words());
    }

    #[test]
    fn what_cannot_be_reckoned_with_is_refused() {
        let good = stock("currency = \"EUR\"\n");
        for price in [f64::NAN, f64::INFINITY, -1.0, 1e7] {
            let asked = BuyOrMakeAsked { price, ..ASKED };
            assert!(matches!(
                buy_or_make_at_the_shop(&good, asked),
                Err(BuyOrMakeError::NoNumber {
                    what: "the price",
                    ..
                })
            ));
        }
        assert_eq!(
            buy_or_make_at_the_shop(&stock(""), ASKED),
            Err(BuyOrMakeError::NoCurrency)
        );
    }
}
