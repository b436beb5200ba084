//! A problem as JSON, with its hidden answer.

use serde_json::{Map, Value, json};
use tubewright_walker::Frame;

use super::draw::Draw;

/// A generated problem.
#[derive(Clone, Debug)]
pub struct Made {
    /// The problem as text.
    pub problem: String,
    /// The hidden answer as text, where there is one.
    pub hidden: Option<String>,
    /// Its cost, as the judge finds it.
    pub hidden_cost: Option<f64>,
    /// The code of the reason why there is no answer, where there is none.
    pub reason: Option<&'static str>,
}

impl Made {
    pub(super) fn named(mut self, name: &str) -> Self {
        let rename = |text: &str, key: &str| {
            let mut value: Value = serde_json::from_str(text).unwrap();
            value[key] = json!(name);
            serde_json::to_string(&value).unwrap()
        };
        self.problem = rename(&self.problem, "id");
        self.hidden = self.hidden.map(|h| rename(&h, "problem"));
        self
    }
}

/// A tube with its prices.
#[derive(Clone, Copy)]
pub(super) struct Tube {
    pub(super) od: f64,
    pub(super) clr: f64,
    scale: f64,
}

pub(super) const STOCK_DEG: [f64; 5] = [15.0, 30.0, 45.0, 60.0, 90.0];
pub(super) const GAPS: [(&str, f64); 7] = [
    ("frame", 12.0),
    ("floor", 15.0),
    ("driveline", 25.0),
    ("moving", 20.0),
    ("tyre", 30.0),
    ("fuel_brake", 40.0),
    ("heat", 30.0),
];
pub(super) const MIN_STRAIGHT_MM: f64 = 25.0;

impl Tube {
    pub(super) fn drawn(draw: &mut Draw) -> Self {
        let (od, scale) = draw.pick(&[(50.8, 0.85), (63.5, 1.0), (76.2, 1.2)]);
        let clr = od * draw.pick(&[1.5, 1.5, 1.5, 2.0, 1.0]);
        Self { od, clr, scale }
    }

    pub(super) fn usual() -> Self {
        Self {
            od: 63.5,
            clr: 95.25,
            scale: 1.0,
        }
    }

    fn json(&self) -> Value {
        let mut prices = Map::new();
        for (angle, price) in STOCK_DEG.iter().zip([8.0, 9.0, 10.0, 12.0, 15.0]) {
            prices.insert(format!("{angle}"), json!(price * self.scale));
        }
        json!({"od": self.od, "wall": 1.6, "clr": self.clr, "stock_angles": STOCK_DEG,
            "stock_price": prices, "straight_price_per_m": 22.0 * self.scale})
    }
}

/// Where a run starts, ends and what it must hold.
pub(super) struct RunSheet {
    pub(super) id: String,
    pub(super) start: Frame,
    pub(super) end: [f64; 3],
    pub(super) end_direction: [f64; 3],
    pub(super) components: Vec<String>,
    /// Crossover and side.
    pub(super) passage: Option<(String, &'static str)>,
    /// Hidden pieces, as JSON.
    pub(super) pieces: Vec<Value>,
}

/// Everything a problem consists of.
pub(super) struct Sheet {
    pub(super) tube: Tube,
    pub(super) workspace: ([f64; 3], [f64; 3]),
    pub(super) obstacles: Vec<Value>,
    pub(super) components: Map<String, Value>,
    pub(super) crossovers: Vec<Value>,
    pub(super) runs: Vec<RunSheet>,
    /// Hidden places of crossovers.
    pub(super) poses: Vec<(String, [f64; 3])>,
    pub(super) max_bends: usize,
}

impl Sheet {
    pub(super) fn new(tube: Tube, workspace: ([f64; 3], [f64; 3])) -> Self {
        Self {
            tube,
            workspace,
            obstacles: Vec::new(),
            components: Map::new(),
            crossovers: Vec::new(),
            runs: Vec::new(),
            poses: Vec::new(),
            max_bends: 10,
        }
    }

    fn problem(&self) -> String {
        let gaps: Map<String, Value> = GAPS
            .iter()
            .map(|(class, gap)| ((*class).to_owned(), json!(gap)))
            .collect();
        let runs: Vec<Value> = self
            .runs
            .iter()
            .map(|r| {
                let mut run = json!({"id": r.id, "tube": "t",
                    "start": {"point": r.start.point, "dir": r.start.travel, "up": r.start.twelve},
                    "end": {"point": r.end, "dir": r.end_direction}, "components": r.components});
                if let Some((crossover, side)) = &r.passage {
                    run["crossover"] = json!(crossover);
                    run["side"] = json!(side);
                }
                run
            })
            .collect();
        let problem = json!({"form": "route-problem/1", "id": "made", "title": "made round a hidden run",
            "group": "made", "units": "mm, deg", "tubes": {"t": self.tube.json()},
            "rules": {"min_straight": MIN_STRAIGHT_MM, "min_bend_angle": 5, "max_bends": self.max_bends,
                "pos_tol": 1.0, "dir_tol": 0.2, "self_gap": 10, "run_gap": 15},
            "cost": {"weld": 6.0, "cut": 1.5, "per_degree": 0.05, "per_metre": 4.0}, "gaps": gaps,
            "workspace": {"min": self.workspace.0, "max": self.workspace.1},
            "obstacles": self.obstacles, "components": self.components,
            "crossovers": self.crossovers, "runs": runs});
        serde_json::to_string(&problem).unwrap()
    }

    fn answer(&self) -> String {
        let runs: Map<String, Value> = self
            .runs
            .iter()
            .map(|r| (r.id.clone(), json!(r.pieces)))
            .collect();
        let poses: Map<String, Value> = self
            .poses
            .iter()
            .map(|(id, point)| (id.clone(), json!({"point": point})))
            .collect();
        serde_json::to_string(
            &json!({"problem": "made", "status": "solved", "runs": runs, "crossovers": poses}),
        )
        .unwrap()
    }

    /// The finished problem, when the judge finds nothing wrong with the hidden answer.
    pub(super) fn solvable(&self) -> Option<Made> {
        let (problem, hidden) = (self.problem(), self.answer());
        let verdict = tubewright_walker::judge(&problem, &hidden).unwrap();
        verdict.violations.is_empty().then_some(Made {
            problem,
            hidden: Some(hidden),
            hidden_cost: Some(verdict.cost),
            reason: None,
        })
    }

    /// The finished problem that has no answer for `reason`. Where `relaxed` gives the problem with
    /// the reason taken away, its hidden answer must hold.
    pub(super) fn hopeless(&self, reason: &'static str, relaxed: Option<&Sheet>) -> Option<Made> {
        if let Some(relaxed) = relaxed {
            relaxed.solvable()?;
        }
        Some(Made {
            problem: self.problem(),
            hidden: None,
            hidden_cost: None,
            reason: Some(reason),
        })
    }
}
