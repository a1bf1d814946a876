//! Shelves that fail, and shelves that several pages share.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use snugfold::keep::shelf::{MemoryShelf, Refused, Shelf};

/// What happens at the step at which a shelf fails.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// The page ends right before it: nothing is done from there on.
    EndsBefore,
    /// The page ends right after it: it is done, and nothing more.
    EndsAfter,
    /// The page ends in the middle: half of a text is written.
    EndsWithin,
    /// That one step is refused for lack of room, the next ones are not.
    Full,
    /// That one write keeps half of the text and says that all is well.
    Lies,
}

pub const FAULTS: [Fault; 5] = [Fault::EndsBefore, Fault::EndsAfter, Fault::EndsWithin, Fault::Full, Fault::Lies];

/// A shelf that fails at one step.
pub struct Failing {
    /// What it keeps.
    pub inner: MemoryShelf,
    fault: Fault,
    left: Cell<usize>,
    ended: Cell<bool>,
}

enum Now {
    Go,
    Fail,
}

impl Failing {
    /// Fails at the step after `steps` that go well.
    pub fn after(inner: MemoryShelf, steps: usize, fault: Fault) -> Self {
        Self { inner, fault, left: Cell::new(steps), ended: Cell::new(false) }
    }

    /// Whether it has failed.
    pub fn failed(&self) -> bool {
        self.left.get() == usize::MAX
    }

    /// Reading needs no room and writes no half texts.
    fn reading_step(&self) -> Result<(), Refused> {
        match self.fault {
            Fault::Full | Fault::Lies => Ok(()),
            _ => self.step().map(drop),
        }
    }

    fn step(&self) -> Result<Now, Refused> {
        if self.ended.get() {
            return Err(Refused::Forbidden);
        }
        match self.left.get() {
            usize::MAX => Ok(Now::Go),
            0 => {
                self.left.set(usize::MAX);
                self.ended.set(matches!(self.fault, Fault::EndsBefore | Fault::EndsAfter | Fault::EndsWithin));
                match self.fault {
                    Fault::EndsBefore => Err(Refused::Forbidden),
                    Fault::Full => Err(Refused::Full),
                    _ => Ok(Now::Fail),
                }
            }
            left => {
                self.left.set(left - 1);
                Ok(Now::Go)
            }
        }
    }
}

impl Shelf for Failing {
    fn read(&self, key: &str) -> Result<Option<String>, Refused> {
        self.reading_step()?;
        self.inner.read(key)
    }

    fn write(&mut self, key: &str, text: &str) -> Result<(), Refused> {
        let half = || text.chars().take(text.chars().count() / 2).collect::<String>();
        match (self.step()?, self.fault) {
            (Now::Fail, Fault::EndsWithin | Fault::Lies) => self.inner.write(key, &half()),
            _ => self.inner.write(key, text),
        }
    }

    fn remove(&mut self, key: &str) -> Result<(), Refused> {
        self.step()?;
        self.inner.remove(key)
    }

    fn keys(&self) -> Result<Vec<String>, Refused> {
        self.reading_step()?;
        self.inner.keys()
    }
}

/// A shelf that several pages have at once.
#[derive(Clone, Default)]
pub struct Shared(pub Rc<RefCell<MemoryShelf>>);

impl Shelf for Shared {
    fn read(&self, key: &str) -> Result<Option<String>, Refused> {
        self.0.borrow().read(key)
    }
    fn write(&mut self, key: &str, text: &str) -> Result<(), Refused> {
        self.0.borrow_mut().write(key, text)
    }
    fn remove(&mut self, key: &str) -> Result<(), Refused> {
        self.0.borrow_mut().remove(key)
    }
    fn keys(&self) -> Result<Vec<String>, Refused> {
        self.0.borrow().keys()
    }
}

/// A shelf that has room for so many bytes of text; how many can be changed from outside.
#[derive(Clone, Default)]
pub struct Narrow {
    pub inner: MemoryShelf,
    pub most: Rc<Cell<usize>>,
}

impl Narrow {
    /// No more room than what is kept takes, but for ways back, which go first where there is none.
    pub fn fill(&self) {
        self.most.set(self.used(|key| !key.starts_with("trail/")));
    }

    /// Room for whatever comes.
    pub fn make_room(&self) {
        self.most.set(usize::MAX);
    }

    fn used(&self, which: impl Fn(&str) -> bool) -> usize {
        self.inner.texts.iter().filter(|(key, _)| which(key)).map(|(_, text)| text.len()).sum()
    }
}

impl Shelf for Narrow {
    fn read(&self, key: &str) -> Result<Option<String>, Refused> {
        self.inner.read(key)
    }
    fn write(&mut self, key: &str, text: &str) -> Result<(), Refused> {
        if self.used(|other| other != key) + text.len() > self.most.get() {
            Err(Refused::Full)
        } else {
            self.inner.write(key, text)
        }
    }
    fn remove(&mut self, key: &str) -> Result<(), Refused> {
        self.inner.remove(key)
    }
    fn keys(&self) -> Result<Vec<String>, Refused> {
        self.inner.keys()
    }
}
