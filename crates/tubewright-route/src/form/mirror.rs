//! The JSON as written, key by key. Never passed inward.

use std::collections::BTreeMap;

use serde::Deserialize;
use serde_json::Value;

pub(super) type Triple = [f64; 3];

#[derive(Deserialize)]
pub(super) struct Problem {
    pub(super) form: String,
    pub(super) id: String,
    pub(super) tubes: BTreeMap<String, Tube>,
    pub(super) rules: Rules,
    pub(super) cost: Cost,
    pub(super) gaps: BTreeMap<String, f64>,
    pub(super) workspace: Region,
    pub(super) obstacles: Vec<Value>,
    pub(super) components: BTreeMap<String, Component>,
    pub(super) crossovers: Vec<Crossover>,
    pub(super) runs: Vec<Run>,
}

#[derive(Deserialize)]
pub(super) struct Tube {
    pub(super) od: f64,
    pub(super) wall: f64,
    pub(super) clr: f64,
    pub(super) stock_angles: Vec<f64>,
    pub(super) stock_price: BTreeMap<String, f64>,
    pub(super) straight_price_per_m: f64,
}

#[derive(Deserialize)]
pub(super) struct Rules {
    pub(super) min_straight: f64,
    pub(super) min_bend_angle: f64,
    pub(super) max_bends: f64,
    pub(super) pos_tol: f64,
    pub(super) dir_tol: f64,
    pub(super) self_gap: f64,
    pub(super) run_gap: f64,
}

#[derive(Deserialize)]
pub(super) struct Cost {
    pub(super) weld: f64,
    pub(super) cut: f64,
    pub(super) per_degree: f64,
    pub(super) per_metre: f64,
}

#[derive(Deserialize)]
pub(super) struct Region {
    pub(super) min: Triple,
    pub(super) max: Triple,
}

#[derive(Deserialize)]
pub(super) struct Component {
    pub(super) length: f64,
    pub(super) shape: String,
    pub(super) diameter: Option<f64>,
    pub(super) width: Option<f64>,
    pub(super) height: Option<f64>,
    pub(super) zone: Option<Region>,
}

#[derive(Deserialize)]
pub(super) struct Bar {
    pub(super) a: Triple,
    pub(super) b: Triple,
    pub(super) r: f64,
}

#[derive(Deserialize)]
pub(super) struct Port {
    pub(super) point: Triple,
    pub(super) dir: Triple,
}

#[derive(Deserialize)]
pub(super) struct Ports {
    pub(super) inlet: Port,
    pub(super) outlet: Port,
}

#[derive(Deserialize)]
pub(super) struct Sides {
    #[serde(rename = "L")]
    pub(super) left: Ports,
    #[serde(rename = "R")]
    pub(super) right: Ports,
}

#[derive(Deserialize)]
pub(super) struct Crossover {
    pub(super) id: String,
    pub(super) pose_min: Triple,
    pub(super) pose_max: Triple,
    pub(super) body: Vec<Bar>,
    pub(super) ports: Sides,
}

#[derive(Deserialize)]
pub(super) struct Start {
    pub(super) point: Triple,
    pub(super) dir: Triple,
    pub(super) up: Triple,
}

#[derive(Deserialize)]
pub(super) struct Run {
    pub(super) id: String,
    pub(super) tube: String,
    pub(super) start: Start,
    pub(super) end: Port,
    #[serde(default)]
    pub(super) components: Vec<String>,
    pub(super) crossover: Option<String>,
    pub(super) side: Option<String>,
}

/// One body, or a member of an envelope.
#[derive(Deserialize)]
pub(super) struct Obstacle {
    pub(super) id: Option<String>,
    pub(super) class: Option<String>,
    #[serde(flatten)]
    pub(super) shape: Shape,
}

#[derive(Deserialize)]
#[serde(tag = "type", rename_all = "lowercase")]
pub(super) enum Shape {
    Box {
        center: Triple,
        half: Triple,
        axes: Option<[Triple; 3]>,
    },
    Capsule {
        a: Triple,
        b: Triple,
        r: f64,
    },
    Cylinder {
        a: Triple,
        b: Triple,
        r: f64,
    },
    Mesh {
        vertices: Vec<Triple>,
        faces: Vec<[u32; 3]>,
    },
    Ground {
        z: f64,
        min_clearance: f64,
    },
    Envelope {
        of: Vec<Shape>,
    },
}
