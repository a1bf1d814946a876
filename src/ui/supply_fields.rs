//! Where sheets of one size come from: the drawer, the shop, at which price.

use leptos::prelude::*;

use super::card_editor::edit;
use super::count_field::CountField;
use super::desk::desk;
use super::part_fields::id as field_id;
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

/// The fields of a supply.
#[component]
pub fn SupplyFields(
    /// The card's number.
    id: u16,
    /// Which of its other sizes; none for its first.
    other: Option<usize>,
) -> impl IntoView {
    let desk = desk();
    let place = Place::Card(id);
    let key = move |key: &str| other.map_or_else(|| key.to_owned(), |at| format!("{key}-{at}"));
    let supply = Memo::new(move |_| {
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
    let (have, price) = (key("have"), key("price"));
    let (have_id, price_id, shop_id) = (field_id(place, &have), field_id(place, &price), field_id(place, &key("shop")));
    let finds = move |input| -> Signal<Vec<Finding>> {
        if other.is_none() { desk.findings(place, Some(input)).into() } else { Signal::default() }
    };
    view! {
        <CountField
            id=have_id
            label=page::HAVE.to_owned()
            hint=page::HAVE_HINT
            range=bound::HAVE
            value=Signal::derive(move || supply.get().have)
            findings=finds("have")
            commit=move |n: u32| change(&have, &|s| s.have = n)
        />
        <CountField
            id=price_id
            label=page::PRICE.to_owned()
            hint=page::PRICE_HINT
            range=bound::SHEET_PRICE
            value=Signal::derive(move || supply.get().price.unwrap_or(0))
            findings=finds("price")
            commit=move |n: u32| change(&price, &|s| s.price = (n > 0).then_some(n))
        />
        <label class="tick" for=shop_id>
            <input
                id=field_id(place, &key("shop"))
                type="checkbox"
                prop:checked=move || supply.get().shop == Shop::Open
                on:change=move |e| {
                    let shop = if event_target_checked(&e) { Shop::Open } else { Shop::Shut };
                    change("", &|s| s.shop = shop);
                }
            />
            <span>{page::SHOP}</span>
        </label>
    }
}
