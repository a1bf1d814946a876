//! Words and drawings set on pages, from top to bottom: what does not fit goes to the next page.
//!
//! Widths are those of the font that the pages are written in.

use super::drawing::{Drawing, Hold, Ink, Label, Mark, Meaning, Reads, Spot};
use super::font::Font;
use super::lettering::{Piece, pieces};
use crate::say::phrase::{Bit, Phrase};

/// Left free round the page (common practice, no source).
const EDGE: f64 = 12.0;
/// From the foot of a line to the next, in the height of its lettering.
const LEADING: f64 = 1.3;
/// Between columns.
const GAP: f64 = 5.0;
/// The heading of a region.
const HEAD: f64 = 4.0;
/// The lettering of a page, of which labels are shares.
const LETTERING: f64 = 3.0;

/// Something with a height that stands in a column.
#[derive(Clone)]
pub enum Block {
    /// Words, broken into lines, of this height of lettering.
    Words(Phrase, f64),
    /// A drawing, as large as the column and this height allow.
    Picture(Box<Drawing>, f64),
    /// Nothing, so high.
    Space(f64),
}

/// Part of the width of the pages, with columns that are filled one after the other.
pub struct Region {
    /// Its share of the width.
    pub share: f64,
    /// How many columns it has.
    pub columns: usize,
    /// What stands over it on each page.
    pub head: Option<Phrase>,
    /// What goes into the columns; what is in one cell stays together.
    pub cells: Vec<Vec<Block>>,
}

/// Pages in the making.
pub struct Flow<'a> {
    /// What they are set in.
    font: &'a Font,
    /// The title of each page, for those who hear it.
    title: String,
    size: Spot,
    pages: Vec<Drawing>,
    y: f64,
}

impl<'a> Flow<'a> {
    /// Nothing so far, on paper of this size.
    #[must_use]
    pub fn new(title: &str, size: Spot, font: &'a Font) -> Self {
        let mut flow = Self { font, title: title.to_owned(), size, pages: Vec::new(), y: 0.0 };
        flow.page();
        flow
    }

    /// The width between the edges.
    #[must_use]
    pub const fn width(&self) -> f64 {
        self.size[0] - 2.0 * EDGE
    }

    /// Begins a new page.
    pub fn page(&mut self) {
        let mut page = Drawing { title: self.title.clone(), lettering: LETTERING, ..Drawing::default() };
        page.frame([0.0; 2], self.size);
        self.pages.push(page);
        self.y = EDGE;
    }

    /// How much is left of the page.
    #[must_use]
    pub const fn left(&self) -> f64 {
        self.size[1] - EDGE - self.y
    }

    /// Goes down by `high`.
    pub fn space(&mut self, high: f64) {
        self.y += high;
    }

    /// Words across the page.
    pub fn words(&mut self, words: impl Into<Phrase>, size: f64) {
        // Line by line: a long list goes on overleaf.
        let width = self.width();
        for line in lines(&words.into(), width / size, self.font) {
            self.row(&[1.0], vec![vec![Block::Words(line, size)]]);
        }
    }

    /// A heading: it stays with what follows.
    pub fn heading(&mut self, words: impl Into<Phrase>, size: f64, with: f64) {
        if self.left() < size * LEADING * 1.6 + with {
            self.page();
        }
        self.y += size * 0.5;
        self.words(words, size);
    }

    /// A line across the page.
    pub fn rule(&mut self) {
        let (y, to) = (self.y, self.size[0] - EDGE);
        if let Some(page) = self.pages.last_mut() {
            page.line(Meaning::Edge, Ink::Page, vec![[EDGE, y], [to, y]]);
        }
        self.y += 1.5;
    }

    /// Columns beside each other, as shares of the width, all of which begin at the same height. What is higher than
    /// what is left of the page begins a new one; what is higher than a page is cut off at its end.
    pub fn row(&mut self, shares: &[f64], columns: Vec<Vec<Block>>) {
        let sum: f64 = shares.iter().sum();
        let room = self.width() - GAP * (shares.len().saturating_sub(1)) as f64;
        let widths: Vec<f64> = shares.iter().map(|share| room * share / sum).collect();
        let highs = columns.iter().zip(&widths).map(|(blocks, width)| high(blocks, *width, self.font));
        let row = highs.fold(0.0, f64::max);
        if row > self.left() && self.y > EDGE {
            self.page();
        }
        let (mut x, top) = (EDGE, self.y);
        let Some(page) = self.pages.last_mut() else { return };
        for (blocks, width) in columns.into_iter().zip(widths) {
            let mut y = top;
            for block in blocks {
                y = put(page, block, [x, y], [width, self.size[1] - EDGE], self.font);
            }
            x += width + GAP;
        }
        self.y = top + row;
    }

    /// Columns from here to the end of the page, and on as many pages as it takes: regions beside each other, in each of
    /// which one column is filled after the other.
    pub fn columns(&mut self, regions: Vec<Region>) {
        let sum: f64 = regions.iter().map(|r| r.share).sum();
        let room = self.width() - GAP * (regions.len().saturating_sub(1)) as f64;
        let (first, top, end) = (self.pages.len() - 1, self.y, self.size[1] - EDGE);
        let font = self.font;
        let mut left = EDGE;
        for region in regions {
            let width = room * region.share / sum;
            let count = region.columns.max(1);
            let each = (width - GAP * (count - 1) as f64) / count as f64;
            let (mut page, mut column, mut y) = (first, 0, top);
            // Whatever stands at the head of a column has no space over it.
            let begin = |flow: &mut Self, page: usize, y: f64| match &region.head {
                Some(head) => {
                    put(&mut flow.pages[page], Block::Words(head.clone(), HEAD), [left, y], [width, end], flow.font)
                }
                None => y,
            };
            let mut from = begin(self, page, top);
            y = y.max(from);
            let room = end - EDGE - HEAD * LEADING;
            for cell in region.cells.into_iter().flat_map(|cell| parted(cell, each, room, font)) {
                if y + high(&cell, each, font) > end && y > from {
                    column += 1;
                    if column == count {
                        (column, page) = (0, page + 1);
                        if page == self.pages.len() {
                            self.page();
                        }
                        from = begin(self, page, EDGE);
                    }
                    y = from;
                }
                let x = left + column as f64 * (each + GAP);
                for block in cell {
                    y = put(&mut self.pages[page], block, [x, y], [each, end], font);
                }
            }
            left += width + GAP;
        }
        // Nothing goes beside them.
        self.y = end;
    }

    /// The pages, each with its number where there are several.
    #[must_use]
    pub fn finish(mut self) -> Vec<Drawing> {
        let count = self.pages.len();
        for (nth, page) in self.pages.iter_mut().enumerate().filter(|_| count > 1) {
            let at = [self.size[0] - EDGE, self.size[1] - EDGE * 0.6];
            line(page, format!("{} / {count}", nth + 1).into(), at, 2.8, Hold::End);
        }
        self.pages
    }
}

/// A cell that is higher than a page, block by block and line by line.
fn parted(cell: Vec<Block>, width: f64, room: f64, font: &Font) -> Vec<Vec<Block>> {
    if high(&cell, width, font) <= room {
        return vec![cell];
    }
    let by_line = |block: Block| match block {
        Block::Words(words, size) => {
            lines(&words, width / size, font).into_iter().map(|line| vec![Block::Words(line, size)]).collect()
        }
        other => vec![vec![other]],
    };
    cell.into_iter().flat_map(by_line).collect()
}

fn high(blocks: &[Block], width: f64, font: &Font) -> f64 {
    let one = |block: &Block| match block {
        Block::Words(words, size) => lines(words, width / size, font).len() as f64 * size * LEADING,
        Block::Picture(drawing, most) => scale(drawing, width, *most).1,
        Block::Space(high) => *high,
    };
    blocks.iter().map(one).sum()
}

/// Puts a block at a place, so wide and not below the end; gives where the next one begins.
fn put(page: &mut Drawing, block: Block, [x, mut y]: Spot, [width, end]: [f64; 2], font: &Font) -> f64 {
    match block {
        Block::Words(words, size) => {
            for words in lines(&words, width / size, font) {
                y += size * LEADING;
                if y <= end + 0.01 {
                    line(page, words, [x, y - size * LEADING / 2.0], size, Hold::Start);
                }
            }
        }
        Block::Picture(drawing, most) => {
            let (by, high) = scale(&drawing, width, most);
            place(page, *drawing, [x, y], by);
            y += high;
        }
        Block::Space(high) => y += high,
    }
    y
}

/// One line of words.
pub fn line(page: &mut Drawing, words: Phrase, at: Spot, size: f64, hold: Hold) {
    let (size, way, ink) = (size / page.lettering, Reads::Across, Ink::Page);
    page.marks.push(Mark::Label(Label { at, hold, words, size, way, ink }));
}

/// By how much a drawing is made smaller or larger to fit, and how high it is then.
fn scale(drawing: &Drawing, width: f64, most: f64) -> (f64, f64) {
    let [w, h] = [0, 1].map(|i| (drawing.max[i] - drawing.min[i]).max(0.1));
    let by = (width / w).min(most / h);
    (by, h * by)
}

/// Puts a drawing on a page with its upper left corner at `at`.
pub fn place(page: &mut Drawing, drawing: Drawing, at: Spot, by: f64) {
    let (min, share) = (drawing.min, drawing.lettering * by / page.lettering);
    let to = |p: Spot| [0, 1].map(|i| at[i] + (p[i] - min[i]) * by);
    for mut mark in drawing.marks {
        match &mut mark {
            Mark::Area(area) => {
                area.corners.iter_mut().for_each(|p| *p = to(*p));
                area.panel = None;
            }
            Mark::Line(line) => line.run.iter_mut().for_each(|p| *p = to(*p)),
            Mark::Label(label) => {
                label.at = to(label.at);
                label.size *= share;
            }
        }
        page.marks.push(mark);
    }
}

/// How wide words are, in the height of their lettering.
#[must_use]
pub fn width(words: &Phrase, font: &Font) -> f64 {
    pieces(words).iter().map(|piece: &Piece| piece.width_in(font)).sum()
}

/// Words as lines of at most `room`, which counts in the lettering's height. Broken between words, and within a word
/// that is wider than a line.
#[must_use]
pub fn lines(words: &Phrase, room: f64, font: &Font) -> Vec<Phrase> {
    let space = font.width(" ");
    let (mut all, mut now, mut wide) = (Vec::new(), Phrase::default(), 0.0);
    for atom in atoms(words).into_iter().flat_map(|atom| narrow(atom, room, font)) {
        let one = width(&atom, font);
        if !now.bits.is_empty() && wide + space + one > room {
            all.push(std::mem::take(&mut now));
            wide = 0.0;
        }
        if !now.bits.is_empty() {
            now.bits.push(Bit::Words(" ".to_owned()));
            wide += space;
        }
        now.bits.extend(atom.bits);
        wide += one;
    }
    all.push(now);
    all
}

/// What is not broken: words between spaces, with the lengths that stand against them.
fn atoms(words: &Phrase) -> Vec<Phrase> {
    let mut all = vec![Phrase::default()];
    for bit in &words.bits {
        let Bit::Words(text) = bit else {
            if let Some(last) = all.last_mut() {
                last.bits.push(bit.clone());
            }
            continue;
        };
        for (nth, word) in text.split([' ', '\t', '\n', '\r']).enumerate() {
            if nth > 0 {
                all.push(Phrase::default());
            }
            if let Some(last) = all.last_mut().filter(|_| !word.is_empty()) {
                last.bits.push(Bit::Words(word.to_owned()));
            }
        }
    }
    all.retain(|atom| !atom.bits.is_empty());
    all
}

/// A word that is wider than a line in pieces that are not.
fn narrow(atom: Phrase, room: f64, font: &Font) -> Vec<Phrase> {
    let [Bit::Words(word)] = atom.bits.as_slice() else {
        return vec![atom];
    };
    if font.width(word) <= room {
        return vec![atom];
    }
    let (mut all, mut wide) = (vec![String::new()], 0.0);
    for c in word.chars() {
        let one = font.width(c.encode_utf8(&mut [0; 4]));
        if wide + one > room && wide > 0.0 {
            all.push(String::new());
            wide = 0.0;
        }
        wide += one;
        if let Some(last) = all.last_mut() {
            last.push(c);
        }
    }
    all.into_iter().map(Phrase::words).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::font::tests::papers;

    fn broken(words: &str, room: f64) -> Vec<String> {
        lines(&words.into(), room, &papers()).iter().map(ToString::to_string).collect()
    }

    #[test]
    fn lines_are_broken_between_words() {
        assert_eq!(broken("one two  three\nfour", 4.0), ["one two", "three", "four"]);
        assert_eq!(broken("", 4.0), [""]);
        assert_eq!(broken("mmmmmm", 2.5), ["mmm", "mmm"]);
    }

    #[test]
    fn what_does_not_fit_goes_to_the_next_page() {
        let font = papers();
        let mut flow = Flow::new("t", [100.0, 60.0], &font);
        for nth in 0..20 {
            flow.words(format!("line {nth}"), 4.0);
        }
        let pages = flow.finish();
        let words = |page: &Drawing| page.marks.iter().filter(|m| matches!(m, Mark::Label(_))).count();
        // 36 mm are six lines of 5.2 mm; each page has its number besides.
        assert_eq!(pages.iter().map(words).collect::<Vec<_>>(), [7, 7, 7, 3]);
        for page in &pages {
            for mark in &page.marks {
                let Mark::Label(label) = mark else { continue };
                assert!(label.at[1] > 0.0 && label.at[1] < 60.0);
            }
        }
    }
}
