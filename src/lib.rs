//! Snugfold plans hand-made paper gift sets.
