//! The rules and the cost of a route problem, applied to a solution.

use std::collections::BTreeMap;

use serde_json::Value;

use crate::solid::Solid;
use crate::space::{Frame, V, add, angle_deg, norm, sub};
use crate::text::{JudgeError, Look, solid};
use crate::walk::{Ball, Body, Piece, Walk, least_between, least_clearance, walk};

/// Slack of every clearance, as the definition states it.
const CLEARANCE_SLACK_MM: f64 = 0.05;
/// Slack of a bend against its stock angle, as the definition states it.
const ANGLE_SLACK_DEG: f64 = 0.05;
/// Spacing of the balls against bodies.
const SPACING_MM: f64 = 0.5;
/// Spacing of the balls of runs against runs.
const PAIR_SPACING_MM: f64 = 3.0;

/// One broken rule.
#[derive(Clone, Debug)]
pub struct Violation {
    /// Rule number of the definition, 1 to 6.
    pub rule: u8,
    /// What is wrong and where.
    pub what: String,
    /// The value found.
    pub measured: f64,
    /// The limit it breaks.
    pub limit: f64,
}

/// What the judge found.
#[derive(Clone, Debug)]
pub struct Verdict {
    /// All broken rules; empty when the answer holds.
    pub violations: Vec<Violation>,
    /// The cost by the definition.
    pub cost: f64,
    /// Largest distance in mm between an arrival (end or crossover inlet) and where it should be.
    pub closure_mm: f64,
    /// Largest angle in degrees between an arrival's direction and the wanted one.
    pub closure_deg: f64,
    /// Least margin over the required gap to any body in mm.
    pub margin_mm: f64,
}

struct Obstacle {
    id: String,
    solid: Solid,
    gap: f64,
}

struct Crossover {
    id: String,
    offset: V,
    body: Vec<Solid>,
    balls: Vec<Ball>,
}

/// Judges `solution` (JSON text, status `solved`) against `problem` (JSON text).
///
/// # Errors
/// When a text is no JSON or lacks something that the definition demands; a wrong answer is not an
/// error but a list of violations.
pub fn judge(problem: &str, solution: &str) -> Result<Verdict, JudgeError> {
    let problem: Value = serde_json::from_str(problem)?;
    let solution: Value = serde_json::from_str(solution)?;
    let p = Look {
        value: &problem,
        path: "problem".into(),
    };
    let s = Look {
        value: &solution,
        path: "solution".into(),
    };
    let gaps = p.get("gaps")?;
    let mut obstacles = Vec::new();
    for o in p.get("obstacles")?.list()? {
        let gap = if o.get("type")?.text()? == "ground" {
            o.num("min_clearance")?
        } else {
            gaps.num(o.get("class")?.text()?)?
        };
        obstacles.push(Obstacle {
            id: o.get("id")?.text()?.to_owned(),
            solid: solid(&o)?,
            gap,
        });
    }
    let mut verdict = Verdict {
        violations: Vec::new(),
        cost: 0.0,
        closure_mm: 0.0,
        closure_deg: 0.0,
        margin_mm: f64::INFINITY,
    };
    let mut crossovers = Vec::new();
    for x in p.get("crossovers")?.list()? {
        let id = x.get("id")?.text()?.to_owned();
        let offset = s.get("crossovers")?.get(&id)?.vec("point")?;
        let (low, high) = (x.vec("pose_min")?, x.vec("pose_max")?);
        for axis in 0..3 {
            if offset[axis] < low[axis] - 1e-6 || offset[axis] > high[axis] + 1e-6 {
                verdict.broken(
                    2,
                    format!("crossover {id} pose axis {axis}"),
                    offset[axis],
                    high[axis],
                );
            }
        }
        let mut body = Vec::new();
        let mut balls = Vec::new();
        for capsule in x.get("body")?.list()? {
            let (a, b, radius) = (
                add(capsule.vec("a")?, offset),
                add(capsule.vec("b")?, offset),
                capsule.num("r")?,
            );
            body.push(Solid::Capsule { a, b, radius });
            for i in 0..=1000 {
                let t = f64::from(i) / 1000.0;
                let centre = add(a, [0, 1, 2].map(|k| (b[k] - a[k]) * t));
                balls.push(Ball {
                    centre,
                    radius,
                    along: 0.0,
                    piece: 0,
                });
            }
        }
        crossovers.push(Crossover {
            id,
            offset,
            body,
            balls,
        });
    }
    let workspace = (
        p.get("workspace")?.vec("min")?,
        p.get("workspace")?.vec("max")?,
    );
    for x in &crossovers {
        verdict.clear_of_bodies(
            &format!("crossover {}", x.id),
            &x.balls,
            &obstacles,
            workspace,
        );
    }
    let rules = p.get("rules")?;
    let mut walks: Vec<(String, Walk, f64)> = Vec::new();
    for run in p.get("runs")?.list()? {
        let id = run.get("id")?.text()?.to_owned();
        let (walked, clr) = verdict.run(&p, &s, &rules, &run, &id, &crossovers)?;
        verdict.clear_of_bodies(&format!("run {id}"), &walked.0.balls, &obstacles, workspace);
        let thin = walked.1;
        let reach = core::f64::consts::PI * clr + 1.0;
        let self_gap = rules.num("self_gap")?;
        if let Some((a, b, gap)) = least_between(&thin.balls, &thin.balls, |a, b| {
            (a.along - b.along).abs() > reach
        }) && gap < self_gap - CLEARANCE_SLACK_MM
        {
            verdict.broken(
                6,
                format!(
                    "run {id} against itself at {:.0} and {:.0}",
                    a.along, b.along
                ),
                gap,
                self_gap,
            );
        }
        if let Ok(own) = run.get("crossover")
            && let Some(own) = own.value.as_str()
        {
            // The jump is the piece of the crossover: its ends along the run are the two ports.
            let port = walked.2;
            for x in crossovers.iter().filter(|x| x.id == own) {
                let far: Vec<Ball> = walked
                    .0
                    .balls
                    .iter()
                    .filter(|b| port.iter().all(|&at| (b.along - at).abs() > reach))
                    .copied()
                    .collect();
                verdict.clear_of(
                    &format!("run {id} and crossover {}", x.id),
                    &far,
                    x,
                    self_gap,
                );
            }
        }
        for x in &crossovers {
            let own = run.get("crossover").ok().and_then(|o| o.value.as_str());
            if own != Some(x.id.as_str()) {
                verdict.clear_of(
                    &format!("run {id} and crossover {}", x.id),
                    &walked.0.balls,
                    x,
                    self_gap,
                );
            }
        }
        walks.push((id, thin, clr));
    }
    let run_gap = rules.num("run_gap")?;
    for (i, a) in walks.iter().enumerate() {
        for b in walks.iter().skip(i + 1) {
            if let Some((x, y, gap)) = least_between(&a.1.balls, &b.1.balls, |_, _| true)
                && gap < run_gap - CLEARANCE_SLACK_MM
            {
                verdict.broken(
                    6,
                    format!(
                        "runs {} at {:.0} and {} at {:.0}",
                        a.0, x.along, b.0, y.along
                    ),
                    gap,
                    run_gap,
                );
            }
        }
    }
    Ok(verdict)
}

impl Verdict {
    fn broken(&mut self, rule: u8, what: String, measured: f64, limit: f64) {
        self.violations.push(Violation {
            rule,
            what,
            measured,
            limit,
        });
    }

    fn clear_of(&mut self, who: &str, balls: &[Ball], x: &Crossover, gap: f64) {
        for body in &x.body {
            if let Some((ball, found)) = least_clearance(balls, body)
                && found < gap - CLEARANCE_SLACK_MM
            {
                self.broken(6, format!("{who} at {:.0}", ball.along), found, gap);
            }
        }
    }

    fn clear_of_bodies(
        &mut self,
        who: &str,
        balls: &[Ball],
        obstacles: &[Obstacle],
        (low, high): (V, V),
    ) {
        for o in obstacles {
            if let Some((ball, found)) = least_clearance(balls, &o.solid) {
                self.margin_mm = self.margin_mm.min(found - o.gap);
                if found < o.gap - CLEARANCE_SLACK_MM {
                    self.broken(
                        5,
                        format!("{who} against {} at {:.0}", o.id, ball.along),
                        found,
                        o.gap,
                    );
                }
            }
        }
        let mut least = (f64::INFINITY, 0.0);
        for ball in balls {
            for axis in 0..3 {
                let room = (ball.centre[axis] - low[axis]).min(high[axis] - ball.centre[axis]);
                if room - ball.radius < least.0 {
                    least = (room - ball.radius, ball.along);
                }
            }
        }
        self.margin_mm = self.margin_mm.min(least.0);
        if least.0 < -CLEARANCE_SLACK_MM {
            self.broken(
                5,
                format!("{who} leaves the workspace at {:.0}", least.1),
                least.0,
                0.0,
            );
        }
    }

    fn arrive(&mut self, who: &str, frame: &Frame, point: V, dir: V, tol: (f64, f64)) {
        let (away, turned) = (norm(sub(frame.point, point)), angle_deg(frame.travel, dir));
        self.closure_mm = self.closure_mm.max(away);
        self.closure_deg = self.closure_deg.max(turned);
        if away.is_nan() || away > tol.0 {
            self.broken(2, format!("{who} place"), away, tol.0);
        }
        if turned.is_nan() || turned > tol.1 {
            self.broken(2, format!("{who} direction"), turned, tol.1);
        }
    }

    /// Rules 1 to 3 and the cost of one run; the walk with close and with wide spacing, and where
    /// along it the crossover's ports lie.
    #[expect(clippy::type_complexity, reason = "private, used once")]
    #[expect(
        clippy::too_many_lines,
        reason = "the rules in the order of the definition"
    )]
    fn run(
        &mut self,
        p: &Look<'_>,
        s: &Look<'_>,
        rules: &Look<'_>,
        run: &Look<'_>,
        id: &str,
        crossovers: &[Crossover],
    ) -> Result<((Walk, Walk, Vec<f64>), f64), JudgeError> {
        let tube = p.get("tubes")?.get(run.get("tube")?.text()?)?;
        let (od, clr) = (tube.num("od")?, tube.num("clr")?);
        let stock = tube
            .get("stock_angles")?
            .list()?
            .iter()
            .map(Look::number)
            .collect::<Result<Vec<_>, _>>()?;
        let largest = stock.iter().copied().fold(0.0, f64::max);
        let prices: BTreeMap<String, f64> = tube
            .get("stock_price")?
            .value
            .as_object()
            .into_iter()
            .flatten()
            .filter_map(|(k, v)| Some((k.clone(), v.as_f64()?)))
            .collect();
        let price = |angle: f64| {
            prices
                .iter()
                .find(|(k, _)| k.parse::<f64>().is_ok_and(|k| (k - angle).abs() < 1e-9))
                .map(|(_, v)| *v)
        };
        let cost = p.get("cost")?;
        let per_m = tube.num("straight_price_per_m")?;
        let (weld, cut) = (cost.num("weld")?, cost.num("cut")?);
        let (per_degree, per_metre) = (cost.num("per_degree")?, cost.num("per_metre")?);
        let tol = (rules.num("pos_tol")?, rules.num("dir_tol")?);
        let min_straight = rules.num("min_straight")?;

        let from = run.get("start")?;
        let start = Frame::toward(from.vec("point")?, from.vec("dir")?, from.vec("up")?);
        let mut pieces = Vec::new();
        let mut order = Vec::new();
        let mut inlets = Vec::new();
        let mut zones = Vec::new();
        let mut bends = 0u32;
        let mut last_straight = false;
        for piece in s.get("runs")?.get(id)?.list()? {
            let at = pieces.len();
            let kind = piece.get("type")?.text()?;
            if kind == "straight" && last_straight {
                self.broken(
                    1,
                    format!("run {id}: two straights in a row at {at}"),
                    2.0,
                    1.0,
                );
            }
            last_straight = kind == "straight";
            match kind {
                "straight" => {
                    let length = piece.num("length")?;
                    if length.is_nan() || length < min_straight - 1e-9 {
                        self.broken(1, format!("run {id}: straight {at}"), length, min_straight);
                    }
                    self.cost += length / 1000.0 * (per_m + per_metre);
                    pieces.push(Piece::Straight { length });
                }
                "bend" => {
                    let angle = piece.num("angle")?;
                    bends += 1;
                    let least = rules.num("min_bend_angle")?;
                    if angle.is_nan() || angle < least - 1e-9 {
                        self.broken(1, format!("run {id}: bend {at}"), angle, least);
                    }
                    if angle > largest + ANGLE_SLACK_DEG {
                        self.broken(1, format!("run {id}: bend {at}"), angle, largest);
                    }
                    let bought = stock
                        .iter()
                        .copied()
                        .filter(|a| *a >= angle - ANGLE_SLACK_DEG)
                        .fold(f64::INFINITY, f64::min);
                    self.cost += price(bought).unwrap_or(f64::INFINITY);
                    if (angle - bought).abs() > ANGLE_SLACK_DEG {
                        self.cost += cut;
                    }
                    self.cost += per_degree * angle + per_metre * clr * angle.to_radians() / 1000.0;
                    pieces.push(Piece::Bend {
                        angle_deg: angle,
                        clock_deg: piece.num("clocking")?,
                        clr,
                    });
                }
                "component" => {
                    let name = piece.get("id")?.text()?;
                    let c = p.get("components")?.get(name)?;
                    let shape = match c.get("shape")?.text()? {
                        "cylinder" => Body::Round {
                            diameter: c.num("diameter")?,
                        },
                        _ => Body::Oval {
                            width: c.num("width")?,
                            height: c.num("height")?,
                        },
                    };
                    if !c.get("zone")?.value.is_null() {
                        zones.push((
                            at,
                            name,
                            c.get("zone")?.vec("min")?,
                            c.get("zone")?.vec("max")?,
                        ));
                    }
                    order.push(name);
                    pieces.push(Piece::Component {
                        length: c.num("length")?,
                        body: shape,
                        roll_deg: piece.num("roll").unwrap_or(0.0),
                    });
                }
                "crossover" => {
                    let name = piece.get("id")?.text()?;
                    let side = run.get("side")?.text()?;
                    let wanted = run.get("crossover")?.text()?;
                    let all = p.get("crossovers")?.list()?;
                    let x = all
                        .iter()
                        .find(|x| x.get("id").and_then(|i| i.text()).is_ok_and(|i| i == name));
                    let (Some(x), Some(placed)) = (
                        x,
                        crossovers.iter().find(|x| x.id == name && name == wanted),
                    ) else {
                        self.broken(
                            2,
                            format!("run {id}: crossover {name} is not its own"),
                            0.0,
                            1.0,
                        );
                        continue;
                    };
                    let ports = x.get("ports")?.get(side)?;
                    let (inlet, outlet) = (ports.get("inlet")?, ports.get("outlet")?);
                    inlets.push((
                        at,
                        add(inlet.vec("point")?, placed.offset),
                        inlet.vec("dir")?,
                    ));
                    pieces.push(Piece::Jump {
                        to: Frame::upright(
                            add(outlet.vec("point")?, placed.offset),
                            outlet.vec("dir")?,
                        ),
                    });
                }
                _ => return Err(JudgeError::Missing(format!("{}/type", piece.path))),
            }
        }
        let most = rules.num("max_bends")?;
        if f64::from(bends) > most {
            self.broken(
                1,
                format!("run {id}: number of bends"),
                f64::from(bends),
                most,
            );
        }
        let components = run.get("components")?.list()?;
        let wanted = components
            .iter()
            .map(Look::text)
            .collect::<Result<Vec<_>, _>>()?;
        if wanted != order {
            self.broken(
                3,
                format!("run {id}: components {order:?} instead of {wanted:?}"),
                order.len() as f64,
                wanted.len() as f64,
            );
        }
        let needs_crossover = run.get("crossover").is_ok_and(|x| x.value.is_string());
        if usize::from(needs_crossover) != inlets.len() {
            self.broken(
                2,
                format!("run {id}: crossovers passed"),
                inlets.len() as f64,
                f64::from(u8::from(needs_crossover)),
            );
        }
        self.cost += weld * (pieces.len() as f64 + 1.0);
        let close = walk(start, od, &pieces, SPACING_MM);
        let wide = walk(start, od, &pieces, PAIR_SPACING_MM);
        let mut ports = Vec::new();
        for (at, point, dir) in inlets {
            self.arrive(
                &format!("run {id} crossover inlet"),
                &close.frames[at],
                point,
                dir,
                tol,
            );
            ports.extend([close.along[at], close.along[at + 1]]);
        }
        for (at, name, low, high) in zones {
            for frame in &close.frames[at..=at + 1] {
                for axis in 0..3 {
                    let out = (low[axis] - frame.point[axis]).max(frame.point[axis] - high[axis]);
                    if out > 1e-6 {
                        self.broken(3, format!("run {id}: {name} outside its zone"), out, 1e-6);
                    }
                }
            }
        }
        let end = run.get("end")?;
        if let Some(last) = close.frames.last() {
            self.arrive(
                &format!("run {id} end"),
                last,
                end.vec("point")?,
                end.vec("dir")?,
                tol,
            );
        }
        Ok(((close, wide, ports), clr))
    }
}
