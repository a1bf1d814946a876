//! Marking by hand, in words: places by their number, and what is scored and cut between them.

use super::measured::{length, taken};
use super::phrase::Phrase;
use crate::measure::grid::Grid;
use crate::measure::system::System;
use crate::net::marks::Marks;
use crate::phrase;
use crate::project::bound::CUT_STEP;

/// What is done first.
pub const TITLE: &str = "Mark these places, each from the left and from the top edge";
/// What is scored.
pub const SCORE: &str = "Score from mark to mark";
/// What is cut.
pub const CUT: &str = "Cut from mark to mark";

/// Each place by its number, read off the marks of a ruler, and how far off that is at most.
#[must_use]
pub fn places(marks: &Marks, system: System) -> Vec<Phrase> {
    let step = CUT_STEP.of(system);
    let ruler = Grid::every(step);
    let each = marks.places.iter().enumerate().map(|(i, p)| {
        let [x, y] = [p.x, p.y].map(|l| length(ruler.nearest(l), system));
        phrase![format!("{}: ", i + 1), x, " from the left, ", y, " from the top"]
    });
    let error = taken(marks.error(step), system);
    let last = phrase!["Read off a ruler so, no mark is further than ", error, " from its place."];
    each.chain([last]).collect()
}

/// `1 to 4, 2 to 5`.
#[must_use]
pub fn scores(marks: &Marks) -> Phrase {
    let each = marks.scores.iter().map(|(a, b)| Phrase::words(format!("{} to {}", a + 1, b + 1)));
    phrase![Phrase::list(each, ", ", " and "), "."]
}

/// `1 to 2 to 3, and 6 to 7`.
#[must_use]
pub fn cuts(marks: &Marks) -> Phrase {
    let run = |r: &Vec<usize>| r.iter().map(|n| (n + 1).to_string()).collect::<Vec<_>>().join(" to ");
    phrase![Phrase::list(marks.cuts.iter().map(|r| Phrase::words(run(r))), "; ", "; "), "."]
}
