//! What the hands do: the piece list and the steps, as typed values that are worded at the very end.

pub mod evenings;
pub mod extras;
pub mod layers;
pub mod pace;
pub mod part;
pub mod slides;
pub mod pieces;
pub mod sheets;
pub mod better;
pub mod enough;
pub mod key;
pub mod step;
pub mod stage;
pub mod weave;
pub mod steps;
pub mod price;
pub mod class;
pub mod clock;
