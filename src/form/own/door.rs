//! The door to drawn forms. The page fetches what reads and folds them in its second file; elsewhere the door is open.

use crate::form::resolve::{Ask, Shaped};
use crate::measure::length::Length;
use crate::measure::system::System;

/// What stands behind the door.
#[derive(Clone, Copy)]
pub struct Behind {
    /// Answers a request.
    pub shape: fn(Ask) -> Shaped,
    /// The sizes that the text of a form names, as drawn.
    pub sizes: fn(&str, System) -> Vec<(&'static str, Length)>,
}

/// All of it.
#[must_use]
pub fn behind() -> Behind {
    Behind { shape: super::shape::shape, sizes: super::shape::sizes }
}

/// Answers a request for a drawn form; nothing while the door is shut.
#[must_use]
pub fn shape(ask: Ask) -> Shaped {
    match open() {
        Some(behind) => (behind.shape)(ask),
        None => ask.shaped,
    }
}

/// The sizes that the text of a form names, as drawn.
#[must_use]
pub fn sizes(text: &str, system: System) -> Vec<(&'static str, Length)> {
    open().map_or_else(Vec::new, |behind| (behind.sizes)(text, system))
}

#[cfg(not(apart))]
fn open() -> Option<Behind> {
    Some(behind())
}

#[cfg(apart)]
fn open() -> Option<Behind> {
    CAME.get().copied()
}

/// What came with the second file.
#[cfg(apart)]
static CAME: std::sync::OnceLock<Behind> = std::sync::OnceLock::new();

/// Opens the door, once and for all.
#[cfg(apart)]
pub fn came(behind: Behind) {
    let _ = CAME.set(behind);
}
