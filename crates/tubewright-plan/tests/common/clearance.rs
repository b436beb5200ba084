//! Stated gaps against those found by sampling every position of everything that moves.

use tubewright_build::model::{CarrierRef, ComponentKind, Flows};
use tubewright_check::{Board, Finding, Limit, State};
use tubewright_geometry::Vector;
use tubewright_plan::routes::{PlannedKind, PlannedRun};
use tubewright_walker::{Ball, Can, Freedom, Solid, Tightest, can_balls, least_gap_moving, walk};

use super::convert;
use super::prove::{Depth, Verdict, Walked};
use super::solved::Solved;

/// Spacing of the balls in mm, and values tried over each range before the search closes in.
const fn density(depth: Depth) -> (f64, u32) {
    match depth {
        Depth::Whole => (4.0, 7),
        Depth::Coarse => (12.0, 3),
    }
}
/// Above this a stated gap is too timid by more than its method says: a tenth for the bound, the
/// rest for the ball spacing and for where the search closes in.
const TIMID_MM: f64 = 1.0;

/// So near to its flange a run is not held against what the flange is bolted to, mm along the run.
const STUB_MM: f64 = 100.0;

/// A planned piece with its balls and what it rides on.
pub(crate) struct Rider {
    pub(crate) mark: String,
    pub(crate) balls: Vec<Ball>,
    pub(crate) carrier: CarrierRef,
    pub(crate) freedoms: Vec<Freedom>,
    pub(crate) is_bare_tube: bool,
    /// Where it begins and ends along the run, mm.
    pub(crate) along: [f64; 2],
    pub(crate) is_crossover: bool,
}

pub(crate) fn prove(
    solved: &Solved,
    board: &Board,
    walked: &[Walked<'_>],
    depth: Depth,
    verdict: &mut Verdict,
) {
    let (spacing_mm, samples) = density(depth);
    prove_between(solved, board, walked, verdict);
    for walked in walked {
        super::itself::prove(solved, board, walked.run, verdict);
        let riders = riders(solved, walked.run, spacing_mm);
        for body in &solved.around.bodies.placed {
            let subject = format!("{} to {}", walked.run.name, body.name);
            let Some(finding) = board
                .findings()
                .iter()
                .find(|finding| finding.subject == subject)
            else {
                verdict.fault(format!("{subject}: no finding"));
                continue;
            };
            let written = solved
                .model
                .build
                .bodies
                .iter()
                .find(|written| written.name == *body.name)
                .expect("placed from the build");
            let solid = convert::solid(&body.solid_in_car);
            let body_freedoms = convert::freedoms(
                &solved.model.build,
                &written.carrier,
                &solved.around.measured.places,
            );
            // What the flange is bolted to.
            let is_own = written.carrier != CarrierRef::Chassis
                && riders
                    .first()
                    .is_some_and(|first| first.carrier == written.carrier);
            let gaps: Vec<(&Rider, Tightest)> = riders
                .iter()
                .filter_map(|rider| {
                    let from = rider.along[0];
                    let balls: Vec<Ball> = rider
                        .balls
                        .iter()
                        .filter(|ball| !is_own || from + ball.along > STUB_MM)
                        .copied()
                        .collect();
                    let is_together = rider.carrier == written.carrier
                        && rider
                            .freedoms
                            .iter()
                            .all(|freedom| !matches!(freedom, Freedom::Sway { .. }));
                    let (a, b): (&[Freedom], &[Freedom]) = if is_together {
                        (&[], &[])
                    } else {
                        (&rider.freedoms, &body_freedoms)
                    };
                    Some((rider, least_gap_moving(&balls, a, &solid, b, samples)?))
                })
                .collect();
            let timid_mm = body.allowance_mm + TIMID_MM + 0.25 * (spacing_mm - 4.0);
            judge(finding, &gaps, timid_mm, &subject, verdict);
        }
    }
}

/// Spacing of the balls of a run against another, mm: both sides are sampled.
pub(crate) const RUN_SPACING_MM: f64 = 12.0;

/// Stated gaps between runs, in every position of either. Near a crossover that joins them they may
/// meet: within half a turn of it along the run.
fn prove_between(solved: &Solved, board: &Board, walked: &[Walked<'_>], verdict: &mut Verdict) {
    for (index, first) in walked.iter().enumerate() {
        for second in walked.iter().skip(index + 1) {
            let subject = format!("{} to {}", first.run.name, second.run.name);
            let findings = board.findings();
            let Some(finding) = findings.iter().find(|finding| finding.subject == subject) else {
                verdict.fault(format!("{subject}: no finding"));
                continue;
            };
            let Some(measured) = finding.measured else {
                verdict.fault(format!("{subject}: {:?} without a number", finding.state));
                continue;
            };
            let (a, b) = (
                free_riders(solved, first.run, second.run),
                free_riders(solved, second.run, first.run),
            );
            let mut least: Option<(f64, String)> = None;
            for x in &a {
                for y in &b {
                    let solid = balls_as_solid(&y.balls);
                    let is_together = x.carrier == y.carrier && !sways(x) && !sways(y);
                    let (fx, fy): (&[Freedom], &[Freedom]) = if is_together {
                        (&[], &[])
                    } else {
                        (&x.freedoms, &y.freedoms)
                    };
                    let Some(found) = least_gap_moving(&x.balls, fx, &solid, fy, 3) else {
                        continue;
                    };
                    if least.as_ref().is_none_or(|(gap, _)| found.gap < *gap) {
                        least = Some((found.gap, format!("{} and {}", x.mark, y.mark)));
                    }
                }
            }
            let Some((gap, marks)) = least else { continue };
            verdict.notes.push(format!(
                "{subject}: stated {:.2} mm, sampled {gap:.2} mm between {marks}",
                measured.value
            ));
            // The place that is tightest with its ± need not be the nearest one.
            let plus_minus = measured.plus_minus.unwrap_or(0.0);
            if gap < measured.value - plus_minus - 1e-6 {
                verdict.fault(format!(
                    "{subject}: stated {:.2} ± {plus_minus:.2} mm, but {marks} come to {gap:.2} mm",
                    measured.value
                ));
            }
            let limit = first.run.run_gap_mm;
            if finding.state == State::Pass && gap < limit {
                verdict.fault(format!(
                    "{subject}: passes at {limit} mm, but {marks} come to {gap:.2} mm"
                ));
            }
        }
    }
}

pub(crate) fn sways(rider: &Rider) -> bool {
    let mut freedoms = rider.freedoms.iter();
    freedoms.any(|freedom| matches!(freedom, Freedom::Sway { .. }))
}

/// What of a run keeps a gap from other runs.
fn free_riders(solved: &Solved, run: &PlannedRun, other: &PlannedRun) -> Vec<Rider> {
    let mut riders = riders(solved, run, RUN_SPACING_MM);
    let met = |run: &PlannedRun| -> Vec<String> {
        let passed = run.pieces.iter().filter_map(|piece| match &piece.kind {
            PlannedKind::Crossover { name, .. } => Some(name.clone()),
            _ => None,
        });
        let ends = [run.starts_on.clone(), run.ends_on.clone()];
        passed.chain(ends.into_iter().flatten()).collect()
    };
    let shared: Vec<String> = met(other)
        .into_iter()
        .filter(|part| met(run).contains(part))
        .collect();
    let is_shared = |part: &Option<String>| part.as_ref().is_some_and(|part| shared.contains(part));
    let mut crossings: Vec<[f64; 2]> = Vec::new();
    for (rider, piece) in riders.iter_mut().zip(&run.pieces) {
        let PlannedKind::Crossover { name, .. } = &piece.kind else {
            continue;
        };
        // One that only this run meets is like any other piece to the other run.
        rider.is_crossover = shared.contains(name);
        if rider.is_crossover {
            crossings.push(rider.along);
        }
    }
    // Runs that meet at a start or end are near each other there.
    let length = riders.last().map_or(0.0, |rider| rider.along[1]);
    if is_shared(&run.starts_on) {
        crossings.push([0.0; 2]);
    }
    if is_shared(&run.ends_on) {
        crossings.push([length; 2]);
    }
    let half_turn = core::f64::consts::PI * run.clr_mm + 1.0;
    // A stretch of 60 mm, or a whole component, counts as one.
    let stretch = 60.0;
    for rider in &mut riders {
        let ([from, to], is_bare) = (rider.along, rider.is_bare_tube);
        rider.balls.retain(|ball| {
            let (low, high) = if is_bare {
                (from + ball.along - stretch, from + ball.along + stretch)
            } else {
                (from, to)
            };
            crossings
                .iter()
                .all(|[start, end]| low > end + half_turn || high < start - half_turn)
        });
    }
    riders.retain(|rider| !rider.is_crossover && !rider.balls.is_empty());
    riders
}

pub(crate) fn balls_as_solid(balls: &[Ball]) -> Solid {
    let mut radii: Vec<f64> = balls.iter().map(|ball| ball.radius).collect();
    radii.sort_by(f64::total_cmp);
    radii.dedup();
    Solid::Envelope(
        radii
            .into_iter()
            .map(|radius| Solid::Points {
                centres: balls
                    .iter()
                    .filter(|ball| ball.radius.to_bits() == radius.to_bits())
                    .map(|ball| ball.centre)
                    .collect(),
                radius,
            })
            .collect(),
    )
}

fn judge(
    finding: &Finding,
    gaps: &[(&Rider, Tightest)],
    timid_mm: f64,
    subject: &str,
    verdict: &mut Verdict,
) {
    let (Some(measured), Some(Limit::AtLeast(limit))) = (finding.measured, finding.limit) else {
        verdict.fault(format!("{subject}: {:?} without a number", finding.state));
        return;
    };
    let plus_minus = measured.plus_minus.unwrap_or(0.0);
    let Some((rider, least)) = gaps.iter().min_by(|a, b| a.1.gap.total_cmp(&b.1.gap)) else {
        return;
    };
    if least.gap < measured.value - plus_minus - 1e-6 {
        verdict.fault(format!(
            "{subject}: stated {:.2} ± {plus_minus:.2} mm, but {} comes to {:.2} mm (at {:?})",
            measured.value, rider.mark, least.gap, least.values
        ));
    }
    if finding.state == State::Pass && least.gap < limit {
        verdict.fault(format!(
            "{subject}: passes at {limit} mm, but {} comes to {:.2} mm",
            rider.mark, least.gap
        ));
    }
    let words = finding.place.as_ref().map_or("", |place| &place.words);
    let stated_mark = words
        .strip_prefix("at ")
        .and_then(|rest| rest.split([',', ';']).next())
        .unwrap_or("");
    let Some((rider, at)) = gaps.iter().find(|(rider, _)| rider.mark == stated_mark) else {
        verdict.fault(format!(
            "{subject}: no piece is called “{stated_mark}” ({words})"
        ));
        return;
    };
    if at.gap < measured.value - 1e-6 {
        verdict.fault(format!(
            "{subject}: stated {:.3} mm at {stated_mark}, found {:.3} mm there (at {:?})",
            measured.value, at.gap, at.values
        ));
    }
    if rider.is_bare_tube && at.gap > measured.value + timid_mm {
        verdict.fault(format!(
            "{subject}: stated {:.2} mm at {stated_mark}, but no position found below {:.2} mm",
            measured.value, at.gap
        ));
    }
}

/// The pieces of a walked run, each with the room it takes and what it rides on: up to and with the
/// flex section on the carrier of the run's start, behind it on the chassis, swaying when one of its
/// components is hung.
pub(crate) fn riders(solved: &Solved, run: &PlannedRun, spacing: f64) -> Vec<Rider> {
    let model = &solved.model;
    let places = &solved.around.measured.places;
    let written = model.build.run(&run.name).expect("of the build");
    let start = match &written.from {
        tubewright_build::model::RunEnd::End(name) => {
            model.build.end(name).expect("is there").carrier.clone()
        }
        tubewright_build::model::RunEnd::Port { .. } => CarrierRef::Chassis,
    };
    let kind_of = |name: &str| convert::component_item(model, name).map(|item| item.kind);
    let flex = run.pieces.iter().position(|piece| {
        matches!(&piece.kind, PlannedKind::Component { name, .. }
            if kind_of(name) == Some(ComponentKind::Flex))
    });
    let sway: f64 = convert::hanging_together(&model.build, &run.name)
        .iter()
        .filter_map(|component| model.build.component(component)?.carrier.as_ref())
        .flat_map(|carrier| convert::freedoms(&model.build, carrier, places))
        .map(|freedom| match freedom {
            Freedom::Sway { radius } => radius,
            _ => 0.0,
        })
        .fold(0.0, f64::max);
    let on_start = convert::freedoms(&model.build, &start, places);
    // The room is that of the planned pieces; that the cards give them is proved apart.
    let mut frame = convert::frame(&run.start);
    let mut riders = Vec::new();
    let mut begins = 0.0;
    for (index, piece) in run.pieces.iter().enumerate() {
        let walked = piece_balls(solved, run, index, &mut frame, spacing);
        let along = [begins, begins + piece.centre_line_mm()];
        begins = along[1];
        let is_behind = match flex {
            Some(flex) => index > flex,
            // What starts from a part hangs as that does.
            None => run.starts_on.is_some(),
        };
        let (carrier, freedoms) = match is_behind {
            true => {
                let freedoms = if sway > 0.0 {
                    vec![Freedom::Sway { radius: sway }]
                } else {
                    Vec::new()
                };
                (CarrierRef::Chassis, freedoms)
            }
            false => (start.clone(), on_start.clone()),
        };
        riders.push(Rider {
            mark: piece.mark.clone(),
            balls: walked,
            carrier,
            freedoms,
            is_bare_tube: matches!(
                piece.kind,
                PlannedKind::Straight { .. } | PlannedKind::Bend { .. }
            ),
            along,
            is_crossover: matches!(piece.kind, PlannedKind::Crossover { .. }),
        });
    }
    riders
}

fn piece_balls(
    solved: &Solved,
    run: &PlannedRun,
    index: usize,
    frame: &mut tubewright_walker::Frame,
    spacing: f64,
) -> Vec<Ball> {
    use tubewright_walker::Piece;
    let piece = &run.pieces[index];
    let here = *frame;
    let (step, can) = match &piece.kind {
        PlannedKind::Straight { length_mm } => (Piece::Straight { length: *length_mm }, None),
        PlannedKind::Bend {
            angle_rad,
            clock_rad,
            clr_mm,
        } => (
            Piece::Bend {
                angle_deg: angle_rad.to_degrees(),
                clock_deg: clock_rad.to_degrees(),
                clr: *clr_mm,
            },
            None,
        ),
        PlannedKind::Component {
            name,
            length_mm,
            roll_rad,
        } => {
            let item = convert::component_item(&solved.model, name);
            let can = item.and_then(|item| {
                Some(Can {
                    length: *length_mm,
                    necks: [item.necks[0].mm(), item.necks[1].mm()],
                    section: convert::section(item.body.as_ref()?),
                    roll_deg: roll_rad.to_degrees(),
                })
            });
            (Piece::Straight { length: *length_mm }, can)
        }
        PlannedKind::Crossover { name, .. } => {
            *frame = convert::frame(&piece.frame_out);
            return crossover_balls(solved, name, piece);
        }
    };
    let walked = walk(here, run.od_mm, &[step], spacing);
    *frame = walked.frames[1];
    let mut balls = walked.balls;
    if let Some(can) = can {
        balls.extend(can_balls(here, &can, 0.0, index, spacing));
    }
    balls
}

/// Both legs of a crossover, from the inlet of one side to the outlet of the other.
fn crossover_balls(
    solved: &Solved,
    name: &str,
    piece: &tubewright_plan::routes::PlannedPiece,
) -> Vec<Ball> {
    let PlannedKind::Crossover { side, pose, .. } = &piece.kind else {
        return Vec::new();
    };
    let item = convert::component_item(&solved.model, name).expect("is there");
    let component = solved.model.build.component(name).expect("is there");
    if let Some([into, out]) = &component.stands {
        // What stands already runs straight from end to end: the tests measure no place along it.
        let at = |end: &str| solved.around.measured.places.ends[end].frame_in_car.origin;
        let (a, b) = (at(into), at(out));
        let tube = solved.model.stock.tube(&item.ports[0].tube);
        let radius = tube.expect("is there").od.mm() / 2.0;
        return (0..=100)
            .map(|step| Ball {
                centre: a.lerp(b, f64::from(step) / 100.0).to_array(),
                radius,
                along: 0.0,
                piece: 0,
            })
            .collect();
    }
    let in_car = |v: Vector| convert::turned(pose, Vector::new(v.x, -v.z, v.y));
    let at = |inlet: bool, side: &str| {
        let flows = if inlet { Flows::In } else { Flows::Out };
        in_car(
            convert::port(item, flows, side)
                .expect("has it")
                .at
                .to_vector(),
        )
    };
    let origin = piece.frame_out.origin.to_vector() - at(false, side.letter());
    let radius = match &item.body {
        Some(tubewright_build::model::Section::Round { diameter }) => diameter.mm() / 2.0,
        _ => {
            let ods = item.ports.iter().map(|port| {
                let tube = solved.model.stock.tube(&port.tube);
                tube.expect("is there").od.mm()
            });
            ods.fold(0.0, f64::max) / 2.0
        }
    };
    if let Some(made) = &item.hand_made {
        return bent_balls(item, made, [radius, 3.0], pose, |side| {
            origin + at(true, side)
        });
    }
    let mut balls = Vec::new();
    for (from, to) in [("L", "R"), ("R", "L")] {
        let (a, b) = (origin + at(true, from), origin + at(false, to));
        let mut step = 0.0;
        while step <= 100.0 {
            balls.push(Ball {
                centre: (a + (b - a) * (step / 100.0)).to_array(),
                radius,
                along: 0.0,
                piece: 0,
            });
            step += 1.0;
        }
    }
    balls
}

/// Both bends of a crossover made by hand, not rolled: from each inlet a leg, the bend that turns away from the other
/// (side L to three o'clock, which is the car's left), a leg.
fn bent_balls(
    item: &tubewright_build::model::ComponentItem,
    made: &tubewright_build::model::HandMade,
    [radius, spacing]: [f64; 2],
    pose: &tubewright_route::problem::PartPose,
    inlet_at: impl Fn(&str) -> Vector,
) -> Vec<Ball> {
    use tubewright_walker::Piece;
    let leg = Piece::Straight {
        length: made.leg.mm(),
    };
    let mut balls = Vec::new();
    for (side, clock_deg) in [("L", 90.0), ("R", -90.0)] {
        let travel = convert::port(item, Flows::In, side).expect("has it").travel;
        let turned = |v: Vector| convert::turned(pose, Vector::new(v.x, -v.z, v.y));
        let travel = turned(travel.vector());
        // The plane of the bends is the part's own, not a level one.
        let up = turned(Vector::new(0.0, 1.0, 0.0));
        let start = tubewright_walker::Frame {
            point: inlet_at(side).to_array(),
            travel: travel.to_array(),
            twelve: up.to_array(),
        };
        let bend = Piece::Bend {
            angle_deg: made.angle.deg(),
            clock_deg,
            clr: made.clr.mm(),
        };
        let walked = walk(start, 2.0 * radius, &[leg, bend, leg], spacing);
        balls.extend(walked.balls);
    }
    balls
}
