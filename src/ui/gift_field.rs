//! One gift of a box: what it is called, what it looks like, how many, wrapped or not, and how it may be turned.

use leptos::prelude::*;

use super::child::live;
use super::choice_field::ChoiceField;
use super::count_field::CountField;
use super::desk::desk;
use super::length_field::LengthField;
use super::part_fields::id;
use super::tag::{Tag, button, classed, tag};
use super::text_field::text_field;
use super::tick::tick;
use super::value::{Fact, fact};
use crate::fit::arrange;
use crate::measure::given::Given;
use crate::project::bound::{GIFT_SIDE, GRAMS, Range};
use crate::project::finding::Place;
use crate::project::fitting::{Gift, ShapeKind, Turns, Wrap};
use crate::say::{fitting, page};

/// The fields of the gift that stands at `at` in the list of the box at `place`.
#[must_use]
pub fn gift_field(place: Place, at: usize) -> Tag {
    let desk = desk();
    let part = desk.part(place);
    let gift = fact(move || part.with(|p| p.as_ref().and_then(|p| p.gifts.kinds.get(at).cloned())));
    let key = move |key: &str| id(place, &format!("gift-{at}-{key}"));
    let change = move |name: &str, with: &dyn Fn(&mut Gift)| {
        let tag = if name.is_empty() { String::new() } else { key(name) };
        desk.edit_part(place, &tag, |p| {
            if let Some(gift) = p.gifts.kinds.get_mut(at) {
                with(gift);
            }
        });
    };
    let is = move |what: fn(&Gift) -> bool| move || gift.with(|g| g.as_ref().is_some_and(what));
    let kind = fact(move || gift.with(|g| g.as_ref().map_or(ShapeKind::Block, |g| g.shape.kind())));
    let kinds = fitting::GIFT_SHAPES.iter().enumerate().map(|(n, name)| (n.to_string(), (*name).to_owned()));
    let shape = ChoiceField {
        id: key("shape"),
        label: fitting::GIFT_SHAPE,
        hint: String::new(),
        choices: Fact::fixed(kinds.collect()),
        value: fact(move || ShapeKind::ALL.iter().position(|k| *k == kind.get()).unwrap_or_default().to_string()),
        findings: Fact::fixed(Vec::new()),
        commit: Callback::new(move |word: String| {
            if let Some(to) = word.parse().ok().and_then(|n: usize| ShapeKind::ALL.get(n)) {
                change("", &|g| g.shape = g.shape.clone().into_kind(*to));
            }
        }),
    };
    let side = move |number: usize, label| {
        LengthField {
            id: key(&number.to_string()),
            label,
            hint: String::new(),
            range: GIFT_SIDE,
            // The same way in for reading and writing; a copy is read.
            value: fact(move || gift.get()?.shape.sides().into_iter().nth(number).cloned()),
            usual: None,
            findings: Fact::fixed(Vec::new()),
            commit: Callback::new(move |given: Option<Given>| {
                change(&number.to_string(), &|g| {
                    if let (Some(side), Some(given)) = (g.shape.sides().into_iter().nth(number), &given) {
                        *side = given.clone();
                    }
                });
            }),
        }
        .view()
    };
    let sides = move || {
        let names: &[_] = if kind.get() == ShapeKind::Cylinder { &fitting::GIFT_ROUND } else { &fitting::GIFT_SIDES };
        names.iter().enumerate().map(|(number, label)| side(number, *label)).collect::<Vec<_>>()
    };
    let count = CountField {
        id: key("count"),
        label: fitting::GIFT_COUNT,
        hint: "",
        range: Range::new(1, arrange::GIFTS),
        value: fact(move || gift.with(|g| g.as_ref().map_or(1, |g| g.count))),
        findings: Fact::fixed(Vec::new()),
        commit: Callback::new(move |n| change("count", &|g| g.count = n)),
    };
    let grams = CountField {
        id: key("grams"),
        label: fitting::GIFT_GRAMS,
        hint: fitting::GIFT_GRAMS_HINT,
        range: GRAMS,
        value: fact(move || gift.with(|g| g.as_ref().and_then(|g| g.grams).unwrap_or(0))),
        findings: Fact::fixed(Vec::new()),
        commit: Callback::new(move |n| change("grams", &|g| g.grams = (n > 0).then_some(n))),
    };
    let wrapped = tick(fitting::GIFT_WRAPPED, is(|g| g.wrap == Wrap::Wrapped), move |on| {
        change("", &|g| g.wrap = if on { Wrap::Wrapped } else { Wrap::Bare });
    });
    let upright = tick(fitting::GIFT_UPRIGHT, is(|g| g.turns == Turns::Upright), move |on| {
        change("", &|g| g.turns = if on { Turns::Upright } else { Turns::Any });
    });
    let remove = move || {
        desk.edit_part(place, "", |p| {
            if at < p.gifts.kinds.len() {
                p.gifts.kinds.remove(at);
            }
        });
        desk.epoch.update(|e| *e = e.wrapping_add(1));
    };
    let name = fact(move || gift.with(|g| g.as_ref().map_or(String::new(), |g| g.name.clone())));
    let placeholder = Fact::fixed(fitting::GIFT_OWN.to_owned());
    let fields = classed("div", "fields")
        .with(text_field(key("name"), page::NAME, placeholder, name, move |text| {
            change("name", &|g| g.name.clone_from(&text));
        }))
        .with(shape.view())
        .with(live(sides))
        .with(count.view())
        .with(grams.view())
        .with(wrapped)
        .with(upright);
    classed("fieldset", "group")
        .with(tag("legend").with(fitting::gift_number(at + 1)))
        .with(fields)
        .with(button(page::REMOVE, remove))
}
