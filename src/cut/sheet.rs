//! `Sheet`: card as it is bought or lies in the drawer, and the `Rules` of the trimmer.

use crate::measure::length::Length;
use crate::measure::system::System;

/// One size of sheet of one card.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// The caller's own number for it; layouts name sheets by it.
    pub id: u32,
    /// The real width, as measured; above zero.
    pub width: Length,
    /// The real height, as measured; above zero. The grain of pieces that may not turn runs as on the sheet.
    pub height: Length,
    /// The system in which its sides were typed: they are said in it.
    pub typed: System,
    /// How many there are.
    pub stock: Stock,
    /// The price of one sheet in the smallest coin, where it is known. Sheets that are there already cost nothing.
    pub price: Option<u32>,
}

/// Where sheets of a size come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stock {
    /// In the drawer, this many.
    Have(u32),
    /// From the shop, as many as it takes.
    Buy,
}

/// What the trimmer and the hand can do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rules {
    /// Taken off each of the four edges of a sheet before anything else; none or more.
    pub edge_trim: Length,
    /// The longest cut that the trimmer makes in one stroke; none for no limit.
    pub longest_cut: Option<Length>,
    /// The narrowest strip that can be held. Narrower pieces are left out; narrower offcuts get a remark.
    pub least_strip: Length,
}

impl Default for Rules {
    fn default() -> Self {
        Self { edge_trim: Length::ZERO, longest_cut: None, least_strip: Length::mm(10) }
    }
}

impl Rules {
    /// True if the trimmer can make a cut of this length in one stroke.
    #[must_use]
    pub fn reaches(&self, cut: Length) -> bool {
        self.longest_cut.is_none_or(|longest| cut <= longest)
    }
}
