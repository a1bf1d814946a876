//! What is added to a box or holder: second layers, labels, tags, windows, holes for a ribbon, a liner.

use leptos::prelude::*;

use super::child::{each, live};
use super::choice_field::{ChoiceField, one_of};
use super::desk::{Desk, desk};
use super::length_field::LengthField;
use super::notes::notes;
use super::part_fields::id;
use super::tag::{Tag, button, classed, tag};
use super::value::{Fact, State, fact};
use crate::make::extras::faces;
use crate::measure::given::Given;
use crate::measure::show::Figure;
use crate::project::bound::EXTRA_SIDE;
use crate::project::extra::{Extra, ExtraKind};
use crate::project::finding::Place;
use crate::say::{extras, names, page};

/// The fields of all that is added at `place`.
#[must_use]
pub fn extra_fields(place: Place) -> Tag {
    let desk = desk();
    let part = desk.part(place);
    let count = fact(move || part.with(|p| p.as_ref().map_or(0, |p| p.extras.len())));
    let next = State::new(ExtraKind::Label);
    let choice = one_of(
        (id(place, "extra"), extras::EXTRA, ""),
        &extras::KINDS,
        move || Some(next.get()),
        Fact::fixed(Vec::new()),
        move |kind| next.set(kind),
    );
    let add = move || {
        let kind = next.get_untracked();
        // Mats are usually of the last card, labels and layers too.
        let paper = desk.project.with_untracked(|p| p.cards.last().map(|c| c.id));
        let card = if kind == ExtraKind::Window || !kind.has_card() { None } else { paper };
        desk.edit_part(place, "", |p| p.extras.push(Extra { card, ..Extra::of(kind) }));
    };
    classed("fieldset", "group")
        .with(tag("legend").with(extras::EXTRAS))
        .with(classed("p", "hint").with(extras::EXTRAS_HINT))
        .with(each(move || (0..count.get()).collect(), move |at| extra_field(place, at)))
        .with(notes(desk.findings(place, Some("extras"))))
        .with(classed("div", "fields").with(choice).with(button(extras::ADD_EXTRA, add).class("add")))
}

fn extra_field(place: Place, at: usize) -> Tag {
    let desk = desk();
    let part = desk.part(place);
    let extra = fact(move || part.with(|p| p.as_ref().and_then(|p| p.extras.get(at).cloned())));
    let kind = fact(move || extra.with(|e| e.as_ref().map(|e| e.kind)));
    let remove = move || {
        desk.edit_part(place, "", |p| {
            if at < p.extras.len() {
                p.extras.remove(at);
            }
        });
        desk.epoch.update(|e| *e = e.wrapping_add(1));
    };
    let fields = move || kind.get().map(|kind| fields(place, at, kind, extra)).unwrap_or_default();
    classed("fieldset", "group")
        .with(tag("legend").with(live(move || kind.get().map_or("", extras::kind))))
        .with(classed("div", "fields").with(live(fields)))
        .with(button(page::REMOVE, remove))
}

fn fields(place: Place, at: usize, kind: ExtraKind, extra: Fact<Option<Extra>>) -> Vec<Tag> {
    let desk = desk();
    let key = move |name: &str| id(place, &format!("extra-{at}-{name}"));
    let mut all = Vec::new();
    if kind.has_face() {
        all.push(face(desk, place, at, key("face"), extra));
    }
    let sides: [fn(&mut Extra) -> &mut Option<Given>; 2] = [|e| &mut e.width, |e| &mut e.height];
    for (n, of) in sides.into_iter().enumerate().filter(|(n, _)| kind.has_sides()[*n]) {
        let name = ["width", "height"][n];
        let field = LengthField {
            id: key(name),
            label: extras::measures(kind)[n],
            hint: String::new(),
            range: EXTRA_SIDE,
            value: fact(move || extra.with(|e| e.clone().and_then(|mut e| of(&mut e).take()))),
            usual: Some(fact(move || usual(desk, place, at, n))),
            findings: Fact::fixed(Vec::new()),
            commit: Callback::new(move |given| {
                change(desk, place, at, &key(name), &|e| of(e).clone_from(&given));
            }),
        };
        all.push(field.view());
    }
    if kind.has_card() {
        all.push(card(desk, place, at, key("card"), kind, extra));
    }
    all
}

/// What a measure comes to where nothing is typed.
fn usual(desk: Desk, place: Place, at: usize, measure: usize) -> String {
    let system = desk.system().get();
    let asked = desk.part(place).with(|p| p.as_ref().map_or(0, |p| p.extras.len()));
    let made = desk.shapes.with(|plan| {
        let extras = &plan.part(place)?.extras;
        // One that cannot be made is not among them.
        extras.get(at).filter(|_| extras.len() == asked).map(|m| m.measures()[measure])
    });
    made.map_or_else(String::new, |l| format!("{}{}", page::USUAL, Figure::of(l, system)))
}

fn change(desk: Desk, place: Place, at: usize, key: &str, by: &dyn Fn(&mut Extra)) {
    desk.edit_part(place, key, |p| p.extras.get_mut(at).into_iter().for_each(by));
}

/// The face that it is on.
fn face(desk: Desk, place: Place, at: usize, id: String, extra: Fact<Option<Extra>>) -> Tag {
    let names = fact(move || {
        desk.shapes.with(|plan| {
            let assembly = plan.part(place).and_then(|p| p.assembly.as_ref());
            assembly.map_or_else(Vec::new, faces).into_iter().map(|(_, name)| (name.clone(), name)).collect::<Vec<_>>()
        })
    });
    let value = fact(move || {
        let chosen = extra.with(|e| e.as_ref().map_or(String::new(), |e| e.face.clone()));
        let first = || names.with(|n| n.first().map_or(String::new(), |f| f.0.clone()));
        if chosen.is_empty() { first() } else { chosen }
    });
    let commit = Callback::new(move |name: String| change(desk, place, at, "", &|e| e.face.clone_from(&name)));
    ChoiceField {
        id,
        label: extras::FACE,
        hint: String::new(),
        choices: names,
        value,
        findings: Fact::fixed(Vec::new()),
        commit,
    }
    .view()
}

/// The card that it is cut from, or none.
fn card(desk: Desk, place: Place, at: usize, id: String, kind: ExtraKind, extra: Fact<Option<Extra>>) -> Tag {
    let (label, none) = match kind {
        ExtraKind::Window => (extras::PANE, extras::OPEN),
        _ => (extras::FROM, extras::OWN_CARD),
    };
    let choices = fact(move || {
        let own = (String::new(), none.to_owned());
        let cards =
            desk.project.with(|p| p.cards.iter().map(|c| (c.id.to_string(), names::card(p, c.id))).collect::<Vec<_>>());
        std::iter::once(own).chain(cards).collect::<Vec<_>>()
    });
    let value = fact(move || extra.with(|e| e.as_ref().and_then(|e| e.card).map_or(String::new(), |c| c.to_string())));
    let commit = Callback::new(move |key: String| {
        change(desk, place, at, "", &|e| e.card = key.parse().ok());
        desk.settle();
    });
    ChoiceField { id, label, hint: String::new(), choices, value, findings: Fact::fixed(Vec::new()), commit }.view()
}
