//! Current and filler wire.

use tubewright_geometry::{Length, math};

/// A range of starting current in ampere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TigCurrent {
    /// The rule for mild steel: 1 A per 0.001 in of wall.
    pub rule_a: f64,
    /// Stainless, low end: the rule less 15 %.
    pub stainless_low_a: f64,
    /// Stainless, high end: the rule less 10 %.
    pub stainless_high_a: f64,
}

/// Where to start with the current. Common practice, no source; a range, never a setting.
#[must_use]
pub fn tig_current(wall: Length) -> TigCurrent {
    let rule_a = wall.inches() * 1000.0;
    TigCurrent {
        rule_a,
        stainless_low_a: rule_a * 0.85,
        stainless_high_a: rule_a * 0.90,
    }
}

/// Filler wire of one butt joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WireNeed {
    /// Section to fill in mm²: gap × wall + ⅔ cap width × cap height.
    pub area_mm2: f64,
    /// Length of the joint round the outside.
    pub joint: Length,
    /// Wire without stubs; allow 10 to 20 % for them.
    pub wire: Length,
}

/// Wire by the balance of volumes (common practice): the section times the mean girth, over the
/// section of the wire. The cap is a parabola.
#[must_use]
pub fn wire_need(
    od: Length,
    wall: Length,
    gap: Length,
    cap: (Length, Length),
    wire: Length,
) -> WireNeed {
    let (width, height) = cap;
    let area_mm2 = gap.mm() * wall.mm() + 2.0 / 3.0 * width.mm() * height.mm();
    let volume = area_mm2 * math::PI * (od.mm() - wall.mm());
    WireNeed {
        area_mm2,
        joint: od * math::PI,
        wire: Length::from_mm(volume / (math::PI / 4.0 * wire.mm() * wire.mm())),
    }
}
