//! Snugfold plans hand-made paper gift sets.

pub mod cut;
pub mod measure;
pub mod net;
pub mod project;
pub mod stock;
