//! A field for a name.

use leptos::prelude::*;

use super::desk::desk;

/// A name, as the maker writes it.
#[component]
pub fn TextField(
    /// Unique on the page.
    id: String,
    /// What it is called.
    #[prop(into)]
    label: String,
    /// Where nothing is written.
    #[prop(optional, into)]
    placeholder: Signal<String>,
    /// What is written now.
    #[prop(into)]
    value: Signal<String>,
    /// Takes another.
    #[prop(into)]
    commit: Callback<String>,
) -> impl IntoView {
    let desk = desk();
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <input
                id=id
                type="text"
                maxlength="120"
                autocomplete="off"
                placeholder=placeholder
                prop:value=value
                on:input=move |event| commit.run(event_target_value(&event))
                on:blur=move |_| desk.settle()
            />
        </div>
    }
}
