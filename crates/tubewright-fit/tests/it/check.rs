use tubewright_fit::PoseSpread;
use tubewright_fit::check::{
    CheckDistance, InTheWay, Mark, NearPlace, Taping, choose, is_open, possible_distances,
    tolerance,
};
use tubewright_geometry::{CentreLine, Frame, OrientedBox, Point, Solid, TubeElement, UnitVector};

const RADIUS_MM: f64 = 28.5;

fn frame() -> Frame {
    Frame::upright(Point::new(150.0, -60.0, 130.0), UnitVector::X)
}

fn mark(name: &str, x: f64, y: f64, z: f64) -> Mark {
    Mark {
        name: name.to_owned(),
        place: Point::new(x, y, z),
        covariance: [[0.2, 0.0, 0.0], [0.0, 0.2, 0.0], [0.0, 0.0, 0.2]],
    }
}

fn marks() -> Vec<Mark> {
    vec![
        mark("A left", -300.0, -450.0, 80.0),
        mark("A right", -250.0, 450.0, 90.0),
        mark("B left", 700.0, -420.0, 60.0),
        mark("B right", 650.0, 430.0, 300.0),
        mark("C", 100.0, 30.0, 420.0),
    ]
}

fn before() -> PoseSpread {
    let at = frame().origin;
    let mut spread = PoseSpread::sure(at);
    for axis in [UnitVector::X, UnitVector::Y, UnitVector::Z] {
        spread = spread.with_shift(axis, 3.0).with_turn(axis, 0.01, at);
    }
    spread
}

const OPEN: InTheWay<'_> = InTheWay {
    bodies: &[],
    tubes: &[],
};

fn volume(spread: &PoseSpread) -> f64 {
    nalgebra::SMatrix::<f64, 6, 6>::from_fn(|i, j| spread.covariance()[i][j]).determinant()
}

fn rows(distances: &[CheckDistance]) -> Vec<([f64; 6], f64)> {
    distances.iter().map(|d| (d.row, d.variance)).collect()
}

#[test]
fn no_three_distances_fix_the_joint_better() {
    let taping = Taping {
        clocks: 4,
        ..Taping::usual(1.5)
    };
    let possible = possible_distances(&frame(), RADIUS_MM, &marks(), &OPEN, &taping);
    assert!(possible.len() >= 5, "{}", possible.len());
    let chosen = volume(&before().checked(&rows(&choose(&before(), &possible, 3))));
    let mut best = f64::INFINITY;
    for a in 0..possible.len() {
        for b in a + 1..possible.len() {
            for c in b + 1..possible.len() {
                let three = [&possible[a], &possible[b], &possible[c]].map(|d| (d.row, d.variance));
                best = best.min(volume(&before().checked(&three)));
            }
        }
    }
    assert!(chosen <= best * 1.05, "{chosen} against {best}");
}

#[test]
fn a_body_across_the_line_closes_it() {
    let taping = Taping::usual(1.5);
    let open = possible_distances(&frame(), RADIUS_MM, &marks(), &OPEN, &taping);
    let wall = [Solid::Box(OrientedBox::axis_aligned(
        Point::new(150.0, -250.0, 130.0),
        [900.0, 10.0, 400.0],
    ))];
    let closed = possible_distances(
        &frame(),
        RADIUS_MM,
        &marks(),
        &InTheWay {
            bodies: &wall,
            tubes: &[],
        },
        &taping,
    );
    assert!(open.iter().any(|d| d.mark == "A left"));
    assert!(
        closed
            .iter()
            .all(|d| d.mark != "A left" && d.mark != "B left")
    );
    assert!(closed.iter().any(|d| d.mark == "A right"));
}

/// A mark on the lower outer edge of a rail of 40 mm: up and inward the tape would run in the rail, along its lower
/// face and outward of it it is free. Punched on the lower inner edge the same mark sees the joint.
#[test]
fn a_tape_does_not_run_through_the_body_that_its_mark_is_on() {
    let rail = Solid::Box(OrientedBox::axis_aligned(
        Point::new(0.0, -430.0, 100.0),
        [1000.0, 20.0, 20.0],
    ));
    let bodies = [rail];
    let open = |mark: [f64; 3], place: [f64; 3]| {
        is_open(
            Point::from_array(mark),
            Point::from_array(place),
            &InTheWay {
                bodies: &bodies,
                tubes: &[],
            },
        )
    };
    let outer = [-300.0, -450.0, 80.0];
    let inner = [-300.0, -410.0, 80.0];
    for (place, from_outer, from_inner) in [
        // Inward and well above: through 40 mm of rail; from the inner edge past its face.
        ([150.0, -60.0, 330.0], false, true),
        ([-200.0, -60.0, 250.0], false, true),
        // Inward and level, or below: along the lower face.
        ([150.0, -60.0, 80.0], true, true),
        ([150.0, -60.0, 30.0], true, true),
        // Along the rail, to a place beside it and a little below.
        ([400.0, -470.0, 70.0], true, true),
        // Outward and above: past its outer face, which the inner edge lies behind.
        ([-300.0, -700.0, 330.0], true, false),
    ] {
        assert_eq!(open(outer, place), from_outer, "outer edge to {place:?}");
        assert_eq!(open(inner, place), from_inner, "inner edge to {place:?}");
    }
}

#[test]
fn no_line_goes_through_the_tube_itself() {
    let own = [TubeElement {
        line: CentreLine::straight(&frame().advanced(-400.0), 400.0),
        radius: RADIUS_MM,
    }];
    let possible = possible_distances(
        &frame(),
        RADIUS_MM,
        &marks(),
        &InTheWay {
            bodies: &[],
            tubes: &own,
        },
        &Taping::usual(1.5),
    );
    assert!(!possible.is_empty());
    for d in &possible {
        let mark = marks().into_iter().find(|m| m.name == d.mark).unwrap();
        let outward = frame().at_clock(d.clock_rad);
        assert!(outward.dot(mark.place - d.place) > 0.0, "{d:?}");
    }
}

#[test]
fn distances_off_by_the_tolerance_just_keep_the_gap() {
    let possible = possible_distances(&frame(), RADIUS_MM, &marks(), &OPEN, &Taping::usual(1.0));
    let chosen = choose(&before(), &possible, 4);
    let near = |room_mm| {
        vec![NearPlace {
            near: "floor".to_owned(),
            place: frame().origin + UnitVector::X * 60.0 + UnitVector::Z * RADIUS_MM,
            toward: UnitVector::Z,
            room_mm,
            other_sigma_mm: 0.5,
        }]
    };
    let wide = tolerance(&before(), &chosen, &near(14.0), 50.0);
    let narrow = tolerance(&before(), &chosen, &near(8.0), 50.0);
    assert!(narrow.most_mm < wide.most_mm && narrow.set_by == Some(0));
    // All distances off by it, each the worst way round, with what is left: exactly the room.
    let left = before().checked(&rows(&chosen));
    let row = left.row_along(near(8.0)[0].place, UnitVector::Z);
    let sigma = (left.variance_of(&row) + 0.25f64).sqrt();
    let pull = (8.0 - 1.959_963_984_540_054 * sigma) / narrow.most_mm;
    let pull_wide = (14.0 - 1.959_963_984_540_054 * sigma) / wide.most_mm;
    assert!((pull - pull_wide).abs() < 1e-9);
    // No room at all: the budget is broken, and by how much is said.
    assert!(tolerance(&before(), &chosen, &near(0.5), 50.0).most_mm < 0.0);
    assert!((tolerance(&before(), &chosen, &[], 5.0).most_mm - 5.0).abs() < 1e-12);
}
