//! Carrying items across the paper.

use super::spot::Spot;
use super::{Dimension, Item};

/// The item, carried by `by`.
#[must_use]
pub fn moved(item: &Item, by: Spot) -> Item {
    let all = |spots: &[Spot]| spots.iter().map(|&s| s + by).collect();
    let mut copy = item.clone();
    match &mut copy {
        Item::Polyline { spots, .. } | Item::Polygon { spots, .. } | Item::Band { spots, .. } => {
            *spots = all(spots);
        }
        Item::Circle { centre, .. } | Item::Arc { centre, .. } => *centre = *centre + by,
        Item::Text { at, .. } => *at = *at + by,
        Item::Dimension(Dimension { from, to, .. }) => {
            *from = *from + by;
            *to = *to + by;
        }
        Item::Group { items, .. } => *items = items.iter().map(|i| moved(i, by)).collect(),
    }
    copy
}
