//! The set: what is asked for on one side, drawn on the other.

use leptos::prelude::*;

use super::app::new_set;
use super::box_list::box_list;
use super::child::{Inside, live};
use super::count_field::CountField;
use super::desk::desk;
use super::entry::entry;
use super::finished::{Look, finished};
use super::notes::notes;
use super::part_editor::part_editor;
use super::prompts::prompts;
use super::shelf::shelf;
use super::stage::stage;
use super::stock_list::stock_list;
use super::system_choice::system_choice;
use super::tag::{Tag, button, classed, tag};
use super::text_field::text_field;
use super::turn::{Turn, in_turn};
use super::value::{Fact, fact};
use crate::form::registry::{FORMS, Holds};
use crate::project::bound;
use crate::project::example::example;
use crate::project::finding::Place;
use crate::project::request::Part;
use crate::say::{begin, names, page};

/// The request and the drawing that answers it.
#[must_use]
pub fn set_view() -> Tag {
    let request = classed("div", "request")
        .with(in_turn(Turn::Set, whole_set))
        .with(in_turn(Turn::Boxes, box_list))
        .with(in_turn(Turn::Rest, || vec![holder_entry(), stock_list()]));
    classed("div", "bench").with(request).with(stage(Some(beside())))
}

/// What the set as a whole is asked.
fn whole_set() -> Tag {
    let desk = desk();
    let project = desk.project;
    let name = fact(move || project.with(|p| p.name.clone()));
    let unnamed = Fact::fixed(page::UNNAMED.to_owned());
    let sets = CountField {
        id: "set-sets".to_owned(),
        label: page::SETS,
        hint: page::SETS_HINT,
        range: bound::SETS,
        value: fact(move || project.with(|p| p.sets)),
        findings: desk.findings(Place::Set, Some("sets")),
        commit: Callback::new(move |n| desk.edit("set-sets", |p| p.sets = n)),
    };
    let spares = CountField {
        id: "set-spares".to_owned(),
        label: page::SPARES,
        hint: page::SPARES_HINT,
        range: bound::SPARES,
        value: fact(move || project.with(|p| p.spares)),
        findings: desk.findings(Place::Set, Some("spares")),
        commit: Callback::new(move |n| desk.edit("set-spares", |p| p.spares = n)),
    };
    let named = move |text| desk.edit("set-name", |p| p.name = text);
    let name = text_field("set-name".to_owned(), page::SET_NAME, unnamed, name, named);
    let fields = classed("div", "fields").with(sets.view()).with(spares.view()).with(system_choice());
    classed("section", "sheet-of-paper")
        .is("aria-label", page::SET)
        .with(welcome())
        .with(prompts())
        .with(classed("div", "set-name").with(name))
        .with(fields)
        .with(notes(desk.findings_besides(Place::Set, &["sets", "boxes", "spares"])))
}

/// What it will look like, beside the pattern.
fn beside() -> Tag {
    classed("div", "beside")
        .is("role", "group")
        .is("aria-label", page::FINISHED_SET)
        .with(classed("div", "hero").with(in_turn(Turn::Reading, || finished(Look::at(45.0)))))
        .with(classed("p", "hint").with(page::TOUCH_BOX))
}

/// What lies there on a first visit; gone with the first change.
fn welcome() -> Inside {
    let (desk, shelf) = (desk(), shelf());
    let worked = example();
    let untouched = fact(move || desk.project.with(|p| Some(p) == worked.as_ref()));
    let fresh = move || shelf.lay_new(new_set(Some(&desk.project.get_untracked())));
    live(move || {
        untouched.get().then(|| {
            classed("p", "note actions").with(tag("span").with(begin::WELCOME)).with(button(page::NEW_SET, fresh))
        })
    })
}

/// The holder, or a way to add one.
fn holder_entry() -> Tag {
    let desk = desk();
    let there = fact(move || desk.project.with(|p| p.holder.is_some()));
    let title = fact(move || desk.project.with(|p| names::place(p, Place::Holder)));
    let add = move || {
        let form = FORMS.iter().find(|f| f.holds == Holds::Boxes).map_or("", |f| f.key);
        desk.edit("", |p| {
            let first = p.boxes.first();
            let card = first.map_or_else(|| p.cards.first().map_or(1, |c| c.id), |b| b.card);
            p.holder = Some(Part { mats: first.and_then(|b| b.mats.clone()), ..Part::of(0, form, card) });
        });
        desk.place.set(Place::Holder);
    };
    let remove = move || {
        desk.edit("", |p| p.holder = None);
        desk.place.set(desk.project.with_untracked(|p| p.boxes.first().map_or(Place::Set, |b| Place::Box(b.id))));
    };
    let holder = move || {
        if !there.get() {
            return button(page::ADD_HOLDER, add).class("add");
        }
        entry(Place::Holder, title, move || {
            vec![part_editor(Place::Holder), classed("p", "actions").with(button(page::REMOVE, remove))]
        })
    };
    tag("section").is("aria-label", page::HOLDER).with(tag("h2").with(page::HOLDER)).with(live(holder))
}
