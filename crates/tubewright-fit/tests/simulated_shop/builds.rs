//! Random runs under a random car.

use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64Mcg;
use tubewright_fit::check::Mark;
use tubewright_geometry::{Frame, Piece, Point, UnitVector};

pub(crate) const CLR_MM: f64 = 85.5;
pub(crate) const RADIUS_MM: f64 = 28.5;

/// A planned run with marks about it.
pub(crate) struct Planned {
    pub(crate) start: Frame,
    pub(crate) pieces: Vec<Piece>,
    /// Where the survey has them.
    pub(crate) marks: Vec<Mark>,
    /// Where they are.
    pub(crate) true_marks: Vec<Point>,
}

/// The sum of twelve random numbers: near enough to normal, and never beyond 6 σ.
pub(crate) fn normal(rng: &mut Pcg64Mcg) -> f64 {
    (0..12).map(|_| rng.random_range(-0.5..0.5)).sum()
}

/// Two to three metres of run: four to seven bends of 15° to 60° between straights of 60 to 400 mm.
pub(crate) fn planned(seed: u64) -> (Planned, Pcg64Mcg) {
    let mut rng = Pcg64Mcg::seed_from_u64(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15).wrapping_add(1));
    let start = Frame::upright(Point::new(0.0, 0.0, 0.0), UnitVector::X);
    let bends = rng.random_range(4..8);
    let mut pieces = Vec::new();
    for _ in 0..bends {
        pieces.push(Piece::Straight {
            length_mm: f64::from(rng.random_range(60..400)),
        });
        pieces.push(Piece::Bend {
            bend_rad: f64::from(rng.random_range(15..60)).to_radians(),
            clock_rad: f64::from(rng.random_range(-180..180)).to_radians(),
            clr_mm: CLR_MM,
        });
    }
    pieces.push(Piece::Straight {
        length_mm: f64::from(rng.random_range(150..400)),
    });
    // Marks along both rails and on the floor, every half metre of the run, a little off it.
    let mut frame = start;
    let mut marks = Vec::new();
    let mut true_marks = Vec::new();
    for (index, piece) in pieces.iter().enumerate() {
        frame = piece.carry(&frame);
        if index % 2 == 0 {
            continue;
        }
        for clock in [0.0, 120.0, 240.0] {
            let out = frame.at_clock(f64::to_radians(clock + rng.random_range(-40.0..40.0)));
            let place = frame.origin
                + out * rng.random_range(250.0..600.0)
                + frame.travel() * rng.random_range(-300.0..300.0);
            // Surveyed to 1 mm (σ) in each direction.
            let off = [normal(&mut rng), normal(&mut rng), normal(&mut rng)];
            true_marks.push(Point::new(
                place.x + off[0],
                place.y + off[1],
                place.z + off[2],
            ));
            marks.push(Mark {
                name: format!("M{}", marks.len() + 1),
                place,
                covariance: [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
            });
        }
    }
    (
        Planned {
            start,
            pieces,
            marks,
            true_marks,
        },
        rng,
    )
}
