//! Names inside `plan.json`, exchanged in place so that the layout of the file stays.
//!
//! The convention of the plan: a name stands as the value of a key that says its kind (`"point":
//! "rail L front"`), as an element of a list under the plural, or as a key of an object under the
//! plural.

use crate::keys::Target;

/// What the keys of the plan name.
const KEYS: [(&str, Target); 30] = [
    ("mark", Target::Mark),
    ("marks", Target::Mark),
    ("point", Target::Point),
    ("points", Target::Point),
    ("end", Target::End),
    ("ends", Target::End),
    ("place", Target::Place),
    ("places", Target::Place),
    ("setup", Target::Setup),
    ("setups", Target::Setup),
    ("carrier", Target::Carrier),
    ("carriers", Target::Carrier),
    ("body", Target::Body),
    ("bodies", Target::Body),
    ("component", Target::Through),
    ("components", Target::Through),
    ("through", Target::Through),
    ("run", Target::Run),
    ("runs", Target::Run),
    ("tube", Target::Tube),
    ("tubes", Target::Tube),
    ("item", Target::Item),
    ("items", Target::Item),
    ("supplier", Target::Supplier),
    ("suppliers", Target::Supplier),
    ("on-hand", Target::OnHand),
    ("on_hand", Target::OnHand),
    ("from", Target::RunEnd),
    ("to", Target::RunEnd),
    ("cut_from", Target::CutFrom),
];

fn target_of(key: &str) -> Option<Target> {
    KEYS.iter()
        .find(|(known, _)| *known == key)
        .map(|(_, target)| *target)
}

/// The text with every name exchanged for which `exchange` gives another; `None` when the text is
/// not JSON.
pub(super) fn exchange_names(
    text: &str,
    exchange: &dyn Fn(Target, &str) -> Option<String>,
) -> Option<String> {
    serde_json::from_str::<serde::de::IgnoredAny>(text).ok()?;
    let mut out = String::with_capacity(text.len());
    // For every open bracket: what the key before it names, and whether it is an object.
    let mut open: Vec<(Option<Target>, bool)> = Vec::new();
    let mut key_target: Option<Target> = None;
    let mut rest = text;
    let mut expects_key = false;
    while let Some(first) = rest.chars().next() {
        match first {
            '"' => {
                let end = string_end(rest)?;
                let (raw, after) = rest.split_at(end);
                let value: String = serde_json::from_str(raw).ok()?;
                let is_in_object = open.last().is_some_and(|(_, is_object)| *is_object);
                let target = if is_in_object && expects_key {
                    // A key of an object under a plural is itself a name.
                    open.last().and_then(|(target, _)| *target)
                } else if is_in_object {
                    key_target
                } else {
                    open.last().and_then(|(target, _)| *target)
                };
                match target.and_then(|target| exchange(target, &value)) {
                    Some(new) => out.push_str(&serde_json::to_string(&new).ok()?),
                    None => out.push_str(raw),
                }
                if is_in_object && expects_key {
                    key_target = target_of(&value);
                    expects_key = false;
                }
                rest = after;
                continue;
            }
            '{' | '[' => {
                let is_object = first == '{';
                let in_list = open.last().is_some_and(|(_, is_object)| !*is_object);
                // The key before a list speaks for its strings; an object in a list is a row.
                let target = if in_list { None } else { key_target };
                open.push((target, is_object));
                expects_key = is_object;
                key_target = None;
            }
            '}' | ']' => {
                open.pop();
                expects_key = false;
                key_target = None;
            }
            ',' => expects_key = open.last().is_some_and(|(_, is_object)| *is_object),
            _ => {}
        }
        out.push(first);
        rest = rest.get(first.len_utf8()..)?;
    }
    Some(out)
}

/// Bytes of the string at the start of `text`, quotes included.
fn string_end(text: &str) -> Option<usize> {
    let mut is_escaped = false;
    for (at, byte) in text.bytes().enumerate().skip(1) {
        match byte {
            _ if is_escaped => is_escaped = false,
            b'\\' => is_escaped = true,
            b'"' => return Some(at + 1),
            _ => {}
        }
    }
    None
}
