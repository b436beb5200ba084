//! Marks, places and ends with their ±, the doubtful readings, and every reading with how far it is
//! off.

use super::PrintJob;
use super::words::{direction_words, fixed};
use crate::survey::NINETEEN_IN_TWENTY;
use std::collections::BTreeMap;
use tubewright_build::model::{Along, EndPlace, Place, PlaceAt, Reading, ReadingKind};
use tubewright_build::quantity::Clock;
use tubewright_geometry::math;
use tubewright_packet::{Block, Body, Column, Sheet, SheetKind, Table};

/// The survey sheet.
pub(super) fn sheet(job: &PrintJob<'_>) -> Sheet {
    let measured = &job.around.measured;
    let test = measured.adjustment.global_test();
    let network = measured.adjustment.network();
    let agreement = if test.is_too_high() {
        "They do not agree as well as their ± says: measure again before you cut."
    } else {
        "They agree with each other."
    };
    let agreement = if measured.doubtful.is_empty() || test.is_too_high() {
        agreement
    } else {
        "All but the doubtful ones agree with each other."
    };
    let mut blocks = vec![Block::Words {
        text: format!(
            "{} readings, {} of them to spare. {agreement} Places are counted from the origin mark: \
             x rearwards, y to the car's right, z up. ± holds 19 times in 20.",
            network.readings.len(),
            test.freedom
        ),
    }];
    if !measured.doubtful.is_empty() {
        blocks.push(Block::Heading {
            text: "Doubtful readings: set aside, measure them again".to_owned(),
        });
        blocks.push(Block::Items {
            lines: measured
                .doubtful
                .iter()
                .map(|doubtful| format!("{}.", doubtful.sentence(network)))
                .collect(),
        });
    }
    let mut unchecked: Vec<String> = measured
        .adjustment
        .readings()
        .iter()
        .filter(|reading| reading.is_unchecked() && !reading.set_aside)
        .map(|reading| reading.number.to_string())
        .collect();
    unchecked.dedup();
    if !unchecked.is_empty() {
        blocks.push(Block::Words {
            text: format!(
                "Nothing else checks reading {}: take one more line there.",
                unchecked.join(", ")
            ),
        });
    }
    if let Some(problem) = &measured.frame_problem {
        blocks.push(Block::NotMade {
            what: "places in the car".to_owned(),
            why: problem.to_string(),
        });
    } else {
        blocks.push(Block::Heading {
            text: "Marks on the car".to_owned(),
        });
        blocks.push(Block::Table { table: marks(job) });
        blocks.push(Block::Heading {
            text: "Ends of the runs".to_owned(),
        });
        blocks.push(Block::Table { table: ends(job) });
        blocks.push(Block::Heading {
            text: "Other places".to_owned(),
        });
        blocks.push(Block::Table { table: points(job) });
    }
    for (name, why) in &job.around.bodies.missing {
        blocks.push(Block::NotMade {
            what: format!("body “{name}”"),
            why: why.to_string(),
        });
    }
    Sheet {
        kind: SheetKind::Survey,
        title: "Survey: marks, ends and places".to_owned(),
        is_lying: false,
        is_below: false,
        body: Body::Made { blocks },
    }
}

fn place_columns(job: &PrintJob<'_>, first: &str) -> Vec<Column> {
    let sign = job.lengths.sign();
    vec![
        Column::words(first),
        Column::wide("where it is"),
        Column::figures(&format!("x {sign}")),
        Column::figures(&format!("y {sign}")),
        Column::figures(&format!("z {sign}")),
        Column::figures(&format!("± {sign}")),
    ]
}

fn place_row(job: &PrintJob<'_>, table: &mut Table, name: &str, place: Option<&String>) {
    let found = job.around.measured.places.points.get(name);
    let [x, y, z] = found.map_or_else(
        || ["not found".to_owned(), String::new(), String::new()],
        |placed| job.lengths.xyz(placed.point_in_car),
    );
    let pm = found.map_or_else(String::new, |placed| {
        job.lengths.small(NINETEEN_IN_TWENTY * placed.sigma_bound())
    });
    table.row([
        name.to_owned(),
        place.cloned().unwrap_or_default(),
        x,
        y,
        z,
        pm,
    ]);
}

fn marks(job: &PrintJob<'_>) -> Table {
    let mut table = Table::new("marks", place_columns(job, "mark"));
    for mark in &job.model.build.marks {
        place_row(job, &mut table, mark.name.as_str(), mark.place.as_ref());
    }
    table
}

fn points(job: &PrintJob<'_>) -> Table {
    let mut table = Table::new("places", place_columns(job, "place"));
    for point in &job.model.build.points {
        place_row(job, &mut table, point.name.as_str(), point.place.as_ref());
    }
    table
}

fn ends(job: &PrintJob<'_>) -> Table {
    let sign = job.lengths.sign();
    let mut table = Table::new(
        "ends",
        vec![
            Column::words("end"),
            Column::figures(&format!("x {sign}")),
            Column::figures(&format!("y {sign}")),
            Column::figures(&format!("z {sign}")),
            Column::wide("the flow there runs"),
            Column::figures("± of its direction"),
        ],
    );
    for (name, end) in &job.around.measured.places.ends {
        let [x, y, z] = job.lengths.xyz(end.frame_in_car.origin);
        let turn = NINETEEN_IN_TWENTY * end.direction_sigma_rad().to_degrees();
        table.row([
            name.clone(),
            x,
            y,
            z,
            direction_words(end.frame_in_car.travel().to_array()),
            if turn > 0.0 {
                format!("{turn:.1}°")
            } else {
                "chosen".to_owned()
            },
        ]);
    }
    table
}

/// Every reading.
pub(super) fn readings(job: &PrintJob<'_>) -> Sheet {
    let measured = &job.around.measured;
    let mut worst: BTreeMap<u32, (f64, f64, f64)> = BTreeMap::new();
    for result in measured.adjustment.readings() {
        let entry = worst.entry(result.number).or_insert((
            result.residual,
            result.sigma,
            result.redundancy,
        ));
        if result.residual.abs() > entry.0.abs() {
            *entry = (result.residual, result.sigma, result.redundancy);
        }
    }
    let sign = job.lengths.sign();
    let mut table = Table::new(
        "readings",
        vec![
            Column::figures("no."),
            Column::words("what"),
            Column::wide("from and to"),
            Column::figures("reads"),
            Column::figures(&format!("off by, {sign}")).mm(13.0),
            Column::figures(&format!("usual ±, {sign}")).mm(14.0),
            Column::figures("checked by others").mm(17.0),
        ],
    );
    for reading in &job.model.build.readings {
        let (what, between, is_angle) = reading_words(reading);
        let doubtful = measured
            .doubtful
            .iter()
            .any(|doubtful| doubtful.number == reading.number);
        let small = |value: f64| {
            if is_angle {
                format!("{}°", fixed(value.to_degrees(), 1))
            } else {
                job.lengths.small(value)
            }
        };
        let (off, usual, checked) = match worst.get(&reading.number) {
            Some(&(residual, sigma, redundancy)) => (
                small(residual),
                small(NINETEEN_IN_TWENTY * sigma),
                format!("{:.0} %", 100.0 * redundancy),
            ),
            None => ("not used".to_owned(), String::new(), String::new()),
        };
        let cells = [
            reading.number.to_string(),
            if doubtful {
                format!("{what}, DOUBTFUL")
            } else {
                what.to_owned()
            },
            between,
            reading.reads_text().unwrap_or("both alike").to_owned(),
            off,
            usual,
            checked,
        ];
        if doubtful {
            table.strong_row(cells);
        } else {
            table.row(cells);
        }
    }
    Sheet {
        kind: SheetKind::Readings,
        title: "Every reading, and how far it is off".to_owned(),
        is_lying: false,
        is_below: false,
        body: Body::Made {
            blocks: vec![
                Block::Words {
                    text:
                        "Off by: what all readings together say less what was read. A reading off \
                           by more than its usual ± wants a second look; one that is checked by \
                           others to nearly 0 % could be wrong and nobody would know."
                            .to_owned(),
                },
                Block::Table { table },
            ],
        },
    }
}

fn place_words(place: &Place) -> String {
    match &place.at {
        PlaceAt::Mark(name) | PlaceAt::Point(name) => name.to_string(),
        PlaceAt::End { end, at } => match at {
            EndPlace::Centre => format!("{end}, centre"),
            EndPlace::Rim(clock) => format!("{end}, rim at {}", clock_words(*clock)),
            EndPlace::Bolt(number) => format!("{end}, bolt {number}"),
        },
    }
}

/// `3 o'clock`, `1:30`.
fn clock_words(clock: Clock) -> String {
    let minutes = (clock.angle().rad() / math::TAU * 720.0).round();
    let hours = (minutes / 60.0).floor();
    let over = minutes - 60.0 * hours;
    let hours = if hours < 1.0 { 12.0 } else { hours };
    if over > 0.0 {
        format!("{hours:.0}:{over:02.0}")
    } else {
        format!("{hours:.0} o'clock")
    }
}

fn reading_words(reading: &Reading) -> (&'static str, String, bool) {
    let pair = |from: &Place, to: &Place| format!("{} → {}", place_words(from), place_words(to));
    match &reading.kind {
        ReadingKind::Tape {
            from, to, burnt, ..
        } => {
            let start = burnt.as_ref().map_or_else(String::new, |burnt| {
                format!(", from {} on the tape", burnt.text)
            });
            ("tape", format!("{}{start}", pair(from, to)), false)
        }
        ReadingKind::Height { of, setup, .. } => (
            "height",
            format!("{} over the floor, {setup}", place_words(of)),
            false,
        ),
        ReadingKind::Plumb { from, to, .. } => ("plumb", pair(from, to), false),
        ReadingKind::Offset {
            from, to, along, ..
        } => (
            match along {
                Along::Plumb { .. } => "height between",
                Along::Line(_) => "offset",
            },
            pair(from, to),
            false,
        ),
        ReadingKind::Symmetry { left, right } => (
            "mirrored",
            format!("{} and {}", place_words(left), place_words(right)),
            false,
        ),
        ReadingKind::Inclination { from, to, .. } => ("incline", pair(from, to), true),
        ReadingKind::Bearing { from, to, .. } => ("bearing", pair(from, to), true),
        ReadingKind::Face { end, clock, .. } => (
            "face",
            format!("{end} toward {}", clock_words(clock.value)),
            true,
        ),
        _ => ("reading", String::new(), false),
    }
}
