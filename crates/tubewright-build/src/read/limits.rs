use super::source::Said;

/// A build of hundreds of readings takes a tenth of a megabyte; more than this is no build file.
pub(crate) const LARGEST_TOML: usize = 4_000_000;
/// Deeper than any key of the format, with room for slips.
const DEEPEST: usize = 32;

/// Why a text is not even parsed; `None` when it may be.
pub(crate) fn refusal(text: &str) -> Option<Said> {
    if text.len() > LARGEST_TOML {
        return Some(Said::new(
            format!("the file is {} MB long", text.len() / 1_000_000),
            "a build file stays below 4 MB",
            "look whether a scan or another file was saved under this name",
        ));
    }
    let mut depth: usize = 0;
    for byte in text.bytes() {
        match byte {
            b'[' | b'{' => depth += 1,
            b']' | b'}' => depth = depth.saturating_sub(1),
            // A header or a plain value ends with its line; so does a stray bracket in a text.
            b'\n' if depth < DEEPEST => depth = 0,
            _ => {}
        }
        if depth > DEEPEST {
            return Some(Said::new(
                "brackets are nested more than 32 deep",
                "no key of the format nests that deep",
                "look for a bracket that is not closed",
            ));
        }
    }
    None
}
