//! Mats of a box or holder: whether, from which card, with which border, on which faces.

use leptos::prelude::*;

use super::card_choice::card_choice;
use super::child::{each, shown};
use super::desk::{Desk, desk};
use super::length_field::LengthField;
use super::part_fields::id;
use super::tag::{Tag, classed, tag};
use super::tick::tick;
use super::value::{Fact, fact};
use crate::measure::given::Given;
use crate::measure::show::Figure;
use crate::net::flat::Matting;
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::request::Mats;
use crate::say::page;

/// The fields of the mats of a box or holder.
#[must_use]
pub fn mats_fields(place: Place) -> Tag {
    let desk = desk();
    let part = desk.part(place);
    let mats = fact(move || part.with(|p| p.as_ref().and_then(|p| p.mats.clone())));
    let on = fact(move || mats.with(Option::is_some));
    let toggle = move || {
        let paper = desk.project.with_untracked(|p| p.cards.last().map_or(1, |c| c.id));
        desk.edit_part(place, "", |part| {
            part.mats = match part.mats {
                Some(_) => None,
                None => Some(Mats { card: paper, reveal: None, off: Vec::new() }),
            };
        });
    };
    let system = desk.system();
    let usual =
        fact(move || format!("{}{}", page::USUAL, Figure::of(bound::DEFAULT_REVEAL.of(system.get()), system.get())));
    let reveal = fact(move || mats.with(|m| m.as_ref().and_then(|m| m.reveal.clone())));
    let card = fact(move || mats.with(|m| m.as_ref().map_or(0, |m| m.card)));
    let set_reveal = Callback::new(move |given: Option<Given>| edit(desk, place, "reveal", |m| m.reveal = given));
    let fields = move || {
        let card = card_choice(id(place, "mats-card"), page::MATS_CARD, card, Fact::fixed(Vec::new()), move |card| {
            edit(desk, place, "mats-card", |m| m.card = card);
        });
        let reveal = LengthField {
            id: id(place, "reveal"),
            label: page::REVEAL,
            hint: page::REVEAL_HINT.to_owned(),
            range: bound::REVEAL,
            value: reveal,
            usual: Some(usual),
            findings: desk.findings(place, Some("reveal")),
            commit: set_reveal,
        };
        vec![classed("div", "fields").with(card).with(reveal.view()), faces(place)]
    };
    classed("fieldset", "group")
        .with(tag("legend").with(page::MATS))
        .with(tick(page::MATS_ON, move || on.get(), move |_| toggle()).is("id", id(place, "mats")))
        .with(shown(move || on.get(), fields))
}

fn edit(desk: Desk, place: Place, key: &str, change: impl FnOnce(&mut Mats)) {
    desk.edit_part(place, &id(place, key), |part| {
        if let Some(mats) = &mut part.mats {
            change(mats);
        }
    });
}

/// The faces that can have a mat, each to be switched.
fn faces(place: Place) -> Tag {
    let desk = desk();
    let part = desk.part(place);
    let names = fact(move || {
        desk.shapes.with(|plan| {
            let assembly = plan.part(place).and_then(|p| p.assembly.as_ref());
            let faces = assembly.into_iter().flat_map(|a| {
                let parts = a.parts.iter().enumerate();
                parts.flat_map(move |(i, part)| {
                    let panels = part.net.panels.iter().filter(|p| p.mat == Matting::Usual);
                    panels.map(move |p| a.face(i, p.name))
                })
            });
            faces.collect::<Vec<_>>()
        })
    });
    let face = move |name: String| {
        let (key, shown) = (name.clone(), name.clone());
        let on = fact(move || {
            part.with(|p| p.as_ref().and_then(|p| p.mats.as_ref()).is_some_and(|m| !m.off.contains(&key)))
        });
        let toggle = move |_: bool| {
            edit(desk, place, "", |m| {
                if m.off.contains(&name) {
                    m.off.retain(|o| *o != name);
                } else {
                    m.off.push(name.clone());
                }
            });
        };
        tick(shown, move || on.get(), toggle)
    };
    classed("fieldset", "faces").with(tag("legend").with(page::FACES)).with(each(move || names.get(), face))
}
