//! Lists for other programs.

use tubewright_packet::{PacketPaper, lists_of, to_csv, to_json};

#[test]
fn tables_of_one_name_become_one_list_with_all_their_columns() {
    let packet = crate::one_of_everything(PacketPaper::A4);
    let lists = lists_of(&packet);
    assert_eq!(lists.len(), 1);
    assert_eq!(
        lists[0].heads,
        ["sheet", "group", "cut", "face of", "length, mm"]
    );
    // The box to tick is no column; the heading row is the group of the rows below it.
    assert_eq!(
        lists[0].rows[0],
        ["Cut card 1", "bend 57 90", "1", "L8+L9, \"first\"", ""]
    );
    assert_eq!(lists[0].rows[2], ["Cut card 1", "", "", "", "231.0"]);
}

#[test]
fn csv_quotes_what_would_break_a_row() {
    let packet = crate::one_of_everything(PacketPaper::A4);
    let csv = to_csv(&lists_of(&packet)[0]);
    let lines: Vec<&str> = csv.split("\r\n").collect();
    assert_eq!(lines[0], "sheet,group,cut,face of,\"length, mm\"");
    assert_eq!(
        lines[1],
        "Cut card 1,bend 57 90,1,\"L8+L9, \"\"first\"\"\","
    );
    assert_eq!(
        lines.len(),
        5,
        "three rows, the heads, and the end of the last line"
    );
}

#[test]
fn json_holds_the_stamp_and_only_cells_that_say_something() {
    let packet = crate::one_of_everything(PacketPaper::A4);
    let value: serde_json::Value = serde_json::from_str(&to_json(&packet)).unwrap();
    assert_eq!(value["plan"], "3f9c07d2a1");
    assert_eq!(value["lists"]["cuts"][2]["length, mm"], "231.0");
    assert!(value["lists"]["cuts"][2].get("cut").is_none());
}
