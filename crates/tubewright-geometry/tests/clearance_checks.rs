//! Published clearance values, each under its id.
#![allow(clippy::expect_used, clippy::panic, reason = "helpers of tests")]

mod common;

use common::{Check, check, number, numbers};
use std::sync::Arc;
use tubewright_geometry::distance::{self, point_to_segment, segment_to_segment};
use tubewright_geometry::{
    CentreLine, OrientedBox, Point, Solid, TriangleMesh, TubeElement, UnitVector, Vector,
};

const DATA: &str = include_str!("data/clearance.toml");
const TOLERANCE_MM: f64 = 1e-3;
/// Tighter than the checks ask for, so that the promise and not the luck is tested.
const ASKED_MM: f64 = 1e-5;

fn tube(a: Point, b: Point, radius: f64) -> TubeElement {
    TubeElement {
        line: CentreLine::Segment { a, b },
        radius,
    }
}

fn arc(c: &Check, suffix: &str, radius_key: &str) -> TubeElement {
    let key = |name: &str| format!("{name}{suffix}");
    TubeElement {
        line: CentreLine::Arc {
            centre: c.point(&key("centre")),
            u: c.direction(&key("u")),
            v: c.direction(&key("v")),
            radius: c.number(&key("clr")),
            angle: c.number(&format!("angle{suffix}_deg")).to_radians(),
        },
        radius: c.number(radius_key),
    }
}

fn body(c: &Check) -> Solid {
    let half = c.numbers("half");
    let axes = if c.has("box_R") {
        let rows: Vec<Vec<f64>> = c
            .input("box_R")
            .as_array()
            .expect("rows")
            .iter()
            .map(numbers)
            .collect();
        [0, 1, 2].map(|i| {
            Vector::new(rows[0][i], rows[1][i], rows[2][i])
                .direction()
                .expect("an axis")
        })
    } else {
        [UnitVector::X, UnitVector::Y, UnitVector::Z]
    };
    Solid::Box(OrientedBox {
        centre: c.point("box_centre"),
        axes,
        half: [half[0], half[1], half[2]],
    })
}

fn expect(c: &Check, got: f64) {
    c.near("distance", got, number(c.expected()), TOLERANCE_MM);
}

/// Gap against a solid, with the predicate agreeing on either side of it.
fn expect_gap(c: &Check, tube: &TubeElement, solid: &Solid) {
    let found = distance::clearance(tube, solid, ASKED_MM);
    expect(c, found.gap_mm);
    assert!(distance::is_clear(tube, solid, found.gap_mm - 1e-4));
    assert!(!distance::is_clear(tube, solid, found.gap_mm + 1e-3));
    let between = found.on_centre_line.distance(found.on_body) - tube.radius;
    assert!(
        (between - found.gap_mm).abs() < 1e-3,
        "place is off: {between}"
    );
}

macro_rules! checks {
    ($($name:ident: $id:literal => |$c:ident| $body:block)*) => {
        $(#[test] fn $name() { let c = check(DATA, $id); let $c = &c; $body })*
        const COVERED: &[&str] = &[$($id),*];
    };
}

checks! {
    dist_point_seg: "dist-point-seg" => |c| {
        expect(c, point_to_segment(c.point("p"), c.point("a"), c.point("b")));
    }
    dist_point_seg_end: "dist-point-seg-end" => |c| {
        expect(c, point_to_segment(c.point("p"), c.point("a"), c.point("b")));
    }
    dist_seg_seg_skew: "dist-seg-seg-skew" => |c| { expect_segments(c); }
    dist_seg_seg_parallel: "dist-seg-seg-parallel" => |c| { expect_segments(c); }
    dist_seg_seg_collinear: "dist-seg-seg-collinear" => |c| { expect_segments(c); }
    dist_seg_seg_crossing: "dist-seg-seg-crossing" => |c| { expect_segments(c); }
    dist_seg_degenerate: "dist-seg-degenerate" => |c| { expect_segments(c); }
    dist_capsule_capsule: "dist-capsule-capsule" => |c| {
        let first = tube(c.point("a"), c.point("b"), c.number("r1"));
        let second = tube(c.point("c"), c.point("d"), c.number("r2"));
        expect(c, distance::clearance_between(&first, &second, ASKED_MM).gap_mm);
        let solid = Solid::Capsule { a: c.point("c"), b: c.point("d"), radius: c.number("r2") };
        expect_gap(c, &first, &solid);
        expect_gap(c, &first, &Solid::Tube(second));
    }
    dist_point_box: "dist-point-box" => |c| {
        expect(c, distance::point_to_solid(c.point("p"), &body(c)));
        expect(c, distance::closest_point_on_solid(c.point("p"), &body(c)).distance_mm);
    }
    dist_point_box_tilted: "dist-point-box-tilted" => |c| {
        expect(c, distance::point_to_solid(c.point("p"), &body(c)));
        expect(c, distance::closest_point_on_solid(c.point("p"), &body(c)).distance_mm);
    }
    dist_capsule_box: "dist-capsule-box" => |c| {
        expect_gap(c, &tube(c.point("a"), c.point("b"), c.number("r")), &body(c));
    }
    dist_capsule_box_tilted: "dist-capsule-box-tilted" => |c| {
        expect_gap(c, &tube(c.point("a"), c.point("b"), c.number("r")), &body(c));
    }
    dist_capsule_box_through: "dist-capsule-box-through" => |c| {
        expect_gap(c, &tube(c.point("a"), c.point("b"), c.number("r")), &body(c));
    }
    dist_arc_point: "dist-arc-point" => |c| {
        let ball = Solid::Sphere { centre: c.point("p"), radius: 0.0 };
        expect_gap(c, &arc(c, "", "tube_r"), &ball);
    }
    dist_arc_capsule: "dist-arc-capsule" => |c| {
        let (a, b, radius) = (c.point("a"), c.point("b"), c.number("r2"));
        expect_gap(c, &arc(c, "", "tube_r"), &Solid::Capsule { a, b, radius });
        let straight = tube(a, b, radius);
        expect(c, distance::clearance_between(&arc(c, "", "tube_r"), &straight, ASKED_MM).gap_mm);
        expect(c, distance::clearance_between(&straight, &arc(c, "", "tube_r"), ASKED_MM).gap_mm);
    }
    dist_arc_box: "dist-arc-box" => |c| { expect_gap(c, &arc(c, "", "tube_r"), &body(c)); }
    dist_arc_arc: "dist-arc-arc" => |c| {
        let (first, second) = (arc(c, "1", "r1"), arc(c, "2", "r2"));
        let found = distance::clearance_between(&first, &second, ASKED_MM);
        expect(c, found.gap_mm);
        expect_gap(c, &first, &Solid::Tube(second));
        assert!(distance::are_clear(&first, &second, found.gap_mm - 1e-4));
        assert!(!distance::are_clear(&first, &second, found.gap_mm + 1e-3));
    }
    dist_arc_ground_1: "dist-arc-ground-1" => |c| { expect_ground(c); }
    dist_arc_ground_2: "dist-arc-ground-2" => |c| { expect_ground(c); }
    dist_capsule_triangle: "dist-capsule-triangle" => |c| { expect_triangle(c); }
    dist_capsule_triangle_edge: "dist-capsule-triangle-edge" => |c| { expect_triangle(c); }
    dist_capsule_icosphere: "dist-capsule-icosphere" => |c| {
        let line = tube(c.point("a"), c.point("b"), c.number("r"));
        let mesh = common::icosphere(100.0, 2);
        c.near("faces", mesh.triangles().len() as f64, c.number("faces"), 0.0);
        assert!(mesh.is_closed());
        let expected = numbers(c.expected());
        let gap = distance::clearance(&line, &Solid::Mesh(Arc::new(mesh)), ASKED_MM).gap_mm;
        c.near("mesh", gap, expected[0], 0.005);
        let ball = Solid::Sphere { centre: Point::ORIGIN, radius: 100.0 };
        c.near("sphere", distance::clearance(&line, &ball, ASKED_MM).gap_mm, expected[1], 0.005);
    }
}

fn expect_segments(c: &Check) {
    let (a, b, p, q) = (c.point("a"), c.point("b"), c.point("c"), c.point("d"));
    let pair = segment_to_segment(a, b, p, q);
    expect(c, pair.distance_mm);
    let between = a.lerp(b, pair.on_first).distance(p.lerp(q, pair.on_second));
    expect(c, between);
}

fn expect_ground(c: &Check) {
    let ground = Solid::HalfSpace {
        point: Point::new(0.0, 0.0, c.number("ground_z")),
        outward: UnitVector::Z,
    };
    expect_gap(c, &arc(c, "", "tube_r"), &ground);
}

fn expect_triangle(c: &Check) {
    let corners = vec![c.point("A"), c.point("B"), c.point("C")];
    let mesh = TriangleMesh::new(corners, vec![[0, 1, 2]]).expect("a triangle");
    expect_gap(
        c,
        &tube(c.point("a"), c.point("b"), c.number("r")),
        &Solid::Mesh(Arc::new(mesh)),
    );
}

#[test]
fn every_distance_check_is_covered() {
    for id in common::ids(DATA) {
        if id.starts_with("dist-") {
            assert!(COVERED.contains(&id.as_str()), "{id} has no test");
        }
    }
}
