//! Problems built round hidden runs.

use serde_json::{Value, json};
use tubewright_walker::{Ball, Body, Frame};

use super::bodies::{Shapes, beside, wall};
use super::chain::{Bit, Part, arriving, bends, dot, extent, plus, unit, walked, with_parts};
use super::draw::Draw;
use super::sheet::{Made, RunSheet, Sheet, Tube};

/// What a problem of one run is to hold.
pub(super) struct Wish {
    bends: (usize, usize),
    bodies: (usize, usize),
    /// Room over the gap, least and most, mm.
    spare: (f64, f64),
    walls: (usize, usize),
    shapes: Shapes,
    parts: (usize, usize),
    oval: bool,
    is_open: bool,
}

impl Wish {
    pub(super) const fn open() -> Self {
        Self {
            bends: (0, 4),
            bodies: (0, 0),
            spare: (0.0, 0.0),
            walls: (0, 0),
            shapes: Shapes::Plain,
            parts: (0, 0),
            oval: false,
            is_open: true,
        }
    }

    pub(super) const fn cluttered() -> Self {
        Self {
            bends: (1, 5),
            bodies: (4, 24),
            spare: (1.0, 120.0),
            walls: (0, 1),
            is_open: false,
            ..Self::open()
        }
    }

    pub(super) const fn inline(oval: bool) -> Self {
        Self {
            bends: (1, 4),
            bodies: (3, 14),
            spare: (2.0, 120.0),
            parts: (1, 2),
            oval,
            ..Self::cluttered()
        }
    }

    pub(super) const fn mesh() -> Self {
        Self {
            shapes: Shapes::All,
            ..Self::cluttered()
        }
    }

    pub(super) const fn tight() -> Self {
        Self {
            bends: (2, 5),
            bodies: (10, 30),
            spare: (0.5, 8.0),
            walls: (1, 3),
            shapes: Shapes::All,
            ..Self::cluttered()
        }
    }

    pub(super) const fn sized(bends: usize, bodies: usize) -> Self {
        Self {
            bends: (bends, bends),
            bodies: (bodies, bodies),
            walls: (0, 0),
            ..Self::cluttered()
        }
    }
}

fn start(draw: &mut Draw) -> Frame {
    let travel = unit([
        1.0,
        0.4 * draw.between(-1.0, 1.0),
        0.3 * draw.between(-1.0, 1.0),
    ]);
    Frame::toward(
        [
            draw.between(0.0, 800.0),
            draw.between(-200.0, 200.0),
            draw.between(180.0, 350.0),
        ],
        travel,
        [0.0, 0.0, 1.0],
    )
}

fn parts(draw: &mut Draw, count: usize, oval: bool, tube: Tube) -> Vec<Part> {
    (0..count)
        .map(|k| {
            let length = draw.between(60.0, 380.0);
            let body = if oval {
                let height = tube.od + draw.between(20.0, 60.0);
                Body::Oval {
                    width: height + draw.between(20.0, 100.0),
                    height,
                }
            } else {
                Body::Round {
                    diameter: tube.od + draw.between(10.0, 60.0),
                }
            };
            Part {
                id: format!("part{k}"),
                length,
                body,
                roll: if oval {
                    draw.pick(&[0.0, 90.0, -90.0, 30.0])
                } else {
                    0.0
                },
            }
        })
        .collect()
}

fn shape(part: &Part) -> Value {
    match part.body {
        Body::Oval { width, height } => {
            json!({"kind": "silencer", "length": part.length, "shape": "oval",
                "width": width, "height": height, "zone": null})
        }
        Body::Round { diameter } => {
            json!({"kind": "resonator", "length": part.length, "shape": "cylinder",
                "diameter": diameter, "zone": null})
        }
        _ => Value::Null,
    }
}

/// A workspace round balls; open problems have a wide one.
fn workspace(draw: &mut Draw, balls: &[Ball], is_open: bool) -> ([f64; 3], [f64; 3]) {
    let (low, high) = extent(balls);
    let mut margin = |least: f64, most: f64| draw.between(least, most);
    if is_open {
        return (
            low.map(|x| x - margin(1000.0, 2000.0)),
            high.map(|x| x + margin(1000.0, 2000.0)),
        );
    }
    (
        low.map(|x| x - margin(5.0, 250.0)),
        high.map(|x| x + margin(5.0, 250.0)),
    )
}

/// One run with what the wish says.
pub(super) fn one(draw: &mut Draw, wish: &Wish) -> Option<Made> {
    let tube = Tube::drawn(draw);
    let start = start(draw);
    let count = draw.count(wish.bends.0, wish.bends.1);
    let longest = if wish.is_open { 500.0 } else { 350.0 };
    let mut bits = bends(draw, count, longest);
    let how_many = draw.count(wish.parts.0, wish.parts.1);
    let parts = parts(draw, how_many, wish.oval, tube);
    bits = with_parts(draw, bits, parts);
    let walk = walked(start, tube, &bits);
    let mut sheet = Sheet::new(tube, workspace(draw, &walk.balls, wish.is_open));
    sheet.max_bends = sheet.max_bends.max(count + 2);
    let end = walk.frames.last()?;
    let mut names = Vec::new();
    for (k, bit) in bits.iter().enumerate() {
        let Bit::Part(part) = bit else { continue };
        let mut component = shape(part);
        if draw.chance(0.6) {
            // A box round both ends of the axis.
            let (a, b) = (walk.frames[k].point, walk.frames[k + 1].point);
            let low = [0, 1, 2].map(|k| a[k].min(b[k]) - draw.between(4.0, 70.0));
            let high = [0, 1, 2].map(|k| a[k].max(b[k]) + draw.between(4.0, 70.0));
            component["zone"] = json!({"min": low, "max": high});
        }
        names.push(part.id.clone());
        sheet.components.insert(part.id.clone(), component);
    }
    sheet.runs.push(RunSheet {
        id: "main".into(),
        start,
        end: end.point,
        end_direction: end.travel,
        components: names,
        passage: None,
        pieces: bits.iter().map(Bit::json).collect(),
    });
    furnish(draw, &mut sheet, &walk.balls, wish)?;
    sheet.solvable()
}

/// Ground, walls and bodies.
fn furnish(draw: &mut Draw, sheet: &mut Sheet, balls: &[Ball], wish: &Wish) -> Option<()> {
    if wish.is_open {
        return Some(());
    }
    let (low, high) = sheet.workspace;
    let lowest = extent(balls).0[2];
    let clearance = draw.pick(&[100.0, 120.0]);
    if draw.chance(0.8) {
        let z = lowest - clearance - draw.between(wish.spare.0, wish.spare.1);
        sheet
            .obstacles
            .push(json!({"id": "ground", "type": "ground", "z": z, "min_clearance": clearance}));
    }
    for number in 0..draw.count(wish.walls.0, wish.walls.1) {
        let spare = draw.between(wish.spare.0, wish.spare.1);
        sheet
            .obstacles
            .extend(wall(draw, balls, (low, high), spare, number)?);
    }
    let wanted = draw.count(wish.bodies.0, wish.bodies.1);
    let mut number = 0;
    for _ in 0..4 * wanted {
        if number == wanted {
            break;
        }
        let spare = draw.between(wish.spare.0, wish.spare.1);
        if let Some(body) = beside(draw, balls, wish.shapes, spare, number) {
            sheet.obstacles.push(body);
            number += 1;
        }
    }
    (number == wanted).then_some(())
}

/// Two runs side by side that part or come together.
pub(super) fn two(draw: &mut Draw) -> Option<Made> {
    let tube = Tube::drawn(draw);
    let mut balls = Vec::new();
    let mut runs = Vec::new();
    let first = start(draw);
    let aside = tube.od + draw.between(20.0, 120.0);
    for (k, id) in ["left", "right"].into_iter().enumerate() {
        let from = Frame::toward(
            plus(first.point, [0.0, 1.0, 0.0], aside * k as f64),
            unit(plus(first.travel, draw.direction(), 0.1)),
            [0.0, 0.0, 1.0],
        );
        let count = draw.count(1, 3);
        let bits = bends(draw, count, 350.0);
        let walk = walked(from, tube, &bits);
        let end = walk.frames.last()?;
        runs.push(RunSheet {
            id: id.into(),
            start: from,
            end: end.point,
            end_direction: end.travel,
            components: Vec::new(),
            passage: None,
            pieces: bits.iter().map(Bit::json).collect(),
        });
        balls.extend(walk.balls);
    }
    let mut sheet = Sheet::new(tube, workspace(draw, &balls, false));
    sheet.runs = runs;
    // Before anything is furnished: most pairs run into each other.
    sheet.solvable()?;
    let wish = Wish {
        bodies: (2, 12),
        ..Wish::cluttered()
    };
    furnish(draw, &mut sheet, &balls, &wish)?;
    sheet.solvable()
}

/// Two runs through a crossover of two bars.
pub(super) fn crossed(draw: &mut Draw) -> Option<Made> {
    let tube = Tube::usual();
    let pose = [
        draw.between(1200.0, 1600.0),
        draw.between(-60.0, 60.0),
        draw.between(180.0, 260.0),
    ];
    let (half, length, radius) = (62.0, 220.0, 40.0);
    let (sin, cos) = tubewright_geometry::math::sin_cos(10.0_f64.to_radians());
    let mut balls = Vec::new();
    let mut runs = Vec::new();
    let mut ports = json!({});
    for (id, side, sign) in [("runL", "L", -1.0), ("runR", "R", 1.0)] {
        let inlet = ([0.0, sign * half, 0.0], [cos, -sign * sin, 0.0]);
        let outlet = ([length, sign * half, 0.0], [cos, sign * sin, 0.0]);
        ports[side] = json!({"inlet": {"point": inlet.0, "dir": inlet.1},
            "outlet": {"point": outlet.0, "dir": outlet.1}});
        let place = |p: [f64; 3]| plus(pose, p, 1.0);
        let count = draw.count(1, 2);
        let before = bends(draw, count, 250.0);
        let count = draw.count(1, 2);
        let after = bends(draw, count, 250.0);
        let roll = draw.between(-180.0, 180.0);
        let from = arriving(tube, &before, place(inlet.0), inlet.1, roll);
        if dot(from.travel, [1.0, 0.0, 0.0]) < 0.3 {
            return None;
        }
        let first = walked(from, tube, &before);
        let second = walked(Frame::upright(place(outlet.0), outlet.1), tube, &after);
        let end = second.frames.last()?;
        let mut pieces: Vec<Value> = before.iter().map(Bit::json).collect();
        pieces.push(json!({"type": "crossover", "id": "X1"}));
        pieces.extend(after.iter().map(Bit::json));
        runs.push(RunSheet {
            id: id.into(),
            start: from,
            end: end.point,
            end_direction: end.travel,
            components: Vec::new(),
            passage: Some(("X1".into(), side)),
            pieces,
        });
        balls.extend(first.balls);
        balls.extend(second.balls);
    }
    let bars = [-half, half].map(|y| ([0.0, y, 0.0], [length, -y, 0.0]));
    for (a, b) in bars {
        for i in 0..=60 {
            let t = f64::from(i) / 60.0;
            let middle = [0, 1, 2].map(|k| pose[k] + a[k] + (b[k] - a[k]) * t);
            balls.push(Ball {
                centre: middle,
                radius,
                along: 0.0,
                piece: 0,
            });
        }
    }
    let mut sheet = Sheet::new(tube, workspace(draw, &balls, false));
    sheet.max_bends = 14;
    sheet.runs = runs;
    let room = [
        draw.between(20.0, 200.0),
        draw.pick(&[0.0, 30.0]),
        draw.between(2.0, 40.0),
    ];
    let low = [0, 1, 2].map(|k| pose[k] - room[k] * draw.unit());
    let high = [0, 1, 2].map(|k| low[k] + room[k]);
    let high = [0, 1, 2].map(|k| high[k].max(pose[k]));
    let body: Vec<Value> = bars
        .iter()
        .map(|(a, b)| json!({"a": a, "b": b, "r": radius}))
        .collect();
    sheet
        .crossovers
        .push(json!({"id": "X1", "body": body, "ports": ports,
        "pose_min": low, "pose_max": high}));
    sheet.poses.push(("X1".into(), pose));
    sheet.solvable()?;
    let wish = Wish {
        bodies: (2, 12),
        walls: (0, 0),
        ..Wish::cluttered()
    };
    furnish(draw, &mut sheet, &balls, &wish)?;
    sheet.solvable()
}
