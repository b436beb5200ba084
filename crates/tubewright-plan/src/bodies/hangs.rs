//! What rides on the suspension as it hangs on a lift: a gap that is least at bump is looked at with it held up.

use tubewright_geometry::motion::Freedom;
use tubewright_geometry::{Solid, TubeElement, distance};

use super::PlacedBody;

/// How finely gaps are told apart, mm.
const FINE_MM: f64 = 0.1;

impl PlacedBody {
    /// From where it hangs to the top of its travel, mm from where it stands on its wheels; `None` where it does not
    /// ride on the suspension.
    #[must_use]
    pub fn travel_mm(&self) -> Option<[f64; 2]> {
        let freedoms = self.motion.0.freedoms.iter();
        freedoms.into_iter().find_map(|freedom| match *freedom {
            Freedom::Shift { min_mm, max_mm, .. } if max_mm - min_mm > 0.0 => {
                Some([min_mm, max_mm])
            }
            _ => None,
        })
    }

    /// It as it hangs with the car raised, all else at rest.
    fn hanging(&self) -> Solid {
        let values: Vec<f64> = self
            .motion
            .0
            .freedoms
            .iter()
            .map(|freedom| match *freedom {
                Freedom::Shift { min_mm, .. } => min_mm,
                _ => 0.0,
            })
            .collect();
        self.motion.0.at(&values).solid(&self.solid_in_car)
    }

    /// How it must be held so that what these elements leave to it can be seen where it is `at_mm` above where it stands
    /// on its wheels, and what they leave as it hangs; `None` where it hangs so, or does not ride on the suspension.
    #[must_use]
    pub fn held_to_see<'a>(
        &self,
        elements: impl IntoIterator<Item = &'a TubeElement>,
        at_mm: f64,
    ) -> Option<String> {
        let [least_mm, _] = self.travel_mm()?;
        let up_mm = at_mm - least_mm;
        if up_mm < 1.0 {
            return None;
        }
        let solid = self.hanging();
        let gaps = elements.into_iter().map(|element| {
            distance::clearance(element, &solid, FINE_MM).gap_mm - self.allowance_mm
        });
        let gap_mm = gaps.fold(f64::INFINITY, f64::min);
        let stands = match at_mm {
            at if at.abs() < 1.0 => "where it stands on its wheels".to_owned(),
            at if at > 0.0 => format!("{at:.0} mm above where it stands on its wheels"),
            at => format!("{:.0} mm below where it stands on its wheels", -at),
        };
        Some(format!(
            "with the car raised hold {} {up_mm:.0} mm higher than it hangs, {stands}: as it hangs {gap_mm:.0} mm are left \
             there",
            self.name
        ))
    }
}
