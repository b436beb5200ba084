//! Cuts through a stock bend.

use tubewright_geometry::{Angle, Length};
use tubewright_stock::{arc_reach, kerf_angles, set_back};

use crate::data::check;

const DATA: &str = include_str!("../data/bend_cuts.toml");

fn mm(v: f64) -> Length {
    Length::from_mm(v)
}

#[test]
fn kerf_angle_loss() {
    let check = check(DATA, "kerf-angle-loss");
    let [clr, od, kerf] = ["clr_mm", "od_mm", "kerf_mm"].map(|key| mm(check.number(key)));
    let angles = kerf_angles(clr, od, kerf).unwrap();
    for (key, got) in [
        ("nominal_deg", angles.nominal),
        ("cl_deg", angles.centre_line),
        ("extrados_deg", angles.outside),
        ("intrados_deg", angles.inside),
        ("out_of_square_deg", angles.centre_line),
    ] {
        check.assert_near(key, got.deg(), check.expected_number(key), 1e-6);
    }
}

#[test]
fn cut_marks_on_bend() {
    let check = check(DATA, "cut-marks-on-bend");
    let (clr, od) = (mm(check.number("clr_mm")), mm(check.number("od_mm")));
    let keep = Angle::from_deg(check.number("keep_deg"));
    let reach = arc_reach(clr, od, keep);
    for (key, got) in [
        ("cl_mm", reach.centre_line),
        ("extrados_mm", reach.outside),
        ("intrados_mm", reach.inside),
        ("setback_kept_piece_mm", set_back(clr, keep)),
    ] {
        check.assert_near(key, got.mm(), check.expected_number(key), 1e-6);
    }
}

#[test]
fn bend_partition_with_kerf() {
    let check = check(DATA, "bend-partition-with-kerf");
    let clr = mm(check.number("clr_mm"));
    // The nominal loss does not depend on the tube: any that the bend can have will do.
    let kerf = kerf_angles(clr, mm(63.5), mm(check.number("kerf_mm")))
        .unwrap()
        .nominal
        .deg();
    let pieces = check.numbers("pieces_deg");
    let needed = pieces.iter().sum::<f64>() + (pieces.len() - 1) as f64 * kerf;
    check.assert_near(
        "kerf",
        kerf,
        check.expected_number("kerf_deg_nominal"),
        1e-6,
    );
    check.assert_near("needed", needed, check.expected_number("needed_deg"), 1e-6);
    let left = check.number("stock_deg") - needed;
    check.assert_near("left", left, check.expected_number("left_deg"), 1e-6);
}
