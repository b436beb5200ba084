//! The doors: every way in for bytes that come from outside, and what must hold whatever comes in.
//!
//! Each door takes any bytes at all. It must not panic, must not take memory or time beyond what
//! the length of the bytes warrants, and what it lets in must keep the promises that the rest of
//! the program relies on. The fuzz targets call these doors with bytes of their own invention; the
//! everyday tests call them with every input that ever broke one (`fuzz/regressions`), with the
//! seeds, and with seeds damaged at random.

mod edits;
mod files;
mod quantities;
mod scans;

use core::fmt;

/// A way in for bytes from outside.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Door {
    /// `build.toml`.
    BuildFile,
    /// `stock.toml`.
    StockFile,
    /// `shop.toml`.
    ShopFile,
    /// `plan.json`.
    PlanJson,
    /// A route problem in its published form.
    RouteProblem,
    /// One quantity, as it stands in a file.
    Quantity,
    /// A scan whose name ends in `.stl`.
    ScanStl,
    /// A scan whose name ends in `.obj`.
    ScanObj,
    /// A scan whose name ends in `.ply`.
    ScanPly,
    /// A scan of points only, or one whose name tells nothing.
    ScanAny,
}

impl Door {
    /// Every door.
    pub const ALL: &'static [Self] = &[
        Self::BuildFile,
        Self::StockFile,
        Self::ShopFile,
        Self::PlanJson,
        Self::RouteProblem,
        Self::Quantity,
        Self::ScanStl,
        Self::ScanObj,
        Self::ScanPly,
        Self::ScanAny,
    ];

    /// The name of its fuzz target and of its folders of inputs.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::BuildFile => "build_file",
            Self::StockFile => "stock_file",
            Self::ShopFile => "shop_file",
            Self::PlanJson => "plan_json",
            Self::RouteProblem => "route_problem",
            Self::Quantity => "quantity",
            Self::ScanStl => "scan_stl",
            Self::ScanObj => "scan_obj",
            Self::ScanPly => "scan_ply",
            Self::ScanAny => "scan_any",
        }
    }

    /// Hands the bytes in.
    ///
    /// # Errors
    ///
    /// [`Broken`] when something came through that breaks a promise. A refusal is no error.
    pub fn hand_in(self, bytes: &[u8]) -> Result<(), Broken> {
        match self {
            Self::BuildFile => files::build_file(bytes),
            Self::StockFile => files::stock_file(bytes),
            Self::ShopFile => files::shop_file(bytes),
            Self::PlanJson => files::plan_json(bytes),
            Self::RouteProblem => files::route_problem(bytes),
            Self::Quantity => quantities::quantity(bytes),
            Self::ScanStl => scans::scan(bytes, Some(tubewright_scan::ScanFormat::Stl)),
            Self::ScanObj => scans::scan(bytes, Some(tubewright_scan::ScanFormat::Obj)),
            Self::ScanPly => scans::scan(bytes, Some(tubewright_scan::ScanFormat::Ply)),
            Self::ScanAny => scans::scan(bytes, None),
        }
    }
}

impl fmt::Display for Door {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

/// A promise that did not hold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Broken {
    /// The promise.
    pub promise: &'static str,
    /// What came through instead.
    pub instead: String,
}

impl fmt::Display for Broken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "broken promise: {}; instead: {}",
            self.promise, self.instead
        )
    }
}

/// `Ok` when the promise holds; `instead` is asked for only when it does not.
fn promise(
    holds: bool,
    promise: &'static str,
    instead: impl FnOnce() -> String,
) -> Result<(), Broken> {
    if holds {
        Ok(())
    } else {
        Err(Broken {
            promise,
            instead: instead(),
        })
    }
}
