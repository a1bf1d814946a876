//! All words, made last: typed values go in, sentences come out.

pub mod phrase;
pub mod pages;
pub mod spelling;
pub mod hand;
pub mod marks;
pub mod making;
pub mod teach;
pub mod trade;
pub mod measured;
pub mod refusal;
pub mod extras;
pub mod finding;
pub mod folding;
pub mod joined;
pub mod names;
pub mod recipe;
pub mod step;
pub mod batch;
pub mod cutting;
pub mod kept;
pub mod odds;
pub mod drawing;
pub mod own;
pub mod page;
pub mod fitting;
