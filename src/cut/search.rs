//! `Search`: improves the quick layout, a slice of work at a time.

use super::bound::{self, Bounding};
use super::build::{Draft, Quick, Run, quick};
use super::columns::Columns;
use super::cover::{Cover, Covering, Pool};
use super::emit::emit;
use super::job::{Job, SHEET_SCALE};
use super::layout::{Ending, Layout, Why};
use super::piece::Piece;
use super::polish::Polish;
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

/// What a search is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aim {
    /// The fewest sheets, or the lowest price; nothing else.
    Sheets,
    /// Then the largest whole offcut, then the fewest settings of the fence.
    Offcut,
}

/// Work that a search spends before it ends by itself, times `Search::times`.
const WORK: u64 = 30_000_000;

/// Boards that ruin and recreate works on at most.
const BOARDS: u32 = 500;

/// Where the stock is short, boards that are opened at most beyond those of the best layout.
const MORE: i64 = 64;

/// Work between two recombinations of the boards seen.
const COVER: u64 = 4_000_000;

/// Ruin and recreate gets at least so many times the work of the recombination before.
const SHARE: u64 = 4;

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
    /// Work of the quick layout, and what may be spent on top of it before the search ends by itself.
    begun: u64,
    most: u64,
    aim: Aim,
}

#[derive(Clone, Debug)]
enum Phase {
    Quick(Quick),
    Bound(Bounding),
    Columns(Box<Columns>),
    Ruin(Box<Rest>),
    Polish(Box<Polish>),
    Done,
}

/// What ruin and recreate works on: all of the job, or what the whole part of a mix leaves.
#[derive(Clone, Debug)]
struct Rest {
    fixed: Vec<Run>,
    fixed_cost: i64,
    job: Job,
    state: State,
    pool: Pool,
    cover: Option<Cover>,
    /// Work at which the boards seen are recombined next, and what that has cost so far this time.
    cover_at: u64,
    cover_cost: u64,
}

impl Search {
    /// Begins with nothing laid out; the quick layout is its first work.
    #[must_use]
    pub fn new(pieces: &[Piece], sheets: &[Sheet], rules: &Rules) -> Self {
        let job = Job::new(pieces, sheets, rules);
        Self {
            pieces: pieces.to_vec(),
            sheets: sheets.to_vec(),
            rules: rules.clone(),
            bound: 0,
            floor: 0,
            phase: Phase::Quick(Quick::new(&job)),
            best: Draft::nothing(&job),
            job,
            dice: Dice::new(1),
            work: 0,
            begun: 0,
            most: WORK,
            aim: Aim::Offcut,
        }
    }

    /// Multiplies the work that the search spends before it ends by itself.
    #[must_use]
    pub fn times(mut self, times: u64) -> Self {
        self.most = WORK.saturating_mul(times);
        self
    }

    /// Sets the work that the search spends on fewer sheets before it ends by itself.
    #[must_use]
    pub fn most(mut self, work: u64) -> Self {
        self.most = work;
        self
    }

    /// Work that was spent so far: about ten nanoseconds each on an ordinary computer.
    #[must_use]
    pub fn work(&self) -> u64 {
        self.work
    }

    /// How much of its work is spent, 0 to 99.
    #[must_use]
    pub fn percent(&self) -> u32 {
        let (spent, all) = match &self.phase {
            Phase::Quick(_) => (0, self.most),
            Phase::Columns(columns) => (self.work - self.begun, self.most.saturating_add(columns.spent)),
            _ => (self.work - self.begun, self.most),
        };
        u32::try_from(spent.saturating_mul(100) / all.max(1)).unwrap_or(99).min(99)
    }

    /// Whether there is a layout: the quick one at least.
    #[must_use]
    pub fn is_laid_out(&self) -> bool {
        !matches!(self.phase, Phase::Quick(_))
    }

    /// Why pieces are not placed by now; nothing where all are.
    pub fn missing(&self) -> impl Iterator<Item = Why> {
        let short = (self.best.missing(&self.job) > 0).then_some(Why::StockRanOut);
        self.job.left_out.iter().map(|out| out.why).chain(short)
    }

    /// Says what the search is for.
    #[must_use]
    pub fn aim(mut self, aim: Aim) -> Self {
        self.aim = aim;
        self
    }

    /// Goes on for about so much work, and not beyond what it is at: setting up the next stage takes time of its own.
    pub fn step(&mut self, work: u64) -> Status {
        let end = self.work.saturating_add(work);
        let stage = std::mem::discriminant(&self.phase);
        while std::mem::discriminant(&self.phase) == stage {
            if matches!(self.phase, Phase::Done) {
                return Status::Done;
            }
            if self.improved() {
                self.phase = self.after_improving();
            } else if self.work >= end {
                break;
            } else {
                self.advance(end);
            }
        }
        Status::Working
    }

    /// True once nothing more is tried for fewer sheets.
    fn improved(&self) -> bool {
        match self.phase {
            Phase::Quick(_) | Phase::Polish(_) | Phase::Done => false,
            // The mix is brought to its end, for it comes before all else.
            Phase::Columns(_) => self.proved(),
            Phase::Bound(_) | Phase::Ruin(_) => {
                self.proved()
                    || self.work - self.begun >= self.most
                    || self.job.kinds.is_empty()
                    || self.job.boards.is_empty()
            }
        }
    }

    fn after_improving(&self) -> Phase {
        match (self.aim, Polish::new(&self.job, &self.best)) {
            (Aim::Offcut, Some(polish)) => Phase::Polish(Box::new(polish)),
            _ => Phase::Done,
        }
    }

    fn advance(&mut self, end: u64) {
        match &mut self.phase {
            Phase::Quick(quick) => {
                if quick.advance(&self.job, &mut self.work, end) {
                    self.best = quick.draft(&self.job);
                    self.begun = self.work;
                    let bounding = Bounding::new(&self.job);
                    self.bound = bounding.sheets;
                    self.floor = bound::cost(&self.job, self.bound);
                    self.phase = Phase::Bound(bounding);
                }
            }
            Phase::Bound(bounding) => {
                let sheets: u32 = self.best.runs.iter().fold(0, |sum, r| sum.saturating_add(r.copies));
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
                self.floor = self.floor.max(columns.floor).max(bound::cost(&self.job, self.bound));
                if done {
                    // Work on the mix is on top of what improving it may take.
                    self.most = self.most.saturating_add(columns.spent);
                    let whole = columns.whole(&self.job);
                    self.phase = Phase::Ruin(Box::new(self.rest(whole)));
                }
            }
            Phase::Ruin(rest) => {
                let missing = self.best.missing(&self.job);
                let short = missing > 0 && self.job.boards.iter().all(|b| b.limit != u32::MAX);
                // While the stock is short, every sheet of it may be used; else one step less than the best is aimed at.
                let more = if short { MORE * self.job.dearest() } else { -1 };
                let goal = self.best.cost(&self.job) + more - rest.fixed_cost;
                if rest.state.goal != goal {
                    rest.state.aim(&rest.job, goal);
                }
                if rest.recombine(&mut self.work, end) {
                    return;
                }
                rest.state.step(&rest.job, &mut rest.pool, &mut self.dice, &mut self.work);
                if rest.state.sum.missing == 0 || i128::from(rest.state.sum.missing) < missing {
                    rest.cover = None;
                    self.best = rest.with(rest.state.draft());
                }
            }
            Phase::Polish(polish) => {
                let done = polish.advance(&mut self.dice, &mut self.work, end);
                self.best = polish.draft();
                if done {
                    self.phase = Phase::Done;
                }
            }
            Phase::Done => {}
        }
    }

    fn after_bound(&mut self) -> Phase {
        let pieces: u64 = self.job.kinds.iter().map(|k| u64::from(k.count)).sum();
        if pieces > MANY
            && pieces >= ALIKE * self.job.kinds.len() as u64
            && let Some(columns) = Columns::new(&self.job, &self.best)
        {
            return Phase::Columns(Box::new(columns));
        }
        let whole = self.fullest();
        Phase::Ruin(Box::new(self.rest(whole)))
    }

    /// Of very many boards the fullest stay as they are, and only the others are worked on.
    fn fullest(&self) -> Draft {
        let mut runs = self.best.runs.clone();
        runs.sort_by_key(|r| std::cmp::Reverse(r.slice.area));
        let mut more: u32 = runs.iter().fold(0_u32, |sum, r| sum.saturating_add(r.copies)).saturating_sub(BOARDS);
        let mut draft = Draft { runs: Vec::new(), left: self.job.kinds.iter().map(|k| k.count).collect() };
        for mut run in runs {
            run.copies = run.copies.min(more);
            if run.copies == 0 {
                break;
            }
            more -= run.copies;
            for block in run.slice.blocks() {
                draft.left[block.kind as usize] -= block.count() * run.copies;
            }
            draft.runs.push(run);
        }
        draft
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
        let draft = if whole.runs.is_empty() { self.best.clone() } else { quick(&job, &mut self.work) };
        let room: i128 = draft.runs.iter().map(|r| i128::from(job.boards[r.board].area()) * i128::from(r.copies)).sum();
        let full = (job.area() * 1_000 / room.max(1)) as i64;
        let mut rest = Rest {
            fixed: whole.runs,
            fixed_cost,
            state: State::new(&job, &draft, i64::MAX),
            job,
            pool: Pool::new(full - 150),
            cover: None,
            cover_at: self.work + COVER,
            cover_cost: 0,
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
        let mut layout = emit(&self.job, &self.best, &self.pieces, &self.sheets, &self.rules);
        layout.work = self.work;
        layout.ending = if matches!(self.phase, Phase::Done) { Ending::Finished } else { Ending::Stopped };
        if layout.left_out.iter().all(|out| out.why < Why::StockRanOut) {
            layout.bound = layout.bound.max(self.bound);
            if self.job.priced {
                layout.price_bound = u64::try_from(self.floor / SHEET_SCALE).ok();
            }
        }
        layout
    }
}

impl Rest {
    /// Recombines the boards seen, when it is time to; true while at it.
    fn recombine(&mut self, work: &mut u64, end: u64) -> bool {
        if self.cover.is_none() {
            if *work < self.cover_at {
                return false;
            }
            self.cover = Some(Cover::new(&self.job, &self.pool, self.state.goal));
        }
        let Some(cover) = &mut self.cover else {
            return false;
        };
        let before = *work;
        let covering = cover.advance(&self.job, &self.pool, work, end);
        self.cover_cost += *work - before;
        match covering {
            Covering::Working => return true,
            Covering::Hopeless => {}
            Covering::Done => {
                let draft = cover.draft(&self.job, &self.pool);
                self.state.take(&self.job, &draft);
            }
        }
        self.cover = None;
        self.cover_at = *work + COVER.max(SHARE * self.cover_cost);
        self.cover_cost = 0;
        false
    }

    fn with(&self, mut draft: Draft) -> Draft {
        draft.runs.extend(self.fixed.iter().cloned());
        draft
    }
}
