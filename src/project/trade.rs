//! What the maker reckons with: the hour, what goes into a set besides card, and the stall. Kept and in files, never in
//! a link.

/// Money in the smallest coin of one currency; no conversion. Left out, nothing, and the shelf at twice the shop's.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Trade {
    /// Which money it is: a code of ISO 4217, such as `EUR`, or a sign.
    pub currency: String,
    /// An hour of the maker's work.
    pub hour: u32,
    /// Ribbon, glue, tissue and the like, for one set.
    pub trims: u32,
    /// Expenses on top of material and work, in percent.
    pub expenses: u32,
    /// Profit on top of all that, in percent.
    pub profit: u32,
    /// What the shelf asks, in percent of what a shop pays.
    pub shelf: u32,
    /// The stall, the table or the room.
    pub stall: u32,
    /// What the maker asks for teaching a class.
    pub fee: u32,
}

impl Default for Trade {
    fn default() -> Self {
        let nothing = String::new();
        Self { currency: nothing, hour: 0, trims: 0, expenses: 0, profit: 0, shelf: 200, stall: 0, fee: 0 }
    }
}
