//! Bounds over motions against dense sampling of the product of the ranges.

use proptest::prelude::*;
use tubewright_geometry::distance::{self, point_to_solid};
use tubewright_geometry::motion::{
    MotionSearch, MovingObstacle, MovingSet, clearance_in_motion, furthest_along,
    is_clear_in_motion, point_envelope,
};
use tubewright_geometry::{
    CentreLine, Frame, Freedom, Motion, OrientedBox, Placement, Point, Solid, TubeElement,
    UnitVector, Vector,
};

const EFFORT: MotionSearch = MotionSearch {
    tolerance_mm: 0.2,
    most_positions: 20_000,
};

fn place() -> impl Strategy<Value = Point> {
    [-300.0..300.0_f64, -300.0..300.0, -300.0..300.0].prop_map(Point::from_array)
}

fn direction() -> impl Strategy<Value = UnitVector> {
    [-1.0..1.0_f64, -1.0..1.0, -1.0..1.0]
        .prop_filter_map("too short", |v| Vector::from_array(v).direction())
}

fn freedom() -> impl Strategy<Value = Freedom> {
    prop_oneof![
        (direction(), -60.0..0.0_f64, 0.0..80.0_f64).prop_map(|(direction, min_mm, max_mm)| {
            Freedom::Shift {
                direction,
                min_mm,
                max_mm,
            }
        }),
        (place(), direction(), -0.3..0.0_f64, 0.0..0.3_f64).prop_map(
            |(on_axis, axis, min_rad, max_rad)| Freedom::Turn {
                on_axis,
                axis,
                min_rad,
                max_rad,
            }
        ),
    ]
}

fn motion(most: usize) -> impl Strategy<Value = Motion> {
    (prop::collection::vec(freedom(), 0..=most), 0.0..10.0_f64).prop_map(
        |(mut freedoms, radius)| {
            if radius > 5.0 {
                freedoms.push(Freedom::Sway { radius_mm: radius });
            }
            Motion { freedoms }
        },
    )
}

fn tube() -> impl Strategy<Value = TubeElement> {
    let frame = (place(), direction()).prop_map(|(p, t)| Frame::upright(p, t));
    let line = prop_oneof![
        (place(), place()).prop_map(|(a, b)| CentreLine::Segment { a, b }),
        (frame, 0.2..3.0_f64).prop_map(|(f, angle)| CentreLine::bend(&f, angle, 95.25)),
    ];
    line.prop_map(|line| TubeElement { line, radius: 30.0 })
}

fn solid() -> impl Strategy<Value = Solid> {
    prop_oneof![
        (
            place(),
            direction(),
            [5.0..120.0_f64, 5.0..120.0, 2.0..60.0]
        )
            .prop_map(|(p, t, half)| {
                let f = Frame::upright(p, t);
                Solid::Box(OrientedBox {
                    centre: p,
                    axes: [f.travel(), f.twelve(), f.three()],
                    half,
                })
            }),
        (place(), place(), 5.0..60.0_f64).prop_map(|(a, b, radius)| Solid::Cylinder {
            a,
            b,
            radius
        }),
        direction().prop_map(|outward| Solid::HalfSpace {
            point: Point::ORIGIN - outward * 500.0,
            outward,
        }),
    ]
}

/// The same, and round bodies, bends and several in one.
fn any_solid() -> impl Strategy<Value = Solid> {
    let round = || (place(), place(), 5.0..60.0_f64);
    let one = prop_oneof![
        solid(),
        round().prop_map(|(a, b, radius)| Solid::Capsule { a, b, radius }),
        (place(), 5.0..60.0_f64).prop_map(|(centre, radius)| Solid::Sphere { centre, radius }),
        tube().prop_map(Solid::Tube),
    ];
    let several = prop::collection::vec(round(), 1..3).prop_map(|all| {
        let members = all.into_iter();
        Solid::Union(
            members
                .map(|(a, b, radius)| Solid::Cylinder { a, b, radius })
                .collect(),
        )
    });
    prop_oneof![4 => one, 1 => several]
}

/// Every combination of a few values of each freedom.
fn grid(motion: &Motion, steps: usize) -> Vec<Vec<f64>> {
    motion.freedoms.iter().fold(vec![vec![]], |rows, f| {
        let (min, max) = f.range();
        rows.iter()
            .flat_map(|row| {
                (0..=steps).map(move |i| {
                    let mut row = row.clone();
                    row.push(min + (max - min) * i as f64 / steps as f64);
                    row
                })
            })
            .collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn the_bound_is_never_above_a_sampled_position(
        tube in tube(), of_tube in motion(2), body in any_solid(), of_body in motion(1)
    ) {
        let found = clearance_in_motion(&tube, &of_tube, &body, &of_body, EFFORT);
        let sway = of_tube.sway_mm() + of_body.sway_mm();
        prop_assert!(found.gap_mm <= found.found_gap_mm + 1e-9);
        for a in grid(&of_tube, 7) {
            for b in grid(&of_body, 7) {
                let moved = of_body.at(&b).inverse().tube(&of_tube.at(&a).tube(&tube));
                let gap = distance::clearance(&moved, &body, 1e-3).gap_mm;
                let gap = (gap - sway).max(-tube.radius);
                prop_assert!(
                    found.gap_mm <= gap + 1e-3 + 1e-9,
                    "reported {} but {gap} at {a:?} {b:?}", found.gap_mm
                );
            }
        }
        // The position that is reported does give the gap that is reported for it.
        let at = of_body
            .at(&found.body_values)
            .inverse()
            .tube(&of_tube.at(&found.tube_values).tube(&tube));
        let there = (distance::clearance(&at, &body, 1e-4).gap_mm - sway).max(-tube.radius);
        prop_assert!((there - found.found_gap_mm).abs() < 0.05, "{there} {}", found.found_gap_mm);
        if found.positions < EFFORT.most_positions {
            prop_assert!(found.found_gap_mm - found.gap_mm <= EFFORT.tolerance_mm + 0.05);
        }
        // And its places lie on the moved tube and the moved body.
        let tube_there = of_tube.at(&found.tube_values).tube(&tube);
        prop_assert!(tube_there.line.at(found.along_mm).distance(found.on_centre_line) < 0.05);
        let body_there = of_body.at(&found.body_values).solid(&body);
        prop_assert!(point_to_solid(found.on_body, &body_there) < 0.05);
    }

    #[test]
    fn the_predicate_agrees_with_the_bound(
        tube in tube(), of_tube in motion(2), body in solid(), of_body in motion(1)
    ) {
        let found = clearance_in_motion(&tube, &of_tube, &body, &of_body, EFFORT);
        let clear = |gap: f64| is_clear_in_motion(&tube, &of_tube, &body, &of_body, gap, 0.2);
        prop_assume!(found.positions < EFFORT.most_positions);
        if found.gap_mm > -tube.radius + 1.0 {
            prop_assert!(clear(found.gap_mm - 0.5));
        }
        prop_assert!(!clear(found.found_gap_mm + 0.01));
    }

    #[test]
    fn a_moving_set_answers_like_its_bodies(
        tube in tube(), of_tube in motion(1),
        bodies in prop::collection::vec((solid(), motion(1), 0.0..40.0_f64), 1..5)
    ) {
        let set = MovingSet::new(bodies.iter().map(|(solid, motion, gap_mm)| MovingObstacle {
            solid: solid.clone(),
            gap_mm: *gap_mm,
            motion: motion.clone(),
        }));
        let margins: Vec<f64> = bodies
            .iter()
            .map(|(s, m, gap)| clearance_in_motion(&tube, &of_tube, s, m, EFFORT).gap_mm - gap)
            .collect();
        let least = margins.iter().copied().fold(f64::INFINITY, f64::min);
        let found = set.tightest(&tube, &of_tube, EFFORT, f64::INFINITY).expect("not empty");
        prop_assert!((found.margin_mm - least).abs() < 1e-9);
        let limit = 20.0;
        let below = set.all_below(&tube, &of_tube, EFFORT, limit);
        for (body, margin) in margins.iter().enumerate() {
            prop_assert_eq!(below.iter().any(|b| b.body == body), *margin < limit);
        }
        let blocking = set.first_blocking(&tube, &of_tube, 0.2);
        if least > 0.5 {
            prop_assert_eq!(blocking, None);
        }
        if least < -0.5 {
            prop_assert!(blocking.is_some());
        }
    }

    #[test]
    fn nothing_moving_is_the_plain_distance(tube in tube(), body in solid()) {
        let still = clearance_in_motion(&tube, &Motion::FIXED, &body, &Motion::FIXED, EFFORT);
        let plain = distance::clearance(&tube, &body, 1e-3).gap_mm;
        prop_assert!((still.gap_mm - plain).abs() <= 0.03, "{} {plain}", still.gap_mm);
    }

    #[test]
    fn a_point_stays_in_its_envelope(p in place(), motion in motion(3)) {
        let envelope = point_envelope(p, &motion, 0.5);
        let sway = motion.sway_mm();
        let mut tight = tubewright_geometry::Bounds::EMPTY;
        for values in grid(&motion, 6) {
            let q = motion.at(&values).point(p);
            prop_assert!(envelope.grown(-sway + 1e-6).distance(q) <= 0.0);
            tight = tight.with_point(q);
        }
        // Not wildly too large either: a sixth of the ranges, 60 mm and 0.3 rad at 600 mm.
        prop_assert!(tight.grown(sway + 60.0).distance(envelope.max) <= 0.0);
    }

    #[test]
    fn placements_compose_and_undo(p in place(), on in place(), axis in direction(), t in -3.0..3.0_f64) {
        let turn = Placement::turned(on, axis, t);
        let shift = Placement::shifted(p - on);
        let both = turn.then(&shift);
        prop_assert!(both.point(p).distance(shift.point(turn.point(p))) < 1e-9);
        prop_assert!(both.inverse().point(both.point(p)).distance(p) < 1e-9);
        prop_assert!(turn.point(on).distance(on) < 1e-9);
    }

    #[test]
    fn a_body_reaches_as_far_as_its_points(body in solid(), motion in motion(2), d in direction()) {
        prop_assume!(body.bounds().is_some());
        let reach = furthest_along(&body, &motion, d, 0.5).expect("bounded").reach_mm;
        for values in grid(&motion, 4) {
            // A plane pushed out to the reach touches the body in no position.
            let moved = motion.at(&values).solid(&body);
            if let Some(b) = moved.bounds() {
                let far = Point::ORIGIN + d * 1e5;
                let nearest = distance::closest_point_on_solid(far, &moved).point;
                prop_assert!(d.dot(nearest.to_vector()) <= reach + 1e-6);
                prop_assert!(b.distance(nearest) < 1e-6);
            }
        }
    }
}

/// A tyre beside a straight, both upright beside each other: what goes up and down passes along the tube
/// and comes no nearer, so that one look settles it; steered besides, it comes nearer little by little.
#[test]
fn what_passes_along_a_tube_takes_few_looks() {
    let straight = TubeElement {
        line: CentreLine::Segment {
            a: Point::new(0.0, 0.0, 0.0),
            b: Point::new(140.0, 0.0, 0.0),
        },
        radius: 30.0,
    };
    let tyre = Solid::Cylinder {
        a: Point::new(70.0, 180.0, -40.0),
        b: Point::new(70.0, 380.0, -40.0),
        radius: 310.0,
    };
    let bump = Freedom::Shift {
        direction: UnitVector::Z,
        min_mm: -60.0,
        max_mm: 80.0,
    };
    let steer = Freedom::Turn {
        on_axis: Point::new(70.0, 400.0, 0.0),
        axis: UnitVector::Z,
        min_rad: -0.6,
        max_rad: 0.6,
    };
    let up_and_down = Motion {
        freedoms: vec![bump],
    };
    let found = clearance_in_motion(&straight, &Motion::FIXED, &tyre, &up_and_down, EFFORT);
    assert!((found.gap_mm - 150.0).abs() < 0.3, "{}", found.gap_mm);
    assert!(found.positions <= 10, "{}", found.positions);
    let steered = Motion {
        freedoms: vec![steer, bump],
    };
    let found = clearance_in_motion(&straight, &Motion::FIXED, &tyre, &steered, EFFORT);
    let doubt_mm = found.found_gap_mm - found.gap_mm;
    assert!(doubt_mm < 0.3, "{doubt_mm}");
    assert!(found.positions <= 1000, "{}", found.positions);
}
