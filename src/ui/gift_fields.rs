//! What goes into a box: its gifts, and the room round them.

use leptos::prelude::*;

use super::child::{each, shown};
use super::choice_field::ChoiceField;
use super::desk::{Desk, desk};
use super::gift_field::gift_field;
use super::length_field::LengthField;
use super::notes::notes;
use super::part_fields::id;
use super::tag::{Tag, button, classed, tag};
use super::value::{Fact, State, fact};
use crate::assembly::parts::Size;
use crate::fit::arrange;
use crate::fit::gifts::{own, room};
use crate::fit::grown::SIZES;
use crate::fit::things::THINGS;
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::measure::show::Figure;
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::fitting::Gifts;
use crate::say::{fitting, page};

/// What has no standard thickness is taken for this thick at first; the maker types what it is.
const THIN: Length = Length::mm(2);

/// The fields of what goes into the box at `place`.
#[must_use]
pub fn gift_fields(place: Place) -> Tag {
    let desk = desk();
    let part = desk.part(place);
    let gifts = fact(move || part.with(|p| p.as_ref().map_or_else(Gifts::default, |p| p.gifts.clone())));
    let count = fact(move || gifts.with(|g| g.kinds.len()));
    let sized =
        fact(move || part.with(|p| p.as_ref().is_some_and(|p| SIZES.iter().any(|s| p.inputs.contains_key(*s)))));
    let follow = move || {
        desk.edit_part(place, "", |p| p.inputs.retain(|key, _| !SIZES.contains(&key.as_str())));
        desk.epoch.update(|e| *e = e.wrapping_add(1));
    };
    let inside = move || {
        let follow = shown(move || sized.get(), move || button(fitting::SIZES_FOLLOW, follow).class("add"));
        let hint = classed("p", "hint").with(fitting::ROOM_HINT);
        vec![tag("div").with(follow), hint, classed("div", "fields").with(room_fields(place, gifts))]
    };
    classed("fieldset", "group")
        .with(tag("legend").with(fitting::GIFTS))
        .with(classed("p", "hint").with(fitting::GIFTS_HINT))
        .with(each(move || (0..count.get()).collect(), move |at| gift_field(place, at)))
        .with(notes(desk.findings(place, Some("gifts"))))
        .with(shown(move || count.get() > 0, inside))
        .with(add(desk, place, count))
}

/// The room round the gifts, in total.
fn room_fields(place: Place, gifts: Fact<Gifts>) -> Vec<Tag> {
    let desk = desk();
    let system = desk.system();
    let one = |key, label, of: fn(&mut Gifts) -> &mut Option<Given>, side: fn(Size) -> Length| {
        let usual = move || {
            let gifts = Gifts { kinds: gifts.get().kinds, ..Gifts::default() };
            format!("{}{}", page::USUAL, Figure::of(side(room(&gifts, system.get())), system.get()))
        };
        LengthField {
            id: id(place, key),
            label,
            hint: String::new(),
            range: bound::ROOM,
            value: fact(move || of(&mut gifts.get()).clone()),
            usual: Some(fact(usual)),
            findings: desk.findings(place, Some(key)),
            commit: Callback::new(move |given| {
                desk.edit_part(place, &id(place, key), |p| *of(&mut p.gifts) = given);
            }),
        }
        .view()
    };
    vec![
        one("room-width", fitting::ROOM[0], |g| &mut g.room_width, |s| s.width),
        one("room-depth", fitting::ROOM[1], |g| &mut g.room_depth, |s| s.depth),
        one("room-height", fitting::ROOM[2], |g| &mut g.room_height, |s| s.height),
    ]
}

/// Takes one more gift in: one of the maker's own, or a thing of a standard size.
fn add(desk: Desk, place: Place, count: Fact<usize>) -> Tag {
    let chosen = State::new(String::new());
    let things = THINGS.iter().enumerate().map(|(i, t)| (i.to_string(), format!("{} ({})", t.name, t.standard)));
    let all = std::iter::once((String::new(), fitting::GIFT_OWN.to_owned())).chain(things).collect::<Vec<_>>();
    let choice = ChoiceField {
        id: id(place, "gift"),
        label: fitting::GIFT,
        hint: String::new(),
        choices: Fact::fixed(all),
        value: fact(move || chosen.get()),
        findings: Fact::fixed(Vec::new()),
        commit: Callback::new(move |key| chosen.set(key)),
    };
    let take = move || {
        let thing = chosen.get_untracked().parse().ok().and_then(|i: usize| THINGS.get(i));
        let gift = thing.map_or_else(|| own(desk.system().get_untracked()), |t| t.gift(Some(THIN)));
        desk.edit_part(place, "", |p| p.gifts.kinds.extend(gift));
    };
    let full = move || count.get() >= arrange::KINDS;
    classed("div", "fields")
        .with(choice.view())
        .with(button(fitting::ADD_GIFT, take).class("add").while_so("disabled", full))
}
