//! Published and independently solved natural frequencies.
#![allow(clippy::unwrap_used, reason = "a test that cannot read its data fails")]

use super::tube;
use std::collections::BTreeMap;
use tubewright_chassis::Beams;
use tubewright_geometry::{Point, Vector};

const STIFF: f64 = 1e8;

fn checks() -> BTreeMap<String, toml::Table> {
    let file: toml::Table = include_str!("../data/beams.toml").parse().unwrap();
    let checks = file["check"].as_array().unwrap();
    checks
        .iter()
        .map(|check| {
            let check = check.as_table().unwrap().clone();
            (check["id"].as_str().unwrap().to_owned(), check)
        })
        .collect()
}

fn number(value: &toml::Value) -> f64 {
    value
        .as_float()
        .unwrap_or_else(|| value.as_integer().unwrap() as f64)
}

fn numbers(value: &toml::Value) -> Vec<f64> {
    match value.as_array() {
        Some(list) => list.iter().map(number).collect(),
        None => vec![number(value)],
    }
}

/// A straight tube along x with a place every 10 mm, free to bend upward only.
fn straight(length_mm: f64, inputs: &toml::Table) -> (Beams, impl Fn(f64) -> usize + use<>) {
    let beam = tube(number(&inputs["od_mm"]), number(&inputs["wall_mm"]));
    assert!((number(&inputs["E_GPa"]) * 1e3 - beam.young_mpa).abs() < 1e-9);
    let parts = (length_mm / 10.0).round();
    let mut beams = Beams::new();
    for k in 0..=parts as usize {
        let at = beams.place(Point::new(length_mm * k as f64 / parts, 0.0, 0.0));
        // In the plane of the published value: no way aside, none along, no twist.
        beams.spring(
            at,
            Vector::ZERO,
            [STIFF, STIFF, 0.0],
            [STIFF * 1e4, 0.0, STIFF * 1e4],
        );
        if at > 0 {
            beams.member(at - 1, at, beam);
        }
    }
    (beams, move |m: f64| {
        (m * 1e3 / length_mm * parts).round() as usize
    })
}

fn pin(beams: &mut Beams, place: usize) {
    beams.spring(place, Vector::ZERO, [0.0, 0.0, STIFF], [0.0; 3]);
}

fn clamp(beams: &mut Beams, place: usize) {
    beams.spring(
        place,
        Vector::ZERO,
        [0.0, 0.0, STIFF],
        [0.0, STIFF * 1e4, 0.0],
    );
}

fn agrees(beams: &Beams, check: &toml::Table, expected: &[f64]) {
    let tolerance = check["tolerance"].as_str().unwrap();
    let share: f64 = tolerance.trim_end_matches(" %").parse::<f64>().unwrap() / 100.0;
    let found = beams.factored().unwrap().frequencies_hz(expected.len());
    assert_eq!(found.len(), expected.len());
    for (found, expected) in found.iter().zip(expected) {
        assert!(
            (found - expected).abs() <= share * expected,
            "{}: {found} Hz for {expected} Hz",
            check["id"]
        );
    }
}

#[test]
fn spans_of_bare_tube() {
    let checks = checks();
    type Hold = fn(&mut Beams, usize);
    let spans: [(&str, Hold, Option<Hold>); 4] = [
        ("beam-pinned-pinned", pin, Some(pin)),
        ("beam-clamped-clamped", clamp, Some(clamp)),
        ("beam-clamped-pinned", clamp, Some(pin)),
        ("beam-cantilever", clamp, None),
    ];
    for (id, first, last) in spans {
        let check = &checks[id];
        let inputs = check["inputs"].as_table().unwrap();
        let length_m = number(&inputs["length_m"]);
        let (mut beams, at) = straight(length_m * 1e3, inputs);
        first(&mut beams, at(0.0));
        if let Some(last) = last {
            last(&mut beams, at(length_m));
        }
        agrees(&beams, check, &numbers(&check["expected"]));
    }
}

#[test]
fn overhangs() {
    let check = &checks()["beam-overhang"];
    let inputs = check["inputs"].as_table().unwrap();
    let (mut beams, at) = straight(number(&inputs["length_m"]) * 1e3, inputs);
    for support in numbers(&inputs["supports_m"]) {
        pin(&mut beams, at(support));
    }
    agrees(&beams, check, &numbers(&check["expected"]));
}

#[test]
fn a_silencer_at_the_end_and_in_the_middle() {
    let check = &checks()["beam-overhung-muffler"];
    let inputs = check["inputs"].as_table().unwrap();
    for case in ["overhung", "midspan"] {
        let own = inputs[case].as_table().unwrap();
        let (mut beams, at) = straight(number(&inputs["length_m"]) * 1e3, inputs);
        for support in numbers(&own["supports_m"]) {
            pin(&mut beams, at(support));
        }
        beams
            .mass(at(number(&own["mass_at_m"])), number(&own["mass_kg"]))
            .unwrap();
        agrees(&beams, check, &numbers(&check["expected"][case]));
    }
}

#[test]
fn a_run_on_three_rubbers() {
    let check = &checks()["beam-rubber-hangers"];
    let inputs = check["inputs"].as_table().unwrap();
    let (mut beams, at) = straight(number(&inputs["length_m"]) * 1e3, inputs);
    for hanger in numbers(&inputs["hangers_m"]) {
        let upright = number(&inputs["hanger_N_per_mm"]);
        beams.spring(at(hanger), Vector::ZERO, [0.0, 0.0, upright], [0.0; 3]);
    }
    beams
        .mass(at(number(&inputs["mass_at_m"])), number(&inputs["mass_kg"]))
        .unwrap();
    agrees(&beams, check, &numbers(&check["expected"]));
}
