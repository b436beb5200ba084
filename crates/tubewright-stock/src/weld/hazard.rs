//! Cautions that belong beside every welding and under-car step.

/// Permissible exposure to chromium VI, eight hours, in µg/m³ (29 CFR 1910.1026).
pub const CR6_LIMIT_UG_PER_M3: f64 = 5.0;

/// Action level of chromium VI, eight hours, in µg/m³ (29 CFR 1910.1026).
pub const CR6_ACTION_LEVEL_UG_PER_M3: f64 = 2.5;

/// The cautions (29 CFR 1910.1026, 1910.252(c)(11)(ii), 1910.244(a)(2)(iii); paragraph texts from
/// memory).
pub const CAUTIONS: [&str; 4] = [
    "stainless welding fume contains chromium VI: extract at the source",
    "no chlorinated solvent or its vapour near the arc",
    "after raising the car crib, block or secure it at once; never work under a load held only by a jack",
    "argon displaces air: ventilate pits and closed spaces",
];
