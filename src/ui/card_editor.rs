//! One card: what it is called, how heavy, how thick, on what sheet, in what colour.

use leptos::prelude::*;

use super::child::live;
use super::choice_field::{ChoiceField, one_of};
use super::count_field::CountField;
use super::desk::{Desk, desk};
use super::labelled::labelled;
use super::length_field::LengthField;
use super::more_sheets::more_sheets;
use super::notes::notes;
use super::part_fields::id as field_id;
use super::supply_fields::supply_fields;
use super::tag::{Tag, classed, tag};
use super::text_field::text_field;
use super::typed_field::TypedField;
use super::value::{Fact, fact};
use crate::measure::given::Given;
use crate::measure::show::Figure;
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::request::{Card, Tint};
use crate::say::{page, refusal};
use crate::stock::sheets::{STANDARD, StandardSheet, standard};
use crate::stock::thickness::estimated;
use crate::stock::weight::BasisWeight;

/// The fields of the card with this number.
#[must_use]
pub fn card_editor(id: u16) -> Vec<Tag> {
    let desk = desk();
    let place = Place::Card(id);
    let field = move |key: &str| field_id(place, key);
    let card = fact(move || desk.project.with(|p| p.card(id).cloned()));
    let name = fact(move || card.with(|c| c.as_ref().map_or(String::new(), |c| c.name.clone())));
    let grammage = fact(move || card.with(|c| c.as_ref().map_or(BasisWeight::Grams(0), |c| c.grammage)));
    let thickness = fact(move || card.with(|c| c.as_ref().and_then(|c| c.thickness.clone())));
    let stack = fact(move || card.with(|c| c.as_ref().map_or(1, |c| c.stack)));
    let width = fact(move || card.with(|c| c.as_ref().map(|c| c.sheet_width.clone())));
    let height = fact(move || card.with(|c| c.as_ref().map(|c| c.sheet_height.clone())));
    let tint = fact(move || card.with(|c| c.as_ref().map_or(String::new(), |c| c.tint.hex())));
    let lie = one_of(
        (field("lie"), page::LIE, page::LIE_HINT),
        &page::LIES,
        move || card.with(|c| c.as_ref().map(|c| c.lie)),
        desk.findings(place, Some("lie")),
        move |lie| edit(desk, id, "", |c| c.lie = lie),
    );
    let system = desk.system();
    let usual = fact(move || format!("{}{}", page::USUAL, Figure::of(estimated(grammage.get().grams()), system.get())));
    let now = fact(move || {
        let at = card.with(|c| c.as_ref().and_then(|c| standard(c.sheet_width.length(), c.sheet_height.length())));
        at.map_or(String::new(), |i| i.to_string())
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
    let count = |key, label, hint, range, value, set: fn(&mut Card, u32)| {
        let commit = Callback::new(move |n| edit(desk, id, key, |c| set(c, n)));
        let findings = desk.findings(place, Some(key));
        CountField { id: field(key), label, hint, range, value, findings, commit }.view()
    };
    let length = |key, label, hint: &str, range, value, usual, set: fn(&mut Card, Option<Given>)| {
        let commit = Callback::new(move |given| edit(desk, id, key, |c| set(c, given)));
        let findings = desk.findings(place, Some(key));
        LengthField { id: field(key), label, hint: hint.to_owned(), range, value, usual, findings, commit }.view()
    };
    let tint_field = live(move || {
        let input = tag("input")
            .is("type", "color")
            .value(move || tint.get())
            .on("input", take_tint)
            .on("change", move |_| desk.settle());
        labelled(field("tint"), page::spelt(page::TINT, desk.spelling.get()), input)
    });
    let sheet = ChoiceField {
        id: field("sheet"),
        label: page::SHEET,
        hint: page::SHEET_HINT.to_owned(),
        choices: Fact::fixed(sheets),
        value: now,
        findings: Fact::fixed(Vec::new()),
        commit: Callback::new(take_sheet),
    };
    let read = |text: &str| BasisWeight::read(text).filter(|w| bound::GRAMMAGE.holds(w.grams()));
    let weight = TypedField {
        id: field("grammage"),
        label: page::GRAMMAGE,
        hint: page::GRAMMAGE_HINT.to_owned(),
        keys: "text",
        value: fact(move || grammage.get().written()),
        usual: None,
        findings: desk.findings(place, Some("grammage")),
        read: Callback::new(move |text: String| read(&text).map(drop).ok_or_else(|| refusal::weight(bound::GRAMMAGE))),
        commit: Callback::new(move |text: String| {
            if let Some(weight) = read(&text) {
                edit(desk, id, "grammage", |c| c.grammage = weight);
            }
        }),
    };
    let named = move |text| edit(desk, id, "name", |c| c.name = text);
    let fields = classed("div", "fields")
        .with(text_field(field("name"), page::CARD_NAME, Fact::fixed(String::new()), name, named))
        .with(tint_field)
        .with(weight.view(|place| place))
        .with(length(
            "thickness",
            page::THICKNESS,
            page::THICKNESS_HINT,
            bound::STACK_THICKNESS,
            thickness,
            Some(usual),
            |c, given| c.thickness = given,
        ))
        .with(count("stack", page::STACK, page::STACK_HINT, bound::STACK, stack, |c, n| c.stack = n))
        .with(sheet.view())
        .with(length("sheet-width", page::SHEET_WIDTH, "", bound::SHEET_SIDE, width, None, |c, given| {
            c.sheet_width = given.unwrap_or_else(|| c.sheet_width.clone());
        }))
        .with(length("sheet-height", page::SHEET_HEIGHT, "", bound::SHEET_SIDE, height, None, |c, given| {
            c.sheet_height = given.unwrap_or_else(|| c.sheet_height.clone());
        }))
        .with(supply_fields(id, None))
        .with(lie);
    let others =
        &["grammage", "thickness", "stack", "sheet-width", "sheet-height", "have", "price", "more-sheets", "lie"];
    vec![notes(desk.findings_besides(place, others)), fields, more_sheets(id)]
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
