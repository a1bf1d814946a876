//! Journeys through the whole page, as built, in a real browser.
//!
//! `cargo xtask test page` builds the page, finds the browser and runs these.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::disallowed_types, reason = "a test may look at the clock")]

mod access;
mod drawing;
mod driver;
mod extras;
mod fields;
mod figures;
mod files;
mod first;
mod gifts;
mod harness;
mod host;
mod job;
mod kept;
mod killed;
mod layout;
mod leaving;
mod links;
mod making;
mod offline;
mod opening;
mod saving;
mod shot;
mod teaching;
mod trouble;
mod walker;
