//! Bodies as shapes, for the view in the round.

use serde::Serialize;
use ts_rs::TS;

/// A body in the round.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct SolidView {
    /// Its name.
    pub name: String,
    /// Its class in words.
    pub class: String,
    /// Gap that runs keep from it, mm.
    pub gap: f64,
    /// Its shapes at rest.
    pub shapes: Vec<ShapeView>,
    /// How it moves, nearest to the body first.
    pub freedoms: Vec<FreedomView>,
}

/// A simple shape, in the car's axes, mm.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase", tag = "kind")]
pub enum ShapeView {
    /// A box.
    Box {
        /// Centre.
        centre: [f64; 3],
        /// Three directions.
        axes: [[f64; 3]; 3],
        /// Half the size along each.
        half: [f64; 3],
    },
    /// A round bar.
    #[serde(rename_all = "camelCase")]
    Bar {
        /// One end of its axis.
        a: [f64; 3],
        /// The other.
        b: [f64; 3],
        /// Radius.
        radius: f64,
        /// True when its ends are round.
        is_round: bool,
    },
    /// A ball.
    Ball {
        /// Centre.
        centre: [f64; 3],
        /// Radius.
        radius: f64,
    },
    /// An outline, extruded.
    Prism {
        /// Corners of one face, in order.
        corners: Vec<[f64; 3]>,
        /// From there to the other face.
        depth: [f64; 3],
    },
    /// Everything beyond a plane.
    Plane {
        /// A place on it.
        at: [f64; 3],
        /// Out of what is taken.
        outward: [f64; 3],
    },
    /// Triangles of a scan, thinned where there are too many for a picture: three corners of three
    /// coordinates each, one after the other, whole millimetres.
    Triangles {
        /// The coordinates.
        corners: Vec<i32>,
        /// How many there are in the scan.
        of: u32,
    },
    /// Places of a scan, thinned, whole millimetres.
    Places {
        /// Three coordinates each, one after the other.
        places: Vec<i32>,
    },
}

/// One way that a body moves.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase", tag = "kind")]
pub enum FreedomView {
    /// Along a direction.
    Shift {
        /// The direction.
        along: [f64; 3],
        /// Least and most, mm.
        range: [f64; 2],
    },
    /// About an axis, right-handed.
    Turn {
        /// A place on the axis.
        at: [f64; 3],
        /// Its direction.
        axis: [f64; 3],
        /// Least and most, degrees.
        range: [f64; 2],
    },
    /// Any way, up to a distance.
    Sway {
        /// The distance, mm.
        most: f64,
    },
}
