//! What touches the chosen plan: choosing a way, taking up a change, a tacked joint as built.

use crate::api::Refusal;
use crate::car::Car;
use crate::deeds::{Deeded, recorded, refusal};
use crate::derived::Shown;
use core::sync::atomic::AtomicBool;
use tubewright_build::folder::Folder;
use tubewright_plan::fit::{
    JointFound, Offer, OfferSettings, Steel, as_built, joined, joint_as_built, offers,
    split_at_welds, why_no_offer,
};
use tubewright_plan::frozen::{
    accepted_beside, accepted_entry, chosen_entry, offer_of, standing_of,
};
use tubewright_plan::stages::{self, Alternative, Routed};

/// Work units for routing the rest anew behind a tacked joint: a second or two.
const REST_EFFORT: u64 = 4_000;

/// The way that was looked at, if it is still the one of that number.
fn way_of<'a>(car: &'a Car, way: usize, name: &str) -> Result<&'a Alternative, Refusal> {
    let job = car.job.as_ref().map_err(|why| refusal(why))?;
    if let Some(older) = &job.older {
        return Err(refusal(&format!(
            "these ways are {older}: find them again and look at them first"
        )));
    }
    let Some(Routed::Found(ways)) = &job.routed else {
        return Err(refusal("there is no way to choose yet"));
    };
    ways.get(way)
        .filter(|way| way.name == name)
        .ok_or_else(|| refusal("the ways were found anew meanwhile: look at them again"))
}

/// The entry that freezes a way piece by piece.
pub(crate) fn choosing(
    folder: &Folder,
    car: &Car,
    on: &str,
    way: usize,
    name: &str,
) -> Result<Deeded, Refusal> {
    let way = way_of(car, way, name)?;
    let job = car.job.as_ref().map_err(|why| refusal(why))?;
    let is_begun = |plan: &tubewright_plan::frozen::FrozenPlan| plan.is_begun;
    if job
        .chosen
        .as_ref()
        .is_some_and(|chosen| is_begun(&chosen.plan))
    {
        return Err(refusal(
            "steel of the chosen plan is bought or cut, so it stands; take the change up instead",
        ));
    }
    let units = car.model().build.shown_units().units;
    let entry = chosen_entry(on, &way.name, job.budget, &way.runs, units);
    recorded(folder, &entry, format!("chose {}", way.name))
}

/// The entry that takes up the runs of a way that differ from the chosen plan.
pub(crate) fn accepting(
    folder: &Folder,
    car: &Car,
    on: &str,
    way: usize,
    name: &str,
) -> Result<Deeded, Refusal> {
    let way = way_of(car, way, name)?;
    let job = car.job.as_ref().map_err(|why| refusal(why))?;
    let chosen = job
        .chosen
        .as_ref()
        .ok_or_else(|| refusal("nothing was chosen yet, so there is nothing to change"))?;
    let model = car.model();
    let offer = offer_of(&model.shop, &model.stock, &chosen.runs, &way.runs);
    if offer.is_nothing() {
        return Err(refusal(
            "that is the chosen plan: there is nothing to change",
        ));
    }
    let changed: Vec<_> = way
        .runs
        .iter()
        .filter(|run| offer.runs.iter().any(|changed| changed.run == run.name))
        .cloned()
        .collect();
    let units = model.build.shown_units().units;
    let entry = accepted_entry(on, &way.name, &changed, units);
    recorded(folder, &entry, format!("took up {}", way.name))
}

/// A tacked joint where the tape finds it, and the ways to go on from there.
pub(crate) fn joint_as_found(
    shown: &Shown,
    joint: &str,
) -> Result<(JointFound, Vec<Offer>, String), Refusal> {
    let car = &shown.car;
    let job = car.job.as_ref().map_err(|why| refusal(why))?;
    let chosen = job.chosen.as_ref().ok_or_else(|| {
        refusal("no way is chosen yet, so there is no joint to tack: choose one on Route")
    })?;
    let model = car.model();
    let steel = Steel::of(&model.shop);
    let supply = stages::supply(model, &job.around.practice, &chosen.planned, &[])
        .map_err(|error| refusal(&error.to_string()))?;
    // The joint is looked for where the joints before it leave it.
    let mut before = steel.clone();
    before.readings.remove(joint);
    let built = as_built(model, &job.around, &chosen.planned, &supply.whole, &before);
    let runs = split_at_welds(model, &built.runs, &supply.whole);
    let found = joint_as_built(model, &job.around, &runs, &steel, joint)
        .map_err(|error| refusal(&error.to_string()))?;
    let all = offers(
        model,
        &job.around,
        &job.posed,
        &runs,
        &steel,
        &found,
        OfferSettings {
            route_effort: REST_EFFORT,
            seed: job.budget.seed,
            cancel: &AtomicBool::new(false),
        },
    );
    let why_none = why_no_offer(&runs, &found);
    Ok((found, all, why_none))
}

/// The entry that takes up an offer behind a joint.
pub(crate) fn taking_up(
    folder: &Folder,
    shown: &Shown,
    on: &str,
    joint: &str,
    number: usize,
    what: &str,
) -> Result<Deeded, Refusal> {
    let (found, all, _) = joint_as_found(shown, joint)?;
    let offer = number
        .checked_sub(1)
        .and_then(|index| all.get(index))
        .filter(|offer| offer.kind.words() == what)
        .ok_or_else(|| refusal("the offers changed meanwhile: look at them again"))?;
    let run: Vec<_> = joined(&offer.runs)
        .into_iter()
        .nth(found.run)
        .into_iter()
        .collect();
    let name = run.first().map_or_else(String::new, |run| run.name.clone());
    // What stands keeps its place.
    let standing = run
        .first()
        .zip(offer.stands.as_ref())
        .and_then(|(run, mark)| {
            let until = run.pieces.iter().position(|piece| piece.mark == *mark)?;
            Some(standing_of(run, until))
        })
        .unwrap_or_default();
    let entry = accepted_beside(
        on,
        &format!("{name} from {joint}: {what}"),
        &run,
        &standing,
        shown.car.model().build.shown_units().units,
    );
    recorded(folder, &entry, format!("took up: {what}"))
}
