//! Several pieces from one stock bend.

use thiserror::Error;

/// Equality of angles up to this in radians (0.00001°): rounding, far below what a saw can do.
const ANGLE_TOLERANCE_RAD: f64 = 2e-7;

/// How pieces fill a stock bend.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BendPartition {
    /// Number of saw cuts: one fewer than the pieces, one more when a rest is kept.
    pub kerfs: usize,
    /// Angle of all pieces and cuts in radians.
    pub needed_rad: f64,
    /// What is left of the stock in radians; negative when it does not reach.
    pub left_rad: f64,
    /// True when the stock reaches.
    pub fits: bool,
}

/// Why pieces cannot be asked of a bend.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum PartitionError {
    /// Nothing is asked for.
    #[error("no piece is asked of the bend")]
    NoPiece,
    /// An angle is not above zero.
    #[error("piece {piece} of {angle_rad} rad: its angle must be above zero")]
    Piece {
        /// Which piece, counted from 0.
        piece: usize,
        /// Its angle in radians.
        angle_rad: f64,
    },
    /// The stock's angle or the kerf is not a sound number.
    #[error("a stock bend of {stock_rad} rad with a kerf of {kerf_rad} rad cannot be cut")]
    Stock {
        /// Angle of the stock in radians.
        stock_rad: f64,
        /// Kerf in radians.
        kerf_rad: f64,
    },
    /// More pieces want a leg than the stock has ends.
    #[error(
        "{asked} pieces keep a leg, but one stock bend has two ends: at most two of its pieces have one"
    )]
    Legs {
        /// How many pieces were to keep a leg.
        asked: usize,
    },
}

/// Lays pieces (angles in radians) into a stock bend of `stock_rad`, each cut taking `kerf_rad`
/// ([`super::KerfLoss::nominal_rad`], or the intrados value to square both faces).
///
/// `with_leg` pieces keep a leg of the stock; only the two outermost can. [`Rest::Kept`]: the rest is
/// wanted as a piece of its own, which costs one more cut.
///
/// # Errors
/// [`PartitionError`] on numbers that are no angles and on too many legs. Stock that does not reach is
/// not an error: see `fits`.
pub fn partition_bend(
    stock_rad: f64,
    pieces_rad: &[f64],
    kerf_rad: f64,
    with_leg: usize,
    rest: Rest,
) -> Result<BendPartition, PartitionError> {
    if stock_rad.is_nan() || stock_rad <= 0.0 || kerf_rad.is_nan() || kerf_rad < 0.0 {
        return Err(PartitionError::Stock {
            stock_rad,
            kerf_rad,
        });
    }
    if pieces_rad.is_empty() {
        return Err(PartitionError::NoPiece);
    }
    for (piece, &angle_rad) in pieces_rad.iter().enumerate() {
        if angle_rad.is_nan() || angle_rad <= 0.0 {
            return Err(PartitionError::Piece { piece, angle_rad });
        }
    }
    if with_leg > 2 {
        return Err(PartitionError::Legs { asked: with_leg });
    }
    let kerfs = match rest {
        Rest::Scrap => pieces_rad.len() - 1,
        Rest::Kept => pieces_rad.len(),
    };
    let needed_rad = pieces_rad.iter().sum::<f64>() + kerfs as f64 * kerf_rad;
    let left_rad = stock_rad - needed_rad;
    Ok(BendPartition {
        kerfs,
        needed_rad,
        left_rad,
        fits: left_rad >= -ANGLE_TOLERANCE_RAD,
    })
}

/// What becomes of the rest of a stock bend.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rest {
    /// Left on the last piece's side as scrap: `n` pieces need `n - 1` cuts.
    Scrap,
    /// Kept: `n` pieces need `n` cuts.
    Kept,
}
