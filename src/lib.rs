//! Snugfold plans hand-made paper gift sets.

pub mod allow;
pub mod form;
pub mod make;
pub mod measure;
pub mod net;
pub mod draw;
pub mod plan;
pub mod project;
pub mod say;
pub mod stock;
