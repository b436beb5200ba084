//! Errands, and buy or make: asked with what was typed, kept nowhere.

use super::answered;
use crate::api::{ErrandsAsked, MakeAsked};
use crate::playground::Playground;
use axum::extract::{Json, State};
use axum::response::Response;

/// The order of the errands.
pub(super) async fn errands(
    State(play): State<Playground>,
    Json(asked): Json<ErrandsAsked>,
) -> Response {
    answered(play, move |build| build.errands(&asked)).await
}

/// Buy or make.
pub(super) async fn buy_or_make(
    State(play): State<Playground>,
    Json(asked): Json<MakeAsked>,
) -> Response {
    answered(play, move |build| build.buy_or_make(&asked)).await
}
