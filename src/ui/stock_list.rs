//! The cards at hand and the scoring board.

use leptos::prelude::*;

use super::card_editor::CardEditor;
use super::desk::{Desk, desk};
use super::entry::Entry;
use super::tool_fields::ToolFields;
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::request::Project;
use crate::say::{names, page};

/// All cards, then the board.
#[component]
pub fn StockList() -> impl IntoView {
    let desk = desk();
    let ids = Memo::new(move |_| desk.project.with(|p| p.cards.iter().map(|c| c.id).collect::<Vec<_>>()));
    let full = move || ids.with(Vec::len) >= bound::CARDS.most as usize;
    let one = move |id: u16| {
        let title = Memo::new(move |_| desk.project.with(|p| names::card(p, id)));
        let used = Memo::new(move |_| desk.project.with(|p| in_use(p, id)));
        view! {
            <Entry place=Place::Card(id) title=title>
                <CardEditor id=id />
                <p class="actions">
                    <button
                        type="button"
                        disabled=used
                        on:click=move |_| {
                            desk.edit("", |p| p.cards.retain(|c| c.id != id));
                            desk.place.set(Place::Set);
                        }
                    >{page::REMOVE}</button>
                    <Show when=move || used.get()><span class="hint">{page::CARD_IN_USE}</span></Show>
                </p>
            </Entry>
        }
    };
    view! {
        <section aria-label=page::CARD_AND_BOARD>
            <h2>{page::CARD_AND_BOARD}</h2>
            <For each=move || ids.get() key=|id| *id children=one />
            <button type="button" class="add" disabled=full on:click=move |_| add(desk)>{page::ADD_CARD}</button>
            <Entry place=Place::Board title=Signal::stored(page::BOARD.to_owned())>
                <ToolFields />
            </Entry>
        </section>
    }
}

fn in_use(project: &Project, card: u16) -> bool {
    let parts = project.boxes.iter().chain(&project.holder);
    let mut cards = parts.flat_map(|p| [Some(p.card), p.mats.as_ref().map(|m| m.card)]).flatten();
    cards.any(|c| c == card)
}

fn add(desk: Desk) {
    let id = desk
        .project
        .with_untracked(|p| (1..=u16::MAX).find(|n| !p.cards.iter().any(|c| c.id == *n)).unwrap_or(u16::MAX));
    desk.edit("", |p| {
        // As the last one, so that only what differs has to be typed.
        if let Some(mut card) = p.cards.last().cloned() {
            card.id = id;
            card.name = String::new();
            card.thickness = None;
            p.cards.push(card);
        }
    });
    desk.place.set(Place::Card(id));
}
