//! A form of the maker's own, drawn: how it begins, its cells and lines, what is found, its measures, its order.

use leptos::prelude::*;

use super::child::live;
use super::drawn::{Sheet, Typed};
use super::drawn_begin::begin;
use super::drawn_grid::grid;
use super::drawn_measures::measures;
use super::drawn_order::order;
use super::drawn_picked::picked;
use super::drawn_told::found;
use super::opened::opened;
use super::tag::{Tag, button, classed, tag};
use super::text_field::text_field;
use super::value::{Fact, State, fact};
use crate::form::own::read::{LONGEST, read};
use crate::form::own::write::text;
use crate::project::finding::{OwnFault, Place};
use crate::say::{drawing, own};

/// Everything about the form of the box at `place`.
#[must_use]
pub fn drawn_editor(place: Place) -> Tag {
    let sheet = Sheet::of(place);
    let called = fact(move || sheet.drawn.with(|d| d.called.clone()));
    let named = move |text: String| {
        let tag = sheet.id("called");
        sheet.change(&tag, |d| d.called = text);
    };
    let name = text_field(sheet.id("called"), drawing::CALLED, Fact::fixed(String::new()), called, named);
    classed("fieldset", "group drawn")
        .with(tag("legend").with(drawing::TITLE))
        .with(begin(sheet))
        .with(classed("div", "fields").with(name))
        .with(classed("p", "hint").with(drawing::HOW))
        .with(grid(sheet))
        .with(picked(sheet))
        .with(found(sheet))
        .with(measures(sheet))
        .with(order(sheet))
        .with(as_text(sheet))
}

/// The whole form as text, to be changed as such.
fn as_text(sheet: Sheet) -> Tag {
    let open = State::new(false);
    let draft = State::new(None::<String>);
    let why = State::new(None::<String>);
    let system = sheet.desk.system();
    let now = fact(move || sheet.drawn.with(text));
    let take = move || {
        let Some(typed) = draft.get_untracked() else {
            return;
        };
        match read(&typed, system.get_untracked()) {
            Ok(form) => {
                sheet.lay("", form, Typed::OfItsOwn);
                draft.set(None);
                why.set(None);
            }
            Err(e) => {
                let fault = OwnFault::Unread { said: e.said, why: e.why };
                why.set(Some(own::fault(&fault, system.get_untracked()).to_string()));
            }
        }
    };
    let area = tag("textarea")
        .is("id", sheet.id("text"))
        .is("rows", "12")
        .is("maxlength", LONGEST.to_string())
        .is("spellcheck", "false")
        .is("autocapitalize", "off")
        .value(move || draft.get().unwrap_or_else(|| now.get()))
        .on("input", move |event| draft.set(Some(event_target_value(&event))));
    let field = classed("div", "field")
        .with(tag("label").is("for", sheet.id("text")).with(drawing::AS_TEXT))
        .with(area)
        .with(classed("p", "hint").with(drawing::AS_TEXT_HINT))
        .with(live(move || why.get().map(|why| classed("p", "note stop").is("role", "alert").with(why))))
        .with(classed("p", "actions").with(button(drawing::TAKE_TEXT, take)));
    opened("group", drawing::AS_TEXT, open).with(field)
}
