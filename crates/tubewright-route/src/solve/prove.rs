//! Proofs that nothing fits. Each is conservative: what it cannot decide it leaves open.
//!
//! Passage: the distance field changes by at most the way moved, so a cell whose middle has less room
//! than the tube's radius by more than its half diagonal is closed. Cells that are not closed and
//! touch are joined; when the end is not reached there is no passage for the tube's ball, let alone
//! for the tube. Advance: where the room reached is narrower than two centre-line radii, the travel
//! never gets square to the channel, so the run advances all the way and an offset `h` needs an
//! advance of `sqrt(4 R h - h²)` (two arcs back to back, derived here; no source).

use std::collections::VecDeque;

use tubewright_geometry::{Point, Vector};

use super::chain::Stance;
use super::shots::body_radius;
use super::system::Context;
use crate::problem::{Component, Region, Run};
use crate::route::Proof;

/// Slack of clearances and of the end's place, with room to spare: the form allows 0.05 and 1 mm.
const SLACK_MM: f64 = 0.2;
const END_MM: f64 = 3.0;
/// Finest edge of a cell that is looked into, mm.
const FINEST_MM: f64 = 2.0;
const MOST_CELLS: f64 = 1_500_000.0;

/// A proof that nothing fits, where one is found.
pub(crate) fn prove(ctx: &Context<'_>) -> Option<Proof> {
    ctx.problem.runs.iter().find_map(|run| of_run(ctx, run))
}

/// A start or end where the tube's own ball has no room; quick, so it is looked at before searching.
pub(crate) fn end_blocked(ctx: &Context<'_>) -> Option<Proof> {
    ctx.problem.runs.iter().find_map(|run| {
        let radius = ctx.problem.tubes.get(run.tube)?.od_mm / 2.0;
        let ends = [(run.start.origin, SLACK_MM), (run.end, SLACK_MM + END_MM)];
        ends.into_iter()
            .enumerate()
            .find_map(|(k, (place, slack))| {
                let margin = ctx.room.margin_at(place) - radius;
                if margin >= -slack {
                    return None;
                }
                // The body that carries the start does not block it.
                let own: &[usize] = if k == 0 { &run.own_bodies } else { &[] };
                if !own.is_empty() && ctx.room.margin_without(place, own) - radius >= -slack {
                    return None;
                }
                let (body, gap) = ctx.room.nearest(place);
                let id = ctx
                    .problem
                    .bodies
                    .get(body)
                    .map_or_else(|| "workspace".to_owned(), |b| b.id.clone());
                Some(Proof::EndBlocked {
                    run: run.id.clone(),
                    body: id,
                    gap_mm: margin + gap,
                    required_mm: gap,
                })
            })
    })
}

fn of_run(ctx: &Context<'_>, run: &Run) -> Option<Proof> {
    let tube = ctx.problem.tubes.get(run.tube)?;
    let radius = tube.od_mm / 2.0;
    for &c in &run.components {
        if let Some(component) = ctx.problem.components.get(c)
            && let Some(proof) = component_has_no_place(ctx, component)
        {
            return Some(proof);
        }
    }
    // Nothing is claimed of a run whose start stands within the gap of the body that carries it.
    let is_own = !run.own_bodies.is_empty() && ctx.room.margin_at(run.start.origin) < radius;
    if run.passage.is_some() || is_own {
        return None;
    }
    let region = ctx.problem.workspace?;
    let flood = Flood::from(ctx, &region, run.start.origin, run.end, radius)?;
    if !flood.arrives {
        return Some(Proof::NoPassage {
            run: run.id.clone(),
            cell_mm: FINEST_MM,
        });
    }
    too_little_advance(run, tube.clr_mm, &flood.reached)
}

/// Whether a ball of `radius` has room somewhere in a cube, as far as can be told.
fn may_hold(ctx: &Context<'_>, middle: Point, edge: f64, radius: f64) -> bool {
    let margin = ctx.room.margin_at(middle) - radius + SLACK_MM;
    if margin >= 0.0 {
        return true;
    }
    if margin + 0.5 * 3.0_f64.sqrt() * edge < 0.0 {
        return false;
    }
    if edge <= FINEST_MM {
        return true;
    }
    let q = edge / 4.0;
    [-q, q].into_iter().any(|x| {
        [-q, q].into_iter().any(|y| {
            [-q, q]
                .into_iter()
                .any(|z| may_hold(ctx, middle + Vector::new(x, y, z), edge / 2.0, radius))
        })
    })
}

/// The cells that the middle of a ball may reach.
struct Flood {
    arrives: bool,
    reached: Region,
}

impl Flood {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "cell counts are held to MOST_CELLS"
    )]
    fn from(
        ctx: &Context<'_>,
        region: &Region,
        start: Point,
        end: Point,
        radius: f64,
    ) -> Option<Self> {
        let size = region.max - region.min;
        let volume = size.x.max(1.0) * size.y.max(1.0) * size.z.max(1.0);
        let cell = tubewright_geometry::math::cbrt(volume / MOST_CELLS).max(12.0);
        let counts = size.to_array().map(|s| ((s / cell).ceil() as i64).max(1));
        let [nx, ny, nz] = counts;
        let index = |p: Point| -> [i64; 3] {
            let at = ((p - region.min) / cell).to_array();
            [
                at[0].floor() as i64,
                at[1].floor() as i64,
                at[2].floor() as i64,
            ]
        };
        let inside = |c: [i64; 3]| c.iter().zip(counts).all(|(a, n)| *a >= 0 && *a < n);
        let flat = |c: [i64; 3]| ((c[0] * ny + c[1]) * nz + c[2]) as usize;
        let first = index(start);
        if !inside(first) || !inside(index(end)) {
            return None;
        }
        let mut seen = vec![false; (nx * ny * nz) as usize];
        let mut queue = VecDeque::from([first]);
        *seen.get_mut(flat(first))? = true;
        let mut out = Self {
            arrives: false,
            reached: Region {
                min: start,
                max: start,
            },
        };
        // The end may be off by its tolerance, and so may be its cell.
        let near = cell * 2.0 + END_MM;
        while let Some(here) = queue.pop_front() {
            let low =
                region.min + Vector::new(here[0] as f64, here[1] as f64, here[2] as f64) * cell;
            let middle = low + Vector::new(cell, cell, cell) * 0.5;
            if middle.distance(end) < near {
                out.arrives = true;
            }
            let high = low + Vector::new(cell, cell, cell);
            let r = &mut out.reached;
            r.min = Point::new(r.min.x.min(low.x), r.min.y.min(low.y), r.min.z.min(low.z));
            r.max = Point::new(
                r.max.x.max(high.x),
                r.max.y.max(high.y),
                r.max.z.max(high.z),
            );
            for dx in -1..=1 {
                for dy in -1..=1 {
                    for dz in -1..=1 {
                        let next = [here[0] + dx, here[1] + dy, here[2] + dz];
                        if !inside(next) {
                            continue;
                        }
                        let slot = seen.get_mut(flat(next))?;
                        if *slot {
                            continue;
                        }
                        *slot = true;
                        let at = region.min
                            + Vector::new(
                                next[0] as f64 + 0.5,
                                next[1] as f64 + 0.5,
                                next[2] as f64 + 0.5,
                            ) * cell;
                        if may_hold(ctx, at, cell, radius) {
                            queue.push_back(next);
                        }
                    }
                }
            }
        }
        // The cells are coarse; the room itself ends where the workspace and the flat ground say.
        let (low, high) = ctx.room.planes_within(region, radius - SLACK_MM);
        let r = &mut out.reached;
        r.min = Point::new(r.min.x.max(low.x), r.min.y.max(low.y), r.min.z.max(low.z));
        r.max = Point::new(
            r.max.x.min(high.x),
            r.max.y.min(high.y),
            r.max.z.min(high.z),
        );
        Some(out)
    }
}

fn too_little_advance(run: &Run, clr: f64, reached: &Region) -> Option<Proof> {
    let along = Stance::of(&run.start).travel;
    let turned = along.cross(run.end_direction.vector()).norm();
    if turned > 0.005 || run.end_direction.dot(along) < 0.0 {
        return None;
    }
    // Extents of the room square to the travel: of the box's corners, which is on the safe side.
    let size = (reached.max - reached.min).to_array();
    let axes = along.to_array();
    let main = axes.iter().position(|a| a.abs() > 1.0 - 1e-9)?;
    let squared: f64 = size
        .iter()
        .enumerate()
        .filter(|(k, _)| *k != main)
        .map(|(_, s)| s * s)
        .sum();
    // The end's direction may be off by its tolerance, which takes off less than this.
    if squared.sqrt() > 2.0 * clr - 2.0 {
        return None;
    }
    let way = run.end - run.start.origin;
    let advance = along.dot(way);
    let offset = ((way - along * advance).norm() - END_MM).max(0.0);
    let needed = if offset >= 2.0 * clr {
        2.0 * clr
    } else {
        (4.0 * clr * offset - offset * offset).max(0.0).sqrt()
    };
    (advance + 2.0 * END_MM < needed).then(|| Proof::TooLittleAdvance {
        run: run.id.clone(),
        advance_mm: advance,
        needed_mm: needed,
    })
}

/// Cells looked at for one component before it is left open.
const MOST_POSES: usize = 400_000;

/// A box of places (middle, half sizes) and a patch of directions (face of a cube, middle, half size).
type Poses = ([f64; 3], [f64; 3], usize, [f64; 2], f64);

/// Halves boxes of places of the axis' middle and of its direction until each is closed or one is
/// too small to halve.
fn component_has_no_place(ctx: &Context<'_>, component: &Component) -> Option<Proof> {
    let zone = component.zone?;
    let no_place = |detail: String| {
        Some(Proof::ComponentHasNoPlace {
            component: component.id.clone(),
            detail,
        })
    };
    let size = zone.max - zone.min;
    if size.norm() < component.length_mm - 1e-3 {
        return no_place(format!(
            "{:.1} mm long in a zone with a diagonal of {:.1} mm",
            component.length_mm,
            size.norm()
        ));
    }
    let radius = body_radius(component.section);
    let half = component.length_mm / 2.0;
    let out = (half - radius).max(0.0);
    // Middle of the axis in the zone, its direction on a cube round it (one half is enough).
    let mut stack: Vec<Poses> = Vec::new();
    let middle = zone.min.lerp(zone.max, 0.5).to_array();
    let extent = size.to_array().map(|s| s / 2.0);
    for face in 0..3 {
        stack.push((middle, extent, face, [0.0, 0.0], 1.0));
    }
    let (lo, hi) = (zone.min.to_array(), zone.max.to_array());
    let mut seen = 0;
    while let Some((m, e, face, uv, w)) = stack.pop() {
        seen += 1;
        if seen > MOST_POSES {
            return None;
        }
        let on_cube = match face {
            0 => Vector::new(1.0, uv[0], uv[1]),
            1 => Vector::new(uv[0], 1.0, uv[1]),
            _ => Vector::new(uv[0], uv[1], 1.0),
        };
        let d = on_cube / on_cube.norm();
        // The map from cube to sphere never stretches.
        let turn = w * 2.0_f64.sqrt();
        let place = Vector::from_array(e).norm();
        let mid = Point::from_array(m);
        let mut closed = false;
        for sign in [-1.0, 0.0, 1.0] {
            let ball = mid + d * (sign * out);
            let doubt = place + if sign == 0.0 { 0.0 } else { out * turn };
            if ctx.room.margin_at(ball) + doubt < radius - SLACK_MM {
                closed = true;
                break;
            }
            let end = (mid + d * (sign * half)).to_array();
            let slack = if sign == 0.0 { 0.0 } else { half * turn };
            for k in 0..3 {
                if end[k] + slack + e[k] < lo[k] - 1e-3 || end[k] - slack - e[k] > hi[k] + 1e-3 {
                    closed = true;
                }
            }
        }
        if closed {
            continue;
        }
        if place < 1.0 && half * turn < 1.0 {
            return None;
        }
        if place > half * turn {
            // Halve the longest side of the box.
            let k = if e[0] >= e[1] && e[0] >= e[2] {
                0
            } else if e[1] >= e[2] {
                1
            } else {
                2
            };
            for sign in [-0.5, 0.5] {
                let (mut m2, mut e2) = (m, e);
                m2[k] += sign * e[k];
                e2[k] *= 0.5;
                stack.push((m2, e2, face, uv, w));
            }
        } else {
            for du in [-0.5, 0.5] {
                for dv in [-0.5, 0.5] {
                    stack.push((m, e, face, [uv[0] + du * w, uv[1] + dv * w], w * 0.5));
                }
            }
        }
    }
    no_place("no place and direction in its zone keeps the gaps of its body".to_owned())
}
