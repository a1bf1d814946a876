//! A field for a whole number, with buttons for one less and one more.

use leptos::prelude::*;

use super::desk::desk;
use super::tag::{Tag, button, classed};
use super::typed_field::TypedField;
use super::value::{Fact, fact};
use crate::measure::digits;
use crate::project::bound::Range;
use crate::project::finding::Finding;
use crate::say::{page, refusal};

/// A whole number.
pub struct CountField {
    /// Unique on the page.
    pub id: String,
    /// What it is called.
    pub label: &'static str,
    /// What it is, in one line.
    pub hint: &'static str,
    /// What may be typed.
    pub range: Range<u32>,
    /// What it is now.
    pub value: Fact<u32>,
    /// What should be known about it.
    pub findings: Fact<Vec<Finding>>,
    /// Takes a new value.
    pub commit: Callback<u32>,
}

impl CountField {
    /// The field.
    #[must_use]
    pub fn view(self) -> Tag {
        let Self { id, label, hint, range, value, findings, commit } = self;
        let desk = desk();
        let read = move |text: &str| digits::plain(text.trim()).parse::<u32>().ok().filter(|n| range.holds(*n));
        let step = move |to: Option<u32>| {
            if let Some(n) = to.filter(|n| range.holds(*n)) {
                commit.run(n);
                // Half-typed text goes.
                desk.epoch.update(|e| *e = e.wrapping_add(1));
            }
        };
        let less = button("−", move || step(value.get_untracked().checked_sub(1)))
            .is("aria-label", format!("{label}: {}", page::ONE_LESS))
            .while_so("disabled", move || value.get() <= range.least);
        let more = button("+", move || step(value.get_untracked().checked_add(1)))
            .is("aria-label", format!("{label}: {}", page::ONE_MORE))
            .while_so("disabled", move || value.get() >= range.most);
        TypedField {
            id,
            label,
            hint: hint.to_owned(),
            keys: "numeric",
            value: fact(move || value.get().to_string()),
            usual: None,
            findings,
            read: Callback::new(move |text: String| read(&text).map(drop).ok_or_else(|| refusal::count(range))),
            commit: Callback::new(move |text: String| {
                if let Some(n) = read(&text) {
                    commit.run(n);
                }
            }),
        }
        .view(|place| classed("div", "count").with(less).with(place).with(more))
    }
}
