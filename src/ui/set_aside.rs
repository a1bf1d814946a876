//! What cannot be read: its bytes can be saved as a file, and it can be taken away and had back.

use super::child::{Inside, live};
use super::shelf::shelf;
use super::tag::{Tag, button, classed};
use crate::keep::notebook::said::SetAside;
use crate::say::kept;
use crate::web::files;

/// What can be done with a record that cannot be read.
#[must_use]
pub fn set_aside_actions(aside: &SetAside) -> Tag {
    let shelf = shelf();
    let (key, same) = (aside.key.clone(), aside.key.clone());
    let save = move || {
        if let Some(text) = shelf.set_aside_text(&key) {
            let _ = files::give("unreadable.snugfold.json", files::JSON, text.as_bytes());
        }
    };
    classed("p", "actions")
        .with(button(kept::SAVE_BYTES, save))
        .with(button(kept::REMOVE_IT, move || shelf.discard(&same)))
}

/// What was taken away last can be had back.
#[must_use]
pub fn discarded() -> Inside {
    let shelf = shelf();
    live(move || {
        shelf.discarded.get().map(|_| {
            let back = button(kept::BRING_BACK, move || shelf.put_back());
            classed("p", "note").is("role", "status").with(format!("{} ", kept::REMOVED)).with(back)
        })
    })
}
