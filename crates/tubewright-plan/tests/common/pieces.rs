//! Each piece off the cards against the planned one, so that what is wrong is named.

use std::collections::BTreeMap;

use tubewright_plan::routes::PlannedKind;
use tubewright_plan::stages::Supply;
use tubewright_walker::{Fit, MadePart, Next, Piece};

use super::paper::{Paper, Print};
use super::prove::{Verdict, Walked};
use super::solved::Solved;

pub(crate) fn compare(
    solved: &Solved,
    supply: &Supply,
    walked: &Walked<'_>,
    paper: &Paper,
    verdict: &mut Verdict,
) {
    sizes(supply, walked, paper, verdict);
    clocks(solved, walked, paper, verdict);
}

/// What the parts of a run give of each piece: millimetres of a straight, degrees of a bend.
#[derive(Default)]
struct Given {
    mm: f64,
    deg: f64,
    clr: f64,
    /// Faces that a mark made, with how far a division of the tape turns them, degrees.
    turn_deg: f64,
    faces: f64,
    pull: f64,
}

fn legs(part: &MadePart, fit: &Fit) -> [f64; 2] {
    if fit.is_reversed {
        [part.leg_b, part.leg_a]
    } else {
        [part.leg_a, part.leg_b]
    }
}

fn sizes(supply: &Supply, walked: &Walked<'_>, paper: &Paper, verdict: &mut Verdict) {
    let run = walked.run;
    let is_bend = |mark: &str| {
        run.pieces
            .iter()
            .any(|piece| piece.mark == mark && matches!(piece.kind, PlannedKind::Bend { .. }))
    };
    let mut given: BTreeMap<&str, Given> = BTreeMap::new();
    for (number, next) in walked.order.iter().enumerate() {
        let Next::Part(part, fit) = next else {
            continue;
        };
        let bend = fit.marks.iter().position(|mark| is_bend(mark));
        let [up, down] = legs(part, fit);
        let on_own = bend.is_none();
        for (place, mark) in fit.marks.iter().enumerate() {
            let of = given.entry(mark.as_str()).or_default();
            of.faces += 2.0;
            match bend {
                Some(at) if at == place => {
                    of.deg += part.angle_deg;
                    of.clr = part.clr;
                    of.turn_deg =
                        (2.0 * paper.division_mm / (part.clr + part.od / 2.0)).to_degrees();
                }
                Some(at) if place < at => of.mm += up,
                Some(_) => of.mm += down,
                None => of.mm += part.leg_a + part.leg_b,
            }
        }
        // A leg that serves no piece must be sawn off.
        let serves_up = bend.is_some_and(|at| at > 0);
        let serves_down = bend.is_some_and(|at| at + 1 < fit.marks.len());
        for (leg, serves) in [(up, serves_up), (down, serves_down)] {
            if !on_own && !serves && leg > paper.division_mm + 0.003 {
                verdict.fault(format!(
                    "{}: {} keeps {leg:.1} mm of a leg that serves nothing",
                    run.name,
                    fit.marks.join(" + ")
                ));
            }
        }
        // The weld before this part: its pull is borne by the straight upstream of it, else by the one
        // downstream.
        let before = number.checked_sub(1).and_then(|n| walked.order.get(n));
        bear(&mut given, walked, number, before, Some(next), &is_bend);
    }
    let last = walked.order.len();
    bear(
        &mut given,
        walked,
        last,
        walked.order.last(),
        None,
        &is_bend,
    );
    for (at, next) in walked.order.iter().enumerate() {
        // A component has no part: the weld before it is still borne by the straight upstream.
        if matches!(next, Next::Component { .. } | Next::Crossover { .. }) {
            let before = at.checked_sub(1).and_then(|n| walked.order.get(n));
            bear(&mut given, walked, at, before, None, &is_bend);
        }
    }
    for piece in &run.pieces {
        let of = given.get(piece.mark.as_str());
        let digits = 0.003;
        match &piece.kind {
            PlannedKind::Straight { length_mm } => {
                let Some(of) = of else {
                    verdict.fault(format!("{}: nothing gives {}", run.name, piece.mark));
                    continue;
                };
                let off = of.mm - of.pull - length_mm;
                if off.abs() > digits + of.faces * paper.division_mm {
                    verdict.fault(format!(
                        "{}: {} comes off the saw {off:+.2} mm off its {length_mm:.1} mm",
                        run.name, piece.mark
                    ));
                }
            }
            PlannedKind::Bend {
                angle_rad, clr_mm, ..
            } => {
                let Some(of) = of else {
                    verdict.fault(format!("{}: nothing gives {}", run.name, piece.mark));
                    continue;
                };
                let off = of.deg - angle_rad.to_degrees();
                if off.abs() > digits + of.turn_deg {
                    verdict.fault(format!(
                        "{}: {} comes off the saw {off:+.2} deg off its {:.1} deg",
                        run.name,
                        piece.mark,
                        angle_rad.to_degrees()
                    ));
                }
                let allowed = supply.request.rules.clr_tolerance.mm();
                if (of.clr - clr_mm).abs() > allowed + 1e-6 {
                    verdict.fault(format!(
                        "{}: {} is of radius {:.1} mm instead of {clr_mm:.1} mm",
                        run.name, piece.mark, of.clr
                    ));
                }
            }
            PlannedKind::Component { .. } | PlannedKind::Crossover { .. } => {}
        }
    }
}

/// Adds the pull of the weld before number `at` to the straight that bears it.
fn bear<'w>(
    given: &mut BTreeMap<&'w str, Given>,
    walked: &'w Walked<'_>,
    at: usize,
    before: Option<&'w Next>,
    next: Option<&'w Next>,
    is_bend: &impl Fn(&str) -> bool,
) {
    let straight = |next: Option<&'w Next>, is_last: bool| match next {
        Some(Next::Part(_, fit)) => {
            let mark = if is_last {
                fit.marks.last()
            } else {
                fit.marks.first()
            };
            mark.filter(|mark| !is_bend(mark))
        }
        _ => None,
    };
    let pull = walked.pulls.get(at).copied().unwrap_or(0.0);
    if let Some(mark) = straight(before, true).or_else(|| straight(next, false)) {
        given.entry(mark.as_str()).or_default().pull += pull;
    }
}

/// Each bend lies in the plane that the plan says.
fn clocks(solved: &Solved, walked: &Walked<'_>, paper: &Paper, verdict: &mut Verdict) {
    let run = walked.run;
    let made = walked
        .assembled
        .pieces
        .iter()
        .zip(&walked.assembled.piece_marks)
        .filter_map(|(piece, marks)| match piece {
            Piece::Bend { clock_deg, .. } => Some((*clock_deg, marks.join(" + "))),
            _ => None,
        });
    let planned = run.pieces.iter().filter_map(|piece| match piece.kind {
        PlannedKind::Bend { clock_rad, .. } => Some(clock_rad.to_degrees()),
        _ => None,
    });
    // What the shop's step leaves when it is no whole tenth of a degree.
    let step = solved.around.practice.clock_step.deg();
    let is_tenths = (step * 10.0 - (step * 10.0).round()).abs() < 1e-9;
    let allowed = match paper.print {
        Print::Printed if !is_tenths => 0.1,
        _ => 1e-6,
    };
    for ((made, marks), planned) in made.zip(planned) {
        let off = (made - planned + 180.0).rem_euclid(360.0) - 180.0;
        if off.abs() > allowed {
            verdict.fault(format!(
                "{}: {marks} is clocked {off:+.2} deg off its plane",
                run.name
            ));
        }
    }
}
