//! A field for a length: takes what makers type, and keeps it as typed.

use leptos::prelude::*;

use super::desk::desk;
use super::notes::Notes;
use super::said::said;
use crate::form::input::read_length;
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::project::bound::Range;
use crate::project::finding::Finding;
use crate::say::refusal;

/// A length. What cannot be taken stays as typed, with one sentence under it; the design keeps its last good value.
#[component]
pub fn LengthField(
    /// Unique on the page.
    id: String,
    /// What it is called.
    #[prop(into)]
    label: Signal<String>,
    /// What it is, in one line.
    #[prop(optional, into)]
    hint: String,
    /// What may be typed.
    range: Range<Length>,
    /// What was typed before.
    #[prop(into)]
    value: Signal<Option<Given>>,
    /// What it comes to where nothing is typed; without it something must be typed.
    #[prop(optional, into)]
    usual: Option<Signal<String>>,
    /// What should be known about it.
    #[prop(optional, into)]
    findings: Signal<Vec<Finding>>,
    /// Takes a new value.
    #[prop(into)]
    commit: Callback<Option<Given>>,
) -> impl IntoView {
    let desk = desk();
    let system = desk.system();
    // Half-typed text, for as long as it is typed or cannot be taken.
    let draft = RwSignal::new(None::<(u32, String)>);
    let typing = move || draft.get().filter(|(epoch, _)| *epoch == desk.epoch.get()).map(|d| d.1);
    let given = move || value.with(|v| v.as_ref().map_or(String::new(), |g| g.text().to_owned()));
    let required = usual.is_none();
    let read = move |text: &str| {
        if text.trim().is_empty() && !required { Ok(None) } else { read_length(text, range, system.get()).map(Some) }
    };
    let refused = Memo::new(move |_| typing().and_then(|text| read(&text).err()));
    let input = move |event| {
        let text = event_target_value(&event);
        if let Ok(taken) = read(&text) {
            commit.run(taken);
        }
        draft.set(Some((desk.epoch.get_untracked(), text)));
    };
    let leave = move |_| {
        desk.settle();
        // A field that is taken off the page while it has the focus is left after it is gone.
        if draft.try_get_untracked().is_none() {
            return;
        }
        if refused.get_untracked().is_none() {
            draft.set(None);
        }
    };
    let hint_id = format!("{id}-hint");
    let note_id = format!("{id}-note");
    let described = format!("{hint_id} {note_id}");
    view! {
        <div class="field" class:refused=move || refused.get().is_some()>
            <label for=id.clone()>{label}</label>
            <input
                id=id.clone()
                type="text"
                inputmode="text"
                autocomplete="off"
                autocapitalize="off"
                spellcheck="false"
                aria-describedby=described
                aria-invalid=move || if refused.get().is_some() { "true" } else { "false" }
                placeholder=move || usual.map_or_else(String::new, |u| u.get())
                prop:value=move || typing().unwrap_or_else(given)
                on:input=input
                on:blur=leave
            />
            <p class="hint" id=hint_id>{hint}</p>
            <div id=note_id.clone()>
                {move || refused.get().map(|why| view! {
                    <p class="note stop" role="alert">{said(refusal::length(why, system.get()))}</p>
                })}
                <Notes findings=findings />
            </div>
        </div>
    }
}
