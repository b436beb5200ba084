//! Tacking, check distances, joints as built, welds.

use crate::api::{
    CheckDistanceView, FitStepView, FitView, HangerView, HungView, JointCheckView, JointView,
    OfferView, TapeSeenView, TrimView, WeldView,
};
use crate::derived::Shown;
use tubewright_geometry::math::{self, FRAC_PI_2};
use tubewright_plan::fit::{
    Act, Change, FitStep, FoundBy, JointCheck, JointFound, Offer, TapeSeen, Way, WeldFacts,
    joint_of, split_at_welds, weld_facts,
};
use tubewright_plan::hangers::{HungRuns, NoHanging};
use tubewright_plan::lengths::Lengths;
use tubewright_plan::routes::{PlannedRun, outlet_words};
use tubewright_plan::sensors::Sensor;
use tubewright_plan::survey::NINETEEN_IN_TWENTY;
use tubewright_stock::Money;

/// The fit sheet.
pub(crate) fn of(shown: &Shown) -> FitView {
    let job = shown.car.good_job();
    let sheet = shown.fit();
    let whole = shown.whole().and_then(Result::ok);
    let runs = whole.map_or_else(Vec::new, |whole| {
        split_at_welds(shown.car.model(), shown.car.runs(shown.way), &whole.plan)
    });
    let model = shown.car.model();
    FitView {
        version: shown.version.clone(),
        before: shown
            .car
            .runs(shown.way)
            .iter()
            .filter_map(|run| outlet_words(run, Lengths::Millimetres))
            .collect(),
        steps: sheet
            .map(|sheet| sheet.steps.iter().map(|own| step(own, &runs)).collect())
            .unwrap_or_default(),
        unclosed: sheet
            .map(|sheet| sheet.unclosed.clone())
            .unwrap_or_default(),
        bungs: shown.sensors().iter().map(bung).collect(),
        hung: shown.hung().iter().map(hung).collect(),
        welds: weld_facts(model, shown.car.runs(shown.way))
            .iter()
            .map(weld)
            .collect(),
        cautions: tubewright_stock::weld::CAUTIONS
            .iter()
            .map(|caution| (*caution).to_owned())
            .collect(),
        trouble: shown.whole().and_then(Result::err).map(str::to_owned),
        is_chosen: job.is_some_and(|job| job.chosen.is_some()),
    }
}

fn bung(sensor: &Sensor) -> String {
    let before = format!("before {} of {}", sensor.catalyst, sensor.run);
    match &sensor.found {
        Ok(place) => format!(
            "{before}: {}; {:.0} mm of room to {}",
            place.words(),
            place.room.gap_mm,
            place.room.to
        ),
        Err(_) => {
            format!("{before}: no place with room for a bung and its sensor; Prove says why")
        }
    }
}

fn hung(group: &HungRuns) -> HungView {
    let found = group.found.as_ref();
    HungView {
        runs: group.runs.join(" and "),
        trouble: found.err().map(NoHanging::words),
        is_within: found.is_ok_and(|found| found.is_within),
        kg: found.ok().map(|found| found.mass_kg),
        sag: found.ok().map(|found| found.sag_mm),
        hangers: found.map_or_else(
            |_| Vec::new(),
            |found| {
                let hangers = found.hangers.iter().map(|hanger| HangerView {
                    mark: hanger.mark.clone(),
                    place: hanger.place.words(),
                    newton: hanger.load_n,
                });
                hangers.collect()
            },
        ),
    }
}

fn step(step: &FitStep, runs: &[PlannedRun]) -> FitStepView {
    let marks = step.marks.join(" + ");
    let made = &step.step.makes;
    FitStepView {
        number: step.step.number,
        run: step.run.clone(),
        marks: step.marks.clone(),
        act: match step.step.act {
            Act::Hang if step.is_there => {
                format!("Look whether {marks} stands where its tapes say: it stays as it is")
            }
            Act::Hang => format!("Hang {marks} where its tapes say"),
            Act::Bolt | Act::Tack(Way::Downstream) => {
                let mut act = step.puts_on().chars();
                let first: String = act
                    .next()
                    .into_iter()
                    .flat_map(char::to_uppercase)
                    .collect();
                format!("{first}{} {marks} on at {made}", act.as_str())
            }
            Act::Tack(Way::Upstream) => {
                format!("Tack {marks} on at {made}, against the flow from what hangs there")
            }
            Act::Close => format!("{marks} closes: last of this stretch"),
        },
        makes: made.clone(),
        trim: step.trim.map(|trim| TrimView {
            words: trim.words(Lengths::Millimetres),
            lack: trim.lack_words(Lengths::Millimetres),
        }),
        held: step.held.map(|held| held.how().to_owned()),
        checks: step.checks.iter().map(|own| check(own, runs)).collect(),
    }
}

fn check(check: &JointCheck, runs: &[PlannedRun]) -> JointCheckView {
    JointCheckView {
        joint: check.joint.clone(),
        slopes: joint_of(runs, &check.joint).map(|(_, joint)| {
            [0.0, FRAC_PI_2].map(|clock_rad| {
                let out = joint.frame.at_clock(clock_rad).vector();
                math::asin(out.z.clamp(-1.0, 1.0)).to_degrees()
            })
        }),
        distances: check
            .distances
            .iter()
            .map(|distance| CheckDistanceView {
                mark: distance.mark.clone(),
                hour: hour(distance.clock_rad),
                reads: distance.distance_mm,
            })
            .collect(),
        tolerance: check.tolerance.most_mm,
        tolerance_by: check.tolerance_by.clone(),
        plus_minus_before: check.plus_minus_before_mm,
        plus_minus_after: check.plus_minus_after_mm,
        better: check
            .better
            .iter()
            .map(|(source, share)| {
                format!("{} {:.0} % better", source.words(), (1.0 - share) * 100.0)
            })
            .collect(),
        too_few: check.too_few.clone(),
        advice: check.advice(Lengths::Millimetres),
        loose: check
            .loose
            .as_ref()
            .filter(|_| !check.distances.is_empty())
            .map(|loose| (loose.words.to_owned(), loose.plus_minus_mm)),
    }
}

/// Hours on a clock face, 12 for twelve.
fn hour(clock_rad: f64) -> f64 {
    let half_hours = (clock_rad.to_degrees() / 15.0).round().rem_euclid(24.0);
    if half_hours < 0.5 {
        12.0
    } else {
        half_hours / 2.0
    }
}

fn weld(weld: &WeldFacts) -> WeldView {
    WeldView {
        run: weld.run.clone(),
        materials: format!("{} to {}", weld.materials.0, weld.materials.1),
        filler: format!("{} ({})", weld.filler.filler, weld.filler.why),
        settings: format!(
            "Start near {:.0} A; close up to no gap, at most {:.1} mm; step at most {:.1} mm; about {:.0} mm of 1.6 mm wire to a joint.",
            weld.amps, weld.gap_most_mm, weld.step_most_mm, weld.wire_mm
        ),
        minds: weld
            .filler
            .minds
            .iter()
            .map(|minds| (*minds).to_owned())
            .collect(),
        purge: weld.filler.purge.then(|| {
            format!(
                "{:.1} l inside; at {:.0} l/min {:.0} min for five changes, {:.0} min for ten, before the arc; then a trickle. Feed low, vent high. Perfectly mixed, five changes still leave {:.0} ppm of oxygen: a meter decides.",
                weld.purge_litres,
                weld.purge_flow_l_min,
                weld.purge_five_min,
                weld.purge_ten_min,
                weld.oxygen_after_five_ppm
            )
        }),
    }
}

/// A joint as built.
pub(crate) fn joint(found: &JointFound, offers: &[Offer], why_none: String) -> JointView {
    let covariance = &found.found.covariance;
    JointView {
        joint: found.planned.mark.clone(),
        off: found.off.to_array(),
        plus_minus: core::array::from_fn(|axis| {
            let variance = covariance.get(axis).and_then(|row| row.get(axis));
            NINETEEN_IN_TWENTY * variance.copied().unwrap_or(0.0).max(0.0).sqrt()
        }),
        lean: found.lean_rad.to_degrees(),
        roll: found.roll_rad.to_degrees(),
        by: match found.by {
            FoundBy::Tape => "by the tape alone",
            FoundBy::TapeAndPieces => "by the tape and what the pieces before it can be",
        }
        .to_owned(),
        loose: found.loose.clone(),
        readings: found.readings.iter().map(tape_seen).collect(),
        offers: (1..).zip(offers).map(offer).collect(),
        why_none,
    }
}

fn tape_seen(seen: &TapeSeen) -> TapeSeenView {
    TapeSeenView {
        from: seen.from.clone(),
        hour: seen.clock_rad.map(hour),
        reads: seen.reads_mm,
        planned: seen.planned_mm,
        left_over: seen.residual_mm,
        is_doubtful: seen.is_doubtful,
    }
}

fn offer((number, offer): (usize, &Offer)) -> OfferView {
    OfferView {
        number,
        what: offer.kind.words().to_owned(),
        is_good: offer.holds(),
        arrives_off: offer.arrives_off_mm,
        arrives_plus_minus: offer.arrives_plus_minus_mm,
        arrives_turn: offer.arrives_off_rad.to_degrees(),
        least_room: offer.least_room_mm(),
        failing: offer
            .failing()
            .map(|finding| format!("{}: {}", finding.subject, finding.advice))
            .collect(),
        changes: offer.changes.iter().map(change).collect(),
        lost: offer.lost.clone(),
        recut: offer.recut.clone(),
        price: offer.price.as_ref().map(|price| {
            let dearer = match offer.dearer_minor {
                Some(0) | None => "as before".to_owned(),
                Some(dearer) => Money::new(dearer, price.currency).more_or_less(),
            };
            format!("still to buy {price}, {dearer}")
        }),
        missing: offer.missing.clone(),
    }
}

fn change(change: &Change) -> String {
    let saw = |is_cut: bool| if is_cut { " (cut already)" } else { "" };
    match change {
        Change::Clock {
            mark,
            from_rad,
            to_rad,
        } => format!(
            "{mark} clock {:+.0}° instead of {:+.0}°",
            to_rad.to_degrees(),
            from_rad.to_degrees()
        ),
        Change::Length {
            part,
            from_mm,
            to_mm,
            is_cut,
            ..
        } => format!(
            "{part} {to_mm:.1} mm instead of {from_mm:.1} mm{}",
            saw(*is_cut)
        ),
        Change::Angle {
            mark,
            from_rad,
            to_rad,
            is_cut,
        } => format!(
            "{mark} {:.0}° instead of {:.0}°{}",
            to_rad.to_degrees(),
            from_rad.to_degrees(),
            saw(*is_cut)
        ),
        Change::Face(face) => face.words(),
        Change::Dropped { mark, is_cut } => format!("{mark} drops out{}", saw(*is_cut)),
        Change::New { mark } => format!("{mark} is new"),
    }
}
