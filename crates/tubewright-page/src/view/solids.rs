//! Bodies as shapes, and the small picture of a way.

use crate::api::{FreedomView, ShapeView, SolidView};
use crate::derived::Shown;
use core::fmt::Write as _;
use tubewright_geometry::motion::Freedom;
use tubewright_geometry::{CentreLine, Point, Solid, TubeElement};
use tubewright_plan::bodies::PlacedBody;
use tubewright_plan::routes::PlannedRun;
use tubewright_plan::scene::class_words;

/// Most triangles of a scan that a picture shows.
const MOST_TRIANGLES: usize = 60_000;
/// Most places of a scan that a picture shows.
const MOST_PLACES: usize = 60_000;

/// Every body that is there.
pub(crate) fn of(shown: &Shown) -> Vec<SolidView> {
    let Some(job) = shown.car.good_job() else {
        return Vec::new();
    };
    job.around.bodies.placed.iter().map(body).collect()
}

fn body(body: &PlacedBody) -> SolidView {
    let mut shapes = Vec::new();
    add_shapes(&body.solid_in_car, &mut shapes);
    SolidView {
        name: body.name.clone(),
        class: class_words(body.class).to_owned(),
        gap: body.gap_mm,
        shapes,
        freedoms: body.motion.0.freedoms.iter().filter_map(freedom).collect(),
    }
}

fn freedom(freedom: &Freedom) -> Option<FreedomView> {
    Some(match freedom {
        Freedom::Shift {
            direction,
            min_mm,
            max_mm,
        } => FreedomView::Shift {
            along: direction.to_array(),
            range: [*min_mm, *max_mm],
        },
        Freedom::Turn {
            on_axis,
            axis,
            min_rad,
            max_rad,
        } => FreedomView::Turn {
            at: on_axis.to_array(),
            axis: axis.to_array(),
            range: [min_rad.to_degrees(), max_rad.to_degrees()],
        },
        Freedom::Sway { radius_mm } => FreedomView::Sway { most: *radius_mm },
        _ => return None,
    })
}

fn add_shapes(solid: &Solid, shapes: &mut Vec<ShapeView>) {
    shapes.push(match solid {
        Solid::Box(found) => ShapeView::Box {
            centre: found.centre.to_array(),
            axes: found.axes.map(|axis| axis.to_array()),
            half: found.half,
        },
        Solid::Capsule { a, b, radius } => ShapeView::Bar {
            a: a.to_array(),
            b: b.to_array(),
            radius: *radius,
            is_round: true,
        },
        Solid::Cylinder { a, b, radius } => ShapeView::Bar {
            a: a.to_array(),
            b: b.to_array(),
            radius: *radius,
            is_round: false,
        },
        Solid::Sphere { centre, radius } => ShapeView::Ball {
            centre: centre.to_array(),
            radius: *radius,
        },
        Solid::Prism(prism) => {
            let normal = prism.u.vector().cross(prism.v.vector());
            ShapeView::Prism {
                corners: prism
                    .outline
                    .iter()
                    .map(|[along_u, along_v]| {
                        (prism.origin + prism.u * *along_u + prism.v * *along_v).to_array()
                    })
                    .collect(),
                depth: (normal * prism.depth).to_array(),
            }
        }
        Solid::HalfSpace { point, outward } => ShapeView::Plane {
            at: point.to_array(),
            outward: outward.to_array(),
        },
        Solid::Mesh(mesh) => {
            let all = mesh.triangles();
            let step = all.len().div_ceil(MOST_TRIANGLES).max(1);
            let vertex = |number: u32| {
                usize::try_from(number)
                    .ok()
                    .and_then(|number| mesh.vertices().get(number))
            };
            ShapeView::Triangles {
                corners: all
                    .iter()
                    .step_by(step)
                    .flatten()
                    .filter_map(|number| vertex(*number))
                    .flat_map(whole)
                    .collect(),
                of: u32::try_from(all.len()).unwrap_or(u32::MAX),
            }
        }
        Solid::Cloud { points, .. } => places(points),
        Solid::PointCloud(cloud) => places(cloud.points()),
        Solid::Tube(element) => {
            for pair in centre_line(element).windows(2) {
                if let [a, b] = pair {
                    shapes.push(ShapeView::Bar {
                        a: a.to_array(),
                        b: b.to_array(),
                        radius: element.radius,
                        is_round: true,
                    });
                }
            }
            return;
        }
        Solid::Union(parts) => {
            for part in parts {
                add_shapes(part, shapes);
            }
            return;
        }
        _ => return,
    });
}

fn places(points: &[Point]) -> ShapeView {
    let step = points.len().div_ceil(MOST_PLACES).max(1);
    ShapeView::Places {
        places: points.iter().step_by(step).flat_map(whole).collect(),
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "places of a car lie within the range of a whole number of millimetres"
)]
fn whole(point: &Point) -> [i32; 3] {
    point.to_array().map(|value| value.round() as i32)
}

/// Steps of a bend in a picture.
const STEPS: u32 = 8;

pub(super) fn centre_line(element: &TubeElement) -> Vec<Point> {
    let line = &element.line;
    let steps = match line {
        CentreLine::Segment { .. } => 1,
        _ => STEPS,
    };
    let length = line.length();
    (0..=steps)
        .map(|step| line.at(length * f64::from(step) / f64::from(steps)))
        .collect()
}

/// The runs of a way from above, tube widths to scale, bodies as their outlines: what tells one way
/// from another at a glance.
pub(crate) fn small_picture(bodies: &[PlacedBody], runs: &[PlannedRun]) -> String {
    let mut lines = String::new();
    let mut bounds = Bounds::default();
    for run in runs {
        for piece in &run.pieces {
            for element in &piece.elements {
                let points: Vec<String> = centre_line(element)
                    .iter()
                    .map(|point| {
                        let [x, y] = bounds.take(point, element.radius);
                        format!("{x:.0},{y:.0}")
                    })
                    .collect();
                let _written = write!(
                    lines,
                    "<polyline points=\"{}\" stroke-width=\"{:.0}\"/>",
                    points.join(" "),
                    2.0 * element.radius
                );
            }
        }
    }
    let margin = 120.0;
    let [left, top] = [bounds.least[0] - margin, bounds.least[1] - margin];
    let [width, height] = [
        bounds.most[0] - left + margin,
        bounds.most[1] - top + margin,
    ];
    let mut outlines = String::new();
    for body in bodies {
        let mut shapes = Vec::new();
        add_shapes(&body.solid_in_car, &mut shapes);
        for shape in &shapes {
            outline(shape, &mut outlines);
        }
    }
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{left:.0} {top:.0} {width:.0} {height:.0}\">\
         <g fill=\"#e9e5da\" stroke=\"#b9b2a2\" stroke-width=\"8\" fill-opacity=\"0.6\">{outlines}</g>\
         <g fill=\"none\" stroke=\"#1d4a50\" stroke-linejoin=\"round\" stroke-linecap=\"butt\">{lines}</g></svg>"
    )
}

fn outline(shape: &ShapeView, text: &mut String) {
    let mut bounds = Bounds::default();
    match shape {
        ShapeView::Box { centre, axes, half } => {
            let reach = |axis: usize| {
                axes.iter()
                    .zip(half)
                    .map(|(direction, half)| {
                        (direction.get(axis).copied().unwrap_or(0.0) * half).abs()
                    })
                    .sum::<f64>()
            };
            let [x, y, _] = *centre;
            bounds.stretch(x - reach(0), -y - reach(1));
            bounds.stretch(x + reach(0), -y + reach(1));
        }
        ShapeView::Bar { a, b, radius, .. } => {
            for [x, y, _] in [*a, *b] {
                bounds.stretch(x - radius, -y - radius);
                bounds.stretch(x + radius, -y + radius);
            }
        }
        ShapeView::Ball { centre, radius } => {
            let [x, y, _] = *centre;
            bounds.stretch(x - radius, -y - radius);
            bounds.stretch(x + radius, -y + radius);
        }
        ShapeView::Prism { corners, .. } => {
            for [x, y, _] in corners {
                bounds.stretch(*x, -*y);
            }
        }
        ShapeView::Plane { .. } | ShapeView::Triangles { .. } | ShapeView::Places { .. } => return,
    }
    let [x, y] = bounds.least;
    let _written = write!(
        text,
        "<rect x=\"{x:.0}\" y=\"{y:.0}\" width=\"{:.0}\" height=\"{:.0}\"/>",
        bounds.most[0] - x,
        bounds.most[1] - y
    );
}

/// What a picture must hold: x rearwards, the car's right upwards on paper.
#[derive(Debug)]
struct Bounds {
    least: [f64; 2],
    most: [f64; 2],
}

impl Default for Bounds {
    fn default() -> Self {
        Self {
            least: [f64::INFINITY; 2],
            most: [f64::NEG_INFINITY; 2],
        }
    }
}

impl Bounds {
    fn take(&mut self, point: &Point, radius: f64) -> [f64; 2] {
        let [x, y] = [point.x, -point.y];
        self.stretch(x - radius, y - radius);
        self.stretch(x + radius, y + radius);
        [x, y]
    }

    fn stretch(&mut self, x: f64, y: f64) {
        self.least = [self.least[0].min(x), self.least[1].min(y)];
        self.most = [self.most[0].max(x), self.most[1].max(y)];
    }
}
