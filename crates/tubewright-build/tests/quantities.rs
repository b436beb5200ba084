//! Shop notation, its exactness, its factors and its refusals.

#![allow(
    clippy::float_cmp,
    clippy::panic,
    clippy::unwrap_used,
    clippy::cast_precision_loss,
    reason = "exactness is what is tested; helpers of tests are tests; numbers are small"
)]

use proptest::prelude::*;
use tubewright_build::quantity::*;
use tubewright_geometry::Length;

#[track_caller]
fn mm(text: &str) -> f64 {
    parse_length(text)
        .unwrap_or_else(|error| panic!("{text:?}: {error}"))
        .mm()
}

#[track_caller]
fn is_near(text: &str, got: f64, wanted: f64, tolerance: f64, unit: &str) {
    let off = (got - wanted).abs();
    assert!(
        off <= tolerance,
        "{text:?}: got {got} {unit}, wanted {wanted} {unit}, off by {off}, allowed {tolerance}"
    );
}

#[test]
fn lengths_as_the_tape_says_them() {
    // Inches times 25.4, by hand.
    let lengths: [(&str, f64); 26] = [
        ("812 mm", 812.0),
        ("81.2 cm", 812.0),
        ("0.812 m", 812.0),
        ("812mm", 812.0),
        ("1.65 mm", 1.65),
        (".5 mm", 0.5),
        ("2-1/2 in", 63.5),
        ("2 1/2\"", 63.5),
        ("2 1/2 inches", 63.5),
        ("2½\"", 63.5),
        ("½ in", 12.7),
        ("5/4 in", 31.75),
        ("2 17/32 in", 64.293_75),
        ("1/64 in", 0.396_875),
        ("3 ft 4-1/2 in", 1028.7),
        ("3'4-1/2\"", 1028.7),
        ("3' 4-1/2''", 1028.7),
        ("3 ft", 914.4),
        ("-3 ft 4-1/2 in", -1028.7),
        ("−12.7 mm", -12.7),
        ("16 ga BWG", 1.651),
        ("16 ga USG", 1.5875),
        ("16 gauge MSG", 1.518_92),
        ("16 ga SWG", 1.625_6),
        ("16 swg", 1.625_6),
        ("16 BWG", 1.651),
    ];
    for (text, wanted) in lengths {
        // One rounding at the very end: the nearest double to the exact value.
        assert_eq!(mm(text).to_bits(), wanted.to_bits(), "{text}: {}", mm(text));
    }
}

#[test]
fn angles_and_clock_marks() {
    for (text, deg) in [
        ("22.5 deg", 22.5),
        ("22°30'", 22.5),
        ("22° 30′ 36″", 22.51),
        ("-1.2 deg", -1.2),
        ("7/8 deg", 0.875),
    ] {
        is_near(text, parse_angle(text).unwrap().deg(), deg, 1e-12, "deg");
    }
    is_near(
        "rad",
        parse_angle("0.5 rad").unwrap().rad(),
        0.5,
        0.0,
        "rad",
    );
    for (text, deg) in [
        ("12:00", 0.0),
        ("3:00", 90.0),
        ("4:30", 135.0),
        ("11:59", 359.5),
        ("90 deg", 90.0),
    ] {
        is_near(
            text,
            parse_clock(text).unwrap().angle().deg(),
            deg,
            1e-12,
            "deg",
        );
    }
    for text in ["13:00", "0:30", "4:60", "4:3", "4:", ":30", "90"] {
        assert!(parse_clock(text).is_err(), "{text}");
    }
}

/// NIST Special Publication 811 (2008), appendix B.8: the printed factors, seven figures (so half of
/// the last is at most 5e-7 of the value).
#[test]
fn factors_are_those_of_nist_sp_811() {
    let relative = |text: &str, got: f64, wanted: f64| {
        is_near(text, got / wanted, 1.0, 5e-7, "of the printed factor");
    };
    relative("inch to metre", mm("1 in") / 1000.0, 2.54e-2);
    relative("foot to metre", mm("1 ft") / 1000.0, 3.048e-1);
    relative(
        "pound to kilogram",
        parse_mass("1 lb").unwrap().kg(),
        4.535_924e-1,
    );
    relative(
        "ounce to kilogram",
        parse_mass("1 oz").unwrap().kg(),
        2.834_952e-2,
    );
    relative(
        "gallon US to litre",
        parse_volume("1 gal US").unwrap().litres(),
        3.785_412,
    );
    relative(
        "gallon imperial to litre",
        parse_volume("1 gal imp").unwrap().litres(),
        4.54609,
    );
    relative(
        "cubic inch to litre",
        parse_volume("1 cu in").unwrap().litres(),
        1.638_706e-2,
    );
    relative(
        "horsepower (550 ft lbf/s) to kW",
        parse_power("1 hp mech").unwrap().kw(),
        7.456_999e-1,
    );
    relative(
        "horsepower (metric) to kW",
        parse_power("1 PS").unwrap().kw(),
        7.354_988e-1,
    );
    relative(
        "pound-force foot to N m",
        parse_torque("1 lbf ft").unwrap().nm(),
        1.355_818,
    );
    relative(
        "pound-force inch to N m",
        parse_torque("1 lbf in").unwrap().nm(),
        1.129_848e-1,
    );
    relative(
        "kilogram-force metre to N m",
        parse_torque("1 kgf m").unwrap().nm(),
        9.80665,
    );
    relative(
        "mile per hour to km/h",
        parse_speed("1 mph").unwrap().km_per_hour(),
        1.609_344,
    );
    relative(
        "metre per second to km/h",
        parse_speed("1 m/s").unwrap().km_per_hour(),
        3.6,
    );
    relative(
        "psi to kPa",
        parse_pressure("1 psi absolute").unwrap().absolute_kpa(0.0),
        6.894_757,
    );
    relative(
        "bar to kPa",
        parse_pressure("1 bar absolute").unwrap().absolute_kpa(0.0),
        100.0,
    );
    relative(
        "degree Fahrenheit",
        parse_temperature("212 degF").unwrap().kelvin(),
        373.15,
    );
    relative(
        "degree Celsius",
        parse_temperature("100 degC").unwrap().kelvin(),
        373.15,
    );
    relative(
        "difference",
        parse_temperature_difference("9 degF difference")
            .unwrap()
            .kelvin(),
        5.0,
    );
}

#[test]
fn other_kinds() {
    assert_eq!(parse_duration("1 h 20 min").unwrap().minutes(), 80.0);
    assert_eq!(
        parse_rotation_speed("6500 rev/min")
            .unwrap()
            .rev_per_minute(),
        6500.0
    );
    assert_eq!(parse_volume("1998 cc").unwrap().litres(), 1.998);
    assert_eq!(parse_flow("12 l/min").unwrap().litres_per_minute(), 12.0);
    assert_eq!(parse_density("7.9 g/cm3").unwrap().kg_per_m3(), 7900.0);
    assert_eq!(parse_share("19 %").unwrap().fraction(), 0.19);
    assert_eq!(
        parse_pressure("1.1 bar gauge").unwrap(),
        Pressure::Gauge(110.0)
    );
    assert_eq!(parse_money("14.80 EUR").unwrap().minor, 1480);
    assert_eq!(parse_money("€14.8").unwrap().minor, 1480);
    assert_eq!(parse_money("1500 JPY").unwrap().minor, 1500);
    assert_eq!(
        parse_rate("0.20 EUR/mm", Per::Millimetre, false)
            .unwrap()
            .major_per_unit,
        0.2
    );
    assert_eq!(parse_dash_size("-6 AN").unwrap().number(), 6);
    assert_eq!(parse_dash_size("dash 6").unwrap().number(), 6);
    let thread = parse_thread("M18x1.5").unwrap();
    assert_eq!((thread.diameter.mm(), thread.pitch.mm()), (18.0, 1.5));
    let thread = parse_thread("9/16-18 UNF").unwrap();
    assert!((thread.pitch.mm() - 25.4 / 18.0).abs() < 1e-12);
    // A quarter of an inch of pipe is half an inch across: ISO 228-1 and ASME B1.20.1.
    let parallel = parse_thread("G1/4").unwrap();
    assert_eq!(parallel, parse_thread("1/4 BSPP").unwrap());
    assert!((parallel.diameter.mm() - 13.157).abs() < 1e-9);
    assert!((parallel.pitch.mm() - 25.4 / 19.0).abs() < 1e-12);
    let taper = parse_thread("R 1/4").unwrap();
    assert_eq!(taper.diameter, parallel.diameter);
    assert_ne!(taper.form, parallel.form);
    let american = parse_thread("1/8-NPT").unwrap();
    assert!((american.diameter.mm() - 0.405 * 25.4).abs() < 1e-9);
    assert!((american.pitch.mm() - 25.4 / 27.0).abs() < 1e-12);
    // 16 in rim = 406.4 mm, and twice 205 mm × 55 %.
    for text in ["205/55 R16", "205/55R16 91V", "205/55 ZR16"] {
        let tyre = parse_tyre(text).unwrap();
        assert!((tyre.diameter.mm() - 631.9).abs() < 1e-9, "{text}");
        assert_eq!(tyre.width.mm(), 205.0);
    }
    assert_eq!(parse_file_unit("in").unwrap().mm(), 25.4);
    assert_eq!(parse_file_unit("10 mm").unwrap().mm(), 10.0);
}

#[test]
fn what_could_be_two_things_is_refused() {
    use QuantityError as E;
    assert!(matches!(parse_length("812"), Err(E::BareNumber { .. })));
    assert!(matches!(parse_length("3 ft 4"), Err(E::BareNumber { .. })));
    assert!(matches!(parse_length("12,5 mm"), Err(E::Comma { .. })));
    assert!(matches!(parse_length("1,200 mm"), Err(E::Comma { .. })));
    assert!(matches!(parse_length("16 ga"), Err(E::Ambiguous { .. })));
    assert!(matches!(parse_length("2-5/4 in"), Err(E::Fraction { .. })));
    assert!(matches!(parse_length("1/3 in"), Err(E::Fraction { .. })));
    assert!(matches!(parse_length("NaN mm"), Err(E::NoNumber { .. })));
    assert!(matches!(parse_length("inf mm"), Err(E::NoNumber { .. })));
    assert!(matches!(parse_length("1e3 mm"), Err(E::Unit { .. })));
    assert!(matches!(parse_length("120 m"), Err(E::Range { .. })));
    assert!(matches!(
        parse_length("12345678901234567 mm"),
        Err(E::TooLong { .. })
    ));
    assert!(matches!(parse_length("3 ft 14 in"), Err(E::Form { .. })));
    assert!(matches!(parse_length("90 deg"), Err(E::Unit { .. })));
    assert!(matches!(parse_power("200 hp"), Err(E::Ambiguous { .. })));
    assert!(matches!(parse_volume("2 gal"), Err(E::Ambiguous { .. })));
    assert!(matches!(
        parse_pressure("1.1 bar"),
        Err(E::Ambiguous { .. })
    ));
    assert!(matches!(
        parse_temperature("363 K"),
        Err(E::Ambiguous { .. })
    ));
    assert!(matches!(
        parse_temperature_difference("20 K"),
        Err(E::Ambiguous { .. })
    ));
    assert!(matches!(parse_money("$14"), Err(E::Ambiguous { .. })));
    assert!(matches!(parse_money("14.805 EUR"), Err(E::Form { .. })));
    assert!(parse_thread("M18").is_err());
    assert!(parse_thread("1/4 BSP").is_err());
    assert!(parse_thread("G5/8").is_err());
    assert!(parse_dash_size("6").is_err());
}

#[test]
fn a_bare_gauge_names_its_four_meanings() {
    let error = parse_length("16 ga").unwrap_err();
    let why = error.why();
    for thickness in ["1.65 mm", "1.63 mm", "1.59 mm", "1.52 mm"] {
        assert!(why.contains(thickness), "{why}");
    }
    assert!(error.do_this().contains("16 ga BWG"), "{}", error.do_this());
}

/// The sheet gauges are weights: the manufacturers' thickness is the statute's 40 lb/ft² per inch
/// over 41.82, rounded to four digits.
#[test]
fn sheet_gauges_agree_with_their_weights() {
    for gauge in 7..=26 {
        let (num, den) = GaugeSystem::UsStandard.thickness_in(gauge).unwrap();
        let statute = num as f64 / den as f64;
        let (num, den) = GaugeSystem::Manufacturers.thickness_in(gauge).unwrap();
        let makers = num as f64 / den as f64;
        is_near(
            &format!("{gauge} ga"),
            makers,
            statute * 40.0 / 41.82,
            0.5001e-4,
            "in",
        );
    }
}

mod published {
    //! Each published value by its id.

    use super::*;
    use tubewright_build::Span;
    use tubewright_build::model::{Material, Name, Tube};

    fn check(id: &str) -> toml::Table {
        let all: toml::Table = include_str!("data/checks.toml").parse().unwrap();
        all["check"]
            .as_array()
            .unwrap()
            .iter()
            .map(|check| check.as_table().unwrap().clone())
            .find(|check| check["id"].as_str() == Some(id))
            .unwrap_or_else(|| panic!("no check {id}"))
    }

    fn numbers(value: &toml::Value) -> Vec<f64> {
        value
            .as_array()
            .unwrap()
            .iter()
            .map(|n| n.as_float().or(n.as_integer().map(|n| n as f64)).unwrap())
            .collect()
    }

    fn source(check: &toml::Table) -> &str {
        check["source"].as_str().unwrap()
    }

    #[test]
    fn bwg_wall_gauge() {
        let check = check("bwg-wall-gauge");
        let gauges = numbers(&check["inputs"]["gauge"]);
        for (gauge, wanted_in) in gauges.iter().zip(numbers(&check["expected"])) {
            let got = mm(&format!("{gauge} ga BWG"));
            assert!(
                (got / 25.4 - wanted_in).abs() < 1e-9,
                "{gauge} ga: {got} mm; {}",
                source(&check)
            );
        }
    }

    #[test]
    fn gauge_ambiguity_16() {
        let check = check("gauge-ambiguity-16");
        for (system, key) in [
            ("BWG", "bwg_tube_in"),
            ("USG", "us_standard_sheet_in"),
            ("MSG", "manufacturers_std_carbon_in"),
        ] {
            let gauges = numbers(&check["inputs"]["gauge"]);
            for (gauge, wanted_in) in gauges.iter().zip(numbers(&check["expected"][key])) {
                let got = mm(&format!("{gauge} ga {system}"));
                assert!(
                    (got / 25.4 - wanted_in).abs() < 1e-9,
                    "{gauge} ga {system}; {}",
                    source(&check)
                );
                assert!(parse_length(&format!("{gauge} ga")).is_err(), "ambiguous");
            }
        }
    }

    #[test]
    fn mass_per_metre() {
        let check = check("mass-per-metre");
        let inputs = &check["inputs"];
        let sizes = numbers(&inputs["od_mm"]);
        for (key, material) in [
            ("m304", Material::Stainless304),
            ("m409", Material::Stainless409),
        ] {
            let walls = numbers(&inputs["wall_mm"]);
            for ((od, wall), wanted) in sizes
                .iter()
                .zip(walls)
                .zip(numbers(&check["expected"][key]))
            {
                let length = |mm: f64| Quantity::new(Length::from_mm(mm), "");
                let tube = Tube {
                    name: Name::new("t"),
                    od: length(*od),
                    wall: length(wall),
                    material,
                    density: None,
                    span: Span::none(),
                };
                let got = tube.kg_per_metre();
                assert!(
                    (got / wanted - 1.0).abs() < 1e-6,
                    "{od}x{wall}: {got} kg/m, wanted {wanted}; {}",
                    source(&check)
                );
            }
        }
    }

    #[test]
    fn dash_to_bore() {
        let check = check("dash-to-bore");
        let sizes = numbers(&check["inputs"]["dash"]);
        for (dash, wanted) in sizes.iter().zip(numbers(&check["expected"])) {
            let got = parse_dash_size(&format!("-{dash} AN"))
                .unwrap()
                .nominal_bore()
                .mm();
            assert!(
                (got - wanted).abs() < 0.1,
                "-{dash}: {got} mm; {}",
                source(&check)
            );
        }
    }
}

proptest! {
    #[test]
    fn millimetres_written_are_read_again(hundredths in -9_999_999_i64..9_999_999) {
        let length = Length::from_mm(hundredths as f64 / 100.0);
        let again = parse_length(&write_mm(length, 2)).unwrap();
        prop_assert!((again.mm() - length.mm()).abs() < 1e-9);
    }

    #[test]
    fn every_sixty_fourth_comes_back_as_the_same_number(parts in -200_000_i64..200_000) {
        let exact = Length::from_mm(parts as f64 * 25.4 / 64.0);
        let text = write_inches(exact, 64);
        let again = parse_length(&text).unwrap();
        // The same rational rounded once: nothing is lost by way of the text.
        let wanted = parts as f64 * 254.0 / 640.0;
        prop_assert_eq!(again.mm().to_bits(), (wanted + 0.0).to_bits(), "{}", text);
    }

    #[test]
    fn feet_and_inches_are_the_same_as_inches(feet in 0_u32..300, inches in 0_u32..12, parts in 0_u32..64) {
        let split = format!("{feet} ft {inches} in");
        prop_assert_eq!(mm(&split), mm(&format!("{} in", feet * 12 + inches)));
        if parts > 0 {
            let split = format!("{feet}'{inches}-{parts}/64\"");
            let whole = format!("{} {parts}/64 in", feet * 12 + inches);
            prop_assert_eq!(mm(&split), mm(&whole));
        }
    }

    #[test]
    fn minutes_of_angle_add_up(deg in 0_u32..720, min in 0_u32..60) {
        let got = parse_angle(&format!("{deg}°{min}'"));
        let wanted = f64::from(deg) + f64::from(min) / 60.0;
        prop_assert!((got.unwrap().deg() - wanted).abs() < 1e-9);
    }

    #[test]
    fn money_is_exact_to_the_cent(minor in -1_000_000_000_i64..1_000_000_000) {
        let sign = if minor < 0 { "-" } else { "" };
        let text = format!("{sign}{}.{:02} EUR", minor.abs() / 100, minor.abs() % 100);
        prop_assert_eq!(parse_money(&text).unwrap().minor, minor);
    }

    #[test]
    fn no_text_makes_a_parser_panic(text in "\\PC{0,40}") {
        let _ = parse_length(&text);
        let _ = parse_angle(&text);
        let _ = parse_clock(&text);
        let _ = parse_money(&text);
        let _ = parse_tyre(&text);
        let _ = parse_thread(&text);
        let _ = parse_dash_size(&text);
        let _ = parse_pressure(&text);
        let _ = parse_temperature(&text);
        let _ = parse_duration(&text);
        let _ = parse_rate(&text, Per::Hour, true);
    }

    #[test]
    fn nearly_good_text_makes_no_parser_panic(
        text in "[-+−]?[0-9.,/ ½⅞]{0,8} ?(mm|in|ft|'|\"|deg|°|ga|BWG|EUR|R|x|M|bar|K|:)?[0-9./ ]{0,5}(in|\"|'|gauge|/h)?",
    ) {
        let values = [parse_length(&text).map(|l| l.mm()), parse_angle(&text).map(|a| a.rad())];
        for value in values.into_iter().flatten() {
            prop_assert!(value.is_finite());
        }
        let _ = parse_clock(&text);
        let _ = parse_money(&text);
        let _ = parse_tyre(&text);
        let _ = parse_thread(&text);
        let _ = parse_pressure(&text);
    }
}
