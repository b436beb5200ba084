//! Random cars: marks, ends and readings with errors of the stated size, from a fixed stream.

use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64Mcg;
use tubewright_geometry::{Frame, Point, UnitVector, Vector, math};
use tubewright_survey::{
    Along, CentreLineChoice, End, EndId, FrameChoice, Level, LevelChoice, Network, Pair, PlaceHint,
    PointId, PointSpec, Reading, ReadingKind, SetupId, SetupSpec, Side, Stance, Target, Touch,
};

/// A car with the truth beside it, in the frame that [`Car::frame`] chooses up to the noise.
pub(crate) struct Car {
    pub(crate) network: Network,
    pub(crate) places: Vec<Point>,
    pub(crate) ends: Vec<Frame>,
    pub(crate) frame: FrameChoice,
}

pub(crate) struct Chance(Pcg64Mcg);

impl Chance {
    pub(crate) fn new(seed: u64) -> Self {
        Self(Pcg64Mcg::seed_from_u64(seed))
    }

    pub(crate) fn within(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.0.random::<f64>()
    }

    pub(crate) fn below(&mut self, count: usize) -> usize {
        self.0.random_range(0..count)
    }

    /// Standard normal (Box–Muller).
    pub(crate) fn normal(&mut self) -> f64 {
        let u = self.within(f64::MIN_POSITIVE, 1.0);
        let turn = self.within(0.0, math::TAU);
        (-2.0 * math::ln(u)).sqrt() * math::cos(turn)
    }
}

/// What a random car is made of.
#[derive(Clone, Copy)]
pub(crate) struct Kind {
    /// Points beside the six paired marks.
    pub(crate) points: usize,
    /// Ends measured on the rim.
    pub(crate) ends: usize,
    /// Tape lines to each further point.
    pub(crate) lines: usize,
    /// False leaves every height out.
    pub(crate) heights: bool,
    /// Error of the readings as a part of their σ.
    pub(crate) noise: f64,
}

pub(crate) const TAPE_SIGMA_MM: f64 = 1.5;
pub(crate) const HEIGHT_SIGMA_MM: f64 = 1.0;
pub(crate) const ANGLE_SIGMA_RAD: f64 = 0.2 * math::PI / 180.0;

/// Rearward places of the three pairs of marks, of the order of a small car's underbody.
const STATIONS_MM: [f64; 3] = [0.0, 950.0, 2100.0];

pub(crate) fn place(car: &Car, target: Target) -> Point {
    match target {
        Target::Point(p) => car.places[p.0],
        Target::Rim { end, clock_rad } => {
            let frame = &car.ends[end.0];
            frame.origin + frame.at_clock(clock_rad) * car.network.ends[end.0].rim_radius_mm
        }
        Target::Centre(end) => car.ends[end.0].origin,
        Target::Hole { end, hole } => {
            car.ends[end.0].point_from_local(car.network.ends[end.0].holes[hole])
        }
    }
}

pub(crate) fn random_car(seed: u64, kind: Kind) -> Car {
    let mut chance = Chance::new(seed);
    let mut network = Network::default();
    let wheels = network.add_setup(SetupSpec::new("on its wheels", Stance::Wheels));
    let mut places = Vec::new();
    let mut pairs = Vec::new();
    for (station, x) in STATIONS_MM.iter().enumerate() {
        let half = chance.within(350.0, 520.0);
        let z = chance.within(280.0, 560.0);
        let mut pair = [PointId(0); 2];
        for (k, side) in [Side::Left, Side::Right].into_iter().enumerate() {
            let sign = if k == 0 { -1.0 } else { 1.0 };
            pair[k] = network.add_point(PointSpec::hinted(
                format!("mark {}{}", ["front ", "middle ", "rear "][station], k),
                PlaceHint {
                    side: Some(side),
                    along: Some([Along::Front, Along::Middle, Along::Rear][station]),
                    level: (!kind.heights).then_some(Level::High),
                },
            ));
            places.push(Point::new(
                x + chance.within(-15.0, 15.0),
                sign * half + chance.within(-10.0, 10.0),
                z + chance.within(-10.0, 10.0),
            ));
        }
        pairs.push(Pair {
            left: pair[0],
            right: pair[1],
        });
    }
    network.pairs = pairs.clone();
    for index in 0..kind.points {
        network.add_point(PointSpec::hinted(
            format!("point {index}"),
            PlaceHint {
                level: (!kind.heights).then_some(Level::Low),
                ..PlaceHint::default()
            },
        ));
        places.push(Point::new(
            chance.within(-200.0, 2300.0),
            chance.within(-450.0, 450.0),
            chance.within(120.0, 260.0),
        ));
    }
    let mut ends = Vec::new();
    for index in 0..kind.ends {
        network.add_end(End {
            name: format!("end {index}"),
            rim_radius_mm: 25.4 + 6.35 * index as f64,
            holes: Vec::new(),
        });
        let travel = Vector::new(
            chance.within(0.3, 1.0),
            chance.within(-0.6, 0.6),
            chance.within(-0.6, 0.4),
        )
        .direction()
        .unwrap();
        let origin = Point::new(
            chance.within(200.0, 1800.0),
            chance.within(-300.0, 300.0),
            chance.within(180.0, 450.0),
        );
        ends.push(Frame::upright(origin, travel));
    }
    let mut car = Car {
        network,
        places,
        ends,
        frame: FrameChoice::Car {
            origin: pairs[0].left,
            centre_line: CentreLineChoice::Pairs {
                front: pairs[0],
                rear: pairs[2],
            },
            level: if kind.heights {
                LevelChoice::Floor(wheels)
            } else {
                LevelChoice::Marks([pairs[0].left, pairs[0].right, pairs[2].left])
            },
        },
    };
    measure(&mut car, kind, wheels, &mut chance);
    into_its_frame(&mut car);
    car
}

/// All readings of a car, with noise.
fn measure(car: &mut Car, kind: Kind, wheels: SetupId, chance: &mut Chance) {
    let mut number = 0;
    let tape = |car: &mut Car, number: &mut u32, a: Target, b: Target, chance: &mut Chance| {
        let length = place(car, a).distance(place(car, b));
        let value = length + kind.noise * TAPE_SIGMA_MM * chance.normal();
        *number += 1;
        car.network.readings.push(Reading::new(
            *number,
            ReadingKind::Tape {
                from: Touch::place(a),
                to: Touch::place(b),
                burnt_mm: 0.0,
            },
            value,
            TAPE_SIGMA_MM,
        ));
    };
    let mark = |i: usize| Target::Point(PointId(i));
    for a in 0..6 {
        for b in a + 1..6 {
            tape(car, &mut number, mark(a), mark(b), chance);
        }
    }
    for index in 0..kind.points {
        let p = mark(6 + index);
        let mut nearest: Vec<usize> = (0..6).collect();
        let skip = chance.below(6);
        nearest.rotate_left(skip);
        for &m in nearest.iter().take(kind.lines.min(6)) {
            tape(car, &mut number, p, mark(m), chance);
        }
        if index > 0 {
            tape(car, &mut number, p, mark(6 + index - 1), chance);
        }
    }
    for index in 0..kind.ends {
        for clock in [0.0, 0.25, 0.5, 0.75] {
            let rim = Target::Rim {
                end: EndId(index),
                clock_rad: clock * math::TAU,
            };
            let skip = chance.below(6);
            for k in 0..3 {
                tape(
                    car,
                    &mut number,
                    rim,
                    mark((skip + [0, 1, 3][k]) % 6),
                    chance,
                );
            }
        }
    }
    if kind.heights {
        // Across the face, upright and sideways, with an angle finder; top and bottom over the floor.
        for index in 0..kind.ends {
            for clock_rad in [0.0, math::PI] {
                number += 1;
                let target = Target::Rim {
                    end: EndId(index),
                    clock_rad,
                };
                car.network.readings.push(Reading::new(
                    number,
                    ReadingKind::Height {
                        target: Touch::place(target),
                        setup: wheels,
                    },
                    place(car, target).z + kind.noise * HEIGHT_SIGMA_MM * chance.normal(),
                    HEIGHT_SIGMA_MM,
                ));
            }
            for clock_rad in [0.0, math::FRAC_PI_2] {
                number += 1;
                let along = car.ends[index].at_clock(clock_rad).to_array();
                let slope = math::atan2(along[2], math::hypot(along[0], along[1]));
                car.network.readings.push(Reading::new(
                    number,
                    ReadingKind::FaceInclination {
                        end: EndId(index),
                        clock_rad,
                        setup: wheels,
                    },
                    slope + kind.noise * ANGLE_SIGMA_RAD * chance.normal(),
                    ANGLE_SIGMA_RAD,
                ));
            }
        }
        for index in 0..car.places.len() {
            number += 1;
            let value = car.places[index].z + kind.noise * HEIGHT_SIGMA_MM * chance.normal();
            car.network.readings.push(Reading::height(
                number,
                PointId(index),
                wheels,
                value,
                HEIGHT_SIGMA_MM,
            ));
        }
    }
}

/// Moves the truth into the frame that the choice makes of it.
fn into_its_frame(car: &mut Car) {
    let FrameChoice::Car {
        origin,
        centre_line: CentreLineChoice::Pairs { front, rear },
        level,
    } = car.frame
    else {
        panic!("a car has a car's frame")
    };
    let up = match level {
        LevelChoice::Floor(_) => UnitVector::Z,
        LevelChoice::Marks([a, b, c]) => {
            let (a, b, c) = (car.places[a.0], car.places[b.0], car.places[c.0]);
            let n = (b - a).cross(c - a).direction().unwrap();
            if n.dot(UnitVector::Z.vector()) < 0.0 {
                -n
            } else {
                n
            }
        }
    };
    let middle = |p: Pair| car.places[p.left.0].lerp(car.places[p.right.0], 0.5);
    let x = up.normal_toward(middle(rear) - middle(front)).unwrap();
    let y = UnitVector::from_unit(up.vector().cross(x.vector()));
    // x and z from the origin mark, y from the middle of the front pair.
    let mark = car.places[origin.0];
    let frame = Frame::from_axes(mark - y * y.dot(mark - middle(front)), x, y);
    let local = |v: Vector| {
        let l = frame.local_from_vector(v);
        UnitVector::from_unit(l / l.norm())
    };
    car.ends = car
        .ends
        .iter()
        .map(|e| {
            Frame::from_axes(
                frame.local_from_point(e.origin),
                local(e.travel().vector()),
                local(e.twelve().vector()),
            )
        })
        .collect();
    car.places = car
        .places
        .iter()
        .map(|p| frame.local_from_point(*p))
        .collect();
}

/// Forty points, six of them datum marks, and two hundred readings: 170 tape lines and 30 heights over
/// the datum floor. Beside it rough places, some 15 mm off, and the truth.
pub(crate) fn forty_points(seed: u64) -> (Network, tubewright_survey::StartValues, Vec<Point>) {
    let mut chance = Chance::new(seed);
    let mut network = Network::default();
    let mut floor = SetupSpec::new("floor", Stance::Wheels);
    floor.floor_is_datum = true;
    let floor = network.add_setup(floor);
    let mut places = Vec::new();
    let mut start = tubewright_survey::StartValues::default();
    for index in 0..40 {
        let place = Point::new(
            chance.within(-200.0, 2600.0),
            chance.within(-700.0, 700.0),
            chance.within(150.0, 900.0),
        );
        places.push(place);
        let name = format!("p{index}");
        if index < 6 {
            network.add_point(PointSpec::held_at(name, place));
            start.points.push(Some(place));
        } else {
            network.add_point(PointSpec::new(name));
            let mut off = || chance.within(-15.0, 15.0);
            start
                .points
                .push(Some(place + Vector::new(off(), off(), off())));
        }
    }
    let mut number = 0;
    for p in 6..40 {
        let first = chance.below(p);
        for k in 0..5 {
            let q = (first + k * (1 + p / 7)) % p;
            let value = places[p].distance(places[q]) + TAPE_SIGMA_MM * chance.normal();
            let (p, q) = (PointId(p), PointId(q));
            network
                .readings
                .push(Reading::tape(number, p, q, value, TAPE_SIGMA_MM));
            number += 1;
        }
    }
    for (p, place) in places.iter().enumerate().take(36).skip(6) {
        let value = place.z + HEIGHT_SIGMA_MM * chance.normal();
        network.readings.push(Reading::height(
            number,
            PointId(p),
            floor,
            value,
            HEIGHT_SIGMA_MM,
        ));
        number += 1;
    }
    (network, start, places)
}
