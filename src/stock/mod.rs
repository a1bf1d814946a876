//! What card is: how thick, how heavy, on what sheets it is sold.

pub mod sheets;
pub mod thickness;
pub mod weight;
pub mod currency;
pub mod paper;
