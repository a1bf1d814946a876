//! Snugfold plans hand-made paper gift sets.

pub mod allow;
pub mod cut;
pub mod form;
pub mod make;
pub mod measure;
pub mod net;
pub mod plan;
pub mod project;
pub mod stock;
