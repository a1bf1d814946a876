//! The maker's saved sets in this browser, and what this window works on.
//!
//! All that matters is in [`crate::keep::session`]; here are the browser's storage, its clock, and a number that tells
//! this page from another one. Where the browser forbids storage, sets last as long as the page is open, and
//! [`Store::keeping`] says so. Each window remembers for itself which set it has open, so that two windows that are
//! loaded again do not end up with the same one.

use crate::project::ticks::Ticks;

use crate::keep::file::{self, Kept};
use crate::keep::notebook::Notebook;
use crate::keep::notebook::bringing::Bringing;
use crate::keep::notebook::said::{Deleted, Discarded, KeepError, Listing, Saved, SetAside};
use crate::keep::record::SetId;
use crate::keep::session::{Session, Work};
use crate::keep::shelf::{MemoryShelf, Refused, Shelf};
use crate::project::request::Project;

use super::keys;
use super::storage::LocalShelf;

/// The number of the set that this window has open.
const OPEN: &str = "snugfold:open";

/// How long sets are kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keeping {
    /// In the browser's storage.
    Lasting,
    /// In memory, for the browser refuses: to be said at once, with the way to save a file.
    UntilClosed(Refused),
}

/// The maker's saved sets, and what this window works on.
pub struct Store {
    session: Session<Box<dyn Shelf>>,
    keeping: Keeping,
}

impl Store {
    /// The saved sets of this page, none of them open yet.
    #[must_use]
    pub fn begin() -> Self {
        let (shelf, keeping): (Box<dyn Shelf>, _) = match LocalShelf::of_page() {
            Ok(shelf) => (Box::new(shelf), Keeping::Lasting),
            Err(refused) => (Box::<MemoryShelf>::default(), Keeping::UntilClosed(refused)),
        };
        let writer = (js_sys::Math::random() * f64::from(u32::MAX)) as u32;
        Self { session: Session::new(Notebook::new(shelf, writer)), keeping }
    }

    /// How long sets are kept.
    #[must_use]
    pub const fn keeping(&self) -> Keeping {
        self.keeping
    }

    /// All saved sets, the one saved last first, and what cannot be read.
    ///
    /// # Errors
    /// Where storage cannot be read.
    pub fn list(&self) -> Result<Listing, Refused> {
        self.session.notebook().list()
    }

    /// The set that this window had open, or else the one that was opened last in any. [`super::guard`] says whether to
    /// open it by itself.
    #[must_use]
    pub fn last(&self) -> Option<SetId> {
        let notebook = self.session.notebook();
        let mine = keys::window_storage().and_then(|s| s.get_item(&keys::key(OPEN)).ok().flatten());
        let mine = mine.and_then(|text| text.parse().ok()).map(SetId);
        mine.filter(|id| notebook.holds(*id).unwrap_or(false)).or_else(|| notebook.last().ok().flatten())
    }

    /// What of a set cannot be read though nothing that can is newer.
    #[must_use]
    pub fn unreadable(&self, id: SetId) -> Vec<SetAside> {
        self.session.notebook().unreadable(id).unwrap_or_default()
    }

    /// The set that is open.
    #[must_use]
    pub fn current(&self) -> Option<SetId> {
        self.session.current()
    }

    /// Whether all of this is saved, or need not be.
    #[must_use]
    pub fn is_saved(&self, project: &Project, ticks: &Ticks) -> bool {
        self.session.is_saved(project, ticks)
    }

    /// Nobody has worked on this yet: it need not be saved.
    pub fn leave_unsaved(&mut self, project: &Project, ticks: &Ticks) {
        self.session.leave_unsaved(project, ticks);
    }

    /// Opens a set. What is saved from now on goes to it; what was worked on before is saved, or waits as `leaving`.
    ///
    /// # Errors
    /// Where it is not here, cannot be read, or storage refuses; the one that was open stays open.
    pub fn open(&mut self, id: SetId, leaving: Option<Work>) -> Result<Work, KeepError> {
        let work = self.session.open(id, leaving, now())?;
        keep_at_hand(&work.project);
        self.remember();
        Ok(work)
    }

    /// Leaves the set that is open: what is saved next is a new set. What was worked on before is saved, or waits as
    /// `leaving`.
    pub fn start(&mut self, leaving: Option<Work>) {
        self.session.start(leaving);
        self.remember();
    }

    /// Saves what is on the screen and not saved yet: to the set that is open, or to a new one that is open from now on.
    ///
    /// # Errors
    /// Where it is too large or storage refuses; what was saved before is then as it was.
    pub fn save(&mut self, work: &mut Work) -> Result<Saved, KeepError> {
        keep_at_hand(&work.project);
        let went = self.session.save(work, now());
        self.remember();
        went
    }

    /// Work that could not be saved before another design was taken to hand, by number and name.
    #[must_use]
    pub fn waiting(&self) -> Vec<(u32, String)> {
        self.session.waiting()
    }

    /// Tries to save what waits; how much of it was.
    pub fn try_waiting(&mut self) -> usize {
        self.session.try_waiting(now())
    }

    /// Takes up what waits, by its number. What was worked on before is saved, or waits as `leaving`.
    pub fn take_up(&mut self, number: u32, leaving: Option<Work>) -> Option<Work> {
        let work = self.session.take_up(number, leaving)?;
        keep_at_hand(&work.project);
        self.remember();
        Some(work)
    }

    /// Gives a set another name. Where it is the one that is open, the design on the screen must get it too.
    ///
    /// # Errors
    /// As [`Self::open`].
    pub fn rename(&mut self, id: SetId, name: &str) -> Result<(), KeepError> {
        self.session.rename(id, name, now())
    }

    /// Saves a set once more as a new one, which is not opened.
    ///
    /// # Errors
    /// As [`Self::open`].
    pub fn duplicate(&mut self, id: SetId) -> Result<SetId, KeepError> {
        let copy = self.session.notebook_mut().duplicate(id, now())?;
        self.remember();
        Ok(copy.id)
    }

    /// Deletes a set, and gives back what undoes it. Where it is open, with `work` on the screen, what is saved once
    /// that was changed is a new set.
    ///
    /// # Errors
    /// As [`Self::open`].
    pub fn delete(&mut self, id: SetId, work: &Work) -> Result<Deleted, KeepError> {
        let deleted = self.session.delete(id, work)?;
        self.remember();
        Ok(deleted)
    }

    /// Undoes [`Self::delete`].
    ///
    /// # Errors
    /// Where storage refuses.
    pub fn restore(&mut self, deleted: &Deleted) -> Result<SetId, KeepError> {
        self.session.notebook_mut().restore(deleted, now())
    }

    /// All saved sets and what could not be saved, for a file or a few ([`file::write_all`]).
    ///
    /// # Errors
    /// Where storage cannot be read.
    pub fn all(&self, work: &Work) -> Result<Vec<Kept>, Refused> {
        self.session.all(work)
    }

    /// Looks what is here, before sets are brought in.
    ///
    /// # Errors
    /// Where storage cannot be read.
    pub fn begin_bringing(&self) -> Result<Bringing, Refused> {
        self.session.notebook().begin_bringing()
    }

    /// Saves one set of a file beside those that are here. It is not opened.
    ///
    /// # Errors
    /// Where storage refuses.
    pub fn bring(&mut self, bringing: &mut Bringing, kept: &Kept) -> Result<(), KeepError> {
        self.session.notebook_mut().bring(bringing, kept, now())
    }

    /// The text of a record that was set aside, to be saved as a file.
    ///
    /// # Errors
    /// Where storage cannot be read.
    pub fn set_aside_text(&self, key: &str) -> Result<Option<String>, Refused> {
        self.session.notebook().set_aside_text(key)
    }

    /// Takes away a record that was set aside, at the maker's word, and gives back what undoes it.
    ///
    /// # Errors
    /// Where there is none or storage refuses.
    pub fn discard(&mut self, key: &str) -> Result<Discarded, KeepError> {
        self.session.notebook_mut().discard(key)
    }

    /// Undoes [`Self::discard`].
    ///
    /// # Errors
    /// Where storage refuses.
    pub fn put_back(&mut self, discarded: &Discarded) -> Result<(), Refused> {
        self.session.notebook_mut().put_back(discarded)
    }

    /// Remembers for this window alone which set is open. Best effort: a window that cannot opens what any other had.
    fn remember(&self) {
        let Some(storage) = keys::window_storage() else { return };
        let key = keys::key(OPEN);
        let _ = match self.current() {
            Some(id) => storage.set_item(&key, &id.0.to_string()),
            None => storage.remove_item(&key),
        };
    }
}

/// Keeps what the page's trouble message can still save when all else fails.
fn keep_at_hand(project: &Project) {
    if let Some(storage) = keys::storage() {
        let _ = storage.set_item(&keys::key(keys::CURRENT), &file::write(&Kept::new(project.clone())));
    }
}

/// Milliseconds since 1970, by the browser's clock.
fn now() -> u64 {
    js_sys::Date::now().max(0.0) as u64
}
