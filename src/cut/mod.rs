//! Sheets: blanks laid out with straight edge-to-edge cuts, the cuts in the order of the hand, and what can be proved.
//!
//! ```text
//! pieces + sheets + rules -> job (small integers) -> slicing trees -> layout (exact) -> cuts in order -> check
//! ```
//!
//! A *slicing tree* (Wong and Liu 1986) says which parts stand side by side and which lie on each other; every such
//! tree can be cut with guillotine cuts, whatever its sizes. Sizes, room and spare card are read off the tree, so that
//! where the spare card ends up is decided last (`slice`, `emit`).
//!
//! `build::lay_out` answers at once. `search::Search` improves the answer a slice of work at a time, in this order:
//!
//! | stage | what it does | after |
//! |---|---|---|
//! | `bound` | least number of sheets, from dual feasible functions | Fekete and Schepers 2001; Carlier, Clautiaux and Moukrim 2007; Boschetti and Mingozzi 2003 |
//! | `columns`, `raster`, `simplex` | many alike pieces: the cheapest mix of exact patterns, and a bound | Gilmore and Gomory 1961, 1965; Farley 1990; Terno, Lindemann and Scheithauer 1987 |
//! | `ruin` | towards one sheet less, again and again | Gardeyn and Wauters 2022; Burke and Bykov 2017; Christiaens and Vanden Berghe 2020 |
//! | `cover` | recombines good boards seen on the way | Monaci and Toth 2006 |
//! | `polish` | the largest whole offcut, then the fewest settings of the fence | |
//!
//! Invariants: work is counted and the clock is never asked, so the slices in which a search is run do not matter and
//! every device gets the same layout; every layout can be made at the trimmer that the rules describe, which `check`
//! replays without sharing any arithmetic with the search; a bound is computed in whole numbers.

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
