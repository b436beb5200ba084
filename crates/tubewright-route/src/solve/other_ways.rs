//! Other ways round: the side of a body on which a run passes is walled off, and the chain that
//! passes there is searched anew. A wall is a thin body that stands out from where the run is
//! nearest; what keeps clear of it keeps every rule without it too.

use tubewright_geometry::{OrientedBox, Point, Solid};

use super::alternatives::{Passed, passed};
use super::descend::Effort;
use super::field::Field;
use super::improve::{Meter, Solution, mend};
use super::joint::search_region;
use super::layout::Joint;
use super::polyline::Ends;
use super::single::{self, Reach, Task};
use super::system::{Context, System, tube_of};
use crate::problem::{Body, BodyKind};

/// Half the thickness of a wall, mm.
const HALF_THICK_MM: f64 = 25.0;
/// How far a wall stands out from the body, mm.
const REACH_MM: f64 = 800.0;
/// Half the width of a wall across run and reach, least and most, mm.
const HALF_WIDE_MM: [f64; 2] = [120.0, 400.0];
/// Bodies further from the run than this leave no doubt on which side to pass, mm.
const NEAR_MM: f64 = 150.0;
/// Bodies larger than this have no other side within a car (a floor, a rail along all of it), mm from
/// middle to corner.
const LARGEST_MM: f64 = 900.0;
/// Walls tried for one route.
const MOST_WALLS: usize = 8;

/// Searches for ways that pass some body on another side than `best` does, until the work is spent.
pub(crate) fn search(
    ctx: &Context<'_>,
    best: &Solution,
    seed: u64,
    meter: &mut Meter<'_>,
) -> Vec<Solution> {
    let mut places: Vec<(f64, Passed)> = passed(ctx, best)
        .into_iter()
        .filter(|p| p.contact.margin < NEAR_MM)
        .filter_map(|p| {
            let body = ctx.problem.bodies.get(p.contact.body)?;
            let size = body.solid.bounds()?.half_diagonal_mm();
            (size < LARGEST_MM).then_some((size + 2.0 * p.contact.margin.max(0.0), p))
        })
        .collect();
    places.sort_by(|a, b| a.0.total_cmp(&b.0));
    places.truncate(MOST_WALLS);
    let mut out = Vec::new();
    let count = places.len() as u64;
    for (k, (_, place)) in places.into_iter().enumerate() {
        if meter.is_over() {
            break;
        }
        let share = meter.limit.saturating_sub(meter.spent) / (count - k as u64).max(1);
        let mut own = Meter {
            spent: 0,
            limit: share,
            cancel: meter.cancel,
        };
        out.extend(round_the_wall(ctx, best, &place, seed + k as u64, &mut own));
        meter.spent += own.spent;
    }
    out
}

fn round_the_wall(
    ctx: &Context<'_>,
    best: &Solution,
    place: &Passed,
    seed: u64,
    meter: &mut Meter<'_>,
) -> Option<Solution> {
    let system = System::new(ctx, best.chains.clone());
    let chain = best.chains.get(place.chain)?;
    let tube = tube_of(ctx.problem, chain.run)?;
    let poses = system.poses(&best.x);
    let (end, end_direction) = chain.target.at(&ctx.slides, &poses);
    let start = chain.start.at(&ctx.slides, &poses);
    let wall = wall(ctx, place, tube.od_mm, [start.origin, end])?;
    let mut walled = ctx.problem.clone();
    walled.bodies.push(Body {
        id: "wall".to_owned(),
        solid: wall,
        gap_mm: 0.0,
        kind: BodyKind::Car,
    });
    let walled = Context::new(&walled, ctx.cost);
    let elsewhere: usize = best
        .chains
        .iter()
        .enumerate()
        .filter(|(k, other)| *k != place.chain && other.run == chain.run)
        .map(|(_, other)| other.layout.bends())
        .sum();
    let task = Task {
        run: chain.run,
        ends: Ends {
            start,
            end,
            end_direction,
        },
        components: chain
            .layout
            .joints
            .iter()
            .filter_map(|joint| match joint {
                Joint::Component(c) => Some(*c),
                Joint::Bend { .. } => None,
            })
            .collect(),
        hung: None,
        max_bends: ctx.problem.most_bends(chain.run).saturating_sub(elsewhere),
    };
    let field = Field::new(&walled.room, &search_region(walled.problem));
    let reach = Reach {
        rounds: 4,
        improved: 1,
        first_only: true,
    };
    let found = single::search(&walled, &task, &field, seed, reach, meter, |_, _, _| {})
        .held
        .into_iter()
        .next()?;
    if best.chains.len() == 1 && poses.is_empty() {
        return Some(found);
    }
    // Among the other chains, whose rules it has not seen yet.
    let mut chains = best.chains.clone();
    let mut x = Vec::new();
    for (c, chain) in best.chains.iter().enumerate() {
        if c == place.chain {
            x.extend_from_slice(&found.x);
        } else {
            x.extend_from_slice(system.chain_sizes(c, &best.x));
        }
        debug_assert_eq!(system.chain_sizes(c, &best.x).len(), chain.layout.sizes());
    }
    x.extend(ctx.slides.sizes_at(&poses));
    if let (Some(slot), Some(new)) = (chains.get_mut(place.chain), found.chains.first()) {
        slot.layout = new.layout.clone();
    }
    let effort = Effort {
        steps: 25,
        pull: 0.2,
    };
    let (solution, landing) = mend(ctx, chains, &x, effort);
    meter.spent += landing.work * best.chains.len() as u64;
    solution
}

/// A wall from a body out past the run, square to the run; `None` when it would cover an end.
fn wall(ctx: &Context<'_>, place: &Passed, od_mm: f64, ends: [Point; 2]) -> Option<Solid> {
    let body = ctx.problem.bodies.get(place.contact.body)?;
    let along = place.travel.direction()?;
    let away = place.contact.away;
    let out = (away - along * along.dot(away)).direction()?;
    let across = along.vector().cross(out.vector()).direction()?;
    let gap = place.contact.margin + body.gap_mm + 0.5 * od_mm;
    let foot = place.contact.place - out * gap;
    let size = body.solid.bounds()?.half_diagonal_mm();
    let [least, most] = HALF_WIDE_MM;
    let wall = OrientedBox {
        centre: foot + out * (0.5 * REACH_MM),
        axes: [along, out, across],
        half: [
            HALF_THICK_MM,
            0.5 * REACH_MM,
            (0.7 * size).clamp(least, most),
        ],
    };
    let solid = Solid::Box(wall);
    let is_clear = ends.iter().all(|end| {
        tubewright_geometry::distance::closest_point_on_solid(*end, &solid).distance_mm
            > 0.5 * od_mm + 5.0
    });
    is_clear.then_some(solid)
}
