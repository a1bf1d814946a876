//! The set: what is asked for on one side, drawn on the other.

use leptos::prelude::*;

use super::box_list::BoxList;
use super::count_field::CountField;
use super::desk::desk;
use super::entry::Entry;
use super::notes::Notes;
use super::part_editor::PartEditor;
use super::stage::Stage;
use super::stock_list::StockList;
use super::system_choice::SystemChoice;
use super::text_field::TextField;
use crate::form::registry::{FORMS, Holds};
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::request::Part;
use crate::say::{names, page};

/// The request and the drawing that answers it.
#[component]
pub fn SetView() -> impl IntoView {
    let desk = desk();
    let project = desk.project;
    let name = Memo::new(move |_| project.with(|p| p.name.clone()));
    let sets = Memo::new(move |_| project.with(|p| p.sets));
    let spares = Memo::new(move |_| project.with(|p| p.spares));
    view! {
        <div class="bench">
            <div class="request">
                <section class="sheet-of-paper" aria-label=page::SET>
                    <div class="fields">
                        <TextField
                            id="set-name".to_owned()
                            label=page::SET_NAME
                            placeholder=Signal::stored(page::UNNAMED.to_owned())
                            value=name
                            commit=move |text: String| desk.edit("set-name", |p| p.name = text)
                        />
                        <CountField
                            id="set-sets".to_owned()
                            label=page::SETS.to_owned()
                            hint=page::SETS_HINT
                            range=bound::SETS
                            value=sets
                            findings=desk.findings(Place::Set, Some("sets"))
                            commit=move |n: u32| desk.edit("set-sets", |p| p.sets = n)
                        />
                        <CountField
                            id="set-spares".to_owned()
                            label=page::SPARES.to_owned()
                            hint=page::SPARES_HINT
                            range=bound::SPARES
                            value=spares
                            findings=desk.findings(Place::Set, Some("spares"))
                            commit=move |n: u32| desk.edit("set-spares", |p| p.spares = n)
                        />
                        <SystemChoice />
                    </div>
                    <Notes findings=desk.findings_besides(Place::Set, &["sets", "boxes", "spares"]) />
                </section>
                <BoxList />
                <HolderEntry />
                <StockList />
            </div>
            <Stage />
        </div>
    }
}

/// The holder, or a way to add one.
#[component]
fn HolderEntry() -> impl IntoView {
    let desk = desk();
    let there = Memo::new(move |_| desk.project.with(|p| p.holder.is_some()));
    let title = Memo::new(move |_| desk.project.with(|p| names::place(p, Place::Holder)));
    let add = move |_| {
        let form = FORMS.iter().find(|f| f.holds == Holds::Boxes).map_or("", |f| f.key);
        desk.edit("", |p| {
            let first = p.boxes.first();
            p.holder = Some(Part {
                gifts: crate::project::fitting::Gifts::default(),
                id: 0,
                name: String::new(),
                form: form.to_owned(),
                count: 1,
                card: first.map_or_else(|| p.cards.first().map_or(1, |c| c.id), |b| b.card),
                inputs: std::collections::BTreeMap::new(),
                mats: first.and_then(|b| b.mats.clone()),
            });
        });
        desk.place.set(Place::Holder);
    };
    let remove = move |_| {
        desk.edit("", |p| p.holder = None);
        desk.place.set(desk.project.with_untracked(|p| p.boxes.first().map_or(Place::Set, |b| Place::Box(b.id))));
    };
    view! {
        <section aria-label=page::HOLDER>
            <h2>{page::HOLDER}</h2>
            <Show
                when=move || there.get()
                fallback=move || view! { <button type="button" class="add" on:click=add>{page::ADD_HOLDER}</button> }
            >
                <Entry place=Place::Holder title=title>
                    <PartEditor place=Place::Holder />
                    <p class="actions"><button type="button" on:click=remove>{page::REMOVE}</button></p>
                </Entry>
            </Show>
        </section>
    }
}
