//! Files that a slip or a broken disk has changed: read without panic, and never out of bounds.

#![allow(
    clippy::unwrap_used,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use common::{ESTATE_BUILD, ESTATE_SHOP, ESTATE_STOCK};
use proptest::prelude::*;
use tubewright_build::document::{NameKind, rename};
use tubewright_build::{FileKind, Texts, read};

/// A slip: at a place, so many letters are replaced by others.
fn slipped(text: &str, slips: &[(prop::sample::Index, usize, String)]) -> String {
    let mut letters: Vec<char> = text.chars().collect();
    for (at, count, with) in slips {
        let at = at.index(letters.len() + 1);
        let end = (at + count).min(letters.len());
        letters.splice(at..end, with.chars());
    }
    letters.into_iter().collect()
}

fn slips() -> impl Strategy<Value = Vec<(prop::sample::Index, usize, String)>> {
    let with = prop_oneof![
        "\\PC{0,3}",
        Just("\n".to_owned()),
        Just("\"".to_owned()),
        Just("[[".to_owned()),
        Just("]".to_owned()),
        Just("[[reading]]\n".to_owned()),
        Just(" = ".to_owned()),
        Just("{ ".to_owned()),
        Just("-9223372036854775808".to_owned()),
    ];
    prop::collection::vec((any::<prop::sample::Index>(), 0_usize..40, with), 1..4)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    #[test]
    fn no_slip_makes_reading_panic(build in slips(), stock in slips(), shop in slips()) {
        let build = slipped(ESTATE_BUILD, &build);
        let stock = slipped(ESTATE_STOCK, &stock);
        let shop = slipped(ESTATE_SHOP, &shop);
        let texts = Texts { build: Some(&build), stock: Some(&stock), shop: Some(&shop) };
        let once = read(texts);
        for problem in &once.problems {
            let text = match problem.file {
                FileKind::Build => &build,
                FileKind::Stock => &stock,
                _ => &shop,
            };
            prop_assert!(problem.span.end <= text.len());
            prop_assert!(problem.line >= 1 && problem.column >= 1);
            prop_assert!(problem.line <= text.lines().count() + 1);
        }
        // The same text is read the same.
        prop_assert_eq!(&read(texts), &once);
        // Whatever is read of a name can be renamed, or the renaming says why not.
        if let Some(mark) = once.model.build.marks.first() {
            let _ = rename(texts, None, NameKind::Mark, &mark.name, "another name");
        }
    }
}
