//! Boxes of a set in rows, in the maker's order: how many columns each row has, and what each takes up.

use crate::allow::clearance;
use crate::measure::length::Length;
use crate::project::finding::{Weight, What};

use super::input::{Choice, Input};
use super::joined::{choice, word};
use super::resolve::Ask;
use crate::assembly::parts::{From, Offset, Seat, Size};

/// How many rows the boxes stand in.
pub const ROWS: Input = choice(
    1,
    "rows",
    "Rows",
    "From front to back; the boxes stand in them in the order of the set, the front row first",
    &COUNTS,
);

/// Counts to choose from, each at its own place, the usual first. Keys are words: a number in a file is a length.
pub const COUNTS: [Choice; 7] = [
    word("auto", "as square as it goes"),
    word("one", "1"),
    word("two", "2"),
    word("three", "3"),
    word("four", "4"),
    word("five", "5"),
    word("six", "6"),
];

/// One box.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct One {
    /// Which of the contents.
    pub kind: usize,
    /// What it takes up.
    pub size: Size,
}

/// Boxes in rows of equally many columns, the last row perhaps shorter. Columns are as wide and rows as deep as their
/// largest box.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rows {
    /// Row by row from the front, each from the left.
    pub boxes: Vec<One>,
    /// The width of each column.
    pub columns: Vec<Length>,
    /// The depth of each row, from the front.
    pub rows: Vec<Length>,
    /// The height of the highest box.
    pub high: Length,
    /// The height of the lowest box.
    pub low: Length,
}

/// Every box of the set, in its order.
#[must_use]
pub fn each(ask: &Ask) -> Vec<One> {
    let kinds = ask.setting.contents.iter().enumerate();
    kinds.flat_map(|(kind, c)| (0..c.count).map(move |_| One { kind, size: c.outside })).collect()
}

impl Rows {
    /// The boxes of `ask` in the rows that are asked for; nothing where there are none.
    #[must_use]
    pub fn of(ask: &Ask) -> Option<Self> {
        let boxes = each(ask);
        let count = boxes.len();
        let chosen = COUNTS.iter().position(|c| c.key == ask.choice("rows")).filter(|&n| n > 0);
        let rows = chosen.unwrap_or_else(|| squarest(&boxes));
        Self::with(boxes, count.div_ceil(rows.clamp(1, count.max(1))))
    }

    /// The boxes of `ask` in two rows, or in one where there is one; nothing where there are none.
    #[must_use]
    pub fn halved(ask: &Ask) -> Option<Self> {
        let boxes = each(ask);
        let across = boxes.len().div_ceil(2);
        Self::with(boxes, across)
    }

    fn with(boxes: Vec<One>, across: usize) -> Option<Self> {
        let across = across.max(1);
        let most = |all: &mut dyn Iterator<Item = &One>, of: fn(&Size) -> Length| all.map(|b| of(&b.size)).max();
        let columns = (0..across.min(boxes.len()))
            .filter_map(|c| most(&mut boxes.iter().skip(c).step_by(across), |s| s.width))
            .collect();
        let rows = boxes.chunks(across).filter_map(|r| most(&mut r.iter(), |s| s.depth)).collect();
        let high = most(&mut boxes.iter(), |s| s.height)?;
        let low = boxes.iter().map(|b| b.size.height).min()?;
        Some(Self { boxes, columns, rows, high, low })
    }

    /// What all of them take up, with `wall` between neighbours.
    #[must_use]
    pub fn block(&self, wall: Length) -> Size {
        let side = |sizes: &[Length]| {
            let walls = i64::try_from(sizes.len().saturating_sub(1)).unwrap_or(i64::MAX);
            sizes.iter().copied().sum::<Length>() + wall * walls
        };
        Size { width: side(&self.columns), depth: side(&self.rows), height: self.high }
    }
}

/// The number of rows that brings width and depth nearest to each other.
fn squarest(boxes: &[One]) -> usize {
    let off = |rows: usize| {
        Rows::with(boxes.to_vec(), boxes.len().div_ceil(rows)).map(|r| {
            let block = r.block(Length::ZERO);
            (block.width - block.depth).abs()
        })
    };
    (1..=boxes.len().min(6)).min_by_key(|&rows| off(rows)).unwrap_or(1)
}

/// Where the boxes stand, each in the middle of its field, from `corner`, with `wall` between fields; every seat keeps
/// `play` free in total.
#[must_use]
pub fn seats(rows: &Rows, corner: Offset, wall: Length, play: Length) -> Vec<Seat> {
    let across = rows.columns.len().max(1);
    let starts = |sizes: &[Length]| {
        let mut at = Length::ZERO;
        let start = |&size: &Length| {
            let here = at;
            at += size + wall;
            (here, size)
        };
        sizes.iter().map(start).collect::<Vec<_>>()
    };
    let (columns, deep) = (starts(&rows.columns), starts(&rows.rows));
    let seat = |(i, one): (usize, &One)| {
        let (&(x, wide), &(y, far)) = (columns.get(i % across)?, deep.get(i / across)?);
        let at = Offset {
            right: corner.right + x + (wide - one.size.width).half(),
            back: corner.back + y + (far - one.size.depth).half(),
            up: corner.up,
        };
        Some(Seat::of((one.kind, one.size), at, play, From::Above))
    };
    rows.boxes.iter().enumerate().filter_map(seat).collect()
}

/// A wall round boxes, typed for `key` or three quarters of the lowest box, with what is to be said of it.
pub fn walls(ask: &mut Ask, key: &'static str, rows: &Rows) -> Length {
    let score = ask.setting.score;
    let gripped = score.down(rows.low.scaled(3, 4).min(rows.low - clearance::GRIP));
    let wall = ask.scored(key, gripped.max(score.up(Length::mm(15))));
    let grip = rows.low - wall;
    if wall > rows.low {
        ask.remark(Some(key), Weight::Caution, What::WallAboveBoxes { wall, shortest: rows.low });
    } else if grip < clearance::GRIP {
        ask.remark(Some(key), Weight::Caution, What::LittleToGrip { is: grip, least: clearance::GRIP });
    }
    wall
}
