//! Wrap-round templates and clock strips at true scale.

use super::words::degrees;
use super::{PrintJob, lying};
use crate::routes::PlannedRun;
use tubewright_packet::{Block, Body, PacketPaper, Sheet, SheetKind, Stamp, Step};
use tubewright_sheets::{Drawing, Paper, TemplateError, clock_strip, to_svg};

/// Office paper, 80 g/m², mm (common practice, no source): the strip is as much longer than the tube
/// is round.
pub const PAPER_THICKNESS_MM: f64 = 0.1;

/// A drawing at true scale with its name.
#[derive(Clone, Debug, PartialEq)]
pub struct TrueScale {
    /// Short name for a file ("clock-strip-57").
    pub name: String,
    /// Heading of its sheet.
    pub title: String,
    /// In one piece.
    pub whole: Drawing,
    /// On pages.
    pub pages: Vec<Drawing>,
}

/// Every template of the runs.
///
/// # Errors
/// The first one that cannot be drawn.
pub fn templates_of(
    runs: &[PlannedRun],
    source_line: &str,
    paper: Paper,
) -> Result<Vec<TrueScale>, TemplateError> {
    let mut sizes: Vec<f64> = runs.iter().map(|run| run.od_mm).collect();
    sizes.sort_by(f64::total_cmp);
    sizes.dedup_by(|a, b| (*a - *b).abs() < 0.01);
    sizes
        .into_iter()
        .map(|od_mm| {
            let template = clock_strip(od_mm, PAPER_THICKNESS_MM, source_line, paper)?;
            let size = degrees(od_mm);
            Ok(TrueScale {
                name: format!("clock-strip-{size}"),
                title: format!("Template: clock strip for Ø{size}"),
                whole: template.whole,
                pages: template.pages,
            })
        })
        .collect()
}

/// Whether the cuts of the job want a template of their own.
fn shaped(job: &PrintJob<'_>) -> String {
    let Some(supply) = job.supply else {
        return "What is cut is not planned yet, so there is no shaped template.".to_owned();
    };
    let slanted: Vec<String> = supply
        .cards
        .iter()
        .filter(|card| !super::cut_cards::are_square(card))
        .flat_map(|card| &card.parts)
        .map(super::cut_cards::part_mark)
        .collect();
    if slanted.is_empty() {
        "Every cut of this job is square to the tube, so no shaped template is needed.".to_owned()
    } else {
        format!(
            "Not every cut of this job is square to the tube ({}): set the saw by the angle on the card; \
             there is no template for them.",
            slanted.join(", ")
        )
    }
}

/// The sheets: one page for each tile.
pub(super) fn sheets(job: &PrintJob<'_>, stamp: &Stamp, paper: PacketPaper) -> Vec<Sheet> {
    let source_line = format!(
        "{} · plan {} · {}",
        stamp.build, stamp.plan_hash, stamp.date
    );
    let mut blocks = vec![Block::Words {
        text: format!(
            "{} The clock strips on the next pages are wrapped round a tube to scribe a square ring and \
             to set the clock of a part.",
            shaped(job)
        ),
    }];
    blocks.push(Block::Steps {
        steps: [
            (
                "Print at 100 %",
                "Actual size, not fitted to the page.",
            ),
            (
                "Prove the print",
                "Lay a steel rule on both rulers: 100 mm and 4 in must agree to the width of a line.",
            ),
            (
                "Cut the strip out and try it on the tube",
                "Its ends must meet without gap or overlap; the dashed tab goes under the other end.",
            ),
        ]
        .into_iter()
        .map(|(what, how)| Step {
            what: what.to_owned(),
            how: how.to_owned(),
        })
        .collect(),
    });
    if let Some(supply) = job.supply {
        let lines = super::cross::why_not(job, supply);
        if !lines.is_empty() {
            blocks.push(Block::Heading {
                text: "A crossover made by hand".to_owned(),
            });
            blocks.extend(lines.into_iter().map(|text| Block::Words { text }));
        }
    }
    let mut sheets = vec![Sheet {
        kind: SheetKind::Template,
        title: "Templates".to_owned(),
        is_lying: false,
        body: Body::Made { blocks },
    }];
    match templates_of(job.runs, &source_line, lying(paper)) {
        Ok(found) => {
            for template in found {
                let count = template.pages.len();
                for (number, page) in (1..).zip(&template.pages) {
                    sheets.push(Sheet {
                        kind: SheetKind::Template,
                        title: if count > 1 {
                            format!("{}, page {number} of {count}", template.title)
                        } else {
                            template.title.clone()
                        },
                        is_lying: true,
                        body: Body::TrueScale { svg: to_svg(page) },
                    });
                }
            }
        }
        Err(error) => sheets.push(super::not_made(
            SheetKind::Template,
            "Templates",
            &error.to_string(),
        )),
    }
    sheets
}
