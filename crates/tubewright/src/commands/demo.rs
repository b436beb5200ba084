//! The whole job on a demonstration car.

use super::solve::solve;
use super::{Done, Failure, buy, check, cut, drawing, load, measure, new, print, route, sheets};
use crate::cli::{Demo, PaperSize};
use crate::terminal::lengths::shown_lengths;
use crate::terminal::{paragraph, today};
use std::path::PathBuf;

/// Copies the car, measures, routes, buys, cuts and checks it, and prints its packet.
///
/// # Errors
/// The folder cannot be written, or a stage cannot be done.
pub(crate) fn run(arguments: &Demo) -> Result<Done, Failure> {
    let car = arguments.car;
    let folder = arguments
        .folder
        .clone()
        .unwrap_or_else(|| PathBuf::from("tubewright-demo").join(car.name));
    if folder.join("build.toml").exists() {
        print(&format!("Using {} as it is.\n", folder.display()))?;
    } else {
        new::copy_demonstration(car, &folder)?;
        print(&paragraph(
            &format!("Copied “{}” to {}.", car.title, folder.display()),
            0,
        ))?;
    }
    print("The car, its readings, its suppliers and its prices are invented.\n")?;
    let mut loaded = load::load(&folder)?;
    let solved = solve(&mut loaded, arguments.effort)?;
    let lengths = shown_lengths(&loaded.model);
    print(&measure::as_text(
        &loaded.model.build,
        &solved.around,
        lengths,
        false,
    ))?;
    print(&route::as_text(
        &solved,
        &route::shown(&loaded, &solved),
        lengths,
    ))?;
    let supply = solved.supply(&loaded, &[])?;
    if let Some(supply) = &supply {
        print(&buy::as_text(supply))?;
        let rolls = cut::rolls_of(&loaded.model, solved.runs());
        print(&cut::as_text(supply, &rolls, lengths))?;
    }
    let board = solved.board(&loaded, supply.as_ref());
    print(&check::as_text(&board, lengths))?;
    let picture = folder.join("three-views.svg");
    drawing::write(&loaded.model, &solved, &board, &picture)?;
    print(&format!(
        "\nThe runs from the side, from above and from behind: {}\n",
        picture.display()
    ))?;
    let out = folder.join("sheets");
    sheets::write_all(
        &loaded,
        &solved,
        (
            supply.as_ref(),
            &board,
            &sheets::substituted(supply.as_ref()),
        ),
        &out,
        (PaperSize::A4, today()),
    )?;
    solved.plan.save(&mut loaded);
    print("\n")?;
    print(&paragraph(
        &format!(
            "See and play it in the browser: `tubewright open {0}`. Or go on with `tubewright measure {0}`, `route`, `buy`, `cut` and `check`, and change {0}/build.toml.",
            folder.display()
        ),
        0,
    ))?;
    // The demonstration holds slips on purpose: that they are found is no failure of the demonstration.
    Ok(Done::Clean.or_stopped())
}
