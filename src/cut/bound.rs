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

/// Functions of one family that are tried on one axis at most; more sides than that are thinned evenly.
const STEPS: usize = 48;

/// A dual feasible function on the sides along one axis: values of the distinct sides, and of the board.
struct Feasible {
    values: Vec<i64>,
    whole: i64,
}

/// No layout of all the pieces of the job needs fewer boards than this.
#[must_use]
pub fn sheets(job: &Job) -> u32 {
    let width = job.boards.iter().map(|b| b.sides[0]).max().unwrap_or(0);
    let height = job.boards.iter().map(|b| b.sides[1]).max().unwrap_or(0);
    if width == 0 || job.kinds.is_empty() {
        return 0;
    }
    let mut bound = by_area(job);
    let free = job
        .kinds
        .iter()
        .any(|k| k.sides[0] != k.sides[1] && k.turn == super::piece::Turn::Free);
    // Every board is replaced by one that holds any of them.
    let mut sides: Vec<i32> = job.kinds.iter().flat_map(|k| k.sides).collect();
    sides.sort_unstable();
    sides.dedup();
    let across = functions(&sides, width);
    let up = if width == height {
        None
    } else {
        Some(functions(&sides, height))
    };
    let up = up.as_ref().unwrap_or(&across);
    let place = |side: i32| sides.binary_search(&side).unwrap_or(0);
    let kinds: Vec<(usize, usize, i64, bool)> = job
        .kinds
        .iter()
        .map(|k| {
            (
                place(k.sides[0]),
                place(k.sides[1]),
                i64::from(k.count),
                k.turn == super::piece::Turn::Free,
            )
        })
        .collect();
    for f in &across {
        for g in up {
            let whole = i128::from(f.whole) * i128::from(g.whole);
            if whole == 0 {
                continue;
            }
            let mut sum = 0_i128;
            let mut mean = 0_i128;
            for &(w, h, count, turns) in &kinds {
                let straight = f.values[w] * g.values[h];
                let turned = f.values[h] * g.values[w];
                sum += i128::from(if turns {
                    straight.min(turned)
                } else {
                    straight
                }) * i128::from(count);
                mean += i128::from(straight + turned) * i128::from(count);
            }
            bound = bound.max(up_to(sum, whole));
            if free && width == height {
                bound = bound.max(up_to(mean, 2 * whole));
            }
        }
    }
    bound
}

/// The bound by area alone.
#[must_use]
pub fn by_area(job: &Job) -> u32 {
    let largest = job
        .boards
        .iter()
        .map(super::job::Board::area)
        .max()
        .unwrap_or(0);
    up_to(job.area(), i128::from(largest))
}

/// No layout of all the pieces of the job has a lower cost, in the job's scale.
#[must_use]
pub fn cost(job: &Job, sheets: u32) -> i64 {
    // Area at the lowest cost for its size, as far as each board lasts.
    let mut boards: Vec<(i64, i64, u32)> = job
        .boards
        .iter()
        .map(|b| (b.cost, b.area(), b.limit))
        .collect();
    boards.sort_by(|a, b| {
        (i128::from(a.0) * i128::from(b.1)).cmp(&(i128::from(b.0) * i128::from(a.1)))
    });
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
    boards.sort_unstable();
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
    if whole <= 0 {
        0
    } else {
        u32::try_from((sum + whole - 1) / whole).unwrap_or(u32::MAX)
    }
}

/// The functions for an axis on which the board measures `whole`.
fn functions(sides: &[i32], whole: i32) -> Vec<Feasible> {
    // Thresholds matter at sides and their complements only.
    let mut steps: Vec<i32> = sides
        .iter()
        .flat_map(|s| [*s, s + 1, whole - s, whole - s + 1])
        .collect();
    steps.retain(|s| *s >= 1 && *s <= whole / 2);
    steps.sort_unstable();
    steps.dedup();
    let stride = steps.len() / STEPS + 1;
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
        all.push(feasible(sides, whole, |x| {
            match (2 * i64::from(x)).cmp(&i64::from(whole)) {
                std::cmp::Ordering::Less => 2 * times(x),
                std::cmp::Ordering::Equal => times(whole),
                std::cmp::Ordering::Greater => 2 * (times(whole) - times(whole - x)),
            }
        }));
    }
    for k in 1..STEPS as i64 {
        // Scaled by k · W, so that exact multiples keep their value.
        let w = i64::from(whole);
        all.push(feasible(sides, whole, |x| {
            let reach = (k + 1) * i64::from(x);
            if reach % w == 0 {
                i64::from(x) * k
            } else {
                reach / w * w
            }
        }));
    }
    // Most of them agree on the sides there are.
    all.sort_by(|a, b| (&a.values, a.whole).cmp(&(&b.values, b.whole)));
    all.dedup_by(|a, b| a.values == b.values && a.whole == b.whole);
    all
}

fn feasible(sides: &[i32], whole: i32, f: impl Fn(i32) -> i64) -> Feasible {
    Feasible {
        values: sides.iter().map(|s| f((*s).min(whole))).collect(),
        whole: f(whole),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn functions_are_dual_feasible() {
        // Sides that fit in a row still do: checked over all multisets of sides by a knapsack.
        for whole in [7_i32, 10, 12, 30] {
            let sides: Vec<i32> = (1..=whole).collect();
            for f in functions(&sides, whole) {
                let mut most = vec![0_i64; whole as usize + 1];
                for room in 1..=whole as usize {
                    for (side, value) in sides.iter().zip(&f.values) {
                        if *side as usize <= room {
                            most[room] = most[room].max(most[room - *side as usize] + value);
                        }
                    }
                }
                assert!(
                    most[whole as usize] <= f.whole,
                    "{whole}: {:?} {}",
                    f.values,
                    f.whole
                );
            }
        }
    }
}
