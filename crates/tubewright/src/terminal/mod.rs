//! Human output: 80 columns, colour only on a terminal, stdout for data and stderr for talk.

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
