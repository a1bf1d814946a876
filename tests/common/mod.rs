//! What several tests share.
#![allow(dead_code, reason = "each test uses a part of it")]

pub mod dice;
pub mod projects;
pub mod shelves;
