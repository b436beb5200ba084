//! Boxes that wait to be halved, least bound first.

use std::cmp::Ordering;
use std::collections::BinaryHeap;

/// Boxes in the order of their bounds; of equal ones the older comes first, so that the order is the
/// same on every machine.
pub(super) struct LeastFirst<N> {
    heap: BinaryHeap<Waiting<N>>,
    pushed: usize,
}

impl<N> LeastFirst<N> {
    pub(super) const fn new() -> Self {
        Self {
            heap: BinaryHeap::new(),
            pushed: 0,
        }
    }

    pub(super) fn push(&mut self, bound: f64, node: N) {
        self.heap.push(Waiting {
            bound,
            number: self.pushed,
            node,
        });
        self.pushed += 1;
    }

    /// The box of the least bound, with its bound.
    pub(super) fn pop(&mut self) -> Option<(f64, N)> {
        self.heap.pop().map(|waiting| (waiting.bound, waiting.node))
    }
}

struct Waiting<N> {
    bound: f64,
    number: usize,
    node: N,
}

impl<N> PartialEq for Waiting<N> {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}
impl<N> Eq for Waiting<N> {}
impl<N> PartialOrd for Waiting<N> {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
impl<N> Ord for Waiting<N> {
    /// The heap gives the greatest first, so the least bound is the greatest here.
    fn cmp(&self, other: &Self) -> Ordering {
        other
            .bound
            .total_cmp(&self.bound)
            .then(other.number.cmp(&self.number))
    }
}
