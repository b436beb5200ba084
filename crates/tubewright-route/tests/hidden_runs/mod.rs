//! Random problems of the route form, each built round a hidden run, so that it has an answer of
//! known cost; and problems that have none, built so that the reason is known.
//!
//! Everything here rests on the judge alone (its frames, balls and distances), on nothing of the
//! solver or of the project's geometry. Sizes and prices are drawn about those of the public
//! problems (common practice, no source).
#![allow(
    dead_code,
    unreachable_pub,
    reason = "shared by tests, benches and examples, each of which uses a part"
)]
#![allow(
    clippy::unwrap_used,
    clippy::missing_panics_doc,
    reason = "helpers of tests"
)]

mod around;
mod bodies;
mod chain;
mod draw;
mod hopeless;
mod sheet;

pub use sheet::Made;

use around::Wish;
use draw::Draw;

/// What a generated problem is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// No body at all.
    Open,
    /// Boxes, bars, cylinders round one run.
    Cluttered,
    /// Round components in order, some in zones.
    Inline,
    /// Oval components.
    Oval,
    /// Meshes and swept spaces.
    Mesh,
    /// Little more than the required gap on all sides, windows in walls.
    Tight,
    /// Two runs side by side.
    Dual,
    /// Two runs through a crossover.
    Crossed,
    /// No answer: every window is too small.
    Blocked,
    /// No answer: a component has no place.
    Component,
    /// No answer: the ground clearance.
    Ground,
    /// No answer: too little room to the end.
    Room,
    /// No answer: the centre-line radius.
    Radius,
}

impl Kind {
    /// Kinds that have an answer.
    pub const SOLVABLE: [Self; 8] = [
        Self::Open,
        Self::Cluttered,
        Self::Inline,
        Self::Oval,
        Self::Mesh,
        Self::Tight,
        Self::Dual,
        Self::Crossed,
    ];
    /// Kinds that have none.
    pub const HOPELESS: [Self; 5] = [
        Self::Blocked,
        Self::Component,
        Self::Ground,
        Self::Room,
        Self::Radius,
    ];

    /// Word for tables and file names.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Open => "open",
            Self::Cluttered => "cluttered",
            Self::Inline => "inline",
            Self::Oval => "oval",
            Self::Mesh => "mesh",
            Self::Tight => "tight",
            Self::Dual => "dual",
            Self::Crossed => "crossed",
            Self::Blocked => "blocked",
            Self::Component => "component",
            Self::Ground => "ground",
            Self::Room => "room",
            Self::Radius => "radius",
        }
    }
}

/// One problem of a kind; equal seeds give equal problems.
pub fn make(kind: Kind, seed: u64) -> Made {
    for attempt in 0.. {
        let mut draw = Draw::new(seed, (kind as u64) << 32 | attempt);
        let made = match kind {
            Kind::Open => around::one(&mut draw, &Wish::open()),
            Kind::Cluttered => around::one(&mut draw, &Wish::cluttered()),
            Kind::Inline => around::one(&mut draw, &Wish::inline(false)),
            Kind::Oval => around::one(&mut draw, &Wish::inline(true)),
            Kind::Mesh => around::one(&mut draw, &Wish::mesh()),
            Kind::Tight => around::one(&mut draw, &Wish::tight()),
            Kind::Dual => around::two(&mut draw),
            Kind::Crossed => around::crossed(&mut draw),
            Kind::Blocked => hopeless::blocked(&mut draw),
            Kind::Component => hopeless::component(&mut draw),
            Kind::Ground => hopeless::ground(&mut draw),
            Kind::Room => hopeless::room(&mut draw),
            Kind::Radius => hopeless::radius(&mut draw),
        };
        if let Some(made) = made {
            return made.named(&format!("{}-{seed}", kind.word()));
        }
    }
    unreachable!("the attempts never end")
}

/// A run of exactly so many bends among so many bodies: for measuring growth.
pub fn sized(bends: usize, bodies: usize, seed: u64) -> Made {
    for attempt in 0.. {
        let mut draw = Draw::new(seed, 0x51_2ED << 32 | attempt);
        if let Some(made) = around::one(&mut draw, &Wish::sized(bends, bodies)) {
            return made.named(&format!("sized-{bends}-{bodies}-{seed}"));
        }
    }
    unreachable!("the attempts never end")
}
