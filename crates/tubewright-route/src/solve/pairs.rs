//! Runs against each other, and a run against itself.

use tubewright_geometry::distance::clearance_between;
use tubewright_geometry::{CentreLine, TubeElement, math};

use super::chain::{Element, Laid};
use super::lines::{ball, clip};
use super::system::{Anchor, Chain, Row, System, Target, group, tube_of};

impl System<'_, '_> {
    /// Runs against each other, and a run against itself.
    pub(super) fn pair_rows(&self, laid: &[Laid], limit: f64, rows: &mut Vec<Row>) {
        let rules = &self.ctx.problem.rules;
        for (c, a) in laid.iter().enumerate() {
            for (d, b) in laid.iter().enumerate().skip(c) {
                let (Some(first), Some(second)) = (self.chains.get(c), self.chains.get(d)) else {
                    continue;
                };
                let same = first.run == second.run;
                let gap = if same {
                    rules.self_gap_mm
                } else {
                    rules.run_gap_mm
                };
                let reach = self.half_turn_mm(first);
                let meeting = self.meeting([(first, a), (second, b)]);
                // Along the run, what lies behind a crossover starts after what lies before it.
                let shift = if same && c != d { a.length } else { 0.0 };
                for (i, e) in a.elements.iter().enumerate() {
                    let from = if c == d { i + 1 } else { 0 };
                    for (j, f) in b.elements.iter().enumerate().skip(from) {
                        let (middle_e, half_e) = ball(&e.tube.line);
                        let (middle_f, half_f) = ball(&f.tube.line);
                        let far = middle_e.distance(middle_f) - half_e - half_f;
                        let need = e.tube.radius + f.tube.radius + gap;
                        if far - need >= limit {
                            continue;
                        }
                        let found = match &meeting {
                            _ if same => apart_along(e, f, shift, reach)
                                .map(|(s, t, distance)| (s, t, distance - need)),
                            Some(meeting) => {
                                let gap_mm = meeting.gap_mm.min(gap);
                                meeting.tightest([e, f], [gap, gap_mm])
                            }
                            None => {
                                let (s, t, bare) = bare(&e.tube, &f.tube);
                                let distance = bare + e.tube.radius + f.tube.radius;
                                Some((s, t, distance - need))
                            }
                        };
                        let Some((s, t, margin)) = found else {
                            continue;
                        };
                        if margin >= limit {
                            continue;
                        }
                        let p = e.tube.line.at(s * e.tube.line.length());
                        let q = f.tube.line.at(t * f.tube.line.length());
                        let Some(away) = (p - q).direction() else {
                            continue;
                        };
                        let mut gradient = vec![0.0; self.sizes.len()];
                        self.add_gradient(&mut gradient, (c, a), e, s, p, away.vector());
                        self.add_gradient(&mut gradient, (d, b), f, t, q, away * -1.0);
                        rows.push(Row {
                            margin,
                            gradient,
                            group: group(200 + 16 * c + d, i, j),
                        });
                    }
                }
            }
        }
    }
}

impl System<'_, '_> {
    /// Length along a chain within which it cannot turn back on itself, mm.
    fn half_turn_mm(&self, chain: &Chain) -> f64 {
        tube_of(self.ctx.problem, chain.run).map_or(0.0, |t| math::PI * t.clr_mm + 1.0)
    }

    /// Where two chains of different runs meet: at ports of one part that runs start from and end at. Runs that
    /// pass a crossover keep their gap everywhere.
    fn meeting(&self, both: [(&Chain, &Laid); 2]) -> Option<Meeting> {
        let [(first, _), (second, _)] = both;
        if first.run == second.run {
            return None;
        }
        let port_of = |(chain, laid): (&Chain, &Laid), crossover: usize| {
            let reach = self.half_turn_mm(chain);
            match (chain.start, chain.target) {
                (Anchor::Slides(n, local), _) if n == crossover => {
                    Some((local.origin.to_vector(), [0.0, reach]))
                }
                (_, Target::Slides(n, local, _)) if n == crossover => {
                    Some((local, [laid.length - reach, laid.length]))
                }
                _ => None,
            }
        };
        (0..self.ctx.problem.crossovers.len()).find_map(|crossover| {
            if self.ctx.problem.is_only_passed(crossover) {
                return None;
            }
            let [(p, near_p), (q, near_q)] =
                [port_of(both[0], crossover)?, port_of(both[1], crossover)?];
            let radius = |chain: &Chain| {
                tube_of(self.ctx.problem, chain.run).map_or(0.0, |tube| 0.5 * tube.od_mm)
            };
            let gap_mm = (p - q).norm() - radius(first) - radius(second) - PORTS_MM;
            Some(Meeting {
                near: [near_p, near_q],
                gap_mm,
            })
        })
    }
}

/// How much nearer than its ports tubes may come beside a part where runs meet, mm: arithmetic only.
const PORTS_MM: f64 = 0.1;

/// Two chains that come together at ports of one part: within half a turn of it, they need keep no more
/// room than the ports have between them.
struct Meeting {
    /// From where to where along each chain it is near.
    near: [[f64; 2]; 2],
    /// Gap between the tubes at the ports, mm.
    gap_mm: f64,
}

impl Meeting {
    /// Shares along two elements where their gap has the least over what it must be, and how much that is,
    /// mm; `gaps` must be kept away from the part and near it.
    fn tightest(&self, [e, f]: [&Element; 2], gaps: [f64; 2]) -> Option<(f64, f64, f64)> {
        let [near_e, near_f] = self.near;
        let mut best: Option<(f64, f64, f64)> = None;
        for (from_e, to_e, is_near_e) in split_at(e, near_e) {
            for (from_f, to_f, is_near_f) in split_at(f, near_f) {
                let part = |element: &Element, from: f64, to: f64| TubeElement {
                    line: clip(&element.tube.line, from, to),
                    ..element.tube
                };
                let (s, t, gap_mm) = bare(&part(e, from_e, to_e), &part(f, from_f, to_f));
                let margin = gap_mm - gaps[usize::from(is_near_e && is_near_f)];
                if best.is_none_or(|best| margin < best.2) {
                    let along = |from: f64, to: f64, share: f64| from + (to - from) * share;
                    best = Some((along(from_e, to_e, s), along(from_f, to_f, t), margin));
                }
            }
        }
        best
    }
}

/// Parts of an element, as shares of it, and whether each lies within a stretch of its chain.
fn split_at(element: &Element, [from, to]: [f64; 2]) -> Vec<(f64, f64, bool)> {
    let length = element.tube.line.length().max(1e-9);
    let share = |along: f64| ((along - element.along) / length).clamp(0.0, 1.0);
    let (a, z) = (share(from), share(to));
    let mut parts = vec![(0.0, a, false), (a, z, true), (z, 1.0, false)];
    parts.retain(|(from, to, _)| to > from);
    if parts.is_empty() {
        parts.push((0.0, 1.0, (from..=to).contains(&element.along)));
    }
    parts
}

/// Shares along two tubes where they are nearest, and the gap between them there, mm.
fn bare(e: &TubeElement, f: &TubeElement) -> (f64, f64, f64) {
    let t = clearance_between(e, f, 0.01);
    let share = |s: f64, line: &CentreLine| (s / line.length().max(1e-9)).clamp(0.0, 1.0);
    (
        share(t.along_first_mm, &e.line),
        share(t.along_second_mm, &f.line),
        t.gap_mm,
    )
}

/// Spacing of places compared along one run, mm.
const OWN_SPACING_MM: f64 = 8.0;

/// The nearest pair of places of two elements of one run that are further apart along it than
/// `reach`: shares and distance, understated by what the spacing may hide.
fn apart_along(e: &Element, f: &Element, shift: f64, reach: f64) -> Option<(f64, f64, f64)> {
    let (length_e, length_f) = (e.tube.line.length(), f.tube.line.length());
    let start = f.along + shift;
    if start + length_f - e.along <= reach {
        return None;
    }
    let count = |length: f64| -> u32 {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "a small positive count"
        )]
        let n = (length / OWN_SPACING_MM).ceil().clamp(1.0, 4000.0) as u32;
        n
    };
    let (count_e, count_f) = (count(length_e), count(length_f));
    let mut best: Option<(f64, f64, f64)> = None;
    for i in 0..=count_e {
        let s = f64::from(i) / f64::from(count_e);
        let p = e.tube.line.at(s * length_e);
        for j in 0..=count_f {
            let t = f64::from(j) / f64::from(count_f);
            if start + t * length_f - e.along - s * length_e <= reach {
                continue;
            }
            let d = p.distance(f.tube.line.at(t * length_f));
            if best.is_none_or(|b| d < b.2) {
                best = Some((s, t, d));
            }
        }
    }
    best.map(|(s, t, d)| {
        let hidden = (d * d - OWN_SPACING_MM * OWN_SPACING_MM).max(0.0).sqrt();
        (s, t, hidden)
    })
}
