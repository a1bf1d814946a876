//! What happens when the program stops: the page says so, and the design can be saved.
//!
//! The message and its button are plain page and script (`index.html`, `style/start.js`),
//! for nothing in here can be relied upon any more by then.

use std::sync::atomic::{AtomicBool, Ordering};
use web_sys::{CustomEvent, console};

static STOPPED: AtomicBool = AtomicBool::new(false);

/// Whether a panic has happened. Callbacks that the browser was given before may still
/// come in.
#[must_use]
pub fn stopped() -> bool {
    STOPPED.load(Ordering::Relaxed)
}

/// From here on a panic is written to the browser's console and shown to the maker.
pub fn install() {
    std::panic::set_hook(Box::new(|panic| {
        STOPPED.store(true, Ordering::Relaxed);
        console::error_1(&panic.to_string().into());
        if let (Some(window), Ok(event)) = (web_sys::window(), CustomEvent::new("snugfold:trouble")) {
            let _ = window.dispatch_event(&event);
        }
    }));
}
