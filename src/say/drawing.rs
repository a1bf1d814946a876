//! What is said where a form is drawn by its maker: fields, buttons, cells, lines and ways to mend.

use super::measured::length;
use super::phrase::Phrase;
use crate::fit::own::Rank;
use crate::fit::own::cure::How;
use crate::fit::own::equal::Named;
use crate::fit::own::reach::{MOST as TRIED, Reach};
use crate::form::own::drawn::{Between, Cell, Drawn, Line, PanelName, SizeName};
use crate::form::own::edit::State;
use crate::form::own::words::{Half, cell, panel, size};
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::net::flat::Duty;
use crate::phrase;

/// The title of the place where a form is drawn.
pub const TITLE: &str = "Cells and lines";
/// What to do there.
pub const HOW: &str = "The first touch picks a cell or line, the next one changes it. Between two cells: dashes are a score, a full line is a cut, nothing is one piece. The dot marks the cell that lies still.";
/// A field's label.
pub const CALLED: &str = "What you call this form";
/// A summary line.
pub const BEGIN: &str = "Begin anew: say it, copy one, or an empty blank";
/// A field's label.
pub const SPOKEN: &str = "Say it as you would at the table";
/// What may be written there.
pub const SPOKEN_HINT: &str = "Such as: blank 9 x 7 1/2; score at 1, 8; turn; score at 1, 6 1/2; A1 and C1 tab; A3, C3 away; cut between A1 and B1; glue A1 to B1";
/// A button.
pub const LAY_OUT: &str = "Lay out the cells";
/// A field's label.
pub const COPY_OF: &str = "A copy of";
/// A button.
pub const COPY: &str = "Copy it";
/// Where a form cannot be copied.
pub const NO_COPY: &str =
    "This form is not made of columns and rows alone, so it cannot be copied: choose another one.";
/// A button.
pub const EMPTY: &str = "Empty blank";
/// A summary line.
pub const AS_TEXT: &str = "All of it as text";
/// What it is for.
pub const AS_TEXT_HINT: &str = "Everything can be changed here too, line by line.";
/// A button.
pub const TAKE_TEXT: &str = "Take this text";
/// A title.
pub const MEASURES: &str = "Columns and rows";
/// What may be typed.
pub const MEASURES_HINT: &str = "A length, or a sum of named sizes such as depth - 1/16 in. Names: width, depth, height, tab, tuck, flap, lip, lid, rim, base, step, gap";
/// A button.
pub const ADD_COLUMN: &str = "Add a column on the right";
/// A button.
pub const ADD_ROW: &str = "Add a row below";
/// A button.
pub const SCORE_BEFORE: &str = "Put one in before it";
/// A button.
pub const TAKE_OUT: &str = "Take it out";
/// A title.
pub const FINDS: &str = "Does it meet?";
/// Where nothing is wrong.
pub const ALL_WELL: &str = "It folds: nothing crosses, and every tab lies where it is glued.";
/// Where nothing folds yet.
pub const NO_FOLDS: &str = "No folds yet: add columns or rows.";
/// What a form without a name is called.
pub const NO_NAME: &str = "Form without a name";
/// A button.
pub const NAME_SIZES: &str = "Name them";
/// A button.
pub const HOW_FAR: &str = "How far do its sizes go?";
/// Where it does not fold.
pub const NOT_YET: &str = "Only a form that folds has a range: mend what is said above first.";
/// A title.
pub const ORDER: &str = "In which order it folds";
/// A button.
pub const EARLIER: &str = "Earlier";
/// A button.
pub const BY_ITSELF: &str = "Let the order follow by itself";
/// A field's label.
pub const DOES: &str = "What it does";
/// A field's label.
pub const NAME: &str = "Its name";
/// A choice.
pub const UNNAMED: &str = "by its column and row";
/// A choice.
pub const FOUND: &str = "as it folds";
/// A field's label.
pub const FOLDED_BY: &str = "Folded by, in degrees";
/// What may be typed there.
pub const FOLDED_HINT: &str = "90 is square, 180 right over; below zero the other way, towards you";
/// A button.
pub const OTHER_WAY: &str = "Fold it the other way";
/// A button.
pub const LIES_STILL: &str = "This one lies still";
/// Where it does.
pub const STILL: &str = "This one lies still while the others fold.";
/// A field's label.
pub const STANDS_AS: &str = "It becomes";
/// A button.
pub const AS_FRONT: &str = "the front";
/// A button.
pub const AS_BASE: &str = "the base";
/// A label.
pub const IT_IS: &str = "It is";
/// A summary line.
pub const CUT_OFF: &str = "Corners, strips, notch, score from corner to corner";
/// A field's label.
pub const CORNERS: &str = "Corners";
/// A choice.
pub const SQUARE: &str = "square";
/// A choice.
pub const WEDGE: &str = "wedge";
/// A choice.
pub const ROUND: &str = "round";
/// A field's label.
pub const ACROSS: &str = "Across";
/// A field's label.
pub const DOWN: &str = "Down";
/// A field's label.
pub const RADIUS: &str = "Radius";
/// A title.
pub const STRIPS: &str = "Strips off its edges";
/// A title.
pub const NOTCH: &str = "Thumb notch";
/// A choice.
pub const NO_NOTCH: &str = "none";
/// A title.
pub const DIAGONAL: &str = "Score from corner to corner";
/// Its choices.
pub const DIAGONALS: [&str; 3] = ["none", "from the upper left down", "from the lower left up"];
/// A title.
pub const SHELF: &str = "Your forms";
/// Where there is none.
pub const SHELF_EMPTY: &str = "What you draw is kept here by itself.";
/// A button.
pub const TAKE_IT: &str = "Use it here";
/// A button.
pub const SAVE: &str = "Save as a file";
/// A button.
pub const DELETE: &str = "Delete";
/// A button.
pub const BRING_BACK: &str = "Bring it back";
/// A field's label.
pub const OPEN_FILE: &str = "Open a form’s file";
/// Where a file is none.
pub const NO_FORM: &str = "There is no form in this file that can be read: choose another file.";
/// A link's limit.
pub const IN_LINK: &str =
    "A link carries it along. Where it grows too long for one, the page says so and offers a file.";
/// The sides of a cell, in the order of `net::corner::Side`.
pub const SIDES: [&str; 4] = ["upper edge", "right edge", "lower edge", "left edge"];
/// The corners of a cell, clockwise from the upper left.
pub const CORNER_NAMES: [&str; 4] = ["upper left", "upper right", "lower right", "lower left"];
/// The three states of a line.
pub const LINES: [&str; 3] = ["score", "cut", "nothing: one piece"];

/// What a cell is.
#[must_use]
pub const fn state(state: State) -> &'static str {
    match state {
        State::Panel => "panel",
        State::Tab => "tab",
        State::Away => "taken away",
    }
}

/// What a line is, in a word.
#[must_use]
pub const fn line(line: Line) -> &'static str {
    match line {
        Line::Score(_) => LINES[0],
        Line::Cut => LINES[1],
        Line::Whole => LINES[2],
    }
}

/// A cell by its place and its name: `B2, front`.
#[must_use]
pub fn cell_name(c: &Cell) -> String {
    let at = cell(c.at, Half::Whole);
    c.name.map_or_else(|| at.to_owned(), |n| format!("{at}, {}", panel(n).0))
}

/// The line between two cells: `between A1 and B1`.
#[must_use]
pub fn between(b: Between) -> String {
    format!("between {} and {}", cell(b.at, Half::Whole), cell(b.other(), Half::Whole))
}

/// The names that panels can have, each with its number.
#[must_use]
pub fn panel_names() -> Vec<(String, String)> {
    use crate::form::own::words::PANELS;
    PANELS.iter().enumerate().map(|(i, (name, _))| (i.to_string(), (*name).to_owned())).collect()
}

/// A panel's name by its number.
#[must_use]
pub fn numbered(number: &str) -> Option<PanelName> {
    number.parse().ok().map(PanelName)
}

/// What a duty is called.
#[must_use]
pub fn duty(of: Duty) -> &'static str {
    crate::form::own::words::word(crate::form::own::words::DUTIES, of).unwrap_or(FOUND)
}

/// A size's name, as it begins a line.
#[must_use]
pub fn sized(name: SizeName) -> String {
    let word = size(name);
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_ascii_uppercase().to_string() + letters.as_str())
}

/// A column or row: `column 2 (B)`.
#[must_use]
pub fn rank(rank: Rank) -> String {
    match rank {
        Rank::Column(i) => {
            let at = crate::form::own::drawn::At::new(u8::try_from(i).unwrap_or_default(), 0);
            format!("column {}", cell(at, Half::Whole).trim_end_matches('1'))
        }
        Rank::Row(i) => format!("row {}", i + 1),
    }
}

/// A way to mend something, as a button says it.
#[must_use]
pub fn cure(how: &How, system: System) -> Phrase {
    match how {
        How::Equal { rank: r, like, to } => {
            phrase![format!("Make {} ", rank(*r)), length(*to, system), format!(", as {}", rank(*like))]
        }
        How::Make { rank: r, to } => phrase![format!("Make {} ", rank(*r)), length(*to, system)],
        How::Cut(a, b) => format!("Cut between {a} and {b}").into(),
        How::Take(cell) => format!("Take {cell} away").into(),
        How::Glue(tab, panel) => format!("Yes, glue {tab} to {}", super::own::the(panel)).into(),
        How::Panel(tab) => format!("Make {tab} a panel").into(),
        How::Border(tab) => format!("Leave a border of {tab} free of glue").into(),
        How::Untrim(cell) => format!("Leave {cell} whole").into(),
        How::Wedges(cell, by) => {
            phrase!["Take wedges of ", length(*by, system), format!(" off {}", super::own::the(cell))]
        }
        How::After(late, early) => format!("Fold {} after {}", super::own::the(late), super::own::the(early)).into(),
        How::Strips(cell, by) => {
            phrase!["Take ", length(*by, system), format!(" off the free edges of {}", super::own::the(cell))]
        }
    }
}

/// What was found to be equal, as one offer; nothing where all is named.
#[must_use]
pub fn equal(named: &Named, drawn: &Drawn) -> Option<String> {
    let fresh = named.groups.iter().filter(|g| drawn.drawn_size(g.name).is_none());
    let each: Vec<String> = fresh
        .map(|g| {
            let all: Vec<String> = g.ranks.iter().map(|r| rank(*r)).collect();
            format!("{} ({}) as {}", all.join(" and "), g.length.text(), size(g.name))
        })
        .collect();
    (!each.is_empty()).then(|| {
        format!("By their folds these belong together: {}. Named, the form can be made in any size.", each.join("; "))
    })
}

/// Less than a groove below the largest size that is tried, no end was found.
const MOST_TRIED: Length = Length::from_nm(TRIED.nm() - Length::INCH.nm());

/// How far a size goes.
#[must_use]
pub fn reach(reach: &Reach, system: System) -> Phrase {
    phrase![
        format!("{}: folds from ", sized(reach.name)),
        length(reach.least, system),
        " to ",
        length(reach.most, system),
        if reach.most >= MOST_TRIED {
            " and perhaps beyond, the others as they are"
        } else {
            ", the others as they are"
        }
    ]
}
