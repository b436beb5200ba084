//! The sketch as a small least-squares problem, in three or four dimensions.

use super::Chance;
use super::place::{candidates, node_cost};
use super::sketch::Sketch;
use crate::linear::{V3, Vector1};
use crate::solve::least_squares::{Effort, Equations, LeastSquares, minimise};

/// Effort of one relaxation: a sketch need not be exact.
const ROUGH: Effort = Effort {
    steps: 60,
    settled_relative: 1e-6,
    settled_absolute: 1e-6,
    first_damping: 1e-2,
    last_steps: 0,
};

struct Relaxation<'a> {
    sketch: &'a Sketch,
    dims: usize,
    /// Weight of the fourth coordinate's square.
    press: f64,
}

impl Relaxation<'_> {
    fn cost(&self, x: &[f64]) -> f64 {
        let mut sum = 0.0;
        self.terms(x, |_, misfit, sigma| {
            sum += (misfit / sigma) * (misfit / sigma);
        });
        sum
    }

    fn terms(&self, x: &[f64], mut each: impl FnMut(&[(usize, f64)], f64, f64)) {
        let dims = self.dims;
        let mut entries = Vec::with_capacity(2 * dims);
        for tie in &self.sketch.ties {
            let used = if tie.in_plan { 2 } else { dims };
            let (a, b) = (tie.a * dims, tie.b * dims);
            let squared: f64 = (0..used)
                .map(|k| (x[b + k] - x[a + k]) * (x[b + k] - x[a + k]))
                .sum();
            let length = squared.sqrt();
            entries.clear();
            if length > 1e-9 {
                for k in 0..used {
                    let u = (x[b + k] - x[a + k]) / length;
                    entries.push((b + k, u));
                    entries.push((a + k, -u));
                }
            }
            each(&entries, length - tie.length, tie.sigma);
        }
        for (node, height) in self.sketch.heights.iter().enumerate() {
            if let Some((height, sigma)) = *height {
                let column = node * dims + 2;
                each(&[(column, 1.0)], x[column] - height, sigma);
            }
        }
        if dims == 4 {
            for node in 0..self.sketch.nodes.len() {
                let column = node * dims + 3;
                each(&[(column, 1.0)], x[column], 1.0 / self.press.sqrt());
            }
        }
    }
}

impl LeastSquares for Relaxation<'_> {
    type State = Vec<f64>;

    fn width(&self) -> usize {
        self.sketch.nodes.len() * self.dims
    }

    fn equations(&mut self, x: &Vec<f64>, into: &mut Equations) {
        into.clear();
        let mut sum = 0.0;
        self.terms(x, |entries, misfit, sigma| {
            let weight = 1.0 / (sigma * sigma);
            sum += (misfit / sigma) * (misfit / sigma);
            for &(c1, v1) in entries {
                into.gradient[c1] += v1 * weight * misfit;
                for &(c2, v2) in entries {
                    into.matrix[(c1, c2)] += v1 * weight * v2;
                }
            }
        });
        into.cost = sum;
        for (node, held) in self.sketch.held.iter().enumerate() {
            if held.is_some() {
                for c in node * self.dims..(node + 1) * self.dims {
                    into.matrix.row_mut(c).fill(0.0);
                    into.matrix.column_mut(c).fill(0.0);
                    into.matrix[(c, c)] = 1.0;
                    into.gradient[c] = 0.0;
                }
            }
        }
    }

    fn moved(&self, x: &Vec<f64>, step: &Vector1) -> Vec<f64> {
        x.iter().zip(step.iter()).map(|(a, b)| a + b).collect()
    }
}

fn relaxed(sketch: &Sketch, x: Vec<f64>, dims: usize, press: f64) -> (f64, Vec<f64>) {
    let mut problem = Relaxation {
        sketch,
        dims,
        press,
    };
    let rest = minimise(&mut problem, x, ROUGH);
    (rest.cost, rest.state)
}

fn flat(places: &[V3]) -> Vec<f64> {
    places.iter().flat_map(|p| [p.x, p.y, p.z]).collect()
}

fn folded(x: &[f64], dims: usize) -> Vec<V3> {
    x.chunks(dims).map(|c| V3::new(c[0], c[1], c[2])).collect()
}

pub(super) fn cost(sketch: &Sketch, places: &[V3]) -> f64 {
    Relaxation {
        sketch,
        dims: 3,
        press: 1.0,
    }
    .cost(&flat(places))
}

/// Sum of squares per tie above which a sketch is looked through for folded places.
const GOOD_PER_TIE: f64 = 0.1;

/// Relaxed, and every place that fits better on its other side put there.
pub(super) fn unfolded(sketch: &Sketch, places: &[V3]) -> Vec<V3> {
    let (mut cost, x) = relaxed(sketch, flat(places), 3, 1.0);
    let mut places = folded(&x, 3);
    #[expect(clippy::cast_precision_loss, reason = "a count of ties is small")]
    let good = GOOD_PER_TIE * sketch.ties.len() as f64;
    for _ in 0..3 {
        if cost < good {
            break;
        }
        let mut improved = false;
        for node in 0..sketch.nodes.len() {
            if sketch.held[node].is_some() {
                continue;
            }
            let standing: Vec<Option<V3>> = places.iter().copied().map(Some).collect();
            let here = node_cost(sketch, &standing, node, places[node]);
            let other = candidates(sketch, &standing, node)
                .into_iter()
                .find(|(_, p)| (p - places[node]).norm() > 20.0);
            let Some((there, place)) = other else {
                continue;
            };
            if there > here + 400.0 {
                continue;
            }
            let mut trial = places.clone();
            trial[node] = place;
            let (trial_cost, x) = relaxed(sketch, flat(&trial), 3, 1.0);
            if trial_cost < 0.99 * cost {
                cost = trial_cost;
                places = folded(&x, 3);
                improved = true;
            }
        }
        if !improved {
            break;
        }
    }
    places
}

/// Lets the places pass each other through a fourth dimension, then presses them back. Amplitude and
/// stages: a third of a metre is of the order of what a folded place must cross.
pub(super) fn through_fourth(sketch: &Sketch, places: &[V3], chance: &mut Chance) -> Vec<V3> {
    let mut x: Vec<f64> = places
        .iter()
        .enumerate()
        .flat_map(|(node, p)| {
            let fourth = if sketch.held[node].is_some() {
                0.0
            } else {
                300.0 * chance.signed()
            };
            [p.x, p.y, p.z, fourth]
        })
        .collect();
    for sigma in [3000.0, 300.0, 100.0, 30.0, 5.0] {
        (_, x) = relaxed(sketch, x, 4, 1.0 / (sigma * sigma));
    }
    folded(&x, 4)
}
