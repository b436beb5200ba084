//! A plan against what its cards give when they are followed to the letter.

use std::collections::BTreeMap;

use tubewright_geometry::{Vector, math};
use tubewright_plan::routes::{PlannedKind, PlannedRun, roll_marks};
use tubewright_plan::stages::Supply;
use tubewright_stock::Source;
use tubewright_walker::{Assembled, Frame, MadePart, Next, Saw, Sawn, apart, assemble, saw};

use super::convert;
use super::solved::Solved;

/// Everything that the walker finds wrong, and what it measured.
#[derive(Default)]
pub(crate) struct Verdict {
    pub(crate) faults: Vec<String>,
    pub(crate) notes: Vec<String>,
}

impl Verdict {
    pub(crate) fn fault(&mut self, what: impl Into<String>) {
        self.faults.push(what.into());
    }

    /// # Panics
    /// When anything is wrong.
    pub(crate) fn assert_sound(&self, of: &str) {
        for note in &self.notes {
            println!("{of}: {note}");
        }
        assert!(
            self.faults.is_empty(),
            "{of}: the walker finds {} faults:\n  {}",
            self.faults.len(),
            self.faults.join("\n  ")
        );
    }
}

/// A run as its cards and fit marks give it.
pub(crate) struct Walked<'a> {
    pub(crate) run: &'a PlannedRun,
    pub(crate) assembled: Assembled,
}

/// Numbers as they stand in the plan, or as they are printed: a tenth of a millimetre and of a degree.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Print {
    Exact,
    Tenths,
}

impl Print {
    fn round(self, value: f64) -> f64 {
        match self {
            Self::Exact => value,
            Self::Tenths => (value * 10.0).round() / 10.0,
        }
    }
}

/// Proves a whole plan.
pub(crate) fn prove(solved: &Solved) -> Verdict {
    let mut verdict = Verdict::default();
    let (Some(best), Some(supply)) = (solved.best(), &solved.supply) else {
        verdict.notes.push("no route in this effort".to_owned());
        return verdict;
    };
    for missing in &supply.plan.missing {
        verdict.notes.push(format!(
            "{} cannot be made: {:?}",
            missing.mark, missing.why
        ));
    }
    stock_use(solved, supply, &mut verdict);
    for run in &best.runs {
        steps(solved, run, &mut verdict);
    }
    if !supply.plan.is_full() {
        return verdict;
    }
    for print in [Print::Exact, Print::Tenths] {
        let parts = sawn(solved, supply, print, &mut verdict);
        let walked: Vec<Walked<'_>> = best
            .runs
            .iter()
            .filter_map(|run| put_together(solved, supply, run, &parts, print, &mut verdict))
            .collect();
        for walked in &walked {
            ends(solved, supply, walked, print, &mut verdict);
        }
        if print == Print::Exact {
            for walked in &walked {
                broad_sides(solved, supply, walked, &mut verdict);
            }
        }
        if print == Print::Exact {
            super::clearance::prove(solved, &walked, &mut verdict);
        }
    }
    verdict
}

/// Nothing is used twice, and no more than is there.
fn stock_use(solved: &Solved, supply: &Supply, verdict: &mut Verdict) {
    let mut used: BTreeMap<Source, Vec<u32>> = BTreeMap::new();
    for cut in &supply.plan.cuts {
        used.entry(cut.source.clone()).or_default().push(cut.number);
    }
    let mut counts: BTreeMap<Source, u32> = BTreeMap::new();
    for (source, numbers) in &mut used {
        numbers.sort_unstable();
        let count = u32::try_from(numbers.len()).expect("few");
        if !numbers.iter().copied().eq(1..=count) {
            verdict.fault(format!("{source:?} is numbered {numbers:?}"));
        }
        *counts.entry(source.clone()).or_default() += count;
    }
    for component in &supply.plan.components {
        *counts.entry(component.source.clone()).or_default() += 1;
    }
    for (source, count) in &counts {
        let there = match source {
            Source::OnHand(name) => solved
                .model
                .stock
                .on_hand(name)
                .map_or(0, |on_hand| on_hand.count),
            Source::Bought(item) => supply
                .plan
                .buys
                .iter()
                .filter(|buy| buy.item == *item)
                .map(|buy| buy.quantity)
                .sum(),
        };
        if *count > there {
            verdict.fault(format!(
                "{source:?}: {count} are used and {there} are there"
            ));
        }
    }
}

/// Every planned size is a whole number of the shop's steps and no smaller than its least.
fn steps(solved: &Solved, run: &PlannedRun, verdict: &mut Verdict) {
    let practice = &solved.around.practice;
    let off = |value: f64, step: f64| (value / step - (value / step).round()).abs() * step;
    for piece in &run.pieces {
        match &piece.kind {
            PlannedKind::Straight { length_mm } => {
                let by = off(*length_mm, practice.length_step.mm());
                if by > 1e-6 {
                    verdict.fault(format!("{}: {length_mm} mm is off the step", piece.mark));
                }
            }
            PlannedKind::Bend {
                angle_rad,
                clock_rad,
                ..
            } => {
                for (what, rad, step) in [
                    ("bend", angle_rad, practice.bend_step.deg()),
                    ("clock", clock_rad, practice.clock_step.deg()),
                ] {
                    let deg = rad.to_degrees();
                    // A whole stock bend is made without a cut, whatever the step.
                    let is_stock = what == "bend" && is_stock_angle(solved, &run.tube, deg);
                    if off(deg, step) > 1e-6 && !is_stock {
                        verdict.fault(format!("{}: {what} {deg} deg is off the step", piece.mark));
                    }
                }
                if angle_rad.to_degrees() < practice.least_bend.deg() - 1e-6 {
                    verdict
                        .notes
                        .push(format!("{}: below the least bend", piece.mark));
                }
            }
            PlannedKind::Component { .. } | PlannedKind::Crossover { .. } => {}
        }
    }
}

fn is_stock_angle(solved: &Solved, tube: &str, deg: f64) -> bool {
    use tubewright_build::model::{ItemKind, StockShape};
    solved.model.stock.items.iter().any(|item| {
        let is_tube = item.tube.as_ref().is_some_and(|of| *of == *tube);
        match &item.kind {
            ItemKind::Stock(StockShape::Bend { angle, .. }) => {
                is_tube && (angle.deg() - deg).abs() < 1e-6
            }
            _ => false,
        }
    })
}

/// Follows every card.
fn sawn(solved: &Solved, supply: &Supply, print: Print, verdict: &mut Verdict) -> Vec<MadePart> {
    let practice = &solved.around.practice;
    let the_saw = Saw {
        kerf: practice.kerf.mm(),
        least_grip: practice.least_grip.mm(),
        capacity: practice.saw_capacity.mm(),
        reading_slack: match print {
            Print::Exact => 1e-6,
            Print::Tenths => 0.15,
        },
    };
    let mut parts = Vec::new();
    for card in &supply.cards {
        let sawn: Sawn = saw(&convert::card(card, |mm| print.round(mm)), &the_saw);
        let is_refused = !card.findings.is_empty();
        if !is_refused {
            verdict.faults.extend(sawn.faults);
            for held in &sawn.held {
                if *held < the_saw.least_grip - 0.2 {
                    verdict.fault(format!("{:?}: the saw holds {held:.1} mm", card.source));
                }
            }
        }
        parts.extend(sawn.parts);
    }
    parts
}

/// Where a crossover's side begins and ends in the car, from its item's ports and its outlet.
fn crossover(solved: &Solved, name: &str, side: &str, outlet: Vector) -> Option<(Frame, Frame)> {
    let item = convert::component_item(&solved.model, name)?;
    // Along the flow, up, to the left of a car seen from behind: rearwards, up, and minus right.
    let in_car = |v: Vector| Vector::new(v.x, -v.z, v.y);
    let (inlet_port, outlet_port) = (item.inlet(Some(side))?, item.outlet(Some(side))?);
    let origin = outlet - in_car(outlet_port.at.to_vector());
    let upright =
        |at: Vector, travel: Vector| Frame::upright(at.to_array(), in_car(travel).to_array());
    Some((
        upright(
            origin + in_car(inlet_port.at.to_vector()),
            inlet_port.travel.vector(),
        ),
        upright(outlet, outlet_port.travel.vector()),
    ))
}

/// Puts a run together by its fit marks.
fn put_together<'a>(
    solved: &Solved,
    supply: &Supply,
    run: &'a PlannedRun,
    parts: &[MadePart],
    print: Print,
    verdict: &mut Verdict,
) -> Option<Walked<'a>> {
    let mut order = Vec::new();
    // A part begins a run's stretch at its first mark; a straight on two legs is two parts.
    let mut fits = supply
        .fits
        .iter()
        .filter(|fit| fit.run == run.name || fit.run.starts_with(&format!("{}, behind ", run.name)))
        .peekable();
    let mut left: Vec<&MadePart> = parts.iter().collect();
    let rolls = roll_marks(&solved.model, run);
    for piece in &run.pieces {
        if let PlannedKind::Crossover { name, side, .. } = &piece.kind {
            let at = piece.frame_out.origin.to_vector();
            let Some((inlet, outlet)) = crossover(solved, name, side.letter(), at) else {
                verdict.fault(format!("{name} has no side {}", side.letter()));
                return None;
            };
            let stated = convert::frame(&piece.frame_out);
            if apart(&stated, &outlet).1 > 1e-6 {
                verdict.fault(format!("{name}: the plan leaves it in another direction"));
            }
            order.push(Next::Crossover { outlet, inlet });
            fits.next_if(|fit| fit.marks == [piece.mark.clone()]);
            continue;
        }
        while let Some(fit) = fits.next_if(|fit| fit.marks.first() == Some(&piece.mark)) {
            let mut fit = convert::fit(fit);
            if print == Print::Tenths {
                // The card's degrees are followed; its millimetres round the outside must agree.
                fit.clock_deg = print.round(fit.clock_deg);
                let od = run.od_mm;
                let round = od / 2.0 * fit.clock_deg.to_radians();
                if (round - print.round(fit.round_outside)).abs()
                    > 0.05 + od * 0.05_f64.to_radians()
                {
                    verdict.fault(format!("{:?}: clock and round do not agree", fit.marks));
                }
                fit.round_outside = round;
            }
            if let PlannedKind::Component { length_mm, .. } = &piece.kind {
                let roll = rolls.iter().find(|roll| roll.mark == piece.mark);
                order.push(Next::Component {
                    length: *length_mm,
                    fit,
                    roll: roll.map(|roll| convert::roll(roll, run.od_mm)),
                });
                continue;
            }
            let Some(at) = left.iter().position(|part| part.marks == fit.marks) else {
                verdict.fault(format!("no card gives {:?}", fit.marks));
                return None;
            };
            order.push(Next::Part(left.remove(at).clone(), fit));
        }
    }
    if let Some(fit) = fits.next() {
        verdict.fault(format!("{}: {:?} is out of order", run.name, fit.marks));
        return None;
    }
    let start = convert::frame(&run.start);
    let pull = solved.around.practice.weld_pull.mm();
    // A weld has its pull in the cut length of a straight beside it; where there is none it is left
    // to the trim of the closing piece.
    let is_straight = |number: Option<usize>, upstream: bool| {
        number
            .and_then(|number| order.get(number))
            .is_some_and(|next| match next {
                Next::Part(part, fit) => {
                    let (up, down) = if fit.is_reversed {
                        (part.leg_b, part.leg_a)
                    } else {
                        (part.leg_a, part.leg_b)
                    };
                    part.angle_deg == 0.0 || if upstream { down > 0.0 } else { up > 0.0 }
                }
                _ => false,
            })
    };
    let pulls: Vec<f64> = (0..=order.len())
        .map(|joint| {
            let has = is_straight(joint.checked_sub(1), true) || is_straight(Some(joint), false);
            if has { pull } else { 0.0 }
        })
        .collect();
    let assembled = assemble(start, &order, |joint| {
        pulls.get(joint).copied().unwrap_or(0.0)
    });
    verdict.faults.extend(
        assembled
            .faults
            .iter()
            .map(|fault| format!("{}: {fault}", run.name)),
    );
    Some(Walked { run, assembled })
}

/// Every oval and box lies as the plan has it, by the roll on its card.
fn broad_sides(solved: &Solved, supply: &Supply, walked: &Walked<'_>, verdict: &mut Verdict) {
    let (run, assembled) = (walked.run, &walked.assembled);
    let (_, aim) = off_by(solved, supply, walked, Print::Exact);
    for piece in &run.pieces {
        let PlannedKind::Component { name, roll_rad, .. } = &piece.kind else {
            continue;
        };
        let number = assembled
            .marks
            .iter()
            .position(|marks| marks.contains(&piece.mark));
        let lies = number.and_then(|number| assembled.broad_sides[number]);
        if lies.is_some() != convert::has_broad_side(&solved.model, name) {
            verdict.fault(format!(
                "{}: {} has no roll on any card, or one too many",
                run.name, piece.mark
            ));
        }
        let Some(lies) = lies else { continue };
        let flat = Frame::upright(
            convert::p(piece.frame_in.origin),
            convert::u(piece.frame_in.travel()),
        );
        let (sin, cos) = math::sin_cos(*roll_rad);
        let across = cross(flat.travel, flat.twelve);
        let wanted: [f64; 3] = core::array::from_fn(|k| flat.twelve[k] * cos + across[k] * sin);
        let along: f64 = lies.iter().zip(wanted).map(|(a, b)| a * b).sum();
        let off = math::acos(along.clamp(-1.0, 1.0)).to_degrees();
        verdict.notes.push(format!(
            "{}: {} rolled {off:.5} deg off",
            run.name, piece.mark
        ));
        if off > 0.01 + 2.0 * aim {
            verdict.fault(format!(
                "{}: {} put by its card lies {off:.3} deg from how the plan has it",
                run.name, piece.mark
            ));
        }
    }
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}

/// The run ends where the plan says, and is as long.
fn ends(
    solved: &Solved,
    supply: &Supply,
    walked: &Walked<'_>,
    print: Print,
    verdict: &mut Verdict,
) {
    let (run, assembled) = (walked.run, &walked.assembled);
    let (place, aim) = apart(&assembled.end(), &convert::frame(&run.arrival()));
    let bound = off_by(solved, supply, walked, print);
    verdict.notes.push(format!(
        "{}: parts off the cards end {place:.4} mm and {aim:.4} deg from where the plan says (bound {:.4} mm, {:.4} deg); plan is {:.2} mm and {:.2} deg from its end",
        run.name,
        bound.0,
        bound.1,
        run.end_error_mm(),
        run.end_error_rad().to_degrees()
    ));
    if place > bound.0 || aim > bound.1 {
        verdict.fault(format!(
            "{}: parts off the cards ({}) end {place:.3} mm and {aim:.4} deg from where the plan says, not within {:.3} mm and {:.4} deg",
            run.name,
            if print == Print::Exact { "as computed" } else { "as printed" },
            bound.0,
            bound.1
        ));
    }
    if print == Print::Exact {
        crossings(solved, walked, bound, verdict);
    }
}

/// A run meets its crossover where the findings say.
fn crossings(solved: &Solved, walked: &Walked<'_>, bound: (f64, f64), verdict: &mut Verdict) {
    let run = walked.run;
    let stated: Vec<f64> = solved
        .board
        .findings()
        .iter()
        .filter(|finding| {
            finding
                .subject
                .starts_with(&format!("{} from the inlet of", run.name))
        })
        .filter_map(|finding| Some(finding.measured?.value))
        .collect();
    if stated.len() != walked.assembled.inlets.len() {
        verdict.fault(format!("{}: a crossover is not judged", run.name));
    }
    for ((away, turned), stated) in walked.assembled.inlets.iter().zip(stated) {
        verdict.notes.push(format!(
            "{}: meets its crossover {away:.2} mm and {turned:.2} deg off, stated {stated:.2} mm",
            run.name
        ));
        if (away - stated).abs() > bound.0 {
            verdict.fault(format!(
                "{}: meets its crossover {away:.2} mm off, stated {stated:.2} mm",
                run.name
            ));
        }
    }
}

/// A straight that the leg of a bend serves has no weld on that side, but is still cut longer by that
/// weld's pull: it comes out so much too long.
const LEG_PULL: f64 = 1.0;

/// How far the end may lie from the plan's: what printing rounds away, and what a bend on hand
/// differs from its nominal radius and angle, each with its lever.
fn off_by(solved: &Solved, supply: &Supply, walked: &Walked<'_>, print: Print) -> (f64, f64) {
    let run = walked.run;
    let lever = run.developed_length_mm();
    // The cutting plan counts in thousandths of a millimetre and of a degree.
    let (mut mm, mut rad) = (0.001 * run.pieces.len() as f64, 1e-7);
    let pull = solved.around.practice.weld_pull.mm();
    if print == Print::Tenths {
        let faces = walked.assembled.pieces.len() as f64 + 1.0;
        mm += 0.1 * faces;
    }
    for (card, part) in supply
        .cards
        .iter()
        .flat_map(|card| card.parts.iter().map(move |part| (card, part)))
    {
        let tubewright_stock::StockShape::Bend { clr, .. } = card.stock.shape else {
            continue;
        };
        let is_here = part
            .serves
            .iter()
            .any(|s| run.pieces.iter().any(|piece| piece.mark == s.mark));
        if !is_here {
            continue;
        }
        mm += LEG_PULL * pull * (part.serves.len() as f64 - 1.0);
        let counted = 0.001_f64.to_radians();
        rad += counted;
        mm += counted * lever;
        // Set-back and chord of a bend change by less than twice the difference in radius.
        mm += 2.0 * (clr.mm() - run.clr_mm).abs();
        if print == Print::Tenths {
            let turn = 0.1 / (clr.mm() - 0.5 * run.od_mm);
            rad += turn;
            mm += turn * lever;
        }
    }
    if print == Print::Tenths {
        let clock = 0.05_f64.to_radians() * walked.assembled.pieces.len() as f64;
        rad += clock;
        mm += clock * lever;
    }
    (mm, rad.to_degrees())
}
