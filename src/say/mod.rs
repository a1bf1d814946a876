//! All words, made last: typed values go in, sentences come out.

pub mod phrase;
