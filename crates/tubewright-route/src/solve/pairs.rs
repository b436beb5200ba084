//! Runs against each other, and a run against itself.

use tubewright_geometry::distance::{clearance_between, segment_to_segment};
use tubewright_geometry::{CentreLine, Point, math};

use super::chain::{Element, Laid};
use super::lines::ball;
use super::system::{Row, System, group, tube_of};

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
                let reach =
                    tube_of(self.ctx.problem, first.run).map_or(0.0, |t| math::PI * t.clr_mm + 1.0);
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
                        let found = if same {
                            apart_along(e, f, shift, reach, need + limit)
                        } else {
                            let t = clearance_between(&e.tube, &f.tube, 0.01);
                            let share = |s: f64, line: &CentreLine| {
                                (s / line.length().max(1e-9)).clamp(0.0, 1.0)
                            };
                            Some((
                                share(t.along_first_mm, &e.tube.line),
                                share(t.along_second_mm, &f.tube.line),
                                t.gap_mm + e.tube.radius + f.tube.radius,
                            ))
                        };
                        let Some((s, t, distance)) = found else {
                            continue;
                        };
                        let margin = distance - need;
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
                            ticks: 1,
                            group: group(200 + 16 * c + d, i, j),
                        });
                    }
                }
            }
        }
    }
}

/// Spacing of places compared along one run, mm.
const OWN_SPACING_MM: f64 = 8.0;

/// The nearest pair of places of two elements of one run that are further apart along it than
/// `reach`: shares and distance, understated by what the spacing may hide. Nothing where they are
/// further from each other than `most`.
fn apart_along(
    e: &Element,
    f: &Element,
    shift: f64,
    reach: f64,
    most: f64,
) -> Option<(f64, f64, f64)> {
    let (length_e, length_f) = (e.tube.line.length(), f.tube.line.length());
    let start = f.along + shift;
    if start + length_f - e.along <= reach {
        return None;
    }
    if let (CentreLine::Segment { a, b }, CentreLine::Segment { a: c, b: d }) =
        (e.tube.line, f.tube.line)
    {
        let pair = segment_to_segment(a, b, c, d);
        if pair.distance_mm >= most {
            return None;
        }
        let (s, t) = (pair.on_first, pair.on_second);
        // The nearest pair of all counts where it is far enough apart along the run itself.
        if start + t * length_f - e.along - s * length_e > reach {
            return Some((s, t, pair.distance_mm));
        }
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
    let (middle_f, half_f) = ball(&f.tube.line);
    let mut places_f: Vec<Point> = Vec::new();
    // What the spacing may hide shortens a distance at most to this.
    let sampled = |d: f64| (d * d + OWN_SPACING_MM * OWN_SPACING_MM).sqrt();
    let mut within = sampled(most);
    let mut best: Option<(f64, f64, f64)> = None;
    for i in 0..=count_e {
        let s = f64::from(i) / f64::from(count_e);
        let p = e.tube.line.at(s * length_e);
        if p.distance(middle_f) - half_f >= within {
            continue;
        }
        if places_f.is_empty() {
            places_f = (0..=count_f)
                .map(|j| f.tube.line.at(f64::from(j) / f64::from(count_f) * length_f))
                .collect();
        }
        let from = reach + e.along + s * length_e - start;
        for (j, q) in places_f.iter().enumerate() {
            let t = j as f64 / f64::from(count_f);
            if t * length_f <= from {
                continue;
            }
            let d = p.distance(*q);
            if d < within {
                within = d;
                best = Some((s, t, d));
            }
        }
    }
    best.map(|(s, t, d)| {
        let hidden = (d * d - OWN_SPACING_MM * OWN_SPACING_MM).max(0.0).sqrt();
        (s, t, hidden)
    })
}
