//! All that a part which stands off a run might touch.

use tubewright_plan::bodies::PlacedBody;
use tubewright_plan::routes::PlannedRun;
use tubewright_walker::{Ball, Freedom, Solid, least_gap_moving};

use super::clearance::{RUN_SPACING_MM, Rider, balls_as_solid, riders, sways};
use super::convert;
use super::solved::Solved;

/// A body, or a piece of a run.
pub(crate) struct Neighbour<'a> {
    pub(crate) name: String,
    pub(crate) body: Option<&'a PlacedBody>,
    pub(crate) solid: Solid,
    pub(crate) freedoms: Vec<Freedom>,
    /// It rides with what stands off, which then cannot come nearer.
    pub(crate) is_together: bool,
}

impl Neighbour<'_> {
    /// The least gap of `balls` that ride with `rider` over sampled positions, what the body's shape leaves open
    /// taken off, mm.
    pub(crate) fn gap_mm(&self, balls: &[Ball], rider: &Rider) -> Option<f64> {
        let (own, theirs): (&[Freedom], &[Freedom]) = if self.is_together {
            (&[], &[])
        } else {
            (&rider.freedoms, &self.freedoms)
        };
        let near = least_gap_moving(balls, own, &self.solid, theirs, 5)?;
        Some(near.gap - self.body.map_or(0.0, |body| body.allowance_mm))
    }
}

/// Every body, and every piece but that with `number` of `run`, as `rider`, which is that piece, meets them.
pub(crate) fn neighbours<'a>(
    solved: &'a Solved,
    runs: &[PlannedRun],
    (run, number): (&PlannedRun, usize),
    rider: &Rider,
) -> Vec<Neighbour<'a>> {
    let mut all = Vec::new();
    for body in &solved.around.bodies.placed {
        let mut bodies = solved.model.build.bodies.iter();
        let written = bodies
            .find(|written| written.name == *body.name)
            .expect("placed from the build");
        let build = &solved.model.build;
        all.push(Neighbour {
            name: body.name.clone(),
            body: Some(body),
            solid: convert::solid(&body.solid_in_car),
            freedoms: convert::freedoms(build, &written.carrier, &solved.around.measured.places),
            is_together: rider.carrier == written.carrier && !sways(rider),
        });
    }
    for other in runs {
        let is_own = other.name == run.name;
        let theirs = riders(solved, other, RUN_SPACING_MM);
        for (at, them) in theirs.into_iter().enumerate() {
            if is_own && at == number || them.balls.is_empty() {
                continue;
            }
            // One run is one chain: what rides alike does not move against itself.
            let is_together = if is_own {
                rider.freedoms == them.freedoms && rider.carrier == them.carrier
            } else {
                rider.carrier == them.carrier && !sways(rider) && !sways(&them)
            };
            all.push(Neighbour {
                name: format!("{} of {}", them.mark, other.name),
                body: None,
                solid: balls_as_solid(&them.balls),
                freedoms: them.freedoms,
                is_together,
            });
        }
    }
    all
}

/// Joints of a run nearer than `least_mm` along a chord to a place on its piece `number`, at which two sawn parts
/// meet, with how near.
pub(crate) fn seams_near(
    run: &PlannedRun,
    supply: &tubewright_plan::stages::Supply,
    number: usize,
    middle: tubewright_geometry::Vector,
    least_mm: f64,
) -> Vec<(String, f64)> {
    let in_one_part = |a: &str, b: &str| {
        let mut parts = supply.whole.cuts.iter().flat_map(|cut| &cut.parts);
        parts.any(|part| {
            let has = |mark: &str| part.serves.iter().any(|serves| serves.mark == mark);
            has(a) && has(b)
        })
    };
    let pairs = run.pieces.windows(2).enumerate();
    pairs
        .filter(|(at, pair)| {
            (at + 1 == number || *at == number) && !in_one_part(&pair[0].mark, &pair[1].mark)
        })
        .map(|(_, pair)| {
            let away = (pair[1].frame_in.origin.to_vector() - middle).norm();
            (pair[1].joint.clone(), away)
        })
        .filter(|(_, away)| *away < least_mm)
        .collect()
}
