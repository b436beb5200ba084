//! Names placed so that none lies on another: each takes the cheapest free place round its thing,
//! in a fixed order.

use crate::drawing::{
    BASE_LINE_DROP, Dash, Fill, Item, Lettering, Line, Rect, Spot, Weight, clip_segment,
};
use tubewright_geometry::math;

/// How a label looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Look {
    /// Mark of a piece: heavy, in a rounded frame.
    Mark,
    /// Name of a joint: small, bare.
    Joint,
    /// Name of a datum mark or body.
    Name,
    /// Number of a tight place, in a triangle's place: framed square.
    Flag,
}

/// A name that wants a place.
#[derive(Clone, Debug)]
pub(crate) struct Label {
    pub(crate) text: String,
    pub(crate) look: Look,
    /// Where its leader may end, best first.
    pub(crate) anchors: Vec<Spot>,
    /// How near its middle may come to the anchor, in mm of paper.
    pub(crate) least_mm: f64,
}

impl Look {
    const fn lettering(self) -> Lettering {
        match self {
            Self::Mark => Lettering::plain(2.6).bold().centred(),
            Self::Joint => Lettering::plain(2.1).centred(),
            Self::Name => Lettering::plain(2.2).italic().centred(),
            Self::Flag => Lettering::plain(2.4).bold().centred(),
        }
    }

    fn size(self, text: &str) -> (f64, f64) {
        let lettering = self.lettering();
        let pad = match self {
            Self::Mark => 2.0,
            Self::Flag => 1.8,
            _ => 0.6,
        };
        let width = lettering.width_mm(text) + pad;
        (width, lettering.size_mm + 0.4 * pad + 0.4)
    }
}

/// What is already on the paper of one view.
pub(crate) struct Ground {
    /// Labels must stay in here.
    pub(crate) window: Rect,
    /// Tubes as balls along their lines: never to be written on.
    pub(crate) balls: Vec<(Spot, f64)>,
    /// Lines of the surroundings: better not crossed by letters.
    pub(crate) lines: Vec<[Spot; 2]>,
    taken: Vec<Rect>,
    leaders: Vec<[Spot; 2]>,
}

impl Ground {
    pub(crate) const fn new(window: Rect, balls: Vec<(Spot, f64)>, lines: Vec<[Spot; 2]>) -> Self {
        Self {
            window,
            balls,
            lines,
            taken: Vec::new(),
            leaders: Vec::new(),
        }
    }

    /// Keeps labels off a rectangle.
    pub(crate) fn take(&mut self, rect: Rect) {
        self.taken.push(rect);
    }

    /// Finds the label a place and returns what to paint. Deterministic: candidates are tried in a
    /// fixed order and only a strictly cheaper one replaces the best.
    pub(crate) fn place(&mut self, label: &Label) -> Vec<Item> {
        let (width, height) = label.look.size(&label.text);
        let reach = label.least_mm + RING_STEP_MM * f64::from(RINGS) + width + height;
        let near = self.near(Rect::of(label.anchors.iter().copied()).grown(reach));
        let mut best: Option<(f64, Spot, Rect)> = None;
        for (rank, &anchor) in (0_u32..).zip(&label.anchors) {
            for ring in 0..RINGS {
                let off = label.least_mm + RING_STEP_MM * f64::from(ring);
                for turn in 0..TURNS {
                    // Up and down first: shop drawings pull labels out square.
                    let angle = math::TAU * f64::from(turn) / f64::from(TURNS) - math::FRAC_PI_2;
                    let d = Spot::toward(angle);
                    let push = Spot::new(off + 0.5 * width - 1.0, off + 0.3 * height);
                    let centre = anchor + Spot::new(d.x * push.x, d.y * push.y);
                    let rect = Rect::new(
                        centre.x - 0.5 * width,
                        centre.y - 0.5 * height,
                        width,
                        height,
                    );
                    let limit = best.as_ref().map_or(f64::INFINITY, |b| b.0 - 1e-9);
                    let cost = near.cost(anchor, rect, off + 1.5 * f64::from(rank), limit);
                    if cost < limit {
                        best = Some((cost, anchor, rect));
                    }
                }
            }
        }
        let Some((_, anchor, rect)) = best else {
            return Vec::new();
        };
        self.taken.push(rect);
        self.leaders.push([anchor, rect.centre()]);
        paint(label, anchor, rect)
    }

    /// What can matter to a label that stays in `room`.
    fn near(&self, room: Rect) -> Self {
        let on = |a: Spot, b: Spot| clip_segment(a, b, room).is_some();
        Self {
            window: self.window,
            balls: self
                .balls
                .iter()
                .filter(|(centre, radius)| room.grown(*radius).holds(*centre))
                .copied()
                .collect(),
            lines: self
                .lines
                .iter()
                .filter(|l| on(l[0], l[1]))
                .copied()
                .collect(),
            taken: self
                .taken
                .iter()
                .filter(|r| !r.common(room).is_empty())
                .copied()
                .collect(),
            leaders: self
                .leaders
                .iter()
                .filter(|l| on(l[0], l[1]))
                .copied()
                .collect(),
        }
    }

    /// What a place costs, from `start` on; gives up beyond `limit`.
    fn cost(&self, anchor: Spot, rect: Rect, start: f64, limit: f64) -> f64 {
        let mut cost = start;
        if !self.window.encloses(rect) {
            cost += 400.0;
        }
        let roomy = rect.grown(0.5);
        let leader = [anchor, rect.centre()];
        for other in &self.taken {
            cost += 60.0 * roomy.overlap_mm2(*other);
            if clip_segment(leader[0], leader[1], *other).is_some() {
                cost += 40.0;
            }
            if cost >= limit {
                return cost;
            }
        }
        for other in &self.leaders {
            if clip_segment(other[0], other[1], roomy).is_some() {
                cost += 40.0;
            }
            if crosses(leader, *other) {
                cost += 40.0;
            }
        }
        if cost >= limit {
            return cost;
        }
        for &(centre, radius) in &self.balls {
            let nearest = Spot::new(
                centre.x.clamp(roomy.min.x, roomy.max.x),
                centre.y.clamp(roomy.min.y, roomy.max.y),
            );
            if nearest.distance(centre) < radius {
                cost += 12.0;
            }
            // A leader over another tube is worse than a longer one.
            if centre.distance(anchor) > 2.5 * radius
                && distance_to_segment(centre, leader) < radius
            {
                cost += 2.0;
            }
            if cost >= limit {
                return cost;
            }
        }
        for line in &self.lines {
            if clip_segment(line[0], line[1], rect).is_some() {
                cost += 3.0;
            }
        }
        cost
    }
}

/// Rings of candidate places, their distance, and places per ring.
const RINGS: u32 = 9;
const RING_STEP_MM: f64 = 1.7;
const TURNS: u32 = 24;

fn paint(label: &Label, anchor: Spot, rect: Rect) -> Vec<Item> {
    let centre = rect.centre();
    let mut items = Vec::new();
    let narrow = Line::solid(Weight::Narrow);
    // The leader ends at the frame of the label.
    let edge = leave(rect, anchor);
    if let Some(edge) = edge.filter(|e| e.distance(anchor) > 0.6) {
        items.push(Item::line(anchor, edge, Line::solid(Weight::Hair)));
    }
    match label.look {
        Look::Mark => {
            items.push(Item::Circle {
                centre: anchor,
                radius_mm: 0.45,
                line: None,
                fill: Fill::Solid,
            });
            items.push(Item::Polygon {
                spots: rounded(rect),
                line: Some(narrow),
                fill: Fill::Paper,
            });
        }
        Look::Flag => {
            items.push(Item::Circle {
                centre: anchor,
                radius_mm: 0.9,
                line: Some(Line::solid(Weight::Medium)),
                fill: Fill::Open,
            });
            items.push(Item::rect(
                rect,
                Some(Line::new(Weight::Medium, Dash::Solid)),
                Fill::Tint,
            ));
        }
        Look::Joint | Look::Name => {}
    }
    let lettering = label.look.lettering();
    items.push(Item::Text {
        at: centre + Spot::new(0.0, BASE_LINE_DROP * lettering.size_mm),
        text: label.text.clone(),
        lettering,
        turn_rad: 0.0,
        has_halo: matches!(label.look, Look::Joint | Look::Name),
    });
    items
}

/// Where the line from outside to the rectangle's middle meets its edge; `None` from inside.
fn leave(rect: Rect, from: Spot) -> Option<Spot> {
    (!rect.holds(from))
        .then(|| clip_segment(from, rect.centre(), rect))
        .flatten()
        .map(|[edge, _]| edge)
}

fn rounded(rect: Rect) -> Vec<Spot> {
    let r = 0.5 * rect.height();
    let mut spots = Vec::new();
    for (centre, from) in [
        (Spot::new(rect.max.x - r, rect.centre().y), -math::FRAC_PI_2),
        (Spot::new(rect.min.x + r, rect.centre().y), math::FRAC_PI_2),
    ] {
        for i in 0..=12 {
            spots.push(centre + Spot::toward(from + math::PI * f64::from(i) / 12.0) * r);
        }
    }
    spots
}

fn crosses(p: [Spot; 2], q: [Spot; 2]) -> bool {
    let side = |a: Spot, b: Spot, c: Spot| (b - a).cross(c - a) > 0.0;
    side(p[0], p[1], q[0]) != side(p[0], p[1], q[1])
        && side(q[0], q[1], p[0]) != side(q[0], q[1], p[1])
}

fn distance_to_segment(p: Spot, [a, b]: [Spot; 2]) -> f64 {
    let d = b - a;
    let t = (p - a).dot(d) / d.dot(d).max(1e-12);
    p.distance(a.lerp(b, t.clamp(0.0, 1.0)))
}
