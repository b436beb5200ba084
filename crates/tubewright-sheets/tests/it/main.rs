//! Pictures, templates and files, judged by their own numbers.

mod cards;
mod clock_strip;
mod common;
mod drawing;
mod solids;
mod split;
mod templates;
mod three_views;
