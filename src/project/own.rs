//! What the maker writes into the plan: steps of their own, notes to steps, and whose design it is.

use serde::{Deserialize, Serialize};

use crate::measure::json::value::list;

use super::picture::Picture;

/// The maker's own words; left out, none.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Own {
    /// Whose design it is, in a line that stands on patterns and handouts.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub credit: String,
    /// What it looks like: kept and in files, never in a link.
    #[serde(skip_serializing_if = "Picture::is_empty")]
    pub picture: Picture,
    /// Steps and notes, in the order in which they were written.
    #[serde(deserialize_with = "list", skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<Note>,
}

/// A step or a note of the maker's own.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Note {
    /// The step that it hangs on, by what is done to what, whatever the measurements (`make::step::Step::site`).
    pub at: String,
    /// What it is.
    pub kind: NoteKind,
    /// What it says.
    pub text: String,
}

/// What the maker wrote.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoteKind {
    /// A remark to a step.
    Note,
    /// A step of its own, after that step.
    Step,
}

impl Own {
    /// True where there is anything in words.
    #[must_use]
    pub fn has_words(&self) -> bool {
        !(self.credit.is_empty() && self.notes.is_empty())
    }
}
