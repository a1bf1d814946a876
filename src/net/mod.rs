//! The flat pattern: panels, creases, glue and what is taken away; and the recipe read off it.

pub mod arc;
pub mod around;
pub mod cells;
mod spread;
pub mod corner;
pub mod flat;
pub mod joint;
pub mod marks;
pub mod mat;
pub mod recipe;
