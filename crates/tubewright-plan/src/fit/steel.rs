//! What the record says of the steel.

use std::collections::{BTreeMap, BTreeSet};
use tubewright_build::model::{EntryKind, JointReading, Shop};

/// The state of the steel after every entry of the record.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Steel {
    /// Marks of pieces that are cut and good, with the item or the thing on hand that they came from.
    pub cut: BTreeMap<String, String>,
    /// Pieces that were spoiled, with what they came from when that is known, in order.
    pub spoiled: Vec<(String, Option<String>)>,
    /// Joints that are tacked or welded.
    pub standing: BTreeSet<String>,
    /// Joints that are welded.
    pub welded: BTreeSet<String>,
    /// The latest readings at each joint that has some.
    pub readings: BTreeMap<String, Vec<JointReading>>,
    /// Pieces of each item that were bought and brought home.
    pub got: BTreeMap<String, u32>,
    /// Items that a supplier is out of, with the supplier when one is named.
    pub out: BTreeSet<(String, Option<String>)>,
}

impl Steel {
    /// Reads the record.
    #[must_use]
    pub fn of(shop: &Shop) -> Self {
        let mut steel = Self::default();
        for entry in &shop.entries {
            steel.note(&entry.what);
        }
        steel
    }

    fn note(&mut self, what: &EntryKind) {
        match what {
            EntryKind::Got { item, count, .. } => self.bring(item, *count),
            EntryKind::OtherSize { taken, count, .. } => self.bring(taken, *count),
            EntryKind::Out { item, supplier } => {
                self.out
                    .insert((item.to_string(), supplier.as_ref().map(ToString::to_string)));
            }
            EntryKind::Cut { piece, from } => {
                self.cut.insert(piece.clone(), from.to_string());
            }
            EntryKind::Spoiled { piece, .. } => {
                let from = self.cut.remove(piece);
                self.spoiled.push((piece.clone(), from));
            }
            EntryKind::Tacked { joint, readings } | EntryKind::Checked { joint, readings } => {
                if matches!(what, EntryKind::Tacked { .. }) {
                    self.standing.insert(joint.clone());
                }
                if !readings.is_empty() {
                    self.readings.insert(joint.clone(), readings.clone());
                }
            }
            EntryKind::Welded { joint } => {
                self.standing.insert(joint.clone());
                self.welded.insert(joint.clone());
            }
            _ => {}
        }
    }

    fn bring(&mut self, item: &str, count: u32) {
        let got = self.got.entry(item.to_owned()).or_insert(0);
        *got = got.saturating_add(count);
        // What was brought home is not out any more.
        self.out.retain(|(out, _)| out != item);
    }

    /// Whether a piece is cut and good.
    #[must_use]
    pub fn is_cut(&self, mark: &str) -> bool {
        self.cut.contains_key(mark)
    }
}
