//! What can be typed.

pub(crate) mod shop;

use clap::{Args, Parser, Subcommand};
use std::path::PathBuf;
use std::str::FromStr;
use tubewright_build::document::NameKind;

/// From tape readings to saw marks: design and build the exhaust of a car whose engine was moved.
///
/// A car is one folder (see `tubewright new`). Exit codes: 0 everything asked was done and nothing
/// fails; 1 done, with findings that fail; 2 could not be done; 130 stopped with Ctrl-C.
#[derive(Debug, Parser)]
#[command(name = "tubewright", version, max_term_width = 80)]
pub(crate) struct Cli {
    #[command(subcommand)]
    pub(crate) command: Command,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Start a build folder: empty with guiding comments, or a copy of a demonstration car.
    New(New),
    /// Adjust the tape readings: places with their ±, doubtful readings, what to measure next.
    Measure(Measure),
    /// Find routes for every run, rounded to what the shop can make; choose one of them.
    Route(Route),
    /// What to buy where, with what is on hand used first.
    Buy(Buy),
    /// Which piece out of which stock item: saw marks, clock, order of cuts.
    Cut(Folder),
    /// At the supplier's counter: what to take when a line is out, worked out beforehand.
    Counter(shop::Counter),
    /// The order of tacking, check distances with what they may be off, the closing piece, the welds.
    Fit(Folder),
    /// The order of the errands, by opening hours and minutes on the road.
    Errands(shop::Errands),
    /// Parts that are neither on hand nor on offer, with what to check before paying.
    Wanted(Folder),
    /// Price, drive and wait against the shop's own hours.
    BuyOrMake(shop::BuyOrMake),
    /// Tick what happened: got, out, cut, welded.
    Tick(shop::Tick),
    /// A piece was spoiled: what is left goes on the shelf, the cheapest remake is shown.
    Spoiled(shop::Spoiled),
    /// A joint was tacked and measured: where it really is, and how to go on from there.
    Tacked(shop::Tacked),
    /// Every check of the car: fails, not checked, passes, does not apply.
    Check(Folder),
    /// The printed shop packet, templates at true scale, files for other programs, lists.
    Sheets(Sheets),
    /// The page: the whole job in the browser, on this machine or (--lan) on the phone by the car.
    Open(Open),
    /// Give something another name in all files at once; comments and order stay.
    Rename(Rename),
    /// The whole job on a demonstration car, from tape readings to saw marks.
    Demo(Demo),
    /// Solve one route problem given as a file.
    RouteProblem(RouteProblem),
    /// Print shell completions.
    Completions {
        /// The shell.
        shell: clap_complete::Shell,
    },
}

#[derive(Debug, Args)]
pub(crate) struct Open {
    /// The build folder; one that is empty or not there yet is started.
    pub(crate) folder: PathBuf,
    /// Port of the address; 0 takes any that is free.
    #[arg(long, default_value_t = 0)]
    pub(crate) port: u16,
    /// Let the phone in: the address works on the local network, with a one-time key.
    #[arg(long)]
    pub(crate) lan: bool,
}

#[derive(Debug, Args)]
pub(crate) struct New {
    /// The folder to make; it must not hold a build yet.
    pub(crate) folder: PathBuf,
    /// Copy this demonstration car instead of starting empty.
    #[arg(long, value_name = "CAR", value_parser = crate::demonstration::parse_name)]
    pub(crate) like: Option<&'static crate::demonstration::Demonstration>,
    /// Name of the build; the folder's name when left out.
    #[arg(long)]
    pub(crate) name: Option<String>,
}

#[derive(Debug, Args)]
pub(crate) struct Folder {
    /// The build folder.
    pub(crate) folder: PathBuf,
    /// Print JSON instead of text.
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Measure {
    #[command(flatten)]
    pub(crate) at: Folder,
    /// Show every reading with its residual, not only those that need a look.
    #[arg(long)]
    pub(crate) all: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Rename {
    /// The build folder.
    pub(crate) folder: PathBuf,
    /// What it is: mark, point, end, setup, carrier, body, component, run, tube, item, supplier,
    /// on-hand.
    pub(crate) kind: NameKindWord,
    /// The name it has.
    pub(crate) old: String,
    /// The name it gets.
    pub(crate) new: String,
}

/// A kind of thing that has a name, as typed.
#[derive(Clone, Copy, Debug)]
pub(crate) struct NameKindWord(pub(crate) NameKind);

impl FromStr for NameKindWord {
    type Err = String;

    fn from_str(word: &str) -> Result<Self, Self::Err> {
        Ok(Self(match word {
            "mark" => NameKind::Mark,
            "point" => NameKind::Point,
            "end" => NameKind::End,
            "setup" | "set-up" => NameKind::Setup,
            "carrier" => NameKind::Carrier,
            "body" => NameKind::Body,
            "component" => NameKind::Component,
            "run" => NameKind::Run,
            "tube" => NameKind::Tube,
            "item" => NameKind::Item,
            "supplier" => NameKind::Supplier,
            "on-hand" => NameKind::OnHand,
            _ => {
                return Err(
                    "it is one of mark, point, end, setup, carrier, body, component, run, \
                            tube, item, supplier, on-hand"
                        .to_owned(),
                );
            }
        }))
    }
}

/// How hard the solver tries.
#[derive(Clone, Copy, Debug, Args)]
pub(crate) struct Effort {
    /// Work units for the route solver; equal effort and seed give equal routes.
    #[arg(long, value_name = "UNITS")]
    pub(crate) effort: Option<u64>,
    /// Seed of the solver's random choices.
    #[arg(long)]
    pub(crate) seed: Option<u64>,
}

#[derive(Debug, Args)]
pub(crate) struct Route {
    #[command(flatten)]
    pub(crate) at: Folder,
    #[command(flatten)]
    pub(crate) effort: Effort,
    /// Choose this way of those found last, by its number or name: its pieces go into shop.toml as
    /// they are, and `buy`, `cut` and `check` keep to them.
    #[arg(long, value_name = "WAY", conflicts_with_all = ["effort", "seed", "accept"])]
    pub(crate) choose: Option<String>,
    /// Accept what this way changes of the chosen plan, after steel was bought or cut.
    #[arg(long, value_name = "WAY", conflicts_with_all = ["effort", "seed"])]
    pub(crate) accept: Option<String>,
    /// Date of the entry in shop.toml; today when left out.
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub(crate) on: Option<String>,
}

#[derive(Debug, Args)]
pub(crate) struct Buy {
    #[command(flatten)]
    pub(crate) at: Folder,
    /// Plan without this item (the supplier is out of it); may be given more than once.
    #[arg(long, value_name = "ITEM")]
    pub(crate) without: Vec<String>,
}

#[derive(Debug, Args)]
pub(crate) struct Sheets {
    /// The build folder.
    pub(crate) folder: PathBuf,
    /// Where the sheets go; made when it is not there.
    #[arg(long, value_name = "DIR")]
    pub(crate) out: PathBuf,
    /// Size of the pages.
    #[arg(long, value_enum, default_value = "a4")]
    pub(crate) paper: PaperSize,
    /// Date printed on every page; today's when left out.
    #[arg(long, value_name = "YYYY-MM-DD", value_parser = parse_date)]
    pub(crate) date: Option<String>,
}

/// A date as it is printed.
fn parse_date(text: &str) -> Result<String, String> {
    let parts: Vec<&str> = text.split('-').collect();
    let is_figures = |part: &str, digits: usize| {
        part.len() == digits && part.chars().all(|c| c.is_ascii_digit())
    };
    let within = |part: &str, most: u32| part.parse().is_ok_and(|n: u32| (1..=most).contains(&n));
    match parts[..] {
        [year, month, day]
            if is_figures(year, 4)
                && is_figures(month, 2)
                && is_figures(day, 2)
                && within(month, 12)
                && within(day, 31) =>
        {
            Ok(text.to_owned())
        }
        _ => Err("a date is written as 2026-03-14: year, month, day".to_owned()),
    }
}

/// Size of the pages.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub(crate) enum PaperSize {
    /// ISO A4.
    A4,
    /// US Letter.
    Letter,
}

#[derive(Debug, Args)]
pub(crate) struct Demo {
    /// Which car.
    #[arg(value_name = "CAR", value_parser = crate::demonstration::parse_name, default_value = "estate-v6")]
    pub(crate) car: &'static crate::demonstration::Demonstration,
    /// Where to put the build folder; `tubewright-demo/CAR` when left out.
    #[arg(long, value_name = "FOLDER")]
    pub(crate) folder: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) effort: Effort,
}

#[derive(Debug, Args)]
pub(crate) struct RouteProblem {
    /// The problem, JSON of the form `route-problem/1`.
    pub(crate) file: PathBuf,
    /// Where the answer goes.
    #[arg(long, value_name = "FILE")]
    pub(crate) out: PathBuf,
    #[command(flatten)]
    pub(crate) effort: Effort,
}
