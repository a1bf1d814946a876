//! Drawings in millimetres, neutral until a painter paints them.

pub mod drawing;
