//! One problem text to one judged answer, with the processor time that it took.
#![allow(
    dead_code,
    unreachable_pub,
    reason = "shared by tests, benches and examples, each of which uses a part"
)]

use std::sync::atomic::AtomicBool;

use tubewright_route::form::{read_problem, write_outcome};
use tubewright_route::{Budget, Outcome, solve};

type Failure = Box<dyn std::error::Error>;

/// What came out.
#[derive(Clone, Debug)]
pub enum Answer {
    /// A route in which the judge finds nothing wrong.
    Holds {
        /// Cost as the judge finds it.
        cost: f64,
        /// Lower bound as stated.
        bound: f64,
    },
    /// A route that breaks a rule, or states another cost than the judge finds.
    Broken(String),
    /// Said to have no answer, with the code.
    Infeasible(String),
    /// Nothing found.
    Unknown,
}

/// An answer with times in seconds of the processor, all threads together.
#[derive(Clone, Debug)]
pub struct Ran {
    /// What came out.
    pub answer: Answer,
    /// The answer as text.
    pub text: String,
    /// Until the first route.
    pub first_s: Option<f64>,
    /// Altogether.
    pub total_s: f64,
    /// Work units spent, where the answer tells.
    pub work_units: u64,
}

/// Processor time of this process so far, s; `NaN` where the system does not tell.
pub fn processor_s() -> f64 {
    let Ok(tasks) = std::fs::read_dir("/proc/self/task") else {
        return f64::NAN;
    };
    tasks
        .filter_map(|t| std::fs::read_to_string(t.ok()?.path().join("schedstat")).ok())
        .filter_map(|t| t.split_whitespace().next()?.parse::<f64>().ok())
        .sum::<f64>()
        / 1e9
}

/// The middle of sorted values; `NaN` of none.
pub fn median(sorted: &[f64]) -> f64 {
    sorted.get(sorted.len() / 2).copied().unwrap_or(f64::NAN)
}

/// Solves and judges.
pub fn run(problem_text: &str, work_units: u64, seed: u64) -> Result<Ran, Failure> {
    let (problem, cost) = read_problem(problem_text)?;
    let start = processor_s();
    let mut first_s = None;
    let outcome = solve(
        &problem,
        &cost,
        Budget { work_units, seed },
        &AtomicBool::new(false),
        &mut |p| {
            if p.best_cost.is_some() && first_s.is_none() {
                first_s = Some(processor_s() - start);
            }
        },
    )?;
    let total_s = processor_s() - start;
    let text = write_outcome(&problem, &outcome);
    let (answer, spent) = match &outcome {
        Outcome::Solved {
            alternatives,
            work_units,
        } => {
            let verdict = tubewright_walker::judge(problem_text, &text)?;
            let best = alternatives.first().ok_or("solved without a route")?;
            let answer = if !verdict.violations.is_empty() {
                Answer::Broken(format!("{:?}", verdict.violations))
            } else if (verdict.cost - best.cost).abs() > 1e-6 {
                Answer::Broken(format!("states {} and costs {}", best.cost, verdict.cost))
            } else if verdict.closure_mm > 1e-6 {
                Answer::Broken(format!("closes to {} mm only", verdict.closure_mm))
            } else {
                Answer::Holds {
                    cost: verdict.cost,
                    bound: best.lower_bound,
                }
            };
            (answer, *work_units)
        }
        Outcome::Infeasible { .. } => {
            let value: serde_json::Value = serde_json::from_str(&text)?;
            let reason = value
                .get("reason")
                .and_then(|r| r.as_str())
                .unwrap_or_default();
            (Answer::Infeasible(reason.to_owned()), 0)
        }
        _ => (Answer::Unknown, work_units),
    };
    Ok(Ran {
        answer,
        text,
        first_s,
        total_s,
        work_units: spent,
    })
}
