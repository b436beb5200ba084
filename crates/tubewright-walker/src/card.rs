//! Cut cards: what comes off the saw when the marks on a card are followed to the letter.
//!
//! From the definition: a stock bend is leg, arc, leg; a tape laid along its outside reads
//! leg + (R + r) a at the angle a of the arc, along its inside leg + (R − r) a, along its side the
//! centre line. A mark is a face of a part; the kerf lies on the side that the card names. In the
//! arc a saw slot of width k has parallel faces; the part on the far side of it is trimmed square
//! again and so loses the angle asin(k / (R − r)).

use crate::space::asin;

/// Physical end of a stock item.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// Where leg A ends, or where a straight is measured from.
    A,
    /// The other end.
    B,
}

/// A stock item as it lies on the bench: nominal sizes, or measured ones when it was on hand.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum StockItem {
    /// A straight tube.
    Straight {
        /// Length in mm.
        length: f64,
    },
    /// A bend with two legs.
    Bend {
        /// Angle in degrees.
        angle_deg: f64,
        /// Centre-line radius in mm.
        clr: f64,
        /// Leg at end A in mm.
        leg_a: f64,
        /// Leg at end B in mm.
        leg_b: f64,
    },
}

/// One line of a card.
#[derive(Clone, Debug, PartialEq)]
pub struct SawCut {
    /// In the order of sawing.
    pub number: u32,
    /// The end that the tape starts from.
    pub from: End,
    /// Reading along the outside in mm.
    pub outside: f64,
    /// Reading along the inside in mm.
    pub inside: f64,
    /// Reading along the side in mm.
    pub side: f64,
    /// Saw angle from square in degrees.
    pub saw_deg: f64,
    /// Whether the face is ground or filed down to the ring instead of sawn along it.
    pub is_dressed: bool,
    /// The end toward which the kerf goes, or what is dressed off.
    pub kerf_toward: End,
    /// Marks of the parts whose face it makes.
    pub faces: Vec<String>,
}

/// A cut card.
#[derive(Clone, Debug, PartialEq)]
pub struct Card {
    /// What it is called in messages.
    pub name: String,
    /// The item.
    pub item: StockItem,
    /// Outside diameter in mm.
    pub od: f64,
    /// Marks of each part, from end A to end B; of one part upstream first.
    pub parts: Vec<Vec<String>>,
    /// The cuts.
    pub cuts: Vec<SawCut>,
}

/// The saw.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Saw {
    /// Width of the cut in mm.
    pub kerf: f64,
    /// Shortest tube that it holds, along the centre line, in mm.
    pub least_grip: f64,
    /// Largest outside diameter in mm.
    pub capacity: f64,
    /// How far two readings of one mark may disagree, mm: what printing them rounds away.
    pub reading_slack: f64,
}

/// A part as it comes off the saw: leg, arc, leg in the order from end A. A straight has no arc.
#[derive(Clone, Debug, PartialEq)]
pub struct MadePart {
    /// Its marks.
    pub marks: Vec<String>,
    /// Straight toward end A in mm.
    pub leg_a: f64,
    /// Angle in degrees; zero for a straight, whose whole length is `leg_a`.
    pub angle_deg: f64,
    /// Centre-line radius in mm; zero for a straight.
    pub clr: f64,
    /// Straight toward end B in mm.
    pub leg_b: f64,
    /// Outside diameter in mm.
    pub od: f64,
}

impl MadePart {
    /// Length along the centre line in mm.
    #[must_use]
    pub fn developed(&self) -> f64 {
        self.leg_a + self.clr * self.angle_deg.to_radians() + self.leg_b
    }
}

/// What following a card gives.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sawn {
    /// The parts from end A to end B.
    pub parts: Vec<MadePart>,
    /// Stretches that are no part, in mm along the centre line.
    pub offcuts: Vec<f64>,
    /// Longer side in the saw at each cut, in the order of sawing, mm.
    pub held: Vec<f64>,
    /// Everything that is wrong.
    pub faults: Vec<String>,
}

/// A place along the centre line from end A, mm, and whether it lies in the arc.
#[derive(Clone, Copy, Debug)]
struct Place {
    along: f64,
}

struct Bench {
    item: StockItem,
    od: f64,
    kerf: f64,
    slack: f64,
}

impl Bench {
    fn arc(&self) -> (f64, f64, f64) {
        match self.item {
            StockItem::Straight { length } => (length, length, length),
            StockItem::Bend {
                angle_deg,
                clr,
                leg_a,
                leg_b,
            } => {
                let end = leg_a + clr * angle_deg.to_radians();
                (leg_a, end, end + leg_b)
            }
        }
    }

    fn whole(&self) -> f64 {
        self.arc().2
    }

    /// The place of a mark, read along the outside and held against the two other readings.
    fn place(&self, cut: &SawCut) -> Result<Place, String> {
        let (leg, angle, clr) = match self.item {
            StockItem::Straight { length } => (length, 0.0, 0.0),
            StockItem::Bend {
                angle_deg,
                clr,
                leg_a,
                leg_b,
            } => (
                match cut.from {
                    End::A => leg_a,
                    End::B => leg_b,
                },
                angle_deg.to_radians(),
                clr,
            ),
        };
        let r = self.od / 2.0;
        let back = (clr + r) * angle;
        let (before, turn, after) = if angle == 0.0 || cut.outside <= leg {
            (cut.outside, 0.0, 0.0)
        } else if cut.outside <= leg + back {
            (leg, (cut.outside - leg) / (clr + r), 0.0)
        } else {
            (leg, angle, cut.outside - leg - back)
        };
        let side = before + clr * turn + after;
        let inside = before + (clr - r) * turn + after;
        for (name, read, is) in [("side", cut.side, side), ("inside", cut.inside, inside)] {
            if (read - is).abs() > self.slack {
                return Err(format!(
                    "cut {}: the outside says {is:.3} mm along the {name}, the card {read:.3}",
                    cut.number
                ));
            }
        }
        let along = match cut.from {
            End::A => side,
            End::B => self.whole() - side,
        };
        if along < -self.slack || along > self.whole() + self.slack {
            return Err(format!("cut {} lies off the item", cut.number));
        }
        Ok(Place { along })
    }

    /// What the saw takes beyond a mark, along the centre line.
    fn taken(&self, at: f64, toward: End) -> f64 {
        let (first, last, _) = self.arc();
        let in_arc = match toward {
            End::A => at > first + 1e-6 && at <= last + 1e-6,
            End::B => at >= first - 1e-6 && at < last - 1e-6,
        };
        match self.item {
            StockItem::Bend { clr, .. } if in_arc => {
                clr * asin((self.kerf / (clr - self.od / 2.0)).min(1.0))
            }
            _ => self.kerf,
        }
    }

    /// What no blade can do: a slot has parallel faces, so in the arc it leaves one face square and not
    /// two; behind a ring that is sawn there must be more than the blade; and two rings stand apart by
    /// no less than the slot at the inside.
    fn slots(&self, cuts: &[(&SawCut, f64)], parts: &[Vec<String>]) -> Vec<String> {
        let mut faults = Vec::new();
        let (first, last, _) = self.arc();
        let is_in_arc = |at: f64| at > first + 1e-6 && at < last - 1e-6;
        for (index, (cut, at)) in cuts.iter().enumerate() {
            let toward_a = cut.kerf_toward == End::A;
            let (beside, what_beside) = if toward_a {
                index.checked_sub(1).and_then(|before| cuts.get(before))
            } else {
                cuts.get(index + 1)
            }
            .map_or(
                (if toward_a { 0.0 } else { self.whole() }, None),
                |(next, at)| (*at, Some(*next)),
            );
            let waste = (beside - at).abs();
            let faces_it = what_beside.is_some_and(|next| next.kerf_toward != cut.kerf_toward);
            if is_in_arc(*at) && !parts.contains(&cut.faces) {
                faults.push(format!(
                    "cut {} makes the faces of two bends, and a slot has parallel faces",
                    cut.number
                ));
            }
            let is_alone = what_beside.is_none();
            if !cut.is_dressed && is_alone && waste < self.kerf - self.slack {
                faults.push(format!(
                    "cut {} shaves {waste:.2} mm off an end with a blade of {:.2} mm",
                    cut.number, self.kerf
                ));
            }
            let slot = self.taken(*at, cut.kerf_toward);
            if faces_it && waste < slot - self.slack {
                faults.push(format!(
                    "cut {} leaves {waste:.2} mm to the next ring and the slot takes {slot:.2} mm",
                    cut.number
                ));
            }
        }
        for pair in cuts.windows(2) {
            let [(low, from), (high, to)] = pair else {
                continue;
            };
            let is_slot = low.kerf_toward == End::B && high.kerf_toward == End::A;
            if is_slot
                && to - from < 2.0 * self.kerf - self.slack
                && !low.is_dressed
                && !high.is_dressed
            {
                faults.push(format!(
                    "cuts {} and {} are both sawn with {:.2} mm between them",
                    low.number,
                    high.number,
                    to - from
                ));
            }
        }
        faults
    }

    fn part(&self, marks: &[String], from: f64, to: f64) -> MadePart {
        let (first, last, _) = self.arc();
        let (leg_a, arc, leg_b) = if let StockItem::Straight { .. } = self.item {
            (to - from, 0.0, 0.0)
        } else {
            let within = |low: f64, high: f64| (to.min(high) - from.max(low)).max(0.0);
            (
                within(0.0, first),
                within(first, last),
                within(last, f64::INFINITY),
            )
        };
        let clr = match self.item {
            StockItem::Bend { clr, .. } if arc > 0.0 => clr,
            _ => 0.0,
        };
        MadePart {
            marks: marks.to_vec(),
            leg_a,
            angle_deg: if clr > 0.0 {
                (arc / clr).to_degrees()
            } else {
                0.0
            },
            clr,
            leg_b,
            od: self.od,
        }
    }
}

/// Follows a card.
#[must_use]
pub fn saw(card: &Card, saw: &Saw) -> Sawn {
    let bench = Bench {
        item: card.item,
        od: card.od,
        kerf: saw.kerf,
        slack: saw.reading_slack,
    };
    let mut out = Sawn::default();
    let mut fault = |what: String| out.faults.push(format!("{}: {what}", card.name));
    let mut cuts: Vec<(&SawCut, f64)> = Vec::new();
    for cut in &card.cuts {
        if cut.saw_deg != 0.0 {
            fault(format!("cut {} is not square", cut.number));
        }
        match bench.place(cut) {
            Ok(place) => cuts.push((cut, place.along)),
            Err(what) => fault(what),
        }
    }
    if cuts.iter().any(|_| card.od > saw.capacity) {
        fault(format!("the saw does not take {:.1} mm", card.od));
    }
    cuts.sort_by_key(|(cut, _)| cut.number);
    let mut pieces = vec![(0.0, bench.whole())];
    for (cut, at) in cuts.iter().filter(|(cut, _)| !cut.is_dressed) {
        let Some(found) = pieces.iter().position(|(a, b)| a <= at && at <= b) else {
            fault(format!("cut {} meets nothing", cut.number));
            continue;
        };
        let (a, b) = pieces.remove(found);
        out.held.push((at - a).max(b - at));
        pieces.extend([(a, *at), (*at, b)]);
    }
    cuts.sort_by(|x, y| x.1.total_cmp(&y.1));
    for what in bench.slots(&cuts, &card.parts) {
        fault(what);
    }
    // Stretches between the cuts, each with the cuts that bound it.
    let mut stretches = Vec::new();
    let mut from = (0.0, None);
    for (cut, at) in &cuts {
        let (end, next) = match cut.kerf_toward {
            End::B => (*at, at + bench.taken(*at, End::B)),
            End::A => (at - bench.taken(*at, End::A), *at),
        };
        stretches.push((from.0, end, from.1, Some(*cut)));
        from = (next, Some(*cut));
    }
    stretches.push((from.0, bench.whole(), from.1, None));
    let mut next = stretches.into_iter();
    for marks in &card.parts {
        // The mark itself is the face of the part that the kerf spares, named first; a part on the
        // kerf's side has its face there only when the cut names it too, after the other.
        let begins = |cut: &Option<&SawCut>| {
            cut.is_none_or(|cut| match cut.kerf_toward {
                End::A => cut.faces == *marks,
                End::B => cut.faces.len() > marks.len() && cut.faces.ends_with(marks),
            })
        };
        let ends = |cut: &Option<&SawCut>| {
            cut.is_none_or(|cut| cut.kerf_toward == End::B && cut.faces.starts_with(marks))
        };
        let found = next.by_ref().find(|(from, to, low, high)| {
            let is_it = begins(low) && ends(high) && to > from;
            if !is_it && to - from > 1e-6 {
                out.offcuts.push(to - from);
            }
            is_it
        });
        match found {
            Some((from, to, ..)) => out.parts.push(bench.part(marks, from, to)),
            None => out.faults.push(format!(
                "{}: no stretch of it is {}",
                card.name,
                marks.join(" + ")
            )),
        }
    }
    out.offcuts.extend(
        next.map(|(from, to, ..)| to - from)
            .filter(|left| *left > 1e-6),
    );
    out
}
