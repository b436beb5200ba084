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

    pub(super) fn add_run(&mut self, run: &RunDemand, request: &StockRequest) {
        let modes: Vec<Vec<Mode>> = (0..run.pieces.len())
            .map(|at| self.modes(run, at, request.rules.least_leg))
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

    fn add_choice(&mut self, cost: i64, wanted: Option<Wanted>) -> usize {
        let needs = wanted.iter().map(|wanted| (wanted.class, 1)).collect();
        self.problem.choices.push(Choice { cost, needs });
        self.choice_wanted.push(wanted);
        self.choice_wanted.len() - 1
    }

    /// The ways to make a straight: a part of its own, on the leg of the bend before or after it,
    /// or shared by both legs. Empty for other pieces.
    fn modes(&self, run: &RunDemand, at: usize, least_leg: Length) -> Vec<Mode> {
        let Some(piece) = run.pieces.get(at) else {
            return Vec::new();
        };
        let Some(lengths) = cut_lengths(piece) else {
            return Vec::new();
        };
        let legs_beside = |neighbour: Option<usize>| {
            neighbour
                .and_then(|index| run.pieces.get(index))
                .filter(|bend| matches!(bend.shape, PieceShape::Bend { .. }))
                .filter(|bend| bend.tube.is_same_as(&piece.tube))
                .and_then(|bend| self.families.get(&family_key(bend)))
                .map(|family| self.legs_of(*family))
                .unwrap_or_default()
        };
        let before = legs_beside(at.checked_sub(1));
        let after = legs_beside(Some(at + 1));
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
        // Shared: one of the two legs is used whole, else the split could be moved until it is.
        let least = length_thousandths(least_leg).max(1);
        let splits = before
            .iter()
            .map(|leg| [*leg, lengths.shared - leg])
            .chain(after.iter().map(|leg| [lengths.shared - leg, *leg]));
        for [a, b] in splits {
            if a >= least && b >= least && a <= longest_before && b <= longest_after {
                shares.insert([a, b]);
            }
        }
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
                // A part of its own has one joint more than a leg that serves.
                let choice = if mode.is_own_part {
                    self.add_choice(weld_cost, Some(own.clone()))
                } else {
                    self.add_choice(0, None)
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
            let choice = self.add_choice(0, Some(wanted));
            variants.push((legs, choice));
        }
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
