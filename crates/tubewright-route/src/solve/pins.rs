//! Rooms that a run must pass through, and rooms that must hold one of its joints.

use tubewright_geometry::{Point, Vector};

use super::chain::{Element, Laid, Part};
use super::descend::HOLDS_MM;
use super::system::{Row, System, group};
use crate::problem::{Pin, Pinned, Region};

/// Places looked at along a piece before the best is narrowed down, mm apart.
const LOOK_MM: f64 = 20.0;

/// How deep a place lies in a room, mm (outside below zero), and the direction in which it comes deeper
/// soonest.
fn depth(room: &Region, place: Point) -> (f64, Vector) {
    let axes = [
        Vector::new(1.0, 0.0, 0.0),
        Vector::new(0.0, 1.0, 0.0),
        Vector::new(0.0, 0.0, 1.0),
    ];
    let (low, high, at) = (room.min.to_array(), room.max.to_array(), place.to_array());
    let mut outside = Vector::ZERO;
    let mut inside = (f64::INFINITY, Vector::ZERO);
    for k in 0..3 {
        let off = (low[k] - at[k]).max(at[k] - high[k]);
        let inward = if at[k] < 0.5 * (low[k] + high[k]) {
            axes[k]
        } else {
            -axes[k]
        };
        if off > 0.0 {
            outside += inward * off;
        }
        if -off < inside.0 {
            inside = (-off, inward);
        }
    }
    match outside.direction() {
        Some(toward) => (-outside.norm(), toward.vector()),
        None => inside,
    }
}

/// A place on a run with how deep in a room it lies.
struct Deepest<'l> {
    chain: usize,
    element: &'l Element,
    share: f64,
    place: Point,
    depth_mm: f64,
    deeper: Vector,
}

impl System<'_, '_> {
    /// The pins of runs whose chains are all here: what is found of one alone is judged together with the
    /// others.
    pub(super) fn pin_rows(&self, laid: &[Laid], limit: f64, rows: &mut Vec<Row>) {
        for (number, run) in self.ctx.problem.runs.iter().enumerate() {
            if run.pins.is_empty() {
                continue;
            }
            let own = |c: &usize| self.chains.get(*c).is_some_and(|chain| chain.run == number);
            let chains: Vec<usize> = (0..laid.len()).filter(own).collect();
            if chains.len() < 1 + usize::from(run.passage.is_some()) {
                continue;
            }
            for (k, pin) in run.pins.iter().enumerate() {
                let room = shrunk(&pin.room);
                let Some(deepest) = deepest(&Pin { room, ..*pin }, laid, &chains) else {
                    continue;
                };
                if deepest.depth_mm >= limit {
                    continue;
                }
                let Some(chain) = laid.get(deepest.chain) else {
                    continue;
                };
                let mut gradient = vec![0.0; self.sizes.len()];
                self.add_gradient(
                    &mut gradient,
                    (deepest.chain, chain),
                    deepest.element,
                    deepest.share,
                    deepest.place,
                    deepest.deeper,
                );
                rows.push(Row {
                    margin: deepest.depth_mm,
                    gradient,
                    group: group(5000 + number, k, 0),
                });
            }
        }
    }
}

/// Inside of a room by more than an overrun that still counts as kept.
fn shrunk(room: &Region) -> Region {
    let (mut low, mut high) = (room.min.to_array(), room.max.to_array());
    for (low, high) in low.iter_mut().zip(&mut high) {
        let within = (2.0 * HOLDS_MM).min(0.25 * (*high - *low));
        *low += within;
        *high -= within;
    }
    Region {
        min: Point::from_array(low),
        max: Point::from_array(high),
    }
}

/// The place of these chains that lies deepest in the room of a pin.
fn deepest<'l>(pin: &Pin, laid: &'l [Laid], chains: &[usize]) -> Option<Deepest<'l>> {
    let mut best: Option<Deepest<'l>> = None;
    for &chain in chains {
        let tubes = laid
            .get(chain)
            .into_iter()
            .flat_map(|laid| &laid.elements)
            .filter(|element| element.part == Part::Tube);
        for element in tubes {
            let length = element.tube.line.length();
            let at = |share: f64| {
                let place = element.tube.line.at(share * length);
                let (depth_mm, deeper) = depth(&pin.room, place);
                Deepest {
                    chain,
                    element,
                    share,
                    place,
                    depth_mm,
                    deeper,
                }
            };
            let own = match pin.what {
                Pinned::Joint => deeper(at(0.0), at(1.0)),
                Pinned::CentreLine => deepest_along(at, length),
            };
            best = Some(match best {
                Some(best) => deeper(best, own),
                None => own,
            });
        }
    }
    best
}

fn deeper<'l>(a: Deepest<'l>, b: Deepest<'l>) -> Deepest<'l> {
    if b.depth_mm > a.depth_mm { b } else { a }
}

/// The deepest place along a piece: the best of places some way apart, narrowed down between its neighbours.
fn deepest_along<'l>(at: impl Fn(f64) -> Deepest<'l>, length: f64) -> Deepest<'l> {
    let steps = (length / LOOK_MM).ceil().clamp(1.0, 400.0);
    let mut best = (0.0, at(0.0));
    let mut step = 1.0;
    while step <= steps {
        let here = at(step / steps);
        if here.depth_mm > best.1.depth_mm {
            best = (step, here);
        }
        step += 1.0;
    }
    let (mut low, mut high) = (
        ((best.0 - 1.0) / steps).max(0.0),
        ((best.0 + 1.0) / steps).min(1.0),
    );
    for _ in 0..30 {
        let third = (high - low) / 3.0;
        let (a, b) = (at(low + third), at(high - third));
        if a.depth_mm < b.depth_mm {
            low += third;
        } else {
            high -= third;
        }
    }
    deeper(best.1, at(0.5 * (low + high)))
}

#[cfg(test)]
mod tests {
    use super::*;

    const ROOM: Region = Region {
        min: Point::new(0.0, 0.0, 0.0),
        max: Point::new(100.0, 40.0, 60.0),
    };

    #[test]
    fn depth_is_to_the_nearest_face_inside_and_to_the_nearest_place_outside() {
        let (inside, way) = depth(&ROOM, Point::new(50.0, 8.0, 30.0));
        assert!((inside - 8.0).abs() < 1e-12);
        assert!((way - Vector::new(0.0, 1.0, 0.0)).norm() < 1e-12);
        let (outside, way) = depth(&ROOM, Point::new(103.0, 44.0, 30.0));
        assert!((outside + 5.0).abs() < 1e-12);
        assert!((way - Vector::new(-0.6, -0.8, 0.0)).norm() < 1e-12);
    }
}
