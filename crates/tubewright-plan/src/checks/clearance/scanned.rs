//! Where a run passes what was never scanned: that room is not free, it is not scanned.

use tubewright_check::{Finding, Rule, State};
use tubewright_geometry::{CentreLine, Point};

use super::MovingRun;
use crate::bodies::{Cover, PlacedBody, Seen};

/// Distance along the run between the places that are looked at, mm: less than the smallest hole that a
/// hand would notice.
const LOOK_EVERY_MM: f64 = 10.0;

/// What of a run lies against holes of a scan and beyond its edge, at rest.
pub(super) struct Passed {
    holes_mm: f64,
    beyond_mm: f64,
    /// First place against a hole, and its piece.
    first: Option<(Point, String)>,
}

/// `None` for a body that is no scan, or one without holes.
pub(super) fn passed(moving: &MovingRun<'_>, body: &PlacedBody) -> Option<Passed> {
    let cover = body.scan.as_ref()?.cover.as_ref()?;
    let mut found = Passed {
        holes_mm: 0.0,
        beyond_mm: 0.0,
        first: None,
    };
    for piece in &moving.run.pieces {
        for element in &piece.elements {
            let length = element.line.length();
            let parts = (length / LOOK_EVERY_MM).ceil().max(1.0);
            let mut part = 0.5;
            while part < parts {
                let s = length * part / parts;
                match worst(cover, body, &element.line, s, element.radius) {
                    Seen::Scanned => {}
                    Seen::Beyond => found.beyond_mm += length / parts,
                    Seen::Hole => {
                        found.holes_mm += length / parts;
                        found
                            .first
                            .get_or_insert((element.line.at(s), piece.mark.clone()));
                    }
                }
                part += 1.0;
            }
        }
    }
    Some(found)
}

/// How the centre line and the tube's two sides lie to the scan: against a hole if one of them does.
fn worst(cover: &Cover, body: &PlacedBody, line: &CentreLine, s: f64, radius: f64) -> Seen {
    let centre = line.at(s);
    let sideways = line
        .direction_at(s)
        .and_then(|travel| {
            cover
                .frame()
                .travel()
                .vector()
                .cross(travel.vector())
                .direction()
        })
        .map_or([centre; 2], |side| {
            [centre + side * radius, centre - side * radius]
        });
    let mut seen = [centre, sideways[0], sideways[1]]
        .map(|place| cover.at(place, &body.solid_in_car, radius))
        .into_iter();
    let middle = seen.next().unwrap_or(Seen::Beyond);
    if seen.any(|side| side == Seen::Hole) {
        Seen::Hole
    } else {
        middle
    }
}

impl Passed {
    /// What a passed gap to the scan is worth where the run passes a hole: nothing.
    pub(super) fn judged(&self, finding: Finding, body: &str) -> Finding {
        let Some((_, mark)) = &self.first else {
            return finding;
        };
        if finding.state != State::Pass {
            return finding;
        }
        Finding {
            state: State::NotChecked,
            advice: format!(
                "that is to what was scanned; {:.0} mm of the run, first at {mark}, pass where {body} has a hole: not scanned is not free. Look there on the car, and describe what is there as a body of its own",
                self.holes_mm
            ),
            ..finding
        }
    }

    /// Whether the scan covers the room that the run uses.
    pub(super) fn finding(&self, moving: &MovingRun<'_>, body: &PlacedBody) -> Finding {
        let subject = format!("{} along {}", moving.run.name, body.name);
        let beyond = if self.beyond_mm > 0.0 {
            format!(
                "{:.0} mm of the run lie beyond its edge, where it says nothing",
                self.beyond_mm
            )
        } else {
            String::new()
        };
        let Some((place, mark)) = &self.first else {
            let words = if beyond.is_empty() {
                beyond
            } else {
                format!("beside the scan it passes no hole; {beyond}")
            };
            return Finding::stated(Rule::ScanCovers, State::Pass, subject, words);
        };
        let mut words = format!(
            "{:.0} mm of the run pass a hole of the scan, where anything may be: look there on the car, or scan it again",
            self.holes_mm
        );
        if !beyond.is_empty() {
            words.push_str("; ");
            words.push_str(&beyond);
        }
        Finding::stated(Rule::ScanCovers, State::NotChecked, subject, words)
            .at(*place, format!("first at {mark}"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tubewright_check::{Measured, Unit};

    /// Past a hole a kept gap proves nothing; a broken one stays broken.
    #[test]
    fn a_kept_gap_past_a_hole_does_not_pass() {
        let past = Passed {
            holes_mm: 120.0,
            beyond_mm: 0.0,
            first: Some((Point::ORIGIN, "E3".to_owned())),
        };
        let clear = Passed {
            holes_mm: 0.0,
            beyond_mm: 40.0,
            first: None,
        };
        let gap = |value| {
            let measured = Measured {
                value,
                plus_minus: Some(2.0),
                unit: Unit::Millimetre,
            };
            Finding::measured_at_least(Rule::ClearanceToBody, "exhaust to floor", measured, 20.0)
        };
        let judged = past.judged(gap(80.0), "floor");
        assert_eq!(judged.state, State::NotChecked);
        assert!(judged.measured.is_some());
        assert!(
            judged
                .advice
                .contains("120 mm of the run, first at E3, pass where floor has a hole"),
            "{}",
            judged.advice
        );
        assert_eq!(past.judged(gap(10.0), "floor").state, State::Fail);
        assert_eq!(clear.judged(gap(80.0), "floor").state, State::Pass);
    }
}
