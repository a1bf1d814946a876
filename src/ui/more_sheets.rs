//! Sheets of further sizes of one card.

use leptos::prelude::*;

use super::card_editor::edit;
use super::desk::desk;
use super::length_field::LengthField;
use super::notes::Notes;
use super::part_fields::id as field_id;
use super::supply_fields::SupplyFields;
use crate::measure::given::Given;
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::request::{MoreSheets as Size, Supply};
use crate::say::page;

/// Every further size, and a button for one more.
#[component]
pub fn MoreSheets(
    /// The card's number.
    id: u16,
) -> impl IntoView {
    let desk = desk();
    let count = Memo::new(move |_| desk.project.with(|p| p.card(id).map_or(0, |c| c.more_sheets.len())));
    let full = move || count.get() >= bound::MORE_SHEETS.most as usize;
    let one = move |at: usize| {
        let side = move |of: fn(&Size) -> &Given| {
            Memo::new(move |_| desk.project.with(|p| p.card(id)?.more_sheets.get(at).map(|m| of(m).clone())))
        };
        let take = move |given: Option<Given>, key: &str, of: fn(&mut Size) -> &mut Given| {
            edit(desk, id, &format!("{key}-{at}"), |c| {
                if let (Some(size), Some(given)) = (c.more_sheets.get_mut(at), given) {
                    *of(size) = given;
                }
            });
        };
        let take_width = move |g: Option<Given>| take(g, "width", |m| &mut m.width);
        let take_height = move |g: Option<Given>| take(g, "height", |m| &mut m.height);
        let remove = move |_| {
            edit(desk, id, "", |c| {
                if at < c.more_sheets.len() {
                    c.more_sheets.remove(at);
                }
            });
            desk.epoch.update(|e| *e = e.wrapping_add(1));
        };
        view! {
            <fieldset class="group">
                <legend>{page::another_size(at + 2)}</legend>
                <div class="fields">
                    <LengthField
                        id=field_id(Place::Card(id), &format!("width-{at}"))
                        label=page::SHEET_WIDTH.to_owned()
                        range=bound::SHEET_SIDE
                        value=side(|m| &m.width)
                        commit=take_width
                    />
                    <LengthField
                        id=field_id(Place::Card(id), &format!("height-{at}"))
                        label=page::SHEET_HEIGHT.to_owned()
                        range=bound::SHEET_SIDE
                        value=side(|m| &m.height)
                        commit=take_height
                    />
                    <SupplyFields id=id other=Some(at) />
                </div>
                <button type="button" on:click=remove>{page::REMOVE}</button>
            </fieldset>
        }
    };
    let add = move |_| {
        edit(desk, id, "", |c| {
            let (width, height) = (c.sheet_width.clone(), c.sheet_height.clone());
            c.more_sheets.push(Size { width, height, supply: Supply::default() });
        });
    };
    view! {
        <Notes findings=desk.findings(Place::Card(id), Some("more-sheets")) />
        <For each=move || 0..count.get() key=|at| *at children=one />
        <button
            type="button"
            class="add"
            disabled=full
            on:click=add
        >{page::ADD_SHEETS}</button>
    }
}
