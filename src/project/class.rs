//! What a maker who teaches has to plan with. Kept and in files, not in links.

use serde::{Deserialize, Serialize};

use crate::measure::json::value::{is, is_usual};
use crate::project::bound::Range;
/// A class as it is asked for; left out, eight makers, a set each, in two hours.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Class {
    /// How many come.
    #[serde(skip_serializing_if = "is::<8>")]
    pub makers: u32,
    /// How many sets each of them makes.
    #[serde(skip_serializing_if = "is::<1>")]
    pub each: u32,
    /// Spare pieces for all, in percent.
    #[serde(skip_serializing_if = "is::<10>")]
    pub spares: u32,
    /// How long it lasts, in minutes.
    #[serde(skip_serializing_if = "is::<120>")]
    pub minutes: u32,
    /// What a slow hand takes longer than a used one, in percent.
    #[serde(skip_serializing_if = "is::<25>")]
    pub slow: u32,
    /// How many breaks there are, of [`Class::BREAK`] minutes.
    #[serde(skip_serializing_if = "is_usual")]
    pub breaks: u32,
    /// How far the teacher prepares everything at home.
    #[serde(skip_serializing_if = "is_usual")]
    pub ready: Ready,
}

/// How many makers may come.
pub const MAKERS: Range<u32> = Range::new(1, 500);
/// How many sets each may make.
pub const EACH: Range<u32> = Range::new(1, 20);
/// How much longer slow hands may take, in percent.
pub const SLOW: Range<u32> = Range::new(0, 300);
/// How long it may last, in minutes.
pub const MINUTES: Range<u32> = Range::new(10, 6_000);
/// How many breaks it may have.
pub const BREAKS: Range<u32> = Range::new(0, 20);

impl Class {
    /// How long a break is, in minutes.
    pub const BREAK: u32 = 10;
}

impl Default for Class {
    /// Eight people in two hours are as many as are taught at once (seen with one teacher); a tenth of spares (two
    /// makers); a quarter more time for slow hands (common practice, no source).
    fn default() -> Self {
        Self { makers: 8, each: 1, spares: 10, minutes: 120, slow: 25, breaks: 0, ready: Ready::default() }
    }
}

/// How far the teacher prepares everything at home.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Ready {
    /// Everyone gets whole sheets.
    Sheets,
    /// Sheets are cut into pieces.
    #[default]
    Pieces,
    /// And the pieces are scored.
    Scored,
    /// And cut out: folding and gluing is left.
    CutOut,
}

impl Ready {
    /// All, the least first.
    pub const ALL: [Self; 4] = [Self::Sheets, Self::Pieces, Self::Scored, Self::CutOut];
}
