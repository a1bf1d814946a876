//! A form of the maker's own, drawn: how it begins, its cells and lines, what is found, its measures, its order.

use super::drawn::{Sheet, Typed};
use super::drawn_begin::begin;
use super::drawn_grid::grid;
use super::drawn_measures::measures;
use super::drawn_order::order;
use super::drawn_picked::picked;
use super::drawn_text::FormText;
use super::drawn_told::found;
use super::opened::opened;
use super::tag::{Tag, classed, tag};
use super::text_field::text_field;
use super::value::{Fact, State, fact};
use crate::form::own::write::text;
use crate::project::finding::Place;
use crate::say::drawing;

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
    let now = fact(move || sheet.drawn.with(text));
    let field = FormText {
        key: "text",
        label: drawing::AS_TEXT,
        hint: drawing::AS_TEXT_HINT,
        take: drawing::TAKE_TEXT,
        rows: "12",
    };
    let field = field.view(sheet, now, move |form| sheet.lay("", form, Typed::OfItsOwn));
    opened("group", drawing::AS_TEXT, State::new(false)).with(field)
}
