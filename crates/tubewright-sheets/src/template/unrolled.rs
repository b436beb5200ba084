//! Cut ends and holes unrolled flat, ready to be drawn.

use tubewright_geometry::math;
use tubewright_geometry::template::{Saddle, WrapCurve, polyline};

/// How far the drawn polyline may lie from the exact curve, in mm: a tenth of a pencil line.
pub const CURVE_TOLERANCE_MM: f64 = 0.005;

/// Curves on the flat paper: across the strip and along the tube, in mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Unrolled {
    /// Radius in mm of the tube that the template is wrapped round, without the paper.
    pub tube_radius_mm: f64,
    /// Thickness of the paper in mm: the strip is `2π (radius + paper/2)` long.
    pub paper_mm: f64,
    /// The curves `[across, along]`, each within [`CURVE_TOLERANCE_MM`] of the exact one.
    pub lines: Vec<Vec<[f64; 2]>>,
    /// True for a hole in the tube's side: across is measured both ways from the middle line, and
    /// the strip covers only the hole.
    pub is_hole: bool,
}

impl Unrolled {
    /// A cut end.
    #[must_use]
    pub fn end_cut(curve: &impl WrapCurve, paper_mm: f64) -> Self {
        Self {
            tube_radius_mm: curve.tube_radius_mm(),
            paper_mm,
            lines: polyline(curve, paper_mm, CURVE_TOLERANCE_MM),
            is_hole: false,
        }
    }

    /// An opening that lies alike to both sides of a section (a split bend, from its apex): the curve
    /// and its mirror image.
    #[must_use]
    pub fn opening(curve: &impl WrapCurve, paper_mm: f64) -> Self {
        let mut found = Self::end_cut(curve, paper_mm);
        let mirrored: Vec<Vec<[f64; 2]>> = found
            .lines
            .iter()
            .map(|line| line.iter().map(|&[a, l]| [a, -l]).collect())
            .collect();
        found.lines.extend(mirrored);
        found
    }

    /// The hole in a header under a branch; `header_mm` is the header's outer radius.
    #[must_use]
    pub fn hole(saddle: &Saddle, header_mm: f64, paper_mm: f64) -> Self {
        let stretch = (header_mm + 0.5 * paper_mm) / header_mm;
        // 720 chords of a closed curve no larger than the header: sagitta below r (π/720)²/2, that is
        // 0.001 mm at 100 mm.
        let ring = (0..=720)
            .map(|i| {
                let place = saddle.hole(math::TAU * f64::from(i % 720) / 720.0);
                [place.round_mm * stretch, place.along_mm]
            })
            .collect();
        Self {
            tube_radius_mm: header_mm,
            paper_mm,
            lines: vec![ring],
            is_hole: true,
        }
    }

    /// Length of the strip once round, in mm.
    #[must_use]
    pub fn girth_mm(&self) -> f64 {
        math::TAU * (self.tube_radius_mm + 0.5 * self.paper_mm)
    }

    /// Least and greatest of the curves, across and along; `None` when nothing is cut or a number is
    /// not finite.
    #[must_use]
    pub fn extent(&self) -> Option<[[f64; 2]; 2]> {
        let mut lo = [f64::INFINITY; 2];
        let mut hi = [f64::NEG_INFINITY; 2];
        for [a, l] in self.lines.iter().flatten() {
            if !a.is_finite() || !l.is_finite() {
                return None;
            }
            lo = [lo[0].min(*a), lo[1].min(*l)];
            hi = [hi[0].max(*a), hi[1].max(*l)];
        }
        (lo[0] <= hi[0]).then_some([lo, hi])
    }
}
