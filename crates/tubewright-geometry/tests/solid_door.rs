//! What is no body is refused at the door.

use tubewright_geometry::{
    CentreLine, Frame, OrientedBox, Point, PointCloud, Prism, Solid, SolidError, TriangleMesh,
    TubeElement, UnitVector,
};

fn prism(outline: Vec<[f64; 2]>) -> Solid {
    Solid::Prism(Prism {
        origin: Point::ORIGIN,
        u: UnitVector::X,
        v: UnitVector::Y,
        outline,
        depth: 10.0,
    })
}

#[test]
fn sound_bodies_pass() {
    let bend = CentreLine::bend(&Frame::IDENTITY, 1.0, 90.0);
    for solid in [
        Solid::Box(OrientedBox::axis_aligned(Point::ORIGIN, [1.0, 2.0, 0.0])),
        Solid::Capsule {
            a: Point::ORIGIN,
            b: Point::ORIGIN,
            radius: 2.0,
        },
        prism(vec![[0.0, 0.0], [10.0, 0.0], [2.0, 2.0], [0.0, 10.0]]),
        Solid::Tube(TubeElement {
            line: bend,
            radius: 30.0,
        }),
        Solid::HalfSpace {
            point: Point::ORIGIN,
            outward: UnitVector::Z,
        },
    ] {
        assert_eq!(solid.check(), Ok(()), "{solid:?}");
    }
}

#[test]
fn unsound_bodies_are_told_why() {
    let nan = Point::new(f64::NAN, 0.0, 0.0);
    let twisted = OrientedBox {
        axes: [UnitVector::X, UnitVector::X, UnitVector::Z],
        ..OrientedBox::axis_aligned(Point::ORIGIN, [1.0; 3])
    };
    let empty: Solid = Solid::Union(Vec::new());
    assert!(matches!(
        Solid::Sphere {
            centre: nan,
            radius: 1.0
        }
        .check(),
        Err(SolidError::NotFinite { .. })
    ));
    assert!(matches!(
        Solid::Sphere {
            centre: Point::ORIGIN,
            radius: -1.0
        }
        .check(),
        Err(SolidError::NotPositive { .. })
    ));
    assert!(matches!(
        Solid::Cylinder {
            a: Point::ORIGIN,
            b: Point::ORIGIN,
            radius: 1.0
        }
        .check(),
        Err(SolidError::NoAxis { .. })
    ));
    assert!(matches!(
        Solid::Box(twisted).check(),
        Err(SolidError::NotSquare { .. })
    ));
    assert!(matches!(empty.check(), Err(SolidError::Empty { .. })));
    assert!(matches!(
        prism(vec![[0.0, 0.0], [1.0, 1.0]]).check(),
        Err(SolidError::FewCorners { corners: 2 })
    ));
    // A bow tie.
    assert!(matches!(
        prism(vec![[0.0, 0.0], [10.0, 10.0], [10.0, 0.0], [0.0, 10.0]]).check(),
        Err(SolidError::Crosses {
            first: 0,
            second: 2
        })
    ));
    // The fault may sit deep in a union.
    let deep = Solid::Union(vec![Solid::Union(vec![Solid::Sphere {
        centre: Point::ORIGIN,
        radius: f64::INFINITY,
    }])]);
    assert!(matches!(deep.check(), Err(SolidError::NotFinite { .. })));
}

#[test]
fn meshes_and_clouds_refuse_what_is_not_finite_or_not_there() {
    let p = |x: f64| Point::new(x, 0.0, 0.0);
    assert!(TriangleMesh::new(vec![p(0.0), p(1.0), p(f64::NAN)], vec![[0, 1, 2]]).is_none());
    assert!(TriangleMesh::new(vec![p(0.0), p(1.0), p(2.0)], vec![[0, 1, 3]]).is_none());
    assert!(TriangleMesh::new(vec![p(0.0), p(1.0), p(2.0)], vec![]).is_none());
    assert!(PointCloud::new(vec![], 1.0).is_none());
    assert!(PointCloud::new(vec![p(f64::INFINITY)], 1.0).is_none());
    assert!(PointCloud::new(vec![p(0.0)], -1.0).is_none());
}
