//! The units that are printed.

use crate::terminal::say;
use tubewright_build::model::Model;
use tubewright_plan::lengths::Lengths;

/// The units of the build. Where the person did not say which, the choice is told on stderr.
pub(crate) fn shown_lengths(model: &Model) -> Lengths {
    let lengths = Lengths::of(model);
    if !model.build.shown_units().is_wished && !model.build.readings.is_empty() {
        let (words, other) = match lengths {
            Lengths::Millimetres => ("millimetres", "in"),
            Lengths::Inches => ("inches", "mm"),
        };
        say(&format!(
            "note: lengths in {words}, as most readings are written; units = \"{other}\" under \
             [wishes] in build.toml changes that"
        ));
    }
    lengths
}
