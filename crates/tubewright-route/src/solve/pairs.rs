//! Runs against each other, and a run against itself.

use tubewright_geometry::CentreLine;
use tubewright_geometry::distance::clearance_between;
use tubewright_geometry::math;

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
                            apart_along(e, f, shift, reach)
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
