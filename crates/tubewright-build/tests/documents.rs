//! Edits that keep what they do not touch.

#![allow(
    clippy::unwrap_used,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use common::{ESTATE_BUILD, ESTATE_SHOP, ESTATE_STOCK, estate};
use tubewright_build::document::{
    Document, EditError, ElementRef, NameKind, Written, append_entry, rename,
};
use tubewright_build::model::{Entry, EntryKind, Name};
use tubewright_build::{FileKind, Span, Texts, read};

fn named(list: &str, name: &str) -> ElementRef {
    ElementRef::Named(list.to_owned(), name.to_owned())
}

fn build() -> Document {
    Document::parse(FileKind::Build, ESTATE_BUILD).unwrap()
}

#[test]
fn opening_and_writing_changes_no_byte() {
    assert_eq!(build().text(), ESTATE_BUILD);
    let stock = Document::parse(FileKind::Stock, ESTATE_STOCK).unwrap();
    assert_eq!(stock.text(), ESTATE_STOCK);
}

/// A text as different editors leave it: Windows line ends, a byte order mark, no last line end, both
/// kinds of line end in one file.
fn dressed(text: &str) -> [String; 5] {
    let windows = text.replace('\n', "\r\n");
    let half = text.len() / 2;
    let at = half + text[half..].find('\n').unwrap() + 1;
    [
        windows.clone(),
        format!("\u{feff}{windows}"),
        format!("\u{feff}{text}"),
        text.trim_end().to_owned(),
        format!("{}{}", &text[..at], text[at..].replace('\n', "\r\n")),
    ]
}

#[test]
fn line_ends_are_the_writers_own() {
    for text in dressed(ESTATE_BUILD) {
        let mut document = Document::parse(FileKind::Build, &text).unwrap();
        assert_eq!(document.text(), text);
        document
            .set(&ElementRef::Reading(1), "reads", &Written::text("712 mm"))
            .unwrap();
        assert_eq!(
            document.text(),
            text.replacen("reads = \"812 mm\" ", "reads = \"712 mm\" ", 1)
        );
        document
            .add("mark", &[("name", Written::text("Z"))])
            .unwrap();
        let added = document.text();
        let ends = |text: &str| (text.matches("\r\n").count(), text.matches('\n').count());
        if !text.replace("\r\n", "").contains('\n') {
            assert_eq!(ends(&added).0, ends(&added).1, "only Windows line ends");
        }
        let read = read(Texts {
            build: Some(&added),
            stock: Some(ESTATE_STOCK),
            shop: Some(ESTATE_SHOP),
        });
        assert!(read.problems.is_empty(), "{:#?}", read.problems);
        assert!(read.model.build.marks.iter().any(|mark| &*mark.name == "Z"));
    }
}

#[test]
fn renaming_and_adding_to_the_record_keep_line_ends() {
    for (build, shop) in dressed(ESTATE_BUILD).iter().zip(dressed(ESTATE_SHOP)) {
        let texts = Texts {
            build: Some(build),
            stock: Some(ESTATE_STOCK),
            shop: Some(&shop),
        };
        let changes = rename(texts, None, NameKind::Mark, "A left", "Z").unwrap();
        let renamed = changes.text(FileKind::Build).unwrap();
        assert_eq!(renamed, build.replace("\"A left\"", "\"Z\""));
        assert_eq!(changes.text(FileKind::Stock), None);
        let entry = estate().model.shop.entries.remove(0);
        let appended = append_entry(Some(&shop), &entry).unwrap();
        assert!(appended.starts_with(&shop));
        let bare = |text: &str| text.replace("\r\n", "").matches('\n').count();
        if bare(&shop) == 0 {
            assert_eq!(bare(&appended), 0);
        }
    }
}

#[test]
fn a_value_changes_and_its_comment_stays() {
    let mut document = build();
    document
        .set(&ElementRef::Reading(1), "reads", &Written::text("712 mm"))
        .unwrap();
    let expected = ESTATE_BUILD.replacen(
        "reads = \"812 mm\"      # by hand",
        "reads = \"712 mm\"      # by hand",
        1,
    );
    assert_ne!(expected, ESTATE_BUILD);
    assert_eq!(document.text(), expected);
}

#[test]
fn a_key_is_added_to_its_element_and_can_be_cleared_again() {
    let mut document = build();
    let element = named("body", "shift rod");
    document
        .set(&element, "gap", &Written::text("12 mm"))
        .unwrap();
    let expected = ESTATE_BUILD.replacen(
        "diameter = \"16 mm\"\n",
        "diameter = \"16 mm\"\ngap = \"12 mm\"\n",
        1,
    );
    assert_eq!(document.text(), expected);
    assert!(document.clear(&element, "gap").unwrap());
    assert!(!document.clear(&element, "gap").unwrap());
    assert_eq!(document.text(), ESTATE_BUILD);
    // Nothing to clear is nothing to write.
    let mut bare = Document::parse(FileKind::Build, "name = \"n\"\n").unwrap();
    let wishes = ElementRef::Table("wishes".to_owned());
    assert!(!bare.clear(&wishes, "effort").unwrap());
    assert_eq!(bare.text(), "name = \"n\"\n");
}

#[test]
fn a_reading_gets_the_next_number_and_numbers_are_never_reused() {
    let mut document = build();
    let fields = [
        ("kind", Written::text("height")),
        ("of", Written::text("A left")),
        ("setup", Written::text("on its wheels")),
        ("reads", Written::text("201 mm")),
    ];
    assert_eq!(document.add_reading(0, &fields).unwrap(), 11);
    document.remove(&ElementRef::Reading(11)).unwrap();
    assert_eq!(document.add_reading(11, &fields).unwrap(), 12);
    let text = document.text();
    let read = read(Texts {
        build: Some(&text),
        stock: Some(ESTATE_STOCK),
        shop: Some(ESTATE_SHOP),
    });
    assert!(read.problems.is_empty(), "{:#?}", read.problems);
    assert!(read.model.build.reading(12).is_some());
    assert!(read.model.build.reading(11).is_none());
    for line in ESTATE_BUILD.lines() {
        assert!(text.contains(line), "lost: {line}");
    }
}

#[test]
fn an_element_goes_without_taking_its_neighbours() {
    let mut document = build();
    document.remove(&named("body", "shift rod")).unwrap();
    let at = ESTATE_BUILD
        .find("\n[[body]]\nname = \"shift rod\"")
        .unwrap();
    let end = ESTATE_BUILD.find("\n[[body]]\nname = \"starter\"").unwrap();
    let expected = format!("{}{}", &ESTATE_BUILD[..at], &ESTATE_BUILD[end..]);
    assert_eq!(document.text(), expected);
}

#[test]
fn what_the_format_does_not_know_is_not_written() {
    let mut document = build();
    assert_eq!(
        document.set(&named("body", "diff"), "colour", &Written::text("red")),
        Err(EditError::NoKey {
            element: "body".to_owned(),
            key: "colour".to_owned()
        })
    );
    assert!(matches!(
        document.set(&named("body", "no such"), "gap", &Written::text("1 mm")),
        Err(EditError::NoElement { .. })
    ));
    assert!(
        document
            .add("bodies", &[("name", Written::text("x"))])
            .is_err()
    );
    assert_eq!(document.text(), ESTATE_BUILD);
    assert!(matches!(
        Document::parse(FileKind::Shop, ESTATE_SHOP),
        Err(EditError::NotEditable { .. })
    ));
}

#[test]
fn every_entry_survives_being_appended_and_no_byte_before_it_changes() {
    let read_before = estate();
    let mut text: Option<String> = None;
    for entry in &read_before.model.shop.entries {
        let before = text.clone().unwrap_or_default();
        let next = append_entry(text.as_deref(), entry).unwrap();
        assert!(next.starts_with(&before));
        text = Some(next);
    }
    let text = text.unwrap();
    let again = read(Texts {
        build: Some(ESTATE_BUILD),
        stock: Some(ESTATE_STOCK),
        shop: Some(&text),
    });
    assert!(again.problems.is_empty(), "{text}\n{:#?}", again.problems);
    assert_eq!(again.model.shop, read_before.model.shop);
    insta::assert_snapshot!(text.lines().take(24).collect::<Vec<_>>().join("\n"));
}

#[test]
fn an_entry_needs_a_date_of_the_calendar() {
    let entry = |on: &str| Entry {
        on: on.to_owned(),
        what: EntryKind::Spare {
            item: Name::new("bend 63.5 90"),
            count: 1,
        },
        note: None,
        span: Span::none(),
    };
    assert!(append_entry(Some(ESTATE_SHOP), &entry("2026-02-28")).is_ok());
    assert!(append_entry(Some(ESTATE_SHOP), &entry("2026-02-30")).is_err());
    assert!(append_entry(Some("[[entry]"), &entry("2026-02-28")).is_err());
}

#[test]
fn a_list_is_added_to_and_taken_from_without_touching_its_neighbours() {
    let text = "[[run]]\nname = \"left\" # bank one\npins = [\n  { what = \"joint\" }, # over the arm\n  { what = \"line\" },\n]\n";
    let mut document = Document::parse(FileKind::Build, text).unwrap();
    let run = named("run", "left");
    let pin = Written::Table(vec![("what".to_owned(), Written::text("joint"))]);
    document.push(&run, "pins", &pin).unwrap();
    let after = document.text();
    assert!(
        after.contains("{ what = \"joint\" }, # over the arm\n  { what = \"line\" },"),
        "{after}"
    );
    assert_eq!(after.matches("what = ").count(), 3, "{after}");
    document.take_out(&run, "pins", 2).unwrap();
    document.take_out(&run, "pins", 1).unwrap();
    assert!(
        document.text().contains("# over the arm"),
        "{}",
        document.text()
    );
    document.take_out(&run, "pins", 0).unwrap();
    assert!(
        !document.text().contains("pins"),
        "an empty list goes: {}",
        document.text()
    );
    assert!(document.text().contains("name = \"left\" # bank one"));
    let gone = document.take_out(&run, "pins", 0).unwrap_err();
    assert!(matches!(gone, EditError::NoList { .. }), "{gone}");
    document.push(&run, "pins", &pin).unwrap();
    assert!(
        document.text().contains("pins = [{ what = \"joint\" }]"),
        "{}",
        document.text()
    );
    let unknown = document.push(&run, "pinz", &pin).unwrap_err();
    assert!(matches!(unknown, EditError::NoKey { .. }), "{unknown}");
}
