//! The doubt about gaps: what is stated of a gap between a place of a run and a body, against what the
//! gap really is when the readings are drawn again.

use crate::chance::Chance;
use crate::truth::{Demonstration, demonstration};
use crate::{DRAWS, drawn_again};
use std::collections::BTreeMap;
use tubewright_build::model::BodyKind;
use tubewright_geometry::distance::closest_point_on_solid;
use tubewright_geometry::{Frame, Placement, Point, Solid, Vector, math};
use tubewright_plan::bodies::{PlacedBody, shape_of};
use tubewright_plan::held::RunHold;
use tubewright_plan::places::{PlacedEnd, PlacedFloor, PlacedPoint, Places};
use tubewright_plan::stages::{Surroundings, survey_and_bodies};
use tubewright_plan::survey::{measure, measure_again};
use tubewright_survey::Change;
use tubewright_survey::fit::fit_rigid;

/// The true places as if they had been measured without error.
fn true_places(car: &Demonstration, like: &Places) -> Places {
    let truth = &car.truth;
    let mut places = Places::default();
    for (name, at) in &truth.places {
        let point = PlacedPoint {
            point_in_car: *at,
            covariance: [[0.0; 3]; 3],
        };
        places.points.insert(name.clone(), point);
    }
    for (name, end) in &like.ends {
        let frame = truth.ends.get(name).copied().unwrap_or_else(|| {
            // A tip: on its point, its direction chosen.
            let point = car.model.build.end(name).unwrap().given.as_ref().unwrap();
            let at = truth.places[&point.at.at.name().to_string()];
            Frame::from_axes(at, end.frame_in_car.travel(), end.frame_in_car.twelve())
        });
        places.ends.insert(
            name.clone(),
            PlacedEnd {
                frame_in_car: frame,
                covariance: [[0.0; 6]; 6],
            },
        );
    }
    for (name, (up, offset)) in &truth.floors {
        places.floors.insert(
            name.clone(),
            PlacedFloor {
                point_in_car: Point::ORIGIN + *up * *offset,
                up: *up,
                plumb: *up,
                sigma_mm: 0.0,
                is_on_wheels: like.floors[name].is_on_wheels,
            },
        );
    }
    places
}

/// A place of the run that is near to a body, and how the run is built there.
struct Case {
    body: String,
    place: Point,
    share: f64,
}

/// Places on and about a run from the first end to the tip, each against every body it is outside of.
fn cases(car: &Demonstration, around: &Surroundings) -> Vec<Case> {
    let (start, end) = run_ends(car);
    let places = &around.measured.places;
    let (a, b) = (
        places.ends[&start].frame_in_car,
        places.ends[&end].frame_in_car,
    );
    let mut cases = Vec::new();
    for share in [0.1, 0.4, 0.8] {
        let straight = a.origin.lerp(b.origin, share);
        let place = straight + Vector::new(30.0, 40.0, -25.0);
        for body in &around.bodies.placed {
            let near = closest_point_on_solid(place, &body.solid_in_car);
            if near.distance_mm > 20.0 {
                cases.push(Case {
                    body: body.name.clone(),
                    place,
                    share,
                });
            }
        }
    }
    cases
}

fn run_ends(car: &Demonstration) -> (String, String) {
    let run = &car.model.build.runs[0];
    let name = |end: &tubewright_build::model::RunEnd| match end {
        tubewright_build::model::RunEnd::End(name) => name.to_string(),
        tubewright_build::model::RunEnd::Port { .. } => panic!("the run leaves an end"),
    };
    (name(&run.from), name(&run.to))
}

/// Errors over the stated σ, gathered.
#[derive(Default)]
struct Tally {
    count: f64,
    inside: f64,
    squares: f64,
}

impl Tally {
    fn add(&mut self, error: f64, sigma: f64) {
        let standard = error / sigma;
        self.count += 1.0;
        self.inside += f64::from(u8::from(standard.abs() <= 1.96));
        self.squares += standard * standard;
    }

    fn share(&self) -> f64 {
        self.inside / self.count
    }

    fn ratio(&self) -> f64 {
        (self.squares / self.count).sqrt()
    }
}

fn distance(place: Point, solid: &Solid) -> f64 {
    closest_point_on_solid(place, solid).distance_mm
}

/// The true body.
fn true_solid(body: &PlacedBody, truth: &Places) -> Solid {
    shape_of(&body.kind, truth).unwrap().solid_in_car
}

/// Gap errors over redrawn readings, for a run held by its two ends and for one set out from the marks:
/// the spread is the one that is stated, body kind by body kind.
#[test]
fn the_plus_minus_of_a_gap_is_its_spread() {
    let car = demonstration("kitcar-mid4");
    let build = &car.model.build;
    let around = survey_and_bodies(&car.model, &car.scans).unwrap();
    let truth = true_places(&car, &around.measured.places);
    let (start, end) = run_ends(&car);
    let cases = cases(&car, &around);
    let before = measure(build).unwrap();
    let mut chance = Chance::new(7);
    let (mut by_ends, mut by_marks) = (Tally::default(), Tally::default());
    let mut independent = Tally::default();
    let mut by_kind: BTreeMap<&str, Tally> = BTreeMap::new();
    for _ in 0..DRAWS {
        let build = drawn_again(&car, &mut chance);
        let measured = measure_again(&build, &before).unwrap();
        let places = &measured.places;
        let joint = &places.joint;
        let hold = RunHold::between(
            [Some(&start), Some(&end)],
            &build,
            places,
            &measured.accuracy,
            &around.practice,
        )
        .unwrap();
        let motion = |name: &str| {
            Placement::between(
                &places.ends[name].frame_in_car,
                &truth.ends[name].frame_in_car,
            )
        };
        let (at_start, at_end) = (motion(&start), motion(&end));
        let marks: Vec<&str> = build.marks.iter().map(|mark| mark.name.as_str()).collect();
        let place_of = |places: &Places| -> Vec<Point> {
            marks
                .iter()
                .map(|name| places.points[*name].point_in_car)
                .collect()
        };
        let by_fit = fit_rigid(&place_of(places), &place_of(&truth)).unwrap();
        for case in &cases {
            let body = around.bodies.body(&case.body).unwrap();
            let shape = shape_of(&body.kind, places).unwrap();
            let placed = PlacedBody {
                solid_in_car: shape.solid_in_car,
                anchors: shape.anchors,
                ..body.clone()
            };
            let near = closest_point_on_solid(case.place, &placed.solid_in_car);
            let toward = (near.point - case.place).direction().unwrap();
            let of_body = placed.gap_change(case.place, near.point, joint).unwrap();
            let solid = true_solid(body, &truth);
            let error = |true_place: Point| distance(true_place, &solid) - near.distance_mm;
            let minus = |change: Option<Change>| {
                let mut gap = of_body.clone();
                gap.add(&change.unwrap(), -1.0);
                joint.sigma_mm(&gap).unwrap()
            };

            let moved = case.place
                + (at_start.point(case.place) - case.place) * (1.0 - case.share)
                + (at_end.point(case.place) - case.place) * case.share;
            let run = hold.change_with_ends(joint, case.place, case.share, toward);
            let sigma = minus(run.clone());
            by_ends.add(error(moved), sigma);
            by_kind
                .entry(kind_name(&body.kind))
                .or_default()
                .add(error(moved), sigma);
            // What would be stated if body and run had nothing in common.
            let apart = [run.unwrap(), of_body.clone()].map(|c| joint.sigma_mm(&c).unwrap());
            independent.add(error(moved), math::hypot(apart[0], apart[1]));

            let moved = by_fit.moved(case.place);
            by_marks.add(
                error(moved),
                minus(hold.marks.change(joint, case.place, toward)),
            );
        }
    }
    let kinds: Vec<String> = by_kind
        .iter()
        .map(|(kind, tally)| format!("{kind} {:.2}", tally.ratio()))
        .collect();
    eprintln!(
        "spread over stated σ: held by the ends {:.3} ({:.1} % in ±), set out from the marks {:.3} \
         ({:.1} % in ±), taken as independent {:.3}; {}",
        by_ends.ratio(),
        100.0 * by_ends.share(),
        by_marks.ratio(),
        100.0 * by_marks.share(),
        independent.ratio(),
        kinds.join(", ")
    );
    // The cases of one draw hang together, so that a draw counts as little more than one trial: a
    // spread from 100 trials is known to 7 %.
    for (what, tally) in [("ends", &by_ends), ("marks", &by_marks)] {
        assert!(
            (tally.ratio() - 1.0).abs() < 0.15,
            "{what}: {:.3}",
            tally.ratio()
        );
        assert!(
            (tally.share() - 0.95).abs() < 0.04,
            "{what}: {:.3}",
            tally.share()
        );
    }
    for (kind, tally) in &by_kind {
        assert!(
            (tally.ratio() - 1.0).abs() < 0.25,
            "{kind}: {:.3}",
            tally.ratio()
        );
    }
}

fn kind_name(kind: &BodyKind) -> &'static str {
    match kind {
        BodyKind::Rail { .. } => "rail",
        BodyKind::Tube { .. } => "tube",
        BodyKind::Tyre { .. } => "tyre",
        BodyKind::Tank { .. } => "tank",
        BodyKind::Box { .. } => "box",
        BodyKind::Capsule { .. } => "capsule",
        BodyKind::Cylinder { .. } => "cylinder",
        BodyKind::Sphere { .. } => "sphere",
        BodyKind::Outline { .. } => "outline",
        BodyKind::HalfSpace { .. } => "half-space",
        BodyKind::Ground { .. } => "ground",
        _ => "scan",
    }
}

/// Beyond the three places of a plane nobody measured: there it is less sure than between them.
#[test]
fn a_body_is_less_sure_beyond_its_places() {
    let car = demonstration("kitcar-mid4");
    let around = survey_and_bodies(&car.model, &car.scans).unwrap();
    let joint = &around.measured.places.joint;
    let lid = around.bodies.body("engine lid").unwrap();
    let Solid::HalfSpace { outward, .. } = lid.solid_in_car else {
        panic!("the lid is a plane")
    };
    let sigma = |on_plane: Point| {
        let place = on_plane + outward * 150.0;
        let near = closest_point_on_solid(place, &lid.solid_in_car);
        let change = lid.gap_change(place, near.point, joint).unwrap();
        joint.sigma_mm(&change).unwrap()
    };
    let [a, b, c] =
        ["C left", "C right", "D left"].map(|n| around.measured.places.points[n].point_in_car);
    let middle = sigma(a.lerp(b.lerp(c, 0.5), 0.6));
    let beyond = sigma(b + (c - a) * 2.0);
    assert!(beyond > 1.5 * middle, "{beyond} {middle}");
}
