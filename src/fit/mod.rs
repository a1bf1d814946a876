//! Fit: from the gift to the box, and how sure it is that parts go together.

pub mod arrange;
pub mod gifts;
pub mod largest;
pub mod things;
