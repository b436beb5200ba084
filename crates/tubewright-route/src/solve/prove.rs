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
        let is_loose = [
            run.start_room.is_some() || run.starts_at.is_some(),
            run.end_room.is_some() || run.ends_at.is_some(),
        ];
        ends.into_iter()
            .zip(is_loose)
            .enumerate()
            .filter(|(_, (_, is_loose))| !is_loose)
            .find_map(|(k, ((place, slack), _))| {
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
    // A crossover turns the run within its ports.
    // Nothing is claimed of a run whose start stands within the gap of the body that carries it.
    let is_own = !run.own_bodies.is_empty() && ctx.room.margin_at(run.start.origin) < radius;
    // Nor of one whose ends may lie elsewhere.
    let is_loose = run.start_room.is_some() || run.end_room.is_some();
    if run.meets_any() || is_own || is_loose {
        return None;
    }
    if run.own_bodies.is_empty()
        && let Some(proof) = no_way_out(ctx, run, tube.clr_mm, radius)
    {
        return Some(proof);
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
        .or_else(|| too_little_to_turn(run, tube.clr_mm, &flood.reached))
}

/// How far the direction of arrival may be off, radians: the form allows 0.2 degrees.
const END_RAD: f64 = 0.01;

/// From an angle α with an axis to a greater one β (up to square) a curve of radius `R` or wider
/// advances at least `R (sin β − sin α)` along it: `∫ cos θ ds` with `|dθ/ds| ≤ 1/R`. Where the room
/// that can be reached ends before, the turn cannot be made; looked at from the start and, against
/// the travel, from the end, along both directions and the car's axes. Derived here; no source.
fn too_little_to_turn(run: &Run, clr: f64, reached: &Region) -> Option<Proof> {
    let (d0, d1) = (Stance::of(&run.start).travel, run.end_direction.vector());
    let angle =
        |a: Vector, b: Vector| tubewright_geometry::math::atan2(a.cross(b).norm(), a.dot(b));
    let sin = tubewright_geometry::math::sin;
    let square = core::f64::consts::FRAC_PI_2;
    let mut axes = vec![d0, d1];
    for axis in [
        Vector::new(1.0, 0.0, 0.0),
        Vector::new(0.0, 1.0, 0.0),
        Vector::new(0.0, 0.0, 1.0),
    ] {
        axes.extend([axis, axis * -1.0]);
    }
    for a in axes {
        let ways = [
            (run.start.origin, d0, d1, 0.0),
            (run.end, d1 * -1.0, d0 * -1.0, END_MM),
        ];
        for (from, leaving, arriving, off) in ways {
            let (alpha, beta) = (
                (angle(a, leaving) + END_RAD).min(square),
                (angle(a, arriving) - END_RAD).clamp(0.0, square),
            );
            let needed = clr * (sin(beta) - sin(alpha));
            let room = extent_along(reached, a) - a.dot(from.to_vector()) + off;
            if beta > alpha && room + SLACK_MM < needed {
                return Some(Proof::TooLittleAdvance {
                    run: run.id.clone(),
                    advance_mm: room,
                    needed_mm: needed,
                });
            }
        }
    }
    None
}

/// How far a box reaches along an axis.
fn extent_along(region: &Region, a: Vector) -> f64 {
    let (lo, hi) = (region.min.to_array(), region.max.to_array());
    a.to_array()
        .into_iter()
        .zip(lo.into_iter().zip(hi))
        .map(|(a, (lo, hi))| if a > 0.0 { a * hi } else { a * lo })
        .sum()
}

/// Cells that one radius is cut into for [`no_way_out`].
const CELLS_IN_RADIUS: f64 = 16.0;

/// Before a run of radius `R` or wider is square to the direction that it left an end in, it has
/// advanced by `h < R` with `sin θ ≤ h/R` and is off that line by at most `R − sqrt(R² − h²)`. Where
/// no ball of the tube's radius gets as far as `R` within that trumpet, and the other end is not in
/// the part that it gets to, no run leaves this end. Derived here; no source.
fn no_way_out(ctx: &Context<'_>, run: &Run, clr: f64, radius: f64) -> Option<Proof> {
    let ends = [
        (
            run.start.origin,
            Stance::of(&run.start).travel,
            run.end,
            0.0,
            0.0,
        ),
        (
            run.end,
            run.end_direction.vector() * -1.0,
            run.start.origin,
            END_MM,
            END_RAD,
        ),
    ];
    ends.into_iter()
        .find_map(|(from, way, other, off, turned)| {
            let reach_mm =
                reach_in_trumpet(ctx, (from, way), other, off + clr * turned, clr, radius)?;
            Some(Proof::NoWayOut {
                run: run.id.clone(),
                reach_mm,
            })
        })
}

/// How far along the trumpet a ball gets; `None` when it gets through, or the other end is in reach.
fn reach_in_trumpet(
    ctx: &Context<'_>,
    (from, way): (Point, Vector),
    other: Point,
    off: f64,
    clr: f64,
    radius: f64,
) -> Option<f64> {
    let cell = clr / CELLS_IN_RADIUS;
    let half = 0.5 * 3.0_f64.sqrt() * cell + off;
    let mut seen = std::collections::BTreeSet::from([[0i64; 3]]);
    let mut queue = VecDeque::from([[0i64; 3]]);
    let mut reach = 0.0_f64;
    while let Some(here) = queue.pop_front() {
        let middle = from + Vector::new(here[0] as f64, here[1] as f64, here[2] as f64) * cell;
        let h = way.dot(middle - from);
        reach = reach.max(h + half);
        if h + half >= clr || middle.distance(other) < half + END_MM {
            return None;
        }
        for axis in 0..3 {
            for step in [-1, 1] {
                let mut next = here;
                if let Some(n) = next.get_mut(axis) {
                    *n += step;
                }
                if !seen.insert(next) {
                    continue;
                }
                let at = from + Vector::new(next[0] as f64, next[1] as f64, next[2] as f64) * cell;
                let off_line = at - from;
                let h = way.dot(off_line);
                let aside = (off_line - way * h).norm();
                let ahead = (h + half).min(clr);
                let wide = clr - (clr * clr - ahead * ahead).max(0.0).sqrt();
                if h + half < 0.0 || aside > wide + half {
                    continue;
                }
                if may_hold(ctx, at, cell, radius - off) {
                    queue.push_back(next);
                }
            }
        }
    }
    Some(reach)
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
    let zone = component.zone.or(ctx.problem.workspace)?;
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
    no_place(
        "no place and direction in its zone or in the workspace keeps the gaps of its body"
            .to_owned(),
    )
}
