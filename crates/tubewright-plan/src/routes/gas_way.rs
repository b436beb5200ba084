//! Which runs lead to which, where they end in one part and start from it.

use std::collections::BTreeSet;
use tubewright_build::model::{Build, RunEnd};

use super::planned::PlannedRun;

/// The parts that a run starts from and ends at.
#[derive(Clone, Debug)]
struct Link {
    from: Option<String>,
    to: Option<String>,
}

/// The way of the gas through runs, by their numbers. A crossover that two runs pass is no part of it: each of
/// them goes on as itself.
#[derive(Clone, Debug)]
pub(crate) struct GasWay {
    links: Vec<Link>,
}

impl GasWay {
    /// Of the runs as the build has them.
    pub(crate) fn of_build(build: &Build) -> Self {
        let part = |end: &RunEnd| match end {
            RunEnd::Port { component, .. } => Some(component.to_string()),
            RunEnd::End(_) => None,
        };
        let links = build.runs.iter().map(|run| Link {
            from: part(&run.from),
            to: part(&run.to),
        });
        Self {
            links: links.collect(),
        }
    }

    /// Of planned runs.
    pub(crate) fn of_runs<'a>(runs: impl IntoIterator<Item = &'a PlannedRun>) -> Self {
        let links = runs.into_iter().map(|run| Link {
            from: run.starts_on.clone(),
            to: run.ends_on.clone(),
        });
        Self {
            links: links.collect(),
        }
    }

    /// Runs that lead to where this one starts.
    pub(crate) fn before(&self, run: usize) -> Vec<usize> {
        let from = self.links.get(run).and_then(|link| link.from.as_ref());
        self.with(|link| from.is_some() && link.to.as_ref() == from)
    }

    /// Runs that start where this one ends.
    fn behind(&self, run: usize) -> Vec<usize> {
        let to = self.links.get(run).and_then(|link| link.to.as_ref());
        self.with(|link| to.is_some() && link.from.as_ref() == to)
    }

    fn with(&self, does: impl Fn(&Link) -> bool) -> Vec<usize> {
        let found = self.links.iter().enumerate().filter(|(_, link)| does(link));
        found.map(|(number, _)| number).collect()
    }

    /// Whether all gas that comes to a run has passed one of which this is true.
    pub(crate) fn all_before(&self, run: usize, has: &dyn Fn(usize) -> bool) -> bool {
        self.all(run, has, &Self::before, self.links.len())
    }

    /// Whether all gas of a run goes on through one of which this is true.
    pub(crate) fn all_behind(&self, run: usize, has: &dyn Fn(usize) -> bool) -> bool {
        self.all(run, has, &Self::behind, self.links.len())
    }

    /// `most` keeps runs that lead back to themselves from being followed for ever.
    fn all(
        &self,
        run: usize,
        has: &dyn Fn(usize) -> bool,
        next: &dyn Fn(&Self, usize) -> Vec<usize>,
        most: usize,
    ) -> bool {
        let next_ones = next(self, run);
        most > 0
            && !next_ones.is_empty()
            && next_ones
                .into_iter()
                .all(|run| has(run) || self.all(run, has, next, most - 1))
    }

    /// Whether gas that has gone through a run may come to it again.
    pub(crate) fn leads_back(&self, run: usize) -> bool {
        let mut seen = BTreeSet::new();
        let mut open = vec![run];
        while let Some(at) = open.pop() {
            let ahead = self.behind(at).into_iter();
            open.extend(ahead.filter(|next| seen.insert(*next)));
        }
        seen.contains(&run)
    }

    /// A run with those that are joined to it, directly or by way of others.
    pub(crate) fn joined(&self, run: usize) -> BTreeSet<usize> {
        let mut joined = BTreeSet::from([run]);
        let mut open = vec![run];
        while let Some(of) = open.pop() {
            let Some(link) = self.links.get(of) else {
                continue;
            };
            let parts: Vec<&String> = [&link.from, &link.to].into_iter().flatten().collect();
            let meets = |other: &Link| {
                let theirs = [&other.from, &other.to];
                theirs
                    .into_iter()
                    .flatten()
                    .any(|part| parts.contains(&part))
            };
            for other in self.with(meets) {
                if joined.insert(other) {
                    open.push(other);
                }
            }
        }
        joined
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn way(links: &[(&str, &str)]) -> GasWay {
        let part = |name: &str| (!name.is_empty()).then(|| name.to_owned());
        GasWay {
            links: links
                .iter()
                .map(|(from, to)| Link {
                    from: part(from),
                    to: part(to),
                })
                .collect(),
        }
    }

    /// Two banks into one pipe, a cone, a tail; and a run of its own.
    fn two_into_one() -> GasWay {
        way(&[("cone", ""), ("", "Y"), ("", "Y"), ("Y", "cone"), ("", "")])
    }

    #[test]
    fn what_both_banks_have_the_tail_has_and_what_one_has_it_has_not() {
        let way = two_into_one();
        assert!(way.all_before(0, &|run| run == 1 || run == 2));
        assert!(!way.all_before(0, &|run| run == 1));
        assert!(way.all_before(0, &|run| run == 3));
        assert!(!way.all_before(4, &|_| true));
        assert!(way.all_behind(1, &|run| run == 0));
        assert!(!way.all_behind(0, &|_| true));
    }

    #[test]
    fn what_is_joined_is_so_from_every_run() {
        let way = two_into_one();
        for run in 0..4 {
            assert_eq!(way.joined(run), BTreeSet::from([0, 1, 2, 3]));
        }
        assert_eq!(way.joined(4), BTreeSet::from([4]));
    }

    #[test]
    fn a_way_that_leads_back_ends() {
        let round = way(&[("A", "B"), ("B", "A")]);
        assert!(!round.all_before(0, &|_| false));
        assert!(round.leads_back(0) && round.leads_back(1));
        assert!((0..5).all(|run| !two_into_one().leads_back(run)));
        assert!(way(&[("A", "A")]).leads_back(0));
        assert_eq!(round.joined(0).len(), 2);
    }
}
