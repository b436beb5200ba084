//! Tables of tube and fittings: each published value under its id; and that no check of the file is
//! left without a test.
#![allow(clippy::expect_used, reason = "helpers of tests")]

mod common;

use common::{check, number, numbers};
use tubewright_geometry::tube_standards::{
    DENSITY_304_321_KG_M3, DENSITY_409_KG_M3, DIN_2605_TYPE_3, GaugeSystem, LONG_RADIUS_ELBOWS,
    MANDREL_RATIOS, a249_od_tolerance_mm, a269_tolerance, a554_od_range_in, a554_od_tolerance_in,
    gauge_wall, mandrel_clr_mm, mass_per_metre_kg, meanings_of_gauge,
    pounds_per_foot_by_trade_rule,
};
use tubewright_geometry::{Length, setback_mm};

const DATA: &str = include_str!("data/fabrication.toml");
const EXACT: f64 = 1e-9;

#[test]
fn b169_lr90_centre_to_end() {
    let c = check(DATA, "b169-lr90-centre-to-end");
    let column = |f: fn(&tubewright_geometry::tube_standards::LongRadiusElbow) -> f64| {
        LONG_RADIUS_ELBOWS.iter().map(f).collect::<Vec<f64>>()
    };
    c.all_near("size", &column(|e| e.nps_in), &c.numbers("nps_in"), EXACT);
    c.all_near("diameter", &column(|e| e.od_mm), &c.numbers("od_mm"), EXACT);
    let ends = column(|e| e.centre_to_end_90_mm);
    c.all_near("centre to end", &ends, &numbers(c.expected()), 0.5);
    // 1.5 nominal sizes from 1 in up.
    for e in LONG_RADIUS_ELBOWS.iter().filter(|e| e.nps_in >= 1.0) {
        c.near(
            "1.5 sizes",
            e.centre_to_end_90_mm,
            1.5 * 25.4 * e.nps_in,
            0.5,
        );
    }
}

#[test]
fn b169_lr45_centre_to_end() {
    let c = check(DATA, "b169-lr45-centre-to-end");
    let table = numbers(c.expected_of("table_B_mm"));
    let halves = numbers(c.expected_of("half_90_setback_mm"));
    for (i, size) in c.numbers("nps_in").into_iter().enumerate() {
        let elbow = LONG_RADIUS_ELBOWS
            .iter()
            .find(|e| (e.nps_in - size).abs() < EXACT)
            .expect("in the table");
        let b = elbow.centre_to_end_45_mm.expect("a 45 in the table");
        c.near("B", b, table[i], 0.7);
        let half = setback_mm(1.5 * 25.4 * size, 45.0_f64.to_radians());
        c.near("half of a 90", half, halves[i], 0.001);
        assert!(b > half, "a catalogue 45 is longer than half a 90");
    }
}

#[test]
fn din2605_type3_radius() {
    let c = check(DATA, "din2605-type3-radius");
    let (r, b, e) = (
        numbers(c.expected_of("r_mm")),
        numbers(c.expected_of("b_mm")),
        numbers(c.expected_of("e_mm")),
    );
    for (i, od) in c.numbers("od_mm").into_iter().enumerate() {
        let elbow = DIN_2605_TYPE_3
            .iter()
            .find(|x| (x.od_mm - od).abs() < EXACT)
            .expect("in the table");
        c.near("radius", elbow.clr_mm, r[i], EXACT);
        c.near("back to face", elbow.back_to_face_mm, b[i], EXACT);
        c.near("45", elbow.centre_to_end_45_mm, e[i], EXACT);
        c.near("by geometry", elbow.clr_mm + 0.5 * od, b[i], 1.2);
        c.near(
            "by set-back",
            setback_mm(elbow.clr_mm, 45.0_f64.to_radians()),
            e[i],
            1.2,
        );
    }
}

#[test]
fn mandrel_stock_clr() {
    let c = check(DATA, "mandrel-stock-clr");
    c.all_near("ratios", &MANDREL_RATIOS, &c.numbers("ratio"), EXACT);
    for (key, ratio) in [
        ("clr_1d_mm", MANDREL_RATIOS[0]),
        ("clr_1_5d_mm", MANDREL_RATIOS[1]),
    ] {
        let ods = c.numbers("od_mm");
        let got: Vec<f64> = ods.iter().map(|&od| mandrel_clr_mm(od, ratio)).collect();
        c.all_near(key, &got, &numbers(c.expected_of(key)), EXACT);
    }
}

#[test]
fn a554_od_tolerance() {
    let c = check(DATA, "a554-od-tolerance");
    let got: Vec<f64> = c
        .numbers("od_in")
        .into_iter()
        .zip(c.numbers("wall_in"))
        .map(|(od, wall)| a554_od_tolerance_in(od, wall).expect("in the table"))
        .collect();
    c.all_near("tolerance", &got, &numbers(c.expected()), EXACT);
    assert_eq!(a554_od_tolerance_in(4.0, 0.065), None);
    assert_eq!(a554_od_tolerance_in(2.0, 0.3), None);
    // A size that came through millimetres finds the same band.
    let od = Length::from_mm(63.5).inches();
    c.near(
        "by mm",
        a554_od_tolerance_in(od, 0.065).expect("in the table"),
        0.012,
        EXACT,
    );
}

#[test]
fn a554_ovality_thinwall() {
    let c = check(DATA, "a554-ovality-thinwall");
    let (od, wall) = (c.number("od_in"), c.number("wall_in"));
    let tolerance = a554_od_tolerance_in(od, wall).expect("in the table");
    c.near("tolerance", tolerance, c.number("od_tol_in"), EXACT);
    let (min, max) = a554_od_range_in(od, wall).expect("in the table");
    c.near("greatest", max, number(c.expected_of("od_max_in")), 0.0005);
    c.near("least", min, number(c.expected_of("od_min_in")), 0.0005);
    let share = 100.0 * wall / od;
    c.near(
        "wall over diameter",
        share,
        number(c.expected_of("wall_over_od_pct")),
        1e-6,
    );
    let thin = max - od > 1.5 * tolerance;
    assert_eq!(Some(thin), c.expected_of("thin").as_bool());
    let (_, thick) = a554_od_range_in(2.5, 0.083).expect("in the table");
    c.near("thick wall", thick, 2.513, EXACT);
}

#[test]
fn a269_od_wall_tolerance() {
    let c = check(DATA, "a269-od-wall-tolerance");
    let found: Vec<_> = c
        .numbers("od_mm")
        .into_iter()
        .map(|od| a269_tolerance(od).expect("in the table"))
        .collect();
    let od: Vec<f64> = found.iter().map(|t| t.od_mm).collect();
    let wall: Vec<f64> = found.iter().map(|t| t.wall_percent).collect();
    c.all_near("diameter", &od, &numbers(c.expected_of("od_tol_mm")), EXACT);
    c.all_near(
        "wall",
        &wall,
        &numbers(c.expected_of("wall_tol_pct")),
        EXACT,
    );
    assert_eq!(a269_tolerance(139.7), None);
    c.near(
        "on a break",
        a269_tolerance(38.1).expect("in the table").od_mm,
        0.25,
        EXACT,
    );
}

#[test]
fn a249_od_tolerance() {
    let c = check(DATA, "a249-od-tolerance");
    let got: Vec<f64> = c
        .numbers("od_mm")
        .into_iter()
        .map(|od| a249_od_tolerance_mm(od).expect("in the table"))
        .collect();
    c.all_near("tolerance", &got, &numbers(c.expected()), 0.005);
    assert_eq!(a249_od_tolerance_mm(120.0), None);
}

#[test]
fn bwg_wall_gauge() {
    let c = check(DATA, "bwg-wall-gauge");
    let got: Vec<f64> = c
        .numbers("gauge")
        .into_iter()
        .map(|g| {
            gauge_wall(GaugeSystem::Birmingham, g as u8)
                .expect("in the table")
                .inches()
        })
        .collect();
    c.all_near("wall", &got, &numbers(c.expected()), EXACT);
    assert_eq!(gauge_wall(GaugeSystem::Birmingham, 15), None);
}

#[test]
fn gauge_ambiguity_16() {
    let c = check(DATA, "gauge-ambiguity-16");
    let systems = [
        ("bwg_tube_in", GaugeSystem::Birmingham),
        ("us_standard_sheet_in", GaugeSystem::UsStandardSheet),
        (
            "manufacturers_std_carbon_in",
            GaugeSystem::ManufacturersStandard,
        ),
    ];
    for (i, gauge) in c.numbers("gauge").into_iter().enumerate() {
        let meanings = meanings_of_gauge(gauge as u8);
        assert_eq!(meanings.len(), 3, "{gauge} gauge means three things");
        for (key, system) in systems {
            let wall = meanings
                .iter()
                .find(|m| m.system == system)
                .expect("in the table")
                .wall;
            c.near(key, wall.inches(), numbers(c.expected_of(key))[i], EXACT);
        }
    }
}

#[test]
fn mass_per_metre() {
    let c = check(DATA, "mass-per-metre");
    c.near(
        "304",
        DENSITY_304_321_KG_M3,
        c.number("density_304_321_kg_m3"),
        EXACT,
    );
    c.near(
        "409",
        DENSITY_409_KG_M3,
        c.number("density_409_kg_m3"),
        EXACT,
    );
    let sizes = c.numbers("od_mm").into_iter().zip(c.numbers("wall_mm"));
    for (i, (od, wall)) in sizes.enumerate() {
        for (key, density) in [("m304", DENSITY_304_321_KG_M3), ("m409", DENSITY_409_KG_M3)] {
            let expected = numbers(c.expected_of(key))[i];
            c.close(key, mass_per_metre_kg(od, wall, density), expected);
        }
    }
}

#[test]
fn mass_10_79_rule() {
    let c = check(DATA, "mass-10-79-rule");
    let (od, wall) = (c.number("od_in"), c.number("wall_in"));
    let by_rule = pounds_per_foot_by_trade_rule(od, wall);
    c.near("by the rule", by_rule, number(c.expected()), 1e-5);
    // 0.3048 m a foot, 0.45359237 kg a pound.
    let kg = mass_per_metre_kg(od * 25.4, wall * 25.4, 7925.0);
    c.near(
        "by mass",
        kg * 0.3048 / 0.453_592_37,
        by_rule,
        0.005 * by_rule,
    );
}

#[test]
fn every_check_of_the_file_has_a_test() {
    let tests = [
        include_str!("kinematics_checks.rs"),
        include_str!("cut_checks.rs"),
        include_str!("template_checks.rs"),
        include_str!("tube_standard_checks.rs"),
    ]
    .concat();
    for id in common::ids(DATA) {
        assert!(tests.contains(&format!("\"{id}\"")), "{id} has no test");
    }
}
