//! Wrap-round templates.

use serde::Serialize;
use ts_rs::TS;

/// The templates of the way.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct TemplatesView {
    /// Which version of the view it belongs to.
    pub version: String,
    /// Which cuts want a template and which do not; what cannot be made by hand, and why.
    pub words: Vec<String>,
    /// Why there are none.
    pub trouble: Option<String>,
    /// Every template.
    pub templates: Vec<TemplateView>,
}

/// A drawing at true scale.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct TemplateView {
    /// Number of it, from 0.
    pub number: u32,
    /// Name of its file, without what follows the dot.
    pub file: String,
    /// What it is.
    pub title: String,
    /// How it is laid round the tube.
    pub lay: String,
    /// Width of the drawing in one piece, mm.
    pub width: f64,
    /// Its height, mm.
    pub height: f64,
    /// Pages of the paper asked for.
    pub pages: u32,
}
