//! What a form makes, and how it folds: [`parts::Assembly`] and its [`moves::Move`]s.

pub mod moves;
pub mod parts;
