//! What a gap is closed by does not take up, and what to do then.

use super::PrintJob;
use crate::fit::Gap;
use tubewright_geometry::Vector;

/// What the part that closes a gap does not take up, and which tack is broken then.
pub(super) fn words(job: &PrintJob<'_>, gap: &Gap) -> String {
    let l = job.lengths;
    let [from, to] = &gap.between;
    let mends: Vec<String> = gap
        .mends
        .iter()
        .map(|mend| {
            format!(
                "the tack at {} and turn {}, with what is tacked to it: 1° clockwise looking downstream moves {} {}",
                mend.joint,
                mend.marks.join("+"),
                mend.moves,
                moved_words(job, mend.by_a_degree)
            )
        })
        .collect();
    let hangs = gap.hangs.as_ref().map(|marks| {
        format!(
            "move {}, which hangs, with what is tacked to it, and look at its gaps again",
            marks.join("+")
        )
    });
    let breaks = (!mends.is_empty()).then(|| {
        format!(
            "break {}.{} Tape that joint again, tack it, then close",
            mends.join("; or "),
            dressed_words(job, gap)
        )
    });
    let then = match (hangs, breaks) {
        (Some(hangs), Some(breaks)) => format!("{hangs}; or {breaks}"),
        (Some(one), None) | (None, Some(one)) => one,
        (None, None) => {
            "no tack beside it helps: make the part before it or behind it again".to_owned()
        }
    };
    let sideways = l.about(gap.sideways_mm);
    let look = if gap.is_straight {
        format!(
            "lay a straight edge, or pull a cord, from {from} to {to}: the two ends may be out of line by {sideways} \
             sideways"
        )
    } else if gap.has_two_legs {
        format!(
            "hold it in the gap from {from} to {to}, turned to its clock: square to the plane of its bend it may miss \
             the middle of either face by {sideways}"
        )
    } else {
        format!(
            "hold it in the gap from {from} to {to}, turned to its clock: it may miss the middle of either face by \
             {sideways} sideways"
        )
    };
    let takes_up = if gap.has_two_legs {
        "LENGTH, along each of its two legs"
    } else {
        "LENGTH"
    };
    format!(
        "It takes up {takes_up}. Before it is cut {look}, which faces cut to the scribes take up. Where it is more do not \
         pull and do not kink it: {then}."
    )
}

/// What a face that is dressed does, for what no turn brings in line.
fn dressed_words(job: &PrintJob<'_>, gap: &Gap) -> String {
    let l = job.lengths;
    let Some(mend) = gap.mends.first() else {
        return String::new();
    };
    let od_mm = job
        .runs
        .iter()
        .find(|run| {
            run.pieces
                .iter()
                .any(|piece| mend.marks.contains(&piece.mark))
        })
        .map_or(0.0, |run| run.od_mm);
    if od_mm <= 0.0 {
        return String::new();
    }
    format!(
        " For what no turn brings in line dress the face at {}: {} off one side swings {} {} to that side.",
        mend.joint,
        l.fine(1.0),
        mend.moves,
        l.fine(mend.arm_mm / od_mm)
    )
}

/// *4.7 mm to the left and 0.4 mm up*: what is less than a quarter of a millimetre is left out.
fn moved_words(job: &PrintJob<'_>, by: Vector) -> String {
    const LEAST_MM: f64 = 0.25;
    let mut parts: Vec<(f64, &str)> = [
        (by.x, ["rearward", "forward"]),
        (by.y, ["to the right", "to the left"]),
        (by.z, ["up", "down"]),
    ]
    .into_iter()
    .map(|(mm, [more, less])| (mm.abs(), if mm < 0.0 { less } else { more }))
    .filter(|(mm, _)| *mm >= LEAST_MM)
    .collect();
    parts.sort_by(|a, b| b.0.total_cmp(&a.0));
    let parts: Vec<String> = parts
        .into_iter()
        .map(|(mm, way)| format!("{} {way}", job.lengths.fine(mm)))
        .collect();
    parts.join(" and ")
}
