//! Small helpers between the geometry types and the matrices of the solver.

use nalgebra::{DMatrix, DVector, Matrix3, Vector3};
use tubewright_geometry::{Point, Vector, math};

pub(crate) type V3 = Vector3<f64>;
pub(crate) type M3 = Matrix3<f64>;
pub(crate) type Vector1 = DVector<f64>;
pub(crate) type Matrix = DMatrix<f64>;

pub(crate) fn v3(p: Point) -> V3 {
    V3::new(p.x, p.y, p.z)
}

pub(crate) fn point(v: V3) -> Point {
    Point::new(v.x, v.y, v.z)
}

pub(crate) fn vector(v: V3) -> Vector {
    Vector::new(v.x, v.y, v.z)
}

/// Rotation by a rotation vector in radians (Rodrigues' formula).
pub(crate) fn rotation(omega: V3) -> M3 {
    let angle = omega.norm();
    let k = skew(omega);
    // Below this the series is exact to rounding and the quotient below would lose digits.
    if angle < 1e-6 {
        return M3::identity() + k + k * k * 0.5;
    }
    let (sin, cos) = math::sin_cos(angle);
    M3::identity() + k * (sin / angle) + k * k * ((1.0 - cos) / (angle * angle))
}

/// The matrix of `omega ×`.
pub(crate) fn skew(w: V3) -> M3 {
    M3::new(0.0, -w.z, w.y, w.z, 0.0, -w.x, -w.y, w.x, 0.0)
}

/// A direction square to `n` (unit), chosen by its smallest component.
pub(crate) fn any_normal(n: V3) -> V3 {
    let axis = if n.x.abs() <= n.y.abs() && n.x.abs() <= n.z.abs() {
        V3::x()
    } else if n.y.abs() <= n.z.abs() {
        V3::y()
    } else {
        V3::z()
    };
    n.cross(&axis).normalize()
}

/// Right-handed basis (e1, e2, n) in columns with the third along `n` (unit).
pub(crate) fn basis_about(n: V3) -> M3 {
    let e1 = any_normal(n);
    let e2 = n.cross(&e1);
    M3::from_columns(&[e1, e2, n])
}
