//! A simulated shop: random runs are cut, tacked and welded with random errors within the stated
//! tolerances and measured with a random tape. How often does the last piece fit and every gap hold,
//! with the check distances and re-planned from each joint as built, and without?
//!
//! Nothing here is used by the program. The figures stand in the handbook, chapter *Fitting*.

mod builds;
mod shop;

use shop::{Habit, Outcome, build};

struct Share {
    fits: u32,
    gaps: u32,
    builds: u32,
}

fn shares(builds: u32, habit: Habit) -> Share {
    let mut share = Share {
        fits: 0,
        gaps: 0,
        builds,
    };
    for number in 0..builds {
        let Outcome {
            last_piece_fits,
            gaps_hold,
        } = build(u64::from(number), habit);
        share.fits += u32::from(last_piece_fits);
        share.gaps += u32::from(gaps_hold);
    }
    share
}

fn percent(part: u32, of: u32) -> f64 {
    100.0 * f64::from(part) / f64::from(of)
}

#[test]
fn check_distances_make_the_last_piece_fit_more_often() {
    let with = shares(16, Habit::Taped);
    let without = shares(16, Habit::ByTheCard);
    assert!(with.fits >= 10, "{} of {}", with.fits, with.builds);
    assert!(with.fits > without.fits && with.gaps >= without.gaps);
}

/// `TUBEWRIGHT_SHOP_BUILDS=500` prints the figures of the handbook; a few builds of each kind without.
#[test]
fn every_habit_is_tried() {
    let builds = std::env::var("TUBEWRIGHT_SHOP_BUILDS")
        .ok()
        .and_then(|builds| builds.parse().ok())
        .unwrap_or(4);
    for (habit, words) in [
        (Habit::ByTheCard, "by the card alone"),
        (Habit::Checked, "held to the check distances"),
        (Habit::Taped, "held to them and re-planned as built"),
        (Habit::Sloped, "the same, with slopes of every open face"),
    ] {
        let share = shares(builds, habit);
        assert!(share.fits <= builds && share.gaps <= builds);
        println!(
            "{words}: the last piece fits in {:.1} %, every gap holds in {:.1} % of {} builds",
            percent(share.fits, share.builds),
            percent(share.gaps, share.builds),
            share.builds
        );
    }
}
