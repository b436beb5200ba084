//! The sketch as a small least-squares problem, in three or four dimensions.

use super::Chance;
use super::place::{candidates, node_cost};
use super::sketch::Sketch;
use crate::linear::{V3, Vector1};
use crate::solve::least_squares::{Effort, Equations, LeastSquares, minimise_roughly};
use crate::solve::sparse::{Block, Blocks};

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
    /// No values, only where what is: a block for each tie.
    matrix: Blocks,
    between: Vec<Option<Block>>,
}

/// One term of the sum of squares: its misfit over its σ.
enum Term {
    /// The length of a tie, with the unit vector along it.
    Tie { index: usize, along: [f64; 4] },
    /// One coordinate of a place.
    Coordinate { node: usize, which: usize },
}

impl<'a> Relaxation<'a> {
    fn new(sketch: &'a Sketch, dims: usize, press: f64) -> Self {
        let ties = sketch.ties.iter().map(|tie| (tie.a, tie.b));
        let matrix = Blocks::zeros(sketch.nodes.len(), dims, ties);
        Self {
            between: sketch
                .ties
                .iter()
                .map(|tie| matrix.block(tie.a, tie.b))
                .collect(),
            sketch,
            dims,
            press,
            matrix,
        }
    }

    fn terms(&self, x: &[f64], mut each: impl FnMut(Term, f64, f64)) {
        terms(self.sketch, x, self.dims, &mut each);
        if self.dims == 4 {
            for node in 0..self.sketch.nodes.len() {
                let term = Term::Coordinate { node, which: 3 };
                each(term, x[node * 4 + 3], 1.0 / self.press.sqrt());
            }
        }
    }
}

/// What the sketch asks of its places: lengths and heights.
fn terms(sketch: &Sketch, x: &[f64], dims: usize, mut each: impl FnMut(Term, f64, f64)) {
    for (index, tie) in sketch.ties.iter().enumerate() {
        let used = if tie.in_plan { 2 } else { dims };
        let (a, b) = (tie.a * dims, tie.b * dims);
        let mut along = [0.0; 4];
        for (k, part) in along.iter_mut().enumerate().take(used) {
            *part = x[b + k] - x[a + k];
        }
        let length = along.iter().map(|part| part * part).sum::<f64>().sqrt();
        let scale = if length > 1e-9 { 1.0 / length } else { 0.0 };
        let along = along.map(|part| part * scale);
        each(Term::Tie { index, along }, length - tie.length, tie.sigma);
    }
    for (node, height) in sketch.heights.iter().enumerate() {
        if let Some((height, sigma)) = *height {
            let term = Term::Coordinate { node, which: 2 };
            each(term, x[node * dims + 2] - height, sigma);
        }
    }
}

/// Misfit of each term over its σ.
fn misfits(sketch: &Sketch, places: &[V3]) -> Vec<f64> {
    let mut all = Vec::new();
    terms(sketch, &flat(places), 3, |_, misfit, sigma| {
        all.push(misfit / sigma);
    });
    all
}

impl LeastSquares for Relaxation<'_> {
    type State = Vec<f64>;
    type Matrix = Blocks;

    fn width(&self) -> usize {
        self.sketch.nodes.len() * self.dims
    }

    fn room(&self) -> Equations<Blocks> {
        Equations::sparse(self.matrix.clone())
    }

    fn equations(&mut self, x: &Vec<f64>, into: &mut Equations<Blocks>) {
        into.matrix.clear();
        into.gradient.fill(0.0);
        let mut sum = 0.0;
        let dims = self.dims;
        self.terms(x, |term, misfit, sigma| {
            let weight = 1.0 / (sigma * sigma);
            sum += (misfit / sigma) * (misfit / sigma);
            match term {
                Term::Coordinate { node, which } => {
                    into.gradient[node * dims + which] += weight * misfit;
                    into.matrix.add(into.matrix.own(node), which, which, weight);
                }
                Term::Tie { index, along } => {
                    let tie = &self.sketch.ties[index];
                    let own = [into.matrix.own(tie.a), into.matrix.own(tie.b)];
                    let along = &along[..dims];
                    for (k, part) in along.iter().enumerate() {
                        let push = part * weight;
                        into.gradient[tie.a * dims + k] -= push * misfit;
                        into.gradient[tie.b * dims + k] += push * misfit;
                        for (i, other) in along.iter().enumerate() {
                            if i <= k {
                                into.matrix.add(own[0], i, k, push * other);
                                into.matrix.add(own[1], i, k, push * other);
                            }
                            if let Some(between) = self.between[index] {
                                into.matrix.add(between, i, k, -push * other);
                            }
                        }
                    }
                }
            }
        });
        into.cost = sum;
        for (node, held) in self.sketch.held.iter().enumerate() {
            if held.is_some() {
                into.matrix.hold(node);
                into.gradient.rows_mut(node * dims, dims).fill(0.0);
            }
        }
    }

    fn moved(&self, x: &Vec<f64>, step: &Vector1) -> Vec<f64> {
        x.iter().zip(step.iter()).map(|(a, b)| a + b).collect()
    }
}

fn relaxed(sketch: &Sketch, x: Vec<f64>, dims: usize, press: f64) -> (f64, Vec<f64>) {
    let mut problem = Relaxation::new(sketch, dims, press);
    let rest = minimise_roughly(&mut problem, x, ROUGH);
    (rest.cost, rest.state)
}

fn flat(places: &[V3]) -> Vec<f64> {
    places.iter().flat_map(|p| [p.x, p.y, p.z]).collect()
}

fn folded(x: &[f64], dims: usize) -> Vec<V3> {
    x.chunks(dims).map(|c| V3::new(c[0], c[1], c[2])).collect()
}

pub(super) fn cost(sketch: &Sketch, places: &[V3]) -> f64 {
    misfits(sketch, places).iter().map(|m| m * m).sum()
}

/// Sum of squares per tie above which a sketch is looked through for folded places.
const GOOD_PER_TIE: f64 = 0.1;

/// Misfits of the same shape differ by less, in σ: sketches are rough.
const SAME_SHAPE: f64 = 0.05;

/// Shapes that no single folded place makes better. Another start that relaxes to one of them, or to its
/// mirror image, is not looked through again.
#[derive(Default)]
pub(super) struct Unfolded {
    /// Misfits of each.
    known: Vec<Vec<f64>>,
}

impl Unfolded {
    fn knows(&self, misfits: &[f64]) -> bool {
        let same = |known: &Vec<f64>| {
            let mut pairs = known.iter().zip(misfits);
            pairs.all(|(a, b)| (a - b).abs() < SAME_SHAPE)
        };
        self.known.iter().any(same)
    }

    /// Relaxed, and every place that fits better on its other side put there.
    pub(super) fn of(&mut self, sketch: &Sketch, places: &[V3]) -> Vec<V3> {
        let (mut cost, x) = relaxed(sketch, flat(places), 3, 1.0);
        let mut places = folded(&x, 3);
        #[expect(clippy::cast_precision_loss, reason = "a count of ties is small")]
        let good = GOOD_PER_TIE * sketch.ties.len() as f64;
        for _ in 0..3 {
            if cost < good || self.knows(&misfits(sketch, &places)) {
                break;
            }
            let before = cost;
            for node in 0..sketch.nodes.len() {
                if let Some((less, better)) = other_side(sketch, &places, node, cost) {
                    cost = less;
                    places = better;
                }
            }
            if cost >= before {
                self.known.push(misfits(sketch, &places));
                break;
            }
        }
        places
    }
}

/// The sketch relaxed with a place on its other side, where that is better, and its sum of squares.
fn other_side(sketch: &Sketch, places: &[V3], node: usize, cost: f64) -> Option<(f64, Vec<V3>)> {
    if sketch.held[node].is_some() {
        return None;
    }
    let standing: Vec<Option<V3>> = places.iter().copied().map(Some).collect();
    let here = node_cost(sketch, &standing, node, places[node]);
    let (there, place) = candidates(sketch, &standing, node)
        .into_iter()
        .find(|(_, p)| (p - places[node]).norm() > 20.0)?;
    if there > here + 400.0 {
        return None;
    }
    let mut trial = places.to_vec();
    trial[node] = place;
    let (trial_cost, x) = relaxed(sketch, flat(&trial), 3, 1.0);
    (trial_cost < 0.99 * cost).then(|| (trial_cost, folded(&x, 3)))
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
