//! Slips in the digits that are printed on the tape.

/// Whole numbers that differ from `shown` in one digit, the number of digits kept.
pub(super) fn one_digit_wrong(shown: u32) -> Vec<u32> {
    let mut found = Vec::new();
    let mut place = 1;
    while place <= shown {
        let digit = shown / place % 10;
        let top = place > shown / 10;
        for other in u32::from(top)..10 {
            if other != digit {
                found.push(shown - digit * place + other * place);
            }
        }
        match place.checked_mul(10) {
            Some(next) => place = next,
            None => break,
        }
    }
    found
}

/// Whole numbers that come of exchanging two neighbouring digits of `shown`.
pub(super) fn swapped(shown: u32) -> Vec<u32> {
    let mut found = Vec::new();
    let mut place = 1;
    while place <= shown / 10 {
        let (low, high) = (shown / place % 10, shown / place / 10 % 10);
        if low != high && !(low == 0 && place > shown / 100) {
            found.push(shown - low * place - high * place * 10 + high * place + low * place * 10);
        }
        place *= 10;
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_digit_at_a_time() {
        let found = one_digit_wrong(812);
        assert_eq!(found.len(), 9 + 9 + 8);
        assert!(found.contains(&712) && found.contains(&802) && found.contains(&819));
        assert!(!found.contains(&12), "a leading zero is not written");
    }

    #[test]
    fn neighbours_change_places() {
        assert_eq!(swapped(812), [821, 182]);
        assert_eq!(swapped(1071), [1017, 1701]);
        assert!(swapped(7).is_empty() && swapped(77).is_empty());
    }
}
