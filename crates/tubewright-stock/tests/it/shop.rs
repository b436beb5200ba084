//! A small invented shop for the tests.

use tubewright_geometry::{Angle, Length};
use tubewright_stock::{
    Currency, Effort, Item, ItemKind, Money, Offer, PieceDemand, PieceShape, PriceBreak, Rates,
    RunDemand, ShopRules, StockPiece, StockRequest, StockShape, Supplier, TubeSpec,
};

pub(crate) fn eur(minor: i64) -> Money {
    Money::new(minor, Currency::new("EUR").unwrap())
}

pub(crate) fn mm(v: f64) -> Length {
    Length::from_mm(v)
}

pub(crate) fn deg(v: f64) -> Angle {
    Angle::from_deg(v)
}

pub(crate) fn tube() -> TubeSpec {
    TubeSpec {
        od: mm(63.5),
        wall: mm(1.6),
        material: "304".to_owned(),
    }
}

pub(crate) fn bend(angle: f64, legs: [f64; 2]) -> StockPiece {
    StockPiece {
        tube: tube(),
        shape: StockShape::Bend {
            angle: deg(angle),
            clr: mm(95.25),
            leg_a: mm(legs[0]),
            leg_b: mm(legs[1]),
        },
    }
}

pub(crate) fn bar(length: f64) -> StockPiece {
    StockPiece {
        tube: tube(),
        shape: StockShape::Straight { length: mm(length) },
    }
}

pub(crate) fn item(name: &str, stock: StockPiece) -> Item {
    Item {
        name: name.to_owned(),
        kind: ItemKind::Stock(stock),
    }
}

pub(crate) fn offer(item: &str, supplier: &str, each: i64) -> Offer {
    Offer {
        item: item.to_owned(),
        supplier: supplier.to_owned(),
        prices: vec![PriceBreak {
            from: 1,
            each: eur(each),
        }],
        pack: 1,
        available: None,
        date: String::new(),
    }
}

pub(crate) fn straight(mark: &str, length: f64) -> PieceDemand {
    PieceDemand {
        mark: mark.to_owned(),
        tube: tube(),
        shape: PieceShape::Straight { length: mm(length) },
        pulls: [Length::ZERO; 2],
    }
}

pub(crate) fn turn(mark: &str, angle: f64, clock: f64) -> PieceDemand {
    PieceDemand {
        mark: mark.to_owned(),
        tube: tube(),
        shape: PieceShape::Bend {
            angle: deg(angle),
            clr: mm(95.25),
            clock: deg(clock),
        },
        pulls: [Length::ZERO; 2],
    }
}

/// Bends of 90 and 45 degrees with 100 mm legs, and 2 m tube, from one supplier without charge.
pub(crate) fn shop(pieces: Vec<PieceDemand>) -> StockRequest {
    StockRequest {
        items: vec![
            item("bend 90", bend(90.0, [100.0, 100.0])),
            item("bend 45", bend(45.0, [100.0, 100.0])),
            item("tube 2 m", bar(2000.0)),
        ],
        offers: vec![
            offer("bend 90", "counter", 3200),
            offer("bend 45", "counter", 2400),
            offer("tube 2 m", "counter", 4100),
        ],
        suppliers: vec![Supplier {
            name: "counter".to_owned(),
            delivery: eur(0),
        }],
        on_hand: Vec::new(),
        runs: vec![RunDemand {
            name: "left".to_owned(),
            pieces,
            welds_at_ends: 0,
        }],
        spares: Vec::new(),
        rules: ShopRules::common_practice(),
        rates: Rates { weld: eur(900) },
        effort: Effort::default(),
    }
}
