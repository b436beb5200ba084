//! What to measure next, what nothing else checks, and what the readings do not say yet.

use tubewright_build::model::Build;
use tubewright_geometry::distance::point_to_solid;
use tubewright_geometry::{Point, Solid, UnitVector, Vector};
use tubewright_survey::{
    Goal, Handedness, Means, Measure, PointId, Proposal, ReadingKind, SetupId, Stance, Survey,
    Target, Twin,
};

use super::{Measured, NINETEEN_IN_TWENTY};
use crate::bodies::PlacedBody;

/// All of it.
#[derive(Clone, Debug, Default)]
pub struct Guide {
    /// Readings to take next, the one that gains most first.
    pub next: Vec<Suggestion>,
    /// Readings that nothing else checks.
    pub unchecked: Vec<Check>,
    /// Places and ends that the readings do not fix.
    pub missing: Vec<Lack>,
    /// What is wrong with set-ups.
    pub setups: Vec<SetupTrouble>,
    /// Places that fit as well somewhere else.
    pub twofold: Vec<Twofold>,
    /// True when nothing tells the car from its mirror image.
    pub may_be_mirrored: bool,
}

/// A reading worth taking.
#[derive(Clone, Debug)]
pub struct Suggestion {
    /// What to measure.
    pub reading: ReadingKind,
    /// The same in the person's own names.
    pub words: String,
    /// What it will show, in mm, where that is known.
    pub shows: Option<Measure>,
    /// What it does to the place that gains most from it.
    pub gain: Option<Gain>,
}

/// What a reading makes surer.
#[derive(Clone, Debug)]
pub struct Gain {
    /// What becomes surer.
    pub of: Surer,
    /// ± before (19 in 20), mm; radians for a direction.
    pub before: f64,
    /// ± with the reading.
    pub after: f64,
}

/// What becomes surer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Surer {
    /// A mark or point: its three coordinates together.
    Place(String),
    /// The direction of an end.
    Direction(String),
}

/// A reading that nothing else checks.
#[derive(Clone, Debug)]
pub struct Check {
    /// Its number.
    pub number: u32,
    /// The reading in words.
    pub words: String,
    /// The reading that would check it best.
    pub by: Option<String>,
}

/// A place or end that the readings do not fix.
#[derive(Clone, Debug)]
pub struct Lack {
    /// Its name.
    pub name: String,
    /// True for an end.
    pub is_end: bool,
    /// How many more readings it takes at least.
    pub readings: usize,
    /// The one to take first.
    pub first: Option<String>,
}

/// What is wrong with a set-up.
#[derive(Clone, Debug, PartialEq)]
pub enum SetupTrouble {
    /// It is in use, but its floor is not fixed.
    FloorNotFixed {
        /// Its name.
        setup: String,
        /// Places with a height in it.
        heights: usize,
    },
    /// The plumb line leans against the floor further than garage floors do.
    FloorSlopes {
        /// Its name.
        setup: String,
        /// Between the plumb line and the floor's own upright, radians.
        lean_rad: f64,
    },
    /// No set-up on its wheels has a floor: ground clearance is not checked.
    NoneOnWheels,
    /// It is written down but no reading names it.
    NotUsed {
        /// Its name.
        setup: String,
    },
}

/// A place or end that fits the readings as well elsewhere.
#[derive(Clone, Debug, PartialEq)]
pub struct Twofold {
    /// Its name.
    pub name: String,
    /// How far away the other place is, mm.
    pub apart_mm: f64,
    /// By how much an end is turned there, radians; zero for a point.
    pub turned_rad: f64,
}

/// Longest line that is proposed, mm: two people and a 5 m tape under a car (common practice, no
/// source).
const LONGEST_MM: f64 = 3000.0;

/// Most suggestions.
const MOST: usize = 5;

/// Proposals that are looked through for lines that a tape can take.
const LOOKED_THROUGH: usize = 60;

/// Lean of the plumb line against the floor that is worth a word, radians: floors are laid with up to
/// 1 in 50 for the water (common practice, no source).
const LEAN_RAD: f64 = 0.03;

/// A gain below this part of the ± is not worth a reading.
const LEAST_GAIN: f64 = 0.02;

/// Fewer places than these have no mirror image worth a word.
const LEAST_SHAPE: usize = 3;

/// Looks through an adjusted build.
#[must_use]
pub fn guide(build: &Build, measured: &Measured, bodies: &[PlacedBody]) -> Guide {
    let looker = Looker {
        measured,
        bodies,
        means: Means {
            tape_sigma_mm: measured.accuracy.tape.mm() / NINETEEN_IN_TWENTY,
            height_sigma_mm: measured.accuracy.height.mm() / NINETEEN_IN_TWENTY,
            longest_mm: LONGEST_MM,
        },
    };
    let survey = measured.places.joint.survey();
    Guide {
        next: survey.map(|survey| looker.next(survey)).unwrap_or_default(),
        unchecked: looker.unchecked(survey),
        missing: looker.missing(build),
        setups: looker.setups(build),
        twofold: looker.twofold(),
        may_be_mirrored: measured.adjustment.handedness() == Handedness::Assumed
            && measured.places.points.len() >= LEAST_SHAPE,
    }
}

/// Distances between places that the readings fix, nothing said of axes, in the order of the build.
#[must_use]
pub fn known_distances(measured: &Measured) -> Vec<(PointId, PointId, Measure)> {
    let adjustment = &measured.adjustment;
    let count = measured.named.network.points.len();
    let mut found = Vec::new();
    for a in 0..count {
        for b in a + 1..count {
            let (a, b) = (PointId(a), PointId(b));
            if let Some(apart) = adjustment.distance(Target::Point(a), Target::Point(b)) {
                found.push((a, b, apart));
            }
        }
    }
    found
}

struct Looker<'a> {
    measured: &'a Measured,
    bodies: &'a [PlacedBody],
    means: Means,
}

impl Looker<'_> {
    fn next(&self, survey: &Survey) -> Vec<Suggestion> {
        let mut found: Vec<Suggestion> = Vec::new();
        let mut goals = vec![Goal::Everything];
        goals.extend(self.weakest(survey).into_iter().map(|(_, goal)| goal));
        for goal in goals {
            if found.len() >= MOST {
                break;
            }
            let best = self.best(survey, goal, |kind| {
                found.iter().all(|known| known.reading != *kind)
            });
            found.extend(best.map(|proposal| self.suggestion(survey, &proposal, goal)));
        }
        found.retain(|suggestion| {
            suggestion
                .gain
                .as_ref()
                .is_some_and(|gain| gain.before - gain.after > LEAST_GAIN * gain.before)
        });
        found
    }

    /// The best reading for a goal that a tape can take.
    fn best(
        &self,
        survey: &Survey,
        goal: Goal,
        is_new: impl Fn(&ReadingKind) -> bool,
    ) -> Option<Proposal> {
        self.measured
            .adjustment
            .next_readings(survey, goal, self.means, LOOKED_THROUGH)
            .into_iter()
            .find(|proposal| is_new(&proposal.kind) && self.can_be_taken(&proposal.kind))
    }

    /// Ends by direction, then places, the least sure of each first.
    fn weakest(&self, survey: &Survey) -> Vec<(f64, Goal)> {
        let network = &self.measured.named.network;
        let mut ends: Vec<(f64, Goal)> = (0..network.ends.len())
            .map(tubewright_survey::EndId)
            .filter_map(|id| Some((survey.end(id)?.direction_sigma_rad(), Goal::Direction(id))))
            .collect();
        let mut places: Vec<(f64, Goal)> = (0..network.points.len())
            .map(PointId)
            .filter_map(|id| {
                let sigmas = survey.point(id)?.sigmas();
                let sum: f64 = sigmas.iter().map(|s| s * s).sum();
                Some((sum, Goal::Point(id)))
            })
            .collect();
        for list in [&mut ends, &mut places] {
            list.sort_by(|a, b| b.0.total_cmp(&a.0));
        }
        ends.extend(places);
        ends
    }

    fn suggestion(&self, survey: &Survey, proposal: &Proposal, goal: Goal) -> Suggestion {
        Suggestion {
            reading: proposal.kind,
            words: self.words(&proposal.kind),
            shows: proposal.expected,
            gain: self.gain(survey, &proposal.kind, goal),
        }
    }

    /// What a reading does to the place or end that was its goal; of everything, to that which gains
    /// most, by how far its ± comes down against what it was.
    fn gain(&self, survey: &Survey, kind: &ReadingKind, wanted: Goal) -> Option<Gain> {
        let network = &self.measured.named.network;
        let sigma = match kind {
            ReadingKind::Height { .. } => self.means.height_sigma_mm,
            _ => self.means.tape_sigma_mm,
        };
        let points = (0..network.points.len()).map(PointId).map(|id| {
            let name = network.points.get(id.0).map(|p| p.name.clone());
            (Goal::Point(id), name.map(Surer::Place))
        });
        let ends = (0..network.ends.len())
            .map(tubewright_survey::EndId)
            .map(|id| {
                let name = network.ends.get(id.0).map(|e| e.name.clone());
                (Goal::Direction(id), name.map(Surer::Direction))
            });
        points
            .chain(ends)
            .filter(|(goal, _)| matches!(wanted, Goal::Everything) || *goal == wanted)
            .filter_map(|(goal, of)| {
                let effect = self.measured.adjustment.effect(survey, kind, sigma, goal)?;
                Some(Gain {
                    of: of?,
                    before: NINETEEN_IN_TWENTY * effect.0,
                    after: NINETEEN_IN_TWENTY * effect.1,
                })
            })
            .filter(|gain| gain.before > 0.0)
            .min_by(|a, b| (a.after / a.before).total_cmp(&(b.after / b.before)))
    }

    fn words(&self, kind: &ReadingKind) -> String {
        let name = self.measured.named.network.reading_name(kind);
        match kind {
            ReadingKind::Tape { .. } => format!("tape {name}"),
            _ => name,
        }
    }

    fn unchecked(&self, survey: Option<&Survey>) -> Vec<Check> {
        let network = &self.measured.named.network;
        let mut numbers: Vec<u32> = self
            .measured
            .adjustment
            .readings()
            .iter()
            .filter(|reading| !reading.set_aside && reading.is_unchecked())
            .map(|reading| reading.number)
            .collect();
        numbers.dedup();
        numbers
            .into_iter()
            .map(|number| Check {
                number,
                words: network
                    .reading(number)
                    .map(|reading| network.reading_name(&reading.kind))
                    .unwrap_or_default(),
                by: survey
                    .and_then(|survey| self.best(survey, Goal::Reading(number), |_| true))
                    .map(|proposal| self.words(&proposal.kind)),
            })
            .collect()
    }

    fn missing(&self, build: &Build) -> Vec<Lack> {
        self.measured
            .adjustment
            .missing(self.means)
            .into_iter()
            .map(|missing| {
                let name = match missing.what {
                    Target::Point(id) => build_name(self.measured, id),
                    other => self.end_name(other),
                };
                Lack {
                    is_end: build.end(&name).is_some(),
                    name,
                    readings: missing.readings,
                    first: missing.first.map(|kind| self.words(&kind)),
                }
            })
            .collect()
    }

    fn end_name(&self, target: Target) -> String {
        let ends = &self.measured.named.network.ends;
        match target {
            Target::Centre(end) | Target::Rim { end, .. } | Target::Hole { end, .. } => ends
                .get(end.0)
                .map(|end| end.name.clone())
                .unwrap_or_default(),
            Target::Point(id) => build_name(self.measured, id),
        }
    }

    fn setups(&self, build: &Build) -> Vec<SetupTrouble> {
        let network = &self.measured.named.network;
        let adjustment = &self.measured.adjustment;
        let mut found = Vec::new();
        let mut on_wheels = false;
        for (index, spec) in network.setups.iter().enumerate() {
            let id = SetupId(index);
            let used = || {
                network
                    .readings
                    .iter()
                    .filter(move |r| !r.set_aside && r.kind.setup() == Some(id))
            };
            let setup = spec.name.clone();
            if used().next().is_none() {
                found.push(SetupTrouble::NotUsed { setup });
                continue;
            }
            if !adjustment.fixes_floor(id) {
                let heights = used()
                    .filter(|r| matches!(r.kind, ReadingKind::Height { .. }))
                    .count();
                found.push(SetupTrouble::FloorNotFixed { setup, heights });
                continue;
            }
            let has_height = used().any(|r| matches!(r.kind, ReadingKind::Height { .. }));
            on_wheels |= spec.stance == Stance::Wheels && has_height;
            if let Some(floor) = self.measured.places.floors.get(&setup) {
                let lean_rad = floor.up.angle_to(floor.plumb);
                if lean_rad > LEAN_RAD {
                    found.push(SetupTrouble::FloorSlopes { setup, lean_rad });
                }
            }
        }
        if !on_wheels && !build.readings.is_empty() {
            found.push(SetupTrouble::NoneOnWheels);
        }
        found
    }

    fn twofold(&self) -> Vec<Twofold> {
        self.measured
            .adjustment
            .twins()
            .iter()
            .map(|twin| Twofold {
                name: match twin.what {
                    Twin::Point(id) => build_name(self.measured, id),
                    Twin::End(end) => self.end_name(Target::Centre(end)),
                },
                apart_mm: twin.apart_mm,
                turned_rad: twin.turned_rad,
            })
            .collect()
    }

    /// False for a tape line through a body that is in the way; a body that one of its ends lies in is
    /// no obstacle, nor is one that the tape only touches.
    fn can_be_taken(&self, kind: &ReadingKind) -> bool {
        let ReadingKind::Tape { from, to, .. } = kind else {
            return true;
        };
        let (Some(a), Some(b)) = (self.place(from.target), self.place(to.target)) else {
            return true;
        };
        self.bodies.iter().all(|body| {
            let solid = &body.solid_in_car;
            let has_inside = !matches!(solid, Solid::Mesh(_) | Solid::Cloud { .. });
            !has_inside || is_inside(a, solid) || is_inside(b, solid) || !passes(a, b, solid)
        })
    }

    fn place(&self, target: Target) -> Option<Point> {
        let network = &self.measured.named.network;
        let places = &self.measured.places;
        match target {
            Target::Point(id) => {
                let name = &network.points.get(id.0)?.name;
                Some(places.points.get(name)?.point_in_car)
            }
            Target::Centre(end) | Target::Rim { end, .. } | Target::Hole { end, .. } => {
                let spec = network.ends.get(end.0)?;
                let frame = places.ends.get(&spec.name)?.frame_in_car;
                Some(match target {
                    Target::Rim { clock_rad, .. } => {
                        frame.origin + frame.at_clock(clock_rad) * spec.rim_radius_mm
                    }
                    _ => frame.origin,
                })
            }
        }
    }
}

fn build_name(measured: &Measured, id: PointId) -> String {
    measured
        .named
        .network
        .points
        .get(id.0)
        .map(|point| point.name.clone())
        .unwrap_or_default()
}

/// How deep a tape may press before a body counts as in the way, mm.
const TOUCH_MM: f64 = 5.0;

/// Distance along a line between the places that are looked at, mm.
const LOOK_EVERY_MM: f64 = 25.0;

/// Deeper inside than a tape touches.
fn is_inside(place: Point, solid: &Solid) -> bool {
    [UnitVector::X, UnitVector::Y, UnitVector::Z]
        .into_iter()
        .flat_map(|axis| [axis * TOUCH_MM, axis * -TOUCH_MM])
        .chain([Vector::ZERO])
        .all(|step| point_to_solid(place + step, solid) <= 0.0)
}

fn passes(a: Point, b: Point, solid: &Solid) -> bool {
    let steps = (a.distance(b) / LOOK_EVERY_MM).ceil().max(1.0);
    let mut step = 1.0;
    while step < steps {
        if is_inside(a.lerp(b, step / steps), solid) {
            return true;
        }
        step += 1.0;
    }
    false
}
