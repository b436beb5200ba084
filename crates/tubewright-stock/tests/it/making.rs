//! Buy or make, roads, fillers.

use crate::shop::eur;
use proptest::prelude::*;
use tubewright_stock::weld::{Metal, filler_choice};
use tubewright_stock::{BuyOrMake, Road, buy_or_make, minutes_between};

#[test]
fn a_cheap_bracket_far_away_is_made() {
    let sums = buy_or_make(&BuyOrMake {
        price: eur(1200),
        drive_min: 50.0,
        wait_min: 10.0,
        make_min: 40.0,
        material: eur(300),
        rate: eur(6000),
    });
    assert_eq!((sums.buy, sums.make), (eur(7200), eur(4300)));
    assert!((sums.even_min - 69.0).abs() < 1e-9);
}

proptest! {
    #[test]
    fn no_way_round_is_longer_than_the_table(
        roads in prop::collection::vec((0..6usize, 0..6usize, 1..60u32), 1..15),
    ) {
        let roads: Vec<Road> = roads.into_iter().map(|(a, b, minutes)| Road { a, b, minutes }).collect();
        let table = minutes_between(6, &roads);
        for road in &roads {
            prop_assert!(table[road.a][road.b].unwrap() <= road.minutes);
            for row in &table {
                if let Some(to_a) = row[road.a] {
                    prop_assert!(row[road.b].unwrap() <= to_a + road.minutes);
                }
            }
        }
        for (i, row) in table.iter().enumerate() {
            for (there, back) in row.iter().zip(&table) {
                prop_assert_eq!(*there, back[i]);
            }
        }
    }
}

#[test]
fn fillers_go_by_both_metals_whichever_way_round() {
    use Metal::{Aluminised, Austenitic304, Austenitic321, CastIron, Ferritic409, Mild};
    let cases = [
        (Austenitic304, Austenitic304, "ER308L"),
        (Austenitic304, Austenitic321, "ER347"),
        (Ferritic409, Ferritic409, "ER409Nb"),
        (Austenitic304, Ferritic409, "ER309L"),
        (Austenitic304, Mild, "ER309L"),
        (Mild, Aluminised, "ER70S-2"),
        (Austenitic304, CastIron, "ENi-CI"),
    ];
    for (a, b, filler) in cases {
        assert_eq!(filler_choice(a, b).filler, filler, "{a:?} to {b:?}");
        assert_eq!(filler_choice(a, b), filler_choice(b, a));
        assert_eq!(
            filler_choice(a, b).purge,
            a.is_stainless() || b.is_stainless()
        );
    }
    let coated = filler_choice(Aluminised, Austenitic304);
    assert!(
        coated
            .minds
            .iter()
            .any(|mind| mind.contains("grind") && mind.contains("fume"))
    );
    assert!(coated.minds.iter().any(|mind| mind.contains("dissimilar")));
    assert!(
        filler_choice(Ferritic409, Mild)
            .minds
            .iter()
            .any(|mind| mind.contains("ferritic"))
    );
}
