//! A design as the bytes of a link, version 1: only what differs from the frozen defaults, or from the part before.

pub mod read;
pub mod write;

use crate::keep::frozen;
use crate::project::request::{Card, Mats, Part};

use super::spelling::{OTHER, STYLES};

/// Marks in front of a design, a card, a part, its mats: what follows, and what is as usual.
mod mark {
    pub(super) const METRIC: u64 = 1;
    pub(super) const SETS: u64 = 2;
    pub(super) const INCH_STEP: u64 = 4;
    pub(super) const METRIC_STEP: u64 = 8;
    pub(super) const HOLDER: u64 = 16;
    pub(super) const TRIMMER: u64 = 32;
    pub(super) const SPARES: u64 = 64;
    pub(super) const OWN: u64 = 128;

    pub(super) const CARD_ID: u64 = 1;
    pub(super) const THICKNESS: u64 = 2;
    pub(super) const SHEET: u64 = 4;
    pub(super) const TINT: u64 = 8;
    pub(super) const STOCK: u64 = 16;
    /// Pounds instead of grams: two bits say of which basis.
    pub(super) const POUNDS: u64 = 32;
    pub(super) const BASIS: u64 = 64 | 128;

    pub(super) const ID: u64 = 1;
    pub(super) const FORM: u64 = 2;
    pub(super) const COUNT: u64 = 4;
    pub(super) const CARD: u64 = 8;
    pub(super) const INPUTS: u64 = 16;
    pub(super) const MATS: u64 = 32;
    pub(super) const MATS_AS_BEFORE: u64 = 64;
    pub(super) const GIFTS: u64 = 128;
    pub(super) const SIDE: u64 = 256;
    pub(super) const LID: u64 = 512;
    pub(super) const JOINED: u64 = 1_024;
    pub(super) const EXTRAS: u64 = 2_048;
    pub(super) const DRAWN: u64 = 4_096;

    pub(super) const REVEAL: u64 = 1;
    pub(super) const OFF: u64 = 2;
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
        Self { id: 0, form: frozen::BOX.to_owned(), card: cards.first().map_or(1, |c| c.id), mats: None }
    }

    /// What the next box is compared with.
    fn next(part: &Part) -> Self {
        Self { id: part.id, form: part.form.clone(), card: part.card, mats: part.mats.clone() }
    }

    /// What the holder is compared with. It has number 0 unless it says another, so the number before that.
    fn holder(self) -> Self {
        Self { id: u16::MAX, form: frozen::HOLDER.to_owned(), ..self }
    }
}

/// What is no length: a count, a word that is spelled out, or a word of the input by its place.
const COUNT: u64 = OTHER;
const SPELLED: u64 = OTHER + STYLES;
const FIRST_WORD: u64 = OTHER + 2 * STYLES;
