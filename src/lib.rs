//! Snugfold plans hand-made paper gift sets: boxes, the holder they slide into,
//! the sheets to cut and the steps to follow.

#[cfg(target_arch = "wasm32")]
pub mod web;

#[cfg(target_arch = "wasm32")]
pub mod ui;
