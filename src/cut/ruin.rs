//! Ruin and recreate on slicing trees, towards a goal: boards of so much cost, and less and less left out.
//!
//! After Gardeyn and Wauters (2022), "A goal-driven ruin and recreate heuristic for the 2D variable-sized bin packing
//! problem with guillotine constraints", with late acceptance (Burke and Bykov 2017) and blinks (Christiaens and
//! Vanden Berghe 2020). Unlike there, cuts are not placed while the search runs: a tree only says who stands beside
//! whom, so a piece goes wherever the needs allow it.

use std::cmp::Reverse;

use super::build::{Draft, Run};
use super::cover::Pool;
use super::fill::worth;
use super::job::Job;
use super::random::Dice;
use super::slice::{Block, Slice, Spot};

/// How many past values late acceptance looks back.
const HISTORY: usize = 100;

/// A move ruins up to so many boards, and takes about so many parts out of them.
const BOARDS: usize = 3;
const PARTS: usize = 8;

/// An offer in so many is overlooked on average.
const BLINK: usize = 100;

/// Boards that a piece is offered to in one move at most, beside those that the move has ruined.
const LOOK: usize = 64;

/// One board in use.
#[derive(Clone, Debug, Default)]
pub struct Used {
    /// Index of the board.
    pub board: usize,
    /// What is on it.
    pub slice: Slice,
}

/// A layout that may lack pieces, on boards that cost no more than the goal.
#[derive(Clone, Debug)]
pub struct State {
    /// Boards in use; some may be empty.
    pub used: Vec<Used>,
    /// What is left out and what it costs.
    pub sum: Sum,
    /// The cost that must not be passed.
    pub goal: i64,
    history: Vec<i64>,
    turn: usize,
    // What the move in hand began with, to go back to.
    before: Sum,
    saved: Vec<(usize, Used)>,
    // Kept between moves for their memory only.
    freed: Vec<Block>,
    order: Vec<u32>,
    spare: Vec<Used>,
}

/// The sums over a state.
#[derive(Clone, Debug, Default)]
pub struct Sum {
    /// How many of each kind are left out.
    pub out: Vec<u32>,
    /// Their area.
    pub missing: i64,
    /// Cost of the boards in use.
    pub cost: i64,
    /// How many more there are of each board.
    pub stock: Vec<u32>,
    /// How many boards are in use.
    pub boards: usize,
}

impl State {
    /// Starts from a draft, giving up its emptiest boards until the goal is met.
    #[must_use]
    pub fn new(job: &Job, draft: &Draft, goal: i64) -> Self {
        let mut state = Self {
            used: Vec::new(),
            sum: Sum::default(),
            goal,
            history: Vec::new(),
            turn: 0,
            before: Sum::default(),
            saved: Vec::new(),
            freed: Vec::new(),
            order: Vec::new(),
            spare: Vec::new(),
        };
        state.take(job, draft);
        state
    }

    /// Goes on from another draft, towards the same goal.
    pub fn take(&mut self, job: &Job, draft: &Draft) {
        self.used.clear();
        self.sum = Sum {
            out: draft.left.clone(),
            missing: draft.left.iter().zip(&job.kinds).map(|(n, k)| i64::from(*n) * k.area()).sum(),
            stock: job.boards.iter().map(|b| b.limit).collect(),
            ..Sum::default()
        };
        for run in &draft.runs {
            for _ in 0..run.copies {
                self.open(job, run.board);
                if let Some(last) = self.used.last_mut() {
                    last.slice = run.slice.clone();
                    // Grids are for the quick layout; here every piece stands for itself.
                    last.slice.single(job, run.board);
                }
            }
        }
        self.aim(job, self.goal);
    }

    /// Sets the goal and gives up the emptiest boards until it is met.
    pub fn aim(&mut self, job: &Job, goal: i64) {
        self.goal = goal;
        while self.sum.cost > goal && !self.used.is_empty() {
            let emptiest = (0..self.used.len()).min_by_key(|i| (self.used[*i].slice.area, *i)).unwrap_or(0);
            let used = self.used.swap_remove(emptiest);
            for block in used.slice.blocks() {
                self.sum.out[block.kind as usize] += block.count();
            }
            self.sum.missing += used.slice.area;
            self.close(job, used.board);
        }
        self.history = vec![self.sum.missing; HISTORY];
    }

    /// The boards in use as a draft, each on its own.
    #[must_use]
    pub fn draft(&self) -> Draft {
        let filled = self.used.iter().filter(|u| !u.slice.parts.is_empty());
        let runs = filled.map(|u| Run { board: u.board, slice: u.slice.clone(), copies: 1 }).collect();
        Draft { runs, left: self.sum.out.clone() }
    }

    /// One move: takes some parts out, puts pieces in, and keeps the result or goes back.
    pub fn step(&mut self, job: &Job, pool: &mut Pool, dice: &mut Dice, work: &mut u64) {
        let begun = *work;
        self.before.clone_from(&self.sum);
        self.ruin(job, dice, work);
        self.change_boards(job, dice);
        self.recreate(job, dice, work);
        let late = self.history[self.turn];
        if self.sum.missing <= late || self.sum.missing <= self.before.missing {
            for (at, _) in &self.saved {
                pool.offer(job, self.used[*at].board, &self.used[*at].slice);
            }
            self.spare.extend(self.saved.drain(..).map(|s| s.1));
        } else {
            self.used.truncate(self.before.boards);
            while let Some((at, used)) = self.saved.pop() {
                self.spare.push(std::mem::replace(&mut self.used[at], used));
            }
            std::mem::swap(&mut self.sum, &mut self.before);
        }
        self.history[self.turn] = late.min(self.sum.missing);
        self.turn = (self.turn + 1) % HISTORY;
        // Where no board may be used there is nothing to do: that is counted too, or the search would never end.
        *work = (*work).max(begun + 1);
    }

    fn open(&mut self, job: &Job, board: usize) {
        let mut used = self.spare.pop().unwrap_or_default();
        used.slice.clear();
        used.board = board;
        self.used.push(used);
        self.sum.cost += job.boards[board].cost;
        self.sum.boards += 1;
        if job.boards[board].limit != u32::MAX {
            self.sum.stock[board] = self.sum.stock[board].saturating_sub(1);
        }
    }

    fn close(&mut self, job: &Job, board: usize) {
        self.sum.cost -= job.boards[board].cost;
        self.sum.boards -= 1;
        if job.boards[board].limit != u32::MAX {
            self.sum.stock[board] += 1;
        }
    }

    /// Keeps a copy of a board as it was before this move.
    fn save(&mut self, at: usize) {
        if at < self.before.boards && self.saved.iter().all(|s| s.0 != at) {
            let mut copy = self.spare.pop().unwrap_or_default();
            let used = &self.used[at];
            copy.board = used.board;
            copy.slice.area = used.slice.area;
            copy.slice.parts.clone_from(&used.slice.parts);
            self.saved.push((at, copy));
        }
    }

    /// Takes a few parts out of a few boards.
    fn ruin(&mut self, job: &Job, dice: &mut Dice, work: &mut u64) {
        if self.used.is_empty() {
            return;
        }
        let boards = 1 + dice.below(BOARDS);
        let parts = 1 + dice.below(PARTS);
        for _ in 0..boards {
            let at = dice.below(self.used.len());
            self.save(at);
            for _ in 0..parts.div_ceil(boards) {
                let count = self.used[at].slice.parts.len();
                if count == 0 {
                    break;
                }
                *work += count as u64;
                let used = &mut self.used[at];
                used.slice.remove(job, used.board, dice.below(count), &mut self.freed);
            }
        }
        for block in self.freed.drain(..) {
            self.sum.out[block.kind as usize] += block.count();
            self.sum.missing += job.kinds[block.kind as usize].area() * i64::from(block.count());
        }
    }

    /// Empty boards become other boards, and new ones are opened as far as the goal allows.
    fn change_boards(&mut self, job: &Job, dice: &mut Dice) {
        if job.boards.len() > 1 {
            for at in 0..self.used.len() {
                if self.used[at].slice.parts.is_empty() {
                    self.save(at);
                    let board = self.used[at].board;
                    self.close(job, board);
                    let next = self.affordable(job, dice).unwrap_or(board);
                    self.open(job, next);
                    self.used.pop();
                    self.used[at].board = next;
                }
            }
        }
        while let Some(board) = self.affordable(job, dice) {
            self.open(job, board);
        }
    }

    /// A board that the goal and the stock allow, by chance.
    fn affordable(&self, job: &Job, dice: &mut Dice) -> Option<usize> {
        let fits = |b: &usize| self.sum.stock[*b] > 0 && self.sum.cost + job.boards[*b].cost <= self.goal;
        let count = (0..job.boards.len()).filter(fits).count();
        if count == 0 { None } else { (0..job.boards.len()).filter(fits).nth(dice.below(count)) }
    }

    /// Puts back what fits, kinds in an order drawn by chance.
    fn recreate(&mut self, job: &Job, dice: &mut Dice, work: &mut u64) {
        let mut order = std::mem::take(&mut self.order);
        order.clear();
        order.extend((0..job.kinds.len()).filter(|k| self.sum.out[*k] > 0).map(|k| k as u32));
        match dice.below(8) {
            // Kinds stand by falling area.
            0..4 => {}
            by @ 4..7 => order.sort_by_key(|k| {
                let [width, height] = job.kinds[*k as usize].sides;
                Reverse([width.max(height), width, height][by - 4])
            }),
            _ => {
                for i in (1..order.len()).rev() {
                    order.swap(i, dice.below(i + 1));
                }
            }
        }
        for &kind in &order {
            // Where this kind was left out before the move, only ruined boards can have room.
            let anywhere = self.before.out[kind as usize] == 0;
            while self.sum.out[kind as usize] > 0 {
                let Some((at, spot, block)) = self.best(job, kind, anywhere, dice, work) else {
                    break;
                };
                self.save(at);
                let used = &mut self.used[at];
                *work += used.slice.parts.len() as u64;
                used.slice.insert(job, used.board, spot, block);
                self.sum.out[kind as usize] -= 1;
                self.sum.missing -= job.kinds[kind as usize].area();
            }
        }
        self.order = order;
    }

    /// The best spot for a piece, blinks aside.
    fn best(
        &self,
        job: &Job,
        kind: u32,
        anywhere: bool,
        dice: &mut Dice,
        work: &mut u64,
    ) -> Option<(usize, Spot, Block)> {
        let mut best: Option<(usize, Spot, Block)> = None;
        let mut most = f64::NEG_INFINITY;
        let mut blink = 1 + dice.below(2 * BLINK);
        let mut seen = 0;
        let area = job.kinds[kind as usize].area();
        let mut look = |at: usize, used: &Used, dice: &mut Dice| {
            if used.slice.area + area > job.boards[used.board].area() {
                return;
            }
            let lies = job.lies[kind as usize][used.board];
            for turned in [false, true] {
                if !lies[usize::from(turned)] {
                    continue;
                }
                let sides = job.sides(kind as usize, turned);
                let block = Block::one(kind, turned);
                if used.slice.parts.is_empty() {
                    if best.is_none() {
                        best = Some((at, Spot { part: 0, axis: 0 }, block));
                    }
                    continue;
                }
                seen += used.slice.parts.len();
                used.slice.offers(job.longest, sides, |spot, part| {
                    blink -= 1;
                    if blink == 0 {
                        blink = 1 + dice.below(2 * BLINK);
                        return;
                    }
                    let worth = worth(part, spot.axis as usize, sides);
                    if worth > most {
                        most = worth;
                        best = Some((at, spot, block));
                    }
                });
            }
        };
        if anywhere && self.used.len() <= LOOK {
            for (at, used) in self.used.iter().enumerate() {
                look(at, used, dice);
            }
        } else {
            for (at, _) in &self.saved {
                look(*at, &self.used[*at], dice);
            }
            for at in self.before.boards..self.used.len() {
                look(at, &self.used[at], dice);
            }
            if anywhere {
                let start = dice.below(self.used.len());
                for i in 0..LOOK {
                    let at = (start + i) % self.used.len();
                    if self.saved.iter().all(|s| s.0 != at) {
                        look(at, &self.used[at], dice);
                    }
                }
            }
        }
        *work += seen as u64 + 4;
        best
    }
}
