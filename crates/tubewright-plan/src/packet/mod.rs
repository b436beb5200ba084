//! The plan as a printed packet: every sheet of the job as values, ready for the typesetter.
//!
//! Nothing is computed here that another stage does not compute; numbers become words. A sheet that
//! cannot be made says so and why.

mod buying;
mod card_drawing;
mod cautions;
mod checks;
mod counter;
mod cover;
mod cross;
mod cut_cards;
mod fit;
mod found;
mod gaps;
mod joint_map;
mod joints;
mod longer;
mod parts;
mod run_sheets;
mod slices;
mod survey_sheet;
mod templates;
mod views;
mod weld;
mod words;

pub use card_drawing::card_picture;
pub use cross::{HandMade, hand_made, why_not_by_hand};
pub use joints::{Joint, JointKind, joints_of};
pub use longer::{Closing, closing};
pub use run_sheets::bend_text;
pub use templates::{
    PAPER_THICKNESS_MM, TemplateJob, TrueScale, plain, shaped_words, templates_of,
};

use crate::fit::fit_sheet;
use crate::hangers::hangers;
use crate::lengths::Lengths;
use crate::routes::PlannedRun;
use crate::scene::scene_of;
use crate::sensors::sensors;
use crate::stages::{Supply, Surroundings};
use tubewright_build::model::Model;
use tubewright_check::Board;
use tubewright_packet::{Body, Packet, PacketPaper, Sheet, SheetKind, Stamp};
use tubewright_sheets::{Paper, Scene};
use tubewright_stock::Substitute;

/// What a packet is printed from.
#[derive(Clone, Copy, Debug)]
pub struct PrintJob<'a> {
    /// The checked files.
    pub model: &'a Model,
    /// Adjusted readings and bodies.
    pub around: &'a Surroundings,
    /// The way that was chosen; none when no route was found.
    pub way: Option<Way<'a>>,
    /// Its runs.
    pub runs: &'a [PlannedRun],
    /// Buying and cutting.
    pub supply: Option<&'a Supply>,
    /// What to do at the counter, or why that was not worked out.
    pub substitutes: Result<&'a [Substitute], &'a str>,
    /// The checks.
    pub board: &'a Board,
    /// How lengths are written.
    pub lengths: Lengths,
}

/// The way that is printed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Way<'a> {
    /// The person chose it.
    Chosen {
        /// What it does.
        name: &'a str,
        /// Date of the choice.
        on: &'a str,
    },
    /// Nobody has chosen yet: the cheapest that was found.
    Cheapest {
        /// What it does.
        name: &'a str,
        /// Its cost in the shop's money-like units.
        cost: f64,
        /// No way costs less.
        lower_bound: f64,
        /// How many ways there were to choose from.
        among: usize,
    },
}

/// Every sheet of the job, in the order of the work.
#[must_use]
pub fn packet_of(job: &PrintJob<'_>, stamp: Stamp, paper: PacketPaper) -> Packet {
    let fit = job
        .supply
        .map(|supply| fit_sheet(job.model, job.around, job.runs, &supply.whole));
    let plan = job.supply.map(|supply| &supply.whole);
    let sensors = sensors(job.model, job.around, job.runs, plan);
    let hung = hangers(job.model, job.around, job.runs, plan, &sensors);
    let mut sheets = vec![cover::sheet(job, paper), cautions::sheet(job)];
    sheets.push(survey_sheet::sheet(job));
    sheets.extend(run_sheets::sheets(job, paper));
    match job.supply {
        Some(supply) => {
            sheets.push(buying::sheet(job, supply));
            sheets.extend(parts::sheet(job));
            sheets.push(counter::sheet(job, supply));
            sheets.push(buying::take_along(job, supply, &hung));
            sheets.push(cut_cards::how_to(job));
            sheets.extend(cut_cards::sheets(job, supply, fit.as_ref()));
        }
        None => {
            for (kind, title) in [
                (SheetKind::Buy, "Buy"),
                (SheetKind::Counter, "At the counter"),
                (SheetKind::TakeAlong, "Take along"),
                (SheetKind::Cut, "Cut cards"),
            ] {
                sheets.push(not_made(
                    kind,
                    title,
                    "there is no buying and cutting plan yet",
                ));
            }
        }
    }
    sheets.extend(templates::sheets(job, &stamp, paper));
    if let Some(supply) = job.supply {
        sheets.extend(cross::sheets(job, supply));
    }
    sheets.push(fit::sheet(job, fit.as_ref()));
    sheets.push(weld::sheet(job, &sensors));
    sheets.push(joint_map::sheet(job, &hung, paper));
    sheets.push(checks::sheet(job));
    sheets.push(survey_sheet::readings(job));
    Packet {
        stamp,
        paper,
        sheets,
    }
}

/// These runs among the bodies, lettered as the job is printed.
fn scene(job: &PrintJob<'_>, runs: &[PlannedRun]) -> Scene {
    Scene {
        unit: job.lengths.drawn(),
        ..scene_of(job.model, job.around, runs, job.board)
    }
}

/// A sheet that belongs here but could not be made.
fn not_made(kind: SheetKind, title: &str, why: &str) -> Sheet {
    Sheet {
        kind,
        title: title.to_owned(),
        is_lying: false,
        is_below: false,
        body: Body::NotMade {
            why: format!("Why: {why}."),
            instead:
                "Nothing on this page may be guessed. Work on from the sheet before, and print \
                      again when the reason is gone."
                    .to_owned(),
        },
    }
}

/// The page as the drawings know it, lying.
const fn lying(paper: PacketPaper) -> Paper {
    match paper {
        PacketPaper::A4 => Paper::A4,
        PacketPaper::UsLetter => Paper::LETTER,
    }
}

/// Width in mm that a drawing may take on a standing page.
const fn room_mm(paper: PacketPaper) -> f64 {
    let [width, _] = paper.standing_mm();
    width - 26.0
}
