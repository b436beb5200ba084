//! Crossovers that may stand in for each other, and the body of one that is made by hand.

use tubewright_build::model::{HandMade, Model};
use tubewright_build::resolved::ResolvedPractice;
use tubewright_geometry::{Vector, math};
use tubewright_route::RouteProblem;
use tubewright_route::problem::{Bar, Crossover, Ports};

use super::problem::{PosedProblem, Poser};
use super::tubes::price_of_one;
use crate::flow::{heads_at_part, price_of_heads};
use crate::stock::Opening;

/// A crossover that may stand in another's place.
#[derive(Clone, Debug)]
pub struct StandIn {
    /// Number in the problem of the crossover in whose place it may stand.
    pub crossover: usize,
    /// The part.
    pub part: Crossover,
}

/// The posed problem with one choice of outlets and crossovers made.
#[derive(Clone, Debug)]
pub struct Choice {
    /// The problem.
    pub problem: RouteProblem,
    /// Names of the runs whose outlet is sawn off.
    pub sawn: Vec<String>,
    /// Names of the crossovers where there is a choice of them; else none.
    pub parts: Vec<String>,
}

impl PosedProblem {
    /// A part where runs meet: one of the problem, or one that may stand in its place.
    #[must_use]
    pub fn part(&self, name: &str) -> Option<&Crossover> {
        let stand_ins = self.stand_ins.iter().map(|stand_in| &stand_in.part);
        let mut parts = self.problem.crossovers.iter().chain(stand_ins);
        parts.find(|part| part.id == name)
    }

    /// Every choice of outlets and crossovers: the outlets as they are, and sawn off where they may be; each with
    /// the crossovers as they are written, and with one other that may stand in. The first is the posed problem.
    #[must_use]
    pub fn choices(&self) -> Vec<Choice> {
        let whole = (self.problem.clone(), Vec::new());
        let outlets = core::iter::once(whole).chain(self.with_outlets_sawn());
        outlets
            .flat_map(|(problem, sawn)| {
                let as_written = self.with_part(problem.clone(), None);
                let others = self.stand_ins.iter();
                let others: Vec<Choice> = others
                    .map(|other| self.with_part(problem.clone(), Some(other)))
                    .collect();
                core::iter::once(as_written)
                    .chain(others)
                    .map(move |choice| Choice {
                        sawn: sawn.clone(),
                        ..choice
                    })
            })
            .collect()
    }

    fn with_part(&self, mut problem: RouteProblem, other: Option<&StandIn>) -> Choice {
        if let Some(other) = other
            && let Some(part) = problem.crossovers.get_mut(other.crossover)
        {
            part.clone_from(&other.part);
        }
        let has_choice = |number: usize| {
            let mut stand_ins = self.stand_ins.iter();
            stand_ins.any(|stand_in| stand_in.crossover == number)
        };
        let chosen = problem.crossovers.iter().enumerate();
        let parts = chosen
            .filter(|(number, _)| has_choice(*number))
            .map(|(_, part)| part.id.clone())
            .collect();
        Choice {
            problem,
            sawn: Vec::new(),
            parts,
        }
    }
}

impl Choice {
    /// What the crossovers between which there is a choice cost, in the shop's money-like units: the price of the
    /// bought one, or the bends and the hours for cutting and welding the opening of one made by hand. What can
    /// be had nowhere counts nothing here: the cutting plan says that it is missing.
    #[must_use]
    pub fn price_of_parts(&self, model: &Model, practice: &ResolvedPractice) -> f64 {
        let parts = self.parts.iter();
        parts
            .map(|name| {
                let Some(component) = model.build.component(name) else {
                    return 0.0;
                };
                let price = |item: &str| {
                    let item = model.stock.item(item)?;
                    price_of_one(&model.stock, item)
                };
                match Opening::of(model, name) {
                    Some(opening) => {
                        let hours = opening.minutes(practice) / 60.0;
                        2.0 * price(&opening.bend).unwrap_or(0.0)
                            + hours * practice.rate.major_per_unit
                    }
                    None => price(&component.item).unwrap_or(0.0),
                }
            })
            .sum()
    }

    /// What the flow that is lost where runs meet is worth, in the shop's money-like units.
    #[must_use]
    pub fn price_of_flow(&self, model: &Model, practice: &ResolvedPractice) -> f64 {
        let parts = self.problem.crossovers.iter();
        let heads = parts.map(|part| heads_at_part(model, &part.id)).sum();
        price_of_heads(practice, heads)
    }

    /// What sets it apart, in words; nothing where it is the only one. `several_outlets` says whether more than one
    /// outlet may be sawn off.
    #[must_use]
    pub fn words(&self, several_outlets: bool) -> Option<String> {
        let outlets = match self.sawn.as_slice() {
            [] => None,
            [_] if !several_outlets => Some("outlet sawn off".to_owned()),
            [name] => Some(format!("outlet of {name} sawn off")),
            _ => Some("outlets sawn off".to_owned()),
        };
        let parts = (!self.parts.is_empty()).then(|| format!("with {}", self.parts.join(" and ")));
        let words: Vec<String> = outlets.into_iter().chain(parts).collect();
        (!words.is_empty()).then(|| words.join(", "))
    }
}

impl Poser<'_> {
    /// The crossovers that may stand in the place of those that are passed, in the same room unless they have one
    /// of their own. One that cannot be put to the solver is left out.
    pub(super) fn stand_ins(&self) -> Vec<StandIn> {
        let build = &self.model.build;
        let mut all = Vec::new();
        for (number, name) in self.crossover_names.iter().enumerate() {
            let Some(written) = build.component(name) else {
                continue;
            };
            for other in &written.or {
                let Some(component) = build.component(other) else {
                    continue;
                };
                let room = self.zone_of(component).or_else(|| self.zone_of(written));
                if let Ok(part) = self.part(component, room) {
                    all.push(StandIn {
                        crossover: number,
                        part,
                    });
                }
            }
        }
        all
    }
}

/// Bars along an arc turn by at most so much each, radians.
const MOST_TURN_RAD: f64 = math::PI / 16.0;

/// The two bends of a crossover made by hand as bars that hold them: their legs, and chords of the arcs, thicker by
/// what an arc stands off its chord.
pub(super) fn bent_halves(made: &HandMade, sides: [&Ports; 2], radius_mm: f64) -> Vec<Bar> {
    let (clr_mm, angle) = (made.clr.mm(), made.angle.rad());
    let steps = (angle / MOST_TURN_RAD).ceil().max(1.0);
    let step = angle / steps;
    let off_chord_mm = clr_mm * (1.0 - math::cos(0.5 * step));
    let mut bars = Vec::new();
    for ports in sides {
        let (along, out) = (
            ports.inlet_direction.vector(),
            ports.outlet_direction.vector(),
        );
        let Some(inward) = (out - along * along.dot(out)).direction() else {
            continue;
        };
        let leg = |from: Vector, by: Vector| Bar {
            a: from,
            b: from + by * made.leg.mm(),
            radius_mm,
        };
        let begins = ports.inlet + along * made.leg.mm();
        let on_arc = |turned: f64| {
            let (sin, cos) = math::sin_cos(turned);
            begins + along * (clr_mm * sin) + inward * (clr_mm * (1.0 - cos))
        };
        if made.leg.mm() > 0.0 {
            bars.push(leg(ports.inlet, along));
        }
        let mut turned = 0.0;
        while turned < angle - 0.5 * step {
            bars.push(Bar {
                a: on_arc(turned),
                b: on_arc(turned + step),
                radius_mm: radius_mm + off_chord_mm,
            });
            turned += step;
        }
        if made.leg.mm() > 0.0 {
            bars.push(leg(ports.outlet, out * -1.0));
        }
    }
    bars
}
