//! Bounded searches along one bend or two: the answer is a lower bound within a promised tolerance.
//!
//! A bend's stretch lies within the slack of its chord and the chord within the slack of the stretch,
//! so the chord's exact distance `d` gives `d - slack <= true <= d + slack`. Stretches that cannot
//! beat the best upper bound by more than the tolerance are left with their lower bound, the others
//! are halved; the slack falls fourfold each time. Nothing is sampled, so nothing thin is missed.

use super::hit::Hit;
use super::segment_segment::{SegmentPair, segment_to_segment};
use super::stretch::{Stretch, all_stretches};
use crate::tube::CentreLine;
use crate::vector::Point;

/// Below this slack in mm an undecided predicate says "too near", which errs to the safe side.
const UNDECIDED_MM: f64 = 1e-7;

/// Nearest place of a centre line to a body.
#[derive(Clone, Copy, Debug)]
pub(super) struct Nearest {
    /// Lower bound of the distance in mm, at most the tolerance below the true one.
    pub(super) low_mm: f64,
    /// Distance along the centre line.
    pub(super) along_mm: f64,
    pub(super) on_body: Point,
    pub(super) part: Option<usize>,
}

struct Search<'a, Q> {
    query: Q,
    tolerance_mm: f64,
    upper_mm: f64,
    low_mm: f64,
    best: Option<(Stretch, Hit)>,
    line: &'a CentreLine,
}

/// The place of `line` nearest to what `query(a, b, limit)` measures from a segment; `None` when
/// nothing is nearer than `limit_mm`. `query` is exact below its limit, else at least the limit.
pub(super) fn nearest_along(
    line: &CentreLine,
    tolerance_mm: f64,
    limit_mm: f64,
    query: impl Fn(Point, Point, f64) -> Hit,
) -> Option<Nearest> {
    let mut search = Search {
        query,
        tolerance_mm,
        upper_mm: limit_mm,
        low_mm: f64::INFINITY,
        best: None,
        line,
    };
    all_stretches(line, |stretch| {
        search.explore(stretch);
        true
    });
    search.finish()
}

impl<Q: Fn(Point, Point, f64) -> Hit> Search<'_, Q> {
    fn explore(&mut self, stretch: &Stretch) {
        let chord = stretch.chord();
        // Until something is found below the caller's limit, nothing is given away to the tolerance:
        // "none" must mean "none below the limit".
        let given_away = self.best.map_or(0.0, |_| self.tolerance_mm);
        let limit = self.upper_mm - given_away.min(chord.slack_mm) + chord.slack_mm;
        let hit = (self.query)(chord.a, chord.b, limit);
        let low = (hit.distance_mm - chord.slack_mm).max(0.0);
        if hit.distance_mm >= limit {
            self.low_mm = self.low_mm.min(low);
            return;
        }
        let high = hit.distance_mm + chord.slack_mm;
        let at_the_limit =
            self.best.is_none() && low < self.upper_mm && high - low <= self.tolerance_mm;
        if high < self.upper_mm || at_the_limit {
            self.upper_mm = high;
            self.best = Some((*stretch, hit));
        }
        let given_away = self.best.map_or(0.0, |_| self.tolerance_mm);
        match stretch.halves() {
            Some([first, second]) if low < self.upper_mm - given_away => {
                if hit.fraction <= 0.5 {
                    self.explore(&first);
                    self.explore(&second);
                } else {
                    self.explore(&second);
                    self.explore(&first);
                }
            }
            _ => self.low_mm = self.low_mm.min(low),
        }
    }

    fn finish(self) -> Option<Nearest> {
        let (stretch, hit) = self.best?;
        Some(Nearest {
            low_mm: self.low_mm.min(self.upper_mm),
            along_mm: stretch
                .along_mm(hit.fraction)
                .clamp(0.0, self.line.length()),
            on_body: hit.on_body,
            part: hit.part,
        })
    }
}

/// True when no place of `line` is nearer than `need_mm`, decided without knowing the distance.
/// `within(a, b, limit)` says whether the body is nearer than the limit to a segment.
pub(super) fn keeps_off(
    line: &CentreLine,
    need_mm: f64,
    within: &impl Fn(Point, Point, f64) -> bool,
) -> bool {
    fn stretch_keeps_off(
        stretch: &Stretch,
        need_mm: f64,
        within: &impl Fn(Point, Point, f64) -> bool,
    ) -> bool {
        let chord = stretch.chord();
        if !within(chord.a, chord.b, need_mm + chord.slack_mm) {
            return true;
        }
        if chord.slack_mm < UNDECIDED_MM || within(chord.a, chord.b, need_mm - chord.slack_mm) {
            return false;
        }
        stretch.halves().is_some_and(|halves| {
            halves
                .iter()
                .all(|half| stretch_keeps_off(half, need_mm, within))
        })
    }
    all_stretches(line, |stretch| stretch_keeps_off(stretch, need_mm, within))
}

/// Nearest places of two centre lines.
#[derive(Clone, Copy, Debug)]
pub(super) struct NearestPair {
    pub(super) low_mm: f64,
    pub(super) along_first_mm: f64,
    pub(super) along_second_mm: f64,
}

struct PairSearch {
    tolerance_mm: f64,
    upper_mm: f64,
    low_mm: f64,
    best: Option<(Stretch, Stretch, SegmentPair)>,
}

/// The nearest places of two centre lines; `None` when none are nearer than `limit_mm`.
pub(super) fn nearest_of_two(
    first: &CentreLine,
    second: &CentreLine,
    tolerance_mm: f64,
    limit_mm: f64,
) -> Option<NearestPair> {
    let mut search = PairSearch {
        tolerance_mm,
        upper_mm: limit_mm,
        low_mm: f64::INFINITY,
        best: None,
    };
    all_stretches(first, |a| {
        all_stretches(second, |b| {
            search.explore(a, b);
            true
        })
    });
    let (a, b, pair) = search.best?;
    Some(NearestPair {
        low_mm: search.low_mm.min(search.upper_mm),
        along_first_mm: a.along_mm(pair.on_first).clamp(0.0, first.length()),
        along_second_mm: b.along_mm(pair.on_second).clamp(0.0, second.length()),
    })
}

/// The wider of the two halved.
fn halved(
    a: &Stretch,
    b: &Stretch,
    (slack_a, slack_b): (f64, f64),
) -> Option<[(Stretch, Stretch); 2]> {
    if slack_a >= slack_b {
        a.halves().map(|halves| halves.map(|half| (half, *b)))
    } else {
        b.halves().map(|halves| halves.map(|half| (*a, half)))
    }
}

impl PairSearch {
    fn explore(&mut self, a: &Stretch, b: &Stretch) {
        let (chord_a, chord_b) = (a.chord(), b.chord());
        let slack = chord_a.slack_mm + chord_b.slack_mm;
        let pair = segment_to_segment(chord_a.a, chord_a.b, chord_b.a, chord_b.b);
        let low = (pair.distance_mm - slack).max(0.0);
        let high = pair.distance_mm + slack;
        let at_the_limit =
            self.best.is_none() && low < self.upper_mm && high - low <= self.tolerance_mm;
        if high < self.upper_mm || at_the_limit {
            self.upper_mm = high;
            self.best = Some((*a, *b, pair));
        }
        let given_away = self.best.map_or(0.0, |_| self.tolerance_mm);
        if low >= self.upper_mm - given_away {
            self.low_mm = self.low_mm.min(low);
            return;
        }
        match halved(a, b, (chord_a.slack_mm, chord_b.slack_mm)) {
            Some([first, second]) => {
                self.explore(&first.0, &first.1);
                self.explore(&second.0, &second.1);
            }
            None => self.low_mm = self.low_mm.min(low),
        }
    }
}

/// True when no two places of the centre lines are nearer than `need_mm`.
pub(super) fn keep_apart(first: &CentreLine, second: &CentreLine, need_mm: f64) -> bool {
    fn apart(a: &Stretch, b: &Stretch, need_mm: f64) -> bool {
        let (chord_a, chord_b) = (a.chord(), b.chord());
        let slack = chord_a.slack_mm + chord_b.slack_mm;
        let distance = segment_to_segment(chord_a.a, chord_a.b, chord_b.a, chord_b.b).distance_mm;
        if distance - slack >= need_mm {
            return true;
        }
        if slack < UNDECIDED_MM || distance + slack < need_mm {
            return false;
        }
        halved(a, b, (chord_a.slack_mm, chord_b.slack_mm))
            .is_some_and(|halves| halves.iter().all(|(p, q)| apart(p, q, need_mm)))
    }
    all_stretches(first, |a| all_stretches(second, |b| apart(a, b, need_mm)))
}
