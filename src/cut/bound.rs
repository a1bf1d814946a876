//! How many sheets there must be at least: bounds from dual feasible functions.
//!
//! A function `f` on sides is dual feasible if sides that fit in a row still do after it. Then for a pair of them,
//! one for each axis, the sum of `f(w) · g(h)` over all pieces is at most one board's `f(W) · g(H)` times the number of
//! boards, whatever the cuts (Fekete and Schepers 2001). Three families are used: thresholds (the same paper), counts
//! of a step (Carlier, Clautiaux and Moukrim 2007, their `f2`) and multiples (Lueker 1983, `u(k)`), in all pairs.
//!
//! Pieces that may turn count in the pose in which they give less. On a square board every layout and its mirror image
//! at the diagonal hold each piece in both poses, so the mean of both poses is a bound too (Boschetti and Mingozzi
//! 2003).

use super::job::Job;
use super::piece::Turn;

/// Functions of one family on one axis, at most; more sides than that are thinned evenly.
const STEPS: usize = 48;

/// The same for the quick layout, which has no time for more.
const QUICK: usize = 4;

/// A dual feasible function on the sides along one axis: values of the distinct sides, and of the board.
#[derive(Clone, Debug)]
struct Feasible {
    values: Vec<i64>,
    whole: i64,
}

/// A bound on the number of sheets, raised pair by pair.
#[derive(Clone, Debug)]
pub struct Bounding {
    /// No layout of all the pieces of the job needs fewer boards than this.
    pub sheets: u32,
    across: Vec<Feasible>,
    up: Option<Vec<Feasible>>,
    /// Place of both sides among the distinct ones, count, turn.
    kinds: Vec<(usize, usize, i64, Turn)>,
    turns: bool,
    next: usize,
}

impl Bounding {
    /// Starts with the bound by area.
    #[must_use]
    pub fn new(job: &Job) -> Self {
        Self::with(job, STEPS)
    }

    fn with(job: &Job, steps: usize) -> Self {
        // Every board is replaced by one that holds any of them.
        let width = job.boards.iter().map(|b| b.sides[0]).max().unwrap_or(0);
        let height = job.boards.iter().map(|b| b.sides[1]).max().unwrap_or(0);
        let mut sides: Vec<i32> = job.kinds.iter().flat_map(|k| k.sides).collect();
        sides.sort();
        sides.dedup();
        let usable = width > 0 && height > 0;
        let place = |side: i32| sides.binary_search(&side).unwrap_or(0);
        Self {
            sheets: by_area(job),
            across: if usable { functions(&sides, width, steps) } else { Vec::new() },
            up: (usable && width != height).then(|| functions(&sides, height, steps)),
            kinds: job
                .kinds
                .iter()
                .map(|k| (place(k.sides[0]), place(k.sides[1]), i64::from(k.count), k.turn))
                .collect(),
            turns: job.kinds.iter().any(|k| k.turn == Turn::Free),
            next: 0,
        }
    }

    /// Goes on until all pairs are tried, the bound reaches `target` (true), or `end` work is reached (false).
    pub fn advance(&mut self, target: u32, work: &mut u64, end: u64) -> bool {
        let up = self.up.as_ref().unwrap_or(&self.across);
        while let Some(f) = self.across.get(self.next) {
            if self.sheets >= target {
                return true;
            }
            if *work >= end {
                return false;
            }
            for g in up {
                let whole = i128::from(f.whole) * i128::from(g.whole);
                let (mut sum, mut mean) = (0_i128, 0_i128);
                for &(w, h, count, turn) in &self.kinds {
                    // Values are below 2^29, so a product fits; counts may not.
                    let straight = i128::from(f.values[w] * g.values[h]) * i128::from(count);
                    let turned = i128::from(f.values[h] * g.values[w]) * i128::from(count);
                    sum += if turn == Turn::Free { straight.min(turned) } else { straight };
                    mean += straight + turned;
                }
                self.sheets = self.sheets.max(up_to(sum, whole));
                // On a square board.
                if self.turns && self.up.is_none() {
                    self.sheets = self.sheets.max(up_to(mean, 2 * whole));
                }
            }
            *work += (up.len() * self.kinds.len()) as u64 / 4;
            self.next += 1;
        }
        true
    }
}

/// A quick bound for a layout of so many sheets.
#[must_use]
pub fn quick(job: &Job, sheets: u32, work: &mut u64) -> u32 {
    let mut bounding = Bounding::with(job, QUICK);
    if bounding.sheets < sheets {
        bounding.advance(sheets, work, u64::MAX);
    }
    bounding.sheets
}

/// The bound by area alone.
#[must_use]
pub fn by_area(job: &Job) -> u32 {
    let largest = job.boards.iter().map(super::job::Board::area).max().unwrap_or(0);
    up_to(job.area(), i128::from(largest))
}

/// No layout of all the pieces of the job has a lower cost, in the job's scale.
#[must_use]
pub fn cost(job: &Job, sheets: u32) -> i64 {
    // Area at the lowest cost for its size, as far as each board lasts.
    let mut boards: Vec<(i64, i64, u32)> = job.boards.iter().map(|b| (b.cost, b.area(), b.limit)).collect();
    boards.sort_by(|a, b| (i128::from(a.0) * i128::from(b.1)).cmp(&(i128::from(b.0) * i128::from(a.1))));
    let mut left = job.area();
    let mut sum = 0_i128;
    for (cost, area, limit) in boards {
        let area = i128::from(area).max(1);
        let all = area.saturating_mul(i128::from(limit));
        let used = left.min(all);
        sum += (used * i128::from(cost) + area - 1) / area;
        left -= used;
    }
    // Each board costs at least the cheapest ones there are.
    let mut boards: Vec<(i64, u32)> = job.boards.iter().map(|b| (b.cost, b.limit)).collect();
    boards.sort();
    let mut left = sheets;
    let mut least = 0_i128;
    for (cost, limit) in boards {
        let used = left.min(limit);
        least += i128::from(cost) * i128::from(used);
        left -= used;
    }
    // Sheets and coins are whole, so a lone kind of board is bound by the count alone.
    i64::try_from(sum.max(least)).unwrap_or(i64::MAX)
}

fn up_to(sum: i128, whole: i128) -> u32 {
    if whole <= 0 { 0 } else { u32::try_from((sum + whole - 1) / whole).unwrap_or(u32::MAX) }
}

/// The functions for an axis on which the board measures `whole`.
fn functions(sides: &[i32], whole: i32, most: usize) -> Vec<Feasible> {
    // Thresholds matter at sides and their complements only.
    let mut steps: Vec<i32> = sides.iter().flat_map(|s| [*s, s + 1, whole - s, whole - s + 1]).collect();
    steps.retain(|s| *s >= 1 && *s <= whole / 2);
    steps.sort();
    steps.dedup();
    let stride = steps.len() / most + 1;
    let steps: Vec<i32> = steps.into_iter().step_by(stride).collect();
    let mut all = vec![feasible(sides, whole, i64::from)];
    for &step in &steps {
        all.push(feasible(sides, whole, |x| {
            if x > whole - step {
                i64::from(whole)
            } else if x < step {
                0
            } else {
                i64::from(x)
            }
        }));
        let times = |x: i32| i64::from(x / step);
        all.push(feasible(sides, whole, |x| match (2 * i64::from(x)).cmp(&i64::from(whole)) {
            std::cmp::Ordering::Less => 2 * times(x),
            std::cmp::Ordering::Equal => times(whole),
            std::cmp::Ordering::Greater => 2 * (times(whole) - times(whole - x)),
        }));
    }
    for k in 1..most as i64 {
        // Scaled by k (k + 1), so that exact multiples keep their value.
        let (w, m) = (i64::from(whole), k + 1);
        all.push(Feasible {
            values: sides
                .iter()
                .map(|s| m * i64::from((*s).min(whole)))
                .map(|reach| if reach % w == 0 { reach / w * k } else { reach / w * m })
                .collect(),
            whole: k * m,
        });
    }
    // Most of them agree on the sides there are.
    all.sort_by(|a, b| (&a.values, a.whole).cmp(&(&b.values, b.whole)));
    all.dedup_by(|a, b| a.values == b.values && a.whole == b.whole);
    all
}

fn feasible(sides: &[i32], whole: i32, f: impl Fn(i32) -> i64) -> Feasible {
    Feasible { values: sides.iter().map(|s| f((*s).min(whole))).collect(), whole: f(whole) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn functions_are_dual_feasible() {
        // Sides that fit in a row still do: checked over all multisets of sides by a knapsack.
        for whole in [7_i32, 10, 12, 30] {
            let sides: Vec<i32> = (1..=whole).collect();
            for f in functions(&sides, whole, STEPS) {
                let mut most = vec![0_i64; whole as usize + 1];
                for room in 1..=whole as usize {
                    for (side, value) in sides.iter().zip(&f.values) {
                        if *side as usize <= room {
                            most[room] = most[room].max(most[room - *side as usize] + value);
                        }
                    }
                }
                assert!(most[whole as usize] <= f.whole, "{whole}: {:?} {}", f.values, f.whole);
            }
        }
    }
}
