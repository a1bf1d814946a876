//! The maker's saved sets in this browser, and the one that is open.
//!
//! All that matters is in [`crate::keep::notebook`]; here are the browser's storage, its clock, and a number that tells
//! this page from another one. Where the browser forbids storage, sets last as long as the page is open, and
//! [`Store::keeping`] says so.

use crate::project::ticks::Ticks;

use crate::keep::file::{self, Kept};
use crate::keep::notebook::Notebook;
use crate::keep::notebook::said::{Deleted, KeepError, Listing, Open, Saved};
use crate::keep::record::SetId;
use crate::keep::shelf::{MemoryShelf, Refused, Shelf};
use crate::keep::trail::Trail;
use crate::project::request::Project;

use super::keys;
use super::storage::LocalShelf;

/// How long sets are kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keeping {
    /// In the browser's storage.
    Lasting,
    /// In memory, for the browser refuses: to be said at once, with the way to save a file.
    UntilClosed(Refused),
}

/// The maker's saved sets, and the one that is open.
pub struct Store {
    notebook: Notebook<Box<dyn Shelf>>,
    open: Option<Open>,
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
        Self { notebook: Notebook::new(shelf, writer), open: None, keeping }
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
        self.notebook.list()
    }

    /// The set that was open last. [`super::guard`] says whether to open it by itself.
    #[must_use]
    pub fn last(&self) -> Option<SetId> {
        self.notebook.last().ok().flatten()
    }

    /// The set that is open.
    #[must_use]
    pub fn current(&self) -> Option<SetId> {
        self.open.map(|o| o.id)
    }

    /// Opens a set: its design and the keys of its ticked steps. What is saved from now on goes to it.
    ///
    /// # Errors
    /// Where it is not here, cannot be read, or storage refuses; the one that was open stays open.
    pub fn open(&mut self, id: SetId) -> Result<(Project, Ticks), KeepError> {
        let opened = self.notebook.open(id, now())?;
        self.open = Some(opened.open);
        Ok((opened.project, opened.ticks))
    }

    /// Leaves the set that is open: what is saved next is a new set.
    pub const fn put_down(&mut self) {
        self.open = None;
    }

    /// Saves the design on the screen: to the set that is open, or to a new one that is open from now on.
    ///
    /// # Errors
    /// Where it is too large or storage refuses; what was saved before is then as it was.
    pub fn save(&mut self, project: &Project) -> Result<Saved, KeepError> {
        // What the page's trouble message can still save when all else fails.
        if let Some(storage) = keys::storage() {
            let _ = storage.set_item(&keys::key(keys::CURRENT), &file::write(&Kept::new(project.clone())));
        }
        match &mut self.open {
            Some(open) => self.notebook.save(open, project, now()),
            None => {
                self.open = Some(self.notebook.create(project, now())?);
                Ok(Saved::Here)
            }
        }
    }

    /// Gives a set another name. Where it is the one that is open, the design on the screen must get it too.
    ///
    /// # Errors
    /// As [`Self::open`].
    pub fn rename(&mut self, id: SetId, name: &str) -> Result<(), KeepError> {
        let open = self.notebook.rename(id, name, now())?;
        if self.current() == Some(id) {
            self.open = Some(open);
        }
        Ok(())
    }

    /// Saves a set once more as a new one, which is not opened.
    ///
    /// # Errors
    /// As [`Self::open`].
    pub fn duplicate(&mut self, id: SetId) -> Result<SetId, KeepError> {
        self.notebook.duplicate(id, now()).map(|open| open.id)
    }

    /// Deletes a set, and gives back what undoes it. Where it is open, what is saved next is a new set.
    ///
    /// # Errors
    /// As [`Self::open`].
    pub fn delete(&mut self, id: SetId) -> Result<Deleted, KeepError> {
        let deleted = self.notebook.delete(id)?;
        self.open = self.open.filter(|o| o.id != id);
        Ok(deleted)
    }

    /// Undoes [`Self::delete`].
    ///
    /// # Errors
    /// Where storage refuses.
    pub fn restore(&mut self, deleted: &Deleted) -> Result<SetId, KeepError> {
        self.notebook.restore(deleted, now())
    }

    /// Keeps the way back of the set that is open, where there is room.
    pub fn save_trail(&mut self, now: &Project, trail: &Trail) {
        if let Some(open) = self.open {
            self.notebook.save_trail(open.id, now, trail);
        }
    }

    /// The way back of a set whose design is `now`.
    #[must_use]
    pub fn trail(&self, id: SetId, now: &Project) -> Trail {
        self.notebook.trail(id, now)
    }

    /// Saves the keys of the ticked steps of the set that is open; without one there is nothing to do.
    ///
    /// # Errors
    /// Where storage refuses.
    pub fn save_ticks(&mut self, ticks: &Ticks) -> Result<(), KeepError> {
        self.open.map_or(Ok(()), |open| self.notebook.save_ticks(open.id, ticks, now()))
    }

    /// All saved sets, for a file or a few ([`file::write_all`]).
    ///
    /// # Errors
    /// Where storage cannot be read.
    pub fn all(&self) -> Result<Vec<Kept>, Refused> {
        self.notebook.all()
    }

    /// Saves the sets of a file ([`file::read`]) beside those that are here. None of them is opened.
    ///
    /// # Errors
    /// Where storage refuses.
    pub fn bring_in(&mut self, sets: &[Kept]) -> Result<Vec<SetId>, KeepError> {
        self.notebook.bring_in(sets, now())
    }

    /// The text of a record that was set aside, to be saved as a file.
    ///
    /// # Errors
    /// Where storage cannot be read.
    pub fn set_aside_text(&self, key: &str) -> Result<Option<String>, Refused> {
        self.notebook.set_aside_text(key)
    }

    /// Takes away a record that was set aside, at the maker's word.
    ///
    /// # Errors
    /// Where there is none or storage refuses.
    pub fn discard(&mut self, key: &str) -> Result<(), KeepError> {
        self.notebook.discard(key)
    }
}

/// Milliseconds since 1970, by the browser's clock.
fn now() -> u64 {
    js_sys::Date::now().max(0.0) as u64
}
