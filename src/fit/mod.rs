//! Fit: from the gift to the box, how well things go into each other, and how sure that is.

pub mod arrange;
pub mod gifts;
pub mod grown;
pub mod largest;
pub mod lesson;
pub mod odds;
pub mod own;
pub mod strength;
pub mod things;
