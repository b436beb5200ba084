//! Holds the spanned tables of a file against the declared keys and reports everything that does
//! not fit, in one go.

use super::home_file;
use super::names::{CHASSIS, Names, nearest, unfit_name};
use super::source::{Problems, Said, Source};
use crate::keys::{Rule, Shape, Table, Target, Variant};
use core::ops::Range;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// Longest text in letters that is kept.
const LONGEST_TEXT: usize = 4000;

pub(crate) struct Checker<'a> {
    pub(crate) source: &'a Source<'a>,
    pub(crate) names: &'a Names,
    pub(crate) problems: &'a mut Problems,
}

/// `reading 14`, `body \`left rail\``, `frame`: how a table is called in messages.
pub(crate) fn label(table: &Table, row: &DeTable<'_>) -> String {
    let text = |key: &str| row.get(key).and_then(|value| value.get_ref().as_str());
    if let Some(name) = text("name").or_else(|| text("mark")) {
        return format!("{} `{name}`", table.title);
    }
    let number = row
        .get("number")
        .and_then(|value| value.get_ref().as_integer());
    if let Some(number) = number {
        return format!("{} {number}", table.title);
    }
    let about = [("item", "for"), ("what", "of kind"), ("on", "of")];
    for (key, joining) in about {
        if let Some(text) = text(key) {
            return format!("{} {joining} `{text}`", table.title);
        }
    }
    table.title.to_owned()
}

impl Checker<'_> {
    pub(super) fn error(&mut self, range: Range<usize>, said: Said) -> bool {
        self.problems.error(self.source, range, said);
        false
    }

    /// Checks a table; true when nothing in it is wrong. `header` is where missing keys are told.
    pub(crate) fn table(
        &mut self,
        table: &'static Table,
        row: &DeTable<'_>,
        header: Range<usize>,
    ) -> bool {
        let label = label(table, row);
        let mut is_good = true;
        let mut variant = None;
        if let Some(kinds) = &table.kinds {
            match row.get(kinds.key) {
                None => {
                    is_good = self.missing(&label, kinds.key, kinds.about, header.clone());
                }
                Some(value) => {
                    let words = table.kind_words();
                    is_good &= self.choice(kinds.key, &words, value);
                    variant = value
                        .get_ref()
                        .as_str()
                        .and_then(|word| table.variant(word));
                }
            }
        }
        for (name, value) in row.iter() {
            if table
                .kinds
                .as_ref()
                .is_some_and(|k| k.key == name.get_ref())
            {
                continue;
            }
            match table.key(name.get_ref(), variant) {
                Some(key) => is_good &= self.value(key.name, key.shape, value),
                None => is_good &= self.unknown(table, &label, variant, name),
            }
        }
        let required = table
            .keys
            .iter()
            .chain(variant.map_or(&[][..], |variant| variant.keys))
            .filter(|key| key.is_required && row.get(key.name).is_none());
        for key in required {
            is_good &= self.missing(&label, key.name, key.about, header.clone());
        }
        let rules = table
            .rules
            .iter()
            .chain(variant.map_or(&[][..], |variant| variant.rules));
        for rule in rules {
            is_good &= self.rule(*rule, &label, row, header.clone());
        }
        is_good
    }

    pub(super) fn missing(
        &mut self,
        label: &str,
        key: &str,
        about: &str,
        header: Range<usize>,
    ) -> bool {
        self.error(
            header,
            Said::new(
                format!("{label} has no `{key}`"),
                format!("it is needed: {}", lower_first(about)),
                format!("add a line `{key} = …`"),
            ),
        )
    }

    pub(super) fn unknown(
        &mut self,
        table: &'static Table,
        label: &str,
        variant: Option<&'static Variant>,
        name: &Spanned<std::borrow::Cow<'_, str>>,
    ) -> bool {
        let key = name.get_ref().as_ref();
        let range = name.span();
        let elsewhere = table.kinds.as_ref().and_then(|kinds| {
            kinds
                .of
                .iter()
                .find(|other| other.keys.iter().any(|k| k.name == key))
        });
        if let (Some(other), Some(_)) = (elsewhere, variant) {
            let words = other.words.join(", ");
            return self.error(
                range,
                Said::new(
                    format!("`{key}` does not apply to {label}"),
                    format!("it belongs to {} of kind {words}", table.title),
                    "remove the line, or change the kind",
                ),
            );
        }
        if elsewhere.is_some() {
            // The kind itself is wrong and told already.
            return false;
        }
        let known: Vec<&str> = table
            .keys
            .iter()
            .chain(variant.map_or(&[][..], |variant| variant.keys))
            .map(|key| key.name)
            .chain(table.kinds.as_ref().map(|kinds| kinds.key))
            .collect();
        let meant = nearest(key, known.iter().copied());
        let listed = format!("the keys are {}", known.join(", "));
        self.error(
            range,
            Said::new(
                format!("{label} has no key `{key}`"),
                "a key that nothing reads would be lost without a word",
                meant.as_ref().map_or_else(
                    || format!("remove the line; {listed}"),
                    |meant| format!("write `{meant}`, or remove the line"),
                ),
            )
            .meant(meant),
        )
    }

    fn rule(&mut self, rule: Rule, label: &str, row: &DeTable<'_>, header: Range<usize>) -> bool {
        let range = |key: &str| row.get_key_value(key).map(|(name, _)| name.span());
        match rule {
            Rule::OneOf(keys) => {
                let present: Vec<_> = keys.iter().filter_map(|key| range(key)).collect();
                let listed = keys.join("` or `");
                match present.as_slice() {
                    [_] => true,
                    [] => self.error(
                        header,
                        Said::new(
                            format!("{label} has neither `{listed}`").replace("` or `", "` nor `"),
                            "one of them is needed",
                            format!("add `{listed}`"),
                        ),
                    ),
                    [.., last] => self.error(
                        last.clone(),
                        Said::new(
                            format!("{label} has both `{listed}`").replace("` or `", "` and `"),
                            "they say the same thing and could contradict each other",
                            "keep one of them",
                        ),
                    ),
                }
            }
            Rule::Needs(key, other) => match (range(key), range(other)) {
                (Some(at), None) => self.error(
                    at,
                    Said::new(
                        format!("{label} has `{key}` without `{other}`"),
                        "the one means nothing without the other",
                        format!("add `{other} = …`, or remove `{key}`"),
                    ),
                ),
                _ => true,
            },
            Rule::WordNeeds(key, word, other) => {
                let says = row.get(key).and_then(|value| value.get_ref().as_str()) == Some(word);
                match (says, range(other), range(key)) {
                    (true, None, Some(at)) => self.error(
                        at,
                        Said::new(
                            format!("{label} has `{key} = \"{word}\"` without `{other}`"),
                            "each set-up has its own plumb line, so it must be said which",
                            format!("add `{other} = …`"),
                        ),
                    ),
                    _ => true,
                }
            }
            Rule::NotBoth(a, b) => match (range(a), range(b)) {
                (Some(_), Some(at)) => self.error(
                    at,
                    Said::new(
                        format!("{label} has both `{a}` and `{b}`"),
                        "they contradict each other",
                        "keep one of them",
                    ),
                ),
                _ => true,
            },
        }
    }

    pub(super) fn value(&mut self, key: &str, shape: Shape, value: &Spanned<DeValue<'_>>) -> bool {
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
                    format!("`{text}` cannot be the name of a {}", target.words()),
                    why,
                    "choose another name",
                ),
            ),
        }
    }

    fn choice(&mut self, key: &str, words: &[&'static str], value: &Spanned<DeValue<'_>>) -> bool {
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
                    "`{text}` is a {}; here stands a {}",
                    other.words(),
                    target.words()
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

    pub(super) fn wrong_type(
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

/// A finite plain number, at most a million either way.
pub(crate) fn number(value: &Spanned<DeValue<'_>>) -> Option<f64> {
    let number: f64 = match value.get_ref() {
        DeValue::Integer(whole) if whole.radix() == 10 => whole.as_str().parse().ok()?,
        DeValue::Float(float) => float.as_str().parse().ok()?,
        _ => return None,
    };
    (number.is_finite() && number.abs() <= 1e6).then_some(number)
}

/// Whether a text is a date of the calendar, year-month-day.
pub(crate) fn is_date(text: &str) -> bool {
    let bytes = text.as_bytes();
    let shaped = bytes.len() == 10
        && bytes.iter().enumerate().all(|(at, byte)| match at {
            4 | 7 => *byte == b'-',
            _ => byte.is_ascii_digit(),
        });
    if !shaped {
        return false;
    }
    let part = |range: Range<usize>| text.get(range).and_then(|part| part.parse::<u32>().ok());
    let (Some(year), Some(month), Some(day)) = (part(0..4), part(5..7), part(8..10)) else {
        return false;
    };
    let is_leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let days = match month {
        2 if is_leap => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => 0,
    };
    (1..=days).contains(&day)
}

fn wanted(shape: Shape) -> (String, String) {
    let said = |wanted: &str, example: &str| (wanted.to_owned(), example.to_owned());
    match shape {
        Shape::Whole { least, .. } => said("a whole number without quotes", &least.to_string()),
        Shape::Number => said("a number without quotes", "12.5"),
        Shape::Yes => said("true or false without quotes", "true"),
        Shape::Quantity(kind) => (
            "text with a unit".to_owned(),
            format!("\"{}\"", kind.example()),
        ),
        Shape::Date => said("a date in quotes", "\"2026-03-02\""),
        Shape::List { .. } => said("a list in brackets", "[ …, … ]"),
        Shape::Table(_) | Shape::OneOrMore(..) => said("a table in braces", "{ … }"),
        Shape::TextOrList(..) => said("text or a list", "[ …, … ]"),
        _ => said("text in quotes", "\"…\""),
    }
}

fn count_wanted(least: usize, most: usize) -> String {
    if least == most {
        format!("exactly {least} are wanted")
    } else if least == 0 {
        format!("at most {most} are taken")
    } else {
        format!("from {least} to {most} are wanted")
    }
}

fn lower_first(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| {
        first.to_lowercase().chain(chars).collect()
    })
}
