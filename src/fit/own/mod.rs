//! What helps the maker of a form: sizes that must be equal, ways to mend what does not meet, how far it goes.

pub mod cure;
pub mod equal;
pub mod reach;

use crate::form::own::build::Measures;
use crate::form::own::drawn::{Drawn, SizeName, Span};
use crate::measure::grid::Grid;
use crate::measure::length::Length;
use crate::measure::system::System;

/// What a drawn form is tried in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bench {
    /// The system of the plan.
    pub system: System,
    /// The board's grooves.
    pub score: Grid,
    /// What stays between flaps that pass each other.
    pub clear: Length,
    /// Thickness of the card.
    pub thickness: Length,
}

/// A column or a row, by its number from nought.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Rank {
    /// A column.
    Column(usize),
    /// A row.
    Row(usize),
}

impl Rank {
    /// All of a form.
    #[must_use]
    pub fn all(drawn: &Drawn) -> Vec<Self> {
        let columns = (0..drawn.columns.len()).map(Self::Column);
        columns.chain((0..drawn.rows.len()).map(Self::Row)).collect()
    }

    /// Its width or height.
    #[must_use]
    pub fn span(self, drawn: &Drawn) -> Option<&Span> {
        match self {
            Self::Column(i) => drawn.columns.get(i),
            Self::Row(i) => drawn.rows.get(i),
        }
    }

    /// The same, to be changed.
    pub fn span_mut(self, drawn: &mut Drawn) -> Option<&mut Span> {
        match self {
            Self::Column(i) => drawn.columns.get_mut(i),
            Self::Row(i) => drawn.rows.get_mut(i),
        }
    }
}

impl Bench {
    /// What each named size comes to: typed here, or as drawn, on the board's grooves.
    pub fn sizes<'a>(&'a self, drawn: &'a Drawn, typed: &'a [(SizeName, Length)]) -> impl Fn(SizeName) -> Length + 'a {
        move |name| {
            let mine = typed.iter().find(|t| t.0 == name).map(|t| t.1);
            let length = mine.or_else(|| drawn.drawn_size(name).map(|g| g.length()));
            length.map_or(Length::ZERO, |l| self.score.up(l))
        }
    }

    /// What sums are measured with.
    #[must_use]
    pub fn measures<'a>(&self, sizes: &'a dyn Fn(SizeName) -> Length) -> Measures<'a> {
        Measures { sizes, score: self.score, system: self.system }
    }
}
