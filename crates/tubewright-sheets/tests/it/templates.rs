//! Templates are true to scale in one piece and in tiles, and carry their rulers.

use tubewright_geometry::math;
use tubewright_geometry::template::{Mitre, WrapCurve};
use tubewright_sheets::drawing::{Item, Rect, Spot};
use tubewright_sheets::{
    Drawing, Keep, Paper, TemplateError, TemplateSpec, TurnSense, Unrolled, to_dxf, to_svg,
    wrap_template,
};

fn spots(drawing: &Drawing, layer: &str) -> Vec<Spot> {
    drawing
        .layers
        .iter()
        .filter(|l| l.name == layer)
        .flat_map(|l| &l.items)
        .filter_map(|item| match item {
            Item::Polyline { spots, .. } => Some(spots.clone()),
            _ => None,
        })
        .flatten()
        .collect()
}

#[test]
fn rulers_are_100_mm_and_4_in() {
    for (name, unrolled, spec) in crate::common::templates() {
        let template = wrap_template(&unrolled, &spec, crate::common::A4_UPRIGHT).unwrap();
        for drawing in template.pages.iter().chain([&template.whole]) {
            for (layer, length) in [("ruler-100-mm", 100.0), ("ruler-4-in", 101.6)] {
                let extent = Rect::of(spots(drawing, layer));
                assert!(
                    (extent.width() - length).abs() < 1e-9,
                    "{name}: {layer} is {} mm long",
                    extent.width()
                );
                assert!(drawing.sheet().encloses(extent));
            }
        }
    }
}

/// The drawn mitre against its formula, from the square edge.
#[test]
fn the_mitre_on_paper_is_the_formula() {
    let (_, unrolled, spec) = crate::common::templates().swap_remove(0);
    let template = wrap_template(&unrolled, &spec, crate::common::A4_UPRIGHT).unwrap();
    let strip = Rect::of(spots(&template.whole, "strip").into_iter().take(5));
    assert!((strip.width() - math::TAU * 31.8).abs() < 1e-9);
    let curve = Mitre {
        radius_mm: 31.75,
        mitre_rad: 15.0_f64.to_radians(),
    };
    for s in spots(&template.whole, "curve") {
        let q = (s.x - strip.min.x) / 31.8;
        let along = strip.max.y - s.y - spec.lead_mm;
        let want = curve.along_mm(q).unwrap();
        assert!(
            (along - want).abs() < 1e-9,
            "at {q} rad: {along} drawn, {want} true"
        );
    }
}

/// An unsymmetrical curve must not come out as its mirror image: seen from outside with the tube's
/// direction up, clockwise is to the right.
#[test]
fn clockwise_is_to_the_right() {
    struct Step;
    impl WrapCurve for Step {
        fn tube_radius_mm(&self) -> f64 {
            20.0
        }
        fn along_mm(&self, q_rad: f64) -> Option<f64> {
            Some(5.0 * math::sin(q_rad))
        }
    }
    let (_, _, spec) = crate::common::templates().swap_remove(0);
    let highest = |q_turns| {
        let spec = TemplateSpec {
            q_turns,
            ..spec.clone()
        };
        let t = wrap_template(
            &Unrolled::end_cut(&Step, 0.0),
            &spec,
            crate::common::A4_UPRIGHT,
        )
        .unwrap();
        let strip = Rect::of(spots(&t.whole, "strip").into_iter().take(5));
        let top = spots(&t.whole, "curve")
            .into_iter()
            .min_by(|a, b| a.y.total_cmp(&b.y))
            .unwrap();
        (top.x - strip.min.x) / strip.width()
    };
    assert!((highest(TurnSense::Clockwise) - 0.25).abs() < 0.01);
    assert!((highest(TurnSense::Anticlockwise) - 0.75).abs() < 0.01);
}

/// Tiles laid over each other by their overlap give the whole curve back.
#[test]
fn tiles_join_to_the_whole() {
    let (_, unrolled, spec) = crate::common::templates().swap_remove(1);
    let whole = wrap_template(&unrolled, &spec, Paper::A3).unwrap();
    assert_eq!(whole.pages.len(), 1);
    let small = Paper {
        width_mm: 148.0,
        height_mm: 210.0,
    };
    let tiled = wrap_template(&unrolled, &spec, small).unwrap();
    assert!(tiled.pages.len() >= 2, "{} pages", tiled.pages.len());
    let length = |d: &Drawing| -> f64 {
        spots(d, "curve")
            .chunks(2)
            .map(|p| p[0].distance(p[1]))
            .sum()
    };
    // The overlaps show stretches twice: the tiles together hold at least the whole.
    let together: f64 = tiled.pages.iter().map(length).sum();
    let alone = length(&whole.pages[0]);
    assert!(
        together > alone && together < 1.6 * alone,
        "{together} against {alone}"
    );
}

#[test]
fn the_same_template_gives_the_same_bytes() {
    for (_, unrolled, spec) in crate::common::templates() {
        let make = || wrap_template(&unrolled, &spec, crate::common::A4_UPRIGHT).unwrap();
        assert_eq!(to_svg(&make().whole), to_svg(&make().whole));
        assert_eq!(to_dxf(&make().whole), to_dxf(&make().whole));
    }
}

#[test]
fn what_is_not_sound_is_refused_with_its_mark() {
    let (_, unrolled, spec) = crate::common::templates().swap_remove(0);
    let nothing = Unrolled {
        lines: Vec::new(),
        ..unrolled.clone()
    };
    assert_eq!(
        wrap_template(&nothing, &spec, crate::common::A4_UPRIGHT),
        Err(TemplateError::NothingCut {
            mark: "L8".to_owned()
        })
    );
    let thick = Unrolled {
        paper_mm: f64::NAN,
        ..unrolled.clone()
    };
    let error = wrap_template(&thick, &spec, crate::common::A4_UPRIGHT).unwrap_err();
    assert!(matches!(error, TemplateError::BadSize { .. }), "{error}");
    let tiny = Paper {
        width_mm: 100.0,
        height_mm: 100.0,
    };
    let error = wrap_template(
        &unrolled,
        &TemplateSpec {
            keep: Keep::Below,
            ..spec
        },
        tiny,
    )
    .unwrap_err();
    assert!(
        matches!(error, TemplateError::PaperTooSmall { .. }),
        "{error}"
    );
}
