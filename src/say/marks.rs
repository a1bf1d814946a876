//! Marking by hand, in words: places by their number, and what is scored and cut between them.

use super::measured::{length, taken};
use super::phrase::Phrase;
use crate::measure::grid::Grid;
use crate::measure::length::Length;
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

/// The places by their numbers, those of one height together, read off the marks of a ruler, and how far off that is at
/// most: `52 mm from the top: 4 at 60 mm, 5 at 120 mm from the left`.
#[must_use]
pub fn places(marks: &Marks, system: System) -> Vec<Phrase> {
    let step = CUT_STEP.of(system);
    let ruler = Grid::every(step);
    let read = |l| ruler.nearest(l);
    let mut lines: Vec<(Length, Vec<Phrase>)> = Vec::new();
    for (i, p) in marks.places.iter().enumerate() {
        let one = phrase![format!("{} at ", i + 1), length(read(p.x), system)];
        match lines.last_mut() {
            Some((y, all)) if *y == read(p.y) => all.push(one),
            _ => lines.push((read(p.y), vec![one])),
        }
    }
    let each = lines
        .into_iter()
        .map(|(y, all)| phrase![length(y, system), " from the top: ", Phrase::list(all, ", ", ", "), " from the left"]);
    let error = taken(marks.error(step), system);
    each.chain([phrase!["Read off a ruler so, no mark is further than ", error, " from its place."]]).collect()
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
