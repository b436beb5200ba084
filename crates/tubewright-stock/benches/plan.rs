//! Time to a plan for a car's worth of pieces, and to the plan without an item of it.
//!
//! The work: 30 pieces (15 bends, 15 straights, all different) of one tube in one run, from 60
//! kinds of stock (40 bends of twenty angles with short and long legs, 20 lengths of tube) at
//! three suppliers, two of them with a delivery charge, some with packs and price breaks.

use tubewright_geometry::{Angle, Length};
use tubewright_stock::{
    Currency, Effort, Item, ItemKind, Money, Offer, PieceDemand, PieceShape, PriceBreak, Rates,
    RunDemand, ShopRules, StockPiece, StockRequest, StockShape, Supplier, TubeSpec, plan_stock,
    without,
};

fn main() {
    divan::main();
}

fn request(pieces: u32) -> Option<StockRequest> {
    let currency = Currency::new("EUR")?;
    let money = |minor: u32| Money::new(i64::from(minor), currency);
    let mm = |v: u32| Length::from_mm(f64::from(v));
    let tube = TubeSpec {
        od: mm(60),
        wall: Length::from_mm(1.5),
        material: "304".to_owned(),
    };
    let piece = |n: u32| PieceDemand {
        mark: format!("P{n}"),
        tube: tube.clone(),
        shape: if n.is_multiple_of(2) {
            PieceShape::Bend {
                angle: Angle::from_deg(f64::from(12 + (n * 37) % 71)),
                clr: mm(90),
                clock: Angle::from_deg(f64::from((n * 53) % 180)),
            }
        } else {
            PieceShape::Straight {
                length: mm(35 + (n * n * 29) % 640),
            }
        },
        pulls: [Length::ZERO; 2],
    };
    let bends = (0..40u32).map(|n| {
        let angle = 15 + (n / 2) * 9;
        let leg = if n.is_multiple_of(2) { 50 } else { 120 };
        let shape = StockShape::Bend {
            angle: Angle::from_deg(f64::from(angle)),
            clr: mm(90),
            leg_a: mm(leg),
            leg_b: mm(leg),
        };
        (format!("bend {n}"), shape, 900 + angle * 11 + leg * 3)
    });
    let bars = (0..20u32).map(|n| {
        let length = 300 + n * 285;
        (
            format!("tube {n}"),
            StockShape::Straight { length: mm(length) },
            300 + length,
        )
    });
    let kinds: Vec<_> = bends.chain(bars).collect();
    let suppliers = ["counter", "mail", "yard"];
    let mut offers = Vec::new();
    for (n, (name, _, price)) in (0u32..).zip(&kinds) {
        for (s, supplier) in (0u32..).zip(suppliers) {
            if (n + s) % 3 == 2 {
                continue;
            }
            let each = price * (100 - 7 * s) / 100;
            let mut prices = vec![PriceBreak {
                from: 1,
                each: money(each),
            }];
            if n.is_multiple_of(5) {
                prices.push(PriceBreak {
                    from: 5,
                    each: money(each * 9 / 10),
                });
            }
            offers.push(Offer {
                item: name.clone(),
                supplier: (*supplier).to_owned(),
                prices,
                pack: if n % 7 == 3 { 2 } else { 1 },
                available: n.is_multiple_of(4).then_some(4),
                date: String::new(),
            });
        }
    }
    Some(StockRequest {
        items: kinds
            .iter()
            .map(|(name, shape, _)| Item {
                name: name.clone(),
                kind: ItemKind::Stock(StockPiece {
                    tube: tube.clone(),
                    shape: *shape,
                }),
            })
            .collect(),
        offers,
        suppliers: suppliers
            .iter()
            .zip([0, 1200, 700])
            .map(|(name, charge)| Supplier {
                name: (*name).to_owned(),
                delivery: money(charge),
            })
            .collect(),
        on_hand: Vec::new(),
        runs: vec![RunDemand {
            name: "left".to_owned(),
            pieces: (0..pieces).map(piece).collect(),
            welds_at_ends: 0,
        }],
        spares: Vec::new(),
        rules: ShopRules::common_practice(),
        rates: Rates { weld: money(900) },
        effort: Effort::default(),
    })
}

/// A plan, with what it could save at most.
#[divan::bench(args = [10, 20, 30])]
fn plan(bencher: divan::Bencher<'_, '_>, pieces: u32) {
    let request = request(pieces);
    bencher.bench(|| request.as_ref().map(plan_stock));
}

/// A plan without the item that the plan spends most on: what the counter asks for.
#[divan::bench(args = [30])]
fn plan_without_an_item(bencher: divan::Bencher<'_, '_>, pieces: u32) {
    let out = request(pieces).and_then(|request| {
        let plan = plan_stock(&request).ok()?;
        let dearest = plan.buys.iter().max_by_key(|buy| buy.total.minor)?;
        Some(without(&request, &[&dearest.item]))
    });
    bencher.bench(|| out.as_ref().map(plan_stock));
}
