//! A problem that is moved, turned about the vertical or mirrored has the same bound and the same
//! answer, moved, turned or mirrored; a body taken away makes nothing dearer by more than the gap.
#![expect(clippy::unwrap_used, clippy::panic, reason = "helpers of tests")]

mod hidden_runs;
mod measure;

use hidden_runs::{Kind, make};
use measure::{Answer, run};
use serde_json::{Value, json};

const EFFORT: u64 = 1500;

/// A motion of the whole problem: mirrored in y or not, turned about z, then shifted.
#[derive(Clone, Copy)]
struct Motion {
    mirrored: bool,
    turn_rad: f64,
    by: [f64; 3],
}

impl Motion {
    fn way(self, v: [f64; 3]) -> [f64; 3] {
        let v = if self.mirrored {
            [v[0], -v[1], v[2]]
        } else {
            v
        };
        let (sin, cos) = tubewright_geometry::math::sin_cos(self.turn_rad);
        [v[0] * cos - v[1] * sin, v[0] * sin + v[1] * cos, v[2]]
    }

    fn place(self, p: [f64; 3]) -> [f64; 3] {
        let v = self.way(p);
        [0, 1, 2].map(|k| v[k] + self.by[k])
    }

    /// Moves places and directions by the names of their keys; the bodies here are boxes, bars and
    /// cylinders in an endless workspace.
    fn value(self, key: &str, value: &mut Value) {
        let triple = |v: &Value| -> Option<[f64; 3]> {
            let list = v.as_array()?;
            let numbers: Vec<f64> = list.iter().filter_map(Value::as_f64).collect();
            numbers.try_into().ok()
        };
        match key {
            "point" | "center" | "a" | "b" => {
                if let Some(p) = triple(value) {
                    *value = json!(self.place(p));
                }
            }
            "dir" | "up" => {
                if let Some(v) = triple(value) {
                    *value = json!(self.way(v));
                }
            }
            "axes" => {
                let rows: Vec<[f64; 3]> = value
                    .as_array()
                    .unwrap()
                    .iter()
                    .filter_map(triple)
                    .map(|v| self.way(v))
                    .collect();
                *value = json!(rows);
            }
            _ => match value {
                Value::Object(map) => {
                    for (key, inner) in map.iter_mut() {
                        self.value(key, inner);
                    }
                }
                Value::Array(list) => {
                    for inner in list {
                        self.value("", inner);
                    }
                }
                _ => {}
            },
        }
    }
}

/// A generated problem without a workspace that matters, so that it may be turned.
fn wide(kind: Kind, seed: u64) -> Value {
    let mut problem: Value = serde_json::from_str(&make(kind, seed).problem).unwrap();
    problem["workspace"] = json!({"min": [-9e3, -9e3, -9e3], "max": [9e3, 9e3, 9e3]});
    // A box without axes has those of the car, which turn with it; the ground stays level.
    for body in problem["obstacles"].as_array_mut().unwrap() {
        if body["type"] == "box" && body.get("axes").is_none() {
            body["axes"] = json!([[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]]);
        }
    }
    problem
}

fn answer(problem: &Value) -> (f64, f64) {
    match run(&problem.to_string(), EFFORT, 1).unwrap().answer {
        Answer::Holds { cost, bound } => (cost, bound),
        other => panic!("{}: {other:?}", problem["id"]),
    }
}

#[test]
fn moved_turned_and_mirrored_problems_have_the_answer_moved() {
    let motions = [
        Motion {
            mirrored: false,
            turn_rad: 0.0,
            by: [211.0, -40.0, 0.0],
        },
        Motion {
            mirrored: false,
            turn_rad: 0.7,
            by: [0.0; 3],
        },
        Motion {
            mirrored: true,
            turn_rad: -0.3,
            by: [5.0, 0.0, 0.0],
        },
    ];
    for (kind, seed) in [(Kind::Open, 11), (Kind::Cluttered, 6)] {
        let here = wide(kind, seed);
        let (cost, bound) = answer(&here);
        for motion in motions {
            let mut there = here.clone();
            motion.value("", &mut there);
            let (moved_cost, moved_bound) = answer(&there);
            // What holds here holds there: neither bound may be above the other's cost.
            assert!(
                moved_bound <= cost + 1e-6 && bound <= moved_cost + 1e-6,
                "{}: {bound}..{cost} here, {moved_bound}..{moved_cost} there",
                here["id"]
            );
            // And where both are proven, they are the same.
            let proven = (cost - bound).max(moved_cost - moved_bound);
            assert!(
                (cost - moved_cost).abs() <= proven + 1e-6,
                "{}: {cost} here, {moved_cost} there",
                here["id"]
            );
        }
    }
}

#[test]
fn a_body_taken_away_makes_nothing_dearer_by_more_than_the_gap() {
    for seed in [2, 6] {
        let full = wide(Kind::Cluttered, seed);
        let (cost, bound) = answer(&full);
        let count = full["obstacles"].as_array().unwrap().len();
        for taken in [0, count / 2, count - 1] {
            let mut less = full.clone();
            less["obstacles"].as_array_mut().unwrap().remove(taken);
            let (cheaper, _) = answer(&less);
            assert!(
                cheaper <= cost + (cost - bound) + 1e-6,
                "{} without body {taken}: {cheaper} instead of {cost} (bound {bound})",
                full["id"]
            );
        }
    }
}
