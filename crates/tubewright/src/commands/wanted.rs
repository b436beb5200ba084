//! Parts to look for, with what to check before paying.

use super::{Done, Failure, load, print};
use crate::cli::Folder;
use crate::terminal::{heading, paragraph};
use serde_json::json;
use tubewright_plan::stock::wanted;

/// Shows the list.
///
/// # Errors
/// The folder cannot be read.
pub(crate) fn run(arguments: &Folder) -> Result<Done, Failure> {
    let loaded = load::load(&arguments.folder)?;
    let list = wanted(&loaded.model);
    if arguments.json {
        let text = json!({ "wanted": list.iter().map(|part| json!({
            "item": part.item, "count": part.count, "for": part.for_components, "check": part.checks,
        })).collect::<Vec<_>>() });
        print(&format!("{text:#}\n"))?;
        return Ok(Done::Clean);
    }
    let mut text = heading("Wanted");
    if list.is_empty() {
        text.push_str("  Nothing: every component is on hand or on offer, and none that the runs need is left out.\n");
    }
    for part in &list {
        text.push_str(&paragraph(
            &format!(
                "{} × {}, for {}. Before paying check:",
                part.count,
                part.item,
                part.for_components.join(", ")
            ),
            2,
        ));
        for check in &part.checks {
            text.push_str(&paragraph(&format!("- {check}"), 4));
        }
    }
    print(&text)?;
    Ok(Done::Clean)
}
