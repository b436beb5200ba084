//! From readings to the best shape: starts, mirror image, twin places.

use super::handedness::{
    Directions, Handedness, Twin, TwinPlace, directions, likely_hand, likely_rear,
};
use super::{AdjustError, Adjustment};
use crate::linear::{M3, V3, rotation};
use crate::model::{Layout, Pose, State};
use crate::network::{EndId, Network, PointId, ReadingKind, StartValues};
use crate::solve::least_squares::{Effort, Rest};
use crate::solve::network::solve_from;
use crate::start::{Sketch, alternatives, end_alternatives, lift, node_places, rigid, sketches};
use crate::statistics::chi_squared_quantile;
use tubewright_geometry::math;

/// A shape whose sum of squares would occur by chance this often is taken without looking further.
const CONTENT_PROBABILITY: f64 = 0.9999;

/// Two sums of squares nearer than this do not tell two shapes apart: 1 % of χ² with one degree of
/// freedom.
const NO_DIFFERENCE: f64 = 6.63;

/// Adjusts a network from its readings alone.
///
/// Several starts are tried and the smallest v'Pv is kept; of mirror images the one that the words
/// about the places say. What the readings do not fix is listed by [`Adjustment::undetermined`]; the
/// rest is usable.
///
/// # Errors
/// [`AdjustError`] for a network that cannot be worked with. A bad fit is no error.
pub fn adjust(network: &Network) -> Result<Adjustment, AdjustError> {
    solve(network, &StartValues::default())
}

/// Adjusts a network from rough places, as of an earlier adjustment. With a place for every point
/// they are the only start, so that a mirror twin nearer to them is kept; else they stand while the
/// others are found.
///
/// # Errors
/// As [`adjust`].
pub fn adjust_near(network: &Network, start: &StartValues) -> Result<Adjustment, AdjustError> {
    if start.points.len() != network.points.len() {
        return Err(AdjustError::StartCount {
            given: start.points.len(),
            needed: network.points.len(),
        });
    }
    for (spec, place) in network.points.iter().zip(&start.points) {
        if place.is_some_and(|p| !p.is_finite()) {
            return Err(crate::network::NetworkError::BadCoordinate {
                name: spec.name.clone(),
            }
            .into());
        }
    }
    for (end, frame) in network.ends.iter().zip(&start.ends) {
        if frame.is_some_and(|frame| !frame.origin.is_finite()) {
            return Err(crate::network::NetworkError::BadCoordinate {
                name: end.name.clone(),
            }
            .into());
        }
    }
    solve(network, start)
}

/// Solves again from the shape of an earlier adjustment of a network with the same points, ends and
/// set-ups.
pub(crate) fn readjust(network: Network, from: &Adjustment) -> Adjustment {
    let layout = Layout::of(&network);
    let rest = solve_from(&network, &layout, from.state.clone(), Effort::default());
    Adjustment::at(network, layout, rest, from.handedness)
}

fn solve(network: &Network, start: &StartValues) -> Result<Adjustment, AdjustError> {
    network.checked()?;
    let layout = Layout::of(network);
    let sketch = Sketch::of(network, start);
    // With no end to be placed nothing is to be looked for.
    if let Some(places) = sketch.held.iter().copied().collect::<Option<Vec<V3>>>() {
        let state = lift(network, &layout, &sketch, &places);
        let rest = solve_from(network, &layout, state, Effort::default());
        if !rest.cost.is_finite() {
            return Err(AdjustError::NoShape);
        }
        let at = Adjustment::at(network.clone(), layout, rest, Handedness::Measured);
        return Ok(at);
    }
    let all_given = !start.points.is_empty() && start.points.iter().all(Option::is_some);
    let best = best_start(network, &layout, &sketch).ok_or(AdjustError::NoShape)?;
    let (best, handedness) = if all_given {
        (best, Handedness::Measured)
    } else {
        settle_hand(network, &layout, &sketch, best)
    };
    let (best, twins) = settle_twins(network, &layout, &sketch, best, !all_given);
    // What was kept of several is known roughly so far.
    let steps = best.steps;
    let mut best = solve_from(network, &layout, best.state, Effort::default());
    best.steps += steps;
    let mut adjustment = Adjustment::at(network.clone(), layout, best, handedness);
    adjustment.twins = twins;
    Ok(adjustment)
}

/// Sum of squares that is taken without looking further.
fn content(network: &Network, layout: &Layout) -> f64 {
    let rows: usize = network
        .readings
        .iter()
        .filter(|r| !r.set_aside)
        .map(|r| {
            if matches!(r.kind, ReadingKind::Symmetry { .. }) {
                3
            } else {
                1
            }
        })
        .sum();
    let free = if network.has_datum() { 0 } else { 6 };
    let freedom = (rows + free).saturating_sub(layout.width);
    chi_squared_quantile(CONTENT_PROBABILITY, freedom).max(1e-3)
}

fn best_start(network: &Network, layout: &Layout, sketch: &Sketch) -> Option<Rest<State>> {
    let content = content(network, layout);
    let mut best: Option<Rest<State>> = None;
    let mut agreeing = 0;
    for places in sketches(sketch) {
        let state = lift(network, layout, sketch, &places);
        let rest = solve_from(network, layout, state, Effort::without_last_digits());
        if !rest.cost.is_finite() {
            continue;
        }
        match &best {
            Some(b) if (rest.cost - b.cost).abs() <= 1e-6 * (1.0 + b.cost) => agreeing += 1,
            Some(b) if rest.cost > b.cost => {}
            _ => {
                best = Some(rest);
                agreeing = 1;
            }
        }
        // Two starts of their own that meet in the same shape, or a shape that fits: enough.
        if agreeing >= 3 || best.as_ref().is_some_and(|b| b.cost <= content) {
            break;
        }
    }
    best
}

/// Keeps the shape or its mirror image. What the person says of left and right, front and rear is what
/// those words mean for this car: readings that turn (bearings) do not overrule it, and one that
/// only the mirror image fits stands out as doubtful. Where nothing is said, they decide.
fn settle_hand(
    network: &Network,
    layout: &Layout,
    sketch: &Sketch,
    best: Rest<State>,
) -> (Rest<State>, Handedness) {
    let told = if network.has_datum() {
        datum_hand(network, &best.state)
    } else {
        directions(network, &best.state).hand()
    };
    let turning = network
        .readings
        .iter()
        .any(|r| !r.set_aside && matches!(r.kind, ReadingKind::Bearing { .. }));
    let likely = told.or_else(|| likely_hand(network, &best.state));
    if likely != Some(-1.0) && !turning {
        let hand = match told {
            Some(_) => Handedness::Told,
            None if network.has_datum() => Handedness::Measured,
            None => Handedness::Assumed,
        };
        return (best, hand);
    }
    let mut places = node_places(network, sketch, &best.state);
    mirror(network, &best.state, &mut places);
    let state = lift(network, layout, sketch, &places);
    let other = solve_from(network, layout, state, Effort::without_last_digits());
    let agreed = match told {
        Some(hand) if !network.has_datum() => Some(hand < 0.0),
        _ => None,
    };
    if other.cost < best.cost - NO_DIFFERENCE && agreed != Some(false) {
        return (other, Handedness::Measured);
    }
    if other.cost > best.cost + NO_DIFFERENCE && agreed != Some(true) {
        return (best, Handedness::Measured);
    }
    match told {
        Some(hand) if hand < 0.0 => (other, Handedness::Told),
        Some(_) => (best, Handedness::Told),
        None if likely == Some(-1.0) => (other, Handedness::Assumed),
        None => (best, Handedness::Assumed),
    }
}

/// In a held frame y is to the right, so that the words about sides can be compared directly.
fn datum_hand(network: &Network, state: &State) -> Option<f64> {
    let free = network
        .points
        .iter()
        .any(|p| p.held.iter().any(Option::is_none));
    let sum: f64 = network
        .points
        .iter()
        .zip(&state.points)
        .filter(|(p, _)| p.held.iter().any(Option::is_none))
        .map(|(p, place)| match p.hint.side {
            Some(crate::network::Side::Left) => -place.y.signum(),
            Some(crate::network::Side::Right) => place.y.signum(),
            _ => 0.0,
        })
        .sum();
    (free && sum != 0.0).then(|| sum.signum())
}

/// Mirrors in a plane that keeps heights: upright, through two held places where there are such.
fn mirror(network: &Network, state: &State, places: &mut [V3]) {
    let up = directions(network, state).up.unwrap_or_else(V3::z);
    let held: Vec<V3> = network
        .points
        .iter()
        .zip(&state.points)
        .filter(|(p, _)| p.held.iter().all(Option::is_some))
        .map(|(_, place)| *place)
        .collect();
    let (through, normal) = match held.as_slice() {
        [first, .., last] => (*first, up.cross(&(last - first))),
        [only] => (*only, crate::linear::any_normal(up)),
        [] => (V3::zeros(), crate::linear::any_normal(up)),
    };
    let normal = normal
        .try_normalize(1e-9)
        .unwrap_or_else(|| crate::linear::any_normal(up));
    for place in places {
        *place -= normal * (2.0 * normal.dot(&(*place - through)));
    }
}

/// Most rounds of looking for better places of single points and ends.
const ROUNDS: usize = 4;

/// Least turn in radians that makes another facing of an end: three degrees, beyond what readings of
/// a rim leave open otherwise.
const TURNED_RAD: f64 = 0.05;

/// Least distance in mm that makes another place: far beyond what readings of one place leave open.
const APART_MM: f64 = 20.0;

/// Notes a second place once, however many ways lead to it.
fn note(twins: &mut Vec<TwinPlace>, found: TwinPlace) {
    let known = twins.iter().any(|twin| {
        twin.what == found.what
            && (twin.apart_mm - found.apart_mm).abs() < APART_MM
            && (twin.turned_rad - found.turned_rad).abs() < TURNED_RAD
    });
    if !known {
        twins.push(found);
    }
}

/// Tries the other places of each end and, unless all are given, of each point: a better one is taken,
/// of equal ones that which the words say, and the other is noted when they say nothing.
fn settle_twins(
    network: &Network,
    layout: &Layout,
    sketch: &Sketch,
    mut best: Rest<State>,
    with_points: bool,
) -> (Rest<State>, Vec<TwinPlace>) {
    let mut twins = Vec::new();
    let content = content(network, layout);
    for _ in 0..ROUNDS {
        twins.clear();
        let before = best.cost;
        for index in 0..network.points.len() {
            if !with_points || network.points[index].held.iter().any(Option::is_some) {
                continue;
            }
            let places = node_places(network, sketch, &best.state);
            for place in alternatives(sketch, &places, index) {
                let mut state = best.state.clone();
                state.points[index] = place;
                let rest = solve_from(network, layout, state, Effort::without_last_digits());
                let (turn, shift) = onto(&rest.state, &best.state, Some(index));
                let there = turn * rest.state.points[index] + shift;
                let here = best.state.points[index];
                if (there - here).norm() < APART_MM || rest.cost > best.cost + NO_DIFFERENCE {
                    continue;
                }
                let clear = rest.cost < best.cost - NO_DIFFERENCE;
                let said =
                    told(network, &best.state).prefers(network, &best.state, index, there, here);
                if clear || said.unwrap_or(rest.cost < best.cost) {
                    if !clear && said.is_none() {
                        note(&mut twins, twin(index, here, there, best.cost - rest.cost));
                    }
                    best = rest;
                } else if said.is_none() {
                    note(&mut twins, twin(index, there, here, rest.cost - best.cost));
                }
            }
        }
        for end in 0..network.ends.len() {
            let places = node_places(network, sketch, &best.state);
            let mut poses: Vec<Pose> = end_alternatives(sketch, &places, end)
                .iter()
                .map(|other| lift(network, layout, sketch, other).ends.swap_remove(end))
                .collect();
            // It may face the other way, and one that lies badly among its readings may be folded about
            // any of its axes.
            let others = turned_otherwise(best.state.ends[end]);
            let tried = if best.cost > content {
                others.len()
            } else {
                FACING_BACK
            };
            poses.extend(others.into_iter().take(tried));
            for pose in poses {
                let mut start = best.state.clone();
                start.ends[end] = pose;
                let rest = solve_from(network, layout, start, Effort::without_last_digits());
                let (here, there) = (best.state.ends[end], rest.state.ends[end]);
                let (turn, shift) = onto(&rest.state, &best.state, None);
                let found = TwinPlace {
                    what: Twin::End(EndId(end)),
                    apart_mm: (turn * there.origin + shift - here.origin).norm(),
                    turned_rad: turn_between(here.axes, turn * there.axes),
                    worse_by: (rest.cost - best.cost).abs(),
                };
                let same = found.apart_mm < APART_MM && found.turned_rad < TURNED_RAD;
                if !same && found.worse_by < NO_DIFFERENCE {
                    note(&mut twins, found);
                    // Gas leaves a port toward the rear far more often than toward the front.
                    let rear = directions(network, &best.state)
                        .rear
                        .or_else(|| likely_rear(network, &best.state));
                    let gain = rear.map_or(0.0, |rear| {
                        let travel = |axes: M3| rear.dot(&axes.column(0));
                        travel(turn * there.axes) - travel(here.axes)
                    });
                    if gain.abs() > CLEARLY {
                        if gain > 0.0 {
                            best = rest;
                        }
                        continue;
                    }
                }
                if rest.cost < best.cost - 1e-9 {
                    best = rest;
                }
            }
        }
        if best.cost > before - 1e-6 {
            break;
        }
    }
    (best, twins)
}

/// How much more rearwards (cosine) a facing must be to be preferred where the readings allow both.
const CLEARLY: f64 = 0.5;

/// How many of [`turned_otherwise`] face the other way.
const FACING_BACK: usize = 2;

/// The same place turned by a half about each of its axes, those across its travel first, and by a quarter
/// either way about these.
fn turned_otherwise(pose: Pose) -> Vec<Pose> {
    let axis = |k: usize| pose.axes.column(k).into_owned();
    let halves = [1, 2, 0].map(|k| axis(k) * core::f64::consts::PI);
    let quarters = [1, 2]
        .into_iter()
        .flat_map(|k| [axis(k), -axis(k)])
        .map(|axis| axis * core::f64::consts::FRAC_PI_2);
    halves
        .into_iter()
        .chain(quarters)
        .map(|turn| Pose {
            axes: rotation(turn) * pose.axes,
            ..pose
        })
        .collect()
}

fn twin(index: usize, place: V3, kept: V3, worse_by: f64) -> TwinPlace {
    TwinPlace {
        what: Twin::Point(PointId(index)),
        apart_mm: (place - kept).norm(),
        turned_rad: 0.0,
        worse_by,
    }
}

/// The motion that brings the points of one free shape onto those of another, one left out.
fn onto(from: &State, to: &State, but: Option<usize>) -> (M3, V3) {
    let others = |state: &State| -> Vec<V3> {
        (0..state.points.len())
            .filter(|i| Some(*i) != but)
            .map(|i| state.points[i])
            .collect()
    };
    rigid(&others(from), &others(to))
}

/// Angle of the rotation that leads from one set of axes to another, radians.
fn turn_between(a: M3, b: M3) -> f64 {
    let r = b * a.transpose();
    let sine = V3::new(
        r[(2, 1)] - r[(1, 2)],
        r[(0, 2)] - r[(2, 0)],
        r[(1, 0)] - r[(0, 1)],
    )
    .norm();
    math::atan2(sine, r.trace() - 1.0)
}

fn told(network: &Network, state: &State) -> Directions {
    let mut found = directions(network, state);
    if network.has_datum() {
        found = Directions {
            up: Some(V3::z()),
            right: Some(V3::y()),
            rear: Some(V3::x()),
        };
    }
    found
}
