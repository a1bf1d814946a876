//! A field for a whole number, with buttons for one less and one more.

use leptos::prelude::*;

use super::desk::desk;
use super::notes::Notes;
use super::said::said;
use crate::project::bound::Range;
use crate::project::finding::Finding;
use crate::say::{page, refusal};

/// A whole number.
#[component]
pub fn CountField(
    /// Unique on the page.
    id: String,
    /// What it is called.
    #[prop(into)]
    label: Signal<String>,
    /// What it is, in one line.
    #[prop(optional, into)]
    hint: String,
    /// What may be typed.
    range: Range<u32>,
    /// What it is now.
    #[prop(into)]
    value: Signal<u32>,
    /// What should be known about it.
    #[prop(optional, into)]
    findings: Signal<Vec<Finding>>,
    /// Takes a new value.
    #[prop(into)]
    commit: Callback<u32>,
) -> impl IntoView {
    let desk = desk();
    let draft = RwSignal::new(None::<(u32, String)>);
    let typing = move || draft.get().filter(|(epoch, _)| *epoch == desk.epoch.get()).map(|d| d.1);
    let read = move |text: &str| text.trim().parse::<u32>().ok().filter(|n| range.holds(*n));
    let refused = Memo::new(move |_| typing().is_some_and(|text| read(&text).is_none()));
    let input = move |event| {
        let text = event_target_value(&event);
        if let Some(n) = read(&text) {
            commit.run(n);
        }
        draft.set(Some((desk.epoch.get_untracked(), text)));
    };
    let leave = move |_| {
        desk.settle();
        // A field that is taken off the page while it has the focus is left after it is gone.
        if draft.try_get_untracked().is_none() {
            return;
        }
        if !refused.get_untracked() {
            draft.set(None);
        }
    };
    let step = move |to: Option<u32>| {
        if let Some(n) = to.filter(|n| range.holds(*n)) {
            draft.set(None);
            commit.run(n);
        }
    };
    let (at_least, at_most) = (move || value.get() <= range.least, move || value.get() >= range.most);
    let hint_id = format!("{id}-hint");
    let note_id = format!("{id}-note");
    let described = format!("{hint_id} {note_id}");
    view! {
        <div class="field" class:refused=move || refused.get()>
            <label for=id.clone()>{label}</label>
            <div class="count">
                <button
                    type="button"
                    aria-label=move || format!("{}: {}", label.get(), page::ONE_LESS)
                    disabled=at_least
                    on:click=move |_| step(value.get_untracked().checked_sub(1))
                >"−"</button>
                <input
                    id=id.clone()
                    type="text"
                    inputmode="numeric"
                    autocomplete="off"
                    aria-describedby=described
                    aria-invalid=move || if refused.get() { "true" } else { "false" }
                    prop:value=move || typing().unwrap_or_else(|| value.get().to_string())
                    on:input=input
                    on:blur=leave
                />
                <button
                    type="button"
                    aria-label=move || format!("{}: {}", label.get(), page::ONE_MORE)
                    disabled=at_most
                    on:click=move |_| step(value.get_untracked().checked_add(1))
                >"+"</button>
            </div>
            <p class="hint" id=hint_id>{hint}</p>
            <div id=note_id>
                {move || refused.get().then(|| view! { <p class="note stop" role="alert">{said(refusal::count(range))}</p> })}
                <Notes findings=findings />
            </div>
        </div>
    }
}
