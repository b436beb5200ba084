//! Fitting: what stands, what the tape says of it, and how to go on from there.

mod anew;
mod built;
mod by_tape;
mod closing;
mod fastening;
mod joint_check;
mod joints;
mod loose;
mod new_mark;
mod offer;
mod offers;
mod parts;
mod pose;
mod sheet;
mod steel;
mod way;
mod welds;

pub use built::{AsBuilt, as_built, runs_as_built};
pub use by_tape::{MapTape, joints_by_tape};
pub use fastening::Fastening;
pub(crate) use fastening::is_bought_flange;
pub use joint_check::JointCheck;
pub use joints::{Joint, hour_words, joint_of, joints_of};
pub use loose::LooseWay;
pub use new_mark::NewMark;
pub use offer::{Change, Offer, OfferKind};
pub use offers::{OfferSettings, offers, why_no_offer};
pub(crate) use parts::split_run;
pub use parts::{PartPieces, fit_run, joined, split_at_welds};
pub use pose::{FoundBy, JointFound, PoseError, SlopeSeen, TapeSeen, joint_as_built, workmanship};
pub use sheet::{FitSheet, FitStep, LEAST_CHECKS, fit_sheet};
pub use steel::{Steel, cut_entry};
pub use tubewright_fit::order::{Act, PartKind, Way};
pub use way::ClosingFace;
pub use welds::{WeldFacts, weld_facts};
