//! Typesetting a packet as large as that of a car with two banks.
//!
//! Work: 40 sheets, each with a heading, figures, a table of 20 rows of 6 cells, seven steps and a
//! drawing of 300 lines; about 60 pages.

use tubewright_packet::{
    Block, Body, Column, Figure, Packet, PacketPaper, Picture, Sheet, SheetKind, Stamp, Step,
    Table, typeset,
};

fn main() {
    divan::main();
}

fn drawing() -> String {
    let mut svg = String::from(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"180mm\" height=\"90mm\" viewBox=\"0 0 180 90\">",
    );
    for i in 0..300 {
        svg.push_str(&format!(
            "<path d=\"M{} 0L{} 90\" stroke=\"#000\" stroke-width=\"0.2\"/>",
            f64::from(i) * 0.6,
            180.0 - f64::from(i) * 0.6
        ));
    }
    svg.push_str("</svg>");
    svg
}

fn packet() -> Packet {
    let mut table = Table::new(
        "cuts",
        vec![
            Column::boxes(""),
            Column::figures("cut").big(),
            Column::words("from end"),
            Column::figures("outside").big(),
            Column::figures("inside").big(),
            Column::wide("face of"),
        ],
    );
    for row in 0..20 {
        table.row([
            String::new(),
            row.to_string(),
            "A".to_owned(),
            "189.5".to_owned(),
            "144.8".to_owned(),
            "L8+L9 and R10".to_owned(),
        ]);
    }
    let sheet = |number: usize| Sheet {
        kind: SheetKind::Cut,
        title: format!("Cut card {number}"),
        is_lying: false,
        is_below: false,
        body: Body::Made {
            blocks: vec![
                Block::Figures {
                    figures: vec![Figure {
                        value: number.to_string(),
                        what: "cuts".to_owned(),
                    }],
                },
                Block::Picture {
                    picture: Picture {
                        svg: drawing(),
                        width_mm: 180.0,
                        height_mm: 90.0,
                        words: "cuts".to_owned(),
                    },
                },
                Block::Table {
                    table: table.clone(),
                },
                Block::Steps {
                    steps: vec![
                        Step {
                            what: "Mark".to_owned(),
                            how: "before the first cut".to_owned(),
                        };
                        7
                    ],
                },
            ],
        },
    };
    Packet {
        stamp: Stamp {
            build: "bench".to_owned(),
            plan_hash: "0".to_owned(),
            date: "2026-03-14".to_owned(),
            units: "mm".to_owned(),
            note: None,
        },
        paper: PacketPaper::A4,
        sheets: (1..=40).map(sheet).collect(),
    }
}

#[divan::bench(sample_count = 10)]
fn forty_sheets(bencher: divan::Bencher<'_, '_>) {
    let packet = packet();
    bencher.bench(|| typeset(&packet).map(|bytes| bytes.len()));
}
