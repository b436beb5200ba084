//! Adjust the readings and show what they give.

use super::{Done, Failure, load, print};
use crate::cli::Measure;
use crate::terminal::table::{Side, Table};
use crate::terminal::{FAILS, PASSES, WARNS, heading, paragraph, styled};
use serde_json::{Value, json};
use tubewright_plan::stages::{Surroundings, survey_and_bodies};
use tubewright_plan::survey::NINETEEN_IN_TWENTY;

/// Shows the survey.
///
/// # Errors
/// The folder cannot be read, or the readings cannot be adjusted at all.
pub(crate) fn run(arguments: &Measure) -> Result<Done, Failure> {
    let loaded = load::load(&arguments.at.folder)?;
    let around = survey_and_bodies(&loaded.model, &loaded.scans)?;
    if arguments.at.json {
        print(&format!("{:#}\n", as_json(&around)))?;
    } else {
        print(&as_text(&around, arguments.all))?;
        if !loaded.missing.is_empty() {
            let mut text = heading("What is still missing");
            for job in &loaded.missing {
                for lack in &job.lacks {
                    text.push_str(&paragraph(&format!("{}: {lack}", job.title), 2));
                }
            }
            print(&text)?;
        }
    }
    let is_clean = around.measured.doubtful.is_empty() && around.measured.frame_problem.is_none();
    Ok(if is_clean {
        Done::Clean
    } else {
        Done::Findings
    })
}

/// The survey as text.
pub(crate) fn as_text(around: &Surroundings, with_all: bool) -> String {
    let measured = &around.measured;
    let test = measured.adjustment.global_test();
    let readings = measured.adjustment.readings();
    let mut text = heading("Readings");
    let agreement = if test.is_too_high() {
        styled(FAILS, "they do not agree as well as their ± says")
    } else {
        styled(PASSES, "they agree with each other")
    };
    text.push_str(&format!(
        "  {} readings, {} of them to spare; {agreement}.\n",
        measured.adjustment.network().readings.len(),
        test.freedom
    ));
    for doubtful in &measured.doubtful {
        text.push_str(&format!("  {}\n", styled(WARNS, "doubtful")));
        text.push_str(&paragraph(
            &format!(
                "{}. Set aside until you measure it again.",
                doubtful.sentence(measured.adjustment.network())
            ),
            4,
        ));
    }
    let mut unchecked: Vec<u32> = readings
        .iter()
        .filter(|r| !r.set_aside && r.is_unchecked())
        .map(|r| r.number)
        .collect();
    unchecked.dedup();
    if !unchecked.is_empty() {
        let list: Vec<String> = unchecked.iter().map(ToString::to_string).collect();
        text.push_str(&paragraph(
            &format!(
                "Nothing else checks reading {}: take one more line there.",
                list.join(", ")
            ),
            2,
        ));
    }
    if with_all {
        text.push_str(&heading("Every reading"));
        let mut table = Table::new(&[
            ("no.", Side::Right),
            ("off by", Side::Right),
            ("usual ±", Side::Right),
            ("checked by others", Side::Right),
        ]);
        for reading in &readings {
            table.row([
                reading.number.to_string(),
                format!("{:.1}", reading.residual),
                format!("{:.1}", NINETEEN_IN_TWENTY * reading.sigma),
                format!("{:.0} %", 100.0 * reading.redundancy),
            ]);
        }
        text.push_str(&table.render());
        text.push_str("  mm; angles in radians\n");
    }
    if let Some(problem) = &measured.frame_problem {
        text.push_str(&heading("The car's axes"));
        text.push_str(&paragraph(&problem.to_string(), 2));
        return text;
    }
    text.push_str(&heading(
        "Places, mm (x rearwards, y right, z up; ± 19 in 20)",
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
            format!("{:.0}", p.x),
            format!("{:.0}", p.y),
            format!("{:.0}", p.z),
            format!("{:.1}", NINETEEN_IN_TWENTY * place.sigma_bound()),
        ]);
    }
    text.push_str(&table.render());
    text.push_str(&heading("Ends"));
    let mut table = Table::new(&[
        ("end", Side::Left),
        ("x", Side::Right),
        ("y", Side::Right),
        ("z", Side::Right),
        ("± of its direction", Side::Right),
    ]);
    for (name, end) in &measured.places.ends {
        let p = end.frame_in_car.origin;
        let turn = NINETEEN_IN_TWENTY * end.direction_sigma_rad().to_degrees();
        table.row([
            name.clone(),
            format!("{:.0}", p.x),
            format!("{:.0}", p.y),
            format!("{:.0}", p.z),
            if turn > 0.0 {
                format!("{turn:.1}°")
            } else {
                "chosen".to_owned()
            },
        ]);
    }
    text.push_str(&table.render());
    for (name, reason) in &around.bodies.missing {
        text.push_str(&format!(
            "  {}\n",
            styled(WARNS, format!("{name} is not there"))
        ));
        text.push_str(&paragraph(&reason.to_string(), 4));
    }
    text
}

fn as_json(around: &Surroundings) -> Value {
    let measured = &around.measured;
    let test = measured.adjustment.global_test();
    json!({
        "unit": "mm, deg, ± 19 in 20",
        "spare-readings": test.freedom,
        "agree": !test.is_too_high(),
        "doubtful": measured.doubtful.iter().map(|doubtful| json!({
            "reading": doubtful.number,
            "words": doubtful.sentence(measured.adjustment.network()),
            "was-probably": doubtful.was_probably(),
        })).collect::<Vec<_>>(),
        "places": measured.places.points.iter().map(|(name, place)| json!({
            "name": name,
            "at": place.point_in_car.to_array(),
            "plus-minus": NINETEEN_IN_TWENTY * place.sigma_bound(),
        })).collect::<Vec<_>>(),
        "ends": measured.places.ends.iter().map(|(name, end)| json!({
            "name": name,
            "at": end.frame_in_car.origin.to_array(),
            "travel": end.frame_in_car.travel().to_array(),
            "direction-plus-minus": NINETEEN_IN_TWENTY * end.direction_sigma_rad().to_degrees(),
        })).collect::<Vec<_>>(),
        "bodies-missing": around.bodies.missing.iter().map(|(name, reason)| json!({
            "name": name, "why": reason.to_string(),
        })).collect::<Vec<_>>(),
    })
}
