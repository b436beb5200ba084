//! What the person at the saw has in hand: the numbers of the plan to every digit, or as they stand on
//! the cards.

use tubewright_build::model::LengthUnits;
use tubewright_plan::lengths::Lengths;
use tubewright_plan::stages::Supply;
use tubewright_stock::{CutCard, cut_cards};
use tubewright_walker::{Card, Fit};

use super::convert;
use super::solved::Solved;

#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Print {
    /// Every digit.
    Computed,
    /// What a tape can show.
    Printed,
}

pub(crate) struct OnPaper {
    pub(crate) card: Card,
    /// The program said that this saw should not make it.
    pub(crate) is_refused: bool,
}

/// Where the cards say that a run ends when they are followed.
pub(crate) struct Stated {
    pub(crate) run: String,
    pub(crate) up_to: Option<String>,
    pub(crate) end_mm: f64,
    pub(crate) end_deg: f64,
}

pub(crate) struct Paper {
    pub(crate) print: Print,
    pub(crate) cards: Vec<OnPaper>,
    /// Run, with what it is behind, and fit mark, in order.
    pub(crate) fits: Vec<(String, Fit)>,
    pub(crate) followed: Vec<Stated>,
    /// How far two readings of one mark may disagree, mm.
    pub(crate) reading_slack_mm: f64,
    /// A division of the tape, mm.
    pub(crate) division_mm: f64,
    /// Half of the last digit of the stated ends.
    pub(crate) followed_slack_mm: f64,
    pub(crate) followed_slack_deg: f64,
    /// Most that printing may cost at a run's end, mm and degrees.
    pub(crate) most_rounded_away: [f64; 2],
}

/// What a run's end may lose to the divisions of the tape, mm and degrees: half of what a fitter pulls
/// in while tacking for tenths of a millimetre, all of it, and one
/// millimetre on a way with a dozen cuts, for thirty-seconds of an inch.
pub(crate) fn most_rounded_away(units: LengthUnits) -> [f64; 2] {
    match units {
        LengthUnits::Millimetres => [1.5, 0.1],
        LengthUnits::Inches => [4.0, 0.5],
    }
}

impl Paper {
    /// To every digit, from the cutting plan.
    pub(crate) fn as_computed(supply: &Supply) -> Self {
        Self {
            print: Print::Computed,
            cards: on_paper(&cut_cards(&supply.plan, &supply.request.rules)),
            fits: fits(supply, |deg| deg),
            followed: Vec::new(),
            reading_slack_mm: 1e-6,
            division_mm: 1e-6,
            followed_slack_mm: 0.0,
            followed_slack_deg: 0.0,
            most_rounded_away: [0.0; 2],
        }
    }

    /// As the marks stand on the cards; clocks to a tenth of a degree.
    pub(crate) fn as_printed(solved: &Solved, supply: &Supply) -> Self {
        let units = solved.model.build.shown_units().units;
        let division_mm = Lengths::of(&solved.model).saw_division_mm();
        Self {
            print: Print::Printed,
            cards: on_paper(&supply.cards),
            fits: fits(supply, |deg| (deg * 10.0).round() / 10.0),
            followed: supply
                .followed
                .iter()
                .map(|followed| Stated {
                    run: followed.run.clone(),
                    up_to: followed.up_to.clone(),
                    end_mm: followed.end_mm,
                    end_deg: followed.end_rad.to_degrees(),
                })
                .collect(),
            // Inside and side are rounded to a division of their own, and the two rings beside a slot may
            // each have come a division nearer.
            reading_slack_mm: 2.0 * division_mm + 1e-6,
            division_mm,
            // Ends are stated to first order, from a cutting plan that counts in thousandths.
            followed_slack_mm: match units {
                LengthUnits::Millimetres => 0.05,
                LengthUnits::Inches => 0.1,
            },
            followed_slack_deg: 0.003,
            most_rounded_away: most_rounded_away(units),
        }
    }

    /// How far the millimetres round the outside may be off its clock, mm.
    pub(crate) fn round_slack_mm(&self, od_mm: f64) -> f64 {
        match self.print {
            Print::Computed => 1e-6,
            Print::Printed => 0.5 * self.division_mm + 0.5 * od_mm * 0.05_f64.to_radians() + 1e-6,
        }
    }
}

fn on_paper(cards: &[CutCard]) -> Vec<OnPaper> {
    cards
        .iter()
        .map(|card| OnPaper {
            card: convert::card(card),
            is_refused: !card.findings.is_empty(),
        })
        .collect()
}

fn fits(supply: &Supply, printed: impl Fn(f64) -> f64) -> Vec<(String, Fit)> {
    supply
        .fits
        .iter()
        .map(|mark| {
            let mut fit = convert::fit(mark);
            fit.clock_deg = printed(fit.clock_deg);
            (mark.run.clone(), fit)
        })
        .collect()
}
