//! The figures by which alternatives are compared: what a way costs, takes, weighs and leaves free.

use std::collections::BTreeSet;
use tubewright_build::model::Model;
use tubewright_build::resolved::ResolvedPractice;
use tubewright_check::{Finding, Limit, Rule, State};
use tubewright_geometry::Point;
use tubewright_route::loss::RIGHT_ANGLED_BEND;
use tubewright_stock::Money;

use crate::checks::{clearance_findings, clearance_findings_of, moving_runs};
use crate::flow::heads_lost;
use crate::ranking::cost_as_cut;
use crate::routes::{PlannedKind, PlannedRun, PosedProblem, component_item};
use crate::stages::{Supply, Surroundings};

/// A gap to something, in the position of everything that moves in which it is tightest.
#[derive(Clone, Debug, PartialEq)]
pub struct Gap {
    /// What to what, in words: *left bank to left rail*.
    pub subject: String,
    /// The gap, mm.
    pub gap_mm: f64,
    /// Its ± (19 in 20), mm, where it is known.
    pub plus_minus_mm: Option<f64>,
    /// What must be kept, mm.
    pub wanted_mm: f64,
    /// Which piece, in which position.
    pub place_words: String,
    /// Where in the car.
    pub place: Point,
}

impl Figures {
    /// How many degrees of bend lose as much as the mitres and the parts where runs meet.
    #[must_use]
    pub fn heads_as_bend_deg(&self) -> f64 {
        self.heads_lost / RIGHT_ANGLED_BEND * 90.0
    }
}

impl Gap {
    /// What is left over what must be kept, ± counted, mm; less than nothing when it fails.
    #[must_use]
    pub fn spare_mm(&self) -> f64 {
        self.gap_mm - self.plus_minus_mm.unwrap_or(0.0) - self.wanted_mm
    }
}

/// The figures of one way to run the tubes.
#[derive(Clone, Debug, PartialEq)]
pub struct Figures {
    /// Length of all runs along their centre lines, mm.
    pub length_mm: f64,
    /// Sum of all bends, radians.
    pub bends_rad: f64,
    /// Dynamic heads that are lost at mitres and where runs meet (an estimate).
    pub heads_lost: f64,
    /// Mass of tube and components, kg.
    pub mass_kg: f64,
    /// Components whose item names no mass: they are not in it.
    pub without_mass: Vec<String>,
    /// The largest distance of an end, or of the way into a crossover, from where it should be, mm.
    pub end_off_mm: f64,
    /// The largest angle of an end, or of the way into a crossover, to where it should point, radians.
    pub end_off_rad: f64,
    /// Price of what is bought, with tax and delivery; `None` without a buying plan.
    pub price: Option<Money>,
    /// Pieces that nothing on hand or on offer makes.
    pub missing: usize,
    /// Welds.
    pub welds: Option<u32>,
    /// Saw cuts.
    pub cuts: Option<u32>,
    /// Time for welds and cuts, hours.
    pub hours: Option<f64>,
    /// What it costs by its cutting plan, all counted, in the shop's money-like units.
    pub cost_as_cut: Option<f64>,
    /// The tightest gap to anything but the ground.
    pub tightest: Option<Gap>,
    /// The gap to the ground on its wheels.
    pub ground: Option<Gap>,
}

/// The figures of these runs.
#[must_use]
pub fn figures(
    model: &Model,
    around: &Surroundings,
    posed: &PosedProblem,
    runs: &[PlannedRun],
    supply: Option<&Supply>,
) -> Figures {
    let (mass_kg, without_mass) = mass(model, runs);
    let (end_off_mm, end_off_rad) = ends_off(posed, runs);
    let welds = supply.map(|supply| supply.welds);
    let practice = &around.practice;
    let findings = clearance_findings(
        &moving_runs(model, around, runs),
        &around.bodies,
        &around.measured.places.joint,
    );
    let tightest_of = |is_ground: bool| {
        findings
            .iter()
            .filter(|finding| (finding.rule == Rule::ClearanceToGround) == is_ground)
            .filter_map(gap_of)
            .min_by(|a, b| a.spare_mm().total_cmp(&b.spare_mm()))
    };
    let ground = tightest_of(true);
    Figures {
        length_mm: runs.iter().map(PlannedRun::developed_length_mm).sum(),
        bends_rad: runs.iter().map(PlannedRun::sum_of_bends_rad).sum(),
        heads_lost: heads_lost(model, runs),
        mass_kg,
        without_mass,
        end_off_mm,
        end_off_rad,
        price: supply.map(|supply| supply.plan.price),
        missing: supply.map_or(0, |supply| supply.plan.missing.len()),
        welds,
        cuts: supply.map(saw_cuts),
        hours: supply.map(|supply| hours(practice, supply)),
        cost_as_cut: supply.map(|supply| {
            let ground_mm = ground.as_ref().map(|gap| gap.gap_mm);
            cost_as_cut(model, practice, runs, supply, ground_mm)
        }),
        tightest: tightest_of(false),
        ground,
    }
}

/// All gaps of one run among the others, the tightest first, and how many could not be checked.
#[must_use]
pub fn gaps_of(
    model: &Model,
    around: &Surroundings,
    run: &PlannedRun,
    others: &[PlannedRun],
) -> (Vec<Gap>, usize) {
    let alone = core::slice::from_ref(run);
    let (alone, others) = (
        moving_runs(model, around, alone),
        moving_runs(model, around, others),
    );
    let joint = &around.measured.places.joint;
    let findings: Vec<Finding> = alone
        .iter()
        .flat_map(|run| clearance_findings_of(run, &others, &around.bodies, joint))
        .collect();
    let mut gaps: Vec<Gap> = findings.iter().filter_map(gap_of).collect();
    gaps.sort_by(|a, b| a.spare_mm().total_cmp(&b.spare_mm()));
    let unchecked = findings
        .iter()
        .filter(|finding| finding.state == State::NotChecked)
        .count();
    (gaps, unchecked)
}

fn saw_cuts(supply: &Supply) -> u32 {
    let cuts = supply
        .cards
        .iter()
        .map(|card| card.cuts.len())
        .sum::<usize>();
    u32::try_from(cuts).unwrap_or(u32::MAX)
}

/// Hours for the welds and saw cuts of a plan, and for the openings of crossovers that are made by hand.
pub(crate) fn hours(practice: &ResolvedPractice, supply: &Supply) -> f64 {
    // The weld round an opening is longer than one round the tube, and counted with its cuts.
    let at_openings = u32::try_from(supply.openings.len()).unwrap_or(u32::MAX);
    let round_the_tube = supply.welds.saturating_sub(at_openings);
    let openings = supply.openings.iter();
    (f64::from(round_the_tube) * practice.weld_time.minutes()
        + f64::from(saw_cuts(supply)) * practice.cut_time.minutes()
        + openings
            .map(|opening| opening.minutes(practice))
            .sum::<f64>())
        / 60.0
}

/// How far ends and ways into crossovers are off at most: distance in mm, angle in radians.
pub(crate) fn ends_off(posed: &PosedProblem, runs: &[PlannedRun]) -> (f64, f64) {
    let ends = runs
        .iter()
        .map(|run| (run.end_error_mm(), run.end_error_rad()));
    let inlets = runs.iter().flat_map(|run| &run.pieces).filter_map(|piece| {
        let PlannedKind::Crossover { name, side, pose } = &piece.kind else {
            return None;
        };
        let (place, travel) = pose.inlet(posed.part(name)?.ports(*side));
        Some((
            piece.frame_in.origin.distance(place),
            piece.frame_in.travel().angle_to(travel),
        ))
    });
    ends.chain(inlets).fold((0.0, 0.0), |most, off| {
        (most.0.max(off.0), most.1.max(off.1))
    })
}

fn gap_of(finding: &Finding) -> Option<Gap> {
    let (measured, place) = (finding.measured?, finding.place.as_ref()?);
    let Some(Limit::AtLeast(wanted_mm)) = finding.limit else {
        return None;
    };
    Some(Gap {
        subject: finding.subject.clone(),
        gap_mm: measured.value,
        plus_minus_mm: measured.plus_minus,
        wanted_mm,
        place_words: place.words.clone(),
        place: place.point_in_car,
    })
}

/// Mass of tube by its length and of components by their items; a crossover that two runs share
/// counts once.
fn mass(model: &Model, runs: &[PlannedRun]) -> (f64, Vec<String>) {
    let mut total = 0.0;
    let mut seen = BTreeSet::new();
    let mut without = Vec::new();
    for run in runs {
        let per_m = model
            .stock
            .tube(&run.tube)
            .map_or(0.0, tubewright_build::model::Tube::kg_per_metre);
        for piece in &run.pieces {
            match &piece.kind {
                PlannedKind::Straight { .. } | PlannedKind::Bend { .. } => {
                    total += per_m * piece.centre_line_mm() / 1000.0;
                }
                PlannedKind::Component { name, .. } | PlannedKind::Crossover { name, .. } => {
                    if !seen.insert(name.as_str()) {
                        continue;
                    }
                    let item = component_item(model, name);
                    match item.and_then(|item| item.mass.as_ref()) {
                        Some(mass) => total += mass.kg(),
                        None => without.push(name.clone()),
                    }
                }
            }
        }
    }
    (total, without)
}
