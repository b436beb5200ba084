//! Parts where runs meet while they are shifted and turned: where their ports lie, and how these move.

use tubewright_geometry::{Point, UnitVector, Vector};

use super::chain::{Screw, Stance};
use super::slides::{AXES, Pose};
use super::system::{Row, System, group};
use crate::problem::PartPose;

impl System<'_, '_> {
    /// The axes of a crossover's three turns as it lies; none where they are held.
    pub(super) fn part_axes(&self, number: usize, poses: &[Pose]) -> [Vector; 3] {
        let slide = self.ctx.slides.all.get(number);
        match (slide, poses.get(number)) {
            (Some(slide), Some(pose)) if !slide.is_turn_held() => pose.part().turn.axes(),
            _ => [Vector::ZERO; 3],
        }
    }

    /// The same for a place that a crossover carries.
    pub(super) fn add_part_gradient(
        &self,
        gradient: &mut [f64],
        (number, poses): (usize, &[Pose]),
        place: Point,
        weight: Vector,
    ) {
        self.add_pose_gradient(gradient, number, weight);
        let Some(pose) = poses.get(number) else {
            return;
        };
        let arm = place - pose.part().origin;
        let first = self.pose_index(number) + 3;
        for (k, axis) in self.part_axes(number, poses).into_iter().enumerate() {
            if let Some(slot) = gradient.get_mut(first + k) {
                *slot += axis.cross(arm).dot(weight);
            }
        }
    }

    /// Ports of crossovers that may turn against the room that they must lie in.
    pub(super) fn room_rows(&self, x: &[f64], limit: f64, rows: &mut Vec<Row>) {
        let poses = self.poses(x);
        for (k, crossover) in self.ctx.problem.crossovers.iter().enumerate() {
            let (Some(room), Some(pose)) = (crossover.ports_within, poses.get(k)) else {
                continue;
            };
            let part = pose.part();
            let places = [&crossover.left, &crossover.right]
                .into_iter()
                .flat_map(|ports| [ports.inlet, ports.outlet]);
            for (number, local) in places.enumerate() {
                let place = part.place(local);
                for (axis, along) in AXES.into_iter().enumerate() {
                    let at = along.dot(place.to_vector());
                    let sides = [(1.0, room.min), (-1.0, room.max)];
                    for (side, (sign, corner)) in sides.into_iter().enumerate() {
                        let margin = sign * (at - along.dot(corner.to_vector()));
                        if margin >= limit {
                            continue;
                        }
                        let mut gradient = vec![0.0; self.sizes.len()];
                        self.add_part_gradient(&mut gradient, (k, &poses), place, along * sign);
                        rows.push(Row {
                            margin,
                            gradient,
                            group: group(3000 + k, number, 2 * axis + side),
                        });
                    }
                }
            }
        }
    }
}

/// A port of a part as it lies there: upright, however the part is rolled.
pub(super) fn on_part(local: Stance, part: &PartPose) -> Stance {
    let place = part.place(local.origin.to_vector());
    if part.turn.is_none() {
        return Stance {
            origin: place,
            ..local
        };
    }
    Stance::upright(place, UnitVector::from_unit(part.turn.vector(local.travel)))
}

/// Two directions across another and each other.
pub(super) fn normals(direction: UnitVector) -> [Vector; 2] {
    let u = direction.any_normal();
    [u.vector(), direction.vector().cross(u.vector())]
}

/// What keeps twelve o'clock of a port the highest place of it while its part turns about an axis: a spin about its own
/// line.
pub(super) fn kept_upright(port: &Stance, axis: Vector) -> Screw {
    let three = port.travel.cross(port.twelve);
    // Three o'clock stays level; a port that looks straight up or down has no highest place to keep.
    if port.twelve.z.abs() < 1e-3 {
        return Screw::NONE;
    }
    let spin = axis.cross(three).z / port.twelve.z;
    Screw::turn(port.travel * spin, port.origin)
}

#[cfg(test)]
mod tests {
    use tubewright_geometry::{Frame, Solid};

    use super::super::layout::{Joint, Layout, Slot};
    use super::super::system::{Chain, Context};
    use super::*;
    use crate::CostModel;
    use crate::form::read_problem;
    use crate::problem::{
        Bar, Body, BodyKind, Crossover, Passage, Ports, Region, RouteProblem, Side, Turn, TurnRoom,
    };

    /// Two runs that end at a turned merge and one that leaves it, near to a bar.
    fn meeting() -> RouteProblem {
        let text = include_str!("../../tests/problems/a04-skew.json");
        let (mut problem, _) = read_problem(text).unwrap();
        let ports = |side: f64| Ports {
            inlet: Vector::new(0.0, 38.0 * side, 4.0),
            inlet_direction: Vector::new(0.9, -0.3 * side, 0.1).direction().unwrap(),
            outlet: Vector::new(160.0, 6.0, -5.0),
            outlet_direction: Vector::new(0.95, 0.1, 0.2).direction().unwrap(),
        };
        let (left, right) = (ports(-1.0), ports(1.0));
        let room = |low: f64, high: f64| Region {
            min: Point::new(low, low, low),
            max: Point::new(high, high, high),
        };
        problem.crossovers = vec![Crossover {
            id: "Y".into(),
            stands: false,
            turns: TurnRoom::about(
                Turn::NONE,
                Turn {
                    right_rad: 0.4,
                    up_rad: 0.4,
                    roll_rad: 0.4,
                },
            ),
            ports_within: Some(room(-400.0, 400.0)),
            poses: room(-900.0, 900.0),
            body: [&left, &right]
                .map(|ports| Bar {
                    a: ports.inlet,
                    b: ports.outlet,
                    radius_mm: 31.0,
                })
                .to_vec(),
            left,
            right,
        }];
        problem.workspace = None;
        problem.bodies = vec![Body {
            id: "bar".into(),
            solid: Solid::Capsule {
                a: Point::new(300.0, -500.0, 130.0),
                b: Point::new(310.0, 500.0, 120.0),
                radius: 20.0,
            },
            gap_mm: 10.0,
            kind: BodyKind::Car,
        }];
        let bank = problem.runs[0].clone();
        let met = |side| Some(Passage { crossover: 0, side });
        let mut runs = vec![bank.clone(), bank.clone(), bank];
        runs[0].ends_at = met(Side::Left);
        runs[1].ends_at = met(Side::Right);
        runs[1].start = Frame::upright(Point::new(-500.0, 200.0, 40.0), UnitVector::X);
        runs[2].starts_at = met(Side::Left);
        problem.runs = runs;
        problem
    }

    /// Every derivative that the search goes by is what a small change does.
    #[test]
    fn derivatives_are_what_a_small_change_does() {
        let problem = meeting();
        let cost = CostModel::route_problem(8.0, 3.0, 0.05, 6.0);
        let ctx = Context::new(&problem, &cost);
        let layout = Layout {
            joints: vec![
                Joint::Bend {
                    stock: 0,
                    exact: false
                };
                2
            ],
            slots: vec![Slot::Bought; 3],
        };
        let chains: Vec<Chain> = (0..3)
            .map(|run| Chain {
                run,
                start: ctx.start_anchor(run),
                target: ctx.end_target(run),
                layout: layout.clone(),
            })
            .collect();
        let system = System::new(&ctx, chains);
        let of_chain = [120.0, 0.4, 0.7, 90.0, 0.3, -2.0, 110.0];
        let of_part = [250.0, 20.0, 60.0, 0.21, -0.17, 0.3];
        let x: Vec<f64> = [of_chain; 3].concat().into_iter().chain(of_part).collect();
        assert_eq!(x.len(), system.sizes.len());
        let laid = system.lay(&x);
        let closure = system.closure_rows(&x, &laid);
        let limit = 1e4;
        let rows = system.rows(&x, &laid, limit);
        let first = system.pose_index(0);
        let mut seen = 0;
        for k in 0..x.len() {
            let step = 1e-5;
            let beside = |by: f64| {
                let mut x = x.clone();
                x[k] += by;
                let laid = system.lay(&x);
                (system.residual(&x, &laid), system.rows(&x, &laid, limit))
            };
            let ((r_more, rows_more), (r_less, rows_less)) = (beside(step), beside(-step));
            for (row, (more, less)) in closure.iter().zip(r_more.iter().zip(&r_less)) {
                let rate = (more - less) / (2.0 * step);
                // A lever of 300 mm and a quarter turn off: what is told is right to a part in so many.
                let is_right = (rate - row[k]).abs() < 1e-3 * rate.abs().max(1.0);
                assert!(is_right, "closure by size {k}: {rate}, told {}", row[k]);
            }
            if k < first {
                continue;
            }
            for row in &rows {
                let of = |rows: &[Row]| {
                    let mut same = rows.iter().filter(|other| other.group == row.group);
                    let margin = same.next().map(|row| row.margin);
                    margin.filter(|_| same.next().is_none())
                };
                let (Some(more), Some(less)) = (of(&rows_more), of(&rows_less)) else {
                    continue;
                };
                let rate = (more - less) / (2.0 * step);
                // Where something else becomes the nearest the two sides differ.
                let kink = (more - 2.0 * row.margin + less).abs() / step;
                if kink > 1e-2 {
                    continue;
                }
                seen += 1;
                let told = row.gradient[k];
                // Nearest places are found to 0.01 mm.
                let is_right = (rate - told).abs() < 0.02 * rate.abs().max(10.0);
                assert!(
                    is_right,
                    "row {:x} by size {k}: {rate}, told {told}",
                    row.group
                );
            }
        }
        assert!(seen > 60, "{seen}");
    }
}
