//! Check rulers: the proof that the printer did not scale the page.

use crate::drawing::{Item, Lettering, Line, Spot, Weight};
use crate::figure::Figure;

/// Height in mm that a ruler with its figures takes up.
pub(crate) const RULER_MM: f64 = 9.0;

/// 100 mm in millimetres, from `at` to the right.
pub(crate) fn ruler_100_mm(at: Spot) -> Vec<Item> {
    ticked(at, 1.0, 100, 10, 5, "mm", 10.0)
}

/// 4 inches in sixteenths, from `at` to the right.
pub(crate) fn ruler_4_in(at: Spot) -> Vec<Item> {
    ticked(at, 25.4 / 16.0, 64, 16, 8, "in", 1.0)
}

fn ticked(
    at: Spot,
    step_mm: f64,
    steps: u32,
    major: u32,
    middle: u32,
    unit: &str,
    per_major: f64,
) -> Vec<Item> {
    let hair = Line::solid(Weight::Hair);
    let along = |i: u32| at + Spot::new(step_mm * f64::from(i), 0.0);
    let mut items = vec![Item::line(at, along(steps), hair)];
    for i in 0..=steps {
        let tall = if i % major == 0 {
            5.0
        } else if i % middle == 0 {
            3.5
        } else {
            2.0
        };
        let foot = along(i);
        items.push(Item::line(foot, foot - Spot::new(0.0, tall), hair));
        if i % major == 0 {
            let figure = Figure(per_major * f64::from(i / major));
            let words = if i == steps {
                format!("{figure} {unit}")
            } else {
                figure.to_string()
            };
            items.push(Item::text(
                foot + Spot::new(0.0, 3.0),
                words,
                Lettering::plain(2.2).centred(),
            ));
        }
    }
    items
}
