//! The board.

use crate::api::{FindingView, ProveView, StateView};
use tubewright_check::{Board, Finding, Limit, State};

pub(super) fn of(board: &Board) -> ProveView {
    ProveView {
        fail: board.count(State::Fail),
        not_checked: board.count(State::NotChecked),
        pass: board.count(State::Pass),
        findings: board.findings().iter().map(finding).collect(),
    }
}

fn finding(finding: &Finding) -> FindingView {
    let (is_least, limit) = match finding.limit {
        Some(Limit::AtLeast(limit)) => (true, Some(limit)),
        Some(Limit::AtMost(limit)) => (false, Some(limit)),
        None => (true, None),
    };
    FindingView {
        state: match finding.state {
            State::Fail => StateView::Fail,
            State::NotChecked => StateView::NotChecked,
            State::Pass => StateView::Pass,
            State::DoesNotApply => StateView::DoesNotApply,
        },
        title: finding.rule.title().to_owned(),
        source: finding.rule.source().to_owned(),
        subject: finding.subject.clone(),
        value: finding.measured.map(|measured| measured.value),
        plus_minus: finding.measured.and_then(|measured| measured.plus_minus),
        unit: finding
            .measured
            .map_or("", |measured| measured.unit.symbol().trim())
            .to_owned(),
        is_least,
        limit,
        place: finding.place.as_ref().map(|place| place.words.clone()),
        at: finding
            .place
            .as_ref()
            .map(|place| place.point_in_car.to_array()),
        advice: finding.advice.clone(),
    }
}
