//! One card: what it is called, how heavy, how thick, on what sheet, in what colour.

use leptos::prelude::*;

use super::choice_field::ChoiceField;
use super::count_field::CountField;
use super::desk::{Desk, desk};
use super::length_field::LengthField;
use super::more_sheets::MoreSheets;
use super::notes::Notes;
use super::part_fields::id as field_id;
use super::supply_fields::SupplyFields;
use super::text_field::TextField;
use crate::measure::given::Given;
use crate::measure::show::Figure;
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::request::{Card, Lie, Tint};
use crate::say::page;
use crate::stock::sheets::{STANDARD, StandardSheet};
use crate::stock::thickness::estimated;

/// What is said beside its own field.
const SHOWN: &[&str] = &["grammage", "thickness", "sheet-width", "sheet-height", "have", "price", "more-sheets"];

/// The fields of a card.
#[component]
pub fn CardEditor(
    /// Its number.
    id: u16,
) -> impl IntoView {
    let desk = desk();
    let place = Place::Card(id);
    let field = move |key: &str| field_id(place, key);
    let card = Memo::new(move |_| desk.project.with(|p| p.card(id).cloned()));
    let name = Memo::new(move |_| card.with(|c| c.as_ref().map_or(String::new(), |c| c.name.clone())));
    let grammage = Memo::new(move |_| card.with(|c| c.as_ref().map_or(0, |c| c.grammage)));
    let thickness = Memo::new(move |_| card.with(|c| c.as_ref().and_then(|c| c.thickness.clone())));
    let width = Memo::new(move |_| card.with(|c| c.as_ref().map(|c| c.sheet_width.clone())));
    let height = Memo::new(move |_| card.with(|c| c.as_ref().map(|c| c.sheet_height.clone())));
    let tint = Memo::new(move |_| card.with(|c| c.as_ref().map_or(String::new(), |c| c.tint.hex())));
    let upright = Memo::new(move |_| card.with(|c| c.as_ref().is_some_and(|c| c.lie == Lie::Upright)));
    let take_lie = move |event| {
        let lie = if event_target_checked(&event) { Lie::Upright } else { Lie::Either };
        edit(desk, id, "", |c| c.lie = lie);
    };
    let system = desk.system();
    let usual =
        Signal::derive(move || format!("{}{}", page::USUAL, Figure::of(estimated(grammage.get()), system.get())));
    let standard = Memo::new(move |_| {
        let at = |s: &StandardSheet| {
            card.with(|c| {
                c.as_ref().is_some_and(|c| (c.sheet_width.length(), c.sheet_height.length()) == (s.width, s.height))
            })
        };
        STANDARD.iter().position(at).map_or(String::new(), |i| i.to_string())
    });
    let sheets = std::iter::once((String::new(), page::SHEET_OWN.to_owned()))
        .chain(STANDARD.iter().enumerate().map(|(i, s)| (i.to_string(), s.name.to_owned())))
        .collect::<Vec<_>>();
    let take_sheet = move |key: String| {
        let sheet = key.parse().ok().and_then(|i: usize| STANDARD.get(i)).and_then(StandardSheet::given);
        if let Some((w, h)) = sheet {
            edit(desk, id, "", |c| (c.sheet_width, c.sheet_height) = (w, h));
            desk.epoch.update(|e| *e = e.wrapping_add(1));
        }
    };
    let take_tint = move |event| {
        if let Some(tint) = Tint::read(&event_target_value(&event)) {
            edit(desk, id, "tint", |c| c.tint = tint);
        }
    };
    let set_thickness = move |given: Option<Given>| edit(desk, id, "thickness", |c| c.thickness = given);
    let set_side = move |given: Option<Given>, key: &str, side: fn(&mut Card) -> &mut Given| {
        if let Some(given) = given {
            edit(desk, id, key, |c| *side(c) = given);
        }
    };
    let set_width = move |given: Option<Given>| set_side(given, "width", |c| &mut c.sheet_width);
    let set_height = move |given: Option<Given>| set_side(given, "height", |c| &mut c.sheet_height);
    view! {
        <Notes findings=desk.findings_besides(place, SHOWN) />
        <div class="fields">
            <TextField
                id=field("name")
                label=page::CARD_NAME
                value=name
                commit=move |text: String| edit(desk, id, "name", |c| c.name = text)
            />
            <div class="field">
                <label for=field("tint")>{move || page::spelt(page::TINT, desk.spelling.get())}</label>
                <input id=field("tint") type="color" prop:value=tint on:input=take_tint on:change=move |_| desk.settle() />
            </div>
            <CountField
                id=field("grammage")
                label=page::GRAMMAGE.to_owned()
                hint=page::GRAMMAGE_HINT
                range=bound::GRAMMAGE
                value=grammage
                findings=desk.findings(place, Some("grammage"))
                commit=move |n: u32| edit(desk, id, "grammage", |c| c.grammage = n)
            />
            <LengthField
                id=field("thickness")
                label=page::THICKNESS.to_owned()
                hint=page::THICKNESS_HINT
                range=bound::THICKNESS
                value=thickness
                usual=usual
                findings=desk.findings(place, Some("thickness"))
                commit=set_thickness
            />
            <ChoiceField
                id=field("sheet")
                label=page::SHEET
                hint=page::SHEET_HINT
                choices=sheets
                value=standard
                commit=take_sheet
            />
            <LengthField
                id=field("sheet-width")
                label=page::SHEET_WIDTH.to_owned()
                range=bound::SHEET_SIDE
                value=width
                findings=desk.findings(place, Some("sheet-width"))
                commit=set_width
            />
            <LengthField
                id=field("sheet-height")
                label=page::SHEET_HEIGHT.to_owned()
                range=bound::SHEET_SIDE
                value=height
                findings=desk.findings(place, Some("sheet-height"))
                commit=set_height
            />
            <SupplyFields id=id other=None />
            <label class="tick" for=field("lie")>
                <input id=field("lie") type="checkbox" prop:checked=upright on:change=take_lie />
                <span>{page::UPRIGHT}</span>
            </label>
        </div>
        <MoreSheets id=id />
    }
}

/// Changes the card of this number; edits with one `key` after another are taken back together.
pub fn edit(desk: Desk, id: u16, key: &str, change: impl FnOnce(&mut Card)) {
    let tag = if key.is_empty() { String::new() } else { field_id(Place::Card(id), key) };
    desk.edit(&tag, |p| {
        if let Some(card) = p.cards.iter_mut().find(|c| c.id == id) {
            change(card);
        }
    });
}
