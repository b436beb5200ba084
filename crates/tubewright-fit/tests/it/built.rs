use proptest::prelude::*;
use tubewright_fit::PoseSpread;
use tubewright_fit::built::{BuiltError, JointSlope, JointTape, built_joint, turned};
use tubewright_geometry::{Frame, Point, UnitVector, Vector};

const RADIUS_MM: f64 = 28.5;

fn marks() -> [Point; 6] {
    [
        Point::new(-300.0, -450.0, 80.0),
        Point::new(-250.0, 450.0, 90.0),
        Point::new(700.0, -420.0, 60.0),
        Point::new(650.0, 430.0, 300.0),
        Point::new(100.0, 30.0, 420.0),
        Point::new(150.0, -200.0, -250.0),
    ]
}

fn tape(frame: &Frame, mark: Point, hour: f64, slip_mm: f64) -> JointTape {
    let clock = hour * core::f64::consts::PI / 6.0;
    let place = frame.origin + frame.at_clock(clock) * RADIUS_MM;
    JointTape {
        mark,
        mark_covariance: [[0.5, 0.0, 0.0], [0.0, 0.5, 0.0], [0.0, 0.0, 0.5]],
        clock_rad: Some(clock),
        reads_mm: place.distance(mark) + slip_mm,
        sigma_mm: 1.0,
    }
}

fn loose_prior(at: Point) -> PoseSpread {
    let mut spread = PoseSpread::sure(at);
    for axis in [UnitVector::X, UnitVector::Y, UnitVector::Z] {
        spread = spread.with_shift(axis, 8.0).with_turn(axis, 0.05, at);
    }
    spread
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn true_readings_find_the_joint_within_its_plus_minus(
        shift in prop::array::uniform3(-6.0..6.0f64), turn in prop::array::uniform3(-0.02..0.02f64),
    ) {
        let planned = Frame::upright(Point::new(150.0, -60.0, 130.0), UnitVector::X);
        let real = turned(
            &Frame::from_axes(planned.origin + Vector::from_array(shift), planned.travel(), planned.twelve()),
            Vector::from_array(turn),
        );
        let tapes: Vec<JointTape> = marks().iter().zip([0.0, 2.0, 4.0, 6.0, 8.0, 10.0])
            .flat_map(|(mark, hour)| [tape(&real, *mark, hour, 0.0), tape(&real, *mark, hour + 3.0, 0.0)])
            .collect();
        let found = built_joint(&planned, &loose_prior(planned.origin), RADIUS_MM, &tapes, &[]).unwrap();
        prop_assert!(found.frame.origin.distance(real.origin) < 1.0);
        prop_assert!(found.frame.travel().angle_to(real.travel()) < 0.02);
        for direction in [UnitVector::X, UnitVector::Y, UnitVector::Z] {
            let off = direction.dot(found.frame.origin - real.origin);
            prop_assert!(off.abs() <= 1.96 * found.spread.sigma_along(found.frame.origin, direction) + 1e-6);
            // What was measured is surer than what was planned.
            prop_assert!(found.spread.sigma_along(found.frame.origin, direction) < 8.0);
        }
    }
}

#[test]
fn three_readings_help_where_the_pieces_leave_it_open() {
    let planned = Frame::upright(Point::new(150.0, -60.0, 130.0), UnitVector::X);
    let real = Frame::upright(planned.origin + UnitVector::Z * 4.0, UnitVector::X);
    let tapes = [
        tape(&real, marks()[4], 0.0, 0.0),
        tape(&real, marks()[0], 8.0, 0.0),
        tape(&real, marks()[3], 2.0, 0.0),
    ];
    let found = built_joint(
        &planned,
        &loose_prior(planned.origin),
        RADIUS_MM,
        &tapes,
        &[],
    )
    .unwrap();
    assert!(
        (found.frame.origin.z - 134.0).abs() < 1.0,
        "4 mm high is seen: {}",
        found.frame.origin.z
    );
}

#[test]
fn a_slip_of_a_hundred_is_doubtful_and_ten_is_named() {
    let planned = Frame::upright(Point::new(150.0, -60.0, 130.0), UnitVector::X);
    let mut tapes: Vec<JointTape> = marks()
        .iter()
        .zip([0.0, 2.0, 4.0, 6.0, 8.0, 10.0])
        .map(|(mark, hour)| tape(&planned, *mark, hour, 0.0))
        .collect();
    tapes[2].reads_mm += 12.0;
    let tight = PoseSpread::sure(planned.origin)
        .with_shift(UnitVector::X, 1.0)
        .with_shift(UnitVector::Y, 1.0)
        .with_shift(UnitVector::Z, 1.0);
    let found = built_joint(&planned, &tight, RADIUS_MM, &tapes, &[]).unwrap();
    let worst = found
        .standardised
        .iter()
        .enumerate()
        .max_by(|a, b| a.1.abs().total_cmp(&b.1.abs()))
        .map(|(index, _)| index);
    assert_eq!(worst, Some(2));
    assert!(found.standardised[2] > 3.29);
    tapes[2].reads_mm += 1000.0;
    assert!(matches!(
        built_joint(&planned, &tight, RADIUS_MM, &tapes, &[]),
        Err(BuiltError::FitsNowhere { .. })
    ));
}

#[test]
fn two_readings_are_too_few() {
    let planned = Frame::upright(Point::new(150.0, -60.0, 130.0), UnitVector::X);
    let tapes = [
        tape(&planned, marks()[0], 0.0, 0.0),
        tape(&planned, marks()[1], 3.0, 0.0),
    ];
    assert_eq!(
        built_joint(
            &planned,
            &loose_prior(planned.origin),
            RADIUS_MM,
            &tapes,
            &[]
        ),
        Err(BuiltError::TooFew { readings: 2 })
    );
}

/// The slope of a face that lies like this, read in a set-up that stands a little out of level, and off
/// by so much.
fn slope(frame: &Frame, hour: f64, slip_deg: f64) -> JointSlope {
    let up = Vector::new(0.02, -0.03, 1.0)
        .direction()
        .unwrap_or(UnitVector::Z);
    let along = frame.at_clock(hour * core::f64::consts::PI / 6.0);
    // Not by the formula under test: the rise of a rod of one metre that lies along the face.
    let rise = (frame.origin + along * 1000.0 - frame.origin).dot(up.vector());
    let level = (along * 1000.0 - up * rise).norm();
    JointSlope {
        clock_rad: hour * core::f64::consts::PI / 6.0,
        up,
        reads_rad: tubewright_geometry::math::atan2(rise, level) + slip_deg.to_radians(),
        sigma_rad: 0.2_f64.to_radians(),
    }
}

/// A joint that leans, with few tapes that hardly tell so.
fn leaning(lean: [f64; 3]) -> (Frame, Frame, Vec<JointTape>) {
    let travel = Vector::new(0.8, 0.1, -0.35)
        .direction()
        .unwrap_or(UnitVector::X);
    let planned = Frame::upright(Point::new(150.0, -60.0, 130.0), travel);
    let real = turned(&planned, Vector::from_array(lean));
    let tapes = marks()
        .iter()
        .zip([0.0, 4.0, 8.0])
        .map(|(mark, hour)| tape(&real, *mark, hour, 0.0))
        .collect();
    (planned, real, tapes)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn slopes_of_the_face_tell_how_it_leans(lean in prop::array::uniform3(-0.04..0.04f64)) {
        let (planned, real, tapes) = leaning(lean);
        let prior = loose_prior(planned.origin);
        let slopes = [slope(&real, 0.0, 0.0), slope(&real, 3.0, 0.0)];
        let without = built_joint(&planned, &prior, RADIUS_MM, &tapes, &[]).unwrap();
        let with = built_joint(&planned, &prior, RADIUS_MM, &tapes, &slopes).unwrap();
        // Leans toward twelve are turns about three: the slope toward twelve tells them to its own ±.
        let sigma = |built: &tubewright_fit::built::BuiltJoint| {
            let ahead = planned.origin + planned.travel() * 1000.0;
            built.spread.carried_to(ahead).sigma_along(ahead, planned.twelve())
        };
        prop_assert!(sigma(&with) < 0.5 * sigma(&without), "{} {}", sigma(&with), sigma(&without));
        let off = with.frame.travel().dot(planned.twelve().vector()) - real.travel().dot(planned.twelve().vector());
        prop_assert!(off.abs() < 0.3_f64.to_radians(), "{}", off.to_degrees());
        prop_assert_eq!(with.standardised.len(), tapes.len() + slopes.len());
    }
}

#[test]
fn a_slope_that_is_off_stands_out_and_one_with_the_wrong_sign_is_refused() {
    let (planned, real, tapes) = leaning([0.0, 0.01, 0.0]);
    let mut slopes = [slope(&real, 0.0, 0.0), slope(&real, 3.0, 0.0)];
    let prior = loose_prior(planned.origin);
    let mut wrong_sign = slopes;
    wrong_sign[0].reads_rad = -slopes[0].reads_rad;
    assert!(matches!(
        built_joint(&planned, &prior, RADIUS_MM, &tapes, &wrong_sign),
        Err(BuiltError::SlopeFitsNowhere { .. })
    ));
    slopes[0].reads_rad += 0.25;
    let found = built_joint(&planned, &prior, RADIUS_MM, &tapes, &slopes).unwrap();
    let worst = (0..found.standardised.len())
        .max_by(|a, b| {
            found.standardised[*a]
                .abs()
                .total_cmp(&found.standardised[*b].abs())
        })
        .unwrap();
    assert_eq!(worst, tapes.len());
    assert!(found.standardised[worst].abs() > 3.29);
}
