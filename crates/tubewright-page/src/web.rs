//! The addresses of the page and what each answers.

mod errands;
mod scans;
mod templates;

use crate::Printer;
use crate::api::{Deed, DragAsked, News, Refusal, SampleView};
use crate::deeds::refusal;
use crate::guard::{CONTENT_POLICY, Guard};
use crate::playground::Playground;
use crate::samples::Sample;
use crate::undo::Way;
use crate::workshop::Workshop;
use axum::Router;
use axum::body::Body;
use axum::extract::{DefaultBodyLimit, Json, Query, Request, State};
use axum::http::{HeaderValue, StatusCode, header};
use axum::middleware::{self, Next};
use axum::response::sse::{Event, KeepAlive, Sse};
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use core::convert::Infallible;
use core::time::Duration;
use serde::{Deserialize, Serialize};
use std::sync::Arc;
use tokio_stream::StreamExt;
use tokio_stream::wrappers::BroadcastStream;
use tubewright_build::folder::LARGEST_SCAN;
use tubewright_sheets::{
    MeshFineness, Paper, TitleBlock, ViewName, one_view, three_views, to_glb, to_svg,
};

/// Largest request, bytes: a reading is a few hundred.
const LARGEST_REQUEST: usize = 256 * 1024;

/// Largest scan, bytes.
#[expect(
    clippy::cast_possible_truncation,
    reason = "50 MB fit any machine's addresses"
)]
const LARGEST_UPLOAD: usize = LARGEST_SCAN as usize;

/// How far beyond its limit a request that is too large is read all the same, bytes: whoever still sends when the
/// connection closes never sees the answer.
const READ_OUT: usize = 32 * LARGEST_REQUEST;

/// All addresses, behind the guard: the build itself, and each demonstration below `/demo/NAME`.
pub(crate) fn router(
    workshop: Workshop,
    samples: &'static [Sample],
    printer: Printer,
    guard: Guard,
) -> Router {
    let guard = Arc::new(guard);
    let mut all = of_build(Playground::of(workshop), printer);
    for sample in samples {
        let path = format!("/demo/{}", sample.name);
        let to = HeaderValue::from_str(&format!("{path}/"));
        all = all.nest(
            &format!("{path}/"),
            of_build(Playground::around(sample, samples), printer),
        );
        if let Ok(to) = to {
            // Without its last stroke the page's own addresses would lead elsewhere.
            all = all.route(
                &path,
                get(move || async move { (StatusCode::SEE_OTHER, [(header::LOCATION, to)]) }),
            );
        }
    }
    all.route(
        "/api/samples",
        get(move || async move { Json(listed(samples)) }),
    )
    .layer(DefaultBodyLimit::max(LARGEST_REQUEST))
    .layer(middleware::from_fn(bounded))
    .layer(middleware::from_fn_with_state(guard, guarded))
}

fn listed(samples: &[Sample]) -> Vec<SampleView> {
    samples
        .iter()
        .map(|sample| SampleView {
            name: sample.name.to_owned(),
            title: sample.title.to_owned(),
        })
        .collect()
}

fn of_build(playground: Playground, printer: Printer) -> Router {
    Router::new()
        .route("/", get(page))
        .route("/page.js", get(script))
        .route("/page.css", get(style))
        .route("/api/view", get(view))
        .route("/api/plan", get(plan))
        .route("/api/ways", get(ways))
        .route("/api/counter", get(counter))
        .route("/api/fit", get(fit))
        .route("/api/solids", get(solids))
        .route("/api/joint", get(joint))
        .route("/api/news", get(news))
        .route("/api/deed", post(deed))
        .route("/api/undo", post(undo))
        .route("/api/redo", post(redo))
        .route("/api/solve", post(solve).delete(stop))
        .route("/api/show", post(show))
        .route("/api/start-again", post(start_again))
        .route("/api/drawing", get(drawing))
        .route("/api/laid", get(laid))
        .route("/api/drag", post(drag))
        .route("/api/parts", get(parts))
        .route("/api/card", get(card))
        .route(
            scans::ADDRESS,
            post(scans::put).layer(DefaultBodyLimit::max(LARGEST_UPLOAD)),
        )
        .route("/api/errands", post(errands::errands))
        .route("/api/buy-or-make", post(errands::buy_or_make))
        .route("/api/templates", get(templates::list))
        .route("/api/template", get(templates::one))
        .route("/api/model.glb", get(model))
        .route(
            "/api/packet.pdf",
            get(move |State(play): State<Playground>| packet(play, printer)),
        )
        .with_state(playground)
}

async fn guarded(State(guard): State<Arc<Guard>>, request: Request, next: Next) -> Response {
    let query = request.uri().query().map(str::to_owned);
    if let Err(refused) = guard.judge(request.method(), request.headers(), query.as_deref()) {
        return (StatusCode::FORBIDDEN, refused.to_string()).into_response();
    }
    let mut response = next.run(request).await;
    let headers = response.headers_mut();
    for (name, value) in [
        (header::CONTENT_SECURITY_POLICY, CONTENT_POLICY),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "no-referrer"),
        (header::CACHE_CONTROL, "no-store"),
    ] {
        headers.insert(name, HeaderValue::from_static(value));
    }
    if let Some(cookie) = guard.cookie(query.as_deref()) {
        headers.insert(header::SET_COOKIE, cookie);
    }
    response
}

/// Takes the whole request in before it is looked at, or says that it is too large.
async fn bounded(request: Request, next: Next) -> Response {
    let is_scan = request.uri().path().ends_with(scans::ADDRESS);
    let most = if is_scan {
        LARGEST_UPLOAD
    } else {
        LARGEST_REQUEST
    };
    let (head, body) = request.into_parts();
    let mut stream = body.into_data_stream();
    let mut taken = Vec::new();
    let mut length = 0;
    while let Some(part) = stream.next().await {
        let Ok(part) = part else {
            return (StatusCode::BAD_REQUEST, "the request broke off").into_response();
        };
        length += part.len();
        if length <= most {
            taken.extend_from_slice(&part);
        } else {
            taken = Vec::new();
            if length > most + READ_OUT {
                break;
            }
        }
    }
    if length > most {
        let words = if is_scan {
            format!(
                "the scan is larger than {} MB: nothing was changed; thin the mesh out in the scanning \
                 program, or cut off what no tube comes near",
                most >> 20
            )
        } else {
            format!(
                "this is more than {} kB at once, more than any reading or note needs: nothing was \
                 changed; write less at a time, and put a scan in by its own form on Measure",
                most / 1024
            )
        };
        return (StatusCode::PAYLOAD_TOO_LARGE, words).into_response();
    }
    next.run(Request::from_parts(head, Body::from(taken))).await
}

async fn page() -> Response {
    typed(
        "text/html; charset=utf-8",
        include_str!("../page/index.html"),
    )
}

async fn script() -> Response {
    typed(
        "text/javascript; charset=utf-8",
        include_str!("../page/page.js"),
    )
}

async fn style() -> Response {
    typed("text/css; charset=utf-8", include_str!("../page/page.css"))
}

fn typed(kind: &'static str, body: impl Into<Body>) -> Response {
    ([(header::CONTENT_TYPE, kind)], body.into()).into_response()
}

async fn view(State(play): State<Playground>) -> Response {
    told(play, Workshop::view).await
}

async fn plan(State(play): State<Playground>) -> Response {
    told(play, Workshop::plan).await
}

async fn ways(State(play): State<Playground>) -> Response {
    told(play, Workshop::ways).await
}

async fn counter(State(play): State<Playground>) -> Response {
    told(play, Workshop::counter).await
}

async fn solids(State(play): State<Playground>) -> Response {
    told(play, Workshop::solids).await
}

async fn laid(State(play): State<Playground>) -> Response {
    told(play, |build| build.laid(VIEW_WIDTH_MM)).await
}

async fn parts(State(play): State<Playground>) -> Response {
    told(play, Workshop::parts).await
}

async fn drag(State(play): State<Playground>, Json(asked): Json<DragAsked>) -> Response {
    answered(play, move |build| build.drag(&asked)).await
}

async fn fit(State(play): State<Playground>) -> Response {
    told(play, Workshop::fit).await
}

/// Something to show, worked out beside the loop.
async fn told<T: Serialize + Send + 'static>(
    play: Playground,
    tell: impl FnOnce(&Workshop) -> T + Send + 'static,
) -> Response {
    answered(play, move |build| Ok(tell(build))).await
}

/// The same for what may be refused.
async fn answered<T: Serialize + Send + 'static>(
    play: Playground,
    answer: impl FnOnce(&Workshop) -> Result<T, Refusal> + Send + 'static,
) -> Response {
    match off_the_loop(move || answer(&play.build()?)).await {
        Ok(Ok(value)) => Json(value).into_response(),
        Ok(Err(refusal)) => (StatusCode::CONFLICT, Json(refusal)).into_response(),
        Err(died) => died.into_response(),
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct JointWanted {
    mark: String,
}

async fn joint(State(play): State<Playground>, Query(wanted): Query<JointWanted>) -> Response {
    answered(play, move |build| build.joint(&wanted.mark)).await
}

async fn news(State(play): State<Playground>) -> Response {
    let build = match off_the_loop(move || play.build()).await {
        Ok(Ok(build)) => build,
        Ok(Err(refusal)) => return (StatusCode::CONFLICT, Json(refusal)).into_response(),
        Err(died) => return died.into_response(),
    };
    let stream = BroadcastStream::new(build.listen()).filter_map(|news| {
        // A page that fell behind fetches everything anew.
        let news = news.unwrap_or(News::Changed);
        let text = serde_json::to_string(&news).ok()?;
        Some(Ok::<_, Infallible>(Event::default().data(text)))
    });
    Sse::new(stream)
        .keep_alive(KeepAlive::new().interval(Duration::from_secs(15)))
        .into_response()
}

async fn deed(State(play): State<Playground>, Json(deed): Json<Deed>) -> Response {
    done(off_the_loop(move || play.build()?.deed(&deed)).await)
}

async fn undo(State(play): State<Playground>) -> Response {
    done(off_the_loop(move || play.build()?.undo(Way::Back)).await)
}

async fn redo(State(play): State<Playground>) -> Response {
    done(off_the_loop(move || play.build()?.undo(Way::Again)).await)
}

async fn solve(State(play): State<Playground>) -> Response {
    done(off_the_loop(move || play.build()?.solve()).await)
}

async fn stop(State(play): State<Playground>) -> Response {
    done(off_the_loop(move || play.build().map(|build| build.stop())).await)
}

async fn start_again(State(play): State<Playground>) -> Response {
    done(off_the_loop(move || play.start_again()).await)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct ShownWay {
    way: usize,
}

async fn show(State(play): State<Playground>, Json(shown): Json<ShownWay>) -> Response {
    done(off_the_loop(move || play.build().map(|build| build.show(shown.way))).await)
}

#[derive(Deserialize)]
struct Wanted {
    view: Option<String>,
    way: Option<usize>,
    card: Option<usize>,
    /// Unit that the person picked; without it the build's.
    unit: Option<String>,
}

/// Width of one view on the page, mm of paper.
const VIEW_WIDTH_MM: f64 = 280.0;

async fn drawing(State(play): State<Playground>, Query(wanted): Query<Wanted>) -> Response {
    picture(play, move |build| {
        let nothing = || "there are no places yet, so there is nothing to draw".to_owned();
        if let Some(way) = wanted.way {
            return build.way_picture(way).ok_or_else(nothing);
        }
        let scene = build.scene().ok_or_else(nothing)?;
        let drawing = match wanted.view.as_deref() {
            Some("side") => one_view(&scene, ViewName::Side, VIEW_WIDTH_MM),
            Some("above") => one_view(&scene, ViewName::Above, VIEW_WIDTH_MM),
            Some("behind") => one_view(&scene, ViewName::Behind, VIEW_WIDTH_MM),
            _ => {
                let block = TitleBlock {
                    build: scene.title.clone(),
                    sheet_name: "Runs, three views".to_owned(),
                    ..TitleBlock::default()
                };
                three_views(&scene, &block, Paper::A3)
            }
        };
        drawing
            .map(|drawing| to_svg(&drawing))
            .map_err(|error| error.to_string())
    })
    .await
}

async fn card(State(play): State<Playground>, Query(wanted): Query<Wanted>) -> Response {
    picture(play, move |build| {
        wanted
            .card
            .and_then(|card| build.card_picture(card, wanted.unit.as_deref()))
            .ok_or_else(|| "there is no such card any more".to_owned())
    })
    .await
}

async fn picture(
    play: Playground,
    draw: impl FnOnce(&Workshop) -> Result<String, String> + Send + 'static,
) -> Response {
    let drawn = off_the_loop(move || {
        let build = play.build().map_err(|refusal| refusal.words)?;
        draw(&build)
    });
    match drawn.await {
        Ok(Ok(svg)) => typed("image/svg+xml", svg),
        // Nothing to show yet is no error: the page says so in words.
        Ok(Err(_)) => StatusCode::NO_CONTENT.into_response(),
        Err(died) => died.into_response(),
    }
}

async fn model(State(play): State<Playground>) -> Response {
    let made = off_the_loop(move || {
        let build = play.build().map_err(|refusal| refusal.words)?;
        let scene = build
            .scene()
            .ok_or_else(|| "there are no places yet, so there is nothing to show".to_owned())?;
        to_glb(&scene, MeshFineness::default()).map_err(|error| error.to_string())
    })
    .await;
    match made {
        Ok(Ok(bytes)) => typed("model/gltf-binary", bytes),
        // Nothing to show yet is no error: the page says so in words.
        Ok(Err(_)) => StatusCode::NO_CONTENT.into_response(),
        Err(died) => died.into_response(),
    }
}

async fn packet(play: Playground, printer: Printer) -> Response {
    let made = off_the_loop(move || printer(play.build()?.path()).map_err(|why| refusal(&why)));
    match made.await {
        Ok(Ok(bytes)) => typed("application/pdf", bytes),
        Ok(Err(refusal)) => (StatusCode::CONFLICT, Json(refusal)).into_response(),
        Err(died) => died.into_response(),
    }
}

fn done(outcome: Result<Result<(), Refusal>, Died>) -> Response {
    match outcome {
        Ok(Ok(())) => StatusCode::NO_CONTENT.into_response(),
        Ok(Err(refusal)) => (StatusCode::CONFLICT, Json(refusal)).into_response(),
        Err(died) => died.into_response(),
    }
}

/// The work of a request died.
struct Died;

impl IntoResponse for Died {
    fn into_response(self) -> Response {
        (
            StatusCode::INTERNAL_SERVER_ERROR,
            "this could not be computed; the files are as they were",
        )
            .into_response()
    }
}

/// Runs computation where it holds no other request up.
async fn off_the_loop<T: Send + 'static>(
    work: impl FnOnce() -> T + Send + 'static,
) -> Result<T, Died> {
    tokio::task::spawn_blocking(work).await.map_err(|_| Died)
}
