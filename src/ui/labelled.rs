//! A place to type or choose, under its label, with the line that says what it is.

use super::tag::{Tag, classed, tag};
use crate::say::hints;

/// The line under a field: its own, or else what is said of its label.
#[must_use]
pub fn line<'a>(label: &str, own: &'a str) -> &'a str {
    if own.is_empty() { hints::hint(label) } else { own }
}

/// `input` with its label and line; `id` is unique on the page.
#[must_use]
pub fn labelled(id: impl Into<String>, label: &'static str, input: Tag) -> Tag {
    let id = id.into();
    let hint = format!("{id}-hint");
    classed("div", "field")
        .with(tag("label").is("for", id.clone()).with(label))
        .with(input.is("aria-describedby", hint.clone()).is("id", id))
        .with(classed("p", "hint").is("id", hint).with(line(label, "")))
}
