//! The cut card of one stock item.

use tubewright_geometry::{Angle, Length};

use super::sequence::in_sequence;
use crate::bend_cut::arc_reach;
use crate::item::{StockPiece, StockShape};
use crate::plan::{CutPart, CutStock, PartPlace, Source, StockEnd, StockPlan};
use crate::rules::{KerfRule, ShopRules};

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

/// How a face comes to its ring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FaceBy {
    /// The saw cuts along the ring.
    Saw,
    /// Ground, filed or linished down to the ring, because what is left there is thinner than the
    /// blade: a blade that finds metal on one side only wanders off. So it is behind every cut that
    /// two parts of one arc share, since a saw slot has parallel faces and the two rings have not.
    Dress {
        /// What is to come off where it is thickest.
        most: Length,
    },
}

/// One ring on the item: a saw cut, or a face that is dressed to it.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// In the order of the work, from 1.
    pub number: u32,
    /// How the face comes to the ring.
    pub by: FaceBy,
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
    /// Longer side of what is in the saw at this cut, along the centre line: what it can hold. A face
    /// that is dressed is not held in the saw.
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
    /// What is to be dressed off here, if the saw has no hold.
    pub(super) dress: Option<Length>,
    /// What is left to dress off when one cut parts this face from the next along the item: of the
    /// two, the one that comes second in the order of sawing.
    pub(super) shared: Option<Length>,
}

impl Face {
    /// Whether it lies in an arc with its kerf toward that end.
    pub(super) fn is_in_arc_toward(&self, kerf: KerfSide) -> bool {
        is_in_arc(self) && self.kerf == kerf
    }
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
    let faces = with_dressing(merged(faces(cut), &cut.stock, rules), &cut.stock, rules);
    let cuts = in_sequence(&cut.stock, &faces, rules.kerf);
    let od = cut.stock.tube.od;
    let mut findings = Vec::new();
    for made in cuts.iter().filter(|cut| cut.by == FaceBy::Saw) {
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
                dress: None,
                shared: None,
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

/// Where one saw cut makes the faces of two parts square, it is one cut with the mark of the first: in
/// a straight or a leg with a kerf between them. In an arc only where the shop leaves the second face
/// out of square.
fn merged(mut faces: Vec<Face>, stock: &StockPiece, rules: &ShopRules) -> Vec<Face> {
    let along = |face: &Face| centre_line_from_a(stock, face.at).mm();
    faces.sort_by(|x, y| along(x).total_cmp(&along(y)));
    let arc_kerf_mm = match (rules.arc_kerf(stock), stock.shape, rules.kerf_rule) {
        (Some(kerf), StockShape::Bend { clr, .. }, KerfRule::Nominal) => clr.mm() * kerf.rad(),
        (_, _, KerfRule::SquareFaces) => f64::NEG_INFINITY,
        _ => rules.kerf.mm(),
    };
    let mut out: Vec<Face> = Vec::with_capacity(faces.len());
    for face in faces {
        if let Some(last) = out.last_mut()
            && last.kerf == KerfSide::TowardB
            && face.kerf == KerfSide::TowardA
            && {
                let kerf_mm = if is_in_arc(&face) || is_in_arc(last) {
                    arc_kerf_mm
                } else {
                    rules.kerf.mm()
                };
                along(&face) - along(last) <= kerf_mm + 0.01
            }
        {
            last.marks.extend(face.marks);
            continue;
        }
        out.push(face);
    }
    out
}

const fn is_in_arc(face: &Face) -> bool {
    matches!(face.at, Place::Arc(_))
}

/// More than this is sawn even where the blade runs out of the metal on one side, mm. Common practice,
/// no source.
const MOST_DRESSED_MM: f64 = 4.0;

/// Marks what no blade can take off: waste that is thinner than the kerf somewhere, at an end of the
/// item or beside the slot of the cut before it.
fn with_dressing(mut faces: Vec<Face>, stock: &StockPiece, rules: &ShopRules) -> Vec<Face> {
    let kerf_mm = rules.kerf.mm();
    let start = [0.0, 0.0];
    let end = lines_from_a(stock, Place::FromB(Length::ZERO)).map(Length::mm);
    let lines: Vec<[f64; 2]> = faces
        .iter()
        .map(|face| lines_from_a(stock, face.at).map(Length::mm))
        .collect();
    // Thinnest and thickest of what lies between two rings.
    let between = |low: [f64; 2], high: [f64; 2]| {
        let (outside, inside) = (high[0] - low[0], high[1] - low[1]);
        (outside.min(inside), outside.max(inside))
    };
    let count = faces.len();
    for index in 0..count {
        let Some(here) = lines.get(index).copied() else {
            continue;
        };
        let next = lines.get(index + 1).copied();
        let toward_a_next = faces
            .get(index + 1)
            .is_some_and(|next| next.kerf == KerfSide::TowardA);
        let Some(face) = faces.get_mut(index) else {
            continue;
        };
        match face.kerf {
            KerfSide::TowardA if index == 0 => {
                let (thin, thick) = between(start, here);
                if thin < kerf_mm && thick <= MOST_DRESSED_MM {
                    face.dress = Some(Length::from_mm(thick));
                }
            }
            KerfSide::TowardB if next.is_none() => {
                let (thin, thick) = between(here, end);
                if thin < kerf_mm && thick <= MOST_DRESSED_MM {
                    face.dress = Some(Length::from_mm(thick));
                }
            }
            KerfSide::TowardB if toward_a_next => {
                let (thin, thick) = between(here, next.unwrap_or(end));
                let left_mm = (thick - kerf_mm).max(0.0);
                // Where the slots of two cuts would meet at the middle, one is dressed however much it is.
                let middle = (thin + thick) / 2.0;
                if middle < 2.0 * kerf_mm || thin < 2.0 * kerf_mm && left_mm <= MOST_DRESSED_MM {
                    face.shared = Some(Length::from_mm(left_mm));
                }
            }
            KerfSide::TowardA | KerfSide::TowardB => {}
        }
    }
    faces
}

/// Length from end A along the outside and along the inside.
pub(super) fn lines_from_a(stock: &StockPiece, at: Place) -> [Length; 2] {
    let StockShape::Bend {
        angle,
        clr,
        leg_a,
        leg_b,
    } = stock.shape
    else {
        let along = centre_line_from_a(stock, at);
        return [along, along];
    };
    let past = |turn: Angle| {
        let arc = arc_reach(clr, stock.tube.od, turn);
        [leg_a + arc.outside, leg_a + arc.inside]
    };
    match at {
        Place::FromA(length) => [length, length],
        Place::Arc(turn) => past(turn),
        Place::FromB(length) => past(angle).map(|line| line + leg_b - length),
    }
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
