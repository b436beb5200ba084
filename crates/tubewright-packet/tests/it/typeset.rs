//! The PDF.

use std::fmt::Write;

use tubewright_packet::{
    Block, Body, Column, Packet, PacketPaper, PageLayout, Picture, Sheet, SheetKind, Table,
    TypesetError, layout, typeset,
};

/// Nothing is printed nearer to the edge of the page than this, mm: what a printer at home leaves white
/// (common practice, no source).
const WHITE_MM: f64 = 6.0;

/// Every text and drawing of the packet with one of everything, to the millimetre, on both papers. Looked
/// at and approved; a page that flows otherwise is seen here.
#[test]
fn everything_stands_where_it_was_approved() {
    let mut out = String::new();
    for (name, paper) in [
        ("A4", PacketPaper::A4),
        ("US Letter", PacketPaper::UsLetter),
    ] {
        for (number, page) in layout(&crate::one_of_everything(paper))
            .unwrap()
            .iter()
            .enumerate()
        {
            let [wide, high] = page.size_mm;
            writeln!(out, "{name}, page {}, {wide:.0} × {high:.0} mm", number + 1).unwrap();
            for item in &page.placed {
                let text = item.text.as_deref().unwrap_or("(drawing)");
                let (x, y, width) = (item.left_mm, item.top_mm, item.width_mm);
                writeln!(out, "{x:4.0} {y:4.0} {width:4.0}  {text}").unwrap();
            }
        }
    }
    insta::assert_snapshot!(out);
}

/// Nothing runs off the paper, and no two texts are printed over each other.
#[test]
fn nothing_is_off_the_paper_or_over_something_else() {
    for paper in [PacketPaper::A4, PacketPaper::UsLetter] {
        for page in layout(&crate::one_of_everything(paper)).unwrap() {
            let [wide, high] = page.size_mm;
            for item in &page.placed {
                let right = item.left_mm + item.width_mm;
                if item.text.is_none() {
                    let low = item.top_mm + item.height_mm;
                    assert!(item.left_mm >= -0.01 && right <= wide + 0.01, "{item:?}");
                    assert!(item.top_mm >= -0.01 && low <= high + 0.01, "{item:?}");
                    continue;
                }
                assert!(
                    item.left_mm >= WHITE_MM && right <= wide - WHITE_MM,
                    "{item:?}"
                );
                assert!(
                    item.top_mm >= WHITE_MM && item.top_mm <= high - WHITE_MM,
                    "{item:?}"
                );
            }
            let texts: Vec<_> = page
                .placed
                .iter()
                .filter(|item| item.text.is_some())
                .collect();
            for (k, a) in texts.iter().enumerate() {
                for b in &texts[k + 1..] {
                    // Half of the face's size is surely within the letters.
                    let beside = a.left_mm + a.width_mm <= b.left_mm + 0.2
                        || b.left_mm + b.width_mm <= a.left_mm + 0.2;
                    let apart = (a.top_mm - b.top_mm).abs() >= 0.5 * a.height_mm.min(b.height_mm);
                    assert!(beside || apart, "{a:?} over {b:?}");
                }
            }
        }
    }
}

#[test]
fn the_same_packet_gives_the_same_bytes() {
    for paper in [PacketPaper::A4, PacketPaper::UsLetter] {
        let packet = crate::one_of_everything(paper);
        let first = typeset(&packet).unwrap();
        assert!(first.starts_with(b"%PDF-"));
        assert!(first == typeset(&packet).unwrap(), "two runs differ");
    }
}

#[test]
fn a_change_of_the_date_changes_the_bytes() {
    let packet = crate::one_of_everything(PacketPaper::A4);
    let mut later = packet.clone();
    later.stamp.date = "2026-03-15".to_owned();
    assert!(typeset(&packet).unwrap() != typeset(&later).unwrap());
}

#[test]
fn a_drawing_that_is_none_is_an_error_in_the_engines_words() {
    let mut packet = crate::one_of_everything(PacketPaper::A4);
    packet.sheets[0].body = Body::Made {
        blocks: vec![Block::Picture {
            picture: Picture {
                svg: "no drawing".to_owned(),
                width_mm: 10.0,
                height_mm: 10.0,
                words: String::new(),
            },
        }],
    };
    assert!(matches!(typeset(&packet), Err(TypesetError::Engine(_))));
}

/// Pages on which a text that begins so stands.
fn pages_with(pages: &[PageLayout], begins: &str) -> Vec<usize> {
    let holds = |page: &PageLayout| {
        page.placed
            .iter()
            .filter_map(|item| item.text.as_deref())
            .any(|text| text.contains(begins))
    };
    (1..)
        .zip(pages)
        .filter(|(_, page)| holds(page))
        .map(|(number, _)| number)
        .collect()
}

fn packet_of(paper: PacketPaper, sheets: Vec<(bool, Vec<Block>)>) -> Packet {
    let mut packet = crate::one_of_everything(paper);
    packet.sheets = sheets
        .into_iter()
        .enumerate()
        .map(|(number, (is_below, blocks))| Sheet {
            kind: SheetKind::Cut,
            title: format!("Sheet{number}"),
            is_lying: false,
            is_below,
            body: Body::Made { blocks },
        })
        .collect();
    packet
}

fn words(lines: usize) -> Vec<Block> {
    let text = "filler".to_owned();
    vec![Block::Words { text }; lines]
}

fn square(width_mm: f64, height_mm: f64) -> Picture {
    Picture {
        svg: format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width_mm}mm\" height=\"{height_mm}mm\" \
             viewBox=\"0 0 {width_mm} {height_mm}\"><path d=\"M0 0L10 10\" stroke=\"#000\"/></svg>"
        ),
        width_mm,
        height_mm,
        words: "a square".to_owned(),
    }
}

/// Every row stands whole on one page, whatever the number of its lines.
#[test]
fn no_row_is_parted_by_the_foot_of_a_page() {
    let mut table = Table::new("rows", vec![Column::figures("no."), Column::wide("words")]);
    for row in 0..80 {
        let word = format!("row{row}x ");
        table.row([row.to_string(), word.repeat(20 + 7 * (row % 5))]);
    }
    for paper in [PacketPaper::A4, PacketPaper::UsLetter] {
        let packet = packet_of(
            paper,
            vec![(
                false,
                vec![Block::Table {
                    table: table.clone(),
                }],
            )],
        );
        let pages = layout(&packet).unwrap();
        assert!(pages.len() > 2);
        for row in 0..80 {
            assert_eq!(
                pages_with(&pages, &format!("row{row}x")).len(),
                1,
                "row {row}"
            );
        }
        assert_eq!(
            pages_with(&pages, "no.").len(),
            pages.len(),
            "the head is said again"
        );
    }
}

/// Drawings with words are made smaller until no line goes over to a page of its own, and larger where there is
/// room; where they would be too small to read they go over as they are.
#[test]
fn drawings_share_their_page_with_every_word() {
    let of = |lines: usize| {
        let mut blocks = vec![
            Block::Pictures {
                pictures: vec![square(150.0, 70.0)],
            },
            Block::Pictures {
                pictures: vec![square(60.0, 70.0), square(80.0, 60.0)],
            },
        ];
        blocks.extend(words(lines));
        blocks.push(Block::Words {
            text: "the last line".to_owned(),
        });
        layout(&packet_of(PacketPaper::A4, vec![(false, blocks)])).unwrap()
    };
    let high = |pages: &[PageLayout]| -> f64 {
        let items = pages.iter().flat_map(|page| &page.placed);
        items
            .filter(|item| item.text.is_none())
            .map(|item| item.height_mm)
            .fold(0.0, f64::max)
    };
    let (few, some, many) = (of(2), of(21), of(60));
    assert_eq!((few.len(), some.len()), (1, 1));
    assert!(high(&few) > 75.0, "{} mm with room for more", high(&few));
    assert!(
        high(&some) < 70.0 && high(&some) >= 0.75 * 70.0,
        "{} mm",
        high(&some)
    );
    assert!(many.len() > 1);
    assert!((high(&many) - 70.0).abs() < 0.1, "{} mm", high(&many));
}

/// A sheet stands below the one before it when the page holds it whole, and else begins a page.
#[test]
fn a_small_sheet_stands_below_the_one_before_it() {
    let pages = layout(&packet_of(
        PacketPaper::A4,
        vec![
            (false, words(10)),
            (true, words(8)),
            (true, words(30)),
            (true, words(90)),
            (false, words(1)),
        ],
    ))
    .unwrap();
    let on = |number: usize| {
        let heading = format!("Sheet{number}");
        pages_with(&pages, &heading).first().copied()
    };
    assert_eq!((on(0), on(1)), (Some(1), Some(1)));
    assert_eq!(on(2), Some(2), "30 lines find no room below");
    assert_eq!(on(3), Some(3), "what is longer than a page begins one");
    assert!(on(4) > on(3));
}

/// A few rows that would stand alone on a page of their own are drawn in; more of them stay as they are.
#[test]
fn no_page_is_begun_for_a_few_rows() {
    let of = |rows: usize| {
        let mut table = Table::new("rows", vec![Column::figures("no."), Column::wide("words")]);
        for row in 0..rows {
            table.row([row.to_string(), "words".to_owned()]);
        }
        let blocks = vec![Block::Table { table }];
        layout(&packet_of(PacketPaper::A4, vec![(false, blocks)])).unwrap()
    };
    let apart = |page: &PageLayout| {
        let line = |word: &str| {
            let mut items = page.placed.iter();
            items
                .find(|item| item.text.as_deref() == Some(word))
                .map(|item| item.top_mm)
        };
        line("2").unwrap() - line("1").unwrap()
    };
    let (usual, drawn_in, long) = (of(40), of(56), of(75));
    assert_eq!((usual.len(), drawn_in.len(), long.len()), (1, 1, 2));
    assert!(apart(&drawn_in[0]) < apart(&usual[0]) - 0.3);
    assert!((apart(&long[0]) - apart(&usual[0])).abs() < 0.01);
}
