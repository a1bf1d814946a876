//! A field that is typed into: half-typed text stays for as long as it cannot be taken.

use leptos::prelude::*;

use super::child::live;
use super::desk::desk;
use super::labelled::line;
use super::notes::notes;
use super::said::said;
use super::tag::{Tag, classed, tag};
use super::value::{Fact, State, fact};
use crate::project::finding::Finding;
use crate::say::phrase::Phrase;

/// What a typed field is about.
pub struct TypedField {
    /// Unique on the page.
    pub id: String,
    /// What it is called.
    pub label: &'static str,
    /// What it is, in one line; empty where its label says it.
    pub hint: String,
    /// Which keys a tablet offers.
    pub keys: &'static str,
    /// What is taken now.
    pub value: Fact<String>,
    /// What it comes to where nothing is typed.
    pub usual: Option<Fact<String>>,
    /// What should be known about it.
    pub findings: Fact<Vec<Finding>>,
    /// Takes a text, or says why not.
    pub read: Callback<String, Result<(), Phrase>>,
    /// Takes a text that can be taken into the design.
    pub commit: Callback<String>,
}

impl TypedField {
    /// The field; `frame` may put something round the place to type.
    #[must_use]
    pub fn view(self, frame: impl FnOnce(Tag) -> Tag) -> Tag {
        let Self { id, label, hint, keys, value, usual, findings, read, commit } = self;
        let desk = desk();
        let draft = State::new(None::<(u32, String)>);
        let typing = move || draft.get().filter(|(epoch, _)| *epoch == desk.epoch.get()).map(|d| d.1);
        let refused = fact(move || typing().and_then(|text| read.run(text).err()));
        let input = move |event| {
            let text = event_target_value(&event);
            if read.run(text.clone()).is_ok() {
                commit.run(text.clone());
            }
            draft.set(Some((desk.epoch.get_untracked(), text)));
        };
        let leave = move || {
            desk.settle();
            if refused.get_untracked().is_none() {
                draft.set(None);
            }
        };
        let findings = fact(move || {
            let mut all = findings.get();
            if refused.get().is_some() {
                all.retain(|finding| !finding.names_a_range());
            }
            all
        });
        let (hint_id, note_id) = (format!("{id}-hint"), format!("{id}-note"));
        let place = tag("input")
            .is("id", id.clone())
            .is("type", "text")
            .is("inputmode", keys)
            .is("autocomplete", "off")
            .is("autocapitalize", "off")
            .is("spellcheck", "false")
            .is("aria-describedby", format!("{hint_id} {note_id}"))
            .says("aria-invalid", move || refused.get().is_some())
            .follows("placeholder", move || usual.map(|u| u.get()))
            .value(move || typing().unwrap_or_else(|| value.get()))
            .on("input", input)
            .on("blur", move |_| leave());
        let why = move || refused.get().map(|why| classed("p", "note stop").is("role", "alert").with(said(why)));
        classed("div", "field")
            .class_while("refused", move || refused.get().is_some())
            .with(tag("label").is("for", id).with(label))
            .with(frame(place))
            .with(classed("p", "hint").is("id", hint_id).with(line(label, &hint)))
            .with(tag("div").is("id", note_id).with(live(why)).with(notes(findings)))
    }
}
