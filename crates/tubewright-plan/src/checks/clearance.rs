//! Gaps of the rounded runs to every body, to each other and to themselves, in every position.

use tubewright_build::model::Class;
use tubewright_check::{Finding, Measured, Rule, State, Unit};
use tubewright_geometry::motion::{Motion, MotionSearch, clearance_in_motion};
use tubewright_geometry::{CentreLine, Point, TubeElement, UnitVector, Vector, distance, math};

use crate::bodies::{Bodies, PlacedBody};
use crate::places::{PlacedEnd, covariance_between, quadratic_form};
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
    /// Its start with its ±.
    pub start: PlacedEnd,
    /// Its end with its ±.
    pub end: PlacedEnd,
    /// Motion of each piece, in the order of the pieces.
    pub piece_motions: Vec<Motion>,
    /// Standard deviation at which check distances hold a joint while tacking, mm.
    pub joint_sigma_mm: f64,
    /// ± (19 in 20) that the building of the pieces adds anywhere along the run, mm.
    pub build_plus_minus_mm: f64,
}

struct Tightest {
    gap_mm: f64,
    plus_minus_mm: f64,
    place: Point,
    piece: String,
    position: String,
}

/// One finding for each run and body.
#[must_use]
pub fn clearance_findings(runs: &[MovingRun<'_>], bodies: &Bodies) -> Vec<Finding> {
    let mut findings = Vec::new();
    for moving in runs {
        for body in &bodies.placed {
            findings.push(body_finding(moving, body));
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

fn body_finding(moving: &MovingRun<'_>, body: &PlacedBody) -> Finding {
    let rule = rule_of(body.class);
    let subject = format!("{} to {}", moving.run.name, body.name);
    let Some(tightest) = tightest_to(moving, body) else {
        return Finding::stated(rule, State::NotChecked, subject, "the run has no pieces");
    };
    let measured = Measured {
        value: tightest.gap_mm,
        plus_minus: Some(tightest.plus_minus_mm),
        unit: Unit::Millimetre,
    };
    let finding = Finding::measured_at_least(rule, subject, measured, body.gap_mm).at(
        tightest.place,
        format!("at {}{}", tightest.piece, tightest.position),
    );
    if finding.state == State::Fail {
        let short = body.gap_mm - (tightest.gap_mm - tightest.plus_minus_mm);
        finding.advising(format!(
            "{short:.0} mm too near, ± counted: measure the place again, move one of them, or give this body a gap of its own"
        ))
    } else {
        finding
    }
}

fn tightest_to(moving: &MovingRun<'_>, body: &PlacedBody) -> Option<Tightest> {
    let total = moving.run.developed_length_mm().max(1.0);
    let mut along = 0.0;
    let mut best: Option<Tightest> = None;
    for (piece, motion) in moving.run.pieces.iter().zip(&moving.piece_motions) {
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
            let toward: Vector = found.on_body - found.on_centre_line;
            let direction = toward.direction().unwrap_or(UnitVector::Z);
            let share = ((along + found.along_mm) / total).clamp(0.0, 1.0);
            let covariance =
                covariance_between(&moving.start, &moving.end, found.on_centre_line, share);
            let of_run = quadratic_form(&covariance, direction.to_array())
                .clamp(0.0, moving.joint_sigma_mm.powi(2));
            let of_body = body.sigma_along(direction.vector()).powi(2);
            let survey = NINETEEN_IN_TWENTY * (of_run + of_body).sqrt();
            let plus_minus_mm = math::hypot(survey, moving.build_plus_minus_mm);
            let is_tighter = best
                .as_ref()
                .is_none_or(|best| gap_mm - plus_minus_mm < best.gap_mm - best.plus_minus_mm);
            if is_tighter {
                let values = found.tube_values.iter().chain(&found.body_values);
                let is_moved = values.clone().any(|value| value.abs() > 1e-9);
                best = Some(Tightest {
                    gap_mm,
                    plus_minus_mm,
                    place: found.on_centre_line,
                    piece: piece.mark.clone(),
                    position: if is_moved {
                        let list: Vec<String> = motion
                            .freedoms
                            .iter()
                            .zip(&found.tube_values)
                            .chain(body_motion.freedoms.iter().zip(&found.body_values))
                            .filter_map(|(freedom, value)| position_words(freedom, *value))
                            .collect();
                        format!(", {}", list.join(", "))
                    } else {
                        String::new()
                    },
                });
            }
        }
        along += piece.centre_line_mm();
    }
    best
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
