//! The demonstration builds, from their readings to what the saw marks give.

#![allow(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::cast_precision_loss,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use common::prove::{prove, prove_others};
use common::solved::{Solved, solve_folder};
use tubewright_check::{Rule, State};
use tubewright_geometry::math;
use tubewright_plan::figures::figures;
use tubewright_plan::routes::{PlannedKind, PlannedRun};
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
