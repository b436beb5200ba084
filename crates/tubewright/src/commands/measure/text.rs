//! The survey as a person reads it.

use crate::terminal::table::{Side, Table};
use crate::terminal::{FAILS, PASSES, WARNS, heading, paragraph, styled};
use tubewright_plan::lengths::Lengths;
use tubewright_plan::stages::Surroundings;
use tubewright_plan::survey::{
    Gain, Guide, Measured, NINETEEN_IN_TWENTY, SetupTrouble, Suggestion, Surer, Twofold,
};

/// Most lines of a list before the rest is only counted.
const MOST_LINES: usize = 8;

/// The survey as text.
pub(super) fn as_text(
    around: &Surroundings,
    guide: &Guide,
    lengths: Lengths,
    with_all: bool,
) -> String {
    let measured = &around.measured;
    let mut text = readings(measured);
    if with_all {
        text.push_str(&every_reading(measured));
    }
    text.push_str(&next(guide, lengths));
    text.push_str(&not_found(guide));
    text.push_str(&twofold(guide, lengths));
    text.push_str(&unchecked(guide));
    text.push_str(&setups(guide));
    if let Some(problem) = &measured.frame_problem {
        text.push_str(&heading("The car's axes"));
        text.push_str(&paragraph(&problem.to_string(), 2));
        text.push_str(&known_distances(measured, lengths));
        return text;
    }
    text.push_str(&places(measured, lengths));
    text.push_str(&ends(measured, lengths));
    for (name, reason) in &around.bodies.missing {
        text.push_str(&format!(
            "  {}\n",
            styled(WARNS, format!("{name} is not there"))
        ));
        text.push_str(&paragraph(&reason.to_string(), 4));
    }
    text
}

fn readings(measured: &Measured) -> String {
    let network = measured.adjustment.network();
    let test = measured.adjustment.global_test();
    let mut text = heading("Readings");
    if network.readings.is_empty() {
        text.push_str(&paragraph(
            "None yet. Begin with the tape from mark to mark, then the heights of all marks over the floor.",
            2,
        ));
        return text;
    }
    let agreement = if test.freedom == 0 {
        styled(WARNS, "nothing checks them yet")
    } else if test.is_too_high() {
        styled(FAILS, "they do not agree as well as their ± says")
    } else {
        styled(PASSES, "they agree with each other")
    };
    text.push_str(&format!(
        "  {} readings, {} of them to spare; {agreement}.\n",
        network.readings.len(),
        test.freedom
    ));
    for doubtful in &measured.doubtful {
        text.push_str(&format!("  {}\n", styled(WARNS, "doubtful")));
        text.push_str(&paragraph(
            &format!(
                "{}. Set aside until you measure it again.",
                doubtful.sentence(network)
            ),
            4,
        ));
        if !doubtful.or_else.is_empty() {
            text.push_str(&paragraph(
                &format!(
                    "It may as well be {} that is wrong: measure again there too.",
                    either(&doubtful.or_else)
                ),
                4,
            ));
        }
    }
    text
}

/// `reading 5, 3 or 6`.
fn either(numbers: &[u32]) -> String {
    let list: Vec<String> = numbers.iter().map(ToString::to_string).collect();
    match list.as_slice() {
        [] => String::new(),
        [only] => format!("reading {only}"),
        [most @ .., last] => format!("reading {} or {last}", most.join(", ")),
    }
}

fn numbered(word: &str, numbers: &[u32]) -> String {
    let list: Vec<String> = numbers.iter().map(ToString::to_string).collect();
    let s = if list.len() == 1 { "" } else { "s" };
    format!("{word}{s} {}", list.join(", "))
}

fn every_reading(measured: &Measured) -> String {
    let network = measured.adjustment.network();
    let mut text = heading("Every reading");
    let mut table = Table::new(&[
        ("no.", Side::Right),
        ("off by", Side::Right),
        ("±", Side::Right),
        ("checked", Side::Right),
        ("reading", Side::Left),
    ]);
    for reading in measured.adjustment.readings() {
        let kind = network.reading(reading.number).map(|r| &r.kind);
        let is_angle = kind.is_some_and(tubewright_survey::ReadingKind::is_angle);
        let number = |value: f64| {
            if is_angle {
                format!("{:.1}°", value.to_degrees())
            } else {
                format!("{value:.1}")
            }
        };
        table.row([
            reading.number.to_string(),
            number(reading.residual),
            number(NINETEEN_IN_TWENTY * reading.sigma),
            if reading.set_aside {
                "aside".to_owned()
            } else {
                format!("{:.0} %", 100.0 * reading.redundancy)
            },
            kind.map(|kind| network.reading_name(kind))
                .unwrap_or_default(),
        ]);
    }
    text.push_str(&table.render());
    text.push_str(&paragraph(
        "mm unless °. “Off by” is what all readings together say less what was read; “checked” is how much of a slip the others would show.",
        2,
    ));
    text
}

/// An entry of a list, its further lines set in.
fn entry(text: &str) -> String {
    let lines = paragraph(text, 4);
    lines.replacen("    ", "  ", 1)
}

fn next(guide: &Guide, lengths: Lengths) -> String {
    if guide.next.is_empty() {
        return String::new();
    }
    let mut text = heading("Measure this next");
    for (index, suggestion) in guide.next.iter().enumerate() {
        let line = format!("{}. {}", index + 1, suggestion_words(suggestion, lengths));
        text.push_str(&entry(&line));
    }
    text
}

fn suggestion_words(suggestion: &Suggestion, lengths: Lengths) -> String {
    let mut words = suggestion.words.clone();
    if let Some(shows) = suggestion.shows {
        words.push_str(&format!(" (about {})", lengths.about(shows.value)));
    }
    if let Some(gain) = &suggestion.gain {
        words.push_str(&format!(": {}", gain_words(gain, lengths)));
    }
    words
}

fn gain_words(gain: &Gain, lengths: Lengths) -> String {
    match &gain.of {
        Surer::Place(name) => format!(
            "{name} from ± {} to ± {}",
            lengths.fine(gain.before),
            lengths.fine(gain.after)
        ),
        Surer::Direction(name) => format!(
            "the direction of {name} from ± {:.1}° to ± {:.1}°",
            gain.before.to_degrees(),
            gain.after.to_degrees()
        ),
    }
}

fn not_found(guide: &Guide) -> String {
    if guide.missing.is_empty() {
        return String::new();
    }
    let mut text = heading("Not found yet");
    for lack in &guide.missing {
        let mut line = format!(
            "{}: at least {} more {}",
            lack.name,
            lack.readings,
            if lack.readings == 1 {
                "reading"
            } else {
                "readings"
            }
        );
        if lack.is_end && lack.first.is_none() {
            line.push_str(", round its rim at three clock marks from three marks each");
        }
        if let Some(first) = &lack.first {
            line.push_str(&format!(", first {first}"));
        }
        text.push_str(&entry(&line));
    }
    text
}

fn twofold(guide: &Guide, lengths: Lengths) -> String {
    let mut text = String::new();
    if guide.may_be_mirrored {
        text.push_str(&paragraph(
            "Nothing tells this car from its mirror image: write side = \"left\" or \"right\" on some marks, and give two pairs of centre-line, from front to rear. Until then a tip that points rearwards is taken to lie at the rear.",
            2,
        ));
    }
    for place in &guide.twofold {
        text.push_str(&paragraph(&twofold_words(place, lengths), 2));
    }
    if text.is_empty() {
        text
    } else {
        format!("{}{text}", heading("May lie elsewhere"))
    }
}

/// Below this the other place is the same one, mm.
const SAME_PLACE_MM: f64 = 20.0;

fn twofold_words(place: &Twofold, lengths: Lengths) -> String {
    let turned = format!("turned by {:.0}°", place.turned_rad.to_degrees());
    let has_turned = place.turned_rad > 0.05;
    if has_turned && place.apart_mm < SAME_PLACE_MM {
        return format!(
            "{} fits the readings as well facing another way, {turned}: take one more line to its rim, or the slope of its face.",
            place.name
        );
    }
    let turned = if has_turned {
        format!(" and {turned}")
    } else {
        String::new()
    };
    format!(
        "{} fits the readings as well at another place, {} away{turned}: say which side it is on, or take its height or one more line to it.",
        place.name,
        lengths.about(place.apart_mm)
    )
}

fn unchecked(guide: &Guide) -> String {
    if guide.unchecked.is_empty() {
        return String::new();
    }
    let mut text = heading("Nothing else checks these");
    for check in guide.unchecked.iter().take(MOST_LINES) {
        let mut line = format!("reading {}, {}", check.number, check.words);
        if let Some(by) = &check.by {
            line.push_str(&format!("; best checked by {by}"));
        }
        text.push_str(&entry(&line));
    }
    if guide.unchecked.len() > MOST_LINES {
        let rest: Vec<u32> = guide
            .unchecked
            .iter()
            .skip(MOST_LINES)
            .map(|c| c.number)
            .collect();
        text.push_str(&paragraph(
            &format!("and {}", numbered("reading", &rest)),
            2,
        ));
    }
    text
}

fn setups(guide: &Guide) -> String {
    if guide.setups.is_empty() {
        return String::new();
    }
    let mut text = heading("Set-ups");
    for trouble in &guide.setups {
        let line = match trouble {
            SetupTrouble::FloorNotFixed { setup, heights } => format!(
                "{setup}: its floor is not fixed; it has heights of {heights} places and needs those of three marks, not in line, that are found by other readings too"
            ),
            SetupTrouble::FloorSlopes { setup, lean_rad } => format!(
                "{setup}: the floor slopes {:.1}° against the plumb line; is that so, or is an angle finder zeroed elsewhere?",
                lean_rad.to_degrees()
            ),
            SetupTrouble::NoneOnWheels => "none on its wheels with a floor: ground clearance stays not checked. Take the heights of three marks with the car on its wheels.".to_owned(),
            SetupTrouble::NotUsed { setup } => format!("{setup}: no reading names it"),
        };
        text.push_str(&entry(&line));
    }
    text
}

/// Distances between marks, which are known before the car has axes.
fn known_distances(measured: &Measured, lengths: Lengths) -> String {
    let network = measured.adjustment.network();
    let found = tubewright_plan::survey::known_distances(measured);
    if found.is_empty() {
        return String::new();
    }
    let mut text = heading("Known already (± 19 in 20)");
    let mut table = Table::new(&[
        ("from", Side::Left),
        ("to", Side::Left),
        ("apart", Side::Right),
        ("±", Side::Right),
    ]);
    let name =
        |id: tubewright_survey::PointId| network.target_name(tubewright_survey::Target::Point(id));
    for (a, b, apart) in found.iter().take(2 * MOST_LINES) {
        table.row([
            name(*a),
            name(*b),
            lengths.about(apart.value),
            lengths.fine(apart.plus_minus()),
        ]);
    }
    text.push_str(&table.render());
    if found.len() > 2 * MOST_LINES {
        text.push_str(&format!("  and {} more\n", found.len() - 2 * MOST_LINES));
    }
    text
}

fn places(measured: &Measured, lengths: Lengths) -> String {
    if measured.places.points.is_empty() {
        return String::new();
    }
    let mut text = heading(&format!(
        "Places, {} (x rearwards, y right, z up; ± 19 in 20)",
        lengths.sign()
    ));
    let mut table = Table::new(&[
        ("place", Side::Left),
        ("x", Side::Right),
        ("y", Side::Right),
        ("z", Side::Right),
        ("±", Side::Right),
    ]);
    for (name, place) in &measured.places.points {
        let p = place.point_in_car;
        table.row([
            name.clone(),
            lengths.place(p.x),
            lengths.place(p.y),
            lengths.place(p.z),
            lengths.fine(NINETEEN_IN_TWENTY * place.sigma_bound()),
        ]);
    }
    text.push_str(&table.render());
    text
}

fn ends(measured: &Measured, lengths: Lengths) -> String {
    if measured.places.ends.is_empty() {
        return String::new();
    }
    let mut text = heading("Ends");
    let mut table = Table::new(&[
        ("end", Side::Left),
        ("x", Side::Right),
        ("y", Side::Right),
        ("z", Side::Right),
        ("±", Side::Right),
        ("± of its direction", Side::Right),
    ]);
    for (name, end) in &measured.places.ends {
        let p = end.frame_in_car.origin;
        let turn = NINETEEN_IN_TWENTY * end.direction_sigma_rad().to_degrees();
        let middle = end.covariance_at(p);
        table.row([
            name.clone(),
            lengths.place(p.x),
            lengths.place(p.y),
            lengths.place(p.z),
            lengths.fine(NINETEEN_IN_TWENTY * tubewright_plan::places::sigma_bound(&middle)),
            if turn > 0.0 {
                format!("{turn:.1}°")
            } else {
                "chosen".to_owned()
            },
        ]);
    }
    text.push_str(&table.render());
    text
}
