//! What a rounded run asks for: its pieces in order, each with its mark.

use tubewright_geometry::{Angle, Length};

use crate::item::TubeSpec;

/// Shape of a piece.
#[derive(Clone, Debug, PartialEq)]
pub enum PieceShape {
    /// A straight tube. Beside a bend it may be the leg of that bend.
    Straight {
        /// Length between the cuts.
        length: Length,
    },
    /// A bend without legs.
    Bend {
        /// Turn of the direction.
        angle: Angle,
        /// Centre-line radius.
        clr: Length,
        /// Roll about the travel from the plane of the bend before it, clockwise looking
        /// downstream; for the first bend of a run from the run's twelve o'clock.
        clock: Angle,
    },
    /// A component, bought as it is.
    Component {
        /// The item.
        item: String,
    },
}

/// One piece of a run.
#[derive(Clone, Debug, PartialEq)]
pub struct PieceDemand {
    /// What is painted on it; unique among all runs.
    pub mark: String,
    /// The tube; of a component, that of its necks.
    pub tube: TubeSpec,
    /// Its shape.
    pub shape: PieceShape,
    /// What the welds at its upstream and downstream end take of a straight: it is cut longer by that.
    /// Where the leg of a bend serves it there is no weld on that side, and nothing is added for it;
    /// between two legs that share it there is one weld, which takes half of each.
    pub pulls: [Length; 2],
}

/// A run in order from upstream to downstream; neighbours are welded.
#[derive(Clone, Debug, PartialEq)]
pub struct RunDemand {
    /// Its name.
    pub name: String,
    /// Its pieces.
    pub pieces: Vec<PieceDemand>,
    /// Welds at its ends to what another run asks for, such as a crossover that both pass.
    pub welds_at_ends: u32,
}
