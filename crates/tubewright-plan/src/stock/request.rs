//! The build's stock file and the planned runs as a request to the stock planner.

use std::collections::BTreeSet;
use tubewright_build::model::{
    ComponentKind, ItemKind, Model, OnHandWhat, StockShape as WrittenShape,
};
use tubewright_build::resolved::ResolvedPractice;
use tubewright_geometry::{Angle, Frame, Length};
use tubewright_stock::{
    Currency, Effort, Item, KerfRule, Money, Offer, OnHand, OnHandKind, PieceDemand, PieceShape,
    PriceBreak, Rates, RunDemand, ShopRules, StockPiece, StockRequest, StockShape, Supplier,
    TubeSpec,
};

use crate::routes::{PlannedKind, PlannedPiece, PlannedRun, component_item, component_kind};

/// Why the stock file cannot be planned with.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum RequestError {
    /// No currency.
    #[error("stock.toml names no currency; write currency = \"EUR\" or another at its top")]
    NoCurrency,
    /// A run's tube is not there.
    #[error("the run “{run}” is of tube “{tube}”, which stock.toml does not hold")]
    NoTube {
        /// The run.
        run: String,
        /// The tube.
        tube: String,
    },
}

/// Makes the request. `without` names items that are to be left out: the supplier has none.
///
/// # Errors
/// [`RequestError`] when the stock file lacks what every plan needs.
pub fn request_of(
    model: &Model,
    practice: &ResolvedPractice,
    runs: &[PlannedRun],
    without: &[String],
) -> Result<StockRequest, RequestError> {
    let stock = &model.stock;
    let written = stock.currency.ok_or(RequestError::NoCurrency)?;
    let currency = Currency::new(written.code()).ok_or(RequestError::NoCurrency)?;
    let digits = written.minor_digits();
    let money = |major: f64| Money::new(minor_of(major, digits), currency);
    let is_out = |name: &str| without.iter().any(|out| out == name);
    let items = stock
        .items
        .iter()
        .filter_map(|item| {
            let kind = match &item.kind {
                ItemKind::Stock(shape) => ItemKind2::Stock(StockPiece {
                    tube: tube_spec(model, item.tube.as_deref()?)?,
                    shape: shape_of(shape),
                }),
                ItemKind::Component(_) => ItemKind2::Component,
            };
            Some(Item {
                name: item.name.to_string(),
                kind,
            })
        })
        .collect();
    let offers = stock
        .offers
        .iter()
        .filter(|offer| !is_out(&offer.item))
        .map(|offer| {
            let tax = 1.0 + offer.tax.as_ref().map_or(0.0, |tax| tax.fraction());
            let mut prices = vec![PriceBreak {
                from: 1,
                each: money(offer.price.major() * tax),
            }];
            prices.extend(offer.breaks.iter().map(|step| PriceBreak {
                from: step.from,
                each: money(step.price.major() * tax),
            }));
            Offer {
                item: offer.item.to_string(),
                supplier: offer.supplier.to_string(),
                prices,
                pack: offer.pack.max(1),
                available: offer.quantity,
                date: offer.date.clone().unwrap_or_default(),
            }
        })
        .collect();
    let suppliers = stock
        .suppliers
        .iter()
        .map(|supplier| Supplier {
            name: supplier.name.to_string(),
            delivery: money(
                supplier
                    .delivery_charge
                    .as_ref()
                    .map_or(0.0, |charge| charge.major()),
            ),
        })
        .collect();
    let on_hand = stock
        .on_hand
        .iter()
        .filter_map(|on_hand| {
            let kind = match &on_hand.what {
                OnHandWhat::Item(name) => OnHandKind::Item(name.to_string()),
                OnHandWhat::Stock { tube, shape } => OnHandKind::Measured(StockPiece {
                    tube: tube_spec(model, tube)?,
                    shape: shape_of(shape),
                }),
            };
            Some(OnHand {
                name: on_hand.name.to_string(),
                kind,
                count: on_hand.count,
            })
        })
        .collect();
    let mut seen = BTreeSet::new();
    let mut demands = Vec::new();
    for run in runs {
        demands.extend(demands_of(model, practice, run, &mut seen)?);
    }
    let weld = practice.rate.major_per_unit * practice.weld_time.minutes() / 60.0;
    Ok(StockRequest {
        items,
        offers,
        suppliers,
        on_hand,
        runs: demands,
        spares: Vec::new(),
        rules: ShopRules {
            kerf: practice.kerf,
            kerf_rule: KerfRule::SquareFaces,
            least_grip: practice.least_grip,
            saw_capacity: practice.saw_capacity,
            end_trim: Length::ZERO,
            ..ShopRules::common_practice()
        },
        rates: Rates { weld: money(weld) },
        effort: Effort::default(),
    })
}

use tubewright_stock::ItemKind as ItemKind2;

#[expect(
    clippy::cast_possible_truncation,
    reason = "prices are far below 2^53 minor units; the cast saturates"
)]
fn minor_of(major: f64, digits: u32) -> i64 {
    (major * f64::from(10u32.pow(digits.min(4)))).round() as i64
}

fn tube_spec(model: &Model, name: &str) -> Option<TubeSpec> {
    let tube = model.stock.tube(name)?;
    Some(TubeSpec {
        od: tube.od.value,
        wall: tube.wall.value,
        material: tube.material.word().to_owned(),
    })
}

fn shape_of(shape: &WrittenShape) -> StockShape {
    match shape {
        WrittenShape::Straight { length } => StockShape::Straight {
            length: length.value,
        },
        WrittenShape::Bend { angle, clr, legs } => StockShape::Bend {
            angle: angle.value,
            clr: clr.value,
            leg_a: legs[0].value,
            leg_b: legs[1].value,
        },
    }
}

/// The demands of a run: one, or two where it passes a crossover. The crossover belongs to the run
/// that asks for it first; of one that is made by hand each run asks for its own half. What lies behind it starts anew: its clocks count from twelve o'clock at the
/// crossover's outlet, for no witness line leads through it.
fn demands_of(
    model: &Model,
    practice: &ResolvedPractice,
    run: &PlannedRun,
    seen: &mut BTreeSet<String>,
) -> Result<Vec<RunDemand>, RequestError> {
    let tube = tube_spec(model, &run.tube).ok_or_else(|| RequestError::NoTube {
        run: run.name.clone(),
        tube: run.tube.clone(),
    })?;
    let mut demands = vec![RunDemand {
        name: run.name.clone(),
        pieces: Vec::new(),
        // To a part that is asked for by another run.
        welds_at_ends: u32::from(run.starts_on.is_some()) + u32::from(run.ends_at_part().is_some()),
    }];
    for (piece, pulls) in run.pieces.iter().zip(weld_pulls(practice, run)) {
        let shape = match &piece.kind {
            PlannedKind::Straight { length_mm } => PieceShape::Straight {
                length: Length::from_mm(*length_mm),
            },
            PlannedKind::Bend {
                angle_rad,
                clock_rad,
                clr_mm,
            } => PieceShape::Bend {
                angle: Angle::from_rad(*angle_rad),
                clr: Length::from_mm(*clr_mm),
                clock: Angle::from_rad(*clock_rad),
            },
            PlannedKind::Component { name, .. } | PlannedKind::Crossover { name, .. } => {
                PieceShape::Component {
                    item: item_of(model, name),
                }
            }
        };
        let passed = match &piece.kind {
            PlannedKind::Crossover { name, .. } => Some(name),
            _ => None,
        };
        let half = passed.and_then(|name| half_made(model, piece, name));
        let stands =
            passed.is_some_and(|name| component_kind(model, name) == Some(ComponentKind::Stretch));
        let is_asked_for = passed.is_some_and(|name| !seen.insert(name.clone()));
        if let Some(demand) = demands.last_mut() {
            if half.is_some() || stands {
                demand.welds_at_ends += u32::from(!demand.pieces.is_empty());
            } else if is_asked_for {
                // The weld to the inlet joins what is here to what another run asks for.
                demand.welds_at_ends += u32::from(!demand.pieces.is_empty());
            } else {
                demand.pieces.push(PieceDemand {
                    mark: piece.mark.clone(),
                    tube: tube.clone(),
                    shape,
                    pulls,
                });
            }
        }
        if let (Some(name), Some(pieces)) = (passed, half) {
            demands.push(RunDemand {
                name: format!("half of {name}, {}", run.name),
                pieces: pieces
                    .into_iter()
                    .map(|(mark, shape)| PieceDemand {
                        mark,
                        tube: tube.clone(),
                        shape,
                        pulls: [Length::ZERO; 2],
                    })
                    .collect(),
                welds_at_ends: 0,
            });
        }
        if let Some(name) = passed {
            demands.push(RunDemand {
                name: format!("{}, behind {name}", run.name),
                pieces: Vec::new(),
                welds_at_ends: 1,
            });
        }
    }
    demands.retain(|demand| !demand.pieces.is_empty());
    Ok(demands)
}

/// The half of a crossover made by hand that a run passes: its bend, and the legs that stay on it, which carry its
/// mark with *a* and *b* behind it. `None` for a crossover that is bought.
fn half_made(model: &Model, piece: &PlannedPiece, name: &str) -> Option<Vec<(String, PieceShape)>> {
    let made = component_item(model, name)?.hand_made.as_ref()?;
    let arrives = Frame::upright(piece.frame_in.origin, piece.frame_in.travel());
    let leads_to = piece.frame_out.travel().vector();
    let bend = PieceShape::Bend {
        angle: made.angle,
        clr: made.clr,
        clock: Angle::from_rad(arrives.clock_of(leads_to)),
    };
    let leg = |end: &str| {
        let shape = PieceShape::Straight {
            length: made.leg.value,
        };
        (made.leg.mm() > 0.0).then(|| (format!("{}{end}", piece.mark), shape))
    };
    let [before, behind] = ["a", "b"].map(leg);
    let bend = (piece.mark.clone(), bend);
    Some(before.into_iter().chain([bend]).chain(behind).collect())
}

/// What is added to each piece, upstream and downstream, because every weld pulls its two pieces
/// together: the whole pull goes to the straight beside the joint, the upstream one of two. A joint
/// between two bends has none and is left to the trim of the closing piece.
fn weld_pulls(practice: &ResolvedPractice, run: &PlannedRun) -> Vec<[Length; 2]> {
    let is_straight = |index: usize| {
        matches!(
            run.pieces.get(index).map(|p| &p.kind),
            Some(PlannedKind::Straight { .. })
        )
    };
    let mut pulls = vec![[Length::ZERO; 2]; run.pieces.len()];
    for joint in 0..=run.pieces.len() {
        // The piece upstream of the joint is pulled at its downstream end, the other at its upstream.
        let beside = [
            joint.checked_sub(1).map(|index| (index, 1)),
            Some((joint, 0)),
        ];
        if let Some(pull) = beside
            .into_iter()
            .flatten()
            .find(|&(index, _)| is_straight(index))
            .and_then(|(index, end)| pulls.get_mut(index)?.get_mut(end))
        {
            *pull = practice.weld_pull;
        }
    }
    pulls
}

fn item_of(model: &Model, component: &str) -> String {
    model.build.component(component).map_or_else(
        || component.to_owned(),
        |component| component.item.to_string(),
    )
}
