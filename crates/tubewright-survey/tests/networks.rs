//! The published networks, each value under its id.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::print_stderr,
    reason = "a test fails by panicking"
)]

mod common;

use common::{Check, CheckNetwork, Checks, check_network, number, numbers, xyz};
use tubewright_geometry::{Point, math::PI};
use tubewright_survey::{Adjustment, FrameChoice, Survey, adjust, adjust_near, statistics};

fn solved(check: &Check<'_>) -> (CheckNetwork, Adjustment, Survey) {
    let net = check_network(check.inputs);
    let adjustment = adjust_near(&net.network, &net.start).unwrap();
    assert!(adjustment.is_settled());
    let survey = adjustment.seen_from(&FrameChoice::AsAdjusted).unwrap();
    (net, adjustment, survey)
}

fn coordinates(id: &str, from_readings_only: bool) {
    let checks = Checks::networks();
    let check = checks.get(id);
    let (net, _, survey) = solved(&check);
    let survey = if from_readings_only {
        adjust(&net.network)
            .unwrap()
            .seen_from(&FrameChoice::AsAdjusted)
            .unwrap()
    } else {
        survey
    };
    for item in check.expected.as_array().unwrap() {
        let name = item["p"].as_str().unwrap();
        let found = survey
            .point(net.network.point_named(name).unwrap())
            .unwrap();
        near_point(&check, name, found.place, xyz(&item["xyz"]), 0.001);
    }
}

fn near_point(check: &Check<'_>, name: &str, found: Point, expected: Point, tolerance: f64) {
    for (k, (f, e)) in found.to_array().iter().zip(expected.to_array()).enumerate() {
        check.near(&format!("{name}[{k}]"), *f, e, tolerance);
    }
}

fn sigmas(id: &str) {
    let checks = Checks::networks();
    let check = checks.get(id);
    let (net, _, survey) = solved(&check);
    for item in check.expected.as_array().unwrap() {
        let name = item["p"].as_str().unwrap();
        let found = survey
            .point(net.network.point_named(name).unwrap())
            .unwrap();
        for (f, e) in found.sigmas().iter().zip(numbers(&item["sxyz"])) {
            check.near_part(name, *f, e, 0.001);
        }
    }
}

fn global_test(id: &str) {
    let checks = Checks::networks();
    let check = checks.get(id);
    let (_, adjustment, _) = solved(&check);
    let test = adjustment.global_test();
    check.near("dof", test.freedom as f64, check.number("dof"), 0.0);
    check.near_part("vtpv", test.vtpv, check.number("vtpv"), 0.001);
    check.near_part("s0", test.s0(), check.number("s0"), 0.001);
    check.near_part("low", test.low, check.number("chi2_lo_2p5"), 0.001);
    check.near_part("high", test.high, check.number("chi2_hi_97p5"), 0.001);
    check.holds(
        "accepted",
        test.is_accepted() == check.expected["accepted"].as_bool().unwrap(),
    );
}

fn redundancy(id: &str) {
    let checks = Checks::networks();
    let check = checks.get(id);
    let (net, adjustment, _) = solved(&check);
    let results = adjustment.readings();
    let (v, r, w) = (
        numbers(&check.expected["v"]),
        numbers(&check.expected["r"]),
        numbers(&check.expected["w"]),
    );
    assert_eq!(results.len(), v.len());
    for (i, result) in results.iter().enumerate() {
        let degrees = if net.network.readings[i].kind.is_angle() {
            180.0 / PI
        } else {
            1.0
        };
        check.near(&format!("v[{i}]"), result.residual * degrees, v[i], 0.001);
        check.near(&format!("r[{i}]"), result.redundancy, r[i], 0.001);
        check.near(&format!("w[{i}]"), result.standardised, w[i], 0.001);
    }
    let sum: f64 = results.iter().map(|r| r.redundancy).sum();
    let freedom = adjustment.global_test().freedom as f64;
    assert!(
        (sum - freedom).abs() < 1e-6,
        "sum of r is {sum}, f is {freedom}"
    );
}

#[test]
fn tape_net_a_coords() {
    coordinates("tape-net-a-coords", false);
    coordinates("tape-net-a-coords", true);
}

#[test]
fn tape_net_a_sigmas() {
    sigmas("tape-net-a-sigmas");
}

#[test]
fn tape_net_a_global_test() {
    global_test("tape-net-a-global-test");
}

#[test]
fn tape_net_a_redundancy() {
    redundancy("tape-net-a-redundancy");
}

#[test]
fn tape_net_a_ellipse_p() {
    let checks = Checks::networks();
    let check = checks.get("tape-net-a-ellipse-P");
    let (net, _, survey) = solved(&check);
    let p = survey.point(net.network.point_named("P").unwrap()).unwrap();
    let ellipse = p.ellipse_in_plan();
    check.near_part("a", ellipse.major_mm, check.number("a_mm"), 0.001);
    check.near_part("b", ellipse.minor_mm, check.number("b_mm"), 0.001);
    let direction = ellipse.direction_rad * 180.0 / PI;
    check.near("direction", direction, check.number("direction_deg"), 0.1);
    check.near_part("k95", statistics::K95_PLANE, check.number("k95"), 0.001);
    let space = statistics::chi_squared_quantile(0.95, 3).sqrt();
    check.near_part("k95 in space", statistics::K95_SPACE, space, 1e-9);
    check.near("k95 in space, printed", statistics::K95_SPACE, 2.7955, 5e-5);
}

#[test]
fn tape_net_a_relative_ps() {
    let checks = Checks::networks();
    let check = checks.get("tape-net-a-relative-PS");
    let (net, adjustment, survey) = solved(&check);
    let p = net.network.point_named("P").unwrap();
    let s = net.network.point_named("S").unwrap();
    let found = survey.distance(p, s).unwrap();
    check.near("length", found.value, check.number("length_mm"), 0.001);
    check.near_part("sigma", found.sigma, check.number("sigma_mm"), 0.001);
    check.near_part(
        "allowance",
        found.plus_minus(),
        check.number("allowance95_mm"),
        0.001,
    );
    let (pp, ss) = (survey.point(p).unwrap(), survey.point(s).unwrap());
    let u = (ss.place - pp.place).direction().unwrap().to_array();
    let mut variance = 0.0;
    for i in 0..3 {
        for k in 0..3 {
            variance += u[i] * u[k] * (pp.covariance[i][k] + ss.covariance[i][k]);
        }
    }
    let expected = check.number("sigma_ignoring_cross_mm");
    check.near_part("without cross", f64::sqrt(variance), expected, 0.001);
    // The frame-free way gives the same.
    use tubewright_survey::Target;
    let direct = adjustment
        .distance(Target::Point(p), Target::Point(s))
        .unwrap();
    assert!((direct.sigma - found.sigma).abs() < 1e-9);
}

#[test]
fn tape_net_b_coords() {
    coordinates("tape-net-b-coords", false);
    coordinates("tape-net-b-coords", true);
}

#[test]
fn tape_net_b_sigmas() {
    sigmas("tape-net-b-sigmas");
}

#[test]
fn tape_net_b_global_test() {
    global_test("tape-net-b-global-test");
}

#[test]
fn tape_net_b_redundancy() {
    redundancy("tape-net-b-redundancy");
}

#[test]
fn tape_net_b_blunder() {
    let checks = Checks::networks();
    let check = checks.get("tape-net-b-blunder");
    let (_, adjustment, _) = solved(&check);
    let mut results = adjustment.readings();
    results.sort_by(|a, b| b.standardised.abs().total_cmp(&a.standardised.abs()));
    let (first, second) = (results[0], results[1]);
    let flagged = check.expected["flagged_index0"].as_integer().unwrap();
    check.holds("flagged", i64::from(first.number) == flagged);
    check.near_part("w", first.standardised, check.number("w"), 0.005);
    let second_w = second.standardised.abs();
    check.near_part("second", second_w, check.number("second_abs_w"), 0.005);
    let blunder = check.number("estimated_blunder_mm");
    check.near_part("blunder", first.estimated_slip, blunder, 0.005);
    check.near_part("mdb", first.detectable_slip, check.number("mdb_mm"), 0.005);
    check.near("critical", statistics::CRITICAL_W, 3.2905, 5e-5);
}

#[test]
fn tape_net_b_after_removal() {
    let checks = Checks::networks();
    let check = checks.get("tape-net-b-after-removal");
    let net = check_network(check.inputs);
    let removed = check.own_inputs["removed_index0"].as_integer().unwrap();
    let network = net.network.without(u32::try_from(removed).unwrap());
    let adjustment = adjust_near(&network, &net.start).unwrap();
    let survey = adjustment.seen_from(&FrameChoice::AsAdjusted).unwrap();
    for item in check.expected["coords"].as_array().unwrap() {
        let name = item["p"].as_str().unwrap();
        let found = survey.point(network.point_named(name).unwrap()).unwrap();
        near_point(&check, name, found.place, xyz(&item["xyz"]), 0.001);
    }
    let test = adjustment.global_test();
    check.near_part("vtpv", test.vtpv, check.number("vtpv"), 0.001);
    check.near("dof", test.freedom as f64, check.number("dof"), 0.0);
    let largest = adjustment
        .readings()
        .iter()
        .filter(|r| !r.set_aside)
        .map(|r| r.standardised.abs())
        .fold(0.0, f64::max);
    check.near_part("largest w", largest, check.number("max_abs_w"), 0.001);
}

#[test]
fn tape_net_c_coords() {
    coordinates("tape-net-c-coords", false);
}

#[test]
fn tape_net_c_sigmas() {
    sigmas("tape-net-c-sigmas");
}

#[test]
fn tape_net_c_global_test() {
    global_test("tape-net-c-global-test");
}

#[test]
fn tape_net_c_redundancy() {
    redundancy("tape-net-c-redundancy");
}

/// Network C from its readings alone: the words about sides choose between the exact mirror twins.
#[test]
fn tape_net_c_words_choose_the_twin() {
    use tubewright_survey::{Handedness, Side};
    let checks = Checks::networks();
    let check = checks.get("tape-net-c-coords");
    let mut net = check_network(check.inputs);
    let (hl, hr) = (
        net.network.point_named("HL").unwrap(),
        net.network.point_named("HR").unwrap(),
    );
    for swapped in [false, true] {
        let (l, r) = if swapped { (hr, hl) } else { (hl, hr) };
        net.network.points[l.0].hint.side = Some(Side::Left);
        net.network.points[r.0].hint.side = Some(Side::Right);
        let adjustment = adjust(&net.network).unwrap();
        assert_eq!(adjustment.handedness(), Handedness::Told);
        let survey = adjustment.seen_from(&FrameChoice::AsAdjusted).unwrap();
        for item in check.expected.as_array().unwrap() {
            let name = item["p"].as_str().unwrap();
            let found = survey
                .point(net.network.point_named(name).unwrap())
                .unwrap();
            let mut expected = xyz(&item["xyz"]);
            if swapped {
                expected.y = -expected.y;
            }
            near_point(&check, name, found.place, expected, 0.001);
        }
    }
}

#[test]
fn tape_net_d_free() {
    let checks = Checks::networks();
    let check = checks.get("tape-net-d-free");
    let (net, free, survey) = solved(&check);
    for item in check.expected["inner_coords"].as_array().unwrap() {
        let name = item["p"].as_str().unwrap();
        let found = survey
            .point(net.network.point_named(name).unwrap())
            .unwrap();
        near_point(&check, name, found.place, xyz(&item["xyz"]), 0.02);
    }
    let test = free.global_test();
    check.near("dof", test.freedom as f64, check.number("dof"), 0.0);
    check.near_part("vtpv", test.vtpv, check.number("vtpv"), 0.001);
    let trace = survey.trace_mm2();
    check.near_part("inner trace", trace, check.number("trace_inner_mm2"), 0.001);

    // Minimum constraint: point 1 wholly, y and z of 2, z of 4 held at the approximate values.
    let mut held = net.network.clone();
    for (name, which) in [
        ("1", [true, true, true]),
        ("2", [false, true, true]),
        ("4", [false, false, true]),
    ] {
        let id = held.point_named(name).unwrap();
        let start = net.start.points[id.0].unwrap().to_array();
        for k in 0..3 {
            held.points[id.0].held[k] = which[k].then_some(start[k]);
        }
    }
    let fixed = adjust_near(&held, &net.start).unwrap();
    let trace = fixed
        .seen_from(&FrameChoice::AsAdjusted)
        .unwrap()
        .trace_mm2();
    check.near_part(
        "constrained trace",
        trace,
        check.number("trace_mincon_mm2"),
        0.001,
    );
    let expected = number(&check.expected["max_residual_difference"]);
    for (a, b) in free.readings().iter().zip(fixed.readings()) {
        check.near(
            "residual difference",
            a.residual - b.residual,
            expected,
            1e-6,
        );
        check.near("redundancy", a.redundancy, b.redundancy, 1e-6);
    }
    for i in 0..7 {
        for k in i + 1..7 {
            use tubewright_survey::{PointId, Target};
            let of = |a: &Adjustment| {
                a.distance(Target::Point(PointId(i)), Target::Point(PointId(k)))
                    .unwrap()
            };
            check.near("distance", of(&free).value, of(&fixed).value, 1e-6);
            check.near("its sigma", of(&free).sigma, of(&fixed).sigma, 1e-6);
        }
    }
}
