//! Where the pieces and offcuts of a pattern lie on the sheet, for drawings.

use super::layout::{Node, Pattern, Way};
use super::piece::Pose;
use super::sheet::Sheet;
use crate::measure::length::Length;

/// A rectangle on the sheet; the origin is the sheet's lower left corner.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Placed {
    /// Distance of its left edge.
    pub x: Length,
    /// Distance of its lower edge.
    pub y: Length,
    /// Its extent to the right.
    pub width: Length,
    /// Its extent upward.
    pub height: Length,
    /// The piece's number and how it lies; none for an offcut.
    pub piece: Option<(u32, Pose)>,
}

/// Every piece and every offcut of a pattern, from the lower left.
#[must_use]
pub fn place(pattern: &Pattern, sheet: &Sheet) -> Vec<Placed> {
    let mut placed = Vec::new();
    let mut open = vec![(&pattern.tree, Length::ZERO, Length::ZERO, sheet.width, sheet.height)];
    while let Some((node, x, y, width, height)) = open.pop() {
        match node {
            Node::Cut { way: Way::Upright, at, low, high } => {
                open.push((&**high, x + *at, y, width - *at, height));
                open.push((&**low, x, y, *at, height));
            }
            Node::Cut { way: Way::Level, at, low, high } => {
                open.push((&**high, x, y + *at, width, height - *at));
                open.push((&**low, x, y, width, *at));
            }
            Node::Piece { id, pose } => {
                placed.push(Placed { x, y, width, height, piece: Some((*id, *pose)) });
            }
            Node::Offcut => placed.push(Placed { x, y, width, height, piece: None }),
        }
    }
    placed
}
