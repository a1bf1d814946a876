//! `Notebook`: the maker's saved sets on a shelf.
//!
//! ```
//! use snugfold::{keep::{notebook::Notebook, shelf::MemoryShelf}, project::example::example};
//! let mut notebook = Notebook::new(MemoryShelf::default(), 1);
//! let mut project = example().unwrap();
//! let mut open = notebook.create(&project, 1_790_000_000_000).unwrap();
//! project.sets = 12;
//! notebook.save(&mut open, &project, 1_790_000_001_000).unwrap();
//! assert_eq!(notebook.open(open.id, 1_790_000_002_000).unwrap().project.sets, 12);
//! ```

pub mod said;

pub mod bringing;

mod sets;
mod way_back;

use std::cmp::Reverse;

use crate::project::request::Project;

use super::history::{self, Found, History, Place};
use super::limits;
use super::record::{Content, Key, Kind, SetId, State};
use super::shelf::{Refused, Shelf};
use said::{Entry, KeepError, Listing, Open, Opened, Saved, SetAside};

/// What the name of a set ends in where two pages saved it at once and the other page's state became a set of its own.
const OTHER_COPY: &str = " (other copy)";
/// The key of the number of the set that was opened last.
const LAST: &str = "last";

/// The maker's saved sets.
#[derive(Clone, Debug)]
pub struct Notebook<S> {
    shelf: S,
    writer: u32,
}

impl<S: Shelf> Notebook<S> {
    /// The notebook on `shelf`. `writer` tells this page from every other that may be open at the same time.
    pub const fn new(shelf: S, writer: u32) -> Self {
        Self { shelf, writer }
    }

    /// The shelf that it is on.
    pub const fn shelf(&self) -> &S {
        &self.shelf
    }

    /// Everything that is kept.
    ///
    /// # Errors
    /// Where the shelf cannot be read.
    pub fn list(&self) -> Result<Listing, Refused> {
        let (keys, odd) = history::keys(&self.shelf)?;
        let name_is_odd = |key| SetAside { key, why: "Its name is none that Snugfold gives".to_owned() };
        let mut listing = Listing { set_aside: odd.into_iter().map(name_is_odd).collect(), ..Listing::default() };
        let mut records: Vec<_> = keys.iter().map(|k| (k.kind, k.id)).collect();
        records.dedup();
        for (kind, id) in records {
            let history = History::look(&self.shelf, &keys, kind, id)?;
            listing.set_aside.extend(history.unreadable.iter().map(|(state, why)| SetAside {
                key: Key { kind, id, state: *state }.to_string(),
                why: why.to_string(),
            }));
            listing.entries.extend(history.heads.into_iter().next_back().and_then(|f| Entry::of(id, f)));
        }
        listing.entries.sort_by_key(|e| (Reverse(e.saved_at), e.id));
        Ok(listing)
    }

    /// Opens a set, and remembers it as the last one. Where two pages had saved it at once, each of the other states
    /// becomes a set of its own, saved `now`.
    ///
    /// # Errors
    /// Where there is no such set, it cannot be read, or the shelf refuses.
    pub fn open(&mut self, id: SetId, now: u64) -> Result<Opened, KeepError> {
        let history = self.history(Kind::Set, id)?;
        let (newest, project) = newest(&history)?;
        let opened =
            Opened { open: Open { id, state: newest.state }, project: project.clone(), ticks: self.ticks(id)? };
        // A shelf that cannot be written to can still be read: the other states then stay for the next time.
        let _ = self.part(&history, id, now);
        self.remember(id);
        Ok(opened)
    }

    /// Saves a new set.
    ///
    /// # Errors
    /// Where it is too large or the shelf refuses.
    pub fn create(&mut self, project: &Project, now: u64) -> Result<Open, KeepError> {
        limits::check(project).map_err(KeepError::Excess)?;
        let id = self.free_id(now)?;
        let state = self.write(&History::default(), Kind::Set, id, &[], now, set(project))?;
        self.remember(id);
        Ok(Open { id, state })
    }

    /// Saves a set that is open. A design that is as it was is not written again.
    ///
    /// # Errors
    /// Where it is too large or the shelf refuses; what was saved before is then as it was.
    pub fn save(&mut self, open: &mut Open, project: &Project, now: u64) -> Result<Saved, KeepError> {
        limits::check(project).map_err(KeepError::Excess)?;
        let history = self.history(Kind::Set, open.id)?;
        // A state of this page's own is no other page's, even where a failure kept its number from being told.
        let mine = history.heads.iter().find(|f| f.state == open.state || f.state.writer == self.writer);
        if let Some(same) = mine.filter(|f| f.record.content == set(project)) {
            open.state = same.state;
            return Ok(Saved::Here);
        }
        if mine.is_none() && !history.heads.is_empty() {
            let of = open.id;
            let copy = Project { name: other_copy(&project.name), ..project.clone() };
            *open = self.create(&copy, now)?;
            return Ok(Saved::AsCopyOf(of));
        }
        let after: Vec<State> = mine.iter().map(|f| f.state).collect();
        open.state = self.write(&history, Kind::Set, open.id, &after, now, set(project))?;
        Ok(Saved::Here)
    }

    fn history(&self, kind: Kind, id: SetId) -> Result<History, Refused> {
        History::look(&self.shelf, &history::keys(&self.shelf)?.0, kind, id)
    }

    fn write(
        &mut self,
        history: &History,
        kind: Kind,
        id: SetId,
        after: &[State],
        now: u64,
        content: Content,
    ) -> Result<State, Refused> {
        let place = Place { kind, id, writer: self.writer };
        let first = history::write(&mut self.shelf, history, place, after, now, content.clone());
        // Where there is no room, the ways back go first.
        if first == Err(Refused::Full) && self.forget_trails() > 0 {
            return history::write(&mut self.shelf, history, place, after, now, content);
        }
        first
    }

    /// Makes a set of its own from each newest state but the last one.
    fn part(&mut self, history: &History, id: SetId, now: u64) -> Result<(), KeepError> {
        let others = history.heads.len().saturating_sub(1);
        for other in history.heads.iter().take(others) {
            if let Content::Set(project) = &other.record.content {
                let new = self.free_id(now)?;
                let content = set(&Project { name: other_copy(&project.name), ..(**project).clone() });
                self.write(&History::default(), Kind::Set, new, &[], other.record.saved_at, content)?;
                self.shelf.remove(&Key { kind: Kind::Set, id, state: other.state }.to_string())?;
            }
        }
        Ok(())
    }

    /// A number that no record has.
    fn free_id(&self, now: u64) -> Result<SetId, Refused> {
        let taken = history::keys(&self.shelf)?.0;
        let mut id = SetId(now);
        while taken.iter().any(|k| k.id == id) {
            id = SetId(id.0.wrapping_add(1));
        }
        Ok(id)
    }

    /// Remembers a set as the last one. Best effort: a page that cannot opens another one next time.
    pub fn remember(&mut self, id: SetId) {
        let _ = self.shelf.write(LAST, &id.0.to_string());
    }
}

fn set(project: &Project) -> Content {
    Content::Set(Box::new(project.clone()))
}

fn newest(history: &History) -> Result<(&Found, &Project), KeepError> {
    match (history.newest(), history.unreadable.last()) {
        (Some(found), _) => match &found.record.content {
            Content::Set(project) => Ok((found, project)),
            Content::Ticks(_) => Err(KeepError::Gone),
        },
        (None, Some((_, why))) => Err(KeepError::Unreadable(why.clone())),
        (None, None) => Err(KeepError::Gone),
    }
}

/// What a set called `name` is called where it was saved as another window's copy.
#[must_use]
pub fn other_copy(name: &str) -> String {
    longer(name, OTHER_COPY)
}

/// `name` with `end` behind it, where that is not too long.
fn longer(name: &str, end: &str) -> String {
    let whole = format!("{name}{end}");
    if whole.chars().count() > limits::NAME { name.to_owned() } else { whole }
}
