//! Frames of tubes against handbooks, and hangers against every set of them.

mod frequencies;
mod hanging;
mod sinking;

use tubewright_chassis::TubeBeam;

/// Bare stainless tube: 193 GPa, 7900 kg/m³ (304, handbook values).
fn tube(od_mm: f64, wall_mm: f64) -> TubeBeam {
    let mut beam = TubeBeam {
        od_mm,
        wall_mm,
        young_mpa: 193_000.0,
        poisson: 0.3,
        kg_per_mm: 0.0,
    };
    beam.kg_per_mm = beam.area_mm2() * 7900e-9;
    beam
}
