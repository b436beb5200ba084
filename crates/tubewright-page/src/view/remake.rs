//! Spoiled pieces and what is cut already.

use crate::api::{LeftAs, MadeView, RemakeView};
use crate::derived::{Remade, Shown};
use tubewright_plan::stock::leftover_name;
use tubewright_stock::{CutStock, Source};

/// How each spoiled piece is made again.
pub(super) fn of(shown: &Shown) -> Vec<RemakeView> {
    shown
        .remakes()
        .iter()
        .map(|remade| view(shown, remade))
        .collect()
}

fn view(shown: &Shown, remade: &Remade) -> RemakeView {
    let found = remade.remake.as_ref();
    let of_it = leftover_name(&remade.piece);
    let on_hand = &shown.car.model().stock.on_hand;
    RemakeView {
        piece: remade.piece.clone(),
        from: found.ok().and_then(|remake| remake.cheapest_words()),
        buying: found.map_or_else(|_| String::new(), |remake| remake.buying_words()),
        missing: found.map_or_else(|_| Vec::new(), |remake| remake.missing.clone()),
        trouble: found.err().cloned(),
        left_as: match remade.is_left_a_length {
            Some(true) => LeftAs::Length,
            Some(false) => LeftAs::Angle,
            None => LeftAs::Unknown,
        },
        on_shelf: on_hand
            .iter()
            .rfind(|it| it.name.as_str().trim_end_matches('+') == of_it)
            .map(|it| it.name.to_string()),
    }
}

/// What is cut already, when the cards hold only what is still to be cut.
pub(super) fn made(shown: &Shown) -> Vec<MadeView> {
    if !shown.is_planned_anew() {
        return Vec::new();
    }
    let now = shown.now().and_then(Result::ok);
    now.map_or_else(Vec::new, |now| {
        now.progress.made.iter().map(opened).collect()
    })
}

fn opened(cut: &CutStock) -> MadeView {
    let (Source::OnHand(name) | Source::Bought(name)) = &cut.source;
    MadeView {
        item: name.clone(),
        number: cut.number,
        parts: super::buy::marks_of(&cut.parts),
    }
}
