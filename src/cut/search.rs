//! `Search`: improves the quick layout, a slice of work at a time.

use super::bound::{self, Bounding};
use super::build::{Draft, Run, quick};
use super::columns::Columns;
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

/// Patterns are generated where pieces outnumber their kinds so many times, and where there are more than so many.
const ALIKE: u64 = 4;
const MANY: u64 = 60;

/// A search that can be stopped and continued. It counts its work, so it ends with the same layout on every device,
/// in whatever slices it is run.
#[derive(Clone, Debug)]
pub struct Search {
    pieces: Vec<Piece>,
    sheets: Vec<Sheet>,
    rules: Rules,
    job: Job,
    best: Draft,
    /// Least number of sheets and least cost that are possible.
    bound: u32,
    floor: i64,
    phase: Phase,
    dice: Dice,
    work: u64,
    most: u64,
}

#[derive(Clone, Debug)]
enum Phase {
    Bound(Bounding),
    Columns(Box<Columns>),
    Ruin(Box<Rest>),
    Done,
}

/// What ruin and recreate works on: all of the job, or what the whole part of a mix leaves.
#[derive(Clone, Debug)]
struct Rest {
    fixed: Vec<Run>,
    fixed_cost: i64,
    job: Job,
    state: State,
}

impl Search {
    /// Begins with the quick layout.
    #[must_use]
    pub fn new(pieces: &[Piece], sheets: &[Sheet], rules: &Rules) -> Self {
        let job = Job::new(pieces, sheets, rules);
        let mut work = 0;
        let best = quick(&job, &mut work);
        let bounding = Bounding::new(&job);
        Self {
            pieces: pieces.to_vec(),
            sheets: sheets.to_vec(),
            rules: rules.clone(),
            bound: bounding.sheets,
            floor: bound::cost(&job, bounding.sheets),
            phase: Phase::Bound(bounding),
            job,
            best,
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
        let end = self.work.saturating_add(work).min(self.most);
        loop {
            if self.proved()
                || self.work >= self.most
                || self.job.kinds.is_empty()
                || self.job.boards.is_empty()
            {
                self.phase = Phase::Done;
            }
            if let Phase::Done = self.phase {
                return Status::Done;
            }
            if self.work >= end {
                return Status::Working;
            }
            self.advance(end);
        }
    }

    fn advance(&mut self, end: u64) {
        match &mut self.phase {
            Phase::Bound(bounding) => {
                let sheets: u32 = self
                    .best
                    .runs
                    .iter()
                    .fold(0, |sum, r| sum.saturating_add(r.copies));
                let done = bounding.advance(sheets, &mut self.work, end);
                self.bound = self.bound.max(bounding.sheets);
                if done {
                    self.floor = self.floor.max(bound::cost(&self.job, self.bound));
                    self.phase = self.after_bound();
                }
            }
            Phase::Columns(columns) => {
                let done = columns.advance(&self.job, &mut self.work, end);
                self.bound = self.bound.max(columns.boards);
                self.floor = self
                    .floor
                    .max(columns.floor)
                    .max(bound::cost(&self.job, self.bound));
                if done {
                    let whole = columns.whole(&self.job);
                    self.phase = Phase::Ruin(Box::new(self.rest(whole)));
                }
            }
            Phase::Ruin(rest) => {
                let goal = self.best.cost(&self.job) - 1 - rest.fixed_cost;
                if rest.state.goal != goal {
                    rest.state.aim(&rest.job, goal);
                }
                rest.state.step(&rest.job, &mut self.dice, &mut self.work);
                if rest.state.sum.missing == 0 {
                    self.best = rest.with(rest.state.draft());
                }
            }
            Phase::Done => {}
        }
    }

    fn after_bound(&mut self) -> Phase {
        let pieces: u64 = self.job.kinds.iter().map(|k| u64::from(k.count)).sum();
        if pieces > MANY && pieces >= ALIKE * self.job.kinds.len() as u64 {
            if let Some(columns) = Columns::new(&self.job, &self.best) {
                return Phase::Columns(Box::new(columns));
            }
        }
        let whole = Draft {
            runs: Vec::new(),
            left: self.job.kinds.iter().map(|k| k.count).collect(),
        };
        Phase::Ruin(Box::new(self.rest(whole)))
    }

    /// Takes the whole part of a mix as given, lays out what it leaves, and keeps the sum if it is better.
    fn rest(&mut self, whole: Draft) -> Rest {
        let mut job = self.job.clone();
        for (kind, left) in job.kinds.iter_mut().zip(&whole.left) {
            kind.count = *left;
        }
        let mut fixed_cost = 0;
        for run in &whole.runs {
            let board = &mut job.boards[run.board];
            if board.limit != u32::MAX {
                board.limit -= run.copies;
            }
            fixed_cost += board.cost * i64::from(run.copies);
        }
        let draft = if whole.runs.is_empty() {
            self.best.clone()
        } else {
            quick(&job, &mut self.work)
        };
        let mut rest = Rest {
            fixed: whole.runs,
            fixed_cost,
            state: State::new(&job, &draft, i64::MAX),
            job,
        };
        let sum = rest.with(draft);
        if sum.rank(&self.job) < self.best.rank(&self.job) {
            self.best = sum;
        }
        rest.state.goal = i64::MAX;
        rest
    }

    fn proved(&self) -> bool {
        self.best.missing(&self.job) == 0 && self.best.cost(&self.job) <= self.floor
    }

    /// The best layout so far.
    #[must_use]
    pub fn layout(&self) -> Layout {
        let mut layout = emit(
            &self.job,
            &self.best,
            &self.pieces,
            &self.sheets,
            &self.rules,
        );
        layout.work = self.work;
        layout.ending = if matches!(self.phase, Phase::Done) {
            Ending::Finished
        } else {
            Ending::Stopped
        };
        if layout.left_out.iter().all(|out| out.why < Why::StockRanOut) {
            layout.bound = layout.bound.max(self.bound);
            if self.job.priced {
                layout.price_bound = None;
            }
        }
        layout
    }
}

impl Rest {
    fn with(&self, mut draft: Draft) -> Draft {
        draft.runs.extend(self.fixed.iter().cloned());
        draft
    }
}
