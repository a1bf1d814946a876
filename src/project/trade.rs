//! What the maker reckons with: the hour, what goes into a set besides card, and the stall. Kept and in files, never in
//! a link.

/// Money in the smallest coin of whatever it is; no conversion. Left out, nothing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Trade {
    /// An hour of the maker's work.
    pub hour: u32,
    /// Ribbon, glue, tissue and the like, for one set.
    pub trims: u32,
    /// Expenses on top of material and work, in percent.
    pub expenses: u32,
    /// Profit on top of all that, in percent.
    pub profit: u32,
    /// The stall, the table or the room.
    pub stall: u32,
}
