//! Each run from the side, above and behind, its pieces, its bends.

use super::joints::painted;
use super::views::views;
use super::words::{degrees, direction_words, fixed, signed_degrees, toward_words};
use super::{PrintJob, not_made, scene};
use crate::routes::{
    PlannedKind, PlannedPiece, PlannedRun, PosedProblem, component_item, words_of_ends,
};
use tubewright_geometry::{BendRow, BendTable, Frame, Point};
use tubewright_packet::{Block, Body, Column, Figure, PacketPaper, Sheet, SheetKind, Stamp, Table};
use tubewright_sheets::{PieceKind, Scene};

/// One sheet for each run.
pub(super) fn sheets(job: &PrintJob<'_>, paper: PacketPaper) -> Vec<Sheet> {
    if job.runs.is_empty() {
        return vec![not_made(
            SheetKind::Run,
            "Runs",
            "no route was found, or there is no run",
        )];
    }
    let posed = crate::stages::pose(job.model, job.around);
    job.runs
        .iter()
        .map(|run| sheet(job, run, &posed, paper))
        .collect()
}

fn sheet(job: &PrintJob<'_>, run: &PlannedRun, posed: &PosedProblem, paper: PacketPaper) -> Sheet {
    let mut scene = scene(job, core::slice::from_ref(run));
    scene.tight_places.retain(|place| place.piece == run.name);
    paint_crossovers(&mut scene, job.runs);
    let mut blocks = vec![Block::Figures {
        figures: vec![
            Figure {
                value: job.lengths.long(run.developed_length_mm()),
                what: "along the centre line".to_owned(),
            },
            Figure {
                value: format!("{}°", degrees(run.sum_of_bends_rad().to_degrees())),
                what: "of bend".to_owned(),
            },
            Figure {
                value: run.tube.clone(),
                what: "tube".to_owned(),
            },
            Figure {
                value: format!("{} {}", job.lengths.size(run.clr_mm), job.lengths.sign()),
                what: "centre-line radius".to_owned(),
            },
            Figure {
                value: format!(
                    "{} {}",
                    job.lengths.small(worst_joint_mm(job, run)),
                    job.lengths.sign()
                ),
                what: "off at its worst joint, pulled in".to_owned(),
            },
        ],
    }];
    blocks.extend(
        words_of_ends(posed, run, job.lengths)
            .into_iter()
            .map(|text| Block::Words { text }),
    );
    let part_of_two = part_of_two(job, run);
    blocks.extend(views(&scene, paper, &run.name, WORDS_MM));
    blocks.extend(tight_places(job, &scene));
    blocks.extend([
        Block::NewPage,
        Block::Heading {
            text: "Pieces in the order of the flow".to_owned(),
        },
        Block::Table {
            table: pieces(job, run),
        },
        Block::Words {
            text: format!(
                "Length is along the centre line of the run as it is welded; straights are {} longer on their cut \
                 cards for each weld at their ends, which pulls that much in: saw by the card.{part_of_two} Clock is the turn of the bend's \
                 plane from that of the bend before it, plus clockwise looking downstream; for the first \
                 bend of a run, and the first behind a crossover, from twelve o'clock. The turn from \
                 witness line to witness line is on the fit sheet: use that one at the bench.",
                job.lengths.fine(job.around.practice.weld_pull.mm())
            ),
        },
    ]);
    blocks.push(Block::Heading {
        text: "Bend table: length, rotation, angle, and the points".to_owned(),
    });
    blocks.push(Block::Table {
        table: bend_table(job, run),
    });
    blocks.push(Block::Words {
        text: "Length is the straight before the bend, parts and components in it included; point is \
               where the straight centre lines before and after the bend meet; x, y and z are those of the \
               grid on the drawings, and no tape reads them. A crossover starts a new count."
            .to_owned(),
    });
    Sheet {
        kind: SheetKind::Run,
        title: format!("Run: {}", run.name),
        is_lying: false,
        is_below: false,
        body: Body::Made { blocks },
    }
}

/// What the tight places of one run and a long name of its tube take on its sheet, mm.
const WORDS_MM: f64 = 18.0;

/// A crossover is one part with one mark, whichever run is looked at.
pub(super) fn paint_crossovers(scene: &mut Scene, runs: &[PlannedRun]) {
    let pieces = scene.runs.iter_mut().flat_map(|run| &mut run.pieces);
    for piece in pieces.filter(|piece| piece.kind == PieceKind::Crossover) {
        if let Some(name) = &piece.name {
            piece.mark = painted(name, &piece.mark, runs).to_owned();
        }
    }
}

/// What the numbers in squares on the views mean.
pub(super) fn tight_places(job: &PrintJob<'_>, scene: &Scene) -> Vec<Block> {
    if scene.tight_places.is_empty() {
        return Vec::new();
    }
    let l = job.lengths;
    let lines: Vec<String> = (1..)
        .zip(&scene.tight_places)
        .map(|(number, place)| {
            format!(
                "{number} {} to {}: {} (wants {})",
                place.piece,
                place.body,
                place.plus_minus_mm.map_or_else(
                    || l.tape(place.gap_mm),
                    |pm| l.with_plus_minus(place.gap_mm, pm)
                ),
                l.about(place.wanted_mm)
            )
        })
        .collect();
    vec![Block::Words {
        text: format!(
            "Numbers in squares are the tightest places, in every position of what moves: {}.",
            lines.join("; ")
        ),
    }]
}

/// That a crossover stands here under the mark that it has from another run.
fn part_of_two(job: &PrintJob<'_>, run: &PlannedRun) -> String {
    let other = run.pieces.iter().find_map(|piece| match &piece.kind {
        PlannedKind::Crossover { name, .. } => {
            let mark = painted(name, &piece.mark, job.runs);
            (mark != piece.mark).then(|| {
                format!(
                    " {mark} is {name}, one part in both runs and painted once; {} of this run's own numbers is left out.",
                    piece.mark
                )
            })
        }
        _ => None,
    });
    other.unwrap_or_default()
}

/// Text with every crossover under the one mark that is painted on it.
pub(super) fn as_painted(job: &PrintJob<'_>, text: &str) -> String {
    let mut out = text.to_owned();
    for piece in job.runs.iter().flat_map(|run| &run.pieces) {
        if let PlannedKind::Crossover { name, .. } = &piece.kind {
            let mark = painted(name, &piece.mark, job.runs);
            if mark != piece.mark {
                out = with_word(&out, &piece.mark, mark);
            }
        }
    }
    out
}

/// Text with one whole word for another.
fn with_word(text: &str, word: &str, instead: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((before, after)) = rest.split_once(word) {
        out.push_str(before);
        let is_part = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
        let is_inside = is_part(out.chars().next_back()) || is_part(after.chars().next());
        out.push_str(if is_inside { word } else { instead });
        rest = after;
    }
    out.push_str(rest);
    out
}

fn what(piece: &PlannedPiece) -> String {
    match &piece.kind {
        PlannedKind::Straight { .. } => "straight".to_owned(),
        PlannedKind::Bend { .. } => "bend".to_owned(),
        PlannedKind::Component { name, .. } => name.clone(),
        PlannedKind::Crossover { name, side, .. } => format!("{name}, side {}", side.letter()),
    }
}

/// Which way the inside of a bend faces, and where the run goes behind it.
pub(super) fn bend_goes(piece: &PlannedPiece) -> String {
    format!(
        "{}; {}",
        toward_words(piece.frame_in.twelve().to_array()),
        direction_words(piece.frame_out.travel().to_array())
    )
}

/// Length along the centre line; of a crossover that of the part itself.
fn length_mm(job: &PrintJob<'_>, piece: &PlannedPiece) -> f64 {
    let PlannedKind::Crossover { name, .. } = &piece.kind else {
        return piece.centre_line_mm();
    };
    component_item(job.model, name).map_or_else(|| piece.centre_line_mm(), |item| item.length.mm())
}

/// The joint of a run that is furthest off: its end, or the inlet of a crossover.
fn worst_joint_mm(job: &PrintJob<'_>, run: &PlannedRun) -> f64 {
    let head = format!("{} from the inlet of ", run.name);
    job.board
        .findings()
        .iter()
        .filter(|finding| finding.subject.starts_with(&head))
        .filter_map(|finding| Some(finding.measured?.value))
        .fold(run.end_error_mm(), f64::max)
}

fn pieces(job: &PrintJob<'_>, run: &PlannedRun) -> Table {
    let sign = job.lengths.sign();
    let mut table = Table::new(
        "pieces",
        vec![
            Column::words("piece").big(),
            Column::words("joint before"),
            Column::words("what"),
            Column::figures(&format!("welded length, {sign}")).big(),
            Column::figures("angle").big(),
            Column::figures("clock").big(),
            Column::wide("inside of the curve faces; the run then goes"),
        ],
    );
    // What stands at the end is the sum of what stands above it.
    let division_mm = job.lengths.saw_division_mm();
    let mut sum_mm = 0.0;
    for piece in &run.pieces {
        sum_mm += (length_mm(job, piece) / division_mm).round() * division_mm;
        let (angle, clock, turns) = match piece.kind {
            PlannedKind::Bend {
                angle_rad,
                clock_rad,
                ..
            } => (
                format!("{}°", degrees(angle_rad.to_degrees())),
                format!("{}°", signed_degrees(clock_rad.to_degrees())),
                // Twelve o'clock of a bend is toward its centre.
                bend_goes(piece),
            ),
            _ => (String::new(), String::new(), String::new()),
        };
        let mark = match &piece.kind {
            PlannedKind::Crossover { name, .. } => painted(name, &piece.mark, job.runs),
            _ => &piece.mark,
        };
        table.row([
            mark.to_owned(),
            piece.joint.clone(),
            what(piece),
            job.lengths.saw(length_mm(job, piece)),
            angle,
            clock,
            turns,
        ]);
    }
    table.strong_row([
        String::new(),
        run.last_joint.clone(),
        "end of the run".to_owned(),
        job.lengths.saw(sum_mm),
        String::new(),
        String::new(),
        String::new(),
    ]);
    table
}

/// A stretch of run between crossovers as bend rows.
#[derive(Clone, Debug)]
pub(crate) struct Stretch {
    /// Marks of its first and last piece.
    pub(crate) from_to: [String; 2],
    /// Where it starts.
    pub(crate) start: Frame,
    /// The rows.
    pub(crate) table: BendTable,
    /// Mark of the bend of each row.
    pub(crate) bends: Vec<String>,
    /// Where the straight centre lines meet, for each row.
    pub(crate) corners: Vec<Point>,
    /// Where it ends.
    pub(crate) end: Frame,
}

/// The stretches of a run.
pub(crate) fn stretches(run: &PlannedRun) -> Vec<Stretch> {
    run.pieces
        .split(|piece| matches!(piece.kind, PlannedKind::Crossover { .. }))
        .filter_map(|pieces| {
            let (first, last) = (pieces.first()?, pieces.last()?);
            let mut table = BendTable::default();
            let mut straight_mm = 0.0;
            let (mut bends, mut corners) = (Vec::new(), Vec::new());
            for piece in pieces {
                if let PlannedKind::Bend {
                    angle_rad,
                    clock_rad,
                    clr_mm,
                } = piece.kind
                {
                    table.rows.push(BendRow {
                        straight_mm,
                        rotation_rad: clock_rad,
                        bend_rad: angle_rad,
                        clr_mm,
                    });
                    straight_mm = 0.0;
                    bends.push(piece.mark.clone());
                    let setback = tubewright_geometry::setback_mm(clr_mm, angle_rad);
                    corners.push(piece.frame_in.origin + piece.frame_in.travel() * setback);
                } else {
                    straight_mm += piece.centre_line_mm();
                }
            }
            table.last_straight_mm = straight_mm;
            Some(Stretch {
                from_to: [first.mark.clone(), last.mark.clone()],
                start: first.frame_in,
                table,
                bends,
                corners,
                end: last.frame_out,
            })
        })
        .collect()
}

fn bend_table(job: &PrintJob<'_>, run: &PlannedRun) -> Table {
    let sign = job.lengths.sign();
    let mut table = Table::new(
        "bends",
        vec![
            Column::figures("row"),
            Column::words("bend").big(),
            Column::figures(&format!("length {sign}")).big(),
            Column::figures("rotation").big(),
            Column::figures("angle").big(),
            Column::figures(&format!("radius {sign}")),
            Column::figures("point x"),
            Column::figures("y"),
            Column::figures(&format!("z {sign}")),
        ],
    );
    let blank = String::new;
    for stretch in stretches(run) {
        let [from, to] = &stretch.from_to;
        table.group(format!("{from} to {to}"));
        let [x, y, z] = job.lengths.xyz(stretch.start.origin);
        table.row([
            blank(),
            "start".to_owned(),
            blank(),
            blank(),
            blank(),
            blank(),
            x,
            y,
            z,
        ]);
        let rows = stretch
            .table
            .rows
            .iter()
            .zip(&stretch.bends)
            .zip(&stretch.corners);
        for (number, ((row, bend), corner)) in (1..).zip(rows) {
            let [x, y, z] = job.lengths.xyz(*corner);
            table.row([
                number.to_string(),
                bend.clone(),
                job.lengths.saw(row.straight_mm),
                format!("{}°", signed_degrees(row.rotation_rad.to_degrees())),
                format!("{}°", degrees(row.bend_rad.to_degrees())),
                job.lengths.size(row.clr_mm),
                x,
                y,
                z,
            ]);
        }
        let [x, y, z] = job.lengths.xyz(stretch.end.origin);
        table.row([
            blank(),
            "end".to_owned(),
            job.lengths.saw(stretch.table.last_straight_mm),
            blank(),
            blank(),
            blank(),
            x,
            y,
            z,
        ]);
    }
    table
}

/// The bends of a run in plain text for a bench bender: fixed columns, millimetres and degrees, dots
/// as decimal signs.
#[must_use]
pub fn bend_text(run: &PlannedRun, stamp: &Stamp) -> String {
    let mut out = format!(
        "# run: {}\n# tube: {}, outside diameter {:.2} mm\n# build: {}  plan: {}  date: {}\n\
         # units: mm, degrees; rotation clockwise looking downstream; radius of the centre line\n\
         # x y z: where the straight centre lines before and after the bend meet\n",
        run.name, run.tube, run.od_mm, stamp.build, stamp.plan_hash, stamp.date
    );
    for stretch in stretches(run) {
        let [from, to] = &stretch.from_to;
        let [x, y, z] = stretch.start.origin.to_array();
        out.push_str(&format!(
            "\n# {from} to {to}\n{:>4} {:<6} {:>9} {:>9} {:>8} {:>8} {:>10} {:>10} {:>10}\n",
            "row", "bend", "length", "rotation", "angle", "radius", "x", "y", "z"
        ));
        let mut line = |row: usize, name: &str, figures: [f64; 4], at: [f64; 3]| {
            let [length, rotation, angle, radius] = figures;
            let [x, y, z] = at;
            out.push_str(&format!(
                "{row:>4} {name:<6} {:>9} {:>9} {:>8} {:>8} {:>10} {:>10} {:>10}\n",
                fixed(length, 2),
                fixed(rotation, 2),
                fixed(angle, 2),
                fixed(radius, 2),
                fixed(x, 2),
                fixed(y, 2),
                fixed(z, 2)
            ));
        };
        line(0, "start", [0.0; 4], [x, y, z]);
        let rows = stretch
            .table
            .rows
            .iter()
            .zip(&stretch.bends)
            .zip(&stretch.corners);
        for (number, ((row, bend), corner)) in (1..).zip(rows) {
            line(
                number,
                bend,
                [
                    row.straight_mm,
                    row.rotation_rad.to_degrees(),
                    row.bend_rad.to_degrees(),
                    row.clr_mm,
                ],
                corner.to_array(),
            );
        }
        line(
            stretch.table.rows.len() + 1,
            "end",
            [stretch.table.last_straight_mm, 0.0, 0.0, 0.0],
            stretch.end.origin.to_array(),
        );
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mark_is_put_for_another_only_where_it_is_one() {
        assert_eq!(
            with_word("at R7 (R17, R70), R7", "R7", "L8"),
            "at L8 (R17, R70), L8"
        );
    }
}
