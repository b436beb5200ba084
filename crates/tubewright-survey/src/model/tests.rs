//! Every kind of reading: written derivatives against differences.

use super::{Facing, Floor, Layout, Pose, State, linearise_kind};
use crate::linear::{V3, Vector1, rotation};
use crate::network::{
    Contact, End, EndId, Line, Network, PointId, PointSpec, Reading, ReadingKind, SetupId,
    SetupSpec, Stance, Target, Touch,
};
use tubewright_geometry::Point;

fn sample() -> (Network, State) {
    let mut network = Network::default();
    for name in ["a", "b", "c", "d"] {
        network.add_point(PointSpec::new(name));
    }
    network.add_end(End {
        name: "port".to_owned(),
        rim_radius_mm: 31.75,
        holes: vec![Point::new(4.0, 30.0, -41.0)],
    });
    network.add_setup(SetupSpec::new("lift", Stance::Lift));
    let mut floor = Floor::level(V3::new(0.05, -0.03, 0.99).normalize(), 210.0);
    floor.lean = [0.01, -0.02];
    let state = State {
        points: vec![
            V3::new(10.0, -400.0, 500.0),
            V3::new(900.0, 350.0, 460.0),
            V3::new(1700.0, -380.0, 300.0),
            V3::new(600.0, 80.0, 250.0),
        ],
        ends: vec![Pose {
            origin: V3::new(420.0, -210.0, 330.0),
            axes: rotation(V3::new(0.4, -0.8, 0.3)),
        }],
        floors: vec![floor],
        plane: Facing::new(V3::new(0.02, 0.99, -0.04).normalize(), 6.0),
        sideways: None,
    };
    (network, state)
}

fn kinds() -> Vec<ReadingKind> {
    let p = |i: usize| Target::Point(PointId(i));
    let end = EndId(0);
    let setup = SetupId(0);
    let rim = Target::Rim {
        end,
        clock_rad: 2.1,
    };
    let hole = Target::Hole { end, hole: 0 };
    let near = Touch {
        target: rim,
        contact: Contact::NearSide { width_mm: 40.0 },
    };
    vec![
        ReadingKind::Tape {
            from: near,
            to: Touch::place(p(1)),
            burnt_mm: 100.0,
        },
        ReadingKind::Height {
            target: Touch::place(hole),
            setup,
        },
        ReadingKind::Plumb {
            from: p(0),
            to: rim,
            setup,
        },
        ReadingKind::Offset {
            from: p(3),
            to: hole,
            along: Line::Through(p(0), p(2)),
        },
        ReadingKind::Offset {
            from: p(3),
            to: rim,
            along: Line::Plumb(setup),
        },
        ReadingKind::Symmetry {
            left: p(0),
            right: p(1),
        },
        ReadingKind::Inclination {
            from: p(2),
            to: Target::Centre(end),
            setup,
        },
        ReadingKind::Bearing {
            from: p(0),
            to: rim,
            base_from: p(2),
            base_to: p(1),
            setup,
        },
        ReadingKind::FaceInclination {
            end,
            clock_rad: 0.7,
            setup,
        },
        ReadingKind::TwelveUp { end, setup },
    ]
}

#[test]
fn derivatives_equal_differences() {
    let (mut network, state) = sample();
    for (i, kind) in kinds().into_iter().enumerate() {
        let number = u32::try_from(i).unwrap();
        network.readings.push(Reading::new(number, kind, 1.0, 1.0));
    }
    let layout = Layout::of(&network);
    // Small enough for the curvature, large enough for the digits: mm and mm-like unknowns.
    let h = 1e-3;
    for kind in kinds() {
        let written = linearise_kind(&network, &layout, &state, &kind);
        for column in 0..layout.width {
            let mut step = Vector1::zeros(layout.width);
            step[column] = h;
            let up = linearise_kind(&network, &layout, &state.moved(&layout, &step), &kind);
            let down = linearise_kind(&network, &layout, &state.moved(&layout, &-step), &kind);
            for ((w, u), d) in written.iter().zip(&up).zip(&down) {
                let difference = (u.0 - d.0) / (2.0 * h);
                let sum: f64 = w.1.iter().filter(|e| e.0 == column).map(|e| e.1).sum();
                assert!(
                    (sum - difference).abs() < 1e-8 + 1e-6 * sum.abs(),
                    "{kind:?}, column {column}: written {sum}, difference {difference}"
                );
            }
        }
    }
}
