//! Readings as they are typed on the page's keypads.

use super::{clock_face, refusal, said, short};
use crate::api::{Deed, Refusal, Spot};
use tubewright_build::document::Written;
use tubewright_build::quantity::{parse_angle, parse_length};

type Fields = Vec<(&'static str, Written)>;

/// The keys of a reading; none when the deed is about something else.
///
/// # Errors
/// A [`Refusal`] when a quantity, a name or a clock mark cannot be read.
pub(super) fn fields(deed: &Deed) -> Result<Option<Fields>, Refusal> {
    Ok(Some(match deed {
        Deed::AddTape { from, to, reads } => {
            let mut fields = between("tape", from, to)?;
            fields.push(("reads", length(reads)?));
            fields
        }
        Deed::AddHeight { of, setup, reads } => {
            let mut fields = vec![("kind", Written::text("height"))];
            fields.extend(spot("of", "rim", of)?);
            fields.push(("setup", short(setup)?));
            fields.push(("reads", length(reads)?));
            fields
        }
        Deed::AddPlumb {
            from,
            to,
            setup,
            reads,
        } => {
            let mut fields = between("plumb", from, to)?;
            fields.push(("setup", short(setup)?));
            fields.push(("reads", length(reads)?));
            fields
        }
        Deed::AddOffset {
            from,
            to,
            along,
            setup,
            reads,
        } => {
            let mut fields = between("offset", from, to)?;
            match (along, setup) {
                (Some(line), None) => fields.push(("along", pair(line)?)),
                (None, Some(setup)) => {
                    fields.push(("along", Written::text("plumb")));
                    fields.push(("setup", short(setup)?));
                }
                _ => {
                    return Err(refusal(
                        "an offset is along a line through two places, or straight up as the car stands: say one of them",
                    ));
                }
            }
            fields.push(("reads", length(reads)?));
            fields
        }
        Deed::AddSlope {
            from,
            to,
            setup,
            reads,
        } => {
            let mut fields = between("inclination", from, to)?;
            fields.push(("setup", short(setup)?));
            fields.push(("reads", angle(reads)?));
            fields
        }
        Deed::AddBearing {
            from,
            to,
            base,
            setup,
            reads,
        } => {
            let mut fields = between("bearing", from, to)?;
            fields.push(("base", pair(base)?));
            fields.push(("setup", short(setup)?));
            fields.push(("reads", angle(reads)?));
            fields
        }
        Deed::AddFace {
            end,
            toward,
            setup,
            reads,
        } => vec![
            ("kind", Written::text("face")),
            ("end", short(end)?),
            ("clock", Written::text(clock_mark(*toward)?)),
            ("setup", short(setup)?),
            ("reads", angle(reads)?),
        ],
        _ => return Ok(None),
    }))
}

fn between(kind: &str, from: &Spot, to: &Spot) -> Result<Fields, Refusal> {
    let mut fields = vec![("kind", Written::text(kind))];
    fields.extend(spot("from", "from-rim", from)?);
    fields.extend(spot("to", "rim", to)?);
    Ok(fields)
}

fn spot(key: &'static str, rim_key: &'static str, spot: &Spot) -> Result<Fields, Refusal> {
    let mut fields = vec![(key, short(&spot.name)?)];
    if let Some(hours) = spot.rim {
        fields.push((rim_key, Written::text(clock_mark(hours)?)));
    }
    Ok(fields)
}

fn clock_mark(hours: f64) -> Result<String, Refusal> {
    if hours > 0.0 && hours <= 12.0 {
        Ok(clock_face(hours))
    } else {
        Err(refusal("a clock mark lies between 0 and 12 o'clock"))
    }
}

fn pair(names: &[String; 2]) -> Result<Written, Refusal> {
    Ok(Written::List(vec![short(&names[0])?, short(&names[1])?]))
}

fn length(text: &str) -> Result<Written, Refusal> {
    parse_length(text).map_err(said)?;
    Ok(Written::text(text.trim()))
}

fn angle(text: &str) -> Result<Written, Refusal> {
    parse_angle(text).map_err(said)?;
    Ok(Written::text(text.trim()))
}
