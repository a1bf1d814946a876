//! What is asked first: the gift, the card, the sheets; each leads to its fields and says what has been answered.

use super::child::words;
use super::desk::{Desk, desk};
use super::part_fields::id;
use super::tag::{Tag, button, classed, tag};
use super::value::fact;
use crate::project::finding::Place;
use crate::project::request::{Card, Project};
use crate::say::begin;
use crate::web::here;

/// What is said of the design, and where it leads.
type Asked = (fn(&Project) -> String, fn(Desk));

/// Three short lines in place of a tour.
#[must_use]
pub fn prompts() -> Tag {
    let desk = desk();
    let asked: [Asked; 3] = [
        (begin::gift, to_gifts),
        (|p| of_card(p, begin::card), |desk| to_card(desk, "grammage")),
        (|p| of_card(p, begin::sheets), |desk| to_card(desk, "sheet")),
    ];
    let each = begin::ASKED.into_iter().zip(asked).map(|(name, (answer, go))| {
        let answer = fact(move || desk.project.with(answer));
        let said = classed("span", "answer").with(words(move || answer.get()));
        tag("li").with(button(tag("strong").with(name), move || go(desk)).with(said))
    });
    classed("ol", "prompts").is("aria-label", begin::ASKED_FIRST).with(each.collect::<Vec<_>>())
}

/// What is said of the first card.
fn of_card(project: &Project, say: fn(&Card) -> String) -> String {
    project.cards.first().map(say).unwrap_or_default()
}

/// Opens the box that is looked at, or else the first, where its gifts are put in.
fn to_gifts(desk: Desk) {
    let open = match desk.place.get_untracked() {
        at @ Place::Box(_) => Some(at),
        _ => desk.project.with_untracked(|p| p.boxes.first().map(|b| Place::Box(b.id))),
    };
    match open {
        Some(place) => show(desk, place, "gift"),
        None => here::focus("add-box".to_owned()),
    }
}

/// Opens the first card at one of its fields.
fn to_card(desk: Desk, field: &str) {
    if let Some(place) = desk.project.with_untracked(|p| p.cards.first().map(|c| Place::Card(c.id))) {
        show(desk, place, field);
    }
}

fn show(desk: Desk, place: Place, field: &str) {
    desk.place.set(place);
    here::focus(id(place, field));
}
