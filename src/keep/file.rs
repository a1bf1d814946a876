//! Designs as JSON text that a maker keeps as a file.
//!
//! ```json
//! { "snugfold": 1, "project": { … }, "ticks": [ "…" ], "saved_at": 1790000000000 }
//! { "snugfold": 1, "sets": [ { "project": { … }, "ticks": [ … ], "saved_at": … }, … ] }
//! ```
//!
//! The first is one set, the second a bundle of many. `ticks` are the keys of ticked steps, `saved_at` is in
//! milliseconds since 1970 (UTC); both may be left out. The project itself is described in `examples/README.md`; a file
//! that holds nothing but the project is read too, as version 1. Version 1 has the defaults of [`super::frozen`].

use std::fmt;

use serde_json::error::Category;

use crate::measure::slot::plain::Seen;
use crate::measure::slot::tree::Tree;
use crate::measure::slot::{Empty, Slot, Takes, reader};
use crate::places;
use crate::project::request::Project;
use crate::project::ticks::Ticks;

use super::frozen;
use super::limits::{self, Excess};

/// The version that is written.
pub const VERSION: u32 = 1;
/// The most bytes of a file: about a thousand sets. Whatever is in it then takes less than 64 MB to read.
pub const MOST_BYTES: usize = 2 * 1024 * 1024;
/// The most sets in a file.
pub const MOST_SETS: usize = 2_000;

/// One set with what is kept beside its design.
#[derive(Clone, Debug, PartialEq)]
pub struct Kept {
    /// The design.
    pub project: Project,
    /// The keys of ticked steps.
    pub ticks: Ticks,
    /// When it was saved, in milliseconds since 1970.
    pub saved_at: Option<u64>,
}

impl Kept {
    /// A design alone.
    #[must_use]
    pub fn new(project: Project) -> Self {
        Self { project, ticks: Ticks::default(), saved_at: None }
    }

    /// As it is written, after what is in `head`.
    fn under(&self, head: Tree) -> Tree {
        head.with("project", self.project.tree())
            .with("ticks", self.ticks.tree())
            .with("saved_at", self.saved_at.tree())
    }
}

/// The version, in front of everything that is written.
#[must_use]
pub fn version() -> Tree {
    Tree::Object(Vec::new()).with("snugfold", VERSION.tree())
}

/// Why a file cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileError {
    /// There is nothing in it.
    Empty,
    /// It has more bytes, or holds more sets, than is read.
    TooLarge,
    /// It is no UTF-8 text.
    NotText,
    /// It is text, but no JSON, from here on.
    NotJson {
        /// The line, from 1.
        line: usize,
    },
    /// It ends in the middle.
    Cut,
    /// It is JSON of something else.
    NotOurs,
    /// It has a version that is not known here.
    Newer {
        /// Its version.
        version: u64,
    },
    /// Something in it is not as it should be.
    Wrong {
        /// The line, from 1.
        line: usize,
        /// What it is.
        what: String,
    },
    /// A design in it is larger than any that is kept.
    Excess(Excess),
}

impl fmt::Display for FileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("This file is empty: choose another"),
            Self::TooLarge => write!(
                f,
                "This file is larger than {} MB or {MOST_SETS} sets, which is the most that is read: save the sets in parts",
                MOST_BYTES >> 20
            ),
            Self::NotText => f.write_str("This is no text file: choose one that Snugfold has saved"),
            Self::NotJson { line } => {
                write!(f, "This file cannot be read from line {line} on: choose one that Snugfold has saved")
            }
            Self::Cut => f.write_str("This file ends in the middle: save or fetch it again"),
            Self::NotOurs => f.write_str("This file holds no gift set: choose one that Snugfold has saved"),
            Self::Newer { version } => {
                write!(
                    f,
                    "This file is from a newer Snugfold (its version is {version}, this page knows {VERSION}): load this page anew while online, then open it again"
                )
            }
            Self::Wrong { line, what } => {
                write!(f, "Line {line} of this file is not as it should be: {what}")
            }
            Self::Excess(excess) => write!(f, "A set in this file is too large: {excess}"),
        }
    }
}

impl std::error::Error for FileError {}

/// What is in a file, before it is read as what it says it is.
#[derive(Default)]
struct Head {
    snugfold: Option<u64>,
    project: Seen,
    sets: Seen,
    boxes: Seen,
    cards: Seen,
}

places!(Head, SomeOf, Self::default(), must {}, may { snugfold, project, sets, boxes, cards });

/// A set as it is read: by itself with the version, and, where it is a record that was saved as a file, with the records
/// it came after.
#[derive(Default)]
struct OneRead {
    snugfold: u32,
    after: Seen,
    project: Project,
    ticks: Vec<String>,
    saved_at: Option<u64>,
}

places!(OneRead, Object, Self::default(), must { snugfold, project }, may { after, ticks, saved_at });

/// A set as it is read in a bundle.
#[derive(Default)]
struct RowRead {
    project: Project,
    ticks: Vec<String>,
    saved_at: Option<u64>,
}

places!(RowRead, Object, Self::default(), must { project }, may { ticks, saved_at });

/// As many as are read, and one more, so that too many can be told.
#[derive(Default)]
struct Rows(Vec<RowRead>);

impl Slot for Rows {
    fn takes(&self) -> Takes {
        Takes::List
    }
    fn expects(&self) -> &'static str {
        "a list of sets"
    }
    fn item(&mut self) -> Option<&mut dyn Slot> {
        if self.0.len() > MOST_SETS { None } else { self.0.item() }
    }
    fn drop_item(&mut self) {
        self.0.drop_item();
    }
}

impl Empty for Rows {
    fn empty() -> Self {
        Self::default()
    }
}

#[derive(Default)]
struct BundleRead {
    snugfold: u32,
    sets: Rows,
}

places!(BundleRead, Object, Self::default(), must { snugfold, sets }, may {});

impl From<OneRead> for Kept {
    fn from(one: OneRead) -> Self {
        let OneRead { project, ticks, saved_at, .. } = one;
        Self { project, ticks: ticks.into_iter().collect(), saved_at }
    }
}

impl From<RowRead> for Kept {
    fn from(RowRead { project, ticks, saved_at }: RowRead) -> Self {
        Self { project, ticks: ticks.into_iter().collect(), saved_at }
    }
}

/// The text of a file with one set.
#[must_use]
pub fn write(kept: &Kept) -> String {
    kept.under(version()).text() + "\n"
}

/// The texts of files with all of `sets`: one, or more where one would be too large to be read.
#[must_use]
pub fn write_all(sets: &[Kept]) -> Vec<String> {
    let rows = sets.iter().map(|kept| kept.under(Tree::Object(Vec::new()))).collect();
    let file = version().with("sets", Tree::List(rows)).text() + "\n";
    let (low, high) = sets.split_at(sets.len() / 2);
    if (file.len() <= MOST_BYTES && sets.len() <= MOST_SETS) || low.is_empty() {
        return vec![file];
    }
    [write_all(low), write_all(high)].concat()
}

/// Reads a file: one set, a bundle of sets, or a bare project. Takes any bytes; the work is bounded by their number.
///
/// # Errors
/// What is wrong with the file, in words for the maker.
///
/// ```
/// use snugfold::{keep::file::{self, Kept}, project::example::example};
/// let kept = Kept::new(example().unwrap());
/// assert_eq!(file::read(file::write(&kept).as_bytes()), Ok(vec![kept]));
/// ```
pub fn read(bytes: &[u8]) -> Result<Vec<Kept>, FileError> {
    if bytes.len() > MOST_BYTES {
        return Err(FileError::TooLarge);
    }
    let text = std::str::from_utf8(bytes).map_err(|_| FileError::NotText)?;
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.trim().is_empty() {
        return Err(FileError::Empty);
    }
    let head: Head = reader::read(text).map_err(|e| match e.classify() {
        Category::Data => FileError::NotOurs,
        _ => wrong(&e),
    })?;
    let mut sets = match head.snugfold {
        Some(version) if version > u64::from(VERSION) => return Err(FileError::Newer { version }),
        Some(1) if head.sets.0 => {
            let bundle: BundleRead = reader::read(text).map_err(|e| wrong(&e))?;
            bundle.sets.0.into_iter().map(Kept::from).collect()
        }
        Some(1) if head.project.0 => {
            vec![reader::read::<OneRead>(text).map_err(|e| wrong(&e))?.into()]
        }
        None if head.boxes.0 || head.cards.0 => {
            vec![Kept::new(reader::read(text).map_err(|e| wrong(&e))?)]
        }
        _ => return Err(FileError::NotOurs),
    };
    if sets.len() > MOST_SETS {
        return Err(FileError::TooLarge);
    }
    for kept in &mut sets {
        check(kept).map_err(FileError::Excess)?;
        frozen::fill(&mut kept.project);
    }
    Ok(sets)
}

/// Reads a file that holds one set.
///
/// # Errors
/// As [`read`]; [`FileError::NotOurs`] for any other number of sets.
pub fn read_one(bytes: &[u8]) -> Result<Kept, FileError> {
    let mut sets = read(bytes)?;
    match (sets.pop(), sets.is_empty()) {
        (Some(kept), true) => Ok(kept),
        _ => Err(FileError::NotOurs),
    }
}

/// Holds a set against the limits.
fn check(kept: &Kept) -> Result<(), Excess> {
    limits::check(&kept.project)?;
    check_ticks(&kept.ticks)
}

/// Holds ticks against the limits.
pub(super) fn check_ticks(ticks: &Ticks) -> Result<(), Excess> {
    limits::number("ticked steps", ticks.len(), limits::TICKS)?;
    ticks.iter().try_for_each(|key| limits::text("the key of a ticked step", key, limits::WORD))
}

fn wrong(error: &serde_json::Error) -> FileError {
    let line = error.line();
    match error.classify() {
        Category::Eof => FileError::Cut,
        Category::Syntax | Category::Io => FileError::NotJson { line },
        Category::Data => {
            let text = error.to_string();
            // The line is said by us.
            let what = text.rsplit_once(" at line ").map_or(text.as_str(), |(what, _)| what);
            FileError::Wrong { line, what: what.chars().take(limits::NAME).collect() }
        }
    }
}
