//! Cut ends unrolled flat: exact curves to wrap round a tube.
//!
//! Every curve gives, for each angle `q` round the tube, how far along the tube the cut lies. Angles
//! are from the line that the curve's own type names (short side of a mitre, obtuse side of a saddle,
//! outside of a bend). Laid on paper, `q` becomes `(D + paper) / 2 · q` across the strip: the paper
//! lies outside the tube, its middle half its thickness further out.
//!
//! A wall cut square to the tube touches with its inner or its outer edge: use the outer radius for
//! marking, the bore's for flow openings and where the bore edge must not foul.

mod curve;
mod mitre;
mod saddle;
mod segmented;
mod split;
mod torus;

pub use curve::{Station, WrapCurve, least_mm, polyline, stations};
pub use mitre::{Mitre, PlaneCut};
pub use saddle::{HolePlace, Saddle, SaddleError};
pub use segmented::{SegmentEnd, SegmentedBend, SegmentedError, radius_from_spacing_mm};
pub use split::{SplitBend, SplitError, split_distance_for_area};
pub use torus::{BendCut, Branch, TorusCut, TorusPlane};
