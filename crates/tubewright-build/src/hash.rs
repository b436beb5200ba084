//! A hash over checked values: what a stage read, and not how it was written.
//!
//! Words for people (`place`, `note`), comments, the order of keys and the unit in which a length was
//! typed take no part; neither does the order of elements that only carry names or numbers (marks,
//! points, set-ups, readings, ends, carriers, bodies, tubes, items). Names, numbers and choices do.

mod car;
mod shelf;

use crate::model::Name;
use crate::quantity::{Clock, Money, Quantity, Rate};
use core::fmt;
use sha2::{Digest, Sha256};
use tubewright_geometry::{Angle, Frame, Length, Point, UnitVector};

/// The hash of what a stage read.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct StageHash([u8; 32]);

impl StageHash {
    /// From its 64 hexadecimal digits; `None` for anything else.
    #[must_use]
    pub fn from_hex(text: &str) -> Option<Self> {
        if text.len() != 64 || !text.bytes().all(|b| b.is_ascii_hexdigit()) {
            return None;
        }
        let bytes: Option<Vec<u8>> = (0..32)
            .map(|at| u8::from_str_radix(text.get(2 * at..2 * at + 2)?, 16).ok())
            .collect();
        bytes?.try_into().ok().map(Self)
    }
}

impl fmt::Display for StageHash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for StageHash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "StageHash({self})")
    }
}

/// Takes in values one after another. Every value is told apart from its neighbours by its length or
/// its mark, so that two different lists of values never give the same bytes.
///
/// ```
/// use tubewright_build::hash::CanonicalHasher;
/// use tubewright_geometry::Length;
///
/// let mut a = CanonicalHasher::new("survey/1");
/// a.feed(&Length::from_mm(812.0));
/// let mut b = CanonicalHasher::new("survey/1");
/// b.feed(&Length::from_mm(812.0));
/// assert_eq!(a.finish(), b.finish());
/// ```
#[derive(Clone, Debug)]
pub struct CanonicalHasher(Sha256);

/// A value that can be hashed by what it says.
pub trait Canonical {
    /// Feeds the value.
    fn canonical(&self, into: &mut CanonicalHasher);
}

impl CanonicalHasher {
    /// A hasher for one stage; the stage's name carries the version of its method, so that a better
    /// method makes old results stale.
    #[must_use]
    pub fn new(stage: &str) -> Self {
        let mut hasher = Self(Sha256::new());
        hasher.text("tubewright-canonical/1");
        hasher.text(stage);
        hasher
    }

    /// Feeds a value.
    pub fn feed<T: Canonical + ?Sized>(&mut self, value: &T) {
        value.canonical(self);
    }

    /// Feeds text with its length.
    pub fn text(&mut self, text: &str) {
        self.mark(b't');
        self.whole(text.len() as u64);
        self.0.update(text.as_bytes());
    }

    /// Feeds bytes with their length.
    pub fn bytes(&mut self, bytes: &[u8]) {
        self.mark(b'b');
        self.whole(bytes.len() as u64);
        self.0.update(bytes);
    }

    /// Feeds a whole number.
    pub fn whole(&mut self, number: u64) {
        self.mark(b'w');
        self.0.update(number.to_le_bytes());
    }

    /// Feeds a number by its bits; −0 counts as 0.
    pub fn number(&mut self, number: f64) {
        self.mark(b'n');
        let number = if number == 0.0 { 0.0 } else { number };
        self.0.update(number.to_bits().to_le_bytes());
    }

    /// Feeds the hash of another stage.
    pub fn stage(&mut self, hash: &StageHash) {
        self.mark(b's');
        self.0.update(hash.0);
    }

    /// Feeds values in an order of their own, whatever the order in which they are given.
    pub fn unordered<T: Canonical>(&mut self, values: &[T]) {
        let mut hashes: Vec<[u8; 32]> = values
            .iter()
            .map(|value| {
                let mut one = Self(Sha256::new());
                value.canonical(&mut one);
                one.0.finalize().into()
            })
            .collect();
        hashes.sort_unstable();
        self.mark(b'u');
        self.whole(hashes.len() as u64);
        for hash in hashes {
            self.0.update(hash);
        }
    }

    /// The hash.
    #[must_use]
    pub fn finish(self) -> StageHash {
        StageHash(self.0.finalize().into())
    }

    fn mark(&mut self, mark: u8) {
        self.0.update([mark]);
    }
}

impl Canonical for str {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.text(self);
    }
}

impl Canonical for String {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.text(self);
    }
}

impl Canonical for Name {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.text(self);
    }
}

impl Canonical for bool {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.whole(u64::from(*self));
    }
}

impl Canonical for u32 {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.whole(u64::from(*self));
    }
}

impl Canonical for u64 {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.whole(*self);
    }
}

impl Canonical for f64 {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.number(*self);
    }
}

impl<T: Canonical> Canonical for Option<T> {
    fn canonical(&self, into: &mut CanonicalHasher) {
        match self {
            None => into.mark(b'-'),
            Some(value) => {
                into.mark(b'+');
                value.canonical(into);
            }
        }
    }
}

impl<T: Canonical> Canonical for [T] {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.mark(b'l');
        into.whole(self.len() as u64);
        for value in self {
            value.canonical(into);
        }
    }
}

impl<T: Canonical> Canonical for Vec<T> {
    fn canonical(&self, into: &mut CanonicalHasher) {
        self.as_slice().canonical(into);
    }
}

impl<T: Canonical, const N: usize> Canonical for [T; N] {
    fn canonical(&self, into: &mut CanonicalHasher) {
        self.as_slice().canonical(into);
    }
}

impl<T: Canonical + ?Sized> Canonical for &T {
    fn canonical(&self, into: &mut CanonicalHasher) {
        (**self).canonical(into);
    }
}

impl<T: Canonical> Canonical for Quantity<T> {
    fn canonical(&self, into: &mut CanonicalHasher) {
        self.value.canonical(into);
    }
}

impl<T: Canonical + ?Sized> Canonical for Box<T> {
    fn canonical(&self, into: &mut CanonicalHasher) {
        T::canonical(self, into);
    }
}

impl Canonical for Length {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.number(self.mm());
    }
}

impl Canonical for Angle {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.number(self.rad());
    }
}

impl Canonical for Clock {
    fn canonical(&self, into: &mut CanonicalHasher) {
        self.angle().canonical(into);
    }
}

impl Canonical for Point {
    fn canonical(&self, into: &mut CanonicalHasher) {
        for number in [self.x, self.y, self.z] {
            into.number(number);
        }
    }
}

impl Canonical for UnitVector {
    fn canonical(&self, into: &mut CanonicalHasher) {
        let v = self.vector();
        for number in [v.x, v.y, v.z] {
            into.number(number);
        }
    }
}

impl Canonical for Frame {
    fn canonical(&self, into: &mut CanonicalHasher) {
        self.origin.canonical(into);
        self.travel().canonical(into);
        self.twelve().canonical(into);
    }
}

impl Canonical for Money {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.text(self.currency.code());
        into.whole(self.minor.cast_unsigned());
    }
}

impl Canonical for Rate {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.number(self.major_per_unit);
        into.text(self.currency.code());
        into.text(self.per.word());
    }
}

/// Feeds the named fields in order after the type's name. Every field must be named either as read
/// or as left aside, so that a new field cannot be forgotten.
macro_rules! canonical {
    ($($type:ident { $($field:ident),* $(,)? } aside { $($aside:ident),* $(,)? })*) => {
        $(impl $crate::hash::Canonical for $type {
            fn canonical(&self, into: &mut $crate::hash::CanonicalHasher) {
                let Self { $($field,)* $($aside: _,)* } = self;
                into.text(stringify!($type));
                $(into.feed($field);)*
            }
        })*
    };
}
pub(crate) use canonical;

/// Feeds a choice without values by its name.
macro_rules! canonical_choice {
    ($($type:ident { $($variant:ident),* $(,)? })*) => {
        $(impl $crate::hash::Canonical for $type {
            fn canonical(&self, into: &mut $crate::hash::CanonicalHasher) {
                into.text(match self {
                    $(Self::$variant => stringify!($variant),)*
                });
            }
        })*
    };
}
pub(crate) use canonical_choice;

/// Feeds a choice with named values: the variant's name, then the values in order.
macro_rules! canonical_variants {
    ($type:ident { $($variant:ident $({ $($field:ident),* $(,)? })? $(( $($value:ident),* ))?),* $(,)? }) => {
        impl $crate::hash::Canonical for $type {
            fn canonical(&self, into: &mut $crate::hash::CanonicalHasher) {
                match self {
                    $(Self::$variant $({ $($field),* })? $(( $($value),* ))? => {
                        into.text(stringify!($variant));
                        $($(into.feed($field);)*)?
                        $($(into.feed($value);)*)?
                    })*
                }
            }
        }
    };
}
pub(crate) use canonical_variants;
