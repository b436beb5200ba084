//! Runs: put to the solver, rounded to the shop's steps, and walked into pieces.

mod crossings;
mod drag;
mod ends;
mod gas_way;
mod laid;
mod marks;
mod meeting;
mod never;
mod planned;
mod poses;
mod problem;
mod reasons;
mod roll;
mod rooms;
mod stretch;
mod stub;
mod tubes;
mod walk;
mod workspace;
mod would_help;

pub use crossings::{Choice, StandIn};
pub use drag::{DragError, Dragged, Grip, GripPlace, dragged, grips};
pub(crate) use ends::end_of_run;
pub use ends::{
    FLANGE_MM, LEAST_LEAN_DEG, NoTip, Sawn, given_frame, no_tip_columns, outlet_words, sawn_for,
    why_not_sawn, words_of_ends,
};
pub(crate) use gas_way::GasWay;
pub use laid::{LaidRun, RunMarks, laid_runs};
pub use marks::MarkGiver;
pub use meeting::{MetPort, side_met};
pub(crate) use meeting::{
    end_at_ports, in_car, in_turn, port_of_side, shared_joint, start_at_ports,
};
pub use never::{ClosedSide, closed_sides};
pub use planned::{
    CanBalls, PlannedKind, PlannedPiece, PlannedRun, can_balls, component_elements, half_section,
};
pub use problem::{PosedProblem, PosedRun, RunError, pose_problem, start_carrier};
pub use reasons::{no_way_words, would_help_words};
pub use roll::{RollMark, roll_marks};
pub use rooms::{WantedRoom, away_from_pin_mm, middle_of_pin, wanted_rooms, words_of_pin};
pub use stub::STUB_MM;
pub(crate) use stub::is_carried;
pub use tubes::{TubeError, price_of_one, route_tube};
pub(crate) use walk::goes_through;
pub use walk::{WalkError, component_item, component_kind, riding_motions, walk_laid};
pub(crate) use would_help::would_help;
