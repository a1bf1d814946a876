//! Which part of an assembly is shown, where it has several.

use leptos::prelude::*;

use super::desk::desk;
use crate::project::finding::Place;
use crate::say::page;

/// A button for each part; the one that is shown is pressed.
#[component]
pub fn PartTabs(
    /// Of which box or holder.
    #[prop(into)]
    place: Signal<Place>,
    /// The part that is shown.
    part: RwSignal<usize>,
) -> impl IntoView {
    let desk = desk();
    let shown = desk.shown(place);
    let names = Memo::new(move |_| {
        shown.with(|plan| {
            let assembly = plan.part(place.get()).and_then(|p| p.assembly.as_ref());
            assembly.map_or_else(Vec::new, |a| a.parts.iter().map(|p| p.name).collect::<Vec<_>>())
        })
    });
    // A part that is there no more is not shown.
    Effect::new(move |_| {
        if names.with(Vec::len) <= part.get() {
            part.set(0);
        }
    });
    let button = move |(i, name): (usize, &'static str)| {
        view! {
            <button
                type="button"
                aria-pressed=move || if part.get() == i { "true" } else { "false" }
                on:click=move |_| part.set(i)
            >{name}</button>
        }
    };
    view! {
        <Show when=move || { names.with(Vec::len) > 1 }>
            <fieldset class="field">
                <legend>{page::PART}</legend>
                <div class="either">{move || names.get().into_iter().enumerate().map(button).collect_view()}</div>
            </fieldset>
        </Show>
    }
}
