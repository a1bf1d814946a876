//! What may be wrong with a form that its maker drew.

use crate::measure::length::Length;

/// Why a statement of a drawn form cannot be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OwnText {
    /// It says nothing that is known.
    Unknown,
    /// A length is missing or cannot be read.
    Length,
    /// An angle is missing or is none.
    Angle,
    /// There is no such cell.
    Cell,
    /// Two cells that do not lie beside each other.
    NotBeside,
    /// A line that is not told by two cells.
    Pair,
    /// There is no such size.
    Size,
    /// The blank is not said, or not before the rest.
    NoBlank,
    /// A score lies on the blank's edge or beyond it.
    BeyondBlank,
    /// More than are kept: columns, rows, or details of one thing.
    TooMany,
    /// The text is longer than any form needs.
    TooLong,
}

/// What may be wrong with a drawn form. Panels go by their names, columns and rows by their numbers from 1.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OwnFault {
    /// Its text cannot be read.
    Unread {
        /// The statement.
        said: String,
        /// Why.
        why: OwnText,
    },
    /// No cell of it is card.
    Empty,
    /// The blank is larger than can be handled.
    TooLarge,
    /// A column has no width.
    NoColumn(u8),
    /// A row has no height.
    NoRow(u8),
    /// A cell hangs together with nothing that folds: it is left out.
    Loose(&'static str),
    /// Cells that are one do not make a rectangle.
    NotRectangle(&'static str),
    /// Two panels hang together by more scores than can fold so.
    Round(&'static str, &'static str),
    /// What is cut off a cell leaves nothing of it, or overlaps.
    Trimmed(&'static str),
    /// A tab does not come to the edge that it belongs to, but near it.
    Misses {
        /// The tab.
        tab: &'static str,
        /// What it should meet.
        panel: &'static str,
        /// How far it is off.
        by: Length,
    },
    /// A tab lies on nothing when all is folded.
    Alone(&'static str),
    /// A tab lies on this panel, and is not glued to it yet.
    Unglued {
        /// The tab.
        tab: &'static str,
        /// What it lies on.
        panel: &'static str,
    },
    /// Glue that does not lie on what it is to be pressed onto.
    GlueMisses(&'static str),
    /// Two panels pass through each other.
    Cross {
        /// One.
        a: &'static str,
        /// The other.
        b: &'static str,
        /// In which move, from 1.
        turn: usize,
    },
    /// A tuck that does not go in.
    TuckStuck(&'static str),
    /// Nothing holds this panel in its place.
    Unheld(&'static str),
}
