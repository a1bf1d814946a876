//! One file for each form: its inputs once, and the assembly that it makes of them.

pub mod assembly;
pub mod moves;
pub mod input;
pub mod registry;
pub mod resolve;

mod bag;
mod band;
mod book_cover;
mod carrier;
mod drawer;
mod grid_holder;
mod double_tray;
mod hinged_box;
pub mod joined;
mod layered_box;
mod lid_base;
mod row_holder;
mod tray;
mod tube;
mod rows;
mod set_tray;
mod step_stand;
mod tower;
mod star;
mod prism;
mod favour;
mod frustum;
mod pyramid;
mod triangle;
mod slice;
mod tuck_box;
mod petal_box;
mod carton;
mod corner_box;
mod tuck_ends;
mod wallet;
