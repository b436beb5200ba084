//! Writes the published networks and one of forty points as JSON, each with the distances between all
//! points as this crate adjusts them and the time that it took, for a comparison with another solver.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "an example for the developers' own comparison"
)]

#[path = "../tests/common/mod.rs"]
mod common;

use std::fmt::Write as _;
use std::io::Write as _;
use std::time::Instant;

use common::{Checks, cars::forty_points, check_network};
use tubewright_survey::{
    FrameChoice, Network, PointId, ReadingKind, StartValues, Target, adjust_near,
};

/// Times of which the least is told.
const REPEATS: usize = 30;

fn observation(network: &Network, kind: &ReadingKind, value: f64, sigma: f64) -> String {
    let point = |t: Target| match t {
        Target::Point(p) => p.0,
        _ => panic!("only points in these networks"),
    };
    let (name, p, q) = match *kind {
        ReadingKind::Tape { from, to, .. } => ("dist", point(from.target), point(to.target)),
        ReadingKind::Plumb { from, to, .. } => ("hdist", point(from), point(to)),
        ReadingKind::Height { target, .. } => ("height", point(target.target), 0),
        ReadingKind::Inclination { from, to, .. } => ("incl", point(from), point(to)),
        ReadingKind::AxisSymmetry { axis, p, q } => (
            ["sym_x", "sym_y", "sym_z"][axis as usize],
            point(p),
            point(q),
        ),
        _ => panic!("not in these networks: {}", network.reading_name(kind)),
    };
    format!(r#"{{"kind":"{name}","p":{p},"q":{q},"value":{value:?},"sigma":{sigma:?}}}"#)
}

fn dump(name: &str, network: &Network, start: &StartValues) -> String {
    let mut least = f64::INFINITY;
    for _ in 0..REPEATS {
        let begun = Instant::now();
        let adjustment = adjust_near(network, start).unwrap();
        std::hint::black_box(adjustment.readings());
        least = least.min(begun.elapsed().as_secs_f64());
    }
    let adjustment = adjust_near(network, start).unwrap();
    let survey = adjustment.seen_from(&FrameChoice::AsAdjusted).unwrap();
    let places: Vec<_> = (0..network.points.len())
        .map(|i| survey.point(PointId(i)).unwrap().place)
        .collect();
    let mut text = format!(
        r#"{{"name":"{name}","seconds":{least:?},"vtpv":{:?},"points":["#,
        adjustment.global_test().vtpv
    );
    for (i, (spec, place)) in network.points.iter().zip(&places).enumerate() {
        let comma = if i == 0 { "" } else { "," };
        let held = spec.held[0].is_some();
        let s = start.points[i].unwrap().to_array();
        let a = place.to_array();
        write!(
            text,
            r#"{comma}{{"held":{held},"start":{s:?},"adjusted":{a:?}}}"#
        )
        .unwrap();
    }
    text.push_str(r#"],"observations":["#);
    for (i, r) in network.readings.iter().enumerate() {
        let comma = if i == 0 { "" } else { "," };
        let o = observation(network, &r.kind, r.value, r.sigma);
        write!(text, "{comma}{o}").unwrap();
    }
    text.push_str("]}");
    text
}

fn main() {
    let checks = Checks::networks();
    let mut all = Vec::new();
    for (name, id) in [
        ("A", "tape-net-a-coords"),
        ("B", "tape-net-b-coords"),
        ("C", "tape-net-c-coords"),
        ("D", "tape-net-d-free"),
    ] {
        let net = check_network(checks.get(id).inputs);
        all.push(dump(name, &net.network, &net.start));
    }
    let (network, start, _) = forty_points(7);
    all.push(dump("40 points, 200 readings", &network, &start));
    let text = format!("[{}]\n", all.join(",\n"));
    std::io::stdout().write_all(text.as_bytes()).unwrap();
}
