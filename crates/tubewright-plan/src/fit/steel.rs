//! What the record says of the steel.

use std::collections::{BTreeMap, BTreeSet};
use tubewright_build::model::{
    CutGives, CutOf, CutPlace, EntryKind, JointFace, JointReading, Shop,
};
use tubewright_build::quantity::{Quantity, write_deg, write_mm};
use tubewright_geometry::{Angle, Length};
use tubewright_stock::{CutPart, PartPlace, Sawn, Serves, SteelRecord, StockEnd};

/// The state of the steel after every entry of the record.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Steel {
    /// Marks of pieces that are cut and good, those that the leg of a cut bend serves with them, with
    /// the item or the thing on hand that they came from.
    pub cut: BTreeMap<String, String>,
    /// Pieces that were spoiled, in order.
    pub spoiled: Vec<String>,
    /// Every part that was sawn, what was brought home and what is out.
    pub record: SteelRecord,
    /// Joints that are tacked or welded.
    pub standing: BTreeSet<String>,
    /// Joints that are welded.
    pub welded: BTreeSet<String>,
    /// The latest readings at each joint that has some.
    pub readings: BTreeMap<String, Vec<JointReading>>,
    /// The slopes of its face that were read with them.
    pub faces: BTreeMap<String, Vec<JointFace>>,
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
                let by = supplier.as_ref().map(ToString::to_string);
                self.record.out.insert((item.to_string(), by));
            }
            EntryKind::Cut { piece, from, of } => self.saw(piece, from, of.as_ref()),
            EntryKind::Spoiled { piece } => self.spoil(piece),
            EntryKind::Tacked {
                joint,
                readings,
                faces,
            }
            | EntryKind::Checked {
                joint,
                readings,
                faces,
            } => {
                if matches!(what, EntryKind::Tacked { .. }) {
                    self.standing.insert(joint.clone());
                }
                if !readings.is_empty() {
                    self.readings.insert(joint.clone(), readings.clone());
                    self.faces.insert(joint.clone(), faces.clone());
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
        let got = self.record.brought.entry(item.to_owned()).or_insert(0);
        *got = got.saturating_add(count);
        // What was brought home is not out any more.
        self.record.out.retain(|(out, _)| out != item);
    }

    fn saw(&mut self, piece: &str, from: &str, of: Option<&CutOf>) {
        let sawn = Sawn {
            from: from.to_owned(),
            of: of.map(|of| (of.number, part_of(of))),
            mark: piece.to_owned(),
            is_good: true,
        };
        for mark in marks_of(&sawn) {
            self.cut.insert(mark, from.to_owned());
        }
        self.record.sawn.push(sawn);
    }

    /// The last good part that is this piece is spoiled, and what else it is with it.
    fn spoil(&mut self, piece: &str) {
        self.spoiled.push(piece.to_owned());
        // One that was ticked by this mark, before one that is this piece too.
        let good = |sawn: &Sawn| sawn.is_good && marks_of(sawn).iter().any(|mark| mark == piece);
        let sawn = &self.record.sawn;
        let last = sawn
            .iter()
            .rposition(|sawn| sawn.is_good && sawn.mark == piece)
            .or_else(|| sawn.iter().rposition(good));
        let Some(last) = last.and_then(|at| self.record.sawn.get_mut(at)) else {
            return;
        };
        last.is_good = false;
        let gone = marks_of(last);
        let still: BTreeSet<String> = self
            .record
            .sawn
            .iter()
            .filter(|sawn| sawn.is_good)
            .flat_map(marks_of)
            .collect();
        for mark in gone.iter().filter(|mark| !still.contains(*mark)) {
            self.cut.remove(mark);
        }
    }

    /// Pieces that were spoiled and are not cut again, in the order in which they were.
    #[must_use]
    pub fn to_remake(&self) -> Vec<&str> {
        let mut pieces: Vec<&str> = Vec::new();
        for piece in &self.spoiled {
            if !self.is_cut(piece) && !pieces.contains(&piece.as_str()) {
                pieces.push(piece);
            }
        }
        pieces
    }

    /// Whether a piece is cut and good.
    #[must_use]
    pub fn is_cut(&self, mark: &str) -> bool {
        self.cut.contains_key(mark)
    }
}

/// Marks of the pieces that a sawn part is.
fn marks_of(sawn: &Sawn) -> Vec<String> {
    match &sawn.of {
        Some((_, part)) => part
            .serves
            .iter()
            .map(|serves| serves.mark.clone())
            .collect(),
        None => vec![sawn.mark.clone()],
    }
}

fn part_of(of: &CutOf) -> CutPart {
    let serves: Vec<Serves> = of
        .gives
        .iter()
        .map(|gives| Serves {
            mark: gives.piece.clone(),
            length: gives
                .length
                .as_ref()
                .map_or(Length::ZERO, |length| length.value),
        })
        .collect();
    let leg = |end, at: &Quantity<Length>, length: &Quantity<Length>| PartPlace::Leg {
        end,
        start: at.value,
        length: length.value,
    };
    let place = match &of.place {
        CutPlace::Straight { at, length } => PartPlace::Bar {
            start: at.value,
            length: length.value,
        },
        CutPlace::LegA { at, length } => leg(StockEnd::A, at, length),
        CutPlace::LegB { at, length } => leg(StockEnd::B, at, length),
        CutPlace::Bend { at, angle, legs } => PartPlace::Arc {
            start: at.value,
            sweep: angle.value,
            keeps_a: legs[0].value,
            keeps_b: legs[1].value,
        },
    };
    CutPart {
        is_reversed: is_reversed(&serves, place),
        serves,
        place,
    }
}

/// A bend lies turned round in its item when what its upstream end keeps is the leg at end B.
fn is_reversed(serves: &[Serves], place: PartPlace) -> bool {
    let PartPlace::Arc {
        keeps_a, keeps_b, ..
    } = place
    else {
        return false;
    };
    let upstream: f64 = serves
        .iter()
        .take_while(|serves| serves.length.mm() > 0.0)
        .map(|serves| serves.length.mm())
        .sum();
    (upstream - keeps_a.mm()).abs() > 1e-6 && (upstream - keeps_b.mm()).abs() < 1e-6
}

/// Places are kept to a thousandth, as the planner counts them.
const DECIMALS: usize = 3;

/// The entry of the record for a part that was sawn.
#[must_use]
pub fn cut_entry(sawn: &Sawn) -> EntryKind {
    let length = |length: Length| Quantity::new(length, write_mm(length, DECIMALS));
    let angle = |angle: Angle| Quantity::new(angle, write_deg(angle, DECIMALS));
    EntryKind::Cut {
        piece: sawn.mark.clone(),
        from: tubewright_build::model::Name::new(&sawn.from),
        of: sawn.of.as_ref().map(|(number, part)| CutOf {
            number: *number,
            gives: part
                .serves
                .iter()
                .map(|serves| CutGives {
                    piece: serves.mark.clone(),
                    length: (serves.length.mm() > 0.0).then(|| length(serves.length)),
                })
                .collect(),
            place: match part.place {
                PartPlace::Bar { start, length: l } => CutPlace::Straight {
                    at: length(start),
                    length: length(l),
                },
                PartPlace::Leg {
                    end,
                    start,
                    length: l,
                } => {
                    let (at, length) = (length(start), length(l));
                    match end {
                        StockEnd::A => CutPlace::LegA { at, length },
                        StockEnd::B => CutPlace::LegB { at, length },
                    }
                }
                PartPlace::Arc {
                    start,
                    sweep,
                    keeps_a,
                    keeps_b,
                } => CutPlace::Bend {
                    at: angle(start),
                    angle: angle(sweep),
                    legs: [length(keeps_a), length(keeps_b)],
                },
            },
        }),
    }
}
