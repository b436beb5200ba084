//! JSON Schemas (draft 2020-12) for the completion of editors, made from the same declared keys that
//! the parser walks.

use crate::keys::build::BUILD;
use crate::keys::shop::SHOP;
use crate::keys::stock::STOCK;
use crate::keys::{Key, Rule, Shape, Table, Variant};
use crate::span::FileKind;
use serde_json::{Map, Value, json};

/// Draft 2020-12.
const DRAFT: &str = "https://json-schema.org/draft/2020-12/schema";

/// The schema of one of the four files.
///
/// It accepts whatever [`crate::read`] accepts of a single file, and refuses unknown keys, wrong
/// kinds of value, missing keys and quantities of a wrong form. What lies between elements (names
/// that must exist, ranges of quantities) is left to the program.
#[must_use]
pub fn json_schema(file: FileKind) -> Value {
    let mut schema = match file {
        FileKind::Build => table(&BUILD),
        FileKind::Stock => table(&STOCK),
        FileKind::Shop => table(&SHOP),
        FileKind::Plan => plan(),
    };
    if let Value::Object(top) = &mut schema {
        top.insert("$schema".to_owned(), json!(DRAFT));
        top.insert("title".to_owned(), json!(file.file_name()));
    }
    schema
}

/// `plan.json`: stages by name, each with the hash of what it read and its result.
fn plan() -> Value {
    json!({
        "description": "Everything derived; may be deleted at any time",
        "type": "object",
        "properties": {
            "format": { "const": "tubewright-plan/1" },
            "stages": {
                "type": "object",
                "properties": {
                    "survey": { "$ref": "#/$defs/stage" },
                    "bodies": { "$ref": "#/$defs/stage" },
                    "routes": { "$ref": "#/$defs/stage" },
                    "stock": { "$ref": "#/$defs/stage" },
                    "lines": { "$ref": "#/$defs/stage" },
                    "gas": { "$ref": "#/$defs/stage" },
                    "checks": { "$ref": "#/$defs/stage" }
                },
                "additionalProperties": false
            }
        },
        "required": ["format", "stages"],
        "additionalProperties": false,
        "$defs": {
            "stage": {
                "type": "object",
                "properties": {
                    "read": {
                        "description": "Hash over the checked values that the stage read",
                        "type": "string",
                        "pattern": "^[0-9a-f]{64}$"
                    },
                    "result": { "description": "What the stage found" }
                },
                "required": ["read", "result"],
                "additionalProperties": false
            }
        }
    })
}

fn table(table: &Table) -> Value {
    let Some(kinds) = &table.kinds else {
        return object(table.about, table.keys, &[], table.rules, None);
    };
    // One branch per variant; `if` on the deciding key keeps an editor's messages short.
    let branches: Vec<Value> = kinds
        .of
        .iter()
        .map(|variant| {
            let deciding = json!({ "description": kinds.about, "enum": variant.words });
            let rules: Vec<Rule> = table.rules.iter().chain(variant.rules).copied().collect();
            let then = object(
                table.about,
                table.keys,
                variant.keys,
                &rules,
                Some((kinds.key, deciding.clone())),
            );
            json!({
                "if": { "properties": { kinds.key: deciding }, "required": [kinds.key] },
                "then": then
            })
        })
        .collect();
    json!({
        "description": table.about,
        "type": "object",
        "properties": all_properties(table, kinds.key, kinds.of),
        "required": [kinds.key],
        "allOf": branches
    })
}

/// All keys of all variants without their shapes: what an editor offers before the kind is typed.
fn all_properties(table: &Table, deciding: &str, variants: &[Variant]) -> Value {
    let words: Vec<&str> = variants
        .iter()
        .flat_map(|variant| variant.words.iter().copied())
        .collect();
    let mut properties = Map::new();
    properties.insert(deciding.to_owned(), json!({ "enum": words }));
    for key in table
        .keys
        .iter()
        .chain(variants.iter().flat_map(|variant| variant.keys))
    {
        properties.insert(key.name.to_owned(), json!({}));
    }
    Value::Object(properties)
}

fn object(
    about: &str,
    keys: &[Key],
    more_keys: &[Key],
    rules: &[Rule],
    deciding: Option<(&str, Value)>,
) -> Value {
    let mut properties = Map::new();
    let mut required = Vec::new();
    if let Some((name, value)) = deciding {
        properties.insert(name.to_owned(), value);
        required.push(name);
    }
    for key in keys.iter().chain(more_keys) {
        let mut value = shape(key.shape);
        if let (Value::Object(map), false) = (&mut value, key.about.is_empty()) {
            map.insert("description".to_owned(), json!(key.about));
        }
        properties.insert(key.name.to_owned(), value);
        if key.is_required {
            required.push(key.name);
        }
    }
    let mut all_of: Vec<Value> = Vec::new();
    let mut dependent = Map::new();
    for rule in rules {
        match *rule {
            Rule::OneOf(names) => {
                let branches: Vec<Value> = names
                    .iter()
                    .map(|name| json!({ "required": [name] }))
                    .collect();
                all_of.push(json!({ "oneOf": branches }));
            }
            Rule::Needs(key, other) => {
                let needs = dependent.entry(key.to_owned()).or_insert_with(|| json!([]));
                if let Value::Array(needs) = needs {
                    needs.push(json!(other));
                }
            }
            Rule::WordNeeds(key, word, other) => all_of.push(json!({
                "if": { "properties": { key: { "const": word } }, "required": [key] },
                "then": { "required": [other] }
            })),
            Rule::NotBoth(a, b) => all_of.push(json!({ "not": { "required": [a, b] } })),
        }
    }
    let mut map = Map::new();
    map.insert("description".to_owned(), json!(about));
    map.insert("type".to_owned(), json!("object"));
    map.insert("properties".to_owned(), Value::Object(properties));
    map.insert("additionalProperties".to_owned(), json!(false));
    if !required.is_empty() {
        map.insert("required".to_owned(), json!(required));
    }
    if !dependent.is_empty() {
        map.insert("dependentRequired".to_owned(), Value::Object(dependent));
    }
    if !all_of.is_empty() {
        map.insert("allOf".to_owned(), Value::Array(all_of));
    }
    Value::Object(map)
}

fn shape(shape_: Shape) -> Value {
    match shape_ {
        Shape::Text => json!({ "type": "string", "pattern": r"\S", "maxLength": 4000 }),
        Shape::Fixed(word) => json!({ "const": word }),
        Shape::Name(target) => {
            let letters = if target == crate::keys::Target::Component {
                r"^[^\s.]([^.\n\r\t]*[^\s.])?$"
            } else {
                r"^\S([^\n\r\t]*\S)?$"
            };
            json!({ "type": "string", "maxLength": 100, "pattern": letters })
        }
        Shape::Whole { least, most } if most == i64::MAX => {
            json!({ "type": "integer", "minimum": least })
        }
        Shape::Whole { least, most } => {
            json!({ "type": "integer", "minimum": least, "maximum": most })
        }
        Shape::Number => json!({ "type": "number", "minimum": -1e6, "maximum": 1e6 }),
        Shape::Yes => json!({ "type": "boolean" }),
        Shape::Quantity(kind) => json!({
            "type": "string",
            "pattern": kind.pattern(),
            "examples": [kind.example()]
        }),
        Shape::Choice(words) => json!({ "enum": words }),
        Shape::Path => json!({
            "type": "string",
            "maxLength": 250,
            "pattern": r"^(?!(.*/)?\.{1,2}(/|$))[^\\:/]+(/[^\\:/]+)*$"
        }),
        Shape::Date => json!({
            "type": "string",
            "pattern": r"^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$"
        }),
        Shape::Currency => json!({ "type": "string", "pattern": "^[A-Z]{3}$" }),
        Shape::Refer(_) => json!({ "type": "string", "minLength": 1 }),
        Shape::List { of, least, most } => json!({
            "type": "array",
            "items": shape(*of),
            "minItems": least,
            "maxItems": most
        }),
        Shape::Table(of) => table(of),
        Shape::TextOrList(text, list) => json!({ "anyOf": [shape(*text), shape(*list)] }),
        Shape::OneOrMore(of, most) => json!({
            "anyOf": [
                table(of),
                { "type": "array", "items": table(of), "minItems": 1, "maxItems": most }
            ]
        }),
    }
}
