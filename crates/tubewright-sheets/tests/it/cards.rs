//! Cut cards: true outline, marks of the table as the bench would measure them.

use tubewright_geometry::cut::StockBend;
use tubewright_sheets::drawing::{Item, Rect};
use tubewright_sheets::{BladeSide, CardCut, CardError, CardItem, Drawing, cut_card, to_svg};

fn texts(drawing: &Drawing, layer: &str) -> Vec<String> {
    let found = drawing
        .layers
        .iter()
        .filter(|l| l.name == layer)
        .flat_map(|l| &l.items);
    found
        .filter_map(|item| match item {
            Item::Text { text, .. } => Some(text.clone()),
            _ => None,
        })
        .collect()
}

#[test]
fn the_table_says_where_to_mark_outside_inside_and_side() {
    let (_, mut item) = crate::common::cards().swap_remove(0);
    // 100 of leg, then half of 90° at 85.5: 0.7854 * 85.5 = 67.15 on the centre line; outside
    // 0.7854 * 114 = 89.5, inside 0.7854 * 57 = 44.8.
    item.cuts = vec![CardCut {
        number: 1,
        along_mm: 100.0 + 85.5 * std::f64::consts::FRAC_PI_4,
        kerf: BladeSide::Far,
        words: String::new(),
    }];
    let words = texts(&cut_card(&item, 180.0).unwrap(), "marks");
    for figure in ["189.5", "144.8", "167.2"] {
        assert!(
            words.iter().any(|w| w == figure),
            "{figure} is not among {words:?}"
        );
    }
}

#[test]
fn the_outline_is_true_to_scale() {
    let (_, item) = crate::common::cards().swap_remove(0);
    let drawing = cut_card(&item, 180.0).unwrap();
    let outline = drawing
        .layers
        .iter()
        .filter(|l| l.name == "tube")
        .flat_map(|l| &l.items)
        .find_map(|item| match item {
            Item::Polygon { spots, .. } => Some(Rect::of(spots.iter().copied())),
            _ => None,
        })
        .unwrap();
    // 100 + 85.5 + 28.5 either way: as wide as high.
    assert!((outline.width() - outline.height()).abs() < 1e-9);
    let scale = outline.width() / 214.0;
    assert!(scale > 0.3 && scale <= 1.0);
    assert!(drawing.sheet().encloses(outline));
}

#[test]
fn every_piece_is_named_on_the_tube() {
    for (_, item) in crate::common::cards() {
        let drawing = cut_card(&item, 180.0).unwrap();
        let words = texts(&drawing, "parts");
        for part in item.parts.iter().filter_map(|p| p.mark.as_ref()) {
            assert!(words.contains(part));
        }
        assert_eq!(to_svg(&drawing), to_svg(&cut_card(&item, 180.0).unwrap()));
    }
}

#[test]
fn cuts_past_the_item_and_sizes_that_are_none_are_refused() {
    let (_, good) = crate::common::cards().swap_remove(1);
    let mut far = good.clone();
    far.cuts[1].along_mm = 1001.0;
    let error = cut_card(&far, 180.0).unwrap_err();
    assert!(matches!(error, CardError::Cut { number: 2, .. }), "{error}");
    let none = CardItem {
        stock: StockBend {
            od_mm: f64::NAN,
            ..good.stock
        },
        ..good.clone()
    };
    assert!(matches!(
        cut_card(&none, 180.0),
        Err(CardError::BadSize { .. })
    ));
    assert!(matches!(
        cut_card(&good, 50.0),
        Err(CardError::TooNarrow { .. })
    ));
}

#[test]
fn cuts_a_kerf_apart_have_numbers_that_can_be_told_apart() {
    let (_, mut item) = crate::common::cards().swap_remove(0);
    item.cuts = [
        (1, 150.0, BladeSide::Near),
        (2, 148.4, BladeSide::Far),
        (3, 152.0, BladeSide::Far),
    ]
    .map(|(number, along_mm, kerf)| CardCut {
        number,
        along_mm,
        kerf,
        words: String::new(),
    })
    .to_vec();
    let drawing = tubewright_sheets::cut_picture(&item, 184.0).unwrap();
    let rings: Vec<_> = drawing
        .layers
        .iter()
        .filter(|l| l.name == "cuts")
        .flat_map(|l| &l.items)
        .filter_map(|item| match item {
            Item::Circle {
                centre, radius_mm, ..
            } => Some((*centre, *radius_mm)),
            _ => None,
        })
        .collect();
    assert_eq!(rings.len(), 3);
    for (i, (a, r)) in rings.iter().enumerate() {
        for (b, _) in &rings[i + 1..] {
            assert!(a.distance(*b) >= 2.0 * r, "{a:?} and {b:?} overlap");
        }
        assert!(drawing.sheet().holds(*a), "{a:?} lies off the paper");
    }
}

#[test]
fn the_picture_letters_both_ends() {
    for (_, item) in crate::common::cards() {
        let drawing = tubewright_sheets::cut_picture(&item, 184.0).unwrap();
        assert_eq!(texts(&drawing, "ends"), ["A", "B"]);
    }
}
