//! The boxes of the set: added, copied, put in order, taken away.

use leptos::prelude::*;

use super::desk::{Desk, desk};
use super::entry::Entry;
use super::notes::Notes;
use super::part_editor::PartEditor;
use super::part_fields::id as field_id;
use crate::form::registry::{FORMS, Holds};
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::request::{Part, Project};
use crate::say::{names, page};
use crate::web::here;

/// All boxes.
#[component]
pub fn BoxList() -> impl IntoView {
    let desk = desk();
    let ids = Memo::new(move |_| desk.project.with(|p| p.boxes.iter().map(|b| b.id).collect::<Vec<_>>()));
    let full = move || ids.with(Vec::len) >= bound::BOX_KINDS.most as usize;
    let one = move |id: u16| {
        let title = Memo::new(move |_| desk.project.with(|p| names::place(p, Place::Box(id))));
        let spot = Memo::new(move |_| ids.with(|i| (i.first() == Some(&id), i.last() == Some(&id))));
        view! {
            <Entry place=Place::Box(id) title=title>
                <PartEditor place=Place::Box(id) />
                <p class="actions">
                    <button type="button" disabled=full on:click=move |_| duplicate(desk, id)>{page::DUPLICATE}</button>
                    <button type="button" disabled=move || spot.get().0 on:click=move |_| shift(desk, id, Way::Up)>
                        {page::EARLIER}
                    </button>
                    <button type="button" disabled=move || spot.get().1 on:click=move |_| shift(desk, id, Way::Down)>
                        {page::LATER}
                    </button>
                    <button type="button" on:click=move |_| remove(desk, id)>{page::REMOVE}</button>
                </p>
            </Entry>
        }
    };
    view! {
        <section aria-label=page::BOXES>
            <h2>{page::BOXES}</h2>
            <Notes findings=desk.findings(Place::Set, Some("boxes")) />
            <For each=move || ids.get() key=|id| *id children=one />
            <button id="add-box" type="button" class="add" disabled=full on:click=move |_| add(desk)>{page::ADD_BOX}</button>
        </section>
    }
}

/// A number that no box has.
fn free_id(project: &Project) -> u16 {
    (1..=u16::MAX).find(|n| !project.boxes.iter().any(|b| b.id == *n)).unwrap_or(u16::MAX)
}

fn add(desk: Desk) {
    let id = desk.project.with_untracked(free_id);
    let form = FORMS.iter().find(|f| f.holds == Holds::Gifts).map_or("", |f| f.key);
    desk.edit("", |p| {
        // Card and mats as for the box before; the form's own sizes.
        let before = p.boxes.last();
        let part = Part {
            gifts: crate::project::fitting::Gifts::default(),
            id,
            name: String::new(),
            form: form.to_owned(),
            count: 1,
            card: before.map_or_else(|| p.cards.first().map_or(1, |c| c.id), |b| b.card),
            inputs: std::collections::BTreeMap::new(),
            mats: before.and_then(|b| b.mats.clone()),
        };
        p.boxes.push(part);
    });
    desk.place.set(Place::Box(id));
    here::focus(field_id(Place::Box(id), "head"));
}

fn duplicate(desk: Desk, of: u16) {
    let id = desk.project.with_untracked(free_id);
    desk.edit("", |p| {
        if let Some(at) = p.boxes.iter().position(|b| b.id == of) {
            let mut copy = p.boxes[at].clone();
            copy.id = id;
            p.boxes.insert(at + 1, copy);
        }
    });
    desk.place.set(Place::Box(id));
    here::focus(field_id(Place::Box(id), "head"));
}

fn remove(desk: Desk, id: u16) {
    desk.edit("", |p| p.boxes.retain(|b| b.id != id));
    let first = desk.project.with_untracked(|p| p.boxes.first().map(|b| Place::Box(b.id)));
    desk.place.set(first.unwrap_or(Place::Set));
    here::focus(first.map_or_else(|| "add-box".to_owned(), |place| field_id(place, "head")));
}

/// Where a box goes in the order.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    Up,
    Down,
}

fn shift(desk: Desk, id: u16, way: Way) {
    desk.edit("", |p| {
        if let Some(at) = p.boxes.iter().position(|b| b.id == id) {
            let to = if way == Way::Up { at.checked_sub(1) } else { Some(at + 1) };
            if let Some(to) = to.filter(|to| *to < p.boxes.len()) {
                p.boxes.swap(at, to);
            }
        }
    });
}
