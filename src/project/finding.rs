//! `Finding`: what does not work or needs care, where, and with which measurements; worded later.

mod own;
mod what;

pub use own::{OwnFault, OwnText};
pub use what::What;

/// What a finding is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Place {
    /// The set as a whole.
    Set,
    /// The board.
    Board,
    /// The card with this number.
    Card(u16),
    /// The box with this number.
    Box(u16),
    /// The holder.
    Holder,
}

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// It cannot be made like this: that part is not planned.
    Stop,
    /// It can be made, and may disappoint.
    Caution,
    /// Good to know.
    Note,
}

/// One thing that the maker should know.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    /// Where it is.
    pub place: Place,
    /// The input it hangs on, by key.
    pub input: Option<&'static str>,
    /// How much it matters.
    pub weight: Weight,
    /// What it is.
    pub what: What,
}

impl Finding {
    /// Whether it says from where to where its input may be.
    #[must_use]
    pub const fn names_a_range(&self) -> bool {
        matches!(
            self.what,
            What::LengthOutside { .. }
                | What::CountOutside { .. }
                | What::WeightOutside { .. }
                | What::MarginOutside { .. }
        )
    }
}
