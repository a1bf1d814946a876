//! The whole page: the head, the walk, and the part of it that is looked at.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::KeyboardEvent;

use super::child::live;
use super::desk::Desk;
use super::flat_view::flat_view;
use super::foot::{foot, notices};
use super::head::head;
use super::kept_view::kept_view;
use super::set_view::set_view;
use super::sheets_view::sheets_view;
use super::shelf::Shelf;
use super::steps_view::steps_view;
use super::tag::{Tag, classed, tag};
use super::value::{State, effect};
use crate::form::registry::{FORMS, Holds};
use crate::project::example::example;
use crate::project::fresh::fresh;
use crate::project::request::Project;
use crate::say::page;
use crate::web::here;

/// The parts of the walk.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Walk {
    /// What is asked for.
    Set,
    /// All that is drawn.
    Flat,
    /// What to cut from what.
    Sheets,
    /// What to do.
    Steps,
    /// What is kept and passed on.
    Kept,
}

impl Walk {
    /// All, in order.
    pub const ALL: [Self; 5] = [Self::Set, Self::Flat, Self::Sheets, Self::Steps, Self::Kept];

    /// What it is called.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Set => page::SET,
            Self::Flat => page::FLAT,
            Self::Sheets => page::SHEETS,
            Self::Steps => page::STEPS,
            Self::Kept => page::KEPT,
        }
    }
}

/// What is on the desk first: the worked example.
fn first() -> Project {
    example().unwrap_or_else(|| new_set(None))
}

/// A new set of the first forms there are.
#[must_use]
pub fn new_set(before: Option<&Project>) -> Project {
    let form = |holds| FORMS.iter().find(|f| f.holds == holds).map_or("", |f| f.key);
    fresh(before, form(Holds::Gifts), form(Holds::Boxes))
}

/// The whole page.
#[must_use]
pub fn app() -> Tag {
    let desk = Desk::new(first(), here::spelling(), here::hand());
    provide_context(desk);
    provide_context(Shelf::begin(desk));
    let walk = State::new(Walk::Set);
    effect(move || here::set_language(desk.spelling.get().language()));
    let keys = move |event: web_sys::Event| {
        let Some(event) = event.dyn_ref::<KeyboardEvent>() else {
            return;
        };
        let way = event.ctrl_key() || event.meta_key();
        match (way, event.shift_key(), event.key().to_ascii_lowercase().as_str()) {
            (true, false, "z") => desk.undo(),
            (true, true, "z") | (true, false, "y") => desk.redo(),
            _ => return,
        }
        event.prevent_default();
    };
    let part = live(move || match walk.get() {
        Walk::Set => set_view(),
        Walk::Flat => flat_view(),
        Walk::Sheets => sheets_view(),
        Walk::Steps => steps_view(),
        Walk::Kept => kept_view(),
    });
    classed("div", "page")
        .on("keydown", keys)
        .with(classed("a", "skip").is("href", "#content").with(page::SKIP))
        .with(head(walk))
        .with(notices())
        .with(tag("main").is("id", "content").is("tabindex", "-1").with(part))
        .with(foot())
}
