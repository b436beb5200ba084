//! Tape readings to points and end poses with their uncertainty.
//!
//! A [`Network`] holds marks, ends (flanges, sawn tubes, tacked joints), set-ups and readings, and
//! not one coordinate. [`adjust`] finds the shape that agrees best with all readings, as a free
//! network: no mark is held, no axis is chosen. Everything relative (distances, their ±, residuals,
//! doubtful readings) is had from the [`Adjustment`] at once. Only then is the frame chosen, by
//! [`Adjustment::seen_from`], which gives the [`Survey`]: coordinates, poses and joint covariance in
//! the car's axes (x rearwards, y to the right, z up). Another choice of frame changes no distance
//! and no ± of one.
//!
//! Method: weighted least squares with a-priori weights (σ₀ = 1), free-network adjustment with inner
//! constraints, S-transformation to the chosen datum (Ghilani, *Adjustment Computations*; Baarda
//! 1968, *A testing procedure for use in geodetic networks*; Baarda 1973, *S-transformations and
//! criterion matrices*).
//!
//! What the crate does not do: it reads no file, knows no body but points and ends (girths belong to
//! the bodies), and treats readings as independent of each other.

pub mod adjustment;
pub mod doubtful;
pub mod fit;
pub mod frame_choice;
mod linear;
mod model;
pub mod network;
pub mod next_reading;
pub mod solve;
mod start;
pub mod statistics;
pub mod survey;
pub mod tape;

pub use adjustment::{
    AdjustError, Adjustment, Freedom, GlobalTest, Handedness, Loose, Measure, ReadingResult, Twin,
    TwinPlace, Undetermined, adjust, adjust_near,
};
pub use doubtful::{Doubtful, Explanation, SlipKind, Snooping, TapeEnd, find_doubtful};
pub use frame_choice::{CentreLineChoice, FrameChoice, FrameError, LevelChoice};
pub use network::{
    Along, Contact, End, EndId, Level, Line, Network, NetworkError, Pair, PlaceHint, PointId,
    PointSpec, Reading, ReadingKind, SetupId, SetupSpec, Side, Stance, StartValues, TapeScale,
    Target, Touch,
};
pub use next_reading::{Goal, Means, Missing, Proposal};
pub use survey::{Change, Ellipse, Ellipsoid, EndPose, Part, Survey, SurveyedFloor, SurveyedPoint};
