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
use std::ops::Range;

use serde::de::IgnoredAny;
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

use crate::measure::json::value::list;
use crate::measure::json::{self, Step, Wrong};
use crate::project::request::{Entry, Part, Project};
use crate::project::ticks::Ticks;
use crate::say::files;

use super::frozen;
use super::limits::{self, Excess};

/// The version that is written.
pub const VERSION: u32 = 1;
/// The most bytes of a file that is read: what earlier builds wrote has up to so many.
pub const MOST_BYTES: usize = 4 * 1024 * 1024;
/// The most bytes of a file that is written: about a thousand sets.
pub const MOST_WRITTEN: usize = 2 * 1024 * 1024;
/// The most sets in a file.
pub const MOST_SETS: usize = 2_000;
/// The most memory that the sets of one file take, roughly: three times that of any file that was saved.
const MOST_MEMORY: usize = 40 << 20;

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

    fn written(&self, snugfold: Option<u32>) -> Written<'_> {
        Written { snugfold, project: &self.project, ticks: &self.ticks, saved_at: self.saved_at }
    }
}

/// A set as it is written: by itself with the version.
#[derive(Serialize)]
struct Written<'a> {
    #[serde(skip_serializing_if = "Option::is_none")]
    snugfold: Option<u32>,
    project: &'a Project,
    #[serde(skip_serializing_if = "Ticks::is_empty")]
    ticks: &'a Ticks,
    #[serde(skip_serializing_if = "Option::is_none")]
    saved_at: Option<u64>,
}

#[derive(Serialize)]
struct WrittenBundle<'a> {
    snugfold: u32,
    sets: Vec<Written<'a>>,
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
        /// The way to what is wrong.
        way: Vec<Step>,
        /// What the reader of JSON says of it, or a rule of our own.
        said: String,
    },
    /// A design in it is larger than any that is kept.
    Excess(Excess),
}

impl fmt::Display for FileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str(files::EMPTY),
            Self::TooLarge => f.write_str(&files::too_large(MOST_BYTES >> 20, MOST_SETS)),
            Self::NotText => f.write_str(files::NOT_TEXT),
            Self::NotJson { line } => f.write_str(&files::not_json(*line)),
            Self::Cut => f.write_str(files::CUT),
            Self::NotOurs => f.write_str(files::NOT_OURS),
            Self::Newer { version } => f.write_str(&files::newer(*version, VERSION)),
            Self::Wrong { line, way, said } => {
                f.write_str(&files::wrong(*line, &files::place(way), &files::fault(said)))
            }
            Self::Excess(excess) => write!(f, "A set in this file is too large: {excess}"),
        }
    }
}

impl std::error::Error for FileError {}

impl From<Wrong> for FileError {
    fn from(Wrong { kind, line, way, said }: Wrong) -> Self {
        match kind {
            json::Kind::Cut => Self::Cut,
            json::Kind::Syntax => Self::NotJson { line },
            json::Kind::Value => Self::Wrong { line, way, said },
        }
    }
}

/// What is in a file, before it is read as what it says it is.
#[derive(Default, Deserialize)]
#[serde(default)]
struct Head {
    snugfold: Option<u64>,
    project: Option<IgnoredAny>,
    sets: Option<IgnoredAny>,
    boxes: Option<IgnoredAny>,
    cards: Option<IgnoredAny>,
}

/// A set as it is read: by itself with the version, and, where it is a record that was saved as a file, with the records
/// it came after.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct OneRead {
    #[serde(rename = "snugfold")]
    _snugfold: u32,
    #[serde(default, rename = "after")]
    _after: IgnoredAny,
    project: Project,
    #[serde(default)]
    ticks: Ticks,
    saved_at: Option<u64>,
}

/// A set as it is read in a bundle.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RowRead {
    project: Project,
    #[serde(default)]
    ticks: Ticks,
    saved_at: Option<u64>,
}

/// A bundle, its sets not read yet.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct BundleRead<'a> {
    #[serde(rename = "snugfold")]
    _snugfold: u32,
    #[serde(borrow, deserialize_with = "list")]
    sets: Vec<&'a RawValue>,
}

/// The text of a file with one set.
#[must_use]
pub fn write(kept: &Kept) -> String {
    text(&kept.written(Some(VERSION)))
}

/// The texts of files with all of `sets`: one, or more where one would be large.
#[must_use]
pub fn write_all(sets: &[Kept]) -> Vec<String> {
    let file = text(&WrittenBundle { snugfold: VERSION, sets: sets.iter().map(|kept| kept.written(None)).collect() });
    let (low, high) = sets.split_at(sets.len() / 2);
    if (file.len() <= MOST_WRITTEN && sets.len() <= MOST_SETS) || low.is_empty() {
        return vec![file];
    }
    [write_all(low), write_all(high)].concat()
}

/// On one line: plain data, in which there is nothing that JSON lacks.
fn text(written: &impl Serialize) -> String {
    serde_json::to_string(written).unwrap_or_default() + "\n"
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
    Reading::begin(bytes)?.collect()
}

/// What a file holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Holds {
    /// One set.
    One,
    /// A design alone.
    Bare,
    /// Many sets.
    Many,
}

/// A file that is read set by set, so that a large one does not hold up whoever reads it.
#[derive(Clone, Debug)]
pub struct Reading {
    text: String,
    holds: Holds,
    /// Where in the text each set stands.
    sets: Vec<Range<usize>>,
    next: usize,
    /// What was read so far takes so much memory.
    memory: usize,
}

impl Reading {
    /// Looks what is in a file.
    ///
    /// # Errors
    /// What is wrong with the file as a whole.
    pub fn begin(bytes: &[u8]) -> Result<Self, FileError> {
        if bytes.len() > MOST_BYTES {
            return Err(FileError::TooLarge);
        }
        let text = std::str::from_utf8(bytes).map_err(|_| FileError::NotText)?;
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        if text.trim().is_empty() {
            return Err(FileError::Empty);
        }
        let head: Head = json::read(text).map_err(|why| match why.kind {
            json::Kind::Value => FileError::NotOurs,
            json::Kind::Cut | json::Kind::Syntax => why.into(),
        })?;
        let whole = 0..text.len();
        let (holds, sets) = match head.snugfold {
            Some(version) if version > u64::from(VERSION) => return Err(FileError::Newer { version }),
            Some(1) if head.sets.is_some() => (Holds::Many, rows(text)?),
            Some(1) if head.project.is_some() => (Holds::One, vec![whole]),
            None if head.boxes.is_some() || head.cards.is_some() => (Holds::Bare, vec![whole]),
            _ => return Err(FileError::NotOurs),
        };
        if sets.len() > MOST_SETS {
            return Err(FileError::TooLarge);
        }
        Ok(Self { text: text.to_owned(), holds, sets, next: 0, memory: 0 })
    }

    /// How many sets there are in it.
    #[must_use]
    pub const fn total(&self) -> usize {
        self.sets.len()
    }

    fn read(&mut self, nth: usize, range: Range<usize>) -> Result<Kept, FileError> {
        let text = self.text.get(range.clone()).unwrap_or_default();
        let read = match self.holds {
            Holds::One => {
                json::read(text).map(|OneRead { project, ticks, saved_at, .. }| Kept { project, ticks, saved_at })
            }
            Holds::Many => {
                json::read(text).map(|RowRead { project, ticks, saved_at }| Kept { project, ticks, saved_at })
            }
            Holds::Bare => json::read(text).map(Kept::new),
        };
        let mut kept = read.map_err(|why| self.wrong(nth, range.start, why))?;
        check(&kept).map_err(FileError::Excess)?;
        self.memory = self.memory.saturating_add(memory(&kept));
        if self.memory > MOST_MEMORY {
            return Err(FileError::TooLarge);
        }
        frozen::fill(&mut kept.project);
        Ok(kept)
    }

    /// What is wrong in the text of one set, as it is in the whole file. That it is JSON is known by then.
    fn wrong(&self, nth: usize, start: usize, Wrong { kind, line, way, said }: Wrong) -> FileError {
        let before = self.text.get(..start).unwrap_or_default().bytes().filter(|b| *b == b'\n').count();
        let set = [Step::Named("sets".to_owned()), Step::Nth(nth)];
        let way = if self.holds == Holds::Many { set.into_iter().chain(way).collect() } else { way };
        let said = if kind == json::Kind::Value { said } else { files::OTHER_VALUE.to_owned() };
        FileError::Wrong { line: before + line, way, said }
    }
}

impl Iterator for Reading {
    type Item = Result<Kept, FileError>;

    fn next(&mut self) -> Option<Self::Item> {
        let (nth, range) = (self.next, self.sets.get(self.next)?.clone());
        self.next += 1;
        Some(self.read(nth, range))
    }
}

/// Where in a bundle each of its sets stands; one more than are read, so that too many can be told.
fn rows(text: &str) -> Result<Vec<Range<usize>>, FileError> {
    let bundle: BundleRead = json::read_raw(text)?;
    let place = |raw: &&RawValue| {
        let start = (raw.get().as_ptr() as usize).saturating_sub(text.as_ptr() as usize);
        start..start + raw.get().len()
    };
    Ok(bundle.sets.iter().take(MOST_SETS + 1).map(place).collect())
}

/// How much memory a set takes, roughly: what it is made of, counted, and its texts.
fn memory(kept: &Kept) -> usize {
    use std::mem::size_of;
    let Project { cards, boxes, holder, own, .. } = &kept.project;
    let more = cards.iter().map(|c| size_of_val(&c.more_sheets[..])).sum::<usize>();
    let part = |part: &Part| {
        let inputs: usize = part.inputs.keys().map(|key| 2 * size_of::<(String, Entry)>() + key.len()).sum();
        let off: usize = part.mats.iter().flat_map(|m| &m.off).map(|name| size_of::<String>() + name.len()).sum();
        let gifts = size_of_val(&part.gifts.kinds[..]);
        size_of::<Part>() + inputs + off + gifts + size_of_val(&part.extras[..])
    };
    let parts: usize = boxes.iter().chain(holder).map(part).sum();
    let ticks: usize = kept.ticks.iter().map(|key| 2 * size_of::<String>() + key.len()).sum();
    size_of::<Kept>() + size_of_val(&cards[..]) + more + parts + size_of_val(&own.notes[..]) + ticks
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
