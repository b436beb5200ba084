//! What the readings of an end leave open is told in words, with the one reading to add.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod common;

use common::cars::{Car, Kind, TAPE_SIGMA_MM, place, random_car};
use tubewright_geometry::{Frame, Vector, math};
use tubewright_survey::{
    EndId, Freedom, Means, PointId, Reading, ReadingKind, SetupId, Target, Touch, adjust,
};

const END: EndId = EndId(0);
const CENTRE: Target = Target::Centre(END);
const MEANS: Means = Means {
    tape_sigma_mm: TAPE_SIGMA_MM,
    height_sigma_mm: 1.0,
    longest_mm: 3000.0,
};

fn rim(hours: f64) -> Target {
    Target::Rim {
        end: END,
        clock_rad: hours / 12.0 * math::TAU,
    }
}

/// A car whose one end has no readings, and exact readings otherwise.
fn car(seed: u64) -> Car {
    let mut car = random_car(
        seed,
        Kind {
            points: 0,
            ends: 1,
            lines: 0,
            heights: true,
            noise: 0.0,
        },
    );
    car.network.readings.retain(|reading| {
        let of_end = reading
            .kind
            .targets()
            .iter()
            .any(|target| !matches!(target, Target::Point(_)));
        !of_end && !matches!(reading.kind, ReadingKind::FaceInclination { .. })
    });
    car
}

fn add(car: &mut Car, kind: ReadingKind, value: f64) {
    let number = 1 + car.network.readings.iter().map(|r| r.number).max().unwrap();
    car.network
        .readings
        .push(Reading::new(number, kind, value, TAPE_SIGMA_MM));
}

fn tape(car: &mut Car, mark: usize, to: Target) {
    let from = Target::Point(PointId(mark));
    let length = place(car, from).distance(place(car, to));
    let kind = ReadingKind::Tape {
        from: Touch::place(from),
        to: Touch::place(to),
        burnt_mm: 0.0,
    };
    add(car, kind, length);
}

/// Centre and twelve o'clock are fixed: what is left is a turn about the line through both, and one line
/// to another place of the rim takes it away.
#[test]
fn a_turn_about_two_places_is_named_by_them() {
    for seed in 0..10 {
        let mut car = car(90 + seed);
        for mark in 0..4 {
            tape(&mut car, mark, CENTRE);
            tape(&mut car, mark + 1, rim(0.0));
        }
        let adjustment = adjust(&car.network).unwrap();
        let loose = adjustment.loose_end(END).unwrap();
        assert_eq!(loose.ways, 1, "seed {seed}");
        let Some(Freedom::TurnAbout(a, b)) = loose.freedom else {
            panic!("seed {seed}: {loose:?}");
        };
        assert!([a, b].contains(&CENTRE) && [a, b].contains(&rim(0.0)));
        let sentence = adjustment.loose_sentence(END, MEANS).unwrap();
        assert!(
            sentence.contains("can still turn about the line through end 0"),
            "{sentence}"
        );
        assert!(sentence.contains("; read "), "{sentence}");
        // The reading that it asks for takes it away.
        let first = adjustment
            .missing(MEANS)
            .into_iter()
            .find(|missing| missing.what == CENTRE)
            .unwrap();
        assert_eq!(first.readings, 1);
        let Some(ReadingKind::Tape { from, to, .. }) = first.first else {
            panic!("{first:?}");
        };
        let length = place(&car, from.target).distance(place(&car, to.target));
        add(&mut car, first.first.unwrap(), length);
        let adjustment = adjust(&car.network).unwrap();
        assert_eq!(adjustment.loose_end(END), None, "seed {seed}");
        assert_eq!(adjustment.loose_sentence(END, MEANS), None);
    }
}

/// The centre is fixed and the angle finder gives the slope of the face both ways: what is left is a turn
/// about the plumb line through the centre.
#[test]
fn slopes_of_the_face_leave_its_heading() {
    let mut car = car(7);
    for mark in 0..4 {
        tape(&mut car, mark, CENTRE);
    }
    for hours in [0.0, 3.0] {
        let along = car.ends[0].at_clock(hours / 12.0 * math::TAU).to_array();
        let slope = math::atan2(along[2], math::hypot(along[0], along[1]));
        add(
            &mut car,
            ReadingKind::FaceInclination {
                end: END,
                clock_rad: hours / 12.0 * math::TAU,
                setup: SetupId(0),
            },
            slope,
        );
    }
    let adjustment = adjust(&car.network).unwrap();
    let loose = adjustment.loose_end(END).unwrap();
    assert_eq!(
        (loose.ways, loose.freedom),
        (1, Some(Freedom::TurnAt(CENTRE)))
    );
}

/// Three lines to the centre leave three turns.
#[test]
fn a_centre_alone_leaves_three_ways() {
    let mut car = car(8);
    for mark in 0..4 {
        tape(&mut car, mark, CENTRE);
    }
    let adjustment = adjust(&car.network).unwrap();
    let loose = adjustment.loose_end(END).unwrap();
    assert_eq!((loose.ways, loose.freedom), (3, None));
    let sentence = adjustment.loose_sentence(END, MEANS).unwrap();
    assert!(
        sentence.contains("can still move in 3 ways; read ") && sentence.ends_with("then 2 more"),
        "{sentence}"
    );
}

/// The face of most flanges stands upright: ninety degrees at twelve o'clock fixes it as any other slope does.
#[test]
fn an_upright_face_is_fixed_by_its_slopes_and_lines_to_its_rim() {
    let mut car = car(9);
    let travel = Vector::new(1.0, 0.2, 0.0).direction().unwrap();
    car.ends[0] = Frame::upright(car.ends[0].origin, travel);
    for mark in 0..4 {
        tape(&mut car, mark, CENTRE);
    }
    for (clock_rad, slope) in [(0.0, math::FRAC_PI_2), (math::FRAC_PI_2, 0.0)] {
        let kind = ReadingKind::FaceInclination {
            end: END,
            clock_rad,
            setup: SetupId(0),
        };
        add(&mut car, kind, slope);
    }
    for mark in [0, 3, 4] {
        tape(&mut car, mark, rim(3.0));
    }
    let adjustment = adjust(&car.network).unwrap();
    assert_eq!(adjustment.loose_end(END), None);
    let found = adjustment.seen_from(&car.frame).unwrap().end(END).unwrap();
    let off = found.frame.travel().angle_to(travel);
    assert!(off < 1e-3, "{off}");
}
