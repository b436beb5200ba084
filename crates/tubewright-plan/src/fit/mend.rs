//! What to do when the two ends of a gap are not in line: a closing straight takes up length and little else, and it is a
//! tack before it or behind it that is broken and a part that is turned.

use tubewright_fit::order::{Act, Way};
use tubewright_geometry::{Vector, math};

use super::joints::joint_of;
use super::sheet::{FitSheet, FitStep};
use crate::routes::PlannedRun;
use crate::stages::END_TOLERANCE_DEG;

/// A tack that can be broken, and what turning its part does to the open end.
#[derive(Clone, Debug, PartialEq)]
pub struct Mend {
    /// The joint whose tack is broken.
    pub joint: String,
    /// Marks of the part that is turned there; what is tacked to it goes with it.
    pub marks: Vec<String>,
    /// The joint at the open end, which it moves.
    pub moves: String,
    /// Where a degree clockwise looking downstream moves that, mm.
    pub by_a_degree: Vector,
    /// From the joint to the end that it moves, mm: a face that is dressed swings the part by that.
    pub arm_mm: f64,
}

/// What a gap takes, and what is done where it does not.
#[derive(Clone, Debug, PartialEq)]
pub struct Gap {
    /// The joints at its two ends, upstream first.
    pub between: [String; 2],
    /// A straight closes it: its ends lie on one line.
    pub is_straight: bool,
    /// A bend closes it that is left longer on both legs: what lies in its plane is taken up by them.
    pub has_two_legs: bool,
    /// How far its ends may be out of line sideways: with its faces cut to the gap the part then kinks by no more than
    /// the pieces may arrive out of line, mm.
    pub sideways_mm: f64,
    /// Marks of the part that hangs at one of its ends with what is tacked to it, and can be moved where it hangs.
    pub hangs: Option<Vec<String>>,
    /// The tacks to break, the one that moves an end most first; at most two, the second being the one that moves an
    /// end most square to that.
    pub mends: Vec<Mend>,
}

/// A turn that moves an end by less than this a degree mends nothing, mm.
const LEAST_MM: f64 = 0.3;

impl Gap {
    /// The gap that a step closes; `runs` are split at their welds. `None` for a step that closes none.
    #[must_use]
    pub fn of(runs: &[PlannedRun], fit: &FitSheet, step: &FitStep) -> Option<Self> {
        if step.step.act != Act::Close {
            return None;
        }
        let at = |joint: &str| joint_of(runs, joint).map(|(_, joint)| joint.frame);
        let of_part = |part: usize| {
            let mut steps = fit.steps.iter();
            steps.find(|other| other.step.run == step.step.run && other.step.part == part)
        };
        let upstream = step.step.makes.clone();
        // What it closes to may stand already, brought by another run: the joint is that behind its last piece.
        let run = runs.iter().find(|run| run.name == step.run)?;
        let own = run
            .pieces
            .iter()
            .rposition(|piece| step.marks.contains(&piece.mark))?;
        let next = run.pieces.get(own + 1);
        let downstream = next.map_or(&run.last_joint, |next| &next.joint).clone();
        let (from, to) = (at(&upstream)?, at(&downstream)?);
        let long_mm = from.origin.distance(to.origin);
        let mut mends: Vec<Mend> = Vec::new();
        let mut add = |step: &FitStep, open: &str| {
            let (Some(joint), Some(end)) = (at(&step.step.makes), at(open)) else {
                return;
            };
            let turn = joint.travel().vector().cross(end.origin - joint.origin);
            mends.push(Mend {
                joint: step.step.makes.clone(),
                marks: step.marks.clone(),
                moves: open.to_owned(),
                by_a_degree: turn * 1.0_f64.to_radians(),
                arm_mm: end.origin.distance(joint.origin),
            });
        };
        let mut part = step.step.part;
        while let Some(before) = part.checked_sub(1).and_then(of_part)
            && before.step.act == Act::Tack(Way::Downstream)
        {
            add(before, &upstream);
            part -= 1;
        }
        let before = part.checked_sub(1).and_then(of_part);
        let mut part = step.step.part + 1;
        while let Some(behind) = of_part(part)
            && behind.step.act == Act::Tack(Way::Upstream)
        {
            add(behind, &downstream);
            part += 1;
        }
        let ends = [of_part(part), before].into_iter().flatten();
        let mut hanging = ends.filter(|end| end.step.act == Act::Hang && !end.is_there);
        let hangs = hanging.next().map(|end| end.marks.clone());
        // Along the gap itself the part is cut to length.
        let along = from.travel().vector();
        let has_two_legs = step.trim.is_some_and(|trim| trim.has_two_legs());
        let square = has_two_legs
            .then(|| along.cross(to.travel().vector()).direction())
            .flatten();
        let across = |mend: &Mend| match square {
            // In its own plane a bend takes it up.
            Some(square) => square.vector() * square.vector().dot(mend.by_a_degree),
            None => mend.by_a_degree - along * along.dot(mend.by_a_degree),
        };
        Some(Self {
            between: [upstream, downstream],
            is_straight: from.travel().angle_to(to.travel()).to_degrees() < END_TOLERANCE_DEG,
            has_two_legs,
            sideways_mm: long_mm * math::tan(END_TOLERANCE_DEG.to_radians()),
            hangs,
            mends: best_two(&mends, across),
        })
    }
}

/// The one that moves an end most, and the one that moves an end most square to it.
fn best_two(mends: &[Mend], across: impl Fn(&Mend) -> Vector) -> Vec<Mend> {
    let most = |by: &dyn Fn(&Mend) -> f64| {
        let worth = mends.iter().filter(|mend| by(mend) >= LEAST_MM);
        worth.max_by(|a, b| by(a).total_cmp(&by(b))).cloned()
    };
    let Some(first) = most(&|mend| across(mend).norm()) else {
        return Vec::new();
    };
    let way = across(&first).direction();
    let square = |mend: &Mend| {
        let moved = across(mend);
        let square_mm = way.map_or(0.0, |way| (moved - way.vector() * way.dot(moved)).norm());
        // One that moves it nearly the same way says nothing new.
        if square_mm < 0.5 * moved.norm() {
            0.0
        } else {
            square_mm
        }
    };
    let second = most(&square);
    core::iter::once(first).chain(second).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mend(joint: &str, by_a_degree: [f64; 3]) -> Mend {
        let [x, y, z] = by_a_degree;
        Mend {
            joint: joint.to_owned(),
            marks: vec![joint.replace('J', "L")],
            moves: "J9".to_owned(),
            by_a_degree: Vector::new(x, y, z),
            arm_mm: 100.0,
        }
    }

    /// Two tacks that move the end up, by 4 and by 3 mm, and one that moves it aside by 1: the best for what is too high and
    /// the one for what is too far aside. One that moves it along the gap mends nothing.
    #[test]
    fn the_second_tack_moves_the_end_where_the_first_does_not() {
        let all = vec![
            mend("J2", [0.0, 0.2, 3.0]),
            mend("J3", [0.0, 0.0, 4.0]),
            mend("J4", [0.0, 1.0, 0.5]),
            mend("J5", [9.0, 0.0, 0.0]),
        ];
        let across = |mend: &Mend| Vector::new(0.0, mend.by_a_degree.y, mend.by_a_degree.z);
        let best: Vec<String> = best_two(&all, across)
            .into_iter()
            .map(|mend| mend.joint)
            .collect();
        assert_eq!(best, ["J3", "J4"]);
        assert_eq!(best_two(&[mend("J5", [9.0, 0.1, 0.0])], across), Vec::new());
    }
}
