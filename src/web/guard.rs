//! A design that broke the page while opening is not opened again by itself.
//!
//! A mark is set before a design is opened and taken away once it has been drawn. A mark
//! that is still there at the next start tells that the page did not get that far.

use super::{keys, trouble};
use std::cell::OnceCell;

thread_local! {
    static BROKE: OnceCell<bool> = const { OnceCell::new() };
}

/// Whether the last opening of a design did not come to its end. The answer is that of
/// this page's start, whatever is opened later.
#[must_use]
pub fn broke_last_time() -> bool {
    BROKE.with(|broke| *broke.get_or_init(marked))
}

/// To be called right before a design is opened.
pub fn begin_open() {
    // The mark of the last time is read before it is set anew.
    let _ = broke_last_time();
    if let Some(storage) = keys::storage() {
        // Full storage: the page goes on without this safeguard.
        let _ = storage.set_item(&keys::key(keys::OPENING), "1");
    }
}

/// To be called once what was opened has been drawn.
pub fn opened_well() {
    if trouble::stopped() {
        return;
    }
    if let Some(storage) = keys::storage() {
        let _ = storage.remove_item(&keys::key(keys::OPENING));
    }
}

fn marked() -> bool {
    keys::storage().and_then(|storage| storage.get_item(&keys::key(keys::OPENING)).ok().flatten()).is_some()
}
