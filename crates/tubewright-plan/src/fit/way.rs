//! A planned run with some of its pieces laid anew.

use std::collections::BTreeSet;
use tubewright_geometry::{
    CentreLine, Frame, Piece, Placement, TubeElement, UnitVector, Vector, math,
};

use super::joints::joints_of;
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

/// The pieces that are laid anew: from a joint up to what stands behind it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stretch {
    /// First piece behind the joint.
    pub(super) from: usize,
    /// First piece that stands, or one past the last.
    pub(super) until: usize,
    /// Where the pieces must arrive, when something stands there; `None` for an open end.
    pub(super) arrival: Option<Frame>,
}

/// How the face of a closing piece is sawn to meet what stands.
#[derive(Clone, Debug, PartialEq)]
pub struct ClosingFace {
    /// The closing piece.
    pub mark: String,
    /// The joint that the face makes.
    pub joint: String,
    /// How far it is out of square, radians.
    pub out_of_square_rad: f64,
    /// Where round the joint the piece is longest, clockwise from the witness line looking
    /// downstream, radians.
    pub long_at_rad: f64,
    /// How much longer it is there than across, mm.
    pub longer_mm: f64,
}

impl ClosingFace {
    /// For the person at the saw.
    #[must_use]
    pub fn words(&self) -> String {
        let clock = self.long_at_rad.to_degrees();
        format!(
            "{} meets {} {:.1}° out of square: scribe its face from what it meets, {:.1} mm longer at {:.0}° from the witness line",
            self.mark,
            self.joint,
            self.out_of_square_rad.to_degrees(),
            self.longer_mm,
            if clock.round() < 0.0 {
                clock + 360.0
            } else {
                clock
            },
        )
    }
}

/// A stretch closed by cutting a straight to the gap.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Spanned {
    /// The run: up to the straight laid from the joint, behind it where it stands.
    pub(super) run: PlannedRun,
    /// Its faces, upstream first.
    pub(super) faces: [ClosingFace; 2],
    /// Its length along the centre line, mm.
    pub(super) length_mm: f64,
}

impl Spanned {
    /// The larger of the kinks at both ends of the straight, radians.
    pub(super) fn kink_rad(&self) -> f64 {
        let [a, b] = &self.faces;
        a.out_of_square_rad.max(b.out_of_square_rad)
    }
}

/// The run with the pieces of the stretch laid from `start` as they are, up to the straight `closing`,
/// which spans to the piece behind it; that one hangs with those behind it on what stands. Its faces are
/// scribed from both open ends, so that what is off across the gap becomes a kink at either joint.
/// `None` for a stretch with an open end, which nothing closes.
pub(super) fn spanned(
    run: &PlannedRun,
    stretch: &Stretch,
    start: &Frame,
    closing: usize,
) -> Option<Spanned> {
    let before: Vec<Piece> = run
        .pieces
        .iter()
        .take(closing)
        .skip(stretch.from)
        .map(geometry_of)
        .collect::<Option<_>>()?;
    let planned = run.pieces.get(closing)?;
    let last = run.pieces.get(stretch.until.checked_sub(1)?)?;
    let mut out = relaid(run, stretch.from, start, &before);
    let moved = Placement::between(&last.frame_out, &stretch.arrival?);
    for piece in out.pieces.iter_mut().take(stretch.until).skip(closing + 1) {
        piece.frame_in = moved.frame(&piece.frame_in);
        piece.frame_out = moved.frame(&piece.frame_out);
        for element in &mut piece.elements {
            *element = moved.tube(element);
        }
    }
    let open = match closing.checked_sub(1) {
        Some(last) if last >= stretch.from => out.pieces.get(last)?.frame_out,
        _ => *start,
    };
    let far = moved.frame(&planned.frame_out);
    let line = far.origin - open.origin;
    let travel = line.direction()?;
    let length_mm = line.norm();
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
    // Both faces are told from the closing piece's own line, which is that of what is before it.
    let joints = joints_of(&PlannedRun {
        lined_from_behind: BTreeSet::new(),
        ..out.clone()
    });
    let face = |joint: usize, met: UnitVector, is_upstream: bool| {
        let joint = joints.get(joint)?;
        let kink = travel.angle_to(met);
        // The longest side of a face lies toward where the tube that it meets leans at the upstream
        // end, and away from it at the downstream end.
        let lean = met.vector() - travel.vector() * met.dot(travel.vector());
        let toward = if is_upstream { lean } else { -lean };
        let long_at_rad = if toward.norm() > 1e-12 {
            joint.frame.clock_of(toward)
        } else {
            0.0
        };
        Some(ClosingFace {
            mark: planned.mark.clone(),
            joint: joint.mark.clone(),
            out_of_square_rad: kink,
            long_at_rad,
            longer_mm: run.od_mm * math::sin(kink) / math::cos(kink),
        })
    };
    let faces = [
        face(closing, open.travel(), true)?,
        face(closing + 1, far.travel(), false)?,
    ];
    Some(Spanned {
        run: out,
        faces,
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
