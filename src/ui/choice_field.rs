//! A field for one of several words.

use leptos::prelude::*;

use super::notes::Notes;
use crate::project::finding::Finding;

/// One of several words; each is a key and what is shown for it.
#[component]
pub fn ChoiceField(
    /// Unique on the page.
    id: String,
    /// What it is called.
    #[prop(into)]
    label: String,
    /// What it is, in one line.
    #[prop(optional, into)]
    hint: String,
    /// What can be chosen.
    #[prop(into)]
    choices: Signal<Vec<(String, String)>>,
    /// The key that is chosen.
    #[prop(into)]
    value: Signal<String>,
    /// What should be known about it.
    #[prop(optional, into)]
    findings: Signal<Vec<Finding>>,
    /// Takes another key.
    #[prop(into)]
    commit: Callback<String>,
) -> impl IntoView {
    let hint_id = format!("{id}-hint");
    let options = move || {
        let chosen = value.get();
        let all = choices.get().into_iter();
        all.map(|(key, name)| view! { <option value=key.clone() selected=chosen == key>{name}</option> }).collect_view()
    };
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <select
                id=id.clone()
                aria-describedby=hint_id.clone()
                on:change=move |event| commit.run(event_target_value(&event))
                prop:value=value
            >
                {options}
            </select>
            <p class="hint" id=hint_id>{hint}</p>
            <Notes findings=findings />
        </div>
    }
}
