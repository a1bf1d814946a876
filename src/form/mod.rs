//! One file for each form: its inputs once, and the assembly that it makes of them.

pub mod assembly;
pub mod input;
pub mod registry;
pub mod resolve;

mod double_tray;
mod joined;
mod lid_base;
mod row_holder;
mod tray;
mod tube;
mod tuck_box;
mod tuck_ends;
