//! What the search for better sheets is doing, with a button that stops it.

use leptos::prelude::*;

use super::desk::desk;
use super::looking::Standing;
use crate::say::page;

/// A line about the search.
#[component]
pub fn LookBar() -> impl IntoView {
    let better = desk().better;
    let standing = better.standing;
    let working = Memo::new(move |_| matches!(standing.get(), Standing::Working(_)));
    let stopped = Memo::new(move |_| matches!(standing.get(), Standing::Stopped(_)));
    let words = Memo::new(move |_| match standing.get() {
        Standing::Waiting => String::new(),
        Standing::Working(_) => page::LOOKING.to_owned(),
        Standing::Stopped(work) => page::looked_until(work),
        Standing::Finished => page::LOOKED.to_owned(),
    });
    let percent = move || if let Standing::Working(n) = standing.get() { n.to_string() } else { String::new() };
    view! {
        <p class="actions">
            <span role="status">{words}</span>
            <Show when=move || working.get()>
                <progress max="100" value=percent aria-label=page::LOOKING></progress>
                <button type="button" on:click=move |_| better.stop()>{page::STOP_LOOKING}</button>
            </Show>
            <Show when=move || stopped.get()>
                <button type="button" on:click=move |_| better.go_on()>{page::LOOK_ON}</button>
            </Show>
        </p>
    }
}
