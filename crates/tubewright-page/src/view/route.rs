//! The ways that were found.

use crate::api::{GapView, PieceView, RouteView, RunView, Solving, WayFigures, WayView};
use crate::derived::Shown;
use tubewright_plan::figures::{Figures, Gap};
use tubewright_plan::frozen::{Offer, offer_of};
use tubewright_plan::lengths::Lengths;
use tubewright_plan::routes::{
    PlannedKind, PlannedPiece, PlannedRun, PosedProblem, words_of_ends, would_help_words,
};
use tubewright_plan::stages::{Alternative, Routed};

/// The ways, and the runs of the one that is shown.
pub(super) fn of(seen: &Shown, solving: Option<Solving>) -> RouteView {
    let job = seen.car.good_job();
    let (ways, words) = match job.and_then(|job| job.routed.as_ref()) {
        None => (Vec::new(), None),
        Some(Routed::Found(ways)) => {
            let few = (ways.len() < 3)
                .then(|| "Fewer than three ways were found in this effort.".to_owned());
            (ways.iter().map(way).collect(), few)
        }
        Some(Routed::NotFound {
            work_units,
            would_help,
        }) => {
            let words = format!(
                "No way was found in this effort ({work_units} work units). There may be one: make room or allow more effort."
            );
            (Vec::new(), Some(with_help(words, would_help)))
        }
        Some(Routed::NoneExists { proof, would_help }) => {
            let words = format!("No way exists: {proof}.");
            (Vec::new(), Some(with_help(words, would_help)))
        }
        Some(Routed::NothingToRoute) => (Vec::new(), Some("There is no run to route.".to_owned())),
    };
    RouteView {
        solving,
        shown: if seen.way < ways.len() { seen.way } else { 0 },
        ways,
        words,
        stale: job.and_then(|job| job.older.clone()),
        chosen: job
            .and_then(|job| job.chosen.as_ref())
            .map(|chosen| format!("{} ({})", chosen.plan.route, chosen.plan.on)),
        runs: seen
            .car
            .runs(seen.way)
            .iter()
            .map(|run| run_view(seen, run, job.map(|job| &job.posed)))
            .collect(),
        pins: super::hand::pins(seen),
        sides: super::hand::sides(seen),
        left_out: job
            .map(|job| {
                job.posed
                    .left_out
                    .iter()
                    .map(|(run, why)| format!("{run}: {why}"))
                    .collect()
            })
            .unwrap_or_default(),
    }
}

fn way(alternative: &Alternative) -> WayView {
    let sum = |of: fn(&PlannedRun) -> f64| alternative.runs.iter().map(of).sum::<f64>();
    WayView {
        name: alternative.name.clone(),
        cost: alternative.cost,
        lower_bound: alternative.lower_bound,
        length: sum(PlannedRun::developed_length_mm),
        bends: sum(PlannedRun::sum_of_bends_rad).to_degrees(),
        ends_off: alternative
            .runs
            .iter()
            .map(PlannedRun::end_error_mm)
            .fold(0.0, f64::max),
        bend_count: u32::try_from(
            alternative
                .runs
                .iter()
                .flat_map(|run| &run.pieces)
                .filter(|piece| matches!(piece.kind, PlannedKind::Bend { .. }))
                .count(),
        )
        .unwrap_or(u32::MAX),
    }
}

/// What the ways are compared by, in their order.
pub(crate) fn figures(seen: &Shown) -> Vec<WayFigures> {
    let Some(job) = seen.car.good_job() else {
        return Vec::new();
    };
    let Some(Routed::Found(ways)) = &job.routed else {
        return Vec::new();
    };
    let model = seen.car.model();
    ways.iter()
        .zip(seen.figures())
        .map(|(way, figures)| {
            let offer = job.chosen.as_ref().map(|chosen| {
                offer_words(&offer_of(
                    &model.shop,
                    &model.stock,
                    &chosen.runs,
                    &way.runs,
                ))
            });
            way_figures(figures, offer)
        })
        .collect()
}

fn way_figures(figures: &Figures, offer: Option<Vec<String>>) -> WayFigures {
    WayFigures {
        price: figures.price.map(|price| price.to_string()),
        missing: u32::try_from(figures.missing).unwrap_or(u32::MAX),
        welds: figures.welds,
        hours: figures.hours,
        cost_as_cut: figures.cost_as_cut,
        mass: figures.mass_kg,
        without_mass: figures.without_mass.clone(),
        tightest: figures.tightest.as_ref().map(gap),
        ground: figures.ground.as_ref().map(gap),
        offer,
    }
}

pub(super) fn gap(gap: &Gap) -> GapView {
    GapView {
        subject: gap.subject.clone(),
        gap: gap.gap_mm,
        plus_minus: gap.plus_minus_mm,
        wanted: gap.wanted_mm,
        place: gap.place_words.clone(),
        at: gap.place.to_array(),
    }
}

/// What an offer changes, in words; empty when it is the chosen plan itself.
fn offer_words(offer: &Offer) -> Vec<String> {
    let list = |marks: &[String]| marks.join(", ");
    let mut words = Vec::new();
    for run in &offer.runs {
        let mut parts = vec![format!("{} pieces stay", run.stay.len())];
        for (what, marks) in [
            ("go", &run.go),
            ("are new", &run.come),
            ("are clocked otherwise", &run.turned),
        ] {
            if !marks.is_empty() {
                parts.push(format!("{} {what}", list(marks)));
            }
        }
        if !run.undone.is_empty() {
            parts.push(format!("made joints are undone: {}", list(&run.undone)));
        }
        words.push(format!("{}: {}", run.run, parts.join("; ")));
    }
    for lost in &offer.cut_steel {
        words.push(format!(
            "{} is cut already and would be of no use",
            lost.mark
        ));
    }
    words
}

fn run_view(seen: &Shown, run: &PlannedRun, posed: Option<&PosedProblem>) -> RunView {
    RunView {
        grips: super::hand::grips_of(seen, run),
        at_ends: posed
            .map(|posed| words_of_ends(posed, run, Lengths::Millimetres))
            .unwrap_or_default(),
        name: run.name.clone(),
        tube: run.tube.clone(),
        pieces: run.pieces.iter().map(piece).collect(),
        last_joint: run.last_joint.clone(),
        end_error: run.end_error_mm(),
        end_error_turn: run.end_error_rad().to_degrees(),
    }
}

fn piece(piece: &PlannedPiece) -> PieceView {
    let (what, length, angle, clock) = match &piece.kind {
        PlannedKind::Straight { length_mm } => {
            ("straight".to_owned(), Some(*length_mm), None, None)
        }
        PlannedKind::Bend {
            angle_rad,
            clock_rad,
            ..
        } => (
            "bend".to_owned(),
            None,
            Some(angle_rad.to_degrees()),
            Some(clock_rad.to_degrees()),
        ),
        PlannedKind::Component {
            name, length_mm, ..
        } => (name.clone(), Some(*length_mm), None, None),
        PlannedKind::Crossover { name, side, .. } => {
            (format!("{name}, side {}", side.letter()), None, None, None)
        }
    };
    PieceView {
        mark: piece.mark.clone(),
        joint: piece.joint.clone(),
        what,
        length,
        angle,
        clock,
        end: piece.frame_out.origin.to_array(),
    }
}

fn with_help(words: String, would_help: &[String]) -> String {
    match would_help_words(would_help) {
        Some(help) => format!("{words} {help}."),
        None => words,
    }
}
