//! A doubtful reading in one sentence.

use super::{Doubtful, Explanation, SlipKind, TapeEnd};
use crate::network::{Network, Reading, TapeScale};
use tubewright_geometry::math::PI;

/// An explanation this much less likely than the first is still said.
const WORTH_SAYING: f64 = 0.25;

impl Doubtful {
    /// `reading 14, rail left to port 1: 812 was probably 712 (100 mm misread)`. Names come from the
    /// network that was adjusted.
    #[must_use]
    pub fn sentence(&self, network: &Network) -> String {
        let Some(reading) = network.reading(self.number) else {
            return format!("reading {}", self.number);
        };
        let head = format!(
            "reading {}, {}: {}",
            self.number,
            network.reading_name(&reading.kind),
            shown(reading, reading.value)
        );
        let Some(first) = self.explanations.first() else {
            let say = shown(reading, self.others_say.value);
            return format!("{head} does not fit, the other readings say {say}");
        };
        let said: Vec<String> = self
            .explanations
            .iter()
            .filter(|e| e.probability >= WORTH_SAYING * first.probability)
            .take(3)
            .map(|e| one(network, reading, e))
            .collect();
        let likely = if self.probable().is_some() {
            "probably"
        } else {
            "perhaps"
        };
        format!("{head} was {likely} {}", said.join(", or "))
    }
}

fn one(network: &Network, reading: &Reading, explanation: &Explanation) -> String {
    if let Some(SlipKind::WrongMark { at, instead }) = explanation.kinds.first() {
        let end = match at {
            TapeEnd::From => "from",
            TapeEnd::To => "to",
        };
        return format!("taken {end} {}", network.target_name(*instead));
    }
    if let Some(SlipKind::WrongSetup { instead }) = explanation.kinds.first() {
        let setup = network
            .setups
            .get(instead.0)
            .map_or("?", |s| s.name.as_str());
        return format!("taken {setup}");
    }
    let mut kinds: Vec<String> = explanation.kinds.iter().map(|k| words(*k)).collect();
    kinds.dedup();
    format!(
        "{} ({})",
        shown(reading, explanation.value),
        kinds.join(" or ")
    )
}

fn words(kind: SlipKind) -> String {
    match kind {
        SlipKind::BurntNotTakenOff { by_mm } => {
            format!("tape held at {}, not taken off", length(by_mm))
        }
        SlipKind::BurntTakenOffTwice { by_mm } => {
            format!(
                "{} taken off, though the tape was held at nought",
                length(by_mm)
            )
        }
        SlipKind::Misread { by_mm } => format!("{} misread", length(by_mm.abs())),
        SlipKind::SwappedDigits => "digits exchanged".to_owned(),
        SlipKind::WrongDigit => "one digit wrong".to_owned(),
        SlipKind::WrongMark { .. } => "another mark".to_owned(),
        SlipKind::WrongSetup { .. } => "another set-up".to_owned(),
        SlipKind::WrongSide => "near side for far side".to_owned(),
        SlipKind::MiddleForSide => "middle for side".to_owned(),
        SlipKind::WrongSign => "sign exchanged".to_owned(),
        SlipKind::FromPlumb => "read from plumb instead of level".to_owned(),
    }
}

fn length(mm: f64) -> String {
    let inches = mm / 25.4;
    if (mm - 304.8).abs() < 1e-6 {
        "a foot".to_owned()
    } else if (inches - 1.0).abs() < 1e-6 {
        "an inch".to_owned()
    } else if (inches * 8.0 - (inches * 8.0).round()).abs() < 1e-6 {
        format!("{inches} in")
    } else {
        format!("{mm} mm")
    }
}

/// A value as the person would write it.
fn shown(reading: &Reading, value: f64) -> String {
    if reading.kind.is_angle() {
        return format!("{}°", (value * 180.0 / PI * 10.0).round() / 10.0);
    }
    shown_length(value, reading.scale)
}

/// A length as a person would write it from a tape of this scale, without the unit for millimetres;
/// inches to the nearest sixteenth.
#[must_use]
pub fn shown_length(value: f64, scale: TapeScale) -> String {
    match scale {
        TapeScale::Millimetres => format!("{}", (value * 10.0).round() / 10.0),
        TapeScale::Inches => {
            let rounded = (value / 25.4 * 16.0).round();
            // A length that is lower or behind is a minus before the figure as it stands on the tape.
            let sign = if rounded < 0.0 { "-" } else { "" };
            let sixteenths = rounded.abs();
            let whole = (sixteenths / 16.0).floor();
            let (mut over, mut under) = (sixteenths - 16.0 * whole, 16.0);
            while over > 0.0 && over % 2.0 == 0.0 {
                over /= 2.0;
                under /= 2.0;
            }
            match (whole > 0.0, over > 0.0) {
                (true, true) => format!("{sign}{whole}-{over}/{under} in"),
                (false, true) => format!("{sign}{over}/{under} in"),
                _ => format!("{sign}{whole} in"),
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inches_below_nought_have_a_minus_and_the_figures_of_the_tape() {
        for (inches, words) in [
            (-2.375, "-2-3/8 in"),
            (2.375, "2-3/8 in"),
            (-0.0625, "-1/16 in"),
            (-3.0, "-3 in"),
            (-0.01, "0 in"),
            (0.0, "0 in"),
        ] {
            assert_eq!(shown_length(inches * 25.4, TapeScale::Inches), words);
        }
        assert_eq!(shown_length(-601.0, TapeScale::Millimetres), "-601");
    }
}
