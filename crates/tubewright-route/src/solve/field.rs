//! A clearance field on a grid, filled only where it is looked at, and paths through it for a ball:
//! they tell on which side of which body a run may pass.

use core::sync::atomic::{AtomicU32, Ordering};
use std::cmp::Reverse;
use std::collections::BinaryHeap;

use tubewright_geometry::{Point, Vector};

use super::room::Room;
use crate::problem::Region;

/// Distance less required gap at the middle of each cell. Values are pure functions of the place, so
/// that filling from several threads gives the same.
pub(crate) struct Field<'r> {
    room: &'r Room,
    min: Point,
    pub(crate) cell: f64,
    counts: [usize; 3],
    values: Vec<AtomicU32>,
}

const UNKNOWN: u32 = u32::MAX;
const MOST_CELLS: f64 = 400_000.0;
const FINEST_MM: f64 = 18.0;

impl<'r> Field<'r> {
    /// A field over `region`.
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "counts are held to MOST_CELLS"
    )]
    pub(crate) fn new(room: &'r Room, region: &Region) -> Self {
        let size = region.max - region.min;
        let volume = size.x.max(1.0) * size.y.max(1.0) * size.z.max(1.0);
        let cell = tubewright_geometry::math::cbrt(volume / MOST_CELLS).max(FINEST_MM);
        let counts = size
            .to_array()
            .map(|s| ((s / cell).ceil() as usize).clamp(1, 2000));
        let total = counts.iter().product();
        Self {
            room,
            min: region.min,
            cell,
            counts,
            values: (0..total).map(|_| AtomicU32::new(UNKNOWN)).collect(),
        }
    }

    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "checked against the counts"
    )]
    pub(crate) fn cell_of(&self, place: Point) -> Option<usize> {
        let at = ((place - self.min) / self.cell).to_array();
        let mut index = 0;
        for (a, n) in at.into_iter().zip(self.counts) {
            if !(a >= 0.0 && a < n as f64) {
                return None;
            }
            index = index * n + a as usize;
        }
        Some(index)
    }

    fn split(&self, index: usize) -> [usize; 3] {
        let [_, ny, nz] = self.counts;
        [index / (ny * nz), index / nz % ny, index % nz]
    }

    pub(crate) fn middle(&self, index: usize) -> Point {
        let at = self.split(index).map(|i| (i as f64 + 0.5) * self.cell);
        self.min + Vector::from_array(at)
    }

    #[expect(
        clippy::cast_possible_truncation,
        reason = "a field needs no more digits"
    )]
    pub(crate) fn value(&self, index: usize) -> f64 {
        let Some(slot) = self.values.get(index) else {
            return f64::NEG_INFINITY;
        };
        let bits = slot.load(Ordering::Relaxed);
        if bits != UNKNOWN {
            return f64::from(f32::from_bits(bits));
        }
        let value = self.room.margin_at(self.middle(index)) as f32;
        slot.store(value.to_bits(), Ordering::Relaxed);
        f64::from(value)
    }

    /// Margin near a place: that of its cell's middle, or exact outside the grid.
    pub(crate) fn margin(&self, place: Point) -> f64 {
        match self.cell_of(place) {
            Some(index) => self.value(index),
            None => self.room.margin_at(place),
        }
    }

    /// A short path for a ball of `radius` from one place to another through cells that are not yet
    /// `worn`; wear makes another way round worth trying. Places a cell apart.
    pub(crate) fn path(
        &self,
        from: Point,
        to: Point,
        radius: f64,
        worn: &[Point],
        most: usize,
    ) -> Option<Vec<Point>> {
        let (start, goal) = (self.cell_of(from)?, self.cell_of(to)?);
        let total = self.values.len();
        let mut best = vec![f32::INFINITY; total];
        let mut before = vec![u32::MAX; total];
        let mut heap: BinaryHeap<Reverse<(u64, u32)>> = BinaryHeap::new();
        let target = self.middle(goal);
        let index32 = |i: usize| u32::try_from(i).ok();
        if let Some(slot) = best.get_mut(start) {
            *slot = 0.0;
        }
        heap.push(Reverse((0, index32(start)?)));
        let wear = self.wear(worn);
        let mut seen = 0;
        while let Some(Reverse((_, at))) = heap.pop() {
            let at = at as usize;
            if at == goal {
                let mut out = vec![to];
                let mut here = goal;
                while here != start {
                    here = before.get(here).map(|&b| b as usize)?;
                    out.push(self.middle(here));
                }
                out.push(from);
                out.reverse();
                return Some(out);
            }
            seen += 1;
            if seen > most {
                return None;
            }
            let here = self.split(at);
            let known = best.get(at).copied()?;
            for dx in [-1i64, 0, 1] {
                for dy in [-1i64, 0, 1] {
                    for dz in [-1i64, 0, 1] {
                        if (dx, dy, dz) == (0, 0, 0) {
                            continue;
                        }
                        let Some(next) = self.shifted(here, [dx, dy, dz]) else {
                            continue;
                        };
                        let room = self.value(next) - radius;
                        // Half a cell of doubt: the middle may be off the free line by that much.
                        if room < -0.5 * self.cell && next != goal {
                            continue;
                        }
                        #[expect(clippy::cast_precision_loss, reason = "1, 2 or 3")]
                        let way = ((dx * dx + dy * dy + dz * dz) as f64).sqrt() * self.cell;
                        let tight = if room < 0.0 {
                            3.0
                        } else if room < 15.0 {
                            1.4
                        } else {
                            1.0
                        };
                        let used = if wear.is_empty() {
                            0.0
                        } else {
                            f64::from(wear.get(next).copied().unwrap_or(0))
                        };
                        #[expect(clippy::cast_possible_truncation, reason = "path lengths in mm")]
                        let reached = known + (way * (tight + 1.5 * used)) as f32;
                        if best.get(next).is_some_and(|b| reached < *b) {
                            if let (Some(b), Some(p)) = (best.get_mut(next), before.get_mut(next)) {
                                *b = reached;
                                *p = index32(at)?;
                            }
                            let ahead = f64::from(reached) + self.middle(next).distance(target);
                            #[expect(
                                clippy::cast_possible_truncation,
                                clippy::cast_sign_loss,
                                reason = "positive, in hundredths of a mm"
                            )]
                            let key = (ahead * 100.0) as u64;
                            heap.push(Reverse((key, index32(next)?)));
                        }
                    }
                }
            }
        }
        None
    }

    fn wear(&self, worn: &[Point]) -> Vec<u8> {
        if worn.is_empty() {
            return Vec::new();
        }
        let mut out = vec![0u8; self.values.len()];
        #[expect(clippy::cast_possible_truncation, reason = "a few cells")]
        let reach = (70.0 / self.cell).ceil() as i64;
        for place in worn {
            let Some(index) = self.cell_of(*place) else {
                continue;
            };
            let here = self.split(index);
            for dx in -reach..=reach {
                for dy in -reach..=reach {
                    for dz in -reach..=reach {
                        if let Some(next) = self.shifted(here, [dx, dy, dz])
                            && let Some(slot) = out.get_mut(next)
                        {
                            *slot = 1;
                        }
                    }
                }
            }
        }
        out
    }

    fn shifted(&self, here: [usize; 3], by: [i64; 3]) -> Option<usize> {
        let mut index = 0;
        for ((h, d), n) in here.into_iter().zip(by).zip(self.counts) {
            let at = usize::try_from(i64::try_from(h).ok()? + d).ok()?;
            if at >= n {
                return None;
            }
            index = index * n + at;
        }
        Some(index)
    }
}
