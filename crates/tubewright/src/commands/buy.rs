//! What to buy where.

use super::solve::{Solved, solve};
use super::{Done, Failure, load, print};
use crate::cli::{Buy, Effort};
use crate::terminal::table::{Side, Table};
use crate::terminal::{FAILS, heading, paragraph, styled};
use serde_json::{Value, json};
use tubewright_build::model::Model;
use tubewright_plan::stages::{Routed, Supply, supply};
use tubewright_stock::Source;

/// Shows the buying plan.
///
/// # Errors
/// The folder cannot be read, or there is nothing to plan from.
pub(crate) fn run(arguments: &Buy) -> Result<Done, Failure> {
    let loaded = load::load(&arguments.at.folder)?;
    for name in &arguments.without {
        if loaded.model.stock.item(name).is_none() {
            return Err(Failure::NoItem(name.clone()));
        }
    }
    let solved = solve(
        &loaded,
        Effort {
            effort: None,
            seed: None,
        },
    )?;
    let Some(supply) = supply_of(&loaded.model, &solved, &arguments.without)? else {
        print("  There is no route yet, so there is nothing to buy: see `tubewright route`.\n")?;
        return Ok(Done::Findings);
    };
    if arguments.at.json {
        print(&format!("{:#}\n", as_json(&supply)))?;
    } else {
        print(&as_text(&supply))?;
    }
    Ok(if supply.plan.is_full() {
        Done::Clean
    } else {
        Done::Findings
    })
}

/// The supply of the first alternative; `None` without a route.
///
/// # Errors
/// The stock file lacks something or the planner fails.
pub(crate) fn supply_of(
    model: &Model,
    solved: &Solved,
    without: &[String],
) -> Result<Option<Supply>, Failure> {
    let Routed::Found(alternatives) = &solved.routed else {
        return Ok(None);
    };
    let Some(best) = alternatives.first() else {
        return Ok(None);
    };
    Ok(Some(supply(
        model,
        &solved.around.practice,
        &best.runs,
        without,
    )?))
}

/// The list as text.
pub(crate) fn as_text(supply: &Supply) -> String {
    let plan = &supply.plan;
    let mut text = heading("Buy");
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
        "  {} with tax and delivery; {} welds; no plan is cheaper ({:?})\n",
        plan.price, plan.welds, plan.proof
    ));
    let on_hand: Vec<String> = plan
        .cuts
        .iter()
        .map(|cut| &cut.source)
        .chain(plan.components.iter().map(|component| &component.source))
        .filter_map(|source| match source {
            Source::OnHand(name) => Some(name.clone()),
            Source::Bought(_) => None,
        })
        .collect();
    if !on_hand.is_empty() {
        text.push_str(&paragraph(
            &format!("From the shelf: {}.", on_hand.join(", ")),
            2,
        ));
    }
    for missing in &plan.missing {
        text.push_str(&format!(
            "  {}\n",
            styled(
                FAILS,
                format!("{} cannot be made: {:?}", missing.mark, missing.why)
            )
        ));
    }
    text
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
        "welds": plan.welds,
        "missing": plan.missing.iter().map(|m| json!({"piece": m.mark, "why": format!("{:?}", m.why)})).collect::<Vec<_>>(),
    })
}
