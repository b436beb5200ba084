//! The opening of a crossover that is made by hand: what is cut and welded beside the joints of the runs.

use std::collections::BTreeSet;
use tubewright_build::model::Model;
use tubewright_build::resolved::ResolvedPractice;
use tubewright_geometry::math;
use tubewright_sheets::SplitCross;

use crate::routes::{PlannedKind, PlannedRun, component_item};

/// A crossover that is made of two bends, each with its back cut off along a plane.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// The crossover's name.
    pub crossover: String,
    /// The bend that both halves are made of.
    pub bend: String,
    /// How it is split.
    pub split: SplitCross,
    /// Length of the weld round the opening, mm; each half is cut along as much.
    pub weld_mm: f64,
}

impl Opening {
    /// The opening of a component; `None` for one that is bought, or that cannot be split so.
    #[must_use]
    pub fn of(model: &Model, crossover: &str) -> Option<Self> {
        let made = component_item(model, crossover)?.hand_made.as_ref()?;
        let component = model.build.component(crossover)?;
        let tube = model.stock.item(&component.item)?.tube.as_deref()?;
        let tube = model.stock.tube(tube)?;
        let split = SplitCross {
            od_mm: tube.od.mm(),
            wall_mm: tube.wall.mm(),
            clr_mm: made.clr.mm(),
            bend_rad: made.angle.rad(),
            legs_mm: [made.leg.mm(); 2],
            plane_mm: made.clr.mm() + 0.5 * tube.od.mm() - made.taken_off.mm(),
        };
        Some(Self {
            crossover: crossover.to_owned(),
            bend: made.bend.to_string(),
            weld_mm: split.weld_mm().ok()?,
            split,
        })
    }

    /// Time for it, minutes: a weld and two cuts as long as its edge, at the shop's times for one round the tube
    /// (an estimate: common practice, no source).
    #[must_use]
    pub fn minutes(&self, practice: &ResolvedPractice) -> f64 {
        let rounds = self.weld_mm / (math::PI * self.split.od_mm);
        rounds * (practice.weld_time.minutes() + 2.0 * practice.cut_time.minutes())
    }
}

/// The openings of these runs, each once.
pub(crate) fn openings(model: &Model, runs: &[PlannedRun]) -> Vec<Opening> {
    let pieces = runs.iter().flat_map(|run| &run.pieces);
    let names: BTreeSet<&str> = pieces
        .filter_map(|piece| match &piece.kind {
            PlannedKind::Crossover { name, .. } => Some(name.as_str()),
            _ => None,
        })
        .collect();
    names
        .into_iter()
        .filter_map(|name| Opening::of(model, name))
        .collect()
}
