//! The packet as values, as lists, and typeset.

mod lists;
mod paper;
#[cfg(feature = "typeset")]
mod typeset;

use tubewright_packet::{
    Block, Body, Column, Figure, Packet, PacketPaper, Picture, Sheet, SheetKind, Stamp, Step, Table,
};

/// A drawing as large as a lying page.
fn whole_page(paper: PacketPaper) -> String {
    let [high, wide] = paper.standing_mm();
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{wide}mm\" height=\"{high}mm\" \
         viewBox=\"0 0 {wide} {high}\"><path d=\"M20 30L120 30\" stroke=\"#000\" \
         stroke-width=\"0.3\"/></svg>"
    )
}

/// A packet with one of everything.
pub(crate) fn one_of_everything(paper: PacketPaper) -> Packet {
    let mut cuts = Table::new(
        "cuts",
        vec![
            Column::boxes(""),
            Column::figures("cut").big(),
            Column::wide("face of"),
        ],
    );
    cuts.group("bend 57 90");
    cuts.row([String::new(), "1".to_owned(), "L8+L9, \"first\"".to_owned()]);
    cuts.strong_row([String::new(), "2".to_owned(), "R10".to_owned()]);
    cuts.note("both by hand");
    let mut lengths = Table::new("cuts", vec![Column::figures("length, mm")]);
    lengths.row(["231.0".to_owned()]);
    let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"100mm\" height=\"20mm\" \
               viewBox=\"0 0 100 20\"><path d=\"M0 10L100 10\" stroke=\"#000\" \
               stroke-width=\"0.3\"/></svg>";
    let blocks = vec![
        Block::Heading {
            text: "Cuts & faces".to_owned(),
        },
        Block::Words {
            text: "Typesetter's signs stay words: #let x = $1$ *a* _b_ <c> @d \\ [e]".to_owned(),
        },
        Block::Figures {
            figures: vec![Figure {
                value: "1.6 mm".to_owned(),
                what: "kerf".to_owned(),
            }],
        },
        Block::Steps {
            steps: vec![Step {
                what: "Mark".to_owned(),
                how: "before the first cut".to_owned(),
            }],
        },
        Block::Items {
            lines: vec!["one".to_owned()],
        },
        Block::Table { table: cuts },
        Block::Picture {
            picture: Picture {
                svg: svg.to_owned(),
                width_mm: 100.0,
                height_mm: 20.0,
                words: "a line".to_owned(),
            },
        },
        Block::Caution {
            text: "Sharp".to_owned(),
        },
        Block::NotMade {
            what: "hangers".to_owned(),
            why: "not planned".to_owned(),
        },
        Block::NewPage,
        Block::Contents,
        Block::Table { table: lengths },
    ];
    let sheet = |kind, title: &str, body| Sheet {
        kind,
        title: title.to_owned(),
        is_lying: false,
        is_below: false,
        body,
    };
    Packet {
        stamp: Stamp {
            build: "Estate <V6> #1".to_owned(),
            plan_hash: "3f9c07d2a1".to_owned(),
            date: "2026-03-14".to_owned(),
            units: "mm and degrees".to_owned(),
            note: Some("Invented.".to_owned()),
        },
        paper,
        sheets: vec![
            sheet(SheetKind::Cut, "Cut card 1", Body::Made { blocks }),
            sheet(
                SheetKind::Fit,
                "Fit",
                Body::NotMade {
                    why: "no route".to_owned(),
                    instead: "route first".to_owned(),
                },
            ),
            Sheet {
                is_lying: true,
                is_below: false,
                ..sheet(
                    SheetKind::Template,
                    "Template",
                    Body::TrueScale {
                        svg: whole_page(paper),
                    },
                )
            },
        ],
    }
}
