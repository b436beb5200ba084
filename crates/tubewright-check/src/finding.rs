//! One checked rule.

use crate::rule::Rule;
use tubewright_geometry::Point;

/// The outcome of one check.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum State {
    /// Checked, and broken.
    Fail,
    /// Not checked: something is missing or the check does not exist yet. Never counts as a pass.
    NotChecked,
    /// Checked, and kept with its ±.
    Pass,
    /// This car has nothing that the rule is about.
    DoesNotApply,
}

impl State {
    /// The words for the person.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Fail => "fails",
            Self::NotChecked => "not checked",
            Self::Pass => "passes",
            Self::DoesNotApply => "does not apply",
        }
    }
}

/// The unit a measured value is shown in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Unit {
    /// Millimetres.
    Millimetre,
    /// Degrees.
    Degree,
    /// A pure number.
    One,
}

impl Unit {
    /// The symbol with its leading space; empty for a pure number.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Millimetre => " mm",
            Self::Degree => "°",
            Self::One => "",
        }
    }
}

/// A measured or computed value with its ± (19 in 20).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// The value in `unit`.
    pub value: f64,
    /// ± at 19 in 20 in `unit`; `None` when it is exact or unknown.
    pub plus_minus: Option<f64>,
    /// The unit.
    pub unit: Unit,
}

/// What the value is held against, in the unit of the measured value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Limit {
    /// The value may not be less.
    AtLeast(f64),
    /// The value may not be more.
    AtMost(f64),
}

/// Where in the car.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// In the car's axes, mm.
    pub point_in_car: Point,
    /// In words: which piece, which body, in which position of what moves.
    pub words: String,
}

/// One checked rule: what, where, how much, against what, and what to do.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// The rule.
    pub rule: Rule,
    /// The outcome.
    pub state: State,
    /// What it was checked on, in words: *left bank to left rail*.
    pub subject: String,
    /// Where in the car.
    pub place: Option<Place>,
    /// The value.
    pub measured: Option<Measured>,
    /// The limit.
    pub limit: Option<Limit>,
    /// What to do, or why it was not checked.
    pub advice: String,
}

impl Finding {
    /// A finding without a number.
    #[must_use]
    pub fn stated(
        rule: Rule,
        state: State,
        subject: impl Into<String>,
        advice: impl Into<String>,
    ) -> Self {
        Self {
            rule,
            state,
            subject: subject.into(),
            place: None,
            measured: None,
            limit: None,
            advice: advice.into(),
        }
    }

    /// Passes when the value less its ± is at least `limit`.
    #[must_use]
    pub fn measured_at_least(
        rule: Rule,
        subject: impl Into<String>,
        measured: Measured,
        limit: f64,
    ) -> Self {
        let least = measured.value - measured.plus_minus.unwrap_or(0.0);
        Self::held_against(
            rule,
            subject,
            measured,
            Limit::AtLeast(limit),
            least >= limit,
        )
    }

    /// Passes when the value plus its ± is at most `limit`.
    #[must_use]
    pub fn measured_at_most(
        rule: Rule,
        subject: impl Into<String>,
        measured: Measured,
        limit: f64,
    ) -> Self {
        let most = measured.value + measured.plus_minus.unwrap_or(0.0);
        Self::held_against(rule, subject, measured, Limit::AtMost(limit), most <= limit)
    }

    fn held_against(
        rule: Rule,
        subject: impl Into<String>,
        measured: Measured,
        limit: Limit,
        is_kept: bool,
    ) -> Self {
        // A value that is not a number compares false, so it fails instead of passing.
        let state = if is_kept { State::Pass } else { State::Fail };
        Self {
            measured: Some(measured),
            limit: Some(limit),
            ..Self::stated(rule, state, subject, "")
        }
    }

    /// The same finding with the place in the car.
    #[must_use]
    pub fn at(mut self, point_in_car: Point, words: impl Into<String>) -> Self {
        self.place = Some(Place {
            point_in_car,
            words: words.into(),
        });
        self
    }

    /// The same finding with advice.
    #[must_use]
    pub fn advising(mut self, advice: impl Into<String>) -> Self {
        self.advice = advice.into();
        self
    }
}
