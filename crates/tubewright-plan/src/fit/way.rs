//! A planned run with some of its pieces laid anew.

use tubewright_geometry::{CentreLine, Frame, Piece, Placement, TubeElement, Vector};

use crate::routes::{PlannedKind, PlannedPiece, PlannedRun};

/// The piece as geometry; `None` for a crossover, which is no piece of tube.
pub(super) fn geometry_of(piece: &PlannedPiece) -> Option<Piece> {
    Some(match piece.kind {
        PlannedKind::Straight { length_mm } => Piece::Straight { length_mm },
        PlannedKind::Bend {
            angle_rad,
            clock_rad,
            clr_mm,
        } => Piece::Bend {
            bend_rad: angle_rad,
            clock_rad,
            clr_mm,
        },
        PlannedKind::Component { length_mm, .. } => Piece::Component { length_mm },
        PlannedKind::Crossover { .. } => return None,
    })
}

/// The run with the pieces `from..from + pieces.len()` laid from `start`, the others as they are.
pub(super) fn relaid(run: &PlannedRun, from: usize, start: &Frame, pieces: &[Piece]) -> PlannedRun {
    let mut out = run.clone();
    let mut frame = *start;
    for (planned, piece) in out.pieces.iter_mut().skip(from).zip(pieces) {
        *planned = laid(planned, piece, &frame, 0.5 * run.od_mm);
        frame = planned.frame_out;
    }
    out
}

fn laid(was: &PlannedPiece, piece: &Piece, frame: &Frame, radius: f64) -> PlannedPiece {
    let mut out = was.clone();
    let tube = |line: CentreLine| vec![TubeElement { line, radius }];
    match *piece {
        Piece::Straight { length_mm } => {
            out.kind = PlannedKind::Straight { length_mm };
            out.frame_in = *frame;
            out.frame_out = frame.advanced(length_mm);
            out.elements = tube(CentreLine::straight(frame, length_mm));
        }
        Piece::Bend {
            bend_rad,
            clock_rad,
            clr_mm,
        } => {
            let turned = frame.rolled(clock_rad);
            out.kind = PlannedKind::Bend {
                angle_rad: bend_rad,
                clock_rad,
                clr_mm,
            };
            out.frame_in = turned;
            out.frame_out = turned.bent(bend_rad, clr_mm);
            out.elements = tube(CentreLine::bend(&turned, bend_rad, clr_mm));
        }
        _ => {
            let moved = Placement::between(&was.frame_in, frame);
            out.frame_in = *frame;
            out.frame_out = moved.frame(&was.frame_out);
            out.elements = was
                .elements
                .iter()
                .map(|element| moved.tube(element))
                .collect();
        }
    }
    out
}

/// A stretch closed by cutting a straight to the gap.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Spanned {
    /// The run: up to the straight laid from the joint, behind it as planned.
    pub(super) run: PlannedRun,
    /// The larger of the kinks at both ends of the straight, radians.
    pub(super) kink_rad: f64,
    /// Its length, mm.
    pub(super) length_mm: f64,
}

/// The run with the pieces from `from` laid from `start` as they are, up to the straight `closing`,
/// which spans to where the piece behind it is planned. Its faces are scribed from both open ends, so
/// that what is off across the gap becomes a kink at either joint.
pub(super) fn spanned(
    run: &PlannedRun,
    from: usize,
    start: &Frame,
    closing: usize,
) -> Option<Spanned> {
    let before: Vec<Piece> = run
        .pieces
        .iter()
        .take(closing)
        .skip(from)
        .map(geometry_of)
        .collect::<Option<_>>()?;
    let planned = run.pieces.get(closing)?;
    let mut out = relaid(run, from, start, &before);
    let open = match closing.checked_sub(1) {
        Some(last) if last >= from => out.pieces.get(last)?.frame_out,
        _ => *start,
    };
    let far = planned.frame_out;
    let line = far.origin - open.origin;
    let travel = line.direction()?;
    let length_mm = line.norm();
    let kink_rad = travel
        .angle_to(open.travel())
        .max(travel.angle_to(far.travel()));
    let twelve = travel
        .normal_toward(open.twelve().vector())
        .unwrap_or_else(|| travel.any_normal());
    let frame = Frame::from_axes(open.origin, travel, twelve);
    *out.pieces.get_mut(closing)? = laid(
        planned,
        &Piece::Straight { length_mm },
        &frame,
        0.5 * run.od_mm,
    );
    Some(Spanned {
        run: out,
        kink_rad,
        length_mm,
    })
}

/// The run with the pieces before `until` moved as they must have moved for its joint to lie where it
/// was found: from nothing at piece `from` (its start, or the last joint that was measured) to the whole
/// at the joint, in proportion to the length. What lies between two measured joints is not measured.
pub(super) fn leaned(
    run: &PlannedRun,
    from: usize,
    until: usize,
    shift: Vector,
    turn: Vector,
) -> PlannedRun {
    let mut out = run.clone();
    let stretch = || run.pieces.iter().take(until).skip(from);
    let whole: f64 = stretch().map(PlannedPiece::centre_line_mm).sum();
    if whole <= 0.0 {
        return out;
    }
    let mut along = 0.0;
    for piece in out.pieces.iter_mut().take(until).skip(from) {
        let middle = (along + 0.5 * piece.centre_line_mm()) / whole;
        along += piece.centre_line_mm();
        let moved = |frame: &Frame, share: f64| {
            let moved =
                Frame::from_axes(frame.origin + shift * share, frame.travel(), frame.twelve());
            tubewright_fit::built::turned(&moved, turn * share)
        };
        let place = Placement::between(&piece.frame_in, &moved(&piece.frame_in, middle));
        piece.elements = piece
            .elements
            .iter()
            .map(|element| place.tube(element))
            .collect();
        piece.frame_in = place.frame(&piece.frame_in);
        piece.frame_out = place.frame(&piece.frame_out);
    }
    out
}
