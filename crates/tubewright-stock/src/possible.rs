//! Sizes that no piece and no stock can have are refused at the door.

use tubewright_geometry::Length;

use crate::demand::{PieceDemand, PieceShape};
use crate::error::PlanError;
use crate::item::{StockPiece, StockShape};

pub(crate) fn check_piece(piece: &PieceDemand) -> Result<(), PlanError> {
    let no_size = |detail: String| PlanError::NoSize {
        what: "piece",
        name: piece.mark.clone(),
        detail,
    };
    match &piece.shape {
        PieceShape::Straight { length } => {
            let cut = *length + piece.pulls[0] + piece.pulls[1];
            if !(cut.mm() >= 0.001 && cut.mm() <= 1e6) {
                return Err(no_size(format!("cut length {cut}")));
            }
        }
        PieceShape::Bend { angle, clr, .. } => {
            if !(angle.deg() >= 0.001 && angle.deg() <= 360.0) {
                return Err(no_size(format!("bend angle {angle}")));
            }
            if !(clr.mm() >= 0.001 && clr.mm() <= 1e5) {
                return Err(no_size(format!("centre-line radius {clr}")));
            }
        }
        PieceShape::Component { .. } => {}
    }
    Ok(())
}

pub(crate) fn check_tube(stock: &StockPiece) -> Result<(), String> {
    let (od, wall) = (stock.tube.od.mm(), stock.tube.wall.mm());
    if !(wall > 0.0 && od > 2.0 * wall && od <= 1e4) {
        return Err(format!("a tube of {od} mm with a wall of {wall} mm"));
    }
    let is_leg = |leg: Length| (0.0..=1e6).contains(&leg.mm());
    match stock.shape {
        StockShape::Straight { length } if !(length.mm() >= 0.001 && length.mm() <= 1e6) => {
            Err(format!("length {length}"))
        }
        StockShape::Bend {
            angle,
            leg_a,
            leg_b,
            ..
        } if !(angle.deg() >= 0.001 && angle.deg() <= 360.0 && is_leg(leg_a) && is_leg(leg_b)) => {
            Err(format!("bend {angle} with legs {leg_a} and {leg_b}"))
        }
        _ => Ok(()),
    }
}
