//! Planned runs as a frame of tubes with their masses.

use std::collections::{BTreeMap, BTreeSet};
use tubewright_build::model::{ComponentKind, Model};
use tubewright_chassis::{BeamError, Beams, FREE_FALL_M_PER_S2, TubeBeam};
use tubewright_geometry::{Frame, Point, Vector};

use super::NoHanging;
use crate::checks::MovingRun;
use crate::routes::{
    GasWay, PlannedKind, PlannedPiece, PlannedRun, component_item, component_kind, half_section,
    in_turn,
};

/// Distance between the places of the frame along a run, at most, mm.
const STEP_MM: f64 = 40.0;

/// Young's modulus of hot austenitic tube, MPa: some 160 GPa at 500 °C (EN 10088-1, from memory).
const YOUNG_MPA: f64 = 160_000.0;

/// Poisson's ratio of steel.
const POISSON: f64 = 0.3;

/// Wall of a can, which bends little whatever it is, mm (common practice, no source).
const CAN_WALL_MM: f64 = 1.2;

/// What a braided flex section holds, every way, N/mm: next to nothing (common practice, no source).
const FLEX_N_PER_MM: f64 = 0.5;

/// How far the run hangs below its rubbers, for what keeps it from rolling, mm.
const PENDULUM_MM: f64 = 80.0;

/// A place of the frame on a run.
#[derive(Clone, Copy, Debug)]
pub(super) struct Station {
    /// Its number in the frame.
    pub(super) place: usize,
    /// Number of the run among the moving runs.
    pub(super) run: usize,
    /// Number of the piece in its run.
    pub(super) piece: usize,
    /// Along the piece, mm.
    pub(super) along_mm: f64,
    /// Along the run, mm.
    pub(super) run_mm: f64,
    /// The run's frame there.
    pub(super) frame: Frame,
}

/// A frame of tubes for runs that hang together.
#[derive(Debug)]
pub(super) struct RunsAsBeams {
    pub(super) beams: Beams,
    pub(super) stations: Vec<Station>,
}

/// The runs by which of them share a crossover, as numbers.
pub(super) fn together(runs: &[MovingRun<'_>]) -> Vec<Vec<usize>> {
    let mut groups: Vec<(BTreeSet<&str>, Vec<usize>)> = Vec::new();
    for (number, run) in runs.iter().enumerate() {
        let mut own = (run.run.met_parts(), vec![number]);
        let (shared, others): (Vec<_>, Vec<_>) = groups
            .into_iter()
            .partition(|(names, _)| !names.is_disjoint(&own.0));
        groups = others;
        for (names, numbers) in shared {
            own.0.extend(names);
            own.1.extend(numbers);
        }
        own.1.sort_unstable();
        groups.push(own);
    }
    groups.sort_by(|a, b| a.1.cmp(&b.1));
    groups.into_iter().map(|(_, numbers)| numbers).collect()
}

/// Mass of a component by its item, kg.
fn mass_of(model: &Model, name: &str) -> Option<f64> {
    Some(component_item(model, name)?.mass.as_ref()?.value.kg())
}

/// What hangs behind the flex sections of these runs.
pub(super) fn beams_of(
    model: &Model,
    runs: &[MovingRun<'_>],
    group: &[usize],
) -> Result<RunsAsBeams, NoHanging> {
    let mut without = BTreeSet::new();
    let mut frame = Builder {
        model,
        beams: Beams::new(),
        stations: Vec::new(),
        crossovers: BTreeMap::new(),
    };
    let planned: Vec<&PlannedRun> = group
        .iter()
        .filter_map(|number| Some(runs.get(*number)?.run))
        .collect();
    let way = GasWay::of_runs(planned.iter().copied());
    let has_flex = |run: usize| {
        planned
            .get(run)
            .is_some_and(|run| behind_flex(model, run).is_some())
    };
    for at in in_turn(&planned) {
        let (Some(run), Some(&number)) = (planned.get(at).copied(), group.get(at)) else {
            continue;
        };
        let first = match behind_flex(model, run) {
            Some(first) => first,
            // All that leads to it hangs, and so the whole of it.
            None if way.all_before(at, &has_flex) => 0,
            // It rides with the engine up to where all that it leads to has its flex section.
            None if way.all_behind(at, &has_flex) => continue,
            None => return Err(NoHanging::NoFlex(run.name.clone())),
        };
        if first >= run.pieces.len() {
            return Err(NoHanging::NothingBehind(run.name.clone()));
        }
        for piece in run.pieces.iter().skip(first) {
            if let PlannedKind::Component { name, .. } | PlannedKind::Crossover { name, .. } =
                &piece.kind
                && mass_of(model, name).is_none()
            {
                without.insert(name.clone());
            }
        }
        frame.run(number, run, first).map_err(NoHanging::Frame)?;
    }
    if !without.is_empty() {
        return Err(NoHanging::NoMass(without.into_iter().collect()));
    }
    let Builder {
        mut beams,
        stations,
        ..
    } = frame;
    for (place, kg) in beams.masses_at_places().into_iter().enumerate() {
        let roll = kg * FREE_FALL_M_PER_S2 * PENDULUM_MM;
        beams.spring(place, Vector::ZERO, [0.0; 3], [roll, roll, 0.0]);
    }
    Ok(RunsAsBeams { beams, stations })
}

/// Number of the piece behind a run's flex section.
fn behind_flex(model: &Model, run: &PlannedRun) -> Option<usize> {
    let is_flex = |piece: &PlannedPiece| matches!(&piece.kind, PlannedKind::Component { name, .. } if component_kind(model, name) == Some(ComponentKind::Flex));
    Some(run.pieces.iter().position(is_flex)? + 1)
}

struct Builder<'a> {
    model: &'a Model,
    beams: Beams,
    stations: Vec<Station>,
    /// The middles of the crossovers that are there already.
    crossovers: BTreeMap<String, usize>,
}

impl Builder<'_> {
    /// Adds the pieces of a run from `first` on.
    fn run(&mut self, number: usize, run: &PlannedRun, first: usize) -> Result<(), BeamError> {
        let tube = self.model.stock.tube(&run.tube);
        let (wall_mm, kg_per_mm) = tube.map_or((0.0, 0.0), |tube| {
            (tube.wall.mm(), tube.kg_per_metre() / 1000.0)
        });
        let tube = TubeBeam {
            od_mm: run.od_mm,
            wall_mm,
            young_mpa: YOUNG_MPA,
            poisson: POISSON,
            kg_per_mm,
        };
        let arm = TubeBeam {
            kg_per_mm: 0.0,
            ..tube
        };
        let mut run_mm: f64 = run
            .pieces
            .iter()
            .take(first)
            .map(PlannedPiece::centre_line_mm)
            .sum();
        let mut last: Option<usize> = None;
        for (index, piece) in run.pieces.iter().enumerate().skip(first) {
            let mut station = Station {
                place: 0,
                run: number,
                piece: index,
                along_mm: 0.0,
                run_mm,
                frame: piece.frame_in,
            };
            let from = match last {
                Some(last) => last,
                None => {
                    let first = self.beams.place(piece.frame_in.origin);
                    let part = run.starts_on.as_ref().filter(|_| index == 0);
                    match part.and_then(|part| self.crossovers.get(part)) {
                        Some(middle) => self.beams.member(*middle, first, arm),
                        None => {
                            let flex = [FLEX_N_PER_MM; 3];
                            self.beams.spring(first, Vector::ZERO, flex, [0.0; 3]);
                        }
                    }
                    first
                }
            };
            station.place = from;
            self.stations.push(station);
            last = Some(match &piece.kind {
                PlannedKind::Crossover { name, pose, .. } => {
                    self.crossover(name, pose.origin, piece, from, tube)?
                }
                PlannedKind::Component {
                    name, length_mm, ..
                } => {
                    let can = self.can(name, run.od_mm, *length_mm);
                    self.along(station, piece, from, can)
                }
                PlannedKind::Straight { .. } | PlannedKind::Bend { .. } => {
                    self.along(station, piece, from, tube)
                }
            });
            run_mm += piece.centre_line_mm();
        }
        let part = run.ends_at_part();
        if let (Some(last), Some(middle)) = (last, part.and_then(|part| self.crossovers.get(part)))
        {
            self.beams.member(last, *middle, arm);
        }
        Ok(())
    }

    /// A component as a tube as wide as its can, with its mass spread over its length.
    fn can(&self, name: &str, od_mm: f64, length_mm: f64) -> TubeBeam {
        let section = component_item(self.model, name).and_then(|item| item.body.as_ref());
        TubeBeam {
            od_mm: 2.0 * half_section(section, od_mm).0,
            wall_mm: CAN_WALL_MM,
            young_mpa: YOUNG_MPA,
            poisson: POISSON,
            kg_per_mm: mass_of(self.model, name).unwrap_or(0.0) / length_mm.max(1.0),
        }
    }

    /// Places along a piece from its upstream end, joined one to the next; answers with the last.
    fn along(
        &mut self,
        start: Station,
        piece: &PlannedPiece,
        from: usize,
        beam: TubeBeam,
    ) -> usize {
        let length = piece.centre_line_mm();
        let mut parts = 1_u32;
        while length > STEP_MM * f64::from(parts) {
            parts += 1;
        }
        let mut last = from;
        for part in 1..=parts {
            let along_mm = length * f64::from(part) / f64::from(parts);
            let frame = piece.frame_at(along_mm);
            let place = self.beams.place(frame.origin);
            if length > 0.0 {
                self.beams.member(last, place, beam);
            }
            last = place;
            if part < parts {
                self.stations.push(Station {
                    place,
                    along_mm,
                    run_mm: start.run_mm + along_mm,
                    frame,
                    ..start
                });
            }
        }
        last
    }

    /// The way through a crossover by its middle, which the other run has too.
    fn crossover(
        &mut self,
        name: &str,
        origin: Point,
        piece: &PlannedPiece,
        from: usize,
        tube: TubeBeam,
    ) -> Result<usize, BeamError> {
        let middle = match self.crossovers.get(name) {
            Some(middle) => *middle,
            None => {
                // A stretch that stands has the car's own coordinates.
                let stands = component_kind(self.model, name) == Some(ComponentKind::Stretch);
                let own = piece.frame_in.origin.lerp(piece.frame_out.origin, 0.5);
                let middle = self.beams.place(if stands { own } else { origin });
                let kg = mass_of(self.model, name).unwrap_or(0.0);
                self.beams.mass(middle, kg)?;
                self.crossovers.insert(name.to_owned(), middle);
                middle
            }
        };
        let arm = TubeBeam {
            kg_per_mm: 0.0,
            ..tube
        };
        let out = self.beams.place(piece.frame_out.origin);
        self.beams.member(from, middle, arm);
        self.beams.member(middle, out, arm);
        Ok(out)
    }
}
