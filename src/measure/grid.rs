//! `Grid`: the marks that a board can score at or a ruler can cut at.

use super::length::Length;

/// Marks at every whole multiple of a step, from a fence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Grid {
    step: Length,
}

impl Grid {
    /// Marks every `step`; a step that is not above zero counts as one nanometre, which is no grid at all.
    #[must_use]
    pub fn every(step: Length) -> Self {
        Self { step: step.max(Length::from_nm(1)) }
    }

    /// The distance between marks.
    #[must_use]
    pub const fn step(self) -> Length {
        self.step
    }

    /// True where `length` is a mark.
    #[must_use]
    pub const fn holds(self, length: Length) -> bool {
        length.nm() % self.step.nm() == 0
    }

    /// The first mark that is not below `length`: for sizes that must hold or clear something.
    ///
    /// ```
    /// use snugfold::measure::{grid::Grid, length::Length};
    /// let board = Grid::every(Length::inches(1, 8));
    /// assert_eq!(board.up(Length::inches(3, 1)), Length::inches(3, 1)); // on a groove: stays
    /// assert_eq!(board.up(Length::inches(49, 16)), Length::inches(25, 8)); // 3 1/16 -> 3 1/8
    /// ```
    #[must_use]
    pub const fn up(self, length: Length) -> Length {
        let nm = length.nm();
        let over = nm.rem_euclid(self.step.nm());
        Length::from_nm(if over == 0 { nm } else { nm - over + self.step.nm() })
    }

    /// The last mark that is not above `length`: for sizes that must stay clear.
    #[must_use]
    pub const fn down(self, length: Length) -> Length {
        Length::from_nm(length.nm() - length.nm().rem_euclid(self.step.nm()))
    }

    /// The nearest mark; half-way goes up. For sizes that nothing hangs on.
    #[must_use]
    pub const fn nearest(self, length: Length) -> Length {
        self.down(Length::from_nm(length.nm() + self.step.nm() / 2))
    }
}
