//! How a slice of a bend is held, which no jaw and no hand can hold by itself.

use super::PrintJob;
use super::cautions::caution;
use crate::checks::slices;
use tubewright_packet::Block;
use tubewright_stock::CutCard;

/// How it is done (common practice, no source).
const HOW: &str = "A SLICE is a bend without a leg, too short for a jaw or a hand. It is marked, named and given its witness \
    line on the whole bend, and the bend is what the saw holds; a ring that is dressed is dressed before the cut that \
    lets its slice go. Stop the saw before you take a slice out. Deburr it with a file, slid on a bar or a tube that \
    fills its bore and is held in the vice, never in the fingers at a wheel. Tack it on the bench to the part beside \
    it, both laid in an angle iron and clocked as the fit sheet says, and put the two up as one (common practice, no \
    source).";

/// What the slices of a card are and how long on their inside, for a line on it; none where it has none.
pub(super) fn words(job: &PrintJob<'_>, card: &CutCard) -> Option<String> {
    let l = job.lengths;
    let slices: Vec<String> = slices(&card.parts, &card.stock)
        .iter()
        .map(|slice| format!("{} ({})", slice.mark, l.about(slice.inside_mm)))
        .collect();
    let are = match slices.len() {
        0 => return None,
        1 => "SLICE",
        _ => "SLICES",
    };
    Some(format!(
        "{are} {}: held as “How to cut” says",
        slices.join(", ")
    ))
}

/// How slices are held, where a card has any.
pub(super) fn how_to(job: &PrintJob<'_>) -> Option<Block> {
    let cards = job.supply.iter().flat_map(|supply| &supply.cards);
    let mut all = cards.flat_map(|card| slices(&card.parts, &card.stock));
    all.next().map(|_| caution(HOW))
}
