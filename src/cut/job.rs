//! `Job`: the same question in small integers: kinds of pieces, boards to cut them from, and who fits where.

use std::collections::BTreeMap;

use super::layout::{LeftOut, Remark, Why};
use super::piece::{Piece, Turn};
use super::sheet::{Rules, Sheet, Stock};
/// Sides of a part, `[along the width, along the height]`, in units of the job.
pub type Sides = [i32; 2];

/// Sides are kept below this many units, so that an area fits an `i64` with room for sums.
const MOST_UNITS: i64 = 1 << 28;

/// A coin (or, without prices, a bought sheet) outweighs this many sheets. A cost divided by it, rounded down, is the
/// number of coins.
pub const SHEET_SCALE: i64 = 1 << 20;

/// Prices above this (10 000.00 in most coins) count as this.
const DEAREST: u32 = 1_000_000;

/// Pieces of one size, whatever their names.
#[derive(Clone, Debug)]
pub struct Kind {
    /// Sides when it lies straight; a kind that may turn has its longer side first.
    pub sides: Sides,
    /// The same in nanometres.
    pub exact: [i64; 2],
    /// Whether it may turn.
    pub turn: Turn,
    /// How many in all.
    pub count: u32,
    /// The pieces of this size: index in the caller's list, how many, whether its sides were swapped to get `sides`.
    pub pieces: Vec<(usize, u32, bool)>,
}

impl Kind {
    /// Area in square units.
    #[must_use]
    pub fn area(&self) -> i64 {
        i64::from(self.sides[0]) * i64::from(self.sides[1])
    }
}

/// A sheet whose edges are trimmed.
#[derive(Clone, Debug)]
pub struct Board {
    /// Index in the caller's list.
    pub sheet: usize,
    /// Sides inside the trim.
    pub sides: Sides,
    /// Sides of the whole sheet in nanometres.
    pub exact: [i64; 2],
    /// How many there are; the largest number for as many as it takes.
    pub limit: u32,
    /// What one more costs the search: bought sheets or coins first, then sheets.
    pub cost: i64,
    /// What one more costs the maker.
    pub price: u64,
}

impl Board {
    /// Area inside the trim in square units.
    #[must_use]
    pub fn area(&self) -> i64 {
        i64::from(self.sides[0]) * i64::from(self.sides[1])
    }
}

/// The question in units.
#[derive(Clone, Debug)]
pub struct Job {
    /// Kinds that fit at least one board, by falling area.
    pub kinds: Vec<Kind>,
    /// Usable boards.
    pub boards: Vec<Board>,
    /// `lies[kind][board]`: which of the two poses (straight, turned) that board allows.
    pub lies: Vec<Vec<[bool; 2]>>,
    /// The longest cut in units.
    pub longest: i32,
    /// The longest cut in nanometres.
    pub longest_exact: i64,
    /// Edge trim in nanometres.
    pub trim: i64,
    /// Pieces that can't be cut from any board.
    pub left_out: Vec<LeftOut>,
    /// What was strange about the question.
    pub remarks: Vec<Remark>,
    /// Whether every sheet that can be bought has a price.
    pub priced: bool,
}

/// Greatest common divisor; of nothing and `a` it is `a`.
#[must_use]
pub const fn gcd(mut a: i64, mut b: i64) -> i64 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

impl Job {
    /// Takes the question apart. Pieces that can't be cut are left out here, each with its reason.
    #[must_use]
    pub fn new(pieces: &[Piece], sheets: &[Sheet], rules: &Rules) -> Self {
        let mut job = Self {
            kinds: Vec::new(),
            boards: Vec::new(),
            lies: Vec::new(),
            longest: i32::MAX,
            longest_exact: rules.longest_cut.map_or(i64::MAX, |l| l.nm().max(0)),
            trim: rules.edge_trim.nm().max(0),
            left_out: Vec::new(),
            remarks: Vec::new(),
            priced: sheets.iter().all(|s| s.stock != Stock::Buy || s.price.is_some()),
        };
        job.take_sheets(sheets);
        job.take_pieces(pieces, rules);
        job.scale();
        job.lies = job.kinds.iter().map(|k| job.boards.iter().map(|b| job.poses(k, b)).collect()).collect();
        job
    }

    fn take_sheets(&mut self, sheets: &[Sheet]) {
        let dearest = sheets.iter().filter(|s| s.stock == Stock::Buy).filter_map(|s| s.price).max();
        for (index, sheet) in sheets.iter().enumerate() {
            let exact = [sheet.width.nm(), sheet.height.nm()];
            let inside = [exact[0] - 2 * self.trim, exact[1] - 2 * self.trim];
            let limit = match sheet.stock {
                Stock::Have(n) => n,
                Stock::Buy => u32::MAX,
            };
            if inside[0] <= 0 || inside[1] <= 0 || limit == 0 {
                self.remarks.push(Remark::SheetUseless { sheet: sheet.id });
                continue;
            }
            if exact[0].min(exact[1]) > self.longest_exact {
                self.remarks.push(Remark::SheetTooLong { sheet: sheet.id });
            }
            let price = match (sheet.stock, sheet.price.or(dearest)) {
                (Stock::Have(_), _) => 0,
                (Stock::Buy, Some(price)) => price.min(DEAREST),
                (Stock::Buy, None) => 1,
            };
            let paid = if sheet.stock == Stock::Buy { sheet.price.unwrap_or(0) } else { 0 };
            self.boards.push(Board {
                sheet: index,
                sides: [0, 0],
                exact,
                limit,
                cost: i64::from(price) * SHEET_SCALE + 1,
                price: u64::from(paid.min(DEAREST)),
            });
        }
    }

    fn take_pieces(&mut self, pieces: &[Piece], rules: &Rules) {
        let mut known: BTreeMap<([i64; 2], Turn), usize> = BTreeMap::new();
        for (index, piece) in pieces.iter().enumerate() {
            if piece.count == 0 {
                self.remarks.push(Remark::NothingAsked { piece: piece.id });
                continue;
            }
            let (w, h) = (piece.width.nm(), piece.height.nm());
            let swap = piece.turn == Turn::Free && w < h;
            let exact = if swap { [h, w] } else { [w, h] };
            if let Some(why) = self.obstacle(exact, piece.turn, rules) {
                self.left_out.push(LeftOut { piece: piece.id, count: piece.count, why });
                continue;
            }
            // A square lies the same way whether or not it may turn.
            let turn = if w == h { Turn::Fixed } else { piece.turn };
            if let Some(kind) = known.get(&(exact, turn)) {
                let kind: &mut Kind = &mut self.kinds[*kind];
                kind.count = kind.count.saturating_add(piece.count);
                kind.pieces.push((index, piece.count, swap));
            } else {
                known.insert((exact, turn), self.kinds.len());
                let pieces = vec![(index, piece.count, swap)];
                self.kinds.push(Kind { sides: [0, 0], exact, turn, count: piece.count, pieces });
            }
        }
        let area = |k: &Kind| i128::from(k.exact[0]) * i128::from(k.exact[1]);
        self.kinds.sort_by_key(|k| std::cmp::Reverse((area(k), k.exact[0], k.turn)));
    }

    /// Why no board can give this piece; none if one can.
    fn obstacle(&self, exact: [i64; 2], turn: Turn, rules: &Rules) -> Option<Why> {
        if exact[0] <= 0 || exact[1] <= 0 {
            return Some(Why::NoSize);
        }
        if exact[0].min(exact[1]) < rules.least_strip.nm() {
            return Some(Why::TooThin);
        }
        if self.boards.is_empty() {
            return Some(Why::NoSheets);
        }
        let turned = [exact[1], exact[0]];
        let both: &[[i64; 2]] = if turn == Turn::Free { &[exact, turned] } else { &[exact] };
        let mut why = Why::TooLarge;
        for board in &self.boards {
            for sides in both {
                let inside = (0..2).all(|a| sides[a] <= board.exact[a] - 2 * self.trim);
                if inside && self.can_cut(*sides, board) {
                    return None;
                }
                if inside {
                    why = Why::TrimmerTooShort;
                }
            }
        }
        Some(why)
    }

    /// Whether the trimmer's reach allows a piece with these exact sides to come off this board at all.
    fn can_cut(&self, sides: [i64; 2], board: &Board) -> bool {
        let reach = self.longest_exact;
        if self.trim == 0 && sides == board.exact {
            return true;
        }
        // The first cut crosses the whole sheet one way or the other.
        if board.exact[0].min(board.exact[1]) > reach {
            return false;
        }
        // A side beyond reach can only be an edge that the sheet has already, on both sides of the piece.
        (0..2).all(|a| sides[a] <= reach || (self.trim == 0 && sides[1 - a] == board.exact[1 - a]))
    }

    /// Sets the unit: the greatest common divisor of all sides of pieces. Boards and reach lose their remainders, which
    /// no sum of sides can use.
    fn scale(&mut self) {
        let mut unit = self.kinds.iter().flat_map(|k| k.exact).fold(0, gcd).max(1);
        let most = self.boards.iter().flat_map(|b| b.exact).max().unwrap_or(1);
        if most / unit >= MOST_UNITS {
            // Coarser than exact: pieces round up, boards down, so what fits in units fits in truth.
            unit = most / MOST_UNITS + 1;
        }
        let up = |nm: i64| ((nm + unit - 1) / unit) as i32;
        for kind in &mut self.kinds {
            kind.sides = kind.exact.map(up);
        }
        for board in &mut self.boards {
            // Below MOST_UNITS, so it fits.
            board.sides = board.exact.map(|nm| ((nm - 2 * self.trim) / unit) as i32);
        }
        self.longest = i32::try_from(self.longest_exact / unit).unwrap_or(i32::MAX);
    }

    /// Which of the two poses a board allows a kind.
    #[must_use]
    pub fn poses(&self, kind: &Kind, board: &Board) -> [bool; 2] {
        let fits =
            |sides: Sides, exact: [i64; 2]| (0..2).all(|a| sides[a] <= board.sides[a]) && self.can_cut(exact, board);
        let [w, h] = kind.sides;
        let [ew, eh] = kind.exact;
        [fits([w, h], [ew, eh]), kind.turn == Turn::Free && fits([h, w], [eh, ew])]
    }

    /// Cost of the dearest board.
    #[must_use]
    pub fn dearest(&self) -> i64 {
        self.boards.iter().map(|b| b.cost).max().unwrap_or(1)
    }

    /// Cost of a board as a share of the dearest one.
    #[must_use]
    pub fn share(&self, board: usize) -> f64 {
        self.boards[board].cost as f64 / self.dearest() as f64
    }

    /// Sides of a kind in a pose.
    #[must_use]
    pub fn sides(&self, kind: usize, turned: bool) -> Sides {
        let [w, h] = self.kinds[kind].sides;
        if turned { [h, w] } else { [w, h] }
    }

    /// Area of all pieces that can be cut, in square units.
    #[must_use]
    pub fn area(&self) -> i128 {
        self.kinds.iter().map(|k| i128::from(k.area()) * i128::from(k.count)).sum()
    }
}
