//! `Heard`: something that the browser tells and the page follows. The library's signals are built anew for each type of
//! value; here it keeps track of the change alone.

use std::cell::Cell;

use leptos::prelude::*;
use leptos::reactive::signal::ArcTrigger;

/// A value that the browser changes.
pub struct Heard<T> {
    value: Cell<T>,
    changed: ArcTrigger,
}

impl<T: Copy> Heard<T> {
    /// Before the browser has said anything.
    #[must_use]
    pub fn new(value: T) -> Self {
        Self { value: Cell::new(value), changed: ArcTrigger::new() }
    }

    /// What it is now, followed.
    #[must_use]
    pub fn get(&self) -> T {
        self.changed.track();
        self.value.get()
    }

    /// The browser says so.
    pub fn set(&self, value: T) {
        self.value.set(value);
        self.changed.notify();
    }
}
