//! Items, what is on hand and offers as bins and purchases.

use std::collections::BTreeSet;

use tubewright_geometry::Length;

use super::{BinStock, COMPONENT, FamilyKey, StockModel};
use crate::cutting::{Bin, Purchase, Tier};
use crate::error::PlanError;
use crate::item::{ItemKind, OnHandKind, StockPiece, StockShape};
use crate::possible::check_tube;
use crate::request::StockRequest;
use crate::size::{angle_thousandths, length_thousandths, loss_thousandths};

impl StockModel {
    /// The family of a stock item: same tube, and for bends the nearest demanded radius within
    /// tolerance.
    fn stock_family(&self, stock: &StockPiece, clr_tolerance: Length) -> Option<u32> {
        let (od, wall, material) = stock.tube.key();
        match stock.shape {
            StockShape::Straight { .. } => self
                .families
                .get(&FamilyKey::Straight(od, wall, material.to_owned()))
                .copied(),
            StockShape::Bend { clr, .. } => {
                let clr = length_thousandths(clr);
                let reach = length_thousandths(clr_tolerance);
                self.families
                    .iter()
                    .filter_map(|(key, family)| match key {
                        FamilyKey::Bend(o, w, m, wanted)
                            if (*o, *w, m.as_str()) == (od, wall, material) =>
                        {
                            Some(((wanted - clr).abs(), *family))
                        }
                        _ => None,
                    })
                    .filter(|(off, _)| *off <= reach)
                    .min()
                    .map(|(_, family)| family)
            }
        }
    }

    pub(super) fn add_bins(&mut self, request: &StockRequest) -> Result<(), PlanError> {
        let mut names = BTreeSet::new();
        for item in &request.items {
            if !names.insert(&item.name) {
                return Err(PlanError::Twice {
                    what: "item",
                    name: item.name.clone(),
                });
            }
            let spare = request
                .spares
                .iter()
                .filter(|spare| spare.item == item.name)
                .map(|spare| spare.count)
                .fold(0, u32::saturating_add);
            let on_hand: Vec<(String, u32)> = request
                .on_hand
                .iter()
                .filter(|it| matches!(&it.kind, OnHandKind::Item(name) if *name == item.name))
                .map(|it| (it.name.clone(), it.count))
                .collect();
            let source = BinStock {
                item: Some(item.name.clone()),
                on_hand,
                stock: None,
                trim: Length::ZERO,
            };
            match &item.kind {
                ItemKind::Stock(stock) => {
                    self.add_bin("item", &item.name, stock, source, spare, request)?;
                }
                ItemKind::Component => {
                    let family = self.family(FamilyKey::Item(item.name.clone()));
                    let bin = plain_bin(family, COMPONENT, &source, spare);
                    self.push_bin(bin, source);
                }
            }
        }
        for spare in &request.spares {
            if !names.contains(&spare.item) {
                return Err(PlanError::Unknown {
                    what: "item",
                    name: spare.item.clone(),
                });
            }
        }
        let mut on_hand_names = BTreeSet::new();
        for it in &request.on_hand {
            if !on_hand_names.insert(&it.name) {
                return Err(PlanError::Twice {
                    what: "on hand",
                    name: it.name.clone(),
                });
            }
            match &it.kind {
                OnHandKind::Item(name) if !names.contains(name) => {
                    return Err(PlanError::Unknown {
                        what: "item",
                        name: name.clone(),
                    });
                }
                OnHandKind::Item(_) => {}
                OnHandKind::Measured(stock) => {
                    let source = BinStock {
                        item: None,
                        on_hand: vec![(it.name.clone(), it.count)],
                        stock: None,
                        trim: Length::ZERO,
                    };
                    self.add_bin("on hand", &it.name, stock, source, 0, request)?;
                }
            }
        }
        Ok(())
    }

    fn add_bin(
        &mut self,
        what: &'static str,
        name: &str,
        stock: &StockPiece,
        mut source: BinStock,
        spare: u32,
        request: &StockRequest,
    ) -> Result<(), PlanError> {
        let rules = &request.rules;
        let no_size = |detail: String| PlanError::NoSize {
            what,
            name: name.to_owned(),
            detail,
        };
        check_tube(stock).map_err(no_size)?;
        let family = match self.stock_family(stock, rules.clr_tolerance) {
            Some(family) => family,
            // Nothing asks for it; it is kept when it is a spare.
            None if spare > 0 => self.family(FamilyKey::Item(format!("spare {name}"))),
            None if self.leg_family(stock).is_some() => {
                self.family(FamilyKey::Item(format!("legs of {name}")))
            }
            None => return Ok(()),
        };
        let kerf = loss_thousandths(rules.kerf.mm());
        let bin = match stock.shape {
            StockShape::Straight { length } => {
                // Trims belong to bought ends; an offcut has been cut already.
                let trim = if source.item.is_some() {
                    rules.end_trim
                } else {
                    Length::ZERO
                };
                source.trim = trim;
                let usable = length - trim * 2.0;
                if usable.mm() < 0.001 {
                    return Ok(());
                }
                let size = length_thousandths(usable);
                Bin {
                    kerf,
                    ..plain_bin(family, size, &source, spare)
                }
            }
            StockShape::Bend {
                angle,
                leg_a,
                leg_b,
                clr,
            } => {
                let Some(arc_kerf) = rules.arc_kerf(stock) else {
                    return Err(no_size(format!(
                        "a centre-line radius of {clr} leaves no inside for a tube of {} and a kerf of {}",
                        stock.tube.od, rules.kerf
                    )));
                };
                Bin {
                    kerf: loss_thousandths(arc_kerf.deg()),
                    legs: [length_thousandths(leg_a), length_thousandths(leg_b)],
                    leg_kerf: kerf,
                    leg_family: self.leg_family(stock),
                    ..plain_bin(family, angle_thousandths(angle), &source, spare)
                }
            }
        };
        source.stock = Some(stock.clone());
        self.push_bin(bin, source);
        Ok(())
    }

    fn push_bin(&mut self, bin: Bin, source: BinStock) {
        self.problem.bins.push(bin);
        self.bins.push(source);
    }

    /// Family of the straights that the legs of a bend can give.
    fn leg_family(&self, stock: &StockPiece) -> Option<u32> {
        let StockShape::Bend { .. } = stock.shape else {
            return None;
        };
        let (od, wall, material) = stock.tube.key();
        self.families
            .get(&FamilyKey::Straight(od, wall, material.to_owned()))
            .copied()
    }

    pub(super) fn add_purchases(&mut self, request: &StockRequest) -> Result<(), PlanError> {
        let currency = request.rates.weld.currency;
        let in_currency = |money: crate::money::Money| {
            if money.currency == currency {
                Ok(money.minor)
            } else {
                Err(PlanError::Currencies {
                    first: currency.to_string(),
                    second: money.currency.to_string(),
                })
            }
        };
        let mut names = BTreeSet::new();
        for supplier in &request.suppliers {
            if !names.insert(&supplier.name) {
                return Err(PlanError::Twice {
                    what: "supplier",
                    name: supplier.name.clone(),
                });
            }
            self.problem.delivery.push(in_currency(supplier.delivery)?);
        }
        for (index, offer) in request.offers.iter().enumerate() {
            let supplier = request
                .suppliers
                .iter()
                .position(|supplier| supplier.name == offer.supplier)
                .ok_or_else(|| PlanError::Unknown {
                    what: "supplier",
                    name: offer.supplier.clone(),
                })?;
            if !request.items.iter().any(|item| item.name == offer.item) {
                return Err(PlanError::Unknown {
                    what: "item",
                    name: offer.item.clone(),
                });
            }
            let is_it = |bin: &BinStock| bin.item.as_deref() == Some(offer.item.as_str());
            let Some(bin) = self.bins.iter().position(is_it) else {
                continue;
            };
            let tiers = offer
                .prices
                .iter()
                .map(|price| {
                    Ok(Tier {
                        from: price.from,
                        each: in_currency(price.each)?,
                    })
                })
                .collect::<Result<_, PlanError>>()?;
            self.problem.purchases.push(Purchase {
                bin,
                supplier,
                pack: offer.pack,
                tiers,
                available: offer.available,
            });
            self.offers.push(index);
        }
        Ok(())
    }
}

fn plain_bin(family: u32, size: i64, source: &BinStock, spare: u32) -> Bin {
    Bin {
        family,
        size,
        kerf: 0,
        legs: [0, 0],
        leg_kerf: 0,
        leg_family: None,
        on_hand: source
            .on_hand
            .iter()
            .map(|(_, count)| *count)
            .fold(0, u32::saturating_add),
        spare,
    }
}
