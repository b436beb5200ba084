//! What holds a run to the car where it is not welded: told in one place for paper, page and terminal.

use tubewright_build::model::{ComponentKind, End, EndKind, HeldBy, Model, RunEnd};

use crate::routes::{PlannedKind, PlannedRun, component_kind, end_of_run};

/// How the joint at an end of a run is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fastening {
    /// As the build says.
    By(HeldBy),
    /// A flange of which nobody has said what holds it.
    NotGiven,
}

impl Fastening {
    /// Of an end of the car; `None` where what meets it is welded to it, or nothing meets it. Measured bolt holes
    /// say that it is bolted.
    #[must_use]
    pub fn of(end: &End) -> Option<Self> {
        match (end.kind, end.held_by) {
            (EndKind::Flange | EndKind::SawnTube, Some(held_by)) => Some(Self::By(held_by)),
            (EndKind::Flange, None) if !end.bolts.is_empty() => Some(Self::By(HeldBy::Bolts)),
            (EndKind::Flange, None) => Some(Self::NotGiven),
            _ => None,
        }
    }

    /// Of the first joint of a planned run. What is sawn off is welded to.
    #[must_use]
    pub fn at_start(model: &Model, run: &PlannedRun) -> Option<Self> {
        if run.sawn.is_some() {
            return None;
        }
        let written = model.build.run(&run.name)?;
        match &written.from {
            RunEnd::End(_) => end_of_run(&model.build, &written.from).and_then(Self::of),
            RunEnd::Port { .. } => None,
        }
    }

    /// What the end is called.
    #[must_use]
    pub const fn end_words(self) -> &'static str {
        match self {
            Self::By(HeldBy::Bolts) => "bolted flange",
            Self::By(HeldBy::SprungBolts) => "flange with sprung bolts",
            Self::By(HeldBy::BandClamp) => "band-clamped flange",
            Self::By(HeldBy::Slip) => "slip joint",
            Self::NotGiven => "flange, not given what holds it",
        }
    }

    /// What is done with the part that meets it.
    #[must_use]
    pub const fn act(self) -> &'static str {
        match self {
            Self::By(HeldBy::Bolts | HeldBy::SprungBolts) => "bolt",
            Self::By(HeldBy::BandClamp) => "clamp",
            Self::By(HeldBy::Slip) => "slip",
            Self::NotGiven => "fasten",
        }
    }

    /// Whether something is welded on the part that meets it: all but a tube that is slipped over another.
    #[must_use]
    pub const fn needs_weld(self) -> bool {
        !matches!(self, Self::By(HeldBy::Slip))
    }

    /// How it is done, with what must be minded.
    #[must_use]
    pub const fn how(self) -> &'static str {
        match self {
            Self::By(HeldBy::Bolts) => {
                "Bolted with the old gasket while you tack and weld, for a new one burns there; with a new gasket at the \
                 end, to the torque of whoever made it. The joint is the face of the flange on \
                 the car: the mating flange goes over the first piece, whose end lies up to two walls behind that face \
                 and is welded inside, so that its thickness takes nothing off (common practice, no source). It stays \
                 bolted to the engine or to a thick plate while anything is welded to it."
            }
            Self::By(HeldBy::SprungBolts) => {
                "Sprung bolts over a ball and a new ring, drawn up until the springs are as long as whoever made them \
                 says. The joint is the face of the flange on the car: measure how far the ring and the mating flange \
                 stand off it where the first piece is welded in, and take that off the piece's upstream end before it \
                 is cut. The ball swings: block it square before you tack anything."
            }
            Self::By(HeldBy::BandClamp) => {
                "Held by a band clamp: a new one, with a new gasket where there is one, its bolt turned to where a \
                 socket reaches it, drawn up to the torque of whoever made it, tapped round and drawn up again. The \
                 joint is the face of the collar on the car: measure how far the mating collar holds the first piece \
                 off that face, and take that off the piece's upstream end before it is cut; a collar that the tube \
                 goes through takes nothing off. The collar is welded to its part while it is clamped to the engine or \
                 to another collar."
            }
            Self::By(HeldBy::Slip) => {
                "Slipped over or into the tube on the car, about one and a half diameters deep (common practice, no \
                 source), and clamped; nothing is welded here. The cut length ends at the edge of the tube on the car: \
                 what goes over or into it is NOT in it. Add that at the upstream end of the first piece before it is \
                 cut, and try the sizes on each other before you buy."
            }
            Self::NotGiven => {
                "NOT GIVEN WHAT HOLDS THIS JOINT: look at what is there before the mating part is bought. Flat and \
                 with bolts: a new gasket, and the first piece ends up to two walls behind the face, inside its \
                 flange. With springs under the bolts, or a band round two collars: measure how far what mates with \
                 it holds the first piece off the face, and take that off the piece's upstream end before it is cut \
                 (common practice, no source). It stays fastened to the engine or to a like part while anything is \
                 welded to it."
            }
        }
    }

    /// What is done there, on the weld sheet.
    #[must_use]
    pub const fn weld_words(self) -> &'static str {
        match self {
            Self::By(HeldBy::Bolts) => {
                "bolt with the old gasket; weld the flange to its part while it is bolted to the car or to a plate; \
                 the new gasket goes in last"
            }
            Self::By(HeldBy::SprungBolts) => {
                "sprung bolts, old ring; weld the flange to its part while it is bolted to the car or to a plate; the \
                 new ring goes in last"
            }
            Self::By(HeldBy::BandClamp) => {
                "band clamp; weld the collar to its part while it is clamped to the car or to another collar"
            }
            Self::By(HeldBy::Slip) => "slip over or into the tube on the car and clamp; no weld",
            Self::NotGiven => {
                "not given what holds it: look at what is there; weld the flange or collar to its part while it is \
                 fastened to the car"
            }
        }
    }

    /// What has to be bought for it.
    #[must_use]
    pub(crate) const fn wanted(self) -> &'static str {
        match self {
            Self::By(HeldBy::Bolts) => "mating flange with a new gasket and bolts",
            Self::By(HeldBy::SprungBolts) => {
                "mating flange for a ball joint, with a new ring, sprung bolts and nuts"
            }
            Self::By(HeldBy::BandClamp) => "band clamp with its mating collar",
            Self::By(HeldBy::Slip) => "clamp for the slip joint",
            Self::NotGiven => {
                "mating flange or collar with what holds it: not given, look at what is there"
            }
        }
    }
}

/// Whether the run's own first or last part is a bought flange, which is welded to nothing at its face.
pub(crate) fn is_bought_flange(model: &Model, kind: &PlannedKind) -> bool {
    matches!(kind, PlannedKind::Component { name, .. }
        if component_kind(model, name) == Some(ComponentKind::Flange))
}
