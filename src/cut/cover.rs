//! Good boards seen during the search, and their recombination: a set-covering heuristic.
//!
//! As in Monaci and Toth (2006), "A set-covering-based heuristic approach for bin-packing problems": boards that the
//! search has filled well are kept, and a cheapest choice among them that covers all pieces is sought. Here the linear
//! programme over the kept boards is solved, boards that cannot be part of a solution at the goal are dropped by their
//! reduced cost, and the largest amounts are fixed in turn.

use std::collections::BTreeMap;

use super::build::{Draft, Run};
use super::job::Job;
use super::simplex::{Column, Simplex};
use super::slice::Slice;
/// Most boards that are kept, and most nodes of theirs.
const KEPT: usize = 6_000;
const NODES: usize = 400_000;

/// Slots for telling whether a board was seen before; a power of two, four times as many as boards.
const SLOTS: usize = 1 << 15;

/// A filled board that may be used again.
#[derive(Clone, Debug)]
struct Kept {
    board: usize,
    slice: Slice,
    gives: Vec<(u32, u32)>,
}

/// The boards that are kept.
#[derive(Clone, Debug)]
pub struct Pool {
    kept: Vec<Kept>,
    seen: Vec<u64>,
    nodes: usize,
    /// Boards filled less than this many thousandths are not kept.
    least: i64,
}

impl Pool {
    /// An empty pool for boards that are filled to so many thousandths at least.
    #[must_use]
    pub fn new(least: i64) -> Self {
        Self { kept: Vec::new(), seen: Vec::new(), nodes: 0, least }
    }

    /// How many boards are kept.
    #[must_use]
    pub fn count(&self) -> usize {
        self.kept.len()
    }

    /// Keeps a board if it is full enough and holds what none before it held.
    pub fn offer(&mut self, job: &Job, board: usize, slice: &Slice) {
        let room = job.boards[board].area();
        // Of large sheets in fine measures a thousand areas are more than a number holds.
        let filled = i128::from(slice.area) * 1_000 / i128::from(room.max(1));
        if self.kept.len() >= KEPT || self.nodes >= NODES || filled < i128::from(self.least) {
            return;
        }
        // A sum over the pieces, so that their order does not matter; a clash only loses a board.
        let mut mark = (board as u64 + 1).wrapping_mul(0x9e37_79b9_7f4a_7c15);
        for block in slice.blocks() {
            let mut z = (u64::from(block.kind) + 1).wrapping_mul(0xbf58_476d_1ce4_e5b9);
            z = (z ^ (z >> 29)).wrapping_mul(0x94d0_49bb_1331_11eb);
            mark = mark.wrapping_add((z ^ (z >> 32)).wrapping_mul(u64::from(block.count())));
        }
        let mark = mark.max(1);
        self.seen.resize(SLOTS, 0);
        let mut slot = mark as usize & (SLOTS - 1);
        while self.seen[slot] != 0 {
            if self.seen[slot] == mark {
                return;
            }
            slot = (slot + 1) & (SLOTS - 1);
        }
        self.seen[slot] = mark;
        self.nodes += slice.parts.len();
        self.kept.push(Kept { board, slice: slice.clone(), gives: gives(slice) });
    }
}

/// How many of each kind, by rising kind.
fn gives(slice: &Slice) -> Vec<(u32, u32)> {
    let mut gives: BTreeMap<u32, u32> = BTreeMap::new();
    for block in slice.blocks() {
        *gives.entry(block.kind).or_default() += block.count();
    }
    gives.into_iter().collect()
}

/// A search for a choice of kept boards, a slice of work at a time.
#[derive(Clone, Debug)]
pub struct Cover {
    goal: f64,
    /// Candidates by their number in the pool; columns of the programme follow in this order.
    open: Vec<usize>,
    lp: Simplex,
    first: usize,
    left: Vec<u32>,
    chosen: Vec<usize>,
    cost: f64,
}

/// How far a cover has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Covering {
    /// Not done.
    Working,
    /// The kept boards can't reach the goal.
    Hopeless,
    /// All that can be chosen is chosen.
    Done,
}

impl Cover {
    /// Sets the programme up for this goal.
    #[must_use]
    pub fn new(job: &Job, pool: &Pool, goal: i64) -> Self {
        let left: Vec<u32> = job.kinds.iter().map(|k| k.count).collect();
        let open: Vec<usize> = (0..pool.kept.len()).collect();
        let (lp, first) = programme(job, pool, &open, &left);
        Self { goal: goal as f64 / job.dearest() as f64, open, lp, first, left, chosen: Vec::new(), cost: 0.0 }
    }

    /// Goes on until it is done or `end` work is reached.
    pub fn advance(&mut self, job: &Job, pool: &Pool, work: &mut u64, end: u64) -> Covering {
        loop {
            if *work >= end {
                return Covering::Working;
            }
            let duals = self.lp.duals();
            *work += (self.lp.count() * 2 + duals.len() * duals.len() / 4) as u64;
            if let Some(column) = self.lp.cheapest(&duals)
                && self.lp.enter(column)
            {
                continue;
            }
            // Duals of the kinds that are wanted still, in their order.
            let mut wanted = duals.iter();
            let duals: Vec<f64> =
                self.left.iter().map(|n| if *n > 0 { wanted.next().copied().unwrap_or(0.0) } else { 0.0 }).collect();
            let value: f64 = duals.iter().zip(&self.left).map(|(d, n)| d * f64::from(*n)).sum();
            let slack = self.goal - self.cost - value;
            if slack < -1e-4 {
                return if self.chosen.is_empty() { Covering::Hopeless } else { Covering::Done };
            }
            if !self.fix(job, pool, &duals, slack) {
                return Covering::Done;
            }
        }
    }

    /// Fixes the boards with the largest amounts and sets up what is left; false if nothing is.
    fn fix(&mut self, job: &Job, pool: &Pool, duals: &[f64], slack: f64) -> bool {
        let mut mix: Vec<(usize, f64)> = self.lp.mix().filter(|m| m.0 >= self.first).collect();
        mix.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
        let Some(&(_, top)) = mix.first() else {
            return false;
        };
        let before = self.chosen.len();
        let enough = if top > 0.6 { 0.6 } else { top };
        for (column, amount) in mix {
            if amount < enough {
                break;
            }
            let kept = self.open[column - self.first];
            let share = job.share(pool.kept[kept].board);
            for _ in 0..(amount as u32).max(1) {
                let useful = pool.kept[kept].gives.iter().any(|g| self.left[g.0 as usize] > 0);
                if !useful || self.cost + share > self.goal + 1e-9 {
                    break;
                }
                self.cost += share;
                self.chosen.push(kept);
                for (kind, n) in &pool.kept[kept].gives {
                    let left = &mut self.left[*kind as usize];
                    *left = left.saturating_sub(*n);
                }
            }
            if enough < 0.6 {
                break;
            }
        }
        if self.chosen.len() == before || self.left.iter().all(|n| *n == 0) {
            return false;
        }
        // No solution within the goal uses a board whose reduced cost is above the slack.
        let may = |kept: &usize| {
            let gives = &pool.kept[*kept].gives;
            let worth: f64 = gives.iter().map(|g| duals[g.0 as usize] * f64::from(g.1)).sum();
            job.share(pool.kept[*kept].board) - worth <= slack + 1e-6
        };
        let left = &self.left;
        self.open.retain(|kept| may(kept) && pool.kept[*kept].gives.iter().any(|g| left[g.0 as usize] > 0));
        (self.lp, self.first) = programme(job, pool, &self.open, &self.left);
        true
    }

    /// The chosen boards, each piece once.
    #[must_use]
    pub fn draft(&self, job: &Job, pool: &Pool) -> Draft {
        let mut left: Vec<u32> = job.kinds.iter().map(|k| k.count).collect();
        let mut stock: Vec<u32> = job.boards.iter().map(|b| b.limit).collect();
        let mut runs = Vec::new();
        for kept in &self.chosen {
            let Kept { board, slice, .. } = &pool.kept[*kept];
            if stock[*board] == 0 {
                continue;
            }
            if let Some(slice) = slice.keep(job, *board, &mut left) {
                if job.boards[*board].limit != u32::MAX {
                    stock[*board] -= 1;
                }
                runs.push(Run { board: *board, slice, copies: 1 });
            }
        }
        Draft { runs, left }
    }
}

/// The programme over these boards for what is left; and the number of its first column that is one of them.
fn programme(job: &Job, pool: &Pool, open: &[usize], left: &[u32]) -> (Simplex, usize) {
    // Rows for kinds that are wanted still.
    let mut rows = vec![None; left.len()];
    let mut demand = Vec::new();
    for (row, n) in rows.iter_mut().zip(left) {
        if *n > 0 {
            *row = Some(demand.len() as u32);
            demand.push(f64::from(*n));
        }
    }
    let mut lp = Simplex::new(&demand, &vec![4.0; demand.len()]);
    for row in 0..demand.len() {
        lp.add(Column { cost: 0.0, gives: vec![(row as u32, -1.0)] });
    }
    let first = lp.count();
    for kept in open {
        let kept = &pool.kept[*kept];
        let gives = kept.gives.iter().filter_map(|g| Some((rows[g.0 as usize]?, f64::from(g.1)))).collect();
        lp.add(Column { cost: job.share(kept.board), gives });
    }
    (lp, first)
}
