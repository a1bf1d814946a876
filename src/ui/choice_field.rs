//! A field for one of several words.

use leptos::prelude::*;

use super::child::live;
use super::labelled::line;
use super::notes::notes;
use super::tag::{Tag, classed, tag};
use super::value::{Fact, fact};
use crate::project::finding::Finding;

/// One of several words; each is a key and what is shown for it.
pub struct ChoiceField {
    /// Unique on the page.
    pub id: String,
    /// What it is called.
    pub label: &'static str,
    /// What it is, in one line; empty where its label says it.
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
            .with(classed("p", "hint").is("id", hint_id).with(line(label, &hint)))
            .with(notes(findings))
    }
}

/// A field for one of `all`, each with what is shown for it; `value` is the one that is chosen.
pub fn one_of<T: Copy + PartialEq + Send + Sync + 'static>(
    (id, label, hint): (String, &'static str, &'static str),
    all: &'static [(T, &'static str)],
    value: impl Fn() -> Option<T> + Send + Sync + 'static,
    findings: Fact<Vec<Finding>>,
    take: impl Fn(T) + Send + Sync + 'static,
) -> Tag {
    ChoiceField {
        id,
        label,
        hint: hint.to_owned(),
        choices: Fact::fixed(all.iter().map(|(_, name)| ((*name).to_owned(), (*name).to_owned())).collect()),
        value: fact(move || {
            let chosen = value();
            all.iter().find(|(one, _)| Some(*one) == chosen).map_or(String::new(), |(_, name)| (*name).to_owned())
        }),
        findings,
        commit: Callback::new(move |key: String| {
            if let Some((one, _)) = all.iter().find(|(_, name)| *name == key) {
                take(*one);
            }
        }),
    }
    .view()
}
