//! A form of the maker's own: drawn cell by cell, built, folded, and told what does not meet.

pub mod build;
pub mod copy;
pub mod drawn;
pub mod edit;
mod hang;
pub mod met;
mod order;
pub mod read;
mod settle;
pub mod shape;
mod spoken;
mod start;
pub mod statements;
pub mod words;
pub mod write;

use super::input::{Default, Input};
use super::joined::length;
use super::registry::{Form, Holds};
use crate::project::request::OWN_FORM;

/// The form.
pub const FORM: Form = Form {
    number: 40,
    key: OWN_FORM,
    name: "A form of your own",
    holds: Holds::Gifts,
    inputs: INPUTS,
    shape: shape::shape,
};

/// A size that a drawn form may name; its usual value is as drawn.
const fn size(number: u8, key: &'static str, name: &'static str, hint: &'static str) -> Input {
    length(number, key, name, hint, (1, 1_000), Default::Worked("as drawn"))
}

/// Every size that can be named, in the order of [`words::SIZES`].
const INPUTS: &[Input] = &[
    size(1, "width", "Width", "Left to right"),
    size(2, "depth", "Depth", "Front to back"),
    size(3, "height", "Height", "Base to upper edge"),
    size(4, "tab", "Tab", "What is glued"),
    size(5, "tuck", "Tuck", "What slides in"),
    size(6, "flap", "Flap", "From its score to its free edge"),
    size(7, "lip", "Lip", "From its score to its free edge"),
    size(8, "lid", "Lid", "From its score to its free edge"),
    size(9, "rim", "Rim", "From score to score"),
    size(10, "base", "Base", "From score to score"),
    size(11, "step", "Step", "From score to score"),
    size(12, "gap", "Gap", "What stays open"),
    size(13, "second width", "Second width", "Left to right, where there are two"),
    size(14, "second depth", "Second depth", "Front to back, where there are two"),
    size(15, "second height", "Second height", "Upright, where there are two"),
    size(16, "second tab", "Second tab", "What is glued, where there are two"),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_size_can_be_asked_for() {
        let keys: Vec<&str> = INPUTS.iter().map(|i| i.key).collect();
        assert_eq!(keys, words::SIZES);
    }
}
