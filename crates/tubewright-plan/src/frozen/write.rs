//! A plan as entries of the record.

use tubewright_build::Span;
use tubewright_build::model::{
    Entry, EntryKind, FrozenPiece, FrozenShape, FrozenStart, LengthUnits, Name,
};
use tubewright_build::quantity::{Clock, Quantity, write_deg, write_inches, write_mm};
use tubewright_geometry::{Angle, Length};
use tubewright_route::Budget;

use crate::routes::{PlannedKind, PlannedPiece, PlannedRun};

/// The entry that says that this alternative was chosen. Lengths are written in `units` where that is
/// exact, else in millimetres.
#[must_use]
pub fn chosen_entry(
    on: &str,
    route: &str,
    budget: Budget,
    runs: &[PlannedRun],
    units: LengthUnits,
) -> Entry {
    entry(
        on,
        EntryKind::Chosen {
            route: route.to_owned(),
            effort: Some(budget.work_units),
            seed: Some(budget.seed),
            starts: runs.iter().map(start).collect(),
            pieces: pieces(runs, units),
        },
    )
}

/// The entry that says that a change was accepted; `runs` are all pieces of the runs that it changes.
#[must_use]
pub fn accepted_entry(on: &str, route: &str, runs: &[PlannedRun], units: LengthUnits) -> Entry {
    accepted_beside(on, route, runs, &[], units)
}

/// The same beside pieces that stand already: their places, each with the joint upstream of it.
#[must_use]
pub fn accepted_beside(
    on: &str,
    route: &str,
    runs: &[PlannedRun],
    standing: &[FrozenStart],
    units: LengthUnits,
) -> Entry {
    entry(
        on,
        EntryKind::Accepted {
            route: route.to_owned(),
            starts: runs
                .iter()
                .map(start)
                .chain(standing.iter().cloned())
                .collect(),
            pieces: pieces(runs, units),
        },
    )
}

/// Where pieces of a run stand: the first of them at number `until`, and every later one that does not
/// follow on from the piece before it.
#[must_use]
pub fn standing_of(run: &PlannedRun, until: usize) -> Vec<FrozenStart> {
    run.pieces
        .iter()
        .enumerate()
        .skip(until)
        .filter(|(index, piece)| {
            let before = index
                .checked_sub(1)
                .and_then(|before| run.pieces.get(before));
            *index == until
                || before.is_some_and(|before| {
                    before.frame_out.origin.distance(piece.frame_in.origin) > FOLLOWS_ON_MM
                })
        })
        .map(|(_, piece)| FrozenStart {
            run: Name::new(&run.name),
            frame: piece.frame_in,
            tube: None,
            joint: Some(piece.joint.clone()),
        })
        .collect()
}

/// Nearer than this is rounding, mm.
const FOLLOWS_ON_MM: f64 = 1e-6;

fn entry(on: &str, what: EntryKind) -> Entry {
    Entry {
        on: on.to_owned(),
        what,
        note: None,
        span: Span::none(),
    }
}

fn start(run: &PlannedRun) -> FrozenStart {
    FrozenStart {
        run: Name::new(&run.name),
        frame: run.start,
        tube: Some(Name::new(&run.tube)),
        joint: run.pieces.first().map(|piece| piece.joint.clone()),
    }
}

fn pieces(runs: &[PlannedRun], units: LengthUnits) -> Vec<FrozenPiece> {
    runs.iter()
        .flat_map(|run| {
            let downstream = run
                .pieces
                .iter()
                .skip(1)
                .map(|piece| piece.joint.clone())
                .chain([run.last_joint.clone()]);
            run.pieces
                .iter()
                .zip(downstream)
                .map(move |(piece, joint)| FrozenPiece {
                    run: Name::new(&run.name),
                    mark: piece.mark.clone(),
                    joint: Some(joint),
                    shape: shape(piece, units),
                })
        })
        .collect()
}

fn shape(piece: &PlannedPiece, units: LengthUnits) -> FrozenShape {
    let none = || Quantity::new(Length::ZERO, "0 mm");
    match &piece.kind {
        PlannedKind::Straight { length_mm } => FrozenShape::Straight {
            length: length(*length_mm, units),
        },
        PlannedKind::Bend {
            angle_rad,
            clock_rad,
            clr_mm,
        } => FrozenShape::Bend {
            angle: angle(*angle_rad),
            clock: clock(*clock_rad),
            clr: length(*clr_mm, units),
            legs: [none(), none()],
        },
        PlannedKind::Component {
            name,
            length_mm,
            roll_rad,
        } => FrozenShape::Component {
            component: Name::new(name),
            roll: Some(clock(*roll_rad)),
            length: Some(length(*length_mm, units)),
            at: None,
            turned: None,
        },
        PlannedKind::Crossover { name, pose, .. } => FrozenShape::Component {
            component: Name::new(name),
            roll: None,
            length: None,
            at: Some(pose.origin),
            turned: (!pose.turn.is_none()).then(|| Box::new(pose.turn.to_array().map(angle))),
        },
    }
}

/// A length in the words of the shop: a fraction of an inch where it is one to a nanometre.
fn length(mm: f64, units: LengthUnits) -> Quantity<Length> {
    let value = Length::from_mm(mm);
    let sixty_fourths = value.inches() * 64.0;
    let is_fraction = (sixty_fourths - sixty_fourths.round()).abs() * 25.4 / 64.0 < 1e-6;
    let text = if units == LengthUnits::Inches && is_fraction {
        write_inches(value, 64)
    } else {
        write_mm(value, 6)
    };
    Quantity::new(value, text)
}

fn angle(rad: f64) -> Quantity<Angle> {
    let value = Angle::from_rad(rad);
    Quantity::new(value, write_deg(value, 9))
}

fn clock(rad: f64) -> Quantity<Clock> {
    let value = Angle::from_rad(rad);
    Quantity::new(Clock::from_angle(value), write_deg(value, 9))
}
