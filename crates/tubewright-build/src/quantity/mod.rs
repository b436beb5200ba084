//! Quantities as the shop writes them, with the text as typed kept beside the value.

mod units;

pub use units::{
    Currency, Density, Duration, Mass, Money, Per, Power, Pressure, Rate, RotationSpeed, Share,
    Speed, Temperature, TemperatureDifference, Torque, Volume, VolumeFlow,
};

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
