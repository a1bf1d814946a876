//! The quick layout: patterns filled one after the other, each repeated as often as its pieces last.

use std::cmp::Reverse;

use super::emit::emit;
use super::fill::fill;
use super::job::Job;
use super::layout::{Layout, Why};
use super::piece::Piece;
use super::sheet::{Rules, Sheet};
use super::slice::Slice;

/// One way of filling a board, and how often.
#[derive(Clone, Debug)]
pub struct Run {
    /// Index of the board.
    pub board: usize,
    /// What is on it.
    pub slice: Slice,
    /// How many boards are filled so.
    pub copies: u32,
}

/// A layout in units.
#[derive(Clone, Debug, Default)]
pub struct Draft {
    /// The patterns.
    pub runs: Vec<Run>,
    /// How many of each kind are in none.
    pub left: Vec<u32>,
}

impl Draft {
    /// A layout with nothing on it.
    #[must_use]
    pub fn nothing(job: &Job) -> Self {
        Self { runs: Vec::new(), left: job.kinds.iter().map(|k| k.count).collect() }
    }

    /// What it costs, in the job's scale.
    #[must_use]
    pub fn cost(&self, job: &Job) -> i64 {
        self.runs
            .iter()
            .map(|r| job.boards[r.board].cost.saturating_mul(i64::from(r.copies)))
            .fold(0, i64::saturating_add)
    }

    /// Area left out.
    #[must_use]
    pub fn missing(&self, job: &Job) -> i128 {
        self.left.iter().zip(&job.kinds).map(|(n, k)| i128::from(*n) * i128::from(k.area())).sum()
    }

    /// The smaller the better: what is left out, then the cost, then (as it leaves the larger offcut) how full the
    /// emptiest board is.
    #[must_use]
    pub fn rank(&self, job: &Job) -> (i128, i64, i64) {
        let emptiest = self.runs.iter().map(|r| r.slice.area).min().unwrap_or(0);
        (self.missing(job), self.cost(job), emptiest)
    }
}

/// Work that the quick layout may spend before it settles for the first order of kinds; about a millisecond.
const QUICK: u64 = 150_000;

/// Work at which even the first order stops; about a second.
const ENOUGH: u64 = 120_000_000;

/// Lays the pieces out at once: sound and quick, not the best. Never fails: what can't be placed is in `left_out`.
///
/// Kinds are taken in several orders (area, longer side, width, height; falling) and the best layout is kept. Work is
/// counted, so the answer is the same on every device.
///
/// ```
/// use snugfold::cut::{build::lay_out, piece::{Piece, Turn}, sheet::{Rules, Sheet, Stock}};
/// use snugfold::measure::{length::Length, system::System};
/// let blank = Piece { id: 1, width: Length::inches(9, 1), height: Length::inches(8, 1), count: 3, turn: Turn::Free };
/// let (side, typed) = (Length::inches(12, 1), System::Inch);
/// let square = Sheet { id: 7, width: side, height: side, typed, stock: Stock::Buy, price: None };
/// let layout = lay_out(&[blank], &[square], &Rules::default());
/// assert_eq!((layout.sheets(), layout.patterns.len()), (3, 1));
/// ```
#[must_use]
pub fn lay_out(pieces: &[Piece], sheets: &[Sheet], rules: &Rules) -> Layout {
    let mut laying = LayingOut::begin(pieces, sheets, rules);
    loop {
        if let Some(layout) = laying.step(u64::MAX) {
            return layout;
        }
    }
}

/// [`lay_out`], a slice of work at a time.
#[derive(Clone, Debug)]
pub struct LayingOut {
    pieces: Vec<Piece>,
    sheets: Vec<Sheet>,
    rules: Rules,
    job: Job,
    quick: Quick,
    work: u64,
    done: bool,
}

impl LayingOut {
    /// Nothing is laid out yet.
    #[must_use]
    pub fn begin(pieces: &[Piece], sheets: &[Sheet], rules: &Rules) -> Self {
        let job = Job::new(pieces, sheets, rules);
        let (pieces, sheets, rules) = (pieces.to_vec(), sheets.to_vec(), rules.clone());
        Self { pieces, sheets, rules, quick: Quick::new(&job), job, work: 0, done: false }
    }

    /// Goes on for about so much work; the layout once it is there.
    pub fn step(&mut self, work: u64) -> Option<Layout> {
        if !self.done {
            let end = self.work.saturating_add(work);
            self.done = self.quick.advance(&self.job, &mut self.work, end);
            // To name every piece is a step by itself.
            return None;
        }
        let Self { pieces, sheets, rules, job, .. } = self;
        let mut layout = emit(job, &self.quick.draft(job), pieces, sheets, rules);
        if layout.left_out.iter().all(|out| out.why < Why::StockRanOut) {
            layout.bound = layout.bound.max(super::bound::quick(job, layout.sheets(), &mut self.work));
        }
        layout.work = self.work;
        if self.work >= ENOUGH {
            for out in layout.left_out.iter_mut().filter(|out| out.why == Why::StockRanOut) {
                out.why = Why::WorkRanOut;
            }
        }
        Some(layout)
    }
}

/// The quick layout in units.
#[must_use]
pub fn quick(job: &Job, work: &mut u64) -> Draft {
    let mut quick = Quick::new(job);
    while !quick.advance(job, work, u64::MAX) {}
    quick.draft(job)
}

/// The quick layout, a slice of work at a time.
#[derive(Clone, Debug)]
pub struct Quick {
    /// Orders of kinds that are not tried yet, the next one last.
    orders: Vec<Vec<usize>>,
    now: Option<Filling>,
    best: Option<Draft>,
}

impl Quick {
    /// Nothing is laid out yet.
    #[must_use]
    pub fn new(job: &Job) -> Self {
        let side = |k: usize, a: usize| i64::from(job.kinds[k].sides[a]);
        let long = |k: usize| side(k, 0).max(side(k, 1));
        let by: [&dyn Fn(usize) -> (i64, i64); 4] =
            [&|k| (side(k, 1), side(k, 0)), &|k| (side(k, 0), side(k, 1)), &|k| (long(k), job.kinds[k].area()), &|k| {
                (job.kinds[k].area(), long(k))
            }];
        let order = |key: &dyn Fn(usize) -> (i64, i64)| {
            let mut order: Vec<usize> = (0..job.kinds.len()).collect();
            order.sort_by_key(|k| Reverse(key(*k)));
            order
        };
        Self { orders: by.map(order).into(), now: None, best: None }
    }

    /// Goes on until done (true) or `end` work is reached (false).
    pub fn advance(&mut self, job: &Job, work: &mut u64, end: u64) -> bool {
        loop {
            let Some(now) = &mut self.now else {
                if self.best.is_some() && *work > QUICK {
                    return true;
                }
                let Some(order) = self.orders.pop() else {
                    return true;
                };
                self.now = Some(Filling::new(job, order));
                continue;
            };
            if *work >= end {
                return false;
            }
            if now.advance(job, work) {
                let next = self.now.take().map(|f| f.draft).unwrap_or_default();
                if self.best.as_ref().is_none_or(|best| next.rank(job) < best.rank(job)) {
                    self.best = Some(next);
                }
            }
        }
    }

    /// The best layout so far: one with nothing on it while the first is not ready.
    #[must_use]
    pub fn draft(&self, job: &Job) -> Draft {
        self.best.clone().unwrap_or_else(|| Draft::nothing(job))
    }
}

/// One layout with the kinds taken in an order, a board's pattern at a time.
#[derive(Clone, Debug)]
struct Filling {
    /// Kinds that are used up drop out, so that a long list gets shorter.
    order: Vec<usize>,
    stock: Vec<u32>,
    draft: Draft,
}

impl Filling {
    fn new(job: &Job, order: Vec<usize>) -> Self {
        Self { order, stock: job.boards.iter().map(|b| b.limit).collect(), draft: Draft::nothing(job) }
    }

    /// Fills the next board, as often as its pieces last; true once there is none.
    fn advance(&mut self, job: &Job, work: &mut u64) -> bool {
        let left = &mut self.draft.left;
        self.order.retain(|k| left[*k] > 0);
        if self.order.is_empty() || *work >= ENOUGH {
            return true;
        }
        let Some((board, slice)) = next_pattern(job, &self.order, left, &self.stock, work) else {
            return true;
        };
        let mut used = vec![0_u32; job.kinds.len()];
        *work += job.kinds.len() as u64;
        for block in slice.blocks() {
            used[block.kind as usize] += block.count();
        }
        let lasts = used.iter().zip(left.iter()).filter(|(u, _)| **u > 0).map(|(u, l)| l / u).min().unwrap_or(1);
        let copies = lasts.min(self.stock[board]).max(1);
        for (left, used) in left.iter_mut().zip(&used) {
            *left -= used * copies;
        }
        if job.boards[board].limit != u32::MAX {
            self.stock[board] -= copies;
        }
        self.draft.runs.push(Run { board, slice, copies });
        false
    }
}

/// The best next pattern over all boards that are left: what is there already before what is bought, then the lowest
/// cost for the area used.
fn next_pattern(job: &Job, order: &[usize], left: &[u32], stock: &[u32], work: &mut u64) -> Option<(usize, Slice)> {
    let mut best: Option<(usize, Slice)> = None;
    for (board, &stock) in stock.iter().enumerate() {
        if stock == 0 {
            continue;
        }
        let mut rest = left.to_vec();
        let slice = fill(job, board, order, &mut rest, work);
        if slice.parts.is_empty() {
            continue;
        }
        let better = best.as_ref().is_none_or(|(held, kept)| {
            let (a, b) = (&job.boards[board], &job.boards[*held]);
            let dear = i128::from(a.cost) * i128::from(kept.area);
            let cheap = i128::from(b.cost) * i128::from(slice.area);
            // At the same cost for its area the board that is used more fully.
            (dear, i128::from(kept.area) * i128::from(a.area()))
                < (cheap, i128::from(slice.area) * i128::from(b.area()))
        });
        if better {
            best = Some((board, slice));
        }
    }
    best
}
