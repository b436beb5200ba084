//! All findings of one car, in the order in which they matter.

use crate::finding::{Finding, State};

/// All findings, failures first, then what is not checked, each by harm.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Board {
    findings: Vec<Finding>,
}

/// What the board says as a whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Something fails.
    Fails,
    /// Nothing fails, but something is not checked.
    NotAllChecked,
    /// Everything that applies was checked and passes.
    Passes,
}

impl Board {
    /// Sorts the findings by state, harm, rule and subject.
    #[must_use]
    pub fn new(mut findings: Vec<Finding>) -> Self {
        findings.sort_by(|a, b| {
            (a.state, a.rule.harm(), a.rule, &a.subject).cmp(&(
                b.state,
                b.rule.harm(),
                b.rule,
                &b.subject,
            ))
        });
        Self { findings }
    }

    /// The findings in order.
    #[must_use]
    pub fn findings(&self) -> &[Finding] {
        &self.findings
    }

    /// How many are in a state.
    #[must_use]
    pub fn count(&self, state: State) -> usize {
        self.findings
            .iter()
            .filter(|finding| finding.state == state)
            .count()
    }

    /// What the board says as a whole. An empty board has checked nothing.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        if self.count(State::Fail) > 0 {
            Verdict::Fails
        } else if self.findings.is_empty() || self.count(State::NotChecked) > 0 {
            Verdict::NotAllChecked
        } else {
            Verdict::Passes
        }
    }
}
