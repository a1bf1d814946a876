//! The trimmer, the spares and where sheets come from, as the bytes of a link: marks first, then what differs.

use crate::keep::limits;
use crate::project::request::{Card, Lie, MoreSheets, Shop, Supply, Trimmer};

use super::spelling;
use super::wire::{Fault, Reader, Writer, when};

const EDGE: u64 = 1;
const LONGEST: u64 = 2;
const STRIP: u64 = 4;

const HAVE: u64 = 1;
const SHUT: u64 = 2;
const PRICE: u64 = 4;
const UPRIGHT: u64 = 8;
const MORE: u64 = 16;

/// Writes what the trimmer can do.
pub fn write_trimmer(to: &mut Writer, t: &Trimmer) {
    to.number(
        when(t.edge_trim.is_some(), EDGE)
            | when(t.longest_cut.is_some(), LONGEST)
            | when(t.least_strip.is_some(), STRIP),
    );
    for given in [&t.edge_trim, &t.longest_cut, &t.least_strip].into_iter().flatten() {
        spelling::write(to, given);
    }
}

/// Reads what the trimmer can do.
///
/// # Errors
/// [`Fault`] where the bytes are no trimmer.
pub fn read_trimmer(from: &mut Reader) -> Result<Trimmer, Fault> {
    let marks = from.marks(EDGE | LONGEST | STRIP)?;
    let mut typed = |mark| (marks & mark != 0).then(|| spelling::next(from)).transpose();
    Ok(Trimmer { edge_trim: typed(EDGE)?, longest_cut: typed(LONGEST)?, least_strip: typed(STRIP)? })
}

/// True where a card's sheets are as usual: bought as needed, of one size, pieces either way round.
#[must_use]
pub fn is_usual(card: &Card) -> bool {
    card.supply.is_usual() && card.more_sheets.is_empty() && card.lie.is_usual()
}

/// Writes where a card's sheets come from.
pub fn write_sheets(to: &mut Writer, card: &Card) {
    let more = !card.more_sheets.is_empty();
    write_supply(to, card.supply, when(!card.lie.is_usual(), UPRIGHT) | when(more, MORE));
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
pub fn read_sheets(from: &mut Reader) -> Result<(Supply, Vec<MoreSheets>, Lie), Fault> {
    let (supply, marks) = read_supply(from, UPRIGHT | MORE)?;
    let lie = if marks & UPRIGHT == 0 { Lie::Either } else { Lie::Upright };
    let mut more = Vec::new();
    if marks & MORE != 0 {
        for _ in 0..from.count(limits::MORE_SHEETS)? {
            let supply = read_supply(from, 0)?.0;
            let (width, height) = (spelling::next(from)?, spelling::next(from)?);
            more.push(MoreSheets { width, height, supply });
        }
    }
    Ok((supply, more, lie))
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
