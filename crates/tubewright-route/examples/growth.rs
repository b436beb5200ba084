//! Processor time against the size of the problem, all else equal: bodies, triangles, runs, bends.
//! `growth [work units]`.
#![expect(clippy::print_stdout, reason = "a report for the terminal")]

#[path = "../tests/hidden_runs/mod.rs"]
mod hidden_runs;
#[path = "../tests/measure/mod.rs"]
mod measure;

use std::sync::Arc;
use std::sync::atomic::AtomicBool;

use measure::processor_s;
use tubewright_geometry::{Point, Solid, TriangleMesh, Vector, math};
use tubewright_route::form::read_problem;
use tubewright_route::problem::{Body, BodyKind};
use tubewright_route::{Budget, CostModel, Outcome, RouteProblem, solve};

type Failure = Box<dyn std::error::Error>;

/// Reads a problem with so many bends and bodies.
fn sized(bends: usize, bodies: usize) -> Result<(RouteProblem, CostModel), Failure> {
    Ok(read_problem(&hidden_runs::sized(bends, bodies, 1).problem)?)
}

fn line(
    what: &str,
    problem: &RouteProblem,
    cost: &CostModel,
    work_units: u64,
) -> Result<(), Failure> {
    let start = processor_s();
    let mut first = f64::NAN;
    let outcome = solve(
        problem,
        cost,
        Budget {
            work_units,
            seed: 1,
        },
        &AtomicBool::new(false),
        &mut |p| {
            if p.best_cost.is_some() && first.is_nan() {
                first = processor_s() - start;
            }
        },
    )?;
    let total = processor_s() - start;
    let found = match &outcome {
        Outcome::Solved { alternatives, .. } => alternatives.first().map_or_else(
            || "nothing".to_owned(),
            |r| format!("cost {:8.2}, gap {:4.1} %", r.cost, 100.0 * r.gap()),
        ),
        _ => "nothing".to_owned(),
    };
    println!("{what:>24}  first {first:7.3} s  total {total:7.2} s  {found}");
    Ok(())
}

/// Between runs beside each other, mm.
const APART_MM: f64 = 300.0;

/// A ball of about so many triangles.
fn ball(middle: Point, radius: f64, triangles: usize) -> Option<Solid> {
    let rings = ((triangles as f64 / 4.0).sqrt().ceil() as usize).max(3);
    let around = 2 * rings;
    let mut vertices = vec![middle + Vector::new(0.0, 0.0, radius)];
    for i in 1..rings {
        let (sin, cos) = math::sin_cos(math::PI * i as f64 / rings as f64);
        for j in 0..around {
            let (s, c) = math::sin_cos(math::TAU * j as f64 / around as f64);
            vertices.push(middle + Vector::new(sin * c, sin * s, cos) * radius);
        }
    }
    vertices.push(middle - Vector::new(0.0, 0.0, radius));
    let at = |i: usize, j: usize| u32::try_from(1 + (i - 1) * around + j % around).unwrap_or(0);
    let last = u32::try_from(vertices.len() - 1).ok()?;
    let mut faces = Vec::new();
    for j in 0..around {
        faces.push([0, at(1, j), at(1, j + 1)]);
        faces.push([last, at(rings - 1, j + 1), at(rings - 1, j)]);
        for i in 1..rings - 1 {
            faces.push([at(i, j), at(i + 1, j), at(i + 1, j + 1)]);
            faces.push([at(i, j), at(i + 1, j + 1), at(i, j + 1)]);
        }
    }
    TriangleMesh::new(vertices, faces).map(|m| Solid::Mesh(Arc::new(m)))
}

fn main() -> Result<(), Failure> {
    let work_units = std::env::args()
        .nth(1)
        .map_or(Ok(2000), |a| a.parse::<u64>())?;
    for bodies in [2, 10, 40, 160] {
        let (problem, cost) = sized(3, bodies)?;
        line(&format!("{bodies} bodies"), &problem, &cost, work_units)?;
    }
    for triangles in [10_000, 100_000, 1_000_000] {
        let (mut problem, cost) = sized(3, 4)?;
        // In the way of the straight line from start to end, as far as the ends leave room.
        if let Some(run) = problem.runs.first() {
            let middle = run.start.origin.lerp(run.end, 0.5);
            let radius = (run.start.origin.distance(run.end) / 2.0 - 150.0).clamp(20.0, 120.0);
            if let Some(solid) = ball(middle + Vector::new(0.0, 0.0, 60.0), radius, triangles) {
                problem.bodies.push(Body {
                    id: "scan".into(),
                    solid,
                    gap_mm: 12.0,
                    kind: BodyKind::Car,
                });
            }
        }
        line(
            &format!("{triangles} triangles"),
            &problem,
            &cost,
            work_units,
        )?;
    }
    for runs in [1, 2, 4] {
        let (mut problem, cost) = sized(3, 0)?;
        if let (Some(run), Some(w)) = (problem.runs.first().cloned(), &mut problem.workspace) {
            // Side by side: square to the way that they go, so that none starts in front of another.
            let along = run.end - run.start.origin;
            let aside = Vector::new(-along.y, along.x, 0.0)
                .direction()
                .map_or(Vector::new(0.0, 1.0, 0.0), |way| way.vector())
                * APART_MM;
            for k in 1..runs {
                let by = aside * k as f64;
                let mut other = run.clone();
                other.id = format!("run{k}");
                other.start.origin += by;
                other.end += by;
                problem.runs.push(other);
            }
            let most = APART_MM * runs as f64;
            w.min += Vector::new(-most, -most, 0.0);
            w.max += Vector::new(most, most, 0.0);
        }
        line(&format!("{runs} runs"), &problem, &cost, work_units)?;
    }
    for bends in [2, 4, 6, 8, 10, 12] {
        let (problem, cost) = sized(bends, 8)?;
        line(
            &format!("{bends} bends hidden"),
            &problem,
            &cost,
            work_units,
        )?;
    }
    Ok(())
}
