//! Hours on open ends, counted as the person with the scriber counts them: from the part's own line, which was set
//! by the clock on paper from that of the part it is tacked to.

use tubewright_build::model::Class;
use tubewright_geometry::{CentreLine, Frame, Point, Vector, distance, math};
use tubewright_plan::fit::{
    Act, FitStep, NewMark, PartKind, Way, fit_sheet, joint_of, split_at_welds,
};
use tubewright_plan::routes::{PlannedKind, PlannedRun};
use tubewright_plan::stages::Supply;

use super::prove::Verdict;
use super::solved::Solved;

/// A part that stands, with its line at its upstream and its downstream end.
struct Standing {
    fit: usize,
    lines: [Vector; 2],
}

/// Every tape of the fit sheet goes to the hour that it names, and every clock brings a bend's line to its outside.
pub(crate) fn prove(solved: &Solved, runs: &[PlannedRun], supply: &Supply, verdict: &mut Verdict) {
    let sheet = fit_sheet(&solved.model, &solved.around, runs, &supply.whole);
    let split = split_at_welds(&solved.model, runs, &supply.whole);
    let mut standing: Vec<Standing> = Vec::new();
    for step in &sheet.steps {
        let Some(fit) = supply.fits.iter().position(|fit| fit.marks == step.marks) else {
            continue;
        };
        let is_crossover = step.kind == PartKind::Component
            && runs.iter().flat_map(|run| &run.pieces).any(|piece| {
                step.marks.contains(&piece.mark)
                    && matches!(piece.kind, PlannedKind::Crossover { .. })
            });
        if is_crossover || step.step.act == Act::Close {
            continue;
        }
        let Some(lines) = lines_of(runs, &split, supply, step, fit, &standing, verdict) else {
            verdict
                .notes
                .push(format!("{}: no line to count from", step.marks.join("+")));
            continue;
        };
        for check in &step.checks {
            let (_, joint) = joint_of(&split, &check.joint).expect("a joint of the plan");
            let is_upstream = match step.step.act {
                Act::Hang => check.joint == step.step.makes,
                Act::Tack(Way::Upstream) => true,
                _ => false,
            };
            let line = lines[usize::from(!is_upstream)];
            if let Some(more) = &check.one_more {
                let at = joint.frame.origin;
                let way = turned(line, joint.frame.travel().vector(), more.clock_rad);
                let od_mm = split
                    .iter()
                    .find(|run| run.name == step.run)
                    .map_or(0.0, |run| run.od_at_joint_mm(joint.piece));
                let loosest = check.loose.as_ref().map(|loose| loose.plus_minus_mm);
                let helps = loosest.is_none_or(|before| more.plus_minus_mm < 0.8 * before);
                one_more(solved, more, at + way * (0.5 * od_mm), helps, verdict);
            }
            for taped in &check.distances {
                let at = joint.frame.origin;
                let radius = taped.place.distance(at);
                let way = turned(line, joint.frame.travel().vector(), taped.clock_rad);
                let place = at + way * radius;
                let mark = solved.around.measured.places.points[taped.mark.as_str()].point_in_car;
                let reads = mark.distance(place);
                if (reads - taped.distance_mm).abs() > 0.01 {
                    verdict.fault(format!(
                        "{} from {} to {:.0}° of {}: {reads:.1} mm by hand, {:.1} mm on paper",
                        step.marks.join("+"),
                        taped.mark,
                        taped.clock_rad.to_degrees(),
                        check.joint,
                        taped.distance_mm
                    ));
                }
            }
        }
        standing.push(Standing { fit, lines });
    }
}

/// The lines of a part at both ends: of a bend its outside, of others by the clock.
fn lines_of(
    runs: &[PlannedRun],
    split: &[PlannedRun],
    supply: &Supply,
    step: &FitStep,
    fit: usize,
    standing: &[Standing],
    verdict: &mut Verdict,
) -> Option<[Vector; 2]> {
    let of = |number: usize| standing.iter().find(|known| known.fit == number);
    let travel = |mark: &str| {
        let (_, joint) = joint_of(split, mark).expect("a joint of the plan");
        joint.frame.travel().vector()
    };
    let own = &supply.fits[fit];
    let bend = runs.iter().flat_map(|run| &run.pieces).find(|piece| {
        own.marks.contains(&piece.mark) && matches!(piece.kind, PlannedKind::Bend { .. })
    });
    let outside = bend.map(|bend| {
        let CentreLine::Arc { centre, .. } = bend.elements[0].line else {
            panic!("a bend is an arc");
        };
        let out = |at: Point| (at - centre) * (1.0 / (at - centre).norm());
        [out(bend.frame_in.origin), out(bend.frame_out.origin)]
    });
    // By the clock, where it is tacked.
    let (joined, at_end) = match step.step.act {
        Act::Hang => {
            let (_, joint) = joint_of(runs, &step.step.makes).expect("a joint of the plan");
            (joint.frame.twelve().vector(), 0)
        }
        Act::Tack(Way::Upstream) => {
            let next = supply
                .fits
                .get(fit + 1)
                .filter(|next| next.run == own.run)?;
            let line = of(fit + 1)?.lines[0];
            (turned(line, travel(&step.step.makes), -next.clock.rad()), 1)
        }
        _ => {
            let before = fit
                .checked_sub(1)
                .filter(|before| supply.fits[*before].run == own.run);
            let line = match before {
                Some(before) => of(before)?.lines[1],
                None if own.run.contains(", behind ") => {
                    let (_, joint) = joint_of(split, &step.step.makes).expect("a joint");
                    let level = Frame::upright(joint.frame.origin, joint.frame.travel());
                    level.twelve().vector()
                }
                None => {
                    let run = runs.iter().find(|run| run.name == own.run)?;
                    run.start.twelve().vector()
                }
            };
            (turned(line, travel(&step.step.makes), own.clock.rad()), 0)
        }
    };
    let Some(outside) = outside else {
        return Some([joined, joined]);
    };
    if (outside[at_end] - joined).norm() > 1e-6 {
        verdict.fault(format!(
            "{}: its clock brings its line {:.2}° from its outside",
            own.marks.join("+"),
            (outside[at_end] - joined).norm().to_degrees()
        ));
    }
    Some(outside)
}

/// Clockwise looking along the travel.
fn turned(line: Vector, travel: Vector, angle_rad: f64) -> Vector {
    let (sin, cos) = math::sin_cos(angle_rad);
    line * cos + travel.cross(line) * sin
}

/// A mark that is advised lies on the body that is named, a straight line from it to the hour that is named meets
/// nothing, and it helps.
fn one_more(solved: &Solved, more: &NewMark, hour: Point, helps: bool, verdict: &mut Verdict) {
    let from = solved.around.measured.places.points[more.from.as_str()].point_in_car;
    let place = from + more.away;
    let bodies = &solved.around.bodies.placed;
    let on = bodies
        .iter()
        .find(|body| body.name == more.body)
        .expect("a body of the car");
    let off_mm = distance::point_to_solid(place, &on.solid_in_car);
    let mut met = Vec::new();
    for body in bodies {
        let is_own = body.name == more.body;
        let is_room = body.class == Class::Service;
        let is_hit = (1..1000)
            .map(|part| place.lerp(hour, f64::from(part) / 1000.0))
            .any(|at| {
                let ends_mm = if is_own { 25.0 } else { 15.0 };
                let is_between = at.distance(place) > ends_mm && at.distance(hour) > 6.0;
                is_between && distance::point_to_solid(at, &body.solid_in_car) <= 0.0
            });
        if is_hit && !is_room {
            met.push(body.name.as_str());
        }
    }
    if off_mm > 0.1 || !met.is_empty() || !helps {
        verdict.fault(format!(
            "a mark on {} is {off_mm:.2} mm off it, its tape meets {met:?}, it helps: {helps}",
            more.body
        ));
    }
}
