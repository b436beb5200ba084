use crate::runs;
use proptest::prelude::*;
use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64Mcg;
use tubewright_fit::PoseSpread;
use tubewright_fit::budget::{
    Budget, Source, Tacked, Workmanship, closing_trim_mm, closing_trims_mm,
};
use tubewright_fit::built::turned;
use tubewright_geometry::{Frame, Piece, UnitVector};

const WORK: Workmanship = Workmanship {
    cut_length_mm: 0.5,
    cut_angle_rad: 0.004,
    clock_rad: 0.009,
    bend_angle_rad: 0.009,
    weld_pull_mm: 0.2,
};

fn tacked(joined: &Frame, piece: &Piece) -> Tacked {
    Tacked {
        joined: *joined,
        open: piece.carry(joined),
        bends: u32::from(matches!(piece, Piece::Bend { .. })),
        is_welded: true,
    }
}

/// The sum of two random numbers in −1…1, scaled to standard deviation 1: near enough to normal here.
fn normal(rng: &mut Pcg64Mcg) -> f64 {
    (0..12).map(|_| rng.random_range(-0.5..0.5)).sum()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn carried_there_and_back_it_is_the_same(
        start in runs::start(), pieces in runs::run(), x in -900.0..900f64, y in -900.0..900f64,
    ) {
        let mut budget = Budget::starting(PoseSpread::sure(start.origin));
        let mut frame = start;
        for piece in &pieces {
            budget = budget.tacking(&tacked(&frame, piece), &WORK);
            frame = piece.carry(&frame);
        }
        let spread = budget.total();
        let there = spread.carried_to(frame.origin + UnitVector::X * x + UnitVector::Y * y);
        let back = there.carried_to(frame.origin);
        for direction in [UnitVector::X, UnitVector::Y, UnitVector::Z] {
            let (a, b) = (spread.sigma_along(frame.origin, direction), back.sigma_along(frame.origin, direction));
            prop_assert!((a - b).abs() < 1e-6 * (1.0 + a));
            // The same place is as sure from wherever it is counted.
            let c = there.sigma_along(frame.origin, direction);
            prop_assert!((a - c).abs() < 1e-6 * (1.0 + a));
        }
    }

    #[test]
    fn a_distance_that_is_kept_to_never_makes_anything_less_sure(
        start in runs::start(), pieces in runs::run(),
        rows in prop::collection::vec((prop::array::uniform6(-1.0..1.0f64), 0.5..9.0f64), 1..6),
        seen in prop::array::uniform6(-1.0..1.0f64),
    ) {
        let mut budget = Budget::starting(PoseSpread::sure(start.origin));
        let mut frame = start;
        for piece in &pieces {
            budget = budget.tacking(&tacked(&frame, piece), &WORK);
            frame = piece.carry(&frame);
        }
        let checked = budget.checked(&rows);
        let (before, after) = (budget.total().variance_of(&seen), checked.total().variance_of(&seen));
        prop_assert!(after <= before * (1.0 + 1e-9) + 1e-9, "{after} > {before}");
        // By source it is the same whole.
        let sum: f64 = Source::ALL.iter().map(|source| checked.of(*source).variance_of(&seen)).sum();
        prop_assert!((sum - after).abs() < 1e-6 * (1.0 + after));
        let whole = budget.total().checked(&rows).variance_of(&seen);
        prop_assert!((whole - after).abs() < 1e-6 * (1.0 + after));
    }
}

#[test]
fn the_spread_is_what_random_pieces_show() {
    let start = Frame::IDENTITY;
    let bend = |deg: f64, clock: f64| Piece::Bend {
        bend_rad: deg.to_radians(),
        clock_rad: clock.to_radians(),
        clr_mm: 85.5,
    };
    let pieces = [
        Piece::Straight { length_mm: 220.0 },
        bend(60.0, 30.0),
        Piece::Straight { length_mm: 400.0 },
        bend(45.0, -110.0),
        Piece::Straight { length_mm: 300.0 },
    ];
    let mut budget = Budget::starting(PoseSpread::sure(start.origin));
    let mut frame = start;
    for piece in &pieces {
        budget = budget.tacking(&tacked(&frame, piece), &WORK);
        frame = piece.carry(&frame);
    }
    let planned = frame;
    let mut rng = Pcg64Mcg::seed_from_u64(7);
    let mut sums = [0.0; 3];
    let builds = 20_000;
    for _ in 0..builds {
        let mut frame = start;
        for piece in &pieces {
            for axis in [frame.twelve(), frame.three(), frame.twelve(), frame.three()] {
                frame = turned(&frame, axis * (WORK.cut_angle_rad * normal(&mut rng)));
            }
            frame = frame.rolled(WORK.clock_rad * normal(&mut rng)).advanced(
                WORK.weld_pull_mm * normal(&mut rng) + WORK.cut_length_mm * normal(&mut rng),
            );
            frame = match *piece {
                Piece::Bend {
                    bend_rad,
                    clock_rad,
                    clr_mm,
                } => Piece::Bend {
                    bend_rad: bend_rad + WORK.bend_angle_rad * normal(&mut rng),
                    clock_rad,
                    clr_mm,
                },
                other => other,
            }
            .carry(&frame);
        }
        let off = (frame.origin - planned.origin).to_array();
        for (sum, off) in sums.iter_mut().zip(off) {
            *sum += off * off;
        }
    }
    let spread = budget.total();
    for (sum, direction) in sums
        .iter()
        .zip([UnitVector::X, UnitVector::Y, UnitVector::Z])
    {
        let shown = (sum / f64::from(builds)).sqrt();
        let said = spread.sigma_along(planned.origin, direction);
        assert!(
            (shown / said - 1.0).abs() < 0.06,
            "{shown} shown, {said} said"
        );
    }
}

#[test]
fn what_must_be_better_would_do() {
    let start = PoseSpread::sure(Frame::IDENTITY.origin)
        .with_shift(UnitVector::Z, 1.0)
        .with_turn(UnitVector::Y, 0.002, Frame::IDENTITY.origin);
    let part = Tacked {
        joined: Frame::IDENTITY,
        open: Frame::IDENTITY.advanced(900.0),
        bends: 0,
        is_welded: true,
    };
    let budget = Budget::starting(start).tacking(&part, &WORK);
    let place = part.open.origin;
    let now = budget.total().sigma_along(place, UnitVector::Z);
    let better = budget.what_must_be_better(place, UnitVector::Z, 0.8 * now);
    assert!(!better.is_empty(), "something alone could do it");
    for (source, factor) in better {
        assert!((0.0..1.0).contains(&factor));
        let row = budget.total().row_along(place, UnitVector::Z);
        let own = budget.of(source).variance_of(&row);
        let left = budget.total().variance_of(&row) - own + own * factor * factor;
        assert!((left.sqrt() - 0.8 * now).abs() < 1e-9);
    }
    assert!(
        budget
            .what_must_be_better(place, UnitVector::Z, 1.1 * now)
            .is_empty()
    );
}

#[test]
fn trim_covers_both_open_ends() {
    let at = Frame::IDENTITY.origin;
    let a = PoseSpread::sure(at).with_shift(UnitVector::X, 3.0);
    let b = PoseSpread::sure(at).with_shift(UnitVector::X, 4.0);
    assert!((closing_trim_mm(&a, &b, UnitVector::X) - 1.96 * 5.0).abs() < 0.01);
    assert!(closing_trim_mm(&a, &b, UnitVector::Y) < 1e-9);
}

/// Both ends are put off at random many times and the legs that reach across are worked out by a solver of
/// linear equations: 19 of 20 of them are no longer than planned by more than the trims, on each leg.
#[test]
fn each_leg_of_a_bend_that_closes_reaches_nineteen_times_in_twenty() {
    use nalgebra::{Matrix3, Vector3};
    let of = |v: UnitVector| Vector3::new(v.vector().x, v.vector().y, v.vector().z);
    let at = Frame::IDENTITY.origin;
    let into = UnitVector::X;
    let sigmas = [2.0, 5.0, 3.0];
    let loose = [UnitVector::X, UnitVector::Y, UnitVector::Z]
        .into_iter()
        .zip(sigmas)
        .fold(PoseSpread::sure(at), |spread, (axis, sigma)| {
            spread.with_shift(axis, sigma)
        });
    let sure = PoseSpread::sure(at);
    for degrees in [30.0f64, 60.0, 90.0, 135.0] {
        let (sine, cosine) = tubewright_geometry::math::sin_cos(degrees.to_radians());
        let out = (UnitVector::X.vector() * cosine + UnitVector::Y.vector() * sine)
            .direction()
            .unwrap();
        let trims = closing_trims_mm(&loose, &sure, into, out).unwrap();
        let basis = Matrix3::from_columns(&[of(into), of(out), of(UnitVector::Z)]);
        let inverse = basis.try_inverse().unwrap();
        // Sums of twelve even numbers stand for normal ones, from a congruential row of our own.
        let mut state = 7u64;
        let mut even = || {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1);
            f64::from(u32::try_from(state >> 33).unwrap()) / f64::from(1u32 << 31)
        };
        let mut normal = || (0..12).map(|_| even()).sum::<f64>() - 6.0;
        let tries = 20_000;
        let mut short = [0u32; 2];
        for _ in 0..tries {
            let off = Vector3::new(
                sigmas[0] * normal(),
                sigmas[1] * normal(),
                sigmas[2] * normal(),
            );
            let legs = inverse * off;
            for (leg, count) in short.iter_mut().enumerate() {
                *count += u32::from(legs[leg].abs() > trims[leg]);
            }
        }
        for count in short {
            let share = f64::from(count) / f64::from(tries);
            assert!((0.04..0.06).contains(&share), "{degrees}°: {share}");
        }
    }
    // Ten degrees take up a length and nothing else.
    let (sine, cosine) = tubewright_geometry::math::sin_cos(10f64.to_radians());
    let out = (UnitVector::X.vector() * cosine + UnitVector::Y.vector() * sine)
        .direction()
        .unwrap();
    assert_eq!(closing_trims_mm(&loose, &sure, into, out), None);
}
