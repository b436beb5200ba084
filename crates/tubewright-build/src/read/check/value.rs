//! One value against the shape that its key declares.

use super::super::home_file;
use super::super::names::{CHASSIS, nearest, unfit_name};
use super::super::source::Said;
use super::Checker;
use super::plain::{count_wanted, is_date, number, wanted};
use crate::keys::{Shape, Target};
use core::ops::Range;
use toml::Spanned;
use toml::de::DeValue;

/// Longest text in letters that is kept.
const LONGEST_TEXT: usize = 4000;

impl Checker<'_> {
    pub(in crate::read) fn value(
        &mut self,
        key: &str,
        shape: Shape,
        value: &Spanned<DeValue<'_>>,
    ) -> bool {
        let range = value.span();
        match (shape, value.get_ref()) {
            (Shape::Text, DeValue::String(text)) => self.text(key, text, range),
            (Shape::Fixed(word), DeValue::String(text)) => {
                text == word || self.wrong_format(word, text, range)
            }
            (Shape::Name(target), DeValue::String(text)) => self.name(target, text, range),
            (Shape::Whole { least, most }, DeValue::Integer(number)) => {
                let fits = i64::from_str_radix(number.as_str(), number.radix())
                    .is_ok_and(|number| (least..=most).contains(&number));
                fits || self.error(
                    range,
                    Said::new(
                        format!("`{key}` is {number}"),
                        if most == i64::MAX {
                            format!("it is a whole number of at least {least}")
                        } else {
                            format!("it is a whole number from {least} to {most}")
                        },
                        "write a number in that range",
                    ),
                )
            }
            (Shape::Number, DeValue::Integer(_) | DeValue::Float(_)) => {
                number(value).is_some()
                    || self.error(
                        range,
                        Said::new(
                            format!("`{key}` holds no usable number"),
                            "a place is a finite number, at most a million either way",
                            "look at the number again",
                        ),
                    )
            }
            (Shape::Yes, DeValue::Boolean(_)) => true,
            (Shape::Quantity(kind), DeValue::String(text)) => match kind.check(text) {
                Ok(()) => true,
                Err(error) => self.error(
                    range,
                    Said::new(format!("`{key}`: {error}"), error.why(), error.do_this()),
                ),
            },
            (Shape::Quantity(kind), DeValue::Integer(_) | DeValue::Float(_)) => {
                let words = self
                    .source
                    .text
                    .get(range.clone())
                    .unwrap_or_default()
                    .to_owned();
                // The number that was typed, with the unit of the example where that is all it needs.
                let example = match kind.example().split_once(' ') {
                    Some((number, unit)) if !number.contains('/') => format!("{words} {unit}"),
                    _ => kind.example().to_owned(),
                };
                self.error(
                    range,
                    Said::new(
                        format!("`{key}` is the bare number {words}"),
                        "a number alone could be of several units: the unit is never guessed",
                        format!("write it in quotes with its unit, like `{key} = \"{example}\"`"),
                    ),
                )
            }
            (Shape::Choice(words), _) => self.choice(key, words, value),
            (Shape::Path, DeValue::String(text)) => self.path(key, text, range),
            (Shape::Date, DeValue::String(text)) => self.date(key, text, range),
            (Shape::Currency, DeValue::String(text)) => {
                crate::quantity::parse_money(&format!("1 {text}")).is_ok()
                    || self.error(
                        range,
                        Said::new(
                            format!("`{text}` is no currency"),
                            "a currency is its three capital letters",
                            "write it like \"EUR\"",
                        ),
                    )
            }
            (Shape::Refer(target), DeValue::String(text)) => self.refer(target, key, text, range),
            (Shape::List { of, least, most }, DeValue::Array(items)) => {
                let count = items.len();
                if count < least || count > most {
                    return self.error(
                        range,
                        Said::new(
                            format!("`{key}` holds {count}"),
                            count_wanted(least, most),
                            "add or remove some",
                        ),
                    );
                }
                let mut is_good = true;
                for item in items.iter() {
                    is_good &= self.value(key, *of, item);
                }
                is_good
            }
            (Shape::Table(table), DeValue::Table(row))
            | (Shape::OneOrMore(table, _), DeValue::Table(row)) => self.table(table, row, range),
            (Shape::OneOrMore(table, most), DeValue::Array(items)) => {
                if items.is_empty() || items.len() > most {
                    return self.error(
                        range,
                        Said::new(
                            format!("`{key}` holds {}", items.len()),
                            count_wanted(1, most),
                            "add or remove some",
                        ),
                    );
                }
                items.iter().fold(true, |good, item| {
                    let fits = match item.get_ref() {
                        DeValue::Table(row) => self.table(table, row, item.span()),
                        _ => self.wrong_type(key, Shape::Table(table), item),
                    };
                    fits && good
                })
            }
            (Shape::TextOrList(text, _), DeValue::String(_)) => self.value(key, *text, value),
            (Shape::TextOrList(_, list), DeValue::Array(_)) => self.value(key, *list, value),
            _ => self.wrong_type(key, shape, value),
        }
    }

    fn text(&mut self, key: &str, text: &str, range: Range<usize>) -> bool {
        if text.trim().is_empty() {
            return self.error(
                range,
                Said::new(
                    format!("`{key}` is empty"),
                    "an empty text says nothing",
                    "write something, or remove the line",
                ),
            );
        }
        text.chars().count() <= LONGEST_TEXT
            || self.error(
                range,
                Said::new(
                    format!("`{key}` is longer than {LONGEST_TEXT} letters"),
                    "it would not fit on any sheet",
                    "shorten it",
                ),
            )
    }

    fn wrong_format(&mut self, word: &str, text: &str, range: Range<usize>) -> bool {
        self.error(
            range,
            Said::new(
                format!("the format is `{text}`"),
                format!("this version reads `{word}`"),
                format!("write `format = \"{word}\"` if the file is in this form"),
            ),
        )
    }

    fn name(&mut self, target: Target, text: &str, range: Range<usize>) -> bool {
        match unfit_name(target, text) {
            None => true,
            Some(why) => self.error(
                range,
                Said::new(
                    format!("`{text}` cannot be the name of {}", target.with_article()),
                    why,
                    "choose another name",
                ),
            ),
        }
    }

    pub(super) fn choice(
        &mut self,
        key: &str,
        words: &[&'static str],
        value: &Spanned<DeValue<'_>>,
    ) -> bool {
        let DeValue::String(text) = value.get_ref() else {
            return self.wrong_type(key, Shape::Text, value);
        };
        if words.contains(&text.as_ref()) {
            return true;
        }
        let meant = nearest(text, words.iter().copied());
        self.error(
            value.span(),
            Said::new(
                format!("`{key}` is `{text}`"),
                format!("it is one of: {}", words.join(", ")),
                meant.as_ref().map_or_else(
                    || "write one of these words".to_owned(),
                    |meant| format!("write \"{meant}\""),
                ),
            )
            .meant(meant),
        )
    }

    fn path(&mut self, key: &str, text: &str, range: Range<usize>) -> bool {
        let is_inside = !text.is_empty()
            && text.len() <= 250
            && !text.contains(['\\', ':', '\0'])
            && text
                .split('/')
                .all(|part| !part.is_empty() && part != "." && part != "..");
        is_inside
            || self.error(
                range,
                Said::new(
                    format!("`{key}` is no path inside the build folder"),
                    "the folder is complete in itself, so that it can be kept and copied",
                    "copy the file under scans/ and write it like \"scans/floor.stl\"",
                ),
            )
    }

    fn date(&mut self, key: &str, text: &str, range: Range<usize>) -> bool {
        is_date(text)
            || self.error(
                range,
                Said::new(
                    format!("`{key}` is no date"),
                    "a date is year, month and day",
                    "write it like \"2026-03-02\"",
                ),
            )
    }

    fn refer(&mut self, target: Target, key: &str, text: &str, range: Range<usize>) -> bool {
        if target == Target::Carrier && text == CHASSIS {
            return true;
        }
        if self.names.find(target, text).is_some() {
            return true;
        }
        if !self.names.has_home(target) {
            let home = home_file(target);
            self.problems.hint(
                self.source,
                range,
                Said::new(
                    format!("`{key}`: `{text}` cannot be looked up"),
                    format!("there is no {home}, where it would stand"),
                    format!("write {home} when you come to it; until then this is left out"),
                ),
            );
            return false;
        }
        let meant = self.names.nearest(target, text);
        let why = self.names.elsewhere(text).map_or_else(
            || format!("it should stand under {}", target.home()),
            |other| {
                format!(
                    "`{text}` is {}; here stands {}",
                    other.with_article(),
                    target.with_article()
                )
            },
        );
        let do_this = meant.as_ref().map_or_else(
            || format!("add it under {}, or correct the name", target.home()),
            |meant| format!("write \"{meant}\", or add `{text}` under {}", target.home()),
        );
        self.error(
            range,
            Said::new(
                format!("`{key}`: there is no {} named `{text}`", target.words()),
                why,
                do_this,
            )
            .meant(meant),
        )
    }

    pub(in crate::read) fn wrong_type(
        &mut self,
        key: &str,
        shape: Shape,
        value: &Spanned<DeValue<'_>>,
    ) -> bool {
        let got = match value.get_ref() {
            DeValue::String(_) => "text",
            DeValue::Integer(_) => "a whole number",
            DeValue::Float(_) => "a number",
            DeValue::Boolean(_) => "true or false",
            DeValue::Datetime(_) => "a date without quotes",
            DeValue::Array(_) => "a list",
            DeValue::Table(_) => "a table",
        };
        let (wanted, example) = wanted(shape);
        self.error(
            value.span(),
            Said::new(
                format!("`{key}` is {got}"),
                format!("{wanted} is wanted here"),
                format!("write it like `{key} = {example}`"),
            ),
        )
    }
}
