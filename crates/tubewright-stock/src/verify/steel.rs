//! Parts lie inside their stock with a kerf between them; legs are kept only at uncut ends.

use tubewright_geometry::{Length, math};

use super::{Fault, SIZE_TOLERANCE};
use crate::item::StockShape;
use crate::plan::{CutStock, PartPlace, Source, StockEnd, StockPlan};
use crate::request::StockRequest;
use crate::rules::KerfRule;

pub(super) fn faults(request: &StockRequest, plan: &StockPlan) -> Vec<Fault> {
    plan.cuts
        .iter()
        .filter_map(|cut| stock_fault(request, cut))
        .collect()
}

/// A stretch along one axis of the stock: from, to, first mark.
type Stretch<'a> = (f64, f64, &'a str);

fn stock_fault(request: &StockRequest, cut: &CutStock) -> Option<Fault> {
    let bad = |mark: &str, why: &'static str| {
        let source_name = match &cut.source {
            Source::OnHand(name) | Source::Bought(name) => name.clone(),
        };
        Some(Fault::BadCut {
            source_name,
            number: cut.number,
            mark: mark.to_owned(),
            why,
        })
    };
    let kerf_mm = request.rules.kerf.mm();
    let (mut bar, mut leg_a, mut arc, mut leg_b) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    let mut kept = [Length::ZERO; 2];
    for part in &cut.parts {
        let mark = part
            .serves
            .first()
            .map_or("", |serves| serves.mark.as_str());
        match part.place {
            PartPlace::Bar { start, length } => {
                bar.push((start.mm(), (start + length).mm(), mark));
            }
            PartPlace::Leg {
                end: StockEnd::A,
                start,
                length,
            } => {
                leg_a.push((start.mm(), (start + length).mm(), mark));
            }
            PartPlace::Leg {
                end: StockEnd::B,
                start,
                length,
            } => {
                leg_b.push((start.mm(), (start + length).mm(), mark));
            }
            PartPlace::Arc {
                start,
                sweep,
                keeps_a,
                keeps_b,
            } => {
                let StockShape::Bend { angle, .. } = cut.stock.shape else {
                    return bad(mark, "an arc in a straight");
                };
                if keeps_a.mm() > 0.0 && start.deg().abs() > SIZE_TOLERANCE {
                    return bad(mark, "a leg kept behind a cut");
                }
                let to_end = angle.deg() - (start + sweep).deg();
                if keeps_b.mm() > 0.0 && to_end.abs() > SIZE_TOLERANCE {
                    return bad(mark, "a leg kept behind a cut");
                }
                kept = [kept[0].max(keeps_a), kept[1].max(keeps_b)];
                arc.push((start.deg(), (start + sweep).deg(), mark));
            }
        }
    }
    match cut.stock.shape {
        StockShape::Straight { length } => {
            if let Some((_, _, mark)) = leg_a.first().or(leg_b.first()) {
                return bad(mark, "a leg in a straight");
            }
            let (from, to) = (cut.trimmed.mm(), (length - cut.trimmed).mm());
            overlap(&mut bar, from, to, kerf_mm).and_then(|(mark, why)| bad(mark, why))
        }
        StockShape::Bend {
            angle,
            clr,
            leg_a: a,
            leg_b: b,
        } => {
            if let Some((_, _, mark)) = bar.first() {
                return bad(mark, "a bar in a bend");
            }
            // Written out again here, not taken from the planner.
            let kerf_rad = match request.rules.kerf_rule {
                KerfRule::Nominal => kerf_mm / clr.mm(),
                KerfRule::SquareFaces => {
                    math::asin(kerf_mm / (clr.mm() - cut.stock.tube.od.mm() / 2.0))
                }
            };
            let in_leg = |leg: Length, kept: Length| leg.mm() - kept.mm() - kerf_mm;
            let mark = cut.parts.first().and_then(|part| part.serves.first());
            if kept[0].mm() > a.mm() + SIZE_TOLERANCE || kept[1].mm() > b.mm() + SIZE_TOLERANCE {
                return bad(
                    mark.map_or("", |serves| &serves.mark),
                    "a leg longer than there is",
                );
            }
            overlap(&mut arc, 0.0, angle.deg(), kerf_rad.to_degrees())
                .or_else(|| overlap(&mut leg_a, 0.0, in_leg(a, kept[0]), kerf_mm))
                .or_else(|| overlap(&mut leg_b, 0.0, in_leg(b, kept[1]), kerf_mm))
                .and_then(|(mark, why)| bad(mark, why))
        }
    }
}

fn overlap<'a>(
    stretches: &mut [Stretch<'a>],
    from: f64,
    to: f64,
    kerf: f64,
) -> Option<(&'a str, &'static str)> {
    stretches.sort_by(|x, y| x.0.total_cmp(&y.0));
    if let Some((start, _, mark)) = stretches.first()
        && *start < from - SIZE_TOLERANCE
    {
        return Some((mark, "it starts before the stock"));
    }
    if let Some((_, end, mark)) = stretches.last()
        && *end > to + SIZE_TOLERANCE
    {
        return Some((mark, "it ends beyond the stock"));
    }
    stretches.windows(2).find_map(|pair| match pair {
        [(_, end, _), (start, _, mark)] if start - end < kerf - SIZE_TOLERANCE => {
            Some((*mark, "no room for the saw before it"))
        }
        _ => None,
    })
}
