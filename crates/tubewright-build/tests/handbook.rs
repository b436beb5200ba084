//! The handbook's pieces of the format are pieces of the format.

#![allow(
    clippy::unwrap_used,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

use tubewright_build::{Texts, read};

const PAGE: &str = include_str!("../../../handbook/src/build-folder.md");

/// The TOML blocks under one `##` heading, one after another.
fn blocks(heading: &str) -> String {
    let from = PAGE.split(&format!("\n## {heading}\n")).nth(1).unwrap();
    let section = from.split("\n## ").next().unwrap();
    section
        .split("```toml\n")
        .skip(1)
        .map(|rest| rest.split("```").next().unwrap())
        .collect::<Vec<_>>()
        .join("\n")
}

#[test]
fn the_handbook_writes_no_key_and_no_value_that_is_refused() {
    let (build, stock, shop) = (
        blocks("build.toml"),
        blocks("stock.toml"),
        blocks("shop.toml"),
    );
    let read = read(Texts {
        build: Some(&build),
        stock: Some(&stock),
        shop: Some(&shop),
    });
    // The page shows a few of the things that its examples name; names may be missing, and the list
    // of marks in a scan is cut short.
    let others: Vec<String> = read
        .problems
        .iter()
        .filter(|problem| {
            !problem.what.contains("there is no")
                && !problem.what.contains("is left out")
                && !problem.what.contains("`places` holds 1")
        })
        .map(ToString::to_string)
        .collect();
    assert!(others.is_empty(), "{}", others.join("\n"));
    assert!(read.model.stock.items.len() >= 5);
}
