//! `route-problem/1` to the model, explicitly, with the place in the file of whatever is wrong.

use std::sync::Arc;

use tubewright_geometry::{Frame, OrientedBox, Point, Solid, TriangleMesh, UnitVector, Vector};

use super::mirror::{self, Shape, Triple};
use crate::cost::CostModel;
use crate::problem::{
    Bar, Body, BodyKind, Component, Crossover, Passage, Placement, Ports, ProblemError, Region,
    RouteProblem, Rules, Run, Section, Side, StockBend, Tube, TurnRoom,
};

/// Angles within this of a stock angle need no cut, by the definition of the form (degrees).
const UNCUT_DEG: f64 = 0.05;

/// Why a problem file could not be read.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum FormError {
    /// No JSON, or a key is missing or of the wrong kind.
    #[error("the file does not read as a route problem: {0}")]
    Json(#[from] serde_json::Error),
    /// A value has no meaning.
    #[error("{path}: {what}")]
    Value {
        /// JSON path.
        path: String,
        /// What is wrong and what to write.
        what: String,
    },
    /// The problem as a whole does not hold together.
    #[error(transparent)]
    Problem(#[from] ProblemError),
}

fn wrong(path: impl Into<String>, what: impl Into<String>) -> FormError {
    FormError::Value {
        path: path.into(),
        what: what.into(),
    }
}

fn finite(path: &str, t: Triple) -> Result<Triple, FormError> {
    if t.iter().all(|x| x.is_finite()) {
        Ok(t)
    } else {
        Err(wrong(path, "a coordinate is not a finite number"))
    }
}

fn point(path: &str, t: Triple) -> Result<Point, FormError> {
    Ok(Point::from_array(finite(path, t)?))
}

fn vector(path: &str, t: Triple) -> Result<Vector, FormError> {
    Ok(Vector::from_array(finite(path, t)?))
}

fn direction(path: &str, t: Triple) -> Result<UnitVector, FormError> {
    vector(path, t)?.direction().ok_or_else(|| {
        wrong(
            path,
            "a direction of no length; give three numbers, not all 0",
        )
    })
}

fn region(path: &str, r: &mirror::Region) -> Result<Region, FormError> {
    let region = Region {
        min: point(&format!("{path}/min"), r.min)?,
        max: point(&format!("{path}/max"), r.max)?,
    };
    if r.min.iter().zip(&r.max).any(|(lo, hi)| lo > hi) {
        return Err(wrong(path, "min is above max"));
    }
    Ok(region)
}

/// Reads a problem and the cost model that it states.
///
/// # Errors
/// [`FormError`] with the JSON path of the value that is wrong.
pub fn read_problem(text: &str) -> Result<(RouteProblem, CostModel), FormError> {
    let file: mirror::Problem = serde_json::from_str(text)?;
    if file.form != "route-problem/1" {
        return Err(wrong(
            "/form",
            format!("{:?} is not route-problem/1", file.form),
        ));
    }
    let tube_names: Vec<&String> = file.tubes.keys().collect();
    let component_names: Vec<&String> = file.components.keys().collect();
    let problem = RouteProblem {
        id: file.id.clone(),
        bodies: bodies(&file)?,
        workspace: Some(region("/workspace", &file.workspace)?),
        tubes: file
            .tubes
            .iter()
            .map(|(id, t)| tube(id, t))
            .collect::<Result<_, _>>()?,
        rules: rules(&file.rules)?,
        components: file
            .components
            .iter()
            .map(|(id, c)| component(id, c))
            .collect::<Result<_, _>>()?,
        crossovers: file
            .crossovers
            .iter()
            .enumerate()
            .map(|(i, x)| crossover(i, x))
            .collect::<Result<_, _>>()?,
        runs: file
            .runs
            .iter()
            .enumerate()
            .map(|(i, r)| run(i, r, &tube_names, &component_names, &file.crossovers))
            .collect::<Result<_, _>>()?,
    };
    problem.checked()?;
    let c = &file.cost;
    for (key, value) in [
        ("weld", c.weld),
        ("cut", c.cut),
        ("per_degree", c.per_degree),
        ("per_metre", c.per_metre),
    ] {
        if !(value.is_finite() && value >= 0.0) {
            return Err(wrong(
                format!("/cost/{key}"),
                format!("{value} is not a price; give a number, 0 or more"),
            ));
        }
    }
    let model = CostModel::route_problem(c.weld, c.cut, c.per_degree, c.per_metre);
    Ok((problem, model))
}

fn rules(r: &mirror::Rules) -> Result<Rules, FormError> {
    for (key, value) in [
        ("min_straight", r.min_straight),
        ("min_bend_angle", r.min_bend_angle),
        ("max_bends", r.max_bends),
        ("self_gap", r.self_gap),
        ("run_gap", r.run_gap),
    ] {
        if !(value.is_finite() && value >= 0.0) {
            return Err(wrong(
                format!("/rules/{key}"),
                format!("{value} is not 0 or more"),
            ));
        }
    }
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "checked to be 0 or more, and held to a thousand"
    )]
    let max_bends = r.max_bends.min(1000.0) as usize;
    Ok(Rules {
        min_straight_mm: r.min_straight,
        min_bend_rad: r.min_bend_angle.to_radians(),
        max_bends,
        self_gap_mm: r.self_gap,
        run_gap_mm: r.run_gap,
        uncut_tolerance_rad: UNCUT_DEG.to_radians(),
        stub_mm: 0.0,
        rounding_room_mm: 0.0,
        end_place_mm: r.pos_tol,
        end_turn_rad: r.dir_tol.to_radians(),
    })
}

fn bodies(file: &mirror::Problem) -> Result<Vec<Body>, FormError> {
    let mut bodies = Vec::new();
    for (i, value) in file.obstacles.iter().enumerate() {
        let path = format!("/obstacles/{i}");
        let body: mirror::Obstacle =
            serde_json::from_value(value.clone()).map_err(|e| wrong(&path, e.to_string()))?;
        let id = body.id.unwrap_or_else(|| format!("body {}", i + 1));
        let (gap_mm, kind) = if let Shape::Ground { min_clearance, .. } = body.shape {
            (min_clearance, BodyKind::Ground)
        } else {
            let class = body.class.as_ref().ok_or_else(|| {
                wrong(
                    format!("{path}/class"),
                    "every body but the ground needs a class",
                )
            })?;
            let gap = file.gaps.get(class).ok_or_else(|| {
                wrong(
                    format!("{path}/class"),
                    format!("no gap is given for class {class:?} under /gaps"),
                )
            })?;
            (*gap, BodyKind::Car)
        };
        if !(gap_mm.is_finite() && gap_mm >= 0.0) {
            return Err(wrong(&path, format!("its gap {gap_mm} is not 0 or more")));
        }
        bodies.push(Body {
            solid: solid(&path, &body.shape)?,
            id,
            gap_mm,
            kind,
        });
    }
    Ok(bodies)
}

fn solid(path: &str, shape: &Shape) -> Result<Solid, FormError> {
    let size = |key: &str, value: f64| {
        if value.is_finite() && value > 0.0 {
            Ok(value)
        } else {
            Err(wrong(
                format!("{path}/{key}"),
                format!("{value} is not above 0"),
            ))
        }
    };
    Ok(match shape {
        Shape::Box { center, half, axes } => {
            let centre = point(&format!("{path}/center"), *center)?;
            let half = finite(&format!("{path}/half"), *half)?;
            match axes {
                None => Solid::Box(OrientedBox::axis_aligned(centre, half)),
                Some(rows) => {
                    let at = format!("{path}/axes");
                    Solid::Box(OrientedBox {
                        centre,
                        axes: [
                            direction(&at, rows[0])?,
                            direction(&at, rows[1])?,
                            direction(&at, rows[2])?,
                        ],
                        half,
                    })
                }
            }
        }
        Shape::Capsule { a, b, r } => Solid::Capsule {
            a: point(&format!("{path}/a"), *a)?,
            b: point(&format!("{path}/b"), *b)?,
            radius: size("r", *r)?,
        },
        Shape::Cylinder { a, b, r } => Solid::Cylinder {
            a: point(&format!("{path}/a"), *a)?,
            b: point(&format!("{path}/b"), *b)?,
            radius: size("r", *r)?,
        },
        Shape::Mesh { vertices, faces } => {
            let vertices = vertices
                .iter()
                .map(|v| point(&format!("{path}/vertices"), *v))
                .collect::<Result<_, _>>()?;
            let mesh = TriangleMesh::new(vertices, faces.clone()).ok_or_else(|| {
                wrong(
                    format!("{path}/faces"),
                    "no face, or a face names a vertex that is not there",
                )
            })?;
            Solid::Mesh(Arc::new(mesh))
        }
        Shape::Ground { z, .. } => Solid::HalfSpace {
            point: point(&format!("{path}/z"), [0.0, 0.0, *z])?,
            outward: UnitVector::Z,
        },
        Shape::Envelope { of } => Solid::Union(
            of.iter()
                .enumerate()
                .map(|(i, s)| solid(&format!("{path}/of/{i}"), s))
                .collect::<Result<_, _>>()?,
        ),
    })
}

fn tube(id: &str, t: &mirror::Tube) -> Result<Tube, FormError> {
    let mut stock = Vec::new();
    for angle in &t.stock_angles {
        let price = t
            .stock_price
            .iter()
            .find(|(key, _)| key.parse::<f64>().is_ok_and(|k| (k - angle).abs() < 1e-9))
            .map(|(_, price)| *price)
            .ok_or_else(|| {
                wrong(
                    format!("/tubes/{id}/stock_price"),
                    format!("no price for the stock angle {angle}"),
                )
            })?;
        stock.push(StockBend {
            angle_rad: angle.to_radians(),
            price,
            leg_in_mm: 0.0,
            leg_out_mm: 0.0,
        });
    }
    stock.sort_by(|a, b| a.angle_rad.total_cmp(&b.angle_rad));
    Ok(Tube {
        id: id.to_owned(),
        od_mm: t.od,
        wall_mm: t.wall,
        clr_mm: t.clr,
        stock,
        straight_price_per_m: t.straight_price_per_m,
    })
}

fn component(id: &str, c: &mirror::Component) -> Result<Component, FormError> {
    let path = format!("/components/{id}");
    let needed = |key: &str, value: Option<f64>| {
        value.ok_or_else(|| wrong(format!("{path}/{key}"), "this shape needs it"))
    };
    let section = match c.shape.as_str() {
        "cylinder" => Section::Round {
            diameter_mm: needed("diameter", c.diameter)?,
        },
        "oval" => Section::Oval {
            width_mm: needed("width", c.width)?,
            height_mm: needed("height", c.height)?,
        },
        other => {
            return Err(wrong(
                format!("{path}/shape"),
                format!("{other:?} is not known; write cylinder or oval"),
            ));
        }
    };
    Ok(Component {
        id: id.to_owned(),
        length_mm: c.length,
        section,
        zone: c
            .zone
            .as_ref()
            .map(|z| region(&format!("{path}/zone"), z))
            .transpose()?,
        placement: Placement::Anywhere,
    })
}

fn crossover(i: usize, x: &mirror::Crossover) -> Result<Crossover, FormError> {
    let path = format!("/crossovers/{i}");
    let ports = |side: &str, p: &mirror::Ports| {
        let at = format!("{path}/ports/{side}");
        Ok::<_, FormError>(Ports {
            inlet: vector(&at, p.inlet.point)?,
            inlet_direction: direction(&at, p.inlet.dir)?,
            outlet: vector(&at, p.outlet.point)?,
            outlet_direction: direction(&at, p.outlet.dir)?,
        })
    };
    Ok(Crossover {
        id: x.id.clone(),
        stands: false,
        turns: TurnRoom::NONE,
        ports_within: None,
        poses: region(
            &format!("{path}/pose_min"),
            &mirror::Region {
                min: x.pose_min,
                max: x.pose_max,
            },
        )?,
        body: x
            .body
            .iter()
            .map(|bar| {
                let at = format!("{path}/body");
                Ok::<_, FormError>(Bar {
                    a: vector(&at, bar.a)?,
                    b: vector(&at, bar.b)?,
                    radius_mm: bar.r,
                })
            })
            .collect::<Result<_, _>>()?,
        left: ports("L", &x.ports.left)?,
        right: ports("R", &x.ports.right)?,
    })
}

fn run(
    i: usize,
    r: &mirror::Run,
    tubes: &[&String],
    components: &[&String],
    crossovers: &[mirror::Crossover],
) -> Result<Run, FormError> {
    let path = format!("/runs/{i}");
    let travel = direction(&format!("{path}/start/dir"), r.start.dir)?;
    let start = Frame::new(
        point(&format!("{path}/start/point"), r.start.point)?,
        travel,
        vector(&format!("{path}/start/up"), r.start.up)?,
    )
    .ok_or_else(|| wrong(format!("{path}/start/up"), "it is parallel to dir"))?;
    let passage = match (&r.crossover, r.side.as_deref()) {
        (None, _) => None,
        (Some(id), side) => Some(Passage {
            crossover: crossovers.iter().position(|x| x.id == *id).ok_or_else(|| {
                wrong(format!("{path}/crossover"), format!("no crossover {id:?}"))
            })?,
            side: match side {
                Some("L") => Side::Left,
                Some("R") => Side::Right,
                _ => return Err(wrong(format!("{path}/side"), "write \"L\" or \"R\"")),
            },
        }),
    };
    let place = |what: &str, name: &String, list: &[&String]| {
        list.iter()
            .position(|n| *n == name)
            .ok_or_else(|| wrong(format!("{path}/{what}"), format!("no {what} {name:?}")))
    };
    Ok(Run {
        id: r.id.clone(),
        tube: place("tube", &r.tube, tubes)?,
        start,
        end: point(&format!("{path}/end/point"), r.end.point)?,
        end_direction: direction(&format!("{path}/end/dir"), r.end.dir)?,
        components: r
            .components
            .iter()
            .map(|c| place("components", c, components))
            .collect::<Result<_, _>>()?,
        passage,
        components_before_passage: None,
        pins: Vec::new(),
        starts_at: None,
        ends_at: None,
        own_bodies: Vec::new(),
        end_room: None,
        start_room: None,
        most_bends: None,
    })
}
