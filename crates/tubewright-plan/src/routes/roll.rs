//! How an oval or a box is turned about its own axis, as it is marked.

use tubewright_build::model::{ItemKind, Model, Section};
use tubewright_geometry::{Angle, Frame, Length, UnitVector, math};

use super::planned::{PlannedKind, PlannedRun};

/// The mark that turns an oval or a box. Its own witness line runs along its neck, in the middle of the
/// broad side that lies up when it lies flat.
#[derive(Clone, Debug, PartialEq)]
pub struct RollMark {
    /// The run.
    pub run: String,
    /// Mark of the piece.
    pub mark: String,
    /// The component.
    pub component: String,
    /// From the witness line of the part before it to its own, clockwise looking downstream, in
    /// (-180°, 180°]. For the first part of a run and behind a crossover: from twelve o'clock.
    pub clock: Angle,
    /// The same round the outside of its neck.
    pub round_neck: Length,
    /// From lying flat in the car, clockwise looking downstream.
    pub from_flat: Angle,
}

/// A section that is as wide as it is high looks the same after a quarter turn; turned by less than this
/// it still cannot be told from round, mm (common practice, no source).
const TOLD_FROM_ROUND_MM: f64 = 1.0;

/// The roll of every oval and box of a run, in the order of flow.
#[must_use]
pub fn roll_marks(model: &Model, run: &PlannedRun) -> Vec<RollMark> {
    // Where the witness line lies that was scribed last: along the outside of a bend, carried on by
    // straights and components.
    let mut witness = run.start.twelve();
    let mut found = Vec::new();
    for piece in &run.pieces {
        match &piece.kind {
            PlannedKind::Straight { .. } => {}
            PlannedKind::Bend { .. } => witness = -piece.frame_out.twelve(),
            PlannedKind::Crossover { .. } => witness = piece.frame_out.twelve(),
            PlannedKind::Component { name, roll_rad, .. } => {
                if !has_broad_side(model, name) {
                    continue;
                }
                let clock_rad = clock_of(&piece.frame_in, witness, *roll_rad);
                found.push(RollMark {
                    run: run.name.clone(),
                    mark: piece.mark.clone(),
                    component: name.clone(),
                    clock: Angle::from_rad(clock_rad),
                    round_neck: Length::from_mm(0.5 * run.od_mm * clock_rad),
                    from_flat: Angle::from_rad(math::wrap_to_pi(*roll_rad)),
                });
            }
        }
    }
    found
}

/// Clock of the broad side from the witness line, where both run along the same travel.
fn clock_of(at: &Frame, witness: UnitVector, roll_rad: f64) -> f64 {
    let flat = Frame::upright(at.origin, at.travel()).rolled(roll_rad);
    let three = at.travel().vector().cross(witness.vector());
    math::atan2(
        three.dot(flat.twelve().vector()),
        witness.dot(flat.twelve().vector()),
    )
}

fn has_broad_side(model: &Model, component: &str) -> bool {
    let item = model
        .build
        .component(component)
        .and_then(|component| model.stock.item(&component.item));
    let Some(ItemKind::Component(item)) = item.map(|item| &item.kind) else {
        return false;
    };
    match &item.body {
        Some(Section::Oval { width, height }) => {
            (width.mm() - height.mm()).abs() > TOLD_FROM_ROUND_MM
        }
        // A square turned by an eighth is another room.
        Some(Section::Box { .. }) => true,
        Some(Section::Round { .. }) | None => false,
    }
}
