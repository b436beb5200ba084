use crate::model::{ComponentItem, Name};
use crate::quantity::{Currency, Density, Duration, Money, Quantity, Rate, Share};
use crate::span::Span;
use tubewright_geometry::{Angle, Length};

/// What can be bought and what lies there: `stock.toml`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stock {
    /// The currency of all prices.
    pub currency: Option<Currency>,
    /// Tube sizes.
    pub tubes: Vec<Tube>,
    /// Items.
    pub items: Vec<Item>,
    /// Offers.
    pub offers: Vec<Offer>,
    /// Suppliers.
    pub suppliers: Vec<Supplier>,
    /// What lies in the shop.
    pub on_hand: Vec<OnHand>,
    /// The shop's own figures.
    pub practice: Practice,
}

impl Stock {
    /// The tube size of this name.
    #[must_use]
    pub fn tube(&self, name: &str) -> Option<&Tube> {
        self.tubes.iter().find(|tube| tube.name == *name)
    }

    /// The item of this name.
    #[must_use]
    pub fn item(&self, name: &str) -> Option<&Item> {
        self.items.iter().find(|item| item.name == *name)
    }

    /// The supplier of this name.
    #[must_use]
    pub fn supplier(&self, name: &str) -> Option<&Supplier> {
        self.suppliers
            .iter()
            .find(|supplier| supplier.name == *name)
    }

    /// The offcut or item on hand of this name.
    #[must_use]
    pub fn on_hand(&self, name: &str) -> Option<&OnHand> {
        self.on_hand.iter().find(|on_hand| on_hand.name == *name)
    }
}

/// A tube size.
#[derive(Clone, Debug, PartialEq)]
pub struct Tube {
    /// Its name.
    pub name: Name,
    /// Outside diameter.
    pub od: Quantity<Length>,
    /// Wall.
    pub wall: Quantity<Length>,
    /// Material.
    pub material: Material,
    /// Density as written; see [`Tube::density_kg_per_m3`].
    pub density: Option<Quantity<Density>>,
    /// Where it was written.
    pub span: Span,
}

impl Tube {
    /// Density as written, or that of the material.
    #[must_use]
    pub fn density_kg_per_m3(&self) -> f64 {
        self.density
            .as_ref()
            .map_or_else(|| self.material.density_kg_per_m3(), |d| d.kg_per_m3())
    }

    /// Mass of a metre in kg: density times the ring of metal.
    #[must_use]
    pub fn kg_per_metre(&self) -> f64 {
        let (od, wall) = (self.od.mm(), self.wall.mm());
        tubewright_geometry::math::PI * (od - wall) * wall * 1e-6 * self.density_kg_per_m3()
    }
}

/// Material of a tube or an end.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Material {
    /// Austenitic stainless 304 (1.4301).
    Stainless304,
    /// Stabilised austenitic stainless 321 (1.4541).
    Stainless321,
    /// Ferritic stainless 409 (1.4512).
    Stainless409,
    /// Mild steel.
    Mild,
    /// Cast iron.
    CastIron,
    /// Aluminised mild steel.
    Aluminised,
}

impl Material {
    /// Density at room temperature in kg/m³: EN 10088-1:2014 table E for the stainless steels
    /// (7 900, 7 900, 7 700; from memory); 7 850 for steel and 7 200 for grey iron are common
    /// practice, no source.
    #[must_use]
    pub const fn density_kg_per_m3(self) -> f64 {
        match self {
            Self::Stainless304 | Self::Stainless321 => 7900.0,
            Self::Stainless409 => 7700.0,
            Self::Mild | Self::Aluminised => 7850.0,
            Self::CastIron => 7200.0,
        }
    }

    /// As written in the files.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Stainless304 => "304",
            Self::Stainless321 => "321",
            Self::Stainless409 => "409",
            Self::Mild => "mild",
            Self::CastIron => "cast iron",
            Self::Aluminised => "aluminised",
        }
    }
}

/// Geometry of something that can be bought.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// Its name.
    pub name: Name,
    /// What it is.
    pub kind: ItemKind,
    /// Tube size of it or of its necks; `None` where it has none.
    pub tube: Option<Name>,
    /// Words of the person.
    pub note: Option<String>,
    /// Where it was written.
    pub span: Span,
}

/// What an item is.
#[derive(Clone, Debug, PartialEq)]
pub enum ItemKind {
    /// Tube to be cut: `tube` of the item is present.
    Stock(StockShape),
    /// A component with ports.
    Component(ComponentItem),
}

/// Shape of tube to be cut.
#[derive(Clone, Debug, PartialEq)]
pub enum StockShape {
    /// A bend with straight legs.
    Bend {
        /// Angle.
        angle: Quantity<Angle>,
        /// Centre-line radius.
        clr: Quantity<Length>,
        /// Straight legs, at one end and at the other.
        legs: [Quantity<Length>; 2],
    },
    /// A straight tube.
    Straight {
        /// Length.
        length: Quantity<Length>,
    },
}

/// A supplier's price for an item.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    /// The item.
    pub item: Name,
    /// The supplier.
    pub supplier: Name,
    /// Price of one, or of one pack when `pack` is more than 1.
    pub price: Quantity<Money>,
    /// Lower prices from a number on, rising numbers.
    pub breaks: Vec<PriceBreak>,
    /// Sold in packs of this many; 1 when left out.
    pub pack: u32,
    /// How many they have, when known.
    pub quantity: Option<u32>,
    /// Tax to be added to the price.
    pub tax: Option<Quantity<Share>>,
    /// When it comes, in words.
    pub delivery: Option<String>,
    /// Date of the price, year-month-day.
    pub date: Option<String>,
    /// Where it was written.
    pub span: Span,
}

/// A lower price from a number of pieces on.
#[derive(Clone, Debug, PartialEq)]
pub struct PriceBreak {
    /// From this many.
    pub from: u32,
    /// Price of each.
    pub price: Quantity<Money>,
}

/// A supplier.
#[derive(Clone, Debug, PartialEq)]
pub struct Supplier {
    /// Its name.
    pub name: Name,
    /// Added once per order.
    pub delivery_charge: Option<Quantity<Money>>,
    /// Words of the person.
    pub note: Option<String>,
    /// Where it was written.
    pub span: Span,
}

/// Something that lies in the shop, as measured.
#[derive(Clone, Debug, PartialEq)]
pub struct OnHand {
    /// Its name.
    pub name: Name,
    /// What it is.
    pub what: OnHandWhat,
    /// How many.
    pub count: u32,
    /// Words of the person.
    pub note: Option<String>,
    /// Where it was written.
    pub span: Span,
}

/// What lies in the shop.
#[expect(
    clippy::large_enum_variant,
    reason = "nearly all that lies there is tube to be cut, the large variant"
)]
#[derive(Clone, Debug, PartialEq)]
pub enum OnHandWhat {
    /// Tube to be cut, as measured.
    Stock {
        /// Tube size.
        tube: Name,
        /// Shape as measured.
        shape: StockShape,
    },
    /// A whole item of the catalogue.
    Item(Name),
}

/// The shop's own figures, as written; what is left out is common practice, see
/// [`Practice::resolved`].
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Practice {
    /// Price of an hour.
    pub rate: Option<Quantity<Rate>>,
    /// Time for one weld, fit-up included.
    pub weld_time: Option<Quantity<Duration>>,
    /// Time for one cut.
    pub cut_time: Option<Quantity<Duration>>,
    /// Width of the saw cut.
    pub kerf: Option<Quantity<Length>>,
    /// Lengths are rounded to this.
    pub length_step: Option<Quantity<Length>>,
    /// Bend angles are rounded to this.
    pub bend_step: Option<Quantity<Angle>>,
    /// Clock angles are rounded to this.
    pub clock_step: Option<Quantity<Angle>>,
    /// Shortest straight between two bends.
    pub least_straight: Option<Quantity<Length>>,
    /// Smallest bend worth making.
    pub least_bend: Option<Quantity<Angle>>,
    /// Shortest piece that the saw can hold.
    pub least_grip: Option<Quantity<Length>>,
    /// Largest section that the saw takes.
    pub saw_capacity: Option<Quantity<Length>>,
    /// ± of a cut length (19 in 20).
    pub cut_length: Option<Quantity<Length>>,
    /// ± of a cut angle.
    pub cut_angle: Option<Quantity<Angle>>,
    /// ± of a clock mark.
    pub clock: Option<Quantity<Angle>>,
    /// ± of a bend's true angle.
    pub bend_true: Option<Quantity<Angle>>,
    /// Shrink per weld, added to cut lengths.
    pub weld_pull: Option<Quantity<Length>>,
    /// Worth of flow lost per degree of bend.
    pub flow_per_degree: Option<Quantity<Rate>>,
    /// Worth of flow lost per metre.
    pub flow_per_metre: Option<Quantity<Rate>>,
    /// Worth of ground clearance lost per millimetre below 150 mm.
    pub ground_loss: Option<Quantity<Rate>>,
    /// Spare bends on the buying list beside the plan.
    pub spares: Option<u32>,
}
