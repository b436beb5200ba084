//! Stated gaps against those found by sampling every position of everything that moves.

use tubewright_build::model::{CarrierRef, ComponentKind};
use tubewright_check::{Finding, Limit, State};
use tubewright_geometry::Vector;
use tubewright_plan::routes::{PlannedKind, PlannedRun};
use tubewright_walker::{Ball, Can, Freedom, Tightest, can_balls, least_gap_moving, walk};

use super::convert;
use super::prove::{Verdict, Walked};
use super::solved::Solved;

/// Spacing of the balls, mm.
const SPACING_MM: f64 = 4.0;
/// Values tried over each range before the search closes in.
const SAMPLES: u32 = 7;
/// Above this a stated gap is too timid by more than its method says: a tenth for the bound, the
/// rest for the ball spacing and for where the search closes in.
const TIMID_MM: f64 = 1.0;

/// A planned piece with its balls and what it rides on.
struct Rider {
    mark: String,
    balls: Vec<Ball>,
    carrier: CarrierRef,
    freedoms: Vec<Freedom>,
    is_bare_tube: bool,
}

pub(crate) fn prove(solved: &Solved, walked: &[Walked<'_>], verdict: &mut Verdict) {
    for walked in walked {
        let riders = riders(solved, walked);
        for body in &solved.around.bodies.placed {
            let subject = format!("{} to {}", walked.run.name, body.name);
            let Some(finding) = solved
                .board
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
            let gaps: Vec<(&Rider, Tightest)> = riders
                .iter()
                .filter_map(|rider| {
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
                    Some((
                        rider,
                        least_gap_moving(&rider.balls, a, &solid, b, SAMPLES)?,
                    ))
                })
                .collect();
            judge(finding, &gaps, body.allowance_mm, &subject, verdict);
        }
    }
}

fn judge(
    finding: &Finding,
    gaps: &[(&Rider, Tightest)],
    allowance_mm: f64,
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
        .and_then(|rest| rest.split(',').next())
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
    if rider.is_bare_tube && at.gap > measured.value + allowance_mm + TIMID_MM {
        verdict.fault(format!(
            "{subject}: stated {:.2} mm at {stated_mark}, but no position found below {:.2} mm",
            measured.value, at.gap
        ));
    }
}

/// The pieces of a walked run, each with the room it takes and what it rides on: up to and with the
/// flex section on the carrier of the run's start, behind it on the chassis, swaying when one of its
/// components is hung.
fn riders(solved: &Solved, walked: &Walked<'_>) -> Vec<Rider> {
    let (model, run) = (&solved.model, walked.run);
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
    let sway: f64 = written
        .through
        .iter()
        .filter_map(|through| model.build.component(&through.component)?.carrier.as_ref())
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
    for (index, piece) in run.pieces.iter().enumerate() {
        let walked = piece_balls(solved, run, index, &mut frame);
        let (carrier, freedoms) = match flex {
            Some(flex) if index > flex => {
                let freedoms = if sway > 0.0 {
                    vec![Freedom::Sway { radius: sway }]
                } else {
                    Vec::new()
                };
                (CarrierRef::Chassis, freedoms)
            }
            _ => (start.clone(), on_start.clone()),
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
        });
    }
    riders
}

fn piece_balls(
    solved: &Solved,
    run: &PlannedRun,
    index: usize,
    frame: &mut tubewright_walker::Frame,
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
    let walked = walk(here, run.od_mm, &[step], SPACING_MM);
    *frame = walked.frames[1];
    let mut balls = walked.balls;
    if let Some(can) = can {
        balls.extend(can_balls(here, &can, 0.0, index, SPACING_MM));
    }
    balls
}

/// Both legs of a crossover, from the inlet of one side to the outlet of the other.
fn crossover_balls(
    solved: &Solved,
    name: &str,
    piece: &tubewright_plan::routes::PlannedPiece,
) -> Vec<Ball> {
    let PlannedKind::Crossover { side, .. } = &piece.kind else {
        return Vec::new();
    };
    let item = convert::component_item(&solved.model, name).expect("is there");
    let in_car = |v: Vector| Vector::new(v.x, -v.z, v.y);
    let at = |inlet: bool, side: &str| {
        let port = if inlet {
            item.inlet(Some(side))
        } else {
            item.outlet(Some(side))
        };
        in_car(port.expect("has it").at.to_vector())
    };
    let origin = piece.frame_out.origin.to_vector() - at(false, side);
    let radius = match &item.body {
        Some(tubewright_build::model::Section::Round { diameter }) => diameter.mm() / 2.0,
        _ => {
            let tube = &item.inlet(Some("L")).expect("has it").tube;
            solved.model.stock.tube(tube).expect("is there").od.mm() / 2.0
        }
    };
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
