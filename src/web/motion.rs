//! Frames, for what moves on the page; and whether the maker wants anything to move.

use std::cell::RefCell;
use std::rc::Rc;

use leptos::prelude::*;

/// Whether another frame is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Again {
    /// It goes on.
    Yes,
    /// It is at its end.
    No,
}

/// Whether the device asks for little motion.
#[must_use]
pub fn is_reduced() -> bool {
    let asked = window().match_media("(prefers-reduced-motion: reduce)");
    asked.ok().flatten().is_some_and(|m| m.matches())
}

/// Calls `then` with the seconds since the last frame until it wants no more.
pub fn each_frame(then: impl FnMut(f64) -> Again + 'static) {
    frame(Rc::new(RefCell::new(then)), now());
}

fn frame(then: Rc<RefCell<dyn FnMut(f64) -> Again>>, last: f64) {
    request_animation_frame(move || {
        let at = now();
        // A page that was hidden for a while goes on where it was.
        let seconds = ((at - last) / 1_000.0).clamp(0.0, 0.1);
        let again = then.try_borrow_mut().map_or(Again::No, |mut f| f(seconds));
        if again == Again::Yes {
            frame(then, at);
        }
    });
}

/// Milliseconds since the page was opened.
#[must_use]
pub fn now() -> f64 {
    window().performance().map_or(0.0, |p| p.now())
}
