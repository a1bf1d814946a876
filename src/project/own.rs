//! What the maker writes into the plan: steps of their own, notes to steps, and whose design it is.

use crate::words;

use super::picture::Picture;

/// The maker's own words; left out, none.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Own {
    /// Whose design it is, in a line that stands on patterns and handouts.
    pub credit: String,
    /// What it looks like: kept and in files, never in a link.
    pub picture: Picture,
    /// Steps and notes, in the order in which they were written.
    pub notes: Vec<Note>,
}

/// A step or a note of the maker's own.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Note {
    /// The step that it hangs on, by what is done to what, whatever the measurements (`make::step::Step::site`).
    pub at: String,
    /// What it is.
    pub kind: NoteKind,
    /// What it says.
    pub text: String,
}

/// What the maker wrote.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum NoteKind {
    /// A remark to a step.
    Note,
    /// A step of its own, after that step.
    Step,
}

words!(NoteKind { Note = "note", Step = "step" });

impl Own {
    /// True where there is anything in words.
    #[must_use]
    pub fn has_words(&self) -> bool {
        !(self.credit.is_empty() && self.notes.is_empty())
    }
}
