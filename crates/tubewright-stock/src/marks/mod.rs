//! Saw marks: where to cut each stock item, in which order, and how its parts clock together.

mod card;
mod clock;
mod limits;
mod sequence;

pub use card::{Cut, CutCard, FaceBy, KerfSide, Reach, SawFinding, SawTrouble, cut_cards};
pub use clock::{FitMark, fit_marks};
pub use limits::{ItemLimits, RingGap, item_limits, ring_gaps};
