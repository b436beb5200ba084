//! The motions of a whole network that no reading sees: inner constraints.

use crate::linear::{Matrix, V3};
use crate::model::{Layout, RowOwner, Rows, State, TILT_LEVER_MM};
use crate::network::{Network, ReadingKind};

/// Part of the largest element of the normal matrix below which a motion counts as unseen: squared
/// ratio of rounding to geometry, far below any reading and far above rounding.
const UNSEEN: f64 = 1e-12;

/// Columns: orthonormal unknowns' motions under the rigid motions of the network that change none of
/// its equations. Six for a free network, fewer with held coordinates.
pub(crate) fn unseen_motions(
    network: &Network,
    layout: &Layout,
    state: &State,
    rows: &Rows,
) -> Matrix {
    let motions = rigid_motions(layout, state);
    let basis = orthonormal(&motions);
    let mut seen = Matrix::zeros(basis.ncols(), basis.ncols());
    let mut scale = 0.0_f64;
    for index in 0..rows.len() {
        // A pair of equations in a basis that does not turn with the network trades its misfits under
        // a turn; their sum of squares sees no motion, and nor do we.
        let turning = match rows.owner[index] {
            RowOwner::LevelFloor => true,
            RowOwner::Reading(i) => {
                matches!(network.readings[i].kind, ReadingKind::Symmetry { .. })
            }
        };
        if turning {
            continue;
        }
        let row = rows.row(index);
        let sigma = rows.sigma[index];
        let mut image = vec![0.0; basis.ncols()];
        for &(column, value) in row {
            scale = scale.max((value / sigma) * (value / sigma));
            for (k, sum) in image.iter_mut().enumerate() {
                *sum += value / sigma * basis[(column, k)];
            }
        }
        for i in 0..image.len() {
            for k in 0..image.len() {
                seen[(i, k)] += image[i] * image[k];
            }
        }
    }
    if seen.nrows() == 0 {
        return Matrix::zeros(layout.width, 0);
    }
    let eigen = seen.symmetric_eigen();
    let unseen: Vec<_> = (0..eigen.eigenvalues.len())
        .filter(|&k| eigen.eigenvalues[k] < UNSEEN * scale)
        .map(|k| eigen.eigenvectors.column(k).into_owned())
        .collect();
    if unseen.is_empty() {
        return Matrix::zeros(layout.width, 0);
    }
    basis * Matrix::from_columns(&unseen)
}

/// Three translations and three rotations about the middle of all points, as motions of the unknowns.
fn rigid_motions(layout: &Layout, state: &State) -> Matrix {
    let mut m = Matrix::zeros(layout.width, 6);
    let places: Vec<V3> = state
        .points
        .iter()
        .copied()
        .chain(state.ends.iter().map(|e| e.origin))
        .collect();
    #[expect(clippy::cast_precision_loss, reason = "a count of points is small")]
    let middle = places.iter().sum::<V3>() / (places.len().max(1) as f64);
    for k in 0..3 {
        let axis = V3::ith(k, 1.0);
        write_motion(&mut m, k, layout, state, &|_| axis, V3::zeros(), middle);
        write_motion(
            &mut m,
            k + 3,
            layout,
            state,
            &|p| axis.cross(&(p - middle)),
            axis,
            middle,
        );
    }
    m
}

/// `velocity` gives the motion of a place, `spin` the rotation, both per unit of the motion.
fn write_motion(
    m: &mut Matrix,
    column: usize,
    layout: &Layout,
    state: &State,
    velocity: &dyn Fn(V3) -> V3,
    spin: V3,
    middle: V3,
) {
    for (place, columns) in state.points.iter().zip(&layout.points) {
        let v = velocity(*place);
        for (k, c) in columns.iter().enumerate() {
            if let Some(c) = *c {
                m[(c, column)] = v[k];
            }
        }
    }
    for ((pose, &c), lever) in state.ends.iter().zip(&layout.ends).zip(&layout.levers) {
        let v = velocity(pose.origin);
        for k in 0..3 {
            m[(c + k, column)] = v[k];
            m[(c + 3 + k, column)] = spin[k] * lever;
        }
    }
    let turned = |normal: V3| spin.cross(&normal);
    // n·x = h moves with x: dh = n·v(x) + dn·x for any x; taken at the middle.
    let shifted = |normal: V3| normal.dot(&velocity(middle)) + turned(normal).dot(&middle);
    for (floor, columns) in state.floors.iter().zip(&layout.floors) {
        let plane = &floor.plane;
        let normal = plane.normal();
        if let Some(c) = columns.tilt {
            m[(c, column)] = turned(normal).dot(&plane.e1()) * TILT_LEVER_MM;
            m[(c + 1, column)] = turned(normal).dot(&plane.e2()) * TILT_LEVER_MM;
        }
        if let Some(c) = columns.offset {
            m[(c, column)] = shifted(normal);
        }
        if let Some(c) = columns.plumb {
            let about = spin.dot(&normal);
            m[(c, column)] = -about * floor.lean[1] * TILT_LEVER_MM;
            m[(c + 1, column)] = about * floor.lean[0] * TILT_LEVER_MM;
        }
    }
    if let Some(c) = layout.plane {
        let plane = &state.plane;
        let normal = plane.normal();
        m[(c, column)] = turned(normal).dot(&plane.e1()) * TILT_LEVER_MM;
        m[(c + 1, column)] = turned(normal).dot(&plane.e2()) * TILT_LEVER_MM;
        m[(c + 2, column)] = shifted(normal);
    }
}

/// Gram–Schmidt, twice for the digits, leaving out columns that add nothing.
fn orthonormal(m: &Matrix) -> Matrix {
    let mut kept: Vec<nalgebra::DVector<f64>> = Vec::new();
    for k in 0..m.ncols() {
        let mut column = m.column(k).into_owned();
        let length = column.norm();
        if length == 0.0 {
            continue;
        }
        for _ in 0..2 {
            for other in &kept {
                let along = other.dot(&column);
                column.axpy(-along, other, 1.0);
            }
        }
        let rest = column.norm();
        if rest > 1e-9 * length {
            kept.push(column / rest);
        }
    }
    if kept.is_empty() {
        return Matrix::zeros(m.nrows(), 0);
    }
    Matrix::from_columns(&kept)
}
