//! A field for a length: takes what makers type, and keeps it as typed.

use leptos::prelude::*;

use super::desk::desk;
use super::tag::Tag;
use super::typed_field::TypedField;
use super::value::{Fact, fact};
use crate::form::input::read_length;
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::project::bound::Range;
use crate::project::finding::{Finding, What};
use crate::say::refusal;

/// A length. What cannot be taken stays as typed, with one sentence under it; the design keeps its last good value.
pub struct LengthField {
    /// Unique on the page.
    pub id: String,
    /// What it is called.
    pub label: &'static str,
    /// What it is, in one line.
    pub hint: String,
    /// What may be typed.
    pub range: Range<Length>,
    /// What was typed before.
    pub value: Fact<Option<Given>>,
    /// What it comes to where nothing is typed; without it something must be typed.
    pub usual: Option<Fact<String>>,
    /// What should be known about it.
    pub findings: Fact<Vec<Finding>>,
    /// Takes a new value.
    pub commit: Callback<Option<Given>>,
}

impl LengthField {
    /// The field.
    #[must_use]
    pub fn view(self) -> Tag {
        let Self { id, label, hint, range, value, usual, findings, commit } = self;
        let system = desk().system();
        let required = usual.is_none();
        let read = move |text: &str| {
            if text.trim().is_empty() && !required {
                Ok(None)
            } else {
                read_length(text, range, system.get()).map(Some)
            }
        };
        // Other sizes of the same box may leave less than this field's own range: then the refusal names what is left, and
        // the finding that names it too is not said twice.
        let narrowed = fact(move || {
            findings.with(|all| {
                all.iter().fold(range, |range, finding| match finding.what {
                    What::LengthOutside { least, most, .. } => range.within(least, most),
                    _ => range,
                })
            })
        });
        TypedField {
            id,
            label,
            hint,
            keys: "text",
            value: fact(move || value.with(|v| v.as_ref().map_or(String::new(), |g| g.text().to_owned()))),
            usual,
            findings,
            read: Callback::new(move |text: String| {
                let why = read(&text).map(drop);
                why.map_err(|why| refusal::length(why.narrowed(narrowed.get()), system.get()))
            }),
            commit: Callback::new(move |text: String| {
                if let Ok(taken) = read(&text) {
                    commit.run(taken);
                }
            }),
        }
        .view(|place| place)
    }
}
