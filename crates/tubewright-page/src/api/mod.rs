//! What goes over the wire. TypeScript's copy of these types is written from here.
//!
//! Lengths are millimetres, angles degrees; the page shows them in the unit that the person picked.

mod buy;
mod cut;
mod deed;
mod errands;
mod fit;
mod hand;
mod measure;
mod prove;
mod route;
mod solids;
mod templates;
mod view;

pub use buy::{BuyLine, BuyView, Counter, DeliveryLine, Plan, SubstituteView, WantedView};
pub use cut::{CardView, ClockView, ClosingView, CutView, LeftAs, MadeView, RemakeView, RollView};
pub use deed::{Deed, Field, Happening, JointSlope, JointTape, Refusal, Spot, Value};
pub use errands::{ErrandsAsked, ErrandsView, MakeAsked, MakeView, RoadAsked, StopAsked, StopView};
pub use fit::{
    CheckDistanceView, FitStepView, FitView, HangerView, HungView, JointCheckView, JointView,
    OfferView, TapeSeenView, TrimView, WeldView,
};
pub use hand::{
    DragAsked, DragView, GripView, LaidViewView, PartChoice, PartView, PinView, SidesView,
    StretchView,
};
pub use measure::{
    BodyView, LineView, MeasureView, NextReading, PadKind, PlaceKind, PlaceView, ReadingView,
    ScanView, SetupView, SpotView, TakeKind, TakeView,
};
pub use prove::{FindingView, ProveView, RecordEntry, StateView};
pub use route::{GapView, PieceView, RouteView, RunView, Solving, WayFigures, WayView};
pub use solids::{FreedomView, ShapeView, SolidView};
pub use templates::{TemplateView, TemplatesView};
pub use view::{FileProblem, JobLacks, News, SampleView, View};
