//! Snugfold plans hand-made paper gift sets.

pub mod measure;
