//! A field for a name.

use leptos::prelude::*;

use super::desk::desk;
use super::labelled::labelled;
use super::tag::{Tag, tag};
use super::value::Fact;

/// A name, as the maker writes it; `id` is unique on the page, `placeholder` stands where nothing is written.
#[must_use]
pub fn text_field(
    id: String,
    label: &'static str,
    placeholder: Fact<String>,
    value: Fact<String>,
    commit: impl Fn(String) + Send + 'static,
) -> Tag {
    let desk = desk();
    let input = tag("input")
        .is("type", "text")
        .is("maxlength", "120")
        .is("autocomplete", "off")
        .follows("placeholder", move || Some(placeholder.get()))
        .value(move || value.get())
        .on("input", move |event| commit(event_target_value(&event)))
        .on("blur", move |_| desk.settle());
    labelled(id, label, input)
}
