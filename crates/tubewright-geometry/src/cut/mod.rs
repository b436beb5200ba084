//! Cutting a stock bend: what the saw takes, what fits in one bend, where to mark, and what bending
//! did to the wall.

mod kerf;
mod mark;
mod partition;
mod section;
mod witness;

pub use kerf::{KerfLoss, kerf_loss};
pub use mark::{CutPlace, MarkError, Marks, StockBend};
pub use partition::{BendPartition, PartitionError, Rest, partition_bend};
pub use section::{
    OvalityFinding, Thinning, ovality_percent, ovality_within, prebend_wall_factor, thinning,
};
pub use witness::{clock_from_round_outside, clockwise_round_outside_mm, nearest_round_outside_mm};
