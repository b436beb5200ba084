//! Tangent-intersection points ↔ rows of length, rotation and angle.

use thiserror::Error;

use crate::bend::setback_mm;
use crate::frame::Frame;
use crate::math;
use crate::vector::{Point, UnitVector, Vector};

/// Below this turn in radians a point lies on the straight and is no bend (a thousandth of a
/// millimetre aside in a kilometre).
const COLLINEAR_RAD: f64 = 1e-9;
/// Nearer to a full reversal than this, in radians (1°), a bend is given two tangent intersections.
const NEAR_REVERSAL_RAD: f64 = math::PI / 180.0;

/// One row of the bend table: a straight and the bend after it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BendRow {
    /// Straight between tangent lines before this bend, in mm. Negative in a table taken from points
    /// that stand too close together: such a run cannot be made.
    pub straight_mm: f64,
    /// Roll from the previous bend's plane to this one's, right-handed about the direction of travel
    /// (clockwise looking downstream), in radians `(-π, π]`; zero at the first bend.
    pub rotation_rad: f64,
    /// Turn of the direction in radians, > 0.
    pub bend_rad: f64,
    /// Centre-line radius in mm, > 0.
    pub clr_mm: f64,
}

/// The trade's table of a bent tube: rows, and the straight after the last bend.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BendTable {
    /// Rows in the direction of travel.
    pub rows: Vec<BendRow>,
    /// Straight after the last bend (the whole tube when there is no bend), in mm.
    pub last_straight_mm: f64,
}

/// A bend table and where the tube starts: travelling downstream, twelve o'clock toward the first
/// bend's centre.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedTable {
    /// Upstream end.
    pub start: Frame,
    /// The rows.
    pub table: BendTable,
}

/// A straight that is shorter than it must be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShortStraight {
    /// Which straight, counted from 0 at the upstream end.
    pub straight: usize,
    /// What there is, in mm.
    pub length_mm: f64,
    /// What is missing, in mm.
    pub short_by_mm: f64,
}

/// Why points or rows do not describe a tube.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum RowsError {
    /// Fewer than two points.
    #[error("{count} points do not make a run: give at least its two ends")]
    TooFewPoints {
        /// How many there are.
        count: usize,
    },
    /// The list of radii does not fit the points.
    #[error(
        "{given} centre-line radii for {needed} bend points: give one for all or one for each point \
         between the ends"
    )]
    RadiusCount {
        /// How many were given.
        given: usize,
        /// How many points lie between the ends.
        needed: usize,
    },
    /// A radius is not above zero.
    #[error("the centre-line radius at point {point} is {clr_mm} mm: it must be above zero")]
    Radius {
        /// Which point, counted from 0.
        point: usize,
        /// Its radius in mm.
        clr_mm: f64,
    },
    /// Two points in a row are the same place, or one is not a number.
    #[error("points {point} and {} are the same place or not numbers: remove one", point + 1)]
    SamePlace {
        /// The first of the two, counted from 0.
        point: usize,
    },
    /// The run turns straight back at a point.
    #[error(
        "the run turns back by {bend_deg:.4}° at point {point}: two straights side by side have no \
         tangent intersection, give the U as two 90° bends with two points"
    )]
    TurnsBack {
        /// Which point, counted from 0.
        point: usize,
        /// Its turn in degrees.
        bend_deg: f64,
    },
    /// A row's numbers are not those of a bend.
    #[error(
        "row {row} has a bend of {bend_rad} rad at radius {clr_mm} mm: both must be above zero"
    )]
    Row {
        /// Which row, counted from 0.
        row: usize,
        /// Its angle in radians.
        bend_rad: f64,
        /// Its radius in mm.
        clr_mm: f64,
    },
}

/// Bend rows from points: the first and last are the tube's ends, the others the intersections of the
/// straight centre lines.
///
/// `clr_mm` gives one radius for all bends, or one for each point between the ends. Points on a
/// straight (no turn) are passed over. Straights may come out negative: see
/// [`BendTable::short_straights`].
///
/// Method: directions `d_i`, turn `atan2(|d_i × d_{i+1}|, d_i·d_{i+1})` (never an arc cosine), set-back
/// `R tan(A/2)`, rotation `atan2(d·(n₁ × n₂), n₁·n₂)` about the direction between two bends. Elementary
/// vector geometry.
///
/// # Errors
/// [`RowsError`] when the points or radii do not describe a tube.
///
/// ```
/// use tubewright_geometry::{Point, rows::rows_from_points};
/// let p = [[0.0, 0.0, 0.0], [200.0, 0.0, 0.0], [200.0, 150.0, 0.0]].map(Point::from_array);
/// let placed = rows_from_points(&p, &[50.0]).unwrap();
/// // A right angle of 50 mm radius takes 50 mm from both straights: 200 - 50.
/// assert!((placed.table.rows[0].straight_mm - 150.0).abs() < 1e-9);
/// ```
pub fn rows_from_points(points: &[Point], clr_mm: &[f64]) -> Result<PlacedTable, RowsError> {
    let between = points.len().saturating_sub(2);
    let (Some(&first), true) = (points.first(), points.len() >= 2) else {
        return Err(RowsError::TooFewPoints {
            count: points.len(),
        });
    };
    if clr_mm.len() != 1 && clr_mm.len() != between {
        return Err(RowsError::RadiusCount {
            given: clr_mm.len(),
            needed: between,
        });
    }
    let radii = clr_mm.iter().copied().cycle().take(between);
    let legs = points
        .windows(2)
        .enumerate()
        .map(|(point, pair)| leg(point, pair))
        .collect::<Result<Vec<_>, _>>()?;
    let mut walk = RowWalk::default();
    for (i, (pair, clr)) in legs.windows(2).zip(radii).enumerate() {
        if let [(before, length), (after, _)] = *pair {
            walk.corner(i + 1, (before, length), after, clr)?;
        }
    }
    let Some(&(last, length)) = legs.last() else {
        return Err(RowsError::TooFewPoints {
            count: points.len(),
        });
    };
    walk.straight_mm += length;
    let travel = legs.first().map_or(last, |l| l.0);
    let start = match walk.first_normal {
        // Twelve o'clock toward the centre of the first bend: n × d.
        Some(normal) => {
            let toward = normal.vector().cross(travel.vector());
            Frame::new(first, travel, toward).unwrap_or_else(|| Frame::upright(first, travel))
        }
        None => Frame::upright(first, travel),
    };
    Ok(PlacedTable {
        start,
        table: BendTable {
            rows: walk.rows,
            last_straight_mm: walk.straight_mm,
        },
    })
}

fn leg(point: usize, pair: &[Point]) -> Result<(UnitVector, f64), RowsError> {
    let along = match *pair {
        [a, b] => b - a,
        _ => Vector::ZERO,
    };
    let direction = along.direction().ok_or(RowsError::SamePlace { point })?;
    Ok((direction, along.norm()))
}

#[derive(Default)]
struct RowWalk {
    rows: Vec<BendRow>,
    /// Straight gathered since the last tangent line; starts below zero by that bend's set-back.
    straight_mm: f64,
    first_normal: Option<UnitVector>,
    last_normal: Option<UnitVector>,
}

impl RowWalk {
    fn corner(
        &mut self,
        point: usize,
        (before, length): (UnitVector, f64),
        after: UnitVector,
        clr_mm: f64,
    ) -> Result<(), RowsError> {
        if clr_mm.is_nan() || clr_mm <= 0.0 {
            return Err(RowsError::Radius { point, clr_mm });
        }
        self.straight_mm += length;
        let bend_rad = before.angle_to(after);
        if bend_rad < COLLINEAR_RAD {
            return Ok(());
        }
        let turns_back = RowsError::TurnsBack {
            point,
            bend_deg: bend_rad.to_degrees(),
        };
        if bend_rad > math::PI - COLLINEAR_RAD {
            return Err(turns_back);
        }
        let across = before.vector().cross(after.vector());
        let normal = across.direction().ok_or(turns_back)?;
        let setback = setback_mm(clr_mm, bend_rad);
        let rotation_rad = self.last_normal.map_or(0.0, |old| {
            let sine = before.dot(old.vector().cross(normal.vector()));
            wrapped(math::atan2(sine, old.dot(normal.vector())))
        });
        self.rows.push(BendRow {
            straight_mm: self.straight_mm - setback,
            rotation_rad,
            bend_rad,
            clr_mm,
        });
        self.straight_mm = -setback;
        self.first_normal.get_or_insert(normal);
        self.last_normal = Some(normal);
        Ok(())
    }
}

/// Into `(-π, π]`, a half turn always positive (rounding may give either sign).
fn wrapped(angle_rad: f64) -> f64 {
    if (angle_rad.abs() - math::PI).abs() < 1e-12 {
        math::PI
    } else {
        angle_rad
    }
}

impl BendTable {
    /// Length in mm of tube along the centre line: straights and arcs.
    #[must_use]
    pub fn developed_length_mm(&self) -> f64 {
        let rows = self.rows.iter();
        rows.map(|r| r.straight_mm + r.clr_mm * r.bend_rad)
            .sum::<f64>()
            + self.last_straight_mm
    }

    /// All straights in order, the last one included, in mm.
    pub fn straights_mm(&self) -> impl Iterator<Item = f64> + '_ {
        let rows = self.rows.iter().map(|r| r.straight_mm);
        rows.chain([self.last_straight_mm])
    }

    /// The straights that are shorter than `least_mm` (0, or the length that the bender grips).
    #[must_use]
    pub fn short_straights(&self, least_mm: f64) -> Vec<ShortStraight> {
        self.straights_mm()
            .enumerate()
            .filter(|&(_, length_mm)| length_mm < least_mm)
            .map(|(straight, length_mm)| ShortStraight {
                straight,
                length_mm,
                short_by_mm: least_mm - length_mm,
            })
            .collect()
    }

    /// The same tube from its other end: straights and rotations in reverse order, signs kept.
    #[must_use]
    pub fn reversed(&self) -> Self {
        let mut straights: Vec<f64> = self.straights_mm().collect();
        straights.reverse();
        // Rotation i lies between bends i-1 and i: reversed it lies between the same two.
        let after = self
            .rows
            .iter()
            .skip(1)
            .map(|r| r.rotation_rad)
            .chain([0.0]);
        let mut rows: Vec<BendRow> = self
            .rows
            .iter()
            .zip(after)
            .map(|(row, rotation_rad)| BendRow {
                rotation_rad,
                ..*row
            })
            .collect();
        rows.reverse();
        for (row, straight_mm) in rows.iter_mut().zip(&straights) {
            row.straight_mm = *straight_mm;
        }
        Self {
            rows,
            last_straight_mm: straights.last().copied().unwrap_or(0.0),
        }
    }

    /// The mirror image: every rotation changes sign (a half turn is its own).
    #[must_use]
    pub fn mirrored(&self) -> Self {
        let rows = self
            .rows
            .iter()
            .map(|r| BendRow {
                rotation_rad: wrapped(-r.rotation_rad),
                ..*r
            })
            .collect();
        Self {
            rows,
            last_straight_mm: self.last_straight_mm,
        }
    }

    /// Tangent-intersection points from rows, starting at `start` and travelling along it, the first
    /// bend rolled from its twelve o'clock by the first row's rotation.
    ///
    /// A bend within 1° of a half turn, or larger, has no (sound) tangent intersection: it is taken
    /// as two equal bends with no straight between, and gives two points.
    ///
    /// # Errors
    /// [`RowsError::Row`] when an angle or radius is not above zero.
    pub fn points(&self, start: &Frame) -> Result<Vec<Point>, RowsError> {
        let mut frame = *start;
        let mut points = vec![frame.origin];
        for (index, row) in self.rows.iter().enumerate() {
            let sound = row.bend_rad > 0.0 && row.clr_mm > 0.0 && row.straight_mm.is_finite();
            if !sound {
                return Err(RowsError::Row {
                    row: index,
                    bend_rad: row.bend_rad,
                    clr_mm: row.clr_mm,
                });
            }
            frame = frame.advanced(row.straight_mm).rolled(row.rotation_rad);
            let parts = if row.bend_rad > math::PI - NEAR_REVERSAL_RAD {
                2_u8
            } else {
                1
            };
            let part_rad = row.bend_rad / f64::from(parts);
            for _ in 0..parts {
                points.push(frame.advanced(setback_mm(row.clr_mm, part_rad)).origin);
                frame = frame.bent(part_rad, row.clr_mm);
            }
        }
        points.push(frame.advanced(self.last_straight_mm).origin);
        Ok(points)
    }
}
