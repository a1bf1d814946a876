//! `Shelf`: where designs are kept: what is on the desk is saved by itself ([`super::saving`]), others are opened, named,
//! doubled, deleted and brought in.

use leptos::prelude::*;

use super::alive::Alive;
use super::desk::Desk;
use super::guest::Guest;
use super::value::State;
use crate::keep::file::Kept;
use crate::keep::notebook::bringing::Bringing;
use crate::keep::notebook::said::{Deleted, Discarded, KeepError, Listing, Saved, SetAside};
use crate::keep::record::SetId;
use crate::keep::session::Work;
use crate::keep::shelf::Refused;
use crate::project::request::Project;
use crate::say::kept;
use crate::web::last;
use crate::web::store::{Keeping, Store};

/// The saved sets and what was said about them last.
#[derive(Clone, Copy)]
pub struct Shelf {
    pub(super) store: StoredValue<Store, LocalStorage>,
    desk: Desk,
    /// It is there for as long as the page.
    pub(super) alive: Alive,
    /// Counts up when the list changes.
    pub changed: State<u32>,
    /// What went wrong or well last, in words.
    pub said: State<Option<String>>,
    /// Why what is on the desk is not saved, for as long as it is not.
    pub unsaved: State<Option<String>>,
    /// What was on the desk before and could not be saved, by number and name.
    pub waiting: State<Vec<(u32, String)>>,
    /// What of the set that was open last cannot be read.
    pub unreadable: State<Vec<SetAside>>,
    /// What could not be read and was taken away last.
    pub discarded: State<Option<Discarded>>,
    /// The set that was deleted last.
    pub deleted: State<Option<Deleted>>,
    /// Whether the browser was asked to let it last.
    asked: State<bool>,
    /// The set that broke the page while opening, left closed.
    pub left_closed: State<Option<SetId>>,
    /// Whose design is on the desk, where it came by a link and is neither kept nor put away ([`super::guest`]).
    pub guest: State<Option<Guest>>,
    /// The design of the link that broke the page while opening, left closed, and the link's name.
    pub closed_link: State<Option<(String, Project)>>,
}

impl Shelf {
    /// Opens the shelf and puts on the desk what belongs there: the design of the link, or the set that was open last.
    #[must_use]
    pub fn begin(desk: Desk) -> Self {
        let store = Store::begin();
        let forbidden = store.keeping() != Keeping::Lasting;
        let shelf = Self {
            store: StoredValue::new_local(store),
            desk,
            alive: Alive::here(),
            changed: State::new(0),
            said: State::new(forbidden.then(|| kept::NOT_LASTING.to_owned())),
            unsaved: State::new(None),
            waiting: State::new(Vec::new()),
            unreadable: State::new(Vec::new()),
            discarded: State::new(None),
            deleted: State::new(None),
            asked: State::new(false),
            left_closed: State::new(None),
            guest: State::new(None),
            closed_link: State::new(None),
        };
        shelf.leave_unsaved();
        shelf.open_first();
        shelf.save_as_it_changes();
        shelf
    }

    /// What is on the desk is not the maker's own work yet: it need not be saved.
    pub(super) fn leave_unsaved(self) {
        let Work { project, ticks, .. } = self.on_the_desk();
        self.store.update_value(|s| s.leave_unsaved(&project, &ticks));
    }

    /// What is worked on.
    fn on_the_desk(self) -> Work {
        let (project, ticks) = (self.desk.project.get_untracked(), self.desk.ticks.get_untracked());
        Work { project, ticks, trail: self.desk.trail() }
    }

    /// What is worked on, where it cannot be saved before something else is taken to hand.
    pub(super) fn left_unsaved(self) -> Option<Work> {
        (!self.save_now()).then(|| self.on_the_desk())
    }

    pub(super) fn lay(self, work: Work) {
        self.desk.lay(work.project, work.ticks, work.trail);
        self.left_closed.set(None);
        self.leave_guest();
        self.unsaved.set(None);
        self.waiting.set(self.store.with_value(Store::waiting));
    }

    /// Opens the set that was open last, and says where it cannot be read.
    pub(super) fn open_last(self, id: SetId) {
        self.unreadable.set(self.store.with_value(|s| s.unreadable(id)));
        match self.store.try_update_value(|s| s.open(id, None)) {
            Some(Ok(work)) => self.lay(work),
            // It stays as it is, with a way to save its bytes and one to take it away.
            Some(Err(KeepError::Unreadable(_))) | None => {}
            Some(Err(why)) => self.said.set(Some(format!("{why}."))),
        }
    }

    /// Saves what is on the desk where it is not saved, and what waits; whether all that is on the desk is saved then.
    pub fn save_now(self) -> bool {
        let (project, ticks) = (self.desk.project, self.desk.ticks);
        let saved = self.store.with_value(|s| project.with_untracked(|p| ticks.with_untracked(|t| s.is_saved(p, t))));
        if !saved && !self.save_desk() {
            return false;
        }
        if self.unsaved.with_untracked(Option::is_some) {
            self.unsaved.set(None);
            self.said.set(Some(kept::SAVED_AFTER_ALL.to_owned()));
        }
        if self.waiting.with_untracked(Vec::is_empty) {
            return true;
        }
        if self.store.try_update_value(Store::try_waiting).is_some_and(|count| count > 0) {
            self.said.set(Some(kept::SAVED_AFTER_ALL.to_owned()));
            self.waiting.set(self.store.with_value(Store::waiting));
            self.list_anew();
        }
        true
    }

    fn save_desk(self) -> bool {
        let mut work = self.on_the_desk();
        match self.store.try_update_value(|s| s.save(&mut work)) {
            Some(Ok(went)) => {
                if went != Saved::Here {
                    self.desk.call(&work.project.name);
                    self.said.set(Some(kept::AS_COPY.to_owned()));
                }
                self.guest_is_saved();
            }
            Some(Err(why)) => {
                let why = Some(format!("{why}."));
                if self.unsaved.with_untracked(|before| *before != why) {
                    self.unsaved.set(why);
                }
                return false;
            }
            None => return false,
        }
        if !self.asked.get_untracked() {
            self.asked.set(true);
            last::ask_to_last();
        }
        self.list_anew();
        true
    }

    /// Lists what is kept anew.
    pub fn list_anew(self) {
        self.changed.update(|n| *n = n.wrapping_add(1));
    }

    /// All saved sets; what cannot be read is said.
    #[must_use]
    pub fn list(self) -> Listing {
        self.changed.track();
        match self.store.with_value(Store::list) {
            Ok(listing) => listing,
            Err(why) => {
                self.said.set(Some(format!("{why}.")));
                Listing::default()
            }
        }
    }

    /// The desk that it serves.
    #[must_use]
    pub const fn desk(self) -> Desk {
        self.desk
    }

    /// The set that is open.
    #[must_use]
    pub fn current(self) -> Option<SetId> {
        self.changed.track();
        self.store.with_value(Store::current)
    }

    /// Opens a saved set. What is on the desk is saved first, or waits.
    pub fn open(self, id: SetId) {
        let leaving = self.left_unsaved();
        match self.store.try_update_value(|s| s.open(id, leaving)) {
            Some(Ok(work)) => self.lay(work),
            Some(Err(why)) => self.said.set(Some(format!("{why}."))),
            None => {}
        }
        self.list_anew();
    }

    /// Puts another design on the desk as a new set. What is there is saved first, or waits.
    pub fn lay_new(self, project: Project) {
        let leaving = self.left_unsaved();
        self.store.update_value(|s| s.start(leaving));
        self.lay(Work { project, ..Work::default() });
        self.save_now();
    }

    /// Puts what waits on the desk again.
    pub fn take_up(self, number: u32) {
        let leaving = self.left_unsaved();
        if let Some(work) = self.store.try_update_value(|s| s.take_up(number, leaving)).flatten() {
            self.lay(work);
            self.save_now();
        }
        self.list_anew();
    }

    /// Gives a set another name.
    pub fn rename(self, id: SetId, name: &str) {
        if self.current() == Some(id) {
            self.desk.edit("", |p| name.clone_into(&mut p.name));
            self.save_now();
        } else if let Some(Err(why)) = self.store.try_update_value(|s| s.rename(id, name)) {
            self.said.set(Some(format!("{why}.")));
        }
        self.list_anew();
    }

    /// Saves a set once more.
    pub fn duplicate(self, id: SetId) {
        self.save_now();
        if let Some(Err(why)) = self.store.try_update_value(|s| s.duplicate(id)) {
            self.said.set(Some(format!("{why}.")));
        }
        self.list_anew();
    }

    /// Deletes a set, which can be had back.
    pub fn delete(self, id: SetId) {
        self.save_now();
        let (work, open) = (self.on_the_desk(), self.store.with_value(Store::current) == Some(id));
        match self.store.try_update_value(|s| s.delete(id, &work)) {
            Some(Ok(deleted)) => {
                self.deleted.set(Some(deleted));
                if open {
                    // What was not saved of it comes back with it.
                    self.unsaved.set(None);
                }
                self.after_room_was_made();
            }
            Some(Err(why)) => self.said.set(Some(format!("{why}."))),
            None => {}
        }
        self.list_anew();
    }

    /// What could not be saved is tried again.
    fn after_room_was_made(self) {
        self.waiting.set(self.store.with_value(Store::waiting));
        self.save_now();
    }

    /// Brings the set that was deleted last back.
    pub fn restore(self) {
        if let Some(deleted) = self.deleted.get_untracked() {
            match self.store.try_update_value(|s| s.restore(&deleted)) {
                Some(Ok(_)) => self.deleted.set(None),
                Some(Err(why)) => self.said.set(Some(format!("{why}."))),
                None => {}
            }
        }
        self.list_anew();
    }

    /// Looks what is here, before the sets of a file are brought in.
    ///
    /// # Errors
    /// Where the shelf cannot be read.
    pub fn begin_bringing(self) -> Result<Bringing, Refused> {
        self.store.with_value(Store::begin_bringing)
    }

    /// Saves one set of a file beside those that are here; the list is not made anew yet.
    ///
    /// # Errors
    /// Where the shelf refuses.
    pub fn bring(self, bringing: &mut Bringing, kept: &Kept) -> Result<(), KeepError> {
        self.store.try_update_value(|s| s.bring(bringing, kept)).unwrap_or(Err(KeepError::Gone))
    }

    /// All saved sets, for one file.
    #[must_use]
    pub fn all(self) -> Option<Vec<Kept>> {
        self.save_now();
        let work = self.on_the_desk();
        self.store.with_value(|s| s.all(&work).ok())
    }

    /// The text of a record that cannot be read, to be saved as a file.
    #[must_use]
    pub fn set_aside_text(self, key: &str) -> Option<String> {
        self.store.with_value(|s| s.set_aside_text(key).ok().flatten())
    }

    /// Takes away a record that cannot be read, which can be had back.
    pub fn discard(self, key: &str) {
        match self.store.try_update_value(|s| s.discard(key)) {
            Some(Ok(discarded)) => {
                self.discarded.set(Some(discarded));
                self.unreadable.update(|all| all.retain(|one| one.key != key));
                self.after_room_was_made();
            }
            Some(Err(why)) => self.said.set(Some(format!("{why}."))),
            None => {}
        }
        self.list_anew();
    }

    /// Brings the record that was taken away last back.
    pub fn put_back(self) {
        if let Some(discarded) = self.discarded.get_untracked() {
            match self.store.try_update_value(|s| s.put_back(&discarded)) {
                Some(Ok(())) => self.discarded.set(None),
                Some(Err(why)) => self.said.set(Some(format!("{why}."))),
                None => {}
            }
        }
        self.list_anew();
    }
}

/// The shelf of this page.
#[must_use]
pub fn shelf() -> Shelf {
    expect_context::<Shelf>()
}
