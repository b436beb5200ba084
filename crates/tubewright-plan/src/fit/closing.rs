//! Closing a stretch: from a joint where it was found to what stands behind it, the last straight cut to
//! the gap that is there.

use core::ops::Range;
use std::collections::BTreeSet;
use tubewright_build::model::Model;
use tubewright_fit::reclose::WayOn;
use tubewright_geometry::{Frame, Length, Piece, math};
use tubewright_stock::weld::fit_up_limits;

use super::offer::{Change, Offer, OfferKind, part_words};
use super::offers::{Ground, laid_from, lean};
use super::pose::JointFound;
use super::steel::Steel;
use super::way::{ClosingFace, Spanned, Stretch as Laid, geometry_of, relaid, spanned};
use crate::routes::{PlannedKind, PlannedPiece, PlannedRun, end_of_run};

pub(super) use super::way::Stretch;

impl Stretch {
    /// The stretch behind a joint: up to the first piece that stands, or to the end of the run.
    pub(super) fn behind(model: &Model, run: &PlannedRun, from: usize, steel: &Steel) -> Self {
        let until = first_standing(run, from, steel);
        let arrival = match run.pieces.get(until) {
            Some(piece) => Some(match piece.kind {
                // Its own clock is no part of where it must be met.
                PlannedKind::Bend { clock_rad, .. } => piece.frame_in.rolled(-clock_rad),
                _ => piece.frame_in,
            }),
            None => ends_at_something(model, run).then(|| {
                let twelve = run
                    .end_direction
                    .normal_toward(run.arrival().twelve().vector())
                    .unwrap_or_else(|| run.end_direction.any_normal());
                Frame::from_axes(run.end_point, run.end_direction, twelve)
            }),
        };
        Self {
            from,
            until,
            arrival,
        }
    }
}

/// Number of the first piece behind the joint that stands already, or one past the last.
fn first_standing(run: &PlannedRun, from: usize, steel: &Steel) -> usize {
    for (index, piece) in run.pieces.iter().enumerate().skip(from) {
        // A piece whose downstream joint is tacked hangs on what is behind it.
        let next = run
            .pieces
            .get(index + 1)
            .map_or(&run.last_joint, |next| &next.joint);
        if index > from && steel.standing.contains(next) {
            return index;
        }
        // A crossover is shared: it stays where it is planned, so that the other run keeps its plan.
        if matches!(piece.kind, PlannedKind::Crossover { .. }) {
            return index;
        }
    }
    run.pieces.len()
}

/// Whether a run ends at something that stands: what was measured, or a part that another run brings.
pub(super) fn ends_at_something(model: &Model, run: &PlannedRun) -> bool {
    let written = model.build.run(&run.name);
    let end = written.and_then(|written| end_of_run(&model.build, &written.to));
    end.is_some_and(|end| end.given.is_none()) || run.ends_at_part().is_some()
}

/// The straight that closes a stretch: the longest that is not cut yet, else the longest.
pub(super) fn closing_of(
    run: &PlannedRun,
    stretch: Range<usize>,
    cut: &BTreeSet<String>,
) -> Option<usize> {
    let straights = |only_uncut: bool| {
        run.pieces
            .iter()
            .enumerate()
            .take(stretch.end)
            .skip(stretch.start)
            .filter(|(_, piece)| !(only_uncut && cut.contains(&piece.mark)))
            .filter_map(|(index, piece)| match piece.kind {
                PlannedKind::Straight { length_mm } => Some((index, length_mm)),
                _ => None,
            })
            .max_by(|a, b| a.1.total_cmp(&b.1))
            .map(|(index, _)| index)
    };
    straights(true).or_else(|| straights(false))
}

/// A run with a joint where it was found, and the faces of the piece that closes it, if one does. Where
/// the pieces behind the joint come to something that stands, the closing piece is cut to the gap as
/// long as that kinks no joint too much; else they are laid from the joint as they are.
pub(super) fn lean_and_relay(
    run: &PlannedRun,
    known: usize,
    found: &JointFound,
    stretch: &Laid,
    cut: &BTreeSet<String>,
) -> (PlannedRun, Vec<ClosingFace>) {
    let start = laid_from(run, found);
    let spanned = closing_of(run, stretch.from..stretch.until, cut)
        .and_then(|closing| spanned(run, stretch, &start, closing))
        .filter(|spanned| spanned.kink_rad() <= MOST_KINK_DEG.to_radians());
    if let Some(spanned) = spanned {
        return (lean(&spanned.run, known, found), spanned.faces.to_vec());
    }
    let pieces: Vec<Piece> = run
        .pieces
        .iter()
        .take(stretch.until)
        .skip(stretch.from)
        .map_while(geometry_of)
        .collect();
    let laid = relaid(run, stretch.from, &start, &pieces);
    (lean(&laid, known, found), Vec::new())
}

/// A run whose end has moved, closed to where that lies now from the last of its joints that stands, and the
/// faces of the piece that closes it. `None` where that would kink a joint too much, or nothing closes it.
pub(super) fn closed_to_its_end(
    model: &Model,
    run: &PlannedRun,
    steel: &Steel,
    cut: &BTreeSet<String>,
) -> Option<(PlannedRun, Vec<ClosingFace>)> {
    let stands = |piece: &PlannedPiece| steel.standing.contains(&piece.joint);
    let from = run.pieces.iter().rposition(stands).unwrap_or(0);
    let stretch = Stretch::behind(model, run, from, steel);
    let first = run.pieces.get(from)?;
    let start = match first.kind {
        // Its own clock is turned where it is laid.
        PlannedKind::Bend { clock_rad, .. } => first.frame_in.rolled(-clock_rad),
        _ => first.frame_in,
    };
    let closing = closing_of(run, stretch.from..stretch.until, cut)?;
    let spanned = spanned(run, &stretch, &start, closing)?;
    (spanned.kink_rad() <= MOST_KINK_DEG.to_radians())
        .then(|| (spanned.run, spanned.faces.to_vec()))
}

impl Ground<'_> {
    /// The pieces as they are, the closing piece cut to the gap.
    pub(super) fn closed_to_the_gap(&self) -> Option<Offer> {
        let closing = closing_of(self.run, self.from..self.until, &self.cut)?;
        let spanned = spanned(self.run, &self.stretch, &self.start, closing)?;
        self.closed(OfferKind::Closing, self.run, closing, spanned)
    }

    /// One or two joints turned so that the closing piece, cut to the gap, meets both ends with square
    /// faces, or as nearly as turning brings them. The least turning that does it is taken.
    pub(super) fn turned_and_closed_to_the_gap(&self) -> Option<Offer> {
        let closing = closing_of(self.run, self.from..self.until, &self.cut)?;
        let bends: Vec<(usize, f64)> = self
            .run
            .pieces
            .iter()
            .enumerate()
            .take(closing)
            .skip(self.from)
            .filter_map(|(index, piece)| match piece.kind {
                PlannedKind::Bend { clock_rad, .. } => Some((index, clock_rad)),
                _ => None,
            })
            .take(MOST_TURNED)
            .collect();
        let step = self.around.practice.clock_step.rad();
        let square = self.square_rad();
        let mut best: Option<(f64, f64, PlannedRun, Spanned)> = None;
        let mut judge = |turns: &[(usize, f64)]| {
            let mut run = self.run.clone();
            let mut turned = 0.0;
            for (index, by) in turns {
                turned += by.abs();
                if let Some(PlannedKind::Bend { clock_rad, .. }) =
                    run.pieces.get_mut(*index).map(|piece| &mut piece.kind)
                {
                    *clock_rad += by;
                }
            }
            let Some(spanned) = spanned(&run, &self.stretch, &self.start, closing) else {
                return;
            };
            // Below what closes up square less kink is worth nothing.
            let key = (spanned.kink_rad().max(square), turned);
            if best
                .as_ref()
                .is_none_or(|(kink, by, ..)| key < (*kink, *by))
            {
                best = Some((key.0, key.1, run, spanned));
            }
        };
        for (at, (first, _)) in bends.iter().enumerate() {
            for a in steps_of(step) {
                judge(&[(*first, a)]);
                for (second, _) in bends.iter().skip(at + 1) {
                    for b in steps_of(step) {
                        judge(&[(*first, a), (*second, b)]);
                    }
                }
            }
        }
        let (_, _, run, spanned) = best?;
        self.closed(OfferKind::ClocksAndGap, &run, closing, spanned)
    }

    /// The kink that a square face still closes up with: half a wall at the far side of the tube.
    pub(super) fn square_rad(&self) -> f64 {
        let wall = self
            .model
            .stock
            .tube(&self.run.tube)
            .map_or(Length::ZERO, |tube| tube.wall.value);
        math::atan2(fit_up_limits(wall).gap_most.mm(), self.run.od_mm)
    }

    fn closed(
        &self,
        kind: OfferKind,
        turned: &PlannedRun,
        closing: usize,
        spanned: Spanned,
    ) -> Option<Offer> {
        let planned = self.run.pieces.get(closing)?;
        let PlannedKind::Straight { length_mm: from_mm } = planned.kind else {
            return None;
        };
        let is_cut = self.cut.contains(&planned.mark);
        let least = self.around.practice.least_straight.mm().min(from_mm);
        let can_be =
            spanned.length_mm >= least && !(is_cut && spanned.length_mm > from_mm + CLOSE_UP_MM);
        let kink = spanned.kink_rad();
        let mut runs = self.runs.to_vec();
        if let Some(slot) = runs.get_mut(self.found.run) {
            *slot = self.leaning(&spanned.run);
        }
        let mut changes: Vec<Change> = self
            .run
            .pieces
            .iter()
            .zip(&turned.pieces)
            .filter_map(|(was, is)| match (&was.kind, &is.kind) {
                (
                    PlannedKind::Bend { clock_rad: a, .. },
                    PlannedKind::Bend { clock_rad: b, .. },
                ) if (a - b).abs() > 1e-9 => Some(Change::Clock {
                    mark: was.mark.clone(),
                    from_rad: *a,
                    to_rad: *b,
                }),
                _ => None,
            })
            .collect();
        changes.push(Change::Length {
            mark: planned.mark.clone(),
            part: part_words(self.run, closing),
            from_mm,
            to_mm: spanned.length_mm,
            is_cut,
        });
        let square = self.square_rad();
        changes.extend(
            spanned
                .faces
                .into_iter()
                .filter(|face| face.out_of_square_rad > square)
                .map(Change::Face),
        );
        let way = WayOn {
            pieces: Vec::new(),
            place_error_mm: 0.0,
            direction_error_rad: kink,
        };
        let mut offer = self.judged(kind, runs, changes, &way);
        offer.arrives = can_be && kink <= MOST_KINK_DEG.to_radians();
        Some(offer)
    }
}

/// Turns to either side that are tried.
fn steps_of(step: f64) -> impl Iterator<Item = f64> {
    let most = (MOST_TURN_DEG.to_radians() / step).floor().max(1.0);
    let mut at = -most - 1.0;
    core::iter::from_fn(move || {
        at += 1.0;
        if at == 0.0 {
            at += 1.0;
        }
        (at <= most).then_some(at * step)
    })
}

/// Bends between the joint and the closing piece that may be turned: with more, the pairs are too many
/// to look at while the person waits.
const MOST_TURNED: usize = 6;

/// A joint is turned by at most this, degrees: more is another shape of run, which is routed anew.
const MOST_TURN_DEG: f64 = 6.0;

/// Largest kink at either joint of a closing piece, degrees. Its face is scribed from what it meets and
/// dressed to the scribe, some 2 mm across a tube of 60 mm; it then closes up like any mitre. More is a
/// mitre that is planned and sawn as one (common practice, no source). A square face closes up only as
/// far as [`Ground::square_rad`].
const MOST_KINK_DEG: f64 = 2.0;

/// A gap that a fitter still closes up, mm: half a wall of 1.5 mm (common practice, no source).
const CLOSE_UP_MM: f64 = 0.75;
