//! Gauge numbers. The word "gauge" alone is ambiguous: a wall is kept in millimetres and the system is
//! printed whenever a gauge is.

use crate::quantity::Length;

/// Whose gauge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum GaugeSystem {
    /// Birmingham wire gauge: stainless tube is sold by it.
    Birmingham,
    /// United States standard gauge for sheet and plate (15 U.S. Code 206).
    UsStandardSheet,
    /// Manufacturers' Standard Gage for carbon steel sheet.
    ManufacturersStandard,
}

/// One thing that a gauge number may mean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GaugeMeaning {
    /// Whose gauge.
    pub system: GaugeSystem,
    /// The wall.
    pub wall: Length,
}

impl GaugeSystem {
    /// Every system known here.
    pub const ALL: [Self; 3] = [
        Self::Birmingham,
        Self::UsStandardSheet,
        Self::ManufacturersStandard,
    ];

    /// Gauge numbers and walls in inches.
    const fn table(self) -> &'static [(u8, f64)] {
        match self {
            // As printed in "Theoretical bursting pressures", a tube maker's table.
            Self::Birmingham => &[
                (10, 0.134),
                (11, 0.120),
                (12, 0.109),
                (13, 0.095),
                (14, 0.083),
                (16, 0.065),
                (18, 0.049),
                (20, 0.035),
                (22, 0.028),
                (24, 0.022),
            ],
            // 16 gauge = 1/16 in, 18 gauge = 1/20 in: 15 U.S. Code 206.
            Self::UsStandardSheet => &[(16, 0.0625), (18, 0.05)],
            // 41.82 lb/ft² per inch; as reprinted in sheet-gauge charts.
            Self::ManufacturersStandard => &[(16, 0.0598), (18, 0.0478)],
        }
    }
}

/// Wall of a gauge number in one system; `None` when the table has no such number.
#[must_use]
pub fn gauge_wall(system: GaugeSystem, gauge: u8) -> Option<Length> {
    system
        .table()
        .iter()
        .find(|(number, _)| *number == gauge)
        .map(|&(_, inches)| Length::from_inches(inches))
}

/// Everything that a bare gauge number may mean, to be asked back.
#[must_use]
pub fn meanings_of_gauge(gauge: u8) -> Vec<GaugeMeaning> {
    GaugeSystem::ALL
        .into_iter()
        .filter_map(|system| gauge_wall(system, gauge).map(|wall| GaugeMeaning { system, wall }))
        .collect()
}
