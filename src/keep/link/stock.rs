//! The trimmer, the spares and where sheets come from, as the bytes of a link: marks first, then what differs.

use crate::keep::limits;
use crate::project::fitting::Lesson;
use crate::project::request::{Card, Lie, MoreSheets, Shop, Supply};
use crate::project::tools::Trimmer;

use super::spelling;
use super::wire::{Fault, Reader, Writer, when};

const EDGE: u64 = 1;
const LONGEST: u64 = 2;
const STRIP: u64 = 4;
const SCORE: u64 = 8;
const CUT: u64 = 16;

const HAVE: u64 = 1;
const SHUT: u64 = 2;
const PRICE: u64 = 4;
const UPRIGHT: u64 = 8;
const MORE: u64 = 16;
const STACK: u64 = 32;
const WIDER: u64 = 64;
const NARROWER: u64 = 128;
const GRAIN_UP: u64 = 256;
const GRAIN_ACROSS: u64 = 512;

/// Writes what the trimmer can do.
pub fn write_trimmer(to: &mut Writer, t: &Trimmer) {
    to.number(
        when(t.edge_trim.is_some(), EDGE)
            | when(t.longest_cut.is_some(), LONGEST)
            | when(t.least_strip.is_some(), STRIP)
            | when(t.score_error.is_some(), SCORE)
            | when(t.cut_error.is_some(), CUT),
    );
    for given in t.typed().into_iter().flatten() {
        spelling::write(to, given);
    }
}

/// Reads what the trimmer can do.
///
/// # Errors
/// [`Fault`] where the bytes are no trimmer.
pub fn read_trimmer(from: &mut Reader) -> Result<Trimmer, Fault> {
    let marks = from.marks(EDGE | LONGEST | STRIP | SCORE | CUT)?;
    let mut typed = |mark| (marks & mark != 0).then(|| spelling::next(from)).transpose();
    Ok(Trimmer {
        edge_trim: typed(EDGE)?,
        longest_cut: typed(LONGEST)?,
        least_strip: typed(STRIP)?,
        score_error: typed(SCORE)?,
        cut_error: typed(CUT)?,
    })
}

/// True where a card is as usual: measured singly, nothing learned, bought as needed, of one size, pieces either way round.
#[must_use]
pub fn is_usual(card: &Card) -> bool {
    card.stack == 1
        && card.lesson.is_none()
        && card.supply.is_usual()
        && card.more_sheets.is_empty()
        && card.lie.is_usual()
}

/// Writes where a card's sheets come from.
pub fn write_sheets(to: &mut Writer, card: &Card) {
    let more = !card.more_sheets.is_empty();
    let stacked = card.stack != 1;
    let taught = match card.lesson {
        None => 0,
        Some(Lesson::Wider(_)) => WIDER,
        Some(Lesson::Narrower(_)) => NARROWER,
    };
    let lie = match card.lie {
        Lie::Either => 0,
        Lie::Upright => UPRIGHT,
        Lie::GrainUp => GRAIN_UP,
        Lie::GrainAcross => GRAIN_ACROSS,
    };
    write_supply(to, card.supply, lie | when(more, MORE) | when(stacked, STACK) | taught);
    if stacked {
        to.number(card.stack);
    }
    if let Some(lesson) = &card.lesson {
        spelling::write(to, lesson.by());
    }
    if more {
        to.count(card.more_sheets.len());
        for sheets in &card.more_sheets {
            write_supply(to, sheets.supply, 0);
            spelling::write(to, &sheets.width);
            spelling::write(to, &sheets.height);
        }
    }
}

/// Reads where a card's sheets come from.
///
/// # Errors
/// [`Fault`] where the bytes are no such thing.
pub fn read_sheets(from: &mut Reader, card: &mut Card) -> Result<(), Fault> {
    let (supply, marks) = read_supply(from, UPRIGHT | MORE | STACK | WIDER | NARROWER | GRAIN_UP | GRAIN_ACROSS)?;
    let stack = if marks & STACK == 0 { 1 } else { from.narrow()? };
    let lesson = match marks & (WIDER | NARROWER) {
        0 => None,
        WIDER => Some(Lesson::Wider(spelling::next(from)?)),
        NARROWER => Some(Lesson::Narrower(spelling::next(from)?)),
        _ => return Err(Fault::Broken),
    };
    let lie = match marks & (UPRIGHT | GRAIN_UP | GRAIN_ACROSS) {
        0 => Lie::Either,
        UPRIGHT => Lie::Upright,
        GRAIN_UP => Lie::GrainUp,
        GRAIN_ACROSS => Lie::GrainAcross,
        _ => return Err(Fault::Broken),
    };
    let mut more = Vec::new();
    if marks & MORE != 0 {
        for _ in 0..from.count(limits::MORE_SHEETS)? {
            let supply = read_supply(from, 0)?.0;
            let (width, height) = (spelling::next(from)?, spelling::next(from)?);
            more.push(MoreSheets { width, height, supply });
        }
    }
    *card = Card { supply, stack, lesson, lie, more_sheets: more, ..card.clone() };
    Ok(())
}

fn write_supply(to: &mut Writer, supply: Supply, more: u64) {
    to.number(
        when(supply.have != 0, HAVE)
            | when(supply.shop == Shop::Shut, SHUT)
            | when(supply.price.is_some(), PRICE)
            | more,
    );
    if supply.have != 0 {
        to.number(supply.have);
    }
    if let Some(price) = supply.price {
        to.number(price);
    }
}

fn read_supply(from: &mut Reader, more: u64) -> Result<(Supply, u64), Fault> {
    let marks = from.marks(HAVE | SHUT | PRICE | more)?;
    let have = if marks & HAVE == 0 { 0 } else { from.narrow()? };
    let price = (marks & PRICE != 0).then(|| from.narrow()).transpose()?;
    let shop = if marks & SHUT == 0 { Shop::Open } else { Shop::Shut };
    Ok((Supply { have, shop, price }, marks))
}
