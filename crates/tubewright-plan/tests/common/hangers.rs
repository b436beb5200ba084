//! Places of hangers as they are told: found with a tape, held against everything by sampling, their loads
//! balanced by hand.

use tubewright_build::model::Class;
use tubewright_geometry::{Vector, math};
use tubewright_plan::hangers::{
    FROM_WELD_MM, GAP_MM, HALF_WIDTH_MM, Hanger, Hanging, HungRuns, LIMITS, REACH_MM, hangers,
};
use tubewright_plan::routes::{PlannedKind, PlannedRun, component_kind};
use tubewright_plan::sensors::sensors;
use tubewright_plan::stages::Supply;
use tubewright_walker::{Ball, least_gap_moving};

use super::clearance::{RUN_SPACING_MM, riders};
use super::convert;
use super::neighbours::{neighbours, seams_near};
use super::prove::Verdict;
use super::solved::Solved;

/// m/s².
const FREE_FALL: f64 = 9.806_65;

/// Every run is in one group, and what hangs keeps what it promises.
pub(crate) fn prove(solved: &Solved, runs: &[PlannedRun], supply: &Supply, verdict: &mut Verdict) {
    let (model, around) = (&solved.model, &solved.around);
    let plan = Some(&supply.whole);
    let found = hangers(
        model,
        around,
        runs,
        plan,
        &sensors(model, around, runs, plan),
    );
    let mut named: Vec<&String> = found.iter().flat_map(|group| &group.runs).collect();
    named.sort();
    let mut wanted: Vec<&String> = runs.iter().map(|run| &run.name).collect();
    wanted.sort();
    if named != wanted {
        verdict.fault(format!("hung are {named:?}, there are {wanted:?}"));
    }
    for group in &found {
        match &group.found {
            Ok(hung) => {
                balance(solved, runs, group, hung, verdict);
                for hanger in &hung.hangers {
                    one(solved, runs, supply, hanger, verdict);
                }
            }
            Err(why) => verdict
                .notes
                .push(format!("hangers of {:?}: {}", group.runs, why.words())),
        }
    }
}

/// Mass and its place behind the flex, piece by piece: a straight and a can in its middle, a bend in the
/// middle of its arc, a crossover once at its origin.
fn masses(solved: &Solved, runs: &[PlannedRun], group: &HungRuns) -> Vec<(f64, Vector)> {
    let mut all = Vec::new();
    let mut seen = Vec::new();
    for run in runs.iter().filter(|run| group.runs.contains(&run.name)) {
        let tube = solved.model.stock.tube(&run.tube).expect("in the stock");
        let (od, wall) = (tube.od.mm(), tube.wall.mm());
        let bore = od - 2.0 * wall;
        let area = 0.25 * core::f64::consts::PI * (od * od - bore * bore);
        let kg_per_mm = area * 1e-9 * tube.density_kg_per_m3();
        let flex = run.pieces.iter().position(|piece| {
            matches!(&piece.kind, PlannedKind::Component { name, .. }
                if component_kind(&solved.model, name) == Some(tubewright_build::model::ComponentKind::Flex))
        });
        for piece in run.pieces.iter().skip(match flex {
            Some(flex) => flex + 1,
            None => {
                assert!(run.starts_on.is_some(), "{} hangs behind no flex", run.name);
                0
            }
        }) {
            let (from, to) = (
                piece.frame_in.origin.to_vector(),
                piece.frame_out.origin.to_vector(),
            );
            let middle = (from + to) * 0.5;
            let of_item = |name: &str| {
                let item = convert::component_item(&solved.model, name).expect("an item");
                item.mass.as_ref().expect("a mass").value.kg()
            };
            match &piece.kind {
                PlannedKind::Straight { length_mm } => all.push((kg_per_mm * length_mm, middle)),
                PlannedKind::Bend {
                    angle_rad, clr_mm, ..
                } => {
                    // The centroid of an arc lies on its bisector, 2 R sin(a/2) / a from its centre.
                    let centre = from + piece.frame_in.twelve().vector() * *clr_mm;
                    let out = middle - centre;
                    let far = 2.0 * clr_mm * math::sin(0.5 * angle_rad) / angle_rad;
                    let place = centre + out * (far / out.norm().max(1e-9));
                    all.push((kg_per_mm * angle_rad * clr_mm, place));
                }
                PlannedKind::Component { name, .. } => all.push((of_item(name), middle)),
                PlannedKind::Crossover { name, pose, .. } => {
                    if !seen.contains(name) {
                        seen.push(name.clone());
                        all.push((of_item(name), pose.origin.to_vector()));
                    }
                }
            }
        }
    }
    all
}

/// Statics: the loads carry the weight and balance about both level axes through the middle of the masses, but
/// for what the soft flex and the run's own pendulum take.
fn balance(
    solved: &Solved,
    runs: &[PlannedRun],
    group: &HungRuns,
    hung: &Hanging,
    verdict: &mut Verdict,
) {
    let masses = masses(solved, runs, group);
    let kg: f64 = masses.iter().map(|(kg, _)| kg).sum();
    if (kg - hung.mass_kg).abs() > 0.002 * kg {
        verdict.fault(format!(
            "{:?} weigh {kg:.3} kg, told {:.3}",
            group.runs, hung.mass_kg
        ));
    }
    let middle = masses
        .iter()
        .fold(Vector::ZERO, |sum, (kg, at)| sum + *at * *kg)
        * (1.0 / kg);
    let sum: f64 = hung.hangers.iter().map(|hanger| hanger.load_n).sum();
    let weight = kg * FREE_FALL;
    // A flex holds half a newton for each mm that its end sinks, up to 2.5 m from the middle.
    let in_group = runs.iter().filter(|run| group.runs.contains(&run.name));
    let behind_flex = in_group.filter(|run| run.starts_on.is_none()).count();
    let flexes = f64::from(u32::try_from(behind_flex).expect("few"));
    let by_flex = 0.5 * hung.sag_mm * flexes;
    if sum > weight * 1.01 || sum < 0.99 * weight - by_flex {
        verdict.fault(format!("{:?}: {sum:.1} N carry {weight:.1} N", group.runs));
    }
    let mut moment = Vector::ZERO;
    for hanger in &hung.hangers {
        moment += (hanger.place.rubber.to_vector() - middle) * hanger.load_n;
    }
    let slack = by_flex * 2500.0;
    if moment.x.abs() > slack || moment.y.abs() > slack {
        verdict.fault(format!(
            "{:?}: {:.0} and {:.0} N mm are left over of {slack:.0}",
            group.runs, moment.x, moment.y
        ));
    }
    verdict.notes.push(format!(
        "{:?}: {sum:.1} N carry {weight:.1} N, {:.0} and {:.0} N mm are left over of {slack:.0}",
        group.runs, moment.x, moment.y
    ));
    let is_within = hung.sag_mm <= LIMITS.most_sag_mm + 0.3
        && hung.hangers.iter().all(|hanger| {
            hanger.load_n <= LIMITS.most_load_n + 1.0 && hanger.load_n >= LIMITS.least_load_n - 1.0
        });
    if hung.is_within && !is_within {
        verdict.fault(format!(
            "{:?} is said to be within its limits: {hung:?}",
            group.runs
        ));
    }
    for (number, one) in hung.hangers.iter().enumerate() {
        for other in hung.hangers.iter().skip(number + 1) {
            let apart = one.place.foot.distance(other.place.foot);
            // The feet stand off the places that keep apart by a radius each.
            if apart < 0.5 * LIMITS.apart_mm {
                verdict.fault(format!(
                    "{} and {} are {apart:.0} mm apart",
                    one.mark, other.mark
                ));
            }
        }
    }
}

fn one(
    solved: &Solved,
    runs: &[PlannedRun],
    supply: &Supply,
    hanger: &Hanger,
    verdict: &mut Verdict,
) {
    let of = &hanger.mark;
    let place = &hanger.place;
    let run = runs
        .iter()
        .find(|run| run.name == hanger.run)
        .expect("of a run");
    let number = place.number;
    let piece = &run.pieces[number];
    if piece.mark != place.piece {
        verdict.fault(format!("{of}: on {}, told {}", piece.mark, place.piece));
    }
    // With a tape from its joint, over as many pieces as lie between.
    let first = run
        .pieces
        .iter()
        .position(|piece| piece.joint == place.joint);
    let first = first.expect("a joint of the run");
    let before: f64 = run.pieces[first..number]
        .iter()
        .map(tubewright_plan::routes::PlannedPiece::centre_line_mm)
        .sum();
    let along = place.along_mm - before;
    let (from, travel) = (
        piece.frame_in.origin.to_vector(),
        piece.frame_in.travel().vector(),
    );
    let (middle, travel) = match piece.kind {
        PlannedKind::Bend { clr_mm, .. } => {
            let inward = piece.frame_in.twelve().vector();
            let (sin, cos) = (math::sin(along / clr_mm), math::cos(along / clr_mm));
            let centre = from + inward * clr_mm;
            (
                centre + (travel * sin - inward * cos) * clr_mm,
                travel * cos + inward * sin,
            )
        }
        _ => (from + travel * along, travel),
    };
    let level = travel.cross(Vector::new(0.0, 0.0, 1.0));
    let level = level * (1.0 / level.norm());
    let high = level.cross(travel);
    let clock = place.clocking.clock_rad;
    let out = high * math::cos(clock) + level * math::sin(clock);
    let foot = place.foot.to_vector();
    let away = foot - middle;
    if !place.is_on_can && (foot - middle - out * (0.5 * run.od_mm)).norm() > 0.5 {
        verdict.fault(format!(
            "{of}: told at {foot:?}, meant {middle:?} and out {out:?}"
        ));
    }
    if (away - out * away.dot(out)).norm() > 0.5 {
        verdict.fault(format!("{of}: {away:?} is not out along {out:?}"));
    }
    let reach = (place.bracket.to_vector() - foot).norm();
    if (reach - place.reach_mm).abs() > 0.01 || !(REACH_MM[0]..=REACH_MM[1]).contains(&reach) {
        verdict.fault(format!(
            "{of}: reach {reach:.1}, told {:.1}",
            place.reach_mm
        ));
    }
    if !place.is_on_can {
        // A chord is shorter than its arc by less than this on the bends that there are.
        for (joint, away) in seams_near(run, supply, number, middle, 0.9 * FROM_WELD_MM) {
            verdict.fault(format!("{of}: {away:.1} mm from {joint}"));
        }
    }
    let balls: Vec<Ball> = (0..=40)
        .map(|step| {
            let (near, far) = (HALF_WIDTH_MM + GAP_MM, reach - HALF_WIDTH_MM);
            let along = near + (far - near) * f64::from(step) / 40.0;
            Ball {
                centre: (foot + out * along).to_array(),
                radius: HALF_WIDTH_MM,
                along,
                piece: 0,
            }
        })
        .collect();
    room(solved, runs, hanger, (run, number), &balls, verdict);
}

/// Rod, rubber and bracket keep their gap to all but what they hang on; that one they come to.
fn room(
    solved: &Solved,
    runs: &[PlannedRun],
    hanger: &Hanger,
    (run, number): (&PlannedRun, usize),
    balls: &[Ball],
    verdict: &mut Verdict,
) {
    let of = &hanger.mark;
    let rider = &riders(solved, run, RUN_SPACING_MM)[number];
    for near in neighbours(solved, runs, (run, number), rider) {
        if let Some(body) = near.body
            && near.name == hanger.place.body
        {
            let holds = matches!(body.class, Class::Structure | Class::Floor);
            let at_rest = least_gap_moving(balls, &[], &near.solid, &[], 1).map(|near| near.gap);
            if !holds || !near.freedoms.is_empty() || at_rest.is_none_or(|gap| gap > 2.0) {
                verdict.fault(format!("{of}: hangs on {} at {at_rest:?}", near.name));
            }
            continue;
        }
        if let Some(gap) = near.gap_mm(balls, rider)
            && gap < GAP_MM
        {
            verdict.fault(format!("{of}: {gap:.2} mm to {}", near.name));
        }
    }
}
