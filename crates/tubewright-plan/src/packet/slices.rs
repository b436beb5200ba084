//! How a slice of a bend is held, which no jaw and no hand can hold by itself.

use super::PrintJob;
use super::cautions::caution;
use super::words::degrees;
use crate::checks::slices;
use tubewright_packet::Block;
use tubewright_stock::CutCard;

/// What the slices of a card ask for; none where it has none.
pub(super) fn words(job: &PrintJob<'_>, card: &CutCard) -> Option<Block> {
    let l = job.lengths;
    let slices: Vec<String> = slices(&card.parts, &card.stock)
        .iter()
        .map(|slice| {
            format!(
                "{} ({}°, {} on its inside)",
                slice.mark,
                degrees(slice.sweep.deg()),
                l.about(slice.inside_mm)
            )
        })
        .collect();
    let (are, them) = match slices.len() {
        0 => return None,
        1 => ("is a SLICE", "It is"),
        _ => ("are SLICES", "They are"),
    };
    Some(caution(&format!(
        "{} {are}: too short for a jaw or a hand. {them} marked, named and given the witness line on the whole bend; the \
         bend is what the saw holds, and a ring that is dressed is dressed before the cut that lets its slice go. \
         Stop the saw before you take a slice out. Deburr it with a file, slid on a bar or a tube that fills its bore \
         and is held in the vice, never in the fingers at a wheel. Tack it on the bench to the part beside it, both laid \
         in an angle iron, and put the two up as one (common practice, no source).",
        slices.join(", ")
    )))
}
