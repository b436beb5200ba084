//! Wrap-round templates at true scale.

use super::{off_the_loop, told, typed};
use crate::api::Refusal;
use crate::deeds::refusal;
use crate::playground::Playground;
use crate::view::TemplatesWanted;
use axum::extract::{Json, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use tubewright_sheets::{to_dxf, to_svg};

/// What is asked for.
#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Asked {
    paper: PaperAsked,
    unit: Option<String>,
    /// Date that is printed, year-month-day.
    on: String,
    /// Number of one of them.
    number: Option<usize>,
    /// A page of it; without one it is drawn in one piece.
    page: Option<usize>,
    /// Of the one in one piece.
    #[serde(default, rename = "as")]
    form: Form,
}

#[derive(Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "camelCase")]
enum PaperAsked {
    A4,
    Letter,
}

#[derive(Clone, Copy, Default, Deserialize)]
#[serde(rename_all = "camelCase")]
enum Form {
    #[default]
    Svg,
    Dxf,
}

impl Asked {
    fn wanted(&self) -> TemplatesWanted {
        TemplatesWanted {
            is_letter: self.paper == PaperAsked::Letter,
            unit: self.unit.clone(),
            on: self.on.clone(),
        }
    }
}

/// The list.
pub(super) async fn list(State(play): State<Playground>, Query(asked): Query<Asked>) -> Response {
    told(play, move |build| build.templates(&asked.wanted())).await
}

/// One of them, whole or a page of it.
pub(super) async fn one(State(play): State<Playground>, Query(asked): Query<Asked>) -> Response {
    let form = asked.form;
    let drawn = off_the_loop(move || {
        let build = play.build()?;
        let drawn = build
            .templates_drawn(&asked.wanted())
            .map_err(|why| refusal(&why))?;
        let gone = || refusal("there is no such template any more: look at Cut again");
        let template = drawn.get(asked.number.unwrap_or(0)).ok_or_else(gone)?;
        let drawing = match asked.page {
            Some(page) => template.pages.get(page).ok_or_else(gone)?,
            None => &template.whole,
        };
        Ok::<String, Refusal>(match form {
            Form::Svg => to_svg(drawing),
            Form::Dxf => to_dxf(drawing),
        })
    });
    match (drawn.await, form) {
        (Ok(Ok(text)), Form::Svg) => typed("image/svg+xml", text),
        (Ok(Ok(text)), Form::Dxf) => typed("image/vnd.dxf", text),
        (Ok(Err(refusal)), _) => (StatusCode::CONFLICT, Json(refusal)).into_response(),
        (Err(died), _) => died.into_response(),
    }
}
