//! Everything that is asked about one box or the holder.

use leptos::prelude::*;

use super::card_choice::CardChoice;
use super::count_field::CountField;
use super::desk::desk;
use super::form_picker::FormPicker;
use super::mats_fields::MatsFields;
use super::notes::Notes;
use super::odds_line::OddsLine;
use super::part_fields::{PartFields, id};
use super::size_table::SizeTable;
use super::text_field::TextField;
use crate::form::registry;
use crate::project::bound;
use crate::project::finding::Place;
use crate::say::page;

/// The fields of a box or holder.
#[component]
pub fn PartEditor(
    /// Which one.
    place: Place,
) -> impl IntoView {
    let desk = desk();
    let part = desk.part(place);
    let name = Memo::new(move |_| part.with(|p| p.as_ref().map_or(String::new(), |p| p.name.clone())));
    let form = Memo::new(move |_| part.with(|p| p.as_ref().map_or(String::new(), |p| p.form.clone())));
    let count = Memo::new(move |_| part.with(|p| p.as_ref().map_or(1, |p| p.count)));
    let card = Memo::new(move |_| part.with(|p| p.as_ref().map_or(0, |p| p.card)));
    let form_name = Signal::derive(move || form.with(|f| registry::named(f).map_or("", |f| f.name).to_owned()));
    view! {
        <div class="part-editor">
            <Notes findings=desk.findings(place, None) />
            <FormPicker place=place />
            <div class="fields">
                <TextField
                    id=id(place, "name")
                    label=page::NAME
                    placeholder=form_name
                    value=name
                    commit=move |text: String| desk.edit_part(place, &id(place, "name"), |p| p.name = text)
                />
                {(place != Place::Holder).then(|| view! {
                    <CountField
                        id=id(place, "count")
                        label=page::COUNT.to_owned()
                        range=bound::BOX_COUNT
                        value=count
                        findings=desk.findings(place, Some("count"))
                        commit=move |n: u32| desk.edit_part(place, &id(place, "count"), |p| p.count = n)
                    />
                })}
                <CardChoice
                    id=id(place, "card")
                    label=page::CARD
                    value=card
                    findings=desk.findings(place, Some("card"))
                    commit=move |n: u16| desk.edit_part(place, "", |p| p.card = n)
                />
            </div>
            <fieldset class="group">
                <legend>{page::SIZES}</legend>
                <div class="fields"><PartFields place=place /></div>
                <SizeTable place=place />
                {(place == Place::Holder).then(|| view! { <OddsLine /> })}
            </fieldset>
            <MatsFields place=place />
        </div>
    }
}
