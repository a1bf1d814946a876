//! Once one is made: how it slides, so that the next are planned for this card and this hand.

use leptos::prelude::*;

use super::child::{Inside, live, shown};
use super::desk::desk;
use super::either::either;
use super::length_field::LengthField;
use super::part_fields::id;
use super::said::said;
use super::tag::{button, classed, tag};
use super::value::{Fact, State, fact};
use crate::fit::lesson::{Heard, learned, lesson};
use crate::fit::odds::Accuracy;
use crate::make::slides;
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::fitting::Lesson;
use crate::say::fitting;
use crate::say::odds::learned as taught;

/// What is asked once one was made, where parts of `place` go into each other.
#[must_use]
pub fn lesson_fields(place: Place) -> Inside {
    let desk = desk();
    let part = desk.part(place);
    let asked = fact(move || desk.shapes.with(|p| p.part(place).is_some_and(|p| p.used.contains_key("clearance"))));
    let card = fact(move || part.with(|p| p.as_ref().map_or(0, |p| p.card)));
    let kept = fact(move || desk.project.with(|p| p.card(card.get()).and_then(|c| c.lesson.clone())));
    let now = move || kept.with(|k| k.as_ref().map_or(Length::ZERO, Lesson::wider));
    let keep = move |to: Option<Lesson>| {
        let card = card.get_untracked();
        desk.edit("", |p| {
            if let Some(card) = p.cards.iter_mut().find(|c| c.id == card) {
                card.lesson.clone_from(&to);
            }
        });
    };
    let right = State::new(false);
    let hear = move |heard| {
        right.set(false);
        let system = desk.system().get_untracked();
        keep(lesson(learned(now(), heard, system), system));
    };
    let feel = move || {
        vec![
            button(fitting::TIGHT, move || hear(Heard::Tight)),
            button(fitting::RIGHT, move || right.set(true)),
            button(fitting::LOOSE, move || hear(Heard::Loose)),
            button(fitting::FORGET, move || keep(None)).while_so("disabled", move || kept.with(Option::is_none)),
        ]
    };
    // Only along a row is the planned gap known.
    let planned = fact(move || {
        let accuracy = Accuracy::usual(desk.system().get());
        desk.shapes.with(|plan| {
            let holder = plan.holder.as_ref().filter(|h| h.place == place)?;
            Some(slides::odds(&plan.boxes, holder, plan.system, &accuracy)?.along.gap)
        })
    });
    // Learned at a tap, not while it is typed: what was planned when it was made must not move under the typing hand.
    let measured = State::new(None::<Given>);
    let learn = move || {
        if let (Some(gap), Some(planned)) = (measured.get_untracked(), planned.get_untracked()) {
            hear(Heard::Measured { planned, gap: gap.length() });
            measured.set(None);
        }
    };
    let gap = move || {
        let field = LengthField {
            id: id(place, "gap"),
            label: fitting::GAP,
            hint: fitting::GAP_HINT.to_owned(),
            range: bound::GAP,
            value: measured.into(),
            usual: Some(Fact::fixed(String::new())),
            findings: desk.findings(place, Some("gap")),
            commit: Callback::new(move |given: Option<Given>| measured.set(given)),
        };
        let learn = button(fitting::LEARN, learn).while_so("disabled", move || measured.with(Option::is_none));
        tag("div").with(field.view()).with(learn)
    };
    let told = move || {
        let words = |k| taught(&k, desk.system().get());
        let kept = kept.get().map_or_else(|| fitting::LESSON_HINT.into(), words);
        let now = if right.get() { fitting::STAYS.into() } else { kept };
        classed("p", "hint").is("role", "status").with(said(now))
    };
    let fields = move || {
        classed("div", "fields")
            .with(either(fitting::MADE_ONE, feel()))
            .with(shown(move || planned.with(Option::is_some), gap))
            .with(live(told))
    };
    shown(move || asked.get(), fields)
}
