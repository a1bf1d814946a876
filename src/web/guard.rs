//! What stopped the page while it was being opened is not opened again by itself.
//!
//! A mark that names what is being opened is set before, and taken away once it stands on the page. A mark that is still
//! there at the next start tells that the page did not get that far: what it names is then left closed, at every start,
//! until the maker has opened it all the same and that went well. Anything else opens as ever.

use super::{keys, trouble};
use crate::keep::record::SetId;
use std::cell::{OnceCell, RefCell};

/// The mark of earlier builds, which named nothing: it was set for the saved set that was open last, or for a link.
const UNNAMED: &str = "1";
/// What the name of a saved set begins with.
const SET: &str = "set ";

thread_local! {
    static STOPPED_BY: OnceCell<Option<String>> = const { OnceCell::new() };
    static OPENING: RefCell<Option<String>> = const { RefCell::new(None) };
}

/// A saved set as a mark names it.
#[must_use]
pub fn set(id: SetId) -> String {
    format!("{SET}{}", id.0)
}

/// The design of a link as a mark names it: the link begins with the length and the checksum of what it holds.
#[must_use]
pub fn link(fragment: &str) -> String {
    let start: String = fragment.trim_start_matches('#').chars().take(24).collect();
    format!("link {start}")
}

/// Whether `what` did not come to its end when it was opened before. The answer is that of this page's start.
#[must_use]
pub fn stopped_by(what: &str) -> bool {
    STOPPED_BY.with(|by| by.get_or_init(look).as_deref().is_some_and(|by| is(by, what)))
}

/// To be called right before something is opened.
pub fn begin_open(what: &str) {
    // The mark of the last time is read before it is set anew.
    let _ = stopped_by(what);
    put(keys::OPENING, what);
    OPENING.set(Some(what.to_owned()));
}

/// To be called once what was opened stands on the page.
pub fn opened_well() {
    if trouble::stopped() {
        return;
    }
    let Some(what) = OPENING.take() else {
        return;
    };
    take_away(keys::OPENING);
    if read(keys::STOPPED_BY).is_some_and(|by| is(&by, &what)) {
        take_away(keys::STOPPED_BY);
    }
}

fn is(by: &str, what: &str) -> bool {
    by == what || (by == UNNAMED && what.starts_with(SET))
}

/// Reads the mark of the last start, and remembers what it names.
fn look() -> Option<String> {
    if let Some(mark) = read(keys::OPENING) {
        put(keys::STOPPED_BY, &mark);
        take_away(keys::OPENING);
    }
    read(keys::STOPPED_BY)
}

fn read(name: &str) -> Option<String> {
    keys::storage()?.get_item(&keys::key(name)).ok().flatten()
}

fn put(name: &str, value: &str) {
    if let Some(storage) = keys::storage() {
        // Full storage: the page goes on without this safeguard.
        let _ = storage.set_item(&keys::key(name), value);
    }
}

fn take_away(name: &str) {
    if let Some(storage) = keys::storage() {
        let _ = storage.remove_item(&keys::key(name));
    }
}
