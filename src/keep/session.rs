//! `Session`: what one window works on: which saved set is open, what of the work is saved, and what waits for room.
//!
//! Work that could not be saved is never let go of: when another design is taken to hand it waits here, is tried again,
//! and can be taken up again.
//!
//! ```
//! use snugfold::{keep::{notebook::Notebook, session::{Session, Work}, shelf::MemoryShelf}, project::example::example};
//! let mut session = Session::new(Notebook::new(MemoryShelf::default(), 1));
//! let mut work = Work { project: example().unwrap(), ..Work::default() };
//! session.save(&mut work, 1).unwrap();
//! work.project.sets = 12;
//! assert!(!session.is_saved(&work.project, &work.ticks));
//! session.save(&mut work, 2).unwrap();
//! assert!(session.is_saved(&work.project, &work.ticks));
//! ```

use super::file::Kept;
use super::notebook::Notebook;
use super::notebook::said::{Deleted, KeepError, Open, Saved};
use super::record::SetId;
use super::shelf::{Refused, Shelf};
use super::trail::Trail;
use crate::project::request::Project;
use crate::project::ticks::Ticks;

/// What is worked on: a design, its ticked steps, and the way back.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Work {
    /// The design.
    pub project: Project,
    /// The keys of ticked steps.
    pub ticks: Ticks,
    /// What was before it.
    pub trail: Trail,
}

/// Work that could not be saved before another design was taken to hand.
#[derive(Clone, Debug)]
struct Waiting {
    /// Tells it from others.
    number: u32,
    /// The set that it belongs to; none where it was never saved.
    open: Option<Open>,
    work: Work,
}

/// What one window works on.
#[derive(Clone, Debug)]
pub struct Session<S> {
    notebook: Notebook<S>,
    open: Option<Open>,
    /// The design and the ticks as they were saved or opened last.
    saved: (Option<Project>, Option<Ticks>),
    waiting: Vec<Waiting>,
    /// How many have waited.
    count: u32,
}

impl<S: Shelf> Session<S> {
    /// Nothing is open yet.
    pub const fn new(notebook: Notebook<S>) -> Self {
        Self { notebook, open: None, saved: (None, None), waiting: Vec::new(), count: 0 }
    }

    /// The saved sets.
    pub const fn notebook(&self) -> &Notebook<S> {
        &self.notebook
    }

    /// The saved sets, to be worked on without being opened.
    pub const fn notebook_mut(&mut self) -> &mut Notebook<S> {
        &mut self.notebook
    }

    /// The set that is open.
    #[must_use]
    pub fn current(&self) -> Option<SetId> {
        self.open.map(|open| open.id)
    }

    /// Whether all of this is saved, or need not be.
    #[must_use]
    pub fn is_saved(&self, project: &Project, ticks: &Ticks) -> bool {
        self.saved.0.as_ref() == Some(project) && self.saved.1.as_ref() == Some(ticks)
    }

    /// Nobody has worked on this yet: it need not be saved.
    pub fn leave_unsaved(&mut self, project: &Project, ticks: &Ticks) {
        self.saved = (Some(project.clone()), Some(ticks.clone()));
    }

    /// Saves what is not saved yet: to the set that is open, or to a new one that is open from now on. Where another
    /// window had saved the set meanwhile the work becomes a set of its own, and has its name from then on.
    ///
    /// # Errors
    /// Where it is too large or the shelf refuses; what was saved before is then as it was, and it is not saved.
    pub fn save(&mut self, work: &mut Work, now: u64) -> Result<Saved, KeepError> {
        let mut went = Saved::Here;
        if self.saved.0.as_ref() != Some(&work.project) {
            let mut open = self.open;
            went = write(&mut self.notebook, &mut open, work, now)?;
            self.open = open;
            self.saved.0 = Some(work.project.clone());
        }
        if self.saved.1.as_ref() != Some(&work.ticks) {
            if let Some(open) = self.open {
                self.notebook.save_ticks(open.id, &work.ticks, now)?;
            }
            self.saved.1 = Some(work.ticks.clone());
        }
        Ok(went)
    }

    /// Opens a set, with the work that waits for it where there is some. What was worked on before is saved, or waits
    /// from now on as `leaving`.
    ///
    /// # Errors
    /// Where it is not here, cannot be read, or the shelf refuses; the one that was open stays open.
    pub fn open(&mut self, id: SetId, leaving: Option<Work>, now: u64) -> Result<Work, KeepError> {
        let left = leaving.map(|work| self.set_down(work));
        let opened = self.look_up(id, now);
        if let (Err(_), Some(number)) = (&opened, left) {
            self.take_back(number);
        }
        opened
    }

    fn look_up(&mut self, id: SetId, now: u64) -> Result<Work, KeepError> {
        let waits = self.waiting.iter().find(|w| w.open.is_some_and(|open| open.id == id)).map(|w| w.number);
        if let Some(work) = waits.and_then(|number| self.take_back(number)) {
            return Ok(work);
        }
        let opened = self.notebook.open(id, now)?;
        self.open = Some(opened.open);
        self.saved = (Some(opened.project.clone()), Some(opened.ticks.clone()));
        let trail = self.notebook.trail(id, &opened.project);
        Ok(Work { project: opened.project, ticks: opened.ticks, trail })
    }

    /// Leaves the set that is open: what is saved next is a new set. What was worked on before is saved, or waits from
    /// now on as `leaving`.
    pub fn start(&mut self, leaving: Option<Work>) {
        if let Some(work) = leaving {
            self.set_down(work);
        }
        (self.open, self.saved) = (None, (None, None));
    }

    fn set_down(&mut self, work: Work) -> u32 {
        self.count = self.count.wrapping_add(1);
        self.waiting.push(Waiting { number: self.count, open: self.open.take(), work });
        self.count
    }

    /// What waits, by number and name.
    #[must_use]
    pub fn waiting(&self) -> Vec<(u32, String)> {
        self.waiting.iter().map(|w| (w.number, w.work.project.name.clone())).collect()
    }

    /// Tries to save what waits; how much of it was.
    pub fn try_waiting(&mut self, now: u64) -> usize {
        let before = self.waiting.len();
        for mut waiting in std::mem::take(&mut self.waiting) {
            let saved = write(&mut self.notebook, &mut waiting.open, &mut waiting.work, now).and_then(|_| {
                let ticks = |open: Open| self.notebook.save_ticks(open.id, &waiting.work.ticks, now);
                waiting.open.map_or(Ok(()), ticks)
            });
            if saved.is_err() {
                self.waiting.push(waiting);
            }
        }
        // What is open on the screen stays the one to be opened next time.
        if let Some(id) = self.current() {
            self.notebook.remember(id);
        }
        before - self.waiting.len()
    }

    /// Takes up what waits, by its number. What was worked on before is saved, or waits from now on as `leaving`.
    pub fn take_up(&mut self, number: u32, leaving: Option<Work>) -> Option<Work> {
        if !self.waiting.iter().any(|w| w.number == number) {
            return None;
        }
        self.start(leaving);
        self.take_back(number)
    }

    fn take_back(&mut self, number: u32) -> Option<Work> {
        let at = self.waiting.iter().position(|w| w.number == number)?;
        let waiting = self.waiting.remove(at);
        self.open = waiting.open;
        self.saved = (None, None);
        Some(waiting.work)
    }

    /// Gives a set another name. Where it is the one that is open, the design on the screen must get it too.
    ///
    /// # Errors
    /// As [`Notebook::rename`].
    pub fn rename(&mut self, id: SetId, name: &str, now: u64) -> Result<(), KeepError> {
        let open = self.notebook.rename(id, name, now)?;
        if self.current() == Some(id) {
            self.open = Some(open);
        }
        for waiting in self.waiting.iter_mut().filter(|w| w.open.is_some_and(|open| open.id == id)) {
            waiting.open = Some(open);
            name.clone_into(&mut waiting.work.project.name);
        }
        Ok(())
    }

    /// Deletes a set, with the work that waits for it, and gives back what undoes it. Where it is open, with `work` on
    /// the screen, that is not saved again until it is changed; what is saved then is a new set.
    ///
    /// # Errors
    /// As [`Notebook::delete`].
    pub fn delete(&mut self, id: SetId, work: &Work) -> Result<Deleted, KeepError> {
        let mut deleted = self.notebook.delete(id)?;
        let mut newest = |work: &Work| {
            (deleted.kept.project, deleted.kept.ticks) = (work.project.clone(), work.ticks.clone());
        };
        self.waiting.retain(|w| {
            let of_it = w.open.is_some_and(|open| open.id == id);
            if of_it {
                newest(&w.work);
            }
            !of_it
        });
        if self.current() == Some(id) {
            newest(work);
            self.open = None;
            self.leave_unsaved(&work.project, &work.ticks);
        }
        Ok(deleted)
    }

    /// Everything that is saved, and beside it what waits and, where it is not saved, the `work` on the screen: for a
    /// file or a few.
    ///
    /// # Errors
    /// Where the shelf cannot be read.
    pub fn all(&self, work: &Work) -> Result<Vec<Kept>, Refused> {
        let mut all = self.notebook.all()?;
        let on_screen = (!self.is_saved(&work.project, &work.ticks)).then_some(work);
        for work in self.waiting.iter().map(|w| &w.work).chain(on_screen) {
            all.push(Kept { project: work.project.clone(), ticks: work.ticks.clone(), saved_at: None });
        }
        Ok(all)
    }
}

/// Saves a design with its way back to the set that is open, or to a new one that is open from now on.
fn write<S: Shelf>(
    notebook: &mut Notebook<S>,
    open: &mut Option<Open>,
    work: &mut Work,
    now: u64,
) -> Result<Saved, KeepError> {
    let went = match open {
        Some(open) => notebook.save(open, &work.project, now)?,
        None => {
            *open = Some(notebook.create(&work.project, now)?);
            Saved::Here
        }
    };
    if let Saved::AsCopyOf(_) = went {
        work.call_as_copy();
    }
    if let Some(open) = open {
        notebook.save_trail(open.id, &work.project, &work.trail);
    }
    Ok(went)
}

impl Work {
    /// Gives it the name that it was saved under as a copy, and its way back too, so that no step back takes it away.
    fn call_as_copy(&mut self) {
        let name = super::notebook::other_copy(&self.project.name);
        self.trail.rename(&self.project.name, &name);
        self.project.name = name;
    }
}
