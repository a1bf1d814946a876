//! Designs that are kept and shared: as a file, as a link, and as records in a browser's storage.
//!
//! **Invariants.** No clock, no random numbers and no browser in here: the time and what tells two pages apart come in
//! as parameters. Nothing that is read can make this room panic, and the work is bounded by the size of what is read.
//! What cannot be read is never written over.

pub mod limits;

pub mod frozen;

pub mod file;
pub mod link;

pub mod shelf;

pub mod record;

pub mod history;

pub mod trail;

pub mod notebook;

pub mod session;
