use crate::model::{Name, Place};
use crate::quantity::Quantity;
use crate::span::Span;
use tubewright_geometry::Length;

/// One run from an end (or a port) to another.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// Its name.
    pub name: Name,
    /// Where the gas comes from.
    pub from: RunEnd,
    /// Where it goes.
    pub to: RunEnd,
    /// The tube it is made of.
    pub tube: Name,
    /// What it passes through, in the order of flow.
    pub through: Vec<Through>,
    /// Most bends, when the person sets it.
    pub max_bends: Option<u32>,
    /// Opposite corners, along the car's axes, of rooms that it must pass through.
    pub passes: Vec<[Place; 2]>,
    /// The same of rooms that must each hold one of its joints.
    pub joints_in: Vec<[Place; 2]>,
    /// Small rooms where the person pinned it by hand.
    pub pins: Vec<RunPin>,
    /// Words of the person.
    pub note: Option<String>,
    /// Where it was written.
    pub span: Span,
}

/// A place where the person pinned a run: a small room along the car's axes.
#[derive(Clone, Debug, PartialEq)]
pub struct RunPin {
    /// What of the run must lie there.
    pub what: PinnedPart,
    /// The place that it is set out from.
    pub near: Place,
    /// How far rearwards, to the right and up from there its middle lies.
    pub at: [Quantity<Length>; 3],
    /// How far from its middle it reaches, along each axis and either way.
    pub within: Quantity<Length>,
    /// Where it was written.
    pub span: Span,
}

/// What of a run is pinned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PinnedPart {
    /// One of its joints.
    Joint,
    /// Some place of its centre line.
    Line,
}

/// Where a run starts or stops.
#[derive(Clone, Debug, PartialEq)]
pub enum RunEnd {
    /// At an end.
    End(Name),
    /// At a port of a component.
    Port {
        /// The component.
        component: Name,
        /// The port, or the side of a crossover; `None` for the only one that fits.
        port: Option<String>,
    },
}

/// A component that a run passes through.
#[derive(Clone, Debug, PartialEq)]
pub struct Through {
    /// The component.
    pub component: Name,
    /// The side by which it is entered and left, for a crossover.
    pub side: Option<String>,
    /// Where it was written.
    pub span: Span,
}
