//! Stock items on the bench.

use tubewright_geometry::cut::StockBend;
use tubewright_sheets::{BladeSide, CardCut, CardItem, CardLengths, CardPart};

const MILLIMETRES: CardLengths = CardLengths {
    sign: "mm",
    saw: |mm| format!("{mm:.1}"),
    size: |mm| mm.to_string(),
};

pub(crate) fn cards() -> Vec<(&'static str, CardItem)> {
    let cut = |number: u32, along_mm: f64| CardCut {
        number,
        along_mm,
        kerf: Some(BladeSide::Far),
        words: "blade beyond the mark".to_owned(),
    };
    let part = |mark: Option<&str>, from_mm: f64, to_mm: f64| CardPart {
        mark: mark.map(str::to_owned),
        from_mm,
        to_mm,
    };
    let bend = StockBend {
        od_mm: 57.0,
        clr_mm: 85.5,
        bend_rad: f64::to_radians(90.0),
        near_leg_mm: 100.0,
        far_leg_mm: 100.0,
    };
    let straight = StockBend {
        bend_rad: 0.0,
        near_leg_mm: 1000.0,
        far_leg_mm: 0.0,
        ..bend
    };
    let whole = bend.whole_length().centre_line_mm;
    vec![
        (
            "bend",
            CardItem {
                name: "bend 57 90, no. 2".to_owned(),
                stock: bend,
                cuts: vec![cut(1, 40.0), cut(2, 167.15), cut(3, 234.4)],
                parts: vec![
                    part(None, 0.0, 40.0),
                    part(Some("L8"), 40.0, 167.15),
                    part(Some("R10"), 169.15, 234.4),
                    part(None, 236.4, whole),
                ],
                lengths: MILLIMETRES,
            },
        ),
        (
            "straight",
            CardItem {
                name: "straight 57, no. 1".to_owned(),
                stock: straight,
                cuts: vec![cut(1, 92.2), cut(2, 268.0), cut(3, 650.2)],
                parts: vec![
                    part(Some("L3"), 0.0, 92.2),
                    part(Some("L9"), 94.2, 268.0),
                    part(Some("L17"), 270.0, 650.2),
                    part(None, 652.2, 1000.0),
                ],
                lengths: MILLIMETRES,
            },
        ),
    ]
}
