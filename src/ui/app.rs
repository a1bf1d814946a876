//! The whole page: the head, the walk, and the part of it that is looked at.

use leptos::prelude::*;
use web_sys::KeyboardEvent;

use super::bringing::Opening;
use super::child::live;
use super::desk::Desk;
use super::flat_view::flat_view;
use super::foot::{foot, notices};
use super::forms;
use super::head::head;
use super::kept_view::kept_view;
use super::set_view::set_view;
use super::sheets_view::sheets_view;
use super::shelf::Shelf;
use super::steps_view::steps_view;
use super::tag::{Tag, classed, tag};
use super::teach_view::teach_view;
use super::turn::{Turn, in_turn};
use super::value::{State, effect};
use super::walk::Walk;
use crate::form::registry::{FORMS, Holds};
use crate::project::example::example;
use crate::project::fresh::fresh;
use crate::project::request::Project;
use crate::say::page;
use crate::web::{after_first_render, font, guard, here, offline, trouble};

/// What is on the desk first: the worked example.
fn first() -> Project {
    example().unwrap_or_else(|| new_set(None))
}

/// A new set of the first forms there are.
#[must_use]
pub fn new_set(before: Option<&Project>) -> Project {
    let form = |holds| FORMS.iter().find(|f| f.holds == holds).map_or("", |f| f.key);
    let mut new = fresh(before, form(Holds::Gifts), form(Holds::Boxes));
    if before == example().as_ref() {
        // Its cards were measured by nobody here.
        new.cards.iter_mut().for_each(|card| card.thickness = None);
    }
    new
}

/// The whole page.
#[must_use]
pub fn app() -> Tag {
    let desk = Desk::new(first(), here::spelling(), here::hand());
    provide_context(desk);
    let shelf = Shelf::begin(desk);
    provide_context(shelf);
    provide_context(Opening::begin(shelf));
    let walk = State::new(Walk::Set);
    forms::begin();
    // What a broken design breaks has broken once everything is there; who leaves before that has broken nothing.
    here::on_hide(guard::opened_well);
    effect(move || {
        if desk.turn.get() == Turn::Rest {
            after_first_render(|| {
                offline::start();
                font::fetch();
            });
        }
    });
    effect(move || {
        if desk.turn.get() == Turn::Rest && !desk.planner.behind.get() {
            after_first_render(guard::opened_well);
        }
    });
    effect(move || here::set_language(desk.spelling.get().language()));
    // On the window: what is taken back may take the field that had the focus along, and then no element hears keys.
    let keys = move |event: KeyboardEvent| {
        if trouble::stopped() {
            return;
        }
        let way = event.ctrl_key() || event.meta_key();
        match (way, event.shift_key(), event.key().to_ascii_lowercase().as_str()) {
            (true, false, "z") => desk.undo(),
            (true, true, "z") | (true, false, "y") => desk.redo(),
            _ => return,
        }
        event.prevent_default();
    };
    // The page is there for as long as its window.
    let _ = window_event_listener(leptos::ev::keydown, keys);
    let part = live(move || match walk.get() {
        Walk::Set => set_view(),
        Walk::Flat => flat_view(),
        Walk::Sheets => sheets_view(),
        Walk::Steps => steps_view(),
        Walk::Teach => teach_view(),
        Walk::Kept => kept_view(),
    });
    classed("div", "page")
        .with(classed("a", "skip").is("href", "#content").with(page::SKIP))
        .with(head(walk))
        .with(notices())
        .with(tag("main").is("id", "content").is("tabindex", "-1").with(part))
        .with(in_turn(Turn::Rest, foot))
}
