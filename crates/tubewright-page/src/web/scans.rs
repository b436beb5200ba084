//! A scan that is put into the folder.

use super::answered;
use crate::playground::Playground;
use axum::body::Bytes;
use axum::extract::{Query, State};
use axum::response::Response;
use serde::Deserialize;

/// Where it is sent to.
pub(super) const ADDRESS: &str = "/api/scan";

/// What it shall be called.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Named {
    name: String,
}

/// The bytes of the file, as they are.
pub(super) async fn put(
    State(play): State<Playground>,
    Query(named): Query<Named>,
    content: Bytes,
) -> Response {
    answered(play, move |build| build.add_scan(&named.name, &content)).await
}
