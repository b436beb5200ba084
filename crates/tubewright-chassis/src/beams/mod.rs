//! A frame of straight tubes in space: how it sinks under its weight, and how it swings.
//!
//! Euler–Bernoulli beams with cubic shape functions for bending and linear ones for stretch and twist, six
//! unknowns a place; stiffness and consistent mass after J. S. Przemieniecki, *Theory of Matrix Structural
//! Analysis*, McGraw-Hill 1968, equations 5.116 (without the terms of shear) and 11.28. The natural
//! frequencies come by subspace iteration: K.-J. Bathe, *Finite Element Procedures*, Prentice Hall 1996,
//! section 11.6. A bend is given as short straights.

mod element;
mod matrix;
mod modes;

use nalgebra::{Matrix3x6, Matrix6, Vector6};
use tubewright_geometry::{Point, Vector};

use crate::FREE_FALL_M_PER_S2;
use element::{mass, stiffness};
use matrix::Sparse;

/// Unknowns of one place: three shifts in mm along the axes, three small turns in radians about them.
pub(crate) const EACH: usize = 6;

/// Kilograms to the tonnes that go with N, mm and s.
const TONNES: f64 = 1e-3;

/// A round tube as a beam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TubeBeam {
    /// Outside diameter in mm, > 0.
    pub od_mm: f64,
    /// Wall in mm, > 0, at most half of the diameter.
    pub wall_mm: f64,
    /// Young's modulus in MPa, > 0.
    pub young_mpa: f64,
    /// Poisson's ratio, 0 to 0.5.
    pub poisson: f64,
    /// Mass of a millimetre of it in kg, ≥ 0; of a can with what is in it.
    pub kg_per_mm: f64,
}

impl TubeBeam {
    fn bore_mm(&self) -> f64 {
        (self.od_mm - 2.0 * self.wall_mm).max(0.0)
    }

    /// Area of the metal, mm².
    #[must_use]
    pub fn area_mm2(&self) -> f64 {
        0.25 * tubewright_geometry::math::PI * (self.od_mm.powi(2) - self.bore_mm().powi(2))
    }

    /// Second moment of area, mm⁴.
    #[must_use]
    pub fn second_moment_mm4(&self) -> f64 {
        tubewright_geometry::math::PI / 64.0 * (self.od_mm.powi(4) - self.bore_mm().powi(4))
    }
}

/// What is wrong with a frame.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum BeamError {
    /// A tube without length, or with a size that is not a size.
    #[error("member {0} has no length, or a size that is none")]
    Member(usize),
    /// A member, mass or spring names a place that is not there.
    #[error("place {0} is not there")]
    Place(usize),
    /// Nothing holds it.
    #[error("nothing holds it: some of it can move freely")]
    Loose,
}

#[derive(Clone, Copy, Debug)]
struct Member {
    ends: [usize; 2],
    beam: TubeBeam,
}

#[derive(Clone, Copy, Debug)]
struct Spring {
    place: usize,
    /// From the place to where the spring takes hold, mm.
    arm: Vector,
    /// Along the axes, N/mm.
    shift: [f64; 3],
    /// About the axes, N mm/rad.
    turn: [f64; 3],
}

/// A frame of tubes, masses and springs.
#[derive(Clone, Debug, Default)]
pub struct Beams {
    places: Vec<Point>,
    members: Vec<Member>,
    masses_kg: Vec<f64>,
    springs: Vec<Spring>,
}

impl Beams {
    /// One with nothing in it.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a place, in mm; answers with its number.
    pub fn place(&mut self, at: Point) -> usize {
        self.places.push(at);
        self.masses_kg.push(0.0);
        self.places.len() - 1
    }

    /// Where a place is.
    #[must_use]
    pub fn at(&self, place: usize) -> Option<Point> {
        self.places.get(place).copied()
    }

    /// Number of places.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.places.len()
    }

    /// There is none.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.places.is_empty()
    }

    /// Joins two places by a straight tube.
    pub fn member(&mut self, from: usize, to: usize, beam: TubeBeam) {
        self.members.push(Member {
            ends: [from, to],
            beam,
        });
    }

    /// Adds a mass in kg at a place.
    ///
    /// # Errors
    /// [`BeamError::Place`] when there is no such place.
    pub fn mass(&mut self, place: usize, kg: f64) -> Result<(), BeamError> {
        *self
            .masses_kg
            .get_mut(place)
            .ok_or(BeamError::Place(place))? += kg;
        Ok(())
    }

    /// Holds a place by a spring with its other end fixed: along the axes in N/mm, about them in N mm/rad,
    /// each ≥ 0. It takes hold `arm` from the place, by something stiff.
    pub fn spring(&mut self, place: usize, arm: Vector, shift: [f64; 3], turn: [f64; 3]) {
        self.springs.push(Spring {
            place,
            arm,
            shift,
            turn,
        });
    }

    /// Mass of all of it, kg.
    #[must_use]
    pub fn mass_kg(&self) -> f64 {
        self.masses_at_places().iter().sum()
    }

    /// Mass by place, kg: half of each tube at each of its ends.
    #[must_use]
    pub fn masses_at_places(&self) -> Vec<f64> {
        let mut at = self.masses_kg.clone();
        for member in &self.members {
            let Some(length) = self.length_of(member) else {
                continue;
            };
            for end in member.ends {
                if let Some(mass) = at.get_mut(end) {
                    *mass += 0.5 * member.beam.kg_per_mm * length;
                }
            }
        }
        at
    }

    fn length_of(&self, member: &Member) -> Option<f64> {
        let [from, to] = member.ends;
        Some(self.places.get(from)?.distance(*self.places.get(to)?))
    }

    /// Puts it together, to be asked.
    ///
    /// # Errors
    /// [`BeamError`] when it is unsound or loose.
    pub fn factored(&self) -> Result<Factored, BeamError> {
        let size = EACH * self.places.len();
        let (mut stiff, mut heavy) = (Sparse::new(size), Sparse::new(size));
        for (number, member) in self.members.iter().enumerate() {
            let [from, to] = member.ends;
            let (Some(a), Some(b)) = (self.places.get(from), self.places.get(to)) else {
                return Err(BeamError::Place(from.max(to)));
            };
            let along = *b - *a;
            let turn = element::axes(along).ok_or(BeamError::Member(number))?;
            if !(member.beam.area_mm2() > 0.0 && member.beam.young_mpa > 0.0) {
                return Err(BeamError::Member(number));
            }
            let local = stiffness(&member.beam, along.norm());
            stiff.add_member(member.ends, &(turn.transpose() * local * turn));
            let local = mass(&member.beam, along.norm()) * TONNES;
            heavy.add_member(member.ends, &(turn.transpose() * local * turn));
        }
        for (place, kg) in self.masses_kg.iter().enumerate() {
            let mut block = Matrix6::zeros();
            for k in 0..3 {
                block[(k, k)] = kg * TONNES;
            }
            heavy.add_place(place, &block);
        }
        for spring in &self.springs {
            if spring.place >= self.places.len() {
                return Err(BeamError::Place(spring.place));
            }
            let reach = reach_of(spring.arm);
            let mut block = Matrix6::zeros();
            for k in 0..3 {
                let row = reach.row(k);
                block += row.transpose() * row * spring.shift[k];
                block[(3 + k, 3 + k)] += spring.turn[k];
            }
            stiff.add_place(spring.place, &block);
        }
        Factored::new(&stiff, heavy).ok_or(BeamError::Loose)
    }
}

/// Shift of what sits on a stiff arm, by the shift and the turn of its foot: `u + θ × arm`.
fn reach_of(arm: Vector) -> Matrix3x6<f64> {
    Matrix3x6::new(
        1.0, 0.0, 0.0, 0.0, arm.z, -arm.y, //
        0.0, 1.0, 0.0, -arm.z, 0.0, arm.x, //
        0.0, 0.0, 1.0, arm.y, -arm.x, 0.0,
    )
}

/// A frame that can be asked how it moves.
#[derive(Debug)]
pub struct Factored {
    factor: matrix::Factor,
    heavy: Sparse,
    size: usize,
}

/// How every place of a frame has moved.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    unknowns: Vec<f64>,
}

impl Moved {
    /// Shift of a place in mm, of what sits `arm` from it.
    #[must_use]
    pub fn shift(&self, place: usize, arm: Vector) -> Vector {
        let own = Vector6::from_iterator(
            (0..EACH).map(|k| self.unknowns.get(EACH * place + k).copied().unwrap_or(0.0)),
        );
        let moved = reach_of(arm) * own;
        Vector::new(moved[0], moved[1], moved[2])
    }
}

impl Factored {
    fn new(stiff: &Sparse, heavy: Sparse) -> Option<Self> {
        Some(Self {
            factor: stiff.factor()?,
            size: heavy.size(),
            heavy,
        })
    }

    /// How it moves under its own weight, `z` up.
    pub fn under_weight(&mut self) -> Moved {
        let mut fall = vec![0.0; self.size];
        for at in fall.iter_mut().skip(2).step_by(EACH) {
            *at = -FREE_FALL_M_PER_S2 * 1e3;
        }
        self.answer(self.heavy.times(&fall))
    }

    /// How it moves under a force of 1 N upward on what sits `arm` from a place.
    pub fn under_a_newton(&mut self, place: usize, arm: Vector) -> Moved {
        let reach = reach_of(arm);
        let mut force = vec![0.0; self.size];
        for k in 0..EACH {
            if let Some(at) = force.get_mut(EACH * place + k) {
                *at = reach[(2, k)];
            }
        }
        self.answer(force)
    }

    fn answer(&mut self, mut right: Vec<f64>) -> Moved {
        self.factor.solve(&mut right);
        Moved { unknowns: right }
    }

    /// Its lowest natural frequencies in Hz, ascending, undamped.
    pub fn frequencies_hz(&mut self, count: usize) -> Vec<f64> {
        modes::lowest(&mut self.factor, &self.heavy, count)
            .into_iter()
            .map(|square| square.max(0.0).sqrt() / tubewright_geometry::math::TAU)
            .collect()
    }
}
