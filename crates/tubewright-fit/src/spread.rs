//! How far a joint may lie and lean from where it should: a 6×6 covariance that goes along the run.

use nalgebra::{SMatrix, SVector};
use tubewright_geometry::{Frame, Point, UnitVector, Vector};

type M6 = SMatrix<f64, 6, 6>;
type V6 = SVector<f64, 6>;

/// A linear reading of a small displacement: shift along x, y, z in mm, then turn about x, y, z in
/// radians, both of the place that the spread is counted at.
pub type Row = [f64; 6];

/// Covariance of a place and its small turn in the car's axes: mm², mm·rad, rad².
///
/// A place that moves rigidly with it is displaced by `shift + turn × arm` (first order, elementary
/// kinematics of a rigid body).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PoseSpread {
    /// Where the shift is counted.
    pub at: Point,
    matrix: M6,
}

impl PoseSpread {
    /// Nothing is uncertain.
    #[must_use]
    pub fn sure(at: Point) -> Self {
        Self {
            at,
            matrix: M6::zeros(),
        }
    }

    /// From a covariance, place in mm first, then turn in radians.
    #[must_use]
    pub fn new(at: Point, covariance: &[[f64; 6]; 6]) -> Self {
        Self {
            at,
            matrix: M6::from_fn(|i, j| covariance[i][j]),
        }
    }

    /// The covariance, place in mm first, then turn in radians.
    #[must_use]
    pub fn covariance(&self) -> [[f64; 6]; 6] {
        core::array::from_fn(|i| core::array::from_fn(|j| self.matrix[(i, j)]))
    }

    /// The same spread counted at another place that moves rigidly with it.
    #[must_use]
    pub fn carried_to(&self, at: Point) -> Self {
        let carry = carry(at - self.at);
        Self {
            at,
            matrix: carry * self.matrix * carry.transpose(),
        }
    }

    /// With an independent shift of standard deviation `sigma_mm` along a direction.
    #[must_use]
    pub fn with_shift(&self, along: UnitVector, sigma_mm: f64) -> Self {
        let shift = along * sigma_mm;
        self.with(shift, Vector::ZERO)
    }

    /// With an independent turn of standard deviation `sigma_rad` about an axis through `pivot`.
    #[must_use]
    pub fn with_turn(&self, axis: UnitVector, sigma_rad: f64, pivot: Point) -> Self {
        let turn = axis * sigma_rad;
        self.with(turn.cross(self.at - pivot), turn)
    }

    fn with(&self, shift: Vector, turn: Vector) -> Self {
        let e = V6::from([shift.x, shift.y, shift.z, turn.x, turn.y, turn.z]);
        Self {
            at: self.at,
            matrix: self.matrix + e * e.transpose(),
        }
    }

    /// The sum of two independent spreads; the second is carried to the first's place.
    #[must_use]
    pub fn plus(&self, other: &Self) -> Self {
        Self {
            at: self.at,
            matrix: self.matrix + other.carried_to(self.at).matrix,
        }
    }

    /// Variance of a linear reading of it.
    #[must_use]
    pub fn variance_of(&self, row: &Row) -> f64 {
        let h = V6::from(*row);
        h.dot(&(self.matrix * h)).max(0.0)
    }

    /// Standard deviation in mm, along a direction, of a place that moves with it.
    #[must_use]
    pub fn sigma_along(&self, place: Point, direction: UnitVector) -> f64 {
        self.variance_of(&self.row_along(place, direction)).sqrt()
    }

    /// The row that reads the shift of a place along a direction: `d · (shift + turn × arm)`.
    #[must_use]
    pub fn row_along(&self, place: Point, direction: UnitVector) -> Row {
        let d = direction.vector();
        let turning = (place - self.at).cross(d);
        [d.x, d.y, d.z, turning.x, turning.y, turning.z]
    }

    /// The largest standard deviation in any direction of the place it is counted at is at most this,
    /// mm.
    #[must_use]
    pub fn shift_sigma_bound(&self) -> f64 {
        let block = self.matrix.fixed_view::<3, 3>(0, 0);
        block.norm().sqrt()
    }

    /// The direction in which the place it is counted at is known least, and the standard deviation along
    /// it, mm.
    #[must_use]
    pub fn loosest(&self) -> (UnitVector, f64) {
        let block = self.matrix.fixed_view::<3, 3>(0, 0).into_owned();
        let eigen = nalgebra::SymmetricEigen::new(0.5 * (block + block.transpose()));
        let (column, largest) = eigen.eigenvalues.iter().enumerate().fold(
            (0, f64::NEG_INFINITY),
            |most, (column, value)| {
                if *value > most.1 {
                    (column, *value)
                } else {
                    most
                }
            },
        );
        let v = eigen.eigenvectors.column(column);
        let along = Vector::new(v[0], v[1], v[2])
            .direction()
            .unwrap_or(UnitVector::X);
        (along, largest.max(0.0).sqrt())
    }

    /// The largest standard deviation of the direction of travel, radians: at most the root of the sum
    /// of both ways that it can lean.
    #[must_use]
    pub fn lean_sigma_rad(&self, frame: &Frame) -> f64 {
        [frame.twelve(), frame.three()]
            .map(|axis| {
                let a = axis.vector();
                self.variance_of(&[0.0, 0.0, 0.0, a.x, a.y, a.z])
            })
            .iter()
            .sum::<f64>()
            .sqrt()
    }

    /// How much the readings `rows`, each with its own independent variance, take out of it, and by how
    /// much each moves the estimate (the gain): one after the other (R. E. Kalman, *A new approach to
    /// linear filtering and prediction problems*, 1960; from memory).
    pub(crate) fn gains(&self, rows: &[(Row, f64)]) -> (M6, Vec<V6>) {
        let mut matrix = self.matrix;
        // What is left of the spread before the readings, and of each reading's own error.
        let mut left = M6::identity();
        let mut gains: Vec<V6> = Vec::with_capacity(rows.len());
        for (row, variance) in rows {
            let h = V6::from(*row);
            let total = h.dot(&(matrix * h)) + variance;
            let gain = if total > 0.0 {
                matrix * h / total
            } else {
                V6::zeros()
            };
            let keep = M6::identity() - gain * h.transpose();
            matrix = keep * matrix * keep.transpose() + gain * gain.transpose() * *variance;
            left = keep * left;
            for before in &mut gains {
                *before = keep * *before;
            }
            gains.push(gain);
        }
        (left, gains)
    }

    /// What is left of it when these readings are kept to, each row with its variance.
    #[must_use]
    pub fn checked(&self, rows: &[(Row, f64)]) -> Self {
        let (left, gains) = self.gains(rows);
        let of_readings: M6 = gains
            .iter()
            .zip(rows)
            .map(|(gain, (_, variance))| gain * gain.transpose() * *variance)
            .sum();
        Self {
            at: self.at,
            matrix: left * self.matrix * left.transpose() + of_readings,
        }
    }

    pub(crate) const fn matrix(&self) -> &M6 {
        &self.matrix
    }

    pub(crate) const fn of_matrix(at: Point, matrix: M6) -> Self {
        Self { at, matrix }
    }
}

/// Displacement at the end of an arm by the displacement at its root.
fn carry(arm: Vector) -> M6 {
    let mut carry = M6::identity();
    // turn × arm
    for (i, j, value) in [
        (0, 4, arm.z),
        (0, 5, -arm.y),
        (1, 3, -arm.z),
        (1, 5, arm.x),
        (2, 3, arm.y),
        (2, 4, -arm.x),
    ] {
        carry[(i, j)] = value;
    }
    carry
}
