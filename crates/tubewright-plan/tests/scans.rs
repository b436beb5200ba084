//! Scans placed by the marks seen in them.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use std::collections::BTreeMap;
use tubewright_build::Texts;
use tubewright_build::model::Model;
use tubewright_check::{Rule, State};
use tubewright_geometry::distance::point_to_solid;
use tubewright_geometry::motion::Motion;
use tubewright_geometry::{CentreLine, Frame, Placement, Point, TubeElement, UnitVector, Vector};
use tubewright_plan::bodies::{Bodies, BodyError, ScanProblem, place_bodies};
use tubewright_plan::checks::{MovingRun, clearance_findings};
use tubewright_plan::places::{PlacedPoint, Places};
use tubewright_plan::routes::{PlannedKind, PlannedPiece, PlannedRun};

/// Marks in the car, mm.
const MARKS: [(&str, [f64; 3]); 5] = [
    ("A", [0.0, -400.0, 0.0]),
    ("B", [10.0, 410.0, 5.0]),
    ("C", [900.0, 390.0, -10.0]),
    ("D", [905.0, -395.0, 240.0]),
    ("E", [450.0, 0.0, 300.0]),
];

/// A floor pan in the car: a plate at z = 350 with a hole in the middle, as triangles.
fn pan() -> Vec<[Point; 3]> {
    let at = |x: f64, y: f64| Point::new(x, y, 350.0);
    let mut triangles = Vec::new();
    for (x, y) in [(0.0, -300.0), (0.0, 0.0), (600.0, -300.0), (600.0, 0.0)] {
        triangles.push([at(x, y), at(x + 300.0, y), at(x, y + 300.0)]);
        triangles.push([at(x + 300.0, y), at(x + 300.0, y + 300.0), at(x, y + 300.0)]);
    }
    triangles
}

/// How the scanning program saw the car: turned, shifted, in its own unit.
struct Seen {
    turned: Placement,
    units_per_mm: f64,
    mirrored: bool,
}

impl Seen {
    fn at(&self, in_car: Point) -> Point {
        let mut place = self.turned.point(in_car);
        if self.mirrored {
            place.y = -place.y;
        }
        Point::ORIGIN + (place - Point::ORIGIN) * self.units_per_mm
    }

    fn stl(&self) -> Vec<u8> {
        let mut text = String::from("solid pan\n");
        for triangle in pan() {
            text.push_str("facet normal 0 0 1\nouter loop\n");
            for corner in triangle {
                let p = self.at(corner);
                text.push_str(&format!("vertex {:.9} {:.9} {:.9}\n", p.x, p.y, p.z));
            }
            text.push_str("endloop\nendfacet\n");
        }
        text.push_str("endsolid pan\n");
        text.into_bytes()
    }
}

fn seen(units_per_mm: f64) -> Seen {
    let axis = Vector::new(1.0, 2.0, -0.5).direction().unwrap();
    Seen {
        turned: Placement::turned(Point::new(300.0, -200.0, 70.0), axis, 2.1),
        units_per_mm,
        mirrored: false,
    }
}

/// A build with the scan in it; `shift` is added to where mark E is said to be seen, in units.
fn build(seen: &Seen, marks: usize, unit: &str, more: &str, shift: f64) -> Model {
    let mut text = String::from("format = \"tubewright-build/1\"\nname = \"it\"\n");
    for (name, _) in MARKS {
        text.push_str(&format!("[[mark]]\nname = \"{name}\"\n"));
    }
    text.push_str(&format!(
        "[[body]]\nname = \"pan\"\nkind = \"scan\"\nclass = \"floor\"\nfile = \"pan.stl\"\nnoise = \"2 mm\"\n{unit}\n{more}\nplaces = [\n"
    ));
    for (name, at) in MARKS.iter().take(marks) {
        let mut p = seen.at(Point::from_array(*at));
        if *name == "E" {
            p.x += shift;
        }
        text.push_str(&format!(
            "{{ mark = \"{name}\", at = [{:.9}, {:.9}, {:.9}] }},\n",
            p.x, p.y, p.z
        ));
    }
    text.push_str("]\n");
    let read = tubewright_build::read(Texts {
        build: Some(&text),
        stock: None,
        shop: None,
    });
    assert!(
        unit.is_empty() || marks < 4 || read.problems.is_empty(),
        "{:?}",
        read.problems
    );
    read.model
}

fn placed(model: &Model, seen: &Seen) -> Bodies {
    placed_on(model, seen, MARKS.len())
}

/// With only the first `found` marks fixed by readings.
fn placed_on(model: &Model, seen: &Seen, found: usize) -> Bodies {
    let mut places = Places::default();
    for (name, at) in MARKS.into_iter().take(found) {
        let point = PlacedPoint {
            point_in_car: Point::from_array(at),
            covariance: [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
        };
        places.points.insert(name.to_owned(), point);
    }
    let scans = BTreeMap::from([("pan.stl".to_owned(), seen.stl())]);
    place_bodies(model, &places, &model.build.gaps.resolved(), &scans)
}

fn problem(bodies: &Bodies) -> ScanProblem {
    match bodies.missing.as_slice() {
        [(_, BodyError::Scan(problem))] => problem.clone(),
        other => panic!("{other:?}"),
    }
}

/// Whatever way the scanning program turned it and whatever its unit, the plate lies where it is; its
/// hole is a hole.
#[test]
fn a_scan_lands_on_its_marks() {
    for (unit, units_per_mm) in [("mm", 1.0), ("1 in", 1.0 / 25.4), ("m", 0.001)] {
        let seen = seen(units_per_mm);
        let bodies = placed(
            &build(&seen, 5, &format!("unit = \"{unit}\""), "", 0.0),
            &seen,
        );
        let pan = bodies.body("pan").unwrap();
        for (place, far) in [
            ([100.0, 100.0, 250.0], 100.0),
            ([100.0, 100.0, 350.0], 0.0),
            // Over the hole the edge is nearest.
            ([450.0, 0.0, 350.0], 150.0),
        ] {
            let found = point_to_solid(Point::from_array(place), &pan.solid_in_car);
            assert!(
                (found - far).abs() < 1e-3,
                "{unit}: {place:?} is {found} mm away"
            );
        }
        let scan = pan.scan.as_ref().unwrap();
        assert_eq!(scan.residuals_mm.len(), 5);
        assert!(scan.residuals_mm.iter().all(|(_, off)| *off < 1e-3));
        // The noise is an allowance on every gap.
        assert!((pan.allowance_mm - 2.0).abs() < 1e-12);
    }
}

/// A scan that came out two in a hundred too large is put right only when the person asks for it.
#[test]
fn scale_is_fitted_when_asked_for() {
    let seen = seen(1.02);
    let asked = placed(
        &build(&seen, 5, "unit = \"mm\"", "fit-scale = true", 0.0),
        &seen,
    );
    let scan = asked.body("pan").unwrap().scan.clone().unwrap();
    assert!((scan.scale - 1.0 / 1.02).abs() < 1e-6, "{}", scan.scale);
    assert!(scan.residuals_mm.iter().all(|(_, off)| *off < 1e-3));
    let not_asked = placed(&build(&seen, 5, "unit = \"mm\"", "", 0.0), &seen);
    let scan = not_asked.body("pan").unwrap().scan.clone().unwrap();
    assert!((scan.scale - 1.0).abs() < 1e-12);
    assert!(scan.residuals_mm.iter().any(|(_, off)| *off > 5.0));
}

/// Four are asked for when the build is read; here five were written and the readings fix only three.
#[test]
fn fewer_than_four_marks_do_not_place_a_scan() {
    let seen = seen(1.0);
    assert!(
        build(&seen, 3, "unit = \"mm\"", "", 0.0)
            .build
            .bodies
            .is_empty()
    );
    let model = build(&seen, 5, "unit = \"mm\"", "", 0.0);
    match problem(&placed_on(&model, &seen, 3)) {
        ScanProblem::TooFewMarks(file, 3) => assert_eq!(file, "pan.stl"),
        other => panic!("{other}"),
    }
}

/// The unit of the file is asked for: without it the body is refused when the build is read.
#[test]
fn the_unit_is_never_guessed() {
    let seen = seen(1.0);
    let model = build(&seen, 5, "", "", 0.0);
    assert!(model.build.bodies.is_empty());
}

/// One mark mistaken by 60 mm shows in what remains at the marks, and makes the scan less sure the
/// further from its marks.
#[test]
fn a_mistaken_mark_shows() {
    let seen = seen(1.0);
    let bodies = placed(&build(&seen, 5, "unit = \"mm\"", "", 60.0), &seen);
    let pan = bodies.body("pan").unwrap();
    let scan = pan.scan.as_ref().unwrap();
    let worst = scan
        .residuals_mm
        .iter()
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .unwrap();
    assert_eq!(worst.0, "E");
    assert!(worst.1 > 10.0, "{worst:?}");
    let sigma = |x: f64| pan.own_sigma_mm(Point::new(x, 0.0, 350.0), UnitVector::Z.vector());
    assert!(sigma(450.0) > 3.0 && sigma(3000.0) > 2.0 * sigma(450.0));
}

/// A left-handed export, or left and right marks exchanged, is told and not placed.
#[test]
fn a_mirrored_scan_is_told() {
    let seen = Seen {
        mirrored: true,
        ..seen(1.0)
    };
    let bodies = placed(&build(&seen, 5, "unit = \"mm\"", "", 0.0), &seen);
    let problem = problem(&bodies);
    assert!(matches!(problem, ScanProblem::Mirrored { .. }), "{problem}");
    assert!(problem.to_string().contains("mirror"));
}

/// A straight tube of 50 mm from one place to another as a run.
fn straight(from: [f64; 3], to: [f64; 3]) -> PlannedRun {
    let (a, b) = (Point::from_array(from), Point::from_array(to));
    let start = Frame::upright(a, (b - a).direction().unwrap());
    let length_mm = a.distance(b);
    let piece = PlannedPiece {
        mark: "E1".to_owned(),
        joint: "J1".to_owned(),
        kind: PlannedKind::Straight { length_mm },
        frame_in: start,
        frame_out: start.advanced(length_mm),
        elements: vec![TubeElement {
            line: CentreLine::straight(&start, length_mm),
            radius: 25.0,
        }],
        uncovered_mm: 0.0,
    };
    PlannedRun {
        name: "exhaust".to_owned(),
        tube: "50".to_owned(),
        od_mm: 50.0,
        end_od_mm: 50.0,
        start,
        sawn: None,
        end_point: b,
        end_direction: start.travel(),
        pieces: vec![piece],
        last_joint: "J2".to_owned(),
        clr_mm: 75.0,
        self_gap_mm: 10.0,
        run_gap_mm: 10.0,
        starts_on: None,
        ends_on: None,
        lined_from_behind: std::collections::BTreeSet::new(),
    }
}

/// The pan was scanned from x = 0 to 300 and from 600 to 900, the light did not reach between: a run that
/// passes there is not checked, over or under it, near or far; one that keeps to what was scanned is, and so
/// is one that only passes beyond the scan's edge, of which the finding says how much.
#[test]
fn a_run_past_what_was_never_scanned_is_not_checked() {
    let seen = seen(0.001);
    let bodies = placed(&build(&seen, 5, "unit = \"m\"", "", 0.0), &seen);
    let covered = |run: &PlannedRun| {
        let moving = MovingRun {
            run,
            hold: None,
            piece_motions: vec![Motion::FIXED],
        };
        clearance_findings(&[moving], &bodies, &Places::default().joint)
            .into_iter()
            .filter(|finding| finding.rule == Rule::ScanCovers)
            .map(|finding| (finding.state, finding.advice))
            .collect::<Vec<_>>()
    };
    for z in [100.0, 250.0, 349.0, 420.0] {
        for (from, to, holes_mm) in [
            ([10.0, 0.0, z], [890.0, 0.0, z], Some(300.0)),
            ([450.0, -200.0, z], [450.0, 200.0, z], Some(400.0)),
            ([150.0, -200.0, z], [150.0, 200.0, z], None),
            // Its centre line keeps clear of the hole, its side does not.
            ([285.0, -200.0, z], [285.0, 200.0, z], Some(400.0)),
            ([-500.0, 0.0, z], [-30.0, 0.0, z], None),
            ([-500.0, 0.0, z], [290.0, 0.0, z], None),
        ] {
            let run = straight(from, to);
            let found = covered(&run);
            let [(state, advice)] = found.as_slice() else {
                panic!("{found:?}");
            };
            match holes_mm {
                None => assert_eq!(*state, State::Pass, "{from:?} to {to:?}: {advice}"),
                Some(holes_mm) => {
                    assert_eq!(*state, State::NotChecked, "{from:?} to {to:?}: {advice}");
                    let said: f64 = advice.split(' ').next().unwrap().parse().unwrap();
                    assert!(
                        (said - holes_mm).abs() <= 20.0,
                        "{from:?} to {to:?}: {advice}"
                    );
                }
            }
            assert_eq!(
                advice.contains("beyond its edge"),
                from[0] < -100.0,
                "{advice}"
            );
        }
    }
    // It covers the room or not whatever the gap to it.
    let run = straight([10.0, 0.0, 345.0], [890.0, 0.0, 345.0]);
    assert_eq!(covered(&run)[0].0, State::NotChecked);
}
