//! Which parts no plan holds together, for their choices exclude each other.

use super::problem::{CuttingProblem, Equality};

/// What the equalities of the choices say about the parts that they ask for.
pub(crate) struct Conflicts {
    /// Most of each part that any set of choices can need: a pattern with more is not proper.
    pub(crate) caps: Vec<u32>,
    /// By part, whether it and another are never needed in the same plan.
    excluded: Vec<Vec<bool>>,
    /// By choice, of which only one in each of these sets is ever chosen.
    sets: Vec<usize>,
}

impl Conflicts {
    pub(crate) fn of(problem: &CuttingProblem) -> Self {
        let apart = choices_apart(problem);
        let mut askers: Vec<Vec<usize>> = vec![Vec::new(); problem.parts.len()];
        for (index, choice) in problem.choices.iter().enumerate() {
            for (part, _) in &choice.needs {
                askers[*part].push(index);
            }
        }
        let only_chosen = |part: usize| problem.parts[part].count == 0 && !askers[part].is_empty();
        let excludes = |a: usize, b: usize| {
            a != b
                && only_chosen(a)
                && only_chosen(b)
                && askers[a]
                    .iter()
                    .all(|x| askers[b].iter().all(|y| apart[*x][*y]))
        };
        let parts = 0..problem.parts.len();
        let excluded = parts
            .clone()
            .map(|a| parts.clone().map(|b| excludes(a, b)).collect())
            .collect();
        let mut conflicts = Self {
            caps: Vec::new(),
            excluded,
            sets: exclusive_sets(&apart),
        };
        conflicts.caps = parts
            .map(|part| conflicts.most_needed(problem, |other| other == part))
            .collect();
        conflicts
    }

    /// No plan needs more of these parts together.
    pub(crate) fn most_needed(
        &self,
        problem: &CuttingProblem,
        is_one: impl Fn(usize) -> bool,
    ) -> u32 {
        let always = problem
            .parts
            .iter()
            .enumerate()
            .filter(|(part, _)| is_one(*part));
        let mut chosen = vec![0u32; self.sets.len()];
        for (choice, set) in problem.choices.iter().zip(&self.sets) {
            let needs = choice.needs.iter().filter(|(part, _)| is_one(*part));
            let needed = needs.fold(0u32, |sum, (_, count)| sum.saturating_add(*count));
            chosen[*set] = chosen[*set].max(needed);
        }
        always
            .map(|(_, part)| part.count)
            .chain(chosen)
            .fold(0, u32::saturating_add)
    }

    /// Whether no plan needs both.
    pub(crate) fn exclude(&self, a: usize, b: usize) -> bool {
        self.excluded
            .get(a)
            .and_then(|with| with.get(b))
            .copied()
            .unwrap_or(false)
    }
}

/// Sets of choices of which each excludes every other, by choice: gathered one choice after the other, so that
/// there may be more of them than need be.
fn exclusive_sets(apart: &[Vec<bool>]) -> Vec<usize> {
    let mut sets: Vec<Vec<usize>> = Vec::new();
    (0..apart.len())
        .map(|choice| {
            let fits = |set: &Vec<usize>| set.iter().all(|other| apart[choice][*other]);
            let at = sets.iter().position(fits).unwrap_or(sets.len());
            if at == sets.len() {
                sets.push(Vec::new());
            }
            sets[at].push(choice);
            at
        })
        .collect()
}

/// By choice, which others cannot be chosen with it: it is chosen, and what the equalities then leave open is
/// followed up, one equality at a time, by the least and the most that each can still come to
/// (propagation of bounds, common practice, no source).
fn choices_apart(problem: &CuttingProblem) -> Vec<Vec<bool>> {
    let count = problem.choices.len();
    let mut of_choice: Vec<Vec<usize>> = vec![Vec::new(); count];
    for (row, equality) in problem.equalities.iter().enumerate() {
        for (choice, _) in &equality.terms {
            of_choice[*choice].push(row);
        }
    }
    let mut apart = vec![vec![false; count]; count];
    for choice in 0..count {
        let mut known: Vec<Option<bool>> = vec![None; count];
        known[choice] = Some(true);
        let mut open: Vec<usize> = of_choice[choice].clone();
        while let Some(row) = open.pop() {
            for settled in settle(&problem.equalities[row], &mut known) {
                open.extend(&of_choice[settled]);
            }
        }
        for (other, is_chosen) in known.iter().enumerate() {
            if other != choice && *is_chosen == Some(false) {
                apart[choice][other] = true;
                apart[other][choice] = true;
            }
        }
    }
    apart
}

/// Settles what the equality leaves no freedom; returns those choices.
fn settle(equality: &Equality, known: &mut [Option<bool>]) -> Vec<usize> {
    let (mut least, mut most) = (0, 0);
    for (choice, coefficient) in &equality.terms {
        match known[*choice] {
            Some(true) => {
                least += coefficient;
                most += coefficient;
            }
            Some(false) => {}
            None => {
                least += (*coefficient).min(0);
                most += (*coefficient).max(0);
            }
        }
    }
    let mut settled = Vec::new();
    for (choice, coefficient) in &equality.terms {
        if known[*choice].is_some() {
            continue;
        }
        // Chosen or not chosen would lead out of what can be reached.
        let size = coefficient.abs();
        let (is_too_much, is_too_little) =
            (least + size > equality.rhs, most - size < equality.rhs);
        let value = match (is_too_much, is_too_little) {
            (true, _) => *coefficient < 0,
            (_, true) => *coefficient > 0,
            _ => continue,
        };
        known[*choice] = Some(value);
        settled.push(*choice);
    }
    settled
}
