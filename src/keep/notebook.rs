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

use std::collections::BTreeSet;
use std::fmt;

use crate::project::request::Project;

use super::file::{FileError, Kept};
use super::history::{self, Found, History, Place};
use super::limits::{self, Excess};
use super::record::{Content, Key, Kind, SetId, State};
use super::shelf::{Refused, Shelf};

/// What the name of a set ends in where two pages saved it at once and the other page's state became a set of its own.
const OTHER_COPY: &str = " (other copy)";
/// What the name of a duplicate ends in.
const COPY: &str = " (copy)";
/// The key of the number of the set that was opened last.
const LAST: &str = "last";

/// The maker's saved sets.
#[derive(Clone, Debug)]
pub struct Notebook<S> {
    shelf: S,
    writer: u32,
}

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
    pub ticks: BTreeSet<String>,
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
            Self::Gone => f.write_str(
                "This set is not here any more: it was deleted, perhaps in another window",
            ),
            Self::Unreadable(why) => write!(
                f,
                "This set cannot be read and stays as it is: save it as a file. {why}"
            ),
        }
    }
}

impl std::error::Error for KeepError {}

impl From<Refused> for KeepError {
    fn from(refused: Refused) -> Self {
        Self::Refused(refused)
    }
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
        let name_is_odd = |key| SetAside {
            key,
            why: "Its name is none that Snugfold gives".to_owned(),
        };
        let mut listing = Listing {
            set_aside: odd.into_iter().map(name_is_odd).collect(),
            ..Listing::default()
        };
        let records: BTreeSet<_> = keys.iter().map(|k| (k.kind, k.id)).collect();
        for (kind, id) in records {
            let history = History::look(&self.shelf, &keys, kind, id)?;
            listing
                .set_aside
                .extend(history.unreadable.iter().map(|(state, why)| {
                    SetAside {
                        key: Key {
                            kind,
                            id,
                            state: *state,
                        }
                        .to_string(),
                        why: why.to_string(),
                    }
                }));
            listing.entries.extend(
                history
                    .heads
                    .into_iter()
                    .next_back()
                    .and_then(|f| entry(id, f)),
            );
        }
        listing
            .entries
            .sort_by_key(|e| (std::cmp::Reverse(e.saved_at), e.id));
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
        let opened = Opened {
            open: Open {
                id,
                state: newest.state,
            },
            project: project.clone(),
            ticks: self.ticks(id)?,
        };
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
    pub fn save(
        &mut self,
        open: &mut Open,
        project: &Project,
        now: u64,
    ) -> Result<Saved, KeepError> {
        limits::check(project).map_err(KeepError::Excess)?;
        let history = self.history(Kind::Set, open.id)?;
        // A state of this page's own is no other page's, even where a failure kept its number from being told.
        let mine = history
            .heads
            .iter()
            .find(|f| f.state == open.state || f.state.writer == self.writer);
        if let Some(same) = mine.filter(|f| f.record.content == set(project)) {
            open.state = same.state;
            return Ok(Saved::Here);
        }
        if mine.is_none() && !history.heads.is_empty() {
            let of = open.id;
            *open = self.create(&renamed(project, OTHER_COPY), now)?;
            return Ok(Saved::AsCopyOf(of));
        }
        let after: Vec<State> = mine.iter().map(|f| f.state).collect();
        open.state = self.write(&history, Kind::Set, open.id, &after, now, set(project))?;
        Ok(Saved::Here)
    }

    /// Gives a set another name.
    ///
    /// # Errors
    /// As [`Self::open`] and [`Self::save`].
    pub fn rename(&mut self, id: SetId, name: &str, now: u64) -> Result<Open, KeepError> {
        let history = self.history(Kind::Set, id)?;
        let (newest, project) = newest(&history)?;
        let mut open = Open {
            id,
            state: newest.state,
        };
        let project = Project {
            name: name.to_owned(),
            ..project.clone()
        };
        self.save(&mut open, &project, now)?;
        Ok(open)
    }

    /// Saves a set once more as a new one, with no step ticked.
    ///
    /// # Errors
    /// As [`Self::open`] and [`Self::create`].
    pub fn duplicate(&mut self, id: SetId, now: u64) -> Result<Open, KeepError> {
        let history = self.history(Kind::Set, id)?;
        let (_, project) = newest(&history)?;
        self.create(&renamed(project, COPY), now)
    }

    /// Deletes a set with its ticks, and gives back what undoes it.
    ///
    /// # Errors
    /// Where there is no such set, it cannot be read, or the shelf refuses.
    pub fn delete(&mut self, id: SetId) -> Result<Deleted, KeepError> {
        let history = self.history(Kind::Set, id)?;
        let (newest, project) = newest(&history)?;
        let kept = Kept {
            project: project.clone(),
            ticks: self.ticks(id)?,
            saved_at: Some(newest.record.saved_at),
        };
        // The newest goes last: cut off before, the set is still whole.
        for state in history.superseded.iter().chain([&newest.state]) {
            self.shelf.remove(
                &Key {
                    kind: Kind::Set,
                    id,
                    state: *state,
                }
                .to_string(),
            )?;
        }
        let ticks = self.history(Kind::Ticks, id)?;
        for state in ticks
            .superseded
            .iter()
            .chain(ticks.heads.iter().map(|f| &f.state))
        {
            self.shelf.remove(
                &Key {
                    kind: Kind::Ticks,
                    id,
                    state: *state,
                }
                .to_string(),
            )?;
        }
        Ok(Deleted { id, kept })
    }

    /// Undoes [`Self::delete`].
    ///
    /// # Errors
    /// Where the shelf refuses.
    pub fn restore(&mut self, deleted: &Deleted, now: u64) -> Result<SetId, KeepError> {
        let Deleted { id, kept } = deleted;
        let id = if self.history(Kind::Set, *id)?.heads.is_empty() {
            *id
        } else {
            self.free_id(now)?
        };
        self.put(id, kept, now)?;
        Ok(id)
    }

    /// The keys of the steps that are ticked for a set.
    ///
    /// # Errors
    /// Where the shelf cannot be read.
    pub fn ticks(&self, id: SetId) -> Result<BTreeSet<String>, Refused> {
        let heads = self.history(Kind::Ticks, id)?.heads;
        Ok(heads
            .into_iter()
            .filter_map(|f| match f.record.content {
                Content::Ticks(ticks) => Some(ticks),
                Content::Set(_) => None,
            })
            .flatten()
            .collect())
    }

    /// Saves the keys of the steps that are ticked for a set. Its design is not touched.
    ///
    /// # Errors
    /// Where there are too many or the shelf refuses; the ticks of before are then as they were.
    pub fn save_ticks(
        &mut self,
        id: SetId,
        ticks: &BTreeSet<String>,
        now: u64,
    ) -> Result<(), KeepError> {
        super::file::check_ticks(ticks).map_err(KeepError::Excess)?;
        let history = self.history(Kind::Ticks, id)?;
        let after: Vec<State> = history.heads.iter().map(|f| f.state).collect();
        self.write(
            &history,
            Kind::Ticks,
            id,
            &after,
            now,
            Content::Ticks(ticks.clone()),
        )?;
        Ok(())
    }

    /// The set that was opened or made last, if it is still here.
    ///
    /// # Errors
    /// Where the shelf cannot be read.
    pub fn last(&self) -> Result<Option<SetId>, Refused> {
        let Some(id) = self
            .shelf
            .read(LAST)?
            .and_then(|text| text.parse().ok())
            .map(SetId)
        else {
            return Ok(None);
        };
        Ok(self.history(Kind::Set, id)?.newest().map(|_| id))
    }

    /// Everything that is kept, for one file.
    ///
    /// # Errors
    /// Where the shelf cannot be read.
    pub fn all(&self) -> Result<Vec<Kept>, Refused> {
        let entries = self.list()?.entries;
        let kept = |e: Entry| {
            Ok(Kept {
                ticks: self.ticks(e.id)?,
                saved_at: Some(e.saved_at),
                project: e.project,
            })
        };
        entries.into_iter().map(kept).collect()
    }

    /// Saves sets from a file. One that is here already just as it is in the file is not saved again; any other is kept
    /// beside what is here.
    ///
    /// # Errors
    /// Where one is too large or the shelf refuses; those before it are saved.
    pub fn bring_in(&mut self, sets: &[Kept], now: u64) -> Result<Vec<SetId>, KeepError> {
        let here = self.list()?.entries;
        let mut ids = Vec::new();
        for kept in sets {
            if let Some(same) = here.iter().find(|e| e.project == kept.project) {
                ids.push(same.id);
                continue;
            }
            let id = self.free_id(now)?;
            self.put(id, kept, now)?;
            ids.push(id);
        }
        Ok(ids)
    }

    /// The text of a record that was set aside, to be saved as a file.
    ///
    /// # Errors
    /// Where the shelf cannot be read.
    pub fn set_aside_text(&self, key: &str) -> Result<Option<String>, Refused> {
        self.shelf.read(key)
    }

    /// Takes away a record that was set aside. Only at the maker's word, once it is saved as a file.
    ///
    /// # Errors
    /// [`KeepError::Gone`] where `key` is that of no record that is set aside; where the shelf refuses.
    pub fn discard(&mut self, key: &str) -> Result<(), KeepError> {
        if !self.list()?.set_aside.iter().any(|a| a.key == key) {
            return Err(KeepError::Gone);
        }
        Ok(self.shelf.remove(key)?)
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
        let place = Place {
            kind,
            id,
            writer: self.writer,
        };
        history::write(&mut self.shelf, history, place, after, now, content)
    }

    /// Writes a set with its ticks where no set is.
    fn put(&mut self, id: SetId, kept: &Kept, now: u64) -> Result<(), KeepError> {
        limits::check(&kept.project).map_err(KeepError::Excess)?;
        let saved_at = kept.saved_at.unwrap_or(now);
        let history = self.history(Kind::Set, id)?;
        self.write(&history, Kind::Set, id, &[], saved_at, set(&kept.project))?;
        if !kept.ticks.is_empty() {
            self.save_ticks(id, &kept.ticks, now)?;
        }
        Ok(())
    }

    /// Makes a set of its own from each newest state but the last one.
    fn part(&mut self, history: &History, id: SetId, now: u64) -> Result<(), KeepError> {
        let others = history.heads.len().saturating_sub(1);
        for other in history.heads.iter().take(others) {
            if let Content::Set(project) = &other.record.content {
                let new = self.free_id(now)?;
                let content = set(&renamed(project, OTHER_COPY));
                self.write(
                    &History::default(),
                    Kind::Set,
                    new,
                    &[],
                    other.record.saved_at,
                    content,
                )?;
                self.shelf.remove(
                    &Key {
                        kind: Kind::Set,
                        id,
                        state: other.state,
                    }
                    .to_string(),
                )?;
            }
        }
        Ok(())
    }

    /// A number that no record has.
    fn free_id(&self, now: u64) -> Result<SetId, Refused> {
        let taken: BTreeSet<SetId> = history::keys(&self.shelf)?.0.iter().map(|k| k.id).collect();
        let mut id = SetId(now);
        while taken.contains(&id) {
            id = SetId(id.0.wrapping_add(1));
        }
        Ok(id)
    }

    /// Best effort: a page that cannot remember it opens the set saved last.
    fn remember(&mut self, id: SetId) {
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

fn entry(id: SetId, found: Found) -> Option<Entry> {
    match found.record.content {
        Content::Set(project) => Some(Entry {
            id,
            name: project.name.clone(),
            saved_at: found.record.saved_at,
            size: found.size,
            project: *project,
        }),
        Content::Ticks(_) => None,
    }
}

/// `project` with `end` behind its name, where that is not too long.
fn renamed(project: &Project, end: &str) -> Project {
    let name = format!("{}{end}", project.name);
    let name = if name.chars().count() > limits::NAME {
        project.name.clone()
    } else {
        name
    };
    Project {
        name,
        ..project.clone()
    }
}
