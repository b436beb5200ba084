//! Human output: 80 columns, colour only on a terminal, stdout for data and stderr for talk.

pub(crate) mod lengths;
pub(crate) mod table;

use anstyle::{AnsiColor, Style};
use std::io::{self, Write};

/// Bold headings.
pub(crate) const HEADING: Style = Style::new().bold();
/// Something fails.
pub(crate) const FAILS: Style = AnsiColor::Red.on_default().bold();
/// Something is not checked or doubtful.
pub(crate) const WARNS: Style = AnsiColor::Yellow.on_default().bold();
/// Something passes.
pub(crate) const PASSES: Style = AnsiColor::Green.on_default();

/// Text in a style; the codes are taken off again where stdout is no terminal or `NO_COLOR` is set.
pub(crate) fn styled(style: Style, text: impl core::fmt::Display) -> String {
    format!("{style}{text}{style:#}")
}

/// Writes text to stdout. A reader that closed the pipe is no failure.
///
/// # Errors
/// Any other failure to write.
pub(crate) fn print(text: &str) -> io::Result<()> {
    let mut out = anstream::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => Ok(()),
        other => other,
    }
}

/// Writes a line to stderr; a lost stderr is no failure.
pub(crate) fn say(text: &str) {
    let mut err = anstream::stderr().lock();
    // Nothing is left to tell it to when stderr itself is gone.
    let _ = writeln!(err, "{text}");
}

/// Today's date at Greenwich, year-month-day.
pub(crate) fn today() -> String {
    let now = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH);
    date_of(now.map_or(0, |since| since.as_secs() / 86_400))
}

/// The date of a day counted from 1970-01-01 (Gregorian calendar; eras of 146,097 days begun on the
/// first of March, so that the leap day is the last of its year).
fn date_of(day: u64) -> String {
    let day = day + 719_468;
    let (era, day_of_era) = (day / 146_097, day % 146_097);
    let year_of_era =
        (day_of_era - day_of_era / 1460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
    let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let month_from_march = (5 * day_of_year + 2) / 153;
    let day_of_month = day_of_year - (153 * month_from_march + 2) / 5 + 1;
    let month = if month_from_march < 10 {
        month_from_march + 3
    } else {
        month_from_march - 9
    };
    let year = era * 400 + year_of_era + u64::from(month <= 2);
    format!("{year:04}-{month:02}-{day_of_month:02}")
}

/// A heading with an empty line before it.
pub(crate) fn heading(text: &str) -> String {
    format!("\n{}\n", styled(HEADING, text))
}

/// Paragraph text broken at 80 columns with an indent.
pub(crate) fn paragraph(text: &str, indent: usize) -> String {
    let pad = " ".repeat(indent);
    table::wrap(text, table::COLUMNS - indent)
        .into_iter()
        .map(|line| format!("{pad}{line}\n"))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::date_of;

    #[test]
    fn days_are_counted_through_leap_years() {
        let dates = [
            (0, "1970-01-01"),
            (11_016, "2000-02-29"),
            (11_017, "2000-03-01"),
            (19_782, "2024-02-29"),
            (20_787, "2026-11-30"),
            (47_540, "2100-02-28"),
            (47_541, "2100-03-01"),
        ];
        for (day, date) in dates {
            assert_eq!(date_of(day), date);
        }
    }
}
