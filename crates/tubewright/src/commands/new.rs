//! Start a build folder.

use super::{Done, Failure, print};
use crate::cli::New;
use crate::demonstration::Demonstration;
use std::fs;
use std::io::Write;
use std::path::Path;

/// The empty build, with words that guide the first hour.
const EMPTY_BUILD: &str = include_str!("../../templates/build.toml");
/// The empty stock file.
const EMPTY_STOCK: &str = include_str!("../../templates/stock.toml");
/// The empty record.
const EMPTY_SHOP: &str = include_str!("../../templates/shop.toml");

/// Makes the folder.
///
/// # Errors
/// The folder holds something, or cannot be written.
pub(crate) fn run(arguments: &New) -> Result<Done, Failure> {
    let folder = &arguments.folder;
    match arguments.like {
        Some(car) => copy_demonstration(car, folder)?,
        None => start(folder, arguments.name.as_deref())?,
    }
    print(&format!(
        "Made {}.\nNext: write marks and readings into build.toml, then `tubewright measure {}`.\n",
        folder.display(),
        folder.display()
    ))?;
    Ok(Done::Clean)
}

/// Starts an empty build; its name is that of the folder when nobody gives one.
///
/// # Errors
/// The folder holds something, or cannot be written.
pub(crate) fn start(folder: &Path, name: Option<&str>) -> Result<(), Failure> {
    let name = name.map_or_else(
        || {
            folder.file_name().map_or_else(
                || "my build".to_owned(),
                |name| name.to_string_lossy().into_owned(),
            )
        },
        str::to_owned,
    );
    let build = EMPTY_BUILD.replace("NAME-OF-THE-BUILD", &escaped(&name));
    let files: [(&str, &[u8]); 3] = [
        ("build.toml", build.as_bytes()),
        ("stock.toml", EMPTY_STOCK.as_bytes()),
        ("shop.toml", EMPTY_SHOP.as_bytes()),
    ];
    write_new(folder, &files)
}

/// Puts a demonstration car into a new folder.
///
/// # Errors
/// The folder holds something, or cannot be written.
pub(crate) fn copy_demonstration(car: &Demonstration, folder: &Path) -> Result<(), Failure> {
    write_new(folder, car.files)
}

/// A name inside a TOML string.
fn escaped(name: &str) -> String {
    name.chars()
        .flat_map(|c| match c {
            '"' => vec!['\\', '"'],
            '\\' => vec!['\\', '\\'],
            c if c.is_control() => vec![' '],
            c => vec![c],
        })
        .collect()
}

fn write_new(folder: &Path, files: &[(&str, &[u8])]) -> Result<(), Failure> {
    fs::create_dir_all(folder).map_err(Failure::writing(folder))?;
    let is_empty = fs::read_dir(folder)
        .map_err(Failure::reading(folder))?
        .next()
        .is_none();
    if !is_empty {
        return Err(Failure::NotEmpty(folder.to_owned()));
    }
    for (name, content) in files {
        let path = folder.join(name);
        if let Some(parent) = path.parent() {
            fs::create_dir_all(parent).map_err(Failure::writing(parent))?;
        }
        // create_new: a file that appeared meanwhile is not overwritten.
        let mut file = fs::OpenOptions::new()
            .write(true)
            .create_new(true)
            .open(&path)
            .map_err(Failure::writing(&path))?;
        file.write_all(content)
            .and_then(|()| file.sync_all())
            .map_err(Failure::writing(&path))?;
    }
    Ok(())
}
