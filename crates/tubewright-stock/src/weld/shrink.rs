//! Shrink across a weld. For a single pass on thin tube no published value was found: the shop's
//! own, measured at the first joint, comes before any of these (0.2 to 0.8 mm is common practice,
//! no source).

use tubewright_geometry::Length;

/// Shrink per 60° V butt weld in plate, low and high, in mm (TWI, frequently asked questions on
/// weld shrinkage). For thick joints.
pub const PLATE_SHRINK_MM: (f64, f64) = (1.5, 3.0);

/// Shrink along the weld in mm per metre (the same: 3 mm in 3 m).
pub const PLATE_SHRINK_LENGTHWISE_MM_PER_M: f64 = 1.0;

/// `0.1 A/t` (O. W. Blodgett, *Design of Welded Structures*, as cited). Good to a factor of two.
#[must_use]
pub fn shrink_by_area(weld_area_mm2: f64, thickness: Length) -> Length {
    Length::from_mm(0.1 * weld_area_mm2 / thickness.mm())
}

/// `0.2 A/t + 0.05 d` (welding handbooks). Good to a factor of two.
#[must_use]
pub fn shrink_by_area_and_gap(weld_area_mm2: f64, thickness: Length, gap: Length) -> Length {
    Length::from_mm(0.2 * weld_area_mm2 / thickness.mm()) + gap * 0.05
}
