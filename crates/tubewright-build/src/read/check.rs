//! Holds the spanned tables of a file against the declared keys and reports everything that does
//! not fit, in one go.

mod plain;
mod value;

pub(crate) use plain::{is_date, number};

use super::names::{Names, nearest};
use super::source::{Problems, Said, Source};
use crate::keys::{Rule, Table, Variant};
use core::ops::Range;
use toml::Spanned;
use toml::de::DeTable;

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
}

fn lower_first(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| {
        first.to_lowercase().chain(chars).collect()
    })
}
