//! The cover: the car, the chosen way, what the checks say, and how to read the rest.

use super::cautions::{BEFORE_RUNNING, catalysts, caution, comes_apart};
use super::joints::joints_of;
use super::run_sheets::{paint_crossovers, tight_places};
use super::views::views;
use super::words::{degrees, fixed};
use super::{PrintJob, Way, scene};
use crate::routes::{PlannedKind, PlannedRun};
use tubewright_check::{Rule, State, Verdict};
use tubewright_packet::{Block, Body, Column, Figure, PacketPaper, Sheet, SheetKind, Step, Table};
use tubewright_sheets::{Nameless, Scene};

/// The cover and the page that tells how to work from the packet.
pub(super) fn sheet(job: &PrintJob<'_>, paper: PacketPaper) -> Sheet {
    let mut scene = scene(job, job.runs);
    paint_crossovers(&mut scene, job.runs);
    let mut blocks = vec![
        Block::Figures {
            figures: figures(job),
        },
        Block::Words { text: way(job) },
        verdict(job),
    ];
    blocks.extend(comes_apart(job));
    if job
        .board
        .findings()
        .iter()
        .any(|finding| finding.rule == Rule::CatalystKept && finding.state == State::Fail)
    {
        blocks.extend(catalysts(job));
    }
    // The run sheets and the map name every piece and joint.
    let overview = Scene {
        nameless: Nameless {
            tubes: true,
            joints: true,
        },
        ..scene
    };
    // That nobody has chosen yet takes some lines more.
    let words_mm = match job.way {
        Some(Way::Cheapest { .. }) => 60.0,
        _ => 48.0,
    };
    blocks.extend(views(&overview, paper, "All runs", words_mm));
    blocks.extend(tight_places(job, &overview));
    blocks.extend([
        Block::NewPage,
        Block::Heading {
            text: "The order of the work".to_owned(),
        },
        Block::Steps { steps: steps() },
        Block::Heading {
            text: "What the words and signs mean".to_owned(),
        },
        Block::Table { table: signs(job) },
        Block::Heading {
            text: "What is in this packet".to_owned(),
        },
        Block::Contents,
    ]);
    Sheet {
        kind: SheetKind::Cover,
        title: job
            .model
            .build
            .name
            .clone()
            .unwrap_or_else(|| "Shop packet".to_owned()),
        is_lying: false,
        is_below: false,
        body: Body::Made { blocks },
    }
}

fn figures(job: &PrintJob<'_>) -> Vec<Figure> {
    let mut figures = Vec::new();
    let mut add = |value: String, what: &str| {
        figures.push(Figure {
            value,
            what: what.to_owned(),
        });
    };
    let length: f64 = job.runs.iter().map(PlannedRun::developed_length_mm).sum();
    let bends: f64 = job.runs.iter().map(PlannedRun::sum_of_bends_rad).sum();
    add(job.lengths.long(length), "of tube and parts");
    add(format!("{}°", degrees(bends.to_degrees())), "of bend");
    if let Some(supply) = job.supply {
        let all = if crate::stock::wanted(job.model).is_empty() {
            "to buy, all in"
        } else {
            "to buy, without what is still wanted"
        };
        add(supply.plan.price.to_string(), all);
        let welds = joints_of(job.model, job.runs, supply)
            .iter()
            .filter(|joint| joint.is_welded)
            .count();
        add(welds.to_string(), "welds");
        add(supply.cards.len().to_string(), "items to cut");
    }
    add(job.board.count(State::Fail).to_string(), "checks fail");
    add(
        job.board.count(State::NotChecked).to_string(),
        "not checked",
    );
    figures
}

fn way(job: &PrintJob<'_>) -> String {
    let Some(way) = job.way else {
        return "No route was chosen.".to_owned();
    };
    match way {
        Way::Chosen { name, on } => format!("The way: {name}; chosen on {on}."),
        Way::Cheapest {
            name,
            cost,
            lower_bound,
            among,
        } => {
            let among = match among {
                0 | 1 => "the only way found in this effort".to_owned(),
                count => {
                    format!(
                        "the first of {count} that were found: the cheapest, each cut by its own plan, of those without a fault"
                    )
                }
            };
            format!(
                "NOT CHOSEN YET: have a way chosen and printed before anything is cut. This one: {name}; {among}. \
                 In the search it scored {} (tube, welds, loss of flow and of ground clearance in one figure, \
                 every bend bought by itself; less is better); no way can score below {} there.",
                fixed(cost, 0),
                fixed(lower_bound, 0)
            )
        }
    }
}

fn verdict(job: &PrintJob<'_>) -> Block {
    let mut failing: Vec<&str> = Vec::new();
    for finding in job
        .board
        .findings()
        .iter()
        .filter(|finding| finding.state == State::Fail)
    {
        if !failing.contains(&finding.rule.title()) {
            failing.push(finding.rule.title());
        }
    }
    let failing = match failing.as_slice() {
        [] => String::new(),
        some => format!(" (of “{}”)", some.join("”, “")),
    };
    let counts = format!(
        "{} checks fail{failing}, {} are not checked: see the sheet “Checks”.",
        job.board.count(State::Fail),
        job.board.count(State::NotChecked)
    );
    match job.board.verdict() {
        Verdict::Passes => Block::Words {
            text: "Every check that applies passes.".to_owned(),
        },
        Verdict::Fails | Verdict::NotAllChecked => caution(&format!("{counts} {BEFORE_RUNNING}")),
    }
}

fn steps() -> Vec<Step> {
    [
        (
            "Check the print",
            "Lay a steel rule on the rulers of the template pages. If they are off, print again at \
             100 %.",
        ),
        (
            "Measure again what is doubtful",
            "The survey sheet names it. When a reading changes, hand it in and work from a new print.",
        ),
        (
            "Choose the way, and where it comes apart",
            "No cut before a way is chosen: the top of this sheet says whether it is. A flange pair, clamp or slip joint \
             behind the first joint takes length: have it put into the run as a part of its own, and work from a new \
             print.",
        ),
        (
            "Buy",
            "The list, the counter sheet, and what to take along.",
        ),
        (
            "Cut",
            "One card for each item. All marks before the first cut.",
        ),
        (
            "Fit and tack",
            "In the order of the fit sheet: clock by the witness lines, then the tapes of each step. Hang \
             or prop every heavy part before it is tacked.",
        ),
        (
            "Weld",
            "Only when every tacked joint is where it should be.",
        ),
        (
            "Prove",
            "Cold, blank the tips and listen for leaks with smoke, or with air of 0.2 bar (3 psi) at most and never \
             straight off the shop's line (common practice, no source). Outdoors, first start: leaks, what \
             touches, what gets hot. Bolts again after the first heat. Then what the checks sheet calls not \
             checked.",
        ),
    ]
    .into_iter()
    .map(|(what, how)| Step {
        what: what.to_owned(),
        how: how.to_owned(),
    })
    .collect()
}

/// Marks to explain marks by: that of a piece of each run, and that of a part that serves for two.
fn marks_there_are(job: &PrintJob<'_>) -> [Option<String>; 2] {
    let of_run = |run: &PlannedRun| {
        let own = run.pieces.iter().rev();
        let mut own = own.filter(|piece| !matches!(piece.kind, PlannedKind::Crossover { .. }));
        own.next().map(|piece| piece.mark.clone())
    };
    let marks: Vec<String> = job.runs.iter().filter_map(of_run).take(2).collect();
    let fits = job.supply.iter().flat_map(|supply| &supply.fits);
    let both = fits
        .filter(|fit| fit.marks.len() == 2)
        .map(|fit| fit.marks.join("+"))
        .next();
    [(!marks.is_empty()).then(|| marks.join(", ")), both]
}

fn signs(job: &PrintJob<'_>) -> Table {
    let mut table = Table::new(
        "",
        vec![Column::words("word or sign"), Column::wide("meaning")],
    );
    let letters: Vec<String> = job
        .runs
        .iter()
        .filter_map(|run| {
            let letter = run.pieces.first()?.mark.chars().next()?;
            Some(format!("{letter}: {}", run.name))
        })
        .collect();
    let [examples, both] = marks_there_are(job);
    let both = both.map_or_else(String::new, |both| {
        format!(" {both} is one part that is both: a bend that keeps its leg.")
    });
    let marks = format!(
        "Mark of a piece, painted on the steel: letter of the run and a number, given once and never \
         again ({}). A part that is in two runs, as a crossover, has one mark alone.{both}",
        letters.join(", ")
    );
    let examples = examples.unwrap_or_else(|| "mark".to_owned());
    let floor = job
        .around
        .measured
        .places
        .floors
        .values()
        .find(|floor| floor.is_on_wheels)
        .map_or_else(String::new, |floor| {
            format!(
                " On its wheels the floor is at z {}. A lift or stands may lean: z and level are the car's, \
                 not the lift's.",
                job.lengths.place(floor.point_in_car.z)
            )
        });
    let origin = format!(
        "Counted from the origin mark{}: x rearwards, y to the car's right, z up. Left is minus in y. They are for the drawings and the bend table; what a tape and a plumb line find stands on the \
         fit sheet and the joint map.{floor}",
        job.model
            .build
            .frame
            .as_ref()
            .map_or_else(String::new, |frame| format!(
                " “{}”",
                frame.origin.at.name()
            ))
    );
    for (word, meaning) in [
        (examples.as_str(), marks.as_str()),
        (
            "J4",
            "Mark of a joint. It stands at the upstream end of the piece in whose row it is written.",
        ),
        (
            "upstream, downstream",
            "Upstream is toward the engine, downstream the way the gas flows. The arrow painted on a part \
             points downstream.",
        ),
        (
            "end A, end B",
            "The two ends of a stock item before it is cut, as lettered in its picture. Tape from the end \
             that the card names.",
        ),
        (
            "witness line",
            "A line scribed along the whole item before the first cut: on a bend along its back. It \
             is what the clock is set by.",
        ),
        (
            "clock",
            "Turn round the tube, plus clockwise looking downstream (stand upstream of it and look the \
             way the gas flows: looking rearwards, plus at the top goes to the car's left). Where a run \
             starts 12 o'clock is what was scribed on the rim when it was measured, behind a crossover the \
             highest place of its outlet with the car level, as it stands on its wheels.",
        ),
        (
            "kerf, black side",
            "What the blade takes. The ring drawn at the measure is the face of the part; the blade \
             runs on the side that is black in the picture. A dashed ring is not sawn but dressed down to.",
        ),
        (
            "along the back, inside, side",
            "Where the tape lies on a bend: on the outer curve, the inner curve, and halfway between. \
             On a leg all three are the same.",
        ),
        ("x, y, z", origin.as_str()),
        (
            "lines on the views",
            "Heavy with a centre line: tube. Short bar across: joint. Quartered disc: datum mark. Dashed: \
             moves, drawn at rest. Dash and dots: stays. Number in a square: a tight place, named below \
             the views.",
        ),
        ("±", "The true figure lies within it 19 times in 20."),
        (
            "not checked, NOT MADE",
            "Nobody has looked at it yet. It counts as loudly as a failure.",
        ),
    ] {
        table.row([word.to_owned(), meaning.to_owned()]);
    }
    table
}
