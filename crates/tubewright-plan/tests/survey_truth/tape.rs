//! What a tape, a level and a plumb bob show on the true car: written from the handbook's words.

use crate::truth::Truth;
use tubewright_build::model::{
    Along, Build, EndPlace, Face, HoleEdge, Place, PlaceAt, Reading, ReadingKind, TapeEnd,
};
use tubewright_geometry::{Angle, Length, Point, UnitVector, Vector, math};

impl Truth {
    pub(crate) fn locate(&self, build: &Build, place: &PlaceAt) -> Point {
        match place {
            PlaceAt::Mark(name) | PlaceAt::Point(name) => self.places[name.as_str()],
            PlaceAt::End { end, at } => {
                let frame = self.ends[end.as_str()];
                let written = build.end(end).unwrap();
                let out = |clock_rad: f64, radius: f64| {
                    frame.origin
                        + frame.twelve() * (radius * math::cos(clock_rad))
                        + frame.three() * (radius * math::sin(clock_rad))
                };
                match *at {
                    EndPlace::Centre => frame.origin,
                    EndPlace::Rim(clock) => {
                        out(clock.angle().rad(), 0.5 * written.rim_diameter().mm())
                    }
                    EndPlace::Bolt(number) => {
                        let bolt = &written.bolts[number as usize - 1];
                        out(bolt.clock.value.angle().rad(), 0.5 * bolt.circle.mm())
                    }
                }
            }
        }
    }

    /// What the reading would show without any error, mm or radians; `None` for symmetry.
    pub(crate) fn shows(&self, build: &Build, reading: &Reading) -> Option<f64> {
        let at = |place: &Place| self.locate(build, &place.at);
        let floor = |name: &str| self.floors[name];
        let flat = |v: Vector, up: UnitVector| v - up * up.dot(v);
        Some(match &reading.kind {
            ReadingKind::Tape {
                from,
                to,
                burnt,
                holes,
                sides,
                ..
            } => {
                let mut ends = [at(from), at(to)];
                let mut more = burnt.as_ref().map_or(0.0, |b| b.mm());
                for hole in holes {
                    let half = 0.5 * hole.diameter.mm();
                    more += if hole.edge == HoleEdge::Far {
                        half
                    } else {
                        -half
                    };
                }
                for side in sides {
                    let half = 0.5 * side.of.mm();
                    let end = &mut ends[usize::from(side.at == TapeEnd::To)];
                    match side.face {
                        Face::Near => more -= half,
                        Face::Far => more += half,
                        Face::Outer => end.y += half * end.y.signum(),
                        Face::Inner => end.y -= half * end.y.signum(),
                    }
                }
                ends[0].distance(ends[1]) + more
            }
            ReadingKind::Height { of, setup, .. } => {
                let (up, offset) = floor(setup);
                up.dot(at(of) - Point::ORIGIN) - offset
            }
            ReadingKind::Plumb {
                from, to, setup, ..
            } => flat(at(to) - at(from), floor(setup).0).norm(),
            ReadingKind::Offset {
                from, to, along, ..
            } => {
                let direction = match along {
                    Along::Line([a, b]) => (at(b) - at(a)).direction().unwrap(),
                    Along::Plumb { setup } => floor(setup).0,
                };
                direction.dot(at(to) - at(from))
            }
            ReadingKind::Inclination {
                from, to, setup, ..
            } => rise(at(to) - at(from), floor(setup).0),
            ReadingKind::Bearing {
                from,
                to,
                base: [a, b],
                setup,
                ..
            } => {
                let up = floor(setup).0;
                let (base, line) = (flat(at(b) - at(a), up), flat(at(to) - at(from), up));
                // Clockwise seen from above, from the base line to the line.
                math::atan2(-up.dot(base.cross(line)), base.dot(line))
            }
            ReadingKind::Face {
                end, clock, setup, ..
            } => {
                let frame = self.ends[end.as_str()];
                let clock = clock.value.angle().rad();
                let toward = frame.twelve() * math::cos(clock) + frame.three() * math::sin(clock);
                rise(toward, floor(setup).0)
            }
            _ => return None,
        })
    }
}

fn rise(line: Vector, up: UnitVector) -> f64 {
    let height = up.dot(line);
    math::atan2(height, (line - up * height).norm())
}

/// Writes another value into a reading.
pub(crate) fn rewrite(reading: &mut Reading, value: f64) {
    match &mut reading.kind {
        ReadingKind::Tape { reads, .. }
        | ReadingKind::Height { reads, .. }
        | ReadingKind::Plumb { reads, .. }
        | ReadingKind::Offset { reads, .. } => reads.value = Length::from_mm(value),
        ReadingKind::Inclination { reads, .. }
        | ReadingKind::Bearing { reads, .. }
        | ReadingKind::Face { reads, .. } => reads.value = Angle::from_rad(value),
        _ => {}
    }
}
