//! How well things fit into each other, and how sure that is.

pub mod odds;
