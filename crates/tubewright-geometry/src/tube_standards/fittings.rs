//! Elbows of the piping standards, and mandrel-bent exhaust stock.

/// A long-radius butt-weld elbow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LongRadiusElbow {
    /// Nominal pipe size in inches: a name, not a measure.
    pub nps_in: f64,
    /// Outside diameter in mm.
    pub od_mm: f64,
    /// Centre to end of the 90° elbow in mm, its centre-line radius.
    pub centre_to_end_90_mm: f64,
    /// Centre to end of the 45° elbow in mm, where the table was read. A catalogue 45° elbow is *not*
    /// half a 90: its ends are longer than the set-back.
    pub centre_to_end_45_mm: Option<f64>,
}

const fn elbow(nps_in: f64, od_mm: f64, a: f64, b: Option<f64>) -> LongRadiusElbow {
    LongRadiusElbow {
        nps_in,
        od_mm,
        centre_to_end_90_mm: a,
        centre_to_end_45_mm: b,
    }
}

/// ASME B16.9 Table 1, long-radius elbows, as reprinted in "Catalogue: elbow butt weld fittings".
/// Tolerance of a fitting ±2 mm.
pub const LONG_RADIUS_ELBOWS: [LongRadiusElbow; 10] = [
    elbow(0.5, 21.3, 38.1, None),
    elbow(0.75, 26.7, 38.1, None),
    elbow(1.0, 33.4, 38.1, None),
    elbow(1.25, 42.2, 47.8, None),
    elbow(1.5, 48.3, 57.2, Some(28.4)),
    elbow(2.0, 60.3, 76.2, Some(35.1)),
    elbow(2.5, 73.0, 95.2, Some(44.4)),
    elbow(3.0, 88.9, 114.3, Some(50.8)),
    elbow(3.5, 101.6, 133.4, None),
    elbow(4.0, 114.3, 152.4, Some(63.5)),
];

/// A DIN 2605-1 type 3 elbow (radius about 1.5 diameters).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Din2605Elbow {
    /// Outside diameter in mm.
    pub od_mm: f64,
    /// Centre-line radius in mm.
    pub clr_mm: f64,
    /// Back to face of the 90° elbow in mm, about radius and half the diameter.
    pub back_to_face_mm: f64,
    /// Centre to end of the 45° elbow in mm: here the set-back, `R tan 22.5°`.
    pub centre_to_end_45_mm: f64,
}

const fn din(od_mm: f64, r: f64, b: f64, e: f64) -> Din2605Elbow {
    Din2605Elbow {
        od_mm,
        clr_mm: r,
        back_to_face_mm: b,
        centre_to_end_45_mm: e,
    }
}

/// DIN 2605-1 type 3 (EN 10253 type 3D), as reprinted in "Dimensions of elbow and return according to
/// DIN 2605". Centre-to-end tolerance ±2 mm (EN 10253-4).
pub const DIN_2605_TYPE_3: [Din2605Elbow; 7] = [
    din(33.7, 38.0, 56.0, 16.0),
    din(42.4, 48.0, 69.0, 20.0),
    din(48.3, 57.0, 82.0, 24.0),
    din(60.3, 76.0, 106.0, 32.0),
    din(76.1, 95.0, 133.0, 39.0),
    din(88.9, 114.0, 159.0, 47.0),
    din(114.3, 152.0, 210.0, 63.0),
];

/// Centre-line radius over diameter of common mandrel-bent exhaust stock: tight and usual (common
/// practice, no source).
pub const MANDREL_RATIOS: [f64; 2] = [1.0, 1.5];

/// Angles that mandrel bends are sold in, degrees (common practice, no source).
pub const MANDREL_ANGLES_DEG: [f64; 6] = [15.0, 30.0, 45.0, 60.0, 90.0, 180.0];

/// Centre-line radius in mm of a mandrel bend of a ratio (common practice, no source; measure the part).
#[must_use]
pub fn mandrel_clr_mm(od_mm: f64, ratio: f64) -> f64 {
    od_mm * ratio
}
