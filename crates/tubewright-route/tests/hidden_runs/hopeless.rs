//! Problems that have no answer, built so that the reason is known.

use serde_json::{Value, json};
use tubewright_walker::{Body, Frame};

use super::bodies::plate;
use super::chain::{Bit, Part, walked};
use super::draw::Draw;
use super::sheet::{Made, RunSheet, Sheet, Tube};

const X: [f64; 3] = [1.0, 0.0, 0.0];
const Y: [f64; 3] = [0.0, 1.0, 0.0];
const UP: [f64; 3] = [0.0, 0.0, 1.0];
/// Gap of class `frame`.
const FRAME_GAP_MM: f64 = 12.0;

fn ground_plane(clearance: f64) -> Value {
    json!({"id": "ground", "type": "ground", "z": 0, "min_clearance": clearance})
}

fn run(start: Frame, end: [f64; 3], end_direction: [f64; 3], bits: &[Bit]) -> RunSheet {
    RunSheet {
        id: "main".into(),
        start,
        end,
        end_direction,
        components: Vec::new(),
        passage: None,
        pieces: bits.iter().map(Bit::json).collect(),
    }
}

/// A wall over the whole section whose windows are all lower than the tube with its gaps.
pub(super) fn blocked(draw: &mut Draw) -> Option<Made> {
    let tube = Tube::usual();
    let (low, high) = ([0.0, -400.0, 60.0], [1600.0, 400.0, 560.0]);
    let mut sheet = Sheet::new(tube, (low, high));
    sheet.obstacles.push(ground_plane(100.0));
    let x = draw.between(500.0, 1000.0);
    let thick = draw.between(4.0, 60.0);
    let too_low = tube.od + 2.0 * FRAME_GAP_MM - draw.between(2.0, 30.0);
    let bottom = draw.between(200.0, 330.0);
    let mut put = |from: [f64; 2], to: [f64; 2], id: &str| {
        sheet.obstacles.push(plate(
            [x, from[0], from[1]],
            [x + thick, to[0], to[1]],
            "frame",
            id,
        ));
    };
    // One long low window, with posts in it.
    put([-400.0, 60.0], [400.0, bottom], "low");
    put([-400.0, bottom + too_low], [400.0, 560.0], "high");
    for k in 0..draw.count(0, 3) {
        let y = draw.between(-300.0, 260.0);
        put(
            [y, bottom],
            [y + draw.between(10.0, 60.0), bottom + too_low],
            &format!("post{k}"),
        );
    }
    let z = bottom + too_low / 2.0;
    let start = Frame::toward([100.0, draw.between(-150.0, 150.0), z], X, UP);
    sheet
        .runs
        .push(run(start, [1500.0, draw.between(-150.0, 150.0), z], X, &[]));
    sheet.hopeless("blocked", None)
}

/// A straight run between two plates that leave room for the tube, not for the component.
pub(super) fn component(draw: &mut Draw) -> Option<Made> {
    let tube = Tube::usual();
    let (low, high) = ([0.0, -300.0, 60.0], [1600.0, 300.0, 600.0]);
    let mut free = Sheet::new(tube, (low, high));
    free.obstacles.push(ground_plane(100.0));
    let z = draw.between(250.0, 350.0);
    let start = Frame::toward([100.0, 0.0, z], X, UP);
    let length = draw.between(150.0, 400.0);
    let diameter = tube.od + draw.between(30.0, 70.0);
    let mut zone = (
        [draw.between(400.0, 600.0), -60.0, z - 40.0],
        [1150.0, 60.0, z + 40.0],
    );
    let bits = [Bit::Straight(1300.0)];
    let end = [1400.0, 0.0, z];
    match draw.count(0, 2) {
        // The zone is shorter than the component.
        0 => zone.1[0] = zone.0[0] + 0.5 * length - 60.0,
        // Plates above and below the zone, over the whole width.
        1 => {
            let room = tube.od / 2.0 + FRAME_GAP_MM + draw.between(3.0, 10.0);
            for (k, side) in [-1.0, 1.0].into_iter().enumerate() {
                let (a, b) = (z + side * room, z + side * (room + 30.0));
                free.obstacles.push(plate(
                    [zone.0[0] - 30.0, -300.0, a.min(b)],
                    [zone.1[0] + 30.0, 300.0, a.max(b)],
                    "frame",
                    &format!("plate{k}"),
                ));
            }
        }
        // Bars across, nearer to each other than the body is long, above and below.
        _ => {
            let room = tube.od / 2.0 + FRAME_GAP_MM + draw.between(3.0, 8.0);
            let mut x = zone.0[0] - 20.0;
            let mut k = 0;
            while x < zone.1[0] + 40.0 {
                for side in [-1.0, 1.0] {
                    let at = z + side * (room + 8.0);
                    free.obstacles
                        .push(json!({"id": format!("bar{k}"), "class": "frame",
                        "type": "capsule", "a": [x, -320.0, at], "b": [x, 320.0, at], "r": 8.0}));
                    k += 1;
                }
                x += 40.0;
            }
        }
    }
    free.runs.push(run(start, end, X, &bits));
    let mut sheet = Sheet::new(tube, (low, high));
    sheet.obstacles = free.obstacles.clone();
    sheet.components.insert(
        "part0".into(),
        json!({"kind": "resonator", "length": length, "shape": "cylinder", "diameter": diameter,
            "zone": {"min": zone.0, "max": zone.1}}),
    );
    let part = Part {
        id: "part0".into(),
        length,
        body: Body::Round { diameter },
        roll: 0.0,
    };
    let mut own = run(start, end, X, &[Bit::Part(part)]);
    own.components = vec!["part0".into()];
    sheet.runs.push(own);
    sheet.hopeless("component_does_not_fit", Some(&free))
}

/// Down, along, up again.
fn dip(draw: &mut Draw) -> Vec<Bit> {
    let angle = draw.pick(&[15.0, 20.0, 30.0]);
    let slope = draw.between(60.0, 150.0);
    vec![
        Bit::Straight(150.0),
        Bit::Bend(angle, 180.0),
        Bit::Straight(slope),
        Bit::Bend(angle, 180.0),
        Bit::Straight(200.0),
        Bit::Bend(angle, 0.0),
        Bit::Straight(slope),
        Bit::Bend(angle, 180.0),
        Bit::Straight(150.0),
    ]
}

/// Under a wall that leaves room only below the ground clearance.
pub(super) fn ground(draw: &mut Draw) -> Option<Made> {
    let tube = Tube::usual();
    let bits = dip(draw);
    let z = draw.between(190.0, 240.0);
    let start = Frame::toward([100.0, 0.0, z], X, UP);
    let walk = walked(start, tube, &bits);
    let end = *walk.frames.last()?;
    let lowest = walk
        .balls
        .iter()
        .map(|b| b.centre[2])
        .fold(f64::INFINITY, f64::min);
    // The window under the wall is just high enough for the run as it is.
    let middle = f64::midpoint(start.point[0], end.point[0]);
    let bottom = lowest + tube.od / 2.0 + FRAME_GAP_MM + draw.between(1.0, 8.0);
    let (low, high) = ([0.0, -300.0, 0.0], [end.point[0] + 100.0, 300.0, 500.0]);
    let wall = plate(
        [middle - 40.0, low[1], bottom],
        [middle + 40.0, high[1], high[2]],
        "frame",
        "wall",
    );
    let under = lowest - tube.od / 2.0;
    // What the window leaves is at most `under` and its spare; the ends keep the clearance.
    let clearance = draw.between(under + 12.0, (z - tube.od / 2.0 - 2.0).max(under + 12.0));
    if clearance + 1.0 > z - tube.od / 2.0 || under < 2.0 {
        return None;
    }
    let build = |clearance: f64| {
        let mut sheet = Sheet::new(tube, (low, high));
        sheet.obstacles = vec![ground_plane(clearance), wall.clone()];
        sheet.runs.push(run(start, end.point, end.travel, &bits));
        sheet
    };
    build(clearance).hopeless("ground_clearance", Some(&build(0.0)))
}

/// A parallel offset in a channel that is too short for it and too narrow to turn in.
pub(super) fn room(draw: &mut Draw) -> Option<Made> {
    let tube = Tube::usual();
    let offset = draw.between(60.0, 140.0);
    let needed = (4.0 * tube.clr * offset - offset * offset).sqrt();
    let advance = needed * draw.between(0.4, 0.9);
    let wide = offset / 2.0 + tube.od / 2.0 + draw.between(2.0, 10.0);
    let high = tube.od / 2.0 + draw.between(4.0, 30.0);
    let section = (2.0 * (wide - tube.od / 2.0)).powi(2) + (2.0 * (high - tube.od / 2.0)).powi(2);
    if section.sqrt() > 2.0 * tube.clr - 8.0 {
        return None;
    }
    let turned = draw.chance(0.5);
    let place = |x: f64, y: f64| if turned { [y, x, 200.0] } else { [x, y, 200.0] };
    let along = if turned { Y } else { X };
    let length = advance + draw.between(200.0, 500.0);
    let from = (length - advance) / 2.0;
    let (a, b) = (place(0.0, -wide), place(length, wide));
    let low = [a[0].min(b[0]), a[1].min(b[1]), 200.0 - high];
    let top = [a[0].max(b[0]), a[1].max(b[1]), 200.0 + high];
    let mut sheet = Sheet::new(tube, (low, top));
    sheet.obstacles.push(ground_plane(50.0));
    let start = Frame::toward(place(from, -offset / 2.0), along, UP);
    sheet
        .runs
        .push(run(start, place(from + advance, offset / 2.0), along, &[]));
    sheet.hopeless("too_little_room", None)
}

/// A square turn with a wall ahead nearer than the centre-line radius, but not than a diameter.
pub(super) fn radius(draw: &mut Draw) -> Option<Made> {
    let tube = Tube::usual();
    let ahead = draw.between(tube.od + 4.0, tube.clr - 6.0);
    let start = Frame::toward([200.0, 0.0, 250.0], X, UP);
    let (low, high) = (
        [150.0, -60.0, 60.0],
        [200.0 + ahead + tube.od / 2.0, 700.0, 440.0],
    );
    let across = draw.between(300.0, 500.0);
    let end = [200.0 + ahead - 1.0, across, 250.0];
    let build = |clr: f64| {
        let mut tight = tube;
        tight.clr = clr;
        let mut sheet = Sheet::new(tight, (low, high));
        sheet.obstacles.push(ground_plane(100.0));
        let bits = [
            Bit::Straight(ahead - 1.0 - clr),
            Bit::Bend(90.0, -90.0),
            Bit::Straight(across - clr),
        ];
        sheet.runs.push(run(start, end, Y, &bits));
        sheet
    };
    // Clock -90 of a run along x with twelve up is to +y; the relaxed answer leaves its first
    // straight out where that is too short, by starting with a smaller radius.
    let smaller = (ahead - 1.0 - 25.0).min(tube.od);
    build(tube.clr).hopeless("radius_too_large", Some(&build(smaller)))
}
