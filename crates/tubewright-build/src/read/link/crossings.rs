//! Crossovers that are made by hand of two bends, crossovers that may stand in for each other, and stretches that stand in
//! the car already.

use super::{Linking, Said, header};
use crate::model::{
    Build, Component, ComponentItem, ComponentKind, Flows, HandMade, Item, ItemKind, Name, Port,
    RunEnd, Stock, StockShape, Tube,
};
use crate::quantity::{Mass, Quantity, write_mm};
use std::collections::BTreeSet;
use tubewright_geometry::template::SplitBend;
use tubewright_geometry::{Angle, Length, Point, UnitVector, Vector, math};

/// Digits behind the point of lengths that follow from others, mm.
const DECIMALS: usize = 3;

impl Linking<'_, '_> {
    /// Fills in what follows from the bend that a crossover is made of; one that cannot be made is left out.
    pub(super) fn hand_made(&mut self, stock: &mut Stock) {
        let mut items = core::mem::take(&mut stock.items);
        let shelf = items.clone();
        items.retain_mut(|item| {
            let (name, tube, span) = (item.name.clone(), item.tube.clone(), item.span);
            let ItemKind::Component(part) = &mut item.kind else {
                return true;
            };
            if part.hand_made.is_none() {
                return true;
            }
            let tube = tube.and_then(|tube| stock.tube(&tube));
            match made_of_two(part, tube, &shelf) {
                Ok(()) => true,
                Err((why, what)) => {
                    let made = Said::new(format!("`{name}` cannot be made by hand"), why, what);
                    self.error(header(span), made);
                    false
                }
            }
        });
        stock.items = items;
    }

    /// Keeps of the parts that may stand in for each other those that can: crossovers with the same sides.
    pub(super) fn stand_ins(&mut self, build: &mut Build, stock: &Stock) {
        let components = build.components.clone();
        let passed: BTreeSet<Name> = build
            .runs
            .iter()
            .flat_map(|run| &run.through)
            .map(|through| through.component.clone())
            .collect();
        let ended_at: BTreeSet<Name> = build
            .runs
            .iter()
            .flat_map(|run| [&run.from, &run.to])
            .filter_map(|end| match end {
                RunEnd::Port { component, .. } => Some(component.clone()),
                RunEnd::End(_) => None,
            })
            .collect();
        for component in &mut build.components {
            let own = sides(stock, component);
            let mut seen = BTreeSet::from([component.name.clone()]);
            let (name, span) = (component.name.clone(), component.span);
            component.or.retain(|stand_in| {
                let other = components.iter().find(|other| other.name == *stand_in);
                let trouble = if own.is_none() || ended_at.contains(&name) {
                    Some((
                        "only a crossover that runs pass through has others that may stand in its place"
                            .to_owned(),
                        "leave `or` out here".to_owned(),
                    ))
                } else if !seen.insert(stand_in.clone()) {
                    Some((
                        format!("`{stand_in}` is there already"),
                        "name each other part once".to_owned(),
                    ))
                } else if other.and_then(|other| sides(stock, other)) != own {
                    Some((
                        format!("`{stand_in}` is no crossover with the same sides"),
                        "name a component whose item is a crossover with sides L and R".to_owned(),
                    ))
                } else if passed.contains(stand_in) || ended_at.contains(stand_in) {
                    Some((
                        format!("a run has `{stand_in}` already: it cannot stand in two places"),
                        "add another component of the same item".to_owned(),
                    ))
                } else {
                    None
                };
                let Some((why, what)) = trouble else {
                    return true;
                };
                let label = format!("`{stand_in}` cannot stand in for `{name}`");
                self.error(header(span), Said::new(label, why, what));
                false
            });
        }
    }

    /// Only parts where runs meet are turned as they are written: any other part lies as its run does.
    pub(super) fn turned_parts(&mut self, build: &mut Build, stock: &Stock) {
        let ends = build.runs.iter().flat_map(|run| [&run.from, &run.to]);
        let met: BTreeSet<Name> = ends
            .filter_map(|end| match end {
                RunEnd::Port { component, .. } => Some(component.clone()),
                RunEnd::End(_) => None,
            })
            .collect();
        for component in &mut build.components {
            let is_turned = component.turn.is_some() || component.may_turn.is_some();
            if is_turned && !met.contains(&component.name) && sides(stock, component).is_none() {
                let said = Said::new(
                    format!("`{}` lies as its run does", component.name),
                    "`turn` and `may-turn` are for parts where runs meet: crossovers, merges, forks, cones and shared silencers"
                        .to_owned(),
                    "leave both out here".to_owned(),
                );
                self.error(header(component.span), said);
                component.turn = None;
                component.may_turn = None;
            }
        }
    }

    /// Leaves out stretches that do not stand at two ends, and other parts that would.
    pub(super) fn stretches(&mut self, build: &mut Build, stock: &Stock) {
        let mut components = core::mem::take(&mut build.components);
        components.retain(|component| {
            let kind = stock.item(&component.item).map(|item| &item.kind);
            let is_stretch = matches!(kind, Some(ItemKind::Component(item))
                if item.kind == ComponentKind::Stretch);
            let flows = |name: &Name| build.end(name).map(|end| end.flows);
            let (why, what) = match &component.stands {
                None if !is_stretch => return true,
                Some([into, out])
                    if is_stretch
                        && flows(into) != Some(Flows::Out)
                        && flows(out) != Some(Flows::In) =>
                {
                    return true;
                }
                None => (
                    "a stretch stands in the car, and nothing says where",
                    "measure both of its ends and name them: `stands = [\"end in\", \"end out\"]`",
                ),
                Some(_) if !is_stretch => (
                    "`stands` is for items of kind `stretch`",
                    "leave `stands` out, or name an item of kind `stretch`",
                ),
                Some(_) => (
                    "gas comes in at its first end (`flows = \"in\"`) and goes out at its second (`flows = \"out\"`)",
                    "swap the two, or look at `flows` of the ends",
                ),
            };
            let label = format!("`{}` cannot stand", component.name);
            self.error(header(component.span), Said::new(label, why, what));
            false
        });
        build.components = components;
    }
}

/// Names of the sides of a crossover; `None` for anything else.
fn sides<'a>(stock: &'a Stock, component: &Component) -> Option<BTreeSet<&'a str>> {
    match &stock.item(&component.item)?.kind {
        ItemKind::Component(item) if item.kind == ComponentKind::Crossover => {
            Some(item.ports.iter().map(|port| port.name.as_str()).collect())
        }
        _ => None,
    }
}

/// Fills in sizes and ports; why it cannot be made and what to do, where it cannot.
fn made_of_two(
    part: &mut ComponentItem,
    tube: Option<&Tube>,
    shelf: &[Item],
) -> Result<(), (String, String)> {
    let Some(made) = &mut part.hand_made else {
        return Ok(());
    };
    let say = |why: String, what: &str| Err((why, what.to_owned()));
    let bend = shelf.iter().find(|item| item.name == made.bend);
    let shape = bend.map(|item| &item.kind);
    let Some(ItemKind::Stock(StockShape::Bend { angle, clr, legs })) = shape else {
        return say(
            format!("`{}` is no bend", made.bend),
            "name a bend of stock.toml",
        );
    };
    let Some(tube) = tube else {
        return say(
            "its tube is not in stock.toml".to_owned(),
            "name the tube of its bend",
        );
    };
    if bend.and_then(|bend| bend.tube.as_ref()) != Some(&tube.name) {
        return say(
            format!("`{}` is a bend of another tube", made.bend),
            "name a bend of the same tube",
        );
    }
    let shorter_mm = legs[0].mm().min(legs[1].mm());
    if made.leg.mm() > shorter_mm {
        return say(
            format!(
                "the legs of `{}` are {} long, and {} are to stay on",
                made.bend,
                write_mm(Length::from_mm(shorter_mm), DECIMALS),
                made.leg.text
            ),
            "let less leg stay on, or take a bend with longer legs",
        );
    }
    made.angle = angle.value;
    made.clr = clr.value;
    let (outer_mm, bore_mm) = (0.5 * tube.od.mm(), 0.5 * tube.od.mm() - tube.wall.mm());
    let plane_mm = clr.mm() + outer_mm - made.taken_off.mm();
    let split = |radius_mm: f64| SplitBend::new(clr.mm(), radius_mm, plane_mm, angle.rad());
    if let Err(error) = split(bore_mm) {
        return say(
            format!("{} taken off opens no bore: {error}", made.taken_off.text),
            "take off more than the wall and less than the whole tube",
        );
    }
    let reach_mm = match split(outer_mm) {
        Ok(half) if half.runs_into_legs() => {
            let whole = half.half_length_mm(0.0).unwrap_or(f64::INFINITY);
            whole - (clr.mm() + outer_mm) * 0.5 * angle.rad()
        }
        Ok(_) => 0.0,
        Err(error) => {
            return say(error.to_string(), "look at the bend and `taken-off` again");
        }
    };
    if reach_mm > 0.0 && reach_mm >= made.leg.mm() {
        return say(
            format!(
                "{} taken off opens {reach_mm:.1} mm into the legs, of which {} stay on",
                made.taken_off.text, made.leg.text
            ),
            "take off less, let more leg stay on, or take a bend of more degrees",
        );
    }
    let sized = Sizes::of(made, plane_mm);
    let kg_per_metre = tube.kg_per_metre();
    let metres = 2.0 * (clr.mm() * angle.rad() + 2.0 * made.leg.mm()) / 1000.0;
    let kg = kg_per_metre * metres;
    part.mass = Some(Quantity::new(Mass::from_kg(kg), format!("{kg:.2} kg")));
    let length = Length::from_mm(sized.length_mm);
    part.length = Quantity::new(length, write_mm(length, DECIMALS));
    part.ports = sized.ports(&tube.name);
    Ok(())
}

/// Where the ends of the two bends lie.
struct Sizes {
    length_mm: f64,
    /// Of each port from the plane between the two halves.
    aside_mm: f64,
    half_turn: Angle,
}

impl Sizes {
    /// In a bend whose axis lies `plane_mm` from the plane, the arc's ends are R sin(A/2) before and behind the
    /// middle and R cos(A/2) from the axis; the legs lead on along the tangents.
    fn of(made: &HandMade, plane_mm: f64) -> Self {
        let half_turn = Angle::from_rad(0.5 * made.angle.rad());
        let (sin, cos) = math::sin_cos(half_turn.rad());
        let (clr_mm, leg_mm) = (made.clr.mm(), made.leg.mm());
        Self {
            length_mm: 2.0 * (clr_mm * sin + leg_mm * cos),
            aside_mm: plane_mm - clr_mm * cos + leg_mm * sin,
            half_turn,
        }
    }

    /// Three o'clock looking downstream is the car's left when the gas flows rearwards.
    fn ports(&self, tube: &Name) -> Vec<Port> {
        let (sin, cos) = math::sin_cos(self.half_turn.rad());
        let ends = [(Flows::In, 0.0, -1.0), (Flows::Out, self.length_mm, 1.0)];
        [("L", 1.0), ("R", -1.0)]
            .into_iter()
            .flat_map(|(side, toward)| {
                ends.map(|(flows, x, away)| Port {
                    name: side.to_owned(),
                    flows,
                    at: Point::new(x, 0.0, toward * self.aside_mm),
                    travel: UnitVector::from_unit(Vector::new(cos, 0.0, toward * away * sin)),
                    tube: tube.clone(),
                })
            })
            .collect()
    }
}
