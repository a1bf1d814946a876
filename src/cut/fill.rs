//! Filling one sheet: the best spot for a piece, and a whole pattern by taking kinds in a given order.

use super::job::{Job, Sides};
use super::slice::{Block, Part, Slice, Spot};

/// The best spot found for a block.
#[derive(Clone, Copy, Debug)]
pub struct Offer {
    /// Where.
    pub spot: Spot,
    /// What.
    pub block: Block,
    /// Change in the worth of the spare card; the higher the better.
    pub worth: f64,
}

/// More pieces than this are not cut from one sheet.
const PIECES: u32 = 10_000;

/// A pattern may hold this many blocks before small pieces are taken as grids.
const BLOCKS: i64 = 128;

/// Change in the worth of the spare card if a block goes beside a part along an axis. Spare card is worth the square
/// of its area, so that few large offcuts beat many small ones (the measure of Gardeyn and Wauters 2022). Looks at the
/// strip beside the part, the strip above it, and the step that is left where one is shorter than the other.
#[must_use]
pub fn worth(part: &Part, axis: usize, sides: Sides) -> f64 {
    let other = 1 - axis;
    let need = [f64::from(part.need[axis]), f64::from(part.need[other])];
    let room = [f64::from(part.room[axis]), f64::from(part.room[other])];
    let side = [f64::from(sides[axis]), f64::from(sides[other])];
    let beside = room[0] - need[0];
    let above = room[1] - need[1];
    let square = |area: f64| area * area;
    let before = square(beside * need[1]) + square(above * room[0]);
    let grown = side[1] - need[1];
    if grown > 0.0 {
        let step = grown * need[0];
        square((beside - side[0]) * side[1]) + square((above - grown) * room[0]) + square(step) - before
    } else {
        let step = -grown * side[0];
        square((beside - side[0]) * need[1]) + square(above * room[0]) + square(step) - before
    }
}

/// The best spot for one piece of a kind on a sheet that is being filled; counts one unit of work for each node seen.
#[must_use]
pub fn best(job: &Job, board: usize, slice: &Slice, kind: usize, work: &mut u64) -> Option<Offer> {
    let lies = job.lies[kind][board];
    let mut best: Option<Offer> = None;
    for turned in [false, true] {
        if !lies[usize::from(turned)] {
            continue;
        }
        let block = Block::one(kind as u32, turned);
        let sides = job.sides(kind, turned);
        if slice.parts.is_empty() {
            let whole = job.boards[board].sides;
            // Prefers the pose that leaves the larger strip.
            let strip = |a: usize| f64::from(whole[a] - sides[a]) * f64::from(whole[1 - a]);
            let worth = strip(0).max(strip(1));
            if best.is_none_or(|b| worth > b.worth) {
                best = Some(Offer { spot: Spot { part: 0, axis: 0 }, block, worth });
            }
            continue;
        }
        *work += slice.parts.len() as u64;
        slice.offers(job.longest, sides, |spot, part| {
            let worth = worth(part, spot.axis as usize, sides);
            if best.is_none_or(|b| worth > b.worth) {
                best = Some(Offer { spot, block, worth });
            }
        });
    }
    best
}

/// Fills one sheet: goes through the kinds in this order and puts in as many as fit, taking them off `left`.
#[must_use]
pub fn fill(job: &Job, board: usize, order: &[usize], left: &mut [u32], work: &mut u64) -> Slice {
    let mut slice = Slice::default();
    let whole = job.boards[board].area();
    let mut count = 0;
    for &kind in order {
        *work += 1;
        let area = job.kinds[kind].area();
        let grain = grain(whole, area);
        while left[kind] > 0 && count < PIECES && slice.area + area <= whole {
            let Some(offer) = best(job, board, &slice, kind, work) else {
                break;
            };
            let grid = grid(job, board, &slice, offer, grain, left[kind]);
            let block = Block { grid, ..offer.block };
            left[kind] -= block.count();
            count += block.count();
            *work += slice.parts.len() as u64;
            slice.insert(job, board, offer.spot, block);
        }
    }
    slice
}

/// How many pieces of this area a block's side may count.
fn grain(whole: i64, area: i64) -> i64 {
    let mut grain = 1;
    while whole / area.max(1) > BLOCKS * grain * grain && grain < 64 {
        grain *= 2;
    }
    grain
}

/// How large a grid goes where one piece goes: as high as its neighbour, then as far as there is room.
fn grid(job: &Job, board: usize, slice: &Slice, offer: Offer, grain: i64, left: u32) -> [u16; 2] {
    if grain == 1 || left == 1 {
        return [1, 1];
    }
    let axis = offer.spot.axis as usize;
    let sides = job.sides(offer.block.kind as usize, offer.block.turned);
    let (along, high) = match slice.parts.get(offer.spot.part as usize) {
        None => {
            let whole = job.boards[board].sides;
            (whole[axis], whole[1 - axis])
        }
        Some(part) => (part.room[axis] - part.need[axis], part.need[1 - axis]),
    };
    let times = |room: i32, side: i32| i64::from(room.min(job.longest) / side).clamp(1, grain);
    let left = i64::from(left);
    let up = times(high, sides[1 - axis]).min(left);
    let on = times(along, sides[axis]).min(left / up).max(1);
    // At most `grain` each, so both fit.
    let mut grid = [0; 2];
    grid[axis] = on as u16;
    grid[1 - axis] = up as u16;
    grid
}
