//! Quantities beyond length and angle, each with its unit in the names of its functions.

macro_rules! unit {
    ($(#[$doc:meta])* $name:ident, $from:ident, $to:ident, $unit:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            #[doc = concat!("From ", $unit, ".")]
            #[must_use]
            pub const fn $from(value: f64) -> Self {
                Self(value)
            }

            #[doc = concat!("In ", $unit, ".")]
            #[must_use]
            pub const fn $to(self) -> f64 {
                self.0
            }
        }
    };
}

unit!(
    /// A mass.
    Mass, from_kg, kg, "kilograms"
);
unit!(
    /// A volume.
    Volume, from_litres, litres, "litres"
);
unit!(
    /// A volume flow.
    VolumeFlow, from_litres_per_minute, litres_per_minute, "litres per minute"
);
unit!(
    /// A difference of temperature.
    TemperatureDifference, from_kelvin, kelvin, "kelvins"
);
unit!(
    /// An absolute temperature.
    Temperature, from_kelvin, kelvin, "kelvins above absolute zero"
);
unit!(
    /// A power.
    Power, from_kw, kw, "kilowatts"
);
unit!(
    /// A torque.
    Torque, from_nm, nm, "newton metres"
);
unit!(
    /// A speed along the road.
    Speed, from_km_per_hour, km_per_hour, "kilometres per hour"
);
unit!(
    /// A speed of rotation.
    RotationSpeed, from_rev_per_minute, rev_per_minute, "revolutions per minute"
);
unit!(
    /// A span of time.
    Duration, from_minutes, minutes, "minutes"
);
unit!(
    /// A density.
    Density, from_kg_per_m3, kg_per_m3, "kilograms per cubic metre"
);
unit!(
    /// A share: 0.19 for 19 %.
    Share, from_fraction, fraction, "parts of one"
);

/// A pressure that says what it is measured from.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub enum Pressure {
    /// Above absolute vacuum, in kPa.
    Absolute(f64),
    /// Above the air around, in kPa.
    Gauge(f64),
}

impl Pressure {
    /// In kPa above vacuum, given the pressure of the air around in kPa.
    #[must_use]
    pub fn absolute_kpa(self, ambient_kpa: f64) -> f64 {
        match self {
            Self::Absolute(kpa) => kpa,
            Self::Gauge(kpa) => kpa + ambient_kpa,
        }
    }
}

/// A currency by its three letters (ISO 4217).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Currency([u8; 3]);

impl Currency {
    /// No currency (ISO 4217 code XXX): for figures of time alone where no price is named.
    pub const NONE: Self = Self(*b"XXX");

    /// From three capital letters; `None` for anything else.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Self> {
        let bytes: [u8; 3] = code.as_bytes().try_into().ok()?;
        bytes
            .iter()
            .all(u8::is_ascii_uppercase)
            .then_some(Self(bytes))
    }

    /// The three letters.
    #[must_use]
    pub fn code(&self) -> &str {
        core::str::from_utf8(&self.0).unwrap_or("XXX")
    }

    /// Digits after the decimal point: 0 for the yen and its like, else 2 (ISO 4217; the few with 3
    /// are refused when read).
    #[must_use]
    pub fn minor_digits(&self) -> u32 {
        match self.code() {
            "JPY" | "KRW" | "VND" | "CLP" | "ISK" | "XAF" | "XOF" => 0,
            _ => 2,
        }
    }
}

/// An amount of money in whole minor units (cents), with its currency.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Money {
    /// Whole cents (or the currency's own smallest unit).
    pub minor: i64,
    /// The currency.
    pub currency: Currency,
}

impl Money {
    /// In major units, for solvers; sums of money are made in [`Money::minor`].
    #[must_use]
    pub fn major(self) -> f64 {
        #[expect(
            clippy::cast_precision_loss,
            reason = "amounts are bounded to 1e12 minor units when read, far below 2^53"
        )]
        let minor = self.minor as f64;
        if self.currency.minor_digits() == 0 {
            minor
        } else {
            minor / 100.0
        }
    }
}

/// Money per something.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rate {
    /// Money in major units per one unit.
    pub major_per_unit: f64,
    /// The currency.
    pub currency: Currency,
    /// Per what.
    pub per: Per,
}

/// What a [`Rate`] is paid for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Per {
    /// Per hour of work.
    Hour,
    /// Per millimetre.
    Millimetre,
    /// Per metre.
    Metre,
    /// Per degree.
    Degree,
    /// Per kilogram.
    Kilogram,
    /// Per piece.
    Piece,
}

impl Per {
    /// As written after the stroke: `h` of `EUR/h`.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Hour => "h",
            Self::Millimetre => "mm",
            Self::Metre => "m",
            Self::Degree => "deg",
            Self::Kilogram => "kg",
            Self::Piece => "piece",
        }
    }
}
