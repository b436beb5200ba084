//! A stock item laid flat on the paper: leg, arc turning up, leg.

use crate::drawing::{Rect, Spot};
use tubewright_geometry::cut::StockBend;
use tubewright_geometry::math;

/// The centre line on the paper, starting at the origin toward the right.
pub(crate) struct BenchPath<'a> {
    stock: &'a StockBend,
    scale: f64,
    thick: f64,
}

impl<'a> BenchPath<'a> {
    /// The item at `scale`; a straight is drawn at least `thick_mm` of paper thick, out of scale.
    pub(crate) fn new(stock: &'a StockBend, scale: f64, thick_mm: f64) -> Self {
        let is_bend = stock.bend_rad > 1e-9;
        let thick = if is_bend {
            stock.od_mm * scale
        } else {
            (stock.od_mm * scale).max(thick_mm)
        };
        Self {
            stock,
            scale,
            thick,
        }
    }

    pub(crate) fn length_mm(&self) -> f64 {
        self.stock.whole_length().centre_line_mm
    }

    /// Width of the tube on the paper.
    pub(crate) const fn width_mm(&self) -> f64 {
        self.thick
    }

    /// A stretch of tube in mm of paper.
    pub(crate) fn on_paper_mm(&self, along_mm: f64) -> f64 {
        along_mm * self.scale
    }

    /// Place and direction at so many mm of tube from the near end.
    pub(crate) fn at(&self, along_mm: f64) -> (Spot, Spot) {
        let s = self.stock;
        let arc_mm = s.clr_mm * s.bend_rad;
        let in_arc = (along_mm - s.near_leg_mm).clamp(0.0, arc_mm);
        let turn = if arc_mm > 0.0 { in_arc / s.clr_mm } else { 0.0 };
        let (sin, cos) = math::sin_cos(turn);
        // Up on the paper is toward smaller y.
        let along = Spot::new(cos, -sin);
        let straight = along_mm.min(s.near_leg_mm);
        let beyond = if arc_mm > 0.0 {
            (along_mm - s.near_leg_mm - arc_mm).max(0.0)
        } else {
            (along_mm - s.near_leg_mm).max(0.0)
        };
        let clr = if arc_mm > 0.0 { s.clr_mm } else { 0.0 };
        let spot = Spot::new(straight + clr * sin, -clr * (1.0 - cos)) + along * beyond;
        (spot * self.scale, along)
    }

    /// A line along the tube, `off` of the half width to the right hand (outside of the bend) at 1.
    pub(crate) fn line(&self, [from_mm, to_mm]: [f64; 2], off: f64) -> Vec<Spot> {
        let s = self.stock;
        let arc_mm = s.clr_mm * s.bend_rad;
        let mut stops = vec![from_mm, to_mm];
        for i in 0..=96 {
            let stop = s.near_leg_mm + arc_mm * f64::from(i) / 96.0;
            if stop > from_mm && stop < to_mm {
                stops.push(stop);
            }
        }
        stops.sort_by(f64::total_cmp);
        stops
            .into_iter()
            .map(|stop| {
                let (spot, along) = self.at(stop);
                spot + along.quarter() * (0.5 * off * self.width_mm())
            })
            .collect()
    }

    /// Outline of a stretch.
    pub(crate) fn outline(&self, stretch: [f64; 2]) -> Vec<Spot> {
        let mut ring = self.line(stretch, 1.0);
        ring.extend(self.line(stretch, -1.0).into_iter().rev());
        ring
    }

    pub(crate) fn extent(&self) -> Rect {
        Rect::of(self.outline([0.0, self.length_mm()]))
    }
}
