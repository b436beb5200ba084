//! At the supplier's counter: what to take when a line is out, worked out beforehand.

use super::buy::{spares_json, spares_text};
use super::solve::runs_of;
use super::{Done, Failure, load, print};
use crate::cli::shop::Counter;
use crate::terminal::{FAILS, WARNS, heading, paragraph, styled};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use tubewright_plan::stages;
use tubewright_plan::stock::{SpareList, spare_list};
use tubewright_stock::{
    CHEAPER_THOUGH_OUT, Money, Source, StockPlan, StockRequest, Substitute, at_most, plan_stock,
    substitutes, without,
};

/// Shows the substitutes.
///
/// # Errors
/// The folder cannot be read, an item is not known, or there is nothing to plan from.
pub(crate) fn run(arguments: &Counter) -> Result<Done, Failure> {
    let mut loaded = load::load(&arguments.at.folder)?;
    let only = arguments
        .only
        .iter()
        .map(|text| {
            let (item, count) = text.rsplit_once('=').ok_or_else(|| only_needs(text))?;
            let count = count.trim().parse().map_err(|_| only_needs(text))?;
            Ok::<(&str, u32), Failure>((item.trim(), count))
        })
        .collect::<Result<Vec<_>, _>>()?;
    let named = arguments.without.iter().map(String::as_str);
    for name in named.clone().chain(only.iter().map(|(item, _)| *item)) {
        if loaded.model.stock.item(name).is_none() {
            return Err(Failure::NoItem(name.to_owned()));
        }
    }
    let solved = runs_of(&mut loaded)?;
    let Some(supply) = solved.supply(&loaded, &[])? else {
        print("  There is no route yet, so there is nothing to buy: see `tubewright route`.\n")?;
        solved.plan.save(&mut loaded);
        return Ok(Done::Findings);
    };
    let out: Vec<&str> = named.collect();
    let is_changed = !out.is_empty() || !only.is_empty();
    let asked: StockRequest = only
        .iter()
        .fold(without(&supply.request, &out), |request, (item, most)| {
            at_most(&request, item, *most)
        });
    let usual = supply.plan.clone();
    let plan = if is_changed {
        plan_stock(&asked).map_err(stages::SupplyError::Plan)?
    } else {
        usual.clone()
    };
    let list = substitutes(&asked, &plan, arguments.pairs).map_err(stages::SupplyError::Plan)?;
    let spares = spare_list(&loaded.model, &asked, &plan);
    // The spares that go with a substitute, chosen with what is out left out.
    let spares_of = |substitute: &Substitute| {
        let out: Vec<&str> = substitute.out.iter().map(String::as_str).collect();
        spare_list(&loaded.model, &without(&asked, &out), &substitute.plan)
    };
    if arguments.at.json {
        let text = json!({
            "plan": plan_json(&plan),
            "spares": spares_json(&spares),
            "dearer-minor": is_changed.then(|| plan.cost.minor - usual.cost.minor),
            "substitutes": list.iter().map(|substitute| json!({
                "out": substitute.out,
                "dearer-minor": substitute.dearer_minor,
                "plan": plan_json(&substitute.plan),
                "spares": spares_json(&spares_of(substitute)),
            })).collect::<Vec<_>>(),
        });
        print(&format!("{text:#}\n"))?;
    } else {
        print(&take_text(&plan, &usual, is_changed))?;
        print(&spares_text(&spares))?;
        print(&out_text(&plan, &list, |substitute| {
            other_spares(&spares, &spares_of(substitute))
        }))?;
    }
    solved.plan.save(&mut loaded);
    Ok(if plan.is_full() {
        Done::Clean
    } else {
        Done::Findings
    })
}

fn only_needs(text: &str) -> Failure {
    Failure::Choice(format!("--only takes ITEM=NUMBER, not “{text}”"))
}

fn take_text(plan: &StockPlan, usual: &StockPlan, is_changed: bool) -> String {
    let mut text = heading("At the counter");
    text.push_str(&paragraph(
        &format!(
            "Take: {}. {} with tax and delivery.",
            bought(plan),
            plan.price
        ),
        2,
    ));
    if is_changed {
        text.push_str(&paragraph(
            &format!(
                "That is {} than with everything there, welds counted.",
                Money::new(plan.cost.minor - usual.cost.minor, plan.price.currency).more_or_less()
            ),
            2,
        ));
        text.push_str(&paragraph(&cut_so(usual, plan), 2));
    }
    text.push_str(&missing(plan));
    text
}

/// The spares of a substitute, when they are others than those of the plan.
fn other_spares(usual: &SpareList, then: &SpareList) -> String {
    let names = |list: &SpareList| -> Vec<String> {
        let bends = list.listed().iter();
        bends
            .map(|bend| match &bend.supplier {
                Some(supplier) => format!("{} ({supplier})", bend.item),
                None => bend.item.clone(),
            })
            .collect()
    };
    let (was, is) = (names(usual), names(then));
    if was == is {
        String::new()
    } else if is.is_empty() {
        " No spare is to be had then.".to_owned()
    } else {
        format!(" Spare then: {}.", is.join(", "))
    }
}

fn out_text(
    plan: &StockPlan,
    list: &[Substitute],
    spares_then: impl Fn(&Substitute) -> String,
) -> String {
    let mut text = heading("When a line is out");
    for substitute in list {
        let mut words = format!("{} out: ", substitute.out.join(" and "));
        if substitute.plan.is_full() {
            words.push_str(&format!(
                "take {}; {}, {} welds counted. {}{}",
                change(plan, &substitute.plan),
                substitute.plan.price,
                substitute.difference_words(),
                cut_so(plan, &substitute.plan),
                spares_then(substitute),
            ));
            text.push_str(&paragraph(&words, 2));
        } else {
            text.push_str(&paragraph(&words, 2));
            text.push_str(&missing(&substitute.plan));
        }
    }
    if list.is_empty() {
        text.push_str("  Nothing is to be bought.\n");
    }
    if list.iter().any(Substitute::is_cheaper) {
        text.push_str(&paragraph(&styled(WARNS, CHEAPER_THOUGH_OUT.to_owned()), 2));
    }
    text
}

fn missing(plan: &StockPlan) -> String {
    let marks: Vec<&str> = plan
        .missing
        .iter()
        .map(|missing| missing.mark.as_str())
        .collect();
    if marks.is_empty() {
        String::new()
    } else {
        paragraph(
            &styled(FAILS, format!("Cannot be made then: {}.", marks.join(", "))),
            2,
        )
    }
}

fn bought(plan: &StockPlan) -> String {
    let list: Vec<String> = plan
        .buys
        .iter()
        .map(|buy| format!("{} × {} ({})", buy.quantity, buy.item, buy.supplier))
        .collect();
    if list.is_empty() {
        "nothing, all is on hand".to_owned()
    } else {
        list.join(", ")
    }
}

/// What is bought more and less.
fn change(from: &StockPlan, to: &StockPlan) -> String {
    let count = |plan: &StockPlan| {
        let mut counts: BTreeMap<(String, String), i64> = BTreeMap::new();
        for buy in &plan.buys {
            *counts
                .entry((buy.item.clone(), buy.supplier.clone()))
                .or_insert(0) += i64::from(buy.quantity);
        }
        counts
    };
    let (was, is) = (count(from), count(to));
    let mut words = Vec::new();
    for (key, now) in &is {
        let before = was.get(key).copied().unwrap_or(0);
        if *now > before {
            words.push(format!("{} × {} ({}) more", now - before, key.0, key.1));
        }
    }
    for (key, before) in &was {
        let now = is.get(key).copied().unwrap_or(0);
        if now < *before && now > 0 {
            words.push(format!("{} × {} less", before - now, key.0));
        }
    }
    if words.is_empty() {
        "nothing in its place, the rest serves".to_owned()
    } else {
        words.join(", ")
    }
}

/// Pieces that come out of another item than before.
fn cut_so(from: &StockPlan, to: &StockPlan) -> String {
    let sources = |plan: &StockPlan| -> BTreeMap<String, String> {
        plan.cuts
            .iter()
            .flat_map(|cut| {
                let name = match &cut.source {
                    Source::OnHand(name) | Source::Bought(name) => name.clone(),
                };
                cut.parts
                    .iter()
                    .flat_map(|part| &part.serves)
                    .map(move |serves| (serves.mark.clone(), name.clone()))
            })
            .collect()
    };
    let (was, is) = (sources(from), sources(to));
    let mut by_item: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for (mark, item) in &is {
        if was.get(mark) != Some(item) {
            by_item.entry(item).or_default().push(mark);
        }
    }
    if by_item.is_empty() {
        return String::new();
    }
    let list: Vec<String> = by_item
        .iter()
        .map(|(item, marks)| format!("{} from {item}", marks.join(", ")))
        .collect();
    format!("Cut {}.", list.join("; "))
}

fn plan_json(plan: &StockPlan) -> Value {
    json!({
        "buy": plan.buys.iter().map(|buy| json!({
            "item": buy.item, "supplier": buy.supplier, "quantity": buy.quantity,
            "together": buy.total.to_string(),
        })).collect::<Vec<_>>(),
        "price": plan.price.to_string(),
        "welds": plan.welds,
        "cuts": plan.cuts.iter().map(|cut| json!({
            "from": match &cut.source { Source::OnHand(name) | Source::Bought(name) => name },
            "on-hand": matches!(cut.source, Source::OnHand(_)),
            "number": cut.number,
            "gives": cut.parts.iter().map(|part| part.serves.iter().map(|s| s.mark.clone()).collect::<Vec<_>>().join(" + ")).collect::<Vec<_>>(),
        })).collect::<Vec<_>>(),
        "missing": plan.missing.iter().map(|missing| missing.mark.clone()).collect::<Vec<_>>(),
    })
}
