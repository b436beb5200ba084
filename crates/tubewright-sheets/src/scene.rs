//! What is drawn: bodies, runs of marked pieces, marks and tight places, in the car's frame.
//!
//! The scene is this crate's own input. Whoever has a plan turns it into one; nothing here knows a
//! build file or a solver.

use tubewright_geometry::{Frame, Point, Solid, TubeElement, UnitVector};

/// Everything that the pictures of one job show. Millimetres in the car's frame: x rearwards, y to
/// the car's right, z up.
#[derive(Clone, Debug, Default)]
pub struct Scene {
    /// Name of the build.
    pub title: String,
    /// What the runs keep clear of.
    pub bodies: Vec<SceneBody>,
    /// The runs, each a chain of pieces.
    pub runs: Vec<SceneRun>,
    /// Datum marks.
    pub marks: Vec<SceneMark>,
    /// Height of the ground in mm along z, when it is known.
    pub ground_z_mm: Option<f64>,
    /// The tightest places, the tightest first.
    pub tight_places: Vec<TightPlace>,
    /// What is drawn without its name, so that the others can be read.
    pub nameless: Nameless,
    /// What lengths are written in: the grid, the scale bar, the gaps.
    pub unit: DrawnUnit,
}

/// What lengths are written in on a picture.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum DrawnUnit {
    /// Millimetres.
    #[default]
    Millimetres,
    /// Inches.
    Inches,
}

impl DrawnUnit {
    /// Its length in mm (the inch exact, by the international yard of 1959).
    pub(crate) const fn mm(self) -> f64 {
        match self {
            Self::Millimetres => 1.0,
            Self::Inches => 25.4,
        }
    }

    /// Its sign.
    pub(crate) const fn sign(self) -> &'static str {
        match self {
            Self::Millimetres => "mm",
            Self::Inches => "in",
        }
    }

    /// Steps of a grid or of a scale bar that are read at a glance, in this unit, ascending.
    pub(crate) const fn steps(self) -> &'static [f64] {
        match self {
            Self::Millimetres => &[
                10.0, 20.0, 50.0, 100.0, 200.0, 250.0, 500.0, 1000.0, 2000.0, 5000.0,
            ],
            Self::Inches => &[0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0],
        }
    }

    /// The least step, in mm of the car, that is at least `least_mm` long on paper.
    pub(crate) fn step_mm(self, scale: f64, least_mm: f64) -> f64 {
        let steps = self.steps().iter().map(|step| step * self.mm());
        let mut last_mm = self.mm();
        for step_mm in steps {
            last_mm = step_mm;
            if step_mm * scale >= least_mm {
                break;
            }
        }
        last_mm
    }
}

/// What of a scene is drawn without its name.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Nameless {
    /// Straights and bends.
    pub tubes: bool,
    /// Joints.
    pub joints: bool,
}

/// A body in the way.
#[derive(Clone, Debug)]
pub struct SceneBody {
    /// Its name in the build.
    pub name: String,
    /// Its class in words of the trade ("driveline", "fuel or brake line").
    pub class_words: String,
    /// Its shape.
    pub solid: Solid,
    /// True when it moves against the chassis (axle, wheel, engine).
    pub is_moving: bool,
}

/// A chain of pieces, downstream.
#[derive(Clone, Debug)]
pub struct SceneRun {
    /// Its name in the build.
    pub name: String,
    /// Outer diameter of its tube in mm.
    pub od_mm: f64,
    /// Pieces in order of travel.
    pub pieces: Vec<ScenePiece>,
    /// Mark of the joint at its end, where it has one of its own.
    pub last_joint: Option<String>,
}

/// What a piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PieceKind {
    /// A length of straight tube.
    Straight,
    /// A bend, with whatever legs were left on it.
    Bend,
    /// A flex section.
    Flex,
    /// A catalyst.
    Catalyst,
    /// A resonator.
    Resonator,
    /// A silencer.
    Silencer,
    /// Any other bought part with a body of its own.
    Component,
    /// A part that both banks pass through.
    Crossover,
}

impl PieceKind {
    /// What each of several solids of one piece is called.
    pub(crate) const fn part_word(self) -> &'static str {
        match self {
            Self::Straight => "half",
            _ => "arm",
        }
    }
}

/// One piece that is cut or bought and carries a mark.
#[derive(Clone, Debug)]
pub struct ScenePiece {
    /// The mark painted on it (`L3`).
    pub mark: String,
    /// The joint at its upstream end (`J4`); none at an open end.
    pub joint: Option<String>,
    /// What it is.
    pub kind: PieceKind,
    /// Name to write on it, for a component or crossover.
    pub name: Option<String>,
    /// Its tube along the centre line, upstream first: a bend with legs is straight, arc, straight.
    /// A crossover has its arms here.
    pub elements: Vec<TubeElement>,
    /// Wall of its tube in mm.
    pub wall_mm: f64,
    /// Where it begins: on the centre line, travelling downstream.
    pub frame_in: Frame,
    /// Where it ends.
    pub frame_out: Frame,
    /// The body of a component, apart from its necks.
    pub outline: Vec<Solid>,
    /// Direction square to the cut face at the upstream end, pointing downstream; none when the end
    /// is cut square.
    pub cut_in: Option<UnitVector>,
    /// The same at the downstream end.
    pub cut_out: Option<UnitVector>,
}

/// A datum mark.
#[derive(Clone, Debug, PartialEq)]
pub struct SceneMark {
    /// Its name in the build.
    pub name: String,
    /// Where it is.
    pub at: Point,
}

/// A place where there is little room.
#[derive(Clone, Debug, PartialEq)]
pub struct TightPlace {
    /// Which run or piece.
    pub piece: String,
    /// Which body.
    pub body: String,
    /// Where, on the surface of the tube.
    pub at: Point,
    /// The gap in mm.
    pub gap_mm: f64,
    /// How well it is known, 19 times in 20, in mm; none when not worked out.
    pub plus_minus_mm: Option<f64>,
    /// The gap that is asked for, in mm.
    pub wanted_mm: f64,
}
