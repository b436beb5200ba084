//! Distances against dense sampling, against themselves after a rigid motion, against an outside
//! judge, and the predicate against the distance.
#![allow(clippy::expect_used, clippy::panic, reason = "helpers of tests")]

mod common;

use proptest::prelude::*;
use std::sync::Arc;
use tubewright_geometry::distance::{self, Obstacle, SolidSet};
use tubewright_geometry::{
    CentreLine, Frame, OrientedBox, Point, PointCloud, Prism, Solid, TriangleMesh, TubeElement,
    UnitVector, Vector,
};

const TOLERANCE_MM: f64 = 1e-3;

fn place() -> impl Strategy<Value = Point> {
    [-300.0..300.0_f64, -300.0..300.0, -300.0..300.0].prop_map(Point::from_array)
}

fn direction() -> impl Strategy<Value = UnitVector> {
    [-1.0..1.0_f64, -1.0..1.0, -1.0..1.0].prop_filter_map("too short", |v| {
        let v = Vector::from_array(v);
        (v.norm() > 0.1).then(|| v.direction()).flatten()
    })
}

fn frame() -> impl Strategy<Value = Frame> {
    (place(), direction(), direction())
        .prop_filter_map("parallel", |(p, t, up)| Frame::new(p, t, up.vector()))
}

fn element() -> impl Strategy<Value = TubeElement> {
    let line = prop_oneof![
        (place(), place()).prop_map(|(a, b)| CentreLine::Segment { a, b }),
        (frame(), 0.05..6.2_f64, 30.0..200.0_f64)
            .prop_map(|(f, angle, clr)| CentreLine::bend(&f, angle, clr)),
    ];
    (line, 5.0..40.0_f64).prop_map(|(line, radius)| TubeElement { line, radius })
}

fn oriented_box() -> impl Strategy<Value = OrientedBox> {
    (frame(), [1.0..150.0_f64, 1.0..150.0, 0.1..80.0]).prop_map(|(f, half)| OrientedBox {
        centre: f.origin,
        axes: [f.travel(), f.twelve(), f.three()],
        half,
    })
}

/// A star-shaped outline: convex or not, never crossing itself.
fn prism() -> impl Strategy<Value = Prism> {
    (
        frame(),
        prop::collection::vec(20.0..150.0_f64, 3..9),
        1.0..120.0_f64,
        any::<bool>(),
    )
        .prop_map(|(f, radii, depth, backwards)| {
            let n = radii.len() as f64;
            let mut outline: Vec<[f64; 2]> = radii
                .iter()
                .enumerate()
                .map(|(i, r)| {
                    let (sin, cos) =
                        tubewright_geometry::math::sin_cos(std::f64::consts::TAU * i as f64 / n);
                    [r * cos, r * sin]
                })
                .collect();
            if backwards {
                outline.reverse();
            }
            Prism {
                origin: f.origin,
                u: f.twelve(),
                v: f.three(),
                outline,
                depth,
            }
        })
}

fn box_mesh(b: &OrientedBox) -> TriangleMesh {
    let quads = [
        [0, 2, 3, 1],
        [4, 5, 7, 6],
        [0, 1, 5, 4],
        [2, 6, 7, 3],
        [0, 4, 6, 2],
        [1, 3, 7, 5],
    ];
    let triangles = quads
        .iter()
        .flat_map(|&[a, b, c, d]| [[a, b, c], [a, c, d]])
        .collect();
    TriangleMesh::new(b.corners().to_vec(), triangles).expect("a box")
}

fn solid() -> impl Strategy<Value = Solid> {
    prop_oneof![
        oriented_box().prop_map(Solid::Box),
        (place(), place(), 1.0..90.0_f64).prop_map(|(a, b, radius)| Solid::Capsule {
            a,
            b,
            radius
        }),
        (place(), place(), 1.0..150.0_f64).prop_map(|(a, b, radius)| Solid::Cylinder {
            a,
            b,
            radius
        }),
        (place(), 1.0..150.0_f64).prop_map(|(centre, radius)| Solid::Sphere { centre, radius }),
        (place(), direction()).prop_map(|(point, outward)| Solid::HalfSpace { point, outward }),
        prism().prop_map(Solid::Prism),
        oriented_box().prop_map(|b| Solid::Mesh(Arc::new(box_mesh(&b)))),
        (prop::collection::vec(place(), 1..60), 0.0..20.0_f64).prop_map(|(points, radius)| {
            Solid::PointCloud(Arc::new(PointCloud::new(points, radius).expect("finite")))
        }),
        (prop::collection::vec(place(), 1..9), 0.0..20.0_f64).prop_map(|(points, radius)| {
            Solid::Cloud {
                points: points.into(),
                radius,
            }
        }),
        element().prop_map(Solid::Tube),
        (oriented_box(), place(), place()).prop_map(|(b, a, c)| {
            Solid::Union(vec![
                Solid::Box(b),
                Solid::Capsule {
                    a,
                    b: c,
                    radius: 10.0,
                },
            ])
        }),
    ]
}

fn move_point(f: &Frame, p: Point) -> Point {
    f.point_from_local(p)
}

fn move_direction(f: &Frame, u: UnitVector) -> UnitVector {
    let v = f.vector_from_local(u.vector());
    UnitVector::from_unit(v / v.norm())
}

fn move_line(f: &Frame, line: &CentreLine) -> CentreLine {
    match *line {
        CentreLine::Segment { a, b } => CentreLine::Segment {
            a: move_point(f, a),
            b: move_point(f, b),
        },
        CentreLine::Arc {
            centre,
            u,
            v,
            radius,
            angle,
        } => CentreLine::Arc {
            centre: move_point(f, centre),
            u: move_direction(f, u),
            v: move_direction(f, v),
            radius,
            angle,
        },
        _ => panic!("a new kind of centre line"),
    }
}

fn move_solid(f: &Frame, s: &Solid) -> Solid {
    match s {
        Solid::Box(b) => Solid::Box(OrientedBox {
            centre: move_point(f, b.centre),
            axes: b.axes.map(|a| move_direction(f, a)),
            half: b.half,
        }),
        Solid::Capsule { a, b, radius } => Solid::Capsule {
            a: move_point(f, *a),
            b: move_point(f, *b),
            radius: *radius,
        },
        Solid::Cylinder { a, b, radius } => Solid::Cylinder {
            a: move_point(f, *a),
            b: move_point(f, *b),
            radius: *radius,
        },
        Solid::Sphere { centre, radius } => Solid::Sphere {
            centre: move_point(f, *centre),
            radius: *radius,
        },
        Solid::HalfSpace { point, outward } => Solid::HalfSpace {
            point: move_point(f, *point),
            outward: move_direction(f, *outward),
        },
        Solid::Prism(p) => Solid::Prism(Prism {
            origin: move_point(f, p.origin),
            u: move_direction(f, p.u),
            v: move_direction(f, p.v),
            ..p.clone()
        }),
        Solid::Mesh(m) => {
            let vertices = m.vertices().iter().map(|&p| move_point(f, p)).collect();
            Solid::Mesh(Arc::new(
                TriangleMesh::new(vertices, m.triangles().to_vec()).expect("moved"),
            ))
        }
        Solid::PointCloud(c) => {
            let points = c.points().iter().map(|&p| move_point(f, p)).collect();
            Solid::PointCloud(Arc::new(
                PointCloud::new(points, c.radius_mm()).expect("moved"),
            ))
        }
        Solid::Cloud { points, radius } => Solid::Cloud {
            points: points.iter().map(|&p| move_point(f, p)).collect(),
            radius: *radius,
        },
        Solid::Tube(t) => Solid::Tube(TubeElement {
            line: move_line(f, &t.line),
            radius: t.radius,
        }),
        Solid::Union(all) => Solid::Union(all.iter().map(|m| move_solid(f, m)).collect()),
        _ => panic!("a new kind of solid"),
    }
}

/// Least distance over places close together: never below the true least, and above it by at most
/// half their spacing (distance changes by no more than the place moves).
fn sampled(tube: &TubeElement, solid: &Solid) -> (f64, f64) {
    const STEPS: i32 = 1500;
    let length = tube.line.length();
    let least = (0..=STEPS)
        .map(|i| {
            let at = tube.line.at(length * f64::from(i) / f64::from(STEPS));
            distance::point_to_solid(at, solid)
        })
        .fold(f64::INFINITY, f64::min);
    (least - tube.radius, 0.5 * length / f64::from(STEPS))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn clearance_is_what_dense_sampling_says(tube in element(), body in solid()) {
        let found = distance::clearance(&tube, &body, TOLERANCE_MM);
        let (least, spacing) = sampled(&tube, &body);
        prop_assert!(found.gap_mm <= least + 1e-9, "gap {} above the sampled {least}", found.gap_mm);
        prop_assert!(
            found.gap_mm >= least - spacing - TOLERANCE_MM,
            "gap {} below the sampled {least}", found.gap_mm
        );
        // The reported places belong together and to the body.
        let there = distance::point_to_solid(found.on_centre_line, &body) - tube.radius;
        prop_assert!((there - found.gap_mm).abs() <= 3.0 * TOLERANCE_MM, "{there} {}", found.gap_mm);
        prop_assert!(distance::point_to_solid(found.on_body, &body) <= 2.0 * TOLERANCE_MM);
        prop_assert!(
            tube.line.at(found.along_mm).distance(found.on_centre_line) < 1e-9
        );
    }

    #[test]
    fn predicate_agrees_with_the_distance(
        tube in element(), body in solid(), extra in -30.0..30.0_f64
    ) {
        let gap = distance::clearance(&tube, &body, TOLERANCE_MM).gap_mm;
        // Against the gap itself, a little to either side, and at some distance.
        for ask in [gap - 1e-5, gap - 10.0, extra] {
            if ask <= gap {
                prop_assert!(distance::is_clear(&tube, &body, ask), "gap {gap}, asked {ask}");
            }
        }
        for ask in [gap + 2.0 * TOLERANCE_MM, gap + 10.0, extra] {
            if ask > gap + TOLERANCE_MM && ask > -tube.radius {
                prop_assert!(!distance::is_clear(&tube, &body, ask), "gap {gap}, asked {ask}");
            }
        }
    }

    #[test]
    fn a_rigid_motion_changes_no_clearance(tube in element(), body in solid(), to in frame()) {
        let moved = TubeElement { line: move_line(&to, &tube.line), radius: tube.radius };
        let before = distance::clearance(&tube, &body, TOLERANCE_MM).gap_mm;
        let after = distance::clearance(&moved, &move_solid(&to, &body), TOLERANCE_MM).gap_mm;
        prop_assert!((before - after).abs() <= TOLERANCE_MM + 1e-9, "{before} {after}");
    }

    #[test]
    fn the_nearest_place_is_on_the_body_and_at_the_distance(p in place(), body in solid()) {
        let found = distance::closest_point_on_solid(p, &body);
        let direct = distance::point_to_solid(p, &body);
        prop_assert!((found.distance_mm - direct).abs() < 1e-9);
        prop_assert!((p.distance(found.point) - direct).abs() < 1e-9);
        prop_assert!(distance::point_to_solid(found.point, &body) < 1e-6);
        if let Some(bounds) = body.bounds() {
            prop_assert!(bounds.grown(1e-9).distance(found.point) <= 0.0);
            prop_assert!(bounds.distance(p) <= direct + 1e-9);
        }
    }

    #[test]
    fn two_tubes_are_as_far_apart_as_sampling_says(a in element(), b in element()) {
        let found = distance::clearance_between(&a, &b, TOLERANCE_MM);
        let back = distance::clearance_between(&b, &a, TOLERANCE_MM);
        prop_assert!((found.gap_mm - back.gap_mm).abs() <= TOLERANCE_MM);
        let core = Solid::Tube(TubeElement { line: b.line, radius: 0.0 });
        let (least, spacing) = sampled(&a, &core);
        let gap = found.gap_mm + b.radius;
        prop_assert!(gap <= least + 1e-9 && gap >= least - spacing - TOLERANCE_MM);
        let places = found.on_first.distance(found.on_second) - a.radius - b.radius;
        prop_assert!((places - found.gap_mm).abs() <= 3.0 * TOLERANCE_MM);
        prop_assert!(distance::are_clear(&a, &b, found.gap_mm - 1e-5));
        prop_assert!(!distance::are_clear(&a, &b, found.gap_mm + 2.0 * TOLERANCE_MM));
    }

    #[test]
    fn a_set_answers_like_its_bodies_one_by_one(
        tube in element(),
        bodies in prop::collection::vec((solid(), -5.0..40.0_f64), 0..9),
        p in place(),
    ) {
        let set = SolidSet::new(bodies.iter().map(|(solid, gap_mm)| Obstacle {
            solid: solid.clone(),
            gap_mm: *gap_mm,
        }));
        prop_assert_eq!(set.len(), bodies.len());
        let margins: Vec<f64> = bodies
            .iter()
            .map(|(s, gap)| distance::clearance(&tube, s, TOLERANCE_MM).gap_mm - gap)
            .collect();
        let least = margins.iter().copied().fold(f64::INFINITY, f64::min);
        match set.tightest(&tube, TOLERANCE_MM, f64::INFINITY) {
            Some(found) => {
                prop_assert!((found.margin_mm - least).abs() <= TOLERANCE_MM);
                prop_assert!((margins[found.body] - least).abs() <= TOLERANCE_MM);
            }
            None => prop_assert!(bodies.is_empty()),
        }
        let clear = bodies.iter().all(|(s, gap)| distance::is_clear(&tube, s, *gap));
        prop_assert_eq!(set.is_clear(&tube), clear);
        let below = set.all_below(&tube, TOLERANCE_MM, 10.0);
        for (body, margin) in margins.iter().enumerate() {
            let listed = below.iter().find(|b| b.body == body);
            prop_assert!(listed.is_some() || *margin >= 10.0 - TOLERANCE_MM);
            prop_assert!(listed.is_none_or(|b| (b.margin_mm - margin).abs() <= TOLERANCE_MM));
        }
        let field = bodies
            .iter()
            .map(|(s, gap)| distance::point_to_solid(p, s) - gap)
            .fold(f64::INFINITY, f64::min);
        let got = set.margin_at(p);
        prop_assert!((got.is_infinite() && field.is_infinite()) || (got - field).abs() < 1e-9, "{} {}", got, field);
    }

    #[test]
    fn the_way_of_travel_changes_no_clearance(tube in element(), body in solid(), t in 0.0..1.0_f64) {
        let back = TubeElement { line: tube.line.reversed(), radius: tube.radius };
        let length = tube.line.length();
        prop_assert!(back.line.at(length * (1.0 - t)).distance(tube.line.at(length * t)) < 1e-8);
        if let (Some(there), Some(again)) =
            (tube.line.direction_at(length * t), back.line.direction_at(length * (1.0 - t)))
        {
            prop_assert!(there.angle_to(-again) < 1e-9);
        }
        let a = distance::clearance(&tube, &body, TOLERANCE_MM).gap_mm;
        let b = distance::clearance(&back, &body, TOLERANCE_MM).gap_mm;
        prop_assert!((a - b).abs() <= TOLERANCE_MM + 1e-9, "{a} {b}");
        // Its box holds it.
        let bounds = tube.bounds();
        prop_assert!(bounds.grown(1e-9 - tube.radius).distance(tube.line.at(length * t)) <= 0.0);
    }

    #[test]
    fn a_closed_mesh_of_a_box_is_that_box(tube in element(), body in oriented_box(), p in place()) {
        let mesh = box_mesh(&body);
        prop_assert!(mesh.is_closed());
        let (solid, mesh) = (Solid::Box(body), Solid::Mesh(Arc::new(mesh)));
        let apart = distance::point_to_solid(p, &solid) - distance::point_to_solid(p, &mesh);
        prop_assert!(apart.abs() < 1e-9);
        // Places within the box too, and on its diagonals, where rays meet edges.
        for t in [0.1, 0.5, 0.9, 0.999] {
            let q = body.centre.lerp(body.corners()[5], t);
            prop_assert!(distance::point_to_solid(q, &mesh) < 1e-9);
        }
        let a = distance::clearance(&tube, &solid, TOLERANCE_MM).gap_mm;
        let b = distance::clearance(&tube, &mesh, TOLERANCE_MM).gap_mm;
        prop_assert!((a - b).abs() <= TOLERANCE_MM + 1e-9, "{a} {b}");
        prop_assert_eq!(
            distance::is_clear(&tube, &solid, a - 5e-3),
            distance::is_clear(&tube, &mesh, a - 5e-3)
        );
    }

    #[test]
    fn an_outside_judge_agrees_on_a_ball_of_triangles(p in place(), size in 20.0..400.0_f64) {
        use parry3d_f64::math::Vector as Vec3;
        use parry3d_f64::query::PointQuery;
        use parry3d_f64::shape::TriMesh;
        let ball = common::icosphere(size, 2);
        let vertices = ball.vertices().iter().map(|v| Vec3::new(v.x, v.y, v.z)).collect();
        let judge = TriMesh::new(vertices, ball.triangles().to_vec()).expect("a mesh");
        // To the surface: the judge is told nothing of an inside.
        let to_surface = judge.distance_to_local_point(Vec3::new(p.x, p.y, p.z), false);
        let inside = p.to_vector().norm() < 0.9 * size;
        let ours = distance::point_to_solid(p, &Solid::Mesh(Arc::new(ball)));
        if inside {
            prop_assert!(ours < 1e-12);
        } else if p.to_vector().norm() > size {
            prop_assert!((ours - to_surface.abs()).abs() < 1e-6, "{ours} {to_surface}");
        }
    }

    #[test]
    fn an_outside_judge_agrees_on_capsule_against_box(
        a in place(), b in place(), body in oriented_box()
    ) {
        use parry3d_f64::math::{Pose, Vector as Vec3};
        use parry3d_f64::query;
        use parry3d_f64::shape::{Cuboid, Segment};
        let local = |p: Point| {
            let v = p - body.centre;
            Vec3::new(body.axes[0].dot(v), body.axes[1].dot(v), body.axes[2].dot(v))
        };
        let judged = query::distance(
            &Pose::IDENTITY,
            &Segment::new(local(a), local(b)),
            &Pose::IDENTITY,
            &Cuboid::new(Vec3::new(body.half[0], body.half[1], body.half[2])),
        )
        .expect("supported")
        .distance;
        let tube = TubeElement { line: CentreLine::Segment { a, b }, radius: 0.0 };
        let ours = distance::clearance(&tube, &Solid::Box(body), TOLERANCE_MM).gap_mm;
        prop_assert!((ours - judged).abs() < 1e-4, "{ours} against {judged}");
    }
}

#[test]
fn nothing_thin_is_jumped_over() {
    // A sheet of 0.01 mm across the middle of a straight and of a bend.
    let sheet = Solid::Box(OrientedBox::axis_aligned(
        Point::new(50.0, 0.0, 0.0),
        [0.005, 80.0, 80.0],
    ));
    let straight = TubeElement {
        line: CentreLine::Segment {
            a: Point::new(-400.0, 0.0, 0.0),
            b: Point::new(900.0, 1.0, 0.0),
        },
        radius: 1.0,
    };
    let frame = Frame::upright(Point::new(-45.0, 0.0, 0.0), UnitVector::X);
    let bend = TubeElement {
        line: CentreLine::bend(&frame, 1.6, 150.0),
        radius: 1.0,
    };
    for tube in [straight, bend] {
        let found = distance::clearance(&tube, &sheet, 1e-6);
        assert!(found.gap_mm <= -1.0 + 1e-9, "{}", found.gap_mm);
        assert!(!distance::is_clear(&tube, &sheet, -0.5));
    }
}

#[test]
fn a_tube_inside_a_closed_mesh_is_not_clear_of_it() {
    let ball = common::icosphere(500.0, 2);
    assert!(ball.is_closed());
    let tube = TubeElement {
        line: CentreLine::Segment {
            a: Point::new(-20.0, 3.0, 1.0),
            b: Point::new(30.0, 5.0, -2.0),
        },
        radius: 10.0,
    };
    let open = TriangleMesh::new(ball.vertices().to_vec(), ball.triangles()[1..].to_vec())
        .expect("a ball with a hole");
    assert!(!open.is_closed());
    let ball = Solid::Mesh(Arc::new(ball));
    assert_eq!(distance::point_to_solid(Point::ORIGIN, &ball).to_bits(), 0);
    assert!(!distance::is_clear(&tube, &ball, 0.0));
    assert!((distance::clearance(&tube, &ball, 1e-6).gap_mm + 10.0).abs() < 1e-9);
    // An open surface has no inside: the tube is clear of it by far.
    assert!(distance::is_clear(
        &tube,
        &Solid::Mesh(Arc::new(open)),
        300.0
    ));
}

#[test]
fn triangles_without_area_count_as_their_edges() {
    let corners = vec![
        Point::ORIGIN,
        Point::new(100.0, 0.0, 0.0),
        Point::new(40.0, 0.0, 0.0),
        Point::new(40.0, 0.0, 0.0),
    ];
    let mesh = TriangleMesh::new(corners, vec![[0, 1, 2], [2, 3, 2], [0, 0, 0]]).expect("finite");
    let tube = TubeElement {
        line: CentreLine::Segment {
            a: Point::new(70.0, -50.0, 30.0),
            b: Point::new(70.0, 50.0, 30.0),
        },
        radius: 5.0,
    };
    let found = distance::clearance(&tube, &Solid::Mesh(Arc::new(mesh)), 1e-6);
    assert!((found.gap_mm - 25.0).abs() < 1e-9);
}
