//! The choice of hangers.
#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot build its frame fails"
)]

use super::tube;
use proptest::prelude::*;
use tubewright_chassis::{
    Beams, FREE_FALL_M_PER_S2, HangLimits, Rubber, RubberPlace, hang, settled,
};
use tubewright_geometry::{Point, Vector};

const RUBBER: Rubber = Rubber {
    upright_n_per_mm: 8.0,
    sideways_n_per_mm: 3.0,
};

const LIMITS: HangLimits = HangLimits {
    most_load_n: 60.0,
    least_load_n: 3.0,
    most_sag_mm: 10.0,
    apart_mm: 0.0,
    least_rubbers: 2,
    most_rubbers: 6,
};

/// A tube along x of so many parts of 100 mm with masses at some places, a rubber possible at every place.
fn line(parts: usize, masses: &[(usize, f64)]) -> (Beams, Vec<RubberPlace>) {
    let mut beams = Beams::new();
    for k in 0..=parts {
        let at = beams.place(Point::new(100.0 * k as f64, 0.0, 0.0));
        // It hangs like a pendulum and does not roll over.
        beams.spring(at, Vector::ZERO, [0.0; 3], [500.0, 0.0, 0.0]);
        if at > 0 {
            beams.member(at - 1, at, tube(57.0, 1.5));
        }
    }
    for (at, kg) in masses {
        beams.mass(*at, *kg).unwrap();
    }
    let places = (0..=parts)
        .map(|place| RubberPlace {
            place,
            arm: Vector::new(0.0, 0.0, 80.0),
            against_mm: 0.0,
        })
        .collect();
    (beams, places)
}

#[test]
fn a_bare_tube_hangs_on_two_places_that_lie_alike() {
    let (beams, places) = line(16, &[]);
    let hung = hang(&beams, &places, RUBBER, &LIMITS, &[])
        .unwrap()
        .unwrap();
    assert_eq!(hung.chosen.len(), 2);
    assert!(hung.is_within);
    assert_eq!(hung.chosen[0] + hung.chosen[1], 16, "{:?}", hung.chosen);
    let weight = beams.mass_kg() * FREE_FALL_M_PER_S2;
    for load in &hung.loads_n {
        assert!(
            (load - 0.5 * weight).abs() < 0.02 * weight,
            "{load} of {weight} N"
        );
    }
}

#[test]
fn a_heavy_can_has_its_rubbers_near() {
    let (beams, places) = line(20, &[(15, 9.0)]);
    let hung = hang(&beams, &places, RUBBER, &LIMITS, &[])
        .unwrap()
        .unwrap();
    assert!(hung.is_within, "{hung:?}");
    let nearest = hung.chosen.iter().map(|at| at.abs_diff(15)).min().unwrap();
    assert!(nearest <= 3, "{hung:?}");
}

#[test]
fn rubbers_keep_apart() {
    let (beams, places) = line(20, &[(10, 9.0)]);
    let near = hang(&beams, &places, RUBBER, &LIMITS, &[])
        .unwrap()
        .unwrap();
    let limits = HangLimits {
        apart_mm: 900.0,
        ..LIMITS
    };
    let far = hang(&beams, &places, RUBBER, &limits, &[])
        .unwrap()
        .unwrap();
    let apart = |hung: &tubewright_chassis::Hung| {
        let pairs = hung.chosen.windows(2).map(|pair| pair[1] - pair[0]);
        pairs.min().unwrap()
    };
    assert!(apart(&near) < 9 && apart(&far) >= 9, "{near:?} {far:?}");
}

/// A can of 4 kg at 700 mm of a tube of 2 m: the two rubbers that carry it best both stand ahead of 1.8 m. Where one is asked
/// for in the last 200 mm, and one in the first, each end has its own; where none can be there, that is told.
#[test]
fn each_group_has_a_rubber() {
    let (beams, places) = line(20, &[(7, 4.0)]);
    let free = hang(&beams, &places, RUBBER, &LIMITS, &[])
        .unwrap()
        .unwrap();
    assert!(free.chosen.iter().all(|place| *place < 18), "{free:?}");
    let asked = [vec![18, 19, 20], vec![0, 1]];
    let hung = hang(&beams, &places, RUBBER, &LIMITS, &asked)
        .unwrap()
        .unwrap();
    assert_eq!((hung.lacking, hung.is_within), (0, true), "{hung:?}");
    for group in &asked {
        assert!(
            group.iter().any(|place| hung.chosen.contains(place)),
            "{hung:?}"
        );
    }
    let nowhere = hang(&beams, &places, RUBBER, &LIMITS, &[Vec::new()])
        .unwrap()
        .unwrap();
    assert_eq!((nowhere.lacking, nowhere.is_within), (1, true));
}

#[test]
fn what_is_too_heavy_is_said_to_be() {
    let (beams, places) = line(8, &[(4, 80.0)]);
    let hung = hang(&beams, &places, RUBBER, &LIMITS, &[])
        .unwrap()
        .unwrap();
    assert!(!hung.is_within);
    assert!(hung.loads_n.iter().sum::<f64>() > 700.0);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]
    /// Loads add up to the weight and balance about every axis, whatever was chosen; statics by hand.
    #[test]
    fn loads_balance_the_weight(
        masses in prop::collection::vec((0_usize..20, 0.5_f64..6.0), 1..4),
        picks in prop::collection::btree_set(0_usize..=20, 2..6),
    ) {
        let (beams, places) = line(20, &masses);
        let chosen: Vec<RubberPlace> = picks.iter().map(|k| places[*k]).collect();
        let found = settled(&beams, &chosen, RUBBER, 2).unwrap();
        let weight = beams.mass_kg() * FREE_FALL_M_PER_S2;
        let sum: f64 = found.loads_n.iter().sum();
        prop_assert!((sum - weight).abs() < 1e-3 * weight, "{} N of {} N", sum, weight);
        // About the y axis through x = 0.
        let tube_kg = beams.mass_kg() - masses.iter().map(|(_, kg)| kg).sum::<f64>();
        let moment: f64 = tube_kg * 1000.0 + masses.iter().map(|(at, kg)| kg * 100.0 * *at as f64).sum::<f64>();
        let carried: f64 = picks.iter().zip(&found.loads_n).map(|(at, load)| load * 100.0 * *at as f64).sum();
        let moment = moment * FREE_FALL_M_PER_S2;
        prop_assert!((carried - moment).abs() < 2e-3 * moment, "{} and {} N mm", carried, moment);
        prop_assert!(found.frequencies_hz.iter().all(|f| f.is_finite() && *f >= 0.0));
    }

    /// What is chosen is no worse than any other set of as many, each settled anew.
    #[test]
    fn no_other_pair_is_better(
        masses in prop::collection::vec((0_usize..9, 0.5_f64..4.0), 1..3),
    ) {
        let (beams, places) = line(9, &masses);
        let hung = hang(&beams, &places, RUBBER, &LIMITS, &[]).unwrap().unwrap();
        prop_assume!(hung.chosen.len() == 2 && hung.is_within);
        for a in 0..places.len() {
            for b in a + 1..places.len() {
                let found = settled(&beams, &[places[a], places[b]], RUBBER, 1).unwrap();
                let sag = found.sags_mm.iter().copied().fold(f64::NEG_INFINITY, f64::max);
                let is_within = sag <= LIMITS.most_sag_mm
                    && found.loads_n.iter().all(|n| *n >= LIMITS.least_load_n && *n <= LIMITS.most_load_n);
                prop_assert!(!is_within || sag >= hung.sag_mm - 0.01, "{a} {b}: {sag} mm for {hung:?}");
            }
        }
    }
}
