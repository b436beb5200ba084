//! The cut card of one stock item.

use tubewright_geometry::{Angle, Length};

use super::sequence::in_sequence;
use crate::item::{StockPiece, StockShape};
use crate::plan::{CutPart, CutStock, PartPlace, Source, StockEnd, StockPlan};
use crate::rules::ShopRules;

/// How far a cut lies from a physical end of the uncut item, along the lines that a tape can follow.
/// On a straight all four are the same.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    /// Along the back of the bend, through the leg and round the arc.
    pub outside: Length,
    /// Along the inner side.
    pub inside: Length,
    /// Along the side, halfway between: the same as the centre line.
    pub side: Length,
    /// Along the centre line, which no tape can follow.
    pub centre_line: Length,
}

/// On which side of the mark the saw takes its kerf: the mark itself is the face of a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KerfSide {
    /// Toward end A of the item.
    TowardA,
    /// Toward end B.
    TowardB,
}

/// One saw cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// In the order of sawing, from 1.
    pub number: u32,
    /// The physical end that the tape starts from.
    pub from: StockEnd,
    /// Where the mark lies.
    pub reach: Reach,
    /// Where the kerf goes.
    pub kerf: KerfSide,
    /// Of the saw from square across the tube; zero is square. In a bend the blade lies in the
    /// plane through the bend's axis.
    pub angle: Angle,
    /// Marks of the parts whose face this cut makes.
    pub faces: Vec<String>,
    /// Longer side of what is in the saw at this cut, along the centre line: what it can hold.
    pub held: Length,
}

/// What is wrong with a cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SawTrouble {
    /// Neither side is long enough for the saw to hold.
    CannotHold {
        /// The longer side.
        held: Length,
        /// Least that it holds.
        least: Length,
    },
    /// The tube is larger than the saw takes.
    TooLarge {
        /// Outside diameter.
        od: Length,
        /// Most that it takes.
        capacity: Length,
    },
}

/// A cut that this saw should not make: use another tool or take another stock item.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SawFinding {
    /// Number of the cut.
    pub cut: u32,
    /// What is wrong.
    pub trouble: SawTrouble,
}

/// Everything that is marked on one stock item before the first cut.
#[derive(Clone, Debug, PartialEq)]
pub struct CutCard {
    /// Where the item comes from.
    pub source: Source,
    /// Number among those of the same source.
    pub number: u32,
    /// Its geometry.
    pub stock: StockPiece,
    /// Cuts in the order of sawing. Before the first one a witness line is scribed along the whole
    /// item: on a bend along the outside, from end to end.
    pub cuts: Vec<Cut>,
    /// Its parts from end A to end B.
    pub parts: Vec<CutPart>,
    /// Cuts that this saw should not make.
    pub findings: Vec<SawFinding>,
}

/// The cut cards of a plan, in its order.
#[must_use]
pub fn cut_cards(plan: &StockPlan, rules: &ShopRules) -> Vec<CutCard> {
    plan.cuts.iter().map(|cut| cut_card(cut, rules)).collect()
}

/// A face that a part needs, along the axis of the item.
#[derive(Clone, Debug)]
pub(super) struct Face {
    pub(super) at: Place,
    pub(super) kerf: KerfSide,
    pub(super) marks: Vec<String>,
}

/// A place along the axis of an item.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Place {
    /// On a straight or in leg A, from end A.
    FromA(Length),
    /// In the arc, from the tangent line of leg A.
    Arc(Angle),
    /// In leg B, from end B.
    FromB(Length),
}

fn cut_card(cut: &CutStock, rules: &ShopRules) -> CutCard {
    let faces = merged(faces(cut), &cut.stock, rules);
    let cuts = in_sequence(&cut.stock, &faces);
    let od = cut.stock.tube.od;
    let mut findings = Vec::new();
    for made in &cuts {
        if made.held < rules.least_grip {
            let trouble = SawTrouble::CannotHold {
                held: made.held,
                least: rules.least_grip,
            };
            findings.push(SawFinding {
                cut: made.number,
                trouble,
            });
        }
        if od > rules.saw_capacity {
            let trouble = SawTrouble::TooLarge {
                od,
                capacity: rules.saw_capacity,
            };
            findings.push(SawFinding {
                cut: made.number,
                trouble,
            });
        }
    }
    CutCard {
        source: cut.source.clone(),
        number: cut.number,
        stock: cut.stock.clone(),
        cuts,
        parts: cut.parts.clone(),
        findings,
    }
}

/// Two thousandths of a millimetre or degree: less is no cut.
const NOTHING: f64 = 0.002;

fn is_something(length: Length) -> bool {
    length.mm() > NOTHING
}

/// Every face of every part that is not the end of the item already.
fn faces(cut: &CutStock) -> Vec<Face> {
    let mut faces = Vec::new();
    for part in &cut.parts {
        let mut face = |at: Place, kerf: KerfSide| {
            faces.push(Face {
                at,
                kerf,
                marks: part
                    .serves
                    .iter()
                    .map(|serves| serves.mark.clone())
                    .collect(),
            });
        };
        match (part.place, cut.stock.shape) {
            (PartPlace::Bar { start, length }, StockShape::Straight { length: whole }) => {
                if is_something(start) {
                    face(Place::FromA(start), KerfSide::TowardA);
                }
                if is_something(whole - start - length) {
                    face(Place::FromA(start + length), KerfSide::TowardB);
                }
            }
            (
                PartPlace::Leg {
                    end: StockEnd::A,
                    start,
                    length,
                },
                _,
            ) => {
                if is_something(start) {
                    face(Place::FromA(start), KerfSide::TowardA);
                }
                face(Place::FromA(start + length), KerfSide::TowardB);
            }
            (
                PartPlace::Leg {
                    end: StockEnd::B,
                    start,
                    length,
                },
                _,
            ) => {
                if is_something(start) {
                    face(Place::FromB(start), KerfSide::TowardB);
                }
                face(Place::FromB(start + length), KerfSide::TowardA);
            }
            (
                PartPlace::Arc {
                    start,
                    sweep,
                    keeps_a,
                    keeps_b,
                },
                StockShape::Bend {
                    angle,
                    leg_a,
                    leg_b,
                    ..
                },
            ) => {
                if start.deg() > NOTHING {
                    face(Place::Arc(start), KerfSide::TowardA);
                } else if is_something(leg_a - keeps_a) {
                    face(Place::FromA(leg_a - keeps_a), KerfSide::TowardA);
                }
                if (angle - start - sweep).deg() > NOTHING {
                    face(Place::Arc(start + sweep), KerfSide::TowardB);
                } else if is_something(leg_b - keeps_b) {
                    face(Place::FromB(leg_b - keeps_b), KerfSide::TowardB);
                }
            }
            _ => {}
        }
    }
    faces
}

/// Where one saw cut makes the faces of two parts, it is one cut with the mark of the first.
fn merged(mut faces: Vec<Face>, stock: &StockPiece, rules: &ShopRules) -> Vec<Face> {
    let along = |face: &Face| centre_line_from_a(stock, face.at).mm();
    faces.sort_by(|x, y| along(x).total_cmp(&along(y)));
    let arc_kerf_mm = match (rules.arc_kerf(stock), stock.shape) {
        (Some(kerf), StockShape::Bend { clr, .. }) => clr.mm() * kerf.rad(),
        _ => rules.kerf.mm(),
    };
    let mut out: Vec<Face> = Vec::with_capacity(faces.len());
    for face in faces {
        let kerf_mm = match face.at {
            Place::Arc(_) => arc_kerf_mm,
            Place::FromA(_) | Place::FromB(_) => rules.kerf.mm(),
        };
        if let Some(last) = out.last_mut()
            && last.kerf == KerfSide::TowardB
            && face.kerf == KerfSide::TowardA
            && along(&face) - along(last) <= kerf_mm + 0.01
        {
            last.marks.extend(face.marks);
            continue;
        }
        out.push(face);
    }
    out
}

/// Length along the centre line from end A.
pub(super) fn centre_line_from_a(stock: &StockPiece, at: Place) -> Length {
    match (at, stock.shape) {
        (Place::FromA(length), _) => length,
        (Place::FromB(length), StockShape::Straight { length: whole }) => whole - length,
        (Place::Arc(angle), StockShape::Bend { clr, leg_a, .. }) => leg_a + clr * angle.rad(),
        (Place::FromB(length), StockShape::Bend { .. }) => centre_line(stock) - length,
        (Place::Arc(_), StockShape::Straight { .. }) => Length::ZERO,
    }
}

/// Length of the whole item along the centre line.
pub(super) fn centre_line(stock: &StockPiece) -> Length {
    match stock.shape {
        StockShape::Straight { length } => length,
        StockShape::Bend {
            angle,
            clr,
            leg_a,
            leg_b,
        } => leg_a + clr * angle.rad() + leg_b,
    }
}
