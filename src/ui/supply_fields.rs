//! Where sheets of one size come from: the drawer, the shop, at which price.

use leptos::prelude::*;

use super::card_editor::edit;
use super::count_field::CountField;
use super::desk::desk;
use super::money_field::MoneyField;
use super::part_fields::id as field_id;
use super::tag::Tag;
use super::tick::tick;
use super::value::{Fact, fact};
use crate::project::bound;
use crate::project::finding::{Finding, Place};
use crate::project::request::{Card, Shop, Supply};
use crate::say::page;

/// The supply of a card's first size, or of one of its others.
fn of(card: &mut Card, other: Option<usize>) -> Option<&mut Supply> {
    match other {
        None => Some(&mut card.supply),
        Some(at) => card.more_sheets.get_mut(at).map(|m| &mut m.supply),
    }
}

/// The fields of the supply of a card's first size, or of one of its others.
#[must_use]
pub fn supply_fields(id: u16, other: Option<usize>) -> Vec<Tag> {
    let desk = desk();
    let place = Place::Card(id);
    let key = move |key: &str| other.map_or_else(|| key.to_owned(), |at| format!("{key}-{at}"));
    let supply = fact(move || {
        // The same way in for reading and writing; a copy is read.
        let mut card = desk.project.with(|p| p.card(id).cloned());
        card.as_mut().and_then(|c| of(c, other).copied()).unwrap_or_default()
    });
    let change = move |name: &str, with: &dyn Fn(&mut Supply)| {
        edit(desk, id, name, |c| {
            if let Some(s) = of(c, other) {
                with(s);
            }
        });
    };
    let finds = move |input| -> Fact<Vec<Finding>> {
        if other.is_none() { desk.findings(place, Some(input)) } else { Fact::fixed(Vec::new()) }
    };
    let (have, price) = (key("have"), key("price"));
    let have = CountField {
        id: field_id(place, &have),
        label: page::HAVE,
        hint: page::HAVE_HINT,
        range: bound::HAVE,
        value: fact(move || supply.get().have),
        findings: finds("have"),
        commit: Callback::new(move |n| change(&have, &|s| s.have = n)),
    };
    let price = MoneyField {
        id: field_id(place, &price),
        label: page::PRICE,
        hint: page::PRICE_HINT,
        most: bound::SHEET_PRICE.most,
        value: fact(move || supply.get().price.unwrap_or(0)),
        findings: finds("price"),
        commit: Callback::new(move |n| change(&price, &|s| s.price = (n > 0).then_some(n))),
    };
    let shop = tick(
        page::SHOP,
        move || supply.get().shop == Shop::Open,
        move |on| {
            change("", &|s| s.shop = if on { Shop::Open } else { Shop::Shut });
        },
    );
    vec![have.view(), price.view(), shop]
}
