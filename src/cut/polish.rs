//! Among layouts of the same cost: the largest whole offcut, then the fewest settings of the fence.
//!
//! Works on the emptiest boards only. One of them is cut short, which is the offcut that is asked for, and ruin and
//! recreate tries to place the pieces in what remains; the length is found by halving. Then, with that offcut safe, it
//! wanders among layouts that hold everything and keeps the one with the fewest settings.

use super::build::{Draft, Run};
use super::cover::Pool;
use super::emit::whole;
use super::job::{Board, Job};
use super::order::different;
use super::random::Dice;
use super::ruin::State;
use super::slice::Slice;
use crate::measure::area::Area;
use crate::measure::length::Length;

/// Boards that are worked on at most.
const BOARDS: usize = 12;

/// Pieces on them at most.
const PIECES: u32 = 400;

/// How often the length is halved.
const ROUNDS: u32 = 6;

/// Work for one attempt.
const ATTEMPT: u64 = 250_000;

/// Work for a look at a layout's settings.
const LOOK: u64 = 6_000;

/// The offcut and the settings of a draft: the largest offcut first.
type Merit = (Area, std::cmp::Reverse<usize>);

/// Polishes the emptiest boards of a draft, a slice of work at a time.
#[derive(Clone, Debug)]
pub struct Polish {
    fixed: Vec<Run>,
    job: Job,
    best: Draft,
    merit: Merit,
    /// Offcuts (in square units) that are reached, and that are out of reach.
    reached: i128,
    beyond: i128,
    round: u32,
    attempt: Option<Attempt>,
    /// Board and axis of the best offcut, and how long it is.
    found: Option<(usize, usize, i32)>,
}

#[derive(Clone, Debug)]
struct Attempt {
    /// Which board is cut short, along which axis, by how much.
    short: Option<(usize, usize, i32)>,
    job: Job,
    state: State,
    pool: Pool,
    until: u64,
}

impl Polish {
    /// Takes the emptiest boards of a draft; none where there is nothing to gain.
    #[must_use]
    pub fn new(job: &Job, draft: &Draft) -> Option<Self> {
        let mut fixed = draft.runs.clone();
        fixed.sort_by_key(|r| std::cmp::Reverse(r.slice.area));
        let mut runs = Vec::new();
        let mut pieces = 0;
        while let Some(mut last) = fixed.pop() {
            let count: u32 = last.slice.blocks().map(|b| b.count()).sum();
            if runs.len() >= BOARDS || pieces + count > PIECES {
                fixed.push(last);
                break;
            }
            pieces += count;
            last.copies -= 1;
            runs.push(Run { copies: 1, ..last.clone() });
            if last.copies > 0 {
                fixed.push(last);
            }
        }
        if runs.is_empty() {
            return None;
        }
        let mut job = job.clone();
        for kind in &mut job.kinds {
            kind.count = 0;
        }
        for board in &mut job.boards {
            board.limit = 0;
        }
        for run in &runs {
            job.boards[run.board].limit += 1;
            for block in run.slice.blocks() {
                job.kinds[block.kind as usize].count += block.count();
            }
        }
        let best = Draft { runs, left: vec![0; job.kinds.len()] };
        let all: i128 = best.runs.iter().map(|r| i128::from(job.boards[r.board].area())).sum();
        let mut polish = Self {
            fixed,
            merit: merit(&job, &best),
            reached: 0,
            beyond: all - job.area(),
            job,
            best,
            round: 0,
            attempt: None,
            found: None,
        };
        polish.reached = polish.in_units(polish.merit.0);
        Some(polish)
    }

    /// An area in square units, by the first board's scale.
    fn in_units(&self, area: Area) -> i128 {
        let Some(board) = self.best.runs.first().map(|r| &self.job.boards[r.board]) else {
            return 0;
        };
        let exact = Area::of(Length::from_nm(board.exact[0]), Length::from_nm(board.exact[1]));
        i128::from(area.per_mille(exact)) * i128::from(board.area()) / 1_000
    }

    /// The polished draft.
    #[must_use]
    pub fn draft(&self) -> Draft {
        let mut draft = self.best.clone();
        draft.runs.extend(self.fixed.iter().cloned());
        draft
    }

    /// Goes on until done (true) or `end` work is reached (false).
    pub fn advance(&mut self, dice: &mut Dice, work: &mut u64, end: u64) -> bool {
        loop {
            let Some(mut attempt) = self.attempt.take() else {
                match self.next_attempt(*work) {
                    Some(next) => self.attempt = Some(next),
                    None => return true,
                }
                continue;
            };
            while *work < attempt.until && *work < end {
                attempt.state.step(&attempt.job, &mut attempt.pool, dice, work);
                if attempt.state.sum.missing == 0 {
                    *work += LOOK;
                    let tidying = attempt.short == self.found && self.round > 2 * ROUNDS;
                    if self.take(&attempt) && !tidying {
                        // On to a larger one.
                        attempt.until = 0;
                    }
                }
            }
            if *work < attempt.until {
                self.attempt = Some(attempt);
                return false;
            }
        }
    }

    /// Cuts one board short, by turns along each axis, half way between what is reached and what is not; in the end
    /// keeps the best offcut and looks for fewer settings.
    fn next_attempt(&mut self, work: u64) -> Option<Attempt> {
        while self.round < 2 * ROUNDS {
            let axis = (self.round % 2) as usize;
            self.round += 1;
            let target = (self.reached + self.beyond) / 2;
            if axis == 1 && self.round > 2 {
                // Both axes were tried at about this size; the second try counts.
                self.beyond = self.beyond.min(target + (self.beyond - target) / 2).max(self.reached);
            }
            if target <= self.reached {
                continue;
            }
            let at = self.best.runs.iter().min_by_key(|r| r.slice.area)?.board;
            let board = &self.job.boards[at];
            let other = i128::from(board.sides[1 - axis]);
            let length = i32::try_from((target + other - 1) / other.max(1)).unwrap_or(i32::MAX);
            if length < board.sides[axis] {
                return self.attempt_with(Some((at, axis, length)), work);
            }
        }
        if self.round == 2 * ROUNDS {
            self.round += 1;
            return self.attempt_with(self.found, work);
        }
        None
    }

    fn attempt_with(&self, short: Option<(usize, usize, i32)>, work: u64) -> Option<Attempt> {
        let mut job = self.job.clone();
        let mut draft = self.best.clone();
        let cost = draft.cost(&job);
        if let Some((at, axis, length)) = short {
            job.boards[at].limit -= 1;
            let mut board = Board { limit: 1, ..job.boards[at].clone() };
            board.sides[axis] -= length;
            for kind in 0..job.kinds.len() {
                let lies = job.poses(&job.kinds[kind], &board);
                job.lies[kind].push(lies);
            }
            job.boards.push(board);
            // The emptiest board of that size gives way.
            let gone = (0..draft.runs.len())
                .filter(|i| draft.runs[*i].board == at)
                .min_by_key(|i| draft.runs[*i].slice.area)?;
            for block in draft.runs.swap_remove(gone).slice.blocks() {
                draft.left[block.kind as usize] += block.count();
            }
        }
        let state = State::new(&job, &draft, cost);
        // Nothing is recombined here.
        Some(Attempt { short, state, job, pool: Pool::new(i64::MAX), until: work + ATTEMPT })
    }

    /// Keeps what an attempt has reached if it is better.
    fn take(&mut self, attempt: &Attempt) -> bool {
        let mut draft = attempt.state.draft();
        for run in &mut draft.runs {
            if let Some((at, _, _)) = attempt.short
                && run.board == self.job.boards.len()
            {
                run.board = at;
            }
            run.slice.measure(&self.job, run.board);
        }
        let merit = merit(&self.job, &draft);
        if draft.cost(&self.job) > self.best.cost(&self.job) || merit <= self.merit {
            return false;
        }
        (self.best, self.merit) = (draft, merit);
        let reached = self.in_units(merit.0);
        if reached > self.reached {
            self.reached = reached;
            self.found = attempt.short;
        }
        true
    }
}

fn merit(job: &Job, draft: &Draft) -> Merit {
    let mut largest = Area::ZERO;
    let mut times = 0;
    for run in &draft.runs {
        let (offcut, set) = of_board(job, run.board, &run.slice);
        largest = largest.max(offcut);
        times += set;
    }
    (largest, std::cmp::Reverse(times))
}

/// The largest offcut of a board and how many settings of the fence its cuts need.
fn of_board(job: &Job, board: usize, slice: &Slice) -> (Area, usize) {
    let [width, height] = job.boards[board].exact.map(Length::from_nm);
    let tree = whole(job, board, slice);
    let largest = tree.largest_offcut(width, height).map_or(Area::ZERO, |(w, h)| Area::of(w, h));
    (largest, different(&tree, width, height))
}
