//! Swept envelopes, ramp angles and usual gaps, each published value under its id.
#![allow(clippy::expect_used, clippy::panic, reason = "helpers of tests")]

mod common;

use common::{check, number, numbers};
use tubewright_geometry::motion::{SteeredTyre, point_envelope, tyre_envelope};
use tubewright_geometry::practice::ClearanceClass;
use tubewright_geometry::ramp::{breakover_angle, ramp_angle};
use tubewright_geometry::{Freedom, Motion, Point, UnitVector};

const DATA: &str = include_str!("data/clearance.toml");

fn roll_envelope(id: &str) {
    let c = check(DATA, id);
    let roll = Motion {
        freedoms: vec![Freedom::Turn {
            on_axis: Point::ORIGIN,
            axis: UnitVector::X,
            min_rad: c.number("roll_min_deg").to_radians(),
            max_rad: c.number("roll_max_deg").to_radians(),
        }],
    };
    let point = Point::new(0.0, c.number("y_mm"), c.number("z_mm"));
    let found = point_envelope(point, &roll, 1e-4);
    let (y, z) = (numbers(c.expected_of("y")), numbers(c.expected_of("z")));
    c.all_near("y", &[found.min.y, found.max.y], &y, 0.001);
    c.all_near("z", &[found.min.z, found.max.z], &z, 0.001);
}

#[test]
fn roll_envelope_1() {
    roll_envelope("roll-envelope-1");
}

#[test]
fn roll_envelope_2() {
    roll_envelope("roll-envelope-2");
}

#[test]
fn tyre_envelope_check() {
    let c = check(DATA, "tyre-envelope");
    // The wheel is on the left: outboard is toward -y.
    let kingpin = Point::new(c.number("kingpin_x_mm"), c.number("kingpin_y_mm"), 0.0);
    let centre = Point::new(
        kingpin.x,
        kingpin.y - c.number("kingpin_to_wheel_centre_mm"),
        c.number("wheel_centre_z_mm"),
    );
    let found = tyre_envelope(
        &SteeredTyre {
            centre,
            axle: UnitVector::Y,
            radius_mm: c.number("tyre_radius_mm"),
            width_mm: c.number("tyre_width_mm"),
            on_kingpin: kingpin,
            kingpin: UnitVector::Z,
            max_steer_rad: c.number("max_steer_deg").to_radians(),
            bump_mm: c.number("bump_mm"),
            droop_mm: 0.0,
        },
        0.005,
    );
    for (what, got) in [
        ("inboard_y", found.right_y_mm),
        ("rear_x", found.rear_x_mm),
        ("front_x", found.front_x_mm),
        ("top_z", found.top_z_mm),
    ] {
        c.near(what, got, number(c.expected_of(what)), 0.02);
    }
}

#[test]
fn approach_departure() {
    let c = check(DATA, "approach-departure");
    let slr = c.number("slr_mm");
    let angles: Vec<f64> = ["front", "rear"]
        .iter()
        .map(|end| {
            let (a, h) = (
                c.number(&format!("{end}_a_mm")),
                c.number(&format!("{end}_h_mm")),
            );
            ramp_angle(a, h, slr).expect("a ramp").to_degrees()
        })
        .collect();
    c.all_near("angle", &angles, &numbers(c.expected()), 0.01);
}

#[test]
fn breakover() {
    let c = check(DATA, "breakover");
    let angle = breakover_angle(
        c.number("a_mm"),
        c.number("b_mm"),
        c.number("h_mm"),
        c.number("slr_mm"),
    )
    .expect("a ramp");
    c.near("angle", angle.to_degrees(), number(c.expected()), 0.01);
}

#[test]
fn clearance_practice() {
    let c = check(DATA, "clearance-practice");
    let kinds = c.input("kind").as_array().expect("kinds");
    let gaps = numbers(c.expected());
    assert_eq!(kinds.len(), ClearanceClass::ALL.len());
    for (kind, gap) in kinds.iter().zip(gaps) {
        let class = ClearanceClass::ALL
            .into_iter()
            .find(|class| Some(class.words()) == kind.as_str())
            .unwrap_or_else(|| panic!("no class {kind}"));
        c.near(class.words(), class.usual_gap_mm(), gap, 0.0);
    }
}

#[test]
fn ramps_that_cannot_be_are_refused() {
    assert!(ramp_angle(700.0, 700.0, 318.0).is_err());
    assert!(ramp_angle(100.0, 200.0, 318.0).is_err());
    assert!(ramp_angle(f64::NAN, 200.0, 318.0).is_err());
}
