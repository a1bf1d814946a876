//! From bytes to a design. Every count is held against its limit before anything is read for it.

use std::collections::BTreeMap;

use crate::keep::frozen::{self, Form};
use crate::keep::limits;
use crate::keep::link::wire::{Fault, Reader};
use crate::keep::link::{extras, gifts, own, spelling, stock};
use crate::measure::given::Given;
use crate::measure::system::System;
use crate::project::fitting::{Blank, Facing, Gifts};
use crate::project::own::Own;
use crate::project::request::{Card, Entry, Mats, Part, Project, Tint};
use crate::project::tools::Board;
use crate::stock::weight::{Basis, BasisWeight};

use super::{Before, COUNT, FIRST_WORD, OTHER, SPELLED, STYLES, mark};

/// Reads a design.
///
/// # Errors
/// [`Fault`] says whether the bytes are broken or of a newer Snugfold.
pub fn design(body: &[u8]) -> Result<Project, Fault> {
    let mut from = Reader::new(body);
    let steps = mark::INCH_STEP | mark::METRIC_STEP;
    let rest = mark::HOLDER | mark::TRIMMER | mark::SPARES | mark::OWN;
    let marks = from.marks(mark::METRIC | mark::SETS | steps | rest)?;
    let on = |mark| marks & mark != 0;
    let system = if on(mark::METRIC) { System::Metric } else { System::Inch };
    let name = from.text()?.to_owned();
    let sets = if on(mark::SETS) { from.narrow()? } else { 1 };
    let inch_step = on(mark::INCH_STEP).then(|| spelling::next(&mut from)).transpose()?;
    let metric_step = on(mark::METRIC_STEP).then(|| spelling::next(&mut from)).transpose()?;
    let trimmer = on(mark::TRIMMER).then(|| stock::read_trimmer(&mut from)).transpose()?.unwrap_or_default();
    let spares = if on(mark::SPARES) { from.narrow()? } else { 0 };
    let mut cards: Vec<Card> = Vec::new();
    for _ in 0..from.count(limits::CARDS)? {
        let card = read_card(&mut from, cards.last(), system)?;
        cards.push(card);
    }
    let mut boxes = Vec::new();
    let mut before = Before::first(&cards);
    for _ in 0..from.count(limits::BOXES)? {
        let part = read_part(&mut from, &before)?;
        before = Before::next(&part);
        boxes.push(part);
    }
    let holder = on(mark::HOLDER).then(|| read_part(&mut from, &before.holder())).transpose()?;
    let own = if on(mark::OWN) { own::read(&mut from)? } else { Own::default() };
    from.end()?;
    let board = Board { inch_step, metric_step };
    Ok(Project { name, system, board, sets, trimmer, spares, cards, boxes, holder, own, ..Project::default() })
}

fn read_card(from: &mut Reader, before: Option<&Card>, system: System) -> Result<Card, Fault> {
    let marks = from
        .marks(mark::CARD_ID | mark::THICKNESS | mark::SHEET | mark::TINT | mark::STOCK | mark::POUNDS | mark::BASIS)?;
    let on = |mark| marks & mark != 0;
    let id = if on(mark::CARD_ID) { from.narrow()? } else { before.map_or(0, |c| c.id).wrapping_add(1) };
    let name = from.text()?.to_owned();
    let number = from.narrow()?;
    let basis = usize::try_from((marks & mark::BASIS) >> mark::BASIS.trailing_zeros()).unwrap_or_default();
    let grammage = match (on(mark::POUNDS), Basis::ALL.get(basis)) {
        (true, Some(basis)) => BasisWeight::Pounds(number, *basis),
        (false, _) if basis == 0 => BasisWeight::Grams(number),
        _ => return Err(Fault::Broken),
    };
    let thickness = on(mark::THICKNESS).then(|| spelling::next(from)).transpose()?;
    let (sheet_width, sheet_height) = match before {
        _ if on(mark::SHEET) => (spelling::next(from)?, spelling::next(from)?),
        Some(card) => (card.sheet_width.clone(), card.sheet_height.clone()),
        None => {
            let (width, height) = frozen::sheet(system);
            let given = |text| Given::read(text, system).map_err(|_| Fault::Broken);
            (given(width)?, given(height)?)
        }
    };
    let tint = if on(mark::TINT) {
        Tint(from.take(3)?.iter().fold(0, |tint, &byte| tint << 8 | u32::from(byte)))
    } else {
        frozen::TINT
    };
    let (supply, more_sheets, lie) = Default::default();
    let (stack, lesson) = (1, None);
    let mut card = Card {
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
    };
    if on(mark::STOCK) {
        stock::read_sheets(from, &mut card)?;
    }
    Ok(card)
}

fn read_part(from: &mut Reader, before: &Before) -> Result<Part, Fault> {
    let known = mark::ID | mark::FORM | mark::COUNT | mark::CARD | mark::INPUTS | mark::MATS | mark::MATS_AS_BEFORE;
    let marks = from.marks(known | mark::GIFTS | mark::SIDE | mark::LID | mark::JOINED | mark::EXTRAS | mark::DRAWN)?;
    let on = |mark| marks & mark != 0;
    let id = if on(mark::ID) { from.narrow()? } else { before.id.wrapping_add(1) };
    let form = match on(mark::FORM).then(|| from.number()).transpose()? {
        None => before.form.clone(),
        Some(0) => from.text()?.to_owned(),
        Some(number) => frozen::numbered(number).ok_or(Fault::Unknown)?.key.to_owned(),
    };
    let name = from.text()?.to_owned();
    let count = if on(mark::COUNT) { from.narrow()? } else { 1 };
    let card = if on(mark::CARD) { from.narrow()? } else { before.card };
    let inputs = if on(mark::INPUTS) { read_inputs(from, frozen::named(&form))? } else { BTreeMap::new() };
    let mats = match (on(mark::MATS), on(mark::MATS_AS_BEFORE)) {
        (false, false) => None,
        (true, false) => Some(read_mats(from)?),
        (false, true) => Some(before.mats.clone().ok_or(Fault::Broken)?),
        (true, true) => return Err(Fault::Broken),
    };
    let gifts = if on(mark::GIFTS) { gifts::read(from)? } else { Gifts::default() };
    let extras = if on(mark::EXTRAS) { extras::read(from)? } else { Vec::new() };
    let drawn = if on(mark::DRAWN) { from.text()?.to_owned() } else { String::new() };
    let blank = if on(mark::JOINED) { Blank::Joined } else { Blank::Whole };
    let facing = match (on(mark::SIDE), on(mark::LID)) {
        (false, false) => Facing::Front,
        (true, false) => Facing::Side,
        (false, true) => Facing::Lid,
        (true, true) => return Err(Fault::Broken),
    };
    Ok(Part { id, name, form, count, card, inputs, mats, gifts, extras, facing, blank, drawn })
}

fn read_inputs(from: &mut Reader, form: Option<&Form>) -> Result<BTreeMap<String, Entry>, Fault> {
    let inputs = form.map_or(&[][..], |f| f.inputs);
    let typed = from.marks(inputs.iter().fold(1, |bits, i| bits | 1 << i.number))?;
    let mut found = BTreeMap::new();
    for input in inputs.iter().filter(|i| typed >> i.number & 1 == 1) {
        found.insert(input.key.to_owned(), read_entry(from, input.words())?);
    }
    if typed & 1 == 1 {
        for _ in 0..from.count(limits::INPUTS)? {
            let key = from.text()?.to_owned();
            found.insert(key, read_entry(from, &[])?);
        }
    }
    Ok(found)
}

fn read_entry(from: &mut Reader, words: &[&str]) -> Result<Entry, Fault> {
    Ok(match from.number()? {
        COUNT => Entry::Count(from.narrow()?),
        SPELLED => Entry::Choice(from.text()?.to_owned()),
        number if number % STYLES == OTHER => {
            let place = usize::try_from((number - FIRST_WORD) / STYLES).ok();
            let word = place.and_then(|p| words.get(p)).ok_or(Fault::Unknown)?;
            Entry::Choice((*word).to_owned())
        }
        number => Entry::Length(spelling::read(number, from)?),
    })
}

fn read_mats(from: &mut Reader) -> Result<Mats, Fault> {
    let marks = from.marks(mark::REVEAL | mark::OFF)?;
    let card = from.narrow()?;
    let reveal = (marks & mark::REVEAL != 0).then(|| spelling::next(from)).transpose()?;
    let mut off = Vec::new();
    if marks & mark::OFF != 0 {
        for _ in 0..from.count(limits::MATS_OFF)? {
            off.push(from.text()?.to_owned());
        }
    }
    Ok(Mats { card, reveal, off })
}
