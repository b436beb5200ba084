//! Gaps of the rounded runs to every body, to each other and to themselves, in every position.

use tubewright_build::model::Class;
use tubewright_check::{Finding, Measured, Rule, State, Unit};
use tubewright_geometry::motion::{Motion, MotionSearch, MovingClearance, clearance_in_motion};
use tubewright_geometry::{CentreLine, Point, TubeElement, UnitVector, distance, math};

use crate::bodies::{Bodies, PlacedBody};
use crate::held::{GapDoubt, HeldBy, PlaceOnRun, RunHold};
use crate::places::Joint;
use crate::routes::{PlannedKind, PlannedRun};
use crate::survey::NINETEEN_IN_TWENTY;

/// How far a reported gap may lie below the true one, mm: a tenth of what a tape tells apart.
const TOLERANCE_MM: f64 = 0.1;

/// Positions that are looked at for one piece and body before the bound is taken as it is.
const MOST_POSITIONS: usize = 4000;

/// A run with what its clearances need to know.
#[derive(Clone, Debug)]
pub struct MovingRun<'a> {
    /// The rounded run.
    pub run: &'a PlannedRun,
    /// What holds it while it is built; `None` when an end of it is not found.
    pub hold: Option<RunHold>,
    /// Motion of each piece, in the order of the pieces.
    pub piece_motions: Vec<Motion>,
}

struct Tightest {
    gap_mm: f64,
    /// `None` when the readings do not say.
    doubt: Option<GapDoubt>,
    place: Point,
    piece: String,
    position: String,
}

impl Tightest {
    /// The gap less its ±; without a doubt about it nothing is left to be sure of.
    fn sure_mm(&self) -> f64 {
        self.doubt.map_or(f64::NEG_INFINITY, |doubt| {
            self.gap_mm - doubt.plus_minus_mm()
        })
    }
}

/// One finding for each run and body.
#[must_use]
pub fn clearance_findings(runs: &[MovingRun<'_>], bodies: &Bodies, joint: &Joint) -> Vec<Finding> {
    let mut findings = Vec::new();
    for moving in runs {
        for body in &bodies.placed {
            findings.push(body_finding(moving, body, joint));
        }
        for (name, reason) in &bodies.missing {
            findings.push(Finding::stated(
                Rule::ClearanceToBody,
                State::NotChecked,
                format!("{} to {name}", moving.run.name),
                format!("the body is not there: {reason}"),
            ));
        }
        findings.push(self_finding(moving.run));
    }
    for (i, first) in runs.iter().enumerate() {
        for second in runs.iter().skip(i + 1) {
            findings.push(run_finding(first.run, second.run));
        }
    }
    findings
}

/// The rule under which a body of this class is checked.
#[must_use]
pub const fn rule_of(class: Class) -> Rule {
    match class {
        Class::Ground => Rule::ClearanceToGround,
        Class::FuelBrake => Rule::ClearanceToFuelBrake,
        _ => Rule::ClearanceToBody,
    }
}

fn body_finding(moving: &MovingRun<'_>, body: &PlacedBody, joint: &Joint) -> Finding {
    let rule = rule_of(body.class);
    let subject = format!("{} to {}", moving.run.name, body.name);
    let Some(tightest) = tightest_to(moving, body, joint) else {
        return Finding::stated(rule, State::NotChecked, subject, "the run has no pieces");
    };
    let place = format!("at {}{}", tightest.piece, tightest.position);
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
    if finding.state == State::Fail {
        finding.advising(advice(tightest.gap_mm - body.gap_mm, &doubt, &body.name))
    } else {
        finding
    }
}

/// What to do about a gap that is not kept for sure and has `spare_mm` beyond what is asked.
fn advice(spare_mm: f64, doubt: &GapDoubt, body: &str) -> String {
    let plus_minus = doubt.plus_minus_mm();
    let short = plus_minus - spare_mm;
    if spare_mm <= 0.0 {
        return format!(
            "{:.0} mm too near, {short:.0} mm with its ±: move one of them, or give this body a gap of its own",
            -spare_mm
        );
    }
    let (places, building) = (
        NINETEEN_IN_TWENTY * doubt.places_mm,
        NINETEEN_IN_TWENTY * doubt.building_mm,
    );
    let must = format!("only its ± fails it, and must come down to ± {spare_mm:.1} mm");
    let left_beside = |other: f64| (spare_mm * spare_mm - other * other).max(0.0).sqrt();
    let build = match doubt.held_by {
        HeldBy::CheckDistances => "set the joint there by its check distances",
        HeldBy::Ends => "make the pieces up to there",
    };
    let how = if spare_mm > building && places >= building {
        format!(
            "measure {body} better, to ± {:.1} mm instead of ± {places:.1} mm",
            left_beside(building)
        )
    } else if spare_mm > places {
        format!(
            "{build} to ± {:.1} mm instead of ± {building:.1} mm",
            left_beside(places)
        )
    } else {
        format!(
            "measure {body} better than ± {places:.1} mm and {build} better than ± {building:.1} mm"
        )
    };
    format!("{must}: {how}; or make {short:.0} mm more room")
}

fn tightest_to(moving: &MovingRun<'_>, body: &PlacedBody, joint: &Joint) -> Option<Tightest> {
    let total = moving.run.developed_length_mm().max(1.0);
    let mut along = 0.0;
    let mut best: Option<Tightest> = None;
    let pieces = moving.run.pieces.iter().zip(&moving.piece_motions);
    for (number, (piece, motion)) in pieces.enumerate() {
        // What rides on one carrier does not move against each other; only what sways does.
        let is_together = *motion == body.motion.0 && motion.sway_mm() <= 0.0;
        let (motion, body_motion) = if is_together {
            (&Motion::FIXED, &Motion::FIXED)
        } else {
            (motion, &body.motion.0)
        };
        for element in &piece.elements {
            let found = clearance_in_motion(
                element,
                motion,
                &body.solid_in_car,
                body_motion,
                MotionSearch {
                    tolerance_mm: TOLERANCE_MM,
                    most_positions: MOST_POSITIONS,
                },
            );
            let gap_mm = found.gap_mm - piece.uncovered_mm - body.allowance_mm;
            let at = PlaceOnRun {
                place: found.on_centre_line,
                piece: number,
                share: ((along + found.along_mm) / total).clamp(0.0, 1.0),
            };
            let tightest = Tightest {
                gap_mm,
                doubt: doubt_about(moving, &at, body, body_motion, &found, joint),
                place: found.on_centre_line,
                piece: piece.mark.clone(),
                position: position_of(motion, body_motion, &found),
            };
            if best
                .as_ref()
                .is_none_or(|best| tightest.sure_mm() < best.sure_mm())
            {
                best = Some(tightest);
            }
        }
        along += piece.centre_line_mm();
    }
    best
}

/// The doubt about the gap that was found: of the body and the run against each other, where they are
/// nearest. A carrier's motion leaves it as it is but for its small turn.
fn doubt_about(
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
fn position_of(motion: &Motion, body_motion: &Motion, found: &MovingClearance) -> String {
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

/// A run nearer to itself than its gap, where it is further apart along itself than half a turn.
fn self_finding(run: &PlannedRun) -> Finding {
    let subject = format!("{} to itself", run.name);
    let parts = parts_of(run);
    let mut least: Option<(f64, Point, String)> = None;
    for (i, a) in parts.iter().enumerate() {
        for b in parts.iter().skip(i + 1) {
            if b.from_mm - a.to_mm <= run.half_turn_mm() {
                continue;
            }
            let gap = distance::clearance_between(&a.element, &b.element, TOLERANCE_MM);
            if least.as_ref().is_none_or(|(best, ..)| gap.gap_mm < *best) {
                least = Some((
                    gap.gap_mm,
                    gap.on_first,
                    format!("{} and {}", a.mark, b.mark),
                ));
            }
        }
    }
    least.map_or_else(
        || {
            Finding::stated(
                Rule::ClearanceToSelf,
                State::DoesNotApply,
                subject.clone(),
                "it is too short to come back to itself",
            )
        },
        |(gap, place, marks)| {
            Finding::measured_at_least(
                Rule::ClearanceToSelf,
                subject.clone(),
                Measured {
                    value: gap,
                    plus_minus: None,
                    unit: Unit::Millimetre,
                },
                run.self_gap_mm,
            )
            .at(place, format!("between {marks}"))
        },
    )
}

fn run_finding(first: &PlannedRun, second: &PlannedRun) -> Finding {
    let mut least: Option<(f64, Point, String)> = None;
    for a in parts_of(first).iter().filter(|part| part.is_free) {
        for b in parts_of(second).iter().filter(|part| part.is_free) {
            let gap = distance::clearance_between(&a.element, &b.element, TOLERANCE_MM);
            if least.as_ref().is_none_or(|(best, ..)| gap.gap_mm < *best) {
                least = Some((
                    gap.gap_mm,
                    gap.on_first,
                    format!("{} and {}", a.mark, b.mark),
                ));
            }
        }
    }
    let subject = format!("{} to {}", first.name, second.name);
    match least {
        None => Finding::stated(
            Rule::ClearanceToRun,
            State::NotChecked,
            subject,
            "a run has no pieces",
        ),
        Some((gap, place, marks)) => Finding::measured_at_least(
            Rule::ClearanceToRun,
            subject,
            Measured {
                value: gap,
                plus_minus: None,
                unit: Unit::Millimetre,
            },
            first.run_gap_mm,
        )
        .at(place, format!("between {marks}")),
    }
}

struct Part {
    element: TubeElement,
    from_mm: f64,
    to_mm: f64,
    mark: String,
    /// Far enough from the run's crossover to keep a gap from the other run.
    is_free: bool,
}

/// Longest stretch that is judged as one, mm: the rule on distance along the run is applied to whole
/// stretches, so they are short.
const PART_MM: f64 = 60.0;

fn parts_of(run: &PlannedRun) -> Vec<Part> {
    let mut crossovers = Vec::new();
    let mut along = 0.0;
    for piece in &run.pieces {
        let next = along + piece.centre_line_mm();
        if matches!(piece.kind, PlannedKind::Crossover { .. }) {
            crossovers.push((along, next));
        }
        along = next;
    }
    let mut parts = Vec::new();
    let mut along = 0.0;
    for piece in &run.pieces {
        let length = piece.centre_line_mm();
        let is_crossover = matches!(piece.kind, PlannedKind::Crossover { .. });
        for element in &piece.elements {
            for line in split(&element.line, PART_MM) {
                let (from, to) = match piece.kind {
                    // The can of a component is one body: it counts with its whole length.
                    PlannedKind::Component { .. } | PlannedKind::Crossover { .. } => {
                        (along, along + length)
                    }
                    _ => (along + line.0, along + line.1),
                };
                let is_free = !is_crossover
                    && crossovers.iter().all(|&(start, end)| {
                        from > end + run.half_turn_mm() || to < start - run.half_turn_mm()
                    });
                parts.push(Part {
                    element: TubeElement {
                        line: line.2,
                        radius: element.radius,
                    },
                    from_mm: from,
                    to_mm: to,
                    mark: piece.mark.clone(),
                    is_free,
                });
            }
        }
        along += length;
    }
    parts
}

/// Pieces of a centre line no longer than `most_mm`, with where they start and end along it.
fn split(line: &CentreLine, most_mm: f64) -> Vec<(f64, f64, CentreLine)> {
    let length = line.length();
    let count = (length / most_mm).ceil().max(1.0);
    let step = length / count;
    let mut parts = Vec::new();
    let mut index = 0.0;
    while index < count {
        let (from, to) = (index * step, (index + 1.0) * step);
        let part = match *line {
            CentreLine::Arc {
                centre,
                u,
                v,
                radius,
                ..
            } => {
                let (sin, cos) = math::sin_cos(from / radius);
                CentreLine::Arc {
                    centre,
                    u: UnitVector::from_unit(u * cos + v * sin),
                    v: UnitVector::from_unit(v * cos - u * sin),
                    radius,
                    angle: step / radius,
                }
            }
            _ => CentreLine::Segment {
                a: line.at(from),
                b: line.at(to),
            },
        };
        parts.push((from, to, part));
        index += 1.0;
    }
    parts
}
