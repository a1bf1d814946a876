//! Mats of a box or holder: whether, from which card, with which border, on which faces.

use leptos::prelude::*;

use super::card_choice::CardChoice;
use super::desk::{Desk, desk};
use super::length_field::LengthField;
use super::part_fields::id;
use crate::measure::given::Given;
use crate::measure::show::Figure;
use crate::net::flat::Matting;
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::request::Mats;
use crate::say::page;

/// The fields of the mats.
#[component]
pub fn MatsFields(
    /// Of which box or holder.
    place: Place,
) -> impl IntoView {
    let desk = desk();
    let part = desk.part(place);
    let mats = Memo::new(move |_| part.with(|p| p.as_ref().and_then(|p| p.mats.clone())));
    let on = Memo::new(move |_| mats.with(Option::is_some));
    let toggle = move |_| {
        let paper = desk.project.with_untracked(|p| p.cards.last().map_or(1, |c| c.id));
        desk.edit_part(place, "", |part| {
            part.mats = match part.mats {
                Some(_) => None,
                None => Some(Mats { card: paper, reveal: None, off: Vec::new() }),
            };
        });
    };
    let system = desk.system();
    let usual = Signal::derive(move || {
        format!("{}{}", page::USUAL, Figure::of(bound::DEFAULT_REVEAL.of(system.get()), system.get()))
    });
    let reveal = Memo::new(move |_| mats.with(|m| m.as_ref().and_then(|m| m.reveal.clone())));
    let card = Memo::new(move |_| mats.with(|m| m.as_ref().map_or(0, |m| m.card)));
    let set_reveal = move |given: Option<Given>| edit(desk, place, "reveal", |m| m.reveal = given);
    view! {
        <fieldset class="group">
            <legend>{page::MATS}</legend>
            <label class="tick" for=id(place, "mats")>
                <input id=id(place, "mats") type="checkbox" prop:checked=on on:change=toggle />
                <span>{page::MATS_ON}</span>
            </label>
            <Show when=move || on.get()>
                <div class="fields">
                    <CardChoice
                        id=id(place, "mats-card")
                        label=page::MATS_CARD
                        value=card
                        commit=move |card: u16| edit(desk, place, "mats-card", |m| m.card = card)
                    />
                    <LengthField
                        id=id(place, "reveal")
                        label=page::REVEAL.to_owned()
                        hint=page::REVEAL_HINT
                        range=bound::REVEAL
                        value=reveal
                        usual=usual
                        findings=desk.findings(place, Some("reveal"))
                        commit=set_reveal
                    />
                </div>
                <Faces place=place />
            </Show>
        </fieldset>
    }
}

fn edit(desk: Desk, place: Place, key: &str, change: impl FnOnce(&mut Mats)) {
    desk.edit_part(place, &id(place, key), |part| {
        if let Some(mats) = &mut part.mats {
            change(mats);
        }
    });
}

/// The faces that can have a mat, each to be switched.
#[component]
fn Faces(place: Place) -> impl IntoView {
    let desk = desk();
    let part = desk.part(place);
    let names = Memo::new(move |_| {
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
        let on = Memo::new(move |_| {
            part.with(|p| p.as_ref().and_then(|p| p.mats.as_ref()).is_some_and(|m| !m.off.contains(&key)))
        });
        let toggle = move |_| {
            edit(desk, place, "", |m| {
                if m.off.contains(&name) {
                    m.off.retain(|o| *o != name);
                } else {
                    m.off.push(name.clone());
                }
            });
        };
        view! {
            <label class="tick">
                <input type="checkbox" prop:checked=on on:change=toggle />
                <span>{shown}</span>
            </label>
        }
    };
    view! {
        <fieldset class="faces">
            <legend>{page::FACES}</legend>
            <For each=move || names.get() key=Clone::clone children=face />
        </fieldset>
    }
}
