//! What moves with what, as ranges of rigid motion in the car.

use tubewright_build::model::{Build, CarrierKind, CarrierRef, Motion as WrittenMotion};
use tubewright_geometry::motion::{Freedom, Motion};
use tubewright_geometry::{Solid, UnitVector};

use crate::places::Places;

/// Why a carrier's motion could not be made.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum MotionError {
    /// A place of its axis is not found.
    #[error(
        "its carrier “{0}” turns about an axis through “{1}”, which is not found; take more readings to it"
    )]
    AxisNotFound(String, String),
    /// The two places of the axis coincide.
    #[error("the axis of its carrier “{0}” has no direction: its two places lie on each other")]
    NoAxis(String),
    /// A carrier of that name does not exist.
    #[error("its carrier “{0}” is not in build.toml")]
    NotThere(String),
}

/// How a carrier moves against the chassis.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CarrierMotion(pub Motion);

/// A solid that holds every position of a moving one up to a margin.
#[derive(Clone, Debug)]
pub struct Swept {
    /// Union of positions.
    pub solid: Solid,
    /// Largest distance of any position from that union, mm: to be added to the gap.
    pub margin_mm: f64,
}

/// Largest step between the positions that a swept solid is made of, mm.
const STEP_MM: f64 = 10.0;

/// Most positions in a swept solid; with more freedoms the step, and with it the margin, grows.
const MOST_POSITIONS: f64 = 48.0;

/// The motion of a carrier.
///
/// # Errors
/// [`MotionError`] when its axis cannot be placed.
pub fn motion_of(
    build: &Build,
    carrier: &CarrierRef,
    places: &Places,
) -> Result<CarrierMotion, MotionError> {
    let CarrierRef::Carrier(name) = carrier else {
        return Ok(CarrierMotion::default());
    };
    let carrier = build
        .carrier(name)
        .ok_or_else(|| MotionError::NotThere(name.to_string()))?;
    let freedoms = match &carrier.kind {
        CarrierKind::Engine(motion) | CarrierKind::Wheel(motion) | CarrierKind::Axle(motion) => {
            freedoms_of(name, motion, places)?
        }
        CarrierKind::Hung { sway } => vec![Freedom::Sway {
            radius_mm: sway.mm(),
        }],
        _ => Vec::new(),
    };
    Ok(CarrierMotion(Motion { freedoms }))
}

fn freedoms_of(
    name: &str,
    motion: &WrittenMotion,
    places: &Places,
) -> Result<Vec<Freedom>, MotionError> {
    let mut freedoms = Vec::new();
    let turns = [
        (&motion.axis, &motion.rock),
        (&motion.kingpin, &motion.steer),
    ];
    for (axis, range) in turns {
        if let (Some([from, to]), Some([least, most])) = (axis, range) {
            let find = |place: &tubewright_build::model::Place| {
                places
                    .place(&place.at)
                    .map(|placed| placed.point_in_car)
                    .ok_or_else(|| {
                        MotionError::AxisNotFound(name.to_owned(), place.at.name().to_string())
                    })
            };
            let (a, b) = (find(from)?, find(to)?);
            let axis = (b - a)
                .direction()
                .ok_or_else(|| MotionError::NoAxis(name.to_owned()))?;
            freedoms.push(Freedom::Turn {
                on_axis: a,
                axis,
                min_rad: least.rad(),
                max_rad: most.rad(),
            });
        }
    }
    if motion.bump.is_some() || motion.droop.is_some() {
        freedoms.push(Freedom::Shift {
            direction: UnitVector::Z,
            min_mm: -motion.droop.as_ref().map_or(0.0, |droop| droop.mm()),
            max_mm: motion.bump.as_ref().map_or(0.0, |bump| bump.mm()),
        });
    }
    Ok(freedoms)
}

impl CarrierMotion {
    /// A solid that holds every position of `solid`, up to a margin. A solid without bounds
    /// (half-space) is given back with the margin infinite when it moves.
    #[must_use]
    pub fn swept(&self, solid: &Solid) -> Swept {
        let sway = self.0.sway_mm();
        if self
            .0
            .freedoms
            .iter()
            .all(|freedom| freedom.range() == (0.0, 0.0))
        {
            return Swept {
                solid: solid.clone(),
                margin_mm: sway,
            };
        }
        let Some(bounds) = solid.bounds() else {
            return Swept {
                solid: solid.clone(),
                margin_mm: f64::INFINITY,
            };
        };
        let (centre, reach) = (bounds.centre(), bounds.half_diagonal_mm());
        // How far anything of the body moves over each whole range; what one freedom adds to the
        // lever of the next is counted in.
        let mut carried = 0.0;
        let spans: Vec<f64> = self
            .0
            .freedoms
            .iter()
            .map(|freedom| {
                let (least, most) = freedom.range();
                let speed = match *freedom {
                    Freedom::Turn { on_axis, axis, .. } => {
                        axis.vector().cross(centre - on_axis).norm() + reach + carried
                    }
                    Freedom::Shift { .. } => 1.0,
                    _ => 0.0,
                };
                let span = (most - least).abs() * speed;
                carried += span;
                span
            })
            .collect();
        let moving = spans.iter().filter(|&&span| span > 0.0).count();
        #[expect(
            clippy::cast_precision_loss,
            reason = "a carrier has at most a few freedoms"
        )]
        let most_each = tubewright_geometry::math::pow(MOST_POSITIONS, 1.0 / moving.max(1) as f64);
        let mut margin = sway;
        let mut positions: Vec<Vec<f64>> = vec![Vec::new()];
        for (freedom, span) in self.0.freedoms.iter().zip(&spans) {
            let (least, most) = freedom.range();
            let steps = (span / STEP_MM).ceil().clamp(1.0, most_each);
            if *span <= 0.0 {
                positions.iter_mut().for_each(|values| values.push(0.0));
                continue;
            }
            margin += 0.5 * span / steps;
            let mut next = Vec::new();
            for values in &positions {
                let mut step = 0.0;
                while step <= steps {
                    let mut values = values.clone();
                    values.push(least + (most - least) * (step / steps));
                    next.push(values);
                    step += 1.0;
                }
            }
            positions = next;
        }
        let solids = positions
            .iter()
            .map(|values| self.0.at(values).solid(solid))
            .collect();
        Swept {
            solid: Solid::Union(solids),
            margin_mm: margin,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use tubewright_geometry::{Point, distance};

    proptest! {
        #[test]
        fn every_position_is_held_by_the_swept_solid_and_its_margin(
            bump in 0.0..90f64, droop in 0.0..90f64, steer in 0.05..0.6f64,
            at_bump in 0.0..1f64, at_steer in 0.0..1f64,
            x in -330.0..330f64, z in -330.0..330f64,
        ) {
            let motion = CarrierMotion(Motion { freedoms: vec![
                Freedom::Turn {
                    on_axis: Point::new(0.0, -600.0, 300.0), axis: UnitVector::Z,
                    min_rad: -steer, max_rad: steer,
                },
                Freedom::Shift { direction: UnitVector::Z, min_mm: -droop, max_mm: bump },
            ]});
            let tyre = Solid::Cylinder {
                a: Point::new(0.0, -800.0, 300.0), b: Point::new(0.0, -600.0, 300.0), radius: 320.0,
            };
            prop_assume!(tubewright_geometry::math::hypot(x, z) < 320.0);
            let swept = motion.swept(&tyre);
            let values = [-steer + at_steer * 2.0 * steer, -droop + at_bump * (bump + droop)];
            let place = motion.0.at(&values).point(Point::new(x, -700.0, 300.0 + z));
            let away = distance::point_to_solid(place, &swept.solid);
            prop_assert!(away <= swept.margin_mm + 1e-9, "{away} > {}", swept.margin_mm);
        }
    }
}
