//! Quantities as the shop writes them, with the text as typed kept beside the value.

mod angle;
mod error;
mod gauge;
mod kind;
mod length;
mod marking;
mod money;
mod physical;
mod ratio;
mod scan;
mod simple;
mod unit_table;
mod units;
mod write;

pub use angle::{parse_angle, parse_clock};
pub use error::QuantityError;
pub use gauge::GaugeSystem;
pub(crate) use kind::Kind;
pub use length::{parse_file_unit, parse_length};
pub use marking::{DashSize, Thread, ThreadForm, parse_dash_size, parse_thread, parse_tyre};
pub use money::{parse_money, parse_rate};
pub use physical::{parse_pressure, parse_temperature, parse_temperature_difference};
pub use units::{
    Currency, Density, Duration, Mass, Money, Per, Power, Pressure, Rate, RotationSpeed, Share,
    Speed, Temperature, TemperatureDifference, Torque, Volume, VolumeFlow,
};
pub use write::{write_deg, write_inches, write_mm};

use crate::span::Span;
use core::ops::Deref;

/// A value with the words it was written in.
///
/// Two quantities are equal when their values are: `812 mm` equals `81.2 cm`.
#[derive(Clone, Debug)]
pub struct Quantity<T> {
    /// The value.
    pub value: T,
    /// As typed.
    pub text: String,
    /// Where it was typed.
    pub span: Span,
}

impl<T> Quantity<T> {
    /// A value made by a program, with the words to show for it.
    pub fn new(value: T, text: impl Into<String>) -> Self {
        Self {
            value,
            text: text.into(),
            span: Span::none(),
        }
    }
}

impl<T: PartialEq> PartialEq for Quantity<T> {
    fn eq(&self, other: &Self) -> bool {
        self.value == other.value
    }
}

impl<T> Deref for Quantity<T> {
    type Target = T;
    fn deref(&self) -> &T {
        &self.value
    }
}

/// A place round a tube as a clock angle: clockwise from twelve, looking downstream.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Clock(tubewright_geometry::Angle);

impl Clock {
    /// From an angle clockwise from twelve, looking downstream.
    #[must_use]
    pub const fn from_angle(angle: tubewright_geometry::Angle) -> Self {
        Self(angle)
    }

    /// The angle clockwise from twelve, looking downstream.
    #[must_use]
    pub const fn angle(self) -> tubewright_geometry::Angle {
        self.0
    }
}

/// A tyre's size as marked on its wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TyreSize {
    /// Section width.
    pub width: tubewright_geometry::Length,
    /// Outer diameter: rim diameter and twice the width times the aspect ratio.
    pub diameter: tubewright_geometry::Length,
    /// Rim diameter.
    pub rim: tubewright_geometry::Length,
}

macro_rules! parse_simple {
    ($(#[$doc:meta])* $parse:ident, $type:ident, $from:ident, $table:ident) => {
        $(#[$doc])*
        ///
        /// # Errors
        /// A [`QuantityError`] that says what was read, why it cannot stand and what to type.
        pub fn $parse(text: &str) -> Result<$type, QuantityError> {
            simple::$table.parse(text).map($type::$from)
        }
    };
}

parse_simple!(
    /// Reads a mass: `2.6 kg`, `350 g`, `5 lb 4 oz`.
    parse_mass, Mass, from_kg, MASS
);
parse_simple!(
    /// Reads a volume: `2.5 l`, `1998 cc`, `3 gal US`.
    parse_volume, Volume, from_litres, VOLUME
);
parse_simple!(
    /// Reads a volume flow: `12 l/min`.
    parse_flow, VolumeFlow, from_litres_per_minute, FLOW
);
parse_simple!(
    /// Reads a power: `125 kW`, `170 PS`, `200 hp mech`.
    parse_power, Power, from_kw, POWER
);
parse_simple!(
    /// Reads a torque: `210 Nm`, `155 lbf ft`.
    parse_torque, Torque, from_nm, TORQUE
);
parse_simple!(
    /// Reads a road speed: `100 km/h`, `60 mph`.
    parse_speed, Speed, from_km_per_hour, SPEED
);
parse_simple!(
    /// Reads a speed of rotation: `6500 rev/min`.
    parse_rotation_speed, RotationSpeed, from_rev_per_minute, ROTATION
);
parse_simple!(
    /// Reads a time: `14 min`, `1 h 20 min`.
    parse_duration, Duration, from_minutes, DURATION
);
parse_simple!(
    /// Reads a density: `7900 kg/m3`.
    parse_density, Density, from_kg_per_m3, DENSITY
);
parse_simple!(
    /// Reads a percentage: `19 %`.
    parse_share, Share, from_fraction, SHARE
);
