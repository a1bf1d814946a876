//! `Piece`: a rectangular blank that is wanted, and how often.

use crate::measure::length::Length;

/// A rectangular blank to be cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// The caller's own number for it; layouts name pieces by it.
    pub id: u32,
    /// Side that lies along the sheet's width, unless it is turned; above zero.
    pub width: Length,
    /// Side that lies along the sheet's height, unless it is turned; above zero.
    pub height: Length,
    /// How many are wanted; none is allowed and asks for nothing.
    pub count: u32,
    /// Whether it may lie the other way round.
    pub turn: Turn,
}

/// Whether a piece may be turned by a quarter on the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Turn {
    /// Plain card: either way round.
    Free,
    /// The grain or the pattern fixes it.
    Fixed,
}

/// How a piece lies on the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Pose {
    /// Width along the sheet's width.
    Straight,
    /// Turned by a quarter: width along the sheet's height.
    Turned,
}
