//! Whether a solid's numbers are those of a body: checked once, at the door.

use thiserror::Error;

use crate::solid::{OrientedBox, Prism, Solid};
use crate::tube::{CentreLine, TubeElement};
use crate::vector::{Point, UnitVector};

/// Why numbers do not describe a body.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum SolidError {
    /// A coordinate or size is not a finite number.
    #[error("{what} is not a finite number")]
    NotFinite {
        /// Which number.
        what: &'static str,
    },
    /// A size that must be above zero is not.
    #[error("{what} is {value_mm} mm: it must be above zero")]
    NotPositive {
        /// Which size.
        what: &'static str,
        /// Its value in mm.
        value_mm: f64,
    },
    /// Two ends of an axis are the same place.
    #[error("the two ends of the {what} are the same place: give its length a direction")]
    NoAxis {
        /// Which body.
        what: &'static str,
    },
    /// Directions that must be square to each other are not.
    #[error("the axes of the {what} are not square to each other")]
    NotSquare {
        /// Which body.
        what: &'static str,
    },
    /// An outline with fewer than three corners.
    #[error("an outline of {corners} corners holds no area: give at least three")]
    FewCorners {
        /// How many there are.
        corners: usize,
    },
    /// An outline that crosses itself.
    #[error(
        "the outline crosses itself between edges {first} and {second}: put its corners in order"
    )]
    Crosses {
        /// One edge, counted from 0.
        first: usize,
        /// The other edge.
        second: usize,
    },
    /// A union or cloud without anything in it.
    #[error("the {what} holds nothing")]
    Empty {
        /// What it is.
        what: &'static str,
    },
}

/// How far axes may be from square and unit length: they come from measured directions that were
/// normalised once.
const SQUARE: f64 = 1e-6;

fn finite(what: &'static str, points: &[Point]) -> Result<(), SolidError> {
    if points.iter().all(|p| p.is_finite()) {
        Ok(())
    } else {
        Err(SolidError::NotFinite { what })
    }
}

fn positive(what: &'static str, value_mm: f64) -> Result<(), SolidError> {
    if !value_mm.is_finite() {
        Err(SolidError::NotFinite { what })
    } else if value_mm <= 0.0 {
        Err(SolidError::NotPositive { what, value_mm })
    } else {
        Ok(())
    }
}

fn square(what: &'static str, a: UnitVector, b: UnitVector) -> Result<(), SolidError> {
    let unit = |u: UnitVector| (u.vector().norm() - 1.0).abs() <= SQUARE;
    if unit(a) && unit(b) && a.dot(b.vector()).abs() <= SQUARE {
        Ok(())
    } else {
        Err(SolidError::NotSquare { what })
    }
}

impl Solid {
    /// Checks that every number of the solid is finite and that its sizes and axes make a body. The
    /// distances assume so: give them nothing that has not passed.
    ///
    /// # Errors
    /// [`SolidError`], the first fault found.
    pub fn check(&self) -> Result<(), SolidError> {
        match self {
            Self::Box(b) => check_box(b),
            Self::Capsule { a, b, radius } => {
                finite("an end of the capsule", &[*a, *b])?;
                positive("the capsule's radius", *radius)
            }
            Self::Cylinder { a, b, radius } => {
                finite("an end of the cylinder", &[*a, *b])?;
                positive("the cylinder's radius", *radius)?;
                if (*b - *a).direction().is_none() {
                    return Err(SolidError::NoAxis { what: "cylinder" });
                }
                Ok(())
            }
            Self::Sphere { centre, radius } => {
                finite("the ball's centre", &[*centre])?;
                positive("the ball's radius", *radius)
            }
            Self::HalfSpace { point, outward } => {
                finite("the place on the plane", &[*point])?;
                square("plane", *outward, outward.any_normal())
            }
            Self::Prism(p) => check_prism(p),
            // Checked when they were built.
            Self::Mesh(_) | Self::PointCloud(_) => Ok(()),
            Self::Cloud { points, radius } => {
                if points.is_empty() {
                    return Err(SolidError::Empty { what: "cloud" });
                }
                finite("a point of the cloud", points)?;
                if radius.is_finite() && *radius >= 0.0 {
                    Ok(())
                } else {
                    Err(SolidError::NotFinite {
                        what: "the cloud's radius",
                    })
                }
            }
            Self::Tube(tube) => check_tube(tube),
            Self::Union(members) => {
                if members.is_empty() {
                    return Err(SolidError::Empty { what: "union" });
                }
                members.iter().try_for_each(Self::check)
            }
        }
    }
}

fn check_box(b: &OrientedBox) -> Result<(), SolidError> {
    finite("the box's centre", &[b.centre])?;
    for half in b.half {
        if !half.is_finite() {
            return Err(SolidError::NotFinite {
                what: "a side of the box",
            });
        }
        if half < 0.0 {
            return Err(SolidError::NotPositive {
                what: "half a side of the box",
                value_mm: half,
            });
        }
    }
    let [x, y, z] = b.axes;
    square("box", x, y)?;
    square("box", y, z)?;
    square("box", z, x)
}

fn check_tube(tube: &TubeElement) -> Result<(), SolidError> {
    positive("the tube's radius", tube.radius)?;
    match tube.line {
        CentreLine::Segment { a, b } => finite("an end of the tube", &[a, b]),
        CentreLine::Arc {
            centre,
            u,
            v,
            radius,
            angle,
        } => {
            finite("the centre of the bend", &[centre])?;
            positive("the bend's radius", radius)?;
            positive("the bend's angle", angle)?;
            square("bend", u, v)
        }
    }
}

fn check_prism(p: &Prism) -> Result<(), SolidError> {
    finite("the outline's origin", &[p.origin])?;
    positive("the depth", p.depth)?;
    square("outline", p.u, p.v)?;
    if p.outline.iter().flatten().any(|x| !x.is_finite()) {
        return Err(SolidError::NotFinite {
            what: "a corner of the outline",
        });
    }
    let corners = p.outline.len();
    if corners < 3 {
        return Err(SolidError::FewCorners { corners });
    }
    let edges: Vec<([f64; 2], [f64; 2])> = p
        .outline
        .iter()
        .copied()
        .zip(p.outline.iter().copied().cycle().skip(1))
        .collect();
    for (i, &first) in edges.iter().enumerate() {
        for (j, &second) in edges.iter().enumerate().skip(i + 2) {
            // The last edge and the first are neighbours.
            let neighbours = i == 0 && j + 1 == edges.len();
            if !neighbours && cross(first, second) {
                return Err(SolidError::Crosses {
                    first: i,
                    second: j,
                });
            }
        }
    }
    Ok(())
}

/// True when two edges cross in their insides.
fn cross((a, b): ([f64; 2], [f64; 2]), (c, d): ([f64; 2], [f64; 2])) -> bool {
    let side = |p: [f64; 2], q: [f64; 2], r: [f64; 2]| {
        (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
    };
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}
