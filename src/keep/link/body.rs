//! A design as the bytes of a link, version 1: only what differs from the frozen defaults, or from the part before.

use std::collections::BTreeMap;

use crate::keep::frozen::{self, Form};
use crate::keep::limits;
use crate::measure::given::Given;
use crate::measure::system::System;
use crate::project::request::{Board, Card, Entry, Mats, Part, Project, Tint};

use super::spelling::{self, OTHER, STYLES};
use super::wire::{Fault, Reader, Writer};

/// Marks in front of a design, a card, a part, its mats: what follows, and what is as usual.
mod mark {
    pub(super) const METRIC: u64 = 1;
    pub(super) const SETS: u64 = 2;
    pub(super) const INCH_STEP: u64 = 4;
    pub(super) const METRIC_STEP: u64 = 8;
    pub(super) const HOLDER: u64 = 16;

    pub(super) const CARD_ID: u64 = 1;
    pub(super) const THICKNESS: u64 = 2;
    pub(super) const SHEET: u64 = 4;
    pub(super) const TINT: u64 = 8;

    pub(super) const ID: u64 = 1;
    pub(super) const FORM: u64 = 2;
    pub(super) const COUNT: u64 = 4;
    pub(super) const CARD: u64 = 8;
    pub(super) const INPUTS: u64 = 16;
    pub(super) const MATS: u64 = 32;
    pub(super) const MATS_AS_BEFORE: u64 = 64;

    pub(super) const REVEAL: u64 = 1;
    pub(super) const OFF: u64 = 2;
}

/// `mark` where something is so.
const fn when(so: bool, mark: u64) -> u64 {
    if so { mark } else { 0 }
}

/// What a part is compared with: for a box the box before it.
struct Before {
    id: u16,
    form: String,
    card: u16,
    mats: Option<Mats>,
}

impl Before {
    fn first(cards: &[Card]) -> Self {
        Self {
            id: 0,
            form: frozen::BOX.to_owned(),
            card: cards.first().map_or(1, |c| c.id),
            mats: None,
        }
    }

    /// What the next box is compared with.
    fn next(part: &Part) -> Self {
        Self {
            id: part.id,
            form: part.form.clone(),
            card: part.card,
            mats: part.mats.clone(),
        }
    }

    /// What the holder is compared with. It has number 0 unless it says another, so the number before that.
    fn holder(self) -> Self {
        Self {
            id: u16::MAX,
            form: frozen::HOLDER.to_owned(),
            ..self
        }
    }
}

/// Writes `project`.
#[must_use]
pub fn write(project: &Project) -> Vec<u8> {
    let mut to = Writer::default();
    let Board {
        inch_step,
        metric_step,
    } = &project.board;
    to.number(
        when(project.system == System::Metric, mark::METRIC)
            | when(project.sets != 1, mark::SETS)
            | when(inch_step.is_some(), mark::INCH_STEP)
            | when(metric_step.is_some(), mark::METRIC_STEP)
            | when(project.holder.is_some(), mark::HOLDER),
    );
    to.text(&project.name);
    if project.sets != 1 {
        to.number(project.sets);
    }
    for step in inch_step.iter().chain(metric_step) {
        spelling::write(&mut to, step);
    }
    to.count(project.cards.len());
    let (width, height) = frozen::sheet(project.system);
    let mut before = (0, width, height);
    for card in &project.cards {
        write_card(&mut to, card, before);
        before = (card.id, card.sheet_width.text(), card.sheet_height.text());
    }
    to.count(project.boxes.len());
    let mut before = Before::first(&project.cards);
    for part in &project.boxes {
        write_part(&mut to, part, &before);
        before = Before::next(part);
    }
    if let Some(holder) = &project.holder {
        write_part(&mut to, holder, &before.holder());
    }
    to.bytes
}

fn write_card(to: &mut Writer, card: &Card, (id, width, height): (u16, &str, &str)) {
    let numbered = card.id != id.wrapping_add(1);
    let sheet = (card.sheet_width.text(), card.sheet_height.text()) != (width, height);
    let tinted = card.tint != frozen::TINT;
    to.number(
        when(numbered, mark::CARD_ID)
            | when(card.thickness.is_some(), mark::THICKNESS)
            | when(sheet, mark::SHEET)
            | when(tinted, mark::TINT),
    );
    if numbered {
        to.number(card.id);
    }
    to.text(&card.name);
    to.number(card.grammage);
    if let Some(thickness) = &card.thickness {
        spelling::write(to, thickness);
    }
    if sheet {
        spelling::write(to, &card.sheet_width);
        spelling::write(to, &card.sheet_height);
    }
    if tinted {
        to.bytes.extend_from_slice(&card.tint.0.to_be_bytes()[1..]);
    }
}

fn write_part(to: &mut Writer, part: &Part, before: &Before) {
    let numbered = part.id != before.id.wrapping_add(1);
    let formed = part.form != before.form;
    let carded = part.card != before.card;
    let as_before = part.mats.is_some() && part.mats == before.mats;
    let matted = part.mats.as_ref().filter(|_| !as_before);
    to.number(
        when(numbered, mark::ID)
            | when(formed, mark::FORM)
            | when(part.count != 1, mark::COUNT)
            | when(carded, mark::CARD)
            | when(!part.inputs.is_empty(), mark::INPUTS)
            | when(matted.is_some(), mark::MATS)
            | when(as_before, mark::MATS_AS_BEFORE),
    );
    if numbered {
        to.number(part.id);
    }
    let form = frozen::named(&part.form);
    if formed {
        to.number(form.map_or(0, |f| f.number));
        if form.is_none() {
            to.text(&part.form);
        }
    }
    to.text(&part.name);
    if part.count != 1 {
        to.number(part.count);
    }
    if carded {
        to.number(part.card);
    }
    if !part.inputs.is_empty() {
        write_inputs(to, part, form);
    }
    if let Some(mats) = matted {
        write_mats(to, mats);
    }
}

/// One bit for each number that is typed for, the values in the order of the numbers, then what has no number.
fn write_inputs(to: &mut Writer, part: &Part, form: Option<&Form>) {
    let inputs = form.map_or(&[][..], |f| f.inputs);
    let spelled: Vec<_> = part
        .inputs
        .iter()
        .filter(|(key, _)| inputs.iter().all(|i| i.key != *key))
        .collect();
    let typed = || {
        inputs
            .iter()
            .filter_map(|i| part.inputs.get(i.key).map(|entry| (i, entry)))
    };
    to.number(typed().fold(when(!spelled.is_empty(), 1), |bits, (i, _)| {
        bits | 1 << i.number
    }));
    for (input, entry) in typed() {
        write_entry(to, entry, input.words());
    }
    if !spelled.is_empty() {
        to.count(spelled.len());
        for (key, entry) in spelled {
            to.text(key);
            write_entry(to, entry, &[]);
        }
    }
}

/// What is no length: a count, a word that is spelled out, or a word of the input by its place.
const COUNT: u64 = OTHER;
const SPELLED: u64 = OTHER + STYLES;
const FIRST_WORD: u64 = OTHER + 2 * STYLES;

fn write_entry(to: &mut Writer, entry: &Entry, words: &[&str]) {
    match entry {
        Entry::Length(given) => spelling::write(to, given),
        Entry::Count(count) => {
            to.number(COUNT);
            to.number(*count);
        }
        Entry::Choice(word) => match (0..).zip(words).find(|(_, w)| *w == word) {
            Some((place, _)) => to.number(FIRST_WORD + STYLES * place),
            None => {
                to.number(SPELLED);
                to.text(word);
            }
        },
    }
}

fn write_mats(to: &mut Writer, mats: &Mats) {
    to.number(when(mats.reveal.is_some(), mark::REVEAL) | when(!mats.off.is_empty(), mark::OFF));
    to.number(mats.card);
    if let Some(reveal) = &mats.reveal {
        spelling::write(to, reveal);
    }
    if !mats.off.is_empty() {
        to.count(mats.off.len());
        for name in &mats.off {
            to.text(name);
        }
    }
}

/// Reads a design.
///
/// # Errors
/// [`Fault`] says whether the bytes are broken or of a newer Snugfold.
pub fn read(body: &[u8]) -> Result<Project, Fault> {
    let mut from = Reader::new(body);
    let marks =
        from.marks(mark::METRIC | mark::SETS | mark::INCH_STEP | mark::METRIC_STEP | mark::HOLDER)?;
    let on = |mark| marks & mark != 0;
    let system = if on(mark::METRIC) {
        System::Metric
    } else {
        System::Inch
    };
    let name = from.text()?.to_owned();
    let sets = if on(mark::SETS) { from.narrow()? } else { 1 };
    let inch_step = on(mark::INCH_STEP)
        .then(|| read_length(&mut from))
        .transpose()?;
    let metric_step = on(mark::METRIC_STEP)
        .then(|| read_length(&mut from))
        .transpose()?;
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
    let holder = on(mark::HOLDER)
        .then(|| read_part(&mut from, &before.holder()))
        .transpose()?;
    from.end()?;
    let board = Board {
        inch_step,
        metric_step,
    };
    Ok(Project {
        name,
        system,
        board,
        sets,
        cards,
        boxes,
        holder,
    })
}

fn read_length(from: &mut Reader) -> Result<Given, Fault> {
    let number = from.number()?;
    spelling::read(number, from)
}

fn read_card(from: &mut Reader, before: Option<&Card>, system: System) -> Result<Card, Fault> {
    let marks = from.marks(mark::CARD_ID | mark::THICKNESS | mark::SHEET | mark::TINT)?;
    let on = |mark| marks & mark != 0;
    let id = if on(mark::CARD_ID) {
        from.narrow()?
    } else {
        before.map_or(0, |c| c.id).wrapping_add(1)
    };
    let name = from.text()?.to_owned();
    let grammage = from.narrow()?;
    let thickness = on(mark::THICKNESS).then(|| read_length(from)).transpose()?;
    let (sheet_width, sheet_height) = match before {
        _ if on(mark::SHEET) => (read_length(from)?, read_length(from)?),
        Some(card) => (card.sheet_width.clone(), card.sheet_height.clone()),
        None => {
            let (width, height) = frozen::sheet(system);
            let given = |text| Given::read(text, system).map_err(|_| Fault::Broken);
            (given(width)?, given(height)?)
        }
    };
    let tint = if on(mark::TINT) {
        Tint(
            from.take(3)?
                .iter()
                .fold(0, |tint, &byte| tint << 8 | u32::from(byte)),
        )
    } else {
        frozen::TINT
    };
    Ok(Card {
        id,
        name,
        grammage,
        thickness,
        sheet_width,
        sheet_height,
        tint,
    })
}

fn read_part(from: &mut Reader, before: &Before) -> Result<Part, Fault> {
    let known = mark::ID
        | mark::FORM
        | mark::COUNT
        | mark::CARD
        | mark::INPUTS
        | mark::MATS
        | mark::MATS_AS_BEFORE;
    let marks = from.marks(known)?;
    let on = |mark| marks & mark != 0;
    let id = if on(mark::ID) {
        from.narrow()?
    } else {
        before.id.wrapping_add(1)
    };
    let form = match on(mark::FORM).then(|| from.number()).transpose()? {
        None => before.form.clone(),
        Some(0) => from.text()?.to_owned(),
        Some(number) => frozen::numbered(number)
            .ok_or(Fault::Unknown)?
            .key
            .to_owned(),
    };
    let name = from.text()?.to_owned();
    let count = if on(mark::COUNT) { from.narrow()? } else { 1 };
    let card = if on(mark::CARD) {
        from.narrow()?
    } else {
        before.card
    };
    let inputs = if on(mark::INPUTS) {
        read_inputs(from, frozen::named(&form))?
    } else {
        BTreeMap::new()
    };
    let mats = match (on(mark::MATS), on(mark::MATS_AS_BEFORE)) {
        (false, false) => None,
        (true, false) => Some(read_mats(from)?),
        (false, true) => Some(before.mats.clone().ok_or(Fault::Broken)?),
        (true, true) => return Err(Fault::Broken),
    };
    Ok(Part {
        id,
        name,
        form,
        count,
        card,
        inputs,
        mats,
    })
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
    let reveal = (marks & mark::REVEAL != 0)
        .then(|| read_length(from))
        .transpose()?;
    let mut off = Vec::new();
    if marks & mark::OFF != 0 {
        for _ in 0..from.count(limits::MATS_OFF)? {
            off.push(from.text()?.to_owned());
        }
    }
    Ok(Mats { card, reveal, off })
}
