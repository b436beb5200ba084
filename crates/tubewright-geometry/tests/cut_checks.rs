//! Cutting a stock bend and what bending did to it: each published value under its id.
#![allow(clippy::expect_used, reason = "helpers of tests")]

mod common;

use common::{check, number, numbers};
use proptest::prelude::*;
use tubewright_geometry::cut::{
    CutPlace, PartitionError, Rest, StockBend, clock_from_round_outside,
    clockwise_round_outside_mm, kerf_loss, nearest_round_outside_mm, ovality_within,
    partition_bend, prebend_wall_factor, thinning,
};
use tubewright_geometry::{Frame, math, setback_mm};

const DATA: &str = include_str!("data/fabrication.toml");

#[test]
fn kerf_angle_loss() {
    let c = check(DATA, "kerf-angle-loss");
    let loss = kerf_loss(c.number("clr_mm"), c.number("od_mm"), c.number("kerf_mm")).expect("fits");
    for (key, got) in [
        ("nominal_deg", loss.nominal_rad),
        ("cl_deg", loss.centre_line_rad),
        ("extrados_deg", loss.extrados_rad),
        ("intrados_deg", loss.intrados_rad),
        ("out_of_square_deg", loss.out_of_square_rad),
    ] {
        c.close(key, got.to_degrees(), number(c.expected_of(key)));
    }
    assert_eq!(kerf_loss(40.0, 76.0, 3.0), None);
}

#[test]
fn cut_marks_on_bend() {
    let c = check(DATA, "cut-marks-on-bend");
    let keep = c.number("keep_deg").to_radians();
    let stock = StockBend {
        od_mm: c.number("od_mm"),
        clr_mm: c.number("clr_mm"),
        bend_rad: 90.0_f64.to_radians(),
        near_leg_mm: 0.0,
        far_leg_mm: 0.0,
    };
    let m = stock.marks_from_tangent(keep);
    c.close("cl", m.centre_line_mm, number(c.expected_of("cl_mm")));
    c.close(
        "outside",
        m.outside_mm,
        number(c.expected_of("extrados_mm")),
    );
    c.close("inside", m.inside_mm, number(c.expected_of("intrados_mm")));
    let setback = setback_mm(stock.clr_mm, keep);
    c.close(
        "set-back",
        setback,
        number(c.expected_of("setback_kept_piece_mm")),
    );
}

#[test]
fn bend_partition_with_kerf() {
    let c = check(DATA, "bend-partition-with-kerf");
    let pieces: Vec<f64> = c
        .numbers("pieces_deg")
        .iter()
        .map(|a| a.to_radians())
        .collect();
    let kerf = c.number("kerf_mm") / c.number("clr_mm");
    let stock = c.number("stock_deg").to_radians();
    let found = partition_bend(stock, &pieces, kerf, 2, Rest::Scrap).expect("sound");
    c.close(
        "kerf",
        kerf.to_degrees(),
        number(c.expected_of("kerf_deg_nominal")),
    );
    c.close(
        "needed",
        found.needed_rad.to_degrees(),
        number(c.expected_of("needed_deg")),
    );
    c.close(
        "left",
        found.left_rad.to_degrees(),
        number(c.expected_of("left_deg")),
    );
    assert_eq!(Some(found.fits), c.expected_of("fits").as_bool());
    assert_eq!(found.kerfs, 2);
    // The rest kept costs a third cut.
    let kept = partition_bend(stock, &pieces, kerf, 0, Rest::Kept).expect("sound");
    c.close("rest", found.left_rad - kept.left_rad, kerf);
    assert_eq!(
        partition_bend(stock, &pieces, kerf, 3, Rest::Scrap),
        Err(PartitionError::Legs { asked: 3 })
    );
}

#[test]
fn thinning_geometric() {
    let c = check(DATA, "thinning-geometric");
    for (i, ratio) in c.numbers("ratio_clr_over_od").into_iter().enumerate() {
        let t = thinning(ratio * 60.0, 60.0);
        let expected = |key: &str| numbers(c.expected_of(key))[i];
        c.close("strain", t.outer_strain, expected("outer_strain"));
        c.close(
            "thinnest",
            t.thinnest_ratio,
            expected("wall_plane_strain_ratio"),
        );
        c.close(
            "shared",
            t.shared_ratio,
            expected("wall_shared_strain_ratio"),
        );
    }
}

#[test]
fn b311_prebend_wall() {
    let c = check(DATA, "b311-prebend-wall");
    let got: Vec<f64> = c
        .numbers("bend_radius_in_diameters")
        .into_iter()
        .map(|r| prebend_wall_factor(r).expect("in the table"))
        .collect();
    c.all_near("factor", &got, &numbers(c.expected()), 1e-12);
    assert_eq!(prebend_wall_factor(1.5), None);
    let between = prebend_wall_factor(3.5).expect("in the table");
    c.near("between", between, 1.195, 1e-12);
}

#[test]
fn ovality_limit() {
    let c = check(DATA, "ovality-limit");
    let found = ovality_within(
        c.number("d_max_mm"),
        c.number("d_min_mm"),
        c.number("d_nominal_mm"),
        c.number("limit_pct"),
    );
    c.close(
        "ovality",
        found.ovality_percent,
        number(c.expected_of("ovality_pct")),
    );
    assert_eq!(Some(found.within), c.expected_of("ok").as_bool());
}

fn stock() -> impl Strategy<Value = StockBend> {
    (
        30.0..90.0_f64,
        1.0..2.0_f64,
        0.2..3.0_f64,
        0.0..200.0_f64,
        0.0..200.0_f64,
    )
        .prop_map(
            |(od_mm, ratio, bend_rad, near_leg_mm, far_leg_mm)| StockBend {
                od_mm,
                clr_mm: od_mm * ratio,
                bend_rad,
                near_leg_mm,
                far_leg_mm,
            },
        )
}

proptest! {
    #[test]
    fn marks_from_both_ends_make_the_whole(stock in stock(), t in 0.0..1.0_f64) {
        let whole = stock.whole_length();
        let place = stock.place_along(whole.centre_line_mm * t).expect("on the item");
        let near = stock.marks_from_end(place).expect("on the item");
        let far = stock.marks_from_far_end(place).expect("on the item");
        prop_assert!((near.centre_line_mm - whole.centre_line_mm * t).abs() < 1e-9);
        prop_assert!((near.outside_mm + far.outside_mm - whole.outside_mm).abs() < 1e-9);
        prop_assert!((near.inside_mm + far.inside_mm - whole.inside_mm).abs() < 1e-9);
        prop_assert!(near.inside_mm <= near.side_mm + 1e-12 && near.side_mm <= near.outside_mm + 1e-12);
        // The far end of the turned-round item is its near end.
        let turned = StockBend { near_leg_mm: stock.far_leg_mm, far_leg_mm: stock.near_leg_mm, ..stock };
        let back = turned.place_along(whole.centre_line_mm * (1.0 - t)).expect("on the item");
        let again = turned.marks_from_end(back).expect("on the item");
        prop_assert!((again.outside_mm - far.outside_mm).abs() < 1e-9);
    }

    #[test]
    fn a_tape_along_outside_inside_and_side_reads_the_marks(stock in stock(), t in 0.0..1.0_f64) {
        // The tape is followed in small steps along a line on the tube's surface, by the frames that
        // carry the centre line: nothing of the closed form is used.
        const STEPS: i32 = 4000;
        let along = stock.whole_length().centre_line_mm * t;
        let place = stock.place_along(along).expect("on the item");
        let marks = stock.marks_from_end(place).expect("on the item");
        let arc_mm = stock.clr_mm * stock.bend_rad;
        let frame_at = |at: f64| {
            let in_arc = (at - stock.near_leg_mm).clamp(0.0, arc_mm);
            Frame::IDENTITY
                .advanced(at.min(stock.near_leg_mm))
                .bent(in_arc / stock.clr_mm, stock.clr_mm)
                .advanced((at - stock.near_leg_mm - arc_mm).max(0.0))
        };
        // Twelve o'clock is toward the centre of the bend: the inside.
        for (clock, mark) in [
            (0.0, marks.inside_mm),
            (math::PI, marks.outside_mm),
            (math::FRAC_PI_2, marks.side_mm),
            (-math::FRAC_PI_2, marks.side_mm),
        ] {
            let on_surface = |at: f64| {
                let frame = frame_at(at);
                frame.origin + frame.rolled(clock).twelve() * (0.5 * stock.od_mm)
            };
            let read: f64 = (0..STEPS)
                .map(|i| {
                    let at = |i: i32| along * f64::from(i) / f64::from(STEPS);
                    on_surface(at(i)).distance(on_surface(at(i + 1)))
                })
                .sum();
            prop_assert!((read - mark).abs() < 1e-3, "clock {clock}: tape {read}, mark {mark}");
        }
    }

    #[test]
    fn a_cut_off_the_item_is_refused(stock in stock(), past in 1.0..100.0_f64) {
        let far = CutPlace::FarLeg { from_tangent_mm: stock.far_leg_mm + past };
        prop_assert!(stock.marks_from_end(far).is_err());
        let bend = CutPlace::Bend { from_tangent_rad: stock.bend_rad + past };
        prop_assert!(stock.marks_from_end(bend).is_err());
        let before = CutPlace::NearLeg { from_end_mm: -past };
        prop_assert!(stock.marks_from_end(before).is_err());
    }

    #[test]
    fn round_the_outside_and_back(clock in -20.0..20.0_f64, od in 20.0..120.0_f64) {
        let round = clockwise_round_outside_mm(clock, od);
        prop_assert!((0.0..math::PI * od).contains(&round));
        prop_assert!(math::wrap_to_pi(clock_from_round_outside(round, od) - clock).abs() < 1e-9);
        let nearest = nearest_round_outside_mm(clock, od);
        prop_assert!(nearest.abs() <= 0.5 * math::PI * od + 1e-9);
        prop_assert!(math::wrap_to_pi(clock_from_round_outside(nearest, od) - clock).abs() < 1e-9);
    }

    #[test]
    fn pieces_cuts_and_rest_make_the_stock(
        pieces in prop::collection::vec(0.05..0.5_f64, 1..5), kerf in 0.0..0.05_f64, stock in 0.5..3.0_f64
    ) {
        let p = partition_bend(stock, &pieces, kerf, 0, Rest::Kept).expect("sound");
        let sum: f64 = pieces.iter().sum::<f64>() + kerf * p.kerfs as f64 + p.left_rad;
        prop_assert!((sum - stock).abs() < 1e-12);
        prop_assert_eq!(p.fits, p.left_rad >= -2e-7);
    }
}

#[test]
fn a_quarter_clockwise_is_a_quarter_of_the_girth() {
    let od = 63.5;
    let quarter = 0.25 * math::PI * od;
    let got = clockwise_round_outside_mm(math::FRAC_PI_2, od);
    assert!((got - quarter).abs() < 1e-12);
    let three_quarters = clockwise_round_outside_mm(-math::FRAC_PI_2, od);
    assert!((three_quarters - 3.0 * quarter).abs() < 1e-12);
    assert_eq!(clockwise_round_outside_mm(-1e-18, od).to_bits(), 0);
}
