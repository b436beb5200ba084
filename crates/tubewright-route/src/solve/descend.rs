//! Local improvement on the closure manifold: repeated small quadratic programmes over the sizes of
//! one layout, with closure as equalities and hard rules as inequalities that give way only against
//! a price (sequential quadratic programming with an exact l1 penalty; Nocedal and Wright,
//! *Numerical Optimization*, 2nd edition, section 18.5, from memory). The quadratic programme is
//! solved in its dual by coordinate ascent (Hildreth's method), which needs no factorisation.

use super::system::{Row, System};

/// How hard to try.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Effort {
    pub(crate) steps: usize,
    /// Share of the real prices that pulls while the rules are not yet kept.
    pub(crate) pull: f64,
}

/// Where a descent ended.
#[derive(Clone, Debug)]
pub(crate) struct Landing {
    pub(crate) x: Vec<f64>,
    pub(crate) cost: f64,
    /// Sum over groups of the worst overrun, mm; zero when every rule is kept.
    pub(crate) overrun: f64,
    pub(crate) work: u64,
}

impl Landing {
    pub(crate) fn holds(&self) -> bool {
        self.overrun <= HOLDS_MM
    }
}

/// Overrun that still counts as kept, mm: far below the slack of any rule.
pub(crate) const HOLDS_MM: f64 = 0.02;
/// Closure in mm.
const CLOSED_MM: f64 = 1e-10;
/// Rules with more than this to spare are left out of a step, mm; steps are held below it.
const SIGHT_MM: f64 = 45.0;
/// Price of a mm of overrun, in money: above what a mm of room can be worth in straights and welds.
const OVERRUN_PRICE: f64 = 3.0;
const SWEEPS: usize = 60;

/// Brings the chains to closure by the least change of the free sizes; false when that fails.
pub(crate) fn close(system: &System<'_, '_>, x: &mut [f64], steps: usize) -> bool {
    let mut held: Vec<bool> = system.sizes.iter().map(|s| !s.is_free()).collect();
    let mut last = f64::INFINITY;
    for _ in 0..steps {
        let laid = system.lay(x);
        let r = system.residual(x, &laid);
        let error = norm(&r);
        if !error.is_finite() {
            return false;
        }
        if error < CLOSED_MM {
            return true;
        }
        if error > 0.9 * last && error < 1e-8 {
            return true;
        }
        last = error;
        let mut rows = system.closure_rows(x, &laid);
        scale(&mut rows, system, &held);
        let basis = Basis::new(&rows);
        let step = basis.least(&r.iter().map(|r| -r).collect::<Vec<_>>());
        let longest = step.iter().fold(0.0_f64, |m, s| m.max(s.abs()));
        let damp = if longest > 120.0 {
            120.0 / longest
        } else {
            1.0
        };
        let mut stopped = false;
        for (((x, s), d), held) in x
            .iter_mut()
            .zip(&system.sizes)
            .zip(&step)
            .zip(held.iter_mut())
        {
            if *held {
                continue;
            }
            let wanted = *x + d * damp / s.lever;
            // A size outside its range already may come back slowly; one inside must not leave.
            let (lo, hi) = (s.lo.min(*x), s.hi.max(*x));
            *x = wanted.clamp(lo, hi);
            if (wanted - *x).abs() > 1e-12 {
                *held = true;
                stopped = true;
            }
        }
        if !stopped {
            // Let sizes that were stopped on an earlier step move again.
            for (held, s) in held.iter_mut().zip(&system.sizes) {
                *held = !s.is_free();
            }
        }
    }
    let laid = system.lay(x);
    norm(&system.residual(x, &laid)) < 1e-8
}

/// Improves `x`; it need not be closed nor keep the rules at first.
pub(crate) fn descend(system: &System<'_, '_>, start: &[f64], effort: Effort) -> Landing {
    let mut x = start.to_vec();
    let mut work = 1;
    for (x, s) in x.iter_mut().zip(&system.sizes) {
        if !s.is_free() {
            *x = s.lo;
        }
    }
    if !close(system, &mut x, 25) {
        return Landing {
            x,
            cost: f64::INFINITY,
            overrun: f64::INFINITY,
            work,
        };
    }
    let mut state = State::at(system, &x);
    let mut mu = 2e-3;
    let mut sight = SIGHT_MM * 0.9;
    let mut idle = 0;
    for _ in 0..effort.steps {
        let pull = if state.overrun > HOLDS_MM {
            effort.pull
        } else {
            1.0
        };
        let step = plan(system, &x, &state, mu, sight, pull);
        let longest = step
            .iter()
            .zip(&system.sizes)
            .fold(0.0_f64, |m, (d, s)| m.max((d * s.lever).abs()));
        if longest < 1e-4 {
            break;
        }
        let mut tried = x.clone();
        for ((t, d), s) in tried.iter_mut().zip(&step).zip(&system.sizes) {
            let (lo, hi) = (s.lo.min(*t), s.hi.max(*t));
            *t = (*t + d).clamp(lo, hi);
        }
        work += 1;
        if !close(system, &mut tried, 8) {
            mu *= 4.0;
            sight = (sight * 0.4).max(0.5);
            continue;
        }
        let next = State::at(system, &tried);
        let (now, then) = (state.merit(pull), next.merit(pull));
        if then < now - 1e-9 {
            let gain = now - then;
            idle = if gain < 2e-4 { idle + 1 } else { 0 };
            x = tried;
            state = next;
            mu = (mu * 0.5).max(1e-4);
            sight = (sight * 1.5).min(SIGHT_MM * 0.9);
            if idle >= 3 {
                break;
            }
        } else {
            mu = (mu * 4.0).min(10.0);
            sight *= 0.35;
            if sight < 1e-3 {
                break;
            }
        }
    }
    Landing {
        cost: state.cost,
        overrun: state.overrun,
        x,
        work,
    }
}

struct State {
    cost: f64,
    /// Change with each size of what is not linear in them; empty when there is none.
    curved: Vec<f64>,
    overrun: f64,
    rows: Vec<Row>,
    closure: Vec<Vec<f64>>,
}

impl State {
    fn at(system: &System<'_, '_>, x: &[f64]) -> Self {
        let laid = system.lay(x);
        let rows = system.rows(x, &laid, SIGHT_MM);
        let mut overrun = 0.0;
        let mut groups: Vec<(u64, f64)> = rows
            .iter()
            .filter(|r| r.margin < 0.0)
            .map(|r| (r.group, -r.margin))
            .collect();
        groups.sort_by(|a, b| a.0.cmp(&b.0).then(b.1.total_cmp(&a.1)));
        groups.dedup_by_key(|g| g.0);
        overrun += groups.iter().map(|g| g.1).sum::<f64>();
        for (x, s) in x.iter().zip(&system.sizes) {
            let out = ((s.lo - x).max(x - s.hi)).max(0.0) * s.lever;
            // A range is kept exactly or not at all.
            overrun += if out > 0.0 { out + 2.0 * HOLDS_MM } else { 0.0 };
        }
        let (lost, curved) = system.curved_cost(x, &laid);
        Self {
            cost: system.cost(x) + lost,
            curved,
            overrun,
            closure: system.closure_rows(x, &laid),
            rows,
        }
    }

    fn merit(&self, pull: f64) -> f64 {
        self.cost * pull + OVERRUN_PRICE * self.overrun
    }
}

/// One step: least `price · d + mu/2 |d|²` under the linearised rules.
fn plan(
    system: &System<'_, '_>,
    x: &[f64],
    state: &State,
    mu: f64,
    sight: f64,
    pull: f64,
) -> Vec<f64> {
    let held: Vec<bool> = system.sizes.iter().map(|s| !s.is_free()).collect();
    let mut closure = state.closure.clone();
    scale(&mut closure, system, &held);
    let basis = Basis::new(&closure);
    let mut price: Vec<f64> = system
        .sizes
        .iter()
        .map(|s| {
            if s.is_free() {
                s.price * pull / s.lever
            } else {
                0.0
            }
        })
        .collect();
    for ((p, g), s) in price.iter_mut().zip(&state.curved).zip(&system.sizes) {
        if s.is_free() {
            *p += g * pull / s.lever;
        }
    }
    basis.project(&mut price);
    // Rows `a · y >= b`, each with the most that its multiplier may be.
    let mut rows: Vec<(Vec<f64>, f64, f64)> = Vec::new();
    for row in &state.rows {
        let mut a: Vec<f64> = row
            .gradient
            .iter()
            .zip(&system.sizes)
            .zip(&held)
            .map(|((g, s), held)| if *held { 0.0 } else { g / s.lever })
            .collect();
        basis.project(&mut a);
        rows.push((a, -row.margin, OVERRUN_PRICE));
    }
    for (j, (s, x)) in system.sizes.iter().zip(x).enumerate() {
        if !s.is_free() {
            continue;
        }
        let mut unit = vec![0.0; system.sizes.len()];
        if let Some(slot) = unit.get_mut(j) {
            *slot = 1.0;
        }
        basis.project(&mut unit);
        let lo = ((s.lo - x) * s.lever).max(-sight);
        let hi = ((s.hi - x) * s.lever).min(sight);
        let down: Vec<f64> = unit.iter().map(|u| -u).collect();
        rows.push((unit, lo, OVERRUN_PRICE));
        rows.push((down, -hi, OVERRUN_PRICE));
    }
    let mut y: Vec<f64> = price.iter().map(|p| -p / mu).collect();
    let squares: Vec<f64> = rows.iter().map(|(a, _, _)| dot(a, a)).collect();
    let mut multipliers = vec![0.0; rows.len()];
    for sweep in 0..SWEEPS {
        let mut largest = 0.0_f64;
        for (((a, b, most), square), multiplier) in
            rows.iter().zip(&squares).zip(multipliers.iter_mut())
        {
            if *square < 1e-12 {
                continue;
            }
            // Rows at rest that are kept cost nothing.
            let short = b - dot(a, &y);
            if *multiplier <= 0.0 && short <= 0.0 {
                continue;
            }
            let wanted = (*multiplier + mu * short / square).clamp(0.0, *most);
            let change = wanted - *multiplier;
            if change.abs() > 0.0 {
                *multiplier = wanted;
                let k = change / mu;
                for (y, a) in y.iter_mut().zip(a) {
                    *y += k * a;
                }
                largest = largest.max((k * square.sqrt()).abs());
            }
        }
        if largest < 1e-3 && sweep > 2 {
            break;
        }
    }
    y.iter()
        .zip(&system.sizes)
        .map(|(y, s)| y / s.lever)
        .collect()
}

/// Columns of held sizes to zero, the others to mm.
fn scale(rows: &mut [Vec<f64>], system: &System<'_, '_>, held: &[bool]) {
    for row in rows {
        for ((value, s), held) in row.iter_mut().zip(&system.sizes).zip(held) {
            *value = if *held { 0.0 } else { *value / s.lever };
        }
    }
}

/// Orthonormal rows of the closure's derivative (modified Gram-Schmidt, twice).
struct Basis {
    q: Vec<Vec<f64>>,
    /// For each given row its parts along `q` (lower triangular; no own part when dependent).
    parts: Vec<(Vec<f64>, bool)>,
}

impl Basis {
    fn new(rows: &[Vec<f64>]) -> Self {
        let mut q: Vec<Vec<f64>> = Vec::with_capacity(rows.len());
        let mut parts = Vec::with_capacity(rows.len());
        for row in rows {
            let size = norm(row);
            let mut rest = row.clone();
            let mut part = vec![0.0; q.len()];
            for _ in 0..2 {
                for (q, p) in q.iter().zip(part.iter_mut()) {
                    let along = dot(q, &rest);
                    *p += along;
                    for (r, q) in rest.iter_mut().zip(q) {
                        *r -= along * q;
                    }
                }
            }
            let left = norm(&rest);
            let is_new = left > 1e-7 * size.max(1.0);
            if is_new {
                part.push(left);
                q.push(rest.iter().map(|r| r / left).collect());
            }
            parts.push((part, is_new));
        }
        Self { q, parts }
    }

    /// The shortest `d` with `row · d = right` for every independent row.
    fn least(&self, right: &[f64]) -> Vec<f64> {
        let n = self.q.first().map_or(0, Vec::len);
        let mut along: Vec<f64> = Vec::with_capacity(self.q.len());
        for ((part, is_new), right) in self.parts.iter().zip(right) {
            if !is_new {
                continue;
            }
            let known: f64 = part.iter().zip(&along).map(|(p, a)| p * a).sum();
            let own = part.last().copied().unwrap_or(1.0);
            along.push((right - known) / own);
        }
        let mut d = vec![0.0; n];
        for (q, a) in self.q.iter().zip(&along) {
            for (d, q) in d.iter_mut().zip(q) {
                *d += a * q;
            }
        }
        d
    }

    /// Takes away what would break closure.
    fn project(&self, v: &mut [f64]) {
        for q in &self.q {
            let along = dot(q, v);
            for (v, q) in v.iter_mut().zip(q) {
                *v -= along * q;
            }
        }
    }
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

fn norm(a: &[f64]) -> f64 {
    dot(a, a).sqrt()
}
