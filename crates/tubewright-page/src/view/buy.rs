//! What to buy, what to cut and how to clock it.

use crate::api::{
    BuyLine, BuyView, CardView, ClockView, ClosingView, CutView, DeliveryLine, RollView,
};
use crate::derived::Shown;
use std::collections::{BTreeMap, BTreeSet};
use tubewright_build::model::{EntryKind, Model};
use tubewright_plan::fit::{FitSheet, Steel};
use tubewright_plan::lengths::Lengths;
use tubewright_plan::packet::closing;
use tubewright_plan::routes::roll_marks;
use tubewright_plan::stages::Supply;
use tubewright_plan::stock::{missing_words, proof_words, trouble_words};
use tubewright_stock::{Cut, CutCard, CutPart, FaceBy, KerfSide, Source, StockEnd, StockPlan};

pub(super) fn of(shown: &Shown, supply: &Supply) -> BuyView {
    let plan = &supply.plan;
    let model = shown.car.model();
    let is_anew = shown.is_planned_anew();
    let chosen = shown.car.good_job().and_then(|job| job.chosen.as_ref());
    let steel = Steel::of(&model.shop);
    let mut bought = bought(model);
    let mut lines: Vec<BuyLine> = plan
        .buys
        .iter()
        .map(|buy| {
            let key = (buy.item.clone(), buy.supplier.clone());
            let got = bought.remove(&key).unwrap_or(0);
            BuyLine {
                item: buy.item.clone(),
                supplier: buy.supplier.clone(),
                // Planned anew, the list holds only what is still to be bought.
                quantity: buy.quantity + if is_anew { got } else { 0 },
                got,
                is_out: steel.record.out.iter().any(|(item, supplier)| {
                    *item == buy.item && supplier.as_ref().is_none_or(|it| *it == buy.supplier)
                }),
                each: buy.each.to_string(),
                together: buy.total.to_string(),
            }
        })
        .collect();
    let mut surplus = Vec::new();
    for ((item, supplier), count) in bought {
        if is_anew {
            lines.push(BuyLine {
                item,
                supplier,
                quantity: count,
                got: count,
                is_out: false,
                each: String::new(),
                together: String::new(),
            });
        } else {
            surplus.push(format!("{count} × {item}"));
        }
    }
    BuyView {
        what_for: chosen.map_or_else(
            || "the way that is shown on Route: nothing is chosen yet".to_owned(),
            |chosen| format!("{}, chosen {}", chosen.plan.route, chosen.plan.on),
        ),
        is_chosen: chosen.is_some(),
        lines,
        planned_anew: is_anew.then(|| changed_words(shown, supply)),
        deliveries: plan
            .deliveries
            .iter()
            .map(|delivery| DeliveryLine {
                supplier: delivery.supplier.clone(),
                charge: delivery.charge.to_string(),
            })
            .collect(),
        price: plan.price.to_string(),
        proof: if plan.is_full() {
            proof_words(plan)
        } else {
            String::new()
        },
        welds: plan.welds,
        surplus,
        on_hand: on_hand(supply),
        missing: plan
            .missing
            .iter()
            .map(|missing| {
                format!(
                    "{} cannot be made: {}",
                    missing.mark,
                    missing_words(missing.why)
                )
            })
            .collect(),
    }
}

/// What the new list buys more and less than the one before anything was out.
fn changed_words(shown: &Shown, now: &Supply) -> Vec<String> {
    let Some(Ok(before)) = shown.whole() else {
        return Vec::new();
    };
    let (more, _) = difference(&before.plan, &now.plan);
    let steel = Steel::of(&shown.car.model().shop);
    let out: Vec<String> = steel
        .record
        .out
        .iter()
        .map(|(item, supplier)| match supplier {
            Some(supplier) => format!("{item} is out at {supplier}"),
            None => format!("{item} is out everywhere"),
        })
        .collect();
    let spoiled: BTreeSet<&String> = steel.spoiled.iter().collect();
    let mut words = out;
    words.extend(spoiled.iter().map(|piece| format!("{piece} was spoiled")));
    words.extend(more.into_iter().map(|line| format!("in its place: {line}")));
    words
}

/// What the other plan buys more, and what less.
pub(super) fn difference(plan: &StockPlan, other: &StockPlan) -> (Vec<String>, Vec<String>) {
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
            more.push(format!("{count} × {item} ({supplier})"));
        } else if count < 0 {
            less.push(format!("{} × {item} ({supplier})", -count));
        }
    }
    (more, less)
}

/// What is taken from the shelf, and how many.
fn on_hand(supply: &Supply) -> Vec<String> {
    let plan = &supply.plan;
    let cut = plan.cuts.iter().map(|cut| &cut.source);
    let whole = plan.components.iter().map(|component| &component.source);
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    for source in cut.chain(whole) {
        if let Source::OnHand(name) = source {
            *counts.entry(name).or_insert(0) += 1;
        }
    }
    counts
        .into_iter()
        .map(|(name, count)| {
            if count > 1 {
                format!("{count} × {name}")
            } else {
                name.to_owned()
            }
        })
        .collect()
}

/// What was bought so far, by item and supplier.
fn bought(model: &Model) -> BTreeMap<(String, String), u32> {
    let mut bought = BTreeMap::new();
    for entry in &model.shop.entries {
        if let EntryKind::Got {
            item,
            supplier,
            count,
        } = &entry.what
        {
            let from = supplier.as_ref().map(ToString::to_string);
            let key = (item.to_string(), from.unwrap_or_default());
            *bought.entry(key).or_insert(0) += *count;
        }
    }
    bought
}

pub(super) fn cards(shown: &Shown, supply: &Supply) -> Vec<CardView> {
    let fit = shown.fit_now();
    (0..)
        .zip(&supply.cards)
        .map(|(picture, of)| card(picture, of, fit))
        .collect()
}

fn closing_view(lengths: Lengths, fit: Option<&FitSheet>, card: &CutCard) -> Option<ClosingView> {
    let closing = closing(lengths, fit?, card)?;
    Some(ClosingView {
        words: closing.words,
        cuts: closing.card.map(|card| card.cuts.iter().map(cut).collect()),
    })
}

/// Parts by the marks of the pieces they serve.
pub(super) fn marks_of(parts: &[CutPart]) -> Vec<Vec<String>> {
    parts
        .iter()
        .map(|part| part.serves.iter().map(|s| s.mark.clone()).collect())
        .collect()
}

fn card(picture: u32, card: &CutCard, fit: Option<&FitSheet>) -> CardView {
    let (item, is_on_hand) = match &card.source {
        Source::OnHand(name) => (name.clone(), true),
        Source::Bought(name) => (name.clone(), false),
    };
    CardView {
        item,
        is_on_hand,
        number: card.number,
        picture,
        stock: Lengths::Millimetres.stock(&card.stock),
        stock_in_inches: Lengths::Inches.stock(&card.stock),
        parts: marks_of(&card.parts),
        cuts: card.cuts.iter().map(cut).collect(),
        closing: closing_view(Lengths::Millimetres, fit, card),
        closing_in_inches: closing_view(Lengths::Inches, fit, card),
        warnings: card
            .findings
            .iter()
            .map(|finding| format!("cut {}: {}", finding.cut, trouble_words(finding.trouble)))
            .collect(),
    }
}

pub(super) fn clocks(supply: &Supply) -> Vec<ClockView> {
    supply
        .fits
        .iter()
        .map(|fit| ClockView {
            run: fit.run.clone(),
            part: fit.marks.clone(),
            clock: fit.clock.deg(),
            round: fit.round_outside.mm(),
            is_reversed: fit.is_reversed,
        })
        .collect()
}

pub(super) fn rolls(shown: &Shown) -> Vec<RollView> {
    let model = shown.car.model();
    shown
        .car
        .runs(shown.way)
        .iter()
        .flat_map(|run| roll_marks(model, run))
        .map(|roll| RollView {
            run: roll.run,
            mark: roll.mark,
            component: roll.component,
            clock: roll.clock.deg(),
            round: roll.round_neck.mm(),
            from_flat: roll.from_flat.deg(),
        })
        .collect()
}

fn cut(cut: &Cut) -> CutView {
    CutView {
        number: cut.number,
        from: match cut.from {
            StockEnd::A => "A",
            StockEnd::B => "B",
        }
        .to_owned(),
        outside: cut.reach.outside.mm(),
        inside: cut.reach.inside.mm(),
        side: cut.reach.side.mm(),
        dress: match cut.by {
            FaceBy::Dress { most } => Some(most.mm()),
            FaceBy::Saw => None,
        },
        saw: cut.angle.deg(),
        kerf_toward: match cut.kerf {
            KerfSide::TowardA => "A",
            KerfSide::TowardB => "B",
        }
        .to_owned(),
        faces: cut.faces.clone(),
    }
}
