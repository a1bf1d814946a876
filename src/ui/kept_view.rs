//! Saved and shared: the sets on this device, the link, the files.

use crate::measure::sort::sort_by_key;
use leptos::prelude::*;

use super::app::new_set;
use super::kept_row::KeptRow;
use super::share::Share;
use super::shelf::Shelf;
use crate::keep::notebook::said::Entry;
use crate::keep::record::SetId;
use crate::project::example::example;
use crate::say::{kept, page};
use crate::web::files;
use crate::web::here::lower;

/// Everything that is kept.
#[component]
pub fn KeptView() -> impl IntoView {
    let shelf = expect_context::<Shelf>();
    let listing = Memo::new(move |_| shelf.list());
    let (wanted, order, most) = (RwSignal::new(String::new()), RwSignal::new(Order::Date), RwSignal::new(PAGE));
    let found = Memo::new(move |_| listing.with(|l| found(&l.entries, &wanted.get(), order.get())));
    let ids = move || found.with(|f| f.iter().take(most.get()).copied().collect::<Vec<_>>());
    let count = Memo::new(move |_| listing.with(|l| l.entries.len()));
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
                <Show when=move || { count.get() == 0 }><p class="empty">{kept::NONE_YET}</p></Show>
                <Show when=move || { count.get() >= FEW }><Finder wanted=wanted order=order /></Show>
                <Show when=move || { count.get() > 0 && found.with(Vec::is_empty) }>
                    <p class="empty" role="status">{kept::NO_SUCH}</p>
                </Show>
                <ul class="rows"><For each=ids key=|id| id.0 children=row /></ul>
                <Show when=move || { found.with(Vec::len) > most.get() }>
                    <button type="button" on:click=move |_| most.update(|m| *m += PAGE)>{kept::SHOW_MORE}</button>
                </Show>
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

/// As many sets are shown at once: each has its drawing.
const PAGE: usize = 24;
/// From so many sets on they are searched and put in order.
const FEW: usize = 4;

/// The order of saved sets.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Order {
    Date,
    Name,
}

/// The sets whose name holds what is wanted, in order; they come by date.
fn found(entries: &[Entry], wanted: &str, order: Order) -> Vec<SetId> {
    let wanted = lower(wanted.trim());
    let mut fit: Vec<_> = entries.iter().filter(|e| lower(&e.name).contains(&wanted)).collect();
    if order == Order::Name {
        sort_by_key(&mut fit, |e| lower(&e.name));
    }
    fit.into_iter().map(|e| e.id).collect()
}

/// What is looked for, and the order.
#[component]
fn Finder(wanted: RwSignal<String>, order: RwSignal<Order>) -> impl IntoView {
    let one = move |which: Order, name: &'static str| {
        view! {
            <button
                type="button"
                aria-pressed=move || if order.get() == which { "true" } else { "false" }
                on:click=move |_| order.set(which)
            >{name}</button>
        }
    };
    view! {
        <div class="fields">
            <div class="field">
                <label for="find-set">{kept::FIND}</label>
                <input id="find-set" type="search" prop:value=wanted on:input=move |e| wanted.set(event_target_value(&e)) />
            </div>
            <fieldset class="field">
                <legend>{kept::ORDER}</legend>
                <div class="either">{one(Order::Date, kept::BY_DATE)}{one(Order::Name, kept::BY_NAME)}</div>
            </fieldset>
        </div>
    }
}
