//! The room of a part that stands off a run at one place and rides with the piece that it is welded to.

use tubewright_geometry::motion::{Motion, MotionSearch, clearance_in_motion};
use tubewright_geometry::{Solid, TubeElement};

use super::body::{MOST_POSITIONS, doubt_about, position_of};
use super::{MovingRun, TOLERANCE_MM};
use crate::bodies::PlacedBody;
use crate::held::PlaceOnRun;
use crate::places::Joint;

/// The tightest neighbour of a part that stands off a run.
#[derive(Clone, Debug, PartialEq)]
pub struct Room {
    /// Gap in mm, in the position in which it is least.
    pub gap_mm: f64,
    /// ± of it, mm (19 in 20); `None` when no readings tie the two together.
    pub plus_minus_mm: Option<f64>,
    /// The neighbour.
    pub to: String,
    /// The position in words, empty at rest.
    pub position: String,
}

impl Room {
    /// The gap less its ±, mm; without a ± nothing is sure.
    #[must_use]
    pub fn sure_mm(&self) -> f64 {
        self.plus_minus_mm
            .map_or(f64::NEG_INFINITY, |plus_minus| self.gap_mm - plus_minus)
    }
}

/// The gap of `part`, which stands off `moving` at `at`, to a body in every position.
pub(crate) fn room_to_body(
    moving: &MovingRun<'_>,
    at: PlaceOnRun,
    part: &TubeElement,
    body: &PlacedBody,
    joint: &Joint,
) -> Room {
    let fixed = Motion::FIXED;
    let motion = moving.piece_motions.get(at.piece).unwrap_or(&fixed);
    let is_together = *motion == body.motion.0 && motion.sway_mm() <= 0.0;
    let (motion, body_motion) = if is_together {
        (&fixed, &fixed)
    } else {
        (motion, &body.motion.0)
    };
    let found = clearance_in_motion(part, motion, &body.solid_in_car, body_motion, SEARCH);
    let doubt = doubt_about(moving, &at, body, body_motion, &found, joint);
    Room {
        gap_mm: found.gap_mm - body.allowance_mm,
        plus_minus_mm: doubt.map(|doubt| doubt.plus_minus_mm()),
        to: body.name.clone(),
        position: position_of(motion, body_motion, &found),
    }
}

/// Every piece of all runs but the one that a part is welded to, with its run and whether that is the part's own.
pub(crate) fn other_pieces<'a>(
    all: &'a [MovingRun<'a>],
    (own, piece): (&'a MovingRun<'_>, usize),
) -> impl Iterator<Item = (bool, &'a MovingRun<'a>, usize)> {
    all.iter().flat_map(move |run| {
        let is_own = run.run.name == own.run.name;
        (0..run.run.pieces.len())
            .filter(move |number| !(is_own && *number == piece))
            .map(move |number| (is_own, run, number))
    })
}

/// The gap of `part` to a piece of a run in every position. `doubt_mm` is the ± of the one against the
/// other, which the caller knows.
pub(crate) fn room_to_piece(
    moving: (&MovingRun<'_>, usize),
    part: &TubeElement,
    other: (&MovingRun<'_>, usize),
    is_one_run: bool,
    doubt_mm: Option<f64>,
) -> Option<Room> {
    let motion_of = |(run, piece): (&MovingRun<'_>, usize)| {
        run.piece_motions
            .get(piece)
            .cloned()
            .unwrap_or(Motion::FIXED)
    };
    let (mut motion, mut other_motion) = (motion_of(moving), motion_of(other));
    if is_one_run && motion == other_motion {
        (motion, other_motion) = (Motion::FIXED, Motion::FIXED);
    }
    let piece = other.0.run.pieces.get(other.1)?;
    piece
        .elements
        .iter()
        .map(|element| {
            let solid = Solid::Tube(*element);
            let found = clearance_in_motion(part, &motion, &solid, &other_motion, SEARCH);
            Room {
                gap_mm: found.gap_mm - piece.uncovered_mm,
                plus_minus_mm: doubt_mm,
                to: format!("{} of {}", piece.mark, other.0.run.name),
                position: position_of(&motion, &other_motion, &found),
            }
        })
        .min_by(|a, b| a.gap_mm.total_cmp(&b.gap_mm))
}

const SEARCH: MotionSearch = MotionSearch {
    tolerance_mm: TOLERANCE_MM,
    most_positions: MOST_POSITIONS,
};
