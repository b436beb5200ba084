//! The kinds of quantity that a key of a file can ask for.

use super::error::QuantityError;
use super::{
    Per, angle, length, marking, money, parse_density, parse_duration, parse_mass, parse_power,
    parse_rotation_speed, parse_share, parse_volume,
};

/// What a key of a file asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    /// A length of either sign.
    Length,
    /// A length above zero.
    Size,
    /// A length of zero or more.
    Extent,
    /// An angle of either sign.
    Angle,
    /// An angle above zero.
    Turn,
    /// An angle of zero or more.
    Tolerance,
    /// A unit of length alone, or a length above zero.
    FileUnit,
    Clock,
    Mass,
    Volume,
    Power,
    RotationSpeed,
    Duration,
    Density,
    Share,
    Money,
    Rate {
        per: Per,
        per_in_key: bool,
    },
    Tyre,
}

const NUMBER: &str = r"(\d+[-‑– ]\s*\d+/(2|4|8|16|32|64)|\d+/(2|4|8|16|32|64)|\d+\s*[½¼¾⅛⅜⅝⅞]|[½¼¾⅛⅜⅝⅞]|\d+(\.\d*)?|\.\d+)";

impl Kind {
    /// Whether the text is such a quantity.
    pub(crate) fn check(self, text: &str) -> Result<(), QuantityError> {
        match self {
            Self::Length => length::parse_length(text).map(drop),
            Self::Size => above_zero(text, length::parse_length(text)?.mm(), "a size"),
            Self::Extent => not_below_zero(text, length::parse_length(text)?.mm(), "a length"),
            Self::Angle => angle::parse_angle(text).map(drop),
            Self::Turn => above_zero(text, angle::parse_angle(text)?.rad(), "an angle here"),
            Self::Tolerance => {
                not_below_zero(text, angle::parse_angle(text)?.rad(), "an angle here")
            }
            Self::FileUnit => above_zero(text, length::parse_file_unit(text)?.mm(), "a size"),
            Self::Clock => angle::parse_clock(text).map(drop),
            Self::Mass => parse_mass(text).map(drop),
            Self::Volume => parse_volume(text).map(drop),
            Self::Power => parse_power(text).map(drop),
            Self::RotationSpeed => parse_rotation_speed(text).map(drop),
            Self::Duration => parse_duration(text).map(drop),
            Self::Density => parse_density(text).map(drop),
            Self::Share => parse_share(text).map(drop),
            Self::Money => money::parse_money(text).map(drop),
            Self::Rate { per, per_in_key } => money::parse_rate(text, per, per_in_key).map(drop),
            Self::Tyre => marking::parse_tyre(text).map(drop),
        }
    }

    /// One that would do.
    pub(crate) const fn example(self) -> &'static str {
        match self {
            Self::Length | Self::Size | Self::Extent => "812 mm",
            Self::Angle | Self::Turn | Self::Tolerance => "15 deg",
            Self::FileUnit => "mm",
            Self::Clock => "4:30",
            Self::Mass => "2.6 kg",
            Self::Volume => "2.5 l",
            Self::Power => "125 kW",
            Self::RotationSpeed => "6500 rev/min",
            Self::Duration => "14 min",
            Self::Density => "7900 kg/m3",
            Self::Share => "19 %",
            Self::Money => "14.80 EUR",
            Self::Rate { per, .. } => match per {
                Per::Hour => "65 EUR/h",
                Per::Millimetre => "0.20 EUR/mm",
                Per::Metre => "4 EUR/m",
                Per::Degree => "0.05 EUR/deg",
                Per::Kilogram => "5 EUR/kg",
                Per::Piece => "2 EUR/piece",
            },
            Self::Tyre => "205/55 R16",
        }
    }

    /// A regular expression (ECMA 262) for editors. It accepts whatever [`Kind::check`] accepts and
    /// refuses wrong forms and units; ranges are left to the program.
    pub(crate) fn pattern(self) -> String {
        let n = NUMBER;
        match self {
            Self::Length | Self::Size | Self::Extent | Self::FileUnit => {
                let sign = if self == Self::Length {
                    "[-−+]?"
                } else {
                    r"\+?"
                };
                let inch = r#"([iI][nN]|[iI][nN][cC][hH]([eE][sS])?|''|"|″|”)"#;
                let foot = r"([fF][tT]|[fF][oO][oO][tT]|[fF][eE][eE][tT]|'|′|’)";
                let metric = r"([mM][mM]|[cC][mM]|[mM]|[mM]illimet(re|er)s|[mM]et(re|er)s?)";
                let gauge =
                    r"([gG][aA]([uU][gG][eE])?\s*)?([bBsS][wW][gG]|[uU][sS][gG]|[mM][sS][gG])";
                // A scan's unit may stand alone.
                let (open, close) = if self == Self::FileUnit {
                    ("(", ")?")
                } else {
                    ("", "")
                };
                format!(
                    r"^\s*{sign}\s*{open}{n}{close}\s*({metric}|{inch}|{gauge}|{foot}(\s*-?\s*{n}\s*{inch})?)\s*$"
                )
            }
            Self::Angle | Self::Turn | Self::Tolerance => {
                let sign = if self == Self::Angle {
                    "[-−+]?"
                } else {
                    r"\+?"
                };
                format!(r"^\s*{sign}\s*{}\s*$", angle_pattern())
            }
            Self::Clock => format!(
                r"^\s*((0?[1-9]|1[0-2]):[0-5]\d|[-−+]?\s*{})\s*$",
                angle_pattern()
            ),
            Self::Mass => {
                format!(r"^\s*\+?\s*({n}\s*([kK][gG]|[gG]|[tT]|[lL][bB][sS]?|[oO][zZ])\s*)+$")
            }
            Self::Volume => format!(
                r"^\s*\+?\s*{n}\s*([lL]|[lL]it(re|er)s?|[mM][lL]|[cC][cC]|[cC][cC]?[mM][3³]?|[mM][3³]|cu in|in[3³]|cui|gal (US|imp|UK)|(US|imp|UK) gal)\s*$"
            ),
            Self::Power => {
                format!(r"^\s*\+?\s*{n}\s*([kK]?[wW]|[pP][sS]|[cC][vV]|bhp|hp (mech|metric))\s*$")
            }
            Self::RotationSpeed => {
                format!(r"^\s*\+?\s*{n}\s*(rev/min|rpm|1/min|r/min|rev/s|1/s)\s*$")
            }
            Self::Duration => format!(r"^\s*\+?\s*({n}\s*(min|minutes?|h|hours?|s|sec)\s*)+$"),
            Self::Density => format!(r"^\s*\+?\s*{n}\s*(kg/m[3³]|g/cm[3³]|g/cc|kg/l)\s*$"),
            Self::Share => format!(r"^\s*[-−+]?\s*{n}\s*(%|percent|per cent)\s*$"),
            Self::Money => {
                format!(r"^\s*([-−+]?\s*{n}\s*([A-Z]{{3}}|€|£)|[€£]\s*[-−+]?\s*{n})\s*$")
            }
            Self::Rate { per, per_in_key } => {
                let per = per.word();
                let optional = if per_in_key { "?" } else { "" };
                format!(r"^\s*[-−+]?\s*{n}\s*([A-Z]{{3}}|€|£)\s*(/\s*{per}){optional}\s*$")
            }
            Self::Tyre => {
                r"^\s*[PLT]*\d{3}(\.\d+)?\s*/\s*\d{2,3}\s*[ZVHS]*[RBD-]\s*\d{1,2}(\.\d+)?.*$"
                    .to_owned()
            }
        }
    }
}

fn angle_pattern() -> String {
    let n = NUMBER;
    format!(
        r#"{n}\s*([rR][aA][dD]|([dD][eE][gG]([rR][eE][eE][sS]?)?|°)(\s*{n}\s*(min|'|′|’)(\s*{n}\s*(sec|s|''|"|″|”))?)?)"#
    )
}

fn above_zero(text: &str, value: f64, kind: &'static str) -> Result<(), QuantityError> {
    if value > 0.0 {
        return Ok(());
    }
    Err(sign(text, kind, "it must be more than zero"))
}

fn not_below_zero(text: &str, value: f64, kind: &'static str) -> Result<(), QuantityError> {
    if value >= 0.0 {
        return Ok(());
    }
    Err(sign(text, kind, "it cannot be less than zero"))
}

fn sign(text: &str, kind: &'static str, why: &str) -> QuantityError {
    QuantityError::Form {
        text: text.trim().to_owned(),
        kind: kind.split(' ').nth(1).unwrap_or(kind),
        why: why.to_owned(),
        example: if kind.starts_with("an angle") {
            "15 deg"
        } else {
            "60.3 mm"
        },
    }
}
