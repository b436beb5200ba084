//! What goes on paper.

use crate::table::Table;
use serde::Serialize;

/// A whole packet.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Packet {
    /// What stands on every page.
    pub stamp: Stamp,
    /// Size of the pages.
    pub paper: PacketPaper,
    /// The sheets in the order of printing.
    pub sheets: Vec<Sheet>,
}

/// What every page carries. All words are the caller's.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Stamp {
    /// Name of the build.
    pub build: String,
    /// Hash of the plan, as short as it shall be printed.
    pub plan_hash: String,
    /// Date.
    pub date: String,
    /// Units of every figure that says no other ("mm, degrees").
    pub units: String,
    /// A line that must be read with every page ("Invented for demonstration"), or nothing.
    pub note: Option<String>,
}

/// Size of the pages.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum PacketPaper {
    /// ISO 216 A4, 210 mm by 297 mm.
    A4,
    /// US Letter, 8-1/2 in by 11 in.
    UsLetter,
}

impl PacketPaper {
    /// Width and height of a standing page in mm.
    #[must_use]
    pub const fn standing_mm(self) -> [f64; 2] {
        match self {
            Self::A4 => [210.0, 297.0],
            Self::UsLetter => [215.9, 279.4],
        }
    }
}

/// What a sheet is for. The order is that of the job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum SheetKind {
    /// The car, the chosen way and how to read the rest.
    Cover,
    /// What must be minded.
    Cautions,
    /// Marks, readings, places.
    Survey,
    /// One run.
    Run,
    /// What to buy where.
    Buy,
    /// What to do when something is out.
    Counter,
    /// What to take along, what is still wanted.
    TakeAlong,
    /// One stock item that is cut.
    Cut,
    /// Wrap-round templates at true scale.
    Template,
    /// Order of assembly and check distances.
    Fit,
    /// Joints and how they are welded.
    Weld,
    /// Where hangers and joints are.
    JointMap,
    /// What was checked.
    Checks,
    /// Every reading.
    Readings,
}

/// One sheet: a heading and what stands under it, on as many pages as it needs.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Sheet {
    /// What it is for.
    pub kind: SheetKind,
    /// Its heading ("Cut card 3: bend 57 90").
    pub title: String,
    /// Whether its pages lie.
    pub is_lying: bool,
    /// Whether it stands below the sheet before it, where it fits on that page whole. A sheet with a
    /// [`Block::NewPage`] and one behind a drawing at true scale begin on a page of their own all the same.
    pub is_below: bool,
    /// What stands on it.
    pub body: Body,
}

/// What stands on a sheet.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "body", rename_all = "kebab-case")]
pub enum Body {
    /// Blocks one below the other.
    Made {
        /// In order.
        blocks: Vec<Block>,
    },
    /// One drawing as large as the page, at true scale: its millimetres are the paper's. It keeps
    /// its lowest 12 mm free for the page's own line.
    TrueScale {
        /// SVG of exactly the page's size.
        svg: String,
    },
    /// The sheet belongs to the packet but could not be made.
    NotMade {
        /// Why.
        why: String,
        /// What to do instead.
        instead: String,
    },
}

/// One thing on a sheet.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "block", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Block {
    /// A heading inside the sheet.
    Heading {
        /// Its words.
        text: String,
    },
    /// A paragraph.
    Words {
        /// Its words.
        text: String,
    },
    /// Figures to be read from afar.
    Figures {
        /// Side by side.
        figures: Vec<Figure>,
    },
    /// Things to do in order, with a number and a box to tick.
    Steps {
        /// In order.
        steps: Vec<Step>,
    },
    /// Things without order.
    Items {
        /// The lines.
        lines: Vec<String>,
    },
    /// A table; its head is repeated on every page.
    Table {
        /// The table.
        table: Table,
    },
    /// A drawing.
    Picture {
        /// The drawing.
        picture: Picture,
    },
    /// Drawings side by side, with all others of their page as large as the page lets them be.
    Pictures {
        /// From left to right, each as wide as it should be if there is room.
        pictures: Vec<Picture>,
    },
    /// What can hurt someone or spoil the work: boxed with a heavy line.
    Caution {
        /// Its words.
        text: String,
    },
    /// A part of a sheet that could not be made.
    NotMade {
        /// What is missing.
        what: String,
        /// Why.
        why: String,
    },
    /// The list of sheets with their pages.
    Contents,
    /// What follows starts on a new page.
    NewPage,
}

/// A figure to be read from afar.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Figure {
    /// The figure with its unit ("650.16 EUR").
    pub value: String,
    /// What it is.
    pub what: String,
}

/// One thing to do.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Step {
    /// What to do, in a few words.
    pub what: String,
    /// How; may be empty.
    pub how: String,
}

/// A drawing on a sheet.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Picture {
    /// SVG.
    pub svg: String,
    /// Its width on paper in mm; it is made smaller to fit the page and never larger.
    pub width_mm: f64,
    /// Its height on paper in mm.
    pub height_mm: f64,
    /// What it shows, for those who cannot see it.
    pub words: String,
}
