//! Snugfold plans hand-made paper gift sets: boxes, the holder that they slide into, the sheets to cut and the steps to
//! follow.
//!
//! One call does it: [`plan::plan`] takes what the maker asks for and gives everything that the table needs. The rooms
//! below stand in the order in which data walks through them; a room uses only rooms above it.

pub mod measure;
pub mod stock;
pub mod project;
pub mod net;
pub mod allow;
pub mod assembly;
pub mod fold;
pub mod form;
pub mod fit;
pub mod cut;
pub mod make;
pub mod plan;
pub mod say;
pub mod draw;
pub mod keep;

#[cfg(target_arch = "wasm32")]
pub mod web;

#[cfg(target_arch = "wasm32")]
pub mod ui;
