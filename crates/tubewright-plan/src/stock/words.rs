//! The planner's answers in the words of the trade.

use tubewright_stock::{MissingWhy, Money, Proof, SawTrouble, Source, StockPlan};

/// Where a stock item comes from.
#[must_use]
pub fn source_words(source: &Source) -> String {
    match source {
        Source::OnHand(name) => format!("from the shelf: {name}"),
        Source::Bought(item) => format!("bought: {item}"),
    }
}

/// Why a piece cannot be made, and what to do.
#[must_use]
pub fn missing_words(why: MissingWhy) -> &'static str {
    match why {
        MissingWhy::NothingFits => {
            "nothing on hand or on offer can give it: add an item or an offer to stock.toml"
        }
        MissingWhy::NotEnough => {
            "there is not enough of what could give it: find another supplier or another item"
        }
    }
}

/// What is wrong with a saw cut.
#[must_use]
pub fn trouble_words(trouble: SawTrouble) -> String {
    match trouble {
        SawTrouble::CannotHold { held, least } => format!(
            "the longer side is {:.1} mm and the saw holds no less than {:.1} mm: cut it by hand",
            held.mm(),
            least.mm()
        ),
        SawTrouble::TooLarge { od, capacity } => format!(
            "the tube is {:.1} mm across and the saw takes {:.1} mm: use another saw",
            od.mm(),
            capacity.mm()
        ),
    }
}

/// How sure it is that no plan is cheaper, with what the proof is about.
#[must_use]
pub fn proof_words(plan: &StockPlan) -> String {
    match plan.proof {
        Proof::Optimal => format!(
            "Proven: no other plan for these pieces costs less than {}, welds counted.",
            plan.cost
        ),
        Proof::NotBelow(minor) => {
            let most = (plan.cost.minor - minor).max(0);
            format!(
                "With welds it comes to {}. No plan for these pieces can come below {}: at most {} could still be saved.",
                plan.cost,
                Money::new(minor, plan.cost.currency),
                Money::new(most, plan.cost.currency)
            )
        }
        _ => format!("With welds it comes to {}.", plan.cost),
    }
}
