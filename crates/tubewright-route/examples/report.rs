//! Prints the table of problems in a folder: `report FOLDER [work units] [name]`; times are those of
//! the processor, all threads together.
#![expect(clippy::print_stdout, reason = "a report for the terminal")]

use std::sync::atomic::AtomicBool;

#[path = "../tests/measure/mod.rs"]
mod measure;

use measure::processor_s;
use tubewright_route::form::{read_problem, write_outcome};
use tubewright_route::{Budget, Outcome, solve};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut args = std::env::args().skip(1);
    let folder = args.next().unwrap_or_else(|| "tests/problems".into());
    let work_units = args.next().map_or(Ok(20_000), |a| a.parse())?;
    let only = args.next();
    let reference: serde_json::Value = std::fs::read_to_string(format!("{folder}/reference.json"))
        .ok()
        .and_then(|t| serde_json::from_str(&t).ok())
        .unwrap_or_default();
    let mut names: Vec<_> = std::fs::read_dir(&folder)?
        .filter_map(|e| e.ok().map(|e| e.path()))
        .filter(|p| p.extension().is_some_and(|e| e == "json") && !p.ends_with("reference.json"))
        .collect();
    names.sort();
    println!(
        "problem                     ref      cost   ratio   bound    gap  first s  total s  work  judge"
    );
    for path in names {
        if only
            .as_ref()
            .is_some_and(|o| !path.display().to_string().contains(o))
        {
            continue;
        }
        let text = std::fs::read_to_string(&path)?;
        let (problem, cost) = read_problem(&text)?;
        let start = processor_s();
        let mut first = None;
        let outcome = solve(
            &problem,
            &cost,
            Budget {
                work_units,
                seed: 1,
            },
            &AtomicBool::new(false),
            &mut |p| {
                if p.best_cost.is_some() && first.is_none() {
                    first = Some(processor_s() - start);
                }
                if std::env::var_os("TRACE").is_some() {
                    println!(
                        "    {:8.3} s {:6} {:?}",
                        processor_s() - start,
                        p.work_units,
                        p.best_cost
                    );
                }
            },
        )?;
        let total = processor_s() - start;
        let best = &reference[&problem.id]["best_known_cost"];
        match &outcome {
            Outcome::Solved {
                alternatives,
                work_units,
            } => {
                let route = &alternatives[0];
                let answer = write_outcome(&problem, &outcome);
                let verdict = tubewright_walker::judge(&text, &answer)?;
                let judged = if verdict.violations.is_empty() {
                    format!(
                        "holds, {:.2}, closes {:.0e}",
                        verdict.cost, verdict.closure_mm
                    )
                } else {
                    format!("{:?}", verdict.violations)
                };
                println!(
                    "{:24} {:8.2} {:9.2} {:7.3} {:7.2} {:5.1}% {:8.3} {:8.2} {:6} {judged}",
                    problem.id,
                    best.as_f64().unwrap_or(f64::NAN),
                    route.cost,
                    route.cost / best.as_f64().unwrap_or(f64::NAN),
                    route.lower_bound,
                    100.0 * route.gap(),
                    first.unwrap_or(f64::NAN),
                    total,
                    work_units,
                );
                if std::env::var_os("TRACE").is_some() {
                    for a in alternatives {
                        println!("    {:.2} {}", a.cost, a.name);
                    }
                    println!("{answer}");
                    println!("{:?} {:?}", route.terms, route.tightest);
                }
            }
            other => println!(
                "{:24} {other:?} expected {} in {total:.2} s",
                problem.id, reference[&problem.id]
            ),
        }
    }
    Ok(())
}
