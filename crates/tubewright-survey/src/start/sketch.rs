//! The sketch: places, ties between them, and heights, with every correction taken off.

use crate::linear::{V3, point, v3};
use crate::model::local_place;
use crate::network::{Network, ReadingKind, StartValues, Target};

#[derive(Clone, Copy, Debug)]
pub(crate) struct Tie {
    pub(crate) a: usize,
    pub(crate) b: usize,
    pub(crate) length: f64,
    pub(crate) sigma: f64,
    /// Along the floor instead of straight.
    pub(crate) in_plan: bool,
}

#[derive(Clone, Debug, Default)]
pub(crate) struct Sketch {
    pub(crate) nodes: Vec<Target>,
    /// Places that are held or given.
    pub(crate) held: Vec<Option<V3>>,
    pub(crate) ties: Vec<Tie>,
    /// Height over the main floor and its σ.
    pub(crate) heights: Vec<Option<(f64, f64)>>,
    /// Ties of each node by number.
    pub(crate) of_node: Vec<Vec<usize>>,
}

/// σ in mm of a distance inside a rigid end: it is known, but the sketch need not be stiff.
const RIGID_SIGMA_MM: f64 = 0.5;

/// σ in mm of a height carried over from another set-up, whose floor may lie at another slope.
const OTHER_SETUP_SIGMA_MM: f64 = 40.0;

/// σ in mm of a floor distance taken for a straight one where no height is known.
const PLAN_AS_STRAIGHT_SIGMA_MM: f64 = 100.0;

impl Sketch {
    pub(crate) fn of(network: &Network, given: &StartValues) -> Self {
        let mut sketch = Self::default();
        for (index, spec) in network.points.iter().enumerate() {
            sketch
                .nodes
                .push(Target::Point(crate::network::PointId(index)));
            let held = match spec.held {
                [Some(x), Some(y), Some(z)] => Some(V3::new(x, y, z)),
                _ => given.points.get(index).copied().flatten().map(v3),
            };
            sketch.held.push(held);
        }
        // A lone held place fixes no frame; then the sketch is free and is moved afterwards.
        let main = sketch.main_setup(network);
        let few = sketch.held.iter().flatten().count() < if main.is_some() { 2 } else { 3 };
        if few {
            sketch.held = vec![None; sketch.nodes.len()];
        }
        let used = || network.readings.iter().filter(|r| !r.set_aside);
        for reading in used() {
            for target in reading.kind.targets() {
                let node = sketch.node(target);
                sketch.held.resize(sketch.held.len().max(node + 1), None);
            }
        }
        if !few && given.points.iter().all(Option::is_some) {
            sketch.hold_ends(network, given);
        }
        for reading in used() {
            match reading.kind {
                ReadingKind::Tape { from, to, burnt_mm } => {
                    let slack = from.contact.outboard_mm().abs() + to.contact.outboard_mm().abs();
                    let length = reading.value
                        - burnt_mm
                        - from.contact.along_tape_mm()
                        - to.contact.along_tape_mm();
                    sketch.tie(from.target, to.target, length, reading.sigma + slack, false);
                }
                ReadingKind::Plumb { from, to, .. } => {
                    let sigma = if main.is_some() {
                        reading.sigma
                    } else {
                        PLAN_AS_STRAIGHT_SIGMA_MM
                    };
                    sketch.tie(from, to, reading.value, sigma, main.is_some());
                }
                _ => {}
            }
        }
        sketch.tie_ends(network);
        sketch.take_heights(network, main);
        sketch.of_node = vec![Vec::new(); sketch.nodes.len()];
        for (index, tie) in sketch.ties.iter().enumerate() {
            sketch.of_node[tie.a].push(index);
            sketch.of_node[tie.b].push(index);
        }
        sketch
    }

    /// Puts the places of ends whose pose is given.
    fn hold_ends(&mut self, network: &Network, given: &StartValues) {
        for (node, held) in self.nodes.iter().zip(&mut self.held) {
            let Some(end) = end_of(*node) else { continue };
            let frame = given.ends.get(end).copied().flatten();
            if let (Some(frame), Some(spec)) = (frame, network.ends.get(end)) {
                let local = point(local_place(spec, *node));
                *held = Some(v3(frame.point_from_local(local)));
            }
        }
    }

    /// Set-up whose floor becomes z = 0: the one with most heights. With held places only a floor
    /// that is their datum will do.
    fn main_setup(&self, network: &Network) -> Option<usize> {
        let anything_held = self.held.iter().any(Option::is_some);
        (0..network.setups.len())
            .filter(|&s| !anything_held || network.setups[s].floor_is_datum)
            .map(|s| (heights_in(network, s).count(), s))
            .filter(|(count, _)| *count > 0)
            .max_by_key(|&(count, s)| (count, usize::MAX - s))
            .map(|(_, s)| s)
    }

    fn node(&mut self, target: Target) -> usize {
        if let Some(found) = self.find(target) {
            return found;
        }
        self.nodes.push(target);
        self.nodes.len() - 1
    }

    pub(crate) fn find(&self, target: Target) -> Option<usize> {
        self.nodes.iter().position(|t| *t == target)
    }

    fn tie(&mut self, p: Target, q: Target, length: f64, sigma: f64, in_plan: bool) {
        if let (Some(a), Some(b)) = (self.find(p), self.find(q)) {
            self.ties.push(Tie {
                a,
                b,
                length: length.max(0.0),
                sigma,
                in_plan,
            });
        }
    }

    /// Places of one end keep their known distances.
    fn tie_ends(&mut self, network: &Network) {
        for (index, end) in network.ends.iter().enumerate() {
            let own: Vec<usize> = (0..self.nodes.len())
                .filter(|&n| end_of(self.nodes[n]) == Some(index))
                .collect();
            for (k, &a) in own.iter().enumerate() {
                for &b in &own[k + 1..] {
                    let d = local_place(end, self.nodes[a]) - local_place(end, self.nodes[b]);
                    self.ties.push(Tie {
                        a,
                        b,
                        length: d.norm(),
                        sigma: RIGID_SIGMA_MM,
                        in_plan: false,
                    });
                }
            }
        }
    }

    fn take_heights(&mut self, network: &Network, main: Option<usize>) {
        self.heights = vec![None; self.nodes.len()];
        let Some(main) = main else { return };
        for (target, height, sigma) in heights_in(network, main) {
            if let Some(node) = self.find(target) {
                self.heights[node] = Some((height, sigma));
            }
        }
        for other in (0..network.setups.len()).filter(|&s| s != main) {
            let shared: Vec<f64> = heights_in(network, other)
                .filter_map(|(target, height, _)| {
                    let node = self.find(target)?;
                    let (here, sigma) = self.heights[node]?;
                    (sigma < OTHER_SETUP_SIGMA_MM).then_some(here - height)
                })
                .collect();
            if shared.is_empty() {
                continue;
            }
            #[expect(clippy::cast_precision_loss, reason = "a count of readings is small")]
            let shift = shared.iter().sum::<f64>() / shared.len() as f64;
            for (target, height, _) in heights_in(network, other) {
                if let Some(node) = self.find(target) {
                    self.heights[node].get_or_insert((height + shift, OTHER_SETUP_SIGMA_MM));
                }
            }
        }
    }

    /// The other node of a tie.
    pub(crate) fn other(&self, tie: usize, node: usize) -> usize {
        let t = &self.ties[tie];
        if t.a == node { t.b } else { t.a }
    }
}

/// Number of the end that a target belongs to.
pub(crate) fn end_of(target: Target) -> Option<usize> {
    match target {
        Target::Point(_) => None,
        Target::Rim { end, .. } | Target::Hole { end, .. } | Target::Centre(end) => Some(end.0),
    }
}

fn heights_in(network: &Network, setup: usize) -> impl Iterator<Item = (Target, f64, f64)> + '_ {
    network.readings.iter().filter_map(move |r| match r.kind {
        ReadingKind::Height { target, setup: s } if s.0 == setup && !r.set_aside => Some((
            target.target,
            r.value - target.contact.along_tape_mm(),
            r.sigma + target.contact.outboard_mm().abs(),
        )),
        _ => None,
    })
}
