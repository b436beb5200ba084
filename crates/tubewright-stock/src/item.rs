//! What can be bought, from whom, and what lies in the shop.

use tubewright_geometry::{Angle, Length};

use crate::money::Money;
use crate::size::length_thousandths;

/// A tube: outside diameter, wall and material. Nominal sizes are not tubes: two tubes are the same
/// only when all three agree.
#[derive(Clone, Debug, PartialEq)]
pub struct TubeSpec {
    /// Outside diameter.
    pub od: Length,
    /// Wall.
    pub wall: Length,
    /// Material, as the catalogue calls it.
    pub material: String,
}

impl TubeSpec {
    /// Inside diameter.
    #[must_use]
    pub fn bore(&self) -> Length {
        self.od - self.wall * 2.0
    }

    /// Whether two are the same tube, to a thousandth of a millimetre.
    #[must_use]
    pub fn is_same_as(&self, other: &Self) -> bool {
        self.key() == other.key()
    }

    pub(crate) fn key(&self) -> (i64, i64, &str) {
        (
            length_thousandths(self.od),
            length_thousandths(self.wall),
            &self.material,
        )
    }
}

/// Shape of tube to be cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum StockShape {
    /// A straight tube with square ends.
    Straight {
        /// Length.
        length: Length,
    },
    /// A bend with straight legs; end A is that of `leg_a`.
    Bend {
        /// Turn of the direction.
        angle: Angle,
        /// Centre-line radius.
        clr: Length,
        /// Straight before the arc, from end A; may be zero.
        leg_a: Length,
        /// Straight after the arc, to end B; may be zero.
        leg_b: Length,
    },
}

/// Tube to be cut.
#[derive(Clone, Debug, PartialEq)]
pub struct StockPiece {
    /// The tube.
    pub tube: TubeSpec,
    /// Its shape.
    pub shape: StockShape,
}

/// What an item of the catalogue is.
#[derive(Clone, Debug, PartialEq)]
pub enum ItemKind {
    /// Tube to be cut.
    Stock(StockPiece),
    /// A component used as it is: silencer, flex, clamp, bung.
    Component,
}

/// An item of the catalogue.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// Its name, unique among items.
    pub name: String,
    /// What it is.
    pub kind: ItemKind,
}

/// Price from a quantity on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PriceBreak {
    /// Smallest quantity, in pieces, that has this price.
    pub from: u32,
    /// Price of each piece at that quantity: all of them cost this, not only those above.
    pub each: Money,
}

/// A supplier's offer of an item.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    /// The item.
    pub item: String,
    /// The supplier.
    pub supplier: String,
    /// Prices, quantities rising; the first is the least that is sold.
    pub prices: Vec<PriceBreak>,
    /// Sold in multiples of this many pieces.
    pub pack: u32,
    /// Most pieces that can be had; `None` when any number can.
    pub available: Option<u32>,
    /// Date of the price, as written; empty when not known.
    pub date: String,
}

/// A supplier.
#[derive(Clone, Debug, PartialEq)]
pub struct Supplier {
    /// Its name, unique among suppliers.
    pub name: String,
    /// Charged once when anything is ordered there.
    pub delivery: Money,
}

/// What lies in the shop.
#[derive(Clone, Debug, PartialEq)]
pub enum OnHandKind {
    /// A whole item of the catalogue with its nominal geometry.
    Item(String),
    /// Tube with its own measured geometry, such as an offcut: angle, radius and legs as measured.
    Measured(StockPiece),
}

/// Something on hand.
#[derive(Clone, Debug, PartialEq)]
pub struct OnHand {
    /// Its name, unique among what is on hand.
    pub name: String,
    /// What it is.
    pub kind: OnHandKind,
    /// How many of it.
    pub count: u32,
}

/// Uncut items to have left over when everything is cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Spare {
    /// The item.
    pub item: String,
    /// How many.
    pub count: u32,
}
