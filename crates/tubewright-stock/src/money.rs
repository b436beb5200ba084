//! Money in whole minor units with its currency: sums are exact and never mix currencies.

use core::fmt;

/// Three letters of ISO 4217.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Currency([u8; 3]);

impl Currency {
    /// From its three letters, upper case; `None` for anything else.
    ///
    /// ```
    /// use tubewright_stock::Currency;
    /// assert!(Currency::new("EUR").is_some());
    /// assert!(Currency::new("euro").is_none());
    /// ```
    #[must_use]
    pub fn new(code: &str) -> Option<Self> {
        let letters: [u8; 3] = code.as_bytes().try_into().ok()?;
        letters
            .iter()
            .all(u8::is_ascii_uppercase)
            .then_some(Self(letters))
    }

    /// The three letters.
    #[must_use]
    pub fn code(&self) -> &str {
        core::str::from_utf8(&self.0).unwrap_or("???")
    }
}

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

/// An amount in minor units (cents). Two decimals are assumed in print; currencies without them
/// only print two zeros too many.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Money {
    /// Minor units.
    pub minor: i64,
    /// Currency.
    pub currency: Currency,
}

impl Money {
    /// An amount.
    #[must_use]
    pub const fn new(minor: i64, currency: Currency) -> Self {
        Self { minor, currency }
    }

    /// The amount in major units (euros), for comparing with rates.
    #[must_use]
    #[expect(
        clippy::cast_precision_loss,
        reason = "a buying list stays far below 2^53 cents"
    )]
    pub const fn major(&self) -> f64 {
        self.minor as f64 / 100.0
    }

    /// A difference in words: *12.40 EUR more*, and *0.85 EUR less* for one below zero.
    ///
    /// ```
    /// use tubewright_stock::{Currency, Money};
    /// let euro = Currency::new("EUR").unwrap();
    /// assert_eq!(Money::new(1240, euro).more_or_less(), "12.40 EUR more");
    /// assert_eq!(Money::new(-85, euro).more_or_less(), "0.85 EUR less");
    /// ```
    #[must_use]
    pub fn more_or_less(self) -> String {
        let amount = Self::new(self.minor.saturating_abs(), self.currency);
        let word = if self.minor < 0 { "less" } else { "more" };
        format!("{amount} {word}")
    }
}

impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.minor < 0 { "-" } else { "" };
        let (whole, cents) = (
            self.minor.unsigned_abs() / 100,
            self.minor.unsigned_abs() % 100,
        );
        write!(f, "{sign}{whole}.{cents:02} {}", self.currency)
    }
}
