//! The demonstration builds, from their readings to what the saw marks give.

mod common;

use common::prove::{prove, prove_others};
use common::solved::solve_folder;

/// What the builds wish for themselves.
fn effort() -> u64 {
    std::env::var("TUBEWRIGHT_EFFORT")
        .ok()
        .and_then(|text| text.parse().ok())
        .unwrap_or(40_000)
}

fn proved(name: &str) {
    let solved = solve_folder(name, effort());
    assert!(solved.best().is_some(), "{name}: no route");
    prove(&solved).assert_sound(name);
    let (others, verdict) = prove_others(&solved);
    verdict.assert_sound(name);
    assert!(others >= 2, "{name}: {others} other ways");
}

#[test]
fn the_estate_is_what_its_cards_give() {
    proved("estate-v6");
}

#[test]
fn the_kit_car_is_what_its_cards_give() {
    proved("kitcar-mid4");
}

#[test]
fn the_pick_up_is_what_its_cards_give() {
    proved("pickup-six");
}
