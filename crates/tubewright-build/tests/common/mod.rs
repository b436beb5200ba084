//! The folder that holds everything the format knows, once.

#![allow(
    dead_code,
    reason = "each test file uses its own part of what is shared"
)]

use tubewright_build::{ReadBuild, Texts, read};

pub(crate) const ESTATE_BUILD: &str = include_str!("../data/estate/build.toml");
pub(crate) const ESTATE_STOCK: &str = include_str!("../data/estate/stock.toml");
pub(crate) const ESTATE_SHOP: &str = include_str!("../data/estate/shop.toml");

pub(crate) fn estate() -> ReadBuild {
    read(Texts {
        build: Some(ESTATE_BUILD),
        stock: Some(ESTATE_STOCK),
        shop: Some(ESTATE_SHOP),
    })
}
