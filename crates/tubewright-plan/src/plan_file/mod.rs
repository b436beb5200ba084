//! `plan.json`: what each stage found, with a hash over the checked values that it read. It is only
//! derived: it may be deleted at any time, one that is damaged counts as none, and a stage that is
//! older than what it read is said to be, with what changed.

mod inputs;
mod renamed;
mod results;
mod routes;
mod staleness;

pub use inputs::{
    Inputs, bodies_inputs, checks_inputs, routes_inputs, stock_inputs, survey_inputs,
};
pub use renamed::{Renamed, carried_over};
pub use results::{bodies_result, checks_result, stock_result, survey_result};
pub use routes::{StoredAlternative, StoredRouted, StoredRoutes, StoredRun, routes_result};
pub use staleness::{Cause, Change, Freshness};

use serde::Deserialize;
use serde_json::value::RawValue;
use std::fmt::Write as _;
use tubewright_build::hash::StageHash;

/// The form of the file.
pub const FORMAT: &str = "tubewright-plan/1";

/// A stage of the plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Stage {
    /// Readings to places.
    Survey,
    /// What is in the way.
    Bodies,
    /// Routes of every run.
    Routes,
    /// Buying and cutting.
    Stock,
    /// Lines and hoses.
    Lines,
    /// Flow, heat and sound.
    Gas,
    /// Every check.
    Checks,
}

impl Stage {
    /// All stages in the order of the work.
    pub const ALL: [Self; 7] = [
        Self::Survey,
        Self::Bodies,
        Self::Routes,
        Self::Stock,
        Self::Lines,
        Self::Gas,
        Self::Checks,
    ];

    /// Its name in the file.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Survey => "survey",
            Self::Bodies => "bodies",
            Self::Routes => "routes",
            Self::Stock => "stock",
            Self::Lines => "lines",
            Self::Gas => "gas",
            Self::Checks => "checks",
        }
    }
}

/// Why a plan file counts as none. All of it can be computed anew.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum PlanFileError {
    /// It is not what this program writes.
    #[error("it is damaged or was written by hand ({0})")]
    Damaged(String),
    /// Another form.
    #[error("it is of the form “{found}”; this program writes and reads {FORMAT}")]
    OtherForm {
        /// What it says.
        found: String,
    },
    /// A number in it cannot be.
    #[error("it holds {what} of {value}, which no plan does")]
    OutOfRange {
        /// What.
        what: &'static str,
        /// The number.
        value: f64,
    },
    /// It names something that the build does not hold.
    #[error("it does not belong to this build: {0}")]
    NotOfThisBuild(String),
}

/// One stage as it is kept.
#[derive(Clone, Debug)]
pub struct StoredStage {
    /// Hash over what it read.
    pub read: StageHash,
    /// What it found, as JSON text.
    result: Box<str>,
}

impl StoredStage {
    /// A result that read these inputs.
    #[must_use]
    pub fn new(inputs: &Inputs, result: String) -> Self {
        Self {
            read: inputs.hash(),
            result: result.into_boxed_str(),
        }
    }

    /// What it found, as JSON text.
    #[must_use]
    pub fn result(&self) -> &str {
        &self.result
    }

    /// Whether it is of the same inputs, else what changed since.
    #[must_use]
    pub fn freshness(&self, now: &Inputs) -> Freshness {
        staleness::freshness(self, now)
    }
}

/// A plan as it is kept between two commands.
#[derive(Clone, Debug, Default)]
pub struct PlanFile {
    stages: [Option<StoredStage>; 7],
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct FileForm<'t> {
    #[serde(borrow)]
    format: std::borrow::Cow<'t, str>,
    #[serde(borrow)]
    stages: StagesForm<'t>,
}

/// Only the form, for a file of another one.
#[derive(Deserialize)]
struct FormatForm {
    format: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct StagesForm<'t> {
    #[serde(borrow)]
    survey: Option<StageForm<'t>>,
    #[serde(borrow)]
    bodies: Option<StageForm<'t>>,
    #[serde(borrow)]
    routes: Option<StageForm<'t>>,
    #[serde(borrow)]
    stock: Option<StageForm<'t>>,
    #[serde(borrow)]
    lines: Option<StageForm<'t>>,
    #[serde(borrow)]
    gas: Option<StageForm<'t>>,
    #[serde(borrow)]
    checks: Option<StageForm<'t>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct StageForm<'t> {
    read: String,
    #[serde(borrow)]
    result: &'t RawValue,
}

impl PlanFile {
    /// Reads the text of a plan file.
    ///
    /// # Errors
    /// [`PlanFileError`]; the caller says so and goes on as if there were none.
    pub fn parse(text: &str) -> Result<Self, PlanFileError> {
        let damaged = |error: serde_json::Error| PlanFileError::Damaged(error.to_string());
        let file: FileForm<'_> = match serde_json::from_str(text) {
            Ok(file) => file,
            Err(error) => {
                return Err(match serde_json::from_str::<FormatForm>(text) {
                    Ok(other) if other.format != FORMAT => PlanFileError::OtherForm {
                        found: other.format.chars().take(60).collect(),
                    },
                    _ => damaged(error),
                });
            }
        };
        if file.format != FORMAT {
            return Err(PlanFileError::OtherForm {
                found: file.format.chars().take(60).collect(),
            });
        }
        let StagesForm {
            survey,
            bodies,
            routes,
            stock,
            lines,
            gas,
            checks,
        } = file.stages;
        let mut plan = Self::default();
        let forms = [survey, bodies, routes, stock, lines, gas, checks];
        for (slot, form) in plan.stages.iter_mut().zip(forms) {
            *slot = form
                .map(|form| {
                    Ok(StoredStage {
                        read: StageHash::from_hex(&form.read).ok_or_else(|| {
                            PlanFileError::Damaged("a hash is not 64 hexadecimal digits".to_owned())
                        })?,
                        result: form.result.get().into(),
                    })
                })
                .transpose()?;
        }
        Ok(plan)
    }

    /// The text of the file. Equal plans give equal bytes, and a text that was read is written as it
    /// stood.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut text = format!("{{\n  \"format\": \"{FORMAT}\",\n  \"stages\": {{");
        let mut separator = "\n";
        for (stage, stored) in Stage::ALL.iter().zip(&self.stages) {
            let Some(stored) = stored else { continue };
            // Writing to a text cannot fail.
            let _ = write!(
                text,
                "{separator}    \"{}\": {{\n      \"read\": \"{}\",\n      \"result\": {}\n    }}",
                stage.name(),
                stored.read,
                stored.result
            );
            separator = ",\n";
        }
        text.push_str("\n  }\n}\n");
        text
    }

    /// What a stage found, when it is there.
    #[must_use]
    pub fn stage(&self, stage: Stage) -> Option<&StoredStage> {
        Stage::ALL
            .iter()
            .zip(&self.stages)
            .find(|(known, _)| **known == stage)
            .and_then(|(_, stored)| stored.as_ref())
    }

    /// Keeps what a stage found.
    pub fn set(&mut self, stage: Stage, stored: StoredStage) {
        let mut slots = Stage::ALL.iter().zip(&mut self.stages);
        if let Some((_, slot)) = slots.find(|(known, _)| **known == stage) {
            *slot = Some(stored);
        }
    }
}

/// A result as JSON text, indented to where it stands in the file.
fn indented<T: serde::Serialize>(result: &T) -> String {
    // Only maps with keys that are no text and non-finite numbers fail; results hold neither.
    serde_json::to_string_pretty(result)
        .unwrap_or_else(|_| "null".to_owned())
        .replace('\n', "\n      ")
}
