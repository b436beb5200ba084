//! The page's types are written from this crate's, never by hand.

use std::fmt::Write as _;
use std::path::Path;
use ts_rs::{Config, TS};
use tubewright_page::api;

macro_rules! declared {
    ($($type:ty),+ $(,)?) => {{
        let config = Config::default();
        let mut text = String::from(
            "// Written from crates/tubewright-page/src/api.rs by its test `types`; not by hand.\n",
        );
        $(
            let _written = writeln!(text, "\nexport {}", <$type>::decl(&config));
        )+
        text
    }};
}

/// Set `WRITE_TYPES=1` to write the file after a change of the types.
#[test]
fn the_page_has_the_same_types() {
    let text = declared![
        api::View,
        api::SampleView,
        api::Plan,
        api::Counter,
        api::SubstituteView,
        api::WantedView,
        api::WayFigures,
        api::GapView,
        api::FitView,
        api::HangerView,
        api::HungView,
        api::TrimView,
        api::FitStepView,
        api::JointCheckView,
        api::CheckDistanceView,
        api::WeldView,
        api::JointView,
        api::TapeSeenView,
        api::OfferView,
        api::LineView,
        api::TakeView,
        api::TakeKind,
        api::SpotView,
        api::SolidView,
        api::ShapeView,
        api::FreedomView,
        api::JointSlope,
        api::JointTape,
        api::Field,
        api::Value,
        api::FileProblem,
        api::JobLacks,
        api::MeasureView,
        api::SetupView,
        api::ReadingView,
        api::PadKind,
        api::ScanView,
        api::PlaceView,
        api::PlaceKind,
        api::NextReading,
        api::BodyView,
        api::RouteView,
        api::Solving,
        api::WayView,
        api::RunView,
        api::GripView,
        api::DragAsked,
        api::DragView,
        api::StretchView,
        api::LaidViewView,
        api::PinView,
        api::SidesView,
        api::PartView,
        api::PartChoice,
        api::PieceView,
        api::BuyView,
        api::BuyLine,
        api::DeliveryLine,
        api::CardView,
        api::ClosingView,
        api::CutView,
        api::ClockView,
        api::RollView,
        api::MadeView,
        api::RemakeView,
        api::LeftAs,
        api::ErrandsAsked,
        api::StopAsked,
        api::RoadAsked,
        api::ErrandsView,
        api::StopView,
        api::MakeAsked,
        api::MakeView,
        api::TemplatesView,
        api::TemplateView,
        api::ProveView,
        api::StateView,
        api::FindingView,
        api::RecordEntry,
        api::Deed,
        api::Spot,
        api::Happening,
        api::Refusal,
        api::News,
    ];
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../web/src/api.ts");
    if std::env::var_os("WRITE_TYPES").is_some() {
        std::fs::write(&path, &text).unwrap();
    }
    let kept = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(
        kept == text,
        "web/src/api.ts is older than the types: WRITE_TYPES=1 cargo test -p tubewright-page --test types"
    );
}
