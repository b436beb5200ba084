//! Sizes of pages.

use tubewright_packet::{PacketPaper, template_data};

#[test]
fn us_letter_is_eight_and_a_half_by_eleven_inches() {
    let [width, height] = PacketPaper::UsLetter.standing_mm();
    assert!((width - 8.5 * 25.4).abs() < 1e-9 && (height - 11.0 * 25.4).abs() < 1e-9);
}

#[test]
fn the_page_design_reads_every_word_as_it_is() {
    let data = template_data(&crate::one_of_everything(PacketPaper::UsLetter));
    let value: serde_json::Value = serde_json::from_str(&data).unwrap();
    assert_eq!(value["paper"], "us-letter");
    assert_eq!(value["sheets"][1]["body"]["body"], "not-made");
    assert_eq!(
        value["sheets"][0]["body"]["blocks"][0]["text"],
        "Cuts & faces"
    );
}
