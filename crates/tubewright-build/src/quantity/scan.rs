use super::error::QuantityError;
use super::ratio::Ratio;

/// Walks a quantity's text from left to right.
pub(crate) struct Scanner<'a> {
    text: &'a str,
    rest: &'a str,
    kind: &'static str,
    example: &'static str,
}

const MOST_DIGITS: usize = 15;
const FRACTION_SIGNS: [(char, i128, i128); 7] = [
    ('½', 1, 2),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
];

impl<'a> Scanner<'a> {
    pub(crate) fn new(
        text: &'a str,
        kind: &'static str,
        example: &'static str,
    ) -> Result<Self, QuantityError> {
        let rest = text.trim();
        if rest.is_empty() {
            return Err(QuantityError::Empty { kind });
        }
        Ok(Self {
            text: rest,
            rest,
            kind,
            example,
        })
    }

    pub(crate) const fn text(&self) -> &'a str {
        self.text
    }

    /// What is left, without the space before it.
    pub(crate) fn rest(&self) -> &'a str {
        self.rest.trim_start()
    }

    pub(crate) fn is_at_end(&self) -> bool {
        self.rest().is_empty()
    }

    /// Takes a sign; true when it was a minus.
    pub(crate) fn take_minus(&mut self) -> bool {
        let rest = self.rest();
        for (sign, is_minus) in [('-', true), ('−', true), ('+', false)] {
            if let Some(after) = rest.strip_prefix(sign) {
                self.rest = after;
                return is_minus;
            }
        }
        false
    }

    /// Takes one of these words (letters compared without case), the first that fits.
    pub(crate) fn take_word(&mut self, words: &[&str]) -> bool {
        let rest = self.rest();
        for word in words {
            let Some(head) = rest.get(..word.len()) else {
                continue;
            };
            let after = &rest[word.len()..];
            let ends_in_letter = word.chars().next_back().is_some_and(char::is_alphabetic);
            let runs_on = ends_in_letter && after.starts_with(char::is_alphanumeric);
            if head.eq_ignore_ascii_case(word) && !runs_on {
                self.rest = after;
                return true;
            }
        }
        false
    }

    /// Takes an unsigned number: `12`, `12.5`, `.5`, `2-1/2`, `2 1/2`, `1/2`, `2½`.
    pub(crate) fn take_number(&mut self) -> Result<Ratio, QuantityError> {
        let start = self.rest();
        let (value, after) = self.mixed(start)?;
        self.rest = after;
        Ok(value)
    }

    /// The number at the start of what is left, as typed; for messages.
    pub(crate) fn typed_number(&self, from: &'a str) -> &'a str {
        let used = from.len().saturating_sub(self.rest.len());
        from.get(..used).unwrap_or(from).trim()
    }

    fn mixed(&self, start: &'a str) -> Result<(Ratio, &'a str), QuantityError> {
        if let Some((value, after)) = fraction_sign(start) {
            return Ok((value, after));
        }
        let (whole, after) = self.decimal(start)?;
        // `1/2`
        if let Some(after_stroke) = after.strip_prefix('/')
            && let Some((den, rest)) = digits(after_stroke)
        {
            let text = &start[..start.len() - rest.len()];
            return Ok((fraction(text, whole, den, None)?, rest));
        }
        // `2½`, `2 ½`
        if let Some((part, rest)) = fraction_sign(after.trim_start())
            && whole.as_whole().is_some()
        {
            let sum = whole.plus(part).ok_or_else(|| too_long(start))?;
            return Ok((sum, rest));
        }
        // `2-1/2`, `2 1/2`
        let joined = after
            .strip_prefix(['-', '‑', '–'])
            .or_else(|| after.starts_with(' ').then(|| after.trim_start()));
        if let Some(tail) = joined
            && let Some((num, after_num)) = digits(tail)
            && let Some(after_stroke) = after_num.strip_prefix('/')
            && let Some((den, rest)) = digits(after_stroke)
        {
            let text = &start[..start.len() - rest.len()];
            let num = parse_digits(num).ok_or_else(|| too_long(text))?;
            return Ok((fraction(text, Ratio::whole(num), den, Some(whole))?, rest));
        }
        Ok((whole, after))
    }

    fn decimal(&self, start: &'a str) -> Result<(Ratio, &'a str), QuantityError> {
        let whole_end = count_digits(start);
        let after_whole = &start[whole_end..];
        let (part, after) = match after_whole.strip_prefix('.') {
            Some(tail) => {
                let end = count_digits(tail);
                (&tail[..end], &tail[end..])
            }
            None => ("", after_whole),
        };
        let whole = &start[..whole_end];
        if whole.is_empty() && part.is_empty() {
            return Err(QuantityError::NoNumber {
                text: self.text.to_owned(),
                kind: self.kind,
                example: self.example,
            });
        }
        if let Some(tail) = after.strip_prefix(',')
            && tail.starts_with(|c: char| c.is_ascii_digit())
        {
            let end = count_digits(tail);
            let number = &start[..start.len() - tail.len() + end];
            return Err(QuantityError::Comma {
                number: number.to_owned(),
                with_point: number.replacen(',', ".", 1),
            });
        }
        let typed = &start[..start.len() - after.len()];
        if whole.len() + part.len() > MOST_DIGITS {
            return Err(too_long(typed));
        }
        let all = parse_digits(&format!("{whole}{part}")).ok_or_else(|| too_long(typed))?;
        let den = (0..part.len()).fold(1_i128, |den, _| den * 10);
        let value = Ratio::new(all, den).ok_or_else(|| too_long(typed))?;
        Ok((value, after))
    }
}

fn fraction(
    text: &str,
    num: Ratio,
    den: &str,
    whole: Option<Ratio>,
) -> Result<Ratio, QuantityError> {
    let bad = || QuantityError::Fraction {
        fraction: text.trim().to_owned(),
    };
    let den = parse_digits(den).ok_or_else(bad)?;
    let num = num.as_whole().ok_or_else(bad)?;
    if ![2, 4, 8, 16, 32, 64].contains(&den) || num == 0 || (whole.is_some() && num >= den) {
        return Err(bad());
    }
    let part = Ratio::new(num, den).ok_or_else(bad)?;
    match whole {
        None => Ok(part),
        Some(whole) if whole.as_whole().is_some() => whole.plus(part).ok_or_else(bad),
        Some(_) => Err(bad()),
    }
}

fn fraction_sign(start: &str) -> Option<(Ratio, &str)> {
    FRACTION_SIGNS.iter().find_map(|&(sign, num, den)| {
        let after = start.strip_prefix(sign)?;
        Some((Ratio::new(num, den)?, after))
    })
}

fn count_digits(text: &str) -> usize {
    text.bytes().take_while(u8::is_ascii_digit).count()
}

fn digits(text: &str) -> Option<(&str, &str)> {
    let end = count_digits(text);
    (end > 0).then(|| text.split_at(end))
}

fn parse_digits(text: &str) -> Option<i128> {
    (text.len() <= MOST_DIGITS)
        .then(|| text.parse().ok())
        .flatten()
}

fn too_long(number: &str) -> QuantityError {
    QuantityError::TooLong {
        number: number.chars().take(40).collect(),
    }
}
