//! Records: one saved state of a set or of its ticks, under a key that nothing else is ever written to.
//!
//! The key says whose it is and which state: `set/1790000000000/12-0badcafe` is the twelfth state of that set, written
//! by the page that calls itself `0badcafe`. The text is that of a file ([`super::file`]) with one more field: `after`
//! lists the states that this one takes the place of.

use std::fmt;

use crate::measure::slot::tree::Tree;
use crate::measure::slot::{Slot, reader};
use crate::places;
use crate::project::request::Project;
use crate::project::ticks::Ticks;

use super::file::{self, FileError};

/// The number of a saved set: when it was made, in milliseconds since 1970, or a little later where two were made at
/// once. It stays with the set and is not given again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SetId(pub u64);

/// What is kept in a record.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// A design.
    Set,
    /// The ticked steps of a design, apart from it, so that saving one does not touch the other.
    Ticks,
}

/// One state of a record: a number that grows, and the page that wrote it, so that two pages never write to one key.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct State {
    /// One more than that of any state before.
    pub revision: u64,
    /// What the page calls itself.
    pub writer: u32,
}

/// Where a record is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Key {
    /// What it holds.
    pub kind: Kind,
    /// The set it belongs to.
    pub id: SetId,
    /// Which state it is.
    pub state: State,
}

impl Kind {
    const fn word(self) -> &'static str {
        match self {
            Self::Set => "set",
            Self::Ticks => "ticks",
        }
    }

    /// What the key of such a record begins with.
    #[must_use]
    pub fn of_key(key: &str) -> Option<Self> {
        let word = key.split_once('/')?.0;
        [Self::Set, Self::Ticks].into_iter().find(|k| k.word() == word)
    }
}

impl fmt::Display for State {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{:08x}", self.revision, self.writer)
    }
}

impl State {
    /// Reads what is shown.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let (revision, writer) = text.split_once('-')?;
        let state = Self { revision: revision.parse().ok()?, writer: u32::from_str_radix(writer, 16).ok()? };
        (state.to_string() == text).then_some(state)
    }
}

impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}/{}/{}", self.kind.word(), self.id.0, self.state)
    }
}

impl Key {
    /// Reads what is shown.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let kind = Kind::of_key(text)?;
        let (id, state) = text.split_once('/')?.1.split_once('/')?;
        let key = Self { kind, id: SetId(id.parse().ok()?), state: State::read(state)? };
        (key.to_string() == text).then_some(key)
    }
}

/// What a record holds.
#[derive(Clone, Debug, PartialEq)]
pub enum Content {
    /// A design.
    Set(Box<Project>),
    /// The keys of ticked steps.
    Ticks(Ticks),
}

/// A record that can be read.
#[derive(Clone, Debug, PartialEq)]
pub struct Record {
    /// The states that it takes the place of.
    pub after: Vec<State>,
    /// When it was saved, in milliseconds since 1970.
    pub saved_at: u64,
    /// What it holds.
    pub content: Content,
}

/// What a record says beside what it holds.
#[derive(Default)]
struct Beside {
    after: Vec<String>,
    saved_at: u64,
}

places!(Beside, SomeOf, Self::default(), must { after, saved_at }, may {});

#[derive(Default)]
struct TicksAlone {
    snugfold: u64,
    after: Vec<String>,
    saved_at: u64,
    ticks: Vec<String>,
}

places!(TicksAlone, Object, Self::default(), must { snugfold, after, saved_at, ticks }, may {});

impl Record {
    /// Its text.
    #[must_use]
    pub fn text(&self) -> String {
        let (name, content) = match &self.content {
            Content::Set(project) => ("project", project.tree()),
            // Even where there is none: that all were taken off is news.
            Content::Ticks(ticks) => ("ticks", Tree::List(ticks.iter().map(Slot::tree).collect())),
        };
        let after: Vec<String> = self.after.iter().map(State::to_string).collect();
        let head = file::version().with("after", after.tree()).with("saved_at", self.saved_at.tree());
        head.with(name, content).text()
    }

    /// Reads the text of a record of `kind`.
    ///
    /// # Errors
    /// What is wrong with it, in words for the maker.
    pub fn read(kind: Kind, text: &str) -> Result<Self, FileError> {
        let data = |e: serde_json::Error| FileError::Wrong { line: e.line(), what: e.to_string() };
        let (after, saved_at, content) = match kind {
            Kind::Set => {
                let project = file::read_one(text.as_bytes())?.project;
                let beside: Beside = reader::read(text).map_err(data)?;
                (beside.after, beside.saved_at, Content::Set(Box::new(project)))
            }
            Kind::Ticks => {
                let alone: TicksAlone = reader::read(text).map_err(data)?;
                let ticks: Ticks = alone.ticks.into_iter().collect();
                if alone.snugfold != u64::from(file::VERSION) {
                    return Err(FileError::Newer { version: alone.snugfold });
                }
                file::check_ticks(&ticks).map_err(FileError::Excess)?;
                (alone.after, alone.saved_at, Content::Ticks(ticks))
            }
        };
        let after = after.iter().map(|s| State::read(s)).collect::<Option<_>>();
        let what = || "it does not say which state it came after".to_owned();
        let after = after.ok_or_else(|| FileError::Wrong { line: 1, what: what() })?;
        Ok(Self { after, saved_at, content })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::example::example;

    #[test]
    fn keys_come_back_and_others_are_none() {
        let state = State { revision: 12, writer: 0x0bad_cafe };
        let key = Key { kind: Kind::Ticks, id: SetId(7), state };
        assert_eq!(key.to_string(), "ticks/7/12-0badcafe");
        assert_eq!(Key::read("ticks/7/12-0badcafe"), Some(key));
        for other in
            ["", "set", "set/", "set/7", "set/07/1-00000000", "set/7/1", "set/7/+1-00000000", "sets/7/1-00000000"]
        {
            assert_eq!(Key::read(other), None, "{other}");
        }
    }

    #[test]
    fn records_come_back_and_are_files() {
        let project = example().expect("the example is a project");
        let after = vec![State { revision: 1, writer: 2 }];
        let set = Record { after: after.clone(), saved_at: 5, content: Content::Set(Box::new(project.clone())) };
        assert_eq!(Record::read(Kind::Set, &set.text()).as_ref(), Ok(&set));
        let read = file::read(set.text().as_bytes()).expect("a record is a file");
        assert_eq!((&read[0].project, read[0].saved_at), (&project, Some(5)));
        let ticks = Record { after, saved_at: 5, content: Content::Ticks(["a".to_owned()].into_iter().collect()) };
        assert_eq!(Record::read(Kind::Ticks, &ticks.text()).as_ref(), Ok(&ticks));
        assert!(Record::read(Kind::Set, &ticks.text()).is_err());
        assert!(Record::read(Kind::Ticks, &set.text()).is_err());
    }
}
