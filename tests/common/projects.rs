//! Requests of every sort: likely ones, and with those of `odd` any that can be kept at all.

use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;

use super::odd::{odd_project, odd_text};

use snugfold::form::input::Kind;
use snugfold::form::registry::{FORMS, Form, Holds};
use snugfold::measure::given::Given;
use snugfold::measure::length::Length;
use snugfold::measure::show::Figure;
use snugfold::measure::system::System;
use snugfold::project::extra::{Extra, ExtraKind};
use snugfold::project::fitting::{Blank, Facing, Gifts, Lesson};
use snugfold::project::own::{Note, NoteKind, Own};
use snugfold::project::request::{Card, Entry, Lie, Mats, MoreSheets, Part, Project, Shop, Supply, Tint};
use snugfold::project::tools::{Board, Trimmer};
use snugfold::stock::weight::{Basis, BasisWeight};

/// Any request that can be kept: half of them likely, half of them odd.
pub fn any_project() -> impl Strategy<Value = Project> {
    prop_oneof![likely_project(), odd_project()]
}

/// A request as makers have them: known forms, values within their ranges, good card.
pub fn likely_project() -> impl Strategy<Value = Project> {
    let cards = (card(1), card(2)).prop_map(|(a, b)| vec![a, b]);
    let boxes = vec(likely_part(Holds::Gifts), 1..6);
    (name(), system(), 1_u32..40, cards, boxes, option::of(likely_part(Holds::Boxes))).prop_map(
        |(name, system, sets, cards, mut boxes, mut holder)| {
            for (id, part) in (1..).zip(&mut boxes) {
                part.id = id;
            }
            if let Some(holder) = &mut holder {
                holder.id = 0;
                holder.count = 1;
            }
            Project {
                name,
                system,
                board: Board::default(),
                sets,
                trimmer: Trimmer::default(),
                spares: 0,
                cards,
                boxes,
                holder,
                own: Own::default(),
                ..Project::default()
            }
        },
    )
}

/// What a maker may write, or anything else.
pub fn own() -> impl Strategy<Value = Own> {
    let kind = prop_oneof![Just(NoteKind::Note), Just(NoteKind::Step)];
    let note = (odd_text(60), kind, odd_text(2_000)).prop_map(|(at, kind, text)| Note { at, kind, text });
    (odd_text(200), vec(note, 0..4)).prop_map(|(credit, notes)| Own { credit, notes, ..Own::default() })
}

/// Where sheets come from.
pub fn supply() -> impl Strategy<Value = Supply> {
    let shop = prop_oneof![Just(Shop::Open), Just(Shop::Shut)];
    (number(), shop, option::of(number())).prop_map(|(have, shop, price)| Supply { have, shop, price })
}

pub fn more_sheets() -> impl Strategy<Value = Vec<MoreSheets>> {
    let one = (length(), length(), supply());
    vec(one.prop_map(|(width, height, supply)| MoreSheets { width, height, supply }), 0..4)
}

pub fn lie() -> impl Strategy<Value = Lie> {
    prop_oneof![Just(Lie::Either), Just(Lie::Upright), Just(Lie::GrainUp), Just(Lie::GrainAcross)]
}

pub fn trimmer() -> impl Strategy<Value = Trimmer> {
    let typed = || option::of(length());
    (typed(), typed(), typed(), typed(), typed()).prop_map(
        |(edge_trim, longest_cut, least_strip, score_error, cut_error)| Trimmer {
            edge_trim,
            longest_cut,
            least_strip,
            score_error,
            cut_error,
        },
    )
}

/// Either system.
pub fn system() -> impl Strategy<Value = System> {
    prop::sample::select(System::ALL.to_vec())
}

/// A name as people give them, in several scripts.
fn name() -> impl Strategy<Value = String> {
    let names = [
        "",
        "Linden tea",
        "Thanks to the neighbours",
        "Für Änne",
        "Мёд",
        "蜂蜜",
        "🍯 & 🐝",
        "a\"b<c>'",
        "ä\u{308}\u{200d}",
    ];
    prop_oneof![3 => prop::sample::select(names.map(str::to_owned).to_vec()), 1 => odd_text(40)]
}

/// Any number, small and round ones more often.
pub fn number() -> impl Strategy<Value = u32> {
    prop_oneof![4 => 0_u32..20, 1 => any::<u32>(), 1 => prop::sample::select(vec![127, 128, 10_000, u32::MAX])]
}

pub fn small_id() -> impl Strategy<Value = u16> {
    prop_oneof![4 => 0_u16..6, 1 => any::<u16>()]
}

/// A length as somebody might type it, in any spelling.
pub fn length() -> impl Strategy<Value = Given> {
    let whole = prop_oneof![3 => 0_u32..20, 1 => 0_u32..1_000_000_000];
    let digits = prop_oneof![3 => 0_u32..100, 1 => 0_u32..100_000];
    let part = prop_oneof![
        prop::sample::select(vec![" 1/4", "-3/8", " 63/64", "¼", " ½", "⅞", "⅓", " 2/4", " 1 / 2", "⁄3", "/7", ""])
            .prop_map(str::to_owned),
        (prop::sample::select(vec!['.', ',']), digits).prop_map(|(mark, digits)| format!("{mark}{digits}")),
    ];
    let unit = prop::sample::select(vec![
        "",
        " in",
        "in",
        "\"",
        "″",
        " inches",
        " IN.",
        " mm",
        "mm",
        " cm",
        "cm",
        "  mm",
        " Millimetres",
    ]);
    let sign = prop::sample::select(vec!["", "", "", "", "-", "+", "−"]);
    (sign, option::weighted(0.9, whole), part, unit, system()).prop_filter_map(
        "no length",
        |(sign, whole, part, unit, system)| {
            let whole = whole.map_or(String::new(), |w| w.to_string());
            let given = Given::read(&format!("{sign}{whole}{part}{unit}"), system).ok()?;
            (Given::read(given.text(), System::Metric).as_ref() == Ok(&given)).then_some(given)
        },
    )
}

/// A length within `least` and `most`, on a sixteenth or a millimetre, as somebody might type it.
fn length_within(least: Length, most: Length) -> impl Strategy<Value = Given> {
    (system(), 0_i64..=1_000).prop_map(move |(system, share)| {
        let step = if system == System::Inch { Length::inches(1, 16) } else { Length::MM };
        let length = step * ((least + (most - least).scaled(share, 1_000)) / step);
        let length = if length < least { length + step } else { length };
        Given::read(&Figure::of(length, system).to_string(), system).expect("a figure is a length")
    })
}

fn given(typed: &'static str) -> Given {
    Given::read(typed, System::Inch).expect("it is a length")
}

fn card(id: u16) -> impl Strategy<Value = Card> {
    let sheets = [("12 in", "12 in"), ("8 1/2 in", "11 in"), ("210 mm", "297 mm"), ("50 cm", "70 cm")];
    (
        name(),
        (120_u32..350).prop_map(BasisWeight::Grams),
        option::of(prop::sample::select(vec!["0.3 mm", "0,18 mm", "0.012\""])),
        prop::sample::select(sheets.to_vec()),
        tint(),
    )
        .prop_map(move |(name, grammage, thickness, (width, height), tint)| Card {
            id,
            name,
            grammage,
            thickness: thickness.map(given),
            stack: 1,
            lesson: None,
            sheet_width: given(width),
            sheet_height: given(height),
            tint,
            supply: Supply::default(),
            more_sheets: Vec::new(),
            lie: Lie::Either,
        })
}

pub fn weight() -> impl Strategy<Value = BasisWeight> {
    (number(), option::of(prop::sample::select(Basis::ALL.to_vec())))
        .prop_map(|(n, basis)| basis.map_or(BasisWeight::Grams(n), |b| BasisWeight::Pounds(n, b)))
}

pub fn lesson() -> impl Strategy<Value = Lesson> {
    (any::<bool>(), length()).prop_map(|(wider, by)| if wider { Lesson::Wider(by) } else { Lesson::Narrower(by) })
}

pub fn tint() -> impl Strategy<Value = Tint> {
    prop_oneof![Just(Tint::default()), (0_u32..0x100_0000).prop_map(Tint)]
}

/// A part of a form that holds what it should, some of its inputs typed.
fn likely_part(holds: Holds) -> impl Strategy<Value = Part> {
    let forms: Vec<Form> = FORMS.iter().copied().filter(|f| f.holds == holds).collect();
    (0..forms.len()).prop_flat_map(move |at| {
        let form = forms[at];
        let inputs: Vec<_> = form.inputs.iter().map(|i| option::of(likely_entry(i.kind))).collect();
        let mats = option::of(option::of(length_within(Length::mm(2), Length::mm(8))));
        let extras = vec(likely_extra(), 0..3);
        (name(), 1_u32..4, 1_u16..3, inputs, mats, facing(), extras).prop_map(
            move |(name, count, card, entries, mats, facing, extras)| Part {
                id: 1,
                name,
                form: form.key.to_owned(),
                count,
                card,
                inputs: form.inputs.iter().zip(entries).filter_map(|(i, e)| Some((i.key.to_owned(), e?))).collect(),
                mats: mats.map(|reveal| Mats { card: 2, reveal, off: Vec::new() }),
                gifts: Gifts::default(),
                extras,
                facing,
                blank: Blank::Whole,
                drawn: String::new(),
            },
        )
    })
}

fn likely_entry(kind: Kind) -> BoxedStrategy<Entry> {
    match kind {
        Kind::Length { range, .. } => length_within(range.least, range.most).prop_map(Entry::Length).boxed(),
        Kind::Choice(choices) => {
            let words: Vec<String> = choices.iter().map(|c| c.key.to_owned()).collect();
            prop::sample::select(words).prop_map(Entry::Choice).boxed()
        }
    }
}

/// What a maker might add: any kind on any face that a form may have, sizes typed or not.
fn likely_extra() -> impl Strategy<Value = Extra> {
    let face = prop::sample::select(vec!["", "", "front", "back", "lid", "lid: top", "left side"]);
    let side = || option::of(length_within(Length::mm(2), Length::mm(60)));
    (kind(), face, side(), side(), option::of(1_u16..3)).prop_map(|(kind, face, width, height, card)| Extra {
        kind,
        face: face.to_owned(),
        width,
        height,
        card,
    })
}

pub fn kind() -> impl Strategy<Value = ExtraKind> {
    prop::sample::select(ExtraKind::ALL.to_vec())
}

pub fn facing() -> impl Strategy<Value = Facing> {
    prop::sample::select(Facing::ALL.to_vec())
}
