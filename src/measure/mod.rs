//! Exact lengths, areas, points and outlines, the grooves that a board can score, and what a maker types.

pub mod angle;
pub mod area;
pub mod digits;
pub mod given;
pub mod grid;
pub mod json;
pub mod length;
pub mod outline;
pub mod point;
pub mod show;
pub mod system;
