//! A choice among the cards of the design.

use leptos::prelude::*;

use super::choice_field::ChoiceField;
use super::desk::desk;
use crate::project::finding::Finding;
use crate::say::names;

/// Which card something is cut from.
#[component]
pub fn CardChoice(
    /// Unique on the page.
    id: String,
    /// What it is called.
    #[prop(into)]
    label: String,
    /// The card's number.
    #[prop(into)]
    value: Signal<u16>,
    /// What should be known about it.
    #[prop(optional, into)]
    findings: Signal<Vec<Finding>>,
    /// Takes another.
    #[prop(into)]
    commit: Callback<u16>,
) -> impl IntoView {
    let desk = desk();
    let choices = Memo::new(move |_| {
        desk.project.with(|p| p.cards.iter().map(|c| (c.id.to_string(), names::card(p, c.id))).collect::<Vec<_>>())
    });
    let chosen = Memo::new(move |_| value.get().to_string());
    let commit = move |key: String| {
        if let Ok(card) = key.parse() {
            commit.run(card);
            desk.settle();
        }
    };
    view! { <ChoiceField id=id label=label choices=choices value=chosen findings=findings commit=commit /> }
}
