//! Saved and shared: the sets on this device, the link, the files.

use leptos::prelude::*;

use super::app::new_set;
use super::kept_row::KeptRow;
use super::share::Share;
use super::shelf::Shelf;
use crate::project::example::example;
use crate::say::{kept, page};
use crate::web::files;

/// Everything that is kept.
#[component]
pub fn KeptView() -> impl IntoView {
    let shelf = expect_context::<Shelf>();
    let listing = Memo::new(move |_| shelf.list());
    let ids = move || listing.with(|l| l.entries.iter().map(|e| e.id).collect::<Vec<_>>());
    let row = move |id| view! { <KeptRow id=id listing=listing /> };
    let aside = move || {
        let all = listing.with(|l| l.set_aside.clone());
        let each = all.into_iter().map(|a| {
            let key = a.key.clone();
            let save = move |_| {
                if let Some(text) = shelf.set_aside_text(&key) {
                    let _ = files::give("unreadable.snugfold.json", &text);
                }
            };
            view! {
                <li class="note caution">
                    <p>{kept::SET_ASIDE}": "{a.why}</p>
                    <button type="button" on:click=save>{page::SAVE_FILE}</button>
                </li>
            }
        });
        each.collect_view()
    };
    let undo = move || {
        shelf.deleted.get().map(|d| {
            let name =
                if d.kept.project.name.trim().is_empty() { page::UNNAMED.to_owned() } else { d.kept.project.name };
            view! {
                <p class="note" role="status">
                    {kept::deleted(&name)}" "
                    <button type="button" on:click=move |_| shelf.restore()>{kept::BRING_BACK}</button>
                </p>
            }
        })
    };
    let empty = move || listing.with(|l| l.entries.is_empty());
    let fresh = move |_| shelf.lay_new(new_set(Some(&shelf.desk().project.get_untracked())));
    let example = move |_| {
        if let Some(project) = example() {
            shelf.lay_new(project);
        }
    };
    view! {
        <div class="kept">
            <section class="sheet-of-paper">
                <h2>{kept::SAVED_SETS}</h2>
                <p class="hint">{kept::BY_ITSELF}</p>
                {undo}
                <Show when=empty><p class="empty">{kept::NONE_YET}</p></Show>
                <ul class="rows"><For each=ids key=|id| id.0 children=row /></ul>
                <ul class="rows">{aside}</ul>
                <p class="actions">
                    <button type="button" class="add" on:click=fresh>{page::NEW_SET}</button>
                    <button type="button" class="add" on:click=example>{page::EXAMPLE}</button>
                </p>
            </section>
            <Share />
        </div>
    }
}
