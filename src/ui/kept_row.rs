//! One saved set in the list.

use leptos::prelude::*;

use super::picture::Picture;
use super::shelf::Shelf;
use crate::draw::folded::set;
use crate::draw::solid::View;
use crate::draw::svg::paint;
use crate::keep::notebook::said::Listing;
use crate::keep::record::SetId;
use crate::plan::shapes;
use crate::project::request::{Project, Tint};
use crate::say::{kept, page};
use crate::web::last;

/// Its name, and what can be done with it.
#[component]
pub fn KeptRow(
    /// Which one.
    id: SetId,
    /// All of them.
    #[prop(into)]
    listing: Signal<Listing>,
) -> impl IntoView {
    let shelf = expect_context::<Shelf>();
    let name = Memo::new(move |_| {
        listing.with(|l| l.entries.iter().find(|e| e.id == id).map_or(String::new(), |e| e.name.clone()))
    });
    let shown = move || {
        let name = name.get();
        if name.trim().is_empty() { page::UNNAMED.to_owned() } else { name }
    };
    let entry = move || listing.with(|l| l.entries.iter().find(|e| e.id == id).cloned());
    let svg = Memo::new(move |_| entry().map_or_else(String::new, |e| small(&e.project)));
    let saved = move || entry().map(|e| kept::saved(&last::date(e.saved_at), e.size));
    let current = Memo::new(move |_| shelf.current() == Some(id));
    let renaming = RwSignal::new(false);
    let take = move |event| {
        shelf.rename(id, &event_target_value(&event));
        renaming.set(false);
    };
    let field = format!("rename-{}", id.0);
    view! {
        <li class="row" class:open=current>
            <div class="small" aria-hidden="true"><Picture svg=svg /></div>
            <div class="about">
            <p class="title">
                {shown}
                <Show when=move || current.get()><span class="flag">{kept::OPEN_NOW}</span></Show>
            </p>
            <p class="hint">{saved}</p>
            <Show when=move || renaming.get()>
                <div class="field">
                    <label for=field.clone()>{page::SET_NAME}</label>
                    <input
                        id=field.clone()
                        type="text"
                        maxlength="120"
                        autocomplete="off"
                        value=name.get_untracked()
                        on:change=take
                    />
                </div>
            </Show>
            <p class="actions">
                <button type="button" disabled=current on:click=move |_| shelf.open(id)>
                    {kept::OPEN}<span class="heard">" "{shown}</span>
                </button>
                <button
                    type="button"
                    aria-expanded=move || if renaming.get() { "true" } else { "false" }
                    on:click=move |_| renaming.update(|r| *r = !*r)
                >
                    {kept::RENAME}<span class="heard">" "{shown}</span>
                </button>
                <button type="button" on:click=move |_| shelf.duplicate(id)>
                    {page::DUPLICATE}<span class="heard">" "{shown}</span>
                </button>
                <button type="button" on:click=move |_| shelf.delete(id)>
                    {kept::DELETE}<span class="heard">" "{shown}</span>
                </button>
            </p>
            </div>
        </li>
    }
}

/// The finished set, small.
fn small(project: &Project) -> String {
    let plan = shapes(project, project.system);
    let tint = |c| project.card(c).map_or_else(Tint::default, |c| c.tint);
    paint(&set(&plan.boxes, plan.holder.as_ref(), &tint, 0.3, View::default()))
}
