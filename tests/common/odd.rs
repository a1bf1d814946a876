//! Requests that can be kept and that nobody would make.

use proptest::collection::{btree_map, vec};
use proptest::option;
use proptest::prelude::*;

use snugfold::form::registry::FORMS;
use snugfold::measure::given::Given;
use snugfold::measure::system::System;
use snugfold::project::extra::Extra;
use snugfold::project::fitting::{Blank, Gift, Gifts, Shape, Turns, Wrap};
use snugfold::project::request::{Card, Entry, Mats, Part, Project};
use snugfold::project::tools::Board;

use super::projects::{
    facing, kind, length, lesson, lie, more_sheets, number, own, small_id, supply, system, tint, trimmer, weight,
};

/// A request that can be kept and that nobody would make.
pub fn odd_project() -> impl Strategy<Value = Project> {
    let board = (option::of(length()), option::of(length()))
        .prop_map(|(inch_step, metric_step)| Board { inch_step, metric_step });
    (
        odd_text(200),
        system(),
        board,
        (number(), trimmer(), number()),
        vec(odd_card(), 0..5),
        vec(odd_part(), 0..8),
        option::of(odd_part()),
        own(),
    )
        .prop_map(|(name, system, board, (sets, trimmer, spares), cards, boxes, holder, own)| Project {
            name,
            system,
            board,
            sets,
            trimmer,
            spares,
            cards,
            boxes,
            holder,
            own,
            ..Project::default()
        })
}

/// Any characters at all, line breaks and the others that are not seen among them.
pub fn odd_text(most: usize) -> impl Strategy<Value = String> {
    prop_oneof![
        vec(any::<char>(), 0..=most).prop_map(|chars| chars.into_iter().collect()),
        vec(prop::sample::select("\0\n\u{feff}\u{202e}\\\"#%/ .é".chars().collect::<Vec<_>>()), 0..=most.min(12))
            .prop_map(|chars| chars.into_iter().collect()),
    ]
}

fn odd_card() -> impl Strategy<Value = Card> {
    (
        small_id(),
        odd_text(200),
        weight(),
        (option::of(length()), number(), option::of(lesson())),
        length(),
        length(),
        tint(),
        (supply(), more_sheets(), lie()),
    )
        .prop_map(
            |(
                id,
                name,
                grammage,
                (thickness, stack, lesson),
                sheet_width,
                sheet_height,
                tint,
                (supply, more_sheets, lie),
            )| Card {
                id,
                name,
                grammage,
                thickness,
                stack,
                lesson,
                sheet_width,
                sheet_height,
                tint,
                supply,
                more_sheets,
                lie,
            },
        )
}

fn odd_part() -> impl Strategy<Value = Part> {
    let form = prop_oneof![
        4 => prop::sample::select(FORMS.iter().map(|f| f.key.to_owned()).collect::<Vec<_>>()),
        1 => odd_text(60),
    ];
    let keys: Vec<String> = FORMS.iter().flat_map(|f| f.inputs).map(|i| i.key.to_owned()).collect();
    let key = prop_oneof![4 => prop::sample::select(keys), 1 => odd_text(60)];
    let inputs = btree_map(key, odd_entry(), 0..8);
    let drawn = prop_oneof![3 => Just(String::new()), 1 => odd_text(200)];
    let rest = (option::of(odd_mats()), odd_gifts(), facing(), any::<bool>(), vec(odd_extra(), 0..4), drawn);
    (small_id(), odd_text(200), form, number(), small_id(), inputs, rest).prop_map(
        |(id, name, form, count, card, inputs, (mats, gifts, facing, joined, extras, drawn))| Part {
            id,
            name,
            form,
            count,
            card,
            inputs: inputs.into_iter().collect(),
            mats,
            gifts,
            extras,
            facing,
            blank: if joined { Blank::Joined } else { Blank::Whole },
            drawn,
        },
    )
}

fn odd_extra() -> impl Strategy<Value = Extra> {
    (kind(), odd_text(60), option::of(length()), option::of(length()), option::of(small_id()))
        .prop_map(|(kind, face, width, height, card)| Extra { kind, face, width, height, card })
}

fn odd_gifts() -> impl Strategy<Value = Gifts> {
    let room = || option::of(length());
    let gifts = (vec(odd_gift(), 0..4), room(), room(), room())
        .prop_map(|(kinds, room_width, room_depth, room_height)| Gifts { kinds, room_width, room_depth, room_height });
    prop_oneof![Just(Gifts::default()), gifts]
}

fn odd_gift() -> impl Strategy<Value = Gift> {
    let shape = prop_oneof![
        (length(), length(), length()).prop_map(|(width, depth, height)| Shape::Block { width, depth, height }),
        (length(), length()).prop_map(|(across, height)| Shape::Cylinder { across, height }),
        (length(), length(), length()).prop_map(|(width, depth, height)| Shape::Soft { width, depth, height }),
    ];
    let wrap = prop_oneof![Just(Wrap::Bare), Just(Wrap::Wrapped)];
    let turns = prop_oneof![Just(Turns::Any), Just(Turns::Upright)];
    (odd_text(60), shape, number(), wrap, turns, option::of(number()))
        .prop_map(|(name, shape, count, wrap, turns, grams)| Gift { name, shape, count, wrap, turns, grams })
}

/// A word that reads as a length is a length in a file, so that no such word is kept.
fn odd_entry() -> impl Strategy<Value = Entry> {
    let word = prop_oneof![
        3 => prop::sample::select(vec!["yes", "no", "inside", "finished", "both"]).prop_map(str::to_owned),
        1 => odd_text(60),
    ];
    prop_oneof![
        4 => length().prop_map(Entry::Length),
        1 => number().prop_map(Entry::Count),
        2 => word.prop_filter("it reads as a length", |w| Given::read(w, System::Metric).is_err()).prop_map(Entry::Choice),
    ]
}

fn odd_mats() -> impl Strategy<Value = Mats> {
    let panel = prop_oneof![prop::sample::select(vec!["front", "back", "lid"]).prop_map(str::to_owned), odd_text(60)];
    (small_id(), option::of(length()), vec(panel, 0..4)).prop_map(|(card, reveal, off)| Mats { card, reveal, off })
}
