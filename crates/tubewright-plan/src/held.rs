//! How surely a run lies where it was planned: the errors of its two ends carried along it, of the
//! marks that its joints are proved from, and of its pieces, each with what it has in common with the
//! body that it must clear.

use tubewright_build::model::{Build, CarrierRef};
use tubewright_build::resolved::{ResolvedAccuracy, ResolvedPractice};
use tubewright_geometry::{Frame, Point, UnitVector};
use tubewright_stock::{ChainPiece, Tolerances, end_covariance};
use tubewright_survey::Change;
use tubewright_survey::fit::carried_by_marks;

use crate::places::{Joint, Places, joint_sigma_mm};
use crate::routes::{PlannedKind, PlannedRun};
use crate::survey::NINETEEN_IN_TWENTY;

/// The tolerances of a shop as standard deviations. Of the pull of a weld its mean is in the cut
/// lengths; it scatters by half of that (common practice, no source).
#[must_use]
pub fn tolerances_of(practice: &ResolvedPractice) -> Tolerances {
    Tolerances {
        cut_length: practice.cut_length * (1.0 / NINETEEN_IN_TWENTY),
        cut_angle: practice.cut_angle * (1.0 / NINETEEN_IN_TWENTY),
        clock: practice.clock * (1.0 / NINETEEN_IN_TWENTY),
        bend_angle: practice.bend_true * (1.0 / NINETEEN_IN_TWENTY),
        weld_pull: practice.weld_pull * 0.5,
    }
}

/// The marks that check distances are taken from while tacking.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DatumMarks {
    names: Vec<String>,
    places: Vec<Point>,
}

impl DatumMarks {
    /// All marks on the chassis that the readings fix.
    #[must_use]
    pub fn of(build: &Build, places: &Places) -> Self {
        let mut marks = Self::default();
        for mark in &build.marks {
            if let (CarrierRef::Chassis, Some(found)) =
                (&mark.carrier, places.points.get(mark.name.as_str()))
            {
                marks.names.push(mark.name.to_string());
                marks.places.push(found.point_in_car);
            }
        }
        marks
    }

    /// How far a place that is set out from all these marks moves along a direction when they do;
    /// `None` with fewer than three, or all in line.
    #[must_use]
    pub fn change(&self, joint: &Joint, place: Point, along: UnitVector) -> Option<Change> {
        let shares = carried_by_marks(&self.places, false, place, along.vector())?;
        let mut change = Change::default();
        for (name, share) in self.names.iter().zip(shares) {
            change.add(&joint.point_change(name, share)?, 1.0);
        }
        Some(change)
    }
}

/// A measured end that a run is held at.
#[derive(Clone, Debug, PartialEq)]
pub struct HeldEnd {
    /// Its name.
    pub name: String,
    /// Where it lies.
    pub frame: Frame,
}

/// What holds a run while it is built.
#[derive(Clone, Debug, PartialEq)]
pub struct RunHold {
    /// The end that it starts from; `None` where it starts from a part that is built too.
    pub start: Option<HeldEnd>,
    /// The end that it arrives at; `None` where that is a part that is built too.
    pub end: Option<HeldEnd>,
    /// Marks that its joints are proved from.
    pub marks: DatumMarks,
    /// Standard deviation at which check distances hold a joint, mm.
    pub joint_sigma_mm: f64,
    /// What the shop does to each piece and joint.
    pub tolerances: Tolerances,
}

/// The doubt about a gap, by where it comes from; standard deviations, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GapDoubt {
    /// All together.
    pub sigma_mm: f64,
    /// Of the measured places: of the body against what the run is built from.
    pub places_mm: f64,
    /// Of pieces and joints.
    pub building_mm: f64,
    /// How the run is held there.
    pub held_by: HeldBy,
}

/// What tells best where a place of a run comes to lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeldBy {
    /// The pieces as they are cut, from its two ends.
    Ends,
    /// Check distances from the datum marks to its joints while tacking.
    CheckDistances,
}

impl GapDoubt {
    /// ± that holds 19 times in 20, mm.
    #[must_use]
    pub fn plus_minus_mm(&self) -> f64 {
        NINETEEN_IN_TWENTY * self.sigma_mm
    }

    fn of(places_mm: f64, building_mm: f64, held_by: HeldBy) -> Self {
        Self {
            sigma_mm: tubewright_geometry::math::hypot(places_mm, building_mm),
            places_mm,
            building_mm,
            held_by,
        }
    }
}

impl RunHold {
    /// What holds the run from the end `start` to the end `end`; either is `None` where the run meets a
    /// part that is built too, and then only check distances hold it.
    #[must_use]
    pub fn between(
        [start, end]: [Option<&str>; 2],
        build: &Build,
        places: &Places,
        accuracy: &ResolvedAccuracy,
        practice: &ResolvedPractice,
    ) -> Option<Self> {
        let held = |name: &str| {
            Some(HeldEnd {
                name: name.to_owned(),
                frame: places.ends.get(name)?.frame_in_car,
            })
        };
        let held_at = |name: Option<&str>| match name {
            Some(name) => held(name).map(Some),
            None => Some(None),
        };
        Some(Self {
            start: held_at(start)?,
            end: held_at(end)?,
            marks: DatumMarks::of(build, places),
            joint_sigma_mm: joint_sigma_mm(accuracy),
            tolerances: tolerances_of(practice),
        })
    }

    /// How a place of the run, `share` of the way along it, moves along a direction with its ends: each
    /// end's place and direction carried there by its lever arm, the nearer end counting more, for the
    /// run is held at both; `None` where either is no measured end.
    #[must_use]
    pub fn change_with_ends(
        &self,
        joint: &Joint,
        place: Point,
        share: f64,
        along: UnitVector,
    ) -> Option<Change> {
        let along = along.vector();
        let carried = |end: &HeldEnd| joint.end_change(&end.name, &end.frame, place, along);
        let mut change = carried(self.start.as_ref()?)?.times(1.0 - share);
        change.add(&carried(self.end.as_ref()?)?, share);
        Some(change)
    }

    /// Standard deviation along a direction of a place of the run from pieces and joints, mm: those
    /// before it as tacked from the start, those behind it as tacked from the end, each weighted like
    /// the ends themselves, for the closing piece is cut to fit.
    #[must_use]
    pub fn building_sigma_mm(
        &self,
        run: &PlannedRun,
        piece: usize,
        place: Point,
        share: f64,
        along: UnitVector,
    ) -> f64 {
        let here = Frame::upright(place, along);
        let joint_at = |downstream: Frame| ChainPiece {
            downstream,
            is_bend: false,
            has_joint: true,
        };
        let is_bend = |kind: &PlannedKind| matches!(kind, PlannedKind::Bend { .. });
        let mut before = vec![joint_at(run.start)];
        before.extend(run.pieces.iter().take(piece).map(|piece| ChainPiece {
            downstream: piece.frame_out,
            is_bend: is_bend(&piece.kind),
            has_joint: true,
        }));
        let mut behind = vec![joint_at(run.arrival())];
        behind.extend(
            run.pieces
                .iter()
                .skip(piece + 1)
                .rev()
                .map(|piece| ChainPiece {
                    downstream: piece.frame_in,
                    is_bend: is_bend(&piece.kind),
                    has_joint: true,
                }),
        );
        let sigma = |pieces: &[ChainPiece]| {
            end_covariance(pieces, &here, &self.tolerances)
                .along(along)
                .mm()
        };
        tubewright_geometry::math::hypot((1.0 - share) * sigma(&before), share * sigma(&behind))
    }

    /// The doubt about a gap along `toward` between a place of the run and a body whose own move
    /// changes the gap by `of_body`. The run is held by its pieces or by check distances, whichever
    /// tells more. `None` when the readings do not fix what it takes.
    #[must_use]
    pub fn doubt(
        &self,
        run: &PlannedRun,
        at: &PlaceOnRun,
        toward: UnitVector,
        joint: &Joint,
        of_body: &Change,
    ) -> Option<GapDoubt> {
        let with_ends = || {
            let mut gap = of_body.clone();
            gap.add(
                &self.change_with_ends(joint, at.place, at.share, toward)?,
                -1.0,
            );
            let building = self.building_sigma_mm(run, at.piece, at.place, at.share, toward);
            Some(GapDoubt::of(joint.sigma_mm(&gap)?, building, HeldBy::Ends))
        };
        let with_checks = || {
            let mut gap = of_body.clone();
            gap.add(&self.marks.change(joint, at.place, toward)?, -1.0);
            let building = self.checked_sigma_mm();
            Some(GapDoubt::of(
                joint.sigma_mm(&gap)?,
                building,
                HeldBy::CheckDistances,
            ))
        };
        surer(with_ends(), with_checks())
    }
}

impl RunHold {
    /// The doubt about a gap along `toward` from a place of this run to a place of another. Each is
    /// held by its pieces, or both by check distances, whichever tells more.
    #[must_use]
    pub fn doubt_to_run(
        &self,
        (run, at): (&PlannedRun, &PlaceOnRun),
        (other, other_run, there): (&Self, &PlannedRun, &PlaceOnRun),
        toward: UnitVector,
        joint: &Joint,
    ) -> Option<GapDoubt> {
        let with_ends = || {
            let mut gap = other.change_with_ends(joint, there.place, there.share, toward)?;
            gap.add(
                &self.change_with_ends(joint, at.place, at.share, toward)?,
                -1.0,
            );
            let building = tubewright_geometry::math::hypot(
                self.building_sigma_mm(run, at.piece, at.place, at.share, toward),
                other.building_sigma_mm(other_run, there.piece, there.place, there.share, toward),
            );
            Some(GapDoubt::of(joint.sigma_mm(&gap)?, building, HeldBy::Ends))
        };
        let with_checks = || {
            let mut gap = other.marks.change(joint, there.place, toward)?;
            gap.add(&self.marks.change(joint, at.place, toward)?, -1.0);
            let building =
                tubewright_geometry::math::hypot(self.checked_sigma_mm(), other.checked_sigma_mm());
            Some(GapDoubt::of(
                joint.sigma_mm(&gap)?,
                building,
                HeldBy::CheckDistances,
            ))
        };
        surer(with_ends(), with_checks())
    }

    /// Standard deviation of a place whose joints are proved by check distances, mm: of those, and of
    /// what happens within one piece.
    fn checked_sigma_mm(&self) -> f64 {
        tubewright_geometry::math::hypot(self.joint_sigma_mm, self.tolerances.cut_length.mm())
    }
}

fn surer(ends: Option<GapDoubt>, checks: Option<GapDoubt>) -> Option<GapDoubt> {
    match (ends, checks) {
        (Some(ends), Some(checks)) if ends.sigma_mm <= checks.sigma_mm => Some(ends),
        (ends, checks) => checks.or(ends),
    }
}

/// A place on a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlaceOnRun {
    /// Where.
    pub place: Point,
    /// On which piece, counted from 0.
    pub piece: usize,
    /// Which part of the way along the run, 0 to 1.
    pub share: f64,
}
