//! What can be typed about steel: ticks, tacked joints, spoiled pieces, the counter, errands.

use super::Folder;
use clap::{Args, Subcommand};
use std::path::PathBuf;

/// When something happened.
#[derive(Debug, Args)]
pub(crate) struct When {
    /// Date of the entry in shop.toml; today when left out.
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub(crate) on: Option<String>,
}

impl When {
    /// The date.
    pub(crate) fn date(&self) -> String {
        self.on.clone().unwrap_or_else(crate::terminal::today)
    }
}

#[derive(Debug, Args)]
pub(crate) struct Tick {
    /// The build folder.
    pub(crate) folder: PathBuf,
    /// Print JSON instead of text.
    #[arg(long, global = true)]
    pub(crate) json: bool,
    #[command(subcommand)]
    pub(crate) what: Ticked,
    #[command(flatten)]
    pub(crate) when: When,
}

/// What is ticked.
#[derive(Debug, Subcommand)]
pub(crate) enum Ticked {
    /// Bought and brought home.
    Got {
        /// The item.
        item: String,
        /// How many.
        #[arg(long, default_value_t = 1)]
        count: u32,
        /// From whom.
        #[arg(long, value_name = "SUPPLIER")]
        from: Option<String>,
    },
    /// The supplier has none.
    Out {
        /// The item.
        item: String,
        /// Who has none; anybody when left out.
        #[arg(long, value_name = "SUPPLIER")]
        from: Option<String>,
    },
    /// A piece is cut and good.
    Cut {
        /// Its mark.
        piece: String,
        /// The item or the thing on hand that it was cut from; as planned when left out.
        #[arg(long, value_name = "NAME")]
        of: Option<String>,
    },
    /// A joint is fully welded.
    Welded {
        /// Its mark.
        joint: String,
    },
}

#[derive(Debug, Args)]
pub(crate) struct Tacked {
    #[command(flatten)]
    pub(crate) at: Folder,
    /// Mark of the joint.
    pub(crate) joint: String,
    /// A tape to its rim, "MARK, CLOCK, LENGTH": "A left, 3 o'clock, 812 mm"; "centre" for the
    /// middle of the tube. Clock from the witness line, clockwise looking downstream. May be given
    /// more than once; without any the record's readings are used.
    #[arg(long, value_name = "TAPE")]
    pub(crate) tape: Vec<String>,
    /// A slope of its face by the angle finder, "CLOCK, SET-UP, ANGLE": "12 o'clock, on its wheels,
    /// 61.5 deg" from the centre toward that clock, above level. Goes with tapes; may be given more
    /// than once.
    #[arg(long, value_name = "SLOPE", requires = "tape")]
    pub(crate) face: Vec<String>,
    /// Take the offer of this number.
    #[arg(long, value_name = "N")]
    pub(crate) accept: Option<usize>,
    /// Work units for routing anew from the joint; 0 leaves that out.
    #[arg(long, value_name = "UNITS", default_value_t = 4000)]
    pub(crate) effort: u64,
    #[command(flatten)]
    pub(crate) when: When,
}

#[derive(Debug, Args)]
pub(crate) struct Spoiled {
    #[command(flatten)]
    pub(crate) at: Folder,
    /// Mark of the piece.
    pub(crate) piece: String,
    /// What is left of it goes back on the shelf: a length ("380 mm") for a straight, an angle
    /// ("22 deg") for a bend.
    #[arg(long, value_name = "SIZE")]
    pub(crate) left: Option<String>,
    #[command(flatten)]
    pub(crate) when: When,
}

#[derive(Debug, Args)]
pub(crate) struct Counter {
    #[command(flatten)]
    pub(crate) at: Folder,
    /// The supplier is out of this item; may be given more than once.
    #[arg(long, value_name = "ITEM")]
    pub(crate) without: Vec<String>,
    /// The supplier has only so many, "ITEM=NUMBER"; may be given more than once.
    #[arg(long, value_name = "ITEM=N")]
    pub(crate) only: Vec<String>,
    /// How many of the likeliest pairs of lines to work out.
    #[arg(long, value_name = "N", default_value_t = 3)]
    pub(crate) pairs: usize,
}

#[derive(Debug, Args)]
pub(crate) struct Errands {
    #[command(flatten)]
    pub(crate) at: Folder,
    /// A stop, "NAME, OPENS-CLOSES, MINUTES THERE": "North Road Tube, 8:00-17:00, 15". May be given
    /// more than once.
    #[arg(long, value_name = "STOP")]
    pub(crate) stop: Vec<String>,
    /// Minutes by road between two places, either way, "A, B, MINUTES"; the workshop is called
    /// "shop". May be given more than once.
    #[arg(long, value_name = "ROAD")]
    pub(crate) road: Vec<String>,
    /// When you leave.
    #[arg(long, value_name = "H:MM", default_value = "8:00")]
    pub(crate) leave: String,
}

#[derive(Debug, Args)]
pub(crate) struct BuyOrMake {
    /// The build folder: its shop rate and currency are used.
    #[command(flatten)]
    pub(crate) at: Folder,
    /// Price with tax and delivery, as a plain number of the stock file's currency.
    #[arg(long)]
    pub(crate) price: f64,
    /// Minutes on the road for it, there and back.
    #[arg(long, value_name = "MINUTES", default_value_t = 0.0)]
    pub(crate) drive: f64,
    /// Minutes of waiting that stop the job.
    #[arg(long, value_name = "MINUTES", default_value_t = 0.0)]
    pub(crate) wait: f64,
    /// Minutes to make it, set-up counted.
    #[arg(long, value_name = "MINUTES")]
    pub(crate) make: f64,
    /// Material for making it, as a plain number of the stock file's currency.
    #[arg(long, default_value_t = 0.0)]
    pub(crate) material: f64,
}
