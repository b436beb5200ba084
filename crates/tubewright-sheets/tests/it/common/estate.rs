//! A scene by hand: two banks under an invented estate, from `tests/data/estate.toml`.

use tubewright_geometry::{
    CentreLine, Frame, OrientedBox, Point, Prism, Solid, TubeElement, UnitVector, Vector,
};
use tubewright_sheets::{
    Nameless, PieceKind, Scene, SceneBody, SceneMark, ScenePiece, SceneRun, TightPlace, TitleBlock,
};

const DATA: &str = include_str!("../../data/estate.toml");
const WALL_MM: f64 = 1.5;

pub(crate) fn title_block() -> TitleBlock {
    TitleBlock {
        build: "Estate, V6 set back".to_owned(),
        sheet_name: "Both banks, three views".to_owned(),
        plan_hash: "3f9c 07d2 a1".to_owned(),
        date: "2026-03-14".to_owned(),
        sheet: Some("1 of 1".to_owned()),
        note: Some("Invented for demonstration: no such car exists. Hang, heat and clearance are on the checks board, not in this picture.".to_owned()),
    }
}

pub(crate) fn estate() -> Scene {
    let data: toml::Table = DATA.parse().expect("the test data is TOML");
    let runs = data["run"].as_array().expect("runs");
    let mut joints = 0;
    let mut walk = |mark: &str, name: &str, first: usize, second: usize, crossover: bool| {
        let mut pieces = Vec::new();
        for (half, index) in [first, second].into_iter().enumerate() {
            let run = runs[index].as_table().expect("a run");
            let corners: Vec<Point> = run["vertices"]
                .as_array()
                .expect("vertices")
                .iter()
                .map(|v| {
                    let c: Vec<f64> = v
                        .as_array()
                        .unwrap()
                        .iter()
                        .map(|n| n.as_float().unwrap())
                        .collect();
                    Point::new(c[0], c[1], c[2])
                })
                .collect();
            let mut frame =
                Frame::upright(corners[0], (corners[1] - corners[0]).direction().unwrap());
            if half == 1 && crossover {
                joints += 1;
                pieces.push(crossover_piece(
                    &format!("{mark}{}", pieces.len() + 1),
                    format!("J{joints}"),
                ));
            }
            for row in run["pieces"].as_array().expect("pieces") {
                joints += 1;
                let piece = piece(
                    row.as_table().unwrap(),
                    &mut frame,
                    format!("{mark}{}", pieces.len() + 1),
                    format!("J{joints}"),
                );
                pieces.push(piece);
            }
            assert!(
                frame.origin.distance(*corners.last().unwrap()) < 1e-3,
                "{name} does not close"
            );
        }
        SceneRun {
            name: name.to_owned(),
            od_mm: 57.0,
            pieces,
            last_joint: None,
        }
    };
    let left = walk("L", "left bank", 0, 1, true);
    let right = walk("R", "right bank", 2, 3, false);
    let marks = data["mark"]
        .as_array()
        .expect("marks")
        .iter()
        .map(|m| {
            let at: Vec<f64> = m["at"]
                .as_array()
                .unwrap()
                .iter()
                .map(|n| n.as_float().unwrap())
                .collect();
            SceneMark {
                name: m["name"].as_str().unwrap().to_owned(),
                at: Point::new(at[0], at[1], at[2]),
            }
        })
        .collect();
    Scene {
        title: "Estate, V6 set back".to_owned(),
        bodies: bodies(),
        runs: vec![left, right],
        marks,
        ground_z_mm: Some(-235.0),
        tight_places: tight_places(),
        nameless: Nameless::default(),
        unit: tubewright_sheets::DrawnUnit::default(),
    }
}

fn piece(row: &toml::Table, frame: &mut Frame, mark: String, joint: String) -> ScenePiece {
    let radius = 28.5;
    let number = |key: &str| row[key].as_float().unwrap();
    let start = *frame;
    let kind_word = row["type"].as_str().unwrap();
    let mut name = None;
    let mut outline = Vec::new();
    let (kind, element) = match kind_word {
        "bend" => {
            let rolled = frame.rolled(number("clock-deg").to_radians());
            let angle = number("angle-deg").to_radians();
            *frame = rolled.bent(angle, 85.5);
            let element = TubeElement {
                line: CentreLine::bend(&rolled, angle, 85.5),
                radius,
            };
            (PieceKind::Bend, element)
        }
        _ => {
            let length = number("length-mm");
            *frame = frame.advanced(length);
            let element = TubeElement {
                line: CentreLine::straight(&start, length),
                radius,
            };
            let mut kind = PieceKind::Straight;
            if kind_word == "component" {
                let called = row["name"].as_str().unwrap();
                let (of_kind, diameter, neck) = match called.split(' ').next().unwrap() {
                    "flex" => (PieceKind::Flex, 76.0, 25.0),
                    "cat" => (PieceKind::Catalyst, 110.0, 40.0),
                    "resonator" => (PieceKind::Resonator, 100.0, 40.0),
                    _ => (PieceKind::Silencer, 130.0, 45.0),
                };
                kind = of_kind;
                name = Some(called.to_owned());
                outline.push(Solid::Cylinder {
                    a: start.advanced(neck).origin,
                    b: start.advanced(length - neck).origin,
                    radius: diameter / 2.0,
                });
            }
            (kind, element)
        }
    };
    ScenePiece {
        mark,
        joint: Some(joint),
        kind,
        name,
        elements: vec![element],
        wall_mm: WALL_MM,
        frame_in: start,
        frame_out: *frame,
        outline,
        cut_in: None,
        cut_out: None,
    }
}

fn crossover_piece(mark: &str, joint: String) -> ScenePiece {
    let centre = Point::new(690.0, 0.0, -30.0);
    let elements = [(570.0, -60.0), (570.0, 60.0), (810.0, -60.0), (810.0, 60.0)]
        .map(|(x, y)| {
            let end = Point::new(x, y, -30.0);
            let (a, b) = if x < 690.0 {
                (end, centre)
            } else {
                (centre, end)
            };
            TubeElement {
                line: CentreLine::Segment { a, b },
                radius: 28.5,
            }
        })
        .to_vec();
    ScenePiece {
        mark: mark.to_owned(),
        joint: Some(joint),
        kind: PieceKind::Crossover,
        name: Some("X".to_owned()),
        elements,
        wall_mm: WALL_MM,
        frame_in: Frame::upright(
            Point::new(570.0, -60.0, -30.0),
            Vector::new(120.0, 60.0, 0.0).direction().unwrap(),
        ),
        frame_out: Frame::upright(
            Point::new(810.0, -60.0, -30.0),
            Vector::new(120.0, -60.0, 0.0).direction().unwrap(),
        ),
        outline: Vec::new(),
        cut_in: None,
        cut_out: None,
    }
}

fn bodies() -> Vec<SceneBody> {
    let boxed = |lo: [f64; 3], hi: [f64; 3]| {
        let half = [0, 1, 2].map(|i: usize| 0.5 * (hi[i] - lo[i]).abs());
        let centre = [0, 1, 2].map(|i: usize| 0.5 * (hi[i] + lo[i]));
        Solid::Box(OrientedBox::axis_aligned(Point::from_array(centre), half))
    };
    let body = |name: &str, class_words: &str, solid: Solid, is_moving: bool| SceneBody {
        name: name.to_owned(),
        class_words: class_words.to_owned(),
        solid,
        is_moving,
    };
    let capsule = |a: [f64; 3], b: [f64; 3], radius: f64| Solid::Capsule {
        a: Point::from_array(a),
        b: Point::from_array(b),
        radius,
    };
    let tyre = |y0: f64, y1: f64| Solid::Cylinder {
        a: Point::new(1740.0, y0, 66.0),
        b: Point::new(1740.0, y1, 66.0),
        radius: 317.0,
    };
    let gusset = Prism {
        origin: Point::new(1190.0, -30.0, 330.0),
        u: UnitVector::X,
        v: UnitVector::Z,
        outline: vec![[0.0, 0.0], [180.0, 0.0], [180.0, 60.0], [60.0, 60.0]],
        depth: 60.0,
    };
    vec![
        body(
            "left rail",
            "structure",
            boxed([0.0, -450.0, 0.0], [1190.0, -390.0, 90.0]),
            false,
        ),
        body(
            "right rail",
            "structure",
            boxed([0.0, 390.0, 0.0], [1190.0, 450.0, 90.0]),
            false,
        ),
        body(
            "propshaft",
            "driveline",
            capsule([322.0, 0.0, 165.0], [1650.0, 2.0, 67.0], 38.0),
            false,
        ),
        body(
            "gearbox",
            "driveline",
            boxed([-330.0, -118.0, 27.0], [288.0, 121.0, 270.0]),
            true,
        ),
        body(
            "left floor pan",
            "floor",
            boxed([-38.0, -640.0, 87.0], [1230.0, -186.0, 117.0]),
            false,
        ),
        body(
            "right floor pan",
            "floor",
            boxed([-40.0, 187.0, 86.0], [1232.0, 641.0, 117.0]),
            false,
        ),
        body(
            "boot floor",
            "floor",
            Solid::HalfSpace {
                point: Point::new(1500.0, 0.0, 376.0),
                outward: -UnitVector::Z,
            },
            false,
        ),
        body(
            "fuel tank",
            "fuel or brake line",
            boxed([2250.0, -205.0, 100.0], [2702.0, 203.0, 298.0]),
            false,
        ),
        body(
            "left rear tyre",
            "tyre",
            tyre(-738.0 - 25.0, -738.0 + 170.0),
            true,
        ),
        body(
            "right rear tyre",
            "tyre",
            tyre(739.0 - 170.0, 739.0 + 25.0),
            true,
        ),
        body(
            "axle tube",
            "moving",
            capsule([1740.0, -738.0, 66.0], [1742.0, 739.0, 65.0], 45.0),
            true,
        ),
        body(
            "differential",
            "driveline",
            Solid::Sphere {
                centre: Point::new(1730.0, 4.0, 66.0),
                radius: 125.0,
            },
            true,
        ),
        body(
            "panhard rod",
            "moving",
            capsule([1880.0, 470.0, 110.0], [1872.0, -440.0, 65.0], 15.0),
            true,
        ),
        body("seat bracket", "structure", Solid::Prism(gusset), false),
    ]
}

fn tight_places() -> Vec<TightPlace> {
    let place = |piece: &str, body: &str, at: [f64; 3], gap_mm: f64, wanted_mm: f64| TightPlace {
        piece: piece.to_owned(),
        body: body.to_owned(),
        at: Point::from_array(at),
        gap_mm,
        plus_minus_mm: Some(6.0),
        wanted_mm,
    };
    vec![
        place("L17", "axle tube", [1740.0, -250.0, 256.0], 146.0, 25.0),
        place("R21", "fuel tank", [2250.0, 405.0, 110.0], 181.0, 75.0),
        place("L5", "left floor pan", [60.0, -250.0, 25.0], 62.0, 20.0),
    ]
}
