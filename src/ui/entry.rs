//! One thing of the request: a line that opens into its fields. One at a time is open.

use leptos::prelude::*;

use super::desk::desk;
use super::part_fields::id;
use super::said::said;
use crate::project::finding::{Place, Weight};
use crate::say::measured::size;
use crate::say::page;
use crate::say::phrase::Phrase;
use crate::web::here;

/// A line that opens.
#[component]
pub fn Entry(
    /// What it is.
    place: Place,
    /// What it is called.
    #[prop(into)]
    title: Signal<String>,
    /// Its fields.
    children: ChildrenFn,
) -> impl IntoView {
    let desk = desk();
    let open = Memo::new(move |_| desk.place.get() == place);
    let toggle = move |_| {
        desk.place.set(if open.get_untracked() { Place::Set } else { place });
        // The one that closes may stand above and let this one slip out of sight.
        here::reveal(id(place, "head"));
    };
    let sum = Memo::new(move |_| {
        desk.shapes.with(|plan| {
            let part = plan.part(place)?;
            let count = if part.count > 1 { format!("{} × ", part.count) } else { String::new() };
            Some(Phrase::words(count).with(size(part.assembly.as_ref()?.finished, plan.system)))
        })
    });
    let worst = Memo::new(move |_| {
        desk.plan.with(|plan| plan.findings.iter().filter(|f| f.place == place).map(|f| f.weight).min())
    });
    let flag = move || match worst.get() {
        Some(Weight::Stop) => Some(view! { <span class="flag stop">{page::STOPPED}</span> }),
        Some(Weight::Caution) => Some(view! { <span class="flag caution">{page::CARE}</span> }),
        _ => None,
    };
    let body = id(place, "body");
    let children = StoredValue::new(children);
    view! {
        <article class="entry sheet-of-paper" class:open=open>
            <h3>
                <button
                    id=id(place, "head")
                    type="button"
                    aria-expanded=move || if open.get() { "true" } else { "false" }
                    aria-controls=body.clone()
                    on:click=toggle
                >
                    <span class="title">{title}</span>
                    <span class="sum">{move || sum.get().map(said)}</span>
                    {flag}
                </button>
            </h3>
            <div class="body" id=body>
                <Show when=move || open.get()>{move || children.with_value(|c| c())}</Show>
            </div>
        </article>
    }
}
