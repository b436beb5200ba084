//! Readings and targets in the person's own names.

use super::{Line, Network, ReadingKind, Target};
use tubewright_geometry::math::PI;

impl Network {
    /// What a person would call a target: `rail left`, `port 1 at 3 o'clock`, `flange, hole 2`.
    #[must_use]
    pub fn target_name(&self, target: Target) -> String {
        let end_name = |end: super::EndId| self.ends.get(end.0).map_or("?", |e| e.name.as_str());
        match target {
            Target::Point(p) => self
                .points
                .get(p.0)
                .map_or_else(|| "?".to_owned(), |p| p.name.clone()),
            Target::Rim { end, clock_rad } => {
                let hours = (clock_rad * 6.0 / PI).rem_euclid(12.0);
                let hours = if (0.05..=11.95).contains(&hours) {
                    hours
                } else {
                    12.0
                };
                let rounded = (hours * 10.0).round() / 10.0;
                format!("{} at {rounded} o'clock", end_name(end))
            }
            Target::Hole { end, hole } => format!("{}, hole {}", end_name(end), hole + 1),
            Target::Centre(end) => format!("{}, centre", end_name(end)),
        }
    }

    /// A reading in words without its value: `rail left to port 1`.
    #[must_use]
    pub fn reading_name(&self, kind: &ReadingKind) -> String {
        let name = |t: Target| self.target_name(t);
        let setup = |s: super::SetupId| self.setups.get(s.0).map_or("?", |s| s.name.as_str());
        match *kind {
            ReadingKind::Tape { from, to, .. } => {
                format!("{} to {}", name(from.target), name(to.target))
            }
            ReadingKind::Height { target, setup: s } => {
                format!("height of {} ({})", name(target.target), setup(s))
            }
            ReadingKind::Plumb { from, to, setup: s } => {
                format!("{} to {} on the floor ({})", name(from), name(to), setup(s))
            }
            ReadingKind::Offset { from, to, along } => match along {
                Line::Through(a, b) => format!(
                    "{} to {} along {} to {}",
                    name(from),
                    name(to),
                    name(a),
                    name(b)
                ),
                Line::Plumb(s) => {
                    format!("{} to {} straight up ({})", name(from), name(to), setup(s))
                }
            },
            ReadingKind::Symmetry { left, right }
            | ReadingKind::AxisSymmetry {
                p: left, q: right, ..
            } => format!("{} symmetrical to {}", name(left), name(right)),
            ReadingKind::Inclination { from, to, setup: s } => {
                format!("slope from {} to {} ({})", name(from), name(to), setup(s))
            }
            ReadingKind::Bearing {
                from,
                to,
                base_from,
                base_to,
                ..
            } => format!(
                "angle in plan from {}–{} to {}–{}",
                name(base_from),
                name(base_to),
                name(from),
                name(to)
            ),
            ReadingKind::FaceInclination {
                end,
                clock_rad,
                setup: s,
            } => format!(
                "slope of the face toward {} ({})",
                name(Target::Rim { end, clock_rad }),
                setup(s)
            ),
            ReadingKind::TwelveUp { end, .. } => {
                format!("twelve o'clock of {} at the top", name(Target::Centre(end)))
            }
        }
    }
}
