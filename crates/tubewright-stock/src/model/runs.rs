//! Runs as parts wanted and ways to make their straights.

use std::collections::BTreeSet;

use tubewright_geometry::Length;

use super::{COMPONENT, StockModel, Wanted, family_key};
use crate::cutting::{Choice, Equality};
use crate::demand::{PieceDemand, PieceShape, RunDemand};
use crate::plan::Serves;
use crate::request::StockRequest;
use crate::size::{angle_thousandths, length_of, length_thousandths};

/// One way to make a straight beside bends.
#[derive(Clone, Copy)]
struct Mode {
    /// Leg kept by the bend before it and by the bend after it.
    on_bends: [i64; 2],
    is_own_part: bool,
}

impl StockModel {
    /// Which legs the stock of a family has, distinct, longest first.
    fn legs_of(&self, family: u32) -> Vec<i64> {
        let mut legs: Vec<i64> = self
            .problem
            .bins
            .iter()
            .filter(|bin| bin.family == family)
            .flat_map(|bin| bin.legs)
            .filter(|leg| *leg > 0)
            .collect();
        legs.sort_unstable_by(|a, b| b.cmp(a));
        legs.dedup();
        legs
    }

    /// What stays on a leg of a bend of the family: all of it, or what is left when one straight of these
    /// or two are cut from its open end, each with its kerf; thousandths of mm.
    fn stays_on_leg(&self, bends: u32, straights: &[i64]) -> BTreeSet<i64> {
        let legs: BTreeSet<(i64, i64)> = self
            .problem
            .bins
            .iter()
            .filter(|bin| bin.family == bends)
            .flat_map(|bin| bin.legs.map(|leg| (leg, bin.leg_kerf)))
            .collect();
        let mut stays = BTreeSet::new();
        for (leg, kerf) in legs {
            stays.insert(leg);
            for (n, one) in straights.iter().enumerate() {
                stays.insert(leg - one - kerf);
                let others = straights.iter().skip(n + 1);
                stays.extend(others.map(|two| leg - one - two - 2 * kerf));
            }
        }
        stays
    }

    pub(super) fn add_run(&mut self, run: &RunDemand, request: &StockRequest, all_splits: bool) {
        let modes: Vec<Vec<Mode>> = (0..run.pieces.len())
            .map(|at| self.modes(run, at, request, all_splits))
            .collect();
        let joints = run.pieces.len().saturating_sub(1) as u32;
        let mergeable = modes.iter().filter(|modes| modes.len() > 1).count() as u32;
        self.least_welds += run.welds_at_ends + joints - mergeable.min(joints);
        // Choices of the straights first: those of the bends refer to them.
        let choices: Vec<Vec<(Mode, usize)>> = run
            .pieces
            .iter()
            .zip(&modes)
            .map(|(piece, modes)| self.add_straight(piece, modes, request.rates.weld.minor))
            .collect();
        for (at, piece) in run.pieces.iter().enumerate() {
            match &piece.shape {
                PieceShape::Straight { .. } => {}
                PieceShape::Bend { .. } => self.add_bend(run, at, &choices),
                PieceShape::Component { item } => {
                    let family = self.family(family_key(piece));
                    let class = self.class(family, COMPONENT, [0, 0]);
                    self.want(Wanted {
                        class,
                        serves: vec![serves(piece, 0)],
                        legs: [0, 0],
                        component: Some(item.clone()),
                    });
                }
            }
        }
    }

    fn want(&mut self, wanted: Wanted) {
        if let Some(part) = self.problem.parts.get_mut(wanted.class) {
            part.count += 1;
        }
        self.wanted.push(wanted);
    }

    fn add_choice(&mut self, cost: i64, wanted: Option<Wanted>, is_second: bool) -> usize {
        let needs = wanted.iter().map(|wanted| (wanted.class, 1)).collect();
        self.problem.choices.push(Choice {
            cost,
            needs,
            is_second,
        });
        self.choice_wanted.push(wanted);
        self.choice_wanted.len() - 1
    }

    /// The ways to make a straight: a part of its own, on the leg of the bend before or after it,
    /// or shared by both legs. Empty for other pieces.
    fn modes(
        &self,
        run: &RunDemand,
        at: usize,
        request: &StockRequest,
        all_splits: bool,
    ) -> Vec<Mode> {
        let Some(piece) = run.pieces.get(at) else {
            return Vec::new();
        };
        let Some(lengths) = cut_lengths(piece) else {
            return Vec::new();
        };
        let bends_beside = |neighbour: Option<usize>| {
            neighbour
                .and_then(|index| run.pieces.get(index))
                .filter(|bend| matches!(bend.shape, PieceShape::Bend { .. }))
                .filter(|bend| bend.tube.is_same_as(&piece.tube))
                .and_then(|bend| self.families.get(&family_key(bend)).copied())
        };
        let [bend_before, bend_after] = [at.checked_sub(1), Some(at + 1)].map(bends_beside);
        let legs_of = |family: Option<u32>| family.map(|it| self.legs_of(it)).unwrap_or_default();
        let (before, after) = (legs_of(bend_before), legs_of(bend_after));
        let (longest_before, longest_after) = (
            before.first().copied().unwrap_or(0),
            after.first().copied().unwrap_or(0),
        );
        let mut shares = BTreeSet::new();
        if lengths.on_leg_before <= longest_before {
            shares.insert([lengths.on_leg_before, 0]);
        }
        if lengths.on_leg_after <= longest_after {
            shares.insert([0, lengths.on_leg_after]);
        }
        // Shared: the split can be moved, with the same parts from the same steel, until one of the two
        // legs is used whole, is left just long enough for what else is cut from it, or gives the least
        // that a leg may.
        let least = length_thousandths(request.rules.least_leg).max(1);
        let (others, at_least) = if all_splits {
            (others(request, piece), Some(least))
        } else {
            (Vec::new(), None)
        };
        let stays = |bends: Option<u32>| {
            let stays = bends.map(|bends| self.stays_on_leg(bends, &others));
            stays.into_iter().flatten().chain(at_least)
        };
        let splits = stays(bend_before)
            .map(|a| [a, lengths.shared - a])
            .chain(stays(bend_after).map(|b| [lengths.shared - b, b]));
        shares.extend(splits.filter(|[a, b]| {
            *a >= least && *b >= least && *a <= longest_before && *b <= longest_after
        }));
        let own = Mode {
            on_bends: [0, 0],
            is_own_part: true,
        };
        let shared = shares.into_iter().map(|on_bends| Mode {
            on_bends,
            is_own_part: false,
        });
        core::iter::once(own).chain(shared).collect()
    }

    fn add_straight(
        &mut self,
        piece: &PieceDemand,
        modes: &[Mode],
        weld_cost: i64,
    ) -> Vec<(Mode, usize)> {
        let Some(length) = cut_lengths(piece).map(|lengths| lengths.own) else {
            return Vec::new();
        };
        let family = self.family(family_key(piece));
        let class = self.class(family, length, [0, 0]);
        let own = Wanted {
            class,
            serves: vec![serves(piece, length)],
            legs: [0, 0],
            component: None,
        };
        if modes.len() < 2 {
            self.want(own);
            return Vec::new();
        }
        let choices: Vec<(Mode, usize)> = modes
            .iter()
            .map(|mode| {
                // A part of its own has one joint more than a leg that serves. One leg is rather cut
                // than two.
                let choice = if mode.is_own_part {
                    self.add_choice(weld_cost, Some(own.clone()), false)
                } else {
                    self.add_choice(0, None, mode.on_bends.iter().all(|leg| *leg > 0))
                };
                (*mode, choice)
            })
            .collect();
        self.problem.equalities.push(Equality {
            terms: choices.iter().map(|(_, choice)| (*choice, 1)).collect(),
            rhs: 1,
        });
        choices
    }

    fn add_bend(&mut self, run: &RunDemand, at: usize, choices: &[Vec<(Mode, usize)>]) {
        let (Some(piece), PieceShape::Bend { angle, .. }) = (
            run.pieces.get(at),
            run.pieces.get(at).map_or(&NO_SHAPE, |piece| &piece.shape),
        ) else {
            return;
        };
        let size = angle_thousandths(*angle);
        let family = self.family(family_key(piece));
        let before = at.checked_sub(1).and_then(|index| choices.get(index));
        let after = choices.get(at + 1);
        let options = |straight: Option<&Vec<(Mode, usize)>>, side: usize| -> Vec<i64> {
            let kept: BTreeSet<i64> = straight
                .into_iter()
                .flatten()
                .map(|(mode, _)| mode.on_bends[side])
                .chain([0])
                .collect();
            kept.into_iter().collect()
        };
        // The straight before keeps its second share on this bend, the one after its first.
        let (upstream, downstream) = (options(before, 1), options(after, 0));
        let mut variants: Vec<([i64; 2], usize)> = Vec::new();
        for legs in upstream
            .iter()
            .flat_map(|u| downstream.iter().map(move |d| [*u, *d]))
        {
            let class = self.class(family, size, legs);
            let neighbour = |index: Option<usize>, length: i64| {
                index
                    .filter(|_| length > 0)
                    .and_then(|index| run.pieces.get(index))
                    .map(|piece| serves(piece, length))
            };
            let mut all: Vec<Serves> = Vec::with_capacity(3);
            all.extend(neighbour(at.checked_sub(1), legs[0]));
            all.push(serves(piece, 0));
            all.extend(neighbour(Some(at + 1), legs[1]));
            let wanted = Wanted {
                class,
                serves: all,
                legs,
                component: None,
            };
            if upstream.len() == 1 && downstream.len() == 1 {
                self.want(wanted);
                return;
            }
            let choice = self.add_choice(0, Some(wanted), false);
            variants.push((legs, choice));
        }
        // It is one of them: that follows from the rest, but not one equality at a time.
        self.problem.equalities.push(Equality {
            terms: variants.iter().map(|(_, choice)| (*choice, 1)).collect(),
            rhs: 1,
        });
        for (straight, side, kept_at) in [(before, 1, 0), (after, 0, 1)] {
            let Some(straight) = straight.filter(|modes| !modes.is_empty()) else {
                continue;
            };
            for kept in options(Some(straight), side) {
                let of_bend = variants
                    .iter()
                    .filter(|(legs, _)| legs[kept_at] == kept)
                    .map(|(_, choice)| (*choice, 1));
                let of_straight = straight
                    .iter()
                    .filter(|(mode, _)| mode.on_bends[side] == kept)
                    .map(|(_, choice)| (*choice, -1));
                self.problem.equalities.push(Equality {
                    terms: of_bend.chain(of_straight).collect(),
                    rhs: 0,
                });
            }
        }
    }
}

const NO_SHAPE: PieceShape = PieceShape::Straight {
    length: Length::ZERO,
};

/// The other straights of the same tube, as parts of their own, thousandths of mm.
fn others(request: &StockRequest, piece: &PieceDemand) -> Vec<i64> {
    request
        .runs
        .iter()
        .flat_map(|run| &run.pieces)
        .filter(|other| other.mark != piece.mark && other.tube.is_same_as(&piece.tube))
        .filter_map(|other| cut_lengths(other).map(|lengths| lengths.own))
        .collect()
}

fn serves(piece: &PieceDemand, length: i64) -> Serves {
    Serves {
        mark: piece.mark.clone(),
        length: length_of(length),
    }
}

/// Lengths of a straight as cut, in thousandths of mm, by how it is made: only welds that are there
/// pull.
struct CutLengths {
    /// A part of its own: a weld at each end.
    own: i64,
    /// On the leg of the bend before it: a weld at its downstream end.
    on_leg_before: i64,
    /// On the leg of the bend after it: a weld at its upstream end.
    on_leg_after: i64,
    /// On both legs: one weld between them.
    shared: i64,
}

fn cut_lengths(piece: &PieceDemand) -> Option<CutLengths> {
    let PieceShape::Straight { length } = piece.shape else {
        return None;
    };
    let [upstream, downstream] = piece.pulls;
    let with = |pull: Length| length_thousandths(length + pull);
    Some(CutLengths {
        own: with(upstream + downstream),
        on_leg_before: with(downstream),
        on_leg_after: with(upstream),
        shared: with((upstream + downstream) * 0.5),
    })
}
