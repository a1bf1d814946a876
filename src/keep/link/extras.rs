//! What is added to a part, as the bytes of a link.

use crate::keep::limits;
use crate::project::extra::{Extra, ExtraKind};

use super::spelling;
use super::wire::{Fault, Reader, Writer, when};

/// The number of a kind, by its place; numbers are for ever.
const KINDS: [ExtraKind; 6] = ExtraKind::ALL;

const FACE: u64 = 1;
const WIDTH: u64 = 2;
const HEIGHT: u64 = 4;
const CARD: u64 = 8;
/// Above these marks stands the number of the kind.
const KIND: u64 = 16;

/// Writes all.
pub fn write(to: &mut Writer, all: &[Extra]) {
    to.count(all.len());
    for extra in all {
        let kind = KINDS.iter().position(|k| *k == extra.kind).unwrap_or_default() as u64;
        to.number(
            when(!extra.face.is_empty(), FACE)
                | when(extra.width.is_some(), WIDTH)
                | when(extra.height.is_some(), HEIGHT)
                | when(extra.card.is_some(), CARD)
                | (kind * KIND),
        );
        if !extra.face.is_empty() {
            to.text(&extra.face);
        }
        for side in [&extra.width, &extra.height].into_iter().flatten() {
            spelling::write(to, side);
        }
        if let Some(card) = extra.card {
            to.number(card);
        }
    }
}

/// Reads all.
///
/// # Errors
/// A [`Fault`] where the bytes hold none.
pub fn read(from: &mut Reader) -> Result<Vec<Extra>, Fault> {
    let mut all = Vec::new();
    for _ in 0..from.count(limits::EXTRAS)? {
        let number = from.number()?;
        let on = |mark| number & mark != 0;
        let kind = usize::try_from(number / KIND).ok().and_then(|k| KINDS.get(k)).ok_or(Fault::Unknown)?;
        let face = if on(FACE) { from.text()?.to_owned() } else { String::new() };
        let mut side = |mark| on(mark).then(|| spelling::next(from)).transpose();
        let (width, height) = (side(WIDTH)?, side(HEIGHT)?);
        let card = on(CARD).then(|| from.narrow()).transpose()?;
        all.push(Extra { kind: *kind, face, width, height, card });
    }
    Ok(all)
}
