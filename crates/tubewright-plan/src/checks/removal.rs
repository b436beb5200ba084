//! Does each section of the exhaust come out again?
//!
//! A section is what hangs together between joints that can be undone: everything from a bolted start
//! on, and what a crossover joins to it. It is pulled straight, or first one way and then another, in
//! steps; at every step it keeps the length of a step more than the least gap, so that it keeps the gap
//! between the steps as well. At rest, with everything else of the exhaust away. What is not found is
//! not proved impossible.

use std::collections::BTreeMap;

use tubewright_build::model::{CarrierRef, Class, ComponentKind, Model};
use tubewright_check::{Finding, Rule, State};
use tubewright_geometry::distance::{Obstacle, SolidSet};
use tubewright_geometry::{Bounds, Placement, TubeElement, Vector};

use crate::bodies::PlacedBody;
use crate::routes::{
    PlannedKind, PlannedPiece, PlannedRun, STUB_MM, component_kind, is_carried, start_carrier,
};
use crate::stages::Surroundings;

/// What hands and a strap need to guide a section past something, mm (common practice, no source).
const LEAST_GAP_MM: f64 = 5.0;
/// Length of a step, mm.
const STEP_MM: f64 = 5.0;
/// A section that has left its own room by this is out, mm.
const BEYOND_MM: f64 = 300.0;
/// Longest pull, mm: a long section drawn out to the rear.
const LONGEST_MM: f64 = 6000.0;
/// Lengths of a first pull before the second, mm.
const FIRST_MM: [f64; 4] = [50.0, 100.0, 200.0, 350.0];

/// The ways to pull, in the order in which they are tried.
fn ways() -> Vec<(&'static str, Vector)> {
    let down = Vector::new(0.0, 0.0, -1.0);
    let lean = |x: f64, y: f64| Vector::new(x, y, -1.0) * (1.0 / (x * x + y * y + 1.0).sqrt());
    vec![
        ("straight down", down),
        ("down and to the rear", lean(1.0, 0.0)),
        ("down and to the front", lean(-1.0, 0.0)),
        ("down and to the left", lean(0.0, -1.0)),
        ("down and to the right", lean(0.0, 1.0)),
        ("to the rear", Vector::new(1.0, 0.0, 0.0)),
        ("to the front", Vector::new(-1.0, 0.0, 0.0)),
        ("to the left", Vector::new(0.0, -1.0, 0.0)),
        ("to the right", Vector::new(0.0, 1.0, 0.0)),
    ]
}

/// Pieces that come out together.
struct Section<'a> {
    name: String,
    pieces: Vec<Held<'a>>,
}

/// A piece, how far along its run it begins, and the run.
#[derive(Clone, Copy)]
struct Held<'a> {
    piece: &'a PlannedPiece,
    run: &'a PlannedRun,
    from_mm: f64,
}

/// The sections of the runs.
fn sections<'a>(model: &Model, runs: &'a [PlannedRun]) -> Vec<Section<'a>> {
    let mut sections: Vec<Section<'a>> = Vec::new();
    let mut by_crossover: BTreeMap<&str, usize> = BTreeMap::new();
    for run in runs {
        let mut current: Option<usize> = None;
        let mut first: Option<usize> = None;
        let mut from_mm = 0.0;
        for piece in &run.pieces {
            let at = current.unwrap_or_else(|| {
                let is_part_of_another = first.is_none() && run.starts_on.is_some();
                sections.push(Section {
                    name: if is_part_of_another {
                        run.name.clone()
                    } else {
                        format!("{} from {}", run.name, piece.joint)
                    },
                    pieces: Vec::new(),
                });
                sections.len() - 1
            });
            current = Some(at);
            first = first.or(current);
            if let Some(section) = sections.get_mut(at) {
                section.pieces.push(Held {
                    piece,
                    run,
                    from_mm,
                });
            }
            from_mm += piece.centre_line_mm();
            match &piece.kind {
                PlannedKind::Crossover { name, .. } => {
                    let joined = join(&mut sections, &mut by_crossover, name, at);
                    if first == Some(at) {
                        first = Some(joined);
                    }
                    current = Some(joined);
                }
                PlannedKind::Component { name, .. }
                    if component_kind(model, name) == Some(ComponentKind::Joint) =>
                {
                    current = None;
                }
                _ => {}
            }
        }
        // What starts from a part, or ends at one, is in one section with it.
        let met = [
            (run.starts_on.as_deref(), first),
            (run.ends_at_part(), current),
        ];
        for (part, at) in met {
            if let (Some(part), Some(at)) = (part, at) {
                join(&mut sections, &mut by_crossover, part, at);
            }
        }
    }
    sections.retain(|section| !section.pieces.is_empty());
    sections
}

/// Joins a section to the one that has a crossover, if there is one; answers with the one that has both.
fn join<'a>(
    sections: &mut [Section<'a>],
    by_crossover: &mut BTreeMap<&'a str, usize>,
    crossover: &'a str,
    at: usize,
) -> usize {
    let joined = *by_crossover.entry(crossover).or_insert(at);
    if joined != at {
        merge(sections, joined, at);
        // What met the section before it was joined meets the one it is in now.
        for known in by_crossover.values_mut().filter(|known| **known == at) {
            *known = joined;
        }
    }
    joined
}

/// Moves what is in one section over to another.
fn merge(sections: &mut [Section<'_>], into: usize, from: usize) {
    let Some(section) = sections.get_mut(from) else {
        return;
    };
    let pieces = core::mem::take(&mut section.pieces);
    let name = core::mem::take(&mut section.name);
    if let Some(into) = sections.get_mut(into) {
        into.pieces.extend(pieces);
        into.name = format!("{}, {name}", into.name);
    }
}

/// What a pull met.
#[derive(Clone, Debug)]
struct Met {
    after_mm: f64,
    body: String,
    piece: String,
}

/// A section among the bodies.
struct Pull<'a> {
    section: &'a Section<'a>,
    elements: Vec<Moved<'a>>,
    others: Barring<'a>,
    /// The bodies that carry a start, which the first stretch of a run stands on.
    own: Barring<'a>,
    room: Bounds,
}

/// Bodies that may be in the way, with their names in the order of the set.
struct Barring<'a> {
    names: Vec<&'a str>,
    set: SolidSet,
}

impl<'a> Barring<'a> {
    /// Bodies from which so much is kept at every step.
    fn of(bodies: &[&'a PlacedBody], kept_mm: f64) -> Self {
        Self {
            names: bodies.iter().map(|body| body.name.as_str()).collect(),
            set: SolidSet::new(bodies.iter().map(|body| Obstacle {
                solid: body.solid_in_car.clone(),
                gap_mm: kept_mm + body.allowance_mm,
            })),
        }
    }

    fn first_blocking(&self, tube: &TubeElement) -> Option<&'a str> {
        self.names.get(self.set.first_blocking(tube)?).copied()
    }
}

struct Moved<'a> {
    element: TubeElement,
    mark: &'a str,
    is_stub: bool,
}

impl<'a> Pull<'a> {
    fn of(model: &Model, section: &'a Section<'a>, around: &'a Surroundings) -> Self {
        let uncovered = section
            .pieces
            .iter()
            .map(|held| held.piece.uncovered_mm)
            .fold(0.0, f64::max);
        let carriers: Vec<&CarrierRef> = section
            .pieces
            .iter()
            .filter_map(|held| start_carrier(&model.build, model.build.run(&held.run.name)?))
            .filter(|carrier| **carrier != CarrierRef::Chassis)
            .collect();
        let (own, others): (Vec<&PlacedBody>, Vec<&PlacedBody>) = around
            .bodies
            .placed
            .iter()
            .filter(|body| !matches!(body.class, Class::Ground | Class::Service))
            .partition(|body| {
                let mut all = carriers.iter();
                all.any(|carrier| is_carried(model, &body.name, carrier))
            });
        let kept_mm = LEAST_GAP_MM + STEP_MM + uncovered;
        let elements: Vec<Moved<'a>> = section
            .pieces
            .iter()
            .flat_map(|held| {
                held.piece.elements.iter().map(|element| Moved {
                    element: *element,
                    mark: held.piece.mark.as_str(),
                    is_stub: held.from_mm < STUB_MM,
                })
            })
            .collect();
        let room = elements.iter().fold(Bounds::EMPTY, |room, moved| {
            room.joined(moved.element.bounds())
        });
        Self {
            section,
            elements,
            others: Barring::of(&others, kept_mm),
            own: Barring::of(&own, kept_mm),
            room,
        }
    }

    /// The first body that is too near with the section shifted, and the piece that is.
    fn met(&self, by: Vector) -> Option<(&'a str, &'a str)> {
        let placement = Placement::shifted(by);
        self.elements.iter().find_map(|moved| {
            let tube = placement.tube(&moved.element);
            let own = || {
                (!moved.is_stub)
                    .then(|| self.own.first_blocking(&tube))
                    .flatten()
            };
            let body = self.others.first_blocking(&tube).or_else(own)?;
            Some((body, moved.mark))
        })
    }

    /// Pulls from one place along a way; `None` when nothing is met.
    fn along(&self, from: Vector, way: Vector, length_mm: f64) -> Option<Met> {
        let mut after_mm = 0.0;
        loop {
            if let Some((body, piece)) = self.met(from + way * after_mm) {
                return Some(Met {
                    after_mm,
                    body: body.to_owned(),
                    piece: piece.to_owned(),
                });
            }
            if after_mm >= length_mm {
                return None;
            }
            after_mm = (after_mm + STEP_MM).min(length_mm);
        }
    }

    /// How far it must go along a way to have left its own room.
    fn out_mm(&self, way: Vector) -> f64 {
        let size = self.room.max - self.room.min;
        let extent = size.x * way.x.abs() + size.y * way.y.abs() + size.z * way.z.abs();
        (extent + BEYOND_MM).min(LONGEST_MM)
    }

    fn finding(&self) -> Finding {
        let subject = format!("the section of {}", self.section.name);
        let ways = ways();
        let mut straight: Vec<Met> = Vec::new();
        for (words, way) in &ways {
            match self.along(Vector::ZERO, *way, self.out_mm(*way)) {
                None => return out(subject, &format!("pulled {words}")),
                Some(met) => straight.push(met),
            }
        }
        for ((first_words, first), met) in ways.iter().zip(&straight) {
            for first_mm in FIRST_MM.into_iter().filter(|mm| *mm < met.after_mm) {
                for (words, way) in ways.iter().filter(|(words, _)| words != first_words) {
                    if self
                        .along(*first * first_mm, *way, self.out_mm(*way))
                        .is_none()
                    {
                        let pulled =
                            format!("pulled {first_words} for {first_mm:.0} mm, then {words}");
                        return out(subject, &pulled);
                    }
                }
            }
        }
        let Some(down) = straight.first() else {
            return Finding::stated(Rule::Removal, State::NotChecked, subject, "");
        };
        let furthest = ways
            .iter()
            .zip(&straight)
            .max_by(|a, b| a.1.after_mm.total_cmp(&b.1.after_mm));
        let best = furthest.map_or_else(String::new, |((words, _), met)| {
            format!(
                "; furthest it comes {words}, {:.0} mm, to {} at {}",
                met.after_mm, met.body, met.piece
            )
        });
        let advice = format!(
            "no way out was found in one pull or two. Straight down it meets {} with {} after {:.0} mm{best}. Lower what it meets, or give it a joint before and behind it",
            down.body, down.piece, down.after_mm
        );
        Finding::stated(Rule::Removal, State::NotChecked, subject, advice)
    }
}

fn out(subject: String, pulled: &str) -> Finding {
    Finding::stated(
        Rule::Removal,
        State::Pass,
        subject,
        format!(
            "comes out {pulled}, never nearer than {LEAST_GAP_MM:.0} mm to a body at rest; hangers unhooked, the rest of the exhaust away, the car high enough"
        ),
    )
}

/// One finding for each section.
pub(super) fn findings(model: &Model, around: &Surroundings, runs: &[PlannedRun]) -> Vec<Finding> {
    sections(model, runs)
        .iter()
        .map(|section| Pull::of(model, section, around).finding())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use tubewright_geometry::{CentreLine, OrientedBox, Point, Solid};

    /// A tube in a closed box that has its one opening low at the rear, or none.
    fn pulled(is_open: bool) -> Finding {
        let wall = |centre: [f64; 3], half: [f64; 3]| Obstacle {
            solid: Solid::Box(OrientedBox::axis_aligned(Point::from_array(centre), half)),
            gap_mm: LEAST_GAP_MM + STEP_MM,
        };
        let mut walls = vec![
            ("floor", wall([0.0, 0.0, -230.0], [400.0, 400.0, 30.0])),
            ("roof", wall([0.0, 0.0, 80.0], [400.0, 400.0, 30.0])),
            ("front", wall([-100.0, 0.0, -80.0], [10.0, 400.0, 150.0])),
            ("left", wall([0.0, -150.0, -80.0], [400.0, 10.0, 150.0])),
            ("right", wall([0.0, 150.0, -80.0], [400.0, 10.0, 150.0])),
            ("rear", wall([100.0, 0.0, 10.0], [10.0, 400.0, 70.0])),
        ];
        if !is_open {
            walls.push(("lid", wall([100.0, 0.0, -130.0], [10.0, 400.0, 70.0])));
        }
        let (names, obstacles): (Vec<&str>, Vec<Obstacle>) = walls.into_iter().unzip();
        let element = TubeElement {
            line: CentreLine::Segment {
                a: Point::new(0.0, -50.0, 0.0),
                b: Point::new(0.0, 50.0, 0.0),
            },
            radius: 20.0,
        };
        let section = Section {
            name: "tube from J1".to_owned(),
            pieces: Vec::new(),
        };
        Pull {
            section: &section,
            elements: vec![Moved {
                element,
                mark: "T1",
                is_stub: false,
            }],
            others: Barring {
                names,
                set: SolidSet::new(obstacles),
            },
            own: Barring {
                names: Vec::new(),
                set: SolidSet::new([]),
            },
            room: element.bounds(),
        }
        .finding()
    }

    /// The opening lies between 60 and 200 mm down and the tube with what it keeps is 60 mm: it is through
    /// after 90 to 170 mm, of which 100 mm is tried.
    #[test]
    fn what_does_not_come_straight_comes_in_two_pulls() {
        let open = pulled(true);
        assert_eq!(open.state, State::Pass, "{}", open.advice);
        let two = "pulled straight down for 100 mm, then to the rear,";
        assert!(open.advice.contains(two), "{}", open.advice);
        let shut = pulled(false);
        assert_eq!(shut.state, State::NotChecked, "{}", shut.advice);
        // It is 170 mm down to where it keeps 10 mm from the floor; the next step of 5 mm is one too far.
        let floor = "Straight down it meets floor with T1 after 175 mm";
        assert!(shut.advice.contains(floor), "{}", shut.advice);
    }
}
