//! Wall thickness by gauge number. The number means nothing without its system.

use super::error::QuantityError;

/// First gauge number of every list below.
const FIRST: usize = 7;

/// Birmingham gauge, ten-thousandths of an inch, gauges 7 to 26. Source: Birmingham wire gauge as
/// printed in tube makers' lists for 10–14, 16, 18, 20, 22, 24; the others from memory.
const BWG: [i128; 20] = [
    1800, 1650, 1480, 1340, 1200, 1090, 950, 830, 720, 650, 580, 490, 420, 350, 320, 280, 250, 220,
    200, 180,
];

/// Sheet by weight, in sixteenths of a pound (ounces) per square foot, gauges 7 to 26: 15 U.S. Code
/// 206 (16 ga = 40 oz, 1/16 in). The statute's thickness is weight divided by 640 oz/ft² per inch.
const SHEET_OUNCES: [i128; 20] = [
    120, 110, 100, 90, 80, 70, 60, 50, 45, 40, 36, 32, 28, 24, 22, 20, 18, 16, 14, 12,
];

/// Manufacturers' Standard Gage for carbon steel sheet, ten-thousandths of an inch, gauges 7 to 26:
/// the weights above divided by 41.82 lb/ft² per inch, rounded to four digits.
const MANUFACTURERS: [i128; 20] = [
    1793, 1644, 1495, 1345, 1196, 1046, 897, 747, 673, 598, 538, 478, 418, 359, 329, 299, 269, 239,
    209, 179,
];

/// Imperial standard wire gauge, thousandths of an inch, gauges 7 to 26: how British tube is sold.
/// BS 3737, from memory.
const IMPERIAL: [i128; 20] = [
    176, 160, 144, 128, 116, 104, 92, 80, 72, 64, 56, 48, 40, 36, 32, 28, 24, 22, 20, 18,
];

/// A system of gauge numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GaugeSystem {
    /// Birmingham: stainless tube.
    Birmingham,
    /// US standard gauge for sheet, by statute.
    UsStandard,
    /// Manufacturers' Standard Gage for carbon steel sheet.
    Manufacturers,
    /// Imperial standard wire gauge: British tube and sheet.
    Imperial,
}

impl GaugeSystem {
    /// All of them.
    pub const ALL: [Self; 4] = [
        Self::Birmingham,
        Self::UsStandard,
        Self::Manufacturers,
        Self::Imperial,
    ];

    /// As written after the number.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Birmingham => "BWG",
            Self::UsStandard => "USG",
            Self::Manufacturers => "MSG",
            Self::Imperial => "SWG",
        }
    }

    /// Thickness as a fraction of an inch (upper number, lower number), for gauges 7 to 26.
    #[must_use]
    pub fn thickness_in(self, gauge: u32) -> Option<(i128, i128)> {
        let at = usize::try_from(gauge).ok()?.checked_sub(FIRST)?;
        match self {
            Self::Birmingham => BWG.get(at).map(|&t| (t, 10_000)),
            Self::UsStandard => SHEET_OUNCES.get(at).map(|&t| (t, 640)),
            Self::Manufacturers => MANUFACTURERS.get(at).map(|&t| (t, 10_000)),
            Self::Imperial => IMPERIAL.get(at).map(|&t| (t, 1_000)),
        }
    }
}

/// Reads what follows `16 ga`: the fraction of an inch.
pub(crate) fn thickness_of(
    gauge: i128,
    system: &str,
    typed: &str,
) -> Result<(i128, i128), QuantityError> {
    let form = |why: String| QuantityError::Form {
        text: format!("{typed} ga {system}").trim().to_owned(),
        kind: "gauge",
        why,
        example: "16 ga BWG",
    };
    let number = u32::try_from(gauge).unwrap_or(0);
    if system.is_empty() {
        let mm = |system: GaugeSystem| {
            system.thickness_in(number).map_or_else(
                || "nothing".to_owned(),
                |(num, den)| {
                    #[expect(clippy::cast_precision_loss, reason = "small table numbers")]
                    let mm = num as f64 / den as f64 * 25.4;
                    format!("{mm:.2} mm")
                },
            )
        };
        return Err(QuantityError::Ambiguous {
            unit: format!("{typed} ga"),
            meanings: format!(
                "{typed} gauge is {} as Birmingham (tube), {} as imperial standard (British), {} as \
                 US standard sheet and {} as manufacturers' standard sheet",
                mm(GaugeSystem::Birmingham),
                mm(GaugeSystem::Imperial),
                mm(GaugeSystem::UsStandard),
                mm(GaugeSystem::Manufacturers),
            ),
            type_this: format!(
                "write \"{typed} ga BWG\", \"{typed} ga SWG\", \"{typed} ga USG\" or \
                 \"{typed} ga MSG\", or the wall in mm"
            ),
        });
    }
    let system = GaugeSystem::ALL
        .into_iter()
        .find(|known| known.word().eq_ignore_ascii_case(system))
        .ok_or_else(|| form(format!("`{system}` is none of BWG, SWG, USG, MSG")))?;
    system
        .thickness_in(number)
        .ok_or_else(|| form("gauges 7 to 26 are known".to_owned()))
}
