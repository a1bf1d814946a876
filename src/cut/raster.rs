//! The best single board for given worths of pieces: exact guillotine patterns by dynamic programming.
//!
//! Gilmore and Gomory (1965); only places that sums of sides reach are looked at, thinned to raster points (Terno,
//! Lindemann and Scheithauer 1987; Cintra et al. 2008). Copies are not limited, so the result is an upper bound for
//! limited copies too, which is what a proof needs.

use std::collections::BTreeSet;

use super::job::{Job, Sides};
use super::nest::Nest;
use super::slice::{Block, Slice};
/// More places than this along one axis are too many.
const PLACES: usize = 1_500;

/// More steps than this for one board are too many.
const STEPS: u64 = 80_000_000;

/// One board's raster.
#[derive(Clone, Debug)]
pub struct Raster {
    board: usize,
    /// Places along the width and along the height, rising, the first is nothing.
    places: [Vec<i32>; 2],
    /// Pieces that fit: kind, turned, sides, index of the first place that holds each side.
    pieces: Vec<(u32, bool, [usize; 2])>,
    longest: i32,
}

/// How the best value of a part comes about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Choice {
    Nothing,
    Piece(u32),
    /// Cut upright or level at this place.
    Cut(u8, u32),
    /// As the part that is one place smaller along this axis.
    Less(u8),
}

/// A run of the dynamic programme that can be stopped between columns of its table.
#[derive(Clone, Debug)]
pub struct Pricing {
    value: Vec<i64>,
    choice: Vec<Choice>,
    next: usize,
}

impl Raster {
    /// The raster of a board; none if it would be too fine, or if a piece can only be cut along the sheet's own edges.
    #[must_use]
    pub fn new(job: &Job, board: usize) -> Option<Self> {
        let whole = job.boards[board].sides;
        let mut fits: Vec<(u32, bool, Sides)> = Vec::new();
        for (kind, lies) in job.lies.iter().enumerate() {
            for turned in [false, true] {
                if lies[board][usize::from(turned)] {
                    let sides = job.sides(kind, turned);
                    if sides.iter().any(|s| *s > job.longest) {
                        return None;
                    }
                    fits.push((kind as u32, turned, sides));
                }
            }
        }
        let mut places = [Vec::new(), Vec::new()];
        for axis in 0..2 {
            places[axis] = raster(&fits.iter().map(|f| f.2[axis]).collect(), whole[axis])?;
        }
        let size = [places[0].len() as u64, places[1].len() as u64];
        if size[0] * size[1] * (size[0] + size[1]) / 4 > STEPS {
            return None;
        }
        let first = |axis: usize, side: i32| places[axis].partition_point(|p| *p < side);
        let pieces = fits.iter().map(|f| (f.0, f.1, [first(0, f.2[0]), first(1, f.2[1])])).collect();
        Some(Self { board, places, pieces, longest: job.longest })
    }

    /// Starts a run; worths are none or more, and so small that those of a full board still fit.
    #[must_use]
    pub fn price(&self, worths: &[i64]) -> Pricing {
        let size = self.places[0].len() * self.places[1].len();
        let mut run = Pricing { value: vec![0; size], choice: vec![Choice::Nothing; size], next: 1 };
        let high = self.places[1].len();
        for (nth, (kind, _, at)) in self.pieces.iter().enumerate() {
            let cell = at[0] * high + at[1];
            let worth = worths[*kind as usize];
            if at[0] < self.places[0].len() && at[1] < high && worth > run.value[cell] {
                run.value[cell] = worth;
                run.choice[cell] = Choice::Piece(nth as u32);
            }
        }
        run
    }

    /// Goes on with a run until it is done (true) or `end` work is reached.
    pub fn advance(&self, run: &mut Pricing, work: &mut u64, end: u64) -> bool {
        let high = self.places[1].len();
        while run.next < self.places[0].len() {
            if *work >= end {
                return false;
            }
            self.column(run, run.next, high);
            let steps = high * (run.next + high) / 4;
            *work += steps as u64 / 8 + 1;
            run.next += 1;
        }
        true
    }

    fn column(&self, run: &mut Pricing, i: usize, high: usize) {
        let [xs, ys] = &self.places;
        // For every cut of this width its counterpart, the same in all rows.
        let mut pairs = Vec::new();
        let mut other = i;
        for a in 1..i {
            if 2 * xs[a] > xs[i] {
                break;
            }
            while xs[other] > xs[i] - xs[a] {
                other -= 1;
            }
            pairs.push((a, other));
        }
        for j in 1..high {
            let cell = i * high + j;
            let (mut value, mut choice) = (run.value[cell], run.choice[cell]);
            let mut take = |v: i64, c: Choice| {
                if v > value {
                    (value, choice) = (v, c);
                }
            };
            take(run.value[cell - high], Choice::Less(0));
            take(run.value[cell - 1], Choice::Less(1));
            if ys[j] <= self.longest {
                for &(a, b) in &pairs {
                    take(run.value[a * high + j] + run.value[b * high + j], Choice::Cut(0, a as u32));
                }
            }
            if xs[i] <= self.longest {
                let column = &run.value[i * high..i * high + j];
                let mut other = j;
                for a in 1..j {
                    if 2 * ys[a] > ys[j] {
                        break;
                    }
                    while ys[other] > ys[j] - ys[a] {
                        other -= 1;
                    }
                    take(column[a] + column[other], Choice::Cut(1, a as u32));
                }
            }
            run.value[cell] = value;
            run.choice[cell] = choice;
        }
    }

    /// The board's best value, once a run is done.
    #[must_use]
    pub fn value(&self, run: &Pricing) -> i64 {
        run.value.last().copied().unwrap_or(0)
    }

    /// The board with that value; none if it is empty or can't be cut.
    #[must_use]
    pub fn slice(&self, job: &Job, run: &Pricing) -> Option<Slice> {
        let nest = self.nest(run, self.places[0].len() - 1, self.places[1].len() - 1)?;
        Slice::from_nest(job, self.board, nest)
    }

    fn nest(&self, run: &Pricing, mut i: usize, mut j: usize) -> Option<Nest> {
        let high = self.places[1].len();
        loop {
            match run.choice[i * high + j] {
                Choice::Nothing => return None,
                Choice::Piece(nth) => {
                    let (kind, turned, _) = self.pieces[nth as usize];
                    return Some(Nest::Leaf(Block::one(kind, turned)));
                }
                Choice::Less(0) => i -= 1,
                Choice::Less(_) => j -= 1,
                Choice::Cut(axis, at) => {
                    let axis = axis as usize;
                    let mut low = [i, j];
                    let mut high = [i, j];
                    low[axis] = at as usize;
                    let places = &self.places[axis];
                    let rest = places[high[axis]] - places[at as usize];
                    high[axis] = places.partition_point(|p| *p <= rest) - 1;
                    let parts: Vec<Nest> = [low, high].into_iter().filter_map(|[i, j]| self.nest(run, i, j)).collect();
                    return Some(Nest::Row(axis, parts));
                }
            }
        }
    }
}

/// Places along an axis.
type Places = BTreeSet<i32>;

/// Raster points: for each reachable sum the largest one that its complement holds. None if there are too many.
fn raster(sides: &Places, whole: i32) -> Option<Vec<i32>> {
    let mut sums = Places::from([0]);
    let mut open = vec![0];
    while let Some(from) = open.pop() {
        for side in sides {
            let sum = from + side;
            if sum > whole {
                break;
            }
            if sums.insert(sum) {
                open.push(sum);
            }
        }
        if sums.len() > 2 * PLACES {
            return None;
        }
    }
    let below = |most: i32| sums.range(..=most).next_back().copied().unwrap_or(0);
    let mut points: Places = sums.iter().map(|s| below(whole - s)).collect();
    points.insert(0);
    // First places of sides must be there, so that each piece has a cell of its own.
    points.extend(sides.range(..=whole));
    (points.len() <= PLACES).then(|| points.into_iter().collect())
}
