//! Templates of each kind, with the sizes of the published fabrication checks.

use tubewright_geometry::template::{Mitre, Saddle, SplitBend};
use tubewright_sheets::{Keep, Paper, TemplateSpec, TurnSense, Unrolled};

pub(crate) const A4_UPRIGHT: Paper = Paper {
    width_mm: 210.0,
    height_mm: 297.0,
};

const PAPER_MM: f64 = 0.1;

/// Name, curve, words.
pub(crate) fn templates() -> Vec<(&'static str, Unrolled, TemplateSpec)> {
    let spec = |mark: &str, title: &str, zero: &str, keep: Keep| TemplateSpec {
        mark: mark.to_owned(),
        title: title.to_owned(),
        source_line: "Estate, V6 set back · plan 3f9c 07d2 a1 · 2026-03-14 · mm".to_owned(),
        zero_words: zero.to_owned(),
        arrow_words: "arrow downstream".to_owned(),
        keep,
        q_turns: TurnSense::Clockwise,
        clock_at_zero_rad: None,
        lead_mm: 40.0,
    };
    let mitre = Mitre::for_turn(31.75, 30.0_f64.to_radians());
    let saddle = Saddle::new(25.4, 38.1, 30.0_f64.to_radians(), 0.0).expect("a sound saddle");
    let boss = Saddle::new(11.1, 31.75, 90.0_f64.to_radians(), 8.0).expect("a sound boss");
    let split = SplitBend::new(95.0, 31.75, 110.0, 90.0_f64.to_radians()).expect("a sound split");
    vec![
        (
            "mitre",
            Unrolled::end_cut(&mitre, PAPER_MM),
            TemplateSpec {
                clock_at_zero_rad: Some(0.0),
                ..spec(
                    "L8",
                    "mitre of 15° at J9",
                    "short side, 12 o'clock",
                    Keep::Below,
                )
            },
        ),
        (
            "saddle",
            Unrolled::end_cut(&saddle, PAPER_MM),
            spec("R4", "saddle at 30° on 76.2 mm", "obtuse side", Keep::Above),
        ),
        (
            "hole",
            Unrolled::hole(&boss, 31.75, PAPER_MM),
            spec("L6", "hole for a 22.2 mm boss, 8 mm off", "", Keep::Below),
        ),
        (
            "split",
            Unrolled::opening(&split, PAPER_MM),
            TemplateSpec {
                q_turns: TurnSense::Anticlockwise,
                ..spec(
                    "L12",
                    "split bend for the crossover",
                    "outside of the bend",
                    Keep::Below,
                )
            },
        ),
    ]
}
