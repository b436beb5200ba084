//! Runs as rows of pieces before they are walked: what a plan holds of a run. The solver's answer,
//! the plan on disk and the record of what was chosen all come to this form, and are walked by the
//! same code.

use tubewright_geometry::Frame;
use tubewright_route::RouteProblem;
use tubewright_route::route::{Piece, Route};

use super::meeting::end_at_ports;
use super::planned::{PlannedKind, PlannedRun};
use super::problem::PosedProblem;

/// A run as a row of pieces from where it starts.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidRun {
    /// Its name.
    pub name: String,
    /// Name of its tube size.
    pub tube: String,
    /// Where its first piece starts, in the car's axes.
    pub start: Frame,
    /// The pieces in the order of flow.
    pub pieces: Vec<PlannedKind>,
    /// Where it should arrive when that is at a part where runs meet.
    pub port_end: Option<Frame>,
}

/// The marks that are painted on a run.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RunMarks {
    /// For each piece its own mark and that of the joint upstream of it.
    pub pieces: Vec<(String, String)>,
    /// Mark of the joint at the run's end.
    pub last_joint: String,
}

/// The rows of pieces of a solved route, a flex section that is bolted to an outlet first. `problem` is that
/// which was solved: the posed one, or one of its choices.
#[must_use]
pub fn laid_runs(posed: &PosedProblem, problem: &RouteProblem, route: &Route) -> Vec<LaidRun> {
    let mut runs: Vec<LaidRun> = problem
        .runs
        .iter()
        .zip(&route.runs)
        .zip(&posed.runs)
        .zip(&route.ends)
        .map(|(((run, pieces), posed_run), ends)| {
            let clr_mm = problem.tubes.get(run.tube).map_or(0.0, |tube| tube.clr_mm);
            let flex =
                posed_run
                    .first_flex
                    .iter()
                    .map(|(name, length_mm)| PlannedKind::Component {
                        name: name.clone(),
                        length_mm: *length_mm,
                        roll_rad: 0.0,
                    });
            let laid = pieces.iter().filter_map(|piece| {
                Some(match *piece {
                    Piece::Straight { length_mm } => PlannedKind::Straight { length_mm },
                    Piece::Bend {
                        angle_rad,
                        clock_rad,
                    } => PlannedKind::Bend {
                        angle_rad,
                        clock_rad,
                        clr_mm,
                    },
                    Piece::Component {
                        component,
                        roll_rad,
                    } => {
                        let component = problem.components.get(component)?;
                        PlannedKind::Component {
                            name: component.id.clone(),
                            length_mm: component.length_mm,
                            roll_rad,
                        }
                    }
                    Piece::Crossover { crossover } => PlannedKind::Crossover {
                        name: problem.crossovers.get(crossover)?.id.clone(),
                        side: run.passage?.side,
                        pose: *route.crossovers.get(crossover)?,
                    },
                })
            });
            // The first run that ends at a part brings it along.
            let part = posed.carried_by(posed_run).and_then(|met| {
                let crossover = met.passage.crossover;
                Some(PlannedKind::Crossover {
                    name: met.component.clone(),
                    side: met.passage.side,
                    pose: *route.crossovers.get(crossover)?,
                })
            });
            LaidRun {
                name: run.id.clone(),
                tube: posed_run.tube.clone(),
                // As it is measured, or sawn off further back with the flex section, if any, moved along.
                start: if ends.start == run.start {
                    posed_run.start.frame_in_car
                } else {
                    let flex_mm = posed_run.first_flex.as_ref().map_or(0.0, |flex| flex.1);
                    ends.start.advanced(-flex_mm)
                },
                pieces: flex.chain(laid).chain(part).collect(),
                port_end: None,
            }
        })
        .collect();
    end_at_ports(posed, &mut runs);
    runs
}

impl PlannedRun {
    /// The run as a row of pieces again, and its marks.
    #[must_use]
    pub fn laid(&self) -> (LaidRun, RunMarks) {
        let pieces = self.pieces.iter().map(|piece| piece.kind.clone()).collect();
        let marks = RunMarks {
            pieces: self
                .pieces
                .iter()
                .map(|piece| (piece.mark.clone(), piece.joint.clone()))
                .collect(),
            last_joint: self.last_joint.clone(),
        };
        let laid = LaidRun {
            name: self.name.clone(),
            tube: self.tube.clone(),
            start: self.start,
            pieces,
            port_end: None,
        };
        (laid, marks)
    }
}
