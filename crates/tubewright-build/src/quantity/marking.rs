//! Markings that name a size: dash sizes, threads, tyres.

use super::TyreSize;
use super::error::QuantityError;
use tubewright_geometry::Length;

/// A hose or fitting size in sixteenths of an inch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct DashSize(u8);

impl DashSize {
    /// The number after the dash.
    #[must_use]
    pub const fn number(self) -> u8 {
        self.0
    }

    /// Nominal bore of a hose of this size: sixteenths of an inch (SAE J517). Hose of the 100R5
    /// family is the exception: its number names the tube that fits.
    #[must_use]
    pub fn nominal_bore(self) -> Length {
        Length::from_inches(f64::from(self.0) / 16.0)
    }
}

/// A screw thread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thread {
    /// Outside diameter: nominal, or of a pipe thread at its gauge plane.
    pub diameter: Length,
    /// Pitch.
    pub pitch: Length,
    /// Its form. Two threads of unlike form never go together, even where diameter and pitch agree.
    pub form: ThreadForm,
}

/// The form of a thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ThreadForm {
    /// Metric, ISO 261.
    Metric,
    /// Unified, in inches.
    Unified,
    /// Pipe thread that seals on a washer: G, BSPP (ISO 228-1).
    ParallelPipe,
    /// Pipe thread that seals on itself: R, BSPT (ISO 7-1).
    TaperPipe,
    /// American pipe thread that seals on itself: NPT (ASME B1.20.1).
    AmericanTaperPipe,
}

/// Outside diameter in mm, threads per inch.
type DiameterAndPerInch = (f64, f64);

/// Nominal size of a pipe in sixteenths of an inch, then outside diameter in mm and threads per inch
/// of G and R (ISO 228-1, ISO 7-1), and of NPT (ASME B1.20.1, pipe diameter). From memory.
const PIPES: [(f64, DiameterAndPerInch, DiameterAndPerInch); 6] = [
    (2.0, (9.728, 28.0), (10.287, 27.0)),
    (4.0, (13.157, 19.0), (13.716, 18.0)),
    (6.0, (16.662, 19.0), (17.145, 18.0)),
    (8.0, (20.955, 14.0), (21.336, 14.0)),
    (12.0, (26.441, 14.0), (26.670, 14.0)),
    (16.0, (33.249, 11.0), (33.401, 11.5)),
];

/// Reads a dash size: `-6 AN`, `AN-6`, `dash 6`.
///
/// # Errors
/// A [`QuantityError`] that says what was read, why it cannot stand and what to type.
pub fn parse_dash_size(text: &str) -> Result<DashSize, QuantityError> {
    let form = |why: &str| QuantityError::Form {
        text: text.trim().to_owned(),
        kind: "dash size",
        why: why.to_owned(),
        example: "-6 AN",
    };
    let lower = text.trim().to_ascii_lowercase();
    let number = lower
        .strip_prefix("dash")
        .or_else(|| lower.strip_prefix("an"))
        .or_else(|| lower.strip_suffix("an"))
        .ok_or_else(|| form("it says neither AN nor dash, so it could be anything"))?;
    let number: u8 = number
        .trim()
        .trim_start_matches('-')
        .trim()
        .parse()
        .map_err(|_| form("a dash size is a whole number of sixteenths of an inch"))?;
    if !(2..=48).contains(&number) {
        return Err(form("dash sizes go from 2 to 48"));
    }
    Ok(DashSize(number))
}

/// Reads a thread: `M18x1.5`, `9/16-18 UNF`, `G1/4`, `1/8 NPT`.
///
/// # Errors
/// A [`QuantityError`]; a metric thread without its pitch is refused, because sensors and banjo
/// bolts use fine pitches as often as coarse ones.
pub fn parse_thread(text: &str) -> Result<Thread, QuantityError> {
    let trimmed = text.trim();
    let form = |why: &str| QuantityError::Form {
        text: trimmed.to_owned(),
        kind: "thread",
        why: why.to_owned(),
        example: "M18x1.5",
    };
    if let Some(metric) = trimmed.strip_prefix(['M', 'm']) {
        let (diameter, pitch) = metric
            .split_once(['x', 'X', '×'])
            .ok_or_else(|| form("the pitch is missing"))?;
        let diameter = decimal(diameter).ok_or_else(|| form("the diameter is no number"))?;
        let pitch = decimal(pitch).ok_or_else(|| form("the pitch is no number"))?;
        if !(1.0..=100.0).contains(&diameter) || !(0.2..=6.0).contains(&pitch) {
            return Err(form(
                "diameters go from 1 to 100 mm and pitches from 0.2 to 6 mm",
            ));
        }
        return Ok(Thread {
            diameter: Length::from_mm(diameter),
            pitch: Length::from_mm(pitch),
            form: ThreadForm::Metric,
        });
    }
    if let Some((size, form_of_thread)) = pipe_words(trimmed) {
        let size = super::parse_length(&format!("{size} in"))
            .map_err(|_| form("the size of a pipe is a fraction of an inch"))?;
        let known = PIPES
            .iter()
            .find(|(sixteenths, ..)| (size.mm() - sixteenths * 25.4 / 16.0).abs() < 1e-9);
        let Some(&(_, iso, american)) = known else {
            return Err(form(
                "pipe threads of 1/8, 1/4, 3/8, 1/2, 3/4 and 1 are known",
            ));
        };
        let (diameter_mm, per_inch) = match form_of_thread {
            ThreadForm::AmericanTaperPipe => american,
            _ => iso,
        };
        return Ok(Thread {
            diameter: Length::from_mm(diameter_mm),
            pitch: Length::from_inches(1.0 / per_inch),
            form: form_of_thread,
        });
    }
    if trimmed.ends_with("BSP") {
        return Err(form(
            "BSP is parallel (sealed by a washer) or taper (sealed on itself): write BSPP or BSPT",
        ));
    }
    let inch = ["UNF", "UNC", "UNEF", "UN"]
        .iter()
        .find_map(|series| trimmed.strip_suffix(series))
        .ok_or_else(|| {
            form("it is neither metric (M…), unified (UNF, UNC) nor pipe (G, R, NPT)")
        })?;
    let (diameter, per_inch) = inch
        .trim()
        .rsplit_once('-')
        .ok_or_else(|| form("the threads per inch are missing"))?;
    let diameter = super::parse_length(&format!("{diameter} in"))
        .map_err(|_| form("the diameter is no fraction of an inch"))?;
    let per_inch: u8 = per_inch
        .trim()
        .parse()
        .map_err(|_| form("the threads per inch are no whole number"))?;
    if !(4..=80).contains(&per_inch) {
        return Err(form("threads per inch go from 4 to 80"));
    }
    Ok(Thread {
        diameter,
        pitch: Length::from_inches(1.0 / f64::from(per_inch)),
        form: ThreadForm::Unified,
    })
}

/// The size and the form when the words are those of a pipe thread.
fn pipe_words(text: &str) -> Option<(&str, ThreadForm)> {
    use ThreadForm::{AmericanTaperPipe, ParallelPipe, TaperPipe};
    let before = [("G", ParallelPipe), ("R", TaperPipe)]
        .into_iter()
        .find_map(|(word, form)| Some((text.strip_prefix(word)?, form)));
    let after = [
        ("BSPP", ParallelPipe),
        ("BSPT", TaperPipe),
        ("NPT", AmericanTaperPipe),
    ]
    .into_iter()
    .find_map(|(word, form)| Some((text.strip_suffix(word)?, form)));
    before
        .or(after)
        .map(|(size, form)| (size.trim().trim_end_matches('-').trim(), form))
}

/// Reads a tyre's marking: `205/55 R16`, `195/65R15 91V`; what follows the rim is not used.
///
/// The outer diameter is the rim plus twice width × aspect ratio (ETRTO standards manual, design
/// section height; from memory), unloaded.
///
/// # Errors
/// A [`QuantityError`] that says what was read, why it cannot stand and what to type.
pub fn parse_tyre(text: &str) -> Result<TyreSize, QuantityError> {
    let trimmed = text.trim();
    let form = |why: &str| QuantityError::Form {
        text: trimmed.to_owned(),
        kind: "tyre marking",
        why: why.to_owned(),
        example: "205/55 R16",
    };
    let (width, rest) = trimmed
        .trim_start_matches(['P', 'L', 'T'])
        .split_once('/')
        .ok_or_else(|| form("width and aspect ratio are parted by a stroke"))?;
    let width = decimal(width).ok_or_else(|| form("the width is no number"))?;
    let split = rest
        .find(|c: char| !c.is_ascii_digit())
        .ok_or_else(|| form("the rim is missing"))?;
    let (aspect, rest) = rest.split_at(split);
    let aspect = decimal(aspect).ok_or_else(|| form("the aspect ratio is no number"))?;
    let rim = rest
        .trim_start()
        .trim_start_matches(['Z', 'V', 'H', 'S'])
        .strip_prefix(['R', '-', 'B', 'D'])
        .ok_or_else(|| form("the rim is missing"))?;
    let end = rim
        .trim_start()
        .find(|c: char| !c.is_ascii_digit() && c != '.')
        .unwrap_or(rim.trim_start().len());
    let rim = decimal(rim.trim_start().get(..end).unwrap_or_default())
        .ok_or_else(|| form("the rim is no number of inches"))?;
    if !(100.0..=400.0).contains(&width) || !(20.0..=100.0).contains(&aspect) {
        return Err(form(
            "widths go from 100 to 400 mm and aspect ratios from 20 to 100 %",
        ));
    }
    if !(8.0..=26.0).contains(&rim) {
        return Err(form("rims go from 8 to 26 in"));
    }
    let rim = Length::from_inches(rim);
    Ok(TyreSize {
        width: Length::from_mm(width),
        diameter: rim + Length::from_mm(2.0 * width * aspect / 100.0),
        rim,
    })
}

fn decimal(text: &str) -> Option<f64> {
    let text = text.trim();
    let is_plain = !text.is_empty()
        && text.len() < 12
        && text.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    is_plain.then(|| text.parse().ok()).flatten()
}
