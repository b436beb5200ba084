//! What makes one route another one: the side of a body it passes, where its components are, and
//! what it is made of.

use std::collections::BTreeMap;

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

/// A body that a run passes.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Passed {
    pub(crate) run: usize,
    /// Chain in which the run is nearest to it.
    pub(crate) chain: usize,
    /// The nearest place.
    pub(crate) contact: Contact,
    /// Travel there.
    pub(crate) travel: Vector,
    /// Distance along the chains up to there, mm.
    along: f64,
}

/// Identity of a route.
#[derive(Clone, Debug)]
pub(crate) struct Identity {
    passed: Vec<Passed>,
    /// For each chain the components with the number of bends before each.
    components: Vec<(usize, usize, usize)>,
    /// For each run the bends bought.
    material: Vec<(usize, Joint, usize)>,
    straights: usize,
    bends: usize,
}

/// Two runs pass a body on different sides when the directions from it to them differ by more than
/// this: 60 degrees, as its cosine.
const OTHER_SIDE_COS: f64 = 0.5;

impl Identity {
    /// True when some body is passed on another side.
    fn passes_elsewhere(&self, other: &Self) -> bool {
        self.passed.iter().any(|a| {
            other
                .passed
                .iter()
                .filter(|b| b.run == a.run && b.contact.body == a.contact.body)
                .any(|b| a.contact.away.dot(b.contact.away) < OTHER_SIDE_COS)
        })
    }

    /// True when the two differ in more than material.
    pub(crate) fn goes_another_way(&self, other: &Self) -> bool {
        self.components != other.components || self.passes_elsewhere(other)
    }

    fn is_same(&self, other: &Self) -> bool {
        self.material == other.material
            && self.straights == other.straights
            && !self.goes_another_way(other)
    }
}

/// Bodies within this of the tube are compared between routes, mm over the required gap.
const COMPARED_MM: f64 = 200.0;
/// Bodies within this name a route.
const PASSED_MM: f64 = 70.0;
/// Bodies named in a route's name.
const NAMED: usize = 3;

/// For each run and body of the car the nearest place, in order of run and body.
pub(crate) fn passed(ctx: &Context<'_>, solution: &Solution) -> Vec<Passed> {
    let system = System::new(ctx, solution.chains.clone());
    let laid = system.lay(&solution.x);
    let mut out: Vec<Passed> = Vec::new();
    let mut contacts = Vec::new();
    let mut base = 0.0;
    for (c, (chain, laid)) in system.chains.iter().zip(&laid).enumerate() {
        for element in &laid.elements {
            contacts.clear();
            ctx.room.near(&element.tube, COMPARED_MM, &mut contacts);
            for contact in &contacts {
                let is_car = ctx
                    .problem
                    .bodies
                    .get(contact.body)
                    .is_some_and(|b| b.kind == BodyKind::Car);
                if !is_car {
                    continue;
                }
                let line = &element.tube.line;
                let at = contact.share * line.length();
                let found = Passed {
                    run: chain.run,
                    chain: c,
                    contact: *contact,
                    travel: line.at(at + 0.5) - line.at(at - 0.5),
                    along: base + element.along + at,
                };
                match out
                    .iter_mut()
                    .find(|p| p.run == chain.run && p.contact.body == contact.body)
                {
                    Some(known) if known.contact.margin <= contact.margin => {}
                    Some(known) => *known = found,
                    None => out.push(found),
                }
            }
        }
        base += laid.length;
    }
    out.sort_by_key(|p| (p.run, p.contact.body));
    out
}

/// Identity and name of a solution.
pub(crate) fn identify(ctx: &Context<'_>, solution: &Solution) -> (Identity, String) {
    let passed = passed(ctx, solution);
    // The few tightest name the route, in order of travel.
    let mut naming: Vec<&Passed> = passed
        .iter()
        .filter(|p| p.contact.margin < PASSED_MM)
        .collect();
    naming.sort_by(|a, b| a.contact.margin.total_cmp(&b.contact.margin));
    let mut named: Vec<usize> = Vec::new();
    naming.retain(|p| {
        let is_new = !named.contains(&p.contact.body) && named.len() < NAMED;
        if is_new {
            named.push(p.contact.body);
        }
        is_new
    });
    naming.sort_by(|a, b| a.along.total_cmp(&b.along));
    let words: Vec<String> = naming
        .iter()
        .filter_map(|p| {
            let id = &ctx.problem.bodies.get(p.contact.body)?.id;
            Some(format!("{} the {id}", Passing::of(p.contact.away).words()))
        })
        .collect();
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
    let bends: usize = solution.chains.iter().map(|c| c.layout.bends()).sum();
    let name = if words.is_empty() {
        "in the open".to_owned()
    } else {
        words.join(", ")
    };
    (
        Identity {
            passed,
            components,
            material,
            straights,
            bends,
        },
        name,
    )
}

/// Everything that held, the cheapest of each row of joints.
#[derive(Default)]
pub(crate) struct Archive {
    kept: BTreeMap<Vec<(Vec<Joint>, usize)>, Solution>,
    best: Option<f64>,
}

/// What costs more than this times the best is no alternative to it (common practice, no source).
const DEAREST: f64 = 1.7;
/// Solutions kept before the dear ones are dropped.
const MOST_KEPT: usize = 600;
/// Solutions of the archive that are compared body by body.
const MOST_COMPARED: usize = 120;

impl Archive {
    pub(crate) fn add(&mut self, solution: &Solution) {
        let best = self.best.map_or(solution.cost, |b| b.min(solution.cost));
        self.best = Some(best);
        if solution.cost > DEAREST * best {
            return;
        }
        let key = solution
            .chains
            .iter()
            .map(|chain| {
                let bought = chain.layout.slots.iter().filter(|s| **s == Slot::Bought);
                (chain.layout.joints.clone(), bought.count())
            })
            .collect();
        match self.kept.get_mut(&key) {
            Some(known) if known.cost <= solution.cost => {}
            Some(known) => *known = solution.clone(),
            None => {
                self.kept.insert(key, solution.clone());
            }
        }
        if self.kept.len() > MOST_KEPT {
            let mut costs: Vec<f64> = self.kept.values().map(|s| s.cost).collect();
            costs.sort_by(f64::total_cmp);
            let limit = costs.get(MOST_KEPT / 2).copied().unwrap_or(f64::INFINITY);
            self.kept.retain(|_, s| s.cost <= limit);
        }
    }

    /// The cheapest, cheapest first.
    pub(crate) fn cheapest(&self) -> Vec<Solution> {
        let mut all: Vec<&Solution> = self.kept.values().collect();
        all.sort_by(|a, b| a.cost.total_cmp(&b.cost));
        all.into_iter().take(MOST_COMPARED).cloned().collect()
    }
}

/// The cheapest, then the cheapest of each other way, then other lists of material; at most `most`,
/// with lists of material no more than are needed for [`ENOUGH`].
pub(crate) fn distinct(
    ctx: &Context<'_>,
    found: Vec<Solution>,
    most: usize,
) -> Vec<(Solution, String)> {
    let mut found = found;
    found.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    let limit = found.first().map_or(f64::INFINITY, |s| DEAREST * s.cost);
    let mut all: Vec<(Solution, Identity, String)> = Vec::new();
    for solution in found.into_iter().filter(|s| s.cost <= limit) {
        let (identity, name) = identify(ctx, &solution);
        if !all.iter().any(|(_, known, _)| known.is_same(&identity)) {
            all.push((solution, identity, name));
        }
    }
    let mut chosen: Vec<usize> = Vec::new();
    let differs = |chosen: &[usize], i: usize, how: &dyn Fn(&Identity, &Identity) -> bool| {
        chosen.iter().all(|&k| match (all.get(k), all.get(i)) {
            (Some(a), Some(b)) => how(&a.1, &b.1),
            _ => false,
        })
    };
    // Another side of a body says more than another place of a component, which says more than
    // another list of material.
    for i in 0..all.len() {
        if chosen.len() < most && differs(&chosen, i, &Identity::passes_elsewhere) {
            chosen.push(i);
        }
    }
    for i in 0..all.len() {
        if chosen.len() < most.min(ENOUGH + 1) && differs(&chosen, i, &Identity::goes_another_way) {
            chosen.push(i);
        }
    }
    for i in 0..all.len() {
        if chosen.len() < most.min(ENOUGH) && !chosen.contains(&i) {
            chosen.push(i);
        }
    }
    chosen.sort_unstable();
    let mut out: Vec<(Solution, Identity, String, String)> = Vec::new();
    for (i, (solution, identity, base)) in all.into_iter().enumerate() {
        if !chosen.contains(&i) {
            continue;
        }
        let mut name = base.clone();
        if let Some((_, first, ..)) = out.iter().find(|(_, _, b, _)| *b == base) {
            name = format!("{base}, {}", unlike(ctx, &identity, first));
        }
        let again = out
            .iter()
            .filter(|(_, _, b, n)| *b == base && n.starts_with(&name))
            .count();
        if again > 0 {
            name = format!("{name}, list {}", again + 1);
        }
        out.push((solution, identity, base, name));
    }
    out.into_iter().map(|(s, _, _, name)| (s, name)).collect()
}

/// Alternatives that are enough; lists of material fill up to here.
const ENOUGH: usize = 4;

/// In what a route is unlike another one of the same name.
fn unlike(ctx: &Context<'_>, own: &Identity, other: &Identity) -> String {
    let moved = own
        .components
        .iter()
        .find(|place| !other.components.contains(place));
    if let Some(&(_, component, bends)) = moved
        && let Some(part) = ctx.problem.components.get(component)
    {
        let place = if bends == 0 {
            "before the first bend".to_owned()
        } else {
            format!("behind bend {bends}")
        };
        return format!("{} {place}", part.id);
    }
    let uncut: usize = own
        .material
        .iter()
        .filter(|(_, joint, _)| matches!(joint, Joint::Bend { exact: true, .. }))
        .map(|(_, _, count)| count)
        .sum();
    format!(
        "{} bends ({uncut} uncut), {} straights",
        own.bends, own.straights
    )
}
