use proptest::prelude::*;
use std::collections::BTreeSet;
use tubewright_fit::order::{Act, FitRun, Part, PartKind, Step, Way, fit_order};

fn parts(run: usize) -> impl Strategy<Value = Vec<Part>> {
    prop::collection::vec((0..10u32, 20.0..500f64), 1..9).prop_map(move |kinds| {
        kinds
            .into_iter()
            .enumerate()
            .map(|(at, (kind, straight_mm))| Part {
                marks: vec![format!("{run}-{at}")],
                kind: match kind {
                    0 => PartKind::Hung,
                    1 => PartKind::Component,
                    2 if at == 0 => PartKind::Bolted,
                    _ => PartKind::Tube,
                },
                joint_upstream: format!("{run}:{at}"),
                joint_downstream: format!("{run}:{}", at + 1),
                straight_mm,
                is_straight: kind > 5,
                has_room: kind % 2 == 0,
                crossover: None,
                on_the_bench: Vec::new(),
            })
            .collect()
    })
}

fn two_runs() -> impl Strategy<Value = Vec<FitRun>> {
    (parts(0), parts(1), any::<bool>(), any::<bool>()).prop_map(|(a, b, x, y)| {
        vec![
            FitRun {
                name: "left".to_owned(),
                parts: a,
                ends_fixed: x,
            },
            FitRun {
                name: "right".to_owned(),
                parts: b,
                ends_fixed: y,
            },
        ]
    })
}

fn at(step: &Step) -> (usize, usize) {
    (step.run, step.part)
}

proptest! {
    #[test]
    fn every_part_comes_once_and_hangs_on_something_that_stands(runs in two_runs()) {
        let steps = fit_order(&runs);
        let all: BTreeSet<_> = steps.iter().map(at).collect();
        prop_assert_eq!(all.len(), steps.len());
        prop_assert_eq!(steps.len(), runs.iter().map(|run| run.parts.len()).sum::<usize>());
        let mut standing = BTreeSet::new();
        for step in &steps {
            let (run, part) = at(step);
            let count = runs[run].parts.len();
            let upstream = part == 0 || standing.contains(&(run, part - 1));
            let downstream = if part + 1 == count { runs[run].ends_fixed } else { standing.contains(&(run, part + 1)) };
            match step.act {
                Act::Hang => {}
                Act::Bolt | Act::Tack(Way::Downstream) => prop_assert!(upstream, "{step:?}"),
                Act::Tack(Way::Upstream) => prop_assert!(downstream, "{step:?}"),
                Act::Close => prop_assert!(upstream && downstream, "{step:?}"),
            }
            standing.insert((run, part));
        }
    }

    #[test]
    fn only_tube_closes_and_nothing_open_is_closed(runs in two_runs()) {
        for step in fit_order(&runs).iter().filter(|step| step.act == Act::Close) {
            prop_assert_eq!(runs[step.run].parts[step.part].kind, PartKind::Tube);
            prop_assert!(step.proves.is_none());
        }
    }
}

/// Work starts at the engine, which is fixed, and not at a can that tapes hold badly: what hangs is hung when the run
/// has come to it, before what is tacked to it from the far side.
#[test]
fn what_hangs_waits_until_the_run_comes_to_it() {
    let part = |at: usize, kind: PartKind, straight_mm: f64| Part {
        marks: vec![format!("{at}")],
        kind,
        joint_upstream: format!("J{at}"),
        joint_downstream: format!("J{}", at + 1),
        straight_mm,
        is_straight: straight_mm > 100.0,
        has_room: true,
        crossover: None,
        on_the_bench: Vec::new(),
    };
    let run = FitRun {
        name: "run".to_owned(),
        parts: vec![
            part(0, PartKind::Bolted, 0.0),
            part(1, PartKind::Tube, 60.0),
            part(2, PartKind::Tube, 500.0),
            part(3, PartKind::Tube, 60.0),
            part(4, PartKind::Hung, 0.0),
            part(5, PartKind::Tube, 90.0),
        ],
        ends_fixed: false,
    };
    let done: Vec<_> = fit_order(&[run])
        .iter()
        .map(|step| (step.part, step.act))
        .collect();
    let down = Act::Tack(Way::Downstream);
    assert_eq!(
        done,
        [
            (0, Act::Bolt),
            (1, down),
            (4, Act::Hang),
            (3, Act::Tack(Way::Upstream)),
            (2, Act::Close),
            (5, down)
        ]
    );
}

#[test]
fn the_second_run_closes_at_the_crossover_that_the_first_brought() {
    let part = |run: usize, at: usize, straight_mm: f64, crossover: Option<&str>| Part {
        marks: vec![format!("{run}-{at}")],
        kind: if crossover.is_some() {
            PartKind::Component
        } else {
            PartKind::Tube
        },
        joint_upstream: format!("{run}:{at}"),
        joint_downstream: format!("{run}:{}", at + 1),
        straight_mm,
        is_straight: straight_mm > 100.0,
        has_room: true,
        crossover: crossover.map(str::to_owned),
        on_the_bench: Vec::new(),
    };
    let run = |number: usize| FitRun {
        name: format!("run {number}"),
        parts: vec![
            part(number, 0, 40.0, None),
            part(number, 1, 300.0, None),
            part(number, 2, 50.0, None),
            part(number, 3, 0.0, Some("X")),
            part(number, 4, 200.0, None),
        ],
        ends_fixed: false,
    };
    let steps = fit_order(&[run(0), run(1)]);
    let first: Vec<_> = steps
        .iter()
        .filter(|s| s.run == 0)
        .map(|s| (s.part, s.act))
        .collect();
    let down = Act::Tack(Way::Downstream);
    assert_eq!(
        first,
        [(0, down), (1, down), (2, down), (3, down), (4, down)]
    );
    let second: Vec<_> = steps
        .iter()
        .filter(|s| s.run == 1)
        .map(|s| (s.part, s.act))
        .collect();
    assert_eq!(
        second,
        [
            (0, down),
            (2, Act::Tack(Way::Upstream)),
            (1, Act::Close),
            (4, down)
        ],
        "the crossover stands already and is not tacked twice"
    );
}

#[test]
fn what_can_be_left_longer_closes_before_what_cannot() {
    let part = |at: usize, is_straight: bool, has_room: bool, straight_mm: f64| Part {
        marks: vec![at.to_string()],
        kind: PartKind::Tube,
        joint_upstream: at.to_string(),
        joint_downstream: (at + 1).to_string(),
        straight_mm,
        is_straight,
        has_room,
        crossover: None,
        on_the_bench: Vec::new(),
    };
    let closes = |parts: &[Part]| {
        let run = FitRun {
            name: "run".to_owned(),
            parts: parts.to_vec(),
            ends_fixed: true,
        };
        let steps = fit_order(&[run]);
        steps
            .iter()
            .find(|step| step.act == Act::Close)
            .map(|step| step.part)
    };
    let all = [
        part(0, false, false, 400.0),
        part(1, true, false, 300.0),
        part(2, false, true, 20.0),
        part(3, true, true, 10.0),
        part(4, true, true, 15.0),
    ];
    assert_eq!(
        closes(&all),
        Some(4),
        "the longer of two straights with room"
    );
    assert_eq!(
        closes(&all[..3]),
        Some(2),
        "a bend with room before a straight without"
    );
    assert_eq!(
        closes(&all[..2]),
        Some(1),
        "a straight before a bend when neither has room"
    );
    assert_eq!(closes(&all[..1]), Some(0));
}
