//! One file for each form: its inputs once, and the assembly that it makes of them.

pub mod assembly;
pub mod input;
pub mod registry;
pub mod resolve;

mod band;
mod drawer;
mod grid_holder;
mod hinged_box;
mod joined;
mod lid_base;
mod row_holder;
mod tube;
mod rows;
mod set_tray;
mod tower;
mod tuck_box;
mod tuck_ends;
