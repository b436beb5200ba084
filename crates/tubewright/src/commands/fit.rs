//! The order of tacking, the check distances and their tolerances, and what the welds ask for.

use super::solve::runs_of;
use super::{Done, Failure, load, print};
use crate::cli::Folder;
use crate::terminal::table::{Side, Table};
use crate::terminal::{FAILS, WARNS, heading, paragraph, styled};
use serde_json::{Value, json};
use tubewright_build::model::Model;
use tubewright_plan::fit::{Act, Way};
use tubewright_plan::fit::{
    FitSheet, FitStep, JointCheck, WeldFacts, fit_sheet, hour_words, weld_facts,
};
use tubewright_plan::hangers::{HungRuns, hangers};
use tubewright_plan::lengths::Lengths;
use tubewright_plan::routes::outlet_words;
use tubewright_plan::sensors::{Sensor, sensors};

/// Shows the fit sheet.
///
/// # Errors
/// The folder cannot be read, or there is nothing to plan from.
pub(crate) fn run(arguments: &Folder) -> Result<Done, Failure> {
    let mut loaded = load::load(&arguments.folder)?;
    let solved = runs_of(&mut loaded)?;
    let Some(supply) = solved.supply(&loaded, &[])? else {
        print("  There is no route yet, so there is nothing to fit: see `tubewright route`.\n")?;
        solved.plan.save(&mut loaded);
        return Ok(Done::Findings);
    };
    let sheet = fit_sheet(&loaded.model, &solved.around, solved.runs(), &supply.whole);
    let welds = weld_facts(&loaded.model, solved.runs());
    let sensors = sensors(
        &loaded.model,
        &solved.around,
        solved.runs(),
        Some(&supply.whole),
    );
    let hung = hangers(
        &loaded.model,
        &solved.around,
        solved.runs(),
        Some(&supply.whole),
        &sensors,
    );
    let lengths = Lengths::of(&loaded.model);
    let stands = Stands {
        sensors: &sensors,
        hung: &hung,
    };
    if arguments.json {
        print(&format!("{:#}\n", as_json(&sheet, &welds, stands)))?;
    } else {
        let before = solved
            .runs()
            .iter()
            .filter_map(|run| outlet_words(run, lengths));
        let before: Vec<String> = before.collect();
        print(&as_text(&loaded.model, &before, &sheet, &welds, stands))?;
    }
    solved.plan.save(&mut loaded);
    let is_hung = |group: &HungRuns| group.found.as_ref().is_ok_and(|found| found.is_within);
    Ok(
        if is_clean(&sheet) && sensors.iter().all(Sensor::is_free) && hung.iter().all(is_hung) {
            Done::Clean
        } else {
            Done::Findings
        },
    )
}

/// What stands off the run, welded to it.
#[derive(Clone, Copy)]
struct Stands<'a> {
    sensors: &'a [Sensor],
    hung: &'a [HungRuns],
}

fn is_clean(sheet: &FitSheet) -> bool {
    sheet.unclosed.is_empty()
        && sheet
            .steps
            .iter()
            .flat_map(|step| &step.checks)
            .all(|check| {
                check.too_few.is_none() && check.loose.is_none() && check.tolerance.most_mm >= 0.0
            })
}

fn as_text(
    model: &Model,
    before: &[String],
    sheet: &FitSheet,
    welds: &[WeldFacts],
    stands: Stands<'_>,
) -> String {
    let lengths = Lengths::of(model);
    let mut text = heading("Fit");
    text.push_str(&paragraph(
        "Tack on the car in this order, three short tacks to a joint. Before each part goes up scribe twelve o'clock in line with its witness line and the hours named here round its open end, clockwise looking downstream. Then move the open end until every tape reads as it should, within what is allowed, and tack.",
        2,
    ));
    for words in before {
        text.push_str(&paragraph(words, 2));
    }
    for step in &sheet.steps {
        text.push_str(&step_text(step, lengths));
    }
    for words in &sheet.unclosed {
        text.push_str(&paragraph(&styled(FAILS, words), 2));
    }
    if !stands.sensors.is_empty() {
        text.push_str(&heading("Bungs for sensors"));
        text.push_str(&paragraph(
            "Mark the middle of the hole on the tacked run, hold the sensor there and turn its socket before drilling.",
            2,
        ));
    }
    for sensor in stands.sensors {
        text.push_str(&paragraph(&sensor_text(sensor, lengths), 2));
    }
    if !stands.hung.is_empty() {
        text.push_str(&heading("Hangers"));
        text.push_str(&paragraph(
            "Rod, rubber and bracket together take the reach; the load is what the rubber carries at rest, an estimate. None goes between the engine and a flex section.",
            2,
        ));
    }
    for group in stands.hung {
        text.push_str(&hung_text(group, lengths));
    }
    text.push_str(&heading("Weld"));
    text.push_str(&paragraph(
        "When all is tacked and every tape reads true, take it down in one piece from flange to tip if it comes out so (`check` says whether a way out was found), bolt every flange to the engine or to a thick plate, and weld off the car, each joint in quarters: 12 to 3, 6 to 9, 3 to 6, 9 to 12. Only what cannot come down whole is welded on the car.",
        2,
    ));
    text.push_str(&paragraph(
        &format!(
            "After the first full weld measure across it again: what it pulled is the shop's own figure. It goes into stock.toml as weld-pull (now {}), and the pieces that are not cut yet take it up.",
            lengths.fine(
                model
                    .stock
                    .practice
                    .resolved(tubewright_build::quantity::Currency::NONE)
                    .weld_pull
                    .mm()
            )
        ),
        2,
    ));
    for weld in welds {
        text.push_str(&weld_text(weld, lengths));
    }
    for caution in tubewright_stock::weld::CAUTIONS {
        text.push_str(&paragraph(
            &styled(WARNS, format!("Mind: {}.", lengths.sentence(caution))),
            2,
        ));
    }
    text
}

fn sensor_text(sensor: &Sensor, lengths: Lengths) -> String {
    let head = format!("before {} of {}:", sensor.catalyst, sensor.run);
    match &sensor.found {
        Ok(place) => format!(
            "{head} {}; {} of room to {}.",
            lengths.sentence(&place.words()),
            lengths.about(place.room.gap_mm),
            place.room.to,
        ),
        Err(_) => styled(
            FAILS,
            format!(
                "{head} no place with room for a bung and its sensor; `tubewright check` says why."
            ),
        ),
    }
}

fn hung_text(group: &HungRuns, lengths: Lengths) -> String {
    let names = group.runs.join(" and ");
    let found = match &group.found {
        Ok(found) => found,
        Err(why) => {
            let words = format!("{names}: not placed. {}.", lengths.sentence(&why.words()));
            return paragraph(&styled(WARNS, words), 2);
        }
    };
    let mut text = paragraph(
        &format!(
            "{names}: {:.1} kg behind the flex; the place that sinks most does by {}.",
            found.mass_kg,
            lengths.fine(found.sag_mm)
        ),
        2,
    );
    for hanger in &found.hangers {
        let words = lengths.sentence(&hanger.place.words());
        text.push_str(&paragraph(
            &format!("{}: {words}; about {:.0} N.", hanger.mark, hanger.load_n),
            4,
        ));
    }
    if !found.is_within {
        text.push_str(&paragraph(
            &styled(
                WARNS,
                "Not checked: on what was measured within reach no set of places carries it; `tubewright check` says how far off the best is.",
            ),
            4,
        ));
    }
    text
}

fn step_text(step: &FitStep, lengths: Lengths) -> String {
    let marks = step.marks.join(" + ");
    let made = &step.step.makes;
    let words = match step.step.act {
        Act::Hang if step.is_there => {
            format!("look whether {marks} stands where its tapes say: it stays as it is")
        }
        Act::Hang if !step.on_the_bench.is_empty() => format!(
            "weld {marks} together on the bench first, at {}; hang them as one where its tapes say",
            step.on_the_bench.join(" and ")
        ),
        Act::Hang => format!("hang {marks} where its tapes say"),
        Act::Bolt | Act::Tack(Way::Downstream) => {
            format!("{} {marks} on at {made}", step.puts_on())
        }
        Act::Tack(Way::Upstream) => {
            format!("tack {marks} on at {made}, against the flow from what hangs there")
        }
        Act::Close => format!("{marks} closes: last of this stretch"),
    };
    let mut text = String::from("\n");
    text.push_str(&paragraph(
        &format!("{}. {}: {words}", step.step.number, step.run),
        2,
    ));
    if let Some(trim) = step.trim {
        text.push_str(&paragraph(
            &format!(
                "It is {}. Hold it beside the gap, scribe both faces from the open ends, cut to the scribes, tack at both joints.",
                trim.words(lengths)
            ),
            5,
        ));
        if let Some(lack) = trim.lack_words(lengths) {
            text.push_str(&paragraph(&lack, 5));
        }
    }
    if let Some(held) = step.held {
        text.push_str(&paragraph(held.how(), 5));
    }
    for check in &step.checks {
        text.push_str(&check_text(check, lengths));
    }
    text
}

fn check_text(check: &JointCheck, lengths: Lengths) -> String {
    let mut text = String::new();
    let mut table = Table::new(&[
        (&format!("to {}", check.joint), Side::Left),
        ("hour", Side::Right),
        ("tape", Side::Right),
    ]);
    for distance in &check.distances {
        table.row([
            distance.mark.clone(),
            hour_words(distance.clock_rad),
            lengths.about(distance.distance_mm),
        ]);
    }
    if !table.is_empty() {
        text.push_str(&table.render());
    }
    let most = check.tolerance.most_mm;
    let is_by_pieces = check.distances.is_empty();
    if most >= 0.0 && is_by_pieces {
        text.push_str(&paragraph(
            &format!(
                "By the pieces alone the joint is held to ± {} (19 in 20).",
                lengths.fine(check.plus_minus_before_mm)
            ),
            5,
        ));
    } else if most >= 0.0 {
        text.push_str(&paragraph(
            &format!(
                "Each may be off by {}{}. The joint is then held to ± {} (19 in 20); by the pieces alone ± {}.",
                lengths.fine(most),
                check
                    .tolerance_by
                    .as_ref()
                    .map_or_else(String::new, |near| format!(", for the gap to {near}")),
                lengths.fine(check.plus_minus_after_mm),
                lengths.fine(check.plus_minus_before_mm),
            ),
            5,
        ));
    } else {
        let better = check.better_words();
        text.push_str(&paragraph(
            &styled(
                FAILS,
                format!(
                    "Even with tapes that read true the gap to {} may be {} short (19 in 20). What would do: {}.",
                    check.tolerance_by.as_deref().unwrap_or("a body"),
                    lengths.fine(-most),
                    if better.is_empty() {
                        "no single figure of the shop; move the body or give it a gap of its own".to_owned()
                    } else {
                        better.join(", or ")
                    }
                ),
            ),
            5,
        ));
    }
    if let Some(loose) = check.loose.as_ref().filter(|_| !is_by_pieces) {
        text.push_str(&paragraph(
            &styled(
                WARNS,
                format!(
                    "Not checked {}: these distances leave it ± {} that way.",
                    loose.words,
                    lengths.fine(loose.plus_minus_mm)
                ),
            ),
            5,
        ));
    }
    if let Some(words) = &check.too_few {
        text.push_str(&paragraph(
            &styled(
                WARNS,
                format!(
                    "Not checked: {} of 3 distances: {words}.",
                    check.distances.len()
                ),
            ),
            5,
        ));
    }
    if let Some(advice) = check.advice(lengths) {
        text.push_str(&paragraph(&format!("{advice}."), 5));
    }
    text
}

fn weld_text(weld: &WeldFacts, lengths: Lengths) -> String {
    let mut text = paragraph(
        &format!(
            "{}: {} to {}, filler {} ({}). Start near {:.0} A; close up to no gap, at most {}, step at most {}; about {} of 1.6 mm wire to a joint.",
            weld.run,
            weld.materials.0,
            weld.materials.1,
            weld.filler.filler,
            weld.filler.why,
            weld.amps,
            lengths.fine(weld.gap_most_mm),
            lengths.fine(weld.step_most_mm),
            lengths.about(weld.wire_mm),
        ),
        2,
    );
    for minds in &weld.filler.minds {
        text.push_str(&paragraph(
            &styled(WARNS, format!("Mind: {}.", lengths.sentence(minds))),
            4,
        ));
    }
    if weld.filler.purge {
        text.push_str(&paragraph(
            &format!(
                "Purge: {:.1} l inside; at {:.0} l/min {:.0} min for five changes, {:.0} min for ten, before the arc; then a trickle. Feed low, vent high. Perfectly mixed, five changes still leave {:.0} ppm of oxygen: a meter decides.",
                weld.purge_litres,
                weld.purge_flow_l_min,
                weld.purge_five_min,
                weld.purge_ten_min,
                weld.oxygen_after_five_ppm,
            ),
            4,
        ));
    }
    text
}

fn as_json(sheet: &FitSheet, welds: &[WeldFacts], stands: Stands<'_>) -> Value {
    json!({
        "unit": "mm, deg",
        "steps": sheet.steps.iter().map(|step| json!({
            "number": step.step.number,
            "run": step.run,
            "pieces": step.marks,
            "act": match step.step.act {
                Act::Hang if step.is_there => "look",
                Act::Hang => "hang",
                Act::Bolt => "bolt",
                Act::Tack(Way::Downstream) => "tack",
                Act::Tack(Way::Upstream) => "tack against the flow",
                Act::Close => "close",
            },
            "makes": step.step.makes,
            "on-the-bench": step.on_the_bench,
            "trim": step.trim.map(|trim| {
                let [upstream, downstream] = trim.left_mm();
                let lack = trim.lack_words(Lengths::Millimetres);
                json!({ "upstream": upstream, "downstream": downstream, "lack": lack })
            }),
            "checks": step.checks.iter().map(check_json).collect::<Vec<_>>(),
        })).collect::<Vec<_>>(),
        "unclosed": sheet.unclosed,
        "sensors": stands.sensors.iter().map(sensor_json).collect::<Vec<_>>(),
        "hangers": stands.hung.iter().map(hung_json).collect::<Vec<_>>(),
        "welds": welds.iter().map(|weld| json!({
            "run": weld.run,
            "materials": [weld.materials.0, weld.materials.1],
            "filler": weld.filler.filler,
            "minds": weld.filler.minds,
            "amps": weld.amps,
            "purge-litres": weld.filler.purge.then_some(weld.purge_litres),
            "purge-minutes": weld.filler.purge.then_some([weld.purge_five_min, weld.purge_ten_min]),
        })).collect::<Vec<_>>(),
        "cautions": tubewright_stock::weld::CAUTIONS,
    })
}

fn sensor_json(sensor: &Sensor) -> Value {
    json!({
        "run": sensor.run,
        "before": sensor.catalyst,
        "place": sensor.found.as_ref().ok().map(|place| json!({
            "piece": place.piece,
            "joint": place.joint,
            "along": place.along_mm,
            "upstream": place.is_upstream,
            "clock": place.clocking.clock_rad.to_degrees(),
            "rise": place.clocking.rise_rad.to_degrees(),
            "on-a-bend": place.is_on_bend,
            "at": place.foot.to_array(),
            "room": place.room.gap_mm,
            "plus-minus": place.room.plus_minus_mm,
            "room-to": place.room.to,
        })),
    })
}

fn hung_json(group: &HungRuns) -> Value {
    let found = group.found.as_ref();
    json!({
        "runs": group.runs,
        "state": match found {
            Ok(found) if found.is_within => "passes",
            _ => "not checked",
        },
        "why": found.err().map(|why| why.words()),
        "kg": found.ok().map(|found| found.mass_kg),
        "sag": found.ok().map(|found| found.sag_mm),
        "hertz": found.ok().map(|found| &found.frequencies_hz),
        "places": found.map_or_else(|_| Vec::new(), |found| {
            let places = found.hangers.iter().map(|hanger| json!({
                "mark": hanger.mark,
                "run": hanger.run,
                "piece": hanger.place.piece,
                "joint": hanger.place.joint,
                "along": hanger.place.along_mm,
                "clock": hanger.place.clocking.clock_rad.to_degrees(),
                "on-a-can": hanger.place.is_on_can,
                "on-a-bend": hanger.place.is_on_bend,
                "at": hanger.place.foot.to_array(),
                "body": hanger.place.body,
                "bracket": hanger.place.bracket.to_array(),
                "reach": hanger.place.reach_mm,
                "newton": hanger.load_n,
            }));
            places.collect()
        }),
    })
}

fn check_json(check: &JointCheck) -> Value {
    json!({
        "joint": check.joint,
        "distances": check.distances.iter().map(|distance| json!({
            "from": distance.mark,
            "clock": distance.clock_rad.to_degrees(),
            "reads": distance.distance_mm,
            "scribed-at": distance.place.to_array(),
            "from-at": core::array::from_fn::<f64, 3, _>(|i| {
                distance.place.to_array()[i] - distance.row[i] * distance.distance_mm
            }),
        })).collect::<Vec<_>>(),
        "loose": check.loose.as_ref().map(|loose| json!({
            "way": loose.words, "plus-minus": loose.plus_minus_mm,
        })),
        "one-more-mark": check.one_more.as_ref().map(|mark| json!({
            "on": mark.body, "from": mark.from, "away": [mark.away.x, mark.away.y, mark.away.z],
            "clock": mark.clock_rad.to_degrees(), "plus-minus": mark.plus_minus_mm,
        })),
        "state": if check.too_few.is_some() || check.loose.is_some() { "not checked" } else if check.tolerance.most_mm < 0.0 { "fails" } else { "passes" },
        "each-within": check.tolerance.most_mm,
        "set-by": check.tolerance_by,
        "plus-minus": check.plus_minus_after_mm,
        "plus-minus-by-the-pieces": check.plus_minus_before_mm,
        "better": check.better.iter().map(|(source, share)| json!({
            "what": source.words(), "to-share": share,
        })).collect::<Vec<_>>(),
    })
}
