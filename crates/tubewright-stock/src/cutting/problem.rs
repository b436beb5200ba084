//! The cutting problem in whole numbers.

/// What must be cut: one class of equal parts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// Bins of the same family can give it (same tube, and for bends same radius).
    pub family: u32,
    /// Size along the bin, in thousandths; > 0.
    pub size: i64,
    /// Straight legs it keeps at its two ends, in thousandths of a millimetre, ≥ 0. The order does
    /// not matter: a bend may be turned round.
    pub legs: [i64; 2],
    /// How many are wanted in any case; [`Choice`]s add to it.
    pub count: u32,
}

/// One kind of bar or bend to cut from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Bin {
    /// Which parts it can give.
    pub family: u32,
    /// Usable size, in thousandths; > 0.
    pub size: i64,
    /// Lost to one cut, in thousandths of the same unit; ≥ 0.
    pub kerf: i64,
    /// Straight legs at its ends, in thousandths of a millimetre.
    pub legs: [i64; 2],
    /// Lost to one cut through a leg, in thousandths of a millimetre.
    pub leg_kerf: i64,
    /// Family of the straight parts that a leg left over can give; `None` for bars.
    pub leg_family: Option<u32>,
    /// Pieces on hand, at no price.
    pub on_hand: u32,
    /// Pieces that must be left over uncut (spares).
    pub spare: u32,
}

/// Price from a quantity on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tier {
    /// Smallest quantity (pieces) that has this price.
    pub from: u32,
    /// Price of each piece at this quantity, in minor units.
    pub each: i64,
}

/// A way to buy one kind of bin.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Purchase {
    /// Index of the bin.
    pub bin: usize,
    /// Index of the supplier whose delivery charge it takes.
    pub supplier: usize,
    /// Sold in multiples of this; ≥ 1.
    pub pack: u32,
    /// Prices, `from` rising; the first has the smallest quantity that is sold.
    pub tiers: Vec<Tier>,
    /// Most pieces that can be had; `None` when any number can.
    pub available: Option<u32>,
}

/// Something that may be chosen (0 or 1), with its price and the parts it then needs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// Price of the choice in minor units, ≥ 0.
    pub cost: i64,
    /// Part classes needed when it is chosen, with their number.
    pub needs: Vec<(usize, u32)>,
    /// Whether another is rather chosen where the whole costs the same.
    pub is_second: bool,
}

/// `Σ coefficient × choice = rhs`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Equality {
    /// Choice and coefficient.
    pub terms: Vec<(usize, i64)>,
    /// Right-hand side.
    pub rhs: i64,
}

/// The whole problem.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CuttingProblem {
    /// Part classes.
    pub parts: Vec<Part>,
    /// Kinds of bins.
    pub bins: Vec<Bin>,
    /// Ways to buy.
    pub purchases: Vec<Purchase>,
    /// Delivery charge of each supplier in minor units.
    pub delivery: Vec<i64>,
    /// What may be chosen.
    pub choices: Vec<Choice>,
    /// How choices hang together.
    pub equalities: Vec<Equality>,
}

/// How much work may be spent, counted and never timed, so that equal input gives equal output.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Effort {
    /// Branch-and-bound nodes of each integer program of six thousand columns; a smaller one has more, up to twenty
    /// times as many.
    pub nodes: u64,
    /// Patterns that may be enumerated; beyond it the plan is good but its proof open.
    pub patterns: usize,
    /// Steps of each pattern search.
    pub steps: u64,
}

impl Effort {
    /// For one of many plans of which few are ever used: a tenth of the nodes and a fifth of the patterns.
    #[must_use]
    pub fn quick(self) -> Self {
        Self {
            nodes: (self.nodes / 10).max(1),
            patterns: self.patterns / 5,
            ..self
        }
    }
}

impl Default for Effort {
    /// Small plans are proven; a plan of thirty different pieces from sixty kinds of stock comes
    /// with what it could save at most.
    fn default() -> Self {
        Self {
            nodes: 400,
            patterns: 2_500,
            steps: 2_000_000,
        }
    }
}

/// Why a cutting problem makes no sense. Indices are those of the lists in [`CuttingProblem`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum CuttingProblemError {
    /// A size, leg or kerf below its least or absurdly large.
    #[error("{what} {index} has a size out of range; sizes run from 0.001 to 1e9")]
    Size {
        /// Part or bin.
        what: &'static str,
        /// Which.
        index: usize,
    },
    /// A number that names something that is not there.
    #[error("{what} {index} names something that is not in the problem")]
    Dangling {
        /// Purchase, choice or equality.
        what: &'static str,
        /// Which.
        index: usize,
    },
    /// Pack of nothing, no prices, or prices whose quantities do not rise.
    #[error("purchase {index} has no usable price list; quantities must rise and a pack hold one")]
    PriceList {
        /// Which.
        index: usize,
    },
    /// A price out of range.
    #[error("{what} {index} has a negative or absurd price")]
    Price {
        /// Purchase, delivery or choice.
        what: &'static str,
        /// Which.
        index: usize,
    },
    /// More of anything than any shop has.
    #[error("{what}: {count} are more than the {limit} that are planned at once")]
    TooMany {
        /// Parts, bins or pieces.
        what: &'static str,
        /// How many.
        count: u64,
        /// Limit.
        limit: u64,
    },
}

/// Largest size in thousandths: a kilometre. Keeps every sum far inside 64 bits.
const LARGEST: i64 = 1_000_000_000;
/// Largest price in minor units: a hundred million.
const DEAREST: i64 = 10_000_000_000;
const MOST_PIECES: u64 = 100_000;

impl CuttingProblem {
    /// Checks every number at the door, so that inside no sum can overflow and no index fail.
    ///
    /// # Errors
    ///
    /// The first thing that makes no sense.
    pub fn check(&self) -> Result<(), CuttingProblemError> {
        use CuttingProblemError as E;
        let is_size = |v: i64| (1..=LARGEST).contains(&v);
        let is_loss = |v: i64| (0..=LARGEST).contains(&v);
        let is_price = |v: i64| (0..=DEAREST).contains(&v);
        for (index, part) in self.parts.iter().enumerate() {
            if !is_size(part.size) || !part.legs.iter().all(|leg| is_loss(*leg)) {
                return Err(E::Size {
                    what: "part",
                    index,
                });
            }
        }
        for (index, bin) in self.bins.iter().enumerate() {
            let losses = [bin.kerf, bin.leg_kerf, bin.legs[0], bin.legs[1]];
            if !is_size(bin.size) || !losses.into_iter().all(is_loss) {
                return Err(E::Size { what: "bin", index });
            }
        }
        for (index, purchase) in self.purchases.iter().enumerate() {
            if purchase.bin >= self.bins.len() || purchase.supplier >= self.delivery.len() {
                return Err(E::Dangling {
                    what: "purchase",
                    index,
                });
            }
            let rises = purchase
                .tiers
                .windows(2)
                .all(|pair| pair[0].from < pair[1].from);
            if purchase.pack == 0 || purchase.tiers.is_empty() || !rises {
                return Err(E::PriceList { index });
            }
            if !purchase.tiers.iter().all(|tier| is_price(tier.each)) {
                return Err(E::Price {
                    what: "purchase",
                    index,
                });
            }
        }
        for (index, charge) in self.delivery.iter().enumerate() {
            if !is_price(*charge) {
                return Err(E::Price {
                    what: "delivery",
                    index,
                });
            }
        }
        for (index, choice) in self.choices.iter().enumerate() {
            if choice
                .needs
                .iter()
                .any(|(part, _)| *part >= self.parts.len())
            {
                return Err(E::Dangling {
                    what: "choice",
                    index,
                });
            }
            if !is_price(choice.cost) {
                return Err(E::Price {
                    what: "choice",
                    index,
                });
            }
        }
        for (index, equality) in self.equalities.iter().enumerate() {
            if equality
                .terms
                .iter()
                .any(|(choice, _)| *choice >= self.choices.len())
            {
                return Err(E::Dangling {
                    what: "equality",
                    index,
                });
            }
        }
        let counts = [
            ("parts", self.caps().iter().map(|cap| u64::from(*cap)).sum()),
            ("part classes", self.parts.len() as u64),
            ("kinds of stock", self.bins.len() as u64),
            (
                "pieces on hand",
                self.bins.iter().map(|b| u64::from(b.on_hand)).sum(),
            ),
            ("spares", self.bins.iter().map(|b| u64::from(b.spare)).sum()),
        ];
        match counts.into_iter().find(|(_, count)| *count > MOST_PIECES) {
            Some((what, count)) => Err(E::TooMany {
                what,
                count,
                limit: MOST_PIECES,
            }),
            None => Ok(()),
        }
    }

    /// Most of each part that any set of choices can need: a pattern with more is not proper.
    pub(crate) fn caps(&self) -> Vec<u32> {
        let mut caps: Vec<u32> = self.parts.iter().map(|part| part.count).collect();
        for (part, count) in self.choices.iter().flat_map(|choice| &choice.needs) {
            if let Some(cap) = caps.get_mut(*part) {
                *cap = cap.saturating_add(*count);
            }
        }
        caps
    }
}
