//! Wrap-round templates and clock strips at true scale.

use super::cross::{hand_made, why_not_by_hand};
use super::words::degrees;
use super::{PrintJob, lying};
use crate::lengths::Lengths;
use crate::routes::{LEAST_LEAN_DEG, PlannedKind, PlannedRun, Sawn, end_of_run};
use crate::stages::Supply;
use tubewright_build::model::Model;
use tubewright_geometry::math;
use tubewright_geometry::template::Mitre;
use tubewright_packet::{Block, Body, PacketPaper, Sheet, SheetKind, Stamp, Step};
use tubewright_sheets::{
    Drawing, Keep, Paper, SplitCross, TemplateError, TemplateSpec, TurnSense, Unrolled,
    clock_strip, to_svg, wrap_template,
};

/// Office paper, 80 g/m², mm (common practice, no source): the strip is as much longer than the tube
/// is round.
pub const PAPER_THICKNESS_MM: f64 = 0.1;

/// From a curve to the square edge of its strip, mm: a hand's breadth lies flat on a tube (common
/// practice, no source).
const LEAD_MM: f64 = 40.0;

/// A drawing at true scale with its name.
#[derive(Clone, Debug, PartialEq)]
pub struct TrueScale {
    /// Short name for a file ("clock-strip-57").
    pub name: String,
    /// Heading of its sheet.
    pub title: String,
    /// How it is laid round the tube.
    pub lay: String,
    /// In one piece.
    pub whole: Drawing,
    /// On pages.
    pub pages: Vec<Drawing>,
}

/// What templates are drawn for.
#[derive(Clone, Copy, Debug)]
pub struct TemplateJob<'a> {
    /// The checked files.
    pub model: &'a Model,
    /// The runs of the way.
    pub runs: &'a [PlannedRun],
    /// Buying and cutting, for crossovers that can be made by hand.
    pub supply: Option<&'a Supply>,
    /// How lengths are written.
    pub lengths: Lengths,
    /// Build, plan and date, as they are printed on each.
    pub source_line: &'a str,
    /// The paper of the pages.
    pub paper: Paper,
}

/// Every template of the runs: a clock strip for each size of tube, both sides of an outlet that is sawn
/// off as a mitre, the opening of a crossover that can be made by hand.
///
/// # Errors
/// The first one that cannot be drawn.
pub fn templates_of(job: TemplateJob<'_>) -> Result<Vec<TrueScale>, TemplateError> {
    let mut templates = clock_strips(job)?;
    for run in job.runs {
        if let Some(sawn) = mitred(run) {
            templates.extend(mitre(job, run, sawn)?);
        }
    }
    for cross in job.supply.map_or_else(Vec::new, |s| hand_made(job.runs, s)) {
        if let Ok((item, split)) = &cross.made {
            templates.push(opening(job, &cross.name, item, split)?);
        }
    }
    Ok(templates)
}

/// The sizes of tube that want a clock strip.
fn strip_sizes_mm(runs: &[PlannedRun]) -> Vec<f64> {
    let mut sizes: Vec<f64> = runs.iter().map(|run| run.od_mm).collect();
    sizes.sort_by(f64::total_cmp);
    sizes.dedup_by(|a, b| (*a - *b).abs() < 0.01);
    sizes
}

fn clock_strips(job: TemplateJob<'_>) -> Result<Vec<TrueScale>, TemplateError> {
    strip_sizes_mm(job.runs)
        .into_iter()
        .map(|od_mm| {
            let template = clock_strip(od_mm, PAPER_THICKNESS_MM, job.source_line, job.paper)?;
            let size = degrees(od_mm);
            Ok(TrueScale {
                name: format!("clock-strip-{size}"),
                title: format!("Template: clock strip for Ø{size}"),
                lay: "Round the tube with the arrow downstream and 0 on the witness line: plus is clockwise \
                      looking downstream. Its straight edge is square to the tube where its ends meet in line."
                    .to_owned(),
                whole: template.whole,
                pages: template.pages,
            })
        })
        .collect()
}

/// How the outlet is sawn off, where it is and not square.
fn mitred(run: &PlannedRun) -> Option<Sawn> {
    run.sawn
        .filter(|sawn| sawn.turn_rad.to_degrees() >= LEAST_LEAN_DEG)
}

/// Both sides of an outlet that is sawn off as a mitre: the outlet, and the first piece. The inside of the
/// turn is the short side of both.
fn mitre(
    job: TemplateJob<'_>,
    run: &PlannedRun,
    sawn: Sawn,
) -> Result<Vec<TrueScale>, TemplateError> {
    let model = job.model;
    let end = model
        .build
        .run(&run.name)
        .and_then(|written| end_of_run(&model.build, &written.from));
    let outlet_od_mm = end.map_or(run.od_mm, |end| end.od.mm());
    let outlet = end.map_or_else(|| run.name.clone(), |end| end.name.to_string());
    let half = degrees(0.5 * sawn.turn_rad.to_degrees());
    let lengths = job.lengths;
    // From the middle of the cut to its long or short side.
    let reach_mm = |od_mm: f64| 0.5 * od_mm * math::tan(0.5 * sawn.turn_rad);
    let spec = |mark: &str, zero_words: &str, keep, clock_at_zero_rad| TemplateSpec {
        mark: mark.to_owned(),
        title: format!("mitre of {half}°"),
        source_line: job.source_line.to_owned(),
        zero_words: zero_words.to_owned(),
        arrow_words: "downstream".to_owned(),
        keep,
        q_turns: TurnSense::Clockwise,
        clock_at_zero_rad,
        lead_mm: LEAD_MM,
    };
    let drawn = |od_mm: f64, spec: TemplateSpec, title: String, lay: String| {
        let curve = Mitre::for_turn(0.5 * od_mm, sawn.turn_rad);
        let unrolled = Unrolled::end_cut(&curve, PAPER_THICKNESS_MM);
        let template = wrap_template(&unrolled, &spec, job.paper)?;
        Ok(TrueScale {
            name: plain(&format!("mitre-{}", spec.mark)),
            title,
            lay,
            whole: template.whole,
            pages: template.pages,
        })
    };
    let mut both = vec![drawn(
        outlet_od_mm,
        spec(&outlet, "short side", Keep::Below, Some(sawn.clock_rad)),
        format!("Template: mitre of {half}° on the outlet {outlet}"),
        format!(
            "Round the outlet with the arrow downstream and the line “short side” at its clock. The short \
             side of the curve lies {} back from the face of the flange, along the outlet.",
            lengths.about(sawn.back_mm + reach_mm(outlet_od_mm))
        ),
    )?];
    // On an arc a mitre is another curve; what is welded to an outlet is as a rule straight there.
    let first = run.pieces.first();
    if let Some(piece) = first.filter(|it| matches!(it.kind, PlannedKind::Straight { .. })) {
        let mark = &piece.mark;
        both.push(drawn(
            run.od_mm,
            spec(mark, "long side", Keep::Above, None),
            format!("Template: mitre of {half}° on {mark}, upstream"),
            format!(
                "Round {mark} with the arrow downstream; the line “long side” is the outside of the turn, \
                 opposite the short side of the outlet. The length on its card is along the middle: the long \
                 side is {} longer, the short side as much shorter.",
                lengths.about(reach_mm(run.od_mm))
            ),
        )?);
    }
    Ok(both)
}

/// The opening of each of the two bends that a crossover is made of by hand.
fn opening(
    job: TemplateJob<'_>,
    name: &str,
    item: &str,
    split: &SplitCross,
) -> Result<TrueScale, TemplateError> {
    let spec = TemplateSpec {
        mark: name.to_owned(),
        title: format!("opening of {item}, both alike"),
        source_line: job.source_line.to_owned(),
        zero_words: "back of the bend".to_owned(),
        arrow_words: "along the bend".to_owned(),
        keep: Keep::Below,
        // Alike to both sides of the back and of the apex ring.
        q_turns: TurnSense::Clockwise,
        clock_at_zero_rad: None,
        lead_mm: LEAD_MM,
    };
    let unrolled = split
        .template(PAPER_THICKNESS_MM)
        .map_err(|_| TemplateError::NothingCut {
            mark: name.to_owned(),
        })?;
    let template = wrap_template(&unrolled, &spec, job.paper)?;
    Ok(TrueScale {
        name: plain(&format!("opening-{name}")),
        title: format!("Template: opening of {item} for {name} by hand"),
        lay: "Round the middle of the bend, the line “back of the bend” along its outside and the middle of \
              the opening on the apex ring; slit the paper from its edge where it will not lie on the arc. \
              Both bends alike. On the arc paper lies only near the back: check with the marks of the sheet."
            .to_owned(),
        whole: template.whole,
        pages: template.pages,
    })
}

/// A name that every file system takes.
#[must_use]
pub fn plain(name: &str) -> String {
    let plain: String = name
        .chars()
        .map(|c| if c.is_alphanumeric() { c } else { '-' })
        .collect();
    plain.to_lowercase()
}

/// Whether what is cut wants a template of its own, in words.
#[must_use]
pub fn shaped_words(runs: &[PlannedRun], supply: Option<&Supply>) -> String {
    let Some(supply) = supply else {
        return "What is cut is not planned yet, so there is no shaped template.".to_owned();
    };
    let slanted: Vec<String> = supply
        .cards
        .iter()
        .filter(|card| !super::cut_cards::are_square(card))
        .flat_map(|card| &card.parts)
        .map(super::cut_cards::part_mark)
        .collect();
    let mitred: Vec<&str> = runs
        .iter()
        .filter(|run| mitred(run).is_some())
        .map(|run| run.name.as_str())
        .collect();
    if !slanted.is_empty() {
        format!(
            "Not every cut of this job is square to the tube ({}): set the saw by the angle on the card; \
             there is no template for them.",
            slanted.join(", ")
        )
    } else if mitred.is_empty() {
        "Every cut of this job is square to the tube, so no shaped template is needed.".to_owned()
    } else {
        format!(
            "The outlet that {} starts from is sawn off as a mitre, and its first piece with it: templates \
             for them follow. Every other cut of this job is square to the tube.",
            mitred.join(" and that ")
        )
    }
}

/// The sheets: one page for each tile.
pub(super) fn sheets(job: &PrintJob<'_>, stamp: &Stamp, paper: PacketPaper) -> Vec<Sheet> {
    let source_line = format!(
        "{} · plan {} · {}",
        stamp.build, stamp.plan_hash, stamp.date
    );
    let strips = match strip_sizes_mm(job.runs).len() {
        1 => "The clock strip on the next page is",
        _ => "The clock strips on the next pages are",
    };
    let mut blocks = vec![Block::Words {
        text: format!(
            "{} {} wrapped round a tube to scribe a square ring and to set the clock of a part.",
            shaped_words(job.runs, job.supply),
            strips
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
        let lines = why_not_by_hand(job.runs, supply);
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
        is_below: true,
        body: Body::Made { blocks },
    }];
    let wanted = TemplateJob {
        model: job.model,
        runs: job.runs,
        supply: job.supply,
        lengths: job.lengths,
        source_line: &source_line,
        paper: lying(paper),
    };
    match templates_of(wanted) {
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
                        is_below: false,
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

#[cfg(test)]
mod tests {
    use super::*;
    use tubewright_build::{Texts, read};

    #[test]
    fn a_crossover_by_hand_has_the_opening_to_both_sides_of_the_apex() {
        let nothing = Texts {
            build: None,
            stock: None,
            shop: None,
        };
        let job = TemplateJob {
            model: &read(nothing).model,
            runs: &[],
            supply: None,
            lengths: Lengths::Millimetres,
            source_line: "a car",
            paper: Paper::A4,
        };
        let split = SplitCross {
            od_mm: 57.0,
            wall_mm: 1.5,
            clr_mm: 85.5,
            bend_rad: 90.0_f64.to_radians(),
            legs_mm: [100.0; 2],
            plane_mm: 100.0,
        };
        let template = opening(job, "X pipe", "bend 57 90", &split).unwrap();
        assert_eq!(template.name, "opening-x-pipe");
        let svg = to_svg(&template.whole);
        let layer = svg.split("data-layer=\"curve\">").nth(1).unwrap();
        let along: Vec<f64> = layer
            .split("</g>")
            .next()
            .unwrap()
            .split("d=\"")
            .skip(1)
            .filter_map(|path| path.split('"').next())
            .flat_map(|path| {
                path.split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
                    .filter_map(|number| number.parse::<f64>().ok())
                    .skip(1)
                    .step_by(2)
            })
            .collect();
        let reach = along.iter().copied().fold(f64::NEG_INFINITY, f64::max)
            - along.iter().copied().fold(f64::INFINITY, f64::min);
        // On its back, to both sides: 2 ρ acos(d / ρ) with ρ = R + r = 114 mm.
        let wanted = 2.0 * 114.0 * math::acos(100.0 / 114.0);
        assert!((reach - wanted).abs() < 0.05, "{reach} and not {wanted}");
    }
}
