//! Rows and points of bent tubes, single bends and offsets: each published value under its id.
#![allow(clippy::expect_used, reason = "helpers of tests")]

mod common;

use common::{Check, check, numbers};
use tubewright_geometry::bend::{angle_of_two_bends, rolling_offset, travel_multiplier};
use tubewright_geometry::{
    BendRow, BendTable, Frame, PlacedTable, Point, bend_scalars, rows_from_points,
};

const DATA: &str = include_str!("data/fabrication.toml");
const MM: f64 = 1e-5;
const DEG: f64 = 1e-6;

fn points(c: &Check) -> Vec<Point> {
    let list = c.input("points_xyz_mm").as_array().expect("points");
    list.iter()
        .map(|p| {
            let v = numbers(p);
            Point::new(v[0], v[1], v[2])
        })
        .collect()
}

fn radii(c: &Check) -> Vec<f64> {
    match c.input("clr_mm") {
        list @ toml::Value::Array(_) => numbers(list),
        one => vec![common::number(one)],
    }
}

fn placed(c: &Check) -> PlacedTable {
    rows_from_points(&points(c), &radii(c)).expect("a tube")
}

fn rotations_deg(table: &BendTable) -> Vec<f64> {
    table
        .rows
        .iter()
        .map(|r| r.rotation_rad.to_degrees())
        .collect()
}

/// Rows as published, and the way back to the points.
fn rows_check(id: &str) {
    let c = check(DATA, id);
    let PlacedTable { start, table } = placed(&c);
    let expected = |key: &str| numbers(c.expected_of(key));
    let straights: Vec<f64> = table.straights_mm().collect();
    c.all_near(
        "straight",
        &straights,
        &expected("straight_between_tangents_mm"),
        MM,
    );
    c.all_near(
        "rotation",
        &rotations_deg(&table),
        &expected("rotation_deg"),
        DEG,
    );
    let bends: Vec<f64> = table.rows.iter().map(|r| r.bend_rad.to_degrees()).collect();
    c.all_near("bend", &bends, &expected("bend_angle_deg"), DEG);
    let scalars: Vec<_> = table
        .rows
        .iter()
        .map(|r| bend_scalars(60.0, r.clr_mm, r.bend_rad))
        .collect();
    let setbacks: Vec<f64> = scalars.iter().map(|s| s.setback_mm).collect();
    c.all_near("set-back", &setbacks, &expected("setback_mm"), MM);
    let arcs: Vec<f64> = scalars.iter().map(|s| s.centre_line_mm).collect();
    c.all_near("arc", &arcs, &expected("arc_centreline_mm"), MM);
    let length = common::number(c.expected_of("developed_length_mm"));
    c.near("developed length", table.developed_length_mm(), length, MM);
    for (got, given) in table
        .points(&start)
        .expect("sound rows")
        .iter()
        .zip(points(&c))
    {
        c.near("point", got.distance(given), 0.0, MM);
    }
}

#[test]
fn kin_3leg_orthogonal() {
    rows_check("kin-3leg-orthogonal");
}

#[test]
fn kin_planar_z_offset() {
    rows_check("kin-planar-z-offset");
}

#[test]
fn kin_under_floor_run() {
    rows_check("kin-under-floor-run");
}

#[test]
fn kin_general_six_points() {
    rows_check("kin-general-six-points");
}

#[test]
fn kin_mirror_negates_rotation() {
    let c = check(DATA, "kin-mirror-negates-rotation");
    let table = placed(&c).table;
    c.all_near(
        "rotation",
        &rotations_deg(&table),
        &numbers(c.expected_of("rotation_deg")),
        DEG,
    );
    let flipped: Vec<Point> = points(&c)
        .iter()
        .map(|p| Point::new(p.x, -p.y, p.z))
        .collect();
    let mirrored = rows_from_points(&flipped, &radii(&c))
        .expect("a tube")
        .table;
    let expected = numbers(c.expected_of("rotation_mirrored_deg"));
    c.all_near("mirrored", &rotations_deg(&mirrored), &expected, DEG);
    c.all_near(
        "by table",
        &rotations_deg(&table.mirrored()),
        &expected,
        DEG,
    );
}

#[test]
fn kin_reversal_keeps_rotation() {
    let c = check(DATA, "kin-reversal-keeps-rotation");
    let (mut p, mut r) = (points(&c), radii(&c));
    p.reverse();
    r.reverse();
    let from_points = rows_from_points(&p, &r).expect("a tube").table;
    for table in [from_points, placed(&c).table.reversed()] {
        let straights: Vec<f64> = table.straights_mm().collect();
        let expected = numbers(c.expected_of("straight_reversed_run_mm"));
        c.all_near("straight", &straights, &expected, 1e-6);
        let expected = numbers(c.expected_of("rotation_reversed_run_deg"));
        c.all_near("rotation", &rotations_deg(&table), &expected, 1e-6);
        let length = common::number(c.expected_of("developed_length_mm"));
        c.near(
            "developed length",
            table.developed_length_mm(),
            length,
            1e-6,
        );
    }
}

#[test]
fn kin_rows_to_points_4bends() {
    let c = check(DATA, "kin-rows-to-points-4bends");
    let straights = c.numbers("straight_mm");
    let (rotations, bends) = (c.numbers("rotation_deg"), c.numbers("bend_angle_deg"));
    let rows = straights.iter().zip(rotations.iter().zip(&bends));
    let table = BendTable {
        rows: rows
            .map(|(&straight_mm, (rotation, bend))| BendRow {
                straight_mm,
                rotation_rad: rotation.to_radians(),
                bend_rad: bend.to_radians(),
                clr_mm: c.number("clr_mm"),
            })
            .collect(),
        last_straight_mm: straights[4],
    };
    let points = table.points(&Frame::IDENTITY).expect("sound rows");
    let expected = c.expected().as_array().expect("points");
    assert_eq!(points.len(), expected.len());
    for (got, expected) in points.iter().zip(expected) {
        c.all_near("point", &got.to_array(), &numbers(expected), MM);
    }
}

#[test]
fn bend_scalars_90_45_15() {
    let c = check(DATA, "bend-scalars-90-45-15");
    for (i, angle) in c.numbers("bend_angle_deg").into_iter().enumerate() {
        let s = bend_scalars(c.number("od_mm"), c.number("clr_mm"), angle.to_radians());
        for (key, got) in [
            ("setback_mm", s.setback_mm),
            ("arc_cl_mm", s.centre_line_mm),
            ("arc_extrados_mm", s.extrados_mm),
            ("arc_intrados_mm", s.intrados_mm),
            ("chord_mm", s.chord_mm),
            ("external_mm", s.corner_cut_mm),
            ("gain_mm", s.gain_mm),
        ] {
            c.close(key, got, numbers(c.expected_of(key))[i]);
        }
    }
}

#[test]
fn offset_multipliers() {
    let c = check(DATA, "offset-multipliers");
    let got: Vec<f64> = c
        .numbers("angle_deg")
        .into_iter()
        .map(|a| travel_multiplier(a.to_radians()))
        .collect();
    c.all_near("multiplier", &got, &numbers(c.expected()), 0.0005);
}

#[test]
fn rolling_offset_published() {
    let c = check(DATA, "rolling-offset-published");
    let angle = c.number("fit_angle_deg").to_radians();
    let found = rolling_offset(c.number("rise_in"), c.number("roll_in"), angle, 0.0);
    let expected = |key: &str| common::number(c.expected_of(key));
    c.near(
        "true offset",
        found.true_offset_mm,
        expected("true_offset_in"),
        1e-4,
    );
    c.near("travel", found.travel_mm, expected("travel_in"), 1e-4);
}

#[test]
fn rolling_offset_with_clr() {
    let c = check(DATA, "rolling-offset-with-clr");
    let angle = c.number("fit_angle_deg").to_radians();
    let (rise, roll, clr) = (c.number("rise_mm"), c.number("roll_mm"), c.number("clr_mm"));
    let found = rolling_offset(rise, roll, angle, clr);
    let expected = |key: &str| common::number(c.expected_of(key));
    c.close(
        "true offset",
        found.true_offset_mm,
        expected("true_offset_mm"),
    );
    let roll_deg = found.roll_angle_rad.to_degrees();
    c.close("roll angle", roll_deg, expected("roll_angle_deg"));
    c.close("travel", found.travel_mm, expected("travel_mm"));
    c.close("run", found.run_mm, expected("run_mm"));
    c.close("straight", found.straight_mm, expected("straight_mm"));
    c.close(
        "least offset",
        found.min_offset_mm,
        expected("min_offset_mm"),
    );
    // The second way: rows from the four points.
    let points = [
        [0.0, 0.0, 0.0],
        [500.0, 0.0, 0.0],
        [500.0 + found.run_mm, roll, rise],
        [1500.0, roll, rise],
    ]
    .map(Point::from_array);
    let table = rows_from_points(&points, &[clr]).expect("a tube").table;
    c.close(
        "straight by rows",
        table.rows[1].straight_mm,
        found.straight_mm,
    );
    c.close("angle by rows", table.rows[0].bend_rad, angle);
}

#[test]
fn compound_angle_two_bends() {
    let c = check(DATA, "compound-angle-two-bends");
    let (first, second) = (c.numbers("bend1_deg"), c.numbers("bend2_deg"));
    let expected = numbers(c.expected());
    for (i, roll) in c.numbers("roll_deg").into_iter().enumerate() {
        let (a, b, roll) = (
            first[i].to_radians(),
            second[i].to_radians(),
            roll.to_radians(),
        );
        c.near(
            "angle",
            angle_of_two_bends(a, b, roll).to_degrees(),
            expected[i],
            1e-5,
        );
        let end = Frame::IDENTITY.bent(a, 50.0).rolled(roll).bent(b, 50.0);
        let by_frames = Frame::IDENTITY.travel().angle_to(end.travel()).to_degrees();
        c.near("by frames", by_frames, expected[i], 1e-5);
    }
}
