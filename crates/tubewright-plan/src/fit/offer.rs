//! One way to go on from a joint, with what it changes and costs.

use tubewright_check::{Finding, State};
use tubewright_stock::{Buy, Money};

use super::way::ClosingFace;
use crate::routes::{PlannedKind, PlannedRun};

/// What an offer changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum OfferKind {
    /// Nothing: the rest is tacked as planned.
    AsPlanned,
    /// The closing piece is cut to the gap that is there.
    Closing,
    /// Clocks of one or two joints, so that the closing piece, cut to the gap, meets both ends square.
    ClocksAndGap,
    /// Clocks of joints that are not tacked yet, and the length of the closing piece.
    ClocksAndClosing,
    /// Those and the lengths of straights that are not cut yet.
    Lengths,
    /// Those and the angles of bends that are not cut yet.
    Angles,
    /// Those and straights that are cut already: a little is sawn off.
    Trims,
    /// Those and bends that are cut already: a slice is sawn off.
    Slices,
    /// Routed anew from the joint on.
    Anew,
}

impl OfferKind {
    /// For the person.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::AsPlanned => "go on as planned",
            Self::Closing => "cut the closing piece to the gap that is there",
            Self::ClocksAndGap => "turn one or two joints, cut the closing piece to the gap",
            Self::ClocksAndClosing => "turn the joints, cut the closing piece to suit",
            Self::Lengths => "cut the straights that are not cut yet to suit",
            Self::Trims => "trim straights that are cut",
            Self::Angles => "cut the bends that are not cut yet to suit",
            Self::Slices => "take a slice off bends that are cut",
            Self::Anew => "route anew from here",
        }
    }
}

/// One change of one piece.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// The clock of a bend, radians.
    Clock {
        /// Its mark.
        mark: String,
        /// Was.
        from_rad: f64,
        /// Becomes.
        to_rad: f64,
    },
    /// The length of a straight, mm.
    Length {
        /// Its mark.
        mark: String,
        /// The part that it is, in words: of a straight that two legs share, which of the two.
        part: String,
        /// Was.
        from_mm: f64,
        /// Becomes.
        to_mm: f64,
        /// Whether it is cut already and must go to the saw again.
        is_cut: bool,
    },
    /// The angle of a bend, radians.
    Angle {
        /// Its mark.
        mark: String,
        /// Was.
        from_rad: f64,
        /// Becomes.
        to_rad: f64,
        /// Whether it is cut already and must go to the saw again.
        is_cut: bool,
    },
    /// A face of the closing piece that is sawn out of square.
    Face(ClosingFace),
    /// A piece that is no longer needed.
    Dropped {
        /// Its mark.
        mark: String,
        /// Whether it is cut already: steel that is lost to this job.
        is_cut: bool,
    },
    /// A piece that is new.
    New {
        /// Its mark.
        mark: String,
    },
}

/// A way to go on.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    /// What it changes.
    pub kind: OfferKind,
    /// All runs as they would be built.
    pub runs: Vec<PlannedRun>,
    /// Mark of the first piece behind the joint that stands and does not move; `None` up to the end.
    pub stands: Option<String>,
    /// Changes in the order of flow.
    pub changes: Vec<Change>,
    /// How far from where they should the changed pieces arrive, mm.
    pub arrives_off_mm: f64,
    /// How far from the direction, radians.
    pub arrives_off_rad: f64,
    /// ± (19 in 20) of that by the ± of the joint, mm: less than this is no reason to change anything.
    pub arrives_plus_minus_mm: f64,
    /// Whether it arrives within what is pulled in while tacking.
    pub arrives: bool,
    /// Gaps of the run, all of them.
    pub gaps: Vec<Finding>,
    /// Marks of steel that is cut and lost.
    pub lost: Vec<String>,
    /// Pieces that go to the saw again.
    pub recut: Vec<String>,
    /// What is still to be bought for everything that is not made yet.
    pub buys: Vec<Buy>,
    /// Its price.
    pub price: Option<Money>,
    /// How much dearer than going on as planned, in minor units.
    pub dearer_minor: Option<i64>,
    /// Pieces that nothing on hand or for sale can make.
    pub missing: Vec<String>,
}

impl Offer {
    /// Whether it arrives, keeps every gap and can be made.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.arrives && self.missing.is_empty() && self.failing().next().is_none()
    }

    /// The gaps that fail.
    pub fn failing(&self) -> impl Iterator<Item = &Finding> {
        self.gaps
            .iter()
            .filter(|finding| finding.state == State::Fail)
    }

    /// The least room that any gap has over what it must have, ± counted, mm.
    #[must_use]
    pub fn least_room_mm(&self) -> Option<f64> {
        self.gaps.iter().filter_map(room_of).min_by(f64::total_cmp)
    }
}

fn room_of(finding: &Finding) -> Option<f64> {
    let measured = finding.measured?;
    match finding.limit? {
        tubewright_check::Limit::AtLeast(limit) => {
            Some(measured.value - measured.plus_minus.unwrap_or(0.0) - limit)
        }
        tubewright_check::Limit::AtMost(_) => None,
    }
}

impl Offer {
    /// Whether it arrives with faces that are all sawn square.
    pub(super) fn is_square(&self) -> bool {
        self.arrives
            && !self
                .changes
                .iter()
                .any(|change| matches!(change, Change::Face(_)))
    }
}

/// A piece in words. A straight that the legs of two bends share lies in two parts, one with each.
pub(super) fn part_words(run: &PlannedRun, index: usize) -> String {
    let mark = |index: Option<usize>| {
        index
            .and_then(|index| run.pieces.get(index))
            .map(|piece| piece.mark.as_str())
    };
    let Some(own) = mark(Some(index)) else {
        return String::new();
    };
    let before = index.checked_sub(1);
    if mark(Some(index + 1)) == Some(own) {
        format!(
            "{own} on the leg of {}",
            mark(before).unwrap_or("the part before")
        )
    } else if mark(before) == Some(own) {
        format!(
            "{own} on the leg of {}",
            mark(Some(index + 1)).unwrap_or("the part behind")
        )
    } else {
        own.to_owned()
    }
}

/// What changes from a piece as planned to the piece as offered.
pub(super) fn changes_of(
    part: &str,
    was: &crate::routes::PlannedPiece,
    is: &crate::routes::PlannedPiece,
    is_cut: bool,
) -> Vec<Change> {
    let mark = || was.mark.clone();
    match (&was.kind, &is.kind) {
        (
            PlannedKind::Straight { length_mm: from_mm },
            PlannedKind::Straight { length_mm: to_mm },
        ) if (from_mm - to_mm).abs() > 1e-6 => vec![Change::Length {
            mark: mark(),
            part: part.to_owned(),
            from_mm: *from_mm,
            to_mm: *to_mm,
            is_cut,
        }],
        (
            PlannedKind::Bend {
                angle_rad: a,
                clock_rad: c,
                ..
            },
            PlannedKind::Bend {
                angle_rad: b,
                clock_rad: d,
                ..
            },
        ) => {
            let mut changes = Vec::new();
            if (c - d).abs() > 1e-9 {
                changes.push(Change::Clock {
                    mark: mark(),
                    from_rad: *c,
                    to_rad: *d,
                });
            }
            if (a - b).abs() > 1e-9 {
                changes.push(Change::Angle {
                    mark: mark(),
                    from_rad: *a,
                    to_rad: *b,
                    is_cut,
                });
            }
            changes
        }
        _ => Vec::new(),
    }
}
