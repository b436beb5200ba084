//! Usual clearances, as defaults that the person sees and may change.

/// What a tube must keep clear of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum ClearanceClass {
    /// Chassis, body, engine: metal that minds no heat.
    Structure,
    /// Soft line, hose or wiring without a heat shield.
    SoftUnshielded,
    /// Soft line, hose or wiring behind a heat shield.
    SoftShielded,
    /// The ground, on its wheels.
    Ground,
    /// Rotating driveline.
    Driveline,
    /// Underside of the bonnet.
    Bonnet,
    /// The swept tyre.
    TyreEnvelope,
}

impl ClearanceClass {
    /// Every class.
    pub const ALL: [Self; 7] = [
        Self::Structure,
        Self::SoftUnshielded,
        Self::SoftShielded,
        Self::Ground,
        Self::Driveline,
        Self::Bonnet,
        Self::TyreEnvelope,
    ];

    /// Usual gap in mm (common practice, no source; 50 to 75 mm is the usual range for unshielded
    /// soft parts).
    #[must_use]
    pub const fn usual_gap_mm(self) -> f64 {
        match self {
            Self::Structure | Self::Driveline | Self::Bonnet | Self::TyreEnvelope => 25.0,
            Self::SoftUnshielded => 75.0,
            Self::SoftShielded => 40.0,
            Self::Ground => 100.0,
        }
    }

    /// The class in the words of the trade.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Structure => "structure",
            Self::SoftUnshielded => "soft unshielded",
            Self::SoftShielded => "soft with shield",
            Self::Ground => "ground",
            Self::Driveline => "driveline",
            Self::Bonnet => "bonnet",
            Self::TyreEnvelope => "tyre envelope",
        }
    }
}

/// Gap in mm to ask for between measured bodies: the clearance of the class, twice the standard
/// deviation of the survey there, the motion that the clearance query did not cover itself, and the
/// chord error of a mesh (a mesh inside a round body makes it look smaller).
#[must_use]
pub fn gap_to_ask_for_mm(
    class_gap_mm: f64,
    survey_sigma_mm: f64,
    motion_mm: f64,
    mesh_chord_error_mm: f64,
) -> f64 {
    class_gap_mm + 2.0 * survey_sigma_mm + motion_mm + mesh_chord_error_mm
}
