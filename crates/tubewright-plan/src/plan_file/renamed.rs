//! A plan after a renaming: a name is no geometry, so that what was solved stands and is only told under
//! the new name.

use std::collections::BTreeMap;
use tubewright_build::document::NameKind;
use tubewright_build::model::Model;
use tubewright_build::quantity::Currency;

use super::{
    PlanFile, Stage, StoredRouted, StoredRoutes, StoredStage, bodies_inputs, bodies_result,
    routes_inputs, routes_result, survey_inputs, survey_result,
};
use crate::stages::{pose, routed_again, survey_and_bodies};

/// What was renamed.
#[derive(Clone, Copy, Debug)]
pub struct Renamed<'a> {
    /// The kind of thing.
    pub kind: NameKind,
    /// What it was called.
    pub old: &'a str,
    /// What it is called now.
    pub new: &'a str,
}

/// The plan with its routes as fresh as they were before the renaming; `text` is that of the plan with
/// the names in it exchanged already. `None` when there is nothing to keep: no routes, routes that were
/// older than the build, or a proof in words that holds names.
#[must_use]
pub fn carried_over(
    text: &str,
    before: &Model,
    after: &Model,
    scans: &BTreeMap<String, Vec<u8>>,
    renamed: Renamed<'_>,
) -> Option<PlanFile> {
    let mut plan = PlanFile::parse(text).ok()?;
    let stage = plan.stage(Stage::Routes)?;
    let mut stored = StoredRoutes::of(stage).ok()?;
    let practice = before
        .stock
        .practice
        .resolved(before.stock.currency.unwrap_or(Currency::NONE));
    let read_before = routes_inputs(before, scans, &practice, stored.budget);
    if !stage.freshness(&read_before).is_fresh() {
        return None;
    }
    match &mut stored.found {
        StoredRouted::Found(alternatives) => {
            for alternative in alternatives {
                alternative.name = way_renamed(&alternative.name, renamed);
            }
        }
        // Their words name what stands in the way.
        StoredRouted::NoneExists { .. } | StoredRouted::NotFound { .. } => return None,
        StoredRouted::NothingToRoute => {}
    }
    let around = survey_and_bodies(after, scans).ok()?;
    let posed = pose(after, &around);
    let routed = routed_again(after, &posed, &stored).ok()?;
    let inputs = survey_inputs(after);
    let result = survey_result(&inputs, &around);
    plan.set(Stage::Survey, StoredStage::new(&inputs, result));
    let inputs = bodies_inputs(after, scans);
    let result = bodies_result(&inputs, &around);
    plan.set(Stage::Bodies, StoredStage::new(&inputs, result));
    let inputs = routes_inputs(after, scans, &around.practice, stored.budget);
    let result = routes_result(&inputs, &posed, &routed, stored.budget);
    plan.set(Stage::Routes, StoredStage::new(&inputs, result));
    Some(plan)
}

/// How a way says on which side of a body it goes.
const PASSING: [&str; 6] = ["over", "under", "left of", "right of", "before", "behind"];

/// How it says where a component is.
const COMPONENT_PLACES: [&str; 2] = ["before the first bend", "behind bend "];

/// A way's words with the new name: *left of the gearbox, over the axle*, *resonator behind bend 2*.
fn way_renamed(way: &str, renamed: Renamed<'_>) -> String {
    let Renamed { kind, old, new } = renamed;
    let (old_names, afters): (Vec<String>, Vec<&str>) = match kind {
        NameKind::Body => (
            PASSING.iter().map(|side| format!("{side} the ")).collect(),
            vec![""],
        ),
        NameKind::Component => (vec![String::new()], COMPONENT_PLACES.to_vec()),
        _ => return way.to_owned(),
    };
    let mut out = String::with_capacity(way.len());
    let mut rest = way;
    'parts: while !rest.is_empty() {
        for before in &old_names {
            let Some(behind) = rest
                .strip_prefix(before.as_str())
                .and_then(|rest| rest.strip_prefix(old))
            else {
                continue;
            };
            let is_named = afters.iter().any(|after| match *after {
                "" => behind.is_empty() || behind.starts_with(", "),
                after => behind
                    .strip_prefix(' ')
                    .is_some_and(|behind| behind.starts_with(after)),
            });
            if is_named {
                out.push_str(before);
                out.push_str(new);
                rest = behind;
                break;
            }
        }
        // On to the next part.
        match rest.find(", ") {
            Some(at) => {
                let (part, next) = rest.split_at(at + 2);
                out.push_str(part);
                rest = next;
            }
            None => {
                out.push_str(rest);
                break 'parts;
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_name_itself_is_exchanged_in_the_words_of_a_way() {
        let body = |old, new| Renamed {
            kind: NameKind::Body,
            old,
            new,
        };
        let way = "left of the gear, over the gear box, behind the gear";
        assert_eq!(
            way_renamed(way, body("gear", "box, left")),
            "left of the box, left, over the gear box, behind the box, left"
        );
        assert_eq!(
            way_renamed(
                "left of the box, left, under the axle",
                body("box, left", "gear")
            ),
            "left of the gear, under the axle"
        );
        assert_eq!(
            way_renamed("in the open", body("open", "shut")),
            "in the open"
        );
        let component = Renamed {
            kind: NameKind::Component,
            old: "silencer",
            new: "back box",
        };
        assert_eq!(
            way_renamed("over the silencer, silencer behind bend 2", component),
            "over the silencer, back box behind bend 2"
        );
    }
}
