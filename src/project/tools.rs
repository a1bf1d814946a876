//! The maker's tools: the trimmer with the hand at it, and the scoring board.

use serde::{Deserialize, Serialize};

use crate::measure::given::Given;

/// What the trimmer and the hand at it can do; left out, nothing off the edges, a cut of any length, strips down to
/// 10 mm, and errors as in [`super::bound::DEFAULT_SCORE_ERROR`].
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Trimmer {
    /// Taken off each edge of a sheet before anything else.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub edge_trim: Option<Given>,
    /// The longest cut in one stroke.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub longest_cut: Option<Given>,
    /// The narrowest strip that can be held.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least_strip: Option<Given>,
    /// What the maker's scores are out by, as ± two standard deviations.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub score_error: Option<Given>,
    /// What the maker's cuts are out by, as ± two standard deviations.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cut_error: Option<Given>,
}

impl Trimmer {
    /// Everything that can be typed.
    #[must_use]
    pub const fn typed(&self) -> [&Option<Given>; 5] {
        [&self.edge_trim, &self.longest_cut, &self.least_strip, &self.score_error, &self.cut_error]
    }

    /// True where nothing was typed.
    #[must_use]
    pub fn is_usual(&self) -> bool {
        self.typed().iter().all(|g| g.is_none())
    }
}

/// The board's score step in each system; left out, ⅛ in and 1 mm.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Board {
    /// Between two grooves on the inch side.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inch_step: Option<Given>,
    /// Between two grooves on the metric side.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub metric_step: Option<Given>,
}
