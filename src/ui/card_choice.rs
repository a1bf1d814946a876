//! A choice among the cards of the design.

use leptos::prelude::*;

use super::choice_field::ChoiceField;
use super::desk::desk;
use super::tag::Tag;
use super::value::{Fact, fact};
use crate::project::finding::Finding;
use crate::say::names;

/// Which card something is cut from; `id` is unique on the page.
#[must_use]
pub fn card_choice(
    id: String,
    label: &'static str,
    value: Fact<u16>,
    findings: Fact<Vec<Finding>>,
    commit: impl Fn(u16) + Send + Sync + 'static,
) -> Tag {
    let desk = desk();
    let choices = fact(move || {
        desk.project.with(|p| p.cards.iter().map(|c| (c.id.to_string(), names::card(p, c.id))).collect::<Vec<_>>())
    });
    let commit = Callback::new(move |key: String| {
        if let Ok(card) = key.parse() {
            commit(card);
            desk.settle();
        }
    });
    let value = fact(move || value.get().to_string());
    ChoiceField { id, label, hint: String::new(), choices, value, findings, commit }.view()
}
