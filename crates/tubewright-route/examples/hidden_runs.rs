//! Solves generated problems and compares with their hidden answers:
//! `hidden_runs [seeds of each kind] [work units] [kind] [first seed]`.
//!
//! `WRITE=FOLDER` writes the problems (and hidden answers) there instead of solving them.
#![expect(clippy::print_stdout, reason = "a report for the terminal")]

#[path = "../tests/hidden_runs/mod.rs"]
mod hidden_runs;
#[path = "../tests/measure/mod.rs"]
mod measure;

use hidden_runs::{Kind, make};
use measure::{Answer, median, run};

type Failure = Box<dyn std::error::Error>;

fn main() -> Result<(), Failure> {
    let mut args = std::env::args().skip(1);
    let seeds: u64 = args.next().map_or(Ok(10), |a| a.parse())?;
    let work_units: u64 = args.next().map_or(Ok(4000), |a| a.parse())?;
    let only = args.next().unwrap_or_default();
    let first_seed: u64 = args.next().map_or(Ok(1), |a| a.parse())?;
    let write = std::env::var_os("WRITE");
    println!(
        "kind       problems solved  cost/hidden  least  most   gap   first s  most   total s  most | wrong"
    );
    let mut gaps = Vec::new();
    for kind in Kind::SOLVABLE {
        if !kind.word().contains(&only) {
            continue;
        }
        let mut rows = Vec::new();
        let mut wrong = Vec::new();
        for seed in first_seed..first_seed + seeds {
            let made = make(kind, seed);
            if let Some(folder) = &write {
                let folder = std::path::Path::new(folder);
                let name = format!("{}-{seed}", kind.word());
                std::fs::write(folder.join(format!("{name}.json")), &made.problem)?;
                let hidden = made.hidden.unwrap_or_default();
                std::fs::write(folder.join(format!("{name}.hidden")), hidden)?;
                continue;
            }
            let hidden = made.hidden_cost.unwrap_or(f64::NAN);
            let ran = run(&made.problem, work_units, 1)?;
            match ran.answer {
                Answer::Holds { cost, bound } => {
                    if bound > cost.min(hidden) {
                        wrong.push(format!(
                            "{seed}: bound {bound:.2} over {:.2}",
                            cost.min(hidden)
                        ));
                    }
                    if std::env::var_os("EACH").is_some() {
                        println!(
                            "    {}-{seed}: {cost:.2} hidden {hidden:.2} bound {bound:.2} gap {:.1}% first {:.3} s total {:.2} s",
                            kind.word(),
                            100.0 * (1.0 - bound / cost),
                            ran.first_s.unwrap_or(f64::NAN),
                            ran.total_s
                        );
                    }
                    rows.push((
                        cost / hidden,
                        1.0 - bound / cost,
                        ran.first_s.unwrap_or(f64::NAN),
                        ran.total_s,
                    ));
                }
                Answer::Broken(what) => wrong.push(format!("{seed}: {what}")),
                Answer::Infeasible(reason) => wrong.push(format!("{seed}: FALSE {reason}")),
                Answer::Unknown => wrong.push(format!("{seed}: unknown")),
            }
        }
        if rows.is_empty() {
            println!("{:10} {seeds:8} {:6} {wrong:?}", kind.word(), 0);
            continue;
        }
        gaps.extend(rows.iter().map(|r| r.1));
        let column = |f: fn(&(f64, f64, f64, f64)) -> f64| -> Vec<f64> {
            let mut all: Vec<f64> = rows.iter().map(f).collect();
            all.sort_by(f64::total_cmp);
            all
        };
        let (ratio, gap, first, total) = (
            column(|r| r.0),
            column(|r| r.1),
            column(|r| r.2),
            column(|r| r.3),
        );
        println!(
            "{:10} {seeds:8} {:6} {:12.3} {:6.3} {:6.3} {:4.1}% {:8.3} {:6.3} {:8.2} {:6.2} | {}",
            kind.word(),
            rows.len(),
            median(&ratio),
            ratio[0],
            ratio[ratio.len() - 1],
            100.0 * median(&gap),
            median(&first),
            first[first.len() - 1],
            median(&total),
            total[total.len() - 1],
            wrong.join("; ")
        );
    }
    gaps.sort_by(f64::total_cmp);
    println!("gap at the median {:.1} %", 100.0 * median(&gaps));
    for kind in Kind::HOPELESS {
        if !kind.word().contains(&only) {
            continue;
        }
        let (mut right, mut unknown, mut total) = (0, 0, 0.0_f64);
        let mut wrong = Vec::new();
        for seed in first_seed..first_seed + seeds {
            let made = make(kind, seed);
            let expected = made.reason.unwrap_or("none");
            let ran = run(&made.problem, work_units, 1)?;
            total = total.max(ran.total_s);
            match ran.answer {
                Answer::Infeasible(reason) if reason == expected => right += 1,
                Answer::Infeasible(reason) => wrong.push(format!("{seed}: {reason}")),
                Answer::Unknown => unknown += 1,
                Answer::Holds { .. } => wrong.push(format!("{seed}: SOLVED")),
                Answer::Broken(what) => wrong.push(format!("{seed}: {what}")),
            }
        }
        println!(
            "{:10} {seeds:8} right {right:4} unknown {unknown:4} most {total:.2} s | {}",
            kind.word(),
            wrong.join("; ")
        );
    }
    Ok(())
}
