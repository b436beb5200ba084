//! The rest of a run routed anew from where a joint was found, up to where it must arrive.

use tubewright_build::model::Model;
use tubewright_fit::reclose::{WayOn, as_they_are};
use tubewright_geometry::{CentreLine, Piece, Solid, TubeElement, math};
use tubewright_route::problem::{Body, BodyKind, RouteProblem};
use tubewright_route::{Budget, Outcome, ShopSteps, round_and_close, solve};

use super::offer::{Change, Offer, OfferKind};
use super::offers::{Ground, OfferSettings};
use super::way::relaid;
use crate::routes::{MarkGiver, PlannedKind, PlannedPiece, PlannedRun, away_from_pin_mm};
use crate::stages::shop_cost;

/// Pieces nearer to the joint or the aim than this are what the new pieces are welded to, mm.
const WELDED_TO_MM: f64 = 160.0;

/// A room that pieces stay this far from they do not visit, mm.
const KEPT_PIN_MM: f64 = 0.5;

/// The cheapest way that the effort finds, if it finds one.
pub(super) fn routed_anew(ground: &Ground<'_>, settings: OfferSettings<'_>) -> Option<Offer> {
    let problem = sub_problem(ground)?;
    let cost = shop_cost(&ground.around.practice);
    let budget = Budget {
        work_units: settings.route_effort,
        seed: settings.seed,
    };
    let Ok(Outcome::Solved { alternatives, .. }) =
        solve(&problem, &cost, budget, settings.cancel, &mut |_| {})
    else {
        return None;
    };
    let practice = &ground.around.practice;
    let steps = ShopSteps {
        length_mm: practice.length_step.mm(),
        angle_rad: practice.bend_step.rad(),
        clock_rad: practice.clock_step.rad(),
    };
    alternatives
        .iter()
        .filter_map(|route| round_and_close(&problem, &cost, route, steps, None).ok())
        .filter_map(|rounded| offer_of(ground, &problem, rounded.route.runs.first()?))
        .min_by(|a, b| {
            let key = |offer: &Offer| (!offer.arrives, offer.failing().count(), offer.lost.len());
            key(a).cmp(&key(b))
        })
}

fn sub_problem(ground: &Ground<'_>) -> Option<RouteProblem> {
    let mut problem = ground.posed.problem.clone();
    let number = problem
        .runs
        .iter()
        .position(|run| run.id == ground.run.name)?;
    let mut run = problem.runs.get(number)?.clone();
    run.start = ground.start;
    run.end = ground.aim.point;
    run.end_direction = ground.aim.direction;
    // What stands already and what it must meet are where they are.
    run.end_room = None;
    run.start_room = None;
    run.passage = None;
    // What lies behind the joint visits what the pieces before it do not.
    let before = ground.run.pieces.get(..ground.from).unwrap_or(&[]);
    run.pins
        .retain(|pin| away_from_pin_mm(before, pin) > KEPT_PIN_MM);
    run.starts_at = None;
    run.ends_at = None;
    run.components_before_passage = None;
    let laid: Vec<&str> = ground
        .run
        .pieces
        .iter()
        .take(ground.until)
        .skip(ground.from)
        .filter_map(|piece| match &piece.kind {
            PlannedKind::Component { name, .. } => Some(name.as_str()),
            _ => None,
        })
        .collect();
    run.components.retain(|index| {
        problem
            .components
            .get(*index)
            .is_some_and(|component| laid.contains(&component.id.as_str()))
    });
    let rules = problem.rules;
    for (other, gap_mm) in ground.runs.iter().map(|other| {
        (
            other,
            if other.name == ground.run.name {
                rules.self_gap_mm
            } else {
                rules.run_gap_mm
            },
        )
    }) {
        for (index, piece) in other.pieces.iter().enumerate() {
            let is_laid =
                other.name == ground.run.name && (ground.from..ground.until).contains(&index);
            if is_laid || is_welded_to(ground, piece) {
                continue;
            }
            for element in &piece.elements {
                problem
                    .bodies
                    .extend(solids_of(element).into_iter().map(|solid| Body {
                        id: format!("{} {}", other.name, piece.mark),
                        solid,
                        gap_mm,
                        kind: BodyKind::Car,
                    }));
            }
        }
    }
    problem.runs = vec![run];
    problem.crossovers.clear();
    Some(problem)
}

fn is_welded_to(ground: &Ground<'_>, piece: &PlannedPiece) -> bool {
    [ground.start.origin, ground.aim.point].iter().any(|place| {
        piece.elements.iter().any(|element| {
            tubewright_geometry::distance::point_to_segment(
                *place,
                element.line.at(0.0),
                element.line.at(element.line.length()),
            ) < WELDED_TO_MM
        })
    })
}

/// A piece of tube as capsules that hold it: an arc in steps of at most 15°, grown by the sagitta.
fn solids_of(element: &TubeElement) -> Vec<Solid> {
    let line = &element.line;
    let (steps, grown) = match *line {
        CentreLine::Arc { radius, angle, .. } => {
            let steps = (angle.abs() / 15f64.to_radians()).ceil().max(1.0);
            let sagitta = radius * (1.0 - math::cos(0.5 * angle / steps));
            (steps, sagitta)
        }
        _ => (1.0, 0.0),
    };
    let each = line.length() / steps;
    let mut solids = Vec::new();
    let mut at = 0.0;
    while at < steps {
        solids.push(Solid::Capsule {
            a: line.at(at * each),
            b: line.at((at + 1.0) * each),
            radius: element.radius + grown,
        });
        at += 1.0;
    }
    solids
}

fn offer_of(
    ground: &Ground<'_>,
    problem: &RouteProblem,
    pieces: &[tubewright_route::Piece],
) -> Option<Offer> {
    let clr_mm = ground.run.clr_mm;
    let laid: Vec<Piece> = pieces
        .iter()
        .filter_map(|piece| {
            Some(match *piece {
                tubewright_route::Piece::Straight { length_mm } => Piece::Straight { length_mm },
                tubewright_route::Piece::Bend {
                    angle_rad,
                    clock_rad,
                } => Piece::Bend {
                    bend_rad: angle_rad,
                    clock_rad,
                    clr_mm,
                },
                tubewright_route::Piece::Component { component, .. } => Piece::Component {
                    length_mm: problem.components.get(component)?.length_mm,
                },
                tubewright_route::Piece::Crossover { .. } => return None,
            })
        })
        .collect();
    let way: WayOn = as_they_are(&ground.start, laid.clone(), &ground.aim);
    let (run, changes) = renamed(ground, problem, pieces, &laid)?;
    let run = ground.leaning(&run);
    let mut runs = ground.runs.to_vec();
    *runs.get_mut(ground.found.run)? = run;
    Some(ground.judged(OfferKind::Anew, runs, changes, &way))
}

/// The run with the new pieces in. A piece that is what an old one was keeps its mark; the others get
/// marks that were never given, for steel may already carry the old ones.
fn renamed(
    ground: &Ground<'_>,
    problem: &RouteProblem,
    pieces: &[tubewright_route::Piece],
    laid: &[Piece],
) -> Option<(PlannedRun, Vec<Change>)> {
    let mut marks = marks_after(ground.model, ground.runs);
    let mut old: Vec<&PlannedPiece> = ground
        .run
        .pieces
        .iter()
        .take(ground.until)
        .skip(ground.from)
        .collect();
    let mut changes = Vec::new();
    let mut templates: Vec<PlannedPiece> = Vec::new();
    for (piece, geometry) in pieces.iter().zip(laid) {
        let component = match piece {
            tubewright_route::Piece::Component { component, .. } => {
                Some(problem.components.get(*component)?.id.as_str())
            }
            _ => None,
        };
        let same = old.iter().position(|was| is_same(was, geometry, component));
        if let Some(index) = same {
            let was = old.remove(index);
            if let (
                PlannedKind::Bend {
                    clock_rad: from_rad,
                    ..
                },
                Piece::Bend {
                    clock_rad: to_rad, ..
                },
            ) = (&was.kind, geometry)
                && (from_rad - to_rad).abs() > 1e-9
            {
                changes.push(Change::Clock {
                    mark: was.mark.clone(),
                    from_rad: *from_rad,
                    to_rad: *to_rad,
                });
            }
            templates.push(was.clone());
        } else {
            let mut new = ground.run.pieces.get(ground.from)?.clone();
            new.mark = marks.piece(&ground.run.name);
            new.joint = marks.joint();
            new.uncovered_mm = 0.0;
            changes.push(Change::New {
                mark: new.mark.clone(),
            });
            templates.push(new);
        }
    }
    for dropped in old {
        changes.push(Change::Dropped {
            mark: dropped.mark.clone(),
            is_cut: ground.cut.contains(&dropped.mark),
        });
    }
    // The joint that was measured keeps its mark whatever comes behind it.
    if let Some(first) = templates.first_mut() {
        first.joint.clone_from(&ground.found.planned.mark);
    }
    let mut run = ground.run.clone();
    run.pieces.splice(ground.from..ground.until, templates);
    Some((relaid(&run, ground.from, &ground.start, laid), changes))
}

fn is_same(was: &PlannedPiece, is: &Piece, component: Option<&str>) -> bool {
    match (&was.kind, is) {
        (PlannedKind::Straight { length_mm: a }, Piece::Straight { length_mm: b }) => {
            (a - b).abs() < 1e-6
        }
        (PlannedKind::Bend { angle_rad: a, .. }, Piece::Bend { bend_rad: b, .. }) => {
            (a - b).abs() < 1e-9
        }
        (PlannedKind::Component { name, .. }, Piece::Component { .. }) => {
            Some(name.as_str()) == component
        }
        _ => false,
    }
}

/// A giver that knows every mark of the record and of the plan.
fn marks_after(model: &Model, runs: &[PlannedRun]) -> MarkGiver {
    let names: Vec<&str> = model
        .build
        .runs
        .iter()
        .map(|run| run.name.as_str())
        .collect();
    let mut giver = MarkGiver::after(&model.shop, &names);
    for run in runs {
        for piece in &run.pieces {
            giver.see(&piece.mark);
            giver.see(&piece.joint);
        }
        giver.see(&run.last_joint);
    }
    giver
}
