//! Marks of a new solution: steel that stays keeps the mark that is painted on it, everything else
//! gets a number that was never given before.

use crate::routes::{MarkGiver, PlannedKind, PlannedPiece, PlannedRun};

/// Largest difference of two sizes that count as one, mm or radians: far below any shop's step.
const SAME: f64 = 1e-6;

/// Gives a solved run its marks. Pieces that are the same steel as a piece of `before`, in the same
/// order, keep its mark; joints keep theirs when the pieces on both sides stay and stand to each
/// other as they did. A joint that the run begins with and another run ends with has its mark already.
pub fn carry_marks(
    run: &mut PlannedRun,
    before: Option<&PlannedRun>,
    begins_with: Option<&str>,
    giver: &mut MarkGiver,
) {
    let old: &[PlannedPiece] = before.map_or(&[], |before| &before.pieces);
    let kept = longest_common(&run.pieces, old);
    let stands = |index: usize, was: usize| match (run.pieces.get(index), old.get(was)) {
        (Some(piece), Some(was)) => is_turned_alike(&piece.kind, &was.kind),
        _ => false,
    };
    let mut joints = Vec::with_capacity(run.pieces.len());
    let mut marks = Vec::with_capacity(run.pieces.len());
    for (index, was) in kept.iter().enumerate() {
        let upstream = index
            .checked_sub(1)
            .map(|above| kept.get(above).copied().flatten());
        let kept_joint = was.filter(|&was| match upstream {
            None => was == 0 && stands(index, was),
            Some(above) => above.is_some_and(|above| above + 1 == was) && stands(index, was),
        });
        marks.push(match was.and_then(|was| old.get(was)) {
            Some(piece) => piece.mark.clone(),
            None => giver.piece(&run.name),
        });
        let shared = begins_with.filter(|_| index == 0);
        joints.push(match (shared, kept_joint.and_then(|was| old.get(was))) {
            (Some(joint), _) => joint.to_owned(),
            (None, Some(piece)) => piece.joint.clone(),
            (None, None) => giver.joint(),
        });
    }
    let ends_alike = !old.is_empty() && kept.last().copied().flatten() == old.len().checked_sub(1);
    run.last_joint = match before {
        Some(before) if ends_alike => before.last_joint.clone(),
        _ => giver.joint(),
    };
    for (piece, (mark, joint)) in run.pieces.iter_mut().zip(marks.into_iter().zip(joints)) {
        piece.mark = mark;
        piece.joint = joint;
    }
}

/// For each piece of `new` the piece of `old` that is the same steel, as many as possible in order.
pub(super) fn longest_common(new: &[PlannedPiece], old: &[PlannedPiece]) -> Vec<Option<usize>> {
    let (rows, columns) = (new.len(), old.len());
    let is_same = |i: usize, j: usize| match (new.get(i), old.get(j)) {
        (Some(a), Some(b)) => is_same_steel(&a.kind, &b.kind),
        _ => false,
    };
    // best[i][j]: most pieces in common of new[i..] and old[j..].
    let mut best = vec![vec![0_usize; columns + 1]; rows + 1];
    let at = |best: &[Vec<usize>], i: usize, j: usize| {
        best.get(i).and_then(|row| row.get(j)).copied().unwrap_or(0)
    };
    for i in (0..rows).rev() {
        for j in (0..columns).rev() {
            let value = if is_same(i, j) {
                1 + at(&best, i + 1, j + 1)
            } else {
                at(&best, i + 1, j).max(at(&best, i, j + 1))
            };
            if let Some(slot) = best.get_mut(i).and_then(|row| row.get_mut(j)) {
                *slot = value;
            }
        }
    }
    let mut kept = vec![None; rows];
    let (mut i, mut j) = (0, 0);
    while i < rows && j < columns {
        if is_same(i, j) {
            if let Some(slot) = kept.get_mut(i) {
                *slot = Some(j);
            }
            i += 1;
            j += 1;
        } else if at(&best, i + 1, j) >= at(&best, i, j + 1) {
            i += 1;
        } else {
            j += 1;
        }
    }
    kept
}

/// Whether one piece of steel serves as either.
pub(super) fn is_same_steel(a: &PlannedKind, b: &PlannedKind) -> bool {
    let is_near = |a: f64, b: f64| (a - b).abs() <= SAME;
    match (a, b) {
        (PlannedKind::Straight { length_mm: a }, PlannedKind::Straight { length_mm: b }) => {
            is_near(*a, *b)
        }
        (
            PlannedKind::Bend {
                angle_rad: a,
                clr_mm: clr_a,
                ..
            },
            PlannedKind::Bend {
                angle_rad: b,
                clr_mm: clr_b,
                ..
            },
        ) => is_near(*a, *b) && is_near(*clr_a, *clr_b),
        (PlannedKind::Component { name: a, .. }, PlannedKind::Component { name: b, .. })
        | (PlannedKind::Crossover { name: a, .. }, PlannedKind::Crossover { name: b, .. }) => {
            a == b
        }
        _ => false,
    }
}

/// Whether two pieces stand alike to the piece before them.
pub(super) fn is_turned_alike(a: &PlannedKind, b: &PlannedKind) -> bool {
    match (a, b) {
        (PlannedKind::Bend { clock_rad: a, .. }, PlannedKind::Bend { clock_rad: b, .. })
        | (
            PlannedKind::Component { roll_rad: a, .. },
            PlannedKind::Component { roll_rad: b, .. },
        ) => (a - b).abs() <= SAME,
        _ => true,
    }
}
