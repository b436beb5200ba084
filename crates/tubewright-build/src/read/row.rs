//! Takes typed values out of a table that has been checked. A value that is absent or was found
//! wrong is `None`; the problem has been told already.

use super::check::number;
use super::names::{CHASSIS, Names};
use super::source::Source;
use crate::keys::Target;
use crate::model::{CarrierRef, EndPlace, Name, Place, PlaceAt};
use crate::quantity::{self, Clock, Per, Quantity, QuantityError};
use crate::span::Span;
use core::ops::Range;
use toml::Spanned;
use toml::de::{DeTable, DeValue};
use tubewright_geometry::{Angle, Length};

/// A table with what is needed to understand it.
#[derive(Clone, Copy)]
pub(crate) struct Row<'a> {
    pub(crate) de: &'a DeTable<'a>,
    pub(crate) source: &'a Source<'a>,
    pub(crate) names: &'a Names,
    start: usize,
}

macro_rules! getters {
    ($($get:ident: $type:ty = $parse:path;)*) => {
        $(pub(crate) fn $get(&self, key: &str) -> Option<Quantity<$type>> {
            self.quantity(key, $parse)
        })*
    };
}

impl<'a> Row<'a> {
    pub(crate) fn new(
        de: &'a DeTable<'a>,
        source: &'a Source<'a>,
        names: &'a Names,
        header: Range<usize>,
    ) -> Self {
        Self {
            de,
            source,
            names,
            start: header.start,
        }
    }

    /// From the header to the end of the last value.
    pub(crate) fn span(&self) -> Span {
        let end = last_byte(self.de).max(self.start);
        self.source.span(self.start..end)
    }

    fn get(&self, key: &str) -> Option<&'a Spanned<DeValue<'a>>> {
        self.de.get(key)
    }

    pub(crate) fn has(&self, key: &str) -> bool {
        self.get(key).is_some()
    }

    /// Bytes of the value, or of the whole row when it is absent.
    pub(crate) fn range(&self, key: &str) -> Range<usize> {
        self.get(key)
            .map_or_else(|| self.span().range(), Spanned::span)
    }

    pub(crate) fn text(&self, key: &str) -> Option<String> {
        self.get(key)?.get_ref().as_str().map(str::to_owned)
    }

    pub(crate) fn word(&self, key: &str) -> Option<&'a str> {
        self.get(key)?.get_ref().as_str()
    }

    pub(crate) fn name(&self, key: &str) -> Option<Name> {
        self.word(key).map(Name::new)
    }

    pub(crate) fn yes(&self, key: &str) -> Option<bool> {
        self.get(key)?.get_ref().as_bool()
    }

    pub(crate) fn whole<T: TryFrom<i64>>(&self, key: &str) -> Option<T> {
        let integer = self.get(key)?.get_ref().as_integer()?;
        let value = i64::from_str_radix(integer.as_str(), integer.radix()).ok()?;
        T::try_from(value).ok()
    }

    pub(crate) fn choice<T: Copy>(&self, key: &str, meanings: &[(&str, T)]) -> Option<T> {
        let word = self.word(key)?;
        meanings
            .iter()
            .find(|(known, _)| *known == word)
            .map(|(_, meaning)| *meaning)
    }

    fn quantity<T>(
        &self,
        key: &str,
        parse: impl Fn(&str) -> Result<T, QuantityError>,
    ) -> Option<Quantity<T>> {
        self.quantity_of(self.get(key)?, parse)
    }

    fn quantity_of<T>(
        &self,
        value: &Spanned<DeValue<'_>>,
        parse: impl Fn(&str) -> Result<T, QuantityError>,
    ) -> Option<Quantity<T>> {
        let text = value.get_ref().as_str()?;
        Some(Quantity {
            value: parse(text).ok()?,
            text: text.to_owned(),
            span: self.source.span(value.span()),
        })
    }

    getters! {
        length: Length = quantity::parse_length;
        file_unit: Length = quantity::parse_file_unit;
        angle: Angle = quantity::parse_angle;
        clock: Clock = quantity::parse_clock;
        mass: quantity::Mass = quantity::parse_mass;
        volume: quantity::Volume = quantity::parse_volume;
        power: quantity::Power = quantity::parse_power;
        rotation_speed: quantity::RotationSpeed = quantity::parse_rotation_speed;
        duration: quantity::Duration = quantity::parse_duration;
        density: quantity::Density = quantity::parse_density;
        share: quantity::Share = quantity::parse_share;
        money: quantity::Money = quantity::parse_money;
        tyre: quantity::TyreSize = quantity::parse_tyre;
    }

    pub(crate) fn rate(
        &self,
        key: &str,
        per: Per,
        per_in_key: bool,
    ) -> Option<Quantity<quantity::Rate>> {
        self.quantity(key, |text| quantity::parse_rate(text, per, per_in_key))
    }

    fn list(&self, key: &str) -> Option<Vec<&'a Spanned<DeValue<'a>>>> {
        Some(self.get(key)?.get_ref().as_array()?.iter().collect())
    }

    pub(crate) fn lengths<const N: usize>(&self, key: &str) -> Option<[Quantity<Length>; N]> {
        self.each(key, |value| self.quantity_of(value, quantity::parse_length))
    }

    pub(crate) fn angles<const N: usize>(&self, key: &str) -> Option<[Quantity<Angle>; N]> {
        self.each(key, |value| self.quantity_of(value, quantity::parse_angle))
    }

    pub(crate) fn numbers<const N: usize>(&self, key: &str) -> Option<[f64; N]> {
        self.each(key, number)
    }

    pub(crate) fn words(&self, key: &str) -> Vec<&'a str> {
        self.list(key)
            .unwrap_or_default()
            .into_iter()
            .filter_map(|value| value.get_ref().as_str())
            .collect()
    }

    /// Texts of a list with the bytes where they stand.
    pub(crate) fn spanned_words(&self, key: &str) -> Vec<(&'a str, Range<usize>)> {
        self.list(key)
            .unwrap_or_default()
            .into_iter()
            .filter_map(|value| Some((value.get_ref().as_str()?, value.span())))
            .collect()
    }

    fn each<T, const N: usize>(
        &self,
        key: &str,
        take: impl Fn(&'a Spanned<DeValue<'a>>) -> Option<T>,
    ) -> Option<[T; N]> {
        let all: Option<Vec<T>> = self.list(key)?.into_iter().map(take).collect();
        all?.try_into().ok()
    }

    /// The table at a key.
    pub(crate) fn table(&self, key: &str) -> Option<Row<'a>> {
        self.row_of(self.get(key)?)
    }

    /// The tables of a list, or the one table that stands in its place.
    pub(crate) fn tables(&self, key: &str) -> Vec<Row<'a>> {
        let Some(value) = self.get(key) else {
            return Vec::new();
        };
        match value.get_ref() {
            DeValue::Array(items) => items.iter().filter_map(|item| self.row_of(item)).collect(),
            _ => self.row_of(value).into_iter().collect(),
        }
    }

    fn row_of(&self, value: &'a Spanned<DeValue<'a>>) -> Option<Row<'a>> {
        value
            .get_ref()
            .as_table()
            .map(|de| Row::new(de, self.source, self.names, value.span()))
    }

    pub(crate) fn carrier(&self, key: &str) -> Option<CarrierRef> {
        self.word(key).map(|word| {
            if word == CHASSIS {
                CarrierRef::Chassis
            } else {
                CarrierRef::Carrier(Name::new(word))
            }
        })
    }

    fn place_of(&self, value: &Spanned<DeValue<'_>>, on_end: EndPlace) -> Option<Place> {
        let text = value.get_ref().as_str()?;
        let found = self.names.find(Target::Place, text)?;
        let name = Name::new(found.name);
        let at = match found.target {
            Target::Mark => PlaceAt::Mark(name),
            Target::Point => PlaceAt::Point(name),
            _ => PlaceAt::End {
                end: name,
                at: on_end,
            },
        };
        Some(Place {
            at,
            span: self.source.span(value.span()),
        })
    }

    /// A mark, a point, or the centre of an end.
    pub(crate) fn place(&self, key: &str) -> Option<Place> {
        self.place_of(self.get(key)?, EndPlace::Centre)
    }

    /// A mark, a point, or a place on an end, which the keys `rim` and `bolt` tell.
    pub(crate) fn place_on(&self, key: &str, rim: &str, bolt: &str) -> Option<Place> {
        let on_end = if let Some(clock) = self.clock(rim) {
            EndPlace::Rim(clock.value)
        } else if let Some(number) = self.whole(bolt) {
            EndPlace::Bolt(number)
        } else {
            EndPlace::Centre
        };
        self.place_of(self.get(key)?, on_end)
    }

    pub(crate) fn places<const N: usize>(&self, key: &str) -> Option<[Place; N]> {
        self.each(key, |value| self.place_of(value, EndPlace::Centre))
    }

    pub(crate) fn corner_places(&self, key: &str) -> Option<Vec<Place>> {
        self.list(key)?
            .into_iter()
            .map(|value| self.place_of(value, EndPlace::Centre))
            .collect()
    }

    /// Pairs of places in a list of lists.
    pub(crate) fn place_pairs(&self, key: &str) -> Option<Vec<[Place; 2]>> {
        self.list(key)?
            .into_iter()
            .map(|pair| {
                let places: Option<Vec<Place>> = pair
                    .get_ref()
                    .as_array()?
                    .iter()
                    .map(|value| self.place_of(value, EndPlace::Centre))
                    .collect();
                places?.try_into().ok()
            })
            .collect()
    }
}

fn last_byte(de: &DeTable<'_>) -> usize {
    de.iter()
        .map(|(_, value)| match value.get_ref() {
            DeValue::Table(inner) => value.span().end.max(last_byte(inner)),
            _ => value.span().end,
        })
        .max()
        .unwrap_or(0)
}
