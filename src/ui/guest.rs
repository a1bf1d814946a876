//! A design that came by a link: it lies on the desk, but is one of the maker's sets only once it is kept.
//!
//! Until then nothing of it is saved, the set that was open before stays the one that the next visit opens, and the link
//! stays in the address, so that loading the page again shows its design again. The first change makes it the maker's own
//! and saves it, as with the worked example: no work waits for a word.

use leptos::prelude::*;

use super::shelf::Shelf;
use super::tag::{Tag, button, classed};
use crate::keep::record::SetId;
use crate::keep::session::Work;
use crate::project::example::example;
use crate::project::request::Project;
use crate::say::{kept, page};
use crate::web::link::Came;
use crate::web::store::Store;
use crate::web::{guard, here, link};

/// What is told of a design that came by a link.
#[derive(Clone, PartialEq, Eq)]
pub struct Guest {
    name: String,
    credit: String,
    /// The set that was open before.
    before: Option<SetId>,
}

impl Shelf {
    /// Puts on the desk what belongs there at the start: the design of the link, or the set that was open last.
    pub(super) fn open_first(self) {
        let last = self.store.with_value(Store::last);
        let came = link::in_address().is_some_and(|came| self.receive(came, last));
        if let Some(id) = last.filter(|_| !came) {
            if guard::stopped_by(&guard::set(id)) {
                self.left_closed.set(Some(id));
            } else {
                guard::begin_open(&guard::set(id));
                self.open_last(id);
            }
        }
        here::on_new_address(move || {
            if let Some(came) = link::in_address() {
                // What was only begun is a set from now on, to come back to.
                self.save_now();
                let before = self.guest.get_untracked().map_or_else(|| self.current(), |guest| guest.before);
                self.receive(came, before);
            }
        });
    }

    /// Opens a saved set; should it stop the page, the next visit leaves it closed.
    pub(super) fn open_guarded(self, id: SetId) {
        guard::begin_open(&guard::set(id));
        self.open(id);
    }

    /// Lays the design of a link on the desk, or says why not; a link that is not opened stays in the address.
    fn receive(self, came: Came, before: Option<SetId>) -> bool {
        match came.design {
            Ok(design) if guard::stopped_by(&came.name) => {
                self.closed_link.set(Some((came.name, design)));
                false
            }
            Ok(design) => {
                self.show(&came.name, design, before);
                true
            }
            Err(why) => {
                self.said.set(Some(format!("{why}.")));
                false
            }
        }
    }

    /// Lays the design of the link with this name on the desk. What is there is saved first, or waits.
    fn show(self, name: &str, design: Project, before: Option<SetId>) {
        guard::begin_open(name);
        self.closed_link.set(None);
        // The address has another link by now, which stays.
        self.guest.set(None);
        if let Some(id) = self.same_as(&design) {
            self.open(id);
            link::leave();
            self.said.set(Some(kept::HERE_ALREADY.to_owned()));
            return;
        }
        let (name, credit) = (design.name.clone(), design.own.credit.clone());
        self.lay_unsaved(design);
        self.guest.set(Some(Guest { name, credit, before }));
    }

    /// Puts another design on the desk, which need not be saved until it is changed.
    fn lay_unsaved(self, project: Project) {
        let leaving = self.left_unsaved();
        self.store.update_value(|s| s.start(leaving));
        self.lay(Work { project, ..Work::default() });
        self.leave_unsaved();
        self.list_anew();
    }

    /// The saved set that is this design but for what no link holds.
    fn same_as(self, project: &Project) -> Option<SetId> {
        let shared = project.for_others();
        let there = self.list().entries;
        there.iter().find(|e| e.name == project.name && e.project.for_others() == shared).map(|e| e.id)
    }

    /// Makes the design that came by a link one of the maker's sets.
    fn keep_guest(self) {
        let Some(guest) = self.guest.get_untracked() else {
            return;
        };
        // It is a new set, of which nothing is saved yet.
        self.store.update_value(|s| s.start(None));
        if self.save_now() {
            self.said.set(Some(kept::now_yours(&guest.name)));
        }
    }

    /// Takes the design that came by a link off the desk, and opens the set that was there before.
    fn put_guest_away(self) {
        self.save_now();
        // Changed a moment ago, it has just become the maker's own.
        let Some(guest) = self.guest.get_untracked() else {
            return;
        };
        let there = self.list().entries;
        let before = guest.before.filter(|id| there.iter().any(|e| e.id == *id));
        let closed = before.filter(|id| guard::stopped_by(&guard::set(*id)));
        if let Some(id) = before.filter(|_| closed.is_none()) {
            self.open(id);
        } else if let Some(example) = example() {
            self.lay_unsaved(example);
            self.left_closed.set(closed);
        }
        self.leave_guest();
        self.said.set(Some(kept::put_away(&guest.name)));
    }

    /// After a save: what came by a link is the maker's own from now on.
    pub(super) fn guest_is_saved(self) {
        if let Some(guest) = self.guest.get_untracked() {
            self.leave_guest();
            self.said.set(Some(kept::changed_so_yours(&guest.name)));
        }
    }

    /// What lies on the desk came by no link any more: loading the page again opens a saved set.
    pub(super) fn leave_guest(self) {
        if self.guest.get_untracked().is_some() {
            self.guest.set(None);
            link::leave();
        }
    }
}

/// Says whose design lies on the desk, and what can be done with it.
pub fn guest_note(shelf: Shelf) -> Option<Tag> {
    let guest = shelf.guest.get()?;
    let actions = classed("span", "actions")
        .with(button(kept::KEEP_IT, move || shelf.keep_guest()))
        .with(button(kept::PUT_AWAY, move || shelf.put_guest_away()));
    Some(classed("p", "note").with(format!("{} ", kept::came_by_link(&guest.name, &guest.credit))).with(actions))
}

/// Says that the design of a link is left closed, and offers it all the same.
pub fn closed_link_note(shelf: Shelf) -> Option<Tag> {
    let (name, design) = shelf.closed_link.get()?;
    let open = move || {
        let before = shelf.current();
        shelf.show(&name, design.clone(), before);
    };
    Some(classed("p", "note caution").with(format!("{} ", kept::LINK_CLOSED)).with(button(page::OPEN_ANYWAY, open)))
}
