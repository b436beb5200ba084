use thiserror::Error;

/// Why a text is no quantity of the kind asked for.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
#[non_exhaustive]
pub enum QuantityError {
    /// Nothing was written.
    #[error("nothing is written where {kind} should stand")]
    Empty {
        /// What was expected.
        kind: &'static str,
    },
    /// A number without a unit.
    #[error("`{number}` has no unit")]
    BareNumber {
        /// The number.
        number: String,
        /// What was expected.
        kind: &'static str,
        /// The units that would do.
        units: &'static str,
    },
    /// A comma inside a number.
    #[error("`{number}` has a comma in it")]
    Comma {
        /// The number.
        number: String,
        /// The number with a point.
        with_point: String,
    },
    /// No number where one should stand.
    #[error("`{text}` does not start with a number")]
    NoNumber {
        /// The text.
        text: String,
        /// What was expected.
        kind: &'static str,
        /// One that would do.
        example: &'static str,
    },
    /// A fraction that no tape shows.
    #[error("`{fraction}` is no fraction of a tape")]
    Fraction {
        /// The fraction.
        fraction: String,
    },
    /// More digits than a shop needs.
    #[error("`{number}` has more digits than can be kept exactly")]
    TooLong {
        /// The number.
        number: String,
    },
    /// A unit of no kind or of another kind.
    #[error("`{unit}` is no unit of {kind}")]
    Unit {
        /// The unit.
        unit: String,
        /// What was expected.
        kind: &'static str,
        /// The units that would do.
        units: &'static str,
        /// The nearest of them.
        nearest: Option<&'static str>,
    },
    /// A unit with several meanings.
    #[error("`{unit}` has more than one meaning")]
    Ambiguous {
        /// The unit.
        unit: String,
        /// The meanings, as a sentence.
        meanings: String,
        /// What to type.
        type_this: String,
    },
    /// Outside what a car or a shop can hold.
    #[error("`{text}` is {side} than {limit}")]
    Range {
        /// The text.
        text: String,
        /// `more` or `less`.
        side: &'static str,
        /// The limit with its unit.
        limit: String,
        /// What was expected.
        kind: &'static str,
    },
    /// A form that is neither.
    #[error("`{text}` is no {kind}")]
    Form {
        /// The text.
        text: String,
        /// What was expected.
        kind: &'static str,
        /// Why, when it can be said.
        why: String,
        /// One that would do.
        example: &'static str,
    },
}

impl QuantityError {
    /// Why it cannot stand so.
    #[must_use]
    pub fn why(&self) -> String {
        match self {
            Self::Empty { kind, .. } => format!("{kind} is needed here"),
            Self::BareNumber { units, .. } => {
                format!("a number alone could be {units}: the unit is never guessed")
            }
            Self::Comma { .. } => {
                "a comma divides thousands in one shop and decimals in the next".to_owned()
            }
            Self::NoNumber { kind, .. } => format!("{kind} is a number and its unit"),
            Self::Fraction { .. } => {
                "a tape divides the inch by 2, 4, 8, 16, 32 or 64, and the upper number is the \
                 smaller"
                    .to_owned()
            }
            Self::TooLong { .. } => "fifteen digits in all are kept without loss".to_owned(),
            Self::Unit { kind, .. } => format!("{kind} is asked for here"),
            Self::Ambiguous { meanings, .. } => meanings.clone(),
            Self::Range { kind, .. } => {
                format!("no car and no shop has {kind} of that size; a digit or the unit is wrong")
            }
            Self::Form { why, .. } => why.clone(),
        }
    }

    /// What to type.
    #[must_use]
    pub fn do_this(&self) -> String {
        match self {
            Self::Empty { .. } => "write it with its unit, or remove the key".to_owned(),
            Self::BareNumber { number, units, .. } => {
                let first = units.split([',', ' ']).next().unwrap_or(units);
                format!("write the unit as well, such as \"{number} {first}\"")
            }
            Self::Comma { with_point, .. } => {
                format!(
                    "write decimals with a point, such as {with_point}, and thousands with nothing between"
                )
            }
            Self::NoNumber { example, .. } | Self::Form { example, .. } => {
                format!("write it like \"{example}\"")
            }
            Self::Fraction { .. } => "write it like \"2-1/2 in\" or \"2 17/32 in\"".to_owned(),
            Self::TooLong { .. } => "round it to what the tape shows".to_owned(),
            Self::Unit { units, nearest, .. } => nearest.map_or_else(
                || format!("use one of {units}"),
                |nearest| format!("did you mean `{nearest}`? it takes {units}"),
            ),
            Self::Ambiguous { type_this, .. } => type_this.clone(),
            Self::Range { .. } => "look at the number and its unit again".to_owned(),
        }
    }
}
