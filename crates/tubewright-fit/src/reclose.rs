//! The rest of a run brought to its end again from where a joint really is, with the least change.
//!
//! The sizes that may change are found by Newton steps of least weighted change with bounds (an active
//! set), then brought to the shop's steps: of the neighbouring steps of every size those are taken that
//! bring the end nearest, counted linearly and verified exactly.

use nalgebra::{DMatrix, DVector, SMatrix, SVector};
use tubewright_geometry::{Frame, Piece, Point, UnitVector};

/// What may change on a piece, with the bounds of each size.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct May {
    /// The clock of a bend.
    pub clock: bool,
    /// The length of a straight, between these, mm.
    pub length_mm: Option<(f64, f64)>,
    /// The angle of a bend, between these, radians.
    pub angle_rad: Option<(f64, f64)>,
}

/// A piece that is still to be tacked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loose {
    /// The piece as it is planned or cut.
    pub piece: Piece,
    /// What may change on it.
    pub may: May,
}

/// The shop's steps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Steps {
    /// Of lengths, mm.
    pub length_mm: f64,
    /// Of angles of bends, radians.
    pub angle_rad: f64,
    /// Of clocks, radians.
    pub clock_rad: f64,
}

/// Where the pieces should arrive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aim {
    /// The place.
    pub point: Point,
    /// The direction of travel there.
    pub direction: UnitVector,
    /// How far off the place counts as much as `direction_rad` off the direction, mm.
    pub place_mm: f64,
    /// See `place_mm`, radians.
    pub direction_rad: f64,
}

/// A way to go on.
#[derive(Clone, Debug, PartialEq)]
pub struct WayOn {
    /// The pieces, in the shop's steps.
    pub pieces: Vec<Piece>,
    /// How far from the aim they end, mm.
    pub place_error_mm: f64,
    /// How far from its direction, radians.
    pub direction_error_rad: f64,
}

/// One size of one piece.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Size {
    Clock(usize),
    Length(usize),
    Angle(usize),
}

struct Variable {
    size: Size,
    start: f64,
    low: f64,
    high: f64,
    /// Change that counts as one.
    scale: f64,
    step: f64,
}

/// Changes that count alike: 3° of clock, 10 mm of length, 2° of bend (common practice, no source).
const CLOCK_SCALE_DEG: f64 = 3.0;
const LENGTH_SCALE_MM: f64 = 10.0;
const ANGLE_SCALE_DEG: f64 = 2.0;

const NEWTON_STEPS: usize = 60;
const CLOSED: f64 = 1e-9;
const MOST_COMBINATIONS: usize = 150_000;
const EXACT_WAYS: usize = 400;

/// Ways to reach the aim from `start`, best arrival first, at most `most`. Sizes that may not change
/// stay as they are; an empty list means that with these freedoms the end cannot be reached.
#[must_use]
pub fn ways_on(
    start: &Frame,
    loose: &[Loose],
    aim: &Aim,
    steps: &Steps,
    most: usize,
) -> Vec<WayOn> {
    let variables = variables(loose, steps);
    let pieces: Vec<Piece> = loose.iter().map(|loose| loose.piece).collect();
    if variables.is_empty() {
        return vec![way(start, pieces, aim)];
    }
    let Some(smooth) = closed(start, &pieces, &variables, aim) else {
        return Vec::new();
    };
    rounded(start, &pieces, &variables, &smooth, aim, most)
}

/// The pieces as they are: where they arrive.
#[must_use]
pub fn as_they_are(start: &Frame, pieces: Vec<Piece>, aim: &Aim) -> WayOn {
    way(start, pieces, aim)
}

fn variables(loose: &[Loose], steps: &Steps) -> Vec<Variable> {
    let mut variables = Vec::new();
    for (index, loose) in loose.iter().enumerate() {
        match loose.piece {
            Piece::Straight { length_mm } => {
                if let Some((low, high)) = loose.may.length_mm {
                    variables.push(Variable {
                        size: Size::Length(index),
                        start: length_mm,
                        low,
                        high,
                        scale: LENGTH_SCALE_MM,
                        step: steps.length_mm,
                    });
                }
            }
            Piece::Bend {
                bend_rad,
                clock_rad,
                ..
            } => {
                if loose.may.clock {
                    variables.push(Variable {
                        size: Size::Clock(index),
                        start: clock_rad,
                        low: f64::NEG_INFINITY,
                        high: f64::INFINITY,
                        scale: CLOCK_SCALE_DEG.to_radians(),
                        step: steps.clock_rad,
                    });
                }
                if let Some((low, high)) = loose.may.angle_rad {
                    variables.push(Variable {
                        size: Size::Angle(index),
                        start: bend_rad,
                        low,
                        high,
                        scale: ANGLE_SCALE_DEG.to_radians(),
                        step: steps.angle_rad,
                    });
                }
            }
            _ => {}
        }
    }
    variables
}

fn with(pieces: &[Piece], variables: &[Variable], x: &[f64]) -> Vec<Piece> {
    let mut out = pieces.to_vec();
    for (variable, value) in variables.iter().zip(x) {
        let (Size::Clock(index) | Size::Length(index) | Size::Angle(index)) = variable.size;
        let Some(piece) = out.get_mut(index) else {
            continue;
        };
        match (piece, variable.size) {
            (Piece::Straight { length_mm }, Size::Length(_)) => *length_mm = *value,
            (Piece::Bend { clock_rad, .. }, Size::Clock(_)) => *clock_rad = *value,
            (Piece::Bend { bend_rad, .. }, Size::Angle(_)) => *bend_rad = *value,
            _ => {}
        }
    }
    out
}

/// Error at the end in units of the aim's tolerances: three of place, two of direction.
fn error(end: &Frame, aim: &Aim) -> SVector<f64, 5> {
    let off = (end.origin - aim.point) / aim.place_mm;
    let (a, b) = across(aim);
    let d = end.travel().vector();
    SVector::from([
        off.x,
        off.y,
        off.z,
        a.dot(d) / aim.direction_rad,
        b.dot(d) / aim.direction_rad,
    ])
}

fn across(aim: &Aim) -> (UnitVector, UnitVector) {
    let frame = Frame::upright(aim.point, aim.direction);
    (frame.twelve(), frame.three())
}

fn way(start: &Frame, pieces: Vec<Piece>, aim: &Aim) -> WayOn {
    let end = pieces
        .iter()
        .fold(*start, |frame, piece| piece.carry(&frame));
    WayOn {
        pieces,
        place_error_mm: end.origin.distance(aim.point),
        direction_error_rad: end.travel().angle_to(aim.direction),
    }
}

/// Derivatives of [`error`] by each variable.
fn derivatives(
    start: &Frame,
    pieces: &[Piece],
    variables: &[Variable],
    aim: &Aim,
) -> (SVector<f64, 5>, DMatrix<f64>) {
    let mut frames = vec![*start];
    let mut frame = *start;
    for piece in pieces {
        frame = piece.carry(&frame);
        frames.push(frame);
    }
    let end = frame;
    let (a, b) = across(aim);
    let mut by = DMatrix::zeros(5, variables.len());
    for (column, variable) in variables.iter().enumerate() {
        let (Size::Clock(index) | Size::Length(index) | Size::Angle(index)) = variable.size;
        let (Some(at), Some(piece)) = (frames.get(index), pieces.get(index)) else {
            continue;
        };
        let (shift, lean) = match (variable.size, *piece) {
            (Size::Length(_), _) => (at.travel().vector(), None),
            (Size::Clock(_), _) => {
                let axis = at.travel().vector();
                (axis.cross(end.origin - at.origin), Some(axis))
            }
            (
                Size::Angle(_),
                Piece::Bend {
                    clock_rad, clr_mm, ..
                },
            ) => {
                let turned = at.rolled(clock_rad);
                let axis = turned.three().vector();
                let centre = turned.origin + turned.twelve() * clr_mm;
                (axis.cross(end.origin - centre), Some(axis))
            }
            _ => continue,
        };
        let d = lean.map(|axis| axis.cross(end.travel().vector()));
        let column_values = [
            shift.x / aim.place_mm,
            shift.y / aim.place_mm,
            shift.z / aim.place_mm,
            d.map_or(0.0, |d| a.dot(d)) / aim.direction_rad,
            d.map_or(0.0, |d| b.dot(d)) / aim.direction_rad,
        ];
        for (row, value) in column_values.into_iter().enumerate() {
            by[(row, column)] = value;
        }
    }
    (error(&end, aim), by)
}

/// The least change that closes exactly, or `None`.
fn closed(start: &Frame, pieces: &[Piece], variables: &[Variable], aim: &Aim) -> Option<Vec<f64>> {
    let mut x: Vec<f64> = variables.iter().map(|variable| variable.start).collect();
    let mut best: Option<(f64, Vec<f64>)> = None;
    for _ in 0..NEWTON_STEPS {
        let (off, by) = derivatives(start, &with(pieces, variables, &x), variables, aim);
        let size = off.norm();
        if best.as_ref().is_none_or(|(least, _)| size < *least) {
            best = Some((size, x.clone()));
        }
        let step = least_change(&off, &by, variables, &x);
        let change = step
            .iter()
            .zip(variables)
            .map(|(s, v)| (s / v.scale).abs())
            .fold(0.0, f64::max);
        // Far steps leave the linear: shorten them.
        let share = (MOST_STEP / change.max(MOST_STEP)).min(1.0);
        for ((value, step), variable) in x.iter_mut().zip(&step).zip(variables) {
            *value = (*value + share * step).clamp(variable.low, variable.high);
        }
        if size < CLOSED && change < 1e-9 {
            break;
        }
    }
    // What a fitter cannot feel is closed; the rest is left to rounding to judge.
    best.filter(|(size, _)| *size < 0.05).map(|(_, x)| x)
}

/// Largest change of a size in one step, in scales.
const MOST_STEP: f64 = 3.0;

/// Step that closes the linear problem with the least change from the start values in all, keeping the
/// bounds: sizes that would leave theirs are held at them and the rest is solved again.
fn least_change(
    off: &SVector<f64, 5>,
    by: &DMatrix<f64>,
    variables: &[Variable],
    x: &[f64],
) -> Vec<f64> {
    let count = variables.len();
    let mut held: Vec<Option<f64>> = vec![None; count];
    let mut step = vec![0.0; count];
    for _ in 0..=count {
        let mut gram = SMatrix::<f64, 5, 5>::identity() * 1e-12;
        let mut right = -off;
        for (i, variable) in variables.iter().enumerate() {
            let column = by.fixed_view::<5, 1>(0, i).into_owned();
            let back = variable.start - x.get(i).copied().unwrap_or(0.0);
            match held.get(i).copied().flatten() {
                Some(step) => right -= column * step,
                None => {
                    gram += column * column.transpose() * (variable.scale * variable.scale);
                    right -= column * back;
                }
            }
        }
        let Some(multiplier) = gram.lu().solve(&right) else {
            return step;
        };
        let mut is_inside = true;
        for (i, variable) in variables.iter().enumerate() {
            let now = x.get(i).copied().unwrap_or(0.0);
            let wanted = match held.get(i).copied().flatten() {
                Some(step) => step,
                None => {
                    let column = by.fixed_view::<5, 1>(0, i).into_owned();
                    variable.start - now + variable.scale * variable.scale * column.dot(&multiplier)
                }
            };
            let bounded = (now + wanted).clamp(variable.low, variable.high) - now;
            if (bounded - wanted).abs() > 1e-12
                && let Some(slot) = held.get_mut(i)
                && slot.is_none()
            {
                *slot = Some(bounded);
                is_inside = false;
            }
            if let Some(slot) = step.get_mut(i) {
                *slot = bounded;
            }
        }
        if is_inside {
            break;
        }
    }
    step
}

/// Neighbouring steps of every size, counted linearly all together where there are few enough, the
/// least sensitive sizes going to their nearest step first.
fn rounded(
    start: &Frame,
    pieces: &[Piece],
    variables: &[Variable],
    smooth: &[f64],
    aim: &Aim,
    most: usize,
) -> Vec<WayOn> {
    let (off, by) = derivatives(start, &with(pieces, variables, smooth), variables, aim);
    let choices: Vec<Vec<f64>> = variables
        .iter()
        .zip(smooth)
        .map(|(variable, value)| neighbours(variable, *value))
        .collect();
    let mut order: Vec<usize> = (0..variables.len()).collect();
    let weight = |i: usize| {
        variables
            .get(i)
            .map_or(0.0, |v| by.column(i).norm() * v.step)
    };
    order.sort_by(|a, b| weight(*b).total_cmp(&weight(*a)));
    // As many of the most sensitive sizes as can be enumerated.
    let mut combinations = 1usize;
    let mut free: Vec<usize> = Vec::new();
    let mut base = smooth.to_vec();
    let mut base_off = DVector::from_iterator(5, off.iter().copied());
    for i in order {
        let count = choices.get(i).map_or(1, Vec::len).max(1);
        if combinations.saturating_mul(count) <= MOST_COMBINATIONS {
            combinations *= count;
            free.push(i);
        } else if let (Some(slot), Some(value)) = (base.get_mut(i), smooth.get(i)) {
            let nearest = choices
                .get(i)
                .and_then(|c| {
                    c.iter()
                        .copied()
                        .min_by(|a, b| (a - value).abs().total_cmp(&(b - value).abs()))
                })
                .unwrap_or(*value);
            base_off += by.column(i) * (nearest - value);
            *slot = nearest;
        }
    }
    let mut ways: Vec<(f64, usize)> = Vec::with_capacity(combinations);
    for code in 0..combinations {
        let mut off = [0.0; 5];
        for (k, slot) in off.iter_mut().enumerate() {
            *slot = base_off[k];
        }
        let mut rest = code;
        for &i in &free {
            let list = choices.get(i).map_or(&[][..], Vec::as_slice);
            let pick = rest % list.len().max(1);
            rest /= list.len().max(1);
            let change =
                list.get(pick).copied().unwrap_or(0.0) - smooth.get(i).copied().unwrap_or(0.0);
            for (k, slot) in off.iter_mut().enumerate() {
                *slot += by[(k, i)] * change;
            }
        }
        ways.push((off.iter().map(|v| v * v).sum(), code));
    }
    let keep = EXACT_WAYS.min(ways.len());
    if keep < ways.len() {
        ways.select_nth_unstable_by(keep, |a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        ways.truncate(keep);
    }
    let mut out: Vec<(f64, WayOn)> = ways
        .into_iter()
        .map(|(_, code)| {
            let mut x = base.clone();
            let mut rest = code;
            for &i in &free {
                let list = choices.get(i).map_or(&[][..], Vec::as_slice);
                let pick = rest % list.len().max(1);
                rest /= list.len().max(1);
                if let (Some(slot), Some(value)) = (x.get_mut(i), list.get(pick)) {
                    *slot = *value;
                }
            }
            let on = way(start, with(pieces, variables, &x), aim);
            let score = (on.place_error_mm / aim.place_mm).powi(2)
                + (on.direction_error_rad / aim.direction_rad).powi(2);
            (score, on)
        })
        .collect();
    out.sort_by(|a, b| a.0.total_cmp(&b.0));
    out.into_iter().take(most).map(|(_, on)| on).collect()
}

/// The steps on either side of a value within its bounds, and the value it started from when that is
/// near.
fn neighbours(variable: &Variable, value: f64) -> Vec<f64> {
    let down = (value / variable.step).floor();
    let mut list: Vec<f64> = [down - 1.0, down, down + 1.0, down + 2.0]
        .into_iter()
        .map(|steps| steps * variable.step)
        .filter(|v| *v >= variable.low - 1e-9 && *v <= variable.high + 1e-9)
        .collect();
    if list.is_empty() {
        list.push(value.clamp(variable.low, variable.high));
    }
    // A size that was cut off the steps may stay as it is.
    if (variable.start - value).abs() <= variable.step
        && list.iter().all(|v| (v - variable.start).abs() > 1e-9)
    {
        list.push(variable.start);
    }
    list
}
