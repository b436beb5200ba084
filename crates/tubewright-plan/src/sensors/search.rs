//! All places of a lattice along and round the tube, the likely ones judged in every position.

use core::ops::Range;
use tubewright_geometry::distance::{clearance_below, clearance_between};
use tubewright_geometry::{CentreLine, Point, TubeElement, math};

use super::place::{Clocking, SensorPlace};
use super::{FROM_WELD_MM, GAP_MM, LEAST_RISE_DEG, NoPlace, ROOM_MM};
use crate::checks::{MovingRun, Room, other_pieces, room_to_body, room_to_piece};
use crate::held::PlaceOnRun;
use crate::places::Joint;
use crate::routes::{PlannedKind, PlannedPiece};
use crate::stages::Surroundings;
use crate::survey::NINETEEN_IN_TWENTY;

/// Distance between the places that are tried along a piece, mm.
const STEP_MM: f64 = 5.0;

/// Half hours round the tube: what an eye sets by.
const CLOCK_STEP_DEG: f64 = 15.0;

/// More room than this makes a place no better, mm.
const AMPLE_MM: f64 = 25.0;

/// Places that are judged in every position before the best of them is taken.
const MOST_JUDGED: usize = 24;

/// How far out a sensor reaches from the middle of its tube, for what a joint that is clocked badly moves it,
/// mm.
const REACH_MM: f64 = 150.0;

/// How finely gaps at rest are told apart, mm.
const FINE_MM: f64 = 0.5;

/// A seam so near to the end of a piece is at its end, mm: the sums of lengths are rounded.
const AT_SEAM_MM: f64 = 1e-6;

/// A place that is looked at, with its room at rest.
struct Candidate {
    number: usize,
    along_mm: f64,
    /// What is left of the piece, along the same line, mm.
    left_mm: f64,
    run_mm: f64,
    is_on_bend: bool,
    clocking: Clocking,
    foot: Point,
    room: [TubeElement; ROOM_MM.len()],
    rest_mm: f64,
}

/// The best place among the pieces `range` of a run whose seams lie at these distances along it.
pub(super) fn before(
    around: &Surroundings,
    all: &[MovingRun<'_>],
    moving: &MovingRun<'_>,
    range: Range<usize>,
    seams_mm: &[f64],
) -> Result<SensorPlace, NoPlace> {
    let pieces = moving.run.pieces.get(range.clone()).unwrap_or_default();
    let is_tube = |piece: &PlannedPiece| {
        matches!(
            piece.kind,
            PlannedKind::Straight { .. } | PlannedKind::Bend { .. }
        )
    };
    if !pieces.iter().any(is_tube) {
        return Err(NoPlace::NoTube);
    }
    let mut candidates = Vec::new();
    let mut run_mm: f64 = moving
        .run
        .pieces
        .iter()
        .take(range.start)
        .map(PlannedPiece::centre_line_mm)
        .sum();
    for (number, piece) in range.zip(pieces) {
        if is_tube(piece) {
            candidates.extend(on_piece(moving, number, piece, run_mm, seams_mm));
        }
        run_mm += piece.centre_line_mm();
    }
    for candidate in &mut candidates {
        candidate.rest_mm = room_at_rest(around, all, moving, candidate);
    }
    let worth = |candidate: &Candidate| {
        (
            candidate.rest_mm < GAP_MM,
            candidate.is_on_bend,
            -candidate.rest_mm.min(AMPLE_MM),
            candidate.run_mm,
            candidate.clocking.clock_rad.abs(),
        )
    };
    candidates.sort_by(|a, b| {
        let (a, b) = (worth(a), worth(b));
        a.0.cmp(&b.0)
            .then(a.1.cmp(&b.1))
            .then(a.2.total_cmp(&b.2))
            .then(a.3.total_cmp(&b.3))
            .then(a.4.total_cmp(&b.4))
    });
    let mut best: Option<SensorPlace> = None;
    for candidate in candidates.iter().take(MOST_JUDGED) {
        let Some(room) = room_in_motion(around, all, moving, candidate) else {
            continue;
        };
        let is_free = room.sure_mm() >= GAP_MM;
        if is_free
            || best
                .as_ref()
                .is_none_or(|best| room.gap_mm > best.room.gap_mm)
        {
            best = place_of(moving, candidate, seams_mm, room);
        }
        if is_free {
            return best.ok_or(NoPlace::NoStretch);
        }
    }
    Err(best.map_or(NoPlace::NoStretch, |best| NoPlace::NoRoom(Box::new(best))))
}

/// The place, measured from a seam where its piece ends at one.
fn place_of(
    moving: &MovingRun<'_>,
    candidate: &Candidate,
    seams_mm: &[f64],
    room: Room,
) -> Option<SensorPlace> {
    let pieces = &moving.run.pieces;
    let piece = pieces.get(candidate.number)?;
    let begins: f64 = pieces
        .iter()
        .take(candidate.number)
        .map(PlannedPiece::centre_line_mm)
        .sum();
    let ends = begins + piece.centre_line_mm();
    let seam_in = |from: f64, to: f64| seams_mm.iter().find(|seam| (from..=to).contains(*seam));
    let at_begin = seam_in(begins - AT_SEAM_MM, begins + AT_SEAM_MM);
    let inside = seam_in(begins + AT_SEAM_MM, ends - AT_SEAM_MM);
    let at_end = seam_in(ends - AT_SEAM_MM, ends + AT_SEAM_MM);
    let (joint, along_mm, is_upstream) = match (at_begin, inside, at_end) {
        // A weld in a straight has the mark of the joint before it.
        (None, Some(weld), _) => (
            &piece.joint,
            (candidate.run_mm - weld).abs(),
            candidate.run_mm < *weld,
        ),
        (None, None, Some(_)) => {
            let next = pieces.get(candidate.number + 1);
            let joint = next.map_or(&moving.run.last_joint, |next| &next.joint);
            (joint, candidate.left_mm, true)
        }
        _ => (&piece.joint, candidate.along_mm, false),
    };
    Some(SensorPlace {
        piece: piece.mark.clone(),
        number: candidate.number,
        joint: joint.clone(),
        along_mm,
        is_upstream,
        is_on_bend: candidate.is_on_bend,
        clocking: candidate.clocking,
        foot: candidate.foot,
        room,
    })
}

/// Every place on one piece of tube that is far enough from the seams before and behind it.
fn on_piece(
    moving: &MovingRun<'_>,
    number: usize,
    piece: &PlannedPiece,
    run_mm: f64,
    seams_mm: &[f64],
) -> Vec<Candidate> {
    let radius = 0.5 * moving.run.od_mm;
    let length = piece.centre_line_mm();
    let mut found = Vec::new();
    let mut at_mm = 0.0;
    while at_mm <= length {
        let here = run_mm + at_mm;
        let before = seams_mm.iter().rfind(|seam| **seam <= here);
        let behind = seams_mm.iter().find(|seam| **seam > here);
        let frame = piece.frame_at(at_mm);
        let mut clock_deg = -90.0 + CLOCK_STEP_DEG;
        while clock_deg < 90.0 - 1e-9 {
            let clocking = Clocking::at(&frame, f64::to_radians(clock_deg));
            clock_deg += CLOCK_STEP_DEG;
            // On the inside of a bend the seams come nearer.
            let along_mm = along_surface(piece, at_mm, radius, &clocking);
            let left_mm = along_surface(piece, length, radius, &clocking) - along_mm;
            let is_far = |seam: Option<&f64>, to_end_mm: f64, end: f64, toward: f64| {
                seam.is_none_or(|seam| {
                    let beyond_mm = toward * (seam - end);
                    to_end_mm + beyond_mm >= FROM_WELD_MM - 1e-9
                })
            };
            if clocking.rise_rad.to_degrees() < LEAST_RISE_DEG - 1e-9
                || !is_far(before, along_mm, run_mm, -1.0)
                || !is_far(behind, left_mm, run_mm + length, 1.0)
            {
                continue;
            }
            let out = clocking.out.vector();
            let foot = frame.origin + out * radius;
            found.push(Candidate {
                number,
                along_mm,
                left_mm,
                run_mm: here,
                is_on_bend: matches!(piece.kind, PlannedKind::Bend { .. }),
                clocking,
                foot,
                room: ROOM_MM.map(|[from, to, radius]| TubeElement {
                    line: CentreLine::Segment {
                        a: foot + out * (from + radius),
                        b: foot + out * (to - radius),
                    },
                    radius,
                }),
                rest_mm: 0.0,
            });
        }
        at_mm += STEP_MM;
    }
    found
}

/// From a piece's upstream end to `at_mm` of its centre line, measured along its surface at a clock.
fn along_surface(piece: &PlannedPiece, at_mm: f64, radius: f64, clocking: &Clocking) -> f64 {
    match piece.kind {
        PlannedKind::Bend { clr_mm, .. } => {
            // Twelve o'clock of a bend's frame is toward its centre, all along.
            let inward = piece.frame_at(at_mm).twelve().dot(clocking.out.vector());
            at_mm * (clr_mm - radius * inward) / clr_mm
        }
        _ => at_mm,
    }
}

fn room_at_rest(
    around: &Surroundings,
    all: &[MovingRun<'_>],
    moving: &MovingRun<'_>,
    candidate: &Candidate,
) -> f64 {
    let mut least = AMPLE_MM;
    for body in &around.bodies.placed {
        for part in &candidate.room {
            let limit = least + body.allowance_mm;
            if let Some(near) = clearance_below(part, &body.solid_in_car, FINE_MM, limit) {
                least = least.min(near.gap_mm - body.allowance_mm);
            }
        }
    }
    for (_, run, number) in other_pieces(all, (moving, candidate.number)) {
        let elements = run
            .run
            .pieces
            .get(number)
            .map_or(&[][..], |piece| &piece.elements);
        for element in elements {
            for part in &candidate.room {
                least = least.min(clearance_between(part, element, FINE_MM).gap_mm);
            }
        }
    }
    least
}

/// The tightest neighbour in every position; `None` when there is nothing to be near to.
fn room_in_motion(
    around: &Surroundings,
    all: &[MovingRun<'_>],
    moving: &MovingRun<'_>,
    candidate: &Candidate,
) -> Option<Room> {
    let joint = &around.measured.places.joint;
    let at = PlaceOnRun {
        place: candidate.foot,
        piece: candidate.number,
        share: (candidate.run_mm / moving.run.developed_length_mm().max(1.0)).clamp(0.0, 1.0),
    };
    let to_bodies = around.bodies.placed.iter().flat_map(|body| {
        let parts = candidate.room.iter();
        parts.map(move |part| room_to_body(moving, at, part, body, joint))
    });
    let to_pieces =
        other_pieces(all, (moving, candidate.number)).flat_map(|(is_own, other, number)| {
            let parts = candidate.room.iter();
            parts.filter_map(move |part| {
                let doubt_mm = if is_own {
                    doubt_to_own(moving, candidate.number, number)
                } else {
                    doubt_to_other((moving, &at), (other, number), part, joint)
                };
                let own = (moving, candidate.number);
                room_to_piece(own, part, (other, number), is_own, doubt_mm)
            })
        });
    to_bodies.chain(to_pieces).min_by(|a, b| {
        a.sure_mm()
            .total_cmp(&b.sure_mm())
            .then(a.gap_mm.total_cmp(&b.gap_mm))
    })
}

/// ± of a sensor's place against another piece of its own run, mm (19 in 20): what the joints between them
/// are cut and clocked off by, and no more than what their check distances leave.
fn doubt_to_own(moving: &MovingRun<'_>, own: usize, other: usize) -> Option<f64> {
    let hold = moving.hold.as_ref()?;
    #[expect(clippy::cast_precision_loss, reason = "a run has a few dozen pieces")]
    let joints = own.abs_diff(other) as f64;
    let of_joint = math::hypot(
        hold.tolerances.cut_length.mm(),
        REACH_MM * hold.tolerances.clock.rad(),
    );
    let held = core::f64::consts::SQRT_2 * hold.joint_sigma_mm;
    Some(NINETEEN_IN_TWENTY * (joints.sqrt() * of_joint).min(held))
}

/// ± of a sensor's place against a piece of another run, mm (19 in 20).
fn doubt_to_other(
    (moving, at): (&MovingRun<'_>, &PlaceOnRun),
    (other, number): (&MovingRun<'_>, usize),
    element: &TubeElement,
    joint: &Joint,
) -> Option<f64> {
    let piece = other.run.pieces.get(number)?;
    let near = piece
        .elements
        .iter()
        .map(|theirs| clearance_between(element, theirs, FINE_MM))
        .min_by(|a, b| a.gap_mm.total_cmp(&b.gap_mm))?;
    let toward = (near.on_second - near.on_first).direction()?;
    let before: f64 = other
        .run
        .pieces
        .iter()
        .take(number)
        .map(PlannedPiece::centre_line_mm)
        .sum();
    let middle = before + 0.5 * piece.centre_line_mm();
    let there = PlaceOnRun {
        place: near.on_second,
        piece: number,
        share: (middle / other.run.developed_length_mm().max(1.0)).clamp(0.0, 1.0),
    };
    let (own, theirs) = (moving.hold.as_ref()?, other.hold.as_ref()?);
    let doubt = own.doubt_to_run((moving.run, at), (theirs, other.run, &there), toward, joint)?;
    Some(doubt.plus_minus_mm())
}
