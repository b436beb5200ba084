//! Whole requests.

use proptest::prelude::*;
use tubewright_geometry::Length;
use tubewright_stock::{
    MissingWhy, OnHand, OnHandKind, PartPlace, PlanError, PriceBreak, Proof, Source, Spare,
    StockRequest, Substitute, Supplier, plan_stock, substitutes, verify, without,
};

use crate::shop::{bar, bend, eur, offer, shop, straight, turn};

fn bought(request: &StockRequest) -> Vec<(String, u32)> {
    let plan = plan_stock(request).unwrap();
    assert_eq!(plan.proof, Proof::Optimal);
    plan.buys
        .into_iter()
        .map(|buy| (buy.item, buy.quantity))
        .collect()
}

#[test]
fn a_short_straight_is_the_leg_of_its_bend_and_saves_tube_and_weld() {
    let request = shop(vec![
        turn("B1", 40.0, 0.0),
        straight("S2", 80.0),
        turn("B3", 30.0, 0.0),
    ]);
    let plan = plan_stock(&request).unwrap();
    // 40 + 30 and a kerf fit into one 90; the 80 mm straight is the leg of one of them.
    assert_eq!(plan.price, eur(3200));
    assert_eq!(plan.welds, 1);
    assert_eq!(plan.cost, eur(3200 + 900));
    let part = plan.cuts[0]
        .parts
        .iter()
        .find(|part| part.serves.len() == 2)
        .unwrap();
    let PartPlace::Arc {
        keeps_a, keeps_b, ..
    } = part.place
    else {
        panic!("a bend")
    };
    assert_eq!(keeps_a + keeps_b, Length::from_mm(80.0));
}

#[test]
fn a_straight_longer_than_a_leg_is_shared_by_two_legs() {
    let request = shop(vec![
        turn("B1", 90.0, 0.0),
        straight("S2", 150.0),
        turn("B3", 90.0, 0.0),
    ]);
    let plan = plan_stock(&request).unwrap();
    assert_eq!(plan.price, eur(6400));
    assert_eq!(
        plan.welds, 1,
        "one weld in the straight instead of two at its ends"
    );
}

#[test]
fn two_legs_share_a_straight_so_that_another_comes_out_of_what_is_left() {
    // 100 mm between two bends, one leg of which gives the 20 mm as well: 100 - 20 - 2 mm of kerf leaves
    // 78 mm of it. With a leg used whole, the 20 mm or the 100 mm would need a tube.
    let request = shop(vec![
        straight("S1", 20.0),
        straight("S2", 37.0),
        turn("B3", 12.0, 0.0),
        turn("B4", 12.0, 0.0),
        straight("S5", 100.0),
        turn("B6", 63.0, 0.0),
    ]);
    let plan = plan_stock(&request).unwrap();
    assert_eq!(plan.proof, Proof::Optimal);
    assert_eq!((plan.price, plan.welds), (eur(5600), 3), "{:?}", plan.cuts);
}

#[test]
fn what_costs_nothing_is_planned_like_everything_else() {
    let pieces: Vec<_> = (0..7)
        .flat_map(|n| {
            let at = f64::from(n);
            [
                turn(&format!("B{n}"), 14.0 + 9.0 * at, 0.0),
                straight(&format!("S{n}"), 55.0 + 41.0 * at),
            ]
        })
        .collect();
    // All of it free, then the welds too, then as much on hand as anyone has.
    let mut request = shop(pieces);
    for offer in &mut request.offers {
        offer.prices[0].each = eur(0);
    }
    let plan = plan_stock(&request).unwrap();
    assert!(plan.is_full());
    assert_eq!(plan.price, eur(0));
    request.rates.weld = eur(0);
    assert_eq!(plan_stock(&request).unwrap().cost, eur(0));
    request.on_hand = vec![OnHand {
        name: "rack".to_owned(),
        kind: OnHandKind::Item("bend 90".to_owned()),
        count: 100_000,
    }];
    assert!(plan_stock(&request).unwrap().is_full());
}

#[test]
fn a_straight_too_long_for_legs_is_cut_from_tube() {
    let request = shop(vec![
        turn("B1", 90.0, 0.0),
        straight("S2", 250.0),
        turn("B3", 90.0, 0.0),
    ]);
    let plan = plan_stock(&request).unwrap();
    assert_eq!((plan.price, plan.welds), (eur(6400 + 4100), 2));
}

#[test]
fn a_leg_left_over_gives_a_short_straight_elsewhere() {
    // The 70 mm straight has no bend beside it; a leg of the 90 gives it for one cut.
    let mut request = shop(vec![turn("B1", 90.0, 0.0), straight("S2", 300.0)]);
    request.runs[0].pieces.insert(1, straight("S0", 70.0));
    request.runs[0].pieces.swap(0, 1);
    request.on_hand.push(OnHand {
        name: "offcut".to_owned(),
        kind: OnHandKind::Measured(bar(301.0)),
        count: 1,
    });
    let plan = plan_stock(&request).unwrap();
    assert_eq!(plan.price, eur(3200));
}

#[test]
fn on_hand_and_offcuts_come_first() {
    let mut request = shop(vec![turn("B1", 60.0, 0.0), straight("S2", 400.0)]);
    request.on_hand.push(OnHand {
        name: "cut 90".to_owned(),
        kind: OnHandKind::Measured(bend(62.5, [0.0, 40.0])),
        count: 1,
    });
    assert_eq!(bought(&request), [("tube 2 m".to_owned(), 1)]);
    request.on_hand.push(OnHand {
        name: "shelf".to_owned(),
        kind: OnHandKind::Item("tube 2 m".to_owned()),
        count: 1,
    });
    let plan = plan_stock(&request).unwrap();
    assert_eq!(plan.price, eur(0));
    let sources: Vec<_> = plan.cuts.iter().map(|cut| cut.source.clone()).collect();
    assert!(sources.contains(&Source::OnHand("cut 90".to_owned())));
    assert!(sources.contains(&Source::OnHand("shelf".to_owned())));
}

#[test]
fn a_measured_angle_that_falls_short_is_not_used() {
    let mut request = shop(vec![turn("B1", 45.0, 0.0)]);
    request.on_hand.push(OnHand {
        name: "tired".to_owned(),
        kind: OnHandKind::Measured(bend(44.6, [100.0, 100.0])),
        count: 1,
    });
    assert_eq!(bought(&request), [("bend 45".to_owned(), 1)]);
}

#[test]
fn a_price_break_can_make_more_cheaper() {
    let pieces = vec![
        turn("B1", 80.0, 0.0),
        turn("B2", 80.0, 0.0),
        turn("B3", 80.0, 0.0),
    ];
    let mut request = shop(pieces);
    request.offers[0].prices.push(PriceBreak {
        from: 4,
        each: eur(2000),
    });
    // Three cost 96.00, four cost 80.00.
    assert_eq!(bought(&request), [("bend 90".to_owned(), 4)]);
}

#[test]
fn a_delivery_charge_decides_between_suppliers() {
    let mut request = shop(vec![turn("B1", 80.0, 0.0)]);
    request.suppliers.push(Supplier {
        name: "mail".to_owned(),
        delivery: eur(1500),
    });
    request.offers.push(offer("bend 90", "mail", 1800));
    let plan = plan_stock(&request).unwrap();
    assert_eq!((plan.price, plan.deliveries.len()), (eur(3200), 0));
    request.runs[0].pieces.push(turn("B2", 80.0, 0.0));
    let plan = plan_stock(&request).unwrap();
    assert_eq!(
        (plan.price, plan.deliveries.len()),
        (eur(2 * 1800 + 1500), 1)
    );
}

#[test]
fn what_is_not_to_be_had_is_named() {
    let mut request = shop(vec![
        turn("B1", 80.0, 0.0),
        turn("B2", 80.0, 0.0),
        turn("B3", 120.0, 0.0),
    ]);
    request.offers[0].available = Some(1);
    let plan = plan_stock(&request).unwrap();
    let missing: Vec<_> = plan
        .missing
        .iter()
        .map(|missing| (missing.mark.as_str(), missing.why))
        .collect();
    assert_eq!(
        missing,
        [
            ("B2", MissingWhy::NotEnough),
            ("B3", MissingWhy::NothingFits)
        ]
    );
    assert_eq!(plan.price, eur(3200));
}

#[test]
fn spares_are_left_over() {
    let mut request = shop(vec![turn("B1", 80.0, 0.0)]);
    request.spares.push(Spare {
        item: "bend 90".to_owned(),
        count: 2,
    });
    assert_eq!(bought(&request), [("bend 90".to_owned(), 3)]);
}

#[test]
fn names_that_stand_for_nothing_are_refused() {
    let mut request = shop(vec![turn("B1", 80.0, 0.0)]);
    request.offers[0].supplier = "nobody".to_owned();
    let error = plan_stock(&request).unwrap_err();
    assert_eq!(
        error,
        PlanError::Unknown {
            what: "supplier",
            name: "nobody".to_owned()
        }
    );
    let request = shop(vec![turn("B1", 80.0, 0.0), turn("B1", 20.0, 0.0)]);
    assert!(matches!(
        plan_stock(&request),
        Err(PlanError::Twice { what: "mark", .. })
    ));
}

#[test]
fn a_tampered_plan_is_found_out() {
    let request = shop(vec![
        turn("B1", 40.0, 0.0),
        straight("S2", 80.0),
        turn("B3", 30.0, 0.0),
    ]);
    let plan = plan_stock(&request).unwrap();
    assert_eq!(verify(&request, &plan), []);
    let tampers: [&dyn Fn(&mut tubewright_stock::StockPlan); 6] = [
        &|plan| plan.price.minor -= 1,
        &|plan| plan.buys[0].quantity = 0,
        &|plan| drop(plan.cuts[0].parts.pop()),
        &|plan| plan.cuts[0].parts[0].serves[0].mark = "B9".to_owned(),
        &|plan| {
            for part in &mut plan.cuts[0].parts {
                part.is_reversed = !part.is_reversed;
            }
        },
        &|plan| plan.welds += 1,
    ];
    for (number, tamper) in tampers.iter().enumerate() {
        let mut bad = plan.clone();
        tamper(&mut bad);
        assert!(!verify(&request, &bad).is_empty(), "tamper {number}");
    }
}

prop_compose! {
    pub(crate) fn runs()(
        seeds in prop::collection::vec((5u32..100, 0u32..400, 0u32..4), 1..8),
        on_hand in prop::collection::vec((20u32..120, 0u32..120, 0u32..120), 0..4),
    ) -> StockRequest {
        let mut pieces = Vec::new();
        for (number, (angle, length, kind)) in seeds.into_iter().enumerate() {
            if kind != 1 {
                pieces.push(turn(&format!("B{number}"), f64::from(angle), 10.0));
            }
            if kind != 0 && length > 0 {
                pieces.push(straight(&format!("S{number}"), f64::from(length)));
            }
        }
        let mut request = shop(pieces);
        for (number, (angle, a, b)) in on_hand.into_iter().enumerate() {
            request.on_hand.push(OnHand {
                name: format!("offcut {number}"),
                kind: OnHandKind::Measured(bend(f64::from(angle), [f64::from(a), f64::from(b)])),
                count: 1,
            });
        }
        request
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Every plan passes its proof (an error otherwise), equal requests give equal plans, and
    /// something more on hand never costs more.
    #[test]
    fn plans_are_proven_equal_and_monotone(request in runs()) {
        let plan = plan_stock(&request);
        let plan = plan.map_err(|error| TestCaseError::fail(error.to_string()))?;
        prop_assert_eq!(&plan, &plan_stock(&request).unwrap());
        let mut richer = request;
        richer.on_hand.push(OnHand {
            name: "gift".to_owned(),
            kind: OnHandKind::Item("bend 45".to_owned()),
            count: 1,
        });
        let with_gift = plan_stock(&richer).unwrap();
        if plan.missing.is_empty() && plan.proof == Proof::Optimal {
            prop_assert!(with_gift.cost.minor <= plan.cost.minor);
        }
    }
}

#[test]
fn each_line_that_is_out_has_its_substitute() {
    let request = shop(vec![
        turn("B1", 40.0, 0.0),
        straight("S2", 300.0),
        turn("B3", 80.0, 0.0),
    ]);
    let plan = plan_stock(&request).unwrap();
    let substitutes = substitutes(&request, &plan, 3).unwrap();
    for substitute in &substitutes {
        let left = without(
            &request,
            &substitute
                .out
                .iter()
                .map(String::as_str)
                .collect::<Vec<_>>(),
        );
        assert_eq!(verify(&left, &substitute.plan), []);
        assert!(
            substitute
                .plan
                .buys
                .iter()
                .all(|buy| !substitute.out.contains(&buy.item))
        );
        if substitute.plan.is_full() {
            // This list is proven: without something nothing is cheaper.
            assert!(substitute.dearer_minor >= 0 && !substitute.is_cheaper());
            assert!(substitute.difference_words().ends_with(" EUR more"));
            let cheaper = Substitute {
                dearer_minor: -85,
                ..substitute.clone()
            };
            assert!(cheaper.is_cheaper());
            assert_eq!(cheaper.difference_words(), "0.85 EUR less");
        }
    }
    let tube = substitutes.iter().find(|s| s.out == ["tube 2 m"]).unwrap();
    assert_eq!(tube.plan.missing[0].mark, "S2", "nothing else gives 300 mm");
}

/// Where the leg of a bend serves a straight there is no weld to pull: nothing is added for it.
#[test]
fn only_welds_that_are_there_lengthen_a_straight() {
    // On both legs; each on a leg of its own; too long for a leg; shared by the legs of two bends.
    let cases = [
        (
            vec![
                straight("S1", 60.0),
                turn("B2", 90.0, 0.0),
                straight("S3", 60.0),
            ],
            121.0,
        ),
        (
            vec![
                straight("S1", 150.0),
                turn("B2", 90.0, 0.0),
                straight("S3", 60.0),
            ],
            211.5,
        ),
        (
            vec![
                turn("B1", 90.0, 0.0),
                straight("S2", 160.0),
                turn("B3", 90.0, 30.0),
            ],
            160.5,
        ),
    ];
    for (mut pieces, wanted_mm) in cases {
        for piece in &mut pieces {
            if piece.mark.starts_with('S') {
                piece.pulls = [Length::from_mm(0.5); 2];
            }
        }
        let request = shop(pieces);
        let plan = plan_stock(&request).unwrap();
        assert!(plan.is_full());
        assert_eq!(verify(&request, &plan), []);
        let parts = plan.cuts.iter().flat_map(|cut| &cut.parts);
        let straight: f64 = parts
            .flat_map(|part| &part.serves)
            .map(|serves| serves.length.mm())
            .sum();
        assert!(
            (straight - wanted_mm).abs() < 1e-6,
            "{straight} mm, wanted {wanted_mm}"
        );
    }
}
