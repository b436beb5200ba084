//! Properties of runs: points ↔ rows ↔ chains, reversal, mirror image, moved axes.
#![allow(clippy::expect_used, reason = "helpers of tests")]

use proptest::prelude::*;
use tubewright_geometry::{
    BendRow, BendTable, Chain, Frame, Piece, Point, RowsError, UnitVector, Vector, math,
    rows_from_points,
};

fn place() -> impl Strategy<Value = Point> {
    [-900.0..900.0_f64, -900.0..900.0, -900.0..900.0].prop_map(Point::from_array)
}

fn frame() -> impl Strategy<Value = Frame> {
    let d = [-1.0..1.0_f64, -1.0..1.0, -1.0..1.0];
    (place(), d.clone(), d).prop_filter_map("no frame", |(p, t, up)| {
        Frame::new(
            p,
            Vector::from_array(t).direction()?,
            Vector::from_array(up),
        )
    })
}

fn run() -> impl Strategy<Value = (Vec<Point>, Vec<f64>)> {
    prop::collection::vec((place(), 20.0..120.0_f64), 2..9).prop_filter_map(
        "turns back or stands still",
        |list| {
            let points: Vec<Point> = list.iter().map(|l| l.0).collect();
            let radii: Vec<f64> = list.iter().skip(2).map(|l| l.1).collect();
            let radii = if radii.is_empty() { vec![50.0] } else { radii };
            let table = rows_from_points(&points, &radii).ok()?.table;
            table
                .rows
                .iter()
                .all(|r| r.bend_rad < 3.0 && r.bend_rad > 1e-3)
                .then_some((points, radii))
        },
    )
}

fn table() -> impl Strategy<Value = BendTable> {
    let row = (
        0.0..300.0_f64,
        -3.1..3.1_f64,
        0.02..3.0_f64,
        20.0..150.0_f64,
    )
        .prop_map(|(straight_mm, rotation_rad, bend_rad, clr_mm)| BendRow {
            straight_mm,
            rotation_rad,
            bend_rad,
            clr_mm,
        });
    (prop::collection::vec(row, 0..8), 1.0..300.0_f64).prop_map(|(mut rows, last_straight_mm)| {
        if let Some(first) = rows.first_mut() {
            first.rotation_rad = 0.0;
        }
        BendTable {
            rows,
            last_straight_mm,
        }
    })
}

fn same_turn(a: f64, b: f64) -> bool {
    math::wrap_to_pi(a - b).abs() < 1e-6
}

fn assert_same(a: &BendTable, b: &BendTable) {
    assert_eq!(a.rows.len(), b.rows.len());
    for (p, q) in a.rows.iter().zip(&b.rows) {
        assert!((p.straight_mm - q.straight_mm).abs() < 1e-5, "{p:?} {q:?}");
        assert!(same_turn(p.rotation_rad, q.rotation_rad), "{p:?} {q:?}");
        assert!((p.bend_rad - q.bend_rad).abs() < 1e-8, "{p:?} {q:?}");
        assert!((p.clr_mm - q.clr_mm).abs() < 1e-9);
    }
    assert!((a.last_straight_mm - b.last_straight_mm).abs() < 1e-5);
}

proptest! {
    #[test]
    fn points_to_rows_to_points_closes((points, radii) in run()) {
        let placed = rows_from_points(&points, &radii).expect("a tube");
        let back = placed.table.points(&placed.start).expect("sound rows");
        prop_assert_eq!(back.len(), points.len());
        for (p, q) in points.iter().zip(&back) {
            prop_assert!(p.distance(*q) < 1e-6, "{:?} {:?}", p, q);
        }
    }

    #[test]
    fn rows_to_points_to_rows_closes(table in table(), start in frame()) {
        let points = table.points(&start).expect("sound rows");
        let radii: Vec<f64> = table.rows.iter().map(|r| r.clr_mm).collect();
        let radii = if radii.is_empty() { vec![50.0] } else { radii };
        let placed = rows_from_points(&points, &radii).expect("a tube");
        assert_same(&table, &placed.table);
    }

    #[test]
    fn a_chain_of_the_rows_passes_through_tangent_points_and_closes(table in table(), start in frame()) {
        let chain = Chain::from_table(start, &table);
        let points = table.points(&start).expect("sound rows");
        let end = chain.end();
        prop_assert!(end.origin.distance(points[points.len() - 1]) < 1e-6);
        prop_assert!((chain.developed_length_mm() - table.developed_length_mm()).abs() < 1e-6);
        assert_same(&chain.table(), &table);
        // Frames stay square, and each centre line starts and ends at its joints.
        let frames = chain.frames();
        for (i, line) in chain.centre_lines().iter().enumerate() {
            prop_assert!(line.at(0.0).distance(frames[i].origin) < 1e-8);
            prop_assert!(line.at(line.length()).distance(frames[i + 1].origin) < 1e-7);
            let f = frames[i + 1];
            prop_assert!(f.travel().dot(f.twelve().vector()).abs() < 1e-9);
        }
    }

    #[test]
    fn reversing_a_chain_walks_the_same_line_back(table in table(), start in frame()) {
        let chain = Chain::from_table(start, &table);
        let back = chain.reversed();
        prop_assert!(back.end().origin.distance(start.origin) < 1e-6);
        prop_assert!(back.end().travel().angle_to(-start.travel()) < 1e-8);
        prop_assert!((back.developed_length_mm() - chain.developed_length_mm()).abs() < 1e-6);
        assert_same(&back.table(), &table.reversed());
        assert_same(&table.reversed().reversed(), &table);
    }

    #[test]
    fn moved_axes_change_no_row_and_a_mirror_turns_every_rotation((points, radii) in run(), to in frame()) {
        let before = rows_from_points(&points, &radii).expect("a tube").table;
        let moved: Vec<Point> = points.iter().map(|p| to.point_from_local(*p)).collect();
        assert_same(&before, &rows_from_points(&moved, &radii).expect("a tube").table);
        let mirrored: Vec<Point> = points.iter().map(|p| Point::new(p.x, -p.y, p.z)).collect();
        assert_same(&before.mirrored(), &rows_from_points(&mirrored, &radii).expect("a tube").table);
    }

    #[test]
    fn a_point_on_a_straight_changes_nothing((points, _) in run(), t in 0.1..0.9_f64) {
        let mut more = points.clone();
        more.insert(1, points[0].lerp(points[1], t));
        let plain = rows_from_points(&points, &[60.0]).expect("a tube").table;
        // Rounding may leave a turn of 1e-16 rad, which is no bend.
        assert_same(&plain, &rows_from_points(&more, &[60.0]).expect("a tube").table);
    }
}

#[test]
fn a_u_is_two_right_angles() {
    let table = BendTable {
        rows: vec![BendRow {
            straight_mm: 100.0,
            rotation_rad: 0.0,
            bend_rad: math::PI,
            clr_mm: 50.0,
        }],
        last_straight_mm: 100.0,
    };
    let points = table.points(&Frame::IDENTITY).expect("sound rows");
    // Out 100, corners 50 on, 100 across, back.
    let expected = [[0.0, 0.0], [150.0, 0.0], [150.0, 100.0], [0.0, 100.0]];
    assert_eq!(points.len(), 4);
    for (p, [x, y]) in points.iter().zip(expected) {
        assert!(p.distance(Point::new(x, y, 0.0)) < 1e-9, "{p:?}");
    }
    let back = [points[0], points[1], points[0]];
    assert!(matches!(
        rows_from_points(&back, &[50.0]),
        Err(RowsError::TurnsBack { point: 1, .. })
    ));
}

#[test]
fn what_is_no_tube_is_refused_with_its_place() {
    let p = |x: f64| Point::new(x, 0.0, 0.0);
    assert!(matches!(
        rows_from_points(&[p(0.0)], &[50.0]),
        Err(RowsError::TooFewPoints { count: 1 })
    ));
    assert!(matches!(
        rows_from_points(&[p(0.0), p(1.0), p(1.0)], &[50.0]),
        Err(RowsError::SamePlace { point: 1 })
    ));
    assert!(matches!(
        rows_from_points(&[p(0.0), p(1.0), p(2.0)], &[50.0, 60.0]),
        Err(RowsError::RadiusCount {
            given: 2,
            needed: 1
        })
    ));
    assert!(matches!(
        rows_from_points(&[p(0.0), p(f64::NAN)], &[50.0]),
        Err(RowsError::SamePlace { point: 0 })
    ));
    let bad = Point::new(2.0, 9.0, 0.0);
    assert!(matches!(
        rows_from_points(&[p(0.0), p(1.0), bad], &[-5.0]),
        Err(RowsError::Radius { point: 1, .. })
    ));
}

#[test]
fn straights_too_short_to_make_are_told() {
    let points = [[0.0, 0.0], [60.0, 0.0], [60.0, 200.0]].map(|[x, y]| Point::new(x, y, 0.0));
    let table = rows_from_points(&points, &[80.0]).expect("a tube").table;
    let short = table.short_straights(0.0);
    assert_eq!(short.len(), 1);
    assert_eq!(short[0].straight, 0);
    assert!((short[0].short_by_mm - 20.0).abs() < 1e-9);
}

#[test]
fn components_count_as_straights_in_the_table() {
    let chain = Chain {
        start: Frame::upright(Point::ORIGIN, UnitVector::X),
        pieces: vec![
            Piece::Straight { length_mm: 40.0 },
            Piece::Component { length_mm: 300.0 },
            Piece::Bend {
                bend_rad: 1.0,
                clock_rad: 0.5,
                clr_mm: 95.25,
            },
            Piece::Component { length_mm: 120.0 },
        ],
    };
    let table = chain.table();
    assert!((table.rows[0].straight_mm - 340.0).abs() < 1e-12);
    assert!((table.last_straight_mm - 120.0).abs() < 1e-12);
    let radii = chain.elements(|_, piece| match piece {
        Piece::Component { .. } => 60.0,
        _ => 31.75,
    });
    assert!((radii[1].radius - 60.0).abs() < 1e-12 && (radii[2].radius - 31.75).abs() < 1e-12);
    let error = chain.end_error(&chain.end());
    assert!(error.place_mm < 1e-12 && error.direction_rad < 1e-12 && error.clock_rad.abs() < 1e-12);
}
