//! From readings to the best shape: starts, mirror image, twin places.

use super::handedness::{Directions, Handedness, TwinPlace, directions};
use super::{AdjustError, Adjustment};
use crate::linear::{V3, point};
use crate::model::{Layout, State};
use crate::network::{Network, PointId, ReadingKind, StartValues};
use crate::solve::least_squares::{Effort, Rest};
use crate::solve::network::solve_from;
use crate::start::{Sketch, alternatives, lift, node_places, sketches};
use crate::statistics::chi_squared_quantile;

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
    solve(network, start)
}

/// Solves again from the shape of an earlier adjustment of a network with the same points, ends and
/// set-ups.
#[expect(dead_code, reason = "data snooping is the next step")]
pub(crate) fn readjust(network: Network, from: &Adjustment) -> Adjustment {
    let layout = Layout::of(&network);
    let rest = solve_from(&network, &layout, from.state.clone(), Effort::default());
    Adjustment::at(network, layout, rest, from.handedness)
}

fn solve(network: &Network, start: &StartValues) -> Result<Adjustment, AdjustError> {
    network.checked()?;
    let layout = Layout::of(network);
    let sketch = Sketch::of(network, start);
    let all_given = !start.points.is_empty() && start.points.iter().all(Option::is_some);
    let best = best_start(network, &layout, &sketch).ok_or(AdjustError::NoShape)?;
    let (best, handedness) = if all_given {
        (best, Handedness::Measured)
    } else {
        settle_hand(network, &layout, &sketch, best)
    };
    let (best, twins) = if all_given {
        (best, Vec::new())
    } else {
        settle_twins(network, &layout, &sketch, best)
    };
    let mut adjustment = Adjustment::at(network.clone(), layout, best, handedness);
    adjustment.twins = twins;
    Ok(adjustment)
}

fn best_start(network: &Network, layout: &Layout, sketch: &Sketch) -> Option<Rest<State>> {
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
    let content = chi_squared_quantile(CONTENT_PROBABILITY, freedom).max(1e-3);
    let mut best: Option<Rest<State>> = None;
    let mut agreeing = 0;
    for places in sketches(sketch) {
        let state = lift(network, layout, sketch, &places);
        let rest = solve_from(network, layout, state, Effort::default());
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

/// Keeps the shape or its mirror image.
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
    if told != Some(-1.0) && !turning {
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
    let other = solve_from(network, layout, state, Effort::default());
    if other.cost < best.cost - NO_DIFFERENCE {
        return (other, Handedness::Measured);
    }
    if other.cost > best.cost + NO_DIFFERENCE {
        return (best, Handedness::Measured);
    }
    match told {
        Some(hand) if hand < 0.0 => (other, Handedness::Told),
        Some(_) => (best, Handedness::Told),
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

/// For each point that fits nearly as well elsewhere, keeps the place that the words say and notes the
/// other when they say nothing.
fn settle_twins(
    network: &Network,
    layout: &Layout,
    sketch: &Sketch,
    mut best: Rest<State>,
) -> (Rest<State>, Vec<TwinPlace>) {
    let mut twins = Vec::new();
    for index in 0..network.points.len() {
        if network.points[index].held.iter().any(Option::is_some) {
            continue;
        }
        let places = node_places(network, sketch, &best.state);
        for place in alternatives(sketch, &places, index) {
            let mut state = best.state.clone();
            state.points[index] = place;
            let rest = solve_from(network, layout, state, Effort::default());
            let moved = rest.state.points[index] - best.state.points[index];
            if rest.cost > best.cost + NO_DIFFERENCE || moved.norm() < 20.0 {
                continue;
            }
            let said: Option<bool> = told(network, &best.state).prefers(
                network,
                &best.state,
                index,
                rest.state.points[index],
                best.state.points[index],
            );
            match said {
                Some(true) => best = rest,
                Some(false) => {}
                None => twins.push(TwinPlace {
                    point: PointId(index),
                    apart_mm: moved.norm(),
                    worse_by: rest.cost - best.cost,
                    place: point(rest.state.points[index]),
                }),
            }
            break;
        }
    }
    (best, twins)
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
