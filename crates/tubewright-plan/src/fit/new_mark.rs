//! Where one more mark would hold a joint that the marks of the car leave loose.

use tubewright_build::model::Class;
use tubewright_fit::check::{CheckDistance, InTheWay, Mark, Taping, distances_from, is_open};
use tubewright_fit::{NINETEEN_IN_TWENTY, PoseSpread};
use tubewright_geometry::{CentreLine, Frame, Point, TubeElement, Vector, distance};

use super::joints::hour_words;
use crate::bodies::PlacedBody;
use crate::lengths::Lengths;

/// A place to punch a mark.
#[derive(Clone, Debug, PartialEq)]
pub struct NewMark {
    /// The body that it is punched on.
    pub body: String,
    /// The mark of the car that is nearest to it.
    pub from: String,
    /// From that mark to it, in the car's axes, mm.
    pub away: Vector,
    /// Hour of the rim that is taped from it.
    pub clock_rad: f64,
    /// ± (19 in 20) that it leaves in whichever direction is loosest then, mm.
    pub plus_minus_mm: f64,
}

impl NewMark {
    /// Where it is and what it gives, as an errand: *Punch one more mark on …*
    #[must_use]
    pub fn words(&self, lengths: Lengths) -> String {
        format!(
            "Punch one more mark on {}, about {} {}, and tape it to three others: from there to {} the joint is \
             held to ± {} whichever way",
            self.body,
            self.away_words(lengths),
            self.from,
            hour_words(self.clock_rad),
            lengths.fine(self.plus_minus_mm)
        )
    }

    /// *310 mm rearward of*, *310 mm rearward, 90 mm to the left and 240 mm up from*.
    fn away_words(&self, lengths: Lengths) -> String {
        let Vector { x, y, z } = self.away;
        let step_mm = lengths.by_eye_mm();
        let mut parts: Vec<(f64, &str)> = [
            (x, ["rearward", "forward"]),
            (y, ["to the right", "to the left"]),
            (z, ["up", "down"]),
        ]
        .into_iter()
        .map(|(mm, [more, less])| {
            let mm = (mm / step_mm).round() * step_mm;
            (mm.abs(), if mm < 0.0 { less } else { more })
        })
        .filter(|(mm, _)| *mm > 0.5 * step_mm)
        .collect();
        parts.sort_by(|a, b| b.0.total_cmp(&a.0));
        let parts: Vec<String> = parts
            .into_iter()
            .map(|(mm, way)| format!("{} {way}", lengths.about(mm)))
            .collect();
        match parts.as_slice() {
            [] => "beside".to_owned(),
            [only] => format!("{only} from"),
            [first @ .., last] => format!("{} and {last} from", first.join(", ")),
        }
    }
}

/// Distances from the joint at which the bodies are looked at, mm.
const FAR_MM: [f64; 5] = [150.0, 300.0, 500.0, 800.0, 1300.0];

/// From so far on a tape must have left the face that its mark is on, and by so much, mm.
const CLEAR_FROM_MM: f64 = 20.0;
const THREAD_MM: f64 = 0.5;

/// A new mark lies this far off the face that it is punched on: nothing, but for rounding, mm.
const OFF_THE_FACE_MM: f64 = 1e-3;

/// Places whose lines are looked at before it is given up.
const MOST_LOOKED_AT: usize = 400;

/// A mark that leaves more than this part of what was loose is not worth the punch.
const WORTH_IT: f64 = 0.75;

/// What holds still and can be punched: structure and floor on the chassis.
fn is_punched(body: &PlacedBody) -> bool {
    matches!(body.class, Class::Structure | Class::Floor) && body.motion.0.is_fixed()
}

/// The best place for one more mark beside the distances that are taped already (`left` is what they leave);
/// `None` when nothing that can be punched sees the joint from a side that helps. A new mark is taken to be
/// known as well as those that there are.
pub(super) fn one_more(
    frame: &Frame,
    radius_mm: f64,
    left: &PoseSpread,
    marks: &[Mark],
    bodies: &[PlacedBody],
    in_the_way: &InTheWay<'_>,
    taping: &Taping,
) -> Option<NewMark> {
    let covariance = usual(marks)?;
    let mut found: Vec<(f64, &PlacedBody, Point, CheckDistance)> = Vec::new();
    for body in bodies.iter().filter(|body| is_punched(body)) {
        for place in faces_toward(frame.origin, body) {
            let mark = Mark {
                name: String::new(),
                place,
                covariance,
            };
            let best = distances_from(&mark, frame, radius_mm, taping)
                .map(|taped| (left.variance_of(&taped.row) / taped.variance, taped))
                .max_by(|a, b| a.0.total_cmp(&b.0));
            found.extend(best.map(|(worth, taped)| (worth, body, place, taped)));
        }
    }
    found.sort_by(|a, b| b.0.total_cmp(&a.0));
    let (_, body, place, taped) =
        found
            .into_iter()
            .take(MOST_LOOKED_AT)
            .find(|(_, body, place, taped)| {
                leaves(*place, taped.place, body) && is_open(*place, taped.place, in_the_way)
            })?;
    let (_, before_mm) = left.loosest();
    let (_, after_mm) = left.checked(&[(taped.row, taped.variance)]).loosest();
    if after_mm > WORTH_IT * before_mm {
        return None;
    }
    let from = marks
        .iter()
        .min_by(|a, b| a.place.distance(place).total_cmp(&b.place.distance(place)))?;
    Some(NewMark {
        body: body.name.clone(),
        from: from.name.clone(),
        away: place - from.place,
        clock_rad: taped.clock_rad,
        plus_minus_mm: NINETEEN_IN_TWENTY * after_mm,
    })
}

/// Whether a tape to `to` leaves the face that its mark would be punched on, and does not come back into the body: a
/// place can be had where no tape has to be bent over an edge.
fn leaves(mark: Point, to: Point, body: &PlacedBody) -> bool {
    let Some(along) = (to - mark).direction() else {
        return false;
    };
    let line = TubeElement {
        line: CentreLine::Segment {
            a: mark + along * CLEAR_FROM_MM,
            b: to,
        },
        radius: THREAD_MM,
    };
    distance::is_clear(&line, &body.solid_in_car, 0.0)
}

/// The same in every direction, as sure as the mark in the middle of those that there are.
fn usual(marks: &[Mark]) -> Option<[[f64; 3]; 3]> {
    let mut traces: Vec<f64> = marks
        .iter()
        .map(|mark| mark.covariance[0][0] + mark.covariance[1][1] + mark.covariance[2][2])
        .collect();
    traces.sort_by(f64::total_cmp);
    let each = traces.get(traces.len() / 2)? / 3.0;
    Some([[each, 0.0, 0.0], [0.0, each, 0.0], [0.0, 0.0, each]])
}

/// Places on the faces of a body that are turned toward a place: those nearest to points all round it, where the body
/// was measured.
fn faces_toward(at: Point, body: &PlacedBody) -> Vec<Point> {
    let mut faces: Vec<Point> = Vec::new();
    let solid = &body.solid_in_car;
    for far_mm in FAR_MM {
        for way in all_round() {
            let near = at + way * far_mm;
            let on = distance::closest_point_on_solid(near, solid).point;
            let Some(outward) = (near - on).direction() else {
                continue;
            };
            let face = on + outward * OFF_THE_FACE_MM;
            let is_new = faces.iter().all(|known| known.distance(face) > 5.0);
            if is_new && body.is_measured_at(on) {
                faces.push(face);
            }
        }
    }
    faces
}

/// Along the axes and between them.
fn all_round() -> impl Iterator<Item = tubewright_geometry::UnitVector> {
    const STEPS: [f64; 3] = [-1.0, 0.0, 1.0];
    STEPS
        .into_iter()
        .flat_map(|x| STEPS.map(|y| (x, y)))
        .flat_map(|(x, y)| STEPS.map(|z| Vector::new(x, y, z)))
        .filter_map(Vector::direction)
}
