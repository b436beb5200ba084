//! The slips that people make with a tape, each with how readily it is made.

use super::digits::{one_digit_wrong, swapped};
use crate::adjustment::{Adjustment, Measure};
use crate::network::{
    Contact, Line, PointId, Reading, ReadingKind, SetupId, TapeScale, Target, Touch,
};
use tubewright_geometry::math;

/// Which end of the tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TapeEnd {
    /// The first target of the reading.
    From,
    /// The second.
    To,
}

/// What went wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum SlipKind {
    /// The tape was held at its mark of this length, which was not taken off.
    BurntNotTakenOff {
        /// The length in mm.
        by_mm: f64,
    },
    /// A burnt length was taken off, but the tape was held at its zero.
    BurntTakenOffTwice {
        /// The length in mm.
        by_mm: f64,
    },
    /// Read at the wrong printed number, off by this, signed: read − true.
    Misread {
        /// In mm.
        by_mm: f64,
    },
    /// Two neighbouring digits exchanged in writing down.
    SwappedDigits,
    /// One digit wrong.
    WrongDigit,
    /// The tape went to another mark.
    WrongMark {
        /// At which end of the tape.
        at: TapeEnd,
        /// The mark it fits.
        instead: Target,
    },
    /// It was taken in another set-up than the one noted.
    WrongSetup {
        /// The set-up it fits.
        instead: SetupId,
    },
    /// The near side was touched and the far side noted, or the other way round.
    WrongSide,
    /// The middle was touched though a side was noted.
    MiddleForSide,
    /// The sign is the wrong one.
    WrongSign,
    /// The angle finder was read from plumb instead of from level.
    FromPlumb,
}

/// One value that the reading may have been, and the slips that lead to it.
#[derive(Clone, Debug, PartialEq)]
pub struct Explanation {
    /// The slips; several can lead to the same value.
    pub kinds: Vec<SlipKind>,
    /// What it was: the corrected value, or for a wrong mark the value as read; mm or radians.
    pub value: f64,
    /// How likely, given that some slip was made: 0 to 1.
    pub probability: f64,
}

impl Explanation {
    /// True when the value was right and went with another mark or set-up.
    #[must_use]
    pub fn keeps_value(&self) -> bool {
        self.kinds.iter().any(|kind| {
            matches!(
                kind,
                SlipKind::WrongMark { .. } | SlipKind::WrongSetup { .. }
            )
        })
    }

    /// For a wrong mark, the one it fits.
    #[must_use]
    pub fn instead_of(&self) -> Option<Target> {
        self.kinds.iter().find_map(|k| match k {
            SlipKind::WrongMark { instead, .. } => Some(*instead),
            _ => None,
        })
    }
}

const INCH_MM: f64 = 25.4;
const FOOT_MM: f64 = 304.8;

/// How readily each slip is made, as shares of all slips (common practice, no source): they only rank
/// slips that explain a reading equally well.
mod share {
    pub(super) const BURNT_HUNDRED: f64 = 0.12;
    pub(super) const BURNT_INCH: f64 = 0.06;
    pub(super) const BURNT_TWICE: f64 = 0.04;
    pub(super) const MISREAD_TEN: f64 = 0.15;
    pub(super) const MISREAD_HUNDRED: f64 = 0.12;
    pub(super) const MISREAD_INCH: f64 = 0.05;
    pub(super) const MISREAD_FOOT: f64 = 0.05;
    pub(super) const MISREAD_FRACTION: f64 = 0.05;
    pub(super) const SWAPPED: f64 = 0.08;
    pub(super) const WRONG_DIGIT: f64 = 0.10;
    pub(super) const WRONG_MARK: f64 = 0.10;
    pub(super) const WRONG_SETUP: f64 = 0.10;
    pub(super) const WRONG_SIDE: f64 = 0.08;
    pub(super) const MIDDLE: f64 = 0.04;
    pub(super) const WRONG_SIGN: f64 = 0.30;
    pub(super) const FROM_PLUMB: f64 = 0.20;
    pub(super) const NONE_OF_THESE: f64 = 0.10;
}

/// Width in mm over which a slip of no known kind is spread evenly.
const UNKNOWN_OVER_MM: f64 = 1000.0;

/// The same in radians.
const UNKNOWN_OVER_RAD: f64 = 1.0;

/// Corrected values nearer than this part of the reading's σ count as the same.
const SAME_VALUE_SIGMAS: f64 = 0.2;

/// Explanations less likely than this are left out.
const LEAST_PROBABILITY: f64 = 0.02;

struct Candidate {
    kind: SlipKind,
    value: f64,
    /// What the others say the value should be.
    says: Measure,
    share: f64,
}

/// Slips that explain `reading`, of which the others say `says`; likeliest first.
pub(super) fn explanations(
    without: &Adjustment,
    reading: &Reading,
    says: Measure,
) -> Vec<Explanation> {
    let mut candidates = Vec::new();
    let mut add = |kind, value, share| {
        candidates.push(Candidate {
            kind,
            value,
            says,
            share,
        });
    };
    if reading.kind.is_angle() {
        add(SlipKind::WrongSign, -reading.value, share::WRONG_SIGN);
        let plumb = (math::FRAC_PI_2 - reading.value.abs()) * reading.value.signum();
        add(SlipKind::FromPlumb, plumb, share::FROM_PLUMB);
        add(SlipKind::FromPlumb, -plumb, share::FROM_PLUMB);
    } else {
        lengths(reading, &mut add);
        candidates.extend(wrong_marks(without, reading));
    }
    candidates.extend(wrong_setups(without, reading));
    weigh(&candidates, reading)
}

fn lengths(reading: &Reading, add: &mut impl FnMut(SlipKind, f64, f64)) {
    let read = reading.value;
    // A plumb distance is read from a tape laid on the floor.
    let burnt = match reading.kind {
        ReadingKind::Tape { burnt_mm, .. } => Some(burnt_mm),
        ReadingKind::Plumb { .. } => Some(0.0),
        _ => None,
    };
    if let Some(burnt_mm) = burnt {
        for (by_mm, share) in [(100.0, share::BURNT_HUNDRED), (INCH_MM, share::BURNT_INCH)] {
            add(SlipKind::BurntNotTakenOff { by_mm }, read - by_mm, share);
            add(
                SlipKind::BurntTakenOffTwice { by_mm },
                read + by_mm,
                share::BURNT_TWICE,
            );
        }
        if burnt_mm != 0.0 {
            let kind = SlipKind::BurntTakenOffTwice { by_mm: burnt_mm };
            add(kind, read + burnt_mm, share::BURNT_HUNDRED);
        }
    }
    if matches!(reading.kind, ReadingKind::Offset { .. }) {
        add(SlipKind::WrongSign, -read, share::WRONG_SIGN);
    }
    let mut misread = |by_mm: f64, share: f64| {
        for by_mm in [by_mm, -by_mm] {
            add(SlipKind::Misread { by_mm }, read - by_mm, 0.5 * share);
        }
    };
    misread(INCH_MM, share::MISREAD_INCH);
    misread(FOOT_MM, share::MISREAD_FOOT);
    let unit = match reading.scale {
        TapeScale::Millimetres => {
            misread(10.0, share::MISREAD_TEN);
            misread(100.0, share::MISREAD_HUNDRED);
            1.0
        }
        TapeScale::Inches => {
            for fraction in [0.5, 0.25, 0.125] {
                misread(fraction * INCH_MM, share::MISREAD_FRACTION);
            }
            misread(10.0 * INCH_MM, share::MISREAD_TEN);
            INCH_MM
        }
    };
    // Digits are those of whole millimetres or whole inches; what is left over stays.
    let whole = match reading.scale {
        TapeScale::Millimetres => (read / unit).round(),
        TapeScale::Inches => (read / unit + 1e-6).floor(),
    };
    if (1.0..1e5).contains(&whole) {
        let rest = read - whole * unit;
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "checked to be a positive whole number below 100 000"
        )]
        let shown = whole as u32;
        let mut spread = |kind: SlipKind, others: Vec<u32>, share: f64| {
            #[expect(clippy::cast_precision_loss, reason = "a handful of digits")]
            let each = share / others.len().max(1) as f64;
            for other in others {
                add(kind, f64::from(other) * unit + rest, each);
            }
        };
        spread(SlipKind::SwappedDigits, swapped(shown), share::SWAPPED);
        spread(
            SlipKind::WrongDigit,
            one_digit_wrong(shown),
            share::WRONG_DIGIT,
        );
    }
    for touch in reading.kind.touches() {
        // The value that would have been shown with the contact as noted.
        match touch.contact {
            Contact::NearSide { width_mm }
            | Contact::HoleNearEdge {
                diameter_mm: width_mm,
            } => {
                add(SlipKind::WrongSide, read - width_mm, share::WRONG_SIDE);
                add(
                    SlipKind::MiddleForSide,
                    read - 0.5 * width_mm,
                    share::MIDDLE,
                );
            }
            Contact::FarSide { width_mm }
            | Contact::HoleFarEdge {
                diameter_mm: width_mm,
            } => {
                add(SlipKind::WrongSide, read + width_mm, share::WRONG_SIDE);
                add(
                    SlipKind::MiddleForSide,
                    read + 0.5 * width_mm,
                    share::MIDDLE,
                );
            }
            _ => {}
        }
    }
}

/// The same value to every other mark at either end of the tape.
fn wrong_marks(without: &Adjustment, reading: &Reading) -> Vec<Candidate> {
    let marks: Vec<Target> = (0..without.network().points.len())
        .map(|i| Target::Point(PointId(i)))
        .collect();
    let mut found: Vec<(SlipKind, Measure)> = Vec::new();
    let mut try_kind = |kind: ReadingKind, at: TapeEnd, instead: Target| {
        if let Some(says) = without.expected(&kind) {
            found.push((SlipKind::WrongMark { at, instead }, says));
        }
    };
    for &mark in &marks {
        match reading.kind {
            ReadingKind::Tape { from, to, burnt_mm }
                if from.target != mark && to.target != mark =>
            {
                let other_to = Touch { target: mark, ..to };
                let kind = ReadingKind::Tape {
                    from,
                    to: other_to,
                    burnt_mm,
                };
                try_kind(kind, TapeEnd::To, mark);
                let other_from = Touch {
                    target: mark,
                    ..from
                };
                let kind = ReadingKind::Tape {
                    from: other_from,
                    to,
                    burnt_mm,
                };
                try_kind(kind, TapeEnd::From, mark);
            }
            ReadingKind::Height { target, setup } if target.target != mark => {
                let target = Touch {
                    target: mark,
                    ..target
                };
                try_kind(ReadingKind::Height { target, setup }, TapeEnd::To, mark);
            }
            _ => {}
        }
    }
    #[expect(clippy::cast_precision_loss, reason = "a count of marks is small")]
    let each = share::WRONG_MARK / found.len().max(1) as f64;
    found
        .into_iter()
        .map(|(kind, says)| Candidate {
            kind,
            value: reading.value,
            says,
            share: each,
        })
        .collect()
}

/// The same value in every other set-up.
fn wrong_setups(without: &Adjustment, reading: &Reading) -> Vec<Candidate> {
    let Some(noted) = reading.kind.setup() else {
        return Vec::new();
    };
    let found: Vec<(SetupId, Measure)> = (0..without.network().setups.len())
        .map(SetupId)
        .filter(|setup| *setup != noted)
        .filter_map(|setup| Some((setup, without.expected(&in_setup(reading.kind, setup))?)))
        .collect();
    #[expect(clippy::cast_precision_loss, reason = "a count of set-ups is small")]
    let each = share::WRONG_SETUP / found.len().max(1) as f64;
    found
        .into_iter()
        .map(|(instead, says)| Candidate {
            kind: SlipKind::WrongSetup { instead },
            value: reading.value,
            says,
            share: each,
        })
        .collect()
}

/// The same reading in another set-up.
fn in_setup(mut kind: ReadingKind, other: SetupId) -> ReadingKind {
    match &mut kind {
        ReadingKind::Height { setup, .. }
        | ReadingKind::Plumb { setup, .. }
        | ReadingKind::Inclination { setup, .. }
        | ReadingKind::Bearing { setup, .. }
        | ReadingKind::FaceInclination { setup, .. }
        | ReadingKind::TwelveUp { setup, .. }
        | ReadingKind::Offset {
            along: Line::Plumb(setup),
            ..
        } => *setup = other,
        _ => {}
    }
    kind
}

/// Bayes: share times the probability density of the difference that would be left, against a slip
/// of no known kind.
fn weigh(candidates: &[Candidate], reading: &Reading) -> Vec<Explanation> {
    let density = |left: f64, sigma: f64| {
        math::exp(-0.5 * (left / sigma) * (left / sigma)) / (sigma * math::TAU.sqrt())
    };
    let over = if reading.kind.is_angle() {
        UNKNOWN_OVER_RAD
    } else {
        UNKNOWN_OVER_MM
    };
    let mut total = share::NONE_OF_THESE / over;
    let mut found: Vec<Explanation> = Vec::new();
    for candidate in candidates {
        let sigma = math::hypot(reading.sigma, candidate.says.sigma);
        let weight = candidate.share * density(candidate.value - candidate.says.value, sigma);
        total += weight;
        let keeps_value = matches!(
            candidate.kind,
            SlipKind::WrongMark { .. } | SlipKind::WrongSetup { .. }
        );
        let same = found.iter_mut().find(|e| {
            !keeps_value
                && !e.keeps_value()
                && (e.value - candidate.value).abs() < SAME_VALUE_SIGMAS * reading.sigma
        });
        match same {
            Some(e) => {
                e.probability += weight;
                if !e.kinds.contains(&candidate.kind) {
                    e.kinds.push(candidate.kind);
                }
            }
            None => found.push(Explanation {
                kinds: vec![candidate.kind],
                value: candidate.value,
                probability: weight,
            }),
        }
    }
    for e in &mut found {
        e.probability /= total;
    }
    found.retain(|e| e.probability >= LEAST_PROBABILITY);
    found.sort_by(|a, b| {
        b.probability
            .total_cmp(&a.probability)
            .then(a.value.total_cmp(&b.value))
    });
    found
}
