//! The cards at hand and the scoring board.

use super::card_editor::card_editor;
use super::child::{each, shown};
use super::desk::{Desk, desk};
use super::entry::entry;
use super::tag::{Tag, button, classed, tag};
use super::tool_fields::tool_fields;
use super::value::{Fact, fact};
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::request::Project;
use crate::say::{names, page};

/// All cards, then the board.
#[must_use]
pub fn stock_list() -> Tag {
    let desk = desk();
    let ids = fact(move || desk.project.with(|p| p.cards.iter().map(|c| c.id).collect::<Vec<_>>()));
    let full = move || ids.with(Vec::len) >= bound::CARDS.most as usize;
    let one = move |id: u16| {
        let title = fact(move || desk.project.with(|p| names::card(p, id)));
        let used = fact(move || desk.project.with(|p| in_use(p, id)));
        let remove = move || {
            desk.edit("", |p| p.cards.retain(|c| c.id != id));
            desk.place.set(Place::Set);
        };
        entry(Place::Card(id), title, move || {
            let mut fields = card_editor(id);
            let why = shown(move || used.get(), || classed("span", "hint").with(page::CARD_IN_USE));
            let remove = button(page::REMOVE, remove).while_so("disabled", move || used.get());
            fields.push(classed("p", "actions").with(remove).with(why));
            fields
        })
    };
    let board = Fact::fixed(page::BOARD.to_owned());
    tag("section")
        .is("aria-label", page::CARD_AND_BOARD)
        .with(tag("h2").with(page::CARD_AND_BOARD))
        .with(each(move || ids.get(), one))
        .with(button(page::ADD_CARD, move || add(desk)).class("add").while_so("disabled", full))
        .with(entry(Place::Board, board, tool_fields))
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
            card.stack = 1;
            card.lesson = None;
            p.cards.push(card);
        }
    });
    desk.place.set(Place::Card(id));
}
