//! Records: one saved state of a set or of its ticks, under a key that nothing else is ever written to.
//!
//! The key says whose it is and which state: `set/1790000000000/12-0badcafe` is the twelfth state of that set, written
//! by the page that calls itself `0badcafe`. The text is that of a file ([`super::file`]) with one more field: `after`
//! lists the states that this one takes the place of.

use std::fmt;

use serde::de::IgnoredAny;
use serde::{Deserialize, Serialize};

use crate::measure::json;
use crate::measure::json::value::list;
use crate::project::request::Project;
use crate::project::ticks::Ticks;

use super::file::{self, FileError};
use super::{frozen, limits};

/// The number of a saved set: when it was made, in milliseconds since 1970, or a little later where two were made at
/// once. It stays with the set and is not given again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SetId(pub u64);

/// Where a record says that it came after something else.
const NO_STATE: &str = "it does not say which state it came after";

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

/// A record as it is written.
#[derive(Serialize)]
struct Written<'a> {
    snugfold: u32,
    after: Vec<String>,
    saved_at: u64,
    #[serde(skip_serializing_if = "Option::is_none")]
    project: Option<&'a Project>,
    /// Even where there is none: that all were taken off is news.
    #[serde(skip_serializing_if = "Option::is_none")]
    ticks: Option<&'a Ticks>,
}

/// A design as it is read.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SetRead {
    snugfold: u64,
    #[serde(deserialize_with = "list")]
    after: Vec<String>,
    saved_at: u64,
    project: Project,
    #[serde(default, rename = "ticks")]
    _ticks: IgnoredAny,
}

/// Ticks as they are read.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TicksRead {
    snugfold: u64,
    #[serde(deserialize_with = "list")]
    after: Vec<String>,
    saved_at: u64,
    ticks: Ticks,
}

impl Record {
    /// Its text.
    #[must_use]
    pub fn text(&self) -> String {
        let (project, ticks) = match &self.content {
            Content::Set(project) => (Some(&**project), None),
            Content::Ticks(ticks) => (None, Some(ticks)),
        };
        let after = self.after.iter().map(State::to_string).collect();
        let written = Written { snugfold: file::VERSION, after, saved_at: self.saved_at, project, ticks };
        // Plain data: there is nothing in it that JSON lacks.
        serde_json::to_string(&written).unwrap_or_default()
    }

    /// Reads the text of a record of `kind`.
    ///
    /// # Errors
    /// What is wrong with it, in words for the maker.
    pub fn read(kind: Kind, text: &str) -> Result<Self, FileError> {
        match kind {
            Kind::Set => Self::read_set(text),
            Kind::Ticks => Self::read_ticks(text),
        }
    }

    fn read_set(text: &str) -> Result<Self, FileError> {
        let read = json::read::<SetRead>(text);
        let Ok(SetRead { snugfold: 1, after, saved_at, mut project, .. }) = read else {
            // Whatever else may be wrong is told as with a file; what no file needs is told last.
            file::read_one(text.as_bytes())?;
            return Err(read.map_or_else(FileError::from, |_| FileError::NotOurs));
        };
        limits::check(&project).map_err(FileError::Excess)?;
        frozen::fill(&mut project);
        Ok(Self { after: states(&after)?, saved_at, content: Content::Set(Box::new(project)) })
    }

    fn read_ticks(text: &str) -> Result<Self, FileError> {
        let TicksRead { snugfold, after, saved_at, ticks } = json::read(text)?;
        if snugfold != u64::from(file::VERSION) {
            return Err(FileError::Newer { version: snugfold });
        }
        file::check_ticks(&ticks).map_err(FileError::Excess)?;
        Ok(Self { after: states(&after)?, saved_at, content: Content::Ticks(ticks) })
    }
}

/// The states that a record came after.
fn states(after: &[String]) -> Result<Vec<State>, FileError> {
    let states = after.iter().map(|s| State::read(s)).collect::<Option<_>>();
    states.ok_or_else(|| FileError::Wrong { line: 1, way: Vec::new(), said: NO_STATE.to_owned() })
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
