//! Solids from what a tape gives.

use tubewright_build::model::{BodyKind, Direction, Edge, Side};
use tubewright_geometry::{OrientedBox, Point, Prism, Solid, SolidError, UnitVector, Vector};

use super::hold::Anchor;
use crate::places::{PlacedFloor, PlacedPoint, Places};

/// Why a body could not be built.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ShapeError {
    /// A place that the body needs was not found by the survey.
    #[error("the place “{0}” that it needs is not found; take more readings to it")]
    PlaceNotFound(String),
    /// The floor of a set-up was not found.
    #[error("the floor of the set-up “{0}” is not found; take at least three heights in it")]
    FloorNotFound(String),
    /// The ground is only known from a set-up on its wheels.
    #[error(
        "the set-up “{0}” is not on its wheels, so its floor says nothing about ground clearance; measure three heights on its wheels"
    )]
    NotOnWheels(String),
    /// Two places of the body lie on each other.
    #[error("“{0}” and “{1}” lie {2:.1} mm apart, too near to give a direction")]
    TooNear(String, String, f64),
    /// Inner and outer cannot be told on the car's middle.
    #[error(
        "it lies on the car's middle plane (y = {0:.0} mm), where inner and outer mean nothing; describe it as a box or an outline"
    )]
    OnTheMiddle(f64),
    /// A direction lies in the plane of the outline.
    #[error("its outline stands nearly along the direction that its depth should go")]
    DepthAlongOutline,
    /// Fewer than three corners, or all on one line.
    #[error("its corners enclose no area")]
    NoArea,
    /// A size is not positive.
    #[error("its {0} is {1:.1} mm; it must be more than zero")]
    NoSize(&'static str, f64),
    /// Its numbers make no body.
    #[error("it cannot be built: {0}")]
    NoBody(#[from] SolidError),
    /// Made elsewhere.
    #[error("a scan is placed by its marks, not by a shape")]
    IsScan,
    /// This program does not know the kind.
    #[error("this kind of body is not known")]
    Unknown,
}

/// A solid, the places it was built from, and how far the real thing may lie outside it.
#[derive(Clone, Debug)]
pub struct Shape {
    /// In the car's axes, mm.
    pub solid_in_car: Solid,
    /// The places it hangs on, in the order in which its kind names them.
    pub anchors: Vec<Anchor>,
    /// How far its places were from the ideal shape (corners off one plane), mm.
    pub misfit_mm: f64,
}

/// Finds the places of a body, from the survey or where they are put on trial.
struct Finder<'a> {
    places: &'a Places,
    on_trial: Option<core::slice::Iter<'a, Point>>,
    anchors: Vec<Anchor>,
}

impl Finder<'_> {
    fn find(&mut self, place: &tubewright_build::model::Place) -> Result<Point, ShapeError> {
        let not_found = || ShapeError::PlaceNotFound(place.at.name().to_string());
        if let Some(points) = &mut self.on_trial {
            return points.next().copied().ok_or_else(not_found);
        }
        let found = self.places.place(&place.at).ok_or_else(not_found)?;
        self.anchors.push(Anchor::at(&place.at, found));
        Ok(found.point_in_car)
    }

    fn shape(self, solid_in_car: Solid) -> Shape {
        Shape {
            solid_in_car,
            anchors: self.anchors,
            misfit_mm: 0.0,
        }
    }
}

fn positive(name: &'static str, mm: f64) -> Result<f64, ShapeError> {
    if mm > 0.0 {
        Ok(mm)
    } else {
        Err(ShapeError::NoSize(name, mm))
    }
}

/// Builds the solid of a body.
///
/// # Errors
/// [`ShapeError`]: a place is missing or the places do not make the shape.
pub fn shape_of(kind: &BodyKind, places: &Places) -> Result<Shape, ShapeError> {
    let shape = shape_by(
        kind,
        Finder {
            places,
            on_trial: None,
            anchors: Vec::new(),
        },
    )?;
    shape.solid_in_car.check()?;
    Ok(shape)
}

/// The solid that a body would be with its places (in the order of [`Shape::anchors`]) elsewhere;
/// `None` for the ground and a scan, and where they make no body.
pub(crate) fn solid_on_trial(kind: &BodyKind, anchors: &[Point]) -> Option<Solid> {
    let finder = Finder {
        places: &Places::default(),
        on_trial: Some(anchors.iter()),
        anchors: Vec::new(),
    };
    Some(shape_by(kind, finder).ok()?.solid_in_car)
}

fn shape_by(kind: &BodyKind, mut finder: Finder<'_>) -> Result<Shape, ShapeError> {
    match kind {
        BodyKind::Rail {
            from,
            to,
            edge,
            width,
            height,
        } => {
            let (a, b) = (finder.find(from)?, finder.find(to)?);
            let along = direction_between(a, b, from.at.name(), to.at.name())?;
            let solid = rail(
                a,
                b,
                along,
                *edge,
                positive("width", width.mm())?,
                positive("height", height.mm())?,
            )?;
            Ok(finder.shape(solid))
        }
        BodyKind::Tube {
            from,
            to,
            touched,
            diameter,
        } => {
            let (a, b) = (finder.find(from)?, finder.find(to)?);
            let along = direction_between(a, b, from.at.name(), to.at.name())?;
            let radius = 0.5 * positive("diameter", diameter.mm())?;
            let outward = along
                .normal_toward(touched.unit().vector())
                .ok_or(ShapeError::DepthAlongOutline)?;
            let inward = outward * -radius;
            Ok(finder.shape(Solid::Cylinder {
                a: a + inward,
                b: b + inward,
                radius,
            }))
        }
        BodyKind::Tyre {
            hub,
            marking,
            side,
            inboard,
            bulge,
        } => {
            let hub = finder.find(hub)?;
            let inward = match side {
                Side::Left => 1.0,
                Side::Right => -1.0,
                Side::Centre => return Err(ShapeError::OnTheMiddle(hub.y)),
            };
            let bulge = bulge.as_ref().map_or(0.0, |bulge| bulge.mm());
            let centre = hub + UnitVector::Y * (inward * inboard.mm());
            let half = UnitVector::Y * (0.5 * marking.width.mm() + bulge);
            let radius = 0.5 * positive("diameter", marking.diameter.mm())? + bulge;
            Ok(finder.shape(Solid::Cylinder {
                a: centre - half,
                b: centre + half,
                radius,
            }))
        }
        BodyKind::Tank {
            corners,
            depth,
            depth_goes,
        }
        | BodyKind::Outline {
            corners,
            depth,
            depth_goes,
        } => {
            let points = corners
                .iter()
                .map(|corner| finder.find(corner))
                .collect::<Result<Vec<_>, _>>()?;
            let (prism, misfit_mm) = prism(&points, positive("depth", depth.mm())?, *depth_goes)?;
            Ok(Shape {
                misfit_mm,
                ..finder.shape(Solid::Prism(prism))
            })
        }
        BodyKind::Box { corner, opposite } => {
            let (a, b) = (finder.find(corner)?, finder.find(opposite)?);
            let half = ((b - a) / 2.0).to_array().map(f64::abs);
            Ok(finder.shape(Solid::Box(OrientedBox::axis_aligned(a.lerp(b, 0.5), half))))
        }
        BodyKind::Capsule { from, to, diameter } => {
            let (a, b) = (finder.find(from)?, finder.find(to)?);
            let radius = 0.5 * positive("diameter", diameter.mm())?;
            Ok(finder.shape(Solid::Capsule { a, b, radius }))
        }
        BodyKind::Cylinder { from, to, diameter } => {
            let (a, b) = (finder.find(from)?, finder.find(to)?);
            direction_between(a, b, from.at.name(), to.at.name())?;
            let radius = 0.5 * positive("diameter", diameter.mm())?;
            Ok(finder.shape(Solid::Cylinder { a, b, radius }))
        }
        BodyKind::Sphere { at, diameter } => {
            let centre = finder.find(at)?;
            let radius = 0.5 * positive("diameter", diameter.mm())?;
            Ok(finder.shape(Solid::Sphere { centre, radius }))
        }
        BodyKind::HalfSpace {
            through: [p, q, r],
            keep_out,
        } => {
            let (p, q, r) = (finder.find(p)?, finder.find(q)?, finder.find(r)?);
            let normal = (q - p).cross(r - p).direction().ok_or(ShapeError::NoArea)?;
            let toward = normal.dot(keep_out.unit().vector());
            if toward.abs() < LEAST_LEAN {
                return Err(ShapeError::DepthAlongOutline);
            }
            let outward = if toward > 0.0 { -normal } else { normal };
            Ok(finder.shape(Solid::HalfSpace { point: p, outward }))
        }
        BodyKind::Ground { setup } => {
            let floor = finder
                .places
                .floors
                .get(setup.as_str())
                .ok_or_else(|| ShapeError::FloorNotFound(setup.to_string()))?;
            ground(floor, setup)
        }
        BodyKind::Scan { .. } => Err(ShapeError::IsScan),
        _ => Err(ShapeError::Unknown),
    }
}

/// Cosine below which a direction counts as lying in a plane: 6° off it.
const LEAST_LEAN: f64 = 0.1;

/// Nearest two places that still give a direction, mm: at 20 mm a tape's 3 mm turns the body by 9°.
const LEAST_BASE_MM: f64 = 20.0;

fn direction_between(a: Point, b: Point, from: &str, to: &str) -> Result<UnitVector, ShapeError> {
    let apart = a.distance(b);
    (b - a)
        .direction()
        .filter(|_| apart >= LEAST_BASE_MM)
        .ok_or_else(|| ShapeError::TooNear(from.to_owned(), to.to_owned(), apart))
}

fn rail(
    a: Point,
    b: Point,
    along: UnitVector,
    edge: Edge,
    width_mm: f64,
    height_mm: f64,
) -> Result<Solid, ShapeError> {
    let middle = a.lerp(b, 0.5);
    // On the middle plane itself no side is outer; 1 mm is far below any rail's half width.
    if middle.y.abs() < 1.0 {
        return Err(ShapeError::OnTheMiddle(middle.y));
    }
    let outboard = UnitVector::Y * middle.y.signum();
    let across = along
        .normal_toward(outboard)
        .ok_or(ShapeError::DepthAlongOutline)?;
    let up = along.vector().cross(across.vector());
    let up = UnitVector::from_unit(up / up.norm());
    let (up, upright) = if up.dot(UnitVector::Z.vector()) < 0.0 {
        (-up, -1.0)
    } else {
        (up, 1.0)
    };
    let raise = if edge.is_lower { 0.5 } else { -0.5 };
    let outward = if edge.is_outer { -0.5 } else { 0.5 };
    let centre = middle + up * (raise * height_mm) + across * (outward * width_mm);
    // Right-handed whichever way `up` had to be turned.
    let across = if upright < 0.0 { -across } else { across };
    Ok(Solid::Box(OrientedBox {
        centre,
        axes: [along, across, up],
        half: [0.5 * a.distance(b), 0.5 * width_mm, 0.5 * height_mm],
    }))
}

/// The prism over a measured outline and the largest distance of a corner from its plane.
fn prism(
    corners: &[Point],
    depth_mm: f64,
    depth_goes: Direction,
) -> Result<(Prism, f64), ShapeError> {
    let (Some(&first), true) = (corners.first(), corners.len() >= 3) else {
        return Err(ShapeError::NoArea);
    };
    // Newell's normal: the sum of the cross products round the outline (Sutherland, Sproull and
    // Schumacker 1974, attributed to M. Newell); it is the area vector even when corners are off
    // the plane.
    let mut area = Vector::ZERO;
    let mut sum = Vector::ZERO;
    for (i, &corner) in corners.iter().enumerate() {
        let next = corners.get(i + 1).copied().unwrap_or(first);
        area += (corner - first).cross(next - first);
        sum += corner - first;
    }
    let normal = area.direction().ok_or(ShapeError::NoArea)?;
    let toward = normal.dot(depth_goes.unit().vector());
    if toward.abs() < LEAST_LEAN {
        return Err(ShapeError::DepthAlongOutline);
    }
    let normal = if toward < 0.0 { -normal } else { normal };
    #[expect(clippy::cast_precision_loss, reason = "an outline has few corners")]
    let origin = first + sum / corners.len() as f64;
    let u = normal
        .normal_toward(corners.get(1).copied().unwrap_or(first) - first)
        .ok_or(ShapeError::NoArea)?;
    let v = normal.vector().cross(u.vector());
    let v = UnitVector::from_unit(v / v.norm());
    let outline = corners
        .iter()
        .map(|&c| [u.dot(c - origin), v.dot(c - origin)])
        .collect();
    let misfit = corners
        .iter()
        .map(|&c| normal.dot(c - origin).abs())
        .fold(0.0, f64::max);
    Ok((
        Prism {
            origin,
            u,
            v,
            outline,
            depth: depth_mm,
        },
        misfit,
    ))
}

fn ground(floor: &PlacedFloor, setup: &str) -> Result<Shape, ShapeError> {
    if !floor.is_on_wheels {
        return Err(ShapeError::NotOnWheels(setup.to_owned()));
    }
    let variance = floor.sigma_mm * floor.sigma_mm;
    let anchor = PlacedPoint {
        point_in_car: floor.point_in_car,
        covariance: [
            [variance, 0.0, 0.0],
            [0.0, variance, 0.0],
            [0.0, 0.0, variance],
        ],
    };
    Ok(Shape {
        solid_in_car: Solid::HalfSpace {
            point: floor.point_in_car,
            outward: floor.up,
        },
        anchors: vec![Anchor::on_floor(setup, anchor)],
        misfit_mm: 0.0,
    })
}
