//! Where a place is to whoever has a plumb line, a tape and a height rule: as the car stood in one of its set-ups.

use super::PrintJob;
use crate::hangers::outside;
use crate::places::PlacedFloor;
use crate::routes::{PlannedPiece, PlannedRun};
use tubewright_build::model::CarrierRef;
use tubewright_geometry::{CentreLine, Point, TubeElement, UnitVector, Vector};
use tubewright_packet::{Block, Column, Table};

/// Half as thick as a plumb line or a height rule with its play, mm.
const LINE_RADIUS_MM: f64 = 3.0;

/// Off the tube a line may run along it, mm.
const OFF_TUBE_MM: f64 = 4.0;

/// A car that stands otherwise than it did by more than this is packed, mm (common practice, no source).
const STANDS_ALIKE_MM: f64 = 3.0;

/// How the car stood while it was measured.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stance<'a> {
    /// Name of the set-up.
    pub(super) name: &'a str,
    floor: &'a PlacedFloor,
}

/// The set-ups whose floor is known, the car on its wheels first.
pub(super) fn stances<'a>(job: &PrintJob<'a>) -> Vec<Stance<'a>> {
    let floors = &job.around.measured.places.floors;
    let mut all: Vec<Stance<'a>> = floors
        .iter()
        .map(|(name, floor)| Stance { name, floor })
        .collect();
    all.sort_by_key(|stance| !stance.floor.is_on_wheels);
    all
}

/// How it stands while it is worked on from below: raised, where a set-up is; else on its wheels.
pub(super) fn while_tacking<'a>(job: &PrintJob<'a>) -> Option<Stance<'a>> {
    let all = stances(job);
    let raised = all.iter().find(|stance| !stance.floor.is_on_wheels);
    raised.or(all.first()).copied()
}

impl Stance<'_> {
    /// Up along the plumb line.
    fn up(self) -> Vector {
        self.floor.plumb.vector()
    }

    /// Level: rearwards along the car and square to it, to its right.
    fn level(self) -> [Vector; 2] {
        let up = self.up();
        let back = UnitVector::X.vector() - up * up.dot(UnitVector::X.vector());
        let back = back.direction().unwrap_or(UnitVector::X).vector();
        [back, up.cross(back)]
    }

    /// Straight up from the floor to a place, mm.
    pub(super) fn over_floor_mm(self, place: Point) -> f64 {
        let out = self.floor.up.vector();
        (place - self.floor.point_in_car).dot(out) / out.dot(self.up()).max(0.1)
    }
}

/// The origin mark by name.
pub(super) fn origin(job: &PrintJob<'_>) -> String {
    let frame = job.model.build.frame.as_ref();
    frame.map_or_else(
        || "the origin mark".to_owned(),
        |frame| frame.origin.at.name().to_string(),
    )
}

fn place_of_origin(job: &PrintJob<'_>) -> Point {
    let places = &job.around.measured.places;
    let frame = job.model.build.frame.as_ref();
    let placed = frame.and_then(|frame| places.place(&frame.origin.at));
    placed.map_or(Point::ORIGIN, |placed| placed.point_in_car)
}

/// Heads of the columns of [`found`], with their unit.
pub(super) fn heads(job: &PrintJob<'_>) -> [String; 2] {
    let sign = job.lengths.sign();
    [
        format!("behind {}, {sign}", origin(job)),
        format!("off the middle, {sign}"),
    ]
}

/// How far behind the origin mark a place is and how far off the car's middle, taped on the floor; without a floor
/// along the car's own axes.
pub(super) fn found(job: &PrintJob<'_>, stance: Option<Stance<'_>>, place: Point) -> [String; 2] {
    let l = job.lengths;
    let [back, right] = stance.map_or(
        [UnitVector::X.vector(), UnitVector::Y.vector()],
        Stance::level,
    );
    let behind_mm = (place - place_of_origin(job)).dot(back);
    let off_mm = (place - Point::ORIGIN).dot(right);
    let off = l.place(off_mm.abs());
    let side = match (off_mm > 0.0, off == "0") {
        (_, true) => "",
        (true, _) => " right",
        (false, _) => " left",
    };
    [l.place(behind_mm), format!("{off}{side}")]
}

/// Where the metal of these pieces is met straight up from below a place of theirs.
pub(super) fn underside(
    stance: Option<Stance<'_>>,
    pieces: &[&PlannedPiece],
    place: Point,
) -> Point {
    let down = -stance.map_or(UnitVector::Z.vector(), Stance::up);
    let mm = pieces
        .iter()
        .filter_map(|piece| outside(piece, place, down))
        .fold(0.0, f64::max);
    place + down * mm
}

/// How high the underside of pieces is over the floor below a place of theirs; the name of what a plumb line and a
/// height rule meet before the floor.
pub(super) fn over_the_floor(
    job: &PrintJob<'_>,
    stance: Stance<'_>,
    pieces: &[&PlannedPiece],
    place: Point,
) -> String {
    let under = underside(Some(stance), pieces, place);
    let high_mm = stance.over_floor_mm(under);
    let down = -stance.up();
    let line = TubeElement {
        line: CentreLine::Segment {
            a: under + down * (LINE_RADIUS_MM + OFF_TUBE_MM),
            b: under + down * high_mm.max(2.0 * (LINE_RADIUS_MM + OFF_TUBE_MM)),
        },
        radius: LINE_RADIUS_MM,
    };
    let all = job.runs.iter().flat_map(|run| &run.pieces);
    let others = all.filter(|piece| !pieces.iter().any(|own| own.mark == piece.mark));
    let met = job.around.bodies.first_met(others, &[line], |_| 0.0);
    met.map_or_else(
        || job.lengths.place(high_mm),
        |name| format!("{name} is below"),
    )
}

/// The pieces that meet at a place on the centre line of a run.
pub(super) fn pieces_at(run: &PlannedRun, place: Point) -> Vec<&PlannedPiece> {
    const SAME_MM: f64 = 0.5;
    let ends = |piece: &PlannedPiece| [piece.frame_in.origin, piece.frame_out.origin];
    let meet = run.pieces.iter().filter(|piece| {
        let mut ends = ends(piece).into_iter();
        ends.any(|end| end.distance(place) < SAME_MM)
    });
    let meet: Vec<&PlannedPiece> = meet.collect();
    if !meet.is_empty() {
        return meet;
    }
    // A weld in the middle of a straight.
    let near = |piece: &&PlannedPiece| {
        let [a, b] = ends(piece);
        (a.distance(place) + b.distance(place) - a.distance(b)).abs() < SAME_MM
    };
    run.pieces.iter().find(near).into_iter().collect()
}

/// The marks of the chassis over the floor in each set-up, and how to use them; `None` without a floor.
pub(super) fn how_it_stands(job: &PrintJob<'_>) -> Option<Vec<Block>> {
    let l = job.lengths;
    let stances = stances(job);
    let stance = while_tacking(job)?;
    let mut columns = vec![Column::words("mark").big(), Column::wide("where it is")];
    columns.extend(stances.iter().map(|stance| {
        Column::figures(&format!("over the floor {}, {}", stance.name, l.sign())).mm(26.0)
    }));
    columns.push(Column::figures("now").mm(18.0));
    let mut table = Table::new("stands", columns);
    for mark in &job.model.build.marks {
        let placed = job.around.measured.places.points.get(mark.name.as_str());
        let (Some(placed), CarrierRef::Chassis) = (placed, &mark.carrier) else {
            continue;
        };
        let mut cells = vec![
            mark.name.to_string(),
            mark.place.clone().unwrap_or_default(),
        ];
        let heights = stances
            .iter()
            .map(|stance| stance.over_floor_mm(placed.point_in_car));
        cells.extend(heights.map(|mm| l.place(mm)));
        cells.push("______".to_owned());
        table.cells(cells);
    }
    (!table.is_empty()).then(|| {
        vec![
            Block::Heading {
                text: "How the car stands: tape its marks first".to_owned(),
            },
            Block::Table { table },
            Block::Words {
                text: format!(
                    "What is found from the floor on this sheet holds as the car stood {} where nothing else is said, and \
                     only while it stands so. Tape three of these marks over the floor, two on one side and one on the \
                     other. All higher or lower by the same: add that to every height. By more than {} unlike: pack the \
                     car until they are alike, or go by the tapes, which hold however it stands.",
                    stance.name,
                    l.about(STANDS_ALIKE_MM),
                ),
            },
        ]
    })
}
