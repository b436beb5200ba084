//! What makes a stage older than what it reads.

use core::fmt;
use serde::Deserialize;
use std::collections::BTreeMap;

use super::inputs::COST_TERMS;
use super::{Inputs, StoredStage};

/// Whether a stage is of what lies in the folder now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Freshness {
    /// Nothing that it read has changed.
    Fresh,
    /// It is older than these. The list is empty when the program computes it otherwise now.
    Older(Vec<Cause>),
}

/// One thing that a stage is older than.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Cause {
    /// Kind as in the file: `readings`, `bodies`.
    pub kind: String,
    /// Its name.
    pub name: String,
    /// What happened to it.
    pub change: Change,
}

/// What happened to a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Change {
    /// It says something else.
    Changed,
    /// It was not there.
    New,
    /// It is not there any more.
    Gone,
}

impl fmt::Display for Cause {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let name = &self.name;
        match self.kind.as_str() {
            "frame" => f.write_str("the choice of the car's axes")?,
            "accuracy" => f.write_str("the ± of the kinds of reading")?,
            "gaps" => f.write_str("the gaps by class")?,
            "currency" => f.write_str("the currency")?,
            "readings" => write!(f, "reading {name}")?,
            "practice" if name == "all" => f.write_str("the shop's practice")?,
            "practice" => write!(f, "{name} of the shop's practice")?,
            "wishes" => write!(f, "the wish {name}")?,
            "solver" if name == COST_TERMS => {
                f.write_str("the list of what a route's cost counts")?;
            }
            "solver" => f.write_str("the solver's effort and seed")?,
            "chosen" => write!(f, "the chosen run “{name}”")?,
            "setups" => write!(f, "set-up “{name}”")?,
            "bodies" => write!(f, "body “{name}”")?,
            "offers" => write!(f, "the offer of “{name}”")?,
            "record" => write!(f, "entry {} of shop.toml", name.trim_start_matches('0'))?,
            "on-hand" => write!(f, "“{name}” on hand")?,
            kind => write!(f, "{} “{name}”", kind.strip_suffix('s').unwrap_or(kind))?,
        }
        match self.change {
            Change::Changed => Ok(()),
            Change::New => f.write_str(", which is new"),
            Change::Gone => f.write_str(", which is gone"),
        }
    }
}

impl Freshness {
    /// Whether it is fresh.
    #[must_use]
    pub fn is_fresh(&self) -> bool {
        matches!(self, Self::Fresh)
    }

    /// What it is older than, in words: at most `most` of them, and how many more.
    #[must_use]
    pub fn words(&self, most: usize) -> String {
        let causes = match self {
            Self::Fresh => return "of what the folder holds now".to_owned(),
            Self::Older(causes) if causes.is_empty() => {
                return "made by another version of this program".to_owned();
            }
            Self::Older(causes) => causes,
        };
        let named: Vec<String> = causes.iter().take(most).map(ToString::to_string).collect();
        let more = causes.len().saturating_sub(most);
        let mut words = format!("older than {}", named.join(", "));
        if more > 0 {
            words.push_str(&format!(" and {more} more"));
        }
        words
    }
}

#[derive(Deserialize)]
struct InputsForm {
    inputs: BTreeMap<String, BTreeMap<String, String>>,
}

pub(super) fn freshness(stored: &StoredStage, now: &Inputs) -> Freshness {
    if stored.read == now.hash() {
        return Freshness::Fresh;
    }
    let Ok(form) = serde_json::from_str::<InputsForm>(stored.result()) else {
        return Freshness::Older(Vec::new());
    };
    let now = now.short();
    let mut causes = Vec::new();
    let mut cause = |kind: &str, name: &str, change| {
        causes.push(Cause {
            kind: kind.to_owned(),
            name: name.to_owned(),
            change,
        });
    };
    let nothing = BTreeMap::new();
    for (kind, parts) in &now {
        let then = form.inputs.get(kind).unwrap_or(&nothing);
        for (name, hash) in parts {
            match then.get(name) {
                None => cause(kind, name, Change::New),
                Some(old) if old != hash => cause(kind, name, Change::Changed),
                Some(_) => {}
            }
        }
    }
    for (kind, parts) in &form.inputs {
        let parts_now = now.get(kind).unwrap_or(&nothing);
        for name in parts.keys().filter(|name| !parts_now.contains_key(*name)) {
            cause(kind, name, Change::Gone);
        }
    }
    Freshness::Older(causes)
}
