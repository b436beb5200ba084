//! Whether a torch gets round each weld that is made on the car.
//!
//! At each hour round the joint a torch is a cup just off the seam with its body behind it, outward, upright or leaned
//! along the tube or round it; the hour is reached when one way of holding it is clear of every body and of all runs,
//! the car at rest (common practice, no source). A hand needs more than the torch: what passes here is only what the torch
//! can reach.

use tubewright_build::model::Model;
use tubewright_check::{Finding, Rule, State};
use tubewright_geometry::{CentreLine, Frame, TubeElement, Vector, math};

use super::Judged;
use crate::fit::{Steel, fit_run, split_at_welds};
use crate::packet::{Joint, JointKind, joints_of};
use crate::routes::PlannedRun;
use crate::stages::{Supply, Surroundings};

/// The cup and the body of a torch: half as thick as it is, and from where to where it stands off the seam, mm (common
/// practice, no source).
const CUP: Stretch = Stretch {
    radius_mm: 8.0,
    from_to_mm: [13.0, 40.0],
};
const TORCH: Stretch = Stretch {
    radius_mm: 14.0,
    from_to_mm: [50.0, 130.0],
};

/// A stretch of a torch.
struct Stretch {
    radius_mm: f64,
    from_to_mm: [f64; 2],
}

/// A torch is leaned so far along the tube or round it, degrees (common practice, no source).
const LEAN_DEG: f64 = 45.0;

/// Hours round a joint that are looked at.
const HOURS: u32 = 12;

pub(super) fn findings(
    model: &Model,
    around: &Surroundings,
    judged: Judged<'_>,
    supply: Option<&Supply>,
) -> Vec<Finding> {
    let runs = judged.runs();
    let Some(supply) = supply.filter(|_| !runs.is_empty()) else {
        return Vec::new();
    };
    let split = split_at_welds(model, runs, &supply.whole);
    let on_the_bench: Vec<String> = split
        .iter()
        .flat_map(|run| fit_run(model, run, &supply.whole).0.parts)
        .flat_map(|part| part.on_the_bench)
        .collect();
    let steel = Steel::of(&model.shop);
    let joints = joints_of(model, runs, supply);
    let welds: Vec<&Joint> = joints
        .iter()
        .filter(|joint| joint.kind == JointKind::Weld && !on_the_bench.contains(&joint.mark))
        .filter(|joint| !steel.welded.contains(&joint.mark))
        .collect();
    let stated = |state, subject: &str, advice: String| {
        Finding::stated(Rule::TorchRoom, state, subject, advice)
    };
    if welds.is_empty() {
        return vec![stated(
            State::DoesNotApply,
            "all welds",
            "nothing is left to be welded on the car".to_owned(),
        )];
    }
    let shut: Vec<(&str, Shut)> = welds
        .iter()
        .map(|weld| (weld.mark.as_str(), shut_hours(weld, around, runs)))
        .filter(|(_, shut)| !shut.hours.is_empty())
        .collect();
    let reached = welds.len() - shut.len();
    let mut findings = Vec::new();
    if !shut.is_empty() {
        let subject = format!("{} of {} welds", shut.len(), welds.len());
        findings.push(stated(State::NotChecked, &subject, words(&shut)));
    }
    if reached > 0 {
        let subject = if shut.is_empty() {
            format!("all {reached} welds")
        } else {
            format!("{reached} of {} welds", welds.len())
        };
        findings.push(stated(State::Pass, &subject, String::new()));
    }
    findings
}

/// The hours at which no torch gets in, and what is in its way.
#[derive(Clone, Debug, Default, PartialEq)]
struct Shut {
    hours: Vec<u32>,
    by: Vec<String>,
}

fn words(shut: &[(&str, Shut)]) -> String {
    let told: Vec<String> = shut
        .iter()
        .map(|(mark, shut)| {
            format!(
                "{mark} {}, past {}",
                hours_words(&shut.hours),
                shut.by.join(" and ")
            )
        })
        .collect();
    format!(
        "no torch gets to the seam of {} (12 o'clock is the highest place, looking downstream): weld these sides on the \
         bench, the section taken down as it is tacked, or try torch and mirror there before the first tack",
        told.join("; ")
    )
}

/// `from 11 to 1 o'clock`, `at 6 o'clock`, `all round`.
fn hours_words(hours: &[u32]) -> String {
    let is_in = |hour: u32| hours.contains(&(hour % HOURS));
    let name = |hour: u32| {
        if hour.is_multiple_of(HOURS) {
            HOURS
        } else {
            hour % HOURS
        }
    };
    if (0..HOURS).all(is_in) {
        return "all round".to_owned();
    }
    // Each stretch begins where the hour before is open.
    let stretches = (0..HOURS).filter(|hour| is_in(*hour) && !is_in(hour + HOURS - 1));
    let stretches = stretches.map(|from| {
        let long = (1..HOURS).take_while(|step| is_in(from + step)).count();
        let to = (0..HOURS).nth(long).map_or(from, |step| from + step);
        if to == from {
            format!("at {} o'clock", name(from))
        } else {
            format!("from {} to {} o'clock", name(from), name(to))
        }
    });
    stretches.collect::<Vec<_>>().join(" and ")
}

fn shut_hours(weld: &Joint, around: &Surroundings, runs: &[PlannedRun]) -> Shut {
    let radius_mm = weld.tube.as_ref().map_or_else(
        || {
            let run = runs.iter().find(|run| run.name == weld.run);
            run.map_or(0.0, |run| 0.5 * run.od_mm)
        },
        |tube| 0.5 * tube.od.mm(),
    );
    let frame = Frame::upright(weld.frame.origin, weld.frame.travel());
    let mut shut = Shut::default();
    for hour in 0..HOURS {
        let mut by = Vec::new();
        let is_open = torches(&frame, hour, radius_mm).any(|torch| {
            let pieces = runs.iter().flat_map(|run| &run.pieces);
            let met = around
                .bodies
                .first_met(pieces, &torch, |body| body.allowance_mm);
            by.extend(met.clone());
            met.is_none()
        });
        if is_open {
            continue;
        }
        shut.hours.push(hour);
        for name in by {
            if !shut.by.contains(&name) {
                shut.by.push(name);
            }
        }
    }
    shut
}

/// The ways to hold a torch to the seam at an hour.
fn torches(frame: &Frame, hour: u32, radius_mm: f64) -> impl Iterator<Item = [TubeElement; 2]> {
    let clock_rad = math::TAU * f64::from(hour) / f64::from(HOURS);
    let out = frame.at_clock(clock_rad).vector();
    let along = frame.travel().vector();
    let round = along.cross(out);
    let seam = frame.origin + out * radius_mm;
    let lean = LEAN_DEG.to_radians();
    let (sin, cos) = math::sin_cos(lean);
    let ways: [Vector; 5] = [
        out,
        out * cos + along * sin,
        out * cos - along * sin,
        out * cos + round * sin,
        out * cos - round * sin,
    ];
    ways.into_iter().map(move |way| {
        [CUP, TORCH].map(|stretch| TubeElement {
            line: CentreLine::Segment {
                a: seam + way * stretch.from_to_mm[0],
                b: seam + way * stretch.from_to_mm[1],
            },
            radius: stretch.radius_mm,
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hours_are_told_in_stretches() {
        for (hours, told) in [
            (vec![6], "at 6 o'clock"),
            (vec![11, 0, 1], "from 11 to 1 o'clock"),
            (vec![0, 5, 6], "at 12 o'clock and from 5 to 6 o'clock"),
            ((0..12).collect(), "all round"),
        ] {
            assert_eq!(hours_words(&hours), told);
        }
    }

    /// A torch is held to the top of a tube of 57 mm: its cup begins 13 mm over the seam, and leaned it goes 45° off.
    #[test]
    fn a_torch_stands_off_its_seam() {
        let frame = Frame::upright(
            tubewright_geometry::Point::ORIGIN,
            tubewright_geometry::UnitVector::X,
        );
        let ways: Vec<[TubeElement; 2]> = torches(&frame, 0, 28.5).collect();
        assert_eq!(ways.len(), 5);
        let straight = ways[0][0].line.at(0.0);
        assert!((straight.z - 41.5).abs() < 1e-9, "{straight:?}");
        let leaned = ways[1][0].line.at(0.0);
        let lean = core::f64::consts::FRAC_1_SQRT_2;
        assert!((leaned.x - 13.0 * lean).abs() < 1e-9, "{leaned:?}");
        assert!((leaned.z - 28.5 - 13.0 * lean).abs() < 1e-9, "{leaned:?}");
    }
}
