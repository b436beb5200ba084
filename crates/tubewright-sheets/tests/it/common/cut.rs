//! Pieces with legs and slanting cuts.

use tubewright_geometry::{CentreLine, Frame, Point, TubeElement, UnitVector, Vector};
use tubewright_sheets::{PieceKind, Scene, ScenePiece, SceneRun};

/// `C1`: a straight of 63.5 by 1.6 mm, 200 mm long on the centre line, cut square at the start and at
/// 15° at the end. `C2`: both ends slanting, in planes turned a quarter. `C3`: a bend of 60° at
/// 95 mm with legs of 40 and 55 mm.
pub(crate) fn cut_pieces() -> Scene {
    let radius = 31.75;
    let piece = |mark: &str,
                 frame: Frame,
                 out: Frame,
                 elements: Vec<CentreLine>,
                 cuts: [Option<UnitVector>; 2]| ScenePiece {
        mark: mark.to_owned(),
        joint: None,
        kind: PieceKind::Straight,
        name: None,
        elements: elements
            .into_iter()
            .map(|line| TubeElement { line, radius })
            .collect(),
        wall_mm: 1.6,
        frame_in: frame,
        frame_out: out,
        outline: Vec::new(),
        cut_in: cuts[0],
        cut_out: cuts[1],
    };
    let slant = |frame: &Frame, clock: f64, degrees: f64| {
        let axis = frame.at_clock(clock);
        Some(frame.travel().rotated_about(axis, f64::to_radians(degrees)))
    };
    let travel = Vector::new(3.0, 1.0, -0.5).direction().unwrap();
    let f1 = Frame::upright(Point::new(10.0, 20.0, 30.0), travel);
    let f2 = Frame::upright(Point::new(10.0, 320.0, 30.0), travel);
    let f3 = Frame::upright(Point::new(10.0, 620.0, 30.0), travel);
    let bend = f3.advanced(40.0);
    let after = bend.bent(f64::to_radians(60.0), 95.0);
    let pieces = vec![
        piece(
            "C1",
            f1,
            f1.advanced(200.0),
            vec![CentreLine::straight(&f1, 200.0)],
            [None, slant(&f1, 0.3, 15.0)],
        ),
        piece(
            "C2",
            f2,
            f2.advanced(200.0),
            vec![CentreLine::straight(&f2, 200.0)],
            [slant(&f2, 0.0, -20.0), slant(&f2, 1.57, 30.0)],
        ),
        piece(
            "C3",
            f3,
            after.advanced(55.0),
            vec![
                CentreLine::straight(&f3, 40.0),
                CentreLine::bend(&bend, f64::to_radians(60.0), 95.0),
                CentreLine::straight(&after, 55.0),
            ],
            [None, None],
        ),
    ];
    Scene {
        title: "Cut pieces".to_owned(),
        runs: vec![SceneRun {
            name: "pieces".to_owned(),
            od_mm: 63.5,
            pieces,
            last_joint: None,
        }],
        ..Scene::default()
    }
}
