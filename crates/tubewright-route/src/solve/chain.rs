//! A chain of pieces laid out from its sizes, and how each of its places moves with each size.

use tubewright_geometry::{CentreLine, Frame, Point, TubeElement, UnitVector, Vector, math};

use super::layout::{Joint, Layout};
use crate::problem::{Component, RouteProblem, Section};

/// Velocity of the rest of the chain with one size: `moves + turns × place`.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Screw {
    pub(crate) turns: Vector,
    moves: Vector,
}

impl Screw {
    pub(crate) const NONE: Self = Self {
        turns: Vector::ZERO,
        moves: Vector::ZERO,
    };

    pub(crate) fn slide(along: Vector) -> Self {
        Self {
            turns: Vector::ZERO,
            moves: along,
        }
    }

    pub(crate) fn turn(axis: Vector, through: Point) -> Self {
        Self {
            turns: axis,
            moves: -axis.cross(through.to_vector()),
        }
    }

    /// Both at once.
    pub(crate) fn and(self, other: Self) -> Self {
        Self {
            turns: self.turns + other.turns,
            moves: self.moves + other.moves,
        }
    }

    pub(crate) fn at(&self, place: Point) -> Vector {
        self.moves + self.turns.cross(place.to_vector())
    }
}

/// Travel, twelve and three o'clock of a frame as plain vectors: the search carries thousands.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Stance {
    pub(crate) origin: Point,
    pub(crate) travel: Vector,
    pub(crate) twelve: Vector,
}

impl Stance {
    pub(crate) fn of(frame: &Frame) -> Self {
        Self {
            origin: frame.origin,
            travel: frame.travel().vector(),
            twelve: frame.twelve().vector(),
        }
    }

    /// The same as a frame.
    pub(crate) fn frame(&self) -> Frame {
        Frame::from_axes(self.origin, unit(self.travel), unit(self.twelve))
    }

    pub(crate) fn upright(origin: Point, travel: UnitVector) -> Self {
        Self::of(&Frame::upright(origin, travel))
    }

    pub(crate) fn clocked(&self, clock_rad: f64) -> Self {
        let (sin, cos) = math::sin_cos(clock_rad);
        Self {
            twelve: self.twelve * cos + self.travel.cross(self.twelve) * sin,
            ..*self
        }
    }

    pub(crate) fn bent(&self, angle_rad: f64, clr_mm: f64) -> Self {
        let (sin, cos) = math::sin_cos(angle_rad);
        Self {
            origin: self.origin
                + self.travel * (clr_mm * sin)
                + self.twelve * (clr_mm * (1.0 - cos)),
            travel: self.travel * cos + self.twelve * sin,
            twelve: self.twelve * cos - self.travel * sin,
        }
    }

    pub(crate) fn ahead(&self, length_mm: f64) -> Self {
        Self {
            origin: self.origin + self.travel * length_mm,
            ..*self
        }
    }
}

/// What an element is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Part {
    /// Straight tube in a slot, or a bend.
    Tube,
    /// Body of a component: turns with it, wider than the tube.
    Body,
}

/// A swept ball of the chain.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Element {
    pub(crate) tube: TubeElement,
    pub(crate) part: Part,
    /// Slot number for a straight, joint number for the rest.
    pub(crate) index: usize,
    pub(crate) is_slot: bool,
    /// Distance along the chain of its upstream end, mm.
    pub(crate) along: f64,
}

/// A chain laid out.
#[derive(Clone, Debug)]
pub(crate) struct Laid {
    pub(crate) elements: Vec<Element>,
    pub(crate) screws: Vec<Screw>,
    pub(crate) end: Stance,
    pub(crate) length: f64,
    /// Velocities of the whole chain with the place of what it starts on, with their sizes.
    pub(crate) start_screws: Vec<(usize, Screw)>,
    /// Upstream and downstream end of each component's axis, with its joint number.
    pub(crate) components: Vec<(usize, usize, Point, Point)>,
}

/// Straights shorter than this are not laid out as elements, mm.
const NOTHING_MM: f64 = 1e-7;
/// Spacing of the balls that stand for the flat of an oval body, mm.
const OVAL_SPACING_MM: f64 = 8.0;

/// Lays a chain out from `start`.
pub(crate) fn lay(
    problem: &RouteProblem,
    layout: &Layout,
    start: Stance,
    tube_radius: f64,
    clr: f64,
    x: &[f64],
) -> Laid {
    let mut stance = start;
    let mut along = 0.0;
    let mut out = Laid {
        elements: Vec::with_capacity(2 * layout.joints.len() + 2),
        screws: Vec::with_capacity(layout.sizes()),
        end: start,
        length: 0.0,
        start_screws: Vec::new(),
        components: Vec::new(),
    };
    let size = |i: usize| x.get(i).copied().unwrap_or(0.0);
    for i in 0..layout.slots.len() {
        let length = size(3 * i);
        out.screws.push(Screw::slide(stance.travel));
        // A negative length may occur while a start is being mended: it is carried, not laid.
        let next = stance.ahead(length);
        if length > NOTHING_MM {
            out.elements.push(Element {
                tube: segment(stance.origin, next.origin, tube_radius),
                part: Part::Tube,
                index: i,
                is_slot: true,
                along,
            });
        }
        along += length.max(0.0);
        stance = next;
        match layout.joints.get(i) {
            Some(Joint::Bend { .. }) => {
                let (angle, clock) = (size(3 * i + 1), size(3 * i + 2));
                let turned = stance.clocked(clock);
                let centre = turned.origin + turned.twelve * clr;
                let axis = turned.travel.cross(turned.twelve);
                out.screws.push(Screw::turn(axis, centre));
                out.screws.push(Screw::turn(turned.travel, turned.origin));
                out.elements.push(Element {
                    tube: TubeElement {
                        line: CentreLine::Arc {
                            centre,
                            u: unit(-turned.twelve),
                            v: unit(turned.travel),
                            radius: clr,
                            angle: angle.max(1e-9),
                        },
                        radius: tube_radius,
                    },
                    part: Part::Tube,
                    index: i,
                    is_slot: false,
                    along,
                });
                along += clr * angle;
                stance = turned.bent(angle, clr);
            }
            Some(&Joint::Component(c)) => {
                out.screws.push(Screw::NONE);
                out.screws.push(Screw::turn(stance.travel, stance.origin));
                if let Some(component) = problem.components.get(c) {
                    let next = stance.ahead(component.length_mm);
                    out.elements.push(Element {
                        tube: segment(stance.origin, next.origin, tube_radius),
                        part: Part::Tube,
                        index: i,
                        is_slot: false,
                        along,
                    });
                    for tube in bodies(component, &stance, size(3 * i + 2)) {
                        out.elements.push(Element {
                            tube,
                            part: Part::Body,
                            index: i,
                            is_slot: false,
                            along,
                        });
                    }
                    out.components.push((i, c, stance.origin, next.origin));
                    along += component.length_mm;
                    stance = next;
                }
            }
            None => {}
        }
    }
    out.end = stance;
    out.length = along;
    out
}

fn unit(v: Vector) -> UnitVector {
    let norm = v.norm();
    UnitVector::from_unit(v / if norm > 0.0 { norm } else { 1.0 })
}

fn segment(a: Point, b: Point, radius: f64) -> TubeElement {
    TubeElement {
        line: CentreLine::Segment { a, b },
        radius,
    }
}

/// The swept balls of a component's body: one row, for an oval several side by side. Between rows a
/// ball of the flat would stand out by at most the sagitta of the spacing, which their radius is
/// grown by.
fn bodies(component: &Component, stance: &Stance, roll_rad: f64) -> Vec<TubeElement> {
    let (radius, spread) = match component.section {
        Section::Round { diameter_mm } => (diameter_mm / 2.0, 0.0),
        Section::Oval {
            width_mm,
            height_mm,
        } => (height_mm / 2.0, (width_mm - height_mm) / 2.0),
    };
    let length = component.length_mm;
    let (from, to) = if length < 2.0 * radius {
        (length / 2.0, length / 2.0)
    } else {
        (radius, length - radius)
    };
    let a = stance.ahead(from).origin;
    let b = stance.ahead(to.max(from + 1e-6)).origin;
    if spread <= 0.0 {
        return vec![segment(a, b, radius)];
    }
    let upright = Stance::upright(stance.origin, unit(stance.travel)).clocked(roll_rad);
    let wide = upright.travel.cross(upright.twelve);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a small positive count"
    )]
    let rows = (2.0 * spread / OVAL_SPACING_MM).ceil().clamp(1.0, 200.0) as usize;
    let spacing = 2.0 * spread / rows as f64;
    let grown = (radius * radius + spacing * spacing / 4.0).sqrt();
    (0..=rows)
        .map(|k| {
            let aside = wide * (spacing * k as f64 - spread);
            let r = if k == 0 || k == rows { radius } else { grown };
            segment(a + aside, b + aside, r)
        })
        .collect()
}
