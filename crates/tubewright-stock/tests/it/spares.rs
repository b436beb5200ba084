//! Spares: which bend could remake the most, against the planner's own word for every bend and part.

use proptest::prelude::*;
use tubewright_geometry::Length;
use tubewright_stock::{
    CutPart, ItemKind, OnHand, OnHandKind, PartPlace, PieceDemand, PieceShape, PriceBreak,
    RunDemand, Spare, StockPlan, StockRequest, StockShape, Supplier, plan_stock, spares,
    substitutes, without,
};

use crate::shop::{bend, eur, item, mm, offer, shop, straight, turn};

#[test]
fn the_spare_that_remakes_the_most_comes_first() {
    let request = shop(vec![
        turn("B1", 80.0, 0.0),
        turn("B2", 40.0, 0.0),
        turn("B3", 30.0, 0.0),
    ]);
    let plan = plan_stock(&request).unwrap();
    let one = spares(&request, &plan, 1);
    assert_eq!(
        (one.bends[0].item.as_str(), one.bends[0].remakes.len()),
        ("bend 90", 3)
    );
    assert_eq!(one.price_with.minor, plan.price.minor + 3200);
    // Every part has one then: the second starts anew, and again nothing remakes more.
    let two = spares(&request, &plan, 2);
    assert_eq!(two.bends[1].item, "bend 90");
    assert_eq!(spares(&request, &plan, 0).bends, []);
}

/// What one lies over costs nothing; a delivery that nothing else asks for is counted once; a pack is
/// paid whole and what is left of it is the next spare.
#[test]
fn a_spare_costs_what_it_adds() {
    let mut request = shop(vec![turn("B1", 80.0, 0.0)]);
    let without_any = plan_stock(&request).unwrap();
    assert_eq!(without_any.price, eur(3200));
    request.offers[0].available = Some(1);
    request.suppliers.push(Supplier {
        name: "mail".to_owned(),
        delivery: eur(700),
    });
    let mut mailed = offer("bend 90", "mail", 3000);
    mailed.pack = 2;
    request.offers.push(mailed);
    let plan = plan_stock(&request).unwrap();
    assert_eq!(plan.price, eur(3200));
    let list = spares(&request, &plan, 3);
    let told: Vec<(Option<&str>, i64)> = list
        .bends
        .iter()
        .map(|bend| (bend.supplier.as_deref(), bend.price.minor))
        .collect();
    assert_eq!(
        told,
        [(Some("mail"), 6700), (None, 0), (Some("mail"), 6000)]
    );
    assert_eq!(list.price_with, eur(3200 + 6700 + 6000));

    request.on_hand.push(OnHand {
        name: "shelf".to_owned(),
        kind: OnHandKind::Item("bend 90".to_owned()),
        count: 2,
    });
    let plan = plan_stock(&request).unwrap();
    let list = spares(&request, &plan, 1);
    assert_eq!((plan.price, list.price_with), (eur(0), eur(0)));
    assert_eq!(list.bends[0].supplier, None);
}

/// A larger number may make all of them cheaper.
#[test]
fn a_price_break_counts_for_what_is_bought_already() {
    let mut request = shop(vec![turn("B1", 80.0, 0.0)]);
    request.offers[0].prices.push(PriceBreak {
        from: 2,
        each: eur(2000),
    });
    let plan = plan_stock(&request).unwrap();
    assert_eq!(spares(&request, &plan, 1).bends[0].price, eur(800));
}

/// A spare that was asked for and is out is said to be missing; every piece is still made.
#[test]
fn a_spare_that_is_out_takes_no_piece_with_it() {
    let mut request = shop(vec![turn("B1", 80.0, 0.0), turn("B2", 40.0, 0.0)]);
    request
        .items
        .push(item("bend 120", bend(120.0, [50.0, 50.0])));
    request.offers.push(offer("bend 120", "counter", 5000));
    request.spares.push(Spare {
        item: "bend 90".to_owned(),
        count: 1,
    });
    let plan = plan_stock(&request).unwrap();
    let out = substitutes(&request, &plan, 0).unwrap();
    let bend_90 = out.iter().find(|it| it.out == ["bend 90"]).unwrap();
    assert_eq!(bend_90.plan.missing, []);
    assert_eq!(bend_90.plan.missing_spares, [("bend 90".to_owned(), 1)]);
    // Another bend is chosen beside that plan.
    let left = without(&request, &["bend 90"]);
    let list = spares(&left, &bend_90.plan, 1);
    assert_eq!(list.bends[0].item, "bend 120");
}

/// Whether one item alone, lying there, gives this part in one piece: asked of the planner.
fn gives(request: &StockRequest, name: &str, part: &CutPart) -> bool {
    let piece_of = |mark: &str| {
        let mut pieces = request.runs.iter().flat_map(|run| &run.pieces);
        pieces.find(|piece| piece.mark == mark).unwrap()
    };
    let pieces: Vec<PieceDemand> = part
        .serves
        .iter()
        .map(|serves| {
            let piece = piece_of(&serves.mark);
            let shape = match &piece.shape {
                PieceShape::Straight { .. } => PieceShape::Straight {
                    length: serves.length,
                },
                other => other.clone(),
            };
            PieceDemand {
                shape,
                pulls: [Length::ZERO; 2],
                ..piece.clone()
            }
        })
        .collect();
    let alone = StockRequest {
        offers: Vec::new(),
        on_hand: vec![OnHand {
            name: "one".to_owned(),
            kind: OnHandKind::Item(name.to_owned()),
            count: 1,
        }],
        runs: vec![RunDemand {
            name: "one".to_owned(),
            pieces,
            welds_at_ends: 0,
        }],
        spares: Vec::new(),
        ..request.clone()
    };
    let plan = plan_stock(&alone).unwrap();
    // Steel that lies there costs nothing: the cheapest plan has the fewest welds.
    plan.is_full() && plan.welds == 0
}

fn bent(plan: &StockPlan) -> Vec<&CutPart> {
    plan.cuts
        .iter()
        .flat_map(|cut| &cut.parts)
        .filter(|part| matches!(part.place, PartPlace::Arc { .. }))
        .collect()
}

fn painted(part: &CutPart) -> Vec<String> {
    part.serves.iter().map(|it| it.mark.clone()).collect()
}

prop_compose! {
    fn jobs()(
        pieces in prop::collection::vec((1u32..10, 10u32..150), 1..6),
        stock in prop::collection::vec((2u32..10, 0u32..3, 0u32..3, 20i64..40, 0i64..3), 1..5),
    ) -> StockRequest {
        let mut request = shop(
            pieces
                .iter()
                .enumerate()
                .map(|(n, (angle, length))| {
                    if n % 2 == 0 {
                        turn(&format!("B{n}"), f64::from(angle * 10), 0.0)
                    } else {
                        straight(&format!("S{n}"), f64::from(*length))
                    }
                })
                .collect(),
        );
        for (n, (angle, a, b, price, off)) in stock.into_iter().enumerate() {
            let name = format!("other {n}");
            let mut piece = bend(f64::from(angle * 10), [f64::from(a * 50), f64::from(b * 60)]);
            if let StockShape::Bend { clr, .. } = &mut piece.shape {
                *clr += mm(off as f64 * 0.6);
            }
            request.items.push(item(&name, piece));
            request.offers.push(offer(&name, "counter", price * 100));
        }
        request
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Every item is tried on every part, and the chosen ones are the best of all by their own rule.
    #[test]
    fn spares_are_those_of_exhaustive_comparison(request in jobs(), count in 1u32..4) {
        let plan = plan_stock(&request).unwrap();
        let parts = bent(&plan);
        let bends: Vec<(&str, Vec<usize>, i64)> = request
            .items
            .iter()
            .filter(|item| matches!(&item.kind, ItemKind::Stock(stock)
                if matches!(stock.shape, StockShape::Bend { .. })))
            .map(|item| {
                let can = (0..parts.len()).filter(|at| gives(&request, &item.name, parts[*at]));
                let each = request.offers.iter().find(|it| it.item == item.name).unwrap();
                (item.name.as_str(), can.collect(), each.prices[0].each.minor)
            })
            .filter(|(_, can, _): &(_, Vec<usize>, _)| !can.is_empty())
            .collect();
        let list = spares(&request, &plan, count);
        prop_assert_eq!(list.bends.len(), if bends.is_empty() { 0 } else { count as usize });
        let mut open: Vec<usize> = (0..parts.len()).collect();
        let mut minor = plan.price.minor;
        for chosen in &list.bends {
            let new = |can: &[usize], open: &[usize]| can.iter().filter(|at| open.contains(at)).count();
            if bends.iter().all(|(_, can, _)| new(can, &open) == 0) {
                open = (0..parts.len()).collect();
            }
            let (name, can, each) = bends.iter().find(|it| it.0 == chosen.item).unwrap();
            let remakes: Vec<Vec<String>> = can.iter().map(|at| painted(parts[*at])).collect();
            prop_assert_eq!(&chosen.remakes, &remakes, "{}", name);
            for (_, other, price) in &bends {
                let (mine, theirs) = (new(can, &open), new(other, &open));
                prop_assert!(mine > theirs || (mine == theirs && each <= price));
            }
            open.retain(|at| !can.contains(at));
            minor += each;
        }
        prop_assert_eq!(list.price_with.minor, minor);
    }
}
