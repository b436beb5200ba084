//! The shop drawing: true to scale, readable, the same bytes each time.

use proptest::prelude::*;
use tubewright_geometry::{Frame, OrientedBox, Point, Solid, TriangleMesh, UnitVector};
use tubewright_sheets::drawing::{Anchor, Item, Rect, Spot};
use tubewright_sheets::{
    Drawing, DrawnUnit, Paper, PieceKind, Scene, SceneBody, SceneMark, ScenePiece, SceneRun,
    ShopError, TitleBlock, ViewName, ViewSizes, one_view, three_views, to_svg,
};

/// One bend with two legs, a box and the ground.
fn small() -> Scene {
    let radius = 25.0;
    let start = Frame::upright(Point::new(0.0, 0.0, 100.0), UnitVector::X);
    let bend = start.advanced(80.0);
    let after = bend.bent(0.5, 75.0);
    let element = |line| tubewright_geometry::TubeElement { line, radius };
    let piece = ScenePiece {
        mark: "L1".to_owned(),
        joint: Some("J1".to_owned()),
        kind: PieceKind::Bend,
        name: None,
        elements: vec![
            element(tubewright_geometry::CentreLine::straight(&start, 80.0)),
            element(tubewright_geometry::CentreLine::bend(&bend, 0.5, 75.0)),
            element(tubewright_geometry::CentreLine::straight(&after, 60.0)),
        ],
        wall_mm: 1.5,
        frame_in: start,
        frame_out: after.advanced(60.0),
        outline: Vec::new(),
        cut_in: None,
        cut_out: None,
    };
    Scene {
        title: "One bend".to_owned(),
        bodies: vec![SceneBody {
            name: "box <A> & \"B\"".to_owned(),
            class_words: "structure".to_owned(),
            solid: Solid::Box(OrientedBox::axis_aligned(
                Point::new(100.0, 0.0, 220.0),
                [60.0, 30.0, 20.0],
            )),
            is_moving: false,
        }],
        runs: vec![SceneRun {
            name: "left bank".to_owned(),
            od_mm: 50.0,
            pieces: vec![piece],
            last_joint: None,
        }],
        marks: vec![SceneMark {
            name: "A left".to_owned(),
            at: Point::new(-20.0, 0.0, 60.0),
        }],
        ground_z_mm: Some(0.0),
        tight_places: Vec::new(),
        nameless: tubewright_sheets::Nameless::default(),
        unit: tubewright_sheets::DrawnUnit::default(),
    }
}

#[test]
fn side_view_of_one_bend() {
    let svg = to_svg(&one_view(&small(), ViewName::Side, 180.0).unwrap());
    insta::assert_snapshot!(svg);
}

#[test]
fn the_same_scene_gives_the_same_bytes() {
    let draw = || {
        to_svg(
            &three_views(
                &crate::common::estate(),
                &crate::common::title_block(),
                Paper::A3,
            )
            .unwrap(),
        )
    };
    assert!(draw() == draw());
}

#[test]
fn names_are_written_safely() {
    let svg = to_svg(&one_view(&small(), ViewName::Side, 180.0).unwrap());
    assert!(svg.contains("box &lt;A&gt; &amp; &quot;B&quot;"));
    assert!(!svg.contains("box <A>"));
}

fn items_of<'a>(drawing: &'a Drawing, layer_end: &str) -> Vec<&'a Item> {
    fn flat<'a>(items: &'a [Item], out: &mut Vec<&'a Item>) {
        for item in items {
            match item {
                Item::Group { items, .. } => flat(items, out),
                other => out.push(other),
            }
        }
    }
    let mut out = Vec::new();
    for layer in drawing
        .layers
        .iter()
        .filter(|l| l.name.ends_with(layer_end))
    {
        flat(&layer.items, &mut out);
    }
    out
}

fn upright_texts(drawing: &Drawing, layer_end: &str) -> Vec<(String, Rect)> {
    items_of(drawing, layer_end)
        .into_iter()
        .filter_map(|item| match item {
            Item::Text {
                at,
                text,
                lettering,
                turn_rad,
                ..
            } if turn_rad.abs() < 1e-9 => {
                let width = lettering.width_mm(text);
                let left = match lettering.anchor {
                    Anchor::Start => at.x,
                    Anchor::Middle => at.x - width / 2.0,
                    Anchor::End => at.x - width,
                };
                let height = 0.72 * lettering.size_mm;
                Some((text.clone(), Rect::new(left, at.y - height, width, height)))
            }
            _ => None,
        })
        .collect()
}

#[test]
fn no_name_lies_on_another() {
    for paper in [Paper::A3, Paper::LEDGER] {
        let drawing = three_views(
            &crate::common::estate(),
            &crate::common::title_block(),
            paper,
        )
        .unwrap();
        let texts = upright_texts(&drawing, "-names");
        assert!(texts.len() > 100, "only {} names", texts.len());
        let mut overlapping = Vec::new();
        for (i, (one, a)) in texts.iter().enumerate() {
            for (two, b) in &texts[i + 1..] {
                if a.overlap_mm2(*b) > 0.05 {
                    overlapping.push(format!("{one} on {two}"));
                }
            }
        }
        assert!(overlapping.is_empty(), "{overlapping:?}");
    }
}

#[test]
fn every_piece_and_every_joint_is_named_in_some_view() {
    let scene = crate::common::estate();
    let drawing = three_views(&scene, &crate::common::title_block(), Paper::A3).unwrap();
    let texts: Vec<String> = upright_texts(&drawing, "-names")
        .into_iter()
        .map(|t| t.0)
        .collect();
    for piece in scene.runs.iter().flat_map(|r| &r.pieces) {
        let mark = &piece.mark;
        assert!(
            texts
                .iter()
                .any(|t| t == mark || t.starts_with(&format!("{mark} "))),
            "{mark} is named nowhere"
        );
        let joint = piece.joint.as_ref().unwrap();
        assert!(texts.contains(joint), "{joint} is named nowhere");
    }
}

#[test]
fn everything_lies_on_the_sheet() {
    for paper in [Paper::A3, Paper::A4, Paper::LETTER, Paper::LEDGER] {
        let drawing = three_views(
            &crate::common::estate(),
            &crate::common::title_block(),
            paper,
        )
        .unwrap();
        for (text, rect) in upright_texts(&drawing, "") {
            assert!(
                drawing.sheet().encloses(rect),
                "{text:?} leaves the sheet: {rect:?}"
            );
        }
    }
}

/// Middles of the rings of datum marks.
fn rings(drawing: &Drawing) -> Vec<Spot> {
    items_of(drawing, "-marks")
        .into_iter()
        .filter_map(|item| match item {
            Item::Circle { centre, .. } => Some(*centre),
            _ => None,
        })
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]
    /// Two marks in a plane square to the eye are as far apart on the paper as in the car, at the
    /// scale that the width of the picture gives.
    #[test]
    fn distances_are_true_to_scale(x in 100.0..2000.0_f64, z in -300.0..300.0_f64) {
        let mark = |name: &str, at| SceneMark { name: name.to_owned(), at };
        let scene = Scene {
            marks: vec![
                mark("A", Point::new(0.0, 5.0, 0.0)),
                mark("B", Point::new(x, 5.0, z)),
            ],
            ..Scene::default()
        };
        let drawing = one_view(&scene, ViewName::Side, 200.0).unwrap();
        // 14 + 5 mm of the width are edges; the extent is 25 mm larger at each end.
        let scale = (200.0 - 19.0) / (x + 50.0);
        let found = rings(&drawing);
        prop_assert_eq!(found.len(), 2);
        let (true_mm, drawn_mm) = ((x * x + z * z).sqrt(), found[0].distance(found[1]) / scale);
        prop_assert!((true_mm - drawn_mm).abs() < 1e-6, "{true_mm} drawn as {drawn_mm}");
        // Rearwards is to the right, up is up.
        prop_assert!(found[1].x > found[0].x);
        prop_assert!((found[1].y < found[0].y) == (z > 0.0));
    }
}

#[test]
fn the_views_carry_across_the_sheet() {
    // Third-angle: equal x over each other, equal z beside each other.
    let scene = Scene {
        marks: vec![
            SceneMark {
                name: "A".to_owned(),
                at: Point::new(0.0, 0.0, 0.0),
            },
            SceneMark {
                name: "B".to_owned(),
                at: Point::new(900.0, 300.0, 200.0),
            },
        ],
        ..Scene::default()
    };
    let drawing = three_views(&scene, &TitleBlock::default(), Paper::A3).unwrap();
    let [above_a, above_b, side_a, side_b, behind_a, behind_b] = rings(&drawing)[..] else {
        panic!("six rings")
    };
    assert!((above_a.x - side_a.x).abs() < 1e-9 && (above_b.x - side_b.x).abs() < 1e-9);
    assert!((side_a.y - behind_a.y).abs() < 1e-9 && (side_b.y - behind_b.y).abs() < 1e-9);
    // The car's right is up from above, and to the right from behind.
    assert!(above_b.y < above_a.y && behind_b.x > behind_a.x);
}

#[test]
fn a_mesh_box_shows_where_the_box_does() {
    let b = OrientedBox::axis_aligned(Point::new(10.0, 20.0, 30.0), [100.0, 50.0, 40.0]);
    let faces: [[u32; 4]; 6] = [
        [0, 2, 3, 1],
        [4, 5, 7, 6],
        [0, 1, 5, 4],
        [2, 6, 7, 3],
        [0, 4, 6, 2],
        [1, 3, 7, 5],
    ];
    let triangles = faces
        .iter()
        .flat_map(|&[a, b, c, d]| [[a, b, c], [a, c, d]])
        .collect();
    let mesh = TriangleMesh::new(b.corners().to_vec(), triangles).unwrap();
    let extent = |solid: Solid| {
        let scene = Scene {
            bodies: vec![SceneBody {
                name: "b".to_owned(),
                class_words: "structure".to_owned(),
                solid,
                is_moving: false,
            }],
            ..Scene::default()
        };
        let drawing = one_view(&scene, ViewName::Above, 150.0).unwrap();
        let mut rect = Rect::EMPTY;
        let mut lines = 0;
        for item in items_of(&drawing, "-bodies") {
            if let Item::Polyline { spots, .. } | Item::Polygon { spots, .. } = item {
                rect = rect.joined(Rect::of(spots.iter().copied()));
                lines += 1;
            }
        }
        (rect, lines)
    };
    let (as_box, _) = extent(Solid::Box(b));
    let (as_mesh, lines) = extent(Solid::Mesh(std::sync::Arc::new(mesh)));
    assert!(as_box.min.distance(as_mesh.min) < 1e-9 && as_box.max.distance(as_mesh.max) < 1e-9);
    // The four silhouette edges and the diagonal of no face.
    assert!(lines == 4, "{lines} edges of a cube seen square-on");
}

#[test]
fn what_cannot_be_drawn_is_refused_with_its_name() {
    let draw = |scene: &Scene| three_views(scene, &TitleBlock::default(), Paper::A4);
    assert_eq!(draw(&Scene::default()), Err(ShopError::NothingToDraw));
    let mut bad = small();
    bad.marks[0].at.z = f64::NAN;
    assert_eq!(
        draw(&bad),
        Err(ShopError::NotFinite {
            what: "mark A left".to_owned()
        })
    );
    let mut far = small();
    far.marks[0].at.x = 1.0e6;
    let error = draw(&far).unwrap_err();
    assert!(matches!(error, ShopError::PaperTooSmall { .. }), "{error}");
}

/// On an inch job every figure of the grid is a round one of inches, and it stands where it says: x 10 is
/// 254 mm from x 0 at the drawing's scale.
#[test]
fn the_grid_is_lettered_in_the_unit_of_the_job() {
    let scene = Scene {
        unit: DrawnUnit::Inches,
        ..crate::common::estate()
    };
    let drawing = one_view(&scene, ViewName::Side, 180.0).unwrap();
    let texts = upright_texts(&drawing, "side-grid");
    let along: Vec<(f64, f64)> = texts
        .iter()
        .filter_map(|(words, rect)| {
            let figure = words.strip_prefix("x ")?.parse::<f64>().ok()?;
            Some((figure, rect.centre().x))
        })
        .collect();
    assert!(along.len() > 3, "{texts:?}");
    let metric = one_view(&crate::common::estate(), ViewName::Side, 180.0).unwrap();
    let metric: Vec<(f64, f64)> = upright_texts(&metric, "side-grid")
        .iter()
        .filter_map(|(words, rect)| {
            let figure = words.strip_prefix("x ")?.parse::<f64>().ok()?;
            Some((figure, rect.centre().x))
        })
        .collect();
    let paper_per_unit =
        |spots: &[(f64, f64)]| (spots[1].1 - spots[0].1) / (spots[1].0 - spots[0].0);
    let ratio = paper_per_unit(&along) / paper_per_unit(&metric);
    assert!((ratio - 25.4).abs() < 1e-3, "{ratio}");
    for (inches, _) in along {
        assert!((inches - inches.round()).abs() < 1e-9, "{inches} in");
    }
    let sheet = to_svg(&three_views(&scene, &crate::common::title_block(), Paper::A3).unwrap());
    for words in ["gap in", "wants in", " in</text>"] {
        assert!(sheet.contains(words), "{words} is not on the sheet");
    }
    assert!(!sheet.contains("gap mm") && !sheet.contains(" mm</text>"));
}

/// The height that is told without drawing is that of the drawing.
#[test]
fn a_view_is_as_high_as_it_was_said_to_be() {
    let scene = crate::common::estate();
    let sizes = ViewSizes::of(&scene).unwrap();
    for name in [ViewName::Side, ViewName::Above, ViewName::Behind] {
        for width_mm in [60.0, 184.0] {
            let said = sizes.height_mm(name, width_mm).unwrap();
            let drawn = one_view(&scene, name, width_mm).unwrap().height_mm;
            assert!((said - drawn).abs() < 1e-9, "{said} {drawn}");
        }
    }
    assert!(sizes.height_mm(ViewName::Side, 30.0).is_err());
}
