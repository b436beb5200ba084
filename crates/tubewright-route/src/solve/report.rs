//! From sizes back to pieces, with the cost by term and the tightest place.

use tubewright_geometry::{Point, math};

use super::improve::Solution;
use super::layout::{Joint, Slot};
use super::slides::Pose;
use super::system::{Anchor, Context, System, tube_of};
use crate::problem::{PartPose, Run};
use crate::route::{Piece, Route, RunEnds, Term, Tightest};

/// Makes the route of a solution that holds.
pub(crate) fn route(
    ctx: &Context<'_>,
    solution: &Solution,
    name: String,
    lower_bound: f64,
) -> Route {
    let system = System::new(ctx, solution.chains.clone());
    let problem = ctx.problem;
    let mut runs: Vec<Vec<Piece>> = vec![Vec::new(); problem.runs.len()];
    let mut terms = [0.0; 8];
    for (c, chain) in system.chains.iter().enumerate() {
        let x = system.chain_sizes(c, &solution.x);
        let Some(pieces) = runs.get_mut(chain.run) else {
            continue;
        };
        // Behind a crossover that it passes the run goes on; one that starts there has no part of it.
        let starts_there = |run: &Run| run.starts_at.is_some();
        if let Anchor::Slides(crossover, _) = chain.start
            && ctx.slides.is_crossover(crossover)
            && !problem.runs.get(chain.run).is_some_and(starts_there)
        {
            pieces.push(Piece::Crossover { crossover });
            terms[3] += ctx.cost.weld;
        }
        let size = |i: usize| x.get(i).copied().unwrap_or(0.0);
        let tube = tube_of(problem, chain.run);
        for (i, slot) in chain.layout.slots.iter().enumerate() {
            let length_mm = size(3 * i);
            if *slot != Slot::Absent && length_mm > 1e-9 {
                pieces.push(Piece::Straight { length_mm });
                terms[5] += length_mm * ctx.cost.flow_per_mm;
                if *slot == Slot::Bought {
                    terms[3] += ctx.cost.weld;
                }
            }
            match chain.layout.joints.get(i) {
                Some(&Joint::Bend { stock, exact }) => {
                    let angle_rad = size(3 * i + 1);
                    pieces.push(Piece::Bend {
                        angle_rad,
                        clock_rad: math::wrap_to_pi(size(3 * i + 2)),
                    });
                    terms[0] += tube
                        .and_then(|t| t.stock.get(stock))
                        .map_or(0.0, |s| s.price);
                    terms[1] += if exact { 0.0 } else { ctx.cost.cut };
                    terms[3] += ctx.cost.weld;
                    terms[4] += angle_rad * ctx.cost.flow_per_rad;
                    terms[5] += tube.map_or(0.0, |t| t.clr_mm) * angle_rad * ctx.cost.flow_per_mm;
                }
                Some(&Joint::Component(component)) => {
                    pieces.push(Piece::Component {
                        component,
                        roll_rad: math::wrap_to_pi(size(3 * i + 2)),
                    });
                    terms[3] += ctx.cost.weld;
                }
                None => {}
            }
        }
        if ctx.is_end(chain) {
            terms[3] += ctx.cost.weld;
        }
        if chain.is_sawn(ctx) {
            terms[1] += ctx.cost.cut;
        }
    }
    let cost = solution.cost;
    let poses = system.poses(&solution.x);
    terms[6] = system.lost_ground(&system.lay(&solution.x)).0;
    terms[7] = system.lost_at_mitres(&solution.x);
    // Straights are what is left: their price depends on the legs beside them.
    terms[2] = cost - terms.iter().sum::<f64>();
    let names = [
        Term::Bends,
        Term::Cuts,
        Term::Straights,
        Term::Welds,
        Term::FlowTurn,
        Term::FlowLength,
        Term::Ground,
        Term::FlowMitre,
    ];
    Route {
        name,
        runs,
        crossovers: (0..problem.crossovers.len())
            .map(|k| {
                let pose = poses.get(k);
                pose.map_or(PartPose::at(Point::ORIGIN), Pose::part)
            })
            .collect(),
        ends: run_ends(&system, &poses),
        cost,
        terms: names
            .into_iter()
            .zip(terms)
            .filter(|(_, v)| v.abs() > 1e-9)
            .collect(),
        lower_bound,
        tightest: tightest(&system, &solution.x),
    }
}

/// Where each run starts and arrives.
fn run_ends(system: &System<'_, '_>, poses: &[Pose]) -> Vec<RunEnds> {
    let slides = &system.ctx.slides;
    let mut out: Vec<RunEnds> = system
        .ctx
        .problem
        .runs
        .iter()
        .map(|run| RunEnds {
            start: run.start,
            end: run.end,
            end_direction: run.end_direction,
        })
        .collect();
    for chain in &system.chains {
        let Some(ends) = out.get_mut(chain.run) else {
            continue;
        };
        if system.ctx.is_end(chain) {
            (ends.end, ends.end_direction) = chain.target.at(slides, poses);
        }
        let run = system.ctx.problem.runs.get(chain.run);
        if chain.is_sawn(system.ctx) || run.is_some_and(|run| run.starts_at.is_some()) {
            ends.start = chain.start.at(slides, poses).frame();
        }
    }
    out
}

fn tightest(system: &System<'_, '_>, x: &[f64]) -> Option<Tightest> {
    let problem = system.ctx.problem;
    let mut best: Option<(f64, Tightest)> = None;
    let mut contacts = Vec::new();
    for (c, (chain, laid)) in system.chains.iter().zip(system.lay(x)).enumerate() {
        let stub_mm = problem.runs.get(chain.run).map_or(0.0, |run| {
            if run.own_bodies.is_empty() || !chain.start_is_of(&system.ctx.slides, run) {
                0.0
            } else {
                problem.rules.stub_mm + run.start_room.map_or(0.0, |room| room.back_mm)
            }
        });
        for element in &laid.elements {
            let limit = best.as_ref().map_or(1e6, |b| b.0);
            let found = if element.along < stub_mm {
                contacts.clear();
                system.contacts(c, element, limit, &mut contacts);
                contacts
                    .iter()
                    .min_by(|a, b| a.margin.total_cmp(&b.margin))
                    .map(|k| (k.body, k.margin, k.place))
            } else {
                system.ctx.room.tightest(&element.tube, limit)
            };
            let Some((body, margin, place)) = found else {
                continue;
            };
            let (name, required_mm) = problem
                .bodies
                .get(body)
                .map_or(("workspace".to_owned(), 0.0), |b| (b.id.clone(), b.gap_mm));
            best = Some((
                margin,
                Tightest {
                    body: name,
                    run: problem
                        .runs
                        .get(chain.run)
                        .map_or_else(String::new, |r| r.id.clone()),
                    gap_mm: margin + required_mm,
                    required_mm,
                    place,
                },
            ));
        }
    }
    best.map(|b| b.1)
}
