//! Parts that are too short to be made, and slices of a bend, which are short on their inside.

use tubewright_check::{Finding, Measured, Rule, State, Unit};
use tubewright_geometry::Angle;
use tubewright_stock::{CutPart, PartPlace, StockShape};

use crate::stages::{Supply, Surroundings};

/// A bend without a leg that is shorter on its inside than this cannot be held by itself, mm: jaws and fingers want as
/// much (common practice, no source).
const SLICE_MM: f64 = 25.0;

/// A slice that is shorter on its inside than this is not taken for one that can be made, whatever the shop's least
/// bend, mm: two welds meet there (common practice, no source).
const LEAST_INSIDE_MM: f64 = 10.0;

/// A part that is a bend alone and too short to be held by itself.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Slice {
    /// Mark of the part.
    pub(crate) mark: String,
    /// Its angle.
    pub(crate) sweep: Angle,
    /// Its length on the inside of the curve, mm.
    pub(crate) inside_mm: f64,
}

impl Slice {
    /// A part of an item of this shape and tube radius, where it is one.
    fn of(part: &CutPart, shape: &StockShape, radius_mm: f64) -> Option<Self> {
        let (
            PartPlace::Arc {
                sweep,
                keeps_a,
                keeps_b,
                ..
            },
            StockShape::Bend { clr, .. },
        ) = (part.place, shape)
        else {
            return None;
        };
        let inside_mm = (clr.mm() - radius_mm) * sweep.rad();
        let kept_mm = keeps_a.mm() + keeps_b.mm();
        (inside_mm + kept_mm < SLICE_MM).then(|| Self {
            mark: part
                .serves
                .iter()
                .map(|serves| serves.mark.as_str())
                .collect::<Vec<_>>()
                .join("+"),
            sweep,
            inside_mm: inside_mm + kept_mm,
        })
    }
}

/// The slices among parts of an item.
pub(crate) fn slices(parts: &[CutPart], stock: &tubewright_stock::StockPiece) -> Vec<Slice> {
    let radius_mm = 0.5 * stock.tube.od.mm();
    parts
        .iter()
        .filter_map(|part| Slice::of(part, &stock.shape, radius_mm))
        .collect()
}

/// Straights that are a part of their own and shorter than the shop welds in, and slices. A straight that the leg of a
/// bend serves is no part of its own and may be as short as it likes.
pub(super) fn findings(around: &Surroundings, supply: &Supply) -> Vec<Finding> {
    let least = around.practice.least_straight.mm();
    let of = |value: f64| Measured {
        value,
        plus_minus: None,
        unit: Unit::Millimetre,
    };
    let own =
        |part: &&CutPart| part.serves.len() == 1 && !matches!(part.place, PartPlace::Arc { .. });
    let parts = supply
        .plan
        .cuts
        .iter()
        .flat_map(|cut| &cut.parts)
        .filter(own);
    let mut findings: Vec<Finding> = parts
        .filter_map(|part| {
            let serves = part.serves.first()?;
            // Rounded sizes are exact; a nanometre below a step is the same step.
            (serves.length.mm() < least - 1e-6).then(|| {
                let subject = format!("length of {}", serves.mark);
                Finding::measured_at_least(Rule::LeastPiece, subject, of(serves.length.mm()), least)
            })
        })
        .collect();
    if findings.is_empty() {
        findings.push(Finding::stated(
            Rule::LeastPiece,
            State::Pass,
            "all straights",
            "",
        ));
    }
    let all = supply
        .plan
        .cuts
        .iter()
        .flat_map(|cut| slices(&cut.parts, &cut.stock));
    findings.extend(all.map(|slice| {
        let subject = format!("{}, a slice of {:.0}°, on its inside", slice.mark, slice.sweep.deg());
        let mut finding =
            Finding::measured_at_least(Rule::LeastPiece, subject, of(slice.inside_mm), LEAST_INSIDE_MM);
        if finding.state == State::Fail {
            // The shop's own least bend allows it; whether this one can be held and welded nobody has looked at.
            finding.state = State::NotChecked;
            return finding.advising(
                "its two welds nearly meet there: saw and weld one of the kind from an offcut first, or have a way \
                 with other bends",
            );
        }
        finding.advising("its card says how it is held")
    }));
    findings
}

#[cfg(test)]
mod tests {
    use super::*;
    use tubewright_geometry::Length;
    use tubewright_stock::{Serves, StockPiece, TubeSpec};

    fn part(mark: &str, deg: f64, keeps_mm: f64) -> CutPart {
        CutPart {
            serves: vec![Serves {
                mark: mark.to_owned(),
                length: Length::ZERO,
            }],
            place: PartPlace::Arc {
                start: Angle::from_deg(0.0),
                sweep: Angle::from_deg(deg),
                keeps_a: Length::from_mm(keeps_mm),
                keeps_b: Length::ZERO,
            },
            is_reversed: false,
        }
    }

    /// A tube of 57 mm bent to 85.5 mm is 57 mm from its centre on the inside: 13° are 12.9 mm there, 45° are 44.8, and 13°
    /// with 60 mm of leg can be held by it.
    #[test]
    fn a_slice_is_a_bend_that_jaws_cannot_hold() {
        let stock = StockPiece {
            tube: TubeSpec {
                od: Length::from_mm(57.0),
                wall: Length::from_mm(1.5),
                material: "304".to_owned(),
            },
            shape: StockShape::Bend {
                angle: Angle::from_deg(90.0),
                clr: Length::from_mm(85.5),
                leg_a: Length::from_mm(100.0),
                leg_b: Length::from_mm(100.0),
            },
        };
        let parts = [
            part("R17", 13.0, 0.0),
            part("R9", 45.0, 0.0),
            part("R2", 13.0, 60.0),
        ];
        let found = slices(&parts, &stock);
        assert_eq!(found.len(), 1, "{found:?}");
        assert_eq!(found[0].mark, "R17");
        assert!((found[0].inside_mm - 12.93).abs() < 0.01, "{found:?}");
    }
}
