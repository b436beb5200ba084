//! The demonstration builds, from their readings to what the saw marks give.

#![allow(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::cast_precision_loss,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use common::prove::{prove, prove_others};
use common::solved::{Solved, solve_folder};
use tubewright_check::{Rule, State};
use tubewright_geometry::{Placement, Vector, math};
use tubewright_plan::figures::figures;
use tubewright_plan::fit::{Gap, fit_sheet, joint_of, split_at_welds};
use tubewright_plan::hangers::hangers;
use tubewright_plan::routes::{PlannedKind, PlannedRun, component_kind};
use tubewright_plan::sensors::sensors;
use tubewright_plan::stages::{Routed, check, supply};

/// What the builds wish for themselves.
fn effort() -> u64 {
    std::env::var("TUBEWRIGHT_EFFORT")
        .ok()
        .and_then(|text| text.parse().ok())
        .unwrap_or(40_000)
}

fn proved(name: &str) {
    let solved = solve_folder(name, effort());
    assert!(solved.best().is_some(), "{name}: no route");
    prove(&solved).assert_sound(name);
    let (others, verdict) = prove_others(&solved);
    verdict.assert_sound(name);
    assert!(others >= 2, "{name}: {others} other ways");
    in_order_of_cost(&solved, name);
    gaps_are_mended_as_told(&solved, name);
}

/// Every gap that is closed says how far it may be out of line, a degree over its length; and each tack that is to be
/// broken moves its end where the end goes when all that stands on it is turned by a degree.
fn gaps_are_mended_as_told(solved: &Solved, name: &str) {
    let (Some(best), Some(supply)) = (solved.best(), solved.supply.as_ref()) else {
        return;
    };
    let split = split_at_welds(&solved.model, &best.runs, &supply.whole);
    let fit = fit_sheet(&solved.model, &solved.around, &best.runs, &supply.whole);
    let at = |mark: &str| joint_of(&split, mark).expect("a joint").1.frame;
    let closing: Vec<_> = fit
        .steps
        .iter()
        .filter(|step| step.trim.is_some())
        .collect();
    for step in &closing {
        let gap = Gap::of(&split, &fit, step).expect("it closes a gap");
        let [from, to] = gap.between.each_ref().map(|mark| at(mark).origin);
        let sideways = from.distance(to) * math::tan(1.0_f64.to_radians());
        // Between its own two faces and no further.
        let own = split.iter().flat_map(|run| &run.pieces);
        let own = own.filter(|piece| step.marks.contains(&piece.mark));
        let long: f64 = own
            .map(tubewright_plan::routes::PlannedPiece::centre_line_mm)
            .sum();
        assert!(
            from.distance(to) <= long + 1e-6,
            "{name}: {gap:?} and {long} mm of tube"
        );
        assert!(
            !gap.is_straight || (from.distance(to) - long).abs() < 1.0,
            "{name}: {gap:?} and {long} mm"
        );
        assert!((gap.sideways_mm - sideways).abs() < 1e-9, "{name}: {gap:?}");
        for mend in &gap.mends {
            let joint = at(&mend.joint);
            let end = at(&mend.moves).origin;
            let turn = Placement::turned(joint.origin, joint.travel(), 1.0_f64.to_radians());
            let moved = turn.point(end) - end;
            let chord = 0.01 * moved.norm() + 1e-9;
            assert!(
                (moved - mend.by_a_degree).norm() < chord,
                "{name}: {mend:?} {moved:?}"
            );
            assert!(gap.between.contains(&mend.moves), "{name}: {gap:?}");
        }
    }
    assert!(
        fit.steps
            .iter()
            .all(|step| step.trim.is_some() || Gap::of(&split, &fit, step).is_none())
    );
}

/// The axle comes up 80 mm and hangs 70 mm down: what is tightest to it at the top of its travel is seen with it held
/// 150 mm higher than it hangs, and what is left as it hangs is found here from the readings' own hubs.
#[test]
fn a_gap_at_bump_says_how_the_axle_is_held_to_see_it() {
    let solved = solve_folder("estate-v6", 6_000);
    let best = solved.best().expect("there is a way");
    let places = &solved.around.measured.places.points;
    let [a, b] =
        ["hub RL", "hub RR"].map(|hub| places[hub].point_in_car + Vector::new(0.0, 0.0, -70.0));
    let mut seen = 0;
    for run in &best.runs {
        let subject = format!("{} to axle tube", run.name);
        let finding = solved
            .board
            .findings()
            .iter()
            .find(|f| f.subject == subject)
            .expect("it is judged");
        let place = finding.place.as_ref().expect("somewhere");
        let Some((piece, _)) = place
            .words
            .trim_start_matches("at ")
            .split_once(", bump 80 mm")
        else {
            continue;
        };
        seen += 1;
        let head = "hold axle tube 150 mm higher than it hangs, 80 mm above where it stands on its wheels: as it hangs ";
        let (_, rest) = finding.advice.split_once(head).expect("how it is held");
        let told: f64 = rest
            .split_once(" mm are left")
            .expect("what is left")
            .0
            .parse()
            .expect("a figure");
        let piece = run
            .pieces
            .iter()
            .find(|other| other.mark == piece)
            .expect("a piece");
        let gap = piece
            .elements
            .iter()
            .flat_map(|element| {
                (0..=400).map(move |k| {
                    (
                        element,
                        element
                            .line
                            .at(element.line.length() * f64::from(k) / 400.0),
                    )
                })
            })
            .map(|(element, at)| {
                let along = ((at - a).dot(b - a) / (b - a).norm_squared()).clamp(0.0, 1.0);
                at.distance(a.lerp(b, along)) - 45.0 - element.radius
            })
            .fold(f64::INFINITY, f64::min);
        assert!(
            (gap - told).abs() < 1.0,
            "{subject}: {gap} mm, told {told} mm"
        );
    }
    assert!(
        seen > 0,
        "no run of the estate is tightest to its axle at bump"
    );
}

/// A silencer that passes has a hanger on either side of the middle of its can, within its own length and a hand and a
/// half of its necks; one without says so.
#[test]
fn silencers_hang_from_both_sides_or_say_so() {
    for name in ["estate-v6", "kitcar-mid4", "pickup-six"] {
        let solved = solve_folder(name, 6_000);
        let (best, supply) = (
            solved.best().expect("a way"),
            solved.supply.as_ref().expect("a plan"),
        );
        let plan = Some(&supply.whole);
        let (model, around) = (&solved.model, &solved.around);
        let hung = hangers(
            model,
            around,
            &best.runs,
            plan,
            &sensors(model, around, &best.runs, plan),
        );
        if hung.iter().any(|group| group.found.is_err()) {
            // Nothing to hang it on: that is what the board says of the run.
            let findings = solved.board.findings().iter();
            let mut findings = findings.filter(|f| f.rule == Rule::HangerSides);
            assert!(findings.all(|f| f.state == State::NotChecked), "{name}");
            continue;
        }
        let all: Vec<_> = hung
            .iter()
            .filter_map(|group| group.found.as_ref().ok())
            .flat_map(|found| &found.hangers)
            .collect();
        let mut cans = 0;
        for piece in best.runs.iter().flat_map(|run| &run.pieces) {
            let PlannedKind::Component {
                name: can,
                length_mm,
                ..
            } = &piece.kind
            else {
                continue;
            };
            if component_kind(model, can) != Some(tubewright_build::model::ComponentKind::Silencer)
            {
                continue;
            }
            cans += 1;
            let subject = format!("{} ({can})", piece.mark);
            let finding = solved
                .board
                .findings()
                .iter()
                .find(|f| f.rule == Rule::HangerSides && f.subject == subject);
            let finding = finding.unwrap_or_else(|| {
                let rules = solved
                    .board
                    .findings()
                    .iter()
                    .filter(|f| f.rule == Rule::HangerSides);
                panic!(
                    "{name} {subject} is not judged: {:?}",
                    rules.collect::<Vec<_>>()
                )
            });
            // Along its own length from its middle, whatever piece the hanger is on.
            let middle = piece.frame_in.origin.lerp(piece.frame_out.origin, 0.5);
            let along = (piece.frame_out.origin - piece.frame_in.origin)
                .direction()
                .expect("a length");
            let told: Vec<f64> = all
                .iter()
                .filter(|hanger| {
                    finding
                        .advice
                        .split([' ', ','])
                        .any(|word| word == hanger.mark)
                })
                .map(|hanger| along.dot(hanger.place.foot - middle))
                .collect();
            if finding.state != State::Pass {
                assert!(
                    finding
                        .advice
                        .contains("no structure or floor that was measured"),
                    "{finding:?}"
                );
                continue;
            }
            let far = 0.5 * length_mm + 150.0 + 60.0;
            assert!(
                told.iter().any(|mm| *mm < 0.0) && told.iter().any(|mm| *mm > 0.0),
                "{name} {subject}: {told:?}"
            );
            assert!(
                told.iter().all(|mm| mm.abs() < far),
                "{name} {subject}: {told:?}"
            );
        }
        assert!(cans > 0);
    }
}

/// Ways that close well come first, among them those that leave each sensor its room and blow nowhere that they
/// must not, as the board says of each, and among these the cheaper by its own cutting plan: money, hours and
/// proxies added up here from what is printed.
fn in_order_of_cost(solved: &Solved, name: &str) {
    let Routed::Found(ways) = &solved.routed else {
        return;
    };
    let practice = &solved.around.practice;
    let costs: Vec<(bool, usize, f64)> = ways
        .iter()
        .map(|way| {
            let supply = supply(&solved.model, practice, &way.runs, &[]).expect("it is planned");
            let figures = figures(
                &solved.model,
                &solved.around,
                &solved.posed,
                &way.runs,
                Some(&supply),
            );
            let cents: i64 = supply.plan.price.minor;
            let ground_mm = figures
                .ground
                .as_ref()
                .map_or(150.0, |gap| gap.gap_mm.min(150.0));
            let added = cents as f64 / 100.0
                + figures.hours.expect("counted") * practice.rate.major_per_unit
                + figures.bends_rad.to_degrees() * practice.flow_per_degree.major_per_unit
                + as_bend_deg(solved, &way.runs) * practice.flow_per_degree.major_per_unit
                + figures.length_mm / 1000.0 * practice.flow_per_metre.major_per_unit
                + (150.0 - ground_mm) * practice.ground_loss.major_per_unit;
            let told = figures.cost_as_cut.expect("there is a plan");
            assert!((told - added).abs() < 1e-6, "{name}: {told} is {added}");
            let closes = figures.end_off_mm <= 3.0 && figures.end_off_rad.to_degrees() <= 1.0;
            let alone = Routed::Found(vec![way.clone()]);
            let judged = Some((&solved.posed, &alone));
            let faults = check(&solved.model, &solved.around, judged, Some(&supply))
                .findings()
                .iter()
                .filter(|finding| finding.state == State::Fail)
                .filter(|finding| matches!(finding.rule, Rule::SensorPlace | Rule::TipPlace))
                .count();
            (!closes, faults, told)
        })
        .collect();
    for pair in costs.windows(2) {
        assert!(pair[0] <= pair[1], "{name}: {costs:?}");
    }
}

/// Degrees of bend that lose as much as the crossovers and the mitres of these runs: each bank is turned sharply by
/// the angle between its own ports, and a sharp elbow loses 0.946 sin²(δ/2) + 2.047 sin⁴(δ/2) heads where a bend of
/// a right angle loses 0.171.
fn as_bend_deg(solved: &Solved, runs: &[PlannedRun]) -> f64 {
    let mut heads = 0.0;
    let mut elbow = |turn: f64| {
        let s = math::sin(0.5 * turn).powi(2);
        heads += 0.946 * s + 2.047 * s * s;
    };
    for run in runs {
        for piece in &run.pieces {
            if let PlannedKind::Crossover { name, side, .. } = &piece.kind {
                let part = solved.posed.part(name).expect("it is posed");
                let ports = part.ports(*side);
                elbow(ports.inlet_direction.angle_to(ports.outlet_direction));
            }
        }
        if let Some(sawn) = run.sawn {
            elbow(sawn.turn_rad);
        }
    }
    heads / 0.171 * 90.0
}

#[test]
fn the_estate_is_what_its_cards_give() {
    proved("estate-v6");
}

#[test]
fn the_kit_car_is_what_its_cards_give() {
    proved("kitcar-mid4");
}

#[test]
fn the_pick_up_is_what_its_cards_give() {
    proved("pickup-six");
}
