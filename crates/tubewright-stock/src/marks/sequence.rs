//! The order of sawing and the distances that the tape reads.

use tubewright_geometry::{Angle, Length};

use super::card::{Cut, Face, FaceBy, KerfSide, Place, Reach, centre_line, centre_line_from_a};
use crate::bend_cut::arc_reach;
use crate::item::{StockPiece, StockShape};
use crate::plan::StockEnd;

/// Cuts from both ends toward the longest stretch, which stays in the saw to the last: no other
/// order leaves more to hold. Of two faces that one cut parts, the first in this order is sawn and
/// the other dressed behind it.
pub(super) fn in_sequence(stock: &StockPiece, faces: &[Face], kerf: Length) -> Vec<Cut> {
    let whole = centre_line(stock);
    let places: Vec<Length> = faces
        .iter()
        .map(|face| centre_line_from_a(stock, face.at))
        .collect();
    let bounds: Vec<Length> = core::iter::once(Length::ZERO)
        .chain(places.iter().copied())
        .chain([whole])
        .collect();
    let longest = bounds
        .windows(2)
        .enumerate()
        .map(|(index, pair)| (pair[1] - pair[0], index))
        .fold(
            (Length::ZERO, 0),
            |best, next| if next.0 > best.0 { next } else { best },
        )
        .1;
    // The stretch with this index lies between face `longest - 1` and face `longest`.
    let order = (0..longest).chain((longest..faces.len()).rev());
    let shared = |index: usize| faces.get(index).and_then(|face| face.shared);
    let from_b = first_from_b(stock, faces, kerf);
    let (mut low, mut high) = (Length::ZERO, whole);
    let mut cuts = Vec::with_capacity(faces.len());
    for (number, index) in (1..).zip(order) {
        let (Some(face), Some(at)) = (faces.get(index), places.get(index).copied()) else {
            continue;
        };
        let held = (at - low).max(high - at);
        if index < longest {
            low = at;
        } else {
            high = at;
        }
        let (from, reach) = reach(stock, face, index < from_b);
        let behind = if index < longest {
            index.checked_sub(1).and_then(shared)
        } else {
            shared(index)
        };
        let by = face
            .dress
            .or(behind)
            .map_or(FaceBy::Saw, |most| FaceBy::Dress { most });
        cuts.push(Cut {
            number,
            by,
            from,
            reach,
            kerf: face.kerf,
            angle: Angle::ZERO,
            faces: face.marks.clone(),
            held,
        });
    }
    cuts
}

/// The first face that is taped from end B, by its number along the item: what the angle, the radius or a leg of a
/// bend is off must show where the most is left over, and not in a part. So that stretch is between what is taped
/// from A and what is taped from B: a slot between two parts, or what is left of the arc beyond the first or the last.
fn first_from_b(stock: &StockPiece, faces: &[Face], kerf: Length) -> usize {
    let StockShape::Bend { angle, leg_a, .. } = stock.shape else {
        return faces.len();
    };
    let along = |face: &Face| centre_line_from_a(stock, face.at).mm();
    let in_arc = |face: &Face| matches!(face.at, Place::Arc(_));
    let (arc_from_mm, arc_to_mm) = (leg_a.mm(), along_arc_end(stock, angle));
    let mut best: Option<(f64, usize)> = None;
    let mut try_out = |left_mm: f64, index: usize| {
        if best.is_none_or(|(most_mm, _)| left_mm > most_mm) {
            best = Some((left_mm, index));
        }
    };
    for (index, pair) in (1..).zip(faces.windows(2)) {
        let [near, far] = pair else { continue };
        if near.kerf == KerfSide::TowardB && far.kerf == KerfSide::TowardA {
            try_out(along(far) - along(near) - kerf.mm(), index);
        }
    }
    if let Some(first) = faces.first().filter(|face| in_arc(face))
        && first.kerf == KerfSide::TowardA
    {
        try_out(along(first) - arc_from_mm, 0);
    }
    if let Some(last) = faces.last().filter(|face| in_arc(face))
        && last.kerf == KerfSide::TowardB
    {
        try_out(arc_to_mm - along(last), faces.len());
    }
    best.map_or(faces.len(), |(_, index)| index)
}

/// Where the arc ends along the centre line from end A, mm.
fn along_arc_end(stock: &StockPiece, angle: Angle) -> f64 {
    centre_line_from_a(stock, Place::Arc(angle)).mm()
}

/// From which end, and how far along each line; a ring in the arc from A or from B.
fn reach(stock: &StockPiece, face: &Face, is_from_a: bool) -> (StockEnd, Reach) {
    let same = |length: Length| Reach {
        outside: length,
        inside: length,
        side: length,
        centre_line: length,
    };
    match (face.at, stock.shape) {
        (Place::FromA(length), _) => (StockEnd::A, same(length)),
        (Place::FromB(length), _) => (StockEnd::B, same(length)),
        (
            Place::Arc(at),
            StockShape::Bend {
                angle,
                clr,
                leg_a,
                leg_b,
            },
        ) => {
            let (end, leg, turn) = match is_from_a {
                false => (StockEnd::B, leg_b, angle - at),
                true => (StockEnd::A, leg_a, at),
            };
            let arc = arc_reach(clr, stock.tube.od, turn);
            let reach = Reach {
                outside: leg + arc.outside,
                inside: leg + arc.inside,
                side: leg + arc.centre_line,
                centre_line: leg + arc.centre_line,
            };
            (end, reach)
        }
        (Place::Arc(_), StockShape::Straight { .. }) => (StockEnd::A, same(Length::ZERO)),
    }
}
