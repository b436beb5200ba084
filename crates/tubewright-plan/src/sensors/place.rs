//! Where a bung is welded in, in words that can be followed with a tape and an angle finder.

use tubewright_geometry::{Frame, Point, UnitVector, Vector, math};

use crate::checks::Room;

/// How a sensor stands on its tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clocking {
    /// Round the tube from its highest place, radians, clockwise looking downstream.
    pub clock_rad: f64,
    /// Slope of the sensor's axis above level, radians.
    pub rise_rad: f64,
    /// From the middle of the tube out along the sensor, in the car's axes.
    pub out: UnitVector,
}

impl Clocking {
    /// The axis at a clock from the highest place of a tube that runs along `frame`.
    pub(crate) fn at(frame: &Frame, clock_rad: f64) -> Self {
        let out = Frame::upright(frame.origin, frame.travel()).at_clock(clock_rad);
        Self {
            clock_rad,
            rise_rad: math::asin(out.vector().z.clamp(-1.0, 1.0)),
            out,
        }
    }

    /// Half hours of a clock face: *10:30*.
    #[must_use]
    pub fn hour(&self) -> String {
        let halves = (self.clock_rad.to_degrees() / 15.0)
            .round()
            .rem_euclid(24.0);
        let hour = (0.5 * halves).floor();
        let minutes = if halves % 2.0 > 0.5 { "30" } else { "00" };
        format!("{:.0}:{minutes}", if hour < 0.5 { 12.0 } else { hour })
    }

    /// Which way the sensor leans, as the car sees it.
    #[must_use]
    pub fn leans(&self) -> &'static str {
        let Vector { x, y, .. } = self.out.vector();
        if math::hypot(x, y) < 0.1 {
            "straight up"
        } else if y.abs() >= x.abs() {
            if y > 0.0 {
                "toward the car's right"
            } else {
                "toward the car's left"
            }
        } else if x > 0.0 {
            "toward the rear"
        } else {
            "toward the front"
        }
    }
}

/// A place for a bung.
#[derive(Clone, Debug, PartialEq)]
pub struct SensorPlace {
    /// Mark of the piece.
    pub piece: String,
    /// Number of the piece in its run, counted from 0.
    pub number: usize,
    /// Mark of the joint that it is measured from: a seam where the piece ends at one or is welded inside.
    pub joint: String,
    /// From that joint along the outside of the tube at this clock, mm.
    pub along_mm: f64,
    /// It lies upstream of that joint.
    pub is_upstream: bool,
    /// The piece is a bend, and the foot of the bung has to be shaped to it.
    pub is_on_bend: bool,
    /// How it stands.
    pub clocking: Clocking,
    /// Where its axis leaves the tube, in the car's axes, mm.
    pub foot: Point,
    /// What is nearest to the sensor's room.
    pub room: Room,
}

impl SensorPlace {
    /// `downstream` or `upstream` of the joint.
    #[must_use]
    pub const fn way(&self) -> &'static str {
        if self.is_upstream {
            "upstream"
        } else {
            "downstream"
        }
    }

    /// The place in a sentence.
    #[must_use]
    pub fn words(&self) -> String {
        format!(
            "in {}{}, {:.0} mm {} of {} along the outside, at {} looking downstream (12 is the highest place): {:.0}° above level, {}",
            self.piece,
            if self.is_on_bend { ", a bend" } else { "" },
            self.along_mm,
            self.way(),
            self.joint,
            self.clocking.hour(),
            self.clocking.rise_rad.to_degrees(),
            self.clocking.leans(),
        )
    }
}
