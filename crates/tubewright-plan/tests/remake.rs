//! What is left of a spoiled part, and which part a mark names.

use tubewright_build::document::Written;
use tubewright_build::model::{Entry, EntryKind, Model, Shop, Stock};
use tubewright_build::{Span, Texts, read};
use tubewright_geometry::{Angle, Length};
use tubewright_plan::fit::{Steel, cut_entry};
use tubewright_plan::stock::{LeftoverError, before_spoiled, leftover, part_of};
use tubewright_stock::{
    CutPart, CutStock, PartPlace, Sawn, Serves, Source, StockEnd, StockPiece, StockShape, TubeSpec,
};

fn stock() -> Stock {
    let text = "format = \"tubewright-stock/1\"\ncurrency = \"EUR\"\n\n[[tube]]\nname = \"57 304\"\nod = \"57 mm\"\nwall = \"1.5 mm\"\nmaterial = \"304\"\n";
    let found = read(Texts {
        build: None,
        stock: Some(text),
        shop: None,
    });
    assert!(found.problems.is_empty(), "{:?}", found.problems);
    found.model.stock
}

fn cut(od_mm: f64, shape: StockShape, parts: Vec<CutPart>) -> CutStock {
    CutStock {
        source: Source::Bought("an item".to_owned()),
        number: 1,
        stock: StockPiece {
            tube: TubeSpec {
                od: Length::from_mm(od_mm),
                wall: Length::from_mm(1.5),
                material: "304".to_owned(),
            },
            shape,
        },
        trimmed: Length::ZERO,
        parts,
    }
}

fn part(marks: &[&str], place: PartPlace) -> CutPart {
    CutPart {
        serves: marks
            .iter()
            .map(|mark| Serves {
                mark: (*mark).to_owned(),
                length: Length::from_mm(10.0),
            })
            .collect(),
        place,
        is_reversed: false,
    }
}

fn bar(length_mm: f64) -> PartPlace {
    PartPlace::Bar {
        start: Length::ZERO,
        length: Length::from_mm(length_mm),
    }
}

fn bend() -> StockShape {
    StockShape::Bend {
        angle: Angle::from_deg(90.0),
        clr: Length::from_mm(85.5),
        leg_a: Length::from_mm(100.0),
        leg_b: Length::from_mm(100.0),
    }
}

fn arc(sweep_deg: f64) -> PartPlace {
    PartPlace::Arc {
        start: Angle::ZERO,
        sweep: Angle::from_deg(sweep_deg),
        keeps_a: Length::from_mm(40.0),
        keeps_b: Length::ZERO,
    }
}

fn text_of(fields: &[(&str, Written)], key: &str) -> Option<String> {
    fields.iter().find_map(|(known, value)| match value {
        Written::Text(text) if *known == key => Some(text.clone()),
        _ => None,
    })
}

#[test]
fn a_straight_and_a_leg_leave_a_length_and_an_arc_an_angle() {
    let leg = PartPlace::Leg {
        end: StockEnd::A,
        start: Length::ZERO,
        length: Length::from_mm(80.0),
    };
    let straight = StockShape::Straight {
        length: Length::from_mm(1000.0),
    };
    for (shape, place, left, kind, key) in [
        (straight, bar(300.0), "299 mm", "straight", "length"),
        (bend(), leg, "3 in", "straight", "length"),
        (bend(), arc(40.0), "40 deg", "bend", "angle"),
    ] {
        let whole = cut(57.0, shape, vec![part(&["L1"], place)]);
        let found = leftover(&stock(), (&whole, &whole.parts[0]), "L1", left).unwrap();
        assert_eq!(found.name, "rest of L1");
        assert_eq!(text_of(&found.fields, "kind").as_deref(), Some(kind));
        assert_eq!(text_of(&found.fields, key).as_deref(), Some(left));
        assert_eq!(text_of(&found.fields, "tube").as_deref(), Some("57 304"));
    }
}

#[test]
fn what_cannot_be_left_is_refused() {
    let stock = stock();
    let whole = cut(57.0, bend(), vec![part(&["L1"], arc(40.0))]);
    let of = |left: &str| leftover(&stock, (&whole, &whole.parts[0]), "L1", left);
    assert!(matches!(of("40.1 deg"), Err(LeftoverError::TooMuch { .. })));
    for no_size in ["30 mm", "0 deg", "-5 deg", "", "forty"] {
        assert!(
            matches!(of(no_size), Err(LeftoverError::NoSize { .. })),
            "{no_size}: {:?}",
            of(no_size)
        );
    }
    let unknown = cut(60.3, bend(), vec![part(&["L1"], arc(40.0))]);
    assert!(matches!(
        leftover(&stock, (&unknown, &unknown.parts[0]), "L1", "9 deg"),
        Err(LeftoverError::NoTube { .. })
    ));
}

#[test]
fn a_mark_of_several_parts_names_the_one_that_is_nothing_else() {
    let cuts = [
        cut(57.0, bend(), vec![part(&["E2", "E3", "E4"], arc(40.0))]),
        cut(57.0, bend(), vec![part(&["E4", "E5"], arc(40.0))]),
    ];
    let marks = |cuts: &[CutStock], mark: &str| -> Vec<String> {
        let (_, part) = part_of(cuts, mark).unwrap();
        part.serves.iter().map(|it| it.mark.clone()).collect()
    };
    assert_eq!(marks(&cuts, "E5"), ["E4", "E5"]);
    assert_eq!(marks(&cuts, "E4"), ["E2", "E3", "E4"]);
    let [one, two] = cuts;
    let between = cut(57.0, bend(), vec![part(&["E4"], bar(300.0))]);
    assert_eq!(marks(&[one, two, between], "E4"), ["E4"]);
    assert!(part_of(&[], "E4").is_none());
}

/// A record of these cuts and spoiled pieces: E2 lies in one part with E4, which is also a part alone.
fn record(entries: &[&str]) -> Shop {
    let cut = |marks: &[&str]| {
        cut_entry(&Sawn {
            from: "an item".to_owned(),
            of: Some((1, part(marks, bar(300.0)))),
            mark: marks[0].to_owned(),
            is_good: true,
        })
    };
    let entry = |words: &&str| Entry {
        on: "2026-05-01".to_owned(),
        what: match *words {
            "cut E2" => cut(&["E2", "E4"]),
            "cut E4" => cut(&["E4"]),
            spoiled => EntryKind::Spoiled {
                piece: spoiled.trim_start_matches("spoiled ").to_owned(),
            },
        },
        note: None,
        span: Span::none(),
    };
    Shop {
        entries: entries.iter().map(entry).collect(),
    }
}

#[test]
fn what_is_spoiled_is_to_be_made_again_until_it_is_cut_again() {
    let to_remake = |entries: &[&str]| -> Vec<String> {
        let steel = Steel::of(&record(entries));
        steel.to_remake().into_iter().map(str::to_owned).collect()
    };
    assert!(to_remake(&["cut E2"]).is_empty());
    assert_eq!(to_remake(&["cut E2", "spoiled E2"]), ["E2"]);
    assert_eq!(to_remake(&["cut E2", "spoiled E2", "spoiled E2"]), ["E2"]);
    assert!(to_remake(&["cut E2", "spoiled E2", "cut E2"]).is_empty());
    assert_eq!(
        to_remake(&["cut E2", "spoiled E2", "cut E2", "spoiled E2"]),
        ["E2"]
    );
}

#[test]
fn of_two_parts_of_a_straight_the_one_that_was_ticked_by_the_mark_is_spoiled() {
    // Both are E4 in part; the one that was sawn last is not the one that was ticked E4.
    let steel = Steel::of(&record(&["cut E4", "cut E2", "spoiled E4"]));
    let good: Vec<(&str, bool)> = steel
        .record
        .sawn
        .iter()
        .map(|sawn| (sawn.mark.as_str(), sawn.is_good))
        .collect();
    assert_eq!(good, [("E4", false), ("E2", true)]);
}

#[test]
fn before_it_was_spoiled_it_was_good() {
    let shop = record(&["cut E2", "spoiled E2", "cut E2", "spoiled E2"]);
    let model = Model {
        shop,
        ..Model::default()
    };
    let before = before_spoiled(&model, "E2").unwrap();
    assert!(Steel::of(&before.shop).is_cut("E2"));
    assert_eq!(before.shop.entries.len(), 3);
    assert!(before_spoiled(&model, "E9").is_none());
}
