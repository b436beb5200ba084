//! The order of sawing and the distances that the tape reads.

use tubewright_geometry::{Angle, Length};

use super::card::{Cut, Face, FaceBy, KerfSide, Place, Reach, centre_line, centre_line_from_a};
use crate::bend_cut::arc_reach;
use crate::item::{StockPiece, StockShape};
use crate::plan::StockEnd;

/// Cuts from both ends toward the longest stretch, which stays in the saw to the last: no other
/// order leaves more to hold. Of two faces that one cut parts, the first in this order is sawn and
/// the other dressed behind it.
pub(super) fn in_sequence(stock: &StockPiece, faces: &[Face]) -> Vec<Cut> {
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
        let (from, reach) = reach(stock, face);
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

/// From which end, and how far along each line.
fn reach(stock: &StockPiece, face: &Face) -> (StockEnd, Reach) {
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
            // A face whose kerf goes toward A belongs to the part on the side of B: from B.
            let (end, leg, turn) = match face.kerf {
                KerfSide::TowardA => (StockEnd::B, leg_b, angle - at),
                KerfSide::TowardB => (StockEnd::A, leg_a, at),
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
