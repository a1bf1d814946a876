//! `Bringing`: the sets of a file, saved one by one beside those that are here, so that many do not hold up the page.

use std::collections::{BTreeMap, BTreeSet};

use crate::keep::file::{self, Kept};
use crate::keep::history::{self, History};
use crate::keep::limits;
use crate::keep::record::{Content, Kind, SetId};
use crate::keep::shelf::{Refused, Shelf};
use crate::project::request::Project;

use super::said::KeepError;
use super::{Notebook, set};

/// A day, in milliseconds: clocks of two devices may be so far apart.
const DAY: u64 = 24 * 3_600_000;

/// What is known while sets are brought in.
#[derive(Clone, Debug, Default)]
pub struct Bringing {
    /// The sets that are here, by their names.
    here: BTreeMap<String, Vec<(SetId, Project)>>,
    /// Every number that a record has.
    taken: BTreeSet<SetId>,
    /// The sets of the file as far as they are here now, in its order.
    pub ids: Vec<SetId>,
    /// How many of them were here before, just as they are in the file.
    pub known: usize,
}

impl Bringing {
    /// A number that no record has.
    fn free(&mut self, now: u64) -> SetId {
        let mut id = SetId(now);
        while !self.taken.insert(id) {
            id = SetId(id.0.wrapping_add(1));
        }
        id
    }
}

impl<S: Shelf> Notebook<S> {
    /// Looks what is here, before sets are brought in.
    ///
    /// # Errors
    /// Where the shelf cannot be read.
    pub fn begin_bringing(&self) -> Result<Bringing, Refused> {
        let mut bringing = Bringing::default();
        bringing.taken.extend(history::keys(&self.shelf)?.0.into_iter().map(|key| key.id));
        for entry in self.list()?.entries {
            bringing.here.entry(entry.name).or_default().push((entry.id, entry.project));
        }
        Ok(bringing)
    }

    /// Saves one set of a file. One that is here already just as it is in the file is not saved again; any other is
    /// kept beside what is here. A date that has not come yet is that of now.
    ///
    /// # Errors
    /// Where it is too large or the shelf refuses; those before it are saved.
    pub fn bring(&mut self, bringing: &mut Bringing, kept: &Kept, now: u64) -> Result<(), KeepError> {
        let same = bringing.here.get(&kept.project.name).and_then(|all| all.iter().find(|(_, p)| *p == kept.project));
        if let Some((id, _)) = same {
            bringing.ids.push(*id);
            bringing.known += 1;
            return Ok(());
        }
        limits::check(&kept.project).map_err(KeepError::Excess)?;
        file::check_ticks(&kept.ticks).map_err(KeepError::Excess)?;
        let id = bringing.free(now);
        let saved_at = kept.saved_at.filter(|at| *at <= now.saturating_add(DAY)).unwrap_or(now);
        let nothing = History::default();
        self.write(&nothing, Kind::Set, id, &[], saved_at, set(&kept.project))?;
        // From here on it is here, whatever becomes of its ticks.
        bringing.ids.push(id);
        if !kept.ticks.is_empty() {
            self.write(&nothing, Kind::Ticks, id, &[], now, Content::Ticks(kept.ticks.clone()))?;
        }
        Ok(())
    }

    /// Saves sets from a file, all at once.
    ///
    /// # Errors
    /// As [`Self::bring`].
    pub fn bring_in(&mut self, sets: &[Kept], now: u64) -> Result<Vec<SetId>, KeepError> {
        let mut bringing = self.begin_bringing()?;
        for kept in sets {
            self.bring(&mut bringing, kept, now)?;
        }
        Ok(bringing.ids)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::keep::shelf::MemoryShelf;
    use crate::project::example::example;

    fn kept(name: &str, saved_at: u64) -> Kept {
        let project = Project { name: name.to_owned(), ..example().expect("there is one") };
        Kept { saved_at: Some(saved_at), ..Kept::new(project) }
    }

    #[test]
    fn what_is_here_already_is_not_saved_again() {
        let mut book = Notebook::new(MemoryShelf::default(), 1);
        let first = book.bring_in(&[kept("a", 5), kept("b", 6)], 100).expect("memory keeps it");
        let mut bringing = book.begin_bringing().expect("memory can be read");
        for set in [kept("b", 9), kept("c", 9), kept("c", 9)] {
            book.bring(&mut bringing, &set, 100).expect("memory keeps it");
        }
        assert_eq!((bringing.ids[0], bringing.known), (first[1], 1));
        assert_eq!(book.list().map(|l| l.entries.len()), Ok(4), "what stands in a file twice is two sets");
    }

    #[test]
    fn a_date_that_has_not_come_is_that_of_now() {
        let now = 1_790_000_000_000;
        let mut book = Notebook::new(MemoryShelf::default(), 1);
        book.bring_in(&[kept("old", 7), kept("far", u64::MAX), kept("ahead", now + DAY)], now)
            .expect("memory keeps it");
        let dates = |name: &str| {
            let entries = book.list().expect("memory can be read").entries;
            entries.iter().find(|e| e.name == name).map(|e| e.saved_at)
        };
        assert_eq!([dates("old"), dates("far"), dates("ahead")], [Some(7), Some(now), Some(now + DAY)]);
    }
}
