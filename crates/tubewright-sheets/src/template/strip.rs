//! The strip itself: curve, waste, clock lines, square edge, tab.

use super::{Keep, TemplateSpec, TurnSense, Unrolled};
use crate::drawing::{
    Dash, Item, Layer, Lettering, Line, RISING_RAD, Rect, Spot, Weight, arrow, hatch,
};
use crate::figure::Figure;
use tubewright_geometry::math;

/// Paper beyond the curve, and width of the glue tab, in mm.
const BEYOND_MM: f64 = 12.0;
pub(super) const TAB_MM: f64 = 8.0;

/// The strip laid out from the origin down and right.
pub(crate) struct Strip {
    pub(crate) layers: Vec<Layer>,
    pub(crate) size: Spot,
}

/// Where a place of the unrolled tube lies on the strip.
struct Lay {
    width_mm: f64,
    top_mm: f64,
    left_mm: f64,
    is_flipped: bool,
}

impl Lay {
    /// Seen from outside with the tube's direction up, a clockwise angle (looking along the tube)
    /// grows to the right.
    fn spot(&self, [across, along]: [f64; 2]) -> Spot {
        let x = across - self.left_mm;
        Spot::new(
            if self.is_flipped {
                self.width_mm - x
            } else {
                x
            },
            self.top_mm - along,
        )
    }
}

pub(crate) fn strip(unrolled: &Unrolled, spec: &TemplateSpec, extent: [[f64; 2]; 2]) -> Strip {
    let [lo, hi] = extent;
    let below = match (unrolled.is_hole, spec.keep) {
        (false, Keep::Below) => spec.lead_mm,
        _ => BEYOND_MM,
    };
    let above = match (unrolled.is_hole, spec.keep) {
        (false, Keep::Above) => spec.lead_mm,
        _ => BEYOND_MM,
    };
    let (left_mm, width_mm) = if unrolled.is_hole {
        (lo[0] - BEYOND_MM, hi[0] - lo[0] + 2.0 * BEYOND_MM)
    } else {
        (0.0, unrolled.girth_mm())
    };
    let lay = Lay {
        width_mm,
        top_mm: hi[1] + above,
        left_mm,
        is_flipped: spec.q_turns == TurnSense::Anticlockwise,
    };
    let height = hi[1] - lo[1] + below + above;
    let layer = |name: &str, items: Vec<Item>| Layer {
        name: name.to_owned(),
        items,
    };
    let curves: Vec<Vec<Spot>> = unrolled
        .lines
        .iter()
        .map(|line| line.iter().map(|&p| lay.spot(p)).collect())
        .collect();
    let mut layers = vec![
        layer("waste", waste(unrolled, spec, &curves, height, lay.top_mm)),
        layer("strip", outline(unrolled, width_mm, height)),
        layer("clock", clock_lines(unrolled, spec, &lay, height)),
    ];
    layers.push(layer(
        "curve",
        curves
            .into_iter()
            .map(|spots| Item::Polyline {
                spots,
                line: Line::solid(Weight::Medium),
            })
            .collect(),
    ));
    layers.push(layer("words", words(unrolled, spec, width_mm, height)));
    layers.push(layer("registration", registration(width_mm, height)));
    let tab = if unrolled.is_hole { 0.0 } else { TAB_MM };
    Strip {
        layers,
        size: Spot::new(width_mm + tab, height),
    }
}

pub(super) fn outline(unrolled: &Unrolled, width_mm: f64, height: f64) -> Vec<Item> {
    let frame = Rect::new(0.0, 0.0, width_mm, height);
    let mut spots = frame.corners().to_vec();
    spots.push(frame.min);
    let mut items = vec![Item::Polyline {
        spots,
        line: Line::solid(Weight::Narrow),
    }];
    if !unrolled.is_hole {
        // The tab goes under the other end when the strip is wrapped.
        items.push(Item::Polyline {
            spots: vec![
                Spot::new(width_mm, 2.0),
                Spot::new(width_mm + TAB_MM, 4.0),
                Spot::new(width_mm + TAB_MM, height - 4.0),
                Spot::new(width_mm, height - 2.0),
            ],
            line: Line::new(Weight::Narrow, Dash::Dashed),
        });
    }
    items
}

fn waste(
    unrolled: &Unrolled,
    spec: &TemplateSpec,
    curves: &[Vec<Spot>],
    height: f64,
    apex: f64,
) -> Vec<Item> {
    let mut items = Vec::new();
    for curve in curves {
        let (Some(first), Some(last)) = (curve.first(), curve.last()) else {
            continue;
        };
        let mut ring = curve.clone();
        let closed = unrolled.is_hole || first.distance(*last) < 1e-9;
        if !closed {
            if unrolled.lines.len() > 1 {
                // One side of an opening: closed by its apex line.
                ring.push(Spot::new(last.x, apex));
                ring.push(Spot::new(first.x, apex));
            } else {
                let edge = if spec.keep == Keep::Below {
                    0.0
                } else {
                    height
                };
                ring.push(Spot::new(last.x, edge));
                ring.push(Spot::new(first.x, edge));
            }
        }
        items.extend(
            hatch(&ring, RISING_RAD, 4.0)
                .into_iter()
                .map(|[a, b]| Item::line(a, b, Line::solid(Weight::Hair))),
        );
    }
    items
}

fn clock_lines(unrolled: &Unrolled, spec: &TemplateSpec, lay: &Lay, height: f64) -> Vec<Item> {
    let mut items = Vec::new();
    let radius = unrolled.tube_radius_mm + 0.5 * unrolled.paper_mm;
    let steps: Vec<i32> = if unrolled.is_hole {
        (-12..=12).collect()
    } else {
        (0..=12).collect()
    };
    for i in steps {
        let q = math::TAU * f64::from(i) / 12.0;
        let x = lay.spot([radius * q, 0.0]).x;
        if !(-1e-9..=lay.width_mm + 1e-9).contains(&x) {
            continue;
        }
        let is_quarter = i % 3 == 0;
        let line = if i % 12 == 0 {
            Line::solid(Weight::Narrow)
        } else if is_quarter {
            Line::new(Weight::Narrow, Dash::Centre)
        } else {
            Line::new(Weight::Hair, Dash::Dotted)
        };
        items.push(Item::line(Spot::new(x, 0.0), Spot::new(x, height), line));
        let sense = if spec.q_turns == TurnSense::Clockwise {
            1.0
        } else {
            -1.0
        };
        let label = match spec.clock_at_zero_rad {
            Some(zero) => {
                let hours = ((zero + sense * q) / math::TAU * 12.0).rem_euclid(12.0);
                let hours = if !(1e-6..=12.0 - 1e-6).contains(&hours) {
                    12.0
                } else {
                    hours
                };
                format!("{} h", Figure((hours * 10.0).round() / 10.0))
            }
            None => format!("{}°", Figure(q.to_degrees().round())),
        };
        // Beside the line, near the edge that is kept: clear of the curve.
        let y = if spec.keep == Keep::Below {
            height - 2.0
        } else {
            4.0
        };
        let near_right = x > lay.width_mm - 8.0;
        let lettering = Lettering::plain(2.2);
        items.push(Item::text(
            Spot::new(if near_right { x - 0.8 } else { x + 0.8 }, y),
            label,
            if near_right {
                lettering.ending()
            } else {
                lettering
            },
        ));
    }
    items
}

fn words(unrolled: &Unrolled, spec: &TemplateSpec, width_mm: f64, height: f64) -> Vec<Item> {
    let y = if unrolled.is_hole {
        3.6
    } else if spec.keep == Keep::Below {
        height - 8.0
    } else {
        10.0
    };
    // The arrow stands right of the quarter line, on the part that is kept.
    let foot = Spot::new(0.25 * width_mm + 4.0, y + 3.0);
    let tip = foot - Spot::new(0.0, 7.0);
    let mut items = vec![
        Item::line(foot, tip, Line::solid(Weight::Medium)),
        arrow(tip, Spot::new(0.0, -1.0)),
        Item::text(
            foot + Spot::new(2.0, -2.5),
            format!("{}  this side out, {}", spec.mark, spec.arrow_words),
            Lettering::plain(2.8).bold(),
        ),
    ];
    if !unrolled.is_hole {
        items.push(Item::text(
            Spot::new(2.0, y - 2.5),
            spec.zero_words.as_str(),
            Lettering::plain(2.4).italic(),
        ));
    }
    items
}

/// Crosses that neighbouring pages share, and that show a skewed print.
pub(super) fn registration(width_mm: f64, height: f64) -> Vec<Item> {
    let hair = Line::solid(Weight::Hair);
    let mut items = Vec::new();
    for (x, y) in [
        (0.0, 0.0),
        (width_mm, 0.0),
        (0.0, height),
        (width_mm, height),
    ] {
        let c = Spot::new(x, y);
        items.push(Item::line(
            c - Spot::new(3.0, 0.0),
            c + Spot::new(3.0, 0.0),
            hair,
        ));
        items.push(Item::line(
            c - Spot::new(0.0, 3.0),
            c + Spot::new(0.0, 3.0),
            hair,
        ));
        items.push(Item::Arc {
            centre: c,
            radius_mm: 2.0,
            from_rad: 0.0,
            sweep_rad: math::PI,
            line: hair,
        });
        items.push(Item::Arc {
            centre: c,
            radius_mm: 2.0,
            from_rad: math::PI,
            sweep_rad: math::PI,
            line: hair,
        });
    }
    items
}
