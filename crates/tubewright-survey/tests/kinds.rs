//! Contacts, set-ups, tacked joints, slips in words, and what is missing.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod common;

use common::cars::{Kind, place, random_car};
use tubewright_geometry::{Point, math};
use tubewright_survey::{
    Contact, EndId, Goal, Means, Network, Pair, PlaceHint, PointId, PointSpec, Reading,
    ReadingKind, SetupSpec, Side, Stance, Target, adjust, find_doubtful,
};

const MEANS: Means = Means {
    tape_sigma_mm: 1.5,
    height_sigma_mm: 1.0,
    longest_mm: 3000.0,
};

const EXACT: Kind = Kind {
    points: 5,
    ends: 1,
    lines: 5,
    heights: true,
    noise: 0.0,
};

/// Readings to the near, far, outer and inner side, to a hole's edge and with a burnt end lead to the
/// same places as readings to the middle.
#[test]
fn contacts_lead_to_the_middle() {
    let mut car = random_car(3, EXACT);
    let right = |p: PointId| car.network.points[p.0].hint.side == Some(Side::Right);
    // Sideways as the pairs tell it.
    let mut sideways = tubewright_geometry::Vector::ZERO;
    for pair in &car.network.pairs {
        let d = car.places[pair.right.0] - car.places[pair.left.0];
        sideways += d / d.norm();
    }
    let sideways = sideways / sideways.norm();
    let contacts = [
        (Contact::NearSide { width_mm: 40.0 }, 100.0),
        (Contact::FarSide { width_mm: 40.0 }, 0.0),
        (Contact::OuterSide { width_mm: 50.0 }, 0.0),
        (Contact::InnerSide { width_mm: 50.0 }, 0.0),
        (Contact::HoleNearEdge { diameter_mm: 12.0 }, 0.0),
        (Contact::HoleFarEdge { diameter_mm: 12.0 }, 25.4),
    ];
    let sides: Vec<bool> = (0..6).map(|i| right(PointId(i))).collect();
    let mut next = 0;
    for reading in &mut car.network.readings {
        let ReadingKind::Tape { from, to, burnt_mm } = &mut reading.kind else {
            continue;
        };
        let (Target::Point(a), Target::Point(b)) = (from.target, to.target) else {
            continue;
        };
        if b.0 >= 6 {
            continue;
        }
        let (contact, burnt) = contacts[next % contacts.len()];
        next += 1;
        to.contact = contact;
        *burnt_mm = burnt;
        let out = contact.outboard_mm() * if sides[b.0] { 1.0 } else { -1.0 };
        let touched = car.places[b.0] + sideways * out;
        reading.value = car.places[a.0].distance(touched) + contact.along_tape_mm() + burnt;
    }
    assert!(next > 30);
    let adjustment = adjust(&car.network).unwrap();
    assert!(adjustment.global_test().vtpv < 1e-12);
    let survey = adjustment.seen_from(&car.frame).unwrap();
    for (i, truth) in car.places.iter().enumerate() {
        let found = survey.point(PointId(i)).unwrap().place;
        assert!(
            found.distance(*truth) < 1e-5,
            "point {i}: {found:?} {truth:?}"
        );
    }
}

/// A second set-up on a slope of its own ties in by three marks and carries a fourth point's height.
#[test]
fn each_set_up_has_its_own_floor() {
    let mut car = random_car(5, EXACT);
    let lift = car
        .network
        .add_setup(SetupSpec::new("on the lift", Stance::Lift));
    let (tilt_x, tilt_y) = (0.03, -0.02);
    let height = |p: tubewright_geometry::Point| {
        (p.z + tilt_x * p.x + tilt_y * p.y + 1200.0)
            / f64::sqrt(1.0 + tilt_x * tilt_x + tilt_y * tilt_y)
    };
    for (number, p) in [(900, 0), (901, 1), (902, 4)] {
        let value = height(car.places[p]);
        let reading = Reading::height(number, PointId(p), lift, value, 1.0);
        car.network.readings.push(reading);
    }
    let adjustment = adjust(&car.network).unwrap();
    let found = adjustment.height(Target::Point(PointId(7)), lift).unwrap();
    assert!(
        (found.value - height(car.places[7])).abs() < 1e-5,
        "{found:?}"
    );
    let survey = adjustment.seen_from(&car.frame).unwrap();
    let lean = survey
        .floor(lift)
        .unwrap()
        .up
        .angle_to(survey.floor(tubewright_survey::SetupId(0)).unwrap().up);
    assert!((math::tan(lean) - math::hypot(tilt_x, tilt_y)).abs() < 1e-6);
}

/// A point with two lines is left open by name, the rest is usable, and the third line is asked for.
#[test]
fn what_is_not_fixed_is_named() {
    let mut car = random_car(6, Kind { ends: 0, ..EXACT });
    let open = car.network.add_point(PointSpec::new("bracket"));
    for (number, p) in [(900, 0), (901, 3)] {
        car.network.readings.push(Reading::tape(
            number,
            open,
            PointId(p),
            800.0 + 100.0 * f64::from(number - 900),
            1.5,
        ));
    }
    let adjustment = adjust(&car.network).unwrap();
    assert_eq!(adjustment.undetermined().points, [open]);
    let survey = adjustment.seen_from(&car.frame).unwrap();
    assert!(survey.point(open).is_none());
    for (i, truth) in car.places.iter().enumerate() {
        let found = survey.point(PointId(i)).unwrap().place;
        assert!(found.distance(*truth) < 1e-4, "point {i}");
    }
    let missing = adjustment.missing(MEANS);
    assert_eq!((missing.len(), missing[0].readings), (1, 1));
    let mut more = car.network.clone();
    let kind = missing[0].first.unwrap();
    more.readings.push(Reading::new(950, kind, 500.0, 1.0));
    assert!(adjust(&more).unwrap().undetermined().is_empty());
}

/// The gain that is promised for a reading is the gain had from it.
#[test]
fn the_next_reading_keeps_its_promise() {
    let car = random_car(
        8,
        Kind {
            noise: 1.0,
            lines: 3,
            ..EXACT
        },
    );
    let adjustment = adjust(&car.network).unwrap();
    let survey = adjustment.seen_from(&car.frame).unwrap();
    let point = PointId(9);
    let proposals = adjustment.next_readings(&survey, Goal::Point(point), MEANS, 3);
    let best = proposals[0];
    assert!(best.sigma_after < best.sigma_before);
    let mut network = car.network.clone();
    let value = best.expected.unwrap().value;
    let sigma = if matches!(best.kind, ReadingKind::Height { .. }) {
        1.0
    } else {
        1.5
    };
    network
        .readings
        .push(Reading::new(990, best.kind, value, sigma));
    let after = adjust(&network).unwrap().seen_from(&car.frame).unwrap();
    let s = after.point(point).unwrap().sigmas();
    let had = (s[0] * s[0] + s[1] * s[1] + s[2] * s[2]).sqrt();
    assert!(
        (had - best.sigma_after).abs() < 1e-3 * had,
        "{had} {best:?}"
    );
}

/// Rim and face readings at a tacked joint give its pose, and what is a metre on.
#[test]
fn a_tacked_joint_is_measured_as_a_pose() {
    let car = random_car(9, EXACT);
    let adjustment = adjust(&car.network).unwrap();
    let pose = adjustment
        .seen_from(&car.frame)
        .unwrap()
        .end(EndId(0))
        .unwrap();
    assert!(pose.frame.origin.distance(car.ends[0].origin) < 1e-5);
    assert!(pose.frame.travel().angle_to(car.ends[0].travel()) < 1e-7);
    let (near, far) = (pose.reach(0.0).1.sigma, pose.reach(1000.0).1.sigma);
    assert!(far > near && far < near + 1000.0 * 2.0 * pose.direction_sigma_rad());
}

#[test]
fn the_slip_is_said_in_one_sentence() {
    let mut car = random_car(11, Kind { ends: 0, ..EXACT });
    for reading in &mut car.network.readings {
        reading.value = reading.value.round();
    }
    let index = 20;
    let reading = &mut car.network.readings[index];
    let (number, right) = (reading.number, reading.value);
    reading.value += 100.0;
    let found = find_doubtful(&adjust(&car.network).unwrap());
    assert_eq!(found.doubtful.len(), 1);
    let said = found.doubtful[0].sentence(&car.network);
    let head = format!("reading {number}, ");
    assert!(said.starts_with(&head), "{said}");
    let tail = format!(": {} was probably {right} (", right + 100.0);
    assert!(
        said.contains(&tail) && said.contains("100 mm misread"),
        "{said}"
    );

    // To the neighbouring mark instead.
    let mut car = random_car(12, Kind { ends: 0, ..EXACT });
    let reading = &car.network.readings[index];
    let ReadingKind::Tape { from, to, .. } = reading.kind else {
        panic!("a tape line")
    };
    let number = reading.number;
    let other = Target::Point(PointId(
        (0..6)
            .find(|&p| {
                Target::Point(PointId(p)) != to.target && Target::Point(PointId(p)) != from.target
            })
            .unwrap(),
    ));
    let value = place(&car, from.target).distance(place(&car, other));
    car.network.readings[index].value = value;
    let found = find_doubtful(&adjust(&car.network).unwrap());
    let doubtful = &found.doubtful[0];
    assert_eq!(doubtful.number, number);
    assert!(
        doubtful
            .explanations
            .iter()
            .any(|e| e.instead_of() == Some(other)),
        "{}",
        doubtful.sentence(&car.network)
    );
}

/// A foot misread can turn a small car into its mirror image; with the slip set aside left is left again.
#[test]
fn a_slip_leaves_no_mirror_image_behind() {
    use tubewright_survey::{
        Along, CentreLineChoice, FrameChoice, LevelChoice, Network, Pair, PlaceHint, SetupId,
    };
    let mut network = Network::default();
    let floor = network.add_setup(SetupSpec::new("floor", Stance::Wheels));
    let places = [
        [0.0, -457.0, 280.0],
        [0.0, 457.0, 287.0],
        [1321.0, -483.0, 254.0],
        [1326.0, 488.0, 254.0],
    ]
    .map(tubewright_geometry::Point::from_array);
    let marks: Vec<PointId> = (0..4)
        .map(|i| {
            let side = [Side::Left, Side::Right][i % 2];
            let along = [Along::Front, Along::Rear][i / 2];
            network.add_point(PointSpec::hinted(
                format!("mark {i}"),
                PlaceHint {
                    side: Some(side),
                    along: Some(along),
                    level: None,
                },
            ))
        })
        .collect();
    let pairs = [0, 2].map(|i| Pair {
        left: marks[i],
        right: marks[i + 1],
    });
    network.pairs = pairs.to_vec();
    let mut number = 0;
    for a in 0..4 {
        for b in a + 1..4 {
            number += 1;
            let slip = if number == 4 { 304.8 } else { 0.0 };
            let read = places[a].distance(places[b]).round() + slip;
            let reading = Reading::tape(number, marks[a], marks[b], read, 1.5);
            network.readings.push(reading);
        }
    }
    for (mark, place) in marks.iter().zip(places) {
        number += 1;
        network
            .readings
            .push(Reading::height(number, *mark, floor, place.z, 1.0));
    }
    let found = find_doubtful(&adjust(&network).unwrap());
    assert_eq!(found.doubtful[0].number, 4);
    let survey = found
        .without_them
        .seen_from(&FrameChoice::Car {
            origin: marks[0],
            centre_line: CentreLineChoice::Pairs {
                front: pairs[0],
                rear: pairs[1],
            },
            level: LevelChoice::Floor(SetupId(0)),
        })
        .unwrap();
    for (mark, place) in marks.iter().zip(places) {
        let y = survey.point(*mark).unwrap().place.y;
        assert!(y * place.y > 0.0, "{mark:?} lies at y = {y}");
    }
}

/// A bearing counted the wrong way round fits only the car's mirror image. What was said of left and
/// right, front and rear stands, and the bearing is named.
#[test]
fn a_bearing_does_not_exchange_left_and_right() {
    use tubewright_survey::{
        Along, Handedness, Network, Pair, PlaceHint, ReadingKind, SlipKind, Target,
    };
    let places = [
        [0.0, -430.0, 180.0],
        [0.0, 430.0, 184.0],
        [1900.0, -440.0, 330.0],
        [1905.0, 436.0, 332.0],
        [400.0, 60.0, 250.0],
        [1500.0, -35.0, 262.0],
    ]
    .map(tubewright_geometry::Point::from_array);
    // Seen from above, turned clockwise from the line through the left marks: from rearwards toward
    // the car's left.
    let plan = |a: usize, b: usize| {
        let along = places[b] - places[a];
        tubewright_geometry::math::atan2(along.y, along.x)
    };
    let clockwise = plan(0, 2) - plan(4, 5);
    for wrong in [false, true] {
        let mut network = Network::default();
        let floor = network.add_setup(SetupSpec::new("floor", Stance::Wheels));
        for i in 0..places.len() {
            network.add_point(PointSpec::hinted(
                format!("place {i}"),
                PlaceHint {
                    side: (i < 4).then_some([Side::Left, Side::Right][i % 2]),
                    along: [Some(Along::Front), Some(Along::Rear), None][i / 2],
                    level: None,
                },
            ));
        }
        network.pairs = [0, 2]
            .map(|i| Pair {
                left: PointId(i),
                right: PointId(i + 1),
            })
            .to_vec();
        let mut number = 0;
        for a in 0..places.len() {
            number += 1;
            let height = Reading::height(number, PointId(a), floor, places[a].z, 1.0);
            network.readings.push(height);
            for b in a + 1..places.len() {
                number += 1;
                let read = places[a].distance(places[b]).round();
                let tape = Reading::tape(number, PointId(a), PointId(b), read, 1.5);
                network.readings.push(tape);
            }
        }
        let target = |i: usize| Target::Point(PointId(i));
        network.readings.push(Reading::new(
            99,
            ReadingKind::Bearing {
                from: target(4),
                to: target(5),
                base_from: target(0),
                base_to: target(2),
                setup: floor,
            },
            if wrong { -clockwise } else { clockwise },
            0.2_f64.to_radians(),
        ));
        let adjustment = adjust(&network).unwrap();
        let told_by = [Handedness::Measured, Handedness::Told][usize::from(wrong)];
        assert_eq!(adjustment.handedness(), told_by);
        let found = find_doubtful(&adjustment);
        let numbers: Vec<u32> = found.doubtful.iter().map(|d| d.number).collect();
        assert_eq!(numbers, if wrong { vec![99] } else { vec![] });
        if wrong {
            let said = &found.doubtful[0].explanations[0];
            assert!(said.kinds.contains(&SlipKind::WrongSign), "{said:?}");
        }
        let survey = found
            .without_them
            .seen_from(&tubewright_survey::FrameChoice::Car {
                origin: PointId(0),
                centre_line: tubewright_survey::CentreLineChoice::Pairs {
                    front: network.pairs[0],
                    rear: network.pairs[1],
                },
                level: tubewright_survey::LevelChoice::Floor(floor),
            })
            .unwrap();
        for (i, side) in [(0, -1.0), (1, 1.0), (4, 1.0), (5, -1.0)] {
            let y = survey.point(PointId(i)).unwrap().place.y;
            assert!(y * side > 0.0, "place {i} lies at y = {y}");
        }
    }
}

/// A height that was taken on the lift and written down as on its wheels is told.
#[test]
fn a_height_in_the_wrong_set_up_is_told() {
    let mut car = random_car(5, EXACT);
    let lift = car
        .network
        .add_setup(SetupSpec::new("on the lift", Stance::Lift));
    for (number, p) in [(900, 0), (901, 1), (902, 4), (903, 5), (904, 2)] {
        let value = car.places[p].z + 1312.0;
        let reading = Reading::height(number, PointId(p), lift, value, 1.0);
        car.network.readings.push(reading);
    }
    let wrong = car
        .network
        .readings
        .iter_mut()
        .find(|r| {
            matches!(r.kind, ReadingKind::Height { target, .. } if target.target == Target::Point(PointId(7)))
        })
        .unwrap();
    wrong.value = car.places[7].z + 1312.0;
    let number = wrong.number;
    let found = find_doubtful(&adjust(&car.network).unwrap());
    assert_eq!(found.doubtful[0].number, number);
    let words = found.doubtful[0].sentence(&car.network);
    assert!(words.ends_with("taken on the lift"), "{words}");
}

/// A place in the car's middle plane is as far from the left mark as from the right one: a line taken to the
/// wrong mark fits both, and the words say so and decide for neither.
#[test]
fn a_wrong_mark_and_its_mirror_twin_are_both_named() {
    let mut network = Network::default();
    let floor = network.add_setup(SetupSpec::new("floor", Stance::Wheels));
    let places = [
        ("front left", [0.0, -420.0, 420.0], Some(Side::Left)),
        ("front right", [0.0, 420.0, 420.0], Some(Side::Right)),
        ("middle left", [930.0, -390.0, 310.0], Some(Side::Left)),
        ("middle right", [930.0, 390.0, 310.0], Some(Side::Right)),
        ("rear left", [2050.0, -450.0, 500.0], Some(Side::Left)),
        ("rear right", [2050.0, 450.0, 500.0], Some(Side::Right)),
        ("gearbox", [640.0, 0.0, 230.0], None),
    ];
    for (name, _, side) in places {
        let hint = PlaceHint {
            side,
            ..PlaceHint::default()
        };
        network.add_point(PointSpec::hinted(name, hint));
    }
    for left in [0, 2, 4] {
        network.pairs.push(Pair {
            left: PointId(left),
            right: PointId(left + 1),
        });
    }
    let at = |i: usize| Point::from_array(places[i].1);
    let mut number = 0;
    for p in 0..places.len() {
        number += 1;
        let reading = Reading::height(number, PointId(p), floor, at(p).z, 1.0);
        network.readings.push(reading);
        for q in p + 1..places.len() {
            number += 1;
            let length = at(p).distance(at(q));
            // The line to the rear marks is left out, but for the one that went there by mistake.
            if (4..6).contains(&p) && q == 6 {
                continue;
            }
            let reading = Reading::tape(number, PointId(p), PointId(q), length, 1.5);
            network.readings.push(reading);
        }
    }
    let slipped = network
        .readings
        .iter_mut()
        .find(|r| r.kind.targets() == [Target::Point(PointId(0)), Target::Point(PointId(6))])
        .unwrap();
    slipped.value = at(4).distance(at(6));
    let number = slipped.number;
    let found = find_doubtful(&adjust(&network).unwrap());
    let doubtful = &found.doubtful[0];
    assert_eq!(doubtful.number, number);
    let sentence = doubtful.sentence(&network);
    assert!(
        sentence.contains("was perhaps taken from rear left, or taken from rear right")
            || sentence.contains("was perhaps taken from rear right, or taken from rear left"),
        "{sentence}"
    );
    assert_eq!((doubtful.went_to(), doubtful.was_probably()), (None, None));
}
