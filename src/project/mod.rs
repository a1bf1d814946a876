//! The maker's request: plain data, values as typed.

pub mod bound;
pub mod example;
pub mod fresh;
pub mod extra;
pub mod fitting;
pub mod finding;
pub mod own;
pub mod picture;
pub mod trade;
pub mod class;
pub mod batch;
pub mod tools;
pub mod request;
pub mod ticks;
