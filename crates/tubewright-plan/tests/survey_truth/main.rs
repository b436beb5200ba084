//! The demonstration builds measured by the program against the true places that their readings were
//! made from, and their readings drawn again a few hundred times.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::print_stderr,
    clippy::cast_precision_loss,
    reason = "a test fails by panicking"
)]

mod chance;
mod gaps;
mod tape;
mod truth;

use chance::Chance;
use nalgebra::{DMatrix, DVector};
use truth::{Demonstration, SLUGS, Truth, demonstration};
use tubewright_build::model::{Build, Doubt, FrameChoice, Mark, Place, PlaceAt};
use tubewright_geometry::{Point, Vector};
use tubewright_plan::places::Places;
use tubewright_plan::stages::survey_and_bodies;
use tubewright_plan::survey::{NINETEEN_IN_TWENTY, measure, measure_again, network_of};
use tubewright_survey::statistics::{CRITICAL_W, chi_squared_quantile};
use tubewright_survey::{Change, Target};

const AXES: [Vector; 3] = [
    Vector::new(1.0, 0.0, 0.0),
    Vector::new(0.0, 1.0, 0.0),
    Vector::new(0.0, 0.0, 1.0),
];

/// One number that the survey states, with how far it is from the truth.
struct Stated {
    change: Change,
    error: f64,
}

/// Coordinates of a place.
fn of_place(name: &str, places: &Places, truth: &Truth) -> Vec<Stated> {
    let error = truth.places[name] - places.points[name].point_in_car;
    AXES.map(|axis| Stated {
        change: places.joint.point_change(name, axis).unwrap(),
        error: axis.dot(error),
    })
    .into()
}

/// An end by its centre and by what is 100 mm on and 100 mm up from there: with the direction known, so
/// are these.
fn of_end(name: &str, places: &Places, truth: &Truth) -> Vec<Stated> {
    let (true_frame, found) = (truth.ends[name], places.ends[name].frame_in_car);
    let mut stated = Vec::new();
    for out in [[0.0; 3], [100.0, 0.0, 0.0], [0.0, 100.0, 0.0]] {
        let local = Point::from_array(out);
        let place = found.point_from_local(local);
        let error = true_frame.point_from_local(local) - place;
        stated.extend(AXES.map(|axis| Stated {
            change: places.joint.end_change(name, &found, place, axis).unwrap(),
            error: axis.dot(error),
        }));
    }
    stated
}

/// A floor by how high it is under the corners of a car.
fn of_floor(name: &str, places: &Places, truth: &Truth) -> Vec<Stated> {
    let (up, offset) = truth.floors[name];
    let found = &places.floors[name];
    [(0.0, -400.0), (0.0, 400.0), (1500.0, 0.0)]
        .map(|(x, y)| {
            // The place of the found floor there, and how far above it the true one is.
            let plumb = found.up.dot(Point::new(x, y, 0.0) - found.point_in_car);
            let under = Point::new(x, y, 0.0) - found.up * plumb;
            Stated {
                change: places.joint.floor_change(name, under).unwrap(),
                error: offset - up.dot(under - Point::ORIGIN),
            }
        })
        .into()
}

/// Squared distance from the truth in the metric of the stated covariance, and its degrees of freedom.
/// What the covariance says is sure must be so.
fn squared_distance(stated: &[Stated], places: &Places, what: &str) -> (f64, usize) {
    let covariance = DMatrix::from_fn(stated.len(), stated.len(), |i, k| {
        places
            .joint
            .covariance_mm2(&stated[i].change, &stated[k].change)
            .unwrap()
    });
    let error = DVector::from_iterator(stated.len(), stated.iter().map(|s| s.error));
    let eigen = covariance.symmetric_eigen();
    let largest = eigen.eigenvalues.max();
    let (mut distance, mut freedom) = (0.0, 0);
    for (value, axis) in eigen
        .eigenvalues
        .iter()
        .zip(eigen.eigenvectors.column_iter())
    {
        let along = axis.dot(&error);
        if *value > 1e-6 * largest {
            distance += along * along / value;
            freedom += 1;
        } else {
            // A turn of three degrees carries 100 mm straight to 0.15 mm.
            assert!(
                along.abs() < 0.15,
                "{what}: {along:.3} mm where none is stated"
            );
        }
    }
    (distance, freedom)
}

fn names(build: &Build) -> Vec<String> {
    let marks = build.marks.iter().map(|mark| mark.name.to_string());
    let points = build.points.iter().map(|point| point.name.to_string());
    marks.chain(points).collect()
}

/// Every place, end and floor of a build, each with the numbers stated about it.
fn everything(car: &Demonstration, places: &Places) -> Vec<(String, Vec<Stated>)> {
    let build = &car.model.build;
    let mut all = Vec::new();
    for name in names(build) {
        let stated = of_place(&name, places, &car.truth);
        all.push((name, stated));
    }
    for name in car.truth.ends.keys() {
        all.push((name.clone(), of_end(name, places, &car.truth)));
    }
    for name in car.truth.floors.keys() {
        all.push((name.clone(), of_floor(name, places, &car.truth)));
    }
    all
}

/// Every place, end and floor lies in its own 19-in-20 ellipsoid as often as that says, and all of them
/// together lie as far from the truth as the joint covariance of each build says.
#[test]
fn the_truth_lies_where_the_readings_say() {
    let (mut inside, mut count) = (0_u32, 0_u32);
    for slug in SLUGS {
        let car = demonstration(slug);
        let measured = measure(&car.model.build).unwrap();
        assert_eq!(measured.frame_problem, None, "{slug}");
        let places = &measured.places;
        let all = everything(&car, places);
        for (name, stated) in &all {
            let (distance, freedom) = squared_distance(stated, places, name);
            if freedom == 0 {
                continue;
            }
            count += 1;
            let is_inside = distance <= chi_squared_quantile(0.95, freedom);
            inside += u32::from(is_inside);
            // Once in 100,000.
            assert!(
                distance <= chi_squared_quantile(0.99999, freedom),
                "{slug}: {name} is {distance:.1} from the truth with {freedom} degrees of freedom"
            );
        }
        let together: Vec<Stated> = all.into_iter().flat_map(|(_, stated)| stated).collect();
        let (distance, freedom) = squared_distance(&together, places, slug);
        eprintln!("{slug}: {distance:.1} with {freedom} degrees of freedom");
        for (probability, is_below) in [(0.0005, false), (0.9995, true)] {
            let bound = chi_squared_quantile(probability, freedom);
            assert_eq!(
                distance <= bound,
                is_below,
                "{slug}: all places together are {distance:.1} from the truth, bound {bound:.1}"
            );
        }
    }
    let outside = count - inside;
    eprintln!("{inside} of {count} inside their 19-in-20 ellipsoid");
    // Neighbours share readings, so the count spreads more than independent trials would.
    assert!(
        outside <= 2 * count / 20,
        "{outside} of {count} lie outside"
    );
}

/// Every body of every demonstration is there, and none hangs on a place that was not found.
#[test]
fn every_body_is_built() {
    for slug in SLUGS {
        let car = demonstration(slug);
        let around = survey_and_bodies(&car.model, &car.scans).unwrap();
        assert_eq!(around.bodies.missing, [], "{slug}");
        assert_eq!(around.bodies.placed.len(), car.model.build.bodies.len());
        for body in &around.bodies.placed {
            assert!(!body.anchors.is_empty(), "{slug}: {}", body.name);
            body.solid_in_car.check().unwrap();
        }
    }
}

/// Every planted slip is named with what it should have read or where it was taken, and no other
/// reading is accused.
#[test]
fn every_slip_is_named_and_no_other() {
    for slug in SLUGS {
        let car = demonstration(slug);
        let measured = measure(&car.model.build).unwrap();
        let mut accused: Vec<u32> = measured.doubtful.iter().map(|d| d.number).collect();
        accused.sort_unstable();
        let planted: Vec<u32> = car.truth.slips.iter().map(|slip| slip.reading).collect();
        assert_eq!(accused, planted, "{slug}: doubtful against planted");
        for slip in &car.truth.slips {
            let doubtful = measured
                .doubtful
                .iter()
                .find(|d| d.number == slip.reading)
                .unwrap();
            let words = doubtful.sentence(measured.adjustment.network());
            eprintln!("{slug}: {words}");
            match &slip.taken_from {
                Some(mark) => {
                    // On a car that is the same left and right, another mark can fit as well.
                    let instead = measured.named.point(mark).map(Target::Point);
                    let first = doubtful.explanations[0].probability;
                    assert!(
                        doubtful.explanations.iter().any(|said| {
                            said.instead_of() == instead && said.probability > 0.5 * first
                        }),
                        "{slug}: {words}"
                    );
                }
                None => {
                    let said = doubtful.was_probably();
                    let right = slip.should_read.mm();
                    assert!(
                        said.is_some_and(|said| (said - right).abs() < 0.51),
                        "{slug}: {words}; it should have read {right}"
                    );
                }
            }
        }
    }
}

/// Distances between all pairs of places, each with its σ.
fn distances(build: &Build, places: &Places) -> Vec<(f64, f64)> {
    let names = names(build);
    let mut all = Vec::new();
    for (i, a) in names.iter().enumerate() {
        for b in names.iter().skip(i + 1) {
            let apart = places.points[b].point_in_car - places.points[a].point_in_car;
            let along = apart.direction().unwrap().vector();
            let mut change = places.joint.point_change(b, along).unwrap();
            change.add(&places.joint.point_change(a, along).unwrap(), -1.0);
            all.push((apart.norm(), places.joint.sigma_mm(&change).unwrap()));
        }
    }
    all
}

/// Another origin mark, another centre line and another level change no distance and no ± of one.
#[test]
fn the_choice_of_axes_changes_nothing_that_a_tape_tells() {
    for slug in SLUGS {
        let car = demonstration(slug);
        // Without the slips, whose search is no matter of axes and takes its time.
        let mut sound = car.model.build.clone();
        for slip in &car.truth.slips {
            let mut readings = sound.readings.iter_mut();
            let reading = readings.find(|r| r.number == slip.reading).unwrap();
            reading.doubt = Some(Doubt::Dropped);
        }
        let build = &sound;
        let first = measure(build).unwrap();
        let told = distances(build, &first.places);
        let frame = build.frame.as_ref().unwrap();
        let marks = &build.marks;
        let setups = &build.setups;
        let others = [
            FrameChoice {
                origin: at_mark(&frame.origin, marks.last().unwrap()),
                ..frame.clone()
            },
            FrameChoice {
                origin: at_mark(&frame.origin, &marks[3]),
                centre_line: frame.centre_line[..1].to_vec(),
                level: setups.last().unwrap().name.clone(),
                ..frame.clone()
            },
        ];
        for other in others {
            let build = Build {
                frame: Some(other),
                ..build.clone()
            };
            let again = measure_again(&build, &first).unwrap();
            assert_eq!(again.frame_problem, None);
            for (a, b) in told.iter().zip(distances(&build, &again.places)) {
                assert!(
                    (a.0 - b.0).abs() < AT_REST_MM && (a.1 - b.1).abs() < AT_REST_MM,
                    "{slug}: {a:?} {b:?}, sums of squares {} and {}",
                    first.adjustment.global_test().vtpv,
                    again.adjustment.global_test().vtpv
                );
            }
        }
    }
}

/// Where the solver comes to rest from one start and from another, mm: the floor that rounding sets.
const AT_REST_MM: f64 = 1e-5;

fn at_mark(place: &Place, mark: &Mark) -> Place {
    Place {
        at: PlaceAt::Mark(mark.name.clone()),
        ..place.clone()
    }
}

/// Draws of the reading errors of one demonstration build.
pub(crate) const DRAWS: u32 = 100;

/// The readings of a build on the true car, with errors of the stated size. Symmetry is left out: how
/// far the true car is from its mirror image is no error of a reading and is not drawn anew.
pub(crate) fn drawn_again(car: &Demonstration, chance: &mut Chance) -> Build {
    let mut build = car.model.build.clone();
    let sigmas: Vec<f64> = network_of(&build, &build.accuracy.resolved())
        .network
        .readings
        .iter()
        .map(|reading| reading.sigma)
        .collect();
    let before = build.clone();
    for (reading, sigma) in build.readings.iter_mut().zip(sigmas) {
        match car.truth.shows(&before, reading) {
            Some(shown) => tape::rewrite(reading, shown + sigma * chance.normal()),
            None => reading.doubt = Some(Doubt::Dropped),
        }
    }
    build
}

/// With the readings drawn again and again, each place lies in its stated ellipsoid 19 times in 20,
/// each coordinate within its printed ±, all together as far off as the joint covariance says; and
/// sound readings are accused as seldom as the test's level says.
#[test]
fn the_plus_minus_holds_when_the_car_is_measured_again() {
    let car = demonstration("kitcar-mid4");
    let mut chance = Chance::new(1);
    let mut inside: std::collections::BTreeMap<String, u32> = std::collections::BTreeMap::new();
    let (mut printed, mut coordinates) = (0_u32, 0_u32);
    let (mut squares, mut freedoms, mut accused, mut readings) = (0.0, 0.0, 0, 0);
    let before = measure(&car.model.build).unwrap();
    for _ in 0..DRAWS {
        let build = drawn_again(&car, &mut chance);
        let measured = measure_again(&build, &before).unwrap();
        accused += measured.doubtful.len();
        readings += build.readings.len();
        let places = &measured.places;
        let all = everything(&car, places);
        for (name, stated) in &all {
            let (distance, freedom) = squared_distance(stated, places, name);
            if freedom > 0 {
                let is_inside = distance <= chi_squared_quantile(0.95, freedom);
                *inside.entry(name.clone()).or_default() += u32::from(is_inside);
            }
            if let Some(point) = places.points.get(name) {
                let plus_minus = NINETEEN_IN_TWENTY * point.sigma_bound();
                for coordinate in stated {
                    coordinates += 1;
                    printed += u32::from(coordinate.error.abs() <= plus_minus + 1e-9);
                }
            }
        }
        let together: Vec<Stated> = all.into_iter().flat_map(|(_, stated)| stated).collect();
        let (distance, freedom) = squared_distance(&together, places, "all");
        squares += distance;
        freedoms += freedom as f64;
    }
    let draws = f64::from(DRAWS);
    let spread = (0.05 * 0.95 / draws).sqrt();
    let total: u32 = inside.values().sum();
    let share = f64::from(total) / (draws * inside.len() as f64);
    eprintln!(
        "{:.1} % of {} places in their ellipsoids, {:.1} % of coordinates within the printed ±; \
         v'Pv over freedom {:.3}; {accused} of {readings} sound readings accused",
        100.0 * share,
        inside.len(),
        100.0 * f64::from(printed) / f64::from(coordinates),
        squares / freedoms
    );
    for (name, count) in &inside {
        let share = f64::from(*count) / draws;
        // One of thirty places once in a thousand runs: 4 σ.
        assert!(
            (share - 0.95).abs() < 4.0 * spread,
            "{name}: {share:.3} of {DRAWS} draws"
        );
    }
    assert!((share - 0.95).abs() < CRITICAL_W * spread, "{share:.3}");
    assert!(f64::from(printed) >= 0.94 * f64::from(coordinates));
    // χ² has the variance 2 f.
    assert!((squares / freedoms - 1.0).abs() < CRITICAL_W * (2.0 / freedoms).sqrt());
    // One of a thousand by the level of the test.
    assert!(accused <= readings / 500, "{accused} of {readings} accused");
}
