//! The gap of a run to a body, with its ±.

use tubewright_check::{Finding, Measured, State, Unit};
use tubewright_geometry::motion::{Motion, MotionSearch, MovingClearance, clearance_in_motion};
use tubewright_geometry::{Point, TubeElement, math};

use super::advice::advice;
use super::parts::stretch;
use super::{MovingRun, TOLERANCE_MM, rule_of};
use crate::bodies::PlacedBody;
use crate::held::{GapDoubt, HeldBy, PlaceOnRun};
use crate::places::Joint;
use crate::routes::PlannedPiece;

/// Positions that are looked at for one piece and body before the bound is taken as it is.
pub(super) const MOST_POSITIONS: usize = 4000;

struct Tightest {
    gap_mm: f64,
    /// `None` when the readings do not say.
    doubt: Option<GapDoubt>,
    place: Point,
    piece: String,
    position: String,
    /// How what rides on the suspension is held to see it, where it is not as it hangs.
    held: Option<String>,
}

impl Tightest {
    /// The gap less its ±; without a doubt about it nothing is left to be sure of.
    fn sure_mm(&self) -> f64 {
        self.doubt.map_or(f64::NEG_INFINITY, |doubt| {
            self.gap_mm - doubt.plus_minus_mm()
        })
    }
}

pub(super) fn finding(moving: &MovingRun<'_>, body: &PlacedBody, joint: &Joint) -> Finding {
    let rule = rule_of(body.class);
    let subject = format!("{} to {}", moving.run.name, body.name);
    let Some(tightest) = tightest_to(moving, body, joint) else {
        return Finding::stated(rule, State::NotChecked, subject, "the run has no pieces");
    };
    let is_bolted_to = moving
        .piece_motions
        .first()
        .is_some_and(|motion| *motion == body.motion.0 && !motion.is_fixed());
    let bolted = if is_bolted_to {
        format!("; its first {BOLTED_MM:.0} mm are bolted to the same and not held against it")
    } else {
        String::new()
    };
    let place = format!("at {}{}{bolted}", tightest.piece, tightest.position);
    let Some(doubt) = tightest.doubt else {
        let gap = tightest.gap_mm;
        let state = if gap < body.gap_mm {
            State::Fail
        } else {
            State::NotChecked
        };
        return Finding::stated(
            rule,
            state,
            subject,
            format!(
                "{gap:.0} mm, but how surely cannot be said: no readings tie the body and the run to each other"
            ),
        )
        .at(tightest.place, place);
    };
    let measured = Measured {
        value: tightest.gap_mm,
        plus_minus: Some(doubt.plus_minus_mm()),
        unit: Unit::Millimetre,
    };
    let finding =
        Finding::measured_at_least(rule, subject, measured, body.gap_mm).at(tightest.place, place);
    let told = (finding.state == State::Fail)
        .then(|| advice(tightest.gap_mm - body.gap_mm, &doubt, &body.name));
    let told: Vec<String> = told.into_iter().chain(tightest.held).collect();
    finding.advising(told.join("; "))
}

/// How far above where it stands on its wheels a body is in the position that was found, mm; `None` where it does not
/// ride on the suspension.
fn suspension_mm(body_motion: &Motion, found: &MovingClearance) -> Option<f64> {
    let freedoms = body_motion.freedoms.iter().zip(&found.body_values);
    freedoms.into_iter().find_map(|(freedom, value)| {
        matches!(freedom, tubewright_geometry::motion::Freedom::Shift { .. }).then_some(*value)
    })
}

fn tightest_to(moving: &MovingRun<'_>, body: &PlacedBody, joint: &Joint) -> Option<Tightest> {
    let total = moving.run.developed_length_mm().max(1.0);
    let mut along = 0.0;
    let mut best: Option<Tightest> = None;
    let pieces = moving.run.pieces.iter().zip(&moving.piece_motions);
    for (number, (piece, motion)) in pieces.enumerate() {
        // What rides on one carrier does not move against each other; only what sways does.
        let rides_along = *motion == body.motion.0 && !motion.is_fixed();
        let is_together = *motion == body.motion.0 && motion.sway_mm() <= 0.0;
        let (motion, body_motion) = if is_together {
            (&Motion::FIXED, &Motion::FIXED)
        } else {
            (motion, &body.motion.0)
        };
        let mut least_mm = f64::INFINITY;
        let mut is_here = false;
        for element in &piece.elements {
            let Some((element, clipped_mm)) = beyond_flange(piece, element, along, rides_along)
            else {
                continue;
            };
            let found = clearance_in_motion(
                &element,
                motion,
                &body.solid_in_car,
                body_motion,
                MotionSearch {
                    tolerance_mm: TOLERANCE_MM,
                    most_positions: MOST_POSITIONS,
                },
            );
            let gap_mm = found.gap_mm - piece.uncovered_mm - body.allowance_mm;
            least_mm = least_mm.min(gap_mm);
            let at = PlaceOnRun {
                place: found.on_centre_line,
                piece: number,
                share: ((along + clipped_mm + found.along_mm) / total).clamp(0.0, 1.0),
            };
            let tightest = Tightest {
                gap_mm,
                doubt: doubt_about(moving, &at, body, body_motion, &found, joint),
                place: found.on_centre_line,
                piece: piece.mark.clone(),
                position: position_of(motion, body_motion, &found),
                held: None,
            };
            if best
                .as_ref()
                .is_none_or(|best| tightest.sure_mm() < best.sure_mm())
            {
                let held = suspension_mm(body_motion, &found)
                    .and_then(|at_mm| body.held_to_see(&piece.elements, at_mm));
                best = Some(Tightest { held, ..tightest });
                is_here = true;
            }
        }
        // Of a part of several tubes the one that is least sure need not be the nearest: what is told is no more than
        // the gap of any.
        if let Some(best) = best.as_mut().filter(|_| is_here) {
            best.gap_mm = best.gap_mm.min(least_mm);
        }
        along += piece.centre_line_mm();
    }
    best
}

/// From the flange that a run starts at this far on, mm, what rides on the flange's own carrier is not held
/// against it: the flange is bolted to it (common practice, no source).
const BOLTED_MM: f64 = 100.0;

/// What of an element is to be held against a body, and how much of its beginning is not; `None` when
/// nothing is left. `along` is where its piece begins.
fn beyond_flange(
    piece: &PlannedPiece,
    element: &TubeElement,
    along: f64,
    rides_along: bool,
) -> Option<(TubeElement, f64)> {
    let begins = along
        + piece
            .frame_in
            .travel()
            .dot(element.line.at(0.0) - piece.frame_in.origin)
            .max(0.0);
    let clipped_mm = BOLTED_MM - begins;
    if !rides_along || clipped_mm <= 0.0 {
        return Some((*element, 0.0));
    }
    let length = element.line.length();
    (clipped_mm < length).then(|| {
        let rest = TubeElement {
            line: stretch(&element.line, clipped_mm, length),
            radius: element.radius,
        };
        (rest, clipped_mm)
    })
}

/// The doubt about the gap that was found: of the body and the run against each other, where they are
/// nearest. A carrier's motion leaves it as it is but for its small turn.
pub(super) fn doubt_about(
    moving: &MovingRun<'_>,
    at: &PlaceOnRun,
    body: &PlacedBody,
    body_motion: &Motion,
    found: &MovingClearance,
    joint: &Joint,
) -> Option<GapDoubt> {
    let hold = moving.hold.as_ref()?;
    let back = body_motion.at(&found.body_values).inverse();
    let (from, nearest) = (back.point(found.on_centre_line), back.point(found.on_body));
    let toward = (found.on_body - found.on_centre_line).direction();
    let of_body = body.gap_change(from, nearest, joint);
    let (Some(toward), Some(of_body)) = (toward, of_body) else {
        // The centre line runs inside the body: it fails whatever the ±.
        let places_mm = body.sigma_bound();
        return Some(GapDoubt {
            sigma_mm: math::hypot(places_mm, hold.joint_sigma_mm),
            places_mm,
            building_mm: hold.joint_sigma_mm,
            held_by: HeldBy::CheckDistances,
        });
    };
    let mut doubt = hold.doubt(moving.run, at, toward, joint, &of_body)?;
    let own = body.own_sigma_mm(nearest, toward.vector());
    doubt.places_mm = math::hypot(doubt.places_mm, own);
    doubt.sigma_mm = math::hypot(doubt.sigma_mm, own);
    Some(doubt)
}

/// Words for the position in which the gap is least, empty at rest.
pub(super) fn position_of(
    motion: &Motion,
    body_motion: &Motion,
    found: &MovingClearance,
) -> String {
    let values = found.tube_values.iter().chain(&found.body_values);
    if values.clone().all(|value| value.abs() <= 1e-9) {
        return String::new();
    }
    let list: Vec<String> = motion
        .freedoms
        .iter()
        .chain(&body_motion.freedoms)
        .zip(values)
        .filter_map(|(freedom, value)| position_words(freedom, *value))
        .collect();
    format!(", {}", list.join(", "))
}

fn position_words(freedom: &tubewright_geometry::motion::Freedom, value: f64) -> Option<String> {
    use tubewright_geometry::motion::Freedom;
    match freedom {
        Freedom::Turn { .. } => Some(format!("turned {:.1}°", value.to_degrees())),
        Freedom::Shift { .. } if value >= 0.0 => Some(format!("bump {value:.0} mm")),
        Freedom::Shift { .. } => Some(format!("droop {:.0} mm", -value)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::routes::PlannedKind;
    use tubewright_geometry::{CentreLine, Frame, UnitVector};

    /// A straight of 250 mm that begins 40 mm from the flange: its first 60 mm are bolted to what the
    /// flange is on; for what rides elsewhere all of it counts.
    #[test]
    fn what_the_flange_is_bolted_to_counts_from_a_hand_on() {
        let frame = Frame::upright(Point::new(40.0, 0.0, 0.0), UnitVector::X);
        let element = TubeElement {
            line: CentreLine::straight(&frame, 250.0),
            radius: 30.0,
        };
        let piece = PlannedPiece {
            mark: "E1".to_owned(),
            joint: "J1".to_owned(),
            kind: PlannedKind::Straight { length_mm: 250.0 },
            frame_in: frame,
            frame_out: frame.advanced(250.0),
            elements: vec![element],
            uncovered_mm: 0.0,
        };
        let (rest, clipped) = beyond_flange(&piece, &element, 40.0, true).unwrap_or((element, 0.0));
        assert!((clipped - 60.0).abs() < 1e-9, "{clipped}");
        assert!((rest.line.length() - 190.0).abs() < 1e-9);
        assert!((rest.line.at(0.0).x - 100.0).abs() < 1e-9);
        assert_eq!(
            beyond_flange(&piece, &element, 40.0, false),
            Some((element, 0.0))
        );
        assert_eq!(
            beyond_flange(&piece, &element, 300.0, true),
            Some((element, 0.0))
        );
        let short = TubeElement {
            line: CentreLine::straight(&frame, 50.0),
            radius: 30.0,
        };
        assert_eq!(beyond_flange(&piece, &short, 40.0, true), None);
    }
}
