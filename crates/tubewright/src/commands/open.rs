//! The page: measure, route, buy, cut, fit and prove in the browser.

use super::load::load;
use super::solve::runs_of;
use super::{Done, Failure, new, print, sheets};
use crate::cli::{Open, PaperSize};
use crate::demonstration::DEMONSTRATIONS;
use crate::interrupt;
use crate::terminal::{paragraph, today};
use std::path::Path;
use std::sync::OnceLock;
use tubewright_page::{Doorway, Sample, Workshop, serve};

/// Serves the page until Ctrl-C.
///
/// # Errors
/// The folder cannot be read, or there is no address to serve on.
pub(crate) fn run(arguments: &Open) -> Result<Done, Failure> {
    let samples = samples();
    if is_bare(&arguments.folder) {
        // What `new` writes: the page asks for nothing that is not there.
        new::start(&arguments.folder, None)?;
    }
    let workshop = Workshop::open(&arguments.folder, samples)?;
    let doorway = Doorway::open(arguments.port, arguments.lan)?;
    print(&format!("{}\n", doorway.address))?;
    if arguments.lan {
        if let Some(code) = doorway.code() {
            print(&format!("{code}\n"))?;
        }
        print(&paragraph(
            "Point the phone's camera at it. Whoever has this address and key can change the build while this runs; what goes through the air is not enciphered: only in a network that is yours.",
            0,
        ))?;
    }
    print("Open it in a browser. Ctrl-C ends it; everything done on the page is saved at once.\n")?;
    serve(workshop, samples, packet, doorway, interrupt::was_asked).map_err(Failure::Serve)?;
    Ok(Done::Clean)
}

/// The printed packet of a build, as `sheets` writes it.
fn packet(folder: &Path) -> Result<Vec<u8>, String> {
    let out = tempfile::tempdir().map_err(|error| error.to_string())?;
    write_sheets(folder, out.path()).map_err(|error| error.to_string())?;
    std::fs::read(out.path().join("packet.pdf"))
        .map_err(|_| "this program was built without its typesetting engine, so there is no PDF; `tubewright sheets` writes everything else".to_owned())
}

fn write_sheets(folder: &Path, out: &Path) -> Result<(), Failure> {
    let mut loaded = load(folder)?;
    let solved = runs_of(&mut loaded)?;
    let supply = solved.supply(&loaded, &[])?;
    let (board, found) = sheets::judged(&loaded, &solved, supply.as_ref());
    let judged = (supply.as_ref(), &board, &found);
    // What could not be made has a page that says so.
    let _is_whole = sheets::write_all(&loaded, &solved, judged, out, (PaperSize::A4, today()))?;
    Ok(())
}

/// Whether there is no such folder, or nothing in it.
fn is_bare(folder: &Path) -> bool {
    match std::fs::read_dir(folder) {
        Ok(mut entries) => entries.next().is_none(),
        Err(error) => error.kind() == std::io::ErrorKind::NotFound,
    }
}

/// The demonstrations, for playing with.
fn samples() -> &'static [Sample] {
    static SAMPLES: OnceLock<Vec<Sample>> = OnceLock::new();
    SAMPLES.get_or_init(|| {
        DEMONSTRATIONS
            .iter()
            .map(|car| Sample {
                name: car.name,
                title: car.title,
                files: car.files,
            })
            .collect()
    })
}
