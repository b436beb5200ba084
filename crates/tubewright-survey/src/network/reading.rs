//! The kinds of reading.

use super::{EndId, PointId, SetupId};

/// What the tape is held to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Target {
    /// A point.
    Point(PointId),
    /// The rim of an end at a clock angle, radians from twelve o'clock, clockwise looking
    /// downstream.
    Rim {
        /// Which end.
        end: EndId,
        /// Clock angle in radians.
        clock_rad: f64,
    },
    /// The centre of a bolt hole of an end.
    Hole {
        /// Which end.
        end: EndId,
        /// Number of the hole in [`super::End::holes`], from 0.
        hole: usize,
    },
    /// The centre of an end.
    Centre(EndId),
}

/// How the tape touches a target that is not a mere point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Contact {
    /// To the place itself.
    Place,
    /// To the near side of a tube or rail whose middle is the target: half the width short.
    NearSide {
        /// Width along the tape in mm.
        width_mm: f64,
    },
    /// To the far side: half the width long.
    FarSide {
        /// Width along the tape in mm.
        width_mm: f64,
    },
    /// To the side that looks away from the car's centre plane.
    OuterSide {
        /// Width across the car in mm.
        width_mm: f64,
    },
    /// To the side that looks toward the car's centre plane.
    InnerSide {
        /// Width across the car in mm.
        width_mm: f64,
    },
    /// Hook or blade in the near edge of a hole whose centre is the target.
    HoleNearEdge {
        /// Diameter of the hole in mm.
        diameter_mm: f64,
    },
    /// Hook in the far edge of a hole.
    HoleFarEdge {
        /// Diameter of the hole in mm.
        diameter_mm: f64,
    },
}

/// A target and how it is touched.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Touch {
    /// What is touched.
    pub target: Target,
    /// How.
    pub contact: Contact,
}

/// A direction to measure along.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Line {
    /// From the first target to the second.
    Through(Target, Target),
    /// Up the plumb line of a set-up.
    Plumb(SetupId),
}

/// Axis of held coordinates.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CarAxis {
    /// x: the two have the same x.
    X,
    /// y: the two have opposite y.
    Y,
    /// z: the two have the same z.
    Z,
}

/// What was read, and between what. Values are in mm, for angles in radians.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum ReadingKind {
    /// A tape pulled straight from one target to another.
    Tape {
        /// The tape's zero (or burnt mark) end.
        from: Touch,
        /// Where it is read.
        to: Touch,
        /// Length in mm at which the tape was held instead of its zero: the reading is too long by
        /// this. Zero when nothing was burnt.
        burnt_mm: f64,
    },
    /// Height over the floor of a set-up, square to the floor. The difference to plumb is below
    /// 0.04 mm per metre for a floor within half a degree of level.
    Height {
        /// What.
        target: Touch,
        /// Over which floor.
        setup: SetupId,
    },
    /// Distance on the floor between the two places plumbed down.
    Plumb {
        /// One.
        from: Target,
        /// The other.
        to: Target,
        /// In which set-up.
        setup: SetupId,
    },
    /// How much further along a line `to` lies than `from`, signed.
    Offset {
        /// Counted from here.
        from: Target,
        /// To here.
        to: Target,
        /// Positive this way.
        along: Line,
    },
    /// The two places are mirror images in the car's centre plane, which is unknown and common to
    /// all such readings. Value 0. Three equations.
    Symmetry {
        /// Left one.
        left: Target,
        /// Right one.
        right: Target,
    },
    /// The two places are symmetrical in one coordinate of a frame that is held: only for networks
    /// with held coordinates. Value 0.
    AxisSymmetry {
        /// Which coordinate.
        axis: CarAxis,
        /// One.
        p: Target,
        /// The other.
        q: Target,
    },
    /// Inclination of the line from one place to another: positive when it rises. Radians.
    Inclination {
        /// Lower end for a positive value.
        from: Target,
        /// Upper end for a positive value.
        to: Target,
        /// In which set-up.
        setup: SetupId,
    },
    /// Angle in plan by which the line `from`–`to` is turned from `base_from`–`base_to`, clockwise
    /// seen from above. Radians.
    Bearing {
        /// Start of the line.
        from: Target,
        /// Its end.
        to: Target,
        /// Start of the line it is turned from.
        base_from: Target,
        /// Its end.
        base_to: Target,
        /// In which set-up.
        setup: SetupId,
    },
    /// Inclination of the straight edge laid across the face of an end, from the middle toward a
    /// clock angle: positive when it rises. Radians.
    FaceInclination {
        /// Which end.
        end: EndId,
        /// Toward this clock angle, radians.
        clock_rad: f64,
        /// In which set-up.
        setup: SetupId,
    },
    /// Twelve o'clock was marked at the top: three o'clock is level with the centre. Value 0,
    /// radians; sigma says how well (two degrees by eye: common practice, no source).
    TwelveUp {
        /// Which end.
        end: EndId,
        /// In which set-up.
        setup: SetupId,
    },
}

/// What is printed on the tape: slips are made in its digits.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TapeScale {
    /// Millimetres.
    #[default]
    Millimetres,
    /// Inches and binary fractions.
    Inches,
}

/// One reading.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// The number that the person knows it by; one per network.
    pub number: u32,
    /// What and between what.
    pub kind: ReadingKind,
    /// As read, mm or radians, corrections not applied.
    pub value: f64,
    /// Standard deviation (1 σ) in mm or radians, > 0. A tape 1–2 mm, a height 1 mm, an angle finder
    /// 0.2° (common practice, no source).
    pub sigma: f64,
    /// What is printed on the tape.
    pub scale: TapeScale,
    /// True when the reading is kept but not used: it is predicted, and its difference shown.
    pub set_aside: bool,
}

impl Touch {
    /// The place itself.
    #[must_use]
    pub const fn place(target: Target) -> Self {
        Self {
            target,
            contact: Contact::Place,
        }
    }

    /// A point, the place itself.
    #[must_use]
    pub const fn point(id: PointId) -> Self {
        Self::place(Target::Point(id))
    }
}

impl Contact {
    /// Added to the straight distance between the middles to give what the tape shows, mm. Zero for
    /// the outer and inner side, which move the place across the car instead.
    #[must_use]
    pub fn along_tape_mm(self) -> f64 {
        match self {
            Self::Place | Self::OuterSide { .. } | Self::InnerSide { .. } => 0.0,
            Self::NearSide { width_mm } => -0.5 * width_mm,
            Self::FarSide { width_mm } => 0.5 * width_mm,
            Self::HoleNearEdge { diameter_mm } => -0.5 * diameter_mm,
            Self::HoleFarEdge { diameter_mm } => 0.5 * diameter_mm,
        }
    }

    /// By how much the touched place lies outboard of the middle, mm.
    #[must_use]
    pub fn outboard_mm(self) -> f64 {
        match self {
            Self::OuterSide { width_mm } => 0.5 * width_mm,
            Self::InnerSide { width_mm } => -0.5 * width_mm,
            _ => 0.0,
        }
    }

    /// The size that the contact speaks of, mm, if any.
    #[must_use]
    pub fn size_mm(self) -> Option<f64> {
        match self {
            Self::Place => None,
            Self::NearSide { width_mm }
            | Self::FarSide { width_mm }
            | Self::OuterSide { width_mm }
            | Self::InnerSide { width_mm } => Some(width_mm),
            Self::HoleNearEdge { diameter_mm } | Self::HoleFarEdge { diameter_mm } => {
                Some(diameter_mm)
            }
        }
    }
}

impl Reading {
    /// A reading with a millimetre tape that is in use.
    #[must_use]
    pub const fn new(number: u32, kind: ReadingKind, value: f64, sigma: f64) -> Self {
        Self {
            number,
            kind,
            value,
            sigma,
            scale: TapeScale::Millimetres,
            set_aside: false,
        }
    }

    /// A plain tape distance between two points.
    #[must_use]
    pub const fn tape(number: u32, p: PointId, q: PointId, value_mm: f64, sigma_mm: f64) -> Self {
        Self::new(
            number,
            ReadingKind::Tape {
                from: Touch::point(p),
                to: Touch::point(q),
                burnt_mm: 0.0,
            },
            value_mm,
            sigma_mm,
        )
    }

    /// A plain height of a point over a set-up's floor.
    #[must_use]
    pub const fn height(
        number: u32,
        p: PointId,
        setup: SetupId,
        value_mm: f64,
        sigma_mm: f64,
    ) -> Self {
        Self::new(
            number,
            ReadingKind::Height {
                target: Touch::point(p),
                setup,
            },
            value_mm,
            sigma_mm,
        )
    }
}

impl ReadingKind {
    /// True when the value is an angle in radians.
    #[must_use]
    pub const fn is_angle(&self) -> bool {
        matches!(
            self,
            Self::Inclination { .. }
                | Self::Bearing { .. }
                | Self::FaceInclination { .. }
                | Self::TwelveUp { .. }
        )
    }

    /// The targets, in order.
    #[must_use]
    pub fn targets(&self) -> Vec<Target> {
        match *self {
            Self::Tape { from, to, .. } => vec![from.target, to.target],
            Self::Height { target, .. } => vec![target.target],
            Self::Plumb { from, to, .. } | Self::Inclination { from, to, .. } => vec![from, to],
            Self::Offset { from, to, along } => match along {
                Line::Through(a, b) => vec![from, to, a, b],
                Line::Plumb(_) => vec![from, to],
            },
            Self::Symmetry { left, right } => vec![left, right],
            Self::AxisSymmetry { p, q, .. } => vec![p, q],
            Self::Bearing {
                from,
                to,
                base_from,
                base_to,
                ..
            } => vec![from, to, base_from, base_to],
            Self::FaceInclination { end, .. } | Self::TwelveUp { end, .. } => {
                vec![Target::Centre(end)]
            }
        }
    }

    /// The touches of a tape or a height, in order.
    #[must_use]
    pub fn touches(&self) -> Vec<Touch> {
        match *self {
            Self::Tape { from, to, .. } => vec![from, to],
            Self::Height { target, .. } => vec![target],
            _ => Vec::new(),
        }
    }

    /// The set-up that the reading depends on.
    #[must_use]
    pub const fn setup(&self) -> Option<SetupId> {
        match *self {
            Self::Height { setup, .. }
            | Self::Plumb { setup, .. }
            | Self::Inclination { setup, .. }
            | Self::Bearing { setup, .. }
            | Self::FaceInclination { setup, .. }
            | Self::TwelveUp { setup, .. }
            | Self::Offset {
                along: Line::Plumb(setup),
                ..
            } => Some(setup),
            _ => None,
        }
    }

    /// True when the reading depends on the plumb line and not on the floor.
    #[must_use]
    pub const fn needs_plumb(&self) -> bool {
        self.setup().is_some() && !matches!(self, Self::Height { .. })
    }
}
