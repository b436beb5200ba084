//! A crossover made by hand of two bends: the chosen one, or for the day on which the bought one is not to be had.

use super::PrintJob;
use super::words::{degrees, fixed};
use crate::routes::{PlannedKind, PlannedPiece, PlannedRun};
use crate::stages::Supply;
use tubewright_geometry::{Point, UnitVector, math, setback_mm};
use tubewright_packet::{Block, Body, Column, Figure, Sheet, SheetKind, Step, Table};
use tubewright_sheets::{SplitCross, SplitCrossError};
use tubewright_stock::{ItemKind, StockShape};

/// What can be made by hand for a crossover of the build.
#[derive(Clone, Debug, PartialEq)]
pub struct HandMade {
    /// Name of the crossover.
    pub name: String,
    /// The bend it is made of and how it is split, or why it cannot be.
    pub made: Result<(String, SplitCross), String>,
    /// Whether it is what was asked for, and not only what would do if the bought one is out.
    pub is_asked_for: bool,
}

/// For every crossover that two runs pass: whether two bends of the catalogue make it, port for port.
#[must_use]
pub fn hand_made(runs: &[PlannedRun], supply: &Supply) -> Vec<HandMade> {
    let mut sides: Vec<(String, Vec<&PlannedPiece>)> = Vec::new();
    for piece in runs.iter().flat_map(|run| &run.pieces) {
        if let PlannedKind::Crossover { name, .. } = &piece.kind {
            match sides.iter_mut().find(|(known, _)| known == name) {
                Some((_, pieces)) => pieces.push(piece),
                None => sides.push((name.clone(), vec![piece])),
            }
        }
    }
    sides
        .into_iter()
        .filter_map(|(name, pieces)| match pieces[..] {
            [one, two] => {
                let mut openings = supply.openings.iter();
                let asked_for = openings.find(|opening| opening.crossover == name);
                Some(HandMade {
                    is_asked_for: asked_for.is_some(),
                    made: match asked_for {
                        Some(opening) => Ok((opening.bend.clone(), opening.split)),
                        None => made_of(supply, [one, two]),
                    },
                    name,
                })
            }
            _ => None,
        })
        .collect()
}

/// Where the centre lines of a side's two ports meet, and its angle.
fn corner(piece: &PlannedPiece) -> Option<(Point, f64)> {
    let (into, out) = (piece.frame_in.travel(), piece.frame_out.travel());
    let angle = into.angle_to(out);
    let chord = piece.frame_out.origin - piece.frame_in.origin;
    // Alike at both ports: an isosceles triangle on the chord.
    let along = 0.5 * chord.norm() / math::cos(0.5 * angle);
    let corner = piece.frame_in.origin + into * along;
    let other = piece.frame_out.origin + out * -along;
    (angle > 0.02 && corner.distance(other) < 1.0).then_some((corner, angle))
}

/// Ports and bends may differ by so much, mm and radians: what a fitter pulls in (common practice,
/// no source).
const FIT_MM: f64 = 1.0;
const FIT_RAD: f64 = 0.5 * math::PI / 180.0;

fn made_of(
    supply: &Supply,
    [one, two]: [&PlannedPiece; 2],
) -> Result<(String, SplitCross), String> {
    let (Some((a, angle)), Some((b, other))) = (corner(one), corner(two)) else {
        return Err("its ports do not lie as two equal bends would put them".to_owned());
    };
    if (angle - other).abs() > FIT_RAD {
        return Err("its two sides turn by different angles".to_owned());
    }
    let apart = b - a;
    let toward = |piece: &PlannedPiece| -> Option<UnitVector> {
        (piece.frame_in.travel().vector() - piece.frame_out.travel().vector()).direction()
    };
    // The backs of both bends must look at each other, along the line between the corners.
    let faces = toward(one)
        .zip(apart.direction())
        .is_some_and(|(back, line)| back.angle_to(line) < 2.0 * FIT_RAD);
    if !faces || apart.norm() < FIT_MM {
        return Err("its two sides do not lie back to back".to_owned());
    }
    let tube = supply
        .request
        .runs
        .iter()
        .flat_map(|run| &run.pieces)
        .find(|piece| piece.mark == one.mark || piece.mark == two.mark)
        .map(|piece| &piece.tube)
        .ok_or_else(|| "its tube is not in the shop's stock".to_owned())?;
    let reach_mm = one.frame_in.origin.distance(a);
    let mut why = format!(
        "no bend of {}° in this tube is in the shop's stock",
        degrees(angle.to_degrees())
    );
    for item in &supply.request.items {
        let ItemKind::Stock(stock) = &item.kind else {
            continue;
        };
        let StockShape::Bend {
            angle: stock_angle,
            clr,
            leg_a,
            leg_b,
        } = stock.shape
        else {
            continue;
        };
        if !stock.tube.is_same_as(tube) || (stock_angle.rad() - angle).abs() > FIT_RAD {
            continue;
        }
        let leg_mm = reach_mm - setback_mm(clr.mm(), angle);
        let shortest = leg_a.mm().min(leg_b.mm());
        if leg_mm > shortest + FIT_MM {
            why = format!(
                "the legs of {} are {} mm and {} mm are needed to its ports",
                item.name,
                fixed(shortest, 0),
                fixed(leg_mm, 0)
            );
            continue;
        }
        let cross = SplitCross {
            od_mm: tube.od.mm(),
            wall_mm: tube.wall.mm(),
            clr_mm: clr.mm(),
            bend_rad: angle,
            legs_mm: [leg_mm.max(0.0); 2],
            plane_mm: 0.5 * apart.norm() + clr.mm() / math::cos(0.5 * angle),
        };
        match cross.half() {
            Ok(_) => return Ok((item.name.clone(), cross)),
            Err(SplitCrossError::Split(_)) => {
                let past = cross.plane_mm - clr.mm() - 0.5 * cross.od_mm;
                why = if past > 0.0 {
                    format!(
                        "two of {} between its ports stand {} mm apart at their backs, so there is \
                         nothing to open",
                        item.name,
                        fixed(2.0 * past, 1)
                    )
                } else {
                    format!("two of {} would have to be cut through", item.name)
                };
            }
            Err(error) => why = error.to_string(),
        }
    }
    Err(why)
}

/// A sheet for each crossover that can be made.
pub(super) fn sheets(job: &PrintJob<'_>, supply: &Supply) -> Vec<Sheet> {
    hand_made(job.runs, supply)
        .iter()
        .filter_map(|hand_made| {
            let (item, cross) = hand_made.made.as_ref().ok()?;
            Some(Sheet {
                kind: SheetKind::Template,
                title: if hand_made.is_asked_for {
                    format!("{}: made of two bends", hand_made.name)
                } else {
                    format!("{} by hand, if it is out", hand_made.name)
                },
                is_lying: false,
                is_below: false,
                body: Body::Made {
                    blocks: blocks(job, item, cross),
                },
            })
        })
        .collect()
}

/// Why the others cannot be made.
#[must_use]
pub fn why_not_by_hand(runs: &[PlannedRun], supply: &Supply) -> Vec<String> {
    hand_made(runs, supply)
        .into_iter()
        .filter_map(|hand_made| {
            let why = hand_made.made.err()?;
            Some(format!(
                "The crossover “{}” cannot be made by hand of two bends, port for port: {why}. If it is \
                 out, wait for it, or choose another and route again.",
                hand_made.name
            ))
        })
        .collect()
}

fn blocks(job: &PrintJob<'_>, item: &str, cross: &SplitCross) -> Vec<Block> {
    let (l, sign) = (job.lengths, job.lengths.sign());
    let outside_mm = cross.clr_mm + 0.5 * cross.od_mm;
    let apex_back_mm = outside_mm * 0.5 * cross.bend_rad;
    let weld = cross
        .weld_mm()
        .map_or_else(|_| "–".to_owned(), |mm| format!("{} {sign}", l.saw(mm)));
    let mut table = Table::new(
        "split-marks",
        vec![
            Column::figures("round from the back, degrees").big(),
            Column::figures(&format!("the same, {sign}")).big(),
            Column::figures(&format!("from the apex ring, {sign}")).big(),
        ],
    );
    if let Ok(marks) = cross.marks(math::PI / 12.0) {
        for mark in marks {
            table.row([
                format!("± {}", degrees(mark.from_back_rad.to_degrees())),
                l.saw(mark.round_mm),
                format!("± {}", l.saw(mark.along_mm)),
            ]);
        }
    }
    vec![
        Block::Figures {
            figures: vec![
                Figure {
                    value: format!("2 × {item}"),
                    what: "both alike".to_owned(),
                },
                Figure {
                    value: format!("{} {sign}", l.saw(outside_mm - cross.plane_mm)),
                    what: "taken off the back at the apex".to_owned(),
                },
                Figure {
                    value: weld,
                    what: "weld round the opening".to_owned(),
                },
            ],
        },
        Block::Steps {
            steps: [
                (
                    "Cut both legs to length",
                    format!(
                        "{} {sign} from the tangent line, where leg and bend meet.",
                        l.saw(cross.legs_mm[0])
                    ),
                ),
                (
                    "Draw the apex ring",
                    format!(
                        "Square round the middle of the bend: {} {sign} along the back from the tangent \
                         line.",
                        l.saw(apex_back_mm)
                    ),
                ),
                (
                    "Mark the opening",
                    "On each line round the tube, to both sides of the back and to both sides of the \
                     apex ring, by the table; join the marks."
                        .to_owned(),
                ),
                (
                    "Grind to the line on a flat plate",
                    "The whole edge must lie on the plate: the cut is one plane, square to the plane of \
                     the bend."
                        .to_owned(),
                ),
                (
                    "Clamp both openings together and weld round",
                    "The two bends are mirror images: their inner sides look away from each other."
                        .to_owned(),
                ),
            ]
            .into_iter()
            .map(|(what, how)| Step {
                what: what.to_owned(),
                how,
            })
            .collect(),
        },
        Block::Table { table },
    ]
}
