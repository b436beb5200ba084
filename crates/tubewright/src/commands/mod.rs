//! One file per command. A command reads, calls the stages, prints, and decides nothing else.

mod buy;
mod buy_or_make;
mod check;
mod counter;
mod cut;
mod demo;
mod drawing;
mod errands;
mod fit;
mod load;
mod made;
mod measure;
mod new;
mod open;
mod plan;
mod record;
mod rename;
mod route;
mod route_problem;
mod sheets;
mod solve;
mod spoiled;
mod tacked;
mod tick;
mod wanted;

use crate::cli::{Cli, Command};
use crate::terminal;
use clap::CommandFactory;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// What a command that could do its work ends with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Done {
    /// Nothing fails.
    Clean,
    /// Something fails; it was shown.
    Findings,
    /// Stopped with Ctrl-C; everything is whole.
    Stopped,
}

impl Done {
    /// The same, unless the person stopped the work.
    pub(crate) fn or_stopped(self) -> Self {
        if crate::interrupt::was_asked() {
            Self::Stopped
        } else {
            self
        }
    }

    /// 0, 1 or 130.
    pub(crate) fn exit_code(self) -> ExitCode {
        ExitCode::from(match self {
            Self::Clean => 0,
            Self::Findings => 1,
            Self::Stopped => 130,
        })
    }
}

/// Why a command could not do its work: exit code 2.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub(crate) enum Failure {
    /// A file could not be read.
    #[error("cannot read {}: {source}", path.display())]
    Read {
        path: PathBuf,
        source: std::io::Error,
    },
    /// A file could not be written.
    #[error("cannot write {}: {source}; nothing was changed", path.display())]
    Write {
        path: PathBuf,
        source: std::io::Error,
    },
    /// Standard output failed.
    #[error("cannot write to standard output: {0}")]
    Output(std::io::Error),
    /// A folder that should be new holds something.
    #[error("{} is not empty; name a folder that does not exist yet, so that nothing is overwritten", .0.display())]
    NotEmpty(PathBuf),
    /// There is no build in the folder.
    #[error("{} holds no build.toml; `tubewright new {}` starts a build", .0.display(), .0.display())]
    NoBuild(PathBuf),
    /// The files have errors; each was shown.
    #[error("{} has {errors} error{} in its files; nothing was computed from it", folder.display(), if *errors == 1 { "" } else { "s" })]
    Problems { folder: PathBuf, errors: usize },
    /// The readings cannot be worked with at all.
    #[error("the readings cannot be adjusted: {0}")]
    Adjust(#[from] tubewright_survey::AdjustError),
    /// An item that is not in the stock file.
    #[error("there is no item “{0}” in stock.toml; --without takes the name of an item")]
    NoItem(String),
    /// The route problem does not hold together.
    #[error("the runs cannot be routed: {0}")]
    Problem(#[from] tubewright_route::problem::ProblemError),
    /// The plan is older than the files: what would be printed is not what was looked at.
    #[error(
        "plan.json is {words}; nothing is printed from it. Look at the routes with `tubewright route`, which solves them anew, then print"
    )]
    OlderPlan {
        /// What it is older than.
        words: String,
    },
    /// Nothing to draw.
    #[error("there is no drawing: {0}")]
    Drawing(String),
    /// A way cannot be chosen or accepted.
    #[error("{0}")]
    Choice(String),
    /// Nothing was added to the record.
    #[error(transparent)]
    Append(#[from] tubewright_build::document::AppendError),
    /// No cutting plan.
    #[error("there is no buying and cutting plan: {0}")]
    Supply(#[from] tubewright_plan::stages::SupplyError),
    /// The page cannot open the build.
    #[error(transparent)]
    Open(#[from] tubewright_page::OpenError),
    /// There is no address for the page.
    #[error(transparent)]
    Doorway(#[from] tubewright_page::DoorwayError),
    /// The page cannot be served any more.
    #[error("the page cannot be served any more: {0}")]
    Serve(std::io::Error),
    /// The folder could not be opened for a change.
    #[error(transparent)]
    Folder(#[from] tubewright_build::folder::FolderError),
    /// Nothing was renamed.
    #[error(transparent)]
    Rename(#[from] tubewright_build::document::RenameError),
    /// Nothing was saved.
    #[error(transparent)]
    Save(#[from] tubewright_build::folder::SaveError),
    /// A route problem file is not sound.
    #[error("{}: {problem}", path.display())]
    RouteProblem { path: PathBuf, problem: String },
}

impl Failure {
    /// The words for stderr.
    pub(crate) fn text(&self) -> String {
        format!("{}: {self}", terminal::styled(terminal::FAILS, "error"))
    }

    /// Always 2.
    pub(crate) fn exit_code(&self) -> ExitCode {
        ExitCode::from(2)
    }

    /// A failure to read this path.
    pub(crate) fn reading(path: &Path) -> impl FnOnce(std::io::Error) -> Self {
        move |source| Self::Read {
            path: path.to_owned(),
            source,
        }
    }

    /// A failure to write this path.
    pub(crate) fn writing(path: &Path) -> impl FnOnce(std::io::Error) -> Self {
        move |source| Self::Write {
            path: path.to_owned(),
            source,
        }
    }
}

/// Runs what was typed.
///
/// # Errors
/// [`Failure`] when it could not be done at all; findings are no failure.
pub(crate) fn run(cli: &Cli) -> Result<Done, Failure> {
    crate::interrupt::listen();
    match &cli.command {
        Command::New(arguments) => new::run(arguments),
        Command::RouteProblem(arguments) => route_problem::run(arguments),
        Command::Completions { shell } => {
            let mut script = Vec::new();
            clap_complete::generate(*shell, &mut Cli::command(), "tubewright", &mut script);
            print(&String::from_utf8_lossy(&script))?;
            Ok(Done::Clean)
        }
        Command::Measure(arguments) => measure::run(arguments),
        Command::Route(arguments) => route::run(arguments),
        Command::Buy(arguments) => buy::run(arguments),
        Command::Cut(arguments) => cut::run(arguments),
        Command::Counter(arguments) => counter::run(arguments),
        Command::Fit(arguments) => fit::run(arguments),
        Command::Errands(arguments) => errands::run(arguments),
        Command::Wanted(arguments) => wanted::run(arguments),
        Command::BuyOrMake(arguments) => buy_or_make::run(arguments),
        Command::Tick(arguments) => tick::run(arguments),
        Command::Spoiled(arguments) => spoiled::run(arguments),
        Command::Tacked(arguments) => tacked::run(arguments),
        Command::Check(arguments) => check::run(arguments),
        Command::Sheets(arguments) => sheets::run(arguments),
        Command::Open(arguments) => open::run(arguments),
        Command::Rename(arguments) => rename::run(arguments),
        Command::Demo(arguments) => demo::run(arguments),
    }
}

/// Prints to stdout.
///
/// # Errors
/// [`Failure::Output`].
pub(crate) fn print(text: &str) -> Result<(), Failure> {
    terminal::print(text).map_err(Failure::Output)
}

/// Writes a file through a temporary one beside it, so that it is never half written.
///
/// # Errors
/// [`Failure::Write`].
pub(crate) fn write_whole(out: &Path, text: &str) -> Result<(), Failure> {
    write_bytes(out, text.as_bytes())
}

/// The same for bytes.
///
/// # Errors
/// [`Failure::Write`].
pub(crate) fn write_bytes(out: &Path, bytes: &[u8]) -> Result<(), Failure> {
    let folder = out.parent().filter(|parent| !parent.as_os_str().is_empty());
    let mut builder = tempfile::Builder::new();
    // A sheet is for everybody in the shop; a temporary file is for its owner alone by itself.
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    let mut file = builder
        .tempfile_in(folder.unwrap_or_else(|| ".".as_ref()))
        .map_err(Failure::writing(out))?;
    file.write_all(bytes)
        .and_then(|()| file.as_file().sync_all())
        .map_err(Failure::writing(out))?;
    file.persist(out)
        .map_err(|error| Failure::writing(out)(error.error))?;
    Ok(())
}
