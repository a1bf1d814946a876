//! The parts of the walk, in the order in which a set is made.

use crate::say::page;

/// The parts of the walk.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Walk {
    /// What is asked for.
    Set,
    /// All that is drawn.
    Flat,
    /// What to cut from what.
    Sheets,
    /// What to do.
    Steps,
    /// Classes, batches and prices.
    Teach,
    /// What is kept and passed on.
    Kept,
}

impl Walk {
    /// All, in order.
    pub const ALL: [Self; 6] = [Self::Set, Self::Flat, Self::Sheets, Self::Steps, Self::Teach, Self::Kept];

    /// What it is called.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Set => page::SET,
            Self::Flat => page::FLAT,
            Self::Sheets => page::SHEETS,
            Self::Steps => page::STEPS,
            Self::Teach => page::TEACH,
            Self::Kept => page::KEPT,
        }
    }
}
