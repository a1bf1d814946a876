//! The gifts of a box as the bytes of a link.

use crate::keep::limits;
use crate::project::fitting::{Gift, Gifts, Shape, Turns, Wrap};

use super::spelling;
use super::wire::{Fault, Reader, Writer, when};

const WIDTH: u64 = 1;
const DEPTH: u64 = 2;
const HEIGHT: u64 = 4;

const NAME: u64 = 1;
const MANY: u64 = 2;
const WRAPPED: u64 = 4;
const UPRIGHT: u64 = 8;
const GRAMS: u64 = 16;
const CYLINDER: u64 = 32;
const SOFT: u64 = 64;

/// Writes what goes into a box.
pub fn write(to: &mut Writer, gifts: &Gifts) {
    let rooms = [&gifts.room_width, &gifts.room_depth, &gifts.room_height];
    to.number(when(rooms[0].is_some(), WIDTH) | when(rooms[1].is_some(), DEPTH) | when(rooms[2].is_some(), HEIGHT));
    for room in rooms.into_iter().flatten() {
        spelling::write(to, room);
    }
    to.count(gifts.kinds.len());
    for gift in &gifts.kinds {
        write_gift(to, gift);
    }
}

fn write_gift(to: &mut Writer, gift: &Gift) {
    let (form, sides) = match &gift.shape {
        Shape::Block { width, depth, height } => (0, vec![width, depth, height]),
        Shape::Cylinder { across, height } => (CYLINDER, vec![across, height]),
        Shape::Soft { width, depth, height } => (SOFT, vec![width, depth, height]),
    };
    to.number(
        when(!gift.name.is_empty(), NAME)
            | when(gift.count != 1, MANY)
            | when(gift.wrap == Wrap::Wrapped, WRAPPED)
            | when(gift.turns == Turns::Upright, UPRIGHT)
            | when(gift.grams.is_some(), GRAMS)
            | form,
    );
    if !gift.name.is_empty() {
        to.text(&gift.name);
    }
    if gift.count != 1 {
        to.number(gift.count);
    }
    if let Some(grams) = gift.grams {
        to.number(grams);
    }
    for side in sides {
        spelling::write(to, side);
    }
}

/// Reads what goes into a box.
///
/// # Errors
/// [`Fault`] where the bytes are no gifts.
pub fn read(from: &mut Reader) -> Result<Gifts, Fault> {
    let marks = from.marks(WIDTH | DEPTH | HEIGHT)?;
    let mut room = |mark| (marks & mark != 0).then(|| spelling::next(from)).transpose();
    let (room_width, room_depth, room_height) = (room(WIDTH)?, room(DEPTH)?, room(HEIGHT)?);
    let mut kinds = Vec::new();
    for _ in 0..from.count(limits::GIFTS)? {
        kinds.push(read_gift(from)?);
    }
    Ok(Gifts { kinds, room_width, room_depth, room_height })
}

fn read_gift(from: &mut Reader) -> Result<Gift, Fault> {
    let marks = from.marks(NAME | MANY | WRAPPED | UPRIGHT | GRAMS | CYLINDER | SOFT)?;
    let on = |mark| marks & mark != 0;
    let name = if on(NAME) { from.text()?.to_owned() } else { String::new() };
    let count = if on(MANY) { from.narrow()? } else { 1 };
    let grams = on(GRAMS).then(|| from.narrow()).transpose()?;
    let mut side = || spelling::next(from);
    let shape = match (on(CYLINDER), on(SOFT)) {
        (false, false) => Shape::Block { width: side()?, depth: side()?, height: side()? },
        (true, false) => Shape::Cylinder { across: side()?, height: side()? },
        (false, true) => Shape::Soft { width: side()?, depth: side()?, height: side()? },
        (true, true) => return Err(Fault::Broken),
    };
    let wrap = if on(WRAPPED) { Wrap::Wrapped } else { Wrap::Bare };
    let turns = if on(UPRIGHT) { Turns::Upright } else { Turns::Any };
    Ok(Gift { name, shape, count, wrap, turns, grams })
}
