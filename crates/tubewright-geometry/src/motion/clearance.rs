//! Clearance over every position of two carriers.

use core::cmp::Ordering;
use std::collections::BinaryHeap;

use super::envelope::support;
use super::{
    Link, Motion, Spread, Values, ball_round, relative_links, sorted_back, spread, spread_along,
};
use crate::distance::{Clearance, clearance_below, highest_along, is_clear};
use crate::placement::Placement;
use crate::solid::Solid;
use crate::tube::{CentreLine, TubeElement};
use crate::vector::{Point, UnitVector};

/// How far to search, in work and not in time, so that equal input gives an equal answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MotionSearch {
    /// The search ends when the reported gap is within this of one that really occurs, in mm, > 0.
    pub tolerance_mm: f64,
    /// The search also ends after this many positions were looked at; the reported gap is then still
    /// never too large, but may be too small by more than the tolerance.
    pub most_positions: usize,
}

/// The tightest position of a tube and a body that both move.
#[derive(Clone, Debug, PartialEq)]
pub struct MovingClearance {
    /// Gap in mm over all positions: never larger than the true least gap.
    pub gap_mm: f64,
    /// The gap in mm in the position reported here, sways included: the true least gap is not above
    /// it. `found_gap_mm - gap_mm` is the doubt that is left.
    pub found_gap_mm: f64,
    /// Values of the tube's freedoms in that position (mm or radians, zero for sways).
    pub tube_values: Vec<f64>,
    /// Values of the body's freedoms in that position.
    pub body_values: Vec<f64>,
    /// Tightest place on the centre line in that position, sways left out.
    pub on_centre_line: Point,
    /// Its distance along the centre line in mm.
    pub along_mm: f64,
    /// Nearest place of the body in that position.
    pub on_body: Point,
    /// Which part of the body.
    pub part: Option<usize>,
    /// Number of positions that were looked at.
    pub positions: usize,
}

/// Stretches of the tube are searched apart, so that the far end of a long straight does not make
/// the near end seem to move fast.
const STRETCH_MM: f64 = 150.0;

struct Stretch {
    tube: TubeElement,
    start_mm: f64,
    centre: Point,
    ball_mm: f64,
}

/// Positions not yet settled, the least lower bound first.
struct Open {
    low_mm: f64,
    order: usize,
    stretch: usize,
    values: Values,
    widest: Option<usize>,
}

impl PartialEq for Open {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}
impl Eq for Open {}
impl PartialOrd for Open {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Open {
    /// The heap gives its greatest: the least bound, then the earliest made.
    fn cmp(&self, other: &Self) -> Ordering {
        other
            .low_mm
            .total_cmp(&self.low_mm)
            .then(other.order.cmp(&self.order))
    }
}

struct Best {
    gap_mm: f64,
    clearance: Clearance,
    values: Vec<f64>,
    start_mm: f64,
}

struct Search<'a> {
    links: &'a [Link],
    solid: &'a Solid,
    stretches: &'a [Stretch],
    tolerance_mm: f64,
    best: Option<Best>,
    /// Least lower bound among positions that were given up as no better than the best.
    given_up_mm: f64,
    open: BinaryHeap<Open>,
    positions: usize,
}

/// The least gap between a tube and a body over the product of their carriers' ranges.
///
/// Best-first over boxes of values; each is judged at its middle, with the farthest that any place of
/// the tube can be from there, seen from the body, taken off. Where a plane at the tightest place parts
/// the two, only what the motion does square to it is taken off: most motions pass a tube along and not
/// toward it. Sways are taken off at the end.
#[must_use]
pub fn clearance_in_motion(
    tube: &TubeElement,
    tube_motion: &Motion,
    solid: &Solid,
    body_motion: &Motion,
    effort: MotionSearch,
) -> MovingClearance {
    let links = relative_links(tube_motion, body_motion);
    let stretches = stretches(tube);
    let tolerance_mm = effort.tolerance_mm.max(1e-6);
    let mut search = Search {
        links: &links,
        solid,
        stretches: &stretches,
        tolerance_mm,
        best: None,
        given_up_mm: f64::INFINITY,
        open: BinaryHeap::new(),
        positions: 0,
    };
    if links.iter().all(|l| {
        let (min, max) = l.freedom.range();
        min >= max
    }) {
        // One position only: the whole tube at once, and nothing given away between stretches.
        let whole = [whole(tube)];
        search.stretches = &whole;
        search.judge(0, Values::whole(&links));
        return search.finish(tube, tube_motion, body_motion);
    }
    for stretch in 0..stretches.len() {
        search.judge(stretch, Values::whole(&links));
    }
    while search.positions < effort.most_positions {
        let goal = search.goal();
        match search.open.pop() {
            Some(open) if open.low_mm < goal => match open.widest {
                Some(link) => {
                    for part in open.values.cut(link) {
                        search.judge(open.stretch, part);
                    }
                }
                None => search.given_up_mm = search.given_up_mm.min(open.low_mm),
            },
            Some(open) => {
                search.given_up_mm = search.given_up_mm.min(open.low_mm);
                break;
            }
            None => break,
        }
    }
    search.look_at_the_whole(tube);
    search.finish(tube, tube_motion, body_motion)
}

impl Search<'_> {
    /// Positions whose gap cannot be below this are no better than the best by the tolerance.
    fn goal(&self) -> f64 {
        self.best
            .as_ref()
            .map_or(f64::INFINITY, |b| b.gap_mm - self.tolerance_mm)
    }

    fn judge(&mut self, index: usize, values: Values) {
        let Some(stretch) = self.stretches.get(index) else {
            return;
        };
        self.positions += 1;
        let Spread {
            at_middle,
            reach_mm,
            mut widest,
        } = spread(self.links, &values, stretch.centre, stretch.ball_mm);
        let moved = at_middle.tube(&stretch.tube);
        let goal = self.goal();
        // The distance is measured ten times finer than the search is asked to be.
        let fine = 0.1 * self.tolerance_mm;
        let Some(clearance) = clearance_below(&moved, self.solid, fine, goal + reach_mm) else {
            self.given_up_mm = self.given_up_mm.min(goal);
            return;
        };
        let floor = -stretch.tube.radius;
        let mut low_mm = clearance.gap_mm - reach_mm;
        if let Some((apart_mm, link)) = self.apart_mm(stretch, &values, &moved, &clearance)
            && apart_mm > low_mm
        {
            (low_mm, widest) = (apart_mm, link);
        }
        let low_mm = low_mm.max(floor);
        let here = clearance.gap_mm + fine;
        if self.best.as_ref().is_none_or(|b| here < b.gap_mm) {
            self.best = Some(Best {
                gap_mm: here,
                clearance,
                values: values.middle.clone(),
                start_mm: stretch.start_mm,
            });
        }
        self.open.push(Open {
            low_mm,
            order: self.positions,
            stretch: index,
            values,
            widest,
        });
    }

    /// In the position that was found another stretch may be nearer by less than the tolerance: it is the one that
    /// is told of.
    fn look_at_the_whole(&mut self, tube: &TubeElement) {
        let Some(best) = self.best.as_mut().filter(|_| self.stretches.len() > 1) else {
            return;
        };
        let moves = self.links.iter().zip(&best.values);
        let there = moves.fold(Placement::IDENTITY, |so_far, (link, &value)| {
            so_far.then(&link.at(value))
        });
        let fine = 0.1 * self.tolerance_mm;
        let least = best.clearance.gap_mm;
        if let Some(nearer) = clearance_below(&there.tube(tube), self.solid, fine, least)
            && nearer.gap_mm < least
        {
            best.gap_mm = nearer.gap_mm + fine;
            best.clearance = nearer;
            best.start_mm = 0.0;
        }
    }

    /// What is left between two planes square to the way from the tube to the body at their tightest
    /// place, one that the tube stays behind and one that the body does, in all of these positions; and
    /// the link that takes the most of it. `None` where they touch, and for scans, whose every place would
    /// have to be looked at.
    fn apart_mm(
        &self,
        stretch: &Stretch,
        values: &Values,
        moved: &TubeElement,
        tightest: &Clearance,
    ) -> Option<(f64, Option<usize>)> {
        let (way, body_mm) = match self.solid {
            Solid::HalfSpace { point, outward } => (-*outward, -outward.dot(point.to_vector())),
            solid => {
                let way = (tightest.on_body - tightest.on_centre_line).direction()?;
                (way, nearest_along(solid, way)?)
            }
        };
        let tube_mm = highest_along(&moved.line, way) + moved.radius;
        let ball = (stretch.centre, stretch.ball_mm);
        let toward = spread_along(self.links, values, ball, way);
        Some((body_mm - tube_mm - toward.reach_mm, toward.widest))
    }

    fn finish(
        self,
        tube: &TubeElement,
        tube_motion: &Motion,
        body_motion: &Motion,
    ) -> MovingClearance {
        let low = self
            .open
            .peek()
            .map_or(f64::INFINITY, |open| open.low_mm)
            .min(self.given_up_mm);
        let sway = tube_motion.sway_mm() + body_motion.sway_mm();
        let Some(best) = self.best else {
            let start = tube.line.at(0.0);
            return MovingClearance {
                gap_mm: f64::INFINITY,
                found_gap_mm: f64::INFINITY,
                tube_values: vec![0.0; tube_motion.freedoms.len()],
                body_values: vec![0.0; body_motion.freedoms.len()],
                on_centre_line: start,
                along_mm: 0.0,
                on_body: start,
                part: None,
                positions: self.positions,
            };
        };
        let (tube_values, body_values) =
            sorted_back(self.links, &best.values, tube_motion, body_motion);
        // The search sees the body at rest: carried out to where the body really is then.
        let body_at = body_motion.at(&body_values);
        let floor = -tube.radius;
        MovingClearance {
            gap_mm: (low.min(best.gap_mm) - sway).max(floor),
            found_gap_mm: (best.gap_mm - sway).max(floor),
            tube_values,
            body_values,
            on_centre_line: body_at.point(best.clearance.on_centre_line),
            along_mm: best.start_mm + best.clearance.along_mm,
            on_body: body_at.point(best.clearance.on_body),
            part: best.clearance.part,
            positions: self.positions,
        }
    }
}

/// Least coordinate of a solid along a direction; `None` for scans.
fn nearest_along(solid: &Solid, way: UnitVector) -> Option<f64> {
    match solid {
        Solid::Mesh(_) | Solid::Cloud { .. } | Solid::PointCloud(_) => None,
        Solid::Union(members) => members.iter().try_fold(f64::INFINITY, |least, member| {
            Some(nearest_along(member, way)?.min(least))
        }),
        solid => Some(-support(solid, &Placement::IDENTITY, -way)),
    }
}

/// True when the tube keeps at least `gap_mm` from the body in every position of both carriers. Errs
/// only to the safe side: `undecided_mm` (> 0) is how near to the limit it may give up and say no.
#[must_use]
pub fn is_clear_in_motion(
    tube: &TubeElement,
    tube_motion: &Motion,
    solid: &Solid,
    body_motion: &Motion,
    gap_mm: f64,
    undecided_mm: f64,
) -> bool {
    let links = relative_links(tube_motion, body_motion);
    let need = gap_mm + tube_motion.sway_mm() + body_motion.sway_mm();
    if tube.radius + gap_mm <= 0.0 {
        return true;
    }
    stretches(tube).iter().all(|stretch| {
        clear_over(
            &links,
            &Values::whole(&links),
            stretch,
            solid,
            (need, undecided_mm.max(1e-6)),
        )
    })
}

fn clear_over(
    links: &[Link],
    values: &Values,
    stretch: &Stretch,
    solid: &Solid,
    (need_mm, undecided_mm): (f64, f64),
) -> bool {
    let s = spread(links, values, stretch.centre, stretch.ball_mm);
    let moved = s.at_middle.tube(&stretch.tube);
    if is_clear(&moved, solid, need_mm + s.reach_mm) {
        return true;
    }
    if s.reach_mm <= undecided_mm || !is_clear(&moved, solid, need_mm) {
        return false;
    }
    s.widest.is_some_and(|link| {
        values
            .cut(link)
            .iter()
            .all(|part| clear_over(links, part, stretch, solid, (need_mm, undecided_mm)))
    })
}

fn stretches(tube: &TubeElement) -> Vec<Stretch> {
    let length = tube.line.length();
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a small count"
    )]
    let count = (length / STRETCH_MM).ceil().clamp(1.0, 1000.0) as usize;
    (0..count)
        .map(|i| {
            let from = length * i as f64 / count as f64;
            let to = length * (i + 1) as f64 / count as f64;
            let line = part_of(&tube.line, from, to);
            let (centre, ball_mm) = ball_round(&line);
            Stretch {
                tube: TubeElement {
                    line,
                    radius: tube.radius,
                },
                start_mm: from,
                centre,
                ball_mm,
            }
        })
        .collect()
}

fn whole(tube: &TubeElement) -> Stretch {
    let (centre, ball_mm) = ball_round(&tube.line);
    Stretch {
        tube: *tube,
        start_mm: 0.0,
        centre,
        ball_mm,
    }
}

fn part_of(line: &CentreLine, from_mm: f64, to_mm: f64) -> CentreLine {
    match *line {
        CentreLine::Segment { .. } => CentreLine::Segment {
            a: line.at(from_mm),
            b: line.at(to_mm),
        },
        CentreLine::Arc {
            centre,
            u,
            v,
            radius,
            ..
        } => {
            let axis = u.vector().cross(v.vector());
            let axis = crate::vector::UnitVector::from_unit(axis / axis.norm());
            let turn = from_mm / radius;
            CentreLine::Arc {
                centre,
                u: u.rotated_about(axis, turn),
                v: v.rotated_about(axis, turn),
                radius,
                angle: (to_mm - from_mm) / radius,
            }
        }
    }
}
