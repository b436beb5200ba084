//! The order of sawing and the distances that the tape reads.

use tubewright_geometry::{Angle, Length, math};

use super::card::{
    Cut, Face, FaceBy, KerfSide, Place, Reach, centre_line, centre_line_from_a, lines_from_a,
};
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

/// What must be over between what is taped from A and what is taped from B, on the inside of the bend: a degree, by which
/// the angle of a bend may be off its name (common practice, no source).
const LEAST_OVER: Angle = Angle::from_rad(math::PI / 180.0);

/// The first face that is taped from end B, by its number along the item: what the angle, the radius or a leg of a
/// bend is off must show where the most is left over, and not in a part. So that stretch is between what is taped
/// from A and what is taped from B: a slot between two parts, or what is left of the arc beyond the first or the last.
/// Where nowhere enough is over all are taped from A, and the last part has what the item is off.
fn first_from_b(stock: &StockPiece, faces: &[Face], kerf: Length) -> usize {
    let StockShape::Bend { angle, clr, .. } = stock.shape else {
        return faces.len();
    };
    let inside = |at: Place| lines_from_a(stock, at)[1];
    let slots = (1..).zip(faces.windows(2)).filter_map(|(index, pair)| {
        let [near, far] = pair else { return None };
        let is_slot = near.kerf == KerfSide::TowardB && far.kerf == KerfSide::TowardA;
        is_slot.then(|| (inside(far.at) - inside(near.at) - kerf, index))
    });
    let before = faces
        .first()
        .filter(|face| face.is_in_arc_toward(KerfSide::TowardA));
    let before = before.map(|face| (inside(face.at) - inside(Place::Arc(Angle::ZERO)), 0));
    let behind = faces
        .last()
        .filter(|face| face.is_in_arc_toward(KerfSide::TowardB));
    let behind = behind.map(|face| (inside(Place::Arc(angle)) - inside(face.at), faces.len()));
    let least = (clr - stock.tube.od * 0.5) * LEAST_OVER.rad();
    slots
        .chain(before)
        .chain(behind)
        .filter(|(over, _)| *over >= least)
        .max_by(|a, b| a.0.mm().total_cmp(&b.0.mm()))
        .map_or(faces.len(), |(_, index)| index)
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
            let (end, leg, turn) = if is_from_a {
                (StockEnd::A, leg_a, at)
            } else {
                (StockEnd::B, leg_b, angle - at)
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
