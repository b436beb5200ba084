//! The four states behave as promised.

use proptest::prelude::*;
use std::collections::BTreeSet;
use tubewright_check::{Board, Finding, Limit, Measured, Rule, State, Unit, Verdict};

fn gap(value: f64, plus_minus: f64) -> Measured {
    Measured {
        value,
        plus_minus: Some(plus_minus),
        unit: Unit::Millimetre,
    }
}

#[test]
fn the_uncertainty_is_taken_from_the_measured_value_before_it_is_judged() {
    let judge = |value, plus_minus| {
        Finding::measured_at_least(
            Rule::ClearanceToBody,
            "run to rail",
            gap(value, plus_minus),
            25.0,
        )
        .state
    };
    assert_eq!(judge(29.0, 3.0), State::Pass);
    assert_eq!(judge(27.0, 3.0), State::Fail, "27 - 3 = 24 is less than 25");
    assert_eq!(
        judge(f64::NAN, 0.0),
        State::Fail,
        "what is no number never passes"
    );
}

#[test]
fn an_empty_board_has_proved_nothing() {
    assert_eq!(Board::default().verdict(), Verdict::NotAllChecked);
}

#[test]
fn identifiers_are_unique_and_name_their_rule() {
    let ids: BTreeSet<_> = Rule::ALL.iter().map(|rule| rule.id()).collect();
    assert_eq!(ids.len(), Rule::ALL.len());
    for rule in Rule::ALL {
        assert!(rule.id().contains('.') && !rule.title().is_empty() && !rule.source().is_empty());
    }
}

fn any_state() -> impl Strategy<Value = State> {
    prop_oneof![
        Just(State::Fail),
        Just(State::NotChecked),
        Just(State::Pass),
        Just(State::DoesNotApply)
    ]
}

proptest! {
    #[test]
    fn one_failure_fails_the_board_and_one_unchecked_keeps_it_from_passing(
        states in proptest::collection::vec(any_state(), 1..12)
    ) {
        let board = Board::new(
            states.iter().enumerate()
                .map(|(i, &state)| Finding::stated(Rule::ALL[i % Rule::ALL.len()], state, format!("{i}"), ""))
                .collect(),
        );
        let expected = if states.contains(&State::Fail) {
            Verdict::Fails
        } else if states.contains(&State::NotChecked) {
            Verdict::NotAllChecked
        } else {
            Verdict::Passes
        };
        prop_assert_eq!(board.verdict(), expected);
        let shown: Vec<_> = board.findings().iter().map(|f| f.state).collect();
        prop_assert!(shown.is_sorted(), "failures come first, then what is not checked");
    }

    #[test]
    fn both_kinds_of_limit_agree_on_mirrored_values(value in -1e3..1e3f64, pm in 0.0..50f64, limit in -1e3..1e3f64) {
        let low = Finding::measured_at_least(Rule::EndPlace, "x", gap(value, pm), limit);
        let high = Finding::measured_at_most(Rule::EndPlace, "x", gap(-value, pm), -limit);
        prop_assert_eq!(low.state, high.state);
        prop_assert_eq!(low.limit, Some(Limit::AtLeast(limit)));
    }
}
