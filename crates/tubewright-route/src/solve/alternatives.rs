//! What makes one route another one: the side of a body it passes, where its components are, and
//! what it is made of.

use tubewright_geometry::Vector;

use super::improve::Solution;
use super::layout::{Joint, Slot};
use super::room::Contact;
use super::system::{Context, System};
use crate::problem::BodyKind;

/// On which side of a body a run passes it, as seen on the car.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Passing {
    Over,
    Under,
    LeftOf,
    RightOf,
    Before,
    Behind,
}

impl Passing {
    fn of(away: Vector) -> Self {
        let (x, y, z) = (away.x.abs(), away.y.abs(), away.z.abs());
        if z >= x && z >= y {
            if away.z > 0.0 {
                Self::Over
            } else {
                Self::Under
            }
        } else if y >= x {
            if away.y > 0.0 {
                Self::RightOf
            } else {
                Self::LeftOf
            }
        } else if away.x > 0.0 {
            Self::Behind
        } else {
            Self::Before
        }
    }

    const fn words(self) -> &'static str {
        match self {
            Self::Over => "over",
            Self::Under => "under",
            Self::LeftOf => "left of",
            Self::RightOf => "right of",
            Self::Before => "before",
            Self::Behind => "behind",
        }
    }
}

/// Identity of a route.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Identity {
    /// Run, body, side.
    sides: Vec<(usize, usize, Passing)>,
    /// For each chain the components with the number of bends before each.
    components: Vec<(usize, usize, usize)>,
    /// For each run the bends and straights bought.
    material: Vec<(usize, Joint, usize)>,
    straights: usize,
}

impl Identity {
    /// True when the two differ in more than material.
    pub(crate) fn goes_another_way(&self, other: &Self) -> bool {
        self.sides != other.sides || self.components != other.components
    }
}

/// Bodies within this of the tube say which way a route goes, mm over the required gap.
const PASSED_MM: f64 = 70.0;
/// Bodies named in a route's name.
const NAMED: usize = 3;

/// Identity and name of a solution.
pub(crate) fn identify(ctx: &Context<'_>, solution: &Solution) -> (Identity, String) {
    let system = System::new(ctx, solution.chains.clone());
    let laid = system.lay(&solution.x);
    // For each run and body the tightest contact, in order of travel of the place.
    let mut passed: Vec<(usize, usize, Contact, f64)> = Vec::new();
    let mut contacts = Vec::new();
    let mut base = 0.0;
    for (chain, laid) in system.chains.iter().zip(&laid) {
        for element in &laid.elements {
            contacts.clear();
            ctx.room.near(&element.tube, PASSED_MM, &mut contacts);
            for contact in &contacts {
                let is_car = ctx
                    .problem
                    .bodies
                    .get(contact.body)
                    .is_some_and(|b| b.kind == BodyKind::Car);
                if !is_car {
                    continue;
                }
                let at = base + element.along;
                match passed
                    .iter_mut()
                    .find(|(r, b, _, _)| *r == chain.run && *b == contact.body)
                {
                    Some(known) if known.2.margin <= contact.margin => {}
                    Some(known) => {
                        known.2 = *contact;
                        known.3 = at;
                    }
                    None => passed.push((chain.run, contact.body, *contact, at)),
                }
            }
        }
        base += laid.length;
    }
    let mut sides: Vec<_> = passed
        .iter()
        .map(|(run, body, contact, _)| (*run, *body, Passing::of(contact.away)))
        .collect();
    sides.sort_unstable();
    // The few tightest name the route, in order of travel.
    passed.sort_by(|a, b| a.2.margin.total_cmp(&b.2.margin));
    passed.dedup_by_key(|p| p.1);
    passed.truncate(NAMED);
    passed.sort_by(|a, b| a.3.total_cmp(&b.3));
    let mut words: Vec<String> = passed
        .iter()
        .filter_map(|(_, body, contact, _)| {
            let id = &ctx.problem.bodies.get(*body)?.id;
            Some(format!("{} the {id}", Passing::of(contact.away).words()))
        })
        .collect();
    words.dedup();
    let mut components = Vec::new();
    let mut material: Vec<(usize, Joint, usize)> = Vec::new();
    let mut straights = 0;
    for (c, chain) in solution.chains.iter().enumerate() {
        let mut bends = 0;
        for joint in &chain.layout.joints {
            match *joint {
                Joint::Bend { .. } => {
                    bends += 1;
                    match material
                        .iter_mut()
                        .find(|(run, j, _)| *run == chain.run && j == joint)
                    {
                        Some(m) => m.2 += 1,
                        None => material.push((chain.run, *joint, 1)),
                    }
                }
                Joint::Component(k) => components.push((c, k, bends)),
            }
        }
        straights += chain
            .layout
            .slots
            .iter()
            .filter(|s| **s == Slot::Bought)
            .count();
    }
    material.sort_unstable();
    let name = if words.is_empty() {
        let bends: usize = solution.chains.iter().map(|c| c.layout.bends()).sum();
        format!("in the open, {bends} bends, {straights} straights")
    } else {
        words.join(", ")
    };
    (
        Identity {
            sides,
            components,
            material,
            straights,
        },
        name,
    )
}

/// The cheapest, then the cheapest of each other way, then other lists of material; at most `most`.
pub(crate) fn distinct(
    ctx: &Context<'_>,
    found: Vec<Solution>,
    most: usize,
) -> Vec<(Solution, String)> {
    let mut all: Vec<(Solution, Identity, String)> = Vec::new();
    for solution in found {
        let (identity, name) = identify(ctx, &solution);
        match all.iter_mut().find(|(_, known, _)| *known == identity) {
            Some(known) if known.0.cost <= solution.cost => {}
            Some(known) => known.0 = solution,
            None => all.push((solution, identity, name)),
        }
    }
    all.sort_by(|a, b| a.0.cost.total_cmp(&b.0.cost));
    let mut chosen: Vec<usize> = Vec::new();
    for (i, (_, identity, _)) in all.iter().enumerate() {
        let other_way = chosen.iter().all(|&k| {
            all.get(k)
                .is_some_and(|(_, known, _)| known.goes_another_way(identity))
        });
        if other_way && chosen.len() < most {
            chosen.push(i);
        }
    }
    for i in 0..all.len() {
        if chosen.len() < most.min(4) && !chosen.contains(&i) {
            chosen.push(i);
        }
    }
    chosen.sort_unstable();
    let mut out: Vec<(Solution, String)> = Vec::new();
    for (i, (solution, _, name)) in all.into_iter().enumerate() {
        if !chosen.contains(&i) {
            continue;
        }
        let same = out
            .iter()
            .filter(|(_, n)| n.split(" (").next() == Some(name.as_str()))
            .count();
        let name = if same > 0 {
            let bends: usize = solution.chains.iter().map(|c| c.layout.bends()).sum();
            format!("{name} ({bends} bends, list {})", same + 1)
        } else {
            name
        };
        out.push((solution, name));
    }
    out
}
