//! `Drawn`: a form as its maker drew it: a grid of cells, and what is done to cells and to the lines between them.

use crate::assembly::moves::MoveName;
use crate::measure::angle::Angle;
use crate::measure::given::Given;
use crate::net::corner::{Corner, Side};
use crate::net::flat::{Duty, Face};

/// The most columns, and the most rows.
pub const MOST: u8 = 12;

/// A cell of the grid, counted from the upper left one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct At {
    /// From the top.
    pub row: u8,
    /// From the left.
    pub column: u8,
}

impl At {
    /// The cell in this column and row.
    #[must_use]
    pub const fn new(column: u8, row: u8) -> Self {
        Self { row, column }
    }

    /// The cell beside it; nothing beyond the left and the upper edge.
    #[must_use]
    pub fn beside(self, side: Side) -> Option<Self> {
        let Self { row, column } = self;
        Some(match side {
            Side::Top => Self { row: row.checked_sub(1)?, column },
            Side::Bottom => Self { row: row.checked_add(1)?, column },
            Side::Left => Self { row, column: column.checked_sub(1)? },
            Side::Right => Self { row, column: column.checked_add(1)? },
        })
    }
}

/// A named size, by its place in [`super::words::SIZES`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SizeName(pub u8);

/// A name of a panel, by its place in [`super::words::PANELS`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PanelName(pub u8);

/// One summand of a [`Span`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Term {
    /// So many halves of a named size.
    Size(SizeName, i8),
    /// A length as typed; taken off where the flag is [`Sign::Minus`].
    Length(Given, Sign),
}

/// Whether a length is added or taken off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// Added.
    Plus,
    /// Taken off.
    Minus,
}

/// A length as a plain sum of named sizes and typed lengths.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Span(pub Vec<Term>);

impl Span {
    /// A typed length and nothing else.
    #[must_use]
    pub fn typed(given: Given) -> Self {
        Self(vec![Term::Length(given, Sign::Plus)])
    }

    /// A named size and nothing else.
    #[must_use]
    pub fn size(name: SizeName) -> Self {
        Self(vec![Term::Size(name, 2)])
    }

    /// The one length that was typed, where it is nothing else.
    #[must_use]
    pub fn only_typed(&self) -> Option<&Given> {
        match self.0.as_slice() {
            [Term::Length(given, Sign::Plus)] => Some(given),
            _ => None,
        }
    }

    /// The one named size that it is.
    #[must_use]
    pub fn only_size(&self) -> Option<SizeName> {
        match self.0.as_slice() {
            [Term::Size(name, 2)] => Some(*name),
            _ => None,
        }
    }
}

/// What is cut off a cell, or into it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Trim {
    /// A strip off one side.
    Strip(Side, Span),
    /// A wedge off a corner: so far across and so far down.
    Wedge(Corner, Span, Span),
    /// A rounded corner.
    Round(Corner, Span),
    /// A half-round notch of this radius in the middle of a side.
    Notch(Side, Span),
    /// A slot in a side: from its left or upper end, how broad, how deep.
    Slot(Side, Span, Span, Span),
    /// A round hole: so far right and down from the cell's corner, of this radius.
    Hole(Span, Span, Span),
}

/// A score across a cell from corner to corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Diagonal {
    /// From which corner.
    pub runs: Runs,
    /// How far it is folded.
    pub fold: Angle,
}

/// Which way a diagonal runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Runs {
    /// From the upper left corner to the lower right one.
    Falling,
    /// From the lower left corner to the upper right one.
    Rising,
}

/// A cell that is card.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cell {
    /// Which one.
    pub at: At,
    /// What it does; nothing where that follows from how it stands in the end.
    pub duty: Option<Duty>,
    /// What it is called; nothing where it goes by its column and row.
    pub name: Option<PanelName>,
    /// What is cut off it.
    pub trims: Vec<Trim>,
    /// A score from corner to corner.
    pub diagonal: Option<Diagonal>,
    /// At which level it lies, in halves of a card thickness; nothing where that is found.
    pub level: Option<i8>,
    /// Whether it takes a mat; nothing where that follows from what it does.
    pub mat: Option<Matted>,
}

/// Whether a cell takes a mat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Matted {
    /// It does.
    Yes,
    /// It does not.
    No,
}

impl Cell {
    /// A plain panel.
    #[must_use]
    pub const fn panel(at: At) -> Self {
        Self { at, duty: None, name: None, trims: Vec::new(), diagonal: None, level: None, mat: None }
    }
}

/// The line between a cell and the one to the right of it or below it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Between {
    /// The cell to the left or above.
    pub at: At,
    /// Where the other one is.
    pub way: Way,
}

/// Where the second cell of a line is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Way {
    /// To the right.
    Right,
    /// Below.
    Below,
}

impl Between {
    /// The second cell.
    #[must_use]
    pub fn other(self) -> At {
        let side = match self.way {
            Way::Right => Side::Right,
            Way::Below => Side::Bottom,
        };
        self.at.beside(side).unwrap_or(self.at)
    }

    /// The line between a cell and its neighbour on a side.
    #[must_use]
    pub fn of(at: At, side: Side) -> Option<Self> {
        let other = at.beside(side)?;
        Some(match side {
            Side::Right => Self { at, way: Way::Right },
            Side::Bottom => Self { at, way: Way::Below },
            Side::Left => Self { at: other, way: Way::Right },
            Side::Top => Self { at: other, way: Way::Below },
        })
    }
}

/// What a line between two cells of card is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    /// Scored and folded so far: away from the reader above zero.
    Score(Angle),
    /// Cut.
    Cut,
    /// Nothing: the cells are one.
    Whole,
}

impl Line {
    /// What a line is of which nothing else was said.
    pub const USUAL: Self = Self::Score(Angle::degrees(90));
}

/// Where a cell is glued.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Gluing {
    /// The cell that takes the glue.
    pub on: At,
    /// Its face; nothing where that is found by folding.
    pub face: Option<Face>,
    /// The cells that it is pressed onto.
    pub onto: Vec<At>,
    /// A border that stays free of glue.
    pub border: Option<Span>,
    /// Where only a strip along one side takes glue: which, and how wide.
    pub strip: Option<(Side, Span)>,
}

/// Cells that are folded together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Turn {
    /// What the hands call it; nothing where the cells are named.
    pub name: Option<MoveName>,
    /// The cells, each carried by the line that joins it to what lies still before.
    pub cells: Vec<At>,
    /// A tuck that slides in while they close.
    pub tuck: Option<Tuck>,
}

/// A tuck that slides in behind a wall.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tuck {
    /// The tuck.
    pub at: At,
    /// The wall.
    pub behind: At,
    /// The gap that it goes through.
    pub gap: Option<Span>,
}

/// What the cell that lies still becomes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stance {
    /// The front, upright.
    Front,
    /// The base.
    Base,
}

/// A form as its maker drew it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Drawn {
    /// What its maker calls it.
    pub called: String,
    /// Under which number it is on its maker's shelf.
    pub number: Option<u32>,
    /// Named sizes as drawn.
    pub sizes: Vec<(SizeName, Given)>,
    /// Left to right.
    pub columns: Vec<Span>,
    /// Top to bottom.
    pub rows: Vec<Span>,
    /// The cells that are card, in the order of their rows.
    pub cells: Vec<Cell>,
    /// Lines that are not as usual.
    pub lines: Vec<(Between, Line)>,
    /// Where it is glued.
    pub glue: Vec<Gluing>,
    /// The cell that lies still.
    pub still: Option<At>,
    /// What that one becomes.
    pub stance: Option<Stance>,
    /// The order in which it folds; what is not here follows by itself.
    pub order: Vec<Turn>,
}

impl Drawn {
    /// A blank of these columns and rows, all card.
    #[must_use]
    pub fn blank(columns: Vec<Span>, rows: Vec<Span>) -> Self {
        let mut drawn = Self { columns, rows, ..Self::default() };
        drawn.fill();
        drawn
    }

    /// Makes every cell card that is not.
    pub fn fill(&mut self) {
        for row in 0..self.height() {
            for column in 0..self.width() {
                let at = At::new(column, row);
                if self.cell(at).is_none() {
                    self.put(Cell::panel(at));
                }
            }
        }
    }

    /// How many columns.
    #[must_use]
    pub fn width(&self) -> u8 {
        u8::try_from(self.columns.len()).unwrap_or(MOST).min(MOST)
    }

    /// How many rows.
    #[must_use]
    pub fn height(&self) -> u8 {
        u8::try_from(self.rows.len()).unwrap_or(MOST).min(MOST)
    }

    /// Whether there is such a cell.
    #[must_use]
    pub fn holds(&self, at: At) -> bool {
        at.column < self.width() && at.row < self.height()
    }

    /// The cell, where it is card.
    #[must_use]
    pub fn cell(&self, at: At) -> Option<&Cell> {
        self.cells.iter().find(|c| c.at == at)
    }

    /// The cell, to be changed.
    pub fn cell_mut(&mut self, at: At) -> Option<&mut Cell> {
        self.cells.iter_mut().find(|c| c.at == at)
    }

    /// Puts a cell in its place.
    pub fn put(&mut self, cell: Cell) {
        self.cells.retain(|c| c.at != cell.at);
        let place = self.cells.iter().position(|c| c.at > cell.at).unwrap_or(self.cells.len());
        self.cells.insert(place, cell);
    }

    /// Takes a cell away.
    pub fn take(&mut self, at: At) {
        self.cells.retain(|c| c.at != at);
    }

    /// What the line is.
    #[must_use]
    pub fn line(&self, between: Between) -> Line {
        self.lines.iter().find(|l| l.0 == between).map_or(Line::USUAL, |l| l.1)
    }

    /// Makes the line something.
    pub fn draw(&mut self, between: Between, line: Line) {
        self.lines.retain(|l| l.0 != between);
        if line != Line::USUAL {
            let place = self.lines.iter().position(|l| l.0 > between).unwrap_or(self.lines.len());
            self.lines.insert(place, (between, line));
        }
    }

    /// Every line between two cells of card.
    #[must_use]
    pub fn inner(&self) -> Vec<Between> {
        let ways = |c: &Cell| [Way::Right, Way::Below].map(|way| Between { at: c.at, way });
        self.cells.iter().flat_map(ways).filter(|b| self.cell(b.other()).is_some()).collect()
    }

    /// A named size as drawn.
    #[must_use]
    pub fn drawn_size(&self, name: SizeName) -> Option<&Given> {
        self.sizes.iter().find(|s| s.0 == name).map(|s| &s.1)
    }
}
