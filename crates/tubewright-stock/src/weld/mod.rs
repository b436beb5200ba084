//! Facts of welding thin tube: current, filler, purge, fit-up limits, shrink and growth.
//!
//! Starting points and limits, never settings: each says where it comes from.

mod filler;
mod fit_up;
mod growth;
mod hazard;
mod metals;
mod purge;
mod shrink;

pub use filler::{TigCurrent, WireNeed, tig_current, wire_need};
pub use fit_up::{
    FitUpLimits, QualityLevel, WallStep, fit_up_limits, misalignment_limit, wall_step,
};
pub use growth::{AlloyGroup, growth, mean_expansion};
pub use hazard::{CAUTIONS, CR6_ACTION_LEVEL_UG_PER_M3, CR6_LIMIT_UG_PER_M3};
pub use metals::{FillerChoice, Metal, filler_choice};
pub use purge::{DISCOLOUR_OXYGEN_PPM, oxygen_left_ppm, purge_time_min, purge_volume_litres};
pub use shrink::{
    PLATE_SHRINK_LENGTHWISE_MM_PER_M, PLATE_SHRINK_MM, shrink_by_area, shrink_by_area_and_gap,
};
