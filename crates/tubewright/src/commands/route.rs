//! Find routes and show them.

use super::solve::{Solved, solve};
use super::{Done, Failure, load, print};
use crate::cli::Route;
use crate::interrupt;
use crate::terminal::table::{Side, Table};
use crate::terminal::{FAILS, heading, paragraph, styled};
use serde_json::{Value, json};
use tubewright_plan::routes::{PlannedKind, PlannedPiece, PlannedRun};
use tubewright_plan::stages::{Alternative, Routed};

/// Routes every run.
///
/// # Errors
/// The folder cannot be read or the routes cannot be posed.
pub(crate) fn run(arguments: &Route) -> Result<Done, Failure> {
    let loaded = load::load(&arguments.at.folder)?;
    let solved = solve(&loaded, arguments.effort)?;
    if arguments.at.json {
        print(&format!("{:#}\n", as_json(&solved)))?;
    } else {
        print(&as_text(&solved))?;
    }
    Ok(if interrupt::was_asked() {
        Done::Stopped
    } else if matches!(solved.routed, Routed::Found(_)) && solved.posed.left_out.is_empty() {
        Done::Clean
    } else {
        Done::Findings
    })
}

/// Alternatives, and the pieces of the first.
pub(crate) fn as_text(solved: &Solved) -> String {
    let mut text = heading("Routes");
    for (name, reason) in &solved.posed.left_out {
        text.push_str(&format!(
            "  {}\n",
            styled(FAILS, format!("{name} is not routed"))
        ));
        text.push_str(&paragraph(&reason.to_string(), 4));
    }
    match &solved.routed {
        Routed::Found(alternatives) => {
            text.push_str(&alternatives_text(alternatives));
            if let Some(first) = alternatives.first() {
                for run in &first.runs {
                    text.push_str(&run_text(run));
                }
            }
        }
        Routed::NotFound { work_units } => text.push_str(&paragraph(
            &format!("No route found in this effort ({work_units} work units). There may be one: try --effort with more, or make room."),
            2,
        )),
        Routed::NoneExists(proof) => {
            text.push_str(&paragraph(&format!("No route exists: {proof}."), 2));
        }
        Routed::NothingToRoute => text.push_str("  There is no run to route.\n"),
    }
    text.push_str(&paragraph(
        &format!(
            "Effort {} work units, seed {}: the same again gives the same routes.",
            solved.budget.work_units, solved.budget.seed
        ),
        2,
    ));
    text
}

fn alternatives_text(alternatives: &[Alternative]) -> String {
    let mut table = Table::new(&[
        ("", Side::Right),
        ("cost", Side::Right),
        ("length", Side::Right),
        ("bends", Side::Right),
        ("ends off", Side::Right),
        ("way", Side::Left),
    ]);
    for (number, alternative) in alternatives.iter().enumerate() {
        let length: f64 = alternative
            .runs
            .iter()
            .map(PlannedRun::developed_length_mm)
            .sum();
        let bends: f64 = alternative
            .runs
            .iter()
            .map(PlannedRun::sum_of_bends_rad)
            .sum();
        let off = alternative
            .runs
            .iter()
            .map(PlannedRun::end_error_mm)
            .fold(0.0, f64::max);
        table.row([
            (number + 1).to_string(),
            format!("{:.0}", alternative.cost),
            format!("{:.2} m", length / 1000.0),
            format!("{:.0}°", bends.to_degrees()),
            format!("{off:.1} mm"),
            alternative.name.clone(),
        ]);
    }
    let mut text = table.render();
    if alternatives.len() < 3 {
        text.push_str("  Fewer than three ways were found in this effort.\n");
    }
    text
}

/// The pieces of a run, as they are cut and clocked.
pub(crate) fn run_text(run: &PlannedRun) -> String {
    let mut text = heading(&format!(
        "{} ({}), rounded to the shop's steps",
        run.name, run.tube
    ));
    let mut table = Table::new(&[
        ("piece", Side::Left),
        ("joint", Side::Left),
        ("what", Side::Left),
        ("size", Side::Right),
        ("clock", Side::Right),
        ("ends at x, y, z", Side::Left),
    ]);
    for piece in &run.pieces {
        let (what, size, clock) = words(piece);
        let p = piece.frame_out.origin;
        table.row([
            piece.mark.clone(),
            piece.joint.clone(),
            what,
            size,
            clock,
            format!("{:.0}, {:.0}, {:.0}", p.x, p.y, p.z),
        ]);
    }
    text.push_str(&table.render());
    text.push_str(&format!(
        "  closes at {} to {:.1} mm and {:.1}°; places in mm; clock looking downstream\n",
        run.last_joint,
        run.end_error_mm(),
        run.end_error_rad().to_degrees()
    ));
    text
}

fn words(piece: &PlannedPiece) -> (String, String, String) {
    match &piece.kind {
        PlannedKind::Straight { length_mm } => (
            "straight".to_owned(),
            format!("{length_mm:.1} mm"),
            String::new(),
        ),
        PlannedKind::Bend {
            angle_rad,
            clock_rad,
            clr_mm,
        } => (
            format!("bend, CLR {clr_mm:.1}"),
            format!("{:.1}°", angle_rad.to_degrees()),
            format!("{:+.1}°", clock_rad.to_degrees()),
        ),
        PlannedKind::Component {
            name, length_mm, ..
        } => (name.clone(), format!("{length_mm:.0} mm"), String::new()),
        PlannedKind::Crossover { name, side, .. } => {
            (format!("{name}, side {side}"), String::new(), String::new())
        }
    }
}

fn as_json(solved: &Solved) -> Value {
    let alternatives = match &solved.routed {
        Routed::Found(alternatives) => alternatives.iter().map(alternative_json).collect(),
        _ => Vec::new(),
    };
    json!({
        "status": match &solved.routed {
            Routed::Found(_) => "found",
            Routed::NotFound { .. } => "no route found in this effort",
            Routed::NoneExists(_) => "none exists",
            Routed::NothingToRoute => "nothing to route",
        },
        "effort": solved.budget.work_units,
        "seed": solved.budget.seed,
        "left-out": solved.posed.left_out.iter().map(|(name, why)| json!({"run": name, "why": why.to_string()})).collect::<Vec<_>>(),
        "alternatives": alternatives,
    })
}

/// One alternative with every number that is printed.
pub(crate) fn alternative_json(alternative: &Alternative) -> Value {
    json!({
        "way": alternative.name,
        "cost": alternative.cost,
        "lower-bound": alternative.lower_bound,
        "unit": "mm, deg",
        "runs": alternative.runs.iter().map(|run| json!({
            "run": run.name,
            "tube": run.tube,
            "od": run.od_mm,
            "start": {
                "point": run.start.origin.to_array(),
                "dir": run.start.travel().to_array(),
                "up": run.start.twelve().to_array(),
            },
            "end": { "point": run.end_point.to_array(), "dir": run.end_direction.to_array() },
            "end-error": run.end_error_mm(),
            "end-error-direction": run.end_error_rad().to_degrees(),
            "pieces": run.pieces.iter().map(piece_json).collect::<Vec<_>>(),
        })).collect::<Vec<_>>(),
    })
}

fn piece_json(piece: &PlannedPiece) -> Value {
    let mut value = match &piece.kind {
        PlannedKind::Straight { length_mm } => json!({"type": "straight", "length": length_mm}),
        PlannedKind::Bend {
            angle_rad,
            clock_rad,
            clr_mm,
        } => json!({
            "type": "bend",
            "angle": angle_rad.to_degrees(),
            "clocking": clock_rad.to_degrees(),
            "clr": clr_mm,
        }),
        PlannedKind::Component {
            name,
            length_mm,
            roll_rad,
        } => json!({
            "type": "component", "name": name, "length": length_mm, "roll": roll_rad.to_degrees(),
        }),
        PlannedKind::Crossover { name, side, .. } => json!({
            "type": "crossover", "name": name, "side": side,
        }),
    };
    if let Some(object) = value.as_object_mut() {
        object.insert("mark".to_owned(), json!(piece.mark));
        object.insert("joint".to_owned(), json!(piece.joint));
        object.insert("out".to_owned(), json!(piece.frame_out.origin.to_array()));
    }
    value
}
