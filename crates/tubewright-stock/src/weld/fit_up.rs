//! Gap and step.

use tubewright_geometry::Length;

/// Quality level of ISO 5817.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum QualityLevel {
    /// Moderate.
    D,
    /// Intermediate.
    C,
    /// Stringent.
    B,
}

/// Largest step between two tubes at a circumferential weld: half the wall, at most 4, 3 or 2 mm
/// (ISO 5817:2014 table 1 no. 3.1, reference 5072; from memory).
#[must_use]
pub fn misalignment_limit(wall: Length, level: QualityLevel) -> Length {
    let most_mm = match level {
        QualityLevel::D => 4.0,
        QualityLevel::C => 3.0,
        QualityLevel::B => 2.0,
    };
    (wall * 0.5).min(Length::from_mm(most_mm))
}

/// Limits of a thin butt joint before tacking.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FitUpLimits {
    /// Gap to aim for.
    pub gap_aim: Length,
    /// Gap beyond which the joint is made again: half the wall (common practice, no source).
    pub gap_most: Length,
    /// Step: half the wall ([`misalignment_limit`]).
    pub step_most: Length,
}

/// Limits for a wall.
#[must_use]
pub fn fit_up_limits(wall: Length) -> FitUpLimits {
    FitUpLimits {
        gap_aim: Length::ZERO,
        gap_most: wall * 0.5,
        step_most: misalignment_limit(wall, QualityLevel::D),
    }
}

/// Largest step when two tubes at the limits of their tolerances meet, centred.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WallStep {
    /// Outside: half the sum of the two tolerances of diameter.
    pub outer: Length,
    /// Inside: that and both tolerances of the wall.
    pub inner: Length,
}

/// Step of two equal tubes with these tolerances (plus or minus; worst case).
#[must_use]
pub fn wall_step(od_tolerance: Length, wall_tolerance: Length) -> WallStep {
    WallStep {
        outer: od_tolerance,
        inner: od_tolerance + wall_tolerance * 2.0,
    }
}
