//! Many sets: how the work is shared out, and for whom they are. Kept and in files, not in links.

use serde::{Deserialize, Serialize};

use crate::measure::json::value::{is, is_usual};
use crate::project::bound::Range;

/// A batch as it is asked for; left out, alone, three hours an evening, no names.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Batch {
    /// Who helps, besides the maker.
    #[serde(skip_serializing_if = "is_usual")]
    pub helpers: u32,
    /// How long an evening is, in minutes.
    #[serde(skip_serializing_if = "is::<180>")]
    pub evening: u32,
    /// Whom the sets are for: a name on each line, as it was typed.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub names: String,
}

/// How many may help.
pub const HELPERS: Range<u32> = Range::new(0, 50);
/// How long an evening may be, in minutes.
pub const EVENING: Range<u32> = Range::new(10, 1_440);

impl Default for Batch {
    fn default() -> Self {
        Self { helpers: 0, evening: 180, names: String::new() }
    }
}

impl Batch {
    /// The names, without empty lines and without what only sets them off.
    ///
    /// ```
    /// use snugfold::project::batch::Batch;
    /// let batch = Batch { names: " Ada \n\nZoë & Ben\n".into(), ..Batch::default() };
    /// assert_eq!(batch.names().collect::<Vec<_>>(), ["Ada", "Zoë & Ben"]);
    /// ```
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.names.lines().map(str::trim).filter(|name| !name.is_empty())
    }
}
