//! The demonstration cars, built into the binary.

/// A demonstration car.
#[derive(Debug)]
pub(crate) struct Demonstration {
    /// What is typed.
    pub(crate) name: &'static str,
    /// One line for the person.
    pub(crate) title: &'static str,
    /// Files below the build folder: path and content.
    pub(crate) files: &'static [(&'static str, &'static [u8])],
}

macro_rules! file {
    ($car:literal, $path:literal) => {
        (
            $path,
            include_bytes!(concat!("../../../builds/", $car, "/", $path)) as &[u8],
        )
    };
}

/// The three cars. All are invented.
pub(crate) static DEMONSTRATIONS: &[Demonstration] = &[
    Demonstration {
        name: "estate-v6",
        title: "small estate, V6 set far back: two banks, crossover, catalysts kept",
        files: &[
            file!("estate-v6", "build.toml"),
            file!("estate-v6", "stock.toml"),
            file!("estate-v6", "shop.toml"),
        ],
    },
    Demonstration {
        name: "kitcar-mid4",
        title: "mid-engined kit car, transverse turbocharged four: hardly any room",
        files: &[
            file!("kitcar-mid4", "build.toml"),
            file!("kitcar-mid4", "stock.toml"),
            file!("kitcar-mid4", "shop.toml"),
        ],
    },
    Demonstration {
        name: "pickup-six",
        title: "pick-up, inline six: one long run over a live axle, a scan for a floor, in inches",
        files: &[
            file!("pickup-six", "build.toml"),
            file!("pickup-six", "stock.toml"),
            file!("pickup-six", "shop.toml"),
            file!("pickup-six", "scans/floor.stl"),
        ],
    },
];

/// Finds a demonstration car by what was typed.
///
/// # Errors
/// The names there are.
pub(crate) fn parse_name(text: &str) -> Result<&'static Demonstration, String> {
    DEMONSTRATIONS
        .iter()
        .find(|car| car.name == text)
        .ok_or_else(|| {
            let names: Vec<_> = DEMONSTRATIONS.iter().map(|car| car.name).collect();
            format!(
                "there is no demonstration car “{text}”; there are: {}",
                names.join(", ")
            )
        })
}
