//! From a design to bytes.

use crate::keep::frozen::{self, Form};
use crate::keep::link::wire::{Writer, when};
use crate::keep::link::{extras, gifts, own, spelling, stock};
use crate::measure::system::System;
use crate::project::fitting::Facing;
use crate::project::request::{Card, Entry, Mats, Part, Project};
use crate::project::tools::Board;
use crate::stock::weight::{Basis, BasisWeight};

use super::{Before, COUNT, FIRST_WORD, SPELLED, STYLES, mark};

/// Writes `project`.
#[must_use]
pub fn design(project: &Project) -> Vec<u8> {
    let mut to = Writer::default();
    let Board { inch_step, metric_step } = &project.board;
    to.number(
        when(project.system == System::Metric, mark::METRIC)
            | when(project.sets != 1, mark::SETS)
            | when(inch_step.is_some(), mark::INCH_STEP)
            | when(metric_step.is_some(), mark::METRIC_STEP)
            | when(project.holder.is_some(), mark::HOLDER)
            | when(!project.trimmer.is_usual(), mark::TRIMMER)
            | when(project.spares != 0, mark::SPARES)
            | when(project.own.has_words(), mark::OWN),
    );
    to.text(&project.name);
    if project.sets != 1 {
        to.number(project.sets);
    }
    for step in inch_step.iter().chain(metric_step) {
        spelling::write(&mut to, step);
    }
    if !project.trimmer.is_usual() {
        stock::write_trimmer(&mut to, &project.trimmer);
    }
    if project.spares != 0 {
        to.number(project.spares);
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
    if project.own.has_words() {
        own::write(&mut to, &project.own);
    }
    to.bytes
}

fn write_card(to: &mut Writer, card: &Card, (id, width, height): (u16, &str, &str)) {
    let numbered = card.id != id.wrapping_add(1);
    let sheet = (card.sheet_width.text(), card.sheet_height.text()) != (width, height);
    let tinted = card.tint != frozen::TINT;
    let (number, basis) = match card.grammage {
        BasisWeight::Grams(n) => (n, 0),
        BasisWeight::Pounds(n, basis) => {
            let at = Basis::ALL.iter().position(|b| *b == basis).unwrap_or_default();
            (n, mark::POUNDS | (at as u64) << mark::BASIS.trailing_zeros())
        }
    };
    to.number(
        when(numbered, mark::CARD_ID)
            | when(card.thickness.is_some(), mark::THICKNESS)
            | when(sheet, mark::SHEET)
            | when(tinted, mark::TINT)
            | when(!stock::is_usual(card), mark::STOCK)
            | basis,
    );
    if numbered {
        to.number(card.id);
    }
    to.text(&card.name);
    to.number(number);
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
    if !stock::is_usual(card) {
        stock::write_sheets(to, card);
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
            | when(as_before, mark::MATS_AS_BEFORE)
            | when(!part.gifts.is_none(), mark::GIFTS)
            | when(part.facing == Facing::Side, mark::SIDE)
            | when(part.facing == Facing::Lid, mark::LID)
            | when(!part.blank.is_whole(), mark::JOINED)
            | when(!part.extras.is_empty(), mark::EXTRAS)
            | when(!part.drawn.is_empty(), mark::DRAWN),
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
    if !part.gifts.is_none() {
        gifts::write(to, &part.gifts);
    }
    if !part.extras.is_empty() {
        extras::write(to, &part.extras);
    }
    if !part.drawn.is_empty() {
        to.text(&part.drawn);
    }
}

/// One bit for each number that is typed for, the values in the order of the numbers, then what has no number.
fn write_inputs(to: &mut Writer, part: &Part, form: Option<&Form>) {
    let inputs = form.map_or(&[][..], |f| f.inputs);
    let spelled: Vec<_> = part.inputs.iter().filter(|(key, _)| inputs.iter().all(|i| i.key != *key)).collect();
    let typed = || inputs.iter().filter_map(|i| part.inputs.get(i.key).map(|entry| (i, entry)));
    to.number(typed().fold(when(!spelled.is_empty(), 1), |bits, (i, _)| bits | 1 << i.number));
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
