//! Rounded pieces of a run with their marks, frames and swept tubes: what is cut, tacked, checked and
//! drawn. From here on the rounded numbers are the truth.

use std::collections::BTreeSet;
use tubewright_build::model::Section;
use tubewright_geometry::{CentreLine, Frame, Point, TubeElement, Vector, math};
use tubewright_route::problem::{PartPose, Side};

use super::ends::Sawn;

/// What a piece is, by its sizes alone.
#[derive(Clone, Debug, PartialEq)]
pub enum PlannedKind {
    /// Straight tube.
    Straight {
        /// Length in mm.
        length_mm: f64,
    },
    /// A bend.
    Bend {
        /// Degree of bend in radians.
        angle_rad: f64,
        /// Clock in radians from the plane of the bend before, clockwise looking downstream (right-hand
        /// about the travel); for the first bend from twelve o'clock of the start.
        clock_rad: f64,
        /// Centre-line radius in mm.
        clr_mm: f64,
    },
    /// A component of the build.
    Component {
        /// Its name.
        name: String,
        /// Length along its axis in mm.
        length_mm: f64,
        /// Roll in radians from lying flat.
        roll_rad: f64,
    },
    /// The run's way through a crossover.
    Crossover {
        /// Name of the component.
        name: String,
        /// Side entered.
        side: Side,
        /// Where it lies, and how.
        pose: PartPose,
    },
}

/// A rim that faces up or down more than this (sine) has no highest place to speak of.
const UPRIGHT: f64 = 0.98;

/// One piece of a run.
#[derive(Clone, Debug, PartialEq)]
pub struct PlannedPiece {
    /// Painted on the steel: run letter and number, given once.
    pub mark: String,
    /// Mark of the joint upstream of it.
    pub joint: String,
    /// What it is.
    pub kind: PlannedKind,
    /// At its upstream end; for a bend twelve o'clock is already toward the bend's centre.
    pub frame_in: Frame,
    /// At its downstream end.
    pub frame_out: Frame,
    /// The room it takes, as swept balls, in the car.
    pub elements: Vec<TubeElement>,
    /// How far its real outside may stick out of `elements`, mm (corners of a can with short necks).
    pub uncovered_mm: f64,
}

/// A run of rounded pieces.
#[derive(Clone, Debug, PartialEq)]
pub struct PlannedRun {
    /// Its name.
    pub name: String,
    /// Tube size's name.
    pub tube: String,
    /// Outside diameter in mm.
    pub od_mm: f64,
    /// Outside diameter at its end in mm: another where the part that it brings has another outlet.
    pub end_od_mm: f64,
    /// Where it starts.
    pub start: Frame,
    /// How the outlet is sawn off for it, where it is.
    pub sawn: Option<Sawn>,
    /// Where it should arrive.
    pub end_point: Point,
    /// In which direction it should arrive.
    pub end_direction: tubewright_geometry::UnitVector,
    /// The pieces in order of flow.
    pub pieces: Vec<PlannedPiece>,
    /// Mark of the joint at its end.
    pub last_joint: String,
    /// Centre-line radius of its bends, mm.
    pub clr_mm: f64,
    /// Gap that it must keep from itself, mm.
    pub self_gap_mm: f64,
    /// Gap that it must keep from other runs, mm.
    pub run_gap_mm: f64,
    /// Where runs meet: the part that it starts from.
    pub starts_on: Option<String>,
    /// Where runs meet: the part that it ends at; one of the runs that do has it as its last piece.
    pub ends_on: Option<String>,
    /// Joints whose twelve o'clock is the line of the part behind them and not of the one before: there a bend
    /// is tacked against the flow, and its open end is what the hours are scribed on. Empty until the order of
    /// tacking is known.
    pub lined_from_behind: BTreeSet<String>,
}

impl PlannedRun {
    /// Where the pieces end.
    #[must_use]
    pub fn arrival(&self) -> Frame {
        self.pieces
            .last()
            .map_or(self.start, |piece| piece.frame_out)
    }

    /// Twelve o'clock of the rim that it starts from, in words: what is there to count from, and where the survey
    /// has it against the highest place.
    #[must_use]
    pub fn twelve_words(&self) -> String {
        let level = Frame::upright(self.start.origin, self.start.travel());
        let off_rad = level.clock_of(self.start.twelve().vector());
        let is_upright = self.start.travel().vector().z.abs() > UPRIGHT;
        let off_deg = math::wrap_to_pi(off_rad).to_degrees();
        let scribed = match (&self.starts_on, &self.sawn) {
            (Some(part), _) => format!("twelve o'clock, the highest place of the outlet of {part}"),
            (None, Some(_)) => {
                "twelve o'clock as it was scribed on the rim, carried along the outlet to behind the saw cut \
                 before that is made"
                    .to_owned()
            }
            (None, None) => {
                "twelve o'clock as it was scribed on the rim when that was measured".to_owned()
            }
        };
        if is_upright || off_deg.abs() < 0.5 {
            scribed
        } else {
            let round = if off_deg > 0.0 {
                "clockwise"
            } else {
                "anticlockwise"
            };
            format!(
                "{scribed} (reckoned {:.1}° {round} of its highest place)",
                off_deg.abs()
            )
        }
    }

    /// Whether the part that it ends at is its last piece.
    #[must_use]
    pub fn brings_its_end(&self) -> bool {
        let last = self.pieces.last().map(|piece| &piece.kind);
        match (last, &self.ends_on) {
            (Some(PlannedKind::Crossover { name, .. }), Some(part)) => name == part,
            _ => false,
        }
    }

    /// Names of the parts where it meets other runs: that it passes, starts from or ends at.
    #[must_use]
    pub fn met_parts(&self) -> BTreeSet<&str> {
        self.pieces
            .iter()
            .filter_map(|piece| match &piece.kind {
                PlannedKind::Crossover { name, .. } => Some(name.as_str()),
                _ => None,
            })
            .chain(self.starts_on.as_deref())
            .chain(self.ends_on.as_deref())
            .collect()
    }

    /// Outside diameter at the joint upstream of a piece, or at the end behind the last, mm.
    #[must_use]
    pub fn od_at_joint_mm(&self, piece: usize) -> f64 {
        if piece < self.pieces.len() {
            self.od_mm
        } else {
            self.end_od_mm
        }
    }

    /// The part that it is tacked to at its end and that another run brings.
    #[must_use]
    pub fn ends_at_part(&self) -> Option<&str> {
        let part = self.ends_on.as_deref()?;
        (!self.brings_its_end()).then_some(part)
    }

    /// Distance in mm between where the pieces end and where they should.
    #[must_use]
    pub fn end_error_mm(&self) -> f64 {
        self.arrival().origin.distance(self.end_point)
    }

    /// Angle in radians between how the pieces arrive and how they should.
    #[must_use]
    pub fn end_error_rad(&self) -> f64 {
        self.arrival().travel().angle_to(self.end_direction)
    }

    /// Distance along the run within which it cannot come back to itself, mm: half a turn.
    #[must_use]
    pub fn half_turn_mm(&self) -> f64 {
        tubewright_geometry::math::PI * self.clr_mm + 1.0
    }

    /// Length along the centre line, mm.
    #[must_use]
    pub fn developed_length_mm(&self) -> f64 {
        self.pieces.iter().map(PlannedPiece::centre_line_mm).sum()
    }

    /// Sum of the degrees of bend, radians.
    #[must_use]
    pub fn sum_of_bends_rad(&self) -> f64 {
        self.pieces
            .iter()
            .map(|piece| match piece.kind {
                PlannedKind::Bend { angle_rad, .. } => angle_rad,
                _ => 0.0,
            })
            .sum()
    }
}

impl PlannedPiece {
    /// The frame at a distance along its centre line from its upstream end, mm; on a straight line for a
    /// crossover, whose arms are not told apart here.
    #[must_use]
    pub fn frame_at(&self, at_mm: f64) -> Frame {
        match self.kind {
            PlannedKind::Bend { clr_mm, .. } => self.frame_in.bent(at_mm / clr_mm, clr_mm),
            _ => self.frame_in.advanced(at_mm),
        }
    }

    /// Length along the centre line, mm; straight across for a crossover.
    #[must_use]
    pub fn centre_line_mm(&self) -> f64 {
        match self.kind {
            PlannedKind::Straight { length_mm } | PlannedKind::Component { length_mm, .. } => {
                length_mm
            }
            PlannedKind::Bend {
                angle_rad, clr_mm, ..
            } => angle_rad * clr_mm,
            PlannedKind::Crossover { .. } => self.frame_in.origin.distance(self.frame_out.origin),
        }
    }
}

/// The can of a component as balls along its axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CanBalls {
    /// Radius of the balls in mm.
    pub radius_mm: f64,
    /// How far corners of the real can stick out of them, mm.
    pub uncovered_mm: f64,
}

/// How much larger than the can its balls may be made to hold its corners.
const MOST_GROWTH: f64 = 1.25;

/// Balls that hold a can of `radius_mm` with flat ends, whose body begins `neck_mm` from each end of
/// the component.
///
/// A ball of radius ρ centred ρ from the component's end holds the can's corner at (neck, r) when
/// (ρ − neck)² + r² ≤ ρ², that is ρ ≥ (neck² + r²) / (2 neck). Where short necks would make ρ larger
/// than 1.25 r, the corner sticks out by what is given as uncovered and is taken off every gap.
#[must_use]
pub fn can_balls(radius_mm: f64, neck_mm: f64) -> CanBalls {
    if neck_mm >= radius_mm {
        return CanBalls {
            radius_mm,
            uncovered_mm: 0.0,
        };
    }
    let holding = if neck_mm > 0.0 {
        (neck_mm * neck_mm + radius_mm * radius_mm) / (2.0 * neck_mm)
    } else {
        f64::INFINITY
    };
    let grown = holding.clamp(radius_mm, MOST_GROWTH * radius_mm);
    let corner = ((grown - neck_mm).powi(2) + radius_mm * radius_mm).sqrt();
    CanBalls {
        radius_mm: grown,
        uncovered_mm: (corner - grown).max(0.0),
    }
}

/// The cross-section of a can: half height and the half width beyond it, mm.
#[must_use]
pub fn half_section(section: Option<&Section>, tube_od_mm: f64) -> (f64, f64) {
    match section {
        Some(Section::Round { diameter }) => (0.5 * diameter.mm(), 0.0),
        Some(Section::Oval { width, height }) => {
            let (wide, high) = (width.mm().max(height.mm()), width.mm().min(height.mm()));
            (0.5 * high, 0.5 * (wide - high))
        }
        // Balls spread over the width hold a box's corners when they reach its diagonal.
        Some(Section::Box { width, height }) => {
            let (wide, high) = (width.mm().max(height.mm()), width.mm().min(height.mm()));
            (0.5 * high * core::f64::consts::SQRT_2, 0.5 * (wide - high))
        }
        None => (0.5 * tube_od_mm, 0.0),
    }
}

/// The swept balls of a component that starts at `frame`.
#[must_use]
pub fn component_elements(
    frame: &Frame,
    length_mm: f64,
    balls: CanBalls,
    half_spread_mm: f64,
    roll_rad: f64,
    tube_radius_mm: f64,
) -> Vec<TubeElement> {
    let mut elements = vec![TubeElement {
        line: CentreLine::straight(frame, length_mm),
        radius: tube_radius_mm,
    }];
    let radius = balls.radius_mm;
    let (from, to) = if length_mm < 2.0 * radius {
        (0.5 * length_mm, 0.5 * length_mm)
    } else {
        (radius, length_mm - radius)
    };
    let flat = Frame::upright(frame.origin, frame.travel()).rolled(roll_rad);
    let across = flat.three();
    // Spread balls at half-radius steps and grow them so that the hull between neighbours is held:
    // two balls of radius r at distance d apart leave at most r − √(r² − d²/4) uncovered.
    let steps = if half_spread_mm > 0.0 {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "a can is at most a few radii wide"
        )]
        let steps = (2.0 * half_spread_mm / (0.25 * radius)).ceil() as u32;
        steps.max(1)
    } else {
        0
    };
    let apart = if steps == 0 {
        0.0
    } else {
        2.0 * half_spread_mm / f64::from(steps)
    };
    let sagitta = radius - (radius * radius - 0.25 * apart * apart).max(0.0).sqrt();
    for step in 0..=steps {
        let share = if steps == 0 {
            0.0
        } else {
            f64::from(step) / f64::from(steps) * 2.0 - 1.0
        };
        let shift: Vector = across * (share * half_spread_mm);
        elements.push(TubeElement {
            line: CentreLine::Segment {
                a: frame.origin + frame.travel() * from + shift,
                b: frame.origin + frame.travel() * to + shift,
            },
            radius: radius + sagitta,
        });
    }
    elements
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use tubewright_geometry::UnitVector;

    proptest! {
        #[test]
        fn every_place_of_the_real_can_is_held_or_declared_uncovered(
            radius in 30.0..90f64, neck in 0.0..60f64, length in 200.0..600f64,
            spread in 0.0..60f64, roll in -3.0..3f64,
            along in 0.0..1f64, round in 0.0..tubewright_geometry::math::TAU,
        ) {
            prop_assume!(length > 2.0 * neck + 20.0);
            let balls = can_balls(radius, neck);
            let frame = Frame::upright(Point::new(1.0, 2.0, 3.0), UnitVector::X);
            let elements = component_elements(&frame, length, balls, spread, roll, 25.0);
            // A place on the outside of the real can: flat ends at the necks, oval section.
            let flat = frame.rolled(roll);
            let (sin, cos) = tubewright_geometry::math::sin_cos(round);
            let side = if sin >= 0.0 { spread } else { -spread };
            let x = neck + along * (length - 2.0 * neck);
            let place = frame.origin + frame.travel() * x
                + flat.twelve() * (radius * cos) + flat.three() * (radius * sin + side);
            let outside = elements.iter().map(|element| {
                let CentreLine::Segment { a, b } = element.line else { return f64::INFINITY };
                tubewright_geometry::distance::point_to_segment(place, a, b) - element.radius
            }).fold(f64::INFINITY, f64::min);
            prop_assert!(outside <= balls.uncovered_mm + 1e-6, "{outside} > {}", balls.uncovered_mm);
        }
    }
}
