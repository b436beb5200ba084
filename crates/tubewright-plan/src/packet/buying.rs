//! What to buy where, and what to take along.

use super::PrintJob;
use super::cautions::shields;
use super::joint_map::all_of;
use tubewright_build::model::Model;
use tubewright_packet::{Block, Body, Column, Figure, Sheet, SheetKind, Table};
use tubewright_stock::{ItemKind, Missing, MissingWhy, Source, StockPlan};

use crate::hangers::HungRuns;
use crate::stages::Supply;
use crate::stock::{HANGERS, spare_list};

/// What an item is, from the catalogue.
pub(super) fn item_words(job: &PrintJob<'_>, supply: &Supply, name: &str) -> String {
    let stock = supply.request.items.iter().find(|item| item.name == name);
    if let Some(ItemKind::Stock(piece)) = stock.map(|item| &item.kind) {
        return format!(
            "{}; {}",
            job.lengths.stock(piece),
            job.lengths.tube(&piece.tube)
        );
    }
    component_words(job, name)
}

fn component_words(job: &PrintJob<'_>, name: &str) -> String {
    use tubewright_build::model::ItemKind as Written;
    let Some(item) = job.model.stock.item(name) else {
        return String::new();
    };
    let Written::Component(component) = &item.kind else {
        return String::new();
    };
    let mut text = format!(
        "{}, {} {} long",
        format!("{:?}", component.kind).to_lowercase(),
        job.lengths.saw(component.length.value.mm()),
        job.lengths.sign()
    );
    if let Some(tube) = item.tube.as_ref() {
        text.push_str(&format!(", necks for tube {tube}"));
    }
    text
}

fn delivery_words(model: &Model, item: &str, supplier: &str) -> String {
    model
        .stock
        .offers
        .iter()
        .find(|offer| offer.item == *item && offer.supplier == *supplier)
        .and_then(|offer| offer.delivery.clone())
        .unwrap_or_default()
}

/// Suppliers of a plan in the order in which they appear.
pub(super) fn suppliers(plan: &StockPlan) -> Vec<&str> {
    let mut names: Vec<&str> = Vec::new();
    for buy in &plan.buys {
        if !names.contains(&buy.supplier.as_str()) {
            names.push(&buy.supplier);
        }
    }
    names
}

/// Why a piece cannot be made.
pub(super) fn missing_words(missing: &Missing) -> String {
    match missing.why {
        MissingWhy::NothingFits => {
            format!("{}: nothing on hand or on offer can give it", missing.mark)
        }
        MissingWhy::NotEnough => format!(
            "{}: what could give it is not to be had in the quantity needed",
            missing.mark
        ),
    }
}

/// The buying list.
pub(super) fn sheet(job: &PrintJob<'_>, supply: &Supply) -> Sheet {
    let plan = &supply.plan;
    let mut blocks = vec![Block::Figures {
        figures: vec![
            Figure {
                value: plan.price.to_string(),
                what: "with tax and delivery".to_owned(),
            },
            Figure {
                value: plan
                    .buys
                    .iter()
                    .map(|buy| buy.quantity)
                    .sum::<u32>()
                    .to_string(),
                what: "things to buy".to_owned(),
            },
            Figure {
                value: suppliers(plan).len().to_string(),
                what: "suppliers".to_owned(),
            },
        ],
    }];
    let mut table = Table::new(
        "buy",
        vec![
            Column::boxes("got"),
            Column::figures("pieces").big(),
            Column::words("item").big(),
            Column::wide("what it is"),
            Column::words("ready in"),
            Column::figures("each"),
            Column::figures("together"),
        ],
    );
    for supplier in suppliers(plan) {
        let note = job
            .model
            .stock
            .supplier(supplier)
            .and_then(|known| known.note.clone());
        table.group(note.map_or_else(|| supplier.to_owned(), |note| format!("{supplier}: {note}")));
        for buy in plan.buys.iter().filter(|buy| buy.supplier == supplier) {
            table.row([
                String::new(),
                buy.quantity.to_string(),
                buy.item.clone(),
                item_words(job, supply, &buy.item),
                delivery_words(job.model, &buy.item, supplier),
                buy.each.to_string(),
                buy.total.to_string(),
            ]);
        }
        for delivery in plan.deliveries.iter().filter(|d| d.supplier == supplier) {
            table.row([
                String::new(),
                String::new(),
                "delivery".to_owned(),
                "charge for the whole order".to_owned(),
                String::new(),
                String::new(),
                delivery.charge.to_string(),
            ]);
        }
    }
    if table.is_empty() {
        blocks.push(Block::Words {
            text: "Nothing is to be bought: all is on hand.".to_owned(),
        });
    } else {
        blocks.push(Block::Table { table });
    }
    blocks.extend(spare_blocks(job, supply));
    let on_hand = on_hand(job, supply);
    if !on_hand.is_empty() {
        blocks.push(Block::Heading {
            text: "From the shelf".to_owned(),
        });
        blocks.push(Block::Table { table: on_hand });
    }
    Sheet {
        kind: SheetKind::Buy,
        title: "Buy".to_owned(),
        is_lying: false,
        is_below: false,
        body: Body::Made { blocks },
    }
}

/// Bends beside the plan and its price that could remake what is spoiled: those that the shop asks for, or, where
/// nobody has said how many, the one that could remake the most as a word of advice.
fn spare_blocks(job: &PrintJob<'_>, supply: &Supply) -> Vec<Block> {
    let list = spare_list(job.model, &supply.request, &supply.plan);
    let is_asked = list.asked.is_some();
    if list.asked == Some(0) || list.spares.bends.is_empty() {
        return Vec::new();
    }
    let mut table = Table::new(
        "spare",
        vec![
            Column::boxes("got"),
            Column::words("spare").big(),
            Column::words("from"),
            Column::wide("could remake any one of"),
            Column::figures("adds"),
        ],
    );
    for bend in &list.spares.bends {
        table.row([
            String::new(),
            bend.item.clone(),
            bend.supplier
                .clone()
                .unwrap_or_else(|| "lies over uncut".to_owned()),
            painted(&bend.remakes).join(", "),
            bend.price.to_string(),
        ]);
    }
    let remade: Vec<String> = list
        .spares
        .bends
        .iter()
        .flat_map(|bend| painted(&bend.remakes))
        .collect();
    let lost: Vec<String> = bends(supply)
        .filter(|part| !remade.contains(part))
        .collect();
    let mut words = if is_asked {
        format!(
            "{} with them, {} without.",
            list.spares.price_with, list.price_without
        )
    } else {
        format!(
            "Not in the list above nor in its price: nobody has said how many spares this shop takes. {} with it.",
            list.spares.price_with
        )
    };
    if !lost.is_empty() {
        words.push_str(&format!(
            " It remakes nothing of {}: saw those with care.",
            lost.join(", ")
        ));
    }
    vec![
        Block::Heading {
            text: if is_asked {
                "Spares, beside the plan"
            } else {
                "A spare that would save a second trip"
            }
            .to_owned(),
        },
        Block::Table { table },
        Block::Words { text: words },
    ]
}

fn on_hand(job: &PrintJob<'_>, supply: &Supply) -> Table {
    let mut table = Table::new(
        "on-hand",
        vec![
            Column::boxes("found"),
            Column::words("on hand").big(),
            Column::wide("what it is"),
            Column::words("for"),
        ],
    );
    for cut in &supply.plan.cuts {
        let Source::OnHand(name) = &cut.source else {
            continue;
        };
        let marks: Vec<String> = cut.parts.iter().map(super::cut_cards::part_mark).collect();
        table.row([
            String::new(),
            name.clone(),
            format!(
                "{}; {}",
                job.lengths.stock(&cut.stock),
                job.lengths.tube(&cut.stock.tube)
            ),
            marks.join(", "),
        ]);
    }
    for component in &supply.plan.components {
        if let Source::OnHand(name) = &component.source {
            table.row([
                String::new(),
                name.clone(),
                component_words(job, &component.item),
                component.mark.clone(),
            ]);
        }
    }
    table
}

/// Parts as they are painted.
fn painted(parts: &[Vec<String>]) -> Vec<String> {
    parts.iter().map(|marks| marks.join("+")).collect()
}

/// Painted names of the parts that are sawn from bends.
fn bends(supply: &Supply) -> impl Iterator<Item = String> + '_ {
    supply
        .plan
        .cuts
        .iter()
        .flat_map(|cut| &cut.parts)
        .filter(|part| matches!(part.place, tubewright_stock::PartPlace::Arc { .. }))
        .map(super::cut_cards::part_mark)
}

/// What to take to the counter, and what is still wanted.
pub(super) fn take_along(job: &PrintJob<'_>, supply: &Supply, hung: &[HungRuns]) -> Sheet {
    let mut tubes: Vec<String> = supply
        .request
        .runs
        .iter()
        .flat_map(|run| run.pieces.iter().map(|piece| job.lengths.tube(&piece.tube)))
        .collect();
    tubes.sort();
    tubes.dedup();
    let mut table = Table::new(
        "take-along",
        vec![
            Column::boxes("in the van"),
            Column::words("take along").big(),
            Column::wide("for what"),
        ],
    );
    for tube in &tubes {
        table.row([
            String::new(),
            format!("a cut end of {tube}"),
            "try every neck, flange and clamp on it: sizes by name do not fit for sure".to_owned(),
        ]);
    }
    for (what, why) in [
        (
            "this packet, a pen",
            "tick what you got; write down what was out",
        ),
        (
            "calipers and a tape",
            "outside diameter, wall, legs and centre-line radius as they are, not as they are called",
        ),
        (
            "an angle gauge",
            "the true angle of every bend, at the counter or as the parcel is opened",
        ),
        (
            "the clock strip of the tube, cut out",
            "it must close round the tube without gap or overlap",
        ),
    ] {
        table.row([String::new(), what.to_owned(), why.to_owned()]);
    }
    let mut blocks = vec![Block::Table { table }];
    blocks.push(Block::Heading {
        text: "Still wanted".to_owned(),
    });
    let wanted: Vec<String> = supply
        .plan
        .missing
        .iter()
        .map(missing_words)
        .chain(
            supply
                .plan
                .missing_spares
                .iter()
                .map(|(item, count)| format!("{count} × {item}, as a spare")),
        )
        .collect();
    let looked_for = crate::stock::wanted(job.model);
    if wanted.is_empty() && looked_for.is_empty() {
        blocks.push(Block::Words {
            text: "Every piece of the plan is on hand or on the list. Gaskets, bolts, nuts, clamps, hanger \
                   rubbers, wire and gas are in no list unless the shop keeps them as stock: count them on \
                   the car."
                .to_owned(),
        });
    }
    if !wanted.is_empty() {
        blocks.push(Block::Items { lines: wanted });
    }
    blocks.extend(shields(job));
    let placed = all_of(hung).count();
    for mut part in looked_for {
        if part.item == HANGERS && placed > 0 {
            part.count = u32::try_from(placed).unwrap_or(u32::MAX);
            part.for_components = vec!["the places on the hanger map".to_owned()];
        }
        blocks.push(Block::Words {
            text: format!(
                "{} × {}, for {}. Check before you pay:",
                part.count,
                part.item,
                part.for_components.join(", ")
            ),
        });
        blocks.push(Block::Items { lines: part.checks });
    }
    Sheet {
        kind: SheetKind::TakeAlong,
        title: "Take along, and still wanted".to_owned(),
        is_lying: false,
        is_below: true,
        body: Body::Made { blocks },
    }
}
