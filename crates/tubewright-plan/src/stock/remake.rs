//! A spoiled piece: what the record says of it, what is left of it for the shelf, and the cheapest
//! remake.

use crate::fit::{Steel, cut_entry};
use crate::stages::Supply;
use tubewright_build::document::Written;
use tubewright_build::model::{EntryKind, Model, Stock};
use tubewright_build::quantity::{parse_angle, parse_length, write_mm};
use tubewright_geometry::{Angle, Length};
use tubewright_stock::{Buy, CutPart, CutStock, Money, PartPlace, Source, StockPlan, StockShape};

/// The part that is this piece, and the item that it comes from. Of several parts that a long straight is
/// made of, the one that is nothing else, then the first.
#[must_use]
pub fn part_of<'a>(cuts: &'a [CutStock], mark: &str) -> Option<(&'a CutStock, &'a CutPart)> {
    let of_it = || {
        let parts = cuts.iter().flat_map(|cut| {
            let parts = cut.parts.iter();
            parts.map(move |part| (cut, part))
        });
        parts.filter(|(_, part)| part.serves.iter().any(|serves| serves.mark == mark))
    };
    of_it()
        .find(|(_, part)| part.serves.len() == 1)
        .or_else(|| of_it().next())
}

/// What the record gains when a piece is spoiled: that it was cut, where nobody said so yet (it was
/// spoiled while it was sawn, and where it lay is steel that is gone), and that it is spoiled. None
/// when no such piece is cut in the plan.
#[must_use]
pub fn spoiled_entries(supply: &Supply, steel: &Steel, piece: &str) -> Option<Vec<EntryKind>> {
    let (cut, part) = part_of(&supply.whole.cuts, piece)?;
    let spoiled = EntryKind::Spoiled {
        piece: piece.to_owned(),
    };
    Some(if steel.is_cut(piece) {
        vec![spoiled]
    } else {
        let sawn = supply.progress.sawn(cut, part, piece);
        vec![cut_entry(&sawn), spoiled]
    })
}

/// The build as if a piece that was spoiled last were still good; none when it never was spoiled.
#[must_use]
pub fn before_spoiled(model: &Model, piece: &str) -> Option<Model> {
    let mut before = model.clone();
    let at = before.shop.entries.iter().rposition(
        |entry| matches!(&entry.what, EntryKind::Spoiled { piece: gone } if gone == piece),
    )?;
    before.shop.entries.remove(at);
    Some(before)
}

/// The cheapest remake of a spoiled piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Remake {
    /// The piece.
    pub piece: String,
    /// What it is cut from now; nothing when nothing on the shelf or for sale makes it.
    pub from: Vec<Source>,
    /// What is still to be bought, for it and for all that is not cut yet.
    pub buys: Vec<Buy>,
    /// What all of that costs with delivery.
    pub price: Money,
    /// By how much that is more than before the piece was spoiled; below zero when it is less.
    pub dearer: Money,
    /// Pieces that cannot be made.
    pub missing: Vec<String>,
}

impl Remake {
    /// Reads it off the plan for what is still to be made; `before` is what the plan cost before the
    /// piece was spoiled.
    #[must_use]
    pub fn of(plan: &StockPlan, before: Money, piece: &str) -> Self {
        Self {
            piece: piece.to_owned(),
            from: plan
                .cuts
                .iter()
                .filter(|cut| part_of(core::slice::from_ref(cut), piece).is_some())
                .map(|cut| cut.source.clone())
                .collect(),
            buys: plan.buys.clone(),
            price: plan.price,
            dearer: Money::new(plan.price.minor - before.minor, plan.price.currency),
            missing: plan
                .missing
                .iter()
                .map(|missing| missing.mark.clone())
                .collect(),
        }
    }

    /// Each thing that it is cut from: *from the shelf: offcut 2*.
    #[must_use]
    pub fn sources(&self) -> Vec<String> {
        self.from
            .iter()
            .map(|source| match source {
                Source::OnHand(name) => format!("from the shelf: {name}"),
                Source::Bought(item) => format!("buy: {item}"),
            })
            .collect()
    }

    /// What it is cut from, as a sentence; none when nothing makes it again.
    #[must_use]
    pub fn cheapest_words(&self) -> Option<String> {
        (!self.from.is_empty()).then(|| format!("The cheapest: {}.", self.sources().join("; ")))
    }

    /// What is still to be bought and how much that is more or less than before, as a sentence.
    #[must_use]
    pub fn buying_words(&self) -> String {
        if self.buys.is_empty() {
            return "Nothing is to be bought for it or for what is still to be cut.".to_owned();
        }
        let list: Vec<String> = self
            .buys
            .iter()
            .map(|buy| {
                let Buy {
                    quantity,
                    item,
                    supplier,
                    total,
                    ..
                } = buy;
                format!("{quantity} × {item} ({supplier}, {total})")
            })
            .collect();
        format!(
            "Still to buy for everything that is not cut yet: {}; {} with delivery, {} than before.",
            list.join(", "),
            self.price,
            self.dearer.more_or_less()
        )
    }
}

/// What is left of a part and goes on the shelf: an element of the stock file.
#[derive(Clone, Debug, PartialEq)]
pub struct Leftover {
    /// Its name on the shelf.
    pub name: String,
    /// Its keys under `[[on-hand]]`.
    pub fields: Vec<(&'static str, Written)>,
}

/// Why it cannot go on the shelf.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum LeftoverError {
    /// It is no size.
    #[error("“{left}” is not what can be left of {piece}: {why}; give {ask}")]
    NoSize {
        /// As it was typed.
        left: String,
        /// The piece.
        piece: String,
        /// What is wrong with it.
        why: String,
        /// What to give.
        ask: &'static str,
    },
    /// It is more than the piece was.
    #[error("“{left}” is more than {piece} was, {was}: measure what is left of it again")]
    TooMuch {
        /// As it was typed.
        left: String,
        /// The piece.
        piece: String,
        /// Its size.
        was: String,
    },
    /// The stock file does not know its tube any more.
    #[error("the tube of {piece} is not in stock.toml any more: add it there first")]
    NoTube {
        /// The piece.
        piece: String,
    },
}

/// Whether what is left of a part is told as a length or, for the arc of a bend, as an angle.
#[must_use]
pub fn is_left_a_length(part: &CutPart) -> bool {
    !matches!(part.place, PartPlace::Arc { .. })
}

/// The name on the shelf of what is left of a piece.
#[must_use]
pub fn leftover_name(piece: &str) -> String {
    format!("rest of {piece}")
}

/// What is left of a part, for the shelf: a length of a straight or of a leg (*380 mm*), an angle of the
/// arc of a bend (*22 deg*). Legs do not count, since nothing says which of them stayed.
///
/// # Errors
/// [`LeftoverError`] when it is no size, more than the part was, or of an unknown tube.
pub fn leftover(
    stock: &Stock,
    (cut, part): (&CutStock, &CutPart),
    piece: &str,
    left: &str,
) -> Result<Leftover, LeftoverError> {
    let left = left.trim();
    let too_much = |was: String| LeftoverError::TooMuch {
        left: left.to_owned(),
        piece: piece.to_owned(),
        was,
    };
    let no_size = |why: String, ask| LeftoverError::NoSize {
        left: left.to_owned(),
        piece: piece.to_owned(),
        why,
        ask,
    };
    let tube = tube_name(stock, cut).ok_or_else(|| LeftoverError::NoTube {
        piece: piece.to_owned(),
    })?;
    let mut name = leftover_name(piece);
    while stock.on_hand.iter().any(|it| it.name == *name.as_str()) {
        name.push('+');
    }
    let mut fields = vec![
        ("name", Written::text(name.as_str())),
        ("tube", Written::text(tube)),
    ];
    let refuse_length = |was: Length| {
        let ask = "a length for a straight (380 mm)";
        let length = parse_length(left).map_err(|error| no_size(error.to_string(), ask))?;
        if length > was {
            return Err(too_much(write_mm(was, 1)));
        }
        (length > Length::ZERO)
            .then_some(())
            .ok_or_else(|| no_size("it is nothing".to_owned(), ask))
    };
    match (part.place, cut.stock.shape) {
        (PartPlace::Arc { sweep, .. }, StockShape::Bend { clr, .. }) => {
            let ask = "an angle for a bend (22 deg)";
            let angle = parse_angle(left).map_err(|error| no_size(error.to_string(), ask))?;
            if angle > sweep {
                return Err(too_much(format!("{:.1}°", sweep.deg())));
            }
            if angle <= Angle::ZERO {
                return Err(no_size("it is nothing".to_owned(), ask));
            }
            fields.push(("kind", Written::text("bend")));
            fields.push(("angle", Written::text(left)));
            fields.push(("clr", Written::text(write_mm(clr, 1))));
            fields.push(("legs", Written::texts(["0 mm", "0 mm"])));
        }
        (PartPlace::Bar { length, .. } | PartPlace::Leg { length, .. }, _) => {
            refuse_length(length)?;
            fields.push(("kind", Written::text("straight")));
            fields.push(("length", Written::text(left)));
        }
        (PartPlace::Arc { .. }, StockShape::Straight { length }) => {
            refuse_length(length)?;
            fields.push(("kind", Written::text("straight")));
            fields.push(("length", Written::text(left)));
        }
    }
    fields.push(("count", Written::Whole(1)));
    Ok(Leftover { name, fields })
}

/// Sizes that differ by less are the same tube, mm.
const SAME_MM: f64 = 1e-6;

fn tube_name(stock: &Stock, cut: &CutStock) -> Option<String> {
    let of = &cut.stock.tube;
    stock
        .tubes
        .iter()
        .find(|tube| {
            (tube.od.mm() - of.od.mm()).abs() < SAME_MM
                && (tube.wall.mm() - of.wall.mm()).abs() < SAME_MM
                && tube.material.word() == of.material
        })
        .map(|tube| tube.name.to_string())
}
