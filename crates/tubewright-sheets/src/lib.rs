//! One drawing model for every picture on paper and page, and files for other programs.
//!
//! Give it a [`Scene`] (bodies, runs of marked pieces, marks, tight places) and it returns a
//! [`Drawing`] in millimetres of paper, which [`to_svg`] and [`to_dxf`] write at true scale. Lines tell what they
//! mean by width and dashes alone: a photocopy says the same.
//!
//! This crate knows no file, no clock and no build: names, the plan's hash and the date come from
//! the caller. The same input gives the same bytes.

pub mod card;
pub mod drawing;
mod dxf;
mod figure;
pub mod scene;
pub mod shop;
pub mod solids;
pub mod split;
mod svg;
pub mod template;

pub use card::{
    BladeSide, CardCut, CardError, CardItem, CardLengths, CardPart, cut_card, cut_picture,
};
pub use drawing::Drawing;
pub use dxf::to_dxf;
pub use scene::{
    DrawnUnit, Nameless, PieceKind, Scene, SceneBody, SceneMark, ScenePiece, SceneRun, TightPlace,
};
pub use shop::{
    LaidView, Paper, ShopError, TitleBlock, ViewName, ViewSizes, laid_view, one_view, three_views,
};
pub use solids::{MeshFineness, SolidError, StepStamp, to_glb, to_step};
pub use split::{SplitCross, SplitCrossError, SplitMark, split_cross_step};
pub use svg::to_svg;
pub use template::{
    Keep, Template, TemplateError, TemplateSpec, TurnSense, Unrolled, clock_strip, wrap_template,
};
