//! Clipping, hatching and lettering keep their promises.

use proptest::prelude::*;
use tubewright_sheets::drawing::{Lettering, Rect, Spot, clip_polygon, clip_segment, hatch};

fn area_mm2(ring: &[Spot]) -> f64 {
    let twice: f64 = (0..ring.len())
        .map(|i| ring[i].cross(ring[(i + 1) % ring.len()]))
        .sum();
    twice.abs() / 2.0
}

fn spot() -> impl Strategy<Value = Spot> {
    (-50.0..50.0, -50.0..50.0).prop_map(|(x, y)| Spot::new(x, y))
}

proptest! {
    #[test]
    fn what_a_window_keeps_of_a_triangle_is_inside_and_no_larger(a in spot(), b in spot(), c in spot()) {
        let window = Rect::new(-20.0, -15.0, 40.0, 30.0);
        let kept = clip_polygon(&[a, b, c], window);
        for s in &kept {
            prop_assert!(window.grown(1e-9).holds(*s), "{s:?} is outside");
        }
        prop_assert!(area_mm2(&kept) <= area_mm2(&[a, b, c]).min(1200.0) + 1e-6);
    }

    #[test]
    fn clipping_an_enclosed_triangle_changes_nothing(a in spot(), b in spot(), c in spot()) {
        let kept = clip_polygon(&[a, b, c], Rect::new(-60.0, -60.0, 120.0, 120.0));
        prop_assert!((area_mm2(&kept) - area_mm2(&[a, b, c])).abs() < 1e-9);
    }

    #[test]
    fn a_clipped_segment_lies_on_the_whole_one(a in spot(), b in spot()) {
        let window = Rect::new(-20.0, -15.0, 40.0, 30.0);
        match clip_segment(a, b, window) {
            Some([p, q]) => {
                prop_assert!(window.grown(1e-9).holds(p) && window.grown(1e-9).holds(q));
                prop_assert!((b - a).cross(p - a).abs() < 1e-6 && (b - a).cross(q - a).abs() < 1e-6);
            }
            None => {
                // Nothing of it may be inside: sampled.
                for i in 0..=200 {
                    let s = a.lerp(b, f64::from(i) / 200.0);
                    prop_assert!(!window.grown(-1e-9).holds(s));
                }
            }
        }
    }

    /// The strokes' length times their spacing is the area, up to one stroke at the rim: the
    /// rectangle rule in the direction across the strokes.
    #[test]
    fn hatching_covers_the_area_once(w in 5.0..60.0_f64, h in 5.0..60.0_f64, angle in 0.0..6.0_f64) {
        let ring = Rect::new(3.3, 4.4, w, h).corners();
        let spacing = 0.2;
        let covered: f64 = hatch(&ring, angle, spacing)
            .iter()
            .map(|[a, b]| a.distance(*b) * spacing)
            .sum();
        let slack = spacing * (w + h) * 1.5;
        prop_assert!((covered - w * h).abs() < slack, "{covered} against {}", w * h);
    }
}

#[test]
fn a_concave_outline_is_hatched_only_inside() {
    // A U: the notch between x = 4 and x = 6 above y = 2 stays white.
    let ring = [
        (0.0, 0.0),
        (10.0, 0.0),
        (10.0, 10.0),
        (6.0, 10.0),
        (6.0, 2.0),
        (4.0, 2.0),
        (4.0, 10.0),
        (0.0, 10.0),
    ]
    .map(|(x, y)| Spot::new(x, y));
    for [a, b] in hatch(&ring, 0.0, 0.7) {
        let middle = a.lerp(b, 0.5);
        assert!(
            middle.y < 2.0 || middle.x < 4.0 || middle.x > 6.0,
            "a stroke crosses the notch at {middle:?}"
        );
    }
}

#[test]
fn a_slip_in_the_spacing_does_not_fill_the_memory() {
    let ring = Rect::new(0.0, 0.0, 100.0, 100.0).corners();
    assert!(hatch(&ring, 0.3, 0.0).is_empty());
    assert!(hatch(&ring, 0.3, f64::NAN).is_empty());
    assert!(hatch(&ring, 0.3, 0.002).len() <= 20_001);
}

#[test]
fn wider_words_are_judged_wider() {
    let plain = Lettering::plain(2.5);
    assert!(plain.width_mm("WWW") > plain.width_mm("iii"));
    assert!(plain.bold().width_mm("L3") > plain.width_mm("L3"));
}
