//! The PDF.

use std::fmt::Write;

use tubewright_packet::{Block, Body, PacketPaper, Picture, TypesetError, layout, typeset};

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
