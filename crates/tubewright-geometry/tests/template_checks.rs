//! Cut-end templates: each published value under its id, and that the curves lie on both surfaces.
#![allow(clippy::expect_used, reason = "helpers of tests")]

mod common;

use common::{Check, check, number, numbers};
use proptest::prelude::*;
use tubewright_geometry::template::{
    BendCut, Branch, Mitre, PlaneCut, Saddle, SaddleError, SegmentedBend, SplitBend, SplitError,
    TorusCut, TorusPlane, WrapCurve, least_mm, polyline, radius_from_spacing_mm,
    split_distance_for_area, stations,
};
use tubewright_geometry::{Point, UnitVector, Vector, math};

const DATA: &str = include_str!("data/fabrication.toml");
const STATIONS: usize = 16;
const MM: f64 = 0.002;

/// Marks at 16 stations, -1 where a line is not cut.
fn marks(curve: &impl WrapCurve) -> Vec<f64> {
    stations(curve, STATIONS, 0.0)
        .into_iter()
        .map(|s| s.along_mm.unwrap_or(-1.0))
        .collect()
}

#[test]
fn template_mitre_63_30() {
    let c = check(DATA, "template-mitre-63-30");
    let radius = 0.5 * c.number("od_mm");
    let mitre = Mitre::for_turn(radius, c.number("turn_deg").to_radians());
    c.close(
        "angle",
        mitre.mitre_rad.to_degrees(),
        c.number("mitre_angle_deg"),
    );
    c.all_near("height", &marks(&mitre), &numbers(c.expected()), MM);
    let across = stations(&mitre, STATIONS, 0.0)[1].across_mm;
    c.close("spacing", across, c.number("station_spacing_mm"));
    // Paper of 0.1 mm makes the strip π times that longer.
    let wrapped = stations(&mitre, 2, 0.1)[1].across_mm * 2.0;
    c.close("strip", wrapped, math::PI * (2.0 * radius + 0.1));
}

fn saddle(c: &Check) -> Saddle {
    Saddle::new(
        c.number("branch_radius_mm"),
        c.number("header_outer_radius_mm"),
        c.number("angle_deg").to_radians(),
        c.number("axis_offset_mm"),
    )
    .expect("it sits on the header")
}

fn saddle_check(id: &str) {
    let c = check(DATA, id);
    c.all_near("from axis", &marks(&saddle(&c)), &numbers(c.expected()), MM);
}

#[test]
fn template_saddle_equal_90() {
    saddle_check("template-saddle-equal-90");
}

#[test]
fn template_saddle_unequal_90() {
    saddle_check("template-saddle-unequal-90");
}

#[test]
fn template_saddle_unequal_90_inner() {
    saddle_check("template-saddle-unequal-90-inner");
}

#[test]
fn template_saddle_unequal_30() {
    saddle_check("template-saddle-unequal-30");
}

#[test]
fn template_saddle_bung_offset() {
    saddle_check("template-saddle-bung-offset");
}

#[test]
fn template_hole_in_header() {
    let c = check(DATA, "template-hole-in-header");
    let s = saddle(&c);
    let places: Vec<_> = (0..STATIONS)
        .map(|i| s.hole(math::TAU * i as f64 / STATIONS as f64))
        .collect();
    let along: Vec<f64> = places.iter().map(|p| p.along_mm).collect();
    let round: Vec<f64> = places.iter().map(|p| p.round_mm).collect();
    c.all_near("x", &along, &numbers(c.expected_of("x_mm")), MM);
    c.all_near("arc", &round, &numbers(c.expected_of("arc_mm")), MM);
}

#[test]
fn segmented_90_4cuts() {
    let c = check(DATA, "segmented-90-4cuts");
    let bend = SegmentedBend::new(
        c.number("od_mm"),
        c.number("wall_mm"),
        c.number("clr_mm"),
        c.number("total_angle_deg").to_radians(),
        4,
    )
    .expect("segments");
    for (key, got) in [
        ("half_angle_deg", bend.half_rad.to_degrees()),
        ("full_segment_cl_mm", bend.spacing_mm()),
        ("full_segment_extrados_mm", bend.full_segment_mm(math::PI)),
        ("full_segment_intrados_mm", bend.full_segment_mm(0.0)),
        ("end_segment_cl_mm", bend.end_segment_mm()),
        ("centre_line_total_mm", bend.centre_line_mm()),
        (
            "single_cut_equivalent_radius_mm",
            bend.single_cut_radius_mm(),
        ),
    ] {
        c.close(key, got, number(c.expected_of(key)));
    }
    let closely = c.expected_of("closely_spaced").as_bool();
    assert_eq!(Some(bend.is_closely_spaced()), closely);
}

#[test]
fn segmented_90_4cuts_template() {
    let c = check(DATA, "segmented-90-4cuts-template");
    let half = c.number("half_angle_deg").to_radians();
    let bend = SegmentedBend::new(c.number("od_mm"), 1.651, c.number("clr_mm"), half * 8.0, 4)
        .expect("segments");
    let got: Vec<f64> = (0..STATIONS)
        .map(|i| bend.full_segment_mm(math::TAU * i as f64 / STATIONS as f64))
        .collect();
    c.all_near("length", &got, &numbers(c.expected()), MM);
    // The inside length and two end templates make the segment on every line.
    let ends = marks(&bend.end());
    for (whole, end) in got.iter().zip(ends) {
        c.near("two ends", got[0] + 2.0 * end, *whole, 1e-9);
    }
}

#[test]
fn segmented_code_example() {
    let c = check(DATA, "segmented-code-example");
    let half = c.number("total_angle_deg").to_radians() / (2.0 * c.number("cuts"));
    c.close(
        "half angle",
        half.to_degrees(),
        number(c.expected_of("half_angle_deg")),
    );
    let radius = radius_from_spacing_mm(c.number("spacing_in"), half);
    let expected = number(c.expected_of("equivalent_radius_in"));
    c.near("radius", radius, expected, 0.001 * expected);
}

fn torus_check(c: &Check, plane: TorusPlane) {
    let cut = TorusCut {
        clr_mm: c.number("clr_mm"),
        tube_radius_mm: c.number("tube_outer_radius_mm"),
        plane,
    };
    let sections: Vec<f64> = (0..STATIONS)
        .map(|i| {
            let q = math::TAU * i as f64 / STATIONS as f64;
            cut.section_rad(q).expect("cut").to_degrees()
        })
        .collect();
    c.all_near(
        "section",
        &sections,
        &numbers(c.expected_of("phi_deg")),
        1e-4,
    );
    c.all_near("mark", &marks(&cut), &numbers(c.expected_of("arc_mm")), MM);
}

#[test]
fn torus_inplane_mitre_15() {
    let c = check(DATA, "torus-inplane-mitre-15");
    let turn_rad = c.number("plane_turn_deg").to_radians();
    torus_check(&c, TorusPlane::InPlane { turn_rad });
}

#[test]
fn torus_outplane_tilt_15() {
    let c = check(DATA, "torus-outplane-tilt-15");
    let tilt_rad = c.number("plane_tilt_deg").to_radians();
    torus_check(&c, TorusPlane::Tilt { tilt_rad });
}

#[test]
fn torus_general_plane() {
    let c = check(DATA, "torus-general-plane");
    torus_check(
        &c,
        TorusPlane::General {
            normal: c.direction("normal"),
            offset_mm: c.number("c_mm"),
            branch: Branch::Minus,
        },
    );
}

fn split_check(id: &str) {
    let c = check(DATA, id);
    let (clr, r) = (c.number("clr_mm"), c.number("tube_radius_mm"));
    let d = c.number("plane_distance_from_bend_axis_mm");
    let split = SplitBend::new(clr, r, d, math::FRAC_PI_2).expect("it opens");
    c.all_near(
        "half length",
        &marks(&split),
        &numbers(c.expected_of("half_arc_mm")),
        MM,
    );
    let expected = |key: &str| number(c.expected_of(key));
    c.near(
        "limit",
        split.limit_rad().to_degrees(),
        expected("theta_limit_deg"),
        1e-4,
    );
    c.near(
        "length",
        split.opening_length_mm(),
        expected("opening_length_mm"),
        MM,
    );
    c.near(
        "height",
        split.opening_height_mm(),
        expected("opening_height_mm"),
        MM,
    );
    let area = expected("opening_area_mm2");
    c.near("area", split.opening_area_mm2(), area, 1e-4 * area);
    c.close("tube area", math::PI * r * r, expected("tube_area_mm2"));
    let half = 0.5 * split.bend_used_rad();
    c.near(
        "half angle",
        half.to_degrees(),
        expected("half_angle_needed_deg"),
        1e-4,
    );
}

#[test]
fn torus_x_split_d_eq_r() {
    split_check("torus-x-split-d-eq-R");
}

#[test]
fn torus_x_split_d_12_out() {
    split_check("torus-x-split-d-12-out");
}

#[test]
fn torus_x_split_for_area() {
    let c = check(DATA, "torus-x-split-for-area");
    let (clr, r) = (c.number("clr_mm"), c.number("tube_inner_radius_mm"));
    for (i, ratio) in c.numbers("area_ratio").into_iter().enumerate() {
        let area = ratio * math::PI * r * r;
        let d = split_distance_for_area(clr, r, area).expect("it opens so far");
        let expected = |key: &str| numbers(c.expected_of(key))[i];
        c.near("distance", d, expected("plane_distance_mm"), MM);
        let split = SplitBend::new(clr, r, d, math::FRAC_PI_2).expect("it opens");
        c.near(
            "depth",
            split.removed_depth_mm(),
            expected("removed_depth_mm"),
            MM,
        );
        c.near(
            "length",
            split.opening_length_mm(),
            expected("opening_length_mm"),
            MM,
        );
    }
    assert!(matches!(
        split_distance_for_area(clr, r, 1e6),
        Err(SplitError::Area { .. })
    ));
}

#[test]
fn torus_x_crossing_angle() {
    let c = check(DATA, "torus-x-crossing-angle");
    let (clr, r) = (c.number("clr_mm"), c.number("tube_outer_radius_mm"));
    let distances = c.numbers("plane_distance_from_bend_axis_mm");
    for (i, d) in distances.into_iter().enumerate() {
        let split = SplitBend::new(clr, r, d, math::FRAC_PI_2).expect("it opens");
        let used = split.bend_used_rad().to_degrees();
        c.close(
            "used",
            used,
            numbers(c.expected_of("bend_angle_used_deg"))[i],
        );
        c.close(
            "axis",
            0.5 * used,
            numbers(c.expected_of("axis_angle_at_end_deg"))[i],
        );
        assert!(!split.runs_into_legs());
    }
}

fn on_torus(clr: f64, r: f64, q: f64, p: f64) -> Point {
    let rho = clr + r * math::cos(q);
    Point::new(rho * math::cos(p), rho * math::sin(p), r * math::sin(q))
}

fn dense_within(curve: &impl WrapCurve, lines: &[Vec<[f64; 2]>], tolerance: f64) -> Option<String> {
    for i in 0..=20_000 {
        let q = math::TAU * f64::from(i) / 20_000.0;
        let Some(y) = curve.along_mm(q) else { continue };
        let x = curve.tube_radius_mm() * q;
        let near = lines
            .iter()
            .flat_map(|line| line.windows(2))
            .filter(|w| w[0][0] - 1.0 <= x && x <= w[1][0] + 1.0)
            .map(|w| {
                let p = |v: [f64; 2]| Point::new(v[0], v[1], 0.0);
                tubewright_geometry::distance::point_to_segment(
                    Point::new(x, y, 0.0),
                    p(w[0]),
                    p(w[1]),
                )
            })
            .fold(f64::INFINITY, f64::min);
        if near > tolerance {
            return Some(format!("{near} off at q = {q}"));
        }
    }
    None
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn saddles_lie_on_both_cylinders(
        r in 5.0..40.0_f64, more in 0.0..40.0_f64, angle in 0.3..2.8_f64, share in -1.0..1.0_f64, q in 0.0..6.3_f64
    ) {
        let (header, offset) = (r + more, share * more);
        let s = Saddle::new(r, header, angle, offset).expect("it sits");
        // Header along x; branch in the x-z plane, moved aside by the offset (y).
        let along = s.from_axis_mm(q);
        let (sin_a, cos_a) = math::sin_cos(angle);
        let (sin_q, cos_q) = math::sin_cos(q);
        let axis = Vector::new(cos_a, 0.0, sin_a);
        let zero = Vector::new(-sin_a, 0.0, cos_a);
        let place = Point::new(0.0, offset, 0.0)
            + axis * along + zero * (r * cos_q) + Vector::new(0.0, r * sin_q, 0.0);
        prop_assert!((math::hypot(place.y, place.z) - header).abs() < 1e-9 * header.max(1.0) + 1e-7);
        let hole = s.hole(q);
        prop_assert!((hole.along_mm - place.x).abs() < 1e-9);
        let round = header * math::atan2(place.y, place.z);
        prop_assert!((hole.round_mm - round).abs() < 1e-5, "{} {round}", hole.round_mm);
    }

    #[test]
    fn torus_cuts_lie_on_the_plane(
        r in 10.0..40.0_f64, ratio in 1.1..4.0_f64, n in [-1.0..1.0_f64, -1.0..1.0, -1.0..1.0],
        share in -0.9..0.9_f64, q in 0.0..6.3_f64, turn in -0.3..0.3_f64
    ) {
        let clr = r * ratio;
        let normal = Vector::from_array(n).direction();
        prop_assume!(normal.is_some_and(|n| n.vector().z.abs() < 0.95));
        let normal = normal.expect("checked");
        let offset_mm = share * clr;
        for branch in [Branch::Minus, Branch::Plus] {
            let plane = TorusPlane::General { normal, offset_mm, branch };
            let cut = TorusCut { clr_mm: clr, tube_radius_mm: r, plane };
            if let Some(p) = cut.section_rad(q) {
                let at = on_torus(clr, r, q, p);
                prop_assert!((normal.dot(at.to_vector()) - offset_mm).abs() < 1e-6);
                prop_assert!((cut.along_mm(q).expect("cut") - p * cut.rho_mm(q)).abs() < 1e-9);
            }
        }
        // The two special planes are general ones.
        let (sin, cos) = math::sin_cos(turn);
        let in_plane = TorusCut {
            clr_mm: clr, tube_radius_mm: r, plane: TorusPlane::InPlane { turn_rad: turn }
        };
        if let Some(p) = in_plane.section_rad(q) {
            // Through (R, 0, 0), its normal the travel (y) turned by -turn about z.
            let at = on_torus(clr, r, q, p) - Point::new(clr, 0.0, 0.0);
            let off = Vector::new(sin, cos, 0.0).dot(at);
            prop_assert!(off.abs() < 1e-9 * clr, "{off}");
        }
        let tilt = TorusCut {
            clr_mm: clr, tube_radius_mm: r, plane: TorusPlane::Tilt { tilt_rad: turn }
        };
        if let Some(p) = tilt.section_rad(q) {
            let at = on_torus(clr, r, q, p).to_vector();
            prop_assert!(Vector::new(0.0, cos, sin).dot(at).abs() < 1e-9 * clr);
        }
    }

    #[test]
    fn a_cut_near_the_tangent_line_goes_on_in_the_leg(
        r in 20.0..40.0_f64, ratio in 1.1..3.0_f64, turn in -0.5..0.5_f64, tilt in any::<bool>(), q in 0.0..6.2_f64
    ) {
        let clr = r * ratio;
        let plane = if tilt {
            TorusPlane::Tilt { tilt_rad: turn }
        } else {
            TorusPlane::InPlane { turn_rad: turn }
        };
        let cut = TorusCut { clr_mm: clr, tube_radius_mm: r, plane };
        // The arc ends at p = 0: what lies past it is leg.
        let bend = BendCut { cut, from_rad: -1.0, to_rad: 0.0 };
        if let (Some(p), Some(y)) = (cut.section_rad(q), bend.along_mm(q)) {
            let (normal, offset) = cut.plane();
            let rho = clr + r * math::cos(q);
            let at = if p > 0.0 {
                Point::new(rho, y, r * math::sin(q))
            } else if p < -1.0 {
                // The leg before the arc: from its tangent line against the flow.
                let (sin, cos) = math::sin_cos(-1.0);
                on_torus(clr, r, q, -1.0) + Vector::new(-sin, cos, 0.0) * (y + rho)
            } else {
                prop_assert!((y - rho * p).abs() < 1e-9);
                on_torus(clr, r, q, p)
            };
            prop_assert!((normal.dot(at.to_vector()) - offset).abs() < 1e-6);
        }
        let lines = polyline(&bend, 0.0, 0.05);
        prop_assert_eq!(dense_within(&bend, &lines, 0.05), None);
    }

    #[test]
    fn a_mitre_is_a_plane_cut(r in 10.0..60.0_f64, f in 0.01..1.2_f64, q in 0.0..6.3_f64) {
        let (sin, cos) = math::sin_cos(f);
        // Plane through the shortest line's end, leaning away from it.
        let plane = PlaneCut {
            origin: Point::ORIGIN,
            along: UnitVector::X,
            zero: UnitVector::Y,
            quarter: UnitVector::Z,
            radius_mm: r,
            normal: UnitVector::from_unit(Vector::new(cos, sin, 0.0)),
            offset_mm: r * sin,
        };
        let mitre = Mitre { radius_mm: r, mitre_rad: f };
        let (a, b) = (plane.along_mm(q).expect("cut"), mitre.along_mm(q).expect("cut"));
        prop_assert!((a - b).abs() < 1e-9, "{a} {b}");
    }

    #[test]
    fn a_split_in_a_short_bend_runs_on_into_the_legs(
        r in 20.0..40.0_f64, ratio in 1.2..3.0_f64, share in -0.9..0.95_f64, bend in 0.2..1.2_f64, q in -3.1..3.1_f64
    ) {
        let (clr, d) = (r * ratio, r * ratio + share * r);
        let short = SplitBend::new(clr, r, d, bend).expect("it opens");
        let long = SplitBend::new(clr, r, d, math::PI).expect("it opens");
        prop_assert_eq!(short.half_length_mm(q).is_some(), long.half_length_mm(q).is_some());
        if let (Some(a), Some(b)) = (short.half_length_mm(q), long.half_length_mm(q)) {
            let rho = clr + r * math::cos(q);
            let end = rho * 0.5 * bend;
            if b <= end {
                prop_assert!((a - b).abs() < 1e-9);
            } else {
                // In the leg: the place at that length lies on the plane x = d.
                prop_assert!(a >= end - 1e-9);
                let x = rho * math::cos(0.5 * bend) - (a - end) * math::sin(0.5 * bend);
                prop_assert!((x - d).abs() < 1e-6 * (1.0 + a), "{x} {d}");
            }
        }
        // The short bend's opening is longer and larger: its legs leave the plane more slowly.
        prop_assert!(short.opening_length_mm() >= long.opening_length_mm() - 1e-9);
        prop_assert!(short.opening_area_mm2() >= long.opening_area_mm2() * (1.0 - 1e-6) - 1e-6);
    }

    #[test]
    fn the_split_area_is_what_a_grid_counts(r in 20.0..40.0_f64, ratio in 1.1..3.0_f64, share in -0.95..0.95_f64) {
        let (clr, d) = (r * ratio, r * ratio + share * r);
        let split = SplitBend::new(clr, r, d, math::PI).expect("it opens");
        // Places (y, z) of the plane x = d inside the tube; both halves of both sides are alike.
        let (length, height) = (split.opening_length_mm() / 2.0, split.opening_height_mm() / 2.0);
        const N: i32 = 400;
        let mut count = 0_u32;
        for i in 0..N {
            for j in 0..N {
                let y = length * (f64::from(i) + 0.5) / f64::from(N);
                let z = height * (f64::from(j) + 0.5) / f64::from(N);
                if math::hypot(math::hypot(d, y) - clr, z) < r {
                    count += 1;
                }
            }
        }
        let counted = 4.0 * length * height * f64::from(count) / f64::from(N * N);
        let area = split.opening_area_mm2();
        prop_assert!((area - counted).abs() < 0.01 * area + 1.0, "{area} {counted}");
    }

    #[test]
    fn the_smooth_line_keeps_its_promise(
        r in 10.0..40.0_f64, more in 0.0..20.0_f64, angle in 0.5..2.6_f64, share in -1.0..1.0_f64,
        ratio in 1.2..3.0_f64, tolerance in 0.005..0.5_f64
    ) {
        let saddle = Saddle::new(r, r + more, angle, share * more).expect("it sits");
        prop_assert_eq!(dense_within(&saddle, &polyline(&saddle, 0.0, tolerance), tolerance), None);
        let split = SplitBend::new(r * ratio, r, r * (ratio + 0.9 * share), 0.8).expect("it opens");
        prop_assert_eq!(dense_within(&split, &polyline(&split, 0.0, tolerance), tolerance), None);
        let torus = TorusCut {
            clr_mm: r * ratio,
            tube_radius_mm: r,
            plane: TorusPlane::InPlane { turn_rad: 0.6 * share },
        };
        prop_assert_eq!(dense_within(&torus, &polyline(&torus, 0.0, tolerance), tolerance), None);
        let least = least_mm(&saddle).expect("cut");
        for i in 0..5000 {
            let y = saddle.from_axis_mm(math::TAU * f64::from(i) / 5000.0);
            prop_assert!(y >= least - 1e-9, "{y} {least}");
        }
    }
}

#[test]
fn a_branch_that_reaches_past_the_header_is_refused() {
    assert!(matches!(
        Saddle::new(25.0, 30.0, 1.5, 8.0),
        Err(SaddleError::ReachesPast { .. })
    ));
    assert!(matches!(
        Saddle::new(25.0, 30.0, 0.0, 0.0),
        Err(SaddleError::Angle { .. })
    ));
    assert!(matches!(
        SplitBend::new(95.25, 31.75, 130.0, 1.0),
        Err(SplitError::Misses { .. })
    ));
}
