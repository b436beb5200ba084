//! Reads the published values and compares with them.
#![allow(dead_code, reason = "each test binary uses a part")]
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::cast_precision_loss,
    reason = "a test fails by panicking"
)]

pub(crate) mod cars;

use toml::{Table, Value};
use tubewright_geometry::{Point, math::PI};
use tubewright_survey::{
    Network, PointId, PointSpec, Reading, ReadingKind, SetupSpec, Stance, StartValues, Target,
    network::CarAxis,
};

pub(crate) struct Checks(Vec<Table>);

impl Checks {
    pub(crate) fn networks() -> Self {
        Self::parse(include_str!("../data/networks.toml"))
    }

    pub(crate) fn fits() -> Self {
        Self::parse(include_str!("../data/fits.toml"))
    }

    fn parse(text: &str) -> Self {
        let table: Table = text.parse().expect("the data file is TOML");
        let list = table["check"].as_array().expect("a list of checks");
        Self(list.iter().map(|v| v.as_table().unwrap().clone()).collect())
    }

    pub(crate) fn get(&self, id: &str) -> Check<'_> {
        let table = self
            .0
            .iter()
            .find(|t| t["id"].as_str() == Some(id))
            .unwrap_or_else(|| panic!("no check {id}"));
        let inputs = table["inputs"].as_table().unwrap();
        let inputs = match inputs.get("same_inputs_as") {
            Some(other) => self.get(other.as_str().unwrap()).inputs,
            None => inputs,
        };
        Check {
            id: table["id"].as_str().unwrap(),
            source: table["source"].as_str().unwrap(),
            own_inputs: table["inputs"].as_table().unwrap(),
            inputs,
            expected: &table["expected"],
        }
    }
}

pub(crate) struct Check<'a> {
    pub(crate) id: &'a str,
    pub(crate) source: &'a str,
    pub(crate) own_inputs: &'a Table,
    pub(crate) inputs: &'a Table,
    pub(crate) expected: &'a Value,
}

impl Check<'_> {
    /// Within an absolute tolerance in the unit of the numbers.
    pub(crate) fn near(&self, what: &str, found: f64, expected: f64, tolerance: f64) {
        let off = found - expected;
        assert!(
            off.abs() <= tolerance,
            "{}: {what}: found {found}, expected {expected}, off {off:e}, allowed {tolerance:e}\n\
             source: {}",
            self.id,
            self.source
        );
    }

    /// Within a part of the expected value.
    pub(crate) fn near_part(&self, what: &str, found: f64, expected: f64, part: f64) {
        let tolerance = if expected == 0.0 {
            1e-6
        } else {
            part * expected.abs()
        };
        self.near(what, found, expected, tolerance);
    }

    pub(crate) fn holds(&self, what: &str, truth: bool) {
        assert!(truth, "{}: {what}\nsource: {}", self.id, self.source);
    }

    pub(crate) fn number(&self, key: &str) -> f64 {
        number(&self.expected[key])
    }

    pub(crate) fn input(&self, key: &str) -> f64 {
        number(&self.inputs[key])
    }
}

pub(crate) fn number(v: &Value) -> f64 {
    v.as_float()
        .or_else(|| v.as_integer().map(|i| i as f64))
        .unwrap_or_else(|| panic!("not a number: {v}"))
}

pub(crate) fn numbers(v: &Value) -> Vec<f64> {
    v.as_array().unwrap().iter().map(number).collect()
}

pub(crate) fn xyz(v: &Value) -> Point {
    let n = numbers(v);
    Point::new(n[0], n[1], n[2])
}

/// The network of a check, its start values, and the numbers of its unknown points by name.
pub(crate) struct CheckNetwork {
    pub(crate) network: Network,
    pub(crate) start: StartValues,
}

pub(crate) fn check_network(inputs: &Table) -> CheckNetwork {
    let mut network = Network::default();
    let mut start = StartValues::default();
    if let Some(marks) = inputs.get("datum_mm") {
        for mark in marks.as_array().unwrap() {
            let place = xyz(&mark["xyz"]);
            network.add_point(PointSpec::held_at(mark["p"].as_str().unwrap(), place));
            start.points.push(Some(place));
        }
    }
    for point in inputs["approx_mm"].as_array().unwrap() {
        network.add_point(PointSpec::new(point["p"].as_str().unwrap()));
        start.points.push(Some(xyz(&point["xyz"])));
    }
    let mut floor = SetupSpec::new("floor", Stance::Wheels);
    floor.floor_is_datum = true;
    let setup = network.add_setup(floor);
    for (index, o) in inputs["observations"]
        .as_array()
        .unwrap()
        .iter()
        .enumerate()
    {
        let at = |key: &str| -> PointId { network.point_named(o[key].as_str().unwrap()).unwrap() };
        let target = |key: &str| Target::Point(at(key));
        let (value, sigma) = (number(&o["value"]), number(&o["sigma"]));
        let number = u32::try_from(index).unwrap();
        let radians = PI / 180.0;
        let axis = |axis| ReadingKind::AxisSymmetry {
            axis,
            p: target("p"),
            q: target("q"),
        };
        let reading = match o["kind"].as_str().unwrap() {
            "dist" => Reading::tape(number, at("p"), at("q"), value, sigma),
            "height" => Reading::height(number, at("p"), setup, value, sigma),
            "hdist" => Reading::new(
                number,
                ReadingKind::Plumb {
                    from: target("p"),
                    to: target("q"),
                    setup,
                },
                value,
                sigma,
            ),
            "incl_deg" => Reading::new(
                number,
                ReadingKind::Inclination {
                    from: target("p"),
                    to: target("q"),
                    setup,
                },
                value * radians,
                sigma * radians,
            ),
            "sym_x" => Reading::new(number, axis(CarAxis::X), value, sigma),
            "sym_y" => Reading::new(number, axis(CarAxis::Y), value, sigma),
            "sym_z" => Reading::new(number, axis(CarAxis::Z), value, sigma),
            other => panic!("unknown kind {other}"),
        };
        network.readings.push(reading);
    }
    CheckNetwork { network, start }
}
