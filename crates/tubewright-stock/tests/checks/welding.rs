//! Facts of welding.

use tubewright_geometry::Length;
use tubewright_stock::weld::*;

use crate::data::check;

const DATA: &str = include_str!("../data/welding.toml");

fn mm(v: f64) -> Length {
    Length::from_mm(v)
}

#[test]
fn tig_amps_rule() {
    let check = check(DATA, "tig-amps-rule");
    let got: Vec<TigCurrent> = check
        .numbers("wall_in")
        .iter()
        .map(|wall| tig_current(Length::from_inches(*wall)))
        .collect();
    check.assert_list("rule_a", got.iter().map(|c| c.rule_a), 1e-6);
    check.assert_list(
        "stainless_low_a",
        got.iter().map(|c| c.stainless_low_a),
        1e-6,
    );
    check.assert_list(
        "stainless_high_a",
        got.iter().map(|c| c.stainless_high_a),
        1e-6,
    );
}

#[test]
fn filler_wire_length() {
    let check = check(DATA, "filler-wire-length");
    let [od, wall, gap, width, height, wire] = [
        "od_mm",
        "wall_mm",
        "gap_mm",
        "cap_width_mm",
        "cap_height_mm",
        "wire_dia_mm",
    ]
    .map(|key| mm(check.number(key)));
    let need = wire_need(od, wall, gap, (width, height), wire);
    check.assert_near(
        "area",
        need.area_mm2,
        check.expected_number("fill_area_mm2"),
        1e-6,
    );
    check.assert_near(
        "joint",
        need.joint.mm(),
        check.expected_number("joint_length_mm"),
        1e-6,
    );
    check.assert_near(
        "wire",
        need.wire.mm(),
        check.expected_number("wire_length_mm"),
        1e-6,
    );
}

#[test]
fn purge_time() {
    let check = check(DATA, "purge-time");
    let [od, wall, length] = ["od_mm", "wall_mm", "length_mm"].map(|key| mm(check.number(key)));
    let volume = purge_volume_litres(od, wall, length);
    check.assert_near("volume", volume, check.expected_number("volume_l"), 1e-6);
    let flow = check.number("flow_l_min");
    let changes = check.numbers("volume_changes");
    let times = changes.iter().map(|n| purge_time_min(volume, flow, *n));
    check.assert_list("time_min", times, 1e-6);
}

#[test]
fn purge_dilution() {
    let check = check(DATA, "purge-dilution");
    let start = check.number("o2_start_ppm");
    let changes = check.numbers("volume_changes");
    check.assert_list("", changes.iter().map(|n| oxygen_left_ppm(start, *n)), 1e-6);
}

#[test]
fn d182_discolour_levels() {
    let check = check(DATA, "d182-discolour-levels");
    check.assert_list(
        "",
        DISCOLOUR_OXYGEN_PPM.iter().map(|ppm| f64::from(*ppm)),
        0.0,
    );
}

#[test]
fn iso5817_misalignment_tube() {
    let check = check(DATA, "iso5817-misalignment-tube");
    let walls = check.numbers("wall_mm");
    for (key, level) in [
        ("level_D_mm", QualityLevel::D),
        ("level_C_mm", QualityLevel::C),
        ("level_B_mm", QualityLevel::B),
    ] {
        let limits = walls
            .iter()
            .map(|wall| misalignment_limit(mm(*wall), level).mm());
        check.assert_list(key, limits, 1e-9);
    }
}

#[test]
fn fitup_limits() {
    let check = check(DATA, "fitup-limits");
    let limits = fit_up_limits(mm(check.number("wall_mm")));
    check.assert_near(
        "aim",
        limits.gap_aim.mm(),
        check.expected_number("gap_aim_mm"),
        1e-9,
    );
    check.assert_near(
        "gap",
        limits.gap_most.mm(),
        check.expected_number("gap_max_mm"),
        1e-9,
    );
    check.assert_near(
        "step",
        limits.step_most.mm(),
        check.expected_number("step_max_mm"),
        1e-9,
    );
}

#[test]
fn hazard_cautions() {
    let check = check(DATA, "hazard-cautions");
    check.assert_near(
        "limit",
        CR6_LIMIT_UG_PER_M3,
        check.expected_number("cr6_pel_twa_ug_m3"),
        0.0,
    );
    let action = check.expected_number("cr6_action_level_ug_m3");
    check.assert_near("action level", CR6_ACTION_LEVEL_UG_PER_M3, action, 0.0);
    assert_eq!(
        check.expected_words("required"),
        CAUTIONS,
        "{}",
        check.source()
    );
}

#[test]
fn misalignment_from_tolerance() {
    let check = check(DATA, "misalignment-from-tolerance");
    let wall = mm(check.number("wall_mm"));
    let step = wall_step(
        mm(check.number("od_tol_mm")),
        wall * (check.number("wall_tol_pct") / 100.0),
    );
    check.assert_near(
        "outer",
        step.outer.mm(),
        check.expected_number("outer_step_mm"),
        0.01,
    );
    check.assert_near(
        "inner",
        step.inner.mm(),
        check.expected_number("inner_step_mm"),
        0.01,
    );
    let limit = misalignment_limit(wall, QualityLevel::D).mm();
    check.assert_near(
        "limit",
        limit,
        check.expected_number("limit_half_t_mm"),
        1e-9,
    );
}

#[test]
fn expansion_304() {
    let check = check(DATA, "expansion-304");
    let hot = check.numbers("temp_C");
    let length = mm(check.number("length_mm"));
    let alphas: Vec<f64> = hot
        .iter()
        .map(|t| mean_expansion(AlloyGroup::Austenitic304, *t).unwrap())
        .collect();
    check.assert_list("alpha_1e_6", alphas.iter().copied(), 0.01);
    let grown = hot
        .iter()
        .zip(&alphas)
        .map(|(t, alpha)| growth(length, *alpha, *t, 20.0).mm());
    check.assert_list("elongation_mm", grown, 0.01);
    assert_eq!(mean_expansion(AlloyGroup::Austenitic304, 501.0), None);
}

#[test]
fn expansion_321_to_800() {
    let check = check(DATA, "expansion-321-to-800");
    let of = |t: &f64| mean_expansion(AlloyGroup::Austenitic321, *t).unwrap();
    check.assert_list("", check.numbers("temp_C").iter().map(of), 0.01);
}

#[test]
fn expansion_ferritic() {
    let check = check(DATA, "expansion-ferritic");
    let of = |t: &f64| mean_expansion(AlloyGroup::Ferritic409, *t).unwrap();
    check.assert_list("", check.numbers("temp_C").iter().map(of), 0.01);
}

#[test]
fn flex_travel_run() {
    let check = check(DATA, "flex-travel-run");
    let [length, alpha, hot, ambient] =
        ["length_mm", "alpha_1e_6", "temp_C", "ambient_C"].map(|key| check.number(key));
    check.assert_near(
        "growth",
        growth(mm(length), alpha, hot, ambient).mm(),
        check.value(),
        1e-6,
    );
}

#[test]
fn weld_shrink_thick_plate_rule() {
    let check = check(DATA, "weld-shrink-thick-plate-rule");
    check.assert_near(
        "low",
        PLATE_SHRINK_MM.0,
        check.expected_number("low_mm"),
        0.0,
    );
    check.assert_near(
        "high",
        PLATE_SHRINK_MM.1,
        check.expected_number("high_mm"),
        0.0,
    );
    let lengthwise = check.expected_number("longitudinal_mm_per_m");
    check.assert_near(
        "lengthwise",
        PLATE_SHRINK_LENGTHWISE_MM_PER_M,
        lengthwise,
        0.0,
    );
}

#[test]
fn weld_shrink_area_formula() {
    let check = check(DATA, "weld-shrink-area-formula");
    let (area, wall) = (
        check.number("weld_area_mm2"),
        mm(check.number("thickness_mm")),
    );
    let gap = mm(check.number("root_gap_mm"));
    let (plain, with_gap) = (
        shrink_by_area(area, wall),
        shrink_by_area_and_gap(area, wall, gap),
    );
    check.assert_near("0.1", plain.mm(), check.expected_number("rule_0_1"), 1e-6);
    check.assert_near(
        "0.2",
        with_gap.mm(),
        check.expected_number("rule_0_2_gap"),
        1e-6,
    );
}
