//! Writes one of everything that this crate can make into a folder, for outside readers to judge:
//! `cargo run -p tubewright-sheets --example write_sheets -- FOLDER`.

#[path = "../tests/it/common/mod.rs"]
mod common;

use std::path::PathBuf;
use tubewright_sheets::{
    MeshFineness, Paper, SplitCross, StepStamp, ViewName, clock_strip, cut_card, cut_picture,
    one_view, split_cross_step, three_views, to_dxf, to_glb, to_step, to_svg, wrap_template,
};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = PathBuf::from(
        std::env::args()
            .nth(1)
            .ok_or("name the folder to write into")?,
    );
    std::fs::create_dir_all(&folder)?;
    let scene = common::estate();
    let sheet = three_views(&scene, &common::title_block(), Paper::A3)?;
    std::fs::write(folder.join("three-views.svg"), to_svg(&sheet))?;
    for name in ViewName::ALL {
        let view = one_view(&scene, name, 300.0)?;
        let file = format!(
            "view-{}.svg",
            name.heading().to_lowercase().replace(' ', "-")
        );
        std::fs::write(folder.join(file), to_svg(&view))?;
    }
    for (name, unrolled, spec) in common::templates() {
        let template = wrap_template(&unrolled, &spec, common::A4_UPRIGHT)?;
        std::fs::write(
            folder.join(format!("template-{name}.svg")),
            to_svg(&template.whole),
        )?;
        std::fs::write(
            folder.join(format!("template-{name}.dxf")),
            to_dxf(&template.whole),
        )?;
        for (i, page) in template.pages.iter().enumerate() {
            let file = format!("template-{name}-page-{}.svg", i + 1);
            std::fs::write(folder.join(file), to_svg(page))?;
        }
    }
    for (name, item) in common::cards() {
        std::fs::write(
            folder.join(format!("card-{name}.svg")),
            to_svg(&cut_card(&item, 180.0)?),
        )?;
        std::fs::write(
            folder.join(format!("cuts-{name}.svg")),
            to_svg(&cut_picture(&item, 180.0)?),
        )?;
    }
    let stamp = StepStamp {
        file_name: "estate.step".to_owned(),
        date_time: "2026-03-14T12:00:00".to_owned(),
        plan_hash: "3f9c 07d2 a1".to_owned(),
    };
    std::fs::write(folder.join("estate.step"), to_step(&scene, &stamp)?)?;
    std::fs::write(
        folder.join("estate.glb"),
        to_glb(&scene, MeshFineness::default())?,
    )?;
    let cut = common::cut_pieces();
    std::fs::write(folder.join("cuts.step"), to_step(&cut, &stamp)?)?;
    std::fs::write(
        folder.join("cuts.glb"),
        to_glb(&cut, MeshFineness::default())?,
    )?;
    let strip = clock_strip(57.0, 0.1, "Estate · plan 3f9c · 2026-03-14", Paper::A4)?;
    std::fs::write(folder.join("clock-strip.svg"), to_svg(&strip.whole))?;
    std::fs::write(folder.join("clock-strip.dxf"), to_dxf(&strip.whole))?;
    for (name, degrees) in [("long", 90.0_f64), ("short", 30.0)] {
        let cross = SplitCross {
            od_mm: 57.0,
            wall_mm: 1.5,
            clr_mm: 85.5,
            bend_rad: degrees.to_radians(),
            legs_mm: [100.0; 2],
            plane_mm: 100.0,
        };
        std::fs::write(
            folder.join(format!("split-cross-{name}.step")),
            split_cross_step(&cross, &stamp)?,
        )?;
    }
    Ok(())
}
