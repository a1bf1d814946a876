//! The fields of a box's or holder's form, made from what the form says it asks.

use leptos::prelude::*;

use super::child::{Child, Inside, live, shown};
use super::choice_field::ChoiceField;
use super::desk::{Desk, desk};
use super::length_field::LengthField;
use super::value::{Fact, fact};
use crate::fit::grown::SIZES;
use crate::form::input::{Default as Usual, Input, Kind};
use crate::form::registry;
use crate::measure::given::Given;
use crate::measure::show::Figure;
use crate::project::finding::Place;
use crate::project::request::Entry;
use crate::say::page;

/// One field for each input of the form; a length that the form has no use for now is left out.
#[must_use]
pub fn part_fields(place: Place) -> Inside {
    let desk = desk();
    let part = desk.part(place);
    let form = fact(move || part.with(|p| p.as_ref().map(|p| p.form.clone())));
    live(move || {
        let form = form.get().and_then(|key| registry::named(&key));
        form.map(|f| f.inputs.iter().map(|input| field(desk, place, input)).collect::<Vec<_>>())
    })
}

fn field(desk: Desk, place: Place, input: &'static Input) -> Inside {
    match input.kind {
        Kind::Length { range, default } => {
            let plan = desk.shapes;
            let used =
                fact(move || plan.with(|p| p.part(place).map(|p| (p.used.is_empty(), p.used.get(input.key).copied()))));
            let findings = desk.findings(place, Some(input.key));
            // A length that the form has no use for is left out, unless something is wrong with it.
            let wanted = move || {
                let wanted = used.get().is_none_or(|(none, mine)| none || mine.is_some());
                wanted || findings.with(|f| !f.is_empty())
            };
            let part = desk.part(place);
            let value = fact(move || {
                part.with(|p| match p.as_ref()?.inputs.get(input.key)? {
                    Entry::Length(given) => Some(given.clone()),
                    _ => None,
                })
            });
            let system = desk.system();
            let follows = fact(move || {
                SIZES.contains(&input.key) && part.with(|p| p.as_ref().is_some_and(|p| !p.gifts.kinds.is_empty()))
            });
            let usual = fact(move || {
                let from = if follows.get() { page::FROM_GIFT } else { page::USUAL };
                let length = used.get().and_then(|u| u.1);
                length.map_or_else(String::new, |l| format!("{from}{}", Figure::of(l, system.get())))
            });
            let hint = match default {
                Usual::Is(_) => input.hint.to_owned(),
                Usual::Worked(how) => format!("{}. Usual: {how}", input.hint),
            };
            let commit =
                Callback::new(move |given: Option<Given>| set(desk, place, input.key, given.map(Entry::Length)));
            let field = move || {
                LengthField {
                    id: id(place, input.key),
                    label: input.name,
                    hint: hint.clone(),
                    range,
                    value,
                    usual: Some(usual),
                    findings,
                    commit,
                }
                .view()
            };
            shown(wanted, field)
        }
        Kind::Choice(choices) => {
            let first = choices.first().map_or("", |c| c.key);
            let all: Vec<_> = choices.iter().map(|c| (c.key.to_owned(), c.name.to_owned())).collect();
            let part = desk.part(place);
            let value = fact(move || {
                part.with(|p| match p.as_ref().and_then(|p| p.inputs.get(input.key)) {
                    Some(Entry::Choice(word)) => word.clone(),
                    _ => first.to_owned(),
                })
            });
            let commit = Callback::new(move |word: String| {
                set(desk, place, input.key, (word != first).then_some(Entry::Choice(word)));
                desk.settle();
            });
            let field = ChoiceField {
                id: id(place, input.key),
                label: input.name,
                hint: input.hint.to_owned(),
                choices: Fact::fixed(all),
                value,
                findings: desk.findings(place, Some(input.key)),
                commit,
            };
            field.view().view()
        }
    }
}

fn set(desk: Desk, place: Place, key: &'static str, entry: Option<Entry>) {
    desk.edit_part(place, &id(place, key), |part| {
        match entry {
            Some(entry) => part.inputs.insert(key.to_owned(), entry),
            None => part.inputs.remove(key),
        };
    });
}

/// A name for a field that is unique on the page.
#[must_use]
pub fn id(place: Place, key: &str) -> String {
    match place {
        Place::Set => format!("set-{key}"),
        Place::Board => format!("board-{key}"),
        Place::Card(n) => format!("card-{n}-{key}"),
        Place::Box(n) => format!("box-{n}-{key}"),
        Place::Holder => format!("holder-{key}"),
    }
}
