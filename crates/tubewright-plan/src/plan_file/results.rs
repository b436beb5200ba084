//! What the other stages found, as the file keeps it: for people and other programs to read. Only
//! the routes are read back; these are computed anew in less time than reading would save.

use serde::Serialize;
use std::collections::BTreeMap;
use tubewright_check::{Board, Limit, State};
use tubewright_stock::Source;

use super::{Inputs, indented};
use crate::stages::{Supply, Surroundings};
use crate::survey::NINETEEN_IN_TWENTY;

type InputsForm = BTreeMap<String, BTreeMap<String, String>>;

#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
struct SurveyForm {
    unit: &'static str,
    frame_problem: Option<String>,
    doubtful: Vec<DoubtfulForm>,
    places: Vec<PlaceForm>,
    ends: Vec<EndForm>,
    inputs: InputsForm,
}

#[derive(Serialize)]
struct DoubtfulForm {
    reading: u32,
    words: String,
}

#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
struct PlaceForm {
    place: String,
    at: [f64; 3],
    plus_minus: f64,
}

#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
struct EndForm {
    end: String,
    at: [f64; 3],
    travel: [f64; 3],
    twelve: [f64; 3],
    direction_plus_minus: f64,
}

/// What the survey found.
#[must_use]
pub fn survey_result(inputs: &Inputs, around: &Surroundings) -> String {
    let measured = &around.measured;
    indented(&SurveyForm {
        unit: "mm, deg, ± 19 in 20",
        frame_problem: measured.frame_problem.as_ref().map(ToString::to_string),
        doubtful: measured
            .doubtful
            .iter()
            .map(|doubtful| DoubtfulForm {
                reading: doubtful.number,
                words: doubtful.sentence(measured.adjustment.network()),
            })
            .collect(),
        places: measured
            .places
            .points
            .iter()
            .map(|(name, place)| PlaceForm {
                place: name.clone(),
                at: place.point_in_car.to_array(),
                plus_minus: NINETEEN_IN_TWENTY * place.sigma_bound(),
            })
            .collect(),
        ends: measured
            .places
            .ends
            .iter()
            .map(|(name, end)| EndForm {
                end: name.clone(),
                at: end.frame_in_car.origin.to_array(),
                travel: end.frame_in_car.travel().to_array(),
                twelve: end.frame_in_car.twelve().to_array(),
                direction_plus_minus: NINETEEN_IN_TWENTY * end.direction_sigma_rad().to_degrees(),
            })
            .collect(),
        inputs: inputs.short(),
    })
}

#[derive(Serialize)]
struct BodiesForm {
    unit: &'static str,
    bodies: Vec<BodyForm>,
    missing: Vec<MissingBodyForm>,
    inputs: InputsForm,
}

#[derive(Serialize)]
struct BodyForm {
    body: String,
    gap: f64,
}

#[derive(Serialize)]
struct MissingBodyForm {
    body: String,
    why: String,
}

/// What the bodies are.
#[must_use]
pub fn bodies_result(inputs: &Inputs, around: &Surroundings) -> String {
    indented(&BodiesForm {
        unit: "mm",
        bodies: around
            .bodies
            .placed
            .iter()
            .map(|body| BodyForm {
                body: body.name.clone(),
                gap: body.gap_mm,
            })
            .collect(),
        missing: around
            .bodies
            .missing
            .iter()
            .map(|(body, why)| MissingBodyForm {
                body: body.clone(),
                why: why.to_string(),
            })
            .collect(),
        inputs: inputs.short(),
    })
}

#[derive(Serialize)]
struct StockForm {
    price: String,
    welds: u32,
    buy: Vec<BuyForm>,
    cut: Vec<CutForm>,
    missing: Vec<String>,
    inputs: InputsForm,
}

#[derive(Serialize)]
struct BuyForm {
    item: String,
    supplier: String,
    quantity: u32,
    each: String,
    together: String,
}

#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
struct CutForm {
    #[serde(skip_serializing_if = "Option::is_none")]
    item: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    on_hand: Option<String>,
    number: u32,
    gives: Vec<Vec<String>>,
}

/// What is bought and cut.
#[must_use]
pub fn stock_result(inputs: &Inputs, supply: &Supply) -> String {
    let plan = &supply.plan;
    indented(&StockForm {
        price: plan.price.to_string(),
        welds: supply.welds,
        buy: plan
            .buys
            .iter()
            .map(|buy| BuyForm {
                item: buy.item.clone(),
                supplier: buy.supplier.clone(),
                quantity: buy.quantity,
                each: buy.each.to_string(),
                together: buy.total.to_string(),
            })
            .collect(),
        cut: plan
            .cuts
            .iter()
            .map(|cut| {
                let (item, on_hand) = match &cut.source {
                    Source::Bought(item) => (Some(item.clone()), None),
                    Source::OnHand(name) => (None, Some(name.clone())),
                };
                CutForm {
                    item,
                    on_hand,
                    number: cut.number,
                    gives: cut
                        .parts
                        .iter()
                        .map(|part| {
                            part.serves
                                .iter()
                                .map(|serves| serves.mark.clone())
                                .collect()
                        })
                        .collect(),
                }
            })
            .collect(),
        missing: plan
            .missing
            .iter()
            .map(|missing| missing.mark.clone())
            .collect(),
        inputs: inputs.short(),
    })
}

#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
struct ChecksForm {
    fail: usize,
    not_checked: usize,
    pass: usize,
    does_not_apply: usize,
    findings: Vec<FindingForm>,
    inputs: InputsForm,
}

#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
struct FindingForm {
    rule: &'static str,
    state: &'static str,
    subject: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    value: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    plus_minus: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    at_least: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    at_most: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    unit: Option<&'static str>,
}

/// What the checks say.
#[must_use]
pub fn checks_result(inputs: &Inputs, board: &Board) -> String {
    indented(&ChecksForm {
        fail: board.count(State::Fail),
        not_checked: board.count(State::NotChecked),
        pass: board.count(State::Pass),
        does_not_apply: board.count(State::DoesNotApply),
        findings: board
            .findings()
            .iter()
            .map(|finding| FindingForm {
                rule: finding.rule.id(),
                state: finding.state.words(),
                subject: finding.subject.clone(),
                value: finding.measured.map(|measured| measured.value),
                plus_minus: finding.measured.and_then(|measured| measured.plus_minus),
                at_least: match finding.limit {
                    Some(Limit::AtLeast(limit)) => Some(limit),
                    _ => None,
                },
                at_most: match finding.limit {
                    Some(Limit::AtMost(limit)) => Some(limit),
                    _ => None,
                },
                unit: finding
                    .measured
                    .map(|measured| measured.unit.symbol().trim()),
            })
            .collect(),
        inputs: inputs.short(),
    })
}
