//! Which way a tacked joint can still move when its readings do not fix it, in words, with the one reading
//! to add.
//!
//! The readings are taken as small changes about where the joint lies; directions in which none of them
//! changes are loose (null space of the normal matrix).

use nalgebra::{Matrix6, Vector6};
use tubewright_fit::built::{JointSlope, JointTape, rim_place};
use tubewright_fit::{NINETEEN_IN_TWENTY, PoseSpread};
use tubewright_geometry::{Frame, Point, UnitVector, Vector, math};

/// A joint is held at least as well as what is pulled in while tacking, mm (common practice, no
/// source): no tolerance is looser than this.
pub(super) const LOOSEST_MM: f64 = 5.0;

/// A direction in which readings leave a joint as loose as it was.
#[derive(Clone, Debug, PartialEq)]
pub struct LooseWay {
    /// In words: "up and down".
    pub words: &'static str,
    /// ± (19 in 20) along it with the readings, mm.
    pub plus_minus_mm: f64,
}

impl LooseWay {
    /// The direction in which a joint is left looser than `LOOSEST_MM`.
    #[must_use]
    pub fn of(spread: &PoseSpread) -> Option<Self> {
        let (along, sigma_mm) = spread.loosest();
        let plus_minus_mm = NINETEEN_IN_TWENTY * sigma_mm;
        (plus_minus_mm > LOOSEST_MM).then(|| Self {
            words: way_words(along),
            plus_minus_mm,
        })
    }
}

/// A line in the car in words, by the axis or the two axes that it lies nearest to.
fn way_words(along: UnitVector) -> &'static str {
    let [x, y, z] = along.to_array().map(f64::abs);
    // Within some 25° of an axis it is that axis.
    const MOSTLY: f64 = 0.9;
    if x > MOSTLY {
        "fore and aft"
    } else if y > MOSTLY {
        "left and right"
    } else if z > MOSTLY {
        "up and down"
    } else if z < x && z < y {
        "fore and aft and sideways, level"
    } else if y < x && y < z {
        "fore and aft, and up and down with it"
    } else {
        "sideways, and up and down with it"
    }
}

/// A tape with the name of its mark.
pub(super) struct Taped<'a> {
    pub(super) mark: &'a str,
    pub(super) tape: &'a JointTape,
}

/// A mark that a tape could be held to.
pub(super) struct Mark<'a> {
    pub(super) name: &'a str,
    pub(super) at: Point,
}

/// Square of the ratio of the weakest direction to the strongest below which it counts as loose: a
/// direction known a thousand times worse than the best.
const LOOSE: f64 = 1e-6;

/// Distance in mm of a place from a line that counts as on it.
const ON_LINE_MM: f64 = 5.0;

/// Sine of an angle that counts as none: three degrees.
const ALONG: f64 = 0.05;

/// Shortest and longest line that a tape takes under a car, mm (common practice, no source).
const TAPE_MM: core::ops::RangeInclusive<f64> = 50.0..=3000.0;

/// `None` when the readings fix the joint.
pub(super) fn loose_words(
    frame: &Frame,
    radius_mm: f64,
    taped: &[Taped<'_>],
    slopes: &[JointSlope],
    marks: &[Mark<'_>],
) -> Option<String> {
    let mut normal = Matrix6::<f64>::zeros();
    for slope in slopes {
        let mut row = Vector6::from(slope.row(frame));
        for k in 3..6 {
            // Turns are millimetres on the rim here.
            row[k] /= radius_mm;
        }
        let size = row.norm();
        if size > 0.0 {
            row /= size;
            normal += row * row.transpose();
        }
    }
    for Taped { tape, .. } in taped {
        if let Some(row) = row_of(frame, radius_mm, tape.mark, tape.clock_rad) {
            normal += row * row.transpose();
        }
    }
    let eigen = normal.symmetric_eigen();
    let limit = LOOSE * eigen.eigenvalues.max().max(f64::MIN_POSITIVE);
    let loose: Vec<Vector6<f64>> = (0..6)
        .filter(|&k| eigen.eigenvalues[k] < limit)
        .map(|k| eigen.eigenvectors.column(k).into_owned())
        .collect();
    let way = match loose.as_slice() {
        [] => return None,
        [only] => one_way(frame, radius_mm, taped, only),
        many => format!("move in {} ways", many.len()),
    };
    let first = best_line(frame, radius_mm, taped, marks, &loose)
        .map(|(mark, clock)| format!(": read from {mark} to {}", place_words(clock)))
        .unwrap_or_default();
    let then = match loose.len() {
        1 => String::new(),
        many => format!(", then {} more", many - 1),
    };
    Some(format!("it can still {way}{first}{then}"))
}

/// How a tape changes with a small motion of the joint: shift in mm, turn as millimetres on the rim.
fn row_of(frame: &Frame, radius_mm: f64, mark: Point, clock: Option<f64>) -> Option<Vector6<f64>> {
    let place = rim_place(frame, radius_mm, clock);
    let direction = (place - mark).direction()?;
    let mut row = Vector6::from(PoseSpread::sure(frame.origin).row_along(place, direction));
    for k in 3..6 {
        row[k] /= radius_mm;
    }
    Some(row)
}

/// The only way that is left, in words.
fn one_way(frame: &Frame, radius_mm: f64, taped: &[Taped<'_>], way: &Vector6<f64>) -> String {
    let shift = Vector::new(way[0], way[1], way[2]);
    let turn = Vector::new(way[3], way[4], way[5]) * (1.0 / radius_mm);
    let travel = frame.travel().vector();
    // A turn that moves the rim by less than a hundredth of what the joint slides.
    if turn.norm() * radius_mm < 0.01 * shift.norm() {
        let straight = travel.cross(shift).norm() < ALONG * shift.norm();
        return if straight {
            "slide along its own travel".to_owned()
        } else {
            "slide".to_owned()
        };
    }
    let squared = turn.norm_squared();
    let Some(axis) = turn.direction() else {
        return "turn".to_owned();
    };
    let foot = frame.origin + turn.cross(shift) * (1.0 / squared);
    let off = |place: Point| axis.vector().cross(place - foot).norm();
    if axis.vector().cross(travel).norm() < ALONG && off(frame.origin) < ON_LINE_MM {
        return "turn about its own travel, for nothing tells its clock".to_owned();
    }
    let mut through: Vec<(String, Point)> = Vec::new();
    let own = taped.iter().map(|taped| {
        (
            place_words(taped.tape.clock_rad),
            rim_place(frame, radius_mm, taped.tape.clock_rad),
        )
    });
    let marks = taped
        .iter()
        .map(|taped| (taped.mark.to_owned(), taped.tape.mark));
    for (name, place) in own.chain(marks) {
        let apart = through
            .iter()
            .all(|(_, known)| known.distance(place) > 2.0 * ON_LINE_MM);
        if off(place) < ON_LINE_MM && apart {
            through.push((name, place));
        }
    }
    match through.as_slice() {
        [(a, _), (b, _), ..] => format!("turn about the line through {a} and {b}"),
        [(a, _)] => format!("turn about a line through {a}"),
        [] => "turn".to_owned(),
    }
}

/// The line that takes away most of what is loose.
fn best_line<'a>(
    frame: &Frame,
    radius_mm: f64,
    taped: &[Taped<'_>],
    marks: &'a [Mark<'_>],
    loose: &[Vector6<f64>],
) -> Option<(&'a str, Option<f64>)> {
    let clocks = [None]
        .into_iter()
        .chain((0..4_u8).map(|quarter| Some(f64::from(quarter) * math::FRAC_PI_2)));
    let mut best: Option<(f64, &str, Option<f64>)> = None;
    for clock in clocks {
        for mark in marks {
            let place = rim_place(frame, radius_mm, clock);
            let is_taken = taped
                .iter()
                .any(|taped| taped.mark == mark.name && taped.tape.clock_rad == clock);
            if is_taken || !TAPE_MM.contains(&place.distance(mark.at)) {
                continue;
            }
            let Some(row) = row_of(frame, radius_mm, mark.at, clock) else {
                continue;
            };
            let seen: f64 = loose.iter().map(|way| row.dot(way) * row.dot(way)).sum();
            if best.is_none_or(|(most, ..)| seen > most) {
                best = Some((seen, mark.name, clock));
            }
        }
    }
    best.filter(|(seen, ..)| *seen > 1e-6)
        .map(|(_, mark, clock)| (mark, clock))
}

/// `the centre`, `3:30 on the rim`.
fn place_words(clock: Option<f64>) -> String {
    let Some(clock) = clock else {
        return "the centre".to_owned();
    };
    let minutes = (clock.rem_euclid(math::TAU) / math::TAU * 720.0).round();
    let (hours, rest) = ((minutes / 60.0).floor(), minutes % 60.0);
    let hours = if hours < 1.0 { 12.0 } else { hours };
    format!("{hours:.0}:{rest:02.0} on the rim")
}

#[cfg(test)]
mod tests {
    use super::*;

    const MARKS: [(&str, [f64; 3]); 4] = [
        ("A", [0.0, -500.0, 100.0]),
        ("B", [0.0, 500.0, 50.0]),
        ("C", [1500.0, -450.0, 0.0]),
        ("D", [1500.0, 480.0, 400.0]),
    ];

    fn words(lines: &[(usize, Option<f64>)]) -> Option<String> {
        let frame = Frame::upright(
            Point::new(700.0, 60.0, 200.0),
            Vector::new(1.0, 0.2, -0.1)
                .direction()
                .unwrap_or(UnitVector::X),
        );
        let tapes: Vec<(&str, JointTape)> = lines
            .iter()
            .map(|&(mark, clock_rad)| {
                let (name, at) = MARKS[mark];
                let mark = Point::from_array(at);
                let tape = JointTape {
                    mark,
                    mark_covariance: [[0.0; 3]; 3],
                    clock_rad,
                    reads_mm: rim_place(&frame, 30.0, clock_rad).distance(mark),
                    sigma_mm: 1.0,
                };
                (name, tape)
            })
            .collect();
        let taped: Vec<Taped<'_>> = tapes
            .iter()
            .map(|(mark, tape)| Taped { mark, tape })
            .collect();
        let marks = MARKS.map(|(name, at)| Mark {
            name,
            at: Point::from_array(at),
        });
        loose_words(&frame, 30.0, &taped, &[], &marks)
    }

    /// Six lines to two places fix both and leave a turn about the line through them; the seventh, to a
    /// third place, takes it away.
    #[test]
    fn the_line_that_a_joint_turns_about_is_named() {
        let twelve = Some(0.0);
        let four = Some(math::TAU / 3.0);
        let mut lines = vec![(0, twelve), (1, twelve), (2, twelve), (3, twelve)];
        lines.extend([(0, four), (1, four), (2, four)]);
        let said = words(&lines).unwrap_or_default();
        assert!(
            said.starts_with(
                "it can still turn about the line through 12:00 on the rim and 4:00 on the rim: read from "
            ),
            "{said}"
        );
        lines.push((3, Some(0.7 * math::TAU)));
        assert_eq!(words(&lines), None);
    }

    #[test]
    fn a_centre_leaves_every_turn() {
        let said = words(&[(0, None), (1, None), (2, None)]).unwrap_or_default();
        assert!(
            said.starts_with("it can still move in 3 ways: read from "),
            "{said}"
        );
        assert!(said.ends_with(", then 2 more"), "{said}");
    }
}
