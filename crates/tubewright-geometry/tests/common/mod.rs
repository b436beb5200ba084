//! Reading the published checks, and comparing numbers so that a failure names the source.
#![allow(
    dead_code,
    clippy::expect_used,
    clippy::panic,
    reason = "test support: each file uses its own part, and a broken data file may stop the test"
)]

use toml::{Table, Value};
use tubewright_geometry::{Point, UnitVector, Vector};

/// One published value with its inputs.
pub(crate) struct Check {
    table: Table,
}

/// The check of this id in a data file.
pub(crate) fn check(data: &str, id: &str) -> Check {
    let file: Table = data.parse().expect("the data file is TOML");
    let table = file["check"]
        .as_array()
        .expect("a list of checks")
        .iter()
        .filter_map(Value::as_table)
        .find(|t| t["id"].as_str() == Some(id))
        .unwrap_or_else(|| panic!("no check {id}"))
        .clone();
    Check { table }
}

/// Every id of a data file.
pub(crate) fn ids(data: &str) -> Vec<String> {
    let file: Table = data.parse().expect("the data file is TOML");
    file["check"]
        .as_array()
        .expect("a list of checks")
        .iter()
        .map(|c| c["id"].as_str().expect("an id").to_owned())
        .collect()
}

pub(crate) fn number(value: &Value) -> f64 {
    value
        .as_float()
        .or_else(|| value.as_integer().map(|i| i as f64))
        .unwrap_or_else(|| panic!("not a number: {value}"))
}

pub(crate) fn numbers(value: &Value) -> Vec<f64> {
    value
        .as_array()
        .expect("a list")
        .iter()
        .map(number)
        .collect()
}

impl Check {
    pub(crate) fn input(&self, key: &str) -> &Value {
        self.table["inputs"]
            .get(key)
            .unwrap_or_else(|| panic!("no input {key}"))
    }

    pub(crate) fn has(&self, key: &str) -> bool {
        self.table["inputs"].get(key).is_some()
    }

    pub(crate) fn number(&self, key: &str) -> f64 {
        number(self.input(key))
    }

    pub(crate) fn numbers(&self, key: &str) -> Vec<f64> {
        numbers(self.input(key))
    }

    pub(crate) fn point(&self, key: &str) -> Point {
        let v = self.numbers(key);
        Point::new(v[0], v[1], v[2])
    }

    pub(crate) fn direction(&self, key: &str) -> UnitVector {
        let v = self.numbers(key);
        Vector::new(v[0], v[1], v[2])
            .direction()
            .expect("a direction")
    }

    pub(crate) fn expected(&self) -> &Value {
        &self.table["expected"]
    }

    pub(crate) fn expected_of(&self, key: &str) -> &Value {
        self.table["expected"]
            .get(key)
            .unwrap_or_else(|| panic!("no expected {key}"))
    }

    /// Panics with both numbers, the tolerance and the source.
    pub(crate) fn near(&self, what: &str, got: f64, expected: f64, tolerance: f64) {
        let off = got - expected;
        assert!(
            off.abs() <= tolerance,
            "{} {what}: got {got}, expected {expected}, off by {off:e}, tolerance {tolerance:e}\n\
             source: {}",
            self.table["id"],
            self.table["source"]
        );
    }

    /// A list against a list.
    pub(crate) fn all_near(&self, what: &str, got: &[f64], expected: &[f64], tolerance: f64) {
        assert_eq!(
            got.len(),
            expected.len(),
            "{} {what}: {got:?} against {expected:?}\nsource: {}",
            self.table["id"],
            self.table["source"]
        );
        for (i, (g, e)) in got.iter().zip(expected).enumerate() {
            self.near(&format!("{what}[{i}]"), *g, *e, tolerance);
        }
    }

    /// 1e-6 relative or absolute, whichever is larger.
    pub(crate) fn close(&self, what: &str, got: f64, expected: f64) {
        self.near(what, got, expected, 1e-6_f64.max(1e-6 * expected.abs()));
    }
}

/// A ball of triangles: an icosahedron whose faces are split in four `steps` times, the new corners
/// pushed out to the sphere; wound outward.
pub(crate) fn icosphere(radius: f64, steps: u32) -> tubewright_geometry::TriangleMesh {
    use std::collections::BTreeMap;
    let g = f64::midpoint(1.0, 5.0_f64.sqrt());
    let mut corners: Vec<Vector> = Vec::new();
    for (one, golden) in [(1.0, g), (-1.0, g), (1.0, -g), (-1.0, -g)] {
        corners.push(Vector::new(0.0, one, golden));
        corners.push(Vector::new(one, golden, 0.0));
        corners.push(Vector::new(golden, 0.0, one));
    }
    // Faces are the triples at mutual distance 2, turned outward.
    let mut faces: Vec<[u32; 3]> = Vec::new();
    let near = |a: Vector, b: Vector| ((a - b).norm() - 2.0).abs() < 1e-9;
    for i in 0..12 {
        for j in i + 1..12 {
            for k in j + 1..12 {
                let (a, b, c) = (corners[i], corners[j], corners[k]);
                if near(a, b) && near(b, c) && near(c, a) {
                    let out = (b - a).cross(c - a).dot(a) > 0.0;
                    let [i, j, k] = [i as u32, j as u32, k as u32];
                    faces.push(if out { [i, j, k] } else { [i, k, j] });
                }
            }
        }
    }
    for _ in 0..steps {
        let mut middles: BTreeMap<(u32, u32), u32> = BTreeMap::new();
        let mut next = Vec::with_capacity(faces.len() * 4);
        for [a, b, c] in faces {
            let mut middle = |p: u32, q: u32| {
                *middles.entry((p.min(q), p.max(q))).or_insert_with(|| {
                    let m = corners[p as usize] / corners[p as usize].norm()
                        + corners[q as usize] / corners[q as usize].norm();
                    corners.push(m);
                    corners.len() as u32 - 1
                })
            };
            let (ab, bc, ca) = (middle(a, b), middle(b, c), middle(c, a));
            next.extend([[a, ab, ca], [ab, b, bc], [ca, bc, c], [ab, bc, ca]]);
        }
        faces = next;
    }
    let vertices = corners
        .into_iter()
        .map(|v| Point::ORIGIN + v * (radius / v.norm()))
        .collect();
    tubewright_geometry::TriangleMesh::new(vertices, faces).expect("a ball")
}
