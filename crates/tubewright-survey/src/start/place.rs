//! Place after place, each by the ties to those that already stand.

use super::Chance;
use super::intersect::{circles, on_two_spheres, spheres};
use super::sketch::{Sketch, end_of};
use crate::linear::{M3, V3};

/// A misfit counts at most this many σ, squared: one slip must not decide the place.
const MOST_SIGMAS_SQUARED: f64 = 400.0;

/// σ in mm that a tie has at least here: places that already stand are not exact.
const LEAST_SIGMA_MM: f64 = 3.0;

/// Heights worse than this σ in mm do not fix a place in height.
const FIRM_HEIGHT_SIGMA_MM: f64 = 15.0;

/// Two places nearer than this in mm are the same candidate.
const SAME_PLACE_MM: f64 = 15.0;

/// Neighbours used for intersections; more add time and no new place.
const NEIGHBOURS: usize = 6;

type Placed = Vec<Option<V3>>;

pub(super) fn firm_height(sketch: &Sketch, node: usize) -> Option<f64> {
    sketch.heights[node]
        .filter(|(_, sigma)| *sigma < FIRM_HEIGHT_SIGMA_MM)
        .map(|(h, _)| h)
}

/// Misfit of a node at `place` against the standing ones, capped.
pub(super) fn node_cost(sketch: &Sketch, placed: &Placed, node: usize, place: V3) -> f64 {
    let mut sum = 0.0;
    for &t in &sketch.of_node[node] {
        let Some(other) = placed[sketch.other(t, node)] else {
            continue;
        };
        let tie = &sketch.ties[t];
        let mut d = place - other;
        if tie.in_plan {
            d.z = 0.0;
        }
        let e = (d.norm() - tie.length) / tie.sigma.max(LEAST_SIGMA_MM);
        sum += (e * e).min(MOST_SIGMAS_SQUARED);
    }
    if let Some((height, sigma)) = sketch.heights[node] {
        let e = (place.z - height) / sigma.max(LEAST_SIGMA_MM);
        sum += (e * e).min(MOST_SIGMAS_SQUARED);
    }
    sum
}

/// Places for a node from the ties to standing ones, best first, far enough from each other to be
/// different.
pub(super) fn candidates(sketch: &Sketch, placed: &Placed, node: usize) -> Vec<(f64, V3)> {
    let neighbours: Vec<(V3, f64, bool)> = sketch.of_node[node]
        .iter()
        .filter_map(|&t| {
            let place = placed[sketch.other(t, node)]?;
            Some((place, sketch.ties[t].length, sketch.ties[t].in_plan))
        })
        .take(NEIGHBOURS)
        .collect();
    let mut raw = Vec::new();
    if let Some(z) = firm_height(sketch, node) {
        let radius = |&(c, r, in_plan): &(V3, f64, bool)| {
            if in_plan {
                r
            } else {
                (r * r - (c.z - z) * (c.z - z)).max(0.0).sqrt()
            }
        };
        for (k, a) in neighbours.iter().enumerate() {
            for b in &neighbours[k + 1..] {
                raw.extend(
                    circles(a.0, radius(a), b.0, radius(b), z)
                        .into_iter()
                        .flatten(),
                );
            }
        }
    } else {
        let straight: Vec<_> = neighbours.iter().filter(|n| !n.2).collect();
        for (i, a) in straight.iter().enumerate() {
            for (j, b) in straight.iter().enumerate().skip(i + 1) {
                for c in &straight[j + 1..] {
                    raw.extend(
                        spheres([a.0, b.0, c.0], [a.1, b.1, c.1])
                            .into_iter()
                            .flatten(),
                    );
                }
            }
        }
    }
    let mut scored: Vec<(f64, V3)> = raw
        .into_iter()
        .map(|p| (node_cost(sketch, placed, node, p), p))
        .collect();
    scored.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut distinct: Vec<(f64, V3)> = Vec::new();
    for (cost, place) in scored {
        if distinct.len() >= 4 {
            break;
        }
        if distinct
            .iter()
            .all(|(_, p)| (p - place).norm() > SAME_PLACE_MM)
        {
            distinct.push((cost, place));
        }
    }
    distinct
}

/// Ties to standing places, a firm height counting as one more.
fn support(sketch: &Sketch, placed: &Placed, node: usize) -> usize {
    let ties = sketch.of_node[node]
        .iter()
        .filter(|&&t| placed[sketch.other(t, node)].is_some())
        .count();
    ties + usize::from(firm_height(sketch, node).is_some())
}

/// A whole sketch from the `attempt`-th best first triangle; `None` when there is no other.
pub(super) fn build(sketch: &Sketch, attempt: usize, chance: &mut Chance) -> Option<Vec<V3>> {
    let mut placed: Placed = sketch.held.clone();
    if placed.iter().flatten().count() == 0 {
        first_places(sketch, attempt, &mut placed)?;
    } else if attempt > 1 {
        return None;
    }
    loop {
        let next = (0..sketch.nodes.len())
            .filter(|&n| placed[n].is_none())
            .max_by_key(|&n| {
                (
                    support(sketch, &placed, n),
                    sketch.of_node[n].len(),
                    usize::MAX - n,
                )
            });
        let Some(node) = next else { break };
        let found = candidates(sketch, &placed, node);
        let place = match found.as_slice() {
            [] => guess(sketch, &placed, node, chance),
            [(_, only)] => *only,
            [(c1, first), (c2, second), ..] => {
                let alike = c2 - c1 < 9.0;
                // The very first choice between two sides is a choice of handedness, settled later.
                if alike && attempt > 0 && chance.heads() {
                    *second
                } else {
                    *first
                }
            }
        };
        placed[node] = Some(place);
    }
    Some(placed.into_iter().flatten().collect())
}

/// A place that at least keeps the ties that there are.
fn guess(sketch: &Sketch, placed: &Placed, node: usize, chance: &mut Chance) -> V3 {
    let neighbours: Vec<(V3, f64)> = sketch.of_node[node]
        .iter()
        .filter_map(|&t| Some((placed[sketch.other(t, node)]?, sketch.ties[t].length)))
        .collect();
    let z = firm_height(sketch, node);
    let (x, y) = loop {
        let (x, y) = (chance.signed(), chance.signed());
        let r = (x * x + y * y).sqrt();
        if r > 0.1 && r < 1.0 {
            break (x / r, y / r);
        }
    };
    let mut place = match neighbours.as_slice() {
        [] => V3::new(x, y, chance.signed()) * 500.0,
        [(c, r)] => c + V3::new(x, y, if z.is_some() { 0.0 } else { chance.signed() }) * *r,
        [(c1, r1), (c2, r2), ..] => on_two_spheres(*c1, *r1, *c2, *r2, (x, y)),
    };
    if let Some(z) = z {
        place.z = z;
    }
    place
}

/// First two places where heights are known, else three.
fn first_places(sketch: &Sketch, attempt: usize, placed: &mut Placed) -> Option<()> {
    let degree = |n: usize| sketch.of_node[n].len();
    let firm = |n: usize| firm_height(sketch, n);
    let mut pairs: Vec<(usize, usize)> = sketch
        .ties
        .iter()
        .enumerate()
        .filter(|(_, t)| firm(t.a).is_some() && firm(t.b).is_some() && t.length > 50.0)
        .map(|(i, t)| (degree(t.a) + degree(t.b), i))
        .collect();
    pairs.sort_by(|a, b| b.0.cmp(&a.0).then(a.1.cmp(&b.1)));
    pairs.dedup_by_key(|p| p.1);
    if let Some(&(_, index)) = pairs.get(attempt) {
        let tie = sketch.ties[index];
        let (za, zb) = (firm(tie.a)?, firm(tie.b)?);
        let run = if tie.in_plan {
            tie.length
        } else {
            (tie.length * tie.length - (za - zb) * (za - zb))
                .max(1.0)
                .sqrt()
        };
        placed[tie.a] = Some(V3::new(0.0, 0.0, za));
        placed[tie.b] = Some(V3::new(run, 0.0, zb));
        return Some(());
    }
    if !pairs.is_empty() {
        return None;
    }
    let (a, b, c, ab, ac, bc) = triangle(sketch, attempt)?;
    let x = (ab * ab + ac * ac - bc * bc) / (2.0 * ab);
    placed[a] = Some(V3::zeros());
    placed[b] = Some(V3::new(ab, 0.0, 0.0));
    placed[c] = Some(V3::new(x, (ac * ac - x * x).max(1.0).sqrt(), 0.0));
    Some(())
}

/// The `attempt`-th best measured triangle: best supported, and not thin.
fn triangle(sketch: &Sketch, attempt: usize) -> Option<(usize, usize, usize, f64, f64, f64)> {
    let mut found = Vec::new();
    let n = sketch.nodes.len();
    let mut length = vec![None; n * n];
    for tie in &sketch.ties {
        length[tie.a * n + tie.b] = Some(tie.length);
        length[tie.b * n + tie.a] = Some(tie.length);
    }
    for a in 0..n {
        for b in a + 1..n {
            let Some(ab) = length[a * n + b] else {
                continue;
            };
            for c in b + 1..n {
                let (Some(ac), Some(bc)) = (length[a * n + c], length[b * n + c]) else {
                    continue;
                };
                let half = 0.5 * (ab + ac + bc);
                let area = (half * (half - ab) * (half - ac) * (half - bc))
                    .max(0.0)
                    .sqrt();
                let longest = ab.max(ac).max(bc);
                if area > 0.05 * longest * longest {
                    let degree = [a, b, c]
                        .map(|k| sketch.of_node[k].len())
                        .iter()
                        .sum::<usize>();
                    found.push((degree, area, (a, b, c, ab, ac, bc)));
                }
            }
        }
    }
    found.sort_by(|p, q| q.0.cmp(&p.0).then(q.1.total_cmp(&p.1)));
    // Neighbouring triangles share most of their places; step over some for a truly other start.
    let stride = (found.len() / 7).max(1);
    found.get(attempt * stride).map(|f| f.2)
}

/// Other places for a node that fit about as well as its own, all others standing.
pub(crate) fn alternatives(sketch: &Sketch, places: &[V3], node: usize) -> Vec<V3> {
    let standing: Placed = places.iter().copied().map(Some).collect();
    let here = node_cost(sketch, &standing, node, places[node]);
    candidates(sketch, &standing, node)
        .into_iter()
        .filter(|(cost, p)| *cost < here + 30.0 && (p - places[node]).norm() > 20.0)
        .map(|(_, p)| p)
        .collect()
}

/// Other places for all nodes of an end: mirrored in the plane that lies best through the places it is
/// tied to, wholly and then by its centre only.
pub(crate) fn end_alternatives(sketch: &Sketch, places: &[V3], end: usize) -> Vec<Vec<V3>> {
    let own: Vec<usize> = (0..sketch.nodes.len())
        .filter(|&n| end_of(sketch.nodes[n]) == Some(end))
        .collect();
    let mut tied: Vec<usize> = own
        .iter()
        .flat_map(|&n| sketch.of_node[n].iter().map(move |&t| (t, n)))
        .map(|(t, n)| sketch.other(t, n))
        .filter(|n| end_of(sketch.nodes[*n]) != Some(end))
        .collect();
    tied.sort_unstable();
    tied.dedup();
    if own.is_empty() || tied.len() < 3 {
        return Vec::new();
    }
    let mean = |nodes: &[usize]| {
        #[expect(clippy::cast_precision_loss, reason = "a count of places is small")]
        let count = nodes.len() as f64;
        nodes.iter().map(|&n| places[n]).sum::<V3>() / count
    };
    let centre = mean(&tied);
    let mut spread = M3::zeros();
    for &n in &tied {
        let d = places[n] - centre;
        spread += d * d.transpose();
    }
    let eigen = spread.symmetric_eigen();
    let normal = eigen
        .eigenvectors
        .column(eigen.eigenvalues.imin())
        .into_owned();
    let middle = mean(&own);
    let mirrored = |p: V3| p - normal * (2.0 * normal.dot(&(p - centre)));
    let mut whole = places.to_vec();
    let mut shifted = places.to_vec();
    let mut turned = places.to_vec();
    for &n in &own {
        whole[n] = mirrored(places[n]);
        shifted[n] = places[n] + mirrored(middle) - middle;
        turned[n] = mirrored(places[n]) + middle - mirrored(middle);
    }
    vec![whole, shifted, turned]
}
