//! Tubes, turns and directions as the shop reads them.

pub(super) use crate::lengths::fixed;

use crate::lengths::{Lengths, trimmed};
use tubewright_geometry::{Length, math};
use tubewright_stock::{StockPiece, StockShape, TubeSpec};

impl Lengths {
    /// A tube: `Ø57 × 1.5, 304`.
    #[must_use]
    pub fn tube(self, tube: &TubeSpec) -> String {
        format!(
            "Ø{} × {} {}, {}",
            self.size(tube.od.mm()),
            self.size(tube.wall.mm()),
            self.sign(),
            tube.material
        )
    }

    /// The shape of a stock item in words.
    #[must_use]
    pub fn stock(self, stock: &StockPiece) -> String {
        let legs = |length: Length| self.saw(length.mm());
        match stock.shape {
            StockShape::Straight { length } => {
                format!("straight, {} {} long", self.saw(length.mm()), self.sign())
            }
            StockShape::Bend {
                angle,
                clr,
                leg_a,
                leg_b,
            } => format!(
                "bend {}°, centre-line radius {}, leg A {}, leg B {} {}",
                degrees(angle.deg()),
                self.size(clr.mm()),
                legs(leg_a),
                legs(leg_b),
                self.sign()
            ),
        }
    }
}

/// Words as they are on paper, whose reader never sees the files: what a file calls a thing stands in brackets and
/// backticks elsewhere, and is left out here.
pub(super) fn on_paper(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((before, from)) = rest.split_once(" (`") {
        let Some((_, after)) = from.split_once(')') else {
            break;
        };
        out.push_str(before);
        rest = after;
    }
    out.push_str(rest);
    out
}

/// Degrees without needless decimals.
pub(super) fn degrees(deg: f64) -> String {
    trimmed(&fixed(deg, 1))
}

/// Degrees with their sign: a rotation.
pub(super) fn signed_degrees(deg: f64) -> String {
    let text = degrees(deg);
    if deg > 0.0 && text != "0" {
        format!("+{text}")
    } else {
        text
    }
}

/// Which way something points in the car, as a fitter would say it: `up and left`. A way counts when
/// it is within about 68° of the direction.
pub(super) fn toward_words([x, y, z]: [f64; 3]) -> String {
    const COUNTS: f64 = 0.38;
    let mut ways: Vec<(f64, &str)> = [
        (z, "up", "down"),
        (y, "right", "left"),
        (x, "rearwards", "forwards"),
    ]
    .into_iter()
    .filter(|(share, ..)| share.abs() > COUNTS)
    .map(|(share, plus, minus)| (share.abs(), if share > 0.0 { plus } else { minus }))
    .collect();
    ways.sort_by(|a, b| b.0.total_cmp(&a.0));
    ways.truncate(2);
    ways.into_iter()
        .map(|(_, way)| way)
        .collect::<Vec<_>>()
        .join(" and ")
}

/// The side of a tube that faces so, as a fitter would say it: `top`, `left side`, `upper left`.
pub(super) fn side_words(out: [f64; 3]) -> String {
    let ways = toward_words(out);
    let side = |way: &str| match way {
        "forwards" => "front",
        "rearwards" => "rear",
        "left" => "left",
        _ => "right",
    };
    match ways.split_once(" and ") {
        None => match ways.as_str() {
            "up" => "top".to_owned(),
            "down" => "underside".to_owned(),
            way => format!("{} side", side(way)),
        },
        Some((a, b)) => {
            let high = |way: &str| match way {
                "up" => Some("upper"),
                "down" => Some("lower"),
                _ => None,
            };
            match (high(a), high(b)) {
                (Some(high), _) => format!("{high} {}", side(b)),
                (_, Some(high)) => format!("{high} {}", side(a)),
                _ => format!("{} {}", side(a), side(b)),
            }
        }
    }
}

/// A direction as a fitter would say it: so many degrees below level, so many to the right.
pub(super) fn direction_words([x, y, z]: [f64; 3]) -> String {
    let level = (x * x + y * y).sqrt();
    let pitch = math::atan2(z, level).to_degrees();
    let tilt = if pitch.abs() < 0.5 {
        "level".to_owned()
    } else if pitch > 0.0 {
        format!("{pitch:.0}° up")
    } else {
        format!("{:.0}° down", -pitch)
    };
    let mut aim = math::atan2(y, x).to_degrees();
    if level < 0.02 {
        return format!("straight {}", if z > 0.0 { "up" } else { "down" });
    }
    if (aim.abs() - 90.0).abs() < 3.0 {
        let side = if y > 0.0 { "right" } else { "left" };
        return format!("straight to the car's {side}, {tilt}");
    }
    let base = if aim.abs() <= 90.0 {
        "rearwards"
    } else {
        aim = 180.0_f64.copysign(aim) - aim;
        "forwards"
    };
    // Toward the car's right is positive whichever way it points.
    let side = if aim.abs() < 0.5 {
        String::new()
    } else {
        format!(
            ", {:.0}° to the car's {}",
            aim.abs(),
            if y > 0.0 { "right" } else { "left" }
        )
    };
    format!("{base}, {tilt}{side}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bend_turns_the_way_that_a_fitter_sees() {
        assert_eq!(toward_words([0.0, 0.0, 1.0]), "up");
        assert_eq!(toward_words([0.0, -0.6, 0.8]), "up and left");
        assert_eq!(toward_words([0.1, 0.9, -0.42]), "right and down");
    }

    #[test]
    fn a_side_of_a_tube_has_a_name_of_its_own() {
        let lean = core::f64::consts::FRAC_1_SQRT_2;
        for (out, name) in [
            ([0.0, 0.0, 1.0], "top"),
            ([0.0, 0.0, -1.0], "underside"),
            ([0.1, -0.99, 0.0], "left side"),
            ([0.0, lean, lean], "upper right"),
            ([0.1, -lean, -lean], "lower left"),
            ([lean, 0.0, lean], "upper rear"),
            ([-lean, lean, 0.0], "front right"),
        ] {
            let said = side_words(out);
            let mut words: Vec<&str> = said.split(' ').collect();
            let mut wanted: Vec<&str> = name.split(' ').collect();
            words.sort_unstable();
            wanted.sort_unstable();
            assert_eq!(words, wanted, "{out:?}");
        }
    }

    #[test]
    fn a_travel_is_told_from_the_rear_or_the_front_and_square_to_them_from_neither() {
        assert_eq!(direction_words([1.0, 0.0, 0.0]), "rearwards, level");
        assert_eq!(
            direction_words([0.5, 0.866, 0.0]),
            "rearwards, level, 60° to the car's right"
        );
        assert_eq!(
            direction_words([-0.5, -0.866, 0.0]),
            "forwards, level, 60° to the car's left"
        );
        assert_eq!(
            direction_words([0.002, 0.966, -0.259]),
            "straight to the car's right, 15° down"
        );
        assert_eq!(direction_words([0.0, 0.0, -1.0]), "straight down");
    }

    #[test]
    fn what_a_file_calls_a_thing_is_not_on_paper() {
        assert_eq!(
            on_paper("weigh it and write it down (`mass`); say how far (`no-tip`)."),
            "weigh it and write it down; say how far."
        );
        assert_eq!(
            on_paper("a bar (12 mm) and (`half"),
            "a bar (12 mm) and (`half"
        );
    }

    #[test]
    fn a_turn_has_its_sign_and_nought_has_none() {
        assert_eq!(signed_degrees(0.01), "0");
        assert_eq!(signed_degrees(-46.0), "-46");
    }
}
