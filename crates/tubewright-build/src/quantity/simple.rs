//! Kinds that are one number and one unit. Factors: NIST Special Publication 811 (2008), appendix
//! B.8, all exact by definition unless said otherwise.

use super::unit_table::{Doubtful, Unit, UnitTable};

const fn unit(words: &'static [&'static str], num: i128, den: i128) -> Unit {
    Unit { words, num, den }
}

/// Base unit kg.
pub(crate) static MASS: UnitTable = UnitTable {
    kind: "a mass",
    example: "2.6 kg",
    units: "kg, g, t, lb, oz",
    table: &[
        unit(&["kg"], 1, 1),
        unit(&["g"], 1, 1000),
        unit(&["t"], 1000, 1),
        unit(&["lb", "lbs"], 45_359_237, 100_000_000),
        unit(&["oz"], 45_359_237, 1_600_000_000),
    ],
    doubtful: &[],
    range: (0.0, 100_000.0),
    base: "kg",
    adds: true,
};

/// Base unit litre.
pub(crate) static VOLUME: UnitTable = UnitTable {
    kind: "a volume",
    example: "2.5 l",
    units: "l, ml, cc, cu in, gal US, gal imp",
    table: &[
        unit(&["l", "litre", "litres", "liter", "liters"], 1, 1),
        unit(&["ml"], 1, 1000),
        unit(&["cc", "cm3", "cm³", "ccm"], 1, 1000),
        unit(&["m3", "m³"], 1000, 1),
        unit(&["cu in", "in3", "in³", "cui"], 16_387_064, 1_000_000_000),
        unit(&["gal US", "US gal"], 3_785_411_784, 1_000_000_000),
        unit(
            &["gal imp", "imp gal", "gal UK", "UK gal"],
            454_609,
            100_000,
        ),
    ],
    doubtful: &[Doubtful {
        words: &["gal", "gallon", "gallons"],
        meanings: "a gallon is 3.785 l in the US and 4.546 l imperial",
        type_this: "write \"# gal US\" or \"# gal imp\"",
    }],
    range: (0.0, 10_000.0),
    base: "l",
    adds: false,
};

/// Base unit litre per minute.
pub(crate) static FLOW: UnitTable = UnitTable {
    kind: "a flow",
    example: "12 l/min",
    units: "l/min, l/h, l/s, m3/h, gal US/min, gal imp/min",
    table: &[
        unit(&["l/min"], 1, 1),
        unit(&["l/h"], 1, 60),
        unit(&["l/s"], 60, 1),
        unit(&["ml/min", "cc/min"], 1, 1000),
        unit(&["m3/h", "m³/h"], 1000, 60),
        unit(&["gal US/min", "US gal/min"], 3_785_411_784, 1_000_000_000),
        unit(&["gal imp/min", "imp gal/min"], 454_609, 100_000),
    ],
    doubtful: &[Doubtful {
        words: &["gal/min", "gpm"],
        meanings: "a gallon is 3.785 l in the US and 4.546 l imperial",
        type_this: "write \"# gal US/min\" or \"# gal imp/min\"",
    }],
    range: (0.0, 1_000_000.0),
    base: "l/min",
    adds: false,
};

/// Base unit kW. Mechanical horsepower is 550 ft lbf/s, metric is 75 kgf m/s.
pub(crate) static POWER: UnitTable = UnitTable {
    kind: "a power",
    example: "125 kW",
    units: "kW, W, PS, hp mech, hp metric",
    table: &[
        unit(&["kW"], 1, 1),
        unit(&["W"], 1, 1000),
        unit(&["PS", "hp metric", "cv"], 73_549_875, 100_000_000),
        unit(
            &["hp mech", "bhp"],
            45_359_237 * 980_665 * 3048 * 550,
            100_000_000 * 100_000 * 10_000 * 1000,
        ),
    ],
    doubtful: &[Doubtful {
        words: &["hp"],
        meanings: "a horsepower is 0.7457 kW mechanical and 0.7355 kW metric (PS)",
        type_this: "write \"# hp mech\" or \"# hp metric\"",
    }],
    range: (0.0, 10_000.0),
    base: "kW",
    adds: false,
};

/// Base unit N m.
pub(crate) static TORQUE: UnitTable = UnitTable {
    kind: "a torque",
    example: "210 Nm",
    units: "Nm, lbf ft, lbf in, kgf m",
    table: &[
        unit(&["Nm", "N m", "N·m"], 1, 1),
        unit(
            &[
                "lbf ft", "lb ft", "ft lbf", "ft lb", "lbf-ft", "lb-ft", "ft-lb",
            ],
            45_359_237 * 980_665 * 3048,
            100_000_000 * 100_000 * 10_000,
        ),
        unit(
            &["lbf in", "lb in", "in lbf", "in lb"],
            45_359_237 * 980_665 * 254,
            100_000_000 * 100_000 * 10_000,
        ),
        unit(&["kgf m", "kgm"], 980_665, 100_000),
    ],
    doubtful: &[],
    range: (0.0, 100_000.0),
    base: "Nm",
    adds: false,
};

/// Base unit km/h.
pub(crate) static SPEED: UnitTable = UnitTable {
    kind: "a speed",
    example: "100 km/h",
    units: "km/h, mph, m/s",
    table: &[
        unit(&["km/h", "kph", "kmh"], 1, 1),
        unit(&["mph", "mi/h"], 1_609_344, 1_000_000),
        unit(&["m/s"], 36, 10),
    ],
    doubtful: &[],
    range: (0.0, 1000.0),
    base: "km/h",
    adds: false,
};

/// Base unit rev/min.
pub(crate) static ROTATION: UnitTable = UnitTable {
    kind: "a speed of rotation",
    example: "6500 rev/min",
    units: "rev/min, rev/s",
    table: &[
        unit(&["rev/min", "rpm", "1/min", "r/min"], 1, 1),
        unit(&["rev/s", "1/s"], 60, 1),
    ],
    doubtful: &[],
    range: (0.0, 100_000.0),
    base: "rev/min",
    adds: false,
};

/// Base unit minute.
pub(crate) static DURATION: UnitTable = UnitTable {
    kind: "a time",
    example: "14 min",
    units: "min, h, s",
    table: &[
        unit(&["min", "minutes", "minute"], 1, 1),
        unit(&["h", "hours", "hour"], 60, 1),
        unit(&["s", "sec"], 1, 60),
    ],
    doubtful: &[],
    range: (0.0, 100_000.0),
    base: "min",
    adds: true,
};

/// Base unit kg/m³.
pub(crate) static DENSITY: UnitTable = UnitTable {
    kind: "a density",
    example: "7900 kg/m3",
    units: "kg/m3, g/cm3",
    table: &[
        unit(&["kg/m3", "kg/m³"], 1, 1),
        unit(&["g/cm3", "g/cm³", "g/cc", "kg/l"], 1000, 1),
    ],
    doubtful: &[],
    range: (1.0, 30_000.0),
    base: "kg/m3",
    adds: false,
};

/// Base unit 1.
pub(crate) static SHARE: UnitTable = UnitTable {
    kind: "a percentage",
    example: "19 %",
    units: "%",
    table: &[unit(&["%", "percent", "per cent"], 1, 100)],
    doubtful: &[],
    range: (-1.0, 10.0),
    base: "(parts of one)",
    adds: false,
};
