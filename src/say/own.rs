//! What is said of a form that its maker drew.

use super::finding::short;
use super::measured::length;
use super::phrase::Phrase;
use crate::measure::system::System;
use crate::phrase;
use crate::project::finding::{OwnFault, OwnText};

/// Why a statement cannot be read, and how to write it.
#[must_use]
pub const fn unread(why: OwnText) -> &'static str {
    match why {
        OwnText::Unknown => {
            "is nothing that is known here: begin with blank, score, turn, a cell such as B2, cut, fold, glue or then"
        }
        OwnText::Length => "needs a length above nothing, such as 2 1/2 in or 60 mm",
        OwnText::Angle => "needs an angle from -180 to 180 degrees",
        OwnText::Cell => "names a cell that is not on this blank: columns are letters, rows are numbers, such as B2",
        OwnText::Pair => "needs the two cells beside the line, such as cut between A4 and B4",
        OwnText::NotBeside => "names two cells that do not lie beside each other",
        OwnText::Size => "names a size that is not known: width, depth, height, tab and so on",
        OwnText::NoBlank => "comes before the blank: begin with its size, such as blank 9 x 7 1/2",
        OwnText::BeyondBlank => {
            "has a score on the edge of the blank or beyond it: places are measured from the edge at the fence"
        }
        OwnText::TooMany => "has more than there is room for: 12 columns and 12 rows at most",
        OwnText::TooLong => "is longer than any form needs: shorten it",
    }
}

/// A panel as it is spoken of: `the front`, but `B2`.
#[must_use]
pub fn the(panel: &str) -> String {
    if panel.starts_with(|c: char| c.is_ascii_uppercase()) { panel.to_owned() } else { format!("the {panel}") }
}

/// What is wrong and how to mend it.
#[must_use]
pub fn fault(fault: &OwnFault, system: System) -> Phrase {
    match fault {
        OwnFault::Unread { said, why } if said.is_empty() => format!("This recipe {}.", unread(*why)).into(),
        OwnFault::Unread { said, why } => format!("“{}” {}.", short(said), unread(*why)).into(),
        OwnFault::Empty => "All of the blank is taken away: make a cell a panel.".into(),
        OwnFault::TooLarge => phrase![
            "The blank is larger than ",
            length(crate::form::own::build::LARGEST, system),
            ": make its columns or rows smaller."
        ],
        OwnFault::NoColumn(n) => format!("Column {n} comes to nothing: make it wider.").into(),
        OwnFault::NoRow(n) => format!("Row {n} comes to nothing: make it higher.").into(),
        OwnFault::Loose(cell) => {
            format!("{cell} hangs together with nothing that folds, so it is left out: score a line beside it, or take it away.").into()
        }
        OwnFault::NotRectangle(cell) => {
            format!("The cells that are one with {cell} make no plain rectangle, so they are scored: score a line, or join more of them.").into()
        }
        OwnFault::Round(a, b) => {
            format!("{a} and {b} hang together round a corner and cannot both fold: cut one of the lines that meet there.").into()
        }
        OwnFault::Trimmed(cell) => {
            format!("What is to be cut off {cell} is more than there is, or one cut runs into another: make them smaller.").into()
        }
        OwnFault::Misses { tab, panel, by } => {
            phrase![format!("{tab} misses {} by ", the(panel)), length(*by, system), ": make the columns or rows equal that must be."]
        }
        OwnFault::Alone(tab) => {
            format!("{tab} lies on nothing when all is folded: move it to where something comes, or make it a panel.").into()
        }
        OwnFault::Unglued { tab, panel } => format!("{tab} lies on {}: say whether it is glued there.", the(panel)).into(),
        OwnFault::GlueMisses(tab) => {
            format!("The glue on {tab} does not all lie on what it is pressed onto: make it smaller, or leave a border free.").into()
        }
        OwnFault::Cross { a, b, turn } => {
            format!("{a} and {b} run into each other in fold {turn}: take a wedge or a strip off one, or fold in another order.").into()
        }
        OwnFault::TuckStuck(tuck) => {
            format!("The {tuck} does not go in behind its wall, or reaches beyond it: make it shorter, or the flaps beside it.").into()
        }
        OwnFault::Unheld(panel) => format!("Nothing holds {}: glue it, let something tuck it in, or leave it to swing open.", the(panel)).into(),
    }
}
