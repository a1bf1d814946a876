//! The boxes of the set: added, copied, put in order, taken away.

use super::child::each;
use super::desk::{Desk, desk};
use super::entry::entry;
use super::notes::notes;
use super::part_editor::part_editor;
use super::part_fields::id as field_id;
use super::tag::{Tag, button, classed, tag};
use super::turn::by_and_by;
use super::value::fact;
use crate::form::registry::{FORMS, Holds};
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::request::{Part, Project};
use crate::say::{names, page};
use crate::web::here;

/// All boxes.
#[must_use]
pub fn box_list() -> Tag {
    let desk = desk();
    let ids = fact(move || desk.project.with(|p| p.boxes.iter().map(|b| b.id).collect::<Vec<_>>()));
    let until = by_and_by(move || ids.with_untracked(Vec::len));
    let full = move || ids.with(Vec::len) >= bound::BOX_KINDS.most as usize;
    let one = move |id: u16| {
        let title = fact(move || desk.project.with(|p| names::place(p, Place::Box(id))));
        let spot = fact(move || ids.with(|i| (i.first() == Some(&id), i.last() == Some(&id))));
        entry(Place::Box(id), title, move || {
            let earlier = button(page::EARLIER, move || shift(desk, id, Way::Up));
            let later = button(page::LATER, move || shift(desk, id, Way::Down));
            let actions = classed("p", "actions")
                .with(button(page::DUPLICATE, move || duplicate(desk, id)).while_so("disabled", full))
                .with(earlier.while_so("disabled", move || spot.get().0))
                .with(later.while_so("disabled", move || spot.get().1))
                .with(button(page::REMOVE, move || remove(desk, id)));
            vec![part_editor(Place::Box(id)), actions]
        })
    };
    let add = button(page::ADD_BOX, move || add(desk)).class("add").is("id", "add-box").while_so("disabled", full);
    tag("section")
        .is("aria-label", page::BOXES)
        .with(tag("h2").with(page::BOXES))
        .with(notes(desk.findings(Place::Set, Some("boxes"))))
        .with(each(move || ids.with(|ids| ids.iter().take(until.get()).copied().collect()), one))
        .with(add)
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
        let card = before.map_or_else(|| p.cards.first().map_or(1, |c| c.id), |b| b.card);
        let part = Part { mats: before.and_then(|b| b.mats.clone()), ..Part::of(id, form, card) };
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
