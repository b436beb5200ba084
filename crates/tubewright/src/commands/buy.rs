//! What to buy where.

use super::solve::runs_of;
use super::{Done, Failure, load, made, print};
use crate::cli::Buy;
use crate::terminal::table::{Side, Table};
use crate::terminal::{FAILS, WARNS, heading, paragraph, styled};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use tubewright_plan::frozen::FrozenPlan;
use tubewright_plan::stages::Supply;
use tubewright_plan::stock::{SpareList, missing_words, proof_words, spare_list};
use tubewright_stock::{Proof, Source};

/// Shows the buying plan.
///
/// # Errors
/// The folder cannot be read, or there is nothing to plan from.
pub(crate) fn run(arguments: &Buy) -> Result<Done, Failure> {
    let mut loaded = load::load(&arguments.at.folder)?;
    for name in &arguments.without {
        if loaded.model.stock.item(name).is_none() {
            return Err(Failure::NoItem(name.clone()));
        }
    }
    let mut solved = runs_of(&mut loaded)?;
    let Some(supply) = solved.supply(&loaded, &arguments.without)? else {
        if arguments.at.json {
            print("null\n")?;
        } else {
            print(
                "  There is no route yet, so there is nothing to buy: see `tubewright route`.\n",
            )?;
        }
        solved.plan.save(&mut loaded);
        return Ok(Done::Findings);
    };
    let spares = spare_list(&loaded.model, &supply.request, &supply.plan);
    if arguments.at.json {
        let mut list = as_json(&supply);
        list["spares"] = spares_json(&spares);
        list["done"] = made::as_json(&loaded.model, &supply);
        print(&format!("{list:#}\n"))?;
    } else {
        print(&as_text(&supply))?;
        print(&spares_text(&spares))?;
        print(&made::as_text(&loaded.model, &supply))?;
        print(&chosen_text(solved.frozen()))?;
    }
    if arguments.without.is_empty() {
        let chosen = solved.chosen.as_ref().map(|chosen| &chosen.plan);
        solved
            .plan
            .keep_supply(&loaded, &solved.around, solved.budget, chosen, &supply);
    }
    solved.plan.save(&mut loaded);
    Ok(if supply.plan.is_full() {
        Done::Clean
    } else {
        Done::Findings
    }
    .or_stopped())
}

/// Which plan the steel is for.
pub(crate) fn chosen_text(chosen: Option<&FrozenPlan>) -> String {
    match chosen {
        Some(plan) => paragraph(
            &format!("For the plan chosen on {}: {}.", plan.on, plan.route),
            2,
        ),
        None => paragraph(
            &styled(
                WARNS,
                "No way is chosen yet: this is for the first one. Choose before you buy or cut: `tubewright route FOLDER --choose 1`.",
            ),
            2,
        ),
    }
}

/// The list as text.
pub(crate) fn as_text(supply: &Supply) -> String {
    let plan = &supply.plan;
    let is_begun = !supply.progress.is_untouched();
    let mut text = heading(if is_begun { "Still to buy" } else { "Buy" });
    let mut table = Table::new(&[
        ("", Side::Right),
        ("each", Side::Right),
        ("together", Side::Right),
        ("supplier", Side::Left),
        ("item", Side::Left),
    ]);
    for buy in &plan.buys {
        table.row([
            format!("{} ×", buy.quantity),
            buy.each.to_string(),
            buy.total.to_string(),
            buy.supplier.clone(),
            buy.item.clone(),
        ]);
    }
    for delivery in &plan.deliveries {
        table.row([
            String::new(),
            String::new(),
            delivery.charge.to_string(),
            delivery.supplier.clone(),
            "delivery".to_owned(),
        ]);
    }
    text.push_str(&if table.is_empty() {
        "  Nothing: all is on hand.\n".to_owned()
    } else {
        table.render()
    });
    text.push_str(&format!(
        "  {} with tax and delivery; {} welds\n",
        plan.price, supply.welds
    ));
    if plan.is_full() {
        text.push_str(&paragraph(&proof_words(plan), 2));
    }
    let on_hand: Vec<String> = from_the_shelf(supply)
        .into_iter()
        .map(|(name, count)| {
            if count > 1 {
                format!("{count} × {name}")
            } else {
                name
            }
        })
        .collect();
    if !on_hand.is_empty() {
        text.push_str(&paragraph(
            &format!("From the shelf: {}.", on_hand.join(", ")),
            2,
        ));
    }
    for missing in &plan.missing {
        text.push_str(&paragraph(
            &styled(
                FAILS,
                format!(
                    "{} cannot be made: {}",
                    missing.mark,
                    missing_words(missing.why)
                ),
            ),
            2,
        ));
    }
    text
}

/// The spares, kept apart from the plan.
pub(crate) fn spares_text(spares: &SpareList) -> String {
    let lines = spares.words();
    lines.iter().map(|line| paragraph(line, 2)).collect()
}

/// The spares: the list of those asked for, and when no number is set the one that would be first.
pub(crate) fn spares_json(spares: &SpareList) -> Value {
    let list: Vec<Value> = spares
        .spares
        .bends
        .iter()
        .map(|bend| {
            json!({
                "item": bend.item, "supplier": bend.supplier, "adds": bend.price.to_string(),
                "remakes": bend.remakes.iter().map(|marks| marks.join("+")).collect::<Vec<_>>(),
            })
        })
        .collect();
    json!({
        "asked": spares.asked,
        "price-with": spares.asked.map(|_| spares.spares.price_with.to_string()),
        "advice": if spares.asked.is_none() { list.first() } else { None },
        "list": if spares.asked.is_some() { list.as_slice() } else { &[] },
    })
}

/// What is taken from the shelf, and how many.
fn from_the_shelf(supply: &Supply) -> BTreeMap<String, usize> {
    let plan = &supply.plan;
    let cut = plan.cuts.iter().map(|cut| &cut.source);
    let whole = plan.components.iter().map(|component| &component.source);
    let mut counts = BTreeMap::new();
    for source in cut.chain(whole) {
        if let Source::OnHand(name) = source {
            *counts.entry(name.clone()).or_insert(0) += 1;
        }
    }
    counts
}

fn as_json(supply: &Supply) -> Value {
    let plan = &supply.plan;
    json!({
        "buy": plan.buys.iter().map(|buy| json!({
            "item": buy.item, "supplier": buy.supplier, "quantity": buy.quantity,
            "each": buy.each.to_string(), "together": buy.total.to_string(),
        })).collect::<Vec<_>>(),
        "delivery": plan.deliveries.iter().map(|d| json!({
            "supplier": d.supplier, "charge": d.charge.to_string(),
        })).collect::<Vec<_>>(),
        "price": plan.price.to_string(),
        "cost-with-welds": plan.cost.to_string(),
        "no-plan-below": match plan.proof {
            Proof::NotBelow(minor) => tubewright_stock::Money::new(minor, plan.cost.currency),
            _ => plan.cost,
        }.to_string(),
        "welds": supply.welds,
        "from-the-shelf": from_the_shelf(supply).iter().map(|(name, count)| json!({
            "on-hand": name, "count": count,
        })).collect::<Vec<_>>(),
        "missing": plan.missing.iter().map(|missing| json!({
            "piece": missing.mark, "why": missing_words(missing.why),
        })).collect::<Vec<_>>(),
    })
}
