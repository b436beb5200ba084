//! The true places of the demonstration builds, and the builds beside them.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use toml::{Table, Value};
use tubewright_build::Texts;
use tubewright_build::model::{BodyKind, Model};
use tubewright_build::quantity::parse_length;
use tubewright_geometry::{Frame, Length, Point, UnitVector, Vector};

/// One demonstration build with the truth that its readings were made from.
pub(crate) struct Demonstration {
    pub(crate) model: Model,
    pub(crate) scans: BTreeMap<String, Vec<u8>>,
    pub(crate) truth: Truth,
}

/// In the car's axes, mm.
pub(crate) struct Truth {
    pub(crate) places: BTreeMap<String, Point>,
    pub(crate) ends: BTreeMap<String, Frame>,
    /// Up and offset (`up · place`) of each floor; the plumb line is square to it.
    pub(crate) floors: BTreeMap<String, (UnitVector, f64)>,
    pub(crate) slips: Vec<Slip>,
}

/// A slip that was planted.
pub(crate) struct Slip {
    pub(crate) reading: u32,
    pub(crate) should_read: Length,
    /// The mark that the tape was held to instead.
    pub(crate) taken_from: Option<String>,
}

pub(crate) const SLUGS: [&str; 3] = ["estate-v6", "kitcar-mid4", "pickup-six"];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

pub(crate) fn demonstration(slug: &'static str) -> Demonstration {
    let folder = root().join("builds").join(slug);
    let text = |name: &str| std::fs::read_to_string(folder.join(name)).unwrap();
    let (build, stock, shop) = (text("build.toml"), text("stock.toml"), text("shop.toml"));
    let read = tubewright_build::read(Texts {
        build: Some(&build),
        stock: Some(&stock),
        shop: Some(&shop),
    });
    assert!(read.problems.is_empty(), "{slug}: {:?}", read.problems);
    let scans = read
        .model
        .build
        .bodies
        .iter()
        .filter_map(|body| match &body.kind {
            BodyKind::Scan { file, .. } => {
                Some((file.clone(), std::fs::read(folder.join(file)).unwrap()))
            }
            _ => None,
        })
        .collect();
    Demonstration {
        model: read.model,
        scans,
        truth: truth(slug),
    }
}

fn truth(slug: &str) -> Truth {
    let path = root().join(format!("tests/truth/{slug}.toml"));
    let table: Table = std::fs::read_to_string(path).unwrap().parse().unwrap();
    let list = |key: &str| table[key].as_array().unwrap().clone();
    let name = |v: &Value| v["name"].as_str().unwrap().to_owned();
    Truth {
        places: list("place")
            .iter()
            .map(|v| (name(v), point(&v["at"])))
            .collect(),
        ends: list("end")
            .iter()
            .map(|v| {
                let frame = Frame::upright(point(&v["centre"]), unit(&v["travel"]));
                (name(v), frame)
            })
            .collect(),
        floors: list("setup")
            .iter()
            .map(|v| (name(v), (unit(&v["up"]), v["offset"].as_float().unwrap())))
            .collect(),
        slips: list("slip")
            .iter()
            .map(|v| Slip {
                reading: u32::try_from(v["reading"].as_integer().unwrap()).unwrap(),
                should_read: parse_length(v["should-read"].as_str().unwrap()).unwrap(),
                taken_from: v["slip"]
                    .as_str()
                    .unwrap()
                    .strip_prefix("measured from ")
                    .map(str::to_owned),
            })
            .collect(),
    }
}

fn point(v: &Value) -> Point {
    let n: Vec<f64> = v
        .as_array()
        .unwrap()
        .iter()
        .map(|n| n.as_float().unwrap())
        .collect();
    Point::new(n[0], n[1], n[2])
}

fn unit(v: &Value) -> UnitVector {
    let p = point(v);
    Vector::new(p.x, p.y, p.z).direction().unwrap()
}
