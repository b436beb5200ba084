//! Pictures, templates and files, judged by their own numbers.

mod common;
mod drawing;
mod templates;
mod three_views;
