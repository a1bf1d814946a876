//! A slice, so many of which make a round: a triangular tube whose sides are as long as the round's radius.

use crate::measure::length::Length;
use crate::measure::system::Native;

use super::input::{Choice, Default, Input};
use super::joined::{choice, length, word};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use super::triangle;
use super::tube::ring_tab;
use crate::project::finding::What;

/// The form.
pub const FORM: Form =
    Form { number: 24, key: "slice", name: "Slice of a round", holds: Holds::Gifts, inputs: INPUTS, shape };

/// How many slices make a round; with more the point is too sharp for its tucks.
const SLICES: [(u8, Choice); 6] = [
    (8, word("eight", "8")),
    (6, word("six", "6")),
    (7, word("seven", "7")),
    (9, word("nine", "9")),
    (10, word("ten", "10")),
    (12, word("twelve", "12")),
];

const WORDS: &[Choice] = &[SLICES[0].1, SLICES[1].1, SLICES[2].1, SLICES[3].1, SLICES[4].1, SLICES[5].1];

/// The shortest side that can be typed.
const LEAST_SIDE: Length = Length::mm(50);

const INPUTS: &[Input] = &[
    choice(1, "slices", "Slices", "How many make a round", WORDS),
    length(
        2,
        "side",
        "From the middle to the rim",
        "Along each side of a slice",
        (50, 300),
        Default::Is(Native::lengths(4, 1, 1_000)),
    ),
    length(3, "height", "Height", "Of the round", (40, 200), Default::Is(Native::lengths(2, 1, 500))),
    ring_tab(4),
    length(
        5,
        "tuck",
        "Tucks",
        "The flaps on both sides of a lid that hold it",
        (5, 40),
        Default::Worked("½ in or 12 mm, less where the slice is slim or low"),
    ),
];

fn shape(mut ask: Ask) -> Shaped {
    let score = ask.setting.score;
    let chosen = ask.choice("slices");
    let slices = SLICES.iter().find(|s| s.1.key == chosen).map_or(8.0, |s| f64::from(s.0));
    let side = ask.scored("side", Length::ZERO);
    let height = ask.scored("height", Length::ZERO);
    // Not wider than the round leaves each: a chord, 2 r sin 180°/n.
    let chord = 2.0 * side.as_mm() * libm::sin(std::f64::consts::PI / slices);
    let width = score.down(Length::round_mm(chord));
    // A point that is sharper than this leaves its tucks no room; on coarse grooves the rim may come out too narrow.
    let most = score.down(Length::round_mm(width.as_mm() * 17_f64.sqrt() / 2.0));
    if side > most {
        ask.stop("side", What::LengthOutside { is: side, least: LEAST_SIDE, most: most.max(LEAST_SIDE) });
    }
    triangle::tube(ask, "side", width, side, height)
}
