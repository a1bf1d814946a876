//! Sheets of further sizes of one card.

use leptos::prelude::*;

use super::card_editor::edit;
use super::child::each;
use super::desk::desk;
use super::length_field::LengthField;
use super::notes::notes;
use super::part_fields::id as field_id;
use super::supply_fields::supply_fields;
use super::tag::{Tag, button, classed, tag};
use super::value::{Fact, fact};
use crate::measure::given::Given;
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::request::{MoreSheets, Supply};
use crate::say::page;

/// Every further size of the card with this number, and a button for one more.
#[must_use]
pub fn more_sheets(id: u16) -> Tag {
    let desk = desk();
    let count = fact(move || desk.project.with(|p| p.card(id).map_or(0, |c| c.more_sheets.len())));
    let full = move || count.get() >= bound::MORE_SHEETS.most as usize;
    let side = move |at: usize, label, key: &'static str, of: fn(&mut MoreSheets) -> &mut Given| {
        let tag = format!("{key}-{at}");
        let field = LengthField {
            id: field_id(Place::Card(id), &tag),
            label,
            hint: String::new(),
            range: bound::SHEET_SIDE,
            value: fact(move || {
                // The same way in for reading and writing; a copy is read.
                let mut card = desk.project.with(|p| p.card(id).cloned())?;
                card.more_sheets.get_mut(at).map(|m| of(m).clone())
            }),
            usual: None,
            findings: Fact::fixed(Vec::new()),
            commit: Callback::new(move |given| {
                edit(desk, id, &tag, |c| {
                    if let (Some(size), Some(given)) = (c.more_sheets.get_mut(at), given) {
                        *of(size) = given;
                    }
                });
            }),
        };
        field.view()
    };
    let one = move |at: usize| {
        let remove = move || {
            edit(desk, id, "", |c| {
                if at < c.more_sheets.len() {
                    c.more_sheets.remove(at);
                }
            });
            desk.epoch.update(|e| *e = e.wrapping_add(1));
        };
        let fields = classed("div", "fields")
            .with(side(at, page::SHEET_WIDTH, "width", |m| &mut m.width))
            .with(side(at, page::SHEET_HEIGHT, "height", |m| &mut m.height))
            .with(supply_fields(id, Some(at)));
        classed("fieldset", "group")
            .with(tag("legend").with(page::another_size(at + 2)))
            .with(fields)
            .with(button(page::REMOVE, remove))
    };
    let add = move || {
        edit(desk, id, "", |c| {
            let (width, height) = (c.sheet_width.clone(), c.sheet_height.clone());
            c.more_sheets.push(MoreSheets { width, height, supply: Supply::default() });
        });
    };
    tag("div")
        .with(notes(desk.findings(Place::Card(id), Some("more-sheets"))))
        .with(each(move || (0..count.get()).collect(), one))
        .with(button(page::ADD_SHEETS, add).class("add").while_so("disabled", full))
}
