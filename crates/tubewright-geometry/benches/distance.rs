//! Work done per figure: one query of one piece of tube (250 mm straight, or a 60° bend of 95 mm
//! radius, 63.5 mm tube) against one body some 30 to 60 mm away.
#![allow(clippy::expect_used, missing_docs, reason = "a bench")]

use divan::{Bencher, black_box};
use std::sync::Arc;
use tubewright_geometry::distance::{self, Obstacle, SolidSet};
use tubewright_geometry::{
    CentreLine, Frame, OrientedBox, Point, Prism, Solid, TriangleMesh, TubeElement, UnitVector,
};

fn main() {
    divan::main();
}

fn straight() -> TubeElement {
    TubeElement {
        line: CentreLine::Segment {
            a: Point::new(-120.0, 10.0, 75.0),
            b: Point::new(120.0, -15.0, 90.0),
        },
        radius: 31.75,
    }
}

fn bend() -> TubeElement {
    let frame = Frame::upright(Point::new(-90.0, 5.0, 95.0), UnitVector::X);
    TubeElement {
        line: CentreLine::bend(&frame, 60.0_f64.to_radians(), 95.25),
        radius: 31.75,
    }
}

fn bodies() -> Vec<(&'static str, Solid)> {
    let b = OrientedBox::axis_aligned(Point::new(10.0, 0.0, -20.0), [60.0, 40.0, 30.0]);
    let (a, c) = (Point::new(-80.0, 60.0, 0.0), Point::new(90.0, -40.0, 5.0));
    vec![
        ("box", Solid::Box(b)),
        (
            "capsule",
            Solid::Capsule {
                a,
                b: c,
                radius: 15.0,
            },
        ),
        (
            "cylinder",
            Solid::Cylinder {
                a,
                b: c,
                radius: 15.0,
            },
        ),
        (
            "sphere",
            Solid::Sphere {
                centre: Point::new(0.0, 0.0, -30.0),
                radius: 40.0,
            },
        ),
        (
            "half-space",
            Solid::HalfSpace {
                point: Point::ORIGIN,
                outward: UnitVector::Z,
            },
        ),
        (
            "prism of 8",
            Solid::Prism(Prism {
                origin: Point::new(0.0, 0.0, -50.0),
                u: UnitVector::X,
                v: UnitVector::Y,
                outline: vec![
                    [-60.0, -40.0],
                    [0.0, -20.0],
                    [60.0, -40.0],
                    [40.0, 0.0],
                    [60.0, 40.0],
                    [0.0, 20.0],
                    [-60.0, 40.0],
                    [-40.0, 0.0],
                ],
                depth: 60.0,
            }),
        ),
        ("bend", {
            let f = Frame::upright(Point::new(-60.0, 10.0, -30.0), UnitVector::Y);
            Solid::Tube(TubeElement {
                line: CentreLine::bend(&f, 1.2, 95.25),
                radius: 20.0,
            })
        }),
    ]
}

/// A wavy floor of `2 n²` triangles, 2 m square.
fn floor(n: u32) -> TriangleMesh {
    let step = 2000.0 / f64::from(n);
    let at = |i: u32, j: u32| {
        let (x, y) = (f64::from(i) * step - 1000.0, f64::from(j) * step - 1000.0);
        let z = 8.0
            * tubewright_geometry::math::sin(x / 40.0)
            * tubewright_geometry::math::cos(y / 55.0);
        Point::new(x, y, z)
    };
    let mut vertices = Vec::new();
    let mut triangles = Vec::new();
    for i in 0..=n {
        for j in 0..=n {
            vertices.push(at(i, j));
            if i < n && j < n {
                let k = i * (n + 1) + j;
                triangles.push([k, k + n + 1, k + 1]);
                triangles.push([k + 1, k + n + 1, k + n + 2]);
            }
        }
    }
    TriangleMesh::new(vertices, triangles).expect("a floor")
}

const NAMES: [&str; 7] = [
    "box",
    "capsule",
    "cylinder",
    "sphere",
    "half-space",
    "prism of 8",
    "bend",
];

fn body(name: &str) -> Solid {
    bodies()
        .into_iter()
        .find(|(n, _)| *n == name)
        .expect("a name of the list")
        .1
}

#[divan::bench(args = NAMES)]
fn is_clear_straight(bencher: Bencher<'_, '_>, name: &str) {
    let (tube, solid) = (straight(), body(name));
    bencher.bench_local(|| distance::is_clear(black_box(&tube), black_box(&solid), 15.0));
}

#[divan::bench(args = NAMES)]
fn is_clear_bend(bencher: Bencher<'_, '_>, name: &str) {
    let (tube, solid) = (bend(), body(name));
    bencher.bench_local(|| distance::is_clear(black_box(&tube), black_box(&solid), 15.0));
}

#[divan::bench(args = NAMES)]
fn distance_straight(bencher: Bencher<'_, '_>, name: &str) {
    let (tube, solid) = (straight(), body(name));
    bencher.bench_local(|| distance::clearance(black_box(&tube), black_box(&solid), 1e-3));
}

#[divan::bench(args = NAMES)]
fn distance_bend(bencher: Bencher<'_, '_>, name: &str) {
    let (tube, solid) = (bend(), body(name));
    bencher.bench_local(|| distance::clearance(black_box(&tube), black_box(&solid), 1e-3));
}

/// Grid lines a side for about 10,000, 100,000 and 1,000,000 triangles.
const FLOORS: [u32; 3] = [71, 224, 707];

#[divan::bench(args = FLOORS)]
fn is_clear_straight_mesh(bencher: Bencher<'_, '_>, n: u32) {
    let (tube, solid) = (straight(), Solid::Mesh(Arc::new(floor(n))));
    bencher.bench_local(|| distance::is_clear(black_box(&tube), black_box(&solid), 15.0));
}

#[divan::bench(args = FLOORS)]
fn is_clear_bend_mesh(bencher: Bencher<'_, '_>, n: u32) {
    let (tube, solid) = (bend(), Solid::Mesh(Arc::new(floor(n))));
    bencher.bench_local(|| distance::is_clear(black_box(&tube), black_box(&solid), 15.0));
}

#[divan::bench(args = FLOORS)]
fn distance_straight_mesh(bencher: Bencher<'_, '_>, n: u32) {
    let (tube, solid) = (straight(), Solid::Mesh(Arc::new(floor(n))));
    bencher.bench_local(|| distance::clearance(black_box(&tube), black_box(&solid), 1e-3));
}

#[divan::bench(args = FLOORS)]
fn distance_bend_mesh(bencher: Bencher<'_, '_>, n: u32) {
    let (tube, solid) = (bend(), Solid::Mesh(Arc::new(floor(n))));
    bencher.bench_local(|| distance::clearance(black_box(&tube), black_box(&solid), 1e-3));
}

#[divan::bench(args = FLOORS, sample_count = 3)]
fn build_mesh(bencher: Bencher<'_, '_>, n: u32) {
    let mesh = floor(n);
    bencher
        .with_inputs(|| (mesh.vertices().to_vec(), mesh.triangles().to_vec()))
        .bench_local_values(|(v, t)| TriangleMesh::new(v, t));
}

/// Forty boxes on a 2 m floor pan, the tube clear of all.
#[divan::bench(args = ["straight", "bend"])]
fn is_clear_of_forty_boxes(bencher: Bencher<'_, '_>, kind: &str) {
    let tube = if kind == "straight" {
        straight()
    } else {
        bend()
    };
    let set = SolidSet::new((0..40).map(|i| Obstacle {
        solid: Solid::Box(OrientedBox::axis_aligned(
            Point::new(
                f64::from(i % 8) * 250.0 - 900.0,
                f64::from(i / 8) * 300.0 - 600.0,
                -30.0,
            ),
            [80.0, 60.0, 25.0],
        )),
        gap_mm: 15.0,
    }));
    bencher.bench_local(|| black_box(&set).is_clear(black_box(&tube)));
}

/// A bend on an engine that rocks 3° either way beside a tyre that steers 35° either way and bumps
/// 75 mm; the clearance is found to 0.5 mm over the product of the three ranges.
#[divan::bench(args = [20.0, 60.0, 150.0])]
fn clearance_in_motion(bencher: Bencher<'_, '_>, aside_mm: f64) {
    use tubewright_geometry::motion::{self, MotionSearch, SteeredTyre};
    use tubewright_geometry::{Freedom, Motion};
    let tyre = SteeredTyre {
        centre: Point::new(0.0, -780.0, 330.0),
        axle: UnitVector::Y,
        radius_mm: 330.0,
        width_mm: 225.0,
        on_kingpin: Point::new(0.0, -720.0, 0.0),
        kingpin: UnitVector::Z,
        max_steer_rad: 35.0_f64.to_radians(),
        bump_mm: 75.0,
        droop_mm: 75.0,
    };
    let rock = Motion {
        freedoms: vec![Freedom::Turn {
            on_axis: Point::new(0.0, 0.0, 500.0),
            axis: UnitVector::X,
            min_rad: -3.0_f64.to_radians(),
            max_rad: 3.0_f64.to_radians(),
        }],
    };
    let frame = Frame::upright(Point::new(250.0, -450.0 + aside_mm, 300.0), UnitVector::Y);
    let tube = TubeElement {
        line: CentreLine::bend(&frame.rolled(1.0), 1.0, 95.25),
        radius: 31.75,
    };
    let (solid, steer) = (tyre.solid(), tyre.motion());
    let effort = MotionSearch {
        tolerance_mm: 0.5,
        most_positions: 50_000,
    };
    let found = motion::clearance_in_motion(&tube, &rock, &solid, &steer, effort);
    assert!(found.positions < effort.most_positions, "{found:?}");
    bencher.bench_local(|| motion::clearance_in_motion(&tube, &rock, &solid, &steer, effort));
}
