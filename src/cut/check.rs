//! The checker: makes the cuts again from the bare sheet and looks at what lies on the table in the end.
//!
//! Written apart from the search; it shares none of its arithmetic.

use super::layout::Layout;
use super::order::{Comes, CutStep, Edge, order};
use super::piece::{Piece, Pose, Turn};
use super::sheet::{Rules, Sheet, Stock};
use crate::measure::length::Length;

use super::layout::Way;

/// What is wrong with a layout.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// A pattern names a sheet that there is not.
    UnknownSheet {
        /// The number it names.
        sheet: u32,
    },
    /// A pattern is cut from no sheet.
    NoCopies {
        /// Which pattern.
        pattern: usize,
    },
    /// More sheets are cut than there are.
    StockExceeded {
        /// The sheet's number.
        sheet: u32,
    },
    /// A step takes a part that is not on the table, or one of another size than it says.
    NoSuchPart {
        /// Which pattern.
        pattern: usize,
        /// Which step.
        step: usize,
    },
    /// A cut does not go through its part.
    CutOutside {
        /// Which pattern.
        pattern: usize,
        /// Which step.
        step: usize,
    },
    /// A cut is longer than the trimmer makes.
    CutTooLong {
        /// Which pattern.
        pattern: usize,
        /// Which step.
        step: usize,
    },
    /// A piece that nobody asked for, or in a size or pose that was not asked for.
    WrongPiece {
        /// Which pattern.
        pattern: usize,
        /// The number that it bears.
        piece: u32,
    },
    /// A piece reaches into an edge that must be trimmed.
    EdgeInPiece {
        /// Which pattern.
        pattern: usize,
        /// The piece's number.
        piece: u32,
    },
    /// A part that was to be cut further lies on the table in the end.
    PartLeft {
        /// Which pattern.
        pattern: usize,
    },
    /// Pieces cut and pieces left out do not make up what was asked.
    WrongCount {
        /// The piece's number.
        piece: u32,
        /// How many were asked for.
        asked: u64,
        /// How many are cut or left out.
        given: u64,
    },
}

/// A part on the table: number, width, height, and which of its edges are edges of the sheet
/// (left, right, bottom, top).
struct Part {
    number: u32,
    sides: [Length; 2],
    raw: [[Length; 2]; 2],
}

/// Replays a whole layout. No faults: the cuts end with exactly the pieces that were asked for, less those left out.
#[must_use]
pub fn check(pieces: &[Piece], sheets: &[Sheet], rules: &Rules, layout: &Layout) -> Vec<Fault> {
    let mut faults = Vec::new();
    let mut given: Vec<u64> = vec![0; pieces.len()];
    let mut used: Vec<u64> = vec![0; sheets.len()];
    for (at, pattern) in layout.patterns.iter().enumerate() {
        let Some(which) = sheets.iter().position(|s| s.id == pattern.sheet) else {
            faults.push(Fault::UnknownSheet { sheet: pattern.sheet });
            continue;
        };
        if pattern.copies == 0 {
            faults.push(Fault::NoCopies { pattern: at });
        }
        used[which] += u64::from(pattern.copies);
        let sheet = &sheets[which];
        let steps = order(pattern, sheet);
        let mut table = Table { pattern: at, rules, parts: Vec::new(), made: Vec::new(), faults: Vec::new() };
        let bare = Part { number: 0, sides: [sheet.width, sheet.height], raw: [[rules.edge_trim; 2]; 2] };
        if steps.is_empty() {
            match &pattern.tree {
                super::layout::Node::Piece { id, pose } => table.lay(bare, Comes::Piece { id: *id, pose: *pose }),
                _ => table.faults.push(Fault::PartLeft { pattern: at }),
            }
        } else {
            table.parts.push(bare);
        }
        for (nth, step) in steps.iter().enumerate() {
            table.cut(nth, step);
        }
        if !table.parts.is_empty() {
            table.faults.push(Fault::PartLeft { pattern: at });
        }
        for (id, sides) in &table.made {
            // Pieces may share a number only if they are alike; the first that fits and is still wanted counts.
            let fits = |p: &&(usize, &Piece)| {
                let (w, h) =
                    if sides.1 == Pose::Straight { (sides.0[0], sides.0[1]) } else { (sides.0[1], sides.0[0]) };
                let may = sides.1 == Pose::Straight || p.1.turn == Turn::Free;
                p.1.id == *id && p.1.width == w && p.1.height == h && may
            };
            let all: Vec<(usize, &Piece)> = pieces.iter().enumerate().collect();
            let open = |p: &&(usize, &Piece)| given[p.0] < u64::from(p.1.count);
            match all.iter().find(|p| fits(p) && open(p)).or_else(|| all.iter().find(fits)) {
                Some((which, _)) => given[*which] += u64::from(pattern.copies),
                None => table.faults.push(Fault::WrongPiece { pattern: at, piece: *id }),
            }
        }
        faults.append(&mut table.faults);
    }
    for (sheet, used) in sheets.iter().zip(&used) {
        if let Stock::Have(there) = sheet.stock
            && *used > u64::from(there)
        {
            faults.push(Fault::StockExceeded { sheet: sheet.id });
        }
    }
    count(pieces, layout, &given, &mut faults);
    faults
}

/// Pieces that bear the same number are counted together.
fn count(pieces: &[Piece], layout: &Layout, given: &[u64], faults: &mut Vec<Fault>) {
    let mut ids: Vec<u32> = pieces.iter().map(|p| p.id).chain(layout.left_out.iter().map(|o| o.piece)).collect();
    ids.sort();
    ids.dedup();
    for id in ids {
        let asked = pieces.iter().filter(|p| p.id == id).map(|p| u64::from(p.count)).sum();
        let out: u64 = layout.left_out.iter().filter(|o| o.piece == id).map(|o| u64::from(o.count)).sum();
        let cut: u64 = pieces.iter().zip(given).filter(|(p, _)| p.id == id).map(|(_, n)| *n).sum();
        if asked != out + cut {
            faults.push(Fault::WrongCount { piece: id, asked, given: out + cut });
        }
    }
}

/// The table beside the trimmer while one sheet is cut.
struct Table<'a> {
    pattern: usize,
    rules: &'a Rules,
    parts: Vec<Part>,
    made: Vec<(u32, ([Length; 2], Pose))>,
    faults: Vec<Fault>,
}

impl Table<'_> {
    fn cut(&mut self, nth: usize, step: &CutStep) {
        let found = self.parts.iter().position(|p| p.number == step.part && (p.sides[0], p.sides[1]) == step.sides);
        let Some(found) = found else {
            self.faults.push(Fault::NoSuchPart { pattern: self.pattern, step: nth });
            return;
        };
        let part = self.parts.remove(found);
        let across = match step.way {
            Way::Upright => 0,
            Way::Level => 1,
        };
        let whole = part.sides[across];
        if step.fence <= Length::ZERO || step.fence >= whole {
            self.faults.push(Fault::CutOutside { pattern: self.pattern, step: nth });
            return;
        }
        if !self.rules.reaches(part.sides[1 - across]) {
            self.faults.push(Fault::CutTooLong { pattern: self.pattern, step: nth });
        }
        let at = if step.edge == Edge::Near { step.fence } else { whole - step.fence };
        let mut halves = [(Length::ZERO, at, step.low), (at, whole, step.high)];
        for (from, to, comes) in &mut halves {
            let mut sides = part.sides;
            let mut raw = part.raw;
            sides[across] = *to - *from;
            // What is left of the untrimmed edges in this half.
            raw[across][0] = (raw[across][0] - *from).at_least_zero();
            raw[across][1] = (raw[across][1] - (whole - *to)).at_least_zero();
            self.lay(Part { number: part.number, sides, raw }, *comes);
        }
    }

    fn lay(&mut self, part: Part, comes: Comes) {
        match comes {
            Comes::Offcut => {}
            Comes::Part(number) => self.parts.push(Part { number, ..part }),
            Comes::Piece { id, pose } => {
                if part.raw != [[Length::ZERO; 2]; 2] {
                    self.faults.push(Fault::EdgeInPiece { pattern: self.pattern, piece: id });
                }
                self.made.push((id, (part.sides, pose)));
            }
        }
    }
}
