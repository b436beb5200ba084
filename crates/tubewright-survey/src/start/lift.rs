//! From a sketch to values of all unknowns.

use super::sketch::{Sketch, end_of};
use crate::linear::{M3, V3};
use crate::model::{Facing, Floor, Layout, Pose, State, local_place};
use crate::network::{Network, ReadingKind, Target};

/// Proper rotation and shift that bring `from` onto `to` best; the identity rotation for fewer than
/// two places. Kabsch 1976 (determinant correction).
pub(crate) fn rigid(from: &[V3], to: &[V3]) -> (M3, V3) {
    #[expect(clippy::cast_precision_loss, reason = "a count of places is small")]
    let count = from.len().max(1) as f64;
    let (fc, tc) = (
        from.iter().sum::<V3>() / count,
        to.iter().sum::<V3>() / count,
    );
    let mut h = M3::zeros();
    for (f, t) in from.iter().zip(to) {
        h += (f - fc) * (t - tc).transpose();
    }
    let svd = h.svd(true, true);
    let rotation = match (svd.u, svd.v_t) {
        (Some(u), Some(v_t)) => {
            let v = v_t.transpose();
            let sign = (v * u.transpose()).determinant().signum();
            // nalgebra sorts singular values; the last is the one to flip.
            v * M3::from_diagonal(&V3::new(1.0, 1.0, sign)) * u.transpose()
        }
        _ => M3::identity(),
    };
    (rotation, tc - rotation * fc)
}

/// All unknowns from the places of a sketch.
pub(crate) fn lift(network: &Network, layout: &Layout, sketch: &Sketch, places: &[V3]) -> State {
    let mut points: Vec<V3> = places[..network.points.len()].to_vec();
    onto_held(network, &mut points);
    let mut ends = Vec::with_capacity(network.ends.len());
    for (index, end) in network.ends.iter().enumerate() {
        let own: Vec<usize> = (0..sketch.nodes.len())
            .filter(|&n| end_of(sketch.nodes[n]) == Some(index))
            .collect();
        let local: Vec<V3> = own
            .iter()
            .map(|&n| local_place(end, sketch.nodes[n]))
            .collect();
        let seen: Vec<V3> = own.iter().map(|&n| places[n]).collect();
        let (axes, origin) = rigid(&local, &seen);
        ends.push(Pose { origin, axes });
    }
    let mut state = State {
        points,
        ends,
        floors: Vec::new(),
        plane: Facing::new(V3::y(), 0.0),
        sideways: None,
    };
    let mut up: Option<V3> = None;
    for (index, setup) in network.setups.iter().enumerate() {
        let floor = if setup.floor_is_datum {
            Floor::level(V3::z(), 0.0)
        } else {
            floor_from_heights(network, &state, index, up)
        };
        up.get_or_insert_with(|| floor.plane.normal());
        state.floors.push(floor);
    }
    if layout.plane.is_some() {
        state.plane = centre_plane(network, &state);
    }
    state
}

/// Puts held coordinates to their values, moving the rest along rigidly.
fn onto_held(network: &Network, points: &mut [V3]) {
    let mut from = Vec::new();
    let mut to = Vec::new();
    for (spec, place) in network.points.iter().zip(points.iter()) {
        if let [Some(x), Some(y), Some(z)] = spec.held {
            from.push(*place);
            to.push(V3::new(x, y, z));
        }
    }
    if !from.is_empty() && from.iter().zip(&to).any(|(f, t)| (f - t).norm() > 1e-9) {
        let (rotation, shift) = rigid(&from, &to);
        for place in points.iter_mut() {
            *place = rotation * *place + shift;
        }
    }
    for (spec, place) in network.points.iter().zip(points.iter_mut()) {
        for k in 0..3 {
            if let Some(value) = spec.held[k] {
                place[k] = value;
            }
        }
    }
}

/// Floor plane from the heights over it: gradient of the height in the plane of the marks, and the
/// sign of the rest from `up`, the other set-ups' up.
fn floor_from_heights(network: &Network, state: &State, setup: usize, up: Option<V3>) -> Floor {
    let mut places = Vec::new();
    let mut heights = Vec::new();
    for reading in network.readings.iter().filter(|r| !r.set_aside) {
        if let ReadingKind::Height { target, setup: s } = reading.kind
            && s.0 == setup
        {
            places.push(state.place(network, target.target));
            heights.push(reading.value - target.contact.along_tape_mm());
        }
    }
    let fallback = up.unwrap_or_else(V3::z);
    if places.is_empty() {
        return Floor::level(fallback, 0.0);
    }
    #[expect(clippy::cast_precision_loss, reason = "a count of readings is small")]
    let count = places.len() as f64;
    let centre = places.iter().sum::<V3>() / count;
    let mean = heights.iter().sum::<f64>() / count;
    let mut spread = M3::zeros();
    let mut slope = V3::zeros();
    for (p, h) in places.iter().zip(&heights) {
        let d = p - centre;
        spread += d * d.transpose();
        slope += d * (h - mean);
    }
    let eigen = spread.symmetric_eigen();
    let mut gradient = V3::zeros();
    let mut flat = V3::zeros();
    let widest = eigen.eigenvalues.max();
    for k in 0..3 {
        let axis = eigen.eigenvectors.column(k).into_owned();
        // Thinner than a tenth of the widest spread, heights say nothing of the slope this way.
        if eigen.eigenvalues[k] > 0.01 * widest && widest > 0.0 {
            gradient += axis * (axis.dot(&slope) / eigen.eigenvalues[k]);
        } else {
            let sign = if axis.dot(&fallback) < 0.0 { -1.0 } else { 1.0 };
            flat += axis * (sign * axis.dot(&fallback).abs().max(1e-3));
        }
    }
    let length = gradient.norm().min(1.0);
    if gradient.norm() > 1.0 {
        gradient /= gradient.norm();
    }
    let rest = flat.try_normalize(1e-12).unwrap_or_else(V3::zeros);
    let normal = (gradient + rest * (1.0 - length * length).max(0.0).sqrt())
        .try_normalize(1e-9)
        .unwrap_or(fallback);
    Floor::level(normal, normal.dot(&centre) - mean)
}

fn centre_plane(network: &Network, state: &State) -> Facing {
    let mut direction = V3::zeros();
    let mut middle = V3::zeros();
    let mut count = 0.0;
    for reading in network.readings.iter().filter(|r| !r.set_aside) {
        if let ReadingKind::Symmetry { left, right } = reading.kind {
            let (p, q) = (state.place(network, left), state.place(network, right));
            direction += (q - p).try_normalize(1e-9).unwrap_or_else(V3::zeros);
            middle += (p + q) * 0.5;
            count += 1.0;
        }
    }
    let normal = direction.try_normalize(1e-9).unwrap_or_else(V3::y);
    Facing::new(normal, normal.dot(&middle) / f64::max(count, 1.0))
}

/// Places of all nodes of a sketch at a solved state.
pub(crate) fn node_places(network: &Network, sketch: &Sketch, state: &State) -> Vec<V3> {
    sketch
        .nodes
        .iter()
        .map(|&target: &Target| state.place(network, target))
        .collect()
}
