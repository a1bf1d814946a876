//! `Shelf`: where designs are kept: the open one is saved by itself as it changes.

use crate::project::ticks::Ticks;
use std::cell::Cell;
use std::rc::Rc;
use std::time::Duration;

use leptos::prelude::*;

use super::desk::Desk;
use super::value::{State, effect};
use crate::keep::notebook::said::{Deleted, Listing, Saved};
use crate::keep::record::SetId;
use crate::keep::trail::Trail;
use crate::project::request::Project;
use crate::say::kept;
use crate::web::store::{Keeping, Store};
use crate::web::{guard, here, last, link, locks};

/// How long a change waits for the next one before it is saved.
const PAUSE: Duration = Duration::from_millis(350);

/// The saved sets and what was said about them last.
#[derive(Clone, Copy)]
pub struct Shelf {
    store: StoredValue<Store, LocalStorage>,
    desk: Desk,
    /// Counts up when the list changes.
    pub changed: State<u32>,
    /// What went wrong or well last, in words.
    pub said: State<Option<String>>,
    /// The set that was deleted last.
    pub deleted: State<Option<Deleted>>,
    /// The design as it was saved or opened last.
    saved: State<Option<Project>>,
    /// Whether the browser was asked to let it last.
    asked: State<bool>,
    /// The set that broke the page while opening, left closed.
    pub left_closed: State<Option<SetId>>,
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
            changed: State::new(0),
            said: State::new(forbidden.then(|| kept::NOT_LASTING.to_owned())),
            deleted: State::new(None),
            saved: State::new(Some(desk.project.get_untracked())),
            asked: State::new(false),
            left_closed: State::new(None),
        };
        let broke = guard::broke_last_time();
        let last = shelf.store.with_value(Store::last);
        match link::opened_with() {
            Some(Ok(project)) if !broke => {
                if let Some(id) = shelf.same_as(&project) {
                    shelf.open(id);
                    shelf.said.set(Some(kept::HERE_ALREADY.to_owned()));
                } else {
                    desk.lay(project, Ticks::default(), Trail::default());
                    shelf.saved.set(None);
                    shelf.save_now();
                }
                link::leave();
            }
            other => {
                if let Some(Err(why)) = other {
                    shelf.said.set(Some(format!("{why}.")));
                }
                match last {
                    Some(id) if broke => shelf.left_closed.set(Some(id)),
                    Some(id) => shelf.open(id),
                    None => {}
                }
                if broke {
                    link::leave();
                }
            }
        }
        shelf.save_as_it_changes();
        shelf
    }

    /// The saved set that is this design but for what no link holds.
    fn same_as(self, project: &Project) -> Option<SetId> {
        let shared = project.for_others();
        let there = self.list().entries;
        there.iter().find(|e| e.name == project.name && e.project.for_others() == shared).map(|e| e.id)
    }

    /// Saves the design once it has been left alone for a moment, and when the page goes out of sight.
    fn save_as_it_changes(self) {
        let waiting = Rc::new(Cell::new(0_u32));
        effect(move || {
            self.desk.project.track();
            let mine = waiting.get().wrapping_add(1);
            waiting.set(mine);
            let waiting = waiting.clone();
            set_timeout(
                move || {
                    if waiting.get() == mine {
                        locks::alone(move || self.save_now());
                    }
                },
                PAUSE,
            );
        });
        let opening = Cell::new(true);
        effect(move || {
            self.desk.ticks.track();
            if !opening.replace(false) {
                self.save_ticks();
            }
        });
        here::on_hide(move || self.save_now());
    }

    /// Saves the design if it has changed.
    pub fn save_now(self) {
        let now = self.desk.project.get_untracked();
        if self.saved.with_untracked(|s| s.as_ref() == Some(&now)) {
            return;
        }
        match self.store.try_update_value(|s| s.save(&now)) {
            Some(Ok(Saved::Here)) => {}
            Some(Ok(Saved::AsCopyOf(_))) => self.said.set(Some(kept::AS_COPY.to_owned())),
            Some(Err(why)) => self.said.set(Some(format!("{why}."))),
            None => return,
        }
        if !self.asked.get_untracked() {
            self.asked.set(true);
            last::ask_to_last();
        }
        let trail = self.desk.trail();
        self.store.update_value(|s| s.save_trail(&now, &trail));
        self.saved.set(Some(now));
        self.list_anew();
    }

    fn save_ticks(self) {
        if self.store.with_value(|s| s.current().is_none()) {
            // A tick belongs to a set: the example becomes one with its first tick.
            if self.desk.ticks.with_untracked(Ticks::is_empty) {
                return;
            }
            self.saved.set(None);
            self.save_now();
        }
        let ticks = self.desk.ticks.get_untracked();
        if let Some(Err(why)) = self.store.try_update_value(|s| s.save_ticks(&ticks)) {
            self.said.set(Some(format!("{why}.")));
        }
    }

    fn list_anew(self) {
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

    /// Opens a saved set.
    pub fn open(self, id: SetId) {
        match self.store.try_update_value(|s| s.open(id)) {
            Some(Ok((project, ticks))) => {
                self.saved.set(Some(project.clone()));
                let trail = self.store.with_value(|s| s.trail(id, &project));
                self.desk.lay(project, ticks, trail);
                self.left_closed.set(None);
            }
            Some(Err(why)) => self.said.set(Some(format!("{why}."))),
            None => {}
        }
        self.list_anew();
    }

    /// Puts another design on the desk as a new set.
    pub fn lay_new(self, project: Project) {
        self.save_now();
        self.store.update_value(Store::put_down);
        self.desk.lay(project, Ticks::default(), Trail::default());
        self.saved.set(None);
        self.save_now();
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
        match self.store.try_update_value(|s| s.delete(id)) {
            Some(Ok(deleted)) => self.deleted.set(Some(deleted)),
            Some(Err(why)) => self.said.set(Some(format!("{why}."))),
            None => {}
        }
        self.list_anew();
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

    /// Saves the sets of a file beside those that are here, and opens the first.
    pub fn bring_in(self, sets: &[crate::keep::file::Kept]) {
        self.save_now();
        match self.store.try_update_value(|s| s.bring_in(sets)) {
            Some(Ok(ids)) => {
                self.said.set(Some(kept::brought_in(ids.len())));
                if let Some(first) = ids.first() {
                    self.open(*first);
                }
            }
            Some(Err(why)) => self.said.set(Some(format!("{why}."))),
            None => {}
        }
        self.list_anew();
    }

    /// All saved sets, for one file.
    #[must_use]
    pub fn all(self) -> Option<Vec<crate::keep::file::Kept>> {
        self.save_now();
        self.store.with_value(|s| s.all().ok())
    }

    /// The text of a record that cannot be read, to be saved as a file.
    #[must_use]
    pub fn set_aside_text(self, key: &str) -> Option<String> {
        self.store.with_value(|s| s.set_aside_text(key).ok().flatten())
    }
}

/// The shelf of this page.
#[must_use]
pub fn shelf() -> Shelf {
    expect_context::<Shelf>()
}
