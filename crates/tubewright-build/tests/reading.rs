//! Whole files, good and bad.

mod common;

use common::{ESTATE_BUILD, ESTATE_SHOP, ESTATE_STOCK, estate};
use tubewright_build::model::{
    Along, BodyKind, CarrierKind, EndPlace, EntryKind, ItemKind, PlaceAt, ReadingKind, RunEnd,
};
use tubewright_build::{Texts, read};

#[test]
fn everything_the_format_knows_is_read_without_a_word() {
    let read = estate();
    let words: Vec<String> = read.problems.iter().map(ToString::to_string).collect();
    assert!(words.is_empty(), "{}", words.join("\n"));
    let model = &read.model;
    let headers = |text: &str, header: &str| text.matches(&format!("\n[[{header}]]")).count();
    let build = &model.build;
    let stock = &model.stock;
    for (count, text, header) in [
        (build.marks.len(), ESTATE_BUILD, "mark"),
        (build.points.len(), ESTATE_BUILD, "point"),
        (build.setups.len(), ESTATE_BUILD, "setup"),
        (build.readings.len(), ESTATE_BUILD, "reading"),
        (build.ends.len(), ESTATE_BUILD, "end"),
        (build.carriers.len(), ESTATE_BUILD, "carrier"),
        (build.bodies.len(), ESTATE_BUILD, "body"),
        (build.components.len(), ESTATE_BUILD, "component"),
        (build.runs.len(), ESTATE_BUILD, "run"),
        (stock.tubes.len(), ESTATE_STOCK, "tube"),
        (stock.items.len(), ESTATE_STOCK, "item"),
        (stock.offers.len(), ESTATE_STOCK, "offer"),
        (stock.suppliers.len(), ESTATE_STOCK, "supplier"),
        (stock.on_hand.len(), ESTATE_STOCK, "on-hand"),
        (model.shop.entries.len(), ESTATE_SHOP, "entry"),
    ] {
        assert_eq!(count, headers(text, header), "[[{header}]]");
    }
}

#[test]
fn values_and_places_arrive_as_written() {
    let read = estate();
    let build = &read.model.build;
    let ReadingKind::Plumb { reads, .. } = &build.reading(3).unwrap().kind else {
        panic!("reading 3 is a plumb reading");
    };
    // 5 ft = 1524 mm, 10-15/16 in = 277.8125 mm.
    assert!((reads.mm() - 1801.8125).abs() < 1e-9, "{}", reads.mm());
    assert_eq!(reads.text, "5 ft 10-15/16 in");
    let ReadingKind::Offset { to, along, .. } = &build.reading(5).unwrap().kind else {
        panic!("reading 5 is an offset");
    };
    let PlaceAt::End { end, at } = &to.at else {
        panic!("it goes to an end");
    };
    assert_eq!(end, "left port");
    assert!(matches!(at, EndPlace::Rim(clock) if clock.angle().deg() == 0.0));
    assert!(matches!(along, Along::Plumb { setup } if setup == "on the lift"));
    let BodyKind::Tube { diameter, .. } = &build.body("propshaft").unwrap().kind else {
        panic!("the propshaft is a tube");
    };
    // 239 mm / π.
    assert!((diameter.mm() - 76.076).abs() < 1e-3, "{}", diameter.mm());
    let CarrierKind::Engine(motion) = &build.carrier("engine").unwrap().kind else {
        panic!("the engine carries");
    };
    assert!(motion.bump.is_none(), "what is left out stays unknown");
    assert!(matches!(
        &build.run("right front").unwrap().to,
        RunEnd::Port { component, port } if component == "X" && port.as_deref() == Some("R")
    ));
    assert!(matches!(
        &read.model.shop.entries[0].what,
        EntryKind::Chosen { pieces, starts, .. } if pieces.len() == 4 && starts.len() == 1
    ));
}

#[test]
fn the_ports_of_a_crossover_converge_and_part() {
    let read = estate();
    let item = read.model.stock.item("x-pipe 63").unwrap();
    let ItemKind::Component(part) = &item.kind else {
        panic!("a crossover is a component");
    };
    let inlet = part.inlet(Some("L")).unwrap();
    let outlet = part.outlet(Some("L")).unwrap();
    assert!(
        part.inlet(None).is_none(),
        "two inlets, so a side must be named"
    );
    // Written 60 mm to the car's left of a rearward flow, which is three o'clock looking downstream.
    assert!((inlet.at.z - 60.0).abs() < 1e-12);
    let inward = inlet.travel.vector().z;
    assert!(
        (inward + 10f64.to_radians() * 0.99493).abs() < 1e-4,
        "{inward}"
    );
    assert!((outlet.travel.vector().z + inward).abs() < 1e-12);
}

#[test]
fn spans_point_at_the_words() {
    let read = estate();
    let reading = read.model.build.reading(1).unwrap();
    let text = &ESTATE_BUILD[reading.span.range()];
    assert!(text.starts_with("[[reading]]\nnumber = 1"), "{text}");
    assert!(text.ends_with("doubt = \"dropped\""), "{text}");
    let ReadingKind::Tape { reads, .. } = &reading.kind else {
        panic!("reading 1 is a tape reading");
    };
    assert_eq!(&ESTATE_BUILD[reads.span.range()], "\"812 mm\"");
}

#[test]
fn a_folder_with_half_of_it_missing_opens() {
    let read = read(Texts {
        build: Some(ESTATE_BUILD),
        ..Texts::default()
    });
    assert!(!read.has_errors(), "{:#?}", read.problems);
    assert_eq!(read.model.build.readings.len(), 10);
    assert!(read.model.build.runs.is_empty(), "their tube is unknown");
    let route = read
        .missing
        .iter()
        .find(|missing| missing.job == 4)
        .unwrap();
    assert!(!route.lacks.is_empty());
}

#[test]
fn a_mark_stands_once_in_a_plan() {
    let shop = "format = \"tubewright-shop/1\"\n[[entry]]\non = \"2026-03-02\"\nwhat = \"chosen\"\n\
                route = \"over the axle\"\npieces = [\n\
                { run = \"left\", mark = \"L1\", kind = \"straight\", length = \"100 mm\" },\n\
                { run = \"left\", mark = \"L1\", kind = \"straight\", length = \"200 mm\" },\n]\n";
    let twice = read(Texts {
        shop: Some(shop),
        ..Texts::default()
    });
    let told: Vec<_> = twice
        .problems
        .iter()
        .filter(|problem| problem.what.contains("twice"))
        .map(|problem| (problem.line, problem.column, problem.words.as_str()))
        .collect();
    assert_eq!(told, [(8, 24, "\"L1\"")]);
}
