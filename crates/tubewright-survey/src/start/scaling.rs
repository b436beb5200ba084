//! Classical scaling of shortest-path distances (Torgerson 1952, from memory).

use super::place::firm_height;
use super::sketch::Sketch;
use crate::linear::{Matrix, V3};

/// Coordinates in three dimensions from distances completed along the shortest paths; `None` when the
/// ties do not connect all places or something is held.
pub(super) fn scaled(sketch: &Sketch) -> Option<Vec<V3>> {
    let n = sketch.nodes.len();
    if n < 4 || sketch.held.iter().any(Option::is_some) {
        return None;
    }
    let mut d = Matrix::from_element(n, n, f64::INFINITY);
    for k in 0..n {
        d[(k, k)] = 0.0;
    }
    for tie in &sketch.ties {
        let shorter = tie.length.min(d[(tie.a, tie.b)]);
        d[(tie.a, tie.b)] = shorter;
        d[(tie.b, tie.a)] = shorter;
    }
    for via in 0..n {
        for a in 0..n {
            for b in 0..n {
                let round = d[(a, via)] + d[(via, b)];
                if round < d[(a, b)] {
                    d[(a, b)] = round;
                }
            }
        }
    }
    // Paths round corners are too long; the relaxation that follows takes that off again.
    let longest = d.iter().fold(0.0_f64, |m, v| m.max(*v));
    if !longest.is_finite() {
        return None;
    }
    let squares = d.map(|v| v * v);
    let rows: Vec<f64> = (0..n).map(|i| squares.row(i).mean()).collect();
    let all = squares.mean();
    let gram = Matrix::from_fn(n, n, |i, k| {
        -0.5 * (squares[(i, k)] - rows[i] - rows[k] + all)
    });
    let eigen = gram.symmetric_eigen();
    let mut order: Vec<usize> = (0..n).collect();
    order.sort_by(|&i, &k| eigen.eigenvalues[k].total_cmp(&eigen.eigenvalues[i]));
    let axis = |rank: usize, node: usize| {
        let k = order[rank];
        eigen.eigenvalues[k].max(1.0).sqrt() * eigen.eigenvectors[(node, k)]
    };
    // The flattest direction of a car is up; where heights are known they take its place.
    Some(
        (0..n)
            .map(|node| {
                let up = firm_height(sketch, node).unwrap_or_else(|| axis(2, node));
                V3::new(axis(0, node), axis(1, node), up)
            })
            .collect(),
    )
}
