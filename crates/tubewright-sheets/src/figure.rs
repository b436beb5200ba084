//! Numbers as text.

use core::fmt;

/// A number to 0.001, without trailing zeros, without a minus sign on zero: what SVG coordinates
/// and labels are written with. Not finite is written as 0: a drawing must stay readable, and the
/// builders reject such numbers before.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Figure(pub(crate) f64);

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.0.is_finite() {
            return f.write_str("0");
        }
        let text = format!("{:.3}", self.0);
        let text = text.trim_end_matches('0').trim_end_matches('.');
        f.write_str(if text == "-0" { "0" } else { text })
    }
}
