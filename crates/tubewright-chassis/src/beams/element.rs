//! One straight tube: its stiffness and its mass along its own axes.

use super::TubeBeam;
use nalgebra::{Matrix3, SMatrix};
use tubewright_geometry::Vector;

pub(super) type Matrix12 = SMatrix<f64, 12, 12>;

/// From the axes of the frame to those of a member along `along`; `None` when it has no length.
pub(super) fn axes(along: Vector) -> Option<Matrix12> {
    let x = along.direction()?.vector();
    let aside = if x.z.abs() < 0.9 {
        Vector::new(0.0, 0.0, 1.0)
    } else {
        Vector::new(1.0, 0.0, 0.0)
    };
    let y = aside.cross(x).direction()?.vector();
    let z = x.cross(y);
    let own = Matrix3::new(x.x, x.y, x.z, y.x, y.y, y.z, z.x, z.y, z.z);
    let mut turn = Matrix12::zeros();
    for block in 0..4 {
        turn.fixed_view_mut::<3, 3>(3 * block, 3 * block)
            .copy_from(&own);
    }
    Some(turn)
}

/// Rows of the four unknowns of bending in a plane, and the sign of its turns: shift and turn at one end,
/// then at the other.
const PLANES: [([usize; 4], f64); 2] = [([1, 5, 7, 11], 1.0), ([2, 4, 8, 10], -1.0)];

/// Adds a symmetric 4×4 of bending to both planes.
fn add_bending(to: &mut Matrix12, of: &[[f64; 4]; 4]) {
    for (rows, sign) in PLANES {
        for (i, row) in rows.iter().enumerate() {
            for (k, column) in rows.iter().enumerate() {
                let turns = (i % 2) + (k % 2);
                let sign = if turns == 1 { sign } else { 1.0 };
                to[(*row, *column)] += sign * of[i][k];
            }
        }
    }
}

fn add_pair(to: &mut Matrix12, first: usize, own: f64, cross: f64) {
    to[(first, first)] += own;
    to[(first + 6, first + 6)] += own;
    to[(first, first + 6)] += cross;
    to[(first + 6, first)] += cross;
}

/// Stiffness: Przemieniecki 1968, equation 5.116, without shear.
pub(super) fn stiffness(beam: &TubeBeam, l: f64) -> Matrix12 {
    let mut k = Matrix12::zeros();
    let stretch = beam.young_mpa * beam.area_mm2() / l;
    add_pair(&mut k, 0, stretch, -stretch);
    let polar = 2.0 * beam.second_moment_mm4();
    let twist = beam.young_mpa / (2.0 * (1.0 + beam.poisson)) * polar / l;
    add_pair(&mut k, 3, twist, -twist);
    let c = beam.young_mpa * beam.second_moment_mm4() / l.powi(3);
    add_bending(
        &mut k,
        &[
            [12.0 * c, 6.0 * l * c, -12.0 * c, 6.0 * l * c],
            [6.0 * l * c, 4.0 * l * l * c, -6.0 * l * c, 2.0 * l * l * c],
            [-12.0 * c, -6.0 * l * c, 12.0 * c, -6.0 * l * c],
            [6.0 * l * c, 2.0 * l * l * c, -6.0 * l * c, 4.0 * l * l * c],
        ],
    );
    k
}

/// Consistent mass in kg and kg mm²: Przemieniecki 1968, equation 11.28, without the rotary inertia of
/// bending.
pub(super) fn mass(beam: &TubeBeam, l: f64) -> Matrix12 {
    let mut m = Matrix12::zeros();
    let whole = beam.kg_per_mm * l;
    add_pair(&mut m, 0, whole / 3.0, whole / 6.0);
    let gyration = 2.0 * beam.second_moment_mm4() / beam.area_mm2();
    add_pair(&mut m, 3, whole * gyration / 3.0, whole * gyration / 6.0);
    let c = whole / 420.0;
    add_bending(
        &mut m,
        &[
            [156.0 * c, 22.0 * l * c, 54.0 * c, -13.0 * l * c],
            [
                22.0 * l * c,
                4.0 * l * l * c,
                13.0 * l * c,
                -3.0 * l * l * c,
            ],
            [54.0 * c, 13.0 * l * c, 156.0 * c, -22.0 * l * c],
            [
                -13.0 * l * c,
                -3.0 * l * l * c,
                -22.0 * l * c,
                4.0 * l * l * c,
            ],
        ],
    );
    m
}
