//! Clock strips: as long as the tube is round, figures where the clock has them.

use std::f64::consts::PI;
use tubewright_sheets::drawing::{Item, Rect};
use tubewright_sheets::{Drawing, Paper, TemplateError, clock_strip};

fn items<'a>(drawing: &'a Drawing, layer: &str) -> Vec<&'a Item> {
    drawing
        .layers
        .iter()
        .filter(|l| l.name == layer)
        .flat_map(|l| &l.items)
        .collect()
}

fn edge_mm(drawing: &Drawing) -> f64 {
    items(drawing, "curve")
        .into_iter()
        .filter_map(|item| match item {
            Item::Polyline { spots, .. } => Some(Rect::of(spots.iter().copied()).width()),
            _ => None,
        })
        .sum()
}

#[test]
fn the_edge_is_once_round_the_tube_and_its_paper() {
    for od_mm in [38.1, 57.0, 63.5, 76.2] {
        let strip = clock_strip(od_mm, 0.1, "build", Paper::A4).unwrap();
        assert!((edge_mm(&strip.whole) - PI * (od_mm + 0.1)).abs() < 1e-9);
        assert_eq!(strip.pages.len(), 1, "Ø{od_mm} fits one page");
    }
}

#[test]
fn a_strip_longer_than_the_page_is_tiled_and_nothing_is_lost() {
    let strip = clock_strip(101.6, 0.1, "build", Paper::A4).unwrap();
    assert_eq!(strip.pages.len(), 2);
    // Neighbours show 10 mm twice.
    let shown: f64 = strip.pages.iter().map(edge_mm).sum();
    assert!((shown - PI * 101.7 - 10.0).abs() < 1e-6, "{shown}");
}

#[test]
fn plus_lies_to_the_right_of_nought_with_the_arrow_up() {
    let strip = clock_strip(57.0, 0.1, "build", Paper::A4).unwrap();
    let place = |figure: &str| {
        items(&strip.whole, "clock")
            .into_iter()
            .find_map(|item| match item {
                Item::Text { at, text, .. } if text == figure => Some(at.x),
                _ => None,
            })
    };
    // Clockwise looking downstream is to the right on the outside, seen with downstream up.
    let (plus, minus) = (place("+90").unwrap(), place("-90").unwrap());
    assert!((minus - plus - 0.5 * PI * 57.1).abs() < 1e-6);
    // 90° of Ø57 is a quarter of 179.07 mm round the outside.
    assert!(place("44.8").is_some());
}

#[test]
fn figures_never_run_into_each_other() {
    for od_mm in [25.4, 38.1, 57.0, 76.2] {
        let strip = clock_strip(od_mm, 0.1, "build", Paper::A4).unwrap();
        let mut spans: Vec<[f64; 2]> = items(&strip.whole, "clock")
            .into_iter()
            .filter_map(|item| match item {
                Item::Text {
                    at,
                    text,
                    lettering,
                    ..
                } if lettering.is_bold => {
                    let half = 0.5 * lettering.width_mm(text);
                    let middle = match lettering.anchor {
                        tubewright_sheets::drawing::Anchor::Start => at.x + half,
                        tubewright_sheets::drawing::Anchor::End => at.x - half,
                        tubewright_sheets::drawing::Anchor::Middle => at.x,
                    };
                    Some([middle - half, middle + half])
                }
                _ => None,
            })
            .collect();
        spans.sort_by(|a, b| a[0].total_cmp(&b[0]));
        for pair in spans.windows(2) {
            assert!(pair[0][1] <= pair[1][0] + 0.3, "Ø{od_mm}: {pair:?}");
        }
    }
}

#[test]
fn sizes_that_are_none_are_refused() {
    assert!(matches!(
        clock_strip(f64::NAN, 0.1, "", Paper::A4),
        Err(TemplateError::BadSize { .. })
    ));
    assert!(matches!(
        clock_strip(57.0, -1.0, "", Paper::A4),
        Err(TemplateError::BadSize { .. })
    ));
}
