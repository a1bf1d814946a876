//! Many alike pieces: the cheapest mix of patterns by column generation, what it proves, and its whole part.
//!
//! Gilmore and Gomory (1961, 1965): a linear programme over patterns, whose next column is the best single board for
//! the present duals. First a quick filling is tried, then the exact one. The exact one also gives a bound (Farley
//! 1990), computed in whole numbers from rounded duals, so that it holds whatever the rounding. Mixes are rounded down;
//! what is missing then is left to ruin and recreate.

use super::build::{Draft, Run};
use super::fill::fill;
use super::job::Job;
use super::raster::{Pricing, Raster};
use super::simplex::{Column, SAVING, Simplex, worth};
use super::slice::Slice;

/// Duals are scaled so that the dearest piece counts this much.
const SCALE: f64 = (1_u64 << 30) as f64;

/// Work after which the mix is taken as it is.
const MOST: u64 = 60_000_000;

/// More kinds than this are left to ruin and recreate.
const KINDS: usize = 200;

/// Column generation, a slice of work at a time.
#[derive(Clone, Debug)]
pub struct Columns {
    lp: Simplex,
    /// Board and tree of each column from `first` on.
    patterns: Vec<(usize, Slice)>,
    first: usize,
    /// Row of each board that there are only so many of.
    stock_rows: Vec<Option<usize>>,
    rasters: Vec<Option<Raster>>,
    /// The exact filling in hand: whole-numbered worths, board, run, and the boards' values so far.
    exact: Option<Exact>,
    /// Least cost and least number of boards that are proved so far.
    pub floor: i64,
    /// Least number of boards.
    pub boards: u32,
    done: bool,
    /// Work spent here.
    pub spent: u64,
}

#[derive(Clone, Debug)]
struct Exact {
    worths: Vec<i64>,
    board: usize,
    run: Pricing,
    values: Vec<i64>,
    found: bool,
}

impl Columns {
    /// Sets the programme up with the patterns of a draft; none if there are too many kinds.
    #[must_use]
    pub fn new(job: &Job, draft: &Draft) -> Option<Self> {
        let kinds = job.kinds.len();
        if kinds == 0 || kinds > KINDS || job.boards.is_empty() {
            return None;
        }
        let mut demand: Vec<f64> = job.kinds.iter().map(|k| f64::from(k.count)).collect();
        // Leaving a piece out costs far more than any board of its own.
        let mut costs = vec![16.0; kinds];
        let mut stock_rows = Vec::new();
        for board in &job.boards {
            stock_rows.push((board.limit != u32::MAX).then_some(demand.len()));
            if board.limit != u32::MAX {
                demand.push(f64::from(board.limit));
                costs.push(0.0);
            }
        }
        let mut lp = Simplex::new(&demand, &costs);
        // More than asked for may be cut.
        for kind in 0..kinds {
            lp.add(Column { cost: 0.0, gives: vec![(kind as u32, -1.0)] });
        }
        let first = lp.count();
        let rasters = (0..job.boards.len()).map(|b| Raster::new(job, b)).collect();
        let mut columns = Self {
            lp,
            patterns: Vec::new(),
            first,
            stock_rows,
            rasters,
            exact: None,
            floor: 0,
            boards: 0,
            done: false,
            spent: 0,
        };
        for run in &draft.runs {
            columns.add(job, run.board, run.slice.clone());
        }
        Some(columns)
    }

    fn column(&self, job: &Job, board: usize, slice: &Slice) -> Column {
        let mut gives: Vec<(u32, f64)> = Vec::new();
        for block in slice.blocks() {
            match gives.iter_mut().find(|g| g.0 == block.kind) {
                Some(known) => known.1 += f64::from(block.count()),
                None => gives.push((block.kind, f64::from(block.count()))),
            }
        }
        if let Some(row) = self.stock_rows[board] {
            gives.push((row as u32, 1.0));
        }
        Column { cost: job.share(board), gives }
    }

    fn add(&mut self, job: &Job, board: usize, slice: Slice) {
        let column = self.column(job, board, &slice);
        self.lp.add(column);
        self.patterns.push((board, slice));
    }

    /// Goes on until the mix is the cheapest (true) or `end` work is reached.
    pub fn advance(&mut self, job: &Job, work: &mut u64, end: u64) -> bool {
        let before = *work;
        let done = self.go_on(job, work, end);
        self.spent += *work - before;
        done || self.spent >= MOST
    }

    fn go_on(&mut self, job: &Job, work: &mut u64, end: u64) -> bool {
        while !self.done {
            if *work >= end {
                return false;
            }
            if self.exact.is_some() {
                if !self.advance_exact(job, work, end) {
                    return false;
                }
                continue;
            }
            let duals = self.lp.duals();
            *work += (self.lp.count() * 4 + duals.len() * duals.len() / 4) as u64;
            if let Some(column) = self.lp.cheapest(&duals) {
                if !self.lp.enter(column) {
                    self.done = true;
                }
                continue;
            }
            if !self.quick(job, &duals, work) {
                self.start_exact(job, &duals);
            }
        }
        true
    }

    /// Tries a quick filling of each board, kinds by falling worth for their area; true if it found a column.
    fn quick(&mut self, job: &Job, duals: &[f64], work: &mut u64) -> bool {
        let mut order: Vec<usize> = (0..job.kinds.len()).filter(|k| duals[*k] > 0.0).collect();
        let dense = |k: usize| duals[k] / job.kinds[k].area().max(1) as f64;
        order.sort_by(|a, b| dense(*b).total_cmp(&dense(*a)));
        let mut found = false;
        for board in 0..job.boards.len() {
            let mut left: Vec<u32> = job.kinds.iter().map(|k| k.count).collect();
            let slice = fill(job, board, &order, &mut left, work);
            if slice.parts.is_empty() {
                continue;
            }
            let column = self.column(job, board, &slice);
            if column.cost - worth(&column, duals) < -SAVING {
                self.add(job, board, slice);
                found = true;
            }
        }
        found
    }

    fn start_exact(&mut self, job: &Job, duals: &[f64]) {
        let most = duals[..job.kinds.len()].iter().fold(0.0_f64, |a, b| a.max(*b));
        let (true, Some(Some(raster))) = (most > 0.0, self.rasters.first()) else {
            self.done = true;
            return;
        };
        if self.rasters.iter().any(Option::is_none) {
            self.done = true;
            return;
        }
        // Rounded down and never below nothing: any such worths give a bound that holds.
        let worths: Vec<i64> = duals[..job.kinds.len()].iter().map(|d| (d.max(0.0) / most * SCALE) as i64).collect();
        let run = raster.price(&worths);
        self.exact = Some(Exact { worths, board: 0, run, values: Vec::new(), found: false });
    }

    fn advance_exact(&mut self, job: &Job, work: &mut u64, end: u64) -> bool {
        let Some(mut exact) = self.exact.take() else {
            return true;
        };
        let Some(Some(raster)) = self.rasters.get(exact.board) else {
            return true;
        };
        if !raster.advance(&mut exact.run, work, end) {
            self.exact = Some(exact);
            return false;
        }
        exact.values.push(raster.value(&exact.run));
        if let Some(slice) = raster.slice(job, &exact.run) {
            let duals = self.lp.duals();
            let column = self.column(job, exact.board, &slice);
            if column.cost - worth(&column, &duals) < -SAVING {
                self.add(job, exact.board, slice);
                exact.found = true;
            }
        }
        exact.board += 1;
        if let Some(Some(next)) = self.rasters.get(exact.board) {
            exact.run = next.price(&exact.worths);
            self.exact = Some(exact);
        } else {
            self.prove(job, &exact);
            // Whole boards: a mix that costs no more than the bound rounded up can't be bettered in what it proves.
            let mix: f64 = self.lp.mix().map(|m| self.lp.cost(m.0) * m.1).sum();
            let floor = super::bound::cost(job, self.boards).max(self.floor);
            self.done = !exact.found || mix * job.dearest() as f64 <= floor as f64 * (1.0 - 1e-9);
        }
        true
    }

    /// Farley's bound: worths that no board exceeds its cost by prove that all pieces together cost at least their
    /// worth; boards that there are only so many of may exceed it, but only so often.
    fn prove(&mut self, job: &Job, exact: &Exact) {
        let all: i128 = job.kinds.iter().zip(&exact.worths).map(|(k, w)| i128::from(k.count) * i128::from(*w)).sum();
        let most = i128::from(exact.values.iter().copied().max().unwrap_or(0));
        if most > 0 {
            let boards = u32::try_from((all + most - 1) / most).unwrap_or(u32::MAX);
            self.boards = self.boards.max(boards);
        }
        let bought = job.boards.iter().zip(&exact.values).filter(|(b, v)| b.limit == u32::MAX && **v > 0);
        let tightest =
            bought.map(|(b, v)| (i128::from(b.cost), i128::from(*v))).min_by(|a, b| (a.0 * b.1).cmp(&(b.0 * a.1)));
        let Some((cost, value)) = tightest else {
            return;
        };
        let mut floor = cost * all;
        for (board, v) in job.boards.iter().zip(&exact.values) {
            if board.limit != u32::MAX {
                let excess = cost * i128::from(*v) - i128::from(board.cost) * value;
                floor -= excess.max(0) * i128::from(board.limit);
            }
        }
        let floor = (floor + value - 1).div_euclid(value);
        self.floor = self.floor.max(i64::try_from(floor).unwrap_or(i64::MAX));
    }

    /// The whole part of the mix as a draft, and what it leaves.
    #[must_use]
    pub fn whole(&self, job: &Job) -> Draft {
        let mut draft = Draft { runs: Vec::new(), left: job.kinds.iter().map(|k| k.count).collect() };
        let mut stock: Vec<u32> = job.boards.iter().map(|b| b.limit).collect();
        let mut mix: Vec<(usize, f64)> = self.lp.mix().filter(|(column, _)| *column >= self.first).collect();
        mix.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
        for (column, amount) in mix {
            let (board, slice) = &self.patterns[column - self.first];
            // A hair more, so that a whole number is not missed for rounding.
            let mut copies = ((amount + 1e-4) as u32).min(stock[*board]);
            let mut used = vec![0_u32; job.kinds.len()];
            for block in slice.blocks() {
                used[block.kind as usize] += block.count();
            }
            for (used, left) in used.iter().zip(&draft.left) {
                copies = left.checked_div(*used).map_or(copies, |most| copies.min(most));
            }
            if copies == 0 {
                continue;
            }
            for (used, left) in used.iter().zip(&mut draft.left) {
                *left -= used * copies;
            }
            if stock[*board] != u32::MAX {
                stock[*board] -= copies;
            }
            draft.runs.push(Run { board: *board, slice: slice.clone(), copies });
        }
        draft
    }
}
