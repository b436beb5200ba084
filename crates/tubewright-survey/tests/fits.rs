//! Published values of fits, of the general solver and of the tape, each under its id.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::cast_precision_loss,
    reason = "a test fails by panicking"
)]

mod common;

use common::{Check, Checks, number, numbers, xyz};
use nalgebra::DVector;
use toml::Value;
use tubewright_geometry::{Point, math};
use tubewright_survey::fit::{
    FitError, circle_through, fit_circle, fit_circle_algebraic, fit_cylinder, fit_line, fit_plane,
    fit_rigid, fit_similarity_plane, place_scan, trilaterate,
};
use tubewright_survey::solve::least_squares::{Effort, Equations, LeastSquares, minimise};
use tubewright_survey::tape::{
    TapeClass, chain_allowance_mm, misalignment_mm, permissible_error_mm, sag_correction_mm,
};
use tubewright_survey::{
    FrameChoice, Network, PointSpec, Reading, StartValues, adjust, adjust_near, statistics,
};

fn points(v: &Value) -> Vec<Point> {
    v.as_array().unwrap().iter().map(xyz).collect()
}

fn pairs(v: &Value) -> Vec<[f64; 2]> {
    let list = v.as_array().unwrap().iter();
    list.map(|p| numbers(p).try_into().unwrap()).collect()
}

fn near_all(check: &Check<'_>, what: &str, found: &[f64], expected: &[f64], tolerance: f64) {
    assert_eq!(found.len(), expected.len(), "{what}");
    for (k, (f, e)) in found.iter().zip(expected).enumerate() {
        check.near(&format!("{what}[{k}]"), *f, *e, tolerance);
    }
}

#[test]
fn trilateration_three_marks() {
    let checks = Checks::fits();
    let check = checks.get("trilateration-three-marks");
    let marks: [Point; 3] = points(&check.inputs["marks_mm"]).try_into().unwrap();
    let lengths: [f64; 3] = numbers(&check.inputs["r_mm"]).try_into().unwrap();
    let found = trilaterate(marks, lengths, 0.0).unwrap();
    for (f, e) in found.iter().zip(points(check.expected)) {
        near_all(&check, "place", &f.to_array(), &e.to_array(), 0.001);
    }
    // Lengths too short to meet tell by how much.
    let apart = trilaterate(marks, [300.0, 610.0, 560.0], 1.0).unwrap_err();
    assert!(matches!(apart, FitError::DoNotMeet { misclosure_mm } if misclosure_mm > 1.0));
}

#[test]
fn trilateration_textbook_plane() {
    let checks = Checks::fits();
    let check = checks.get("trilateration-textbook-plane");
    let mut network = Network::default();
    let mut start = StartValues::default();
    let lengths = numbers(&check.inputs["dist_ft"]);
    let mut stations = Vec::new();
    for key in ["A_ft", "B_ft", "C_ft"] {
        let xy = numbers(&check.inputs[key]);
        let place = Point::new(xy[0], xy[1], 0.0);
        stations.push(network.add_point(PointSpec::held_at(key, place)));
        start.points.push(Some(place));
    }
    let mut station = PointSpec::new("U");
    station.held = [None, None, Some(0.0)];
    let station = network.add_point(station);
    let xy = numbers(&check.inputs["start_ft"]);
    start.points.push(Some(Point::new(xy[0], xy[1], 0.0)));
    for (i, (&s, &d)) in stations.iter().zip(&lengths).enumerate() {
        let number = u32::try_from(i).unwrap();
        network
            .readings
            .push(Reading::tape(number, s, station, d, 1.0));
    }
    let near = adjust_near(&network, &start).unwrap();
    // Without start values the second minimum is passed by.
    for adjustment in [near, adjust(&network).unwrap()] {
        let survey = adjustment.seen_from(&FrameChoice::AsAdjusted).unwrap();
        let found = survey.point(station).unwrap();
        let place = [found.place.x, found.place.y];
        near_all(&check, "xy", &place, &numbers(&check.expected["xy"]), 0.002);
        let v: Vec<f64> = adjustment.readings().iter().map(|r| r.residual).collect();
        near_all(&check, "v", &v, &numbers(&check.expected["v"]), 0.002);
        let s0 = adjustment.global_test().s0();
        check.near("s0", s0, check.number("s0"), 0.002);
        let s = found.sigmas();
        let sigmas = [s[0] * s0, s[1] * s0];
        near_all(
            &check,
            "sxy",
            &sigmas,
            &numbers(&check.expected["sxy"]),
            0.002,
        );
    }
}

fn kabsch(id: &str, mirrored: bool) {
    let checks = Checks::fits();
    let check = checks.get(id);
    let nominal = points(&check.inputs["nominal_mm"]);
    let fit = fit_rigid(&nominal, &points(&check.inputs["measured_mm"])).unwrap();
    for (row, expected) in fit
        .rotation
        .iter()
        .zip(check.expected["R"].as_array().unwrap())
    {
        near_all(&check, "R", row, &numbers(expected), 1e-6);
    }
    let t = numbers(&check.expected["t_mm"]);
    near_all(&check, "t", &fit.shift_mm, &t, 0.001);
    check.near("rms", fit.rms_mm, check.number("rms_mm"), 0.001);
    let angle = fit.angle_rad() * 180.0 / math::PI;
    check.near("angle", angle, check.number("angle_deg"), 0.001);
    let left = numbers(&check.expected["residual_norms_mm"]);
    near_all(&check, "residuals", &fit.residuals_mm, &left, 0.001);
    check.holds("mirrored part?", fit.looks_mirrored() == mirrored);
    if mirrored {
        check.near("mirrored rms", fit.mirrored_rms_mm, 0.0, 1e-9);
    }
}

#[test]
fn kabsch_manifold_flange() {
    kabsch("kabsch-manifold-flange", false);
}

#[test]
fn kabsch_coplanar_flange() {
    kabsch("kabsch-coplanar-flange", false);
}

#[test]
fn kabsch_mirrored() {
    kabsch("kabsch-mirrored", true);
}

#[test]
fn umeyama_published_example() {
    let checks = Checks::fits();
    let check = checks.get("umeyama-published-example");
    let fit = fit_similarity_plane(&pairs(&check.inputs["x"]), &pairs(&check.inputs["y"])).unwrap();
    for (row, expected) in fit
        .rotation
        .iter()
        .zip(check.expected["R"].as_array().unwrap())
    {
        near_all(&check, "R", row, &numbers(expected), 0.0006);
    }
    near_all(
        &check,
        "t",
        &fit.shift,
        &numbers(&check.expected["t"]),
        0.0006,
    );
    check.near("scale", fit.scale, check.number("scale"), 0.0006);
    let expected = check.number("mean_square_error");
    check.near("mean square", fit.mean_square, expected, 0.0006);
}

#[test]
fn plane_fit_flange() {
    let checks = Checks::fits();
    let check = checks.get("plane-fit-flange");
    let fit = fit_plane(&points(&check.inputs["points_mm"])).unwrap();
    let normal = numbers(&check.expected["normal"]);
    near_all(&check, "normal", &fit.normal.to_array(), &normal, 1e-5);
    let centroid = numbers(&check.expected["centroid_mm"]);
    near_all(
        &check,
        "centroid",
        &fit.centroid.to_array(),
        &centroid,
        0.001,
    );
    check.near("rms", fit.rms_mm, check.number("rms_mm"), 0.001);
    check.near("largest", fit.largest_mm, check.number("max_abs_mm"), 0.001);
}

#[test]
fn line_fit_shaft() {
    let checks = Checks::fits();
    let check = checks.get("line-fit-shaft");
    let fit = fit_line(&points(&check.inputs["points"])).unwrap();
    let direction = numbers(&check.expected["direction"]);
    near_all(
        &check,
        "direction",
        &fit.direction.to_array(),
        &direction,
        1e-5,
    );
    let centroid = numbers(&check.expected["centroid"]);
    near_all(
        &check,
        "centroid",
        &fit.centroid.to_array(),
        &centroid,
        0.001,
    );
    check.near("rms", fit.rms_mm, check.number("rms"), 0.001);
}

#[test]
fn line_fit_pearson() {
    let checks = Checks::fits();
    let check = checks.get("line-fit-pearson");
    let (x, y) = (numbers(&check.inputs["x"]), numbers(&check.inputs["y"]));
    let flat: Vec<Point> = x
        .iter()
        .zip(&y)
        .map(|(x, y)| Point::new(*x, *y, 0.0))
        .collect();
    let fit = fit_line(&flat).unwrap();
    let d = fit.direction.to_array();
    let slope = d[1] / d[0];
    let intercept = fit.centroid.y - slope * fit.centroid.x;
    near_all(
        &check,
        "line",
        &[slope, intercept],
        &numbers(check.expected),
        0.0005,
    );
}

#[test]
fn circle_fit_gander() {
    let checks = Checks::fits();
    let check = checks.get("circle-fit-gander");
    let points = pairs(&check.inputs["points"]);
    for (key, fit) in [
        ("geometric", fit_circle(&points).unwrap()),
        ("algebraic", fit_circle_algebraic(&points).unwrap()),
    ] {
        let found = [fit.centre[0], fit.centre[1], fit.radius];
        near_all(&check, key, &found, &numbers(&check.expected[key]), 0.0002);
    }
}

#[test]
fn cylinder_fit_tube() {
    let checks = Checks::fits();
    let check = checks.get("cylinder-fit-tube");
    let fit = fit_cylinder(&points(&check.inputs["points_mm"])).unwrap();
    let axis = numbers(&check.expected["axis"]);
    near_all(&check, "axis", &fit.axis.to_array(), &axis, 1e-4);
    let off = xyz(&check.expected["axis_point_mm"]) - fit.axis_point;
    let from_axis = off.cross(fit.axis.vector()).norm();
    check.near("axis point from the axis", from_axis, 0.0, 0.005);
    check.near("radius", fit.radius_mm, check.number("radius_mm"), 0.002);
    check.near("rms", fit.rms_mm, check.number("rms_mm"), 0.002);
}

#[test]
fn circle_three_points() {
    let checks = Checks::fits();
    let check = checks.get("circle-three-points");
    let at = |key: &str| xyz(&check.inputs[key]);
    let circle = circle_through(at("A_mm"), at("B_mm"), at("C_mm")).unwrap();
    let centre = numbers(&check.expected["centre_mm"]);
    near_all(&check, "centre", &circle.centre.to_array(), &centre, 0.001);
    check.near("radius", circle.radius_mm, check.number("radius_mm"), 0.001);
    let normal = numbers(&check.expected["normal"]);
    near_all(&check, "normal", &circle.normal.to_array(), &normal, 0.001);
}

/// A model `y(b, x)` with its derivatives by the two parameters.
type Model = fn([f64; 2], f64) -> (f64, [f64; 2]);

struct Curve {
    model: Model,
    x: Vec<f64>,
    y: Vec<f64>,
}

impl LeastSquares for Curve {
    type State = [f64; 2];
    type Matrix = nalgebra::DMatrix<f64>;

    fn width(&self) -> usize {
        2
    }

    fn room(&self) -> Equations {
        Equations::zeros(self.width())
    }

    fn equations(&mut self, b: &[f64; 2], into: &mut Equations) {
        into.clear();
        for (x, y) in self.x.iter().zip(&self.y) {
            let (value, by) = (self.model)(*b, *x);
            into.add(&by, value - y);
        }
    }

    fn moved(&self, b: &[f64; 2], step: &DVector<f64>) -> [f64; 2] {
        [b[0] + step[0], b[1] + step[1]]
    }
}

fn saturating(b: [f64; 2], x: f64) -> (f64, [f64; 2]) {
    let e = math::exp(-b[1] * x);
    (b[0] * (1.0 - e), [1.0 - e, b[0] * x * e])
}

fn power(b: [f64; 2], x: f64) -> (f64, [f64; 2]) {
    let p = math::pow(x, b[1]);
    (b[0] * p, [p, b[0] * p * math::ln(x)])
}

fn nist(id: &str, model: Model) {
    let checks = Checks::fits();
    let check = checks.get(id);
    let mut curve = Curve {
        model,
        x: numbers(&check.inputs["x"]),
        y: numbers(&check.inputs["y"]),
    };
    let expected = numbers(&check.expected["b"]);
    let sd = numbers(&check.expected["sd"]);
    for start in ["start1", "start2"] {
        let b: [f64; 2] = numbers(&check.inputs[start]).try_into().unwrap();
        let rest = minimise(&mut curve, b, Effort::default());
        check.holds(&format!("settled from {start}"), rest.settled);
        let mut equations = Equations::zeros(2);
        curve.equations(&rest.state, &mut equations);
        let n = equations.matrix;
        let inverse = n.try_inverse().unwrap();
        let variance = rest.cost / (curve.x.len() - 2) as f64;
        for k in 0..2 {
            let what = format!("b[{k}] from {start}");
            check.near_part(&what, rest.state[k], expected[k], 1e-6);
            let found = (variance * inverse[(k, k)]).sqrt();
            check.near_part(&format!("sd[{k}]"), found, sd[k], 1e-4);
        }
        check.near_part("rss", rest.cost, check.number("rss"), 1e-6);
    }
}

#[test]
fn nist_misra1a() {
    nist("nist-misra1a", saturating);
}

#[test]
fn nist_boxbod() {
    nist("nist-boxbod", saturating);
}

#[test]
fn nist_danwood() {
    nist("nist-danwood", power);
}

#[test]
fn tape_mpe() {
    let checks = Checks::fits();
    let check = checks.get("tape-mpe");
    let cases = check.inputs["cases"].as_array().unwrap();
    for (case, expected) in cases.iter().zip(numbers(check.expected)) {
        let class = match case["cls"].as_str().unwrap() {
            "I" => TapeClass::One,
            "II" => TapeClass::Two,
            _ => TapeClass::Three,
        };
        let length_mm = 1000.0 * number(&case["length_m"]);
        let hook = case["from_hook"].as_bool().unwrap();
        let found = permissible_error_mm(class, length_mm, hook);
        check.near("error", found, expected, 1e-9);
    }
}

#[test]
fn tape_sag_correction() {
    let checks = Checks::fits();
    let check = checks.get("tape-sag-correction");
    let sag = |pull| sag_correction_mm(check.input("w_N_per_m"), check.input("length_m"), pull);
    let expected = number(check.expected);
    check.near_part("sag", sag(check.input("pull_N")), expected, 0.001);
    check.near_part("at a quarter of the pull", sag(5.0) / sag(20.0), 16.0, 1e-9);
}

#[test]
fn tape_misalignment() {
    let checks = Checks::fits();
    let check = checks.get("tape-misalignment");
    let found = misalignment_mm(check.input("length_mm"), check.input("offset_mm"));
    check.near_part("bow", found, number(check.expected), 0.001);
}

#[test]
fn survey_allowance_chain() {
    let checks = Checks::fits();
    let check = checks.get("survey-allowance-chain");
    let sigmas = numbers(&check.inputs["sigmas_mm"]);
    let found = chain_allowance_mm(&sigmas, check.input("k"));
    check.near_part("allowance", found, number(check.expected), 0.001);
}

#[test]
fn baarda_noncentrality() {
    let checks = Checks::fits();
    let check = checks.get("baarda-noncentrality");
    let found = statistics::noncentrality(check.input("alpha0"), check.input("power"));
    check.near_part("delta0", found, check.number("delta0"), 0.001);
    check.near_part("constant", statistics::NONCENTRALITY, found, 1e-9);
    let slips = numbers(&check.expected["mdb_mm"]);
    for (r, e) in numbers(&check.inputs["r"]).iter().zip(slips) {
        let found = statistics::detectable_slip(check.input("sigma_mm"), *r);
        check.near_part("mdb", found, e, 0.001);
    }
}

#[test]
fn a_scan_is_placed_by_its_marks() {
    let in_scan = [
        Point::new(0.0, 0.0, 0.0),
        Point::new(1.0, 0.1, 0.0),
        Point::new(0.2, 0.8, 0.1),
        Point::new(0.9, 0.7, 0.5),
        Point::new(0.4, 0.3, 0.9),
    ];
    // Metres, turned a quarter about z and shifted, the last mark 3 mm off.
    let mut in_car: Vec<Point> = in_scan
        .iter()
        .map(|p| {
            Point::new(
                -1000.0 * p.y + 50.0,
                1000.0 * p.x - 20.0,
                1000.0 * p.z + 7.0,
            )
        })
        .collect();
    let exact = place_scan(&in_scan, &in_car, Some(1000.0)).unwrap();
    assert!(exact.sigma_mm < 1e-9);
    assert!(exact.placed(in_scan[3]).distance(in_car[3]) < 1e-9);
    let scaled = place_scan(&in_scan, &in_car, None).unwrap();
    assert!((scaled.scale - 1000.0).abs() < 1e-9);
    in_car[4].x += 3.0;
    let off = place_scan(&in_scan, &in_car, Some(1000.0)).unwrap();
    let largest = off.residuals_mm.iter().copied().fold(0.0, f64::max);
    assert!((largest - off.residuals_mm[4]).abs() < 1e-12 && largest > 1.0);
    assert!(off.covariance[0][0] > 0.0 && off.covariance[6][6].abs() < 1e-30);
    let few = place_scan(&in_scan[..3], &in_car[..3], Some(1000.0)).unwrap_err();
    assert!(matches!(few, FitError::TooFew { needed: 4, .. }));
}

/// How a place moves with the marks that it was fitted to is the derivative of the fit.
#[test]
fn a_place_moves_with_its_marks_as_the_fit_does() {
    use tubewright_geometry::Vector;
    use tubewright_survey::fit::{carried_by_marks, fit_rigid};
    let marks = [
        Point::new(0.0, -400.0, 10.0),
        Point::new(20.0, 410.0, -5.0),
        Point::new(900.0, 380.0, 250.0),
        Point::new(1300.0, -420.0, 40.0),
    ];
    let place = Point::new(2100.0, 150.0, -200.0);
    let along = Vector::new(0.3, -0.5, 0.8);
    let shares = carried_by_marks(&marks, false, place, along).unwrap();
    for (index, share) in shares.iter().enumerate() {
        for (axis, expected) in [
            (Vector::new(1.0, 0.0, 0.0), share.x),
            (Vector::new(0.0, 1.0, 0.0), share.y),
            (Vector::new(0.0, 0.0, 1.0), share.z),
        ] {
            let at = |step: f64| {
                let mut moved = marks;
                moved[index] += axis * step;
                along.dot(fit_rigid(&marks, &moved).unwrap().moved(place) - place)
            };
            let found = (at(0.01) - at(-0.01)) / 0.02;
            assert!(
                (found - expected).abs() < 1e-5,
                "{index}: {found} {expected}"
            );
        }
    }
    // In line: nothing holds the turn about the line.
    let line = [0.0, 500.0, 1000.0].map(|x| Point::new(x, 0.0, 0.0));
    assert!(carried_by_marks(&line, false, place, along).is_none());
}
