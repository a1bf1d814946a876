//! `Search`: improves the quick layout, a slice of work at a time.

use super::bound;
use super::build::{Draft, quick};
use super::emit::emit;
use super::job::Job;
use super::layout::{Ending, Layout, Why};
use super::piece::Piece;
use super::random::Dice;
use super::ruin::State;
use super::sheet::{Rules, Sheet};

/// Whether there is more to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// Call `step` again.
    Working,
    /// Nothing is left to do: the layout is proved, or the work is used up.
    Done,
}

/// Work that a search spends before it ends by itself, times `Search::times`.
const WORK: u64 = 30_000_000;

/// A search that can be stopped and continued; the same calls give the same layouts on every device, and so do other
/// slices of work once it is done.
pub struct Search {
    pieces: Vec<Piece>,
    sheets: Vec<Sheet>,
    rules: Rules,
    job: Job,
    best: Draft,
    /// Least number of sheets and least cost that are possible.
    bound: u32,
    floor: i64,
    state: Option<State>,
    dice: Dice,
    work: u64,
    most: u64,
}

impl Search {
    /// Begins with the quick layout.
    #[must_use]
    pub fn new(pieces: &[Piece], sheets: &[Sheet], rules: &Rules) -> Self {
        let job = Job::new(pieces, sheets, rules);
        let mut work = 0;
        let best = quick(&job, &mut work);
        let bound = bound::sheets(&job);
        let floor = bound::cost(&job, bound);
        Self {
            pieces: pieces.to_vec(),
            sheets: sheets.to_vec(),
            rules: rules.clone(),
            job,
            best,
            bound,
            floor,
            state: None,
            dice: Dice::new(1),
            work,
            most: WORK,
        }
    }

    /// Multiplies the work that the search spends before it ends by itself.
    #[must_use]
    pub fn times(mut self, times: u64) -> Self {
        self.most = WORK.saturating_mul(times);
        self
    }

    /// Goes on for about so much work.
    pub fn step(&mut self, work: u64) -> Status {
        let end = self.work.saturating_add(work);
        loop {
            if self.proved() || self.work >= self.most || self.job.kinds.is_empty() {
                return Status::Done;
            }
            if self.work >= end {
                return Status::Working;
            }
            let goal = self.best.cost(&self.job) - 1;
            let state = self.state.get_or_insert_with(|| State::new(&self.job, &self.best, goal));
            if state.goal != goal {
                state.aim(&self.job, goal);
            }
            state.step(&self.job, &mut self.dice, &mut self.work);
            if state.sum.missing == 0 {
                self.best = state.draft();
            }
        }
    }

    fn proved(&self) -> bool {
        self.best.missing(&self.job) == 0 && self.best.cost(&self.job) <= self.floor
    }

    /// The best layout so far.
    #[must_use]
    pub fn layout(&self) -> Layout {
        let mut layout = emit(&self.job, &self.best, &self.pieces, &self.sheets, &self.rules);
        layout.work = self.work;
        layout.ending = if self.proved() || self.work >= self.most { Ending::Finished } else { Ending::Stopped };
        if layout.left_out.iter().all(|out| out.why < Why::StockRanOut) {
            layout.bound = layout.bound.max(self.bound);
        }
        layout
    }
}
