//! Short marks that are painted on steel: a letter of the run and a number, J and a number for
//! joints. A mark is given once and never reused, so numbering goes on after the highest that the
//! shop's record holds.

use std::collections::BTreeMap;
use tubewright_build::model::{EntryKind, Shop};

/// Gives marks.
#[derive(Clone, Debug, Default)]
pub struct MarkGiver {
    letters: BTreeMap<String, char>,
    highest: BTreeMap<char, u32>,
}

/// The letter of joints.
const JOINT: char = 'J';

impl MarkGiver {
    /// A giver that knows every mark in the record and the letter of every run, in the build's order.
    #[must_use]
    pub fn after(shop: &Shop, run_names: &[&str]) -> Self {
        let mut giver = Self::default();
        for entry in &shop.entries {
            giver.see_entry(&entry.what);
        }
        for &run in run_names {
            giver.letter_of(run);
        }
        giver
    }

    fn see_entry(&mut self, what: &EntryKind) {
        match what {
            EntryKind::Chosen { pieces, .. } | EntryKind::Accepted { pieces, .. } => {
                for piece in pieces {
                    self.see(&piece.mark);
                    if let Some(letter) = piece.mark.chars().next() {
                        self.letters.entry(piece.run.to_string()).or_insert(letter);
                    }
                    if let Some(joint) = &piece.joint {
                        self.see(joint);
                    }
                }
            }
            EntryKind::Cut { piece, .. } | EntryKind::Spoiled { piece } => self.see(piece),
            EntryKind::Tacked { joint, .. }
            | EntryKind::Welded { joint }
            | EntryKind::Checked { joint, .. } => self.see(joint),
            _ => {}
        }
    }

    /// Takes note of a mark that is given already.
    pub fn see(&mut self, mark: &str) {
        let mut characters = mark.chars();
        let Some(letter) = characters.next() else {
            return;
        };
        if let Ok(number) = characters.as_str().parse::<u32>() {
            let highest = self.highest.entry(letter).or_insert(0);
            *highest = (*highest).max(number);
        }
    }

    /// The run's letter: the first of its name that is free, else the first free of the alphabet.
    fn letter_of(&mut self, run: &str) -> char {
        if let Some(&letter) = self.letters.get(run) {
            return letter;
        }
        let is_free = |letter: char| {
            // I and O are read as 1 and 0 on painted steel; J is for joints.
            !matches!(letter, JOINT | 'I' | 'O')
                && !self.letters.values().any(|&taken| taken == letter)
        };
        let of_name = run
            .chars()
            .filter(char::is_ascii_alphabetic)
            .map(|c| c.to_ascii_uppercase());
        let letter = of_name
            .chain('A'..='Z')
            .find(|&letter| is_free(letter))
            .unwrap_or('P');
        self.letters.insert(run.to_owned(), letter);
        letter
    }

    fn next(&mut self, letter: char) -> String {
        let highest = self.highest.entry(letter).or_insert(0);
        *highest += 1;
        format!("{letter}{highest}")
    }

    /// The next mark for a piece of this run.
    pub fn piece(&mut self, run: &str) -> String {
        let letter = self.letter_of(run);
        self.next(letter)
    }

    /// The next mark for a joint.
    pub fn joint(&mut self) -> String {
        self.next(JOINT)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tubewright_build::model::Entry;

    fn entry(what: EntryKind) -> Entry {
        Entry {
            on: "2026-01-01".to_owned(),
            what,
            note: None,
            span: tubewright_build::Span::none(),
        }
    }

    #[test]
    fn a_mark_on_spoiled_steel_is_never_given_again() {
        let shop = Shop {
            entries: vec![
                entry(EntryKind::Spoiled {
                    piece: "L7".to_owned(),
                }),
                entry(EntryKind::Welded {
                    joint: "J3".to_owned(),
                }),
            ],
        };
        let mut giver = MarkGiver::after(&shop, &["left bank", "right bank"]);
        assert_eq!(giver.piece("left bank"), "L8");
        assert_eq!(giver.piece("right bank"), "R1");
        assert_eq!(giver.joint(), "J4");
    }

    #[test]
    fn runs_of_one_initial_or_another_script_get_letters_of_their_own() {
        let mut giver = MarkGiver::after(&Shop::default(), &["left", "lower", "左", "joint"]);
        let marks: Vec<_> = ["left", "lower", "左", "joint"]
            .map(|run| giver.piece(run))
            .into();
        assert_eq!(
            marks,
            ["L1", "W1", "A1", "N1"],
            "o is not used: it reads as a nought"
        );
    }
}
