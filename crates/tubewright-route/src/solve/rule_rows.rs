//! Rules that are not gaps of tubes to bodies: zones of components, columns that tips keep out of, and
//! bodies of crossovers.

use tubewright_geometry::distance::clearance_between;
use tubewright_geometry::{Point, TubeElement, UnitVector, math};

use super::chain::{Laid, Part};
use super::descend::HOLDS_MM;
use super::lines::{ball, clip};
use super::slides::{Pose, out_of_column};
use super::system::{Anchor, Row, System, Target, group, tube_of};
use crate::problem::PartPose;

impl System<'_, '_> {
    /// Ends with room against the columns that they must keep out of.
    pub(super) fn column_rows(&self, x: &[f64], limit: f64, rows: &mut Vec<Row>) {
        let poses = self.poses(x);
        for (c, chain) in self.chains.iter().enumerate() {
            let Target::Slides(number, ..) = chain.target else {
                continue;
            };
            let Some(slide) = self.ctx.slides.all.get(number) else {
                continue;
            };
            let (place, _) = chain.target.at(&self.ctx.slides, &poses);
            for (k, column) in slide.columns.iter().enumerate() {
                let (margin, out) = out_of_column(column, place);
                if margin >= limit {
                    continue;
                }
                let mut gradient = vec![0.0; self.sizes.len()];
                self.add_pose_gradient(&mut gradient, number, out);
                rows.push(Row {
                    margin,
                    gradient,
                    group: group(4000 + c, number, k),
                });
            }
        }
    }

    pub(super) fn zone_rows(&self, c: usize, laid: &Laid, rows: &mut Vec<Row>) {
        for &(joint, component, from, to) in &laid.components {
            let Some(zone) = self
                .ctx
                .problem
                .components
                .get(component)
                .and_then(|k| k.zone)
            else {
                continue;
            };
            let Some(element) = laid
                .elements
                .iter()
                .find(|e| !e.is_slot && e.index == joint && e.part == Part::Tube)
            else {
                continue;
            };
            for place in [from, to] {
                for axis in [UnitVector::X, UnitVector::Y, UnitVector::Z] {
                    let at = axis.dot(place.to_vector());
                    let (lo, hi) = (
                        axis.dot(zone.min.to_vector()),
                        axis.dot(zone.max.to_vector()),
                    );
                    // Inside by more than an overrun that still counts as kept.
                    let within = (2.0 * HOLDS_MM).min(0.25 * (hi - lo));
                    for (sign, limit) in [(1.0, lo + within), (-1.0, hi - within)] {
                        let mut gradient = vec![0.0; self.sizes.len()];
                        self.add_gradient(
                            &mut gradient,
                            (c, laid),
                            element,
                            0.0,
                            place,
                            axis * sign,
                        );
                        rows.push(Row {
                            margin: sign * (at - limit),
                            gradient,
                            group: group(100 + c, joint, 0),
                        });
                    }
                }
            }
        }
    }

    /// Bodies of crossovers against bodies of the car, and runs against bodies of crossovers.
    pub(super) fn crossover_rows(&self, x: &[f64], laid: &[Laid], limit: f64, rows: &mut Vec<Row>) {
        let problem = self.ctx.problem;
        let mut contacts = Vec::new();
        let poses = self.poses(x);
        for (k, crossover) in problem.crossovers.iter().enumerate() {
            let part = poses.get(k).map_or(PartPose::at(Point::ORIGIN), Pose::part);
            for (b, bar) in crossover.body.iter().enumerate() {
                let tube = part.bar(bar);
                contacts.clear();
                if !crossover.stands {
                    self.ctx.room.near(&tube, limit, &mut contacts);
                }
                for contact in &contacts {
                    let mut gradient = vec![0.0; self.sizes.len()];
                    self.add_part_gradient(&mut gradient, (k, &poses), contact.place, contact.away);
                    rows.push(Row {
                        margin: contact.margin,
                        gradient,
                        group: group(1000 + k, b, contact.body),
                    });
                }
                for (c, chain) in laid.iter().enumerate() {
                    let Some(plan) = self.chains.get(c) else {
                        continue;
                    };
                    let own = problem.runs.get(plan.run).is_some_and(|r| r.meets(k));
                    let reach =
                        tube_of(problem, plan.run).map_or(0.0, |t| math::PI * t.clr_mm + 1.0);
                    let (from, to) = match (own, plan.start) {
                        (false, _) => (0.0, chain.length),
                        (true, Anchor::Slides(n, _)) if n == k => (reach, chain.length),
                        (true, _) => (0.0, chain.length - reach),
                    };
                    for (e, element) in chain.elements.iter().enumerate() {
                        let length = element.tube.line.length();
                        let a = ((from - element.along) / length).max(0.0);
                        let z = ((to - element.along) / length).min(1.0);
                        if z <= a {
                            continue;
                        }
                        let clipped = TubeElement {
                            line: clip(&element.tube.line, a, z),
                            ..element.tube
                        };
                        let (m, h) = ball(&clipped.line);
                        let (m2, h2) = ball(&tube.line);
                        let need = clipped.radius + tube.radius + problem.rules.self_gap_mm;
                        if m.distance(m2) - h - h2 - need >= limit {
                            continue;
                        }
                        let found = clearance_between(&clipped, &tube, 0.01);
                        let margin = found.gap_mm - problem.rules.self_gap_mm;
                        let Some(away) = (found.on_first - found.on_second).direction() else {
                            continue;
                        };
                        if margin >= limit {
                            continue;
                        }
                        let share = a + found.along_first_mm / length;
                        let mut gradient = vec![0.0; self.sizes.len()];
                        self.add_gradient(
                            &mut gradient,
                            (c, chain),
                            element,
                            share,
                            found.on_first,
                            away.vector(),
                        );
                        self.add_part_gradient(
                            &mut gradient,
                            (k, &poses),
                            found.on_second,
                            away * -1.0,
                        );
                        rows.push(Row {
                            margin,
                            gradient,
                            group: group(2000 + 16 * c + k, e, b),
                        });
                    }
                }
            }
        }
    }
}
