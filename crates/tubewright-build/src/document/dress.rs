//! Line ends, a mark at the very start, a last line without an end: what a person's editor made of a
//! text and the TOML writer does not keep. An edit changes what it is about and no line beside it.

/// The edited text with the line ends of the text that it was made from: a line that was there keeps
/// its own, a new line gets the commonest.
pub(super) fn as_written(original: &str, edited: &str) -> String {
    let (mark, body) = original
        .strip_prefix(BYTE_ORDER_MARK)
        .map_or(("", original), |body| (BYTE_ORDER_MARK, body));
    let old: Vec<&str> = body.split_inclusive('\n').collect();
    let new: Vec<&str> = edited
        .trim_start_matches(BYTE_ORDER_MARK)
        .split_inclusive('\n')
        .collect();
    let is_kept = |old: &str, new: &str| content(old) == content(new);
    let common = old.len().min(new.len());
    let (before, behind) = if old.len() == new.len() {
        (common, 0)
    } else {
        let before = old
            .iter()
            .zip(&new)
            .take_while(|(old, new)| is_kept(old, new))
            .count();
        let behind = old
            .iter()
            .rev()
            .zip(new.iter().rev())
            .take_while(|(old, new)| is_kept(old, new))
            .count()
            .min(common - before);
        (before, behind)
    };
    let usual = usual_end(body);
    let mut text = String::with_capacity(original.len().max(edited.len()) + 16);
    text.push_str(mark);
    for (at, line) in new.iter().enumerate() {
        let from_end = new.len() - at;
        let twin = if at < before {
            old.get(at)
        } else if from_end <= behind {
            old.get(old.len() - from_end)
        } else {
            None
        };
        text.push_str(content(line));
        let is_last = from_end == 1;
        let end = match (twin.map(|twin| end(twin)), end(line)) {
            (Some(""), _) if !is_last => usual,
            (Some(end), _) => end,
            (None, "") => "",
            (None, _) => usual,
        };
        text.push_str(end);
    }
    text
}

/// What some editors put before everything else.
const BYTE_ORDER_MARK: &str = "\u{feff}";

/// How the lines of a text end, for one that is added.
pub(super) fn usual_end(text: &str) -> &'static str {
    let all = text.matches('\n').count();
    if text.matches("\r\n").count() * 2 > all {
        "\r\n"
    } else {
        "\n"
    }
}

fn content(line: &str) -> &str {
    let line = line.strip_suffix('\n').unwrap_or(line);
    line.strip_suffix('\r').unwrap_or(line)
}

fn end(line: &str) -> &str {
    line.get(content(line).len()..).unwrap_or_default()
}
