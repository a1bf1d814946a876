//! What is done with whole sets: named, doubled, deleted, ticked, saved to and brought in from files.

use crate::project::ticks::Ticks;

use crate::keep::file::{self, FileError, Kept};
use crate::keep::history::{self, History};
use crate::keep::limits;
use crate::keep::record::{Content, Key, Kind, SetId, State};
use crate::keep::shelf::{Refused, Shelf};
use crate::project::request::Project;

use super::said::{Deleted, Discarded, Entry, KeepError, Open, SetAside};
use super::{LAST, Notebook, longer, newest, set};

/// What the name of a duplicate ends in.
const COPY: &str = " (copy)";

impl<S: Shelf> Notebook<S> {
    /// Gives a set another name.
    ///
    /// # Errors
    /// As [`Self::open`] and [`Self::save`].
    pub fn rename(&mut self, id: SetId, name: &str, now: u64) -> Result<Open, KeepError> {
        let history = self.history(Kind::Set, id)?;
        let (newest, project) = newest(&history)?;
        let mut open = Open { id, state: newest.state };
        let project = Project { name: name.to_owned(), ..project.clone() };
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
        let copy = Project { name: longer(&project.name, COPY), ..project.clone() };
        self.create(&copy, now)
    }

    /// Deletes a set with its ticks, and gives back what undoes it.
    ///
    /// # Errors
    /// Where there is no such set, it cannot be read, or the shelf refuses.
    pub fn delete(&mut self, id: SetId) -> Result<Deleted, KeepError> {
        let history = self.history(Kind::Set, id)?;
        let (newest, project) = newest(&history)?;
        let kept = Kept { project: project.clone(), ticks: self.ticks(id)?, saved_at: Some(newest.record.saved_at) };
        // The newest goes last: cut off before, the set is still whole.
        for state in history.superseded.iter().chain([&newest.state]) {
            self.shelf.remove(&Key { kind: Kind::Set, id, state: *state }.to_string())?;
        }
        let ticks = self.history(Kind::Ticks, id)?;
        for state in ticks.superseded.iter().chain(ticks.heads.iter().map(|f| &f.state)) {
            self.shelf.remove(&Key { kind: Kind::Ticks, id, state: *state }.to_string())?;
        }
        self.forget_trail(id);
        Ok(Deleted { id, kept })
    }

    /// Undoes [`Self::delete`].
    ///
    /// # Errors
    /// Where the shelf refuses.
    pub fn restore(&mut self, deleted: &Deleted, now: u64) -> Result<SetId, KeepError> {
        let Deleted { id, kept } = deleted;
        let id = if self.history(Kind::Set, *id)?.heads.is_empty() { *id } else { self.free_id(now)? };
        self.put(id, kept, now)?;
        Ok(id)
    }

    /// The keys of the steps that are ticked for a set.
    ///
    /// # Errors
    /// Where the shelf cannot be read.
    pub fn ticks(&self, id: SetId) -> Result<Ticks, Refused> {
        Ok(all_ticks(self.history(Kind::Ticks, id)?))
    }

    /// Saves the keys of the steps that are ticked for a set. Its design is not touched.
    ///
    /// # Errors
    /// Where there are too many or the shelf refuses; the ticks of before are then as they were.
    pub fn save_ticks(&mut self, id: SetId, ticks: &Ticks, now: u64) -> Result<(), KeepError> {
        file::check_ticks(ticks).map_err(KeepError::Excess)?;
        let history = self.history(Kind::Ticks, id)?;
        let after: Vec<State> = history.heads.iter().map(|f| f.state).collect();
        self.write(&history, Kind::Ticks, id, &after, now, Content::Ticks(ticks.clone()))?;
        Ok(())
    }

    /// The set that was opened or made last, if it is still here, read or not.
    ///
    /// # Errors
    /// Where the shelf cannot be read.
    pub fn last(&self) -> Result<Option<SetId>, Refused> {
        let Some(id) = self.shelf.read(LAST)?.and_then(|text| text.parse().ok()).map(SetId) else {
            return Ok(None);
        };
        Ok(self.holds(id)?.then_some(id))
    }

    /// Whether there is such a set, read or not.
    ///
    /// # Errors
    /// Where the shelf cannot be read.
    pub fn holds(&self, id: SetId) -> Result<bool, Refused> {
        Ok(history::keys(&self.shelf)?.0.iter().any(|key| (key.kind, key.id) == (Kind::Set, id)))
    }

    /// What of a set cannot be read though nothing that can is newer.
    ///
    /// # Errors
    /// Where the shelf cannot be read.
    pub fn unreadable(&self, id: SetId) -> Result<Vec<SetAside>, Refused> {
        let history = self.history(Kind::Set, id)?;
        let aside = |(state, why): &(State, FileError)| SetAside {
            key: Key { kind: Kind::Set, id, state: *state }.to_string(),
            why: why.to_string(),
        };
        let newest = history.newest().map_or(0, |found| found.state.revision);
        Ok(history.unreadable.iter().filter(|(state, _)| state.revision >= newest).map(aside).collect())
    }

    /// Everything that is kept, for a file or a few.
    ///
    /// # Errors
    /// Where the shelf cannot be read.
    pub fn all(&self) -> Result<Vec<Kept>, Refused> {
        let keys = history::keys(&self.shelf)?.0;
        let kept = |e: Entry| {
            let ticks = all_ticks(History::look(&self.shelf, &keys, Kind::Ticks, e.id)?);
            Ok(Kept { ticks, saved_at: Some(e.saved_at), project: e.project })
        };
        self.list()?.entries.into_iter().map(kept).collect()
    }

    /// The text of a record that was set aside, to be saved as a file.
    ///
    /// # Errors
    /// Where the shelf cannot be read.
    pub fn set_aside_text(&self, key: &str) -> Result<Option<String>, Refused> {
        self.shelf.read(key)
    }

    /// Takes away a record that was set aside, only at the maker's word, and gives back what undoes it.
    ///
    /// # Errors
    /// [`KeepError::Gone`] where `key` is that of no record that is set aside; where the shelf refuses.
    pub fn discard(&mut self, key: &str) -> Result<Discarded, KeepError> {
        if !self.list()?.set_aside.iter().any(|a| a.key == key) {
            return Err(KeepError::Gone);
        }
        let text = self.shelf.read(key)?.ok_or(KeepError::Gone)?;
        self.shelf.remove(key)?;
        Ok(Discarded { key: key.to_owned(), text })
    }

    /// Undoes [`Self::discard`].
    ///
    /// # Errors
    /// Where the shelf refuses.
    pub fn put_back(&mut self, discarded: &Discarded) -> Result<(), Refused> {
        // A key is given once: nothing else has come there meanwhile.
        self.shelf.write(&discarded.key, &discarded.text)
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
}

/// What is ticked in any of the newest states.
fn all_ticks(history: History) -> Ticks {
    let mut all = Ticks::default();
    for found in history.heads {
        if let Content::Ticks(ticks) = found.record.content {
            all.extend(ticks);
        }
    }
    all
}
