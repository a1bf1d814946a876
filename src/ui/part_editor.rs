//! Everything that is asked about one box or the holder.

use leptos::prelude::*;

use super::card_choice::card_choice;
use super::child::shown;
use super::choice_field::one_of;
use super::count_field::CountField;
use super::desk::desk;
use super::drawn_editor::drawn_editor;
use super::extra_fields::extra_fields;
use super::form_picker::form_picker;
use super::gift_fields::gift_fields;
use super::grow_buttons::grow_buttons;
use super::lesson_fields::lesson_fields;
use super::mats_fields::mats_fields;
use super::notes::notes;
use super::odds_line::odds_line;
use super::part_fields::{id, part_fields};
use super::size_table::size_table;
use super::tag::{Tag, classed, tag};
use super::text_field::text_field;
use super::value::{Fact, fact};
use crate::form::own;
use crate::form::registry;
use crate::project::bound;
use crate::project::finding::{Place, What};
use crate::project::request::Part;
use crate::say::{fitting, page};

/// The fields of a box or holder.
#[must_use]
pub fn part_editor(place: Place) -> Tag {
    let desk = desk();
    let part = desk.part(place);
    let name = fact(move || part.with(|p| p.as_ref().map_or(String::new(), |p| p.name.clone())));
    let count = fact(move || part.with(|p| p.as_ref().map_or(1, |p| p.count)));
    let card = fact(move || part.with(|p| p.as_ref().map_or(0, |p| p.card)));
    let form_name = fact(move || {
        let form = |p: &Part| registry::named(&p.form).map_or("", |f| f.name).to_owned();
        part.with(|p| p.as_ref().map_or(String::new(), form))
    });
    let named = move |text| desk.edit_part(place, &id(place, "name"), |p| p.name = text);
    let how_many = (place != Place::Holder).then(|| {
        CountField {
            id: id(place, "count"),
            label: page::COUNT,
            hint: "",
            range: bound::BOX_COUNT,
            value: count,
            findings: desk.findings(place, Some("count")),
            commit: Callback::new(move |n| desk.edit_part(place, &id(place, "count"), |p| p.count = n)),
        }
        .view()
    });
    let which_card = card_choice(id(place, "card"), page::CARD, card, desk.findings(place, Some("card")), move |n| {
        desk.edit_part(place, "", |p| p.card = n);
    });
    let all = desk.findings(place, None);
    // What is wrong with a form that is drawn here is said where it is drawn.
    let said = fact(move || all.get().into_iter().filter(|f| !matches!(f.what, What::Own(_))).collect::<Vec<_>>());
    let may_join = fact(move || {
        let joined = part.with(|p| p.as_ref().is_some_and(|p| !p.blank.is_whole()));
        joined || said.with(|all| all.iter().any(|f| f.what == What::FitsJoined))
    });
    let holder = fact(move || desk.project.with(|p| p.holder.is_some()));
    let fields = classed("div", "fields")
        .with(text_field(id(place, "name"), page::NAME, form_name, name, named))
        .with(how_many)
        .with(shown(move || holder.get() && place != Place::Holder, move || vec![facing(place)]))
        .with(which_card)
        .with(shown(move || may_join.get(), move || vec![blank(place)]));
    let sizes = classed("fieldset", "group")
        .with(tag("legend").with(page::SIZES))
        .with(classed("div", "fields").with(part_fields(place)))
        .with(size_table(place))
        .with(grow_buttons(place))
        .with(odds_line(place))
        .with(lesson_fields(place));
    let drawn = fact(move || part.with(|p| p.as_ref().is_some_and(|p| p.form == own::FORM.key)));
    let editor = move || drawn_editor(place);
    classed("div", "part-editor")
        .with(notes(said))
        .with(form_picker(place))
        .with(fields)
        .with(shown(move || drawn.get(), editor))
        .with((place != Place::Holder).then(|| gift_fields(place)))
        .with(sizes)
        .with(mats_fields(place))
        .with(extra_fields(place))
}

/// Which face of a box looks forward.
fn facing(place: Place) -> Tag {
    let desk = desk();
    let part = desk.part(place);
    one_of(
        (id(place, "facing"), fitting::FACING, ""),
        &fitting::FACINGS,
        move || part.with(|p| p.as_ref().map(|p| p.facing)),
        Fact::fixed(Vec::new()),
        move |facing| desk.edit_part(place, "", |p| p.facing = facing),
    )
}

/// What the blank is cut as.
fn blank(place: Place) -> Tag {
    let desk = desk();
    let part = desk.part(place);
    one_of(
        (id(place, "blank"), page::BLANK, ""),
        &page::BLANKS,
        move || part.with(|p| p.as_ref().map(|p| p.blank)),
        desk.findings(place, Some("blank")),
        move |blank| desk.edit_part(place, "", |p| p.blank = blank),
    )
}
