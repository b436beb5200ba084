/// An exact fraction; every operation says when it would overflow. The denominator is positive.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Ratio {
    num: i128,
    den: i128,
}

impl Ratio {
    pub(crate) const ZERO: Self = Self { num: 0, den: 1 };

    pub(crate) const fn whole(num: i128) -> Self {
        Self { num, den: 1 }
    }

    pub(crate) fn new(num: i128, den: i128) -> Option<Self> {
        (den > 0).then(|| {
            let divisor = gcd(num.unsigned_abs(), den.unsigned_abs());
            let divisor = i128::try_from(divisor).unwrap_or(1).max(1);
            Self {
                num: num / divisor,
                den: den / divisor,
            }
        })
    }

    pub(crate) fn plus(self, other: Self) -> Option<Self> {
        let num = self
            .num
            .checked_mul(other.den)?
            .checked_add(other.num.checked_mul(self.den)?)?;
        Self::new(num, self.den.checked_mul(other.den)?)
    }

    pub(crate) fn times(self, other: Self) -> Option<Self> {
        // Crossing out first keeps long unit factors inside 128 bits.
        let a = Self::new(self.num, other.den)?;
        let b = Self::new(other.num, self.den)?;
        Self::new(a.num.checked_mul(b.num)?, a.den.checked_mul(b.den)?)
    }

    pub(crate) const fn negated(self) -> Self {
        Self {
            num: -self.num,
            den: self.den,
        }
    }

    /// The whole number, when it is one.
    pub(crate) fn as_whole(self) -> Option<i128> {
        (self.den == 1).then_some(self.num)
    }

    /// Rounded once when both parts are below 2^53, which holds for all that a tape shows; else to
    /// within one unit in the last place or two.
    #[expect(
        clippy::cast_precision_loss,
        reason = "this is the last step, where rounding belongs"
    )]
    pub(crate) fn to_f64(self) -> f64 {
        self.num as f64 / self.den as f64
    }
}

const fn gcd(mut a: u128, mut b: u128) -> u128 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}
