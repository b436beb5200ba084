//! The PDF.

use tubewright_packet::{Block, Body, PacketPaper, Picture, TypesetError, typeset};

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
