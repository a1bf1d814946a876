//! What the notebook says: lists, what is open, where a save went, what undoes a deletion, and errors.

use crate::project::ticks::Ticks;
use std::fmt;

use crate::project::request::Project;

use crate::keep::file::{FileError, Kept};
use crate::keep::history::Found;
use crate::keep::limits::Excess;
use crate::keep::record::{Content, SetId, State};
use crate::keep::shelf::Refused;

/// A set as a list shows it.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// Its number.
    pub id: SetId,
    /// Its name.
    pub name: String,
    /// When it was saved, in milliseconds since 1970.
    pub saved_at: u64,
    /// How many bytes its text has.
    pub size: usize,
    /// Its design, for a small drawing.
    pub project: Project,
}

/// A record that cannot be read. It stays where it is, untouched, until the maker takes it away.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetAside {
    /// Its key on the shelf.
    pub key: String,
    /// Why it cannot be read, in words.
    pub why: String,
}

/// Everything on the shelf.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Listing {
    /// The sets, the one that was saved last first.
    pub entries: Vec<Entry>,
    /// What cannot be read.
    pub set_aside: Vec<SetAside>,
}

/// Which state of which set a page works on. A save says it, so that another page's save is noticed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Open {
    /// The set.
    pub id: SetId,
    /// The state that was read or written last.
    pub state: State,
}

/// A set as it is opened.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened {
    /// What a save must say.
    pub open: Open,
    /// The design.
    pub project: Project,
    /// The keys of ticked steps.
    pub ticks: Ticks,
}

/// Where a save went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Saved {
    /// To the set itself.
    Here,
    /// Another page had saved the set meanwhile: to a new set beside it. [`Open`] is that of the new set now.
    AsCopyOf(SetId),
}

/// A set that was deleted, as [`Notebook::restore`] takes it.
#[derive(Clone, Debug, PartialEq)]
pub struct Deleted {
    /// The set.
    pub id: SetId,
    /// What was kept of it.
    pub kept: Kept,
}

/// A record that could not be read and was taken away, as [`Notebook::put_back`] takes it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Discarded {
    /// Its key on the shelf.
    pub key: String,
    /// Its text.
    pub text: String,
}

/// Why the notebook does not do what it is asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum KeepError {
    /// The shelf refused.
    Refused(Refused),
    /// The design is larger than any that is kept.
    Excess(Excess),
    /// There is no such set, or not any more.
    Gone,
    /// The set cannot be read.
    Unreadable(FileError),
}

impl fmt::Display for KeepError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Refused(refused) => refused.fmt(f),
            Self::Excess(excess) => write!(f, "This set is not saved: {excess}"),
            Self::Gone => f.write_str("This set is not here any more: it was deleted, perhaps in another window"),
            Self::Unreadable(why) => write!(f, "This set cannot be read and stays as it is: save it as a file. {why}"),
        }
    }
}

impl std::error::Error for KeepError {}

impl From<Refused> for KeepError {
    fn from(refused: Refused) -> Self {
        Self::Refused(refused)
    }
}

impl Entry {
    /// The line of a set for its newest state.
    pub(super) fn of(id: SetId, found: Found) -> Option<Self> {
        match found.record.content {
            Content::Set(project) => Some(Self {
                id,
                name: project.name.clone(),
                saved_at: found.record.saved_at,
                size: found.size,
                project: *project,
            }),
            Content::Ticks(_) => None,
        }
    }
}
