//! The first stretch from a flange, which stands on what carries it.

use tubewright_build::model::{CarrierRef, Model};

use super::problem::{PosedRun, start_carrier};
use crate::bodies::Bodies;

/// Length from a flange within which the gap to the bodies that carry it does not bind, mm: the flange
/// stands on them (common practice, no source).
pub const STUB_MM: f64 = 100.0;

/// Whether the body of this name rides on this carrier.
pub(crate) fn is_carried(model: &Model, body: &str, carrier: &CarrierRef) -> bool {
    let mut bodies = model.build.bodies.iter();
    bodies.any(|written| *written.name == *body && written.carrier == *carrier)
}

/// Numbers of the bodies that carry a run's start: those on its carrier, where that is not the whole
/// chassis. None when a flex section takes up the stub.
pub(super) fn own_bodies(model: &Model, run: &PosedRun, bodies: &Bodies) -> Vec<usize> {
    let flex_mm = run.first_flex.as_ref().map_or(0.0, |flex| flex.1);
    let carrier = model
        .build
        .runs
        .iter()
        .find(|r| *r.name == *run.name)
        .and_then(|r| start_carrier(&model.build, r));
    match carrier {
        Some(carrier @ CarrierRef::Carrier(_)) if flex_mm < STUB_MM => bodies
            .placed
            .iter()
            .enumerate()
            .filter(|(_, placed)| is_carried(model, &placed.name, carrier))
            .map(|(number, _)| number)
            .collect(),
        _ => Vec::new(),
    }
}
