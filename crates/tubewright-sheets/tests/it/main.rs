//! Pictures, templates and files, judged by their own numbers.

mod cards;
mod common;
mod drawing;
mod solids;
mod templates;
mod three_views;
