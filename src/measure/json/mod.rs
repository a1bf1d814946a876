//! Plain data read from JSON: by what serde derives for each type, with the place of what is wrong.

use serde::de::{Deserialize, DeserializeOwned};
use serde_json::error::Category;
use serde_path_to_error::{Segment, Track};

use strict::Strict;

pub mod strict;
pub mod value;

/// One step on the way to a value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Step {
    /// The one of a list with this place, from 0.
    Nth(usize),
    /// A field, a key or a word.
    Named(String),
}

/// Why a text cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wrong {
    /// Whether it is no JSON at all, ends too soon, or holds something else.
    pub kind: Kind,
    /// The line, from 1.
    pub line: usize,
    /// The way to the value that is wrong.
    pub way: Vec<Step>,
    /// What the library says of it, or a rule of our own.
    pub said: String,
}

/// What is wrong with a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// It is no JSON.
    Syntax,
    /// It ends too soon.
    Cut,
    /// A value is not as it should be.
    Value,
}

/// Reads `text` as a `T`, objects from objects only.
///
/// # Errors
/// Where and why it is none.
pub fn read<T: DeserializeOwned>(text: &str) -> Result<T, Wrong> {
    let mut from = serde_json::Deserializer::from_str(text);
    let mut track = Track::new();
    let path = serde_path_to_error::Deserializer::new(Strict(&mut from), &mut track);
    let read = T::deserialize(path);
    let way = track.path();
    match read {
        Ok(value) => from.end().map(|()| value).map_err(|error| wrong(&error, Vec::new())),
        Err(error) => Err(wrong(&error, way.iter().filter_map(step).collect())),
    }
}

/// As [`read`], of what goes on standing in the text as it is; the way to what is wrong is not told.
///
/// # Errors
/// Where and why it is none.
pub fn read_raw<'a, T: Deserialize<'a>>(text: &'a str) -> Result<T, Wrong> {
    serde_json::from_str(text).map_err(|error| wrong(&error, Vec::new()))
}

fn step(segment: &Segment) -> Option<Step> {
    match segment {
        Segment::Seq { index } => Some(Step::Nth(*index)),
        Segment::Map { key } => Some(Step::Named(key.clone())),
        Segment::Enum { variant } => Some(Step::Named(variant.clone())),
        Segment::Unknown => None,
    }
}

fn wrong(error: &serde_json::Error, mut way: Vec<Step>) -> Wrong {
    let kind = match error.classify() {
        Category::Eof => Kind::Cut,
        Category::Syntax | Category::Io => Kind::Syntax,
        Category::Data => Kind::Value,
    };
    let text = error.to_string();
    // The line stands by itself.
    let said = text.rsplit_once(" at line ").map_or(text.as_str(), |(said, _)| said).to_owned();
    // A field too many is named in what is said.
    if ["unknown field ", "duplicate field "].iter().any(|begin| said.starts_with(begin)) {
        way.pop_if(|last| matches!(last, Step::Named(name) if said.contains(&format!("`{name}`"))));
    }
    Wrong { kind, line: error.line(), way, said }
}
