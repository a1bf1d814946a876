//! `Layout`: what is cut from which sheet, as patterns and how often each is cut.

use super::piece::Pose;
use crate::measure::area::Area;
use crate::measure::length::Length;

/// A layout of a whole batch on sheets of one card.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Layout {
    /// Alike sheets together, fullest first.
    pub patterns: Vec<Pattern>,
    /// What could not be placed, and why.
    pub left_out: Vec<LeftOut>,
    /// What is worth a word though the layout holds.
    pub remarks: Vec<Remark>,
    /// No layout of the pieces that are placed here needs fewer sheets than this.
    pub bound: u32,
    /// No layout of them costs less than this, in the smallest coin; known where every sheet that can be bought has
    /// a price.
    pub price_bound: Option<u64>,
    /// Counted work that was spent.
    pub work: u64,
    /// How the search ended.
    pub ending: Ending,
}

/// One way of cutting a sheet, and how many sheets are cut so.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pattern {
    /// The sheet's number.
    pub sheet: u32,
    /// How many sheets are cut alike; at least one.
    pub copies: u32,
    /// The cuts, from the bare sheet down to the pieces.
    pub tree: Node,
}

/// A part of a sheet: cut in two, a piece, or an offcut.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Node {
    /// A cut through the whole part.
    Cut {
        /// Direction of the cut.
        way: Way,
        /// Distance from the part's left (upright) or bottom (level) edge.
        at: Length,
        /// What lies left of the cut or below it.
        low: Box<Node>,
        /// What lies right of the cut or above it.
        high: Box<Node>,
    },
    /// A piece, exactly as large as the part.
    Piece {
        /// The piece's number.
        id: u32,
        /// How it lies.
        pose: Pose,
    },
    /// Card that is left over.
    Offcut,
}

/// Direction of a cut on the sheet as drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Way {
    /// From bottom to top; parts left and right.
    Upright,
    /// From left to right; parts below and above.
    Level,
}

/// Pieces that are in no pattern.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LeftOut {
    /// The piece's number.
    pub piece: u32,
    /// How many of them.
    pub count: u32,
    /// The reason.
    pub why: Why,
}

/// Why a piece was left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Why {
    /// A side is not above zero.
    NoSize,
    /// A side is under the narrowest strip that can be held.
    TooThin,
    /// There is no sheet with a usable size.
    NoSheets,
    /// It is larger than every sheet, whichever way it may lie.
    TooLarge,
    /// A sheet would hold it, but the trimmer's cut is too short to make it.
    TrimmerTooShort,
    /// The sheets ran out.
    StockRanOut,
    /// The work limit was reached before it was placed.
    WorkRanOut,
}

/// Something that the maker should know.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Remark {
    /// None are wanted of this piece.
    NothingAsked {
        /// The piece's number.
        piece: u32,
    },
    /// This sheet has no side above zero once its edges are trimmed, or there are none of it.
    SheetUseless {
        /// The sheet's number.
        sheet: u32,
    },
    /// Both sides of this sheet are longer than the trimmer cuts.
    SheetTooLong {
        /// The sheet's number.
        sheet: u32,
    },
    /// A cut takes off a strip of waste narrower than can be held.
    ThinOffcut {
        /// Which pattern, from zero.
        pattern: usize,
        /// The strip's width.
        width: Length,
    },
}

/// How far a layout was improved.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ending {
    /// The quick layout, not improved.
    Quick,
    /// The search is still running or was stopped at the work that the layout states.
    Stopped,
    /// The search went through all of its work.
    Finished,
}

/// What can be said for certain about the number of sheets.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Proof {
    /// No layout needs fewer sheets.
    Fewest,
    /// Fewer sheets than this are impossible.
    AtLeast(u32),
}

impl Layout {
    /// How many sheets are cut.
    #[must_use]
    pub fn sheets(&self) -> u32 {
        self.patterns.iter().fold(0, |sum, p| sum.saturating_add(p.copies))
    }

    /// How many sheets of this number are cut.
    #[must_use]
    pub fn sheets_of(&self, sheet: u32) -> u32 {
        self.patterns.iter().filter(|p| p.sheet == sheet).fold(0, |sum, p| sum.saturating_add(p.copies))
    }

    /// "9 sheets; no layout needs fewer", or how far the proof goes.
    #[must_use]
    pub fn proof(&self) -> Proof {
        if self.bound >= self.sheets() { Proof::Fewest } else { Proof::AtLeast(self.bound) }
    }
}

impl Node {
    /// The pieces below this node, each as often as it occurs.
    #[must_use]
    pub fn pieces(&self) -> Vec<(u32, Pose)> {
        let mut found = Vec::new();
        let mut open = vec![self];
        while let Some(node) = open.pop() {
            match node {
                Self::Cut { low, high, .. } => open.extend([&**high, &**low]),
                Self::Piece { id, pose } => found.push((*id, *pose)),
                Self::Offcut => {}
            }
        }
        found
    }

    /// The largest single offcut of a part of this size: its width and height; none where nothing is left over.
    #[must_use]
    pub fn largest_offcut(&self, width: Length, height: Length) -> Option<(Length, Length)> {
        let mut best: Option<(Length, Length)> = None;
        let mut open = vec![(self, width, height)];
        while let Some((node, w, h)) = open.pop() {
            match node {
                Self::Cut { way: Way::Upright, at, low, high } => {
                    open.extend([(&**high, w - *at, h), (&**low, *at, h)]);
                }
                Self::Cut { way: Way::Level, at, low, high } => {
                    open.extend([(&**high, w, h - *at), (&**low, w, *at)]);
                }
                Self::Offcut => {
                    if best.is_none_or(|(bw, bh)| Area::of(w, h) > Area::of(bw, bh)) {
                        best = Some((w, h));
                    }
                }
                Self::Piece { .. } => {}
            }
        }
        best
    }
}
