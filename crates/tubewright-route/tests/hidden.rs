//! Problems built round a hidden run are never called infeasible, every answer is walked by the
//! judge, and no lower bound is above a cost that is known. Problems built without an answer are
//! never solved, and where a proof is found its reason is the right one.
#![expect(clippy::unwrap_used, clippy::panic, reason = "helpers of tests")]

mod hidden_runs;
mod measure;

use hidden_runs::{Kind, make};
use measure::{Answer, run};

/// Work units of one problem: enough for most first answers.
const EFFORT: u64 = 600;

/// Judges one problem that has an answer; whether one was found.
fn holds(kind: Kind, seed: u64) -> bool {
    let made = make(kind, seed);
    let hidden = made.hidden_cost.unwrap();
    let name = format!("{}-{seed}", kind.word());
    match run(&made.problem, EFFORT, 1).unwrap().answer {
        Answer::Holds { cost, bound } => {
            let known = cost.min(hidden);
            assert!(
                bound <= known + 1e-6,
                "{name}: the bound {bound} is above the known cost {known}"
            );
            true
        }
        Answer::Broken(what) => panic!("{name}: {what}"),
        Answer::Infeasible(reason) => {
            panic!("{name} has an answer of cost {hidden} and is called {reason}")
        }
        Answer::Unknown => false,
    }
}

#[test]
fn problems_with_an_answer_are_answered() {
    let mut found = 0;
    let mut tried = 0;
    for kind in Kind::SOLVABLE {
        for seed in [101, 102] {
            tried += 1;
            found += usize::from(holds(kind, seed));
        }
    }
    assert!(found * 8 >= tried * 7, "{found} of {tried} found an answer");
}

#[test]
fn problems_without_an_answer_are_not_answered() {
    let mut proven = 0;
    let mut tried = 0;
    for kind in Kind::HOPELESS {
        for seed in [101, 102] {
            let made = make(kind, seed);
            tried += 1;
            match run(&made.problem, EFFORT, 1).unwrap().answer {
                Answer::Infeasible(reason) => {
                    assert_eq!(Some(reason.as_str()), made.reason, "{}-{seed}", kind.word());
                    proven += 1;
                }
                Answer::Unknown => {}
                other => panic!("{}-{seed}: {other:?}", kind.word()),
            }
        }
    }
    assert!(proven * 5 >= tried * 4, "{proven} of {tried} proven");
}

/// Equal seeds give equal problems, and the hidden answer costs what the problem says.
#[test]
fn generated_problems_are_the_same_every_time() {
    for kind in Kind::SOLVABLE {
        let (one, two) = (make(kind, 7), make(kind, 7));
        assert_eq!(one.problem, two.problem);
        let verdict =
            tubewright_walker::judge(&one.problem, one.hidden.as_deref().unwrap()).unwrap();
        assert!((verdict.cost - one.hidden_cost.unwrap()).abs() < 1e-9);
    }
}
