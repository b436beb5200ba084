//! Dimensions: a distance with witness lines, arrows and its figure.

use super::Item;
use super::spot::Spot;
use super::style::{Fill, Lettering, Line, Weight};
use tubewright_geometry::math;

/// A distance between two spots, drawn aligned with them (ISO 129-1: dimension line, extension
/// lines, filled arrow heads; proportions of the arrow are common practice, no source).
#[derive(Clone, Debug, PartialEq)]
pub struct Dimension {
    /// One witness point.
    pub from: Spot,
    /// The other witness point.
    pub to: Spot,
    /// How far the dimension line stands off, in mm of paper; positive is to the right hand when
    /// going from `from` to `to` on the paper.
    pub off_mm: f64,
    /// The figure, with its unit where the sheet does not state one.
    pub text: String,
    /// Size of the figure in mm of paper.
    pub size_mm: f64,
}

const ARROW_MM: f64 = 2.2;

impl Dimension {
    /// As lines, arrow heads and letters. A dimension of no length draws nothing.
    #[must_use]
    pub fn items(&self) -> Vec<Item> {
        let Some(along) = (self.to - self.from).direction() else {
            return Vec::new();
        };
        let side = along.quarter();
        let line = Line::solid(Weight::Narrow);
        let hair = Line::solid(Weight::Hair);
        let reach = self.off_mm.signum();
        let (a, b) = (self.from + side * self.off_mm, self.to + side * self.off_mm);
        let mut items = vec![
            Item::line(self.from + side * reach, a + side * (1.5 * reach), hair),
            Item::line(self.to + side * reach, b + side * (1.5 * reach), hair),
        ];
        let length = a.distance(b);
        let lettering = Lettering::plain(self.size_mm).centred();
        let inside = length > 2.0 * ARROW_MM + 1.0;
        if inside {
            items.push(Item::line(a, b, line));
            items.push(arrow(a, along * -1.0));
            items.push(arrow(b, along));
        } else {
            items.push(Item::line(
                a - along * (2.0 * ARROW_MM),
                b + along * (2.0 * ARROW_MM),
                line,
            ));
            items.push(arrow(a, along));
            items.push(arrow(b, along * -1.0));
        }
        // The figure stands on its line, readable from below or from the right.
        let mut turn_rad = math::atan2(along.y, along.x);
        if turn_rad > math::FRAC_PI_2 - 1e-9 || turn_rad <= -math::FRAC_PI_2 - 1e-9 {
            turn_rad = math::wrap_to_pi(turn_rad + math::PI);
        }
        let up = Spot::toward(turn_rad - math::FRAC_PI_2);
        items.push(Item::Text {
            at: a.lerp(b, 0.5) + up * 0.8,
            text: self.text.clone(),
            lettering,
            turn_rad,
            has_halo: true,
        });
        items
    }
}

/// A filled arrow head whose tip is at `tip`, pointing along `toward`.
pub(crate) fn arrow(tip: Spot, toward: Spot) -> Item {
    let back = tip - toward * ARROW_MM;
    let side = toward.quarter() * (ARROW_MM / 6.0);
    Item::Polygon {
        spots: vec![tip, back + side, back - side],
        line: None,
        fill: Fill::Solid,
    }
}
