//! What the welds of each run ask for: filler by both materials, current, purge.

use std::collections::BTreeSet;
use tubewright_build::model::{ComponentKind, Model, RunEnd, Section};
use tubewright_geometry::{Length, math};
use tubewright_stock::weld::{
    FillerChoice, Metal, filler_choice, fit_up_limits, oxygen_left_ppm, purge_time_min,
    purge_volume_litres, tig_current, wire_need,
};

use super::fastening::Fastening;
use crate::routes::{PlannedKind, PlannedRun, component_item, end_of_run, goes_through};

/// What one pairing of materials in a run asks for.
#[derive(Clone, Debug, PartialEq)]
pub struct WeldFacts {
    /// The run.
    pub run: String,
    /// Both materials, as the files call them.
    pub materials: (String, String),
    /// The filler and what to mind.
    pub filler: FillerChoice,
    /// Where to start with the current, A; a range in truth, never a setting.
    pub amps: f64,
    /// Gap beyond which the joint is made again, mm.
    pub gap_most_mm: f64,
    /// Largest step, mm.
    pub step_most_mm: f64,
    /// Wire of 1.6 mm to a joint, mm, for half the largest gap and a cap of two walls by a third.
    pub wire_mm: f64,
    /// Room inside the whole run with its cans, litres.
    pub purge_litres: f64,
    /// Flow, litres per minute (common practice, no source).
    pub purge_flow_l_min: f64,
    /// Five changes, minutes.
    pub purge_five_min: f64,
    /// Ten changes, minutes.
    pub purge_ten_min: f64,
    /// Oxygen that five changes leave when the gas mixes perfectly, ppm.
    pub oxygen_after_five_ppm: f64,
}

/// Common practice, no source.
const PURGE_FLOW_L_MIN: f64 = 8.0;
const AIR_OXYGEN_PPM: f64 = 209_500.0;
const WIRE_MM: f64 = 1.6;

/// The pairings of every run: its tube with itself and with whatever its components are made of and the
/// ends that it is welded to, each once. A material that is not known is left out.
#[must_use]
pub fn weld_facts(model: &Model, runs: &[PlannedRun]) -> Vec<WeldFacts> {
    runs.iter().flat_map(|run| run_facts(model, run)).collect()
}

fn run_facts(model: &Model, run: &PlannedRun) -> Vec<WeldFacts> {
    let Some(tube) = model.stock.tube(&run.tube) else {
        return Vec::new();
    };
    let own = tube.material;
    let mut others: BTreeSet<&str> = BTreeSet::new();
    others.insert(own.word());
    for piece in &run.pieces {
        let (PlannedKind::Component { name, .. } | PlannedKind::Crossover { name, .. }) =
            &piece.kind
        else {
            continue;
        };
        let material = model
            .build
            .component(name)
            .and_then(|component| model.stock.item(&component.item))
            .and_then(|item| model.stock.tube(item.tube.as_deref()?))
            .map(|tube| tube.material.word());
        others.extend(material);
    }
    if let Some(written) = model.build.run(&run.name) {
        for end in [&written.from, &written.to] {
            if let RunEnd::End(name) = end {
                others.extend(
                    model
                        .build
                        .end(name)
                        // To what is held by bolts or a clamp nothing is welded.
                        .filter(|end| {
                            Fastening::of(end).is_none()
                                || (run.sawn.is_some() && end.saw_off.is_some())
                        })
                        .and_then(|end| end.material)
                        .map(tubewright_build::model::Material::word),
                );
            }
        }
    }
    let (od, wall) = (tube.od.value, tube.wall.value);
    let litres = litres_inside(model, run, od, wall);
    let limits = fit_up_limits(wall);
    let current = tig_current(wall);
    // Of a mating flange that is still to be found nobody has said what it is made of.
    let mild = (MILD, format!("{MILD} (a flange of it)"));
    let may_be = needs_flange(model, run) && !others.contains(MILD);
    others
        .into_iter()
        .map(|other| (other, other.to_owned()))
        .chain(may_be.then_some(mild))
        .filter_map(|(other, words)| {
            let (a, b) = (Metal::from_word(own.word())?, Metal::from_word(other)?);
            let filler = filler_choice(a, b);
            let amps = if filler.purge {
                0.5 * (current.stainless_low_a + current.stainless_high_a)
            } else {
                current.rule_a
            };
            let wire = wire_need(
                od,
                wall,
                limits.gap_most * 0.5,
                (wall * 2.0, wall * (1.0 / 3.0)),
                Length::from_mm(WIRE_MM),
            );
            Some(WeldFacts {
                run: run.name.clone(),
                materials: (own.word().to_owned(), words),
                filler,
                amps,
                gap_most_mm: limits.gap_most.mm(),
                step_most_mm: limits.step_most.mm(),
                wire_mm: wire.wire.mm(),
                purge_litres: litres,
                purge_flow_l_min: PURGE_FLOW_L_MIN,
                purge_five_min: purge_time_min(litres, PURGE_FLOW_L_MIN, 5.0),
                purge_ten_min: purge_time_min(litres, PURGE_FLOW_L_MIN, 10.0),
                oxygen_after_five_ppm: oxygen_left_ppm(AIR_OXYGEN_PPM, 5.0),
            })
        })
        .collect()
}

/// The file's word for mild steel.
const MILD: &str = "mild";

/// Whether a run meets a flange on the car and has no flange of its own to mate with it.
fn needs_flange(model: &Model, run: &PlannedRun) -> bool {
    let Some(written) = model.build.run(&run.name) else {
        return false;
    };
    let mut ends = [&written.from, &written.to]
        .into_iter()
        .filter_map(|end| end_of_run(&model.build, end));
    !goes_through(model, written, ComponentKind::Flange)
        && run.sawn.is_none()
        && ends.any(|end| Fastening::of(end).is_some_and(Fastening::needs_weld))
}

/// Room inside a run: the bore of the tube, and the whole can of every component (what fills a can
/// leaves less room and needs less gas).
fn litres_inside(model: &Model, run: &PlannedRun, od: Length, wall: Length) -> f64 {
    run.pieces
        .iter()
        .map(|piece| {
            let length = Length::from_mm(piece.centre_line_mm());
            let of_tube = purge_volume_litres(od, wall, length);
            let PlannedKind::Component { name, .. } = &piece.kind else {
                return of_tube;
            };
            let section = component_item(model, name).and_then(|item| item.body.as_ref());
            let area_mm2 = match section {
                Some(Section::Round { diameter }) => 0.25 * math::PI * diameter.mm().powi(2),
                // An oval is a circle of its height and a rectangle between.
                Some(Section::Oval { width, height }) => {
                    0.25 * math::PI * height.mm().powi(2)
                        + (width.mm() - height.mm()).max(0.0) * height.mm()
                }
                Some(Section::Box { width, height }) => width.mm() * height.mm(),
                None => return of_tube,
            };
            of_tube.max(area_mm2 * length.mm() * 1e-6)
        })
        .sum()
}
