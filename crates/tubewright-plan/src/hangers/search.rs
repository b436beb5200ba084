//! Places along the runs with something above to hang them on, and the best of them.

use tubewright_build::model::{Class, ComponentKind, Model};
use tubewright_chassis::{RubberPlace, hang, settled};
use tubewright_geometry::distance::{clearance_below, clearance_between};
use tubewright_geometry::{CentreLine, Frame, Point, Solid, TubeElement, Vector};
use tubewright_stock::StockPlan;

use super::frame::{RunsAsBeams, Station, beams_of};
use super::{
    BESIDE_CAN_MM, FROM_WELD_MM, GAP_MM, HALF_WIDTH_MM, Hanger, Hanging, HeldCan, LIMITS,
    NoHanging, REACH_MM, RUBBER, TOLD_HZ,
};
use crate::bodies::PlacedBody;
use crate::checks::{MovingRun, other_pieces, room_to_body, room_to_piece};
use crate::held::PlaceOnRun;
use crate::routes::{PlannedKind, PlannedPiece, PlannedRun, component_kind};
use crate::sensors::{Clocking, seams};
use crate::stages::Surroundings;

/// Ways a rod may leave its tube, round from the highest place, in the order in which they are liked, degrees.
/// The straight ways to what might hold a bracket are tried after them.
const CLOCKS_DEG: [f64; 5] = [0.0, 30.0, -30.0, 60.0, -60.0];

/// Most that a rod may lean from upright, degrees: beyond, its rubber could not pull up. Further aside than
/// [`ARM_FROM_DEG`] the bracket is an arm that reaches over, and the rubber sits at the tube.
const MOST_LEAN_DEG: f64 = 95.0;

/// From this lean on the bracket is the long part and not the rod, degrees.
const ARM_FROM_DEG: f64 = 45.0;

/// From a can's end to the middle of what is fixed to it, at least, mm.
const FROM_CAN_END_MM: f64 = 25.0;

/// From a sensor's foot to a hanger's, at least, mm: its socket goes past (common practice, no source).
const FROM_SENSOR_MM: f64 = 60.0;

/// Height of rubber and bracket, mm: the rod ends so far from what it hangs on (common practice, no source).
const RUBBER_MM: f64 = 45.0;

/// How finely gaps are told apart, mm.
const FINE_MM: f64 = 0.5;

/// Steps of a ray at most.
const MOST_STEPS: usize = 200;

/// How much less than the limit a choice may sink, mm.
const SAG_SPARE_MM: f64 = 0.3;

/// Sinking that 100 mm of reach, an hour off upright and a bend or a can are taken for, mm.
const AGAINST_MM: [f64; 3] = [0.5, 0.3, 0.4];

/// Times that a place without room in motion is put aside and the choice made again.
const MOST_ROUNDS: usize = 40;

/// Natural frequencies that are worked out for a run: its swinging ones come first.
const FREQUENCIES: usize = 10;

/// Where a hanger is.
#[derive(Clone, Debug, PartialEq)]
pub struct HangerPlace {
    /// Mark of the piece.
    pub piece: String,
    /// Number of the piece in its run, counted from 0.
    pub number: usize,
    /// The piece is a can: strap or bracket round it, no weld on a thin wall.
    pub is_on_can: bool,
    /// The piece is a bend.
    pub is_on_bend: bool,
    /// Mark of the joint that it is measured from: the last upstream that is seen from outside.
    pub joint: String,
    /// From that joint along the centre line, mm.
    pub along_mm: f64,
    /// From where the run starts along the centre line, mm.
    pub run_mm: f64,
    /// How the rod leaves.
    pub clocking: Clocking,
    /// Where it leaves the outside of tube or can, in the car's axes, mm.
    pub foot: Point,
    /// What it hangs on.
    pub body: String,
    /// Where a straight line along the rod meets that, in the car's axes, mm.
    pub bracket: Point,
    /// Where the rubber takes hold of the rod, in the car's axes, mm.
    pub rubber: Point,
    /// From the foot to the bracket's place, for rod, rubber and bracket, mm.
    pub reach_mm: f64,
}

impl HangerPlace {
    /// What the piece is, where that matters to how the rod is fixed.
    #[must_use]
    pub const fn on_words(&self) -> &'static str {
        if self.is_on_can {
            ", a can"
        } else if self.is_on_bend {
            ", a bend"
        } else {
            ""
        }
    }

    /// The place in a sentence, lengths in mm.
    #[must_use]
    pub fn words(&self) -> String {
        format!(
            "on {}{}, {:.0} mm downstream of {} along its centre line, out at {} looking downstream (12 is the highest place), {:.0} mm to {}",
            self.piece,
            self.on_words(),
            self.along_mm,
            self.joint,
            self.clocking.hour(),
            self.reach_mm,
            self.body,
        )
    }
}

/// A place that could be.
struct Candidate {
    station: Station,
    place: HangerPlace,
    room: TubeElement,
    rubber: RubberPlace,
}

/// How the runs of a group hang.
pub(super) fn hanging(
    model: &Model,
    around: &Surroundings,
    all: &[MovingRun<'_>],
    group: &[usize],
    plan: Option<&StockPlan>,
    sensors: &[Point],
) -> Result<Hanging, NoHanging> {
    let RunsAsBeams { beams, stations } = beams_of(model, all, group)?;
    let mut candidates: Vec<Candidate> = Vec::new();
    for &number in group {
        let Some(run) = all.get(number) else { continue };
        let seams_mm = seams(run.run, plan);
        let own = stations.iter().filter(|station| station.run == number);
        candidates.extend(own.filter_map(|station| {
            let place = (all, *station, seams_mm.as_slice(), sensors);
            candidate(model, around, place)
        }));
    }
    let limits = tubewright_chassis::HangLimits {
        most_rubbers: LIMITS.most_rubbers * group.len(),
        // The choice does not count what rubbers hold sideways, which moves the figure by a little.
        most_sag_mm: LIMITS.most_sag_mm - SAG_SPARE_MM,
        ..LIMITS
    };
    for _ in 0..MOST_ROUNDS {
        let places: Vec<RubberPlace> = candidates.iter().map(|one| one.rubber).collect();
        if places.len() < limits.least_rubbers {
            break;
        }
        let one_of = sides_with_places(model, all, group, &candidates);
        let Some(hung) =
            hang(&beams, &places, RUBBER, &limits, &one_of).map_err(NoHanging::Frame)?
        else {
            break;
        };
        let is_tight = |number: &usize| {
            candidates
                .get(*number)
                .is_some_and(|one| !has_room(around, all, one))
        };
        if let Some(tight) = hung.chosen.iter().find(|number| is_tight(number)) {
            candidates.remove(*tight);
            continue;
        }
        let chosen: Vec<RubberPlace> = hung
            .chosen
            .iter()
            .filter_map(|number| places.get(*number).copied())
            .collect();
        let still = settled(&beams, &chosen, RUBBER, FREQUENCIES * group.len())
            .map_err(NoHanging::Frame)?;
        let hangers = hung.chosen.iter().zip(&still.loads_n);
        return Ok(Hanging {
            hangers: hangers
                .filter_map(|(number, load_n)| {
                    let one = candidates.get(*number)?;
                    Some(Hanger {
                        mark: String::new(),
                        run: all.get(one.station.run)?.run.name.clone(),
                        place: one.place.clone(),
                        load_n: *load_n,
                    })
                })
                .collect(),
            mass_kg: beams.mass_kg(),
            sag_mm: still
                .sags_mm
                .iter()
                .copied()
                .fold(f64::NEG_INFINITY, f64::max),
            frequencies_hz: still
                .frequencies_hz
                .into_iter()
                .filter(|hz| *hz >= TOLD_HZ[0] && *hz <= TOLD_HZ[1])
                .collect(),
            is_within: hung.is_within,
            cans: Vec::new(),
        });
    }
    Err(NoHanging::NothingAbove {
        places: candidates.len(),
    })
}

/// The two stretches of a run in which a hanger holds a silencer on one side of its middle: its outer thirds and the
/// tube just beyond them, from and to along the run, mm (common practice, no source).
fn sides_of_cans(model: &Model, run: &PlannedRun) -> Vec<(usize, [[f64; 2]; 2])> {
    let mut at_mm = 0.0;
    let mut cans = Vec::new();
    for (number, piece) in run.pieces.iter().enumerate() {
        let to_mm = at_mm + piece.centre_line_mm();
        if let PlannedKind::Component { name, .. } = &piece.kind
            && component_kind(model, name) == Some(ComponentKind::Silencer)
        {
            let third_mm = (to_mm - at_mm) / 3.0;
            let ahead = [at_mm - BESIDE_CAN_MM, at_mm + third_mm];
            cans.push((number, [ahead, [to_mm - third_mm, to_mm + BESIDE_CAN_MM]]));
        }
        at_mm = to_mm;
    }
    cans
}

/// For each side of each silencer behind the flex section the candidates that would hold it there; a side without any
/// is left out.
fn sides_with_places(
    model: &Model,
    all: &[MovingRun<'_>],
    group: &[usize],
    candidates: &[Candidate],
) -> Vec<Vec<usize>> {
    let mut sides = Vec::new();
    for &number in group {
        let Some(run) = all.get(number) else { continue };
        for [from_mm, to_mm] in sides_of_cans(model, run.run)
            .into_iter()
            .flat_map(|(_, sides)| sides)
        {
            let holds = |one: &Candidate| {
                one.station.run == number && (from_mm..=to_mm).contains(&one.station.run_mm)
            };
            let holding: Vec<usize> = (0..)
                .zip(candidates)
                .filter(|(_, one)| holds(one))
                .map(|(at, _)| at)
                .collect();
            if !holding.is_empty() {
                sides.push(holding);
            }
        }
    }
    sides
}

/// The silencers of a group with the hangers on both sides of their middle.
pub(super) fn held_cans(
    model: &Model,
    all: &[MovingRun<'_>],
    group: &[usize],
    hangers: &[Hanger],
) -> Vec<HeldCan> {
    let mut cans = Vec::new();
    for run in group.iter().filter_map(|number| all.get(*number)) {
        for (number, sides) in sides_of_cans(model, run.run) {
            let Some(piece) = run.run.pieces.get(number) else {
                continue;
            };
            let PlannedKind::Component { name, .. } = &piece.kind else {
                continue;
            };
            let [ahead, behind] = sides.map(|[from_mm, to_mm]| {
                let own = hangers.iter().filter(|hanger| {
                    hanger.run == run.run.name && (from_mm..=to_mm).contains(&hanger.place.run_mm)
                });
                own.map(|hanger| hanger.mark.clone()).collect()
            });
            cans.push(HeldCan {
                piece: piece.mark.clone(),
                name: name.clone(),
                ahead,
                behind,
            });
        }
    }
    cans
}

/// The best way for a rod from a station, where one has room at rest.
fn candidate(
    model: &Model,
    around: &Surroundings,
    (all, station, seams_mm, sensors): (&[MovingRun<'_>], Station, &[f64], &[Point]),
) -> Option<Candidate> {
    let run = all.get(station.run)?;
    let piece = run.run.pieces.get(station.piece)?;
    let kind = is_place_for(model, piece, &station, seams_mm, 0.5 * run.run.od_mm)?;
    let (from, from_mm) = last_joint(run.run, &station, seams_mm)?;
    let clocks = CLOCKS_DEG
        .into_iter()
        .chain(toward_holders(around, &station));
    clocks.into_iter().find_map(|clock_deg| {
        let clocking = Clocking::at(&station.frame, clock_deg.to_radians());
        let out = clocking.out.vector();
        let centre = station.frame.origin;
        let foot = centre + out * outside(piece, centre, out)?;
        if sensors
            .iter()
            .any(|sensor| sensor.distance(foot) < FROM_SENSOR_MM)
        {
            return None;
        }
        let (body, reach_mm) = above(around, foot, out)?;
        let room = TubeElement {
            line: CentreLine::Segment {
                a: foot + out * (HALF_WIDTH_MM + GAP_MM),
                b: foot + out * (reach_mm - HALF_WIDTH_MM),
            },
            radius: HALF_WIDTH_MM,
        };
        let arm = (foot - centre)
            + if clock_deg.abs() > ARM_FROM_DEG {
                Vector::ZERO
            } else {
                out * (reach_mm - RUBBER_MM).max(0.0)
            };
        let candidate = Candidate {
            station,
            place: HangerPlace {
                piece: piece.mark.clone(),
                number: station.piece,
                is_on_can: kind == On::Can,
                is_on_bend: kind == On::Bend,
                joint: from.to_owned(),
                along_mm: from_mm,
                run_mm: station.run_mm,
                clocking,
                foot,
                body: body.name.clone(),
                bracket: foot + out * reach_mm,
                rubber: centre + arm,
                reach_mm,
            },
            room,
            rubber: RubberPlace {
                place: station.place,
                arm,
                against_mm: AGAINST_MM[0] * reach_mm / 100.0
                    + AGAINST_MM[1] * clock_deg.abs() / 30.0
                    + if kind == On::Straight {
                        0.0
                    } else {
                        AGAINST_MM[2]
                    },
            },
        };
        is_free_at_rest(around, all, &candidate).then_some(candidate)
    })
}

/// The last joint upstream of a station at which something is welded, and how far upstream along the centre
/// line, mm.
fn last_joint<'a>(
    run: &'a PlannedRun,
    station: &Station,
    seams_mm: &[f64],
) -> Option<(&'a str, f64)> {
    let mut at_mm = 0.0;
    let mut found = None;
    for piece in run.pieces.iter().take(station.piece + 1) {
        if seams_mm.iter().any(|seam| (seam - at_mm).abs() < 1e-6) {
            found = Some((piece.joint.as_str(), station.run_mm - at_mm));
        }
        at_mm += piece.centre_line_mm();
    }
    found
}

/// Bodies that a bracket can be fixed to.
fn holders(around: &Surroundings) -> impl Iterator<Item = &PlacedBody> {
    around.bodies.placed.iter().filter(|body| {
        matches!(body.class, Class::Structure | Class::Floor) && body.motion.0.is_fixed()
    })
}

/// The clocks at which the nearest places of what holds lie, seen square to the tube, degrees.
fn toward_holders(around: &Surroundings, station: &Station) -> Vec<f64> {
    let at = station.frame.origin;
    let upright = Frame::upright(at, station.frame.travel());
    holders(around)
        .filter_map(|body| {
            let near = clearance_below(&spot(at), &body.solid_in_car, 0.1, 2.0 * REACH_MM[1])?;
            let toward = near.on_body - at;
            let clock = upright.clock_of(toward).to_degrees();
            let clock = if clock > 180.0 { clock - 360.0 } else { clock };
            (toward.norm() > 1.0 && clock.abs() <= MOST_LEAN_DEG).then_some(clock)
        })
        .collect()
}

/// What a hanger is fixed to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum On {
    Straight,
    Bend,
    Can,
}

/// A hanger may be fixed there: on tube away from welds, on a silencer or resonator away from its ends.
fn is_place_for(
    model: &Model,
    piece: &PlannedPiece,
    station: &Station,
    seams_mm: &[f64],
    radius_mm: f64,
) -> Option<On> {
    let left_mm = piece.centre_line_mm() - station.along_mm;
    match &piece.kind {
        PlannedKind::Straight { .. } | PlannedKind::Bend { .. } => {
            // On the inside of a bend seams come nearer.
            let (on, from_mm) = match piece.kind {
                PlannedKind::Bend { clr_mm, .. } => (
                    On::Bend,
                    FROM_WELD_MM * clr_mm / (clr_mm - radius_mm).max(1.0),
                ),
                _ => (On::Straight, FROM_WELD_MM),
            };
            let is_clear = seams_mm
                .iter()
                .all(|seam| (seam - station.run_mm).abs() >= from_mm);
            is_clear.then_some(on)
        }
        PlannedKind::Component { name, .. } => {
            let is_hung = matches!(
                component_kind(model, name),
                Some(ComponentKind::Silencer | ComponentKind::Resonator)
            );
            let is_inside = station.along_mm.min(left_mm) >= FROM_CAN_END_MM;
            (is_hung && is_inside).then_some(On::Can)
        }
        PlannedKind::Crossover { .. } => None,
    }
}

/// A ball of nothing at a place.
const fn spot(at: Point) -> TubeElement {
    TubeElement {
        line: CentreLine::Segment { a: at, b: at },
        radius: 0.0,
    }
}

/// From the centre of a piece out to where its own metal ends, mm.
pub(crate) fn outside(piece: &PlannedPiece, centre: Point, out: Vector) -> Option<f64> {
    let mut far_mm = 0.0;
    for element in &piece.elements {
        // From far away back: the first that is met is the outside.
        let mut at_mm = REACH_MM[1];
        for _ in 0..MOST_STEPS {
            let gap = clearance_below(
                &spot(centre + out * at_mm),
                &Solid::Tube(*element),
                0.01,
                f64::INFINITY,
            )?
            .gap_mm;
            if gap < 0.1 || at_mm <= 0.0 {
                break;
            }
            at_mm -= gap;
        }
        far_mm = f64::max(far_mm, at_mm);
    }
    Some(far_mm)
}

/// What a straight line from `foot` meets first of what stands still and holds a bracket, and how far on.
fn above(around: &Surroundings, foot: Point, out: Vector) -> Option<(&PlacedBody, f64)> {
    let mut nearest: Option<(&PlacedBody, f64)> = None;
    for body in holders(around) {
        let limit = nearest.map_or(REACH_MM[1], |(_, reach)| reach);
        let mut at_mm = 0.0;
        for _ in 0..MOST_STEPS {
            let left = limit - at_mm;
            let Some(near) = clearance_below(
                &spot(foot + out * at_mm),
                &body.solid_in_car,
                0.1,
                left.max(1.0),
            ) else {
                at_mm = f64::INFINITY;
                break;
            };
            if near.gap_mm < 1.0 {
                break;
            }
            at_mm += near.gap_mm;
            if at_mm > limit {
                break;
            }
        }
        if at_mm < limit && body.is_measured_at(foot + out * at_mm) {
            nearest = Some((body, at_mm));
        }
    }
    nearest.filter(|(_, reach)| *reach >= REACH_MM[0])
}

fn is_free_at_rest(around: &Surroundings, all: &[MovingRun<'_>], candidate: &Candidate) -> bool {
    let Some(moving) = all.get(candidate.station.run) else {
        return false;
    };
    let bodies_clear = around.bodies.placed.iter().all(|body| {
        body.name == candidate.place.body
            || clearance_below(
                &candidate.room,
                &body.solid_in_car,
                FINE_MM,
                GAP_MM + body.allowance_mm,
            )
            .is_none()
    });
    bodies_clear
        && other_pieces(all, (moving, candidate.station.piece)).all(|(_, run, piece)| {
            run.run.pieces.get(piece).is_none_or(|piece| {
                piece.elements.iter().all(|element| {
                    clearance_between(&candidate.room, element, FINE_MM).gap_mm - piece.uncovered_mm
                        >= GAP_MM
                })
            })
        })
}

/// Rod, rubber and bracket keep their gap in every position of everything that moves, ± counted where it is
/// known.
fn has_room(around: &Surroundings, all: &[MovingRun<'_>], candidate: &Candidate) -> bool {
    let Some(moving) = all.get(candidate.station.run) else {
        return false;
    };
    let at = PlaceOnRun {
        place: candidate.place.foot,
        piece: candidate.station.piece,
        share: (candidate.station.run_mm / moving.run.developed_length_mm().max(1.0))
            .clamp(0.0, 1.0),
    };
    let joint = &around.measured.places.joint;
    let bodies_clear = around
        .bodies
        .placed
        .iter()
        .filter(|body| body.name != candidate.place.body)
        .all(|body| {
            let room = room_to_body(moving, at, &candidate.room, body, joint);
            room.gap_mm - room.plus_minus_mm.unwrap_or(0.0) >= GAP_MM
        });
    bodies_clear
        && other_pieces(all, (moving, candidate.station.piece)).all(|(is_own, other, piece)| {
            let own = (moving, candidate.station.piece);
            room_to_piece(own, &candidate.room, (other, piece), is_own, None)
                .is_none_or(|room| room.gap_mm >= GAP_MM)
        })
}
