//! Scans placed by the marks seen in them.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use std::collections::BTreeMap;
use tubewright_build::Texts;
use tubewright_build::model::Model;
use tubewright_geometry::distance::point_to_solid;
use tubewright_geometry::{Placement, Point, UnitVector, Vector};
use tubewright_plan::bodies::{Bodies, BodyError, ScanProblem, place_bodies};
use tubewright_plan::places::{PlacedPoint, Places};

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
