//! What to do about a gap that is not kept for sure.

use crate::held::{GapDoubt, HeldBy};
use crate::survey::NINETEEN_IN_TWENTY;

/// What to do about a gap that is not kept for sure and has `spare_mm` beyond what is asked.
pub(super) fn advice(spare_mm: f64, doubt: &GapDoubt, body: &str) -> String {
    let plus_minus = doubt.plus_minus_mm();
    let short = plus_minus - spare_mm;
    if spare_mm <= 0.0 {
        return format!(
            "{:.0} mm too near, {short:.0} mm with its ±: move one of them, or give this body a gap of its own",
            -spare_mm
        );
    }
    let (places, building) = (
        NINETEEN_IN_TWENTY * doubt.places_mm,
        NINETEEN_IN_TWENTY * doubt.building_mm,
    );
    let must = format!("only its ± fails it, and must come down to ± {spare_mm:.1} mm");
    let left_beside = |other: f64| (spare_mm * spare_mm - other * other).max(0.0).sqrt();
    let build = match doubt.held_by {
        HeldBy::CheckDistances => "set the joint there by its check distances",
        HeldBy::Ends => "make the pieces up to there",
    };
    let how = if spare_mm > building && places >= building {
        format!(
            "measure {body} better, to ± {:.1} mm instead of ± {places:.1} mm",
            left_beside(building)
        )
    } else if spare_mm > places {
        format!(
            "{build} to ± {:.1} mm instead of ± {building:.1} mm",
            left_beside(places)
        )
    } else {
        format!(
            "measure {body} better than ± {places:.1} mm and {build} better than ± {building:.1} mm"
        )
    };
    format!("{must}: {how}; or make {short:.0} mm more room")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn doubt(places: f64, building: f64) -> GapDoubt {
        let sigma = |plus_minus: f64| plus_minus / NINETEEN_IN_TWENTY;
        GapDoubt {
            sigma_mm: sigma(5.0),
            places_mm: sigma(places),
            building_mm: sigma(building),
            held_by: HeldBy::CheckDistances,
        }
    }

    /// ± 5 from ± 4 of places and ± 3 of building: with 3.5 mm to spare measuring must come to
    /// √(3.5² − 3²) = 1.8, with 4.5 mm to 3.4.
    #[test]
    fn what_would_have_to_be_better_is_said_with_how_much() {
        let said = advice(3.5, &doubt(4.0, 3.0), "tank");
        assert!(said.contains("must come down to ± 3.5 mm"), "{said}");
        assert!(
            said.contains("measure tank better, to ± 1.8 mm instead of ± 4.0 mm"),
            "{said}"
        );
        assert!(said.ends_with("or make 2 mm more room"), "{said}");
        assert!(advice(4.5, &doubt(4.0, 3.0), "tank").contains("to ± 3.4 mm"));
        // Where building is the larger part, building has to be better.
        let said = advice(4.5, &doubt(3.0, 4.0), "tank");
        assert!(
            said.contains("check distances to ± 3.4 mm instead of ± 4.0 mm"),
            "{said}"
        );
        // Neither alone will do.
        let said = advice(2.0, &doubt(4.0, 3.0), "tank");
        assert!(
            said.contains("measure tank better than ± 4.0 mm and set"),
            "{said}"
        );
        // Too near by itself: no measuring helps.
        let said = advice(-2.0, &doubt(4.0, 3.0), "tank");
        assert!(said.starts_with("2 mm too near, 7 mm with its ±"), "{said}");
    }
}
