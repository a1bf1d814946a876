//! A form as text: a place to write it, and what is wrong with what was written.

use leptos::prelude::*;

use super::child::live;
use super::drawn::Sheet;
use super::tag::{Tag, button, classed, tag};
use super::value::{Fact, State};
use crate::form::own::drawn::Drawn;
use crate::form::own::read::{LONGEST, read};
use crate::project::finding::OwnFault;
use crate::say::own;

/// A place to write a form, and the button that takes it.
pub struct FormText {
    /// A name for the field, unique in its form.
    pub key: &'static str,
    /// What it is called.
    pub label: &'static str,
    /// What may be written.
    pub hint: &'static str,
    /// What the button says.
    pub take: &'static str,
    /// How many lines are seen.
    pub rows: &'static str,
}

impl FormText {
    /// The field; what is there now follows from `now`, and a form that can be read goes to `laid`.
    #[must_use]
    pub fn view(self, sheet: Sheet, now: Fact<String>, laid: impl Fn(Drawn) + 'static) -> Tag {
        let Self { key, label, hint, take, rows } = self;
        let (draft, why) = (State::new(None::<String>), State::new(None::<String>));
        let system = sheet.desk.system();
        let press = move || {
            let typed = draft.get_untracked().unwrap_or_else(|| now.get_untracked());
            match read(&typed, system.get_untracked()) {
                Ok(form) => {
                    draft.set(None);
                    why.set(None);
                    laid(form);
                }
                Err(e) => {
                    let fault = OwnFault::Unread { said: e.said, why: e.why };
                    why.set(Some(own::fault(&fault, system.get_untracked()).to_string()));
                }
            }
        };
        let hint_id = sheet.id(&format!("{key}-hint"));
        let area = tag("textarea")
            .is("id", sheet.id(key))
            .is("rows", rows)
            .is("maxlength", LONGEST.to_string())
            .is("autocapitalize", "off")
            .is("spellcheck", "false")
            .is("aria-describedby", hint_id.clone())
            .value(move || draft.get().unwrap_or_else(|| now.get()))
            .on("input", move |event| draft.set(Some(event_target_value(&event))));
        classed("div", "field")
            .with(tag("label").is("for", sheet.id(key)).with(label))
            .with(area)
            .with(classed("p", "hint").is("id", hint_id).with(hint))
            .with(live(move || why.get().map(|why| classed("p", "note stop").is("role", "alert").with(why))))
            .with(classed("p", "actions").with(button(take, press)))
    }
}
