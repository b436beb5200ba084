//! A fixed stream of chance.

use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64Mcg;
use tubewright_geometry::math;

pub(crate) struct Chance(Pcg64Mcg);

impl Chance {
    pub(crate) fn new(seed: u64) -> Self {
        Self(Pcg64Mcg::seed_from_u64(seed))
    }

    /// Standard normal (Box and Muller 1958).
    pub(crate) fn normal(&mut self) -> f64 {
        let u: f64 = 1.0 - self.0.random::<f64>();
        let turn = math::TAU * self.0.random::<f64>();
        (-2.0 * math::ln(u)).sqrt() * math::cos(turn)
    }
}
