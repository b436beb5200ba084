//! A plan against what its cards give when they are followed to the letter.

use std::collections::BTreeMap;

use tubewright_build::model::Flows;
use tubewright_check::Board;
use tubewright_geometry::{Vector, math};
use tubewright_plan::routes::{PlannedKind, PlannedRun, roll_marks};
use tubewright_plan::stages::{Alternative, Supply};
use tubewright_stock::Source;
use tubewright_walker::{Assembled, Frame, MadePart, Next, Saw, Sawn, apart, assemble, saw};

use super::convert;
use super::paper::{Paper, Print};
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
    /// What was put together.
    pub(crate) order: Vec<Next>,
    /// What each weld pulls, in mm, by the number of what is put next; the last is that at the end.
    pub(crate) pulls: Vec<f64>,
    pub(crate) assembled: Assembled,
}

/// How far a way is looked into.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Depth {
    /// Densely.
    Whole,
    /// The other ways: places further apart, everything else as for the first.
    Coarse,
}

/// Proves the first way.
pub(crate) fn prove(solved: &Solved) -> Verdict {
    let mut verdict = Verdict::default();
    match solved.best() {
        Some(best) => way(
            solved,
            best,
            solved.supply.as_ref(),
            &solved.board,
            Depth::Whole,
            &mut verdict,
        ),
        None => verdict.notes.push("no route in this effort".to_owned()),
    }
    verdict
}

/// Proves every other way: each is bought, cut and judged as if it were the first.
pub(crate) fn prove_others(solved: &Solved) -> (usize, Verdict) {
    let mut verdict = Verdict::default();
    let others = solved.others();
    for (number, other) in others.iter().enumerate() {
        let mut of_it = Verdict::default();
        way(
            solved,
            &other.alternative,
            Some(&other.supply),
            &other.board,
            Depth::Coarse,
            &mut of_it,
        );
        let named = |text: String| format!("way {}: {text}", number + 2);
        verdict.faults.extend(of_it.faults.into_iter().map(named));
        verdict.notes.extend(of_it.notes.into_iter().map(named));
    }
    (others.len(), verdict)
}

fn way(
    solved: &Solved,
    alternative: &Alternative,
    supply: Option<&Supply>,
    board: &Board,
    depth: Depth,
    verdict: &mut Verdict,
) {
    let Some(supply) = supply else {
        verdict.fault("there is a route and no plan of its steel");
        return;
    };
    for missing in &supply.plan.missing {
        verdict.notes.push(format!(
            "{} cannot be made: {:?}",
            missing.mark, missing.why
        ));
    }
    stock_use(solved, supply, verdict);
    for run in &alternative.runs {
        steps(solved, run, verdict);
    }
    if !supply.plan.is_full() {
        return;
    }
    for paper in [
        Paper::as_computed(supply),
        Paper::as_printed(solved, supply),
    ] {
        let walked = follow(solved, supply, &alternative.runs, &paper, verdict);
        if paper.print == Print::Computed {
            for walked in &walked {
                crossings(board, walked, as_computed(supply, walked).0, verdict);
                broad_sides(solved, supply, walked, verdict);
            }
            super::clearance::prove(solved, board, &walked, depth, verdict);
            super::sensors::prove(solved, &alternative.runs, supply, verdict);
            super::hangers::prove(solved, &alternative.runs, supply, verdict);
            super::hours::prove(solved, &alternative.runs, supply, verdict);
        }
    }
}

/// Follows what is on paper and compares every part, every clock and every end with the plan.
pub(crate) fn follow<'a>(
    solved: &Solved,
    supply: &Supply,
    runs: &'a [PlannedRun],
    paper: &Paper,
    verdict: &mut Verdict,
) -> Vec<Walked<'a>> {
    let parts = sawn(solved, paper, verdict);
    let walked: Vec<Walked<'_>> = runs
        .iter()
        .filter_map(|run| put_together(solved, run, &parts, paper, verdict))
        .collect();
    for walked in &walked {
        super::pieces::compare(solved, supply, walked, paper, verdict);
        ends(supply, walked, paper, verdict);
    }
    walked
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
fn sawn(solved: &Solved, paper: &Paper, verdict: &mut Verdict) -> Vec<MadePart> {
    let practice = &solved.around.practice;
    let the_saw = Saw {
        kerf: practice.kerf.mm(),
        least_grip: practice.least_grip.mm(),
        capacity: practice.saw_capacity.mm(),
        reading_slack: paper.reading_slack_mm,
    };
    let mut parts = Vec::new();
    for on_paper in &paper.cards {
        let sawn: Sawn = saw(&on_paper.card, &the_saw);
        if !on_paper.is_refused {
            verdict.faults.extend(sawn.faults);
            for held in &sawn.held {
                if *held < the_saw.least_grip - paper.reading_slack_mm - 1e-6 {
                    verdict.fault(format!(
                        "{}: the saw holds {held:.1} mm",
                        on_paper.card.name
                    ));
                }
            }
        }
        parts.extend(sawn.parts);
    }
    parts
}

/// Where a crossover's side begins and ends in the car, from its item's ports and its outlet.
fn crossover(
    solved: &Solved,
    name: &str,
    side: &str,
    outlet: Vector,
    turned: impl Fn(Vector) -> Vector,
) -> Option<(Frame, Frame)> {
    // What stands in the car already begins and ends where its ends were measured.
    let component = solved.model.build.component(name)?;
    if let Some(ends) = &component.stands {
        let [into, out] = ends.each_ref().map(|end| {
            let placed = solved.around.measured.places.ends.get(end.as_str())?;
            let upright = tubewright_geometry::Frame::upright(
                placed.frame_in_car.origin,
                placed.frame_in_car.travel(),
            );
            Some(convert::frame(&upright))
        });
        return Some((into?, out?));
    }
    let item = convert::component_item(&solved.model, name)?;
    // Along the flow, up, to the left of a car seen from behind: rearwards, up, and minus right.
    let in_car = |v: Vector| turned(Vector::new(v.x, -v.z, v.y));
    let inlet_port = convert::port(item, Flows::In, side)?;
    let outlet_port = convert::port(item, Flows::Out, side)?;
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
    run: &'a PlannedRun,
    parts: &[MadePart],
    paper: &Paper,
    verdict: &mut Verdict,
) -> Option<Walked<'a>> {
    let mut order = Vec::new();
    // A part begins a run's stretch at its first mark; a straight on two legs is two parts.
    let mut fits = paper
        .fits
        .iter()
        .filter(|(of, _)| *of == run.name || of.starts_with(&format!("{}, behind ", run.name)))
        .map(|(_, fit)| fit)
        .peekable();
    let mut left: Vec<&MadePart> = parts.iter().collect();
    let rolls = roll_marks(&solved.model, run);
    for piece in &run.pieces {
        if let PlannedKind::Crossover { name, side, pose } = &piece.kind {
            let at = piece.frame_out.origin.to_vector();
            let turned = |v| convert::turned(pose, v);
            let Some((inlet, outlet)) = crossover(solved, name, side.letter(), at, turned) else {
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
            let mut fit = fit.clone();
            // The degrees are followed; the millimetres round the outside must agree.
            let round = run.od_mm / 2.0 * fit.clock_deg.to_radians();
            if (round - fit.round_outside).abs() > paper.round_slack_mm(run.od_mm) {
                verdict.fault(format!(
                    "{}: the clock of {:+.1} deg is {round:.1} mm round the outside, the card says {:.1}",
                    fit.marks.join(" + "),
                    fit.clock_deg,
                    fit.round_outside
                ));
            }
            fit.round_outside = round;
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
                verdict.fault(format!("no card gives {}", fit.marks.join(" + ")));
                return None;
            };
            order.push(Next::Part(left.remove(at).clone(), fit));
        }
    }
    if let Some(fit) = fits.next() {
        verdict.fault(format!(
            "{}: {} is out of order",
            run.name,
            fit.marks.join(" + ")
        ));
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
    Some(Walked {
        run,
        order,
        pulls,
        assembled,
    })
}

/// Every oval and box lies as the plan has it, by the roll on its card.
fn broad_sides(solved: &Solved, supply: &Supply, walked: &Walked<'_>, verdict: &mut Verdict) {
    let (run, assembled) = (walked.run, &walked.assembled);
    let (_, aim) = as_computed(supply, walked);
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

/// The run ends where the plan says: as computed but for what steel on hand differs from its nominal
/// radius, as printed where the card says that it ends.
fn ends(supply: &Supply, walked: &Walked<'_>, paper: &Paper, verdict: &mut Verdict) {
    let (run, assembled) = (walked.run, &walked.assembled);
    if run.brings_its_end() {
        // It ends where its last part does; how it meets that part is judged with the crossings.
        return;
    }
    let (place, aim) = apart(&assembled.end(), &convert::frame(&run.arrival()));
    let (mm, deg) = match paper.print {
        Print::Computed => as_computed(supply, walked),
        Print::Printed => {
            let stated = paper
                .followed
                .iter()
                .find(|stated| stated.run == run.name && stated.up_to.is_none());
            let Some(stated) = stated else {
                verdict.fault(format!("{}: the cards do not say where it ends", run.name));
                return;
            };
            // What is stated must be worth stating.
            let [most_mm, most_deg] = paper.most_rounded_away;
            if stated.end_mm > most_mm || stated.end_deg > most_deg {
                verdict.fault(format!(
                    "{}: printing rounds {:.2} mm and {:.3} deg away, more than {most_mm} mm and {most_deg} deg",
                    run.name, stated.end_mm, stated.end_deg
                ));
            }
            (
                stated.end_mm + paper.followed_slack_mm,
                stated.end_deg + paper.followed_slack_deg,
            )
        }
    };
    let paper = paper.print;
    verdict.notes.push(format!(
        "{}: parts off the cards ({paper:?}) end {place:.4} mm and {aim:.4} deg from where the plan says (at most {mm:.4} mm, {deg:.4} deg); the plan is {:.2} mm and {:.2} deg from its end",
        run.name,
        run.end_error_mm(),
        run.end_error_rad().to_degrees()
    ));
    if place > mm || aim > deg {
        verdict.fault(format!(
            "{}: parts off the cards ({paper:?}) end {place:.3} mm and {aim:.4} deg from where the plan says, not within {mm:.3} mm and {deg:.4} deg",
            run.name,
        ));
    }
}

/// A run meets its crossover where the findings say.
fn crossings(board: &Board, walked: &Walked<'_>, slack_mm: f64, verdict: &mut Verdict) {
    let run = walked.run;
    let stated: Vec<f64> = board
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
        if (away - stated).abs() > slack_mm {
            verdict.fault(format!(
                "{}: meets its crossover {away:.2} mm off, stated {stated:.2} mm",
                run.name
            ));
        }
    }
}

/// How far the end may lie from the plan's when the cards are followed to every digit: the cutting
/// plan counts in thousandths, and a bend on hand may be of another radius, which moves what is behind
/// it by at most twice the difference.
fn as_computed(supply: &Supply, walked: &Walked<'_>) -> (f64, f64) {
    let run = walked.run;
    let counted = 0.001_f64.to_radians();
    let (mut mm, mut rad) = (0.001 * run.pieces.len() as f64, 1e-7);
    for (card, part) in supply
        .cards
        .iter()
        .flat_map(|card| card.parts.iter().map(move |part| (card, part)))
    {
        let tubewright_stock::StockShape::Bend { clr, .. } = card.stock.shape else {
            continue;
        };
        let is_here = part.serves.iter().any(|serves| {
            run.pieces.iter().any(|piece| {
                piece.mark == serves.mark && matches!(piece.kind, PlannedKind::Bend { .. })
            })
        });
        if is_here {
            rad += counted;
            mm += counted * run.developed_length_mm() + 2.0 * (clr.mm() - run.clr_mm).abs();
        }
    }
    (mm, rad.to_degrees())
}
