//! The real outside of a component: flat ends at the necks, a round, oval or square section.

use crate::space::{Frame, V, add, cross, norm, scale, sin_cos};
use crate::walk::Ball;

/// Section across a component.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Section {
    /// Round, with this diameter in mm.
    Round(f64),
    /// Oval: two half rounds with flats between, width and height in mm, lying flat at roll 0.
    Oval(f64, f64),
    /// A rectangle, width and height in mm, lying flat at roll 0.
    Rectangle(f64, f64),
}

/// A component between two faces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Can {
    /// Length from face to face in mm.
    pub length: f64,
    /// Bare neck at either end in mm: the body lies between.
    pub necks: [f64; 2],
    /// Section of the body.
    pub section: Section,
    /// Roll of the section from lying flat, degrees clockwise looking downstream.
    pub roll_deg: f64,
}

/// Balls of no size on the outside of the body, at most `spacing` mm apart, and the flat ends' rims
/// and rings: their least distance to a body is never less than the can's own.
#[must_use]
pub fn can_balls(at: Frame, can: &Can, along: f64, piece: usize, spacing: f64) -> Vec<Ball> {
    let flat = Frame::upright(at.point, at.travel).clocked(can.roll_deg.to_radians());
    let wide = cross(flat.travel, flat.twelve);
    let outline = outline(can.section, spacing);
    let (from, to) = (can.necks[0], can.length - can.necks[1]);
    let rows = ((to - from) / spacing).ceil().max(1.0);
    let mut balls = Vec::new();
    let mut row = 0.0;
    while row <= rows {
        let x = from + (to - from) * row / rows;
        let is_face = row < 0.5 || row > rows - 0.5;
        let mut share = 1.0;
        loop {
            for [w, h] in &outline {
                let aside: V = add(scale(wide, w * share), scale(flat.twelve, h * share));
                balls.push(Ball {
                    centre: add(at.ahead(x).point, aside),
                    radius: 0.0,
                    along: along + x,
                    piece,
                });
            }
            share -= 0.25;
            if !is_face || share <= 0.0 {
                break;
            }
        }
        row += 1.0;
    }
    balls
}

/// Places on the outline of a section: across, up.
fn outline(section: Section, spacing: f64) -> Vec<[f64; 2]> {
    let mut places = Vec::new();
    let mut line = |from: [f64; 2], to: [f64; 2]| {
        let length = norm([to[0] - from[0], to[1] - from[1], 0.0]);
        let count = (length / spacing).ceil().max(1.0);
        let mut i = 0.0;
        while i <= count {
            let t = i / count;
            places.push([
                from[0] + t * (to[0] - from[0]),
                from[1] + t * (to[1] - from[1]),
            ]);
            i += 1.0;
        }
    };
    let round = |middle: [f64; 2], radius: f64| {
        let count = (core::f64::consts::TAU * radius / spacing).ceil().max(8.0);
        let mut arc = Vec::new();
        let mut i = 0.0;
        while i < count {
            let (sin, cos) = sin_cos(core::f64::consts::TAU * i / count);
            arc.push([middle[0] + radius * sin, middle[1] + radius * cos]);
            i += 1.0;
        }
        arc
    };
    match section {
        Section::Round(diameter) => round([0.0, 0.0], diameter / 2.0),
        Section::Oval(a, b) => {
            let (width, height) = (a.max(b), a.min(b));
            let (aside, r) = ((width - height) / 2.0, height / 2.0);
            line([-aside, r], [aside, r]);
            line([-aside, -r], [aside, -r]);
            places.extend(round([-aside, 0.0], r));
            places.extend(round([aside, 0.0], r));
            places
        }
        Section::Rectangle(a, b) => {
            let (w, h) = (a.max(b) / 2.0, a.min(b) / 2.0);
            line([-w, h], [w, h]);
            line([w, h], [w, -h]);
            line([w, -h], [-w, -h]);
            line([-w, -h], [-w, h]);
            places
        }
    }
}
