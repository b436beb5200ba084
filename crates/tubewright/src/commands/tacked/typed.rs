//! What is typed of a joint: tapes and slopes.

use crate::commands::Failure;
use tubewright_build::Span;
use tubewright_build::model::{JointFace, JointReading, Model, Name, Place, PlaceAt};
use tubewright_build::quantity::{Quantity, parse_angle, parse_clock, parse_length};

/// "A left, 3 o'clock, 812 mm".
pub(super) fn reading(model: &Model, tape: &str) -> Result<JointReading, Failure> {
    let bad = |why: String| {
        Failure::Choice(format!(
            "the tape “{tape}” cannot be read: {why}; write it like \"A left, 3 o'clock, 812 mm\""
        ))
    };
    let mut parts = tape.rsplitn(3, ',').map(str::trim);
    let (Some(length), Some(clock), Some(mark)) = (parts.next(), parts.next(), parts.next()) else {
        return Err(bad("it needs a mark, a clock and a length".to_owned()));
    };
    let name = Name::new(mark);
    let at = if model.build.mark(mark).is_some() {
        PlaceAt::Mark(name)
    } else if model.build.point(mark).is_some() {
        PlaceAt::Point(name)
    } else {
        return Err(bad(format!("there is no mark or point “{mark}”")));
    };
    let rim = if clock == "centre" {
        None
    } else {
        Some(parse_clock(&clock_as_written(clock)).map_err(|error| bad(error.to_string()))?)
    };
    let reads = parse_length(length).map_err(|error| bad(error.to_string()))?;
    Ok(JointReading {
        from: Place {
            at,
            span: Span::none(),
        },
        rim,
        reads: Quantity::new(reads, length),
    })
}

/// "12 o'clock, on its wheels, 61.5 deg".
pub(super) fn face(model: &Model, slope: &str) -> Result<JointFace, Failure> {
    let bad = |why: String| {
        Failure::Choice(format!(
            "the slope “{slope}” cannot be read: {why}; write it like \"12 o'clock, on its wheels, 61.5 deg\""
        ))
    };
    let first = slope.split_once(',');
    let rest = first.and_then(|(clock, rest)| Some((clock, rest.rsplit_once(',')?)));
    let Some((clock, (setup, angle))) = rest else {
        return Err(bad("it needs a clock, a set-up and an angle".to_owned()));
    };
    let (clock, setup, angle) = (clock.trim(), setup.trim(), angle.trim());
    if model.build.setup(setup).is_none() {
        return Err(bad(format!("there is no set-up “{setup}”")));
    }
    let reads = parse_angle(angle).map_err(|error| bad(error.to_string()))?;
    let written = clock_as_written(clock);
    let toward = parse_clock(&written).map_err(|error| bad(error.to_string()))?;
    Ok(JointFace {
        clock: Quantity::new(toward, written),
        setup: Name::new(setup),
        reads: Quantity::new(reads, angle),
    })
}

/// "3 o'clock" as the files write it, "3:00".
fn clock_as_written(clock: &str) -> String {
    let hour = ["o'clock", "o’clock", "oclock"]
        .iter()
        .find_map(|words| clock.strip_suffix(words))
        .map(str::trim_end);
    match hour {
        Some(hour) if hour.contains(':') => hour.to_owned(),
        Some(hour) => format!("{hour}:00"),
        None => clock.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::clock_as_written;
    use tubewright_build::quantity::parse_clock;

    #[test]
    fn a_clock_may_be_said_as_the_help_says_it() {
        for (said, deg) in [
            ("3 o'clock", 90.0),
            ("12 o'clock", 0.0),
            ("3:30 o'clock", 105.0),
            ("3:00", 90.0),
            ("3:30", 105.0),
            ("90 deg", 90.0),
            ("11 o’clock", 330.0),
        ] {
            let clock = parse_clock(&clock_as_written(said)).expect(said);
            assert!(
                (clock.angle().deg() - deg).abs() < 1e-9,
                "{said}: {clock:?}"
            );
        }
    }
}
