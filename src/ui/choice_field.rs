//! A field for one of several words.

use leptos::prelude::*;

use super::child::live;
use super::notes::notes;
use super::tag::{Tag, classed, tag};
use super::value::Fact;
use crate::project::finding::Finding;

/// One of several words; each is a key and what is shown for it.
pub struct ChoiceField {
    /// Unique on the page.
    pub id: String,
    /// What it is called.
    pub label: &'static str,
    /// What it is, in one line.
    pub hint: String,
    /// What can be chosen.
    pub choices: Fact<Vec<(String, String)>>,
    /// The key that is chosen.
    pub value: Fact<String>,
    /// What should be known about it.
    pub findings: Fact<Vec<Finding>>,
    /// Takes another key.
    pub commit: Callback<String>,
}

impl ChoiceField {
    /// The field.
    #[must_use]
    pub fn view(self) -> Tag {
        let Self { id, label, hint, choices, value, findings, commit } = self;
        let hint_id = format!("{id}-hint");
        let options = move || {
            let chosen = value.get();
            let all = choices.get().into_iter().map(|(key, name)| {
                let mine = key == chosen;
                tag("option").is("value", key).while_so("selected", move || mine).with(name)
            });
            all.collect::<Vec<_>>()
        };
        let select = tag("select")
            .is("id", id.clone())
            .is("aria-describedby", hint_id.clone())
            .value(move || value.get())
            .on("change", move |event| commit.run(event_target_value(&event)))
            .with(live(options));
        classed("div", "field")
            .with(tag("label").is("for", id).with(label))
            .with(select)
            .with(classed("p", "hint").is("id", hint_id).with(hint))
            .with(notes(findings))
    }
}
