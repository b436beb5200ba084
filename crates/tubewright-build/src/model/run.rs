use crate::model::{Name, Place};
use crate::span::Span;

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
    /// Words of the person.
    pub note: Option<String>,
    /// Where it was written.
    pub span: Span,
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
