//! Sheets: blanks laid out with straight edge-to-edge cuts, the cuts in the order of the hand, and what can be proved.
//!
//! ```text
//! pieces + sheets + rules -> job (small integers) -> slicing trees -> layout (exact) -> cuts in order -> check
//! ```
//!
//! A *slicing tree* (Wong and Liu 1986) says which parts stand side by side and which lie on each other; every such
//! tree can be cut with guillotine cuts, whatever its sizes. Sizes, room and spare card are read off the tree, so that
//! where the spare card ends up is decided last.

pub mod piece;
pub mod sheet;
pub mod layout;
pub mod job;
pub mod slice;
pub mod nest;
pub mod fill;
pub mod build;
pub mod bound;
pub mod random;
pub mod raster;
pub mod simplex;
pub mod columns;
pub mod ruin;
pub mod cover;
pub mod polish;
pub mod search;
pub mod name;
pub mod emit;
pub mod place;
pub mod order;
pub mod check;
pub mod buy;
