//! `Alive`: whether what asked to be called later is still on the page.
//!
//! Whoever is taken off the page takes its signals along, while the browser may still have something to tell it: a field
//! that goes with the focus is left, a timer ends, a frame comes, a change that was under way is worked off. So nothing
//! that is called later runs once its owner is gone. The page's own elements (`placed.rs`) and effects (`value.rs`) see
//! to it themselves; timers and frames are asked for here and nowhere else in this room (`tests/house.rs`).

use std::time::Duration;

use leptos::prelude::*;

use crate::web::motion::{self, Again};

/// Holds for as long as the owner under which it was made is not cleaned up.
#[derive(Clone, Copy)]
pub struct Alive(StoredValue<()>);

impl Alive {
    /// Of the owner that is at work now.
    #[must_use]
    pub fn here() -> Self {
        // Whatever an owner stores goes with it.
        Self(StoredValue::new(()))
    }

    /// Whether the owner is still there.
    #[must_use]
    pub fn holds(self) -> bool {
        !self.0.is_disposed()
    }

    /// Does something after so long.
    pub fn after(self, wait: Duration, then: impl FnOnce() + 'static) {
        let then = move || {
            if self.holds() {
                then();
            }
        };
        set_timeout(then, wait);
    }

    /// Does something before the next frame is drawn.
    pub fn next_frame(self, then: impl FnOnce() + 'static) {
        request_animation_frame(move || {
            if self.holds() {
                then();
            }
        });
    }

    /// Does something once the next frame has been drawn.
    pub fn after_next_frame(self, then: impl FnOnce() + 'static) {
        self.next_frame(move || self.after(Duration::ZERO, then));
    }

    /// Does something before each frame, with the seconds since the last one, until it wants no more.
    pub fn each_frame(self, mut then: impl FnMut(f64) -> Again + 'static) {
        motion::each_frame(move |seconds| if self.holds() { then(seconds) } else { Again::No });
    }
}

/// `does`, for as long as the owner at work now is there; then nothing any more.
pub fn while_alive<A>(does: impl Fn(A) + 'static) -> impl Fn(A) + 'static {
    let alive = Alive::here();
    move |given| {
        if alive.holds() {
            does(given);
        }
    }
}
