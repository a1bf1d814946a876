//! Forms that makers drew, as text: of every kind of cell and line.

use snugfold::fit::own::Bench;
use snugfold::measure::grid::Grid;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::project::bound;
use snugfold::project::request::Project;

use super::typical::{form, set_of};

/// Each with what it is.
pub const DRAWN: [(&str, &str); 5] = [
    ("as a new one begins", ""),
    (
        "a pen pot",
        "size width = 2 1/2 in\nsize height = 4 in\nsize tab = 1/2 in\ncolumns width, width, width, width, tab\nrows height, width\nempty\n\
         A1 panel\nB1 panel; notch top: 3/8 in\nC1 panel\nD1 panel\nE1 a tab; wedge top right: 1/2 in × 1/4 in\n\
         A2 panel\nC2 panel; strip bottom: 1/16 in\nglue E1 to A1\nglue C2 to A2\nstill A1",
    ),
    (
        "a sleeve whose front is one piece over two rows",
        "columns 3 in, 1 in, 3 in, 1 in, 1/2 in\nrows 2 in, 2 in\nempty\nA1 panel\nA2 panel\nB1 panel\nB2 panel\nC1 panel\nC2 panel\nD1 panel\nD2 panel\n\
         E1 a tab\nwhole A1|A2\nwhole B1|B2\nwhole D1|D2\nfold C1|C2 0\ncut B2|C2\nglue E1 to A1\nstill A1",
    ),
    (
        "a tray with corners folded in",
        "columns 1 in, 4 in, 1 in\nrows 1 in, 3 in, 1 in\nempty\nA1 panel; score falling -180\nB1 panel\nC1 panel; score rising -180\nA2 panel\nB2 panel\nC2 panel\n\
         A3 panel; score rising -180\nB3 panel\nC3 panel; score falling -180\n\
         fold A1|B1 180\nfold B1|C1 180\nfold A3|B3 180\nfold B3|C3 180\nstill B2\nas base",
    ),
    (
        "an easel that folds to and fro",
        "columns 3 in\nrows 1 in, 4 in, 2 in, 1 1/2 in\nempty\nA1 a tab\nA2 panel\nA3 panel; round bottom left: 1/4 in\nA4 panel; hole: 1 1/2 in × 3/4 in × 1/8 in\n\
         fold A1|A2 -60\nfold A2|A3 120\nfold A3|A4 -45\nstill A2",
    ),
];

/// A set of one box of this form.
pub fn set_of_drawn(text: &str) -> Project {
    let mut project = set_of(form("own"));
    text.clone_into(&mut project.boxes[0].drawn);
    project
}

/// What a maker works with in inches.
pub fn bench() -> Bench {
    Bench {
        system: System::Inch,
        score: Grid::every(Length::inches(1, 8)),
        clear: bound::CLEAR.of(System::Inch),
        thickness: Length::um(300),
    }
}
