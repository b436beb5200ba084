//! The files of the packet, each written whole or not at all.

use super::super::{Failure, write_bytes, write_whole};
use crate::terminal::{WARNS, say, styled};
use std::path::Path;
use tubewright_packet::{Packet, Stamp, lists_of, to_csv, to_json, typeset};
use tubewright_plan::packet::{PrintJob, TemplateJob, bend_text, hand_made, plain, templates_of};
use tubewright_plan::scene::scene_of;
use tubewright_sheets::{
    MeshFineness, Paper, StepStamp, TitleBlock, split_cross_step, three_views, to_dxf, to_glb,
    to_step, to_svg,
};

/// The PDF. False when this build has no typesetter, or it refused.
pub(super) fn packet(packet: &Packet, out: &Path) -> Result<bool, Failure> {
    match typeset(packet) {
        Ok(bytes) => {
            write_bytes(&out.join("packet.pdf"), &bytes)?;
            Ok(true)
        }
        Err(error) => {
            say(&format!("{}: {error}", styled(WARNS, "no PDF")));
            Ok(false)
        }
    }
}

/// Every list as CSV, and all of them as one JSON file.
pub(super) fn lists(packet: &Packet, out: &Path) -> Result<(), Failure> {
    let folder = folder(out, "lists")?;
    for list in lists_of(packet) {
        write_whole(&folder.join(format!("{}.csv", list.name)), &to_csv(&list))?;
    }
    write_whole(&out.join("lists.json"), &to_json(packet))
}

/// Three views and templates as SVG and DXF at true scale. Returns what could not be drawn.
pub(super) fn drawings(
    job: &PrintJob<'_>,
    stamp: &Stamp,
    out: &Path,
) -> Result<Vec<String>, Failure> {
    let mut troubles = Vec::new();
    let scene = scene_of(job.model, job.around, job.runs, job.board);
    let block = TitleBlock {
        build: stamp.build.clone(),
        sheet_name: "Runs, three views".to_owned(),
        plan_hash: stamp.plan_hash.clone(),
        date: stamp.date.clone(),
        sheet: None,
        note: stamp.note.clone(),
    };
    match three_views(&scene, &block, Paper::A3) {
        Ok(drawing) => {
            write_whole(&out.join("three-views.svg"), &to_svg(&drawing))?;
            write_whole(&out.join("three-views.dxf"), &to_dxf(&drawing))?;
        }
        Err(error) => troubles.push(format!("three views: {error}")),
    }
    let source = format!(
        "{} · plan {} · {}",
        stamp.build, stamp.plan_hash, stamp.date
    );
    let wanted = TemplateJob {
        model: job.model,
        runs: job.runs,
        supply: job.supply,
        lengths: job.lengths,
        source_line: &source,
        paper: Paper::A4,
    };
    match templates_of(wanted) {
        Ok(templates) => {
            let folder = folder(out, "templates")?;
            for template in templates {
                let path = |end: &str| folder.join(format!("{}.{end}", template.name));
                write_whole(&path("svg"), &to_svg(&template.whole))?;
                write_whole(&path("dxf"), &to_dxf(&template.whole))?;
            }
        }
        Err(error) => troubles.push(format!("templates: {error}")),
    }
    Ok(troubles)
}

/// STEP and glTF of the runs, STEP of a crossover that can be made by hand.
pub(super) fn solids(
    job: &PrintJob<'_>,
    stamp: &Stamp,
    out: &Path,
) -> Result<Vec<String>, Failure> {
    let mut troubles = Vec::new();
    let scene = scene_of(job.model, job.around, job.runs, job.board);
    let step_stamp = |file_name: &str| StepStamp {
        file_name: file_name.to_owned(),
        date_time: format!("{}T00:00:00", stamp.date),
        plan_hash: stamp.plan_hash.clone(),
    };
    match to_step(&scene, &step_stamp("runs.step")) {
        Ok(text) => write_whole(&out.join("runs.step"), &text)?,
        Err(error) => troubles.push(format!("runs.step: {error}")),
    }
    match to_glb(&scene, MeshFineness::default()) {
        Ok(bytes) => write_bytes(&out.join("runs.glb"), &bytes)?,
        Err(error) => troubles.push(format!("runs.glb: {error}")),
    }
    for cross in job
        .supply
        .map(|s| hand_made(job.runs, s))
        .unwrap_or_default()
    {
        if let Ok((_, split)) = &cross.made {
            let name = format!("hand-made-{}.step", plain(&cross.name));
            match split_cross_step(split, &step_stamp(&name)) {
                Ok(text) => write_whole(&out.join(&name), &text)?,
                Err(error) => troubles.push(format!("{name}: {error}")),
            }
        }
    }
    Ok(troubles)
}

/// A bend table for each run in plain text.
pub(super) fn bend_tables(job: &PrintJob<'_>, stamp: &Stamp, out: &Path) -> Result<(), Failure> {
    let folder = folder(out, "bends")?;
    for run in job.runs {
        let name = format!("{}.txt", plain(&run.name));
        write_whole(&folder.join(name), &bend_text(run, stamp))?;
    }
    Ok(())
}

fn folder(out: &Path, name: &str) -> Result<std::path::PathBuf, Failure> {
    let folder = out.join(name);
    std::fs::create_dir_all(&folder).map_err(Failure::writing(&folder))?;
    Ok(folder)
}
