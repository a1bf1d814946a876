//! Marking by hand, in words: places by their number, and what is scored and cut between them.

use super::measured::{length, taken};
use super::phrase::Phrase;
use crate::measure::grid::Grid;
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::net::arc::Line;
use crate::net::marks::{MarkedArc, Marks};
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

/// What is scored or cut between marks: `1 to 4 and 2 to 5.`, `1 to 2 to 3; 6 to 7.`, and along arcs: `Along arcs of
/// radius 84 mm: 3 over 7 to 4, its centre straight above 7.`
#[must_use]
pub fn between(marks: &Marks, line: Line, system: System) -> Phrase {
    let run = |r: &[usize]| r.iter().map(|n| (n + 1).to_string()).collect::<Vec<_>>().join(" to ");
    let (straight, gap, last): (Vec<String>, _, _) = match line {
        Line::Score => (marks.scores.iter().map(|&(a, b)| run(&[a, b])).collect(), ", ", " and "),
        Line::Cut => (marks.cuts.iter().map(|r| run(r)).collect(), "; ", "; "),
    };
    let straight_too = !straight.is_empty();
    let mut said = Phrase::default();
    if straight_too {
        said = phrase![Phrase::list(straight.into_iter().map(Phrase::words), gap, last), "."];
    }
    // Arcs of one form have one radius.
    if let Some(first) = marks.along(line).next() {
        let radius = length(Grid::every(CUT_STEP.of(system)).nearest(first.radius), system);
        let arcs = Phrase::list(marks.along(line).map(|a| Phrase::words(arc(a))), "; ", "; ");
        let space = if straight_too { " " } else { "" };
        said = phrase![said, space, "Along arcs of radius ", radius, ": ", arcs, "."];
    }
    said
}

/// `3 over 7 to 4, its centre straight above 7`.
fn arc(arc: &MarkedArc) -> String {
    let [from, over, to] = arc.places.map(|n| n + 1);
    let side = if arc.way.y < Length::ZERO { "above" } else { "below" };
    format!("{from} over {over} to {to}, its centre straight {side} {over}")
}
