//! The panels of a part in words: what the drawing shows, for those who hear it, and a way to choose by key.

use leptos::prelude::*;

use super::desk::desk;
use super::said::said;
use crate::net::flat::PanelId;
use crate::project::finding::Place;
use crate::say::{names, page};

/// Each panel with its size; pressing it chooses it in the drawing.
#[component]
pub fn PanelList(
    /// Which box or holder.
    #[prop(into)]
    place: Signal<Place>,
    /// Which part of its assembly.
    #[prop(into)]
    part: Signal<usize>,
    /// The panel that is chosen.
    chosen: RwSignal<Option<PanelId>>,
) -> impl IntoView {
    let desk = desk();
    let shown = desk.shown(place);
    let details = NodeRef::<leptos::html::Details>::new();
    // Worded only while it is looked at.
    let open = RwSignal::new(false);
    let list = move || {
        if !open.get() {
            return Vec::new();
        }
        let words = shown.with(|plan| {
            let found = plan.part(place.get());
            found.map_or_else(Vec::new, |p| names::panel_list(p, part.get(), plan.system))
        });
        let each = words.into_iter().enumerate().map(|(i, words)| {
            let id = PanelId(i);
            let pressed = move || chosen.get() == Some(id);
            view! {
                <li>
                    <button
                        type="button"
                        aria-pressed=move || if pressed() { "true" } else { "false" }
                        on:click=move |_| chosen.set((!pressed()).then_some(id))
                    >{said(words)}</button>
                </li>
            }
        });
        each.map(IntoAny::into_any).collect()
    };
    view! {
        <details class="panels" on:toggle=move |_| open.set(details.get().is_some_and(|d| d.open())) node_ref=details>
            <summary>{page::PANELS}</summary>
            <ol>{list}</ol>
        </details>
    }
}
