//! At the counter: what to take when something is out, worked out beforehand.

use super::PrintJob;
use crate::stages::Supply;
use crate::stock::spare_list;
use std::collections::BTreeMap;
use tubewright_packet::{Block, Body, Column, Sheet, SheetKind, Table};
use tubewright_stock::{CHEAPER_THOUGH_OUT, StockPlan, StockRequest, Substitute, without};

/// The counter sheet.
pub(super) fn sheet(job: &PrintJob<'_>, supply: &Supply) -> Sheet {
    let mut blocks = vec![Block::Words {
        text:
            "Find the line of what is out. Buy what it adds, leave what it drops; all else stays. \
               The cut cards of this packet then no longer hold: print them again before the first \
               cut."
                .to_owned(),
    }];
    match job.substitutes {
        Err(why) => blocks.push(Block::NotMade {
            what: "substitutes".to_owned(),
            why: why.to_owned(),
        }),
        Ok([]) => blocks.push(Block::Words {
            text: "Nothing is bought, so nothing can be out.".to_owned(),
        }),
        Ok(substitutes) => {
            let mut table = Table::new(
                "counter",
                vec![
                    Column::words("out").big(),
                    Column::wide("buy instead"),
                    Column::wide("leave"),
                    Column::figures("it costs"),
                ],
            );
            // A pair whose one item alone has no substitute tells nothing more.
            let hopeless: Vec<&String> = substitutes
                .iter()
                .filter(|s| s.out.len() == 1 && !s.plan.missing.is_empty())
                .flat_map(|s| &s.out)
                .collect();
            for substitute in substitutes {
                if substitute.out.len() > 1
                    && substitute.out.iter().any(|out| hopeless.contains(&out))
                {
                    continue;
                }
                let (more, less) = difference(&supply.plan, &substitute.plan);
                let added = if substitute.plan.missing.is_empty() {
                    format!(
                        "{}{}",
                        or_nothing(&more),
                        spares_then(job, supply, substitute)
                    )
                } else {
                    let lacks: Vec<&str> = substitute
                        .plan
                        .missing
                        .iter()
                        .map(|missing| missing.mark.as_str())
                        .collect();
                    format!("NO SUBSTITUTE for {}", lacks.join(", "))
                };
                let is_made = substitute.plan.missing.is_empty();
                let cells = [
                    substitute.out.join(" and "),
                    added,
                    if is_made {
                        or_nothing(&less)
                    } else {
                        "nothing; ask elsewhere".to_owned()
                    },
                    if is_made {
                        substitute.difference_words()
                    } else {
                        "–".to_owned()
                    },
                ];
                if is_made {
                    table.row(cells);
                } else {
                    table.strong_row(cells);
                }
            }
            blocks.push(Block::Table { table });
            blocks.push(Block::Words {
                text: "It costs: with the welds that a substitute adds, at the shop's own rate."
                    .to_owned(),
            });
            if substitutes.iter().any(Substitute::is_cheaper) {
                blocks.push(Block::Words {
                    text: CHEAPER_THOUGH_OUT.to_owned(),
                });
            }
        }
    }
    Sheet {
        kind: SheetKind::Counter,
        title: "At the counter: when something is out".to_owned(),
        is_lying: false,
        is_below: true,
        body: Body::Made { blocks },
    }
}

/// The spares that go with a substitute, when they are others than those of the list.
fn spares_then(job: &PrintJob<'_>, supply: &Supply, substitute: &Substitute) -> String {
    let out: Vec<&str> = substitute.out.iter().map(String::as_str).collect();
    let items = |request: &StockRequest, plan: &StockPlan| -> Vec<String> {
        let list = spare_list(job.model, request, plan);
        let bends = list.listed().iter();
        bends.map(|bend| bend.item.clone()).collect()
    };
    let usual = items(&supply.request, &supply.plan);
    let then = items(&without(&supply.request, &out), &substitute.plan);
    if usual == then {
        String::new()
    } else {
        format!("; as spare {}", or_nothing(&then))
    }
}

fn or_nothing(lines: &[String]) -> String {
    if lines.is_empty() {
        "nothing".to_owned()
    } else {
        lines.join("; ")
    }
}

/// What the other plan buys more, and what less.
fn difference(plan: &StockPlan, other: &StockPlan) -> (Vec<String>, Vec<String>) {
    let mut change: BTreeMap<(&str, &str), i64> = BTreeMap::new();
    for buy in &plan.buys {
        *change.entry((&buy.supplier, &buy.item)).or_default() -= i64::from(buy.quantity);
    }
    for buy in &other.buys {
        *change.entry((&buy.supplier, &buy.item)).or_default() += i64::from(buy.quantity);
    }
    let (mut more, mut less) = (Vec::new(), Vec::new());
    for ((supplier, item), count) in change {
        if count > 0 {
            more.push(format!("{count} × {item} at {supplier}"));
        } else if count < 0 {
            less.push(format!("{} × {item}", -count));
        }
    }
    (more, less)
}
