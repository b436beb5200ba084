//! Bodies from what a tape gives: each kind lands where its places say, and what is no body is refused
//! with a reason.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use tubewright_build::Texts;
use tubewright_build::model::BodyKind;
use tubewright_geometry::distance::point_to_solid;
use tubewright_geometry::{Point, UnitVector, Vector};
use tubewright_plan::bodies::{ShapeError, shape_of};
use tubewright_plan::places::{PlacedFloor, PlacedPoint, Places};

/// A kind of body, the places it is built from, and how far some places are from it.
struct Case {
    /// The body as a person writes it.
    body: &'static str,
    places: &'static [(&'static str, [f64; 3])],
    /// Place, and its distance from the body in mm: 0 inside or on it.
    far: &'static [([f64; 3], f64)],
}

/// All sizes are round, so that the distances can be worked out in the head.
const CASES: &[Case] = &[
    // Points on the lower outer edge of the left rail: it lies inboard of and above them.
    Case {
        body: r#"kind = "rail"
            from = "a"
            to = "b"
            edge = "lower outer"
            width = "60 mm"
            height = "100 mm""#,
        places: &[("a", [0.0, -500.0, 300.0]), ("b", [1000.0, -500.0, 300.0])],
        far: &[
            ([500.0, -470.0, 350.0], 0.0),
            ([500.0, -441.0, 399.0], 0.0),
            ([500.0, -430.0, 350.0], 10.0),
            ([500.0, -520.0, 350.0], 20.0),
            ([500.0, -470.0, 430.0], 30.0),
            ([500.0, -470.0, 260.0], 40.0),
            ([1050.0, -470.0, 350.0], 50.0),
        ],
    },
    // The upper inner edge of the right rail: it lies outboard of and below them.
    Case {
        body: r#"kind = "rail"
            from = "a"
            to = "b"
            edge = "upper inner"
            width = "60 mm"
            height = "100 mm""#,
        places: &[("a", [0.0, 400.0, 300.0]), ("b", [1000.0, 400.0, 300.0])],
        far: &[
            ([500.0, 430.0, 250.0], 0.0),
            ([500.0, 390.0, 250.0], 10.0),
            ([500.0, 480.0, 250.0], 20.0),
            ([500.0, 430.0, 330.0], 30.0),
            ([500.0, 430.0, 160.0], 40.0),
        ],
    },
    // Touched below: the axis is half a diameter above. 251.327 mm of girth is 80 mm across.
    Case {
        body: r#"kind = "tube"
            from = "a"
            to = "b"
            touched = "below"
            girth = "251.327 mm""#,
        places: &[("a", [0.0, 0.0, 200.0]), ("b", [1000.0, 0.0, 200.0])],
        far: &[
            ([500.0, 0.0, 240.0], 0.0),
            ([500.0, 0.0, 190.0], 10.0),
            ([500.0, 70.0, 240.0], 30.0),
            ([500.0, 0.0, 300.0], 20.0),
        ],
    },
    // 205/50 R16: 406.4 + 2 × 0.5 × 205 = 611.4 mm across, 205 mm wide; 40 mm inboard of the hub.
    Case {
        body: r#"kind = "tyre"
            hub = "a"
            marking = "205/50 R16"
            side = "left"
            inboard = "40 mm""#,
        places: &[("a", [1500.0, -740.0, 60.0])],
        far: &[
            ([1500.0, -700.0, 60.0], 0.0),
            ([1500.0, -700.0, 60.0 + 305.7 + 10.0], 10.0),
            ([1500.0, -700.0 + 102.5 + 20.0, 60.0], 20.0),
            ([1500.0, -700.0 - 102.5 - 30.0, 60.0], 30.0),
        ],
    },
    Case {
        body: r#"kind = "tank"
            corners = ["a", "b", "c", "d"]
            depth = "200 mm"
            depth-goes = "up""#,
        places: &[
            ("a", [2000.0, -300.0, 100.0]),
            ("b", [2000.0, 300.0, 100.0]),
            ("c", [2500.0, 300.0, 100.0]),
            ("d", [2500.0, -300.0, 100.0]),
        ],
        far: &[
            ([2250.0, 0.0, 200.0], 0.0),
            ([2250.0, 0.0, 90.0], 10.0),
            ([2250.0, 0.0, 320.0], 20.0),
            ([1970.0, 0.0, 200.0], 30.0),
            ([2250.0, 340.0, 200.0], 40.0),
        ],
    },
    Case {
        body: r#"kind = "box"
            corner = "a"
            opposite = "b""#,
        places: &[("a", [0.0, -200.0, 100.0]), ("b", [-600.0, 200.0, 500.0])],
        far: &[
            ([-300.0, 0.0, 300.0], 0.0),
            ([10.0, 0.0, 300.0], 10.0),
            ([-300.0, 220.0, 300.0], 20.0),
            ([-300.0, 0.0, 530.0], 30.0),
        ],
    },
    // The round ends of a capsule reach half a diameter beyond its places, a cylinder's do not.
    Case {
        body: r#"kind = "capsule"
            from = "a"
            to = "b"
            diameter = "60 mm""#,
        places: &[("a", [0.0, -300.0, 200.0]), ("b", [0.0, 300.0, 200.0])],
        far: &[([0.0, 0.0, 240.0], 10.0), ([0.0, 350.0, 200.0], 20.0)],
    },
    Case {
        body: r#"kind = "cylinder"
            from = "a"
            to = "b"
            diameter = "60 mm""#,
        places: &[("a", [0.0, -300.0, 200.0]), ("b", [0.0, 300.0, 200.0])],
        far: &[([0.0, 0.0, 240.0], 10.0), ([0.0, 350.0, 200.0], 50.0)],
    },
    Case {
        body: r#"kind = "sphere"
            at = "a"
            diameter = "260 mm""#,
        places: &[("a", [1700.0, 0.0, 70.0])],
        far: &[([1700.0, 0.0, 210.0], 10.0), ([1700.0, 150.0, 70.0], 20.0)],
    },
    // An outline with a corner that goes in: the notch is free.
    Case {
        body: r#"kind = "outline"
            corners = ["a", "b", "c", "d", "e", "f"]
            depth = "50 mm"
            depth-goes = "down""#,
        places: &[
            ("a", [0.0, 0.0, 400.0]),
            ("b", [0.0, 300.0, 400.0]),
            ("c", [100.0, 300.0, 400.0]),
            ("d", [100.0, 100.0, 400.0]),
            ("e", [300.0, 100.0, 400.0]),
            ("f", [300.0, 0.0, 400.0]),
        ],
        far: &[
            ([50.0, 200.0, 380.0], 0.0),
            ([200.0, 50.0, 380.0], 0.0),
            ([110.0, 200.0, 380.0], 10.0),
            ([200.0, 120.0, 380.0], 20.0),
            ([50.0, 200.0, 320.0], 30.0),
            ([50.0, 200.0, 440.0], 40.0),
        ],
    },
    Case {
        body: r#"kind = "half-space"
            through = ["a", "b", "c"]
            keep-out = "above""#,
        places: &[
            ("a", [0.0, -400.0, 600.0]),
            ("b", [0.0, 400.0, 600.0]),
            ("c", [800.0, 0.0, 600.0]),
        ],
        far: &[([5000.0, 0.0, 700.0], 0.0), ([5000.0, 3000.0, 590.0], 10.0)],
    },
    Case {
        body: r#"kind = "ground"
            setup = "on its wheels""#,
        places: &[],
        far: &[([0.0, 0.0, -200.0], 0.0), ([900.0, 0.0, -140.0], 40.0)],
    },
];

fn kind_of(body: &str, places: &[(&str, [f64; 3])]) -> BodyKind {
    let points: String = places
        .iter()
        .map(|(name, _)| format!("[[point]]\nname = \"{name}\"\n"))
        .collect();
    let class = if body.contains("ground") {
        "ground"
    } else {
        "structure"
    };
    let text = format!(
        "format = \"tubewright-build/1\"\n{points}\n[[setup]]\nname = \"on its wheels\"\nstance = \"wheels\"\n\
         [[setup]]\nname = \"on stands\"\nstance = \"stands\"\n\
         [[body]]\nname = \"it\"\nclass = \"{class}\"\n{body}\n"
    );
    let read = tubewright_build::read(Texts {
        build: Some(&text),
        stock: None,
        shop: None,
    });
    read.model
        .build
        .body("it")
        .unwrap_or_else(|| panic!("{body}: {:?}", read.problems))
        .kind
        .clone()
}

fn places_of(list: &[(&str, [f64; 3])]) -> Places {
    let mut places = Places::default();
    for (index, (name, at)) in list.iter().enumerate() {
        let sigma = 1.0 + f64::from(u8::try_from(index).unwrap());
        let variance = sigma * sigma;
        let point = PlacedPoint {
            point_in_car: Point::from_array(*at),
            covariance: [
                [variance, 0.0, 0.0],
                [0.0, variance, 0.0],
                [0.0, 0.0, variance],
            ],
        };
        places.points.insert((*name).to_owned(), point);
    }
    for (name, is_on_wheels) in [("on its wheels", true), ("on stands", false)] {
        let floor = PlacedFloor {
            point_in_car: Point::new(0.0, 0.0, -180.0),
            up: UnitVector::Z,
            plumb: UnitVector::Z,
            sigma_mm: 1.5,
            is_on_wheels,
        };
        places.floors.insert(name.to_owned(), floor);
    }
    places
}

#[test]
fn every_kind_lands_where_its_places_say() {
    for case in CASES {
        let kind = kind_of(case.body, case.places);
        let shape = shape_of(&kind, &places_of(case.places)).unwrap();
        for (place, far) in case.far {
            let found = point_to_solid(Point::from_array(*place), &shape.solid_in_car);
            assert!(
                (found - far).abs() < 2e-3,
                "{}\n{place:?} is {found} mm away, should be {far}",
                case.body
            );
        }
        let expected = case.places.len().max(1);
        assert_eq!(shape.anchors.len(), expected, "{}", case.body);
    }
}

/// The ± of a body's surface is that of its least sure place, and each kind names all of its places.
#[test]
fn every_kind_inherits_its_plus_minus() {
    for case in CASES {
        let kind = kind_of(case.body, case.places);
        let shape = shape_of(&kind, &places_of(case.places)).unwrap();
        let up = Vector::new(0.0, 0.0, 1.0);
        let found = shape
            .anchors
            .iter()
            .map(|anchor| anchor.placed.sigma_along(up))
            .fold(0.0, f64::max);
        #[allow(clippy::cast_precision_loss, reason = "a handful of places")]
        let expected = if case.places.is_empty() {
            1.5
        } else {
            case.places.len() as f64
        };
        assert!((found - expected).abs() < 1e-9, "{}: {found}", case.body);
    }
}

fn refused(body: &str, places: &[(&str, [f64; 3])]) -> ShapeError {
    shape_of(&kind_of(body, places), &places_of(places)).unwrap_err()
}

const TUBE: &str = r#"kind = "cylinder"
    from = "a"
    to = "b"
    diameter = "60 mm""#;

#[test]
fn what_makes_no_body_is_refused_with_a_reason() {
    // Two places that a tape cannot tell apart give no direction.
    let near = refused(TUBE, &[("a", [0.0, 0.0, 0.0]), ("b", [5.0, 0.0, 0.0])]);
    assert!(matches!(near, ShapeError::TooNear(..)), "{near}");
    // Numbers that are none.
    let nowhere = refused(
        TUBE,
        &[("a", [0.0, 0.0, 0.0]), ("b", [900.0, f64::NAN, 0.0])],
    );
    assert!(!nowhere.to_string().is_empty());
    // Corners in the wrong order cross.
    let tank = r#"kind = "tank"
        corners = ["a", "b", "c", "d"]
        depth = "200 mm"
        depth-goes = "up""#;
    let crossed = refused(
        tank,
        &[
            ("a", [0.0, 0.0, 0.0]),
            ("b", [500.0, 400.0, 0.0]),
            ("c", [500.0, 0.0, 0.0]),
            ("d", [0.0, 300.0, 0.0]),
        ],
    );
    assert!(matches!(crossed, ShapeError::NoBody(_)), "{crossed}");
    assert!(crossed.to_string().contains("in order"), "{crossed}");
    // Three places in line span no plane.
    let plane = r#"kind = "half-space"
        through = ["a", "b", "c"]
        keep-out = "above""#;
    let line = refused(
        plane,
        &[
            ("a", [0.0, 0.0, 0.0]),
            ("b", [100.0, 0.0, 0.0]),
            ("c", [200.0, 0.0, 0.0]),
        ],
    );
    assert!(matches!(line, ShapeError::NoArea), "{line}");
    // A rail on the middle of the car has no outer edge.
    let rail = r#"kind = "rail"
        from = "a"
        to = "b"
        edge = "lower outer"
        width = "60 mm"
        height = "100 mm""#;
    let middle = refused(rail, &[("a", [0.0, 0.0, 0.0]), ("b", [900.0, 0.0, 0.0])]);
    assert!(matches!(middle, ShapeError::OnTheMiddle(_)), "{middle}");
}

/// The floor of a set-up on stands says nothing about ground clearance: the build is refused, and so is
/// the body if it comes so far.
#[test]
fn the_ground_comes_only_from_a_set_up_on_its_wheels() {
    let ground = "kind = \"ground\"\nsetup = \"on its wheels\"";
    let mut places = places_of(&[]);
    if let Some(floor) = places.floors.get_mut("on its wheels") {
        floor.is_on_wheels = false;
    }
    let error = shape_of(&kind_of(ground, &[]), &places).unwrap_err();
    assert!(matches!(error, ShapeError::NotOnWheels(_)), "{error}");
    let text = "format = \"tubewright-build/1\"\nname = \"it\"\n[[setup]]\nname = \"up\"\nstance = \"stands\"\n\
                [[body]]\nname = \"ground\"\nkind = \"ground\"\nclass = \"ground\"\nsetup = \"up\"\n";
    let read = tubewright_build::read(Texts {
        build: Some(text),
        stock: None,
        shop: None,
    });
    assert!(
        read.problems
            .iter()
            .any(|problem| problem.to_string().contains("wheels"))
    );
}
