//! Readings, places and bodies.

use super::next;
use crate::api::{
    BodyView, LineView, MeasureView, PadKind, PlaceKind, PlaceView, ReadingView, ScanView,
    SetupView,
};
use crate::car::Car;
use tubewright_build::model::{Along, Reading, ReadingKind, Stance};
use tubewright_build::quantity::{write_inches, write_mm};
use tubewright_geometry::Length;
use tubewright_plan::bodies::ScanLook;
use tubewright_plan::scene::class_words;
use tubewright_plan::stages::Surroundings;
use tubewright_plan::survey::{NINETEEN_IN_TWENTY, guide};

pub(super) fn of(car: &Car) -> MeasureView {
    let build = &car.read.model.build;
    let around = car.job.as_ref().ok().map(|job| &job.around);
    let frame_problem = around
        .and_then(|around| around.measured.frame_problem.as_ref())
        .map(ToString::to_string);
    let guide = around.map(|around| {
        let found = guide(build, &around.measured, &around.bodies.placed);
        (around, found)
    });
    let test = around.map(|around| around.measured.adjustment.global_test());
    MeasureView {
        readings: build
            .readings
            .iter()
            .map(|reading| reading_view(reading, around))
            .collect(),
        places: places(car),
        setups: build
            .setups
            .iter()
            .map(|setup| SetupView {
                name: setup.name.to_string(),
                is_on_wheels: setup.stance == Stance::Wheels,
            })
            .collect(),
        spare: test.as_ref().map_or(0, |test| test.freedom),
        agree: test
            .as_ref()
            .filter(|test| test.freedom > 0)
            .map(|test| !test.is_too_high()),
        trouble: car.job.as_ref().err().cloned().or(frame_problem),
        next: guide
            .as_ref()
            .map(|(around, guide)| next::of(around, guide))
            .unwrap_or_default(),
        lacks: guide
            .as_ref()
            .map(|(_, guide)| next::lacks(guide))
            .unwrap_or_default(),
        lines: build
            .readings
            .iter()
            .filter_map(|reading| line(reading, around))
            .collect(),
    }
}

fn line(reading: &Reading, around: Option<&Surroundings>) -> Option<LineView> {
    let (from, to) = match &reading.kind {
        ReadingKind::Tape { from, to, .. }
        | ReadingKind::Offset { from, to, .. }
        | ReadingKind::Plumb { from, to, .. } => (from.at.name(), to.at.name()),
        _ => return None,
    };
    let doubtful = around.map_or(&[][..], |around| &around.measured.doubtful);
    Some(LineView {
        from: from.to_string(),
        to: to.to_string(),
        is_doubtful: doubtful.iter().any(|doubt| doubt.number == reading.number),
    })
}

fn reading_view(reading: &Reading, around: Option<&Surroundings>) -> ReadingView {
    let result = around.and_then(|around| {
        around
            .measured
            .adjustment
            .readings()
            .into_iter()
            .filter(|result| result.number == reading.number)
            .max_by(|a, b| a.residual.abs().total_cmp(&b.residual.abs()))
    });
    let doubtful = around.and_then(|around| {
        let doubtful = &around.measured.doubtful;
        doubtful.iter().find(|d| d.number == reading.number)
    });
    let pad = pad(&reading.kind);
    let is_angle = matches!(pad, PadKind::Slope | PadKind::Turn);
    let what = around
        .and_then(|around| {
            let network = around.measured.adjustment.network();
            Some(network.reading_name(&network.reading(reading.number)?.kind))
        })
        .unwrap_or_else(|| plain_name(&reading.kind));
    ReadingView {
        number: reading.number,
        what,
        reads: reading.reads_text().map(str::to_owned),
        off: result.as_ref().map(|result| {
            if is_angle {
                result.residual.to_degrees()
            } else {
                result.residual
            }
        }),
        unit: if is_angle { "°" } else { "mm" }.to_owned(),
        pad,
        is_dropped: !reading.is_used(),
        is_unchecked: result
            .as_ref()
            .is_some_and(|result| !result.set_aside && result.is_unchecked()),
        doubt: doubtful
            .zip(around)
            .map(|(doubtful, around)| doubtful.sentence(around.measured.adjustment.network())),
        was_probably: doubtful
            .filter(|_| !is_angle)
            .and_then(|doubtful| doubtful.was_probably())
            .map(|value| in_unit_of(reading.reads_text().unwrap_or_default(), value)),
    }
}

fn pad(kind: &ReadingKind) -> PadKind {
    match kind {
        ReadingKind::Tape { .. } | ReadingKind::Height { .. } | ReadingKind::Plumb { .. } => {
            PadKind::Length
        }
        ReadingKind::Offset { along, .. } => match along {
            Along::Line(_) => PadKind::Ahead,
            Along::Plumb { .. } => PadKind::Higher,
        },
        ReadingKind::Inclination { .. } | ReadingKind::Face { .. } => PadKind::Slope,
        ReadingKind::Bearing { .. } => PadKind::Turn,
        // A pair has no figure; a kind that the page does not know yet is corrected in the file.
        _ => PadKind::None,
    }
}

/// A length in the unit that `text` was typed in.
fn in_unit_of(text: &str, value_mm: f64) -> String {
    let length = Length::from_mm(value_mm);
    if text.contains("in") || text.contains('"') || text.contains("ft") {
        write_inches(length, 16)
    } else {
        write_mm(length, 0)
    }
}

/// Words for a reading that takes no part yet.
fn plain_name(kind: &ReadingKind) -> String {
    match kind {
        ReadingKind::Tape { from, to, .. }
        | ReadingKind::Offset { from, to, .. }
        | ReadingKind::Inclination { from, to, .. }
        | ReadingKind::Bearing { from, to, .. } => {
            format!("{} to {}", from.at.name(), to.at.name())
        }
        ReadingKind::Plumb { from, to, .. } => {
            format!("{} to {} on the floor", from.at.name(), to.at.name())
        }
        ReadingKind::Height { of, .. } => format!("height of {}", of.at.name()),
        ReadingKind::Symmetry { left, right } => {
            format!("{} mirrors {}", left.at.name(), right.at.name())
        }
        ReadingKind::Face { end, .. } => format!("face of {end}"),
        _ => "a reading".to_owned(),
    }
}

fn places(car: &Car) -> Vec<PlaceView> {
    let build = &car.read.model.build;
    let found = car.job.as_ref().ok().map(|job| &job.around.measured.places);
    let point = |name: &str, kind, place: &Option<String>| {
        let placed = found.and_then(|places| places.points.get(name));
        PlaceView {
            name: name.to_owned(),
            kind,
            place: place.clone(),
            at: placed.map(|placed| placed.point_in_car.to_array()),
            plus_minus: placed.map(|placed| NINETEEN_IN_TWENTY * placed.sigma_bound()),
            turn_plus_minus: None,
        }
    };
    let marks = build
        .marks
        .iter()
        .map(|mark| point(mark.name.as_str(), PlaceKind::Mark, &mark.place));
    let points = build
        .points
        .iter()
        .map(|measured| point(measured.name.as_str(), PlaceKind::Point, &measured.place));
    let ends = build.ends.iter().map(|end| {
        let placed = found.and_then(|places| places.ends.get(end.name.as_str()));
        PlaceView {
            name: end.name.to_string(),
            kind: PlaceKind::End,
            place: end.place.clone(),
            at: placed.map(|placed| placed.frame_in_car.origin.to_array()),
            plus_minus: placed.map(|placed| {
                let covariance = placed.covariance_at(placed.frame_in_car.origin);
                let largest = (0..3)
                    .filter_map(|axis| covariance.get(axis)?.get(axis).copied())
                    .fold(0.0, f64::max);
                NINETEEN_IN_TWENTY * largest.sqrt()
            }),
            turn_plus_minus: placed
                .map(|placed| NINETEEN_IN_TWENTY * placed.direction_sigma_rad().to_degrees()),
        }
    });
    marks.chain(points).chain(ends).collect()
}

pub(super) fn bodies(car: &Car) -> Vec<BodyView> {
    let build = &car.read.model.build;
    let around = car.job.as_ref().ok().map(|job| &job.around);
    build
        .bodies
        .iter()
        .map(|body| {
            let name = body.name.as_str();
            let placed = around.and_then(|around| around.bodies.body(name));
            let missing = around
                .and_then(|around| around.bodies.missing.iter().find(|(lost, _)| lost == name));
            BodyView {
                name: name.to_owned(),
                class: class_words(body.class).to_owned(),
                gap: placed.map_or(0.0, |placed| placed.gap_mm),
                is_moving: placed.is_some_and(|placed| !placed.motion.0.is_fixed()),
                plus_minus: placed.map(|placed| NINETEEN_IN_TWENTY * placed.sigma_bound()),
                missing: missing.map(|(_, why)| why.to_string()),
            }
        })
        .collect()
}

/// A scan that was put into the folder.
pub(crate) fn scan(file: String, look: ScanLook) -> ScanView {
    let count = |number: usize| u32::try_from(number).unwrap_or(u32::MAX);
    ScanView {
        file,
        triangles: count(look.triangles),
        points: count(look.points),
        size: look.size,
        warnings: look.warnings,
    }
}
