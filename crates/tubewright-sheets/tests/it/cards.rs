//! Cut cards: true outline, marks of the table as the bench would measure them.

use proptest::prelude::*;
use tubewright_geometry::cut::StockBend;
use tubewright_sheets::drawing::{Fill, Item, Rect};
use tubewright_sheets::{
    BladeSide, CardCut, CardError, CardItem, CardLengths, CardPart, Drawing, cut_card, cut_picture,
    to_svg,
};

/// As long as a length is ever written: inches with a fraction to 1/32.
const INCHES: CardLengths = CardLengths {
    sign: "in",
    saw: |mm| format!("{}-31/32", (mm / 25.4).floor()),
    size: |mm| format!("{:.3}", mm / 25.4),
};

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
        kerf: Some(BladeSide::Far),
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

/// A face that is dressed shows no side for a blade.
#[test]
fn only_what_is_sawn_has_a_kerf() {
    let (_, mut item) = crate::common::cards().swap_remove(0);
    let kerfs = |item: &CardItem| {
        let drawing = cut_card(item, 180.0).unwrap();
        let layers = drawing.layers.iter().filter(|l| l.name == "cuts");
        layers
            .flat_map(|l| &l.items)
            .filter(|item| {
                matches!(
                    item,
                    Item::Polygon {
                        fill: Fill::Solid,
                        ..
                    }
                )
            })
            .count()
    };
    item.cuts.truncate(1);
    assert_eq!(kerfs(&item), 1);
    item.cuts[0].kerf = None;
    assert_eq!(kerfs(&item), 0);
    let numbers = texts(&cut_card(&item, 180.0).unwrap(), "cuts");
    assert_eq!(numbers, [item.cuts[0].number.to_string()]);
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
        kerf: Some(kerf),
        words: String::new(),
    })
    .to_vec();
    let drawing = cut_picture(&item, 184.0).unwrap();
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
        let drawing = cut_picture(&item, 184.0).unwrap();
        assert_eq!(texts(&drawing, "ends"), ["A", "B"]);
    }
}

#[test]
fn lengths_on_a_card_are_written_as_its_item_says() {
    for (_, mut item) in crate::common::cards() {
        item.lengths = INCHES;
        let drawing = cut_card(&item, 180.0).unwrap();
        let mut figures = texts(&drawing, "marks");
        figures.retain(|text| text.contains('.'));
        assert!(figures.is_empty(), "millimetres among {figures:?}");
        let head = texts(&drawing, "head").join(" ");
        assert!(
            head.contains("OD 2.244 ") && head.contains(" in from the near end"),
            "{head}"
        );
        let legs: Vec<String> = drawing
            .layers
            .iter()
            .flat_map(|layer| &layer.items)
            .filter_map(|item| match item {
                Item::Dimension(size) => Some(size.text.clone()),
                _ => None,
            })
            .collect();
        assert!(
            !legs.is_empty() && legs.iter().all(|leg| leg.ends_with("-31/32")),
            "{legs:?}"
        );
    }
}

/// Letters of the picture that stand in nothing of their own (rings and boxes have their own tests).
fn lettering(drawing: &Drawing) -> Vec<(String, Rect)> {
    drawing
        .layers
        .iter()
        .filter(|layer| layer.name == "sizes" || layer.name == "parts")
        .flat_map(|layer| &layer.items)
        .filter_map(|item| {
            let text = match item {
                Item::Text { text, .. } => text.clone(),
                Item::Dimension(size) => size.text.clone(),
                _ => return None,
            };
            Some((text, item.letters()?))
        })
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]
    /// Bends from 15° with legs from nothing to 200 mm and straights to 3 m, in as many parts as fall
    /// out: no word of the picture lies on another, and none off the paper.
    #[test]
    fn no_word_of_a_picture_lies_on_another(
        od_mm in 38.0..90.0_f64,
        radii in 1.0..3.0_f64,
        bend_deg in prop_oneof![Just(0.0), 15.0..180.0_f64],
        legs in (prop_oneof![Just(0.0), 10.0..200.0_f64], prop_oneof![Just(0.0), 10.0..200.0_f64]),
        long_mm in 100.0..3000.0_f64,
        shares in prop::collection::vec((0.005..1.0_f64, any::<bool>()), 1..9),
    ) {
        let is_bend = bend_deg > 0.0;
        let stock = StockBend {
            od_mm,
            clr_mm: if is_bend { radii * od_mm } else { 0.0 },
            bend_rad: f64::to_radians(bend_deg),
            near_leg_mm: if is_bend { legs.0 } else { long_mm },
            far_leg_mm: if is_bend { legs.1 } else { 0.0 },
        };
        let whole_mm = stock.whole_length().centre_line_mm;
        let sum: f64 = shares.iter().map(|share| share.0).sum();
        let mut at_mm = 0.0;
        let mut parts = Vec::new();
        for (number, (share, is_waste)) in shares.iter().enumerate() {
            let to_mm = at_mm + share / sum * whole_mm;
            parts.push(CardPart {
                mark: (!is_waste).then(|| format!("L{number}+L{} \u{2192}", number + 1)),
                from_mm: at_mm,
                to_mm,
            });
            at_mm = to_mm;
        }
        let item = CardItem {
            name: "drawn".to_owned(),
            stock,
            cuts: Vec::new(),
            parts,
            lengths: INCHES,
        };
        let drawing = cut_picture(&item, 184.0).unwrap();
        let words = lettering(&drawing);
        for (i, (a, room)) in words.iter().enumerate() {
            prop_assert!(drawing.sheet().encloses(*room), "{a} at {room:?} lies off the paper");
            for (b, other) in &words[i + 1..] {
                prop_assert!(room.overlap_mm2(*other) <= 0.0, "{a} at {room:?}, {b} at {other:?}");
            }
        }
    }
}
