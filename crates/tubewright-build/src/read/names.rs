//! The names that the files declare, and looking them up.

use super::home_file;
use super::source::{Problems, Said, Source};
use crate::keys::{Shape, Table, Target};
use crate::span::FileKind;
use core::ops::Range;
use std::collections::{BTreeMap, BTreeSet};
use toml::de::{DeTable, DeValue};

/// The carrier that is always there.
pub(crate) const CHASSIS: &str = "chassis";
/// Longest name in letters.
const LONGEST: usize = 100;

/// All declared names by kind.
#[derive(Default)]
pub(crate) struct Names {
    files: BTreeSet<FileKind>,
    declared: BTreeMap<Target, BTreeSet<String>>,
}

/// What a reference's text turned out to name.
pub(crate) struct Found<'t> {
    pub(crate) target: Target,
    pub(crate) name: &'t str,
    /// What follows the full stop of `X.L`.
    pub(crate) side: Option<&'t str>,
}

impl Names {
    /// Says that a file is there.
    pub(crate) fn add_file(&mut self, file: FileKind) {
        self.files.insert(file);
    }

    /// Whether the file that declares such names is there.
    pub(crate) fn has_home(&self, target: Target) -> bool {
        self.files.contains(&home_file(target))
    }

    pub(crate) fn has(&self, target: Target, name: &str) -> bool {
        self.declared
            .get(&target)
            .is_some_and(|names| names.contains(name))
    }

    /// Looks a reference up; `None` when nothing of the kinds it may name has this name.
    pub(crate) fn find<'t>(&self, target: Target, text: &'t str) -> Option<Found<'t>> {
        let whole = target
            .declared()
            .iter()
            .find(|&&kind| self.has(kind, text))
            .map(|&kind| Found {
                target: kind,
                name: text,
                side: None,
            });
        if whole.is_none() && target == Target::Piece {
            // The legs that stay on a half of a crossover made by hand carry its mark with a letter behind.
            let half = text.strip_suffix(['a', 'b'])?;
            return self.has(Target::Piece, half).then_some(Found {
                target,
                name: text,
                side: None,
            });
        }
        if whole.is_some() || !matches!(target, Target::RunEnd | Target::Through) {
            return whole;
        }
        let (name, side) = text.rsplit_once('.')?;
        self.has(Target::Component, name).then_some(Found {
            target: Target::Component,
            name,
            side: Some(side),
        })
    }

    /// The declared name nearest to `text` among those that the reference may name.
    pub(crate) fn nearest(&self, target: Target, text: &str) -> Option<String> {
        let candidates = target
            .declared()
            .iter()
            .filter_map(|kind| self.declared.get(kind))
            .flat_map(|names| names.iter().map(String::as_str));
        if matches!(target, Target::RunEnd | Target::Through)
            && let Some((name, side)) = text.rsplit_once('.')
        {
            return nearest(name, candidates).map(|near| format!("{near}.{side}"));
        }
        nearest(text, candidates)
    }

    /// Another kind that has this name, for the message.
    pub(crate) fn elsewhere(&self, text: &str) -> Option<Target> {
        self.declared
            .iter()
            .find(|(_, names)| names.contains(text))
            .map(|(kind, _)| *kind)
    }

    /// Takes up the names that one file declares in its lists of tables, and reports doubles.
    pub(crate) fn collect(
        &mut self,
        table: &'static Table,
        de: &DeTable<'_>,
        source: &Source<'_>,
        problems: &mut Problems,
    ) {
        for key in table.keys {
            let Shape::List {
                of: Shape::Table(element),
                ..
            } = key.shape
            else {
                continue;
            };
            let Some(DeValue::Array(elements)) = de.get(key.name).map(|value| value.get_ref())
            else {
                continue;
            };
            for item in elements.iter() {
                let DeValue::Table(row) = item.get_ref() else {
                    continue;
                };
                self.collect_row(element, row, source, problems);
            }
        }
    }

    fn collect_row(
        &mut self,
        table: &'static Table,
        row: &DeTable<'_>,
        source: &Source<'_>,
        problems: &mut Problems,
    ) {
        let word = table
            .kinds
            .as_ref()
            .and_then(|kinds| row.get(kinds.key))
            .and_then(|value| value.get_ref().as_str());
        let variant = word.and_then(|word| table.variant(word));
        let keys = table
            .keys
            .iter()
            .chain(variant.map_or(&[][..], |variant| variant.keys));
        for key in keys {
            let Some(value) = row.get(key.name) else {
                continue;
            };
            match (key.shape, value.get_ref()) {
                (Shape::Name(target), DeValue::String(name)) => {
                    self.declare(target, name, value.span(), source, problems);
                }
                // Pieces and joints are declared in the lists of an entry.
                (
                    Shape::List {
                        of: Shape::Table(element),
                        ..
                    },
                    DeValue::Array(elements),
                ) => {
                    let mut marks = BTreeSet::new();
                    for item in elements.iter() {
                        if let DeValue::Table(row) = item.get_ref() {
                            one_mark_each(element, row, &mut marks, source, problems);
                            self.collect_row(element, row, source, problems);
                        }
                    }
                }
                _ => {}
            }
        }
    }

    fn declare(
        &mut self,
        target: Target,
        name: &str,
        range: Range<usize>,
        source: &Source<'_>,
        problems: &mut Problems,
    ) {
        // A later entry of the record speaks of the same pieces and joints again.
        let is_repeated = matches!(target, Target::Piece | Target::Joint);
        let rival = rivals(target).find(|&kind| self.has(kind, name));
        if let (Some(rival), false) = (rival, is_repeated) {
            problems.error(
                source,
                range,
                Said::new(
                    format!("{} is named `{name}` already", rival.with_article()),
                    "everything refers by name, so two of one name cannot be told apart",
                    "give one of the two another name",
                ),
            );
            return;
        }
        if target == Target::Carrier && name == CHASSIS {
            problems.error(
                source,
                range,
                Said::new(
                    "the carrier `chassis` exists already",
                    "the chassis is what everything else is measured from; it does not move",
                    "remove this carrier, or give it another name",
                ),
            );
            return;
        }
        self.declared
            .entry(target)
            .or_default()
            .insert(name.to_owned());
    }
}

/// Within one plan every piece has a mark of its own: it is painted on steel.
fn one_mark_each(
    table: &'static Table,
    row: &DeTable<'_>,
    marks: &mut BTreeSet<String>,
    source: &Source<'_>,
    problems: &mut Problems,
) {
    let named = table
        .keys
        .iter()
        .filter(|key| matches!(key.shape, Shape::Name(Target::Piece)))
        .filter_map(|key| row.get(key.name));
    for value in named {
        if let Some(mark) = value.get_ref().as_str()
            && !marks.insert(mark.to_owned())
        {
            problems.error(
                source,
                value.span(),
                Said::new(
                    format!("piece `{mark}` stands twice in one plan"),
                    "the mark is painted on the steel; two pieces of one mark cannot be told apart",
                    "give one of the two a mark that was never used",
                ),
            );
        }
    }
}

/// Why a text cannot be a name; `None` when it can.
pub(crate) fn unfit_name(target: Target, name: &str) -> Option<&'static str> {
    if name.trim().is_empty() {
        Some("it is empty")
    } else if name.trim() != name {
        Some("it starts or ends with a space, which no eye can see")
    } else if name.chars().any(char::is_control) {
        Some("it holds a line break or another control character")
    } else if name.chars().count() > LONGEST {
        Some("it is longer than 100 letters and would not fit on a sheet")
    } else if target == Target::Component && name.contains('.') {
        Some("it holds a full stop, and X.L means side L of component X")
    } else {
        None
    }
}

/// The candidate nearest to `text`, when it is near enough to be a slip.
pub(crate) fn nearest<'c>(text: &str, candidates: impl Iterator<Item = &'c str>) -> Option<String> {
    let wanted = text.to_lowercase();
    let length = wanted.chars().count();
    let most = (length / 3).clamp(1, 4);
    candidates
        .map(|candidate| {
            let lower = candidate.to_lowercase();
            let distance =
                if lower.replace(['-', '_', ' '], "") == wanted.replace(['-', '_', ' '], "") {
                    0
                } else {
                    strsim::damerau_levenshtein(&wanted, &lower)
                };
            (distance, candidate)
        })
        .filter(|(distance, _)| *distance <= most && *distance < length.max(1))
        .min()
        .map(|(_, candidate)| candidate.to_owned())
}

/// Kinds of which some reference may name either, so that one name cannot serve both.
pub(crate) fn rivals(target: Target) -> impl Iterator<Item = Target> {
    let shared: &[Target] = match target {
        Target::Mark | Target::Point => &[Target::Mark, Target::Point, Target::End],
        Target::End => &[Target::Mark, Target::Point, Target::End, Target::Component],
        Target::Component => &[Target::Component, Target::End],
        Target::Item | Target::OnHand => &[Target::Item, Target::OnHand],
        _ => &[],
    };
    shared
        .iter()
        .copied()
        .chain(shared.is_empty().then_some(target))
}
