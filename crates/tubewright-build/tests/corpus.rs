//! The texts that an outside judge holds the schemas' patterns to, held to the parser.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

use tubewright_build::quantity::*;

fn is_taken(kind: &str, text: &str) -> bool {
    match kind {
        "length" => parse_length(text).is_ok(),
        "angle" => parse_angle(text).is_ok(),
        "clock" => parse_clock(text).is_ok(),
        "mass" => parse_mass(text).is_ok(),
        "volume" => parse_volume(text).is_ok(),
        "power" => parse_power(text).is_ok(),
        "rotation" => parse_rotation_speed(text).is_ok(),
        "duration" => parse_duration(text).is_ok(),
        "density" => parse_density(text).is_ok(),
        "share" => parse_share(text).is_ok(),
        "money" => parse_money(text).is_ok(),
        "rate" => parse_rate(text, Per::Hour, false).is_ok(),
        "tyre" => parse_tyre(text).is_ok(),
        _ => panic!("no such kind: {kind}"),
    }
}

#[test]
fn the_parser_takes_the_good_and_refuses_the_bad() {
    let corpus: toml::Table = include_str!("data/quantities.toml").parse().unwrap();
    let mut wrong = Vec::new();
    for (kind, lists) in &corpus {
        for (list, wanted) in [("good", true), ("bad", false)] {
            for text in lists[list].as_array().unwrap() {
                let text = text.as_str().unwrap();
                if is_taken(kind, text) != wanted {
                    wrong.push(format!("{kind}: {text:?} is not {list}"));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
