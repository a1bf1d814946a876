//! What the maker writes into the plan, as the bytes of a link.

use crate::keep::limits;
use crate::project::own::{Note, NoteKind, Own};

use super::wire::{Fault, Reader, Writer};

/// Writes it.
pub fn write(to: &mut Writer, own: &Own) {
    to.text(&own.credit);
    to.count(own.notes.len());
    for note in &own.notes {
        to.number(u64::from(note.kind == NoteKind::Step));
        to.text(&note.at);
        to.text(&note.text);
    }
}

/// Reads it.
///
/// # Errors
/// A [`Fault`] where the bytes hold none.
pub fn read(from: &mut Reader) -> Result<Own, Fault> {
    let credit = from.text()?.to_owned();
    let mut notes = Vec::new();
    for _ in 0..from.count(limits::NOTES)? {
        let kind = match from.number()? {
            0 => NoteKind::Note,
            1 => NoteKind::Step,
            _ => return Err(Fault::Unknown),
        };
        let (at, text) = (from.text()?.to_owned(), from.text()?.to_owned());
        notes.push(Note { at, kind, text });
    }
    Ok(Own { credit, notes, ..Own::default() })
}
