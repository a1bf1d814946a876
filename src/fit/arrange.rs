//! Gifts side by side: every block that some arrangement of them takes up.
//!
//! The model. A gift is the block that encloses it. An arrangement is a gift in one of its turns, or two arrangements
//! set beside, behind or on top of each other. All of these are tried: for each set of gifts the blocks that no other
//! block undercuts in all three directions are kept, and each set is made from all ways to part it in two. So what
//! comes out is exact for arrangements that can be parted by straight cuts right through. Limits: gifts that interlock
//! like a pinwheel, cylinders that nest in each other's hollows, and slanting gifts are not tried.
//!
//! Alike gifts are counted, not told apart. Up to six gifts, and more where the ways to part them are few, are
//! searched whole. For others, each kind is arranged as a block of its own, and the blocks are then arranged: sound,
//! and perhaps not the tightest. Of more than [`KEPT`] blocks for one set the least by volume
//! are kept.

use std::collections::BTreeMap;

use crate::assembly::parts::Size;
use crate::measure::length::Length;
use crate::project::fitting::Turns;

/// The most blocks that are kept for one part-set; six gifts of different sizes stay below.
pub const KEPT: usize = 2_000;
/// The same for more than six gifts, where an answer while the maker types goes before the last cubic millimetre: so
/// many that about [`PAIRS`] pairs of blocks are joined.
const KEPT_OF_MANY: std::ops::RangeInclusive<usize> = 6..=40;
const PAIRS: usize = 20_000;
/// The most kinds that are arranged.
pub const KINDS: usize = 6;
/// The most gifts in a box.
pub const GIFTS: u32 = 50;

/// Alike blocks to arrange.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Block {
    /// What one takes up as it stands.
    pub size: Size,
    /// How many.
    pub count: u32,
    /// How each may be turned.
    pub turns: Turns,
}

/// How an answer was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Search {
    /// Everything was tried.
    Whole,
    /// Each kind was arranged as a block of its own first, or not every block was kept.
    Blocks,
}

/// What arrangements take up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Arranged {
    /// None of them undercuts another; from the least volume up.
    pub sizes: Vec<Size>,
    /// How they were found.
    pub search: Search,
}

/// A block as sides in nanometres.
type Sides = [i64; 3];

/// Everything that `blocks` can take up together. Nothing where there is nothing to arrange, more than [`KINDS`] kinds
/// or [`GIFTS`] gifts, or a side that is not above zero.
#[must_use]
pub fn arrange(blocks: &[Block]) -> Option<Arranged> {
    let blocks: Vec<&Block> = blocks.iter().filter(|b| b.count > 0).collect();
    let gifts: u32 = blocks.iter().fold(0, |n, b| n.saturating_add(b.count));
    let flat = |b: &&Block| !sides(b.size).iter().all(|&s| s > 0);
    if blocks.is_empty() || blocks.len() > KINDS || gifts > GIFTS || blocks.iter().any(flat) {
        return None;
    }
    // Where every gift may be turned freely, so may every arrangement: one turn stands for all six.
    let turns = if blocks.iter().all(|b| b.turns == Turns::Any) { Turns::Any } else { Turns::Upright };
    let one: Vec<Vec<Sides>> = blocks
        .iter()
        .map(|b| if turns == Turns::Any { vec![falling(sides(b.size))] } else { turned(sides(b.size), b.turns) })
        .collect();
    let counts: Vec<usize> = blocks.iter().map(|b| b.count as usize).collect();
    let few = gifts as usize <= KINDS;
    let most = |counts: &[usize]| if few { KEPT } else { kept_of_many(counts) };
    let (found, whole) = if few || parted(&counts) * KEPT_OF_MANY.start().pow(2) <= PAIRS {
        subsets(&one, &counts, turns, most(&counts))
    } else {
        let group = |(one, &n)| subsets(std::slice::from_ref(one), &[n], turns, most(&[n])).0;
        let grouped: Vec<_> = one.iter().zip(&counts).map(group).collect();
        let each = vec![1; counts.len()];
        (subsets(&grouped, &each, turns, most(&each)).0, false)
    };
    let all = found.into_iter().flat_map(|s| if turns == Turns::Any { turned(s, turns) } else { vec![s] });
    let sizes = undercut(all.collect()).into_iter().map(size).collect();
    Some(Arranged { sizes, search: if whole { Search::Whole } else { Search::Blocks } })
}

/// In how many ways all part-sets of `counts` can be parted in two: of each kind any number of any number.
fn parted(counts: &[usize]) -> usize {
    counts.iter().fold(1_usize, |n, c| n.saturating_mul((c + 1) * (c + 2) / 2)) / 2
}

/// How many blocks can be kept for each part-set of more than six gifts.
fn kept_of_many(counts: &[usize]) -> usize {
    (PAIRS / parted(counts).max(1)).isqrt().clamp(*KEPT_OF_MANY.start(), *KEPT_OF_MANY.end())
}

/// Every block for `counts` of the kinds in `one`, and whether none was dropped on the way.
fn subsets(one: &[Vec<Sides>], counts: &[usize], turns: Turns, most: usize) -> (Vec<Sides>, bool) {
    // A part-set is a number: its counts are the digits, each to its own base.
    let mut places = Vec::with_capacity(counts.len());
    let mut states = 1;
    for count in counts {
        places.push(states);
        states *= count + 1;
    }
    let digit = |set: usize, kind: usize| set / places[kind] % (counts[kind] + 1);
    let mut found: Vec<Vec<Sides>> = vec![Vec::new(); states];
    let mut whole = true;
    // Any part of a set is a smaller number, so that it was made before.
    for set in 1..states {
        let mut all = places.iter().position(|&p| p == set).map_or_else(Vec::new, |kind| one[kind].clone());
        for part in 1..=set / 2 {
            let rest = set - part;
            if (0..counts.len()).any(|kind| digit(part, kind) > digit(set, kind)) {
                continue;
            }
            join(&found[part], &found[rest], turns, &mut all);
            if all.len() > 3_000 {
                all = undercut(all);
            }
        }
        all = undercut(all);
        whole &= all.len() <= most;
        all.truncate(most);
        found[set] = all;
    }
    (found.pop().unwrap_or_default(), whole)
}

/// Each of `a` beside, behind and on each of `b`; with [`Turns::Any`] each of `b` in all its turns, longest side first.
fn join(a: &[Sides], b: &[Sides], turns: Turns, into: &mut Vec<Sides>) {
    let free = turns == Turns::Any;
    let b: Vec<Sides> = if free { b.iter().flat_map(|&b| turned(b, turns)).collect() } else { b.to_vec() };
    for a in a {
        for b in &b {
            for axis in 0..3 {
                let both = std::array::from_fn(|i| if i == axis { a[i] + b[i] } else { a[i].max(b[i]) });
                into.push(if free { falling(both) } else { both });
            }
        }
    }
}

/// Longest side first.
fn falling([a, b, c]: Sides) -> Sides {
    let (long, short) = (a.max(b), a.min(b));
    [long.max(c), short.max(long.min(c)), short.min(c)]
}

/// Those that no other undercuts in all directions, from the least volume up.
fn undercut(mut all: Vec<Sides>) -> Vec<Sides> {
    all.sort();
    let mut kept: Vec<Sides> = Vec::new();
    // Of those so far, none of which is wider: the height that goes with each depth, falling as the depth grows.
    let mut stairs: BTreeMap<i64, i64> = BTreeMap::new();
    for [width, depth, height] in all {
        if stairs.range(..=depth).next_back().is_some_and(|(_, h)| *h <= height) {
            continue;
        }
        while let Some(above) = stairs.range(depth..).next().filter(|(_, h)| **h >= height).map(|(d, _)| *d) {
            stairs.remove(&above);
        }
        stairs.insert(depth, height);
        kept.push([width, depth, height]);
    }
    kept.sort_by_key(|s| (volume(*s), *s));
    kept
}

fn volume(s: Sides) -> i128 {
    s.iter().map(|&s| i128::from(s)).product()
}

fn turned(s: Sides, turns: Turns) -> Vec<Sides> {
    let [w, d, h] = s;
    let mut all = vec![s, [d, w, h]];
    if turns == Turns::Any {
        all.extend([[w, h, d], [h, w, d], [d, h, w], [h, d, w]]);
    }
    undercut(all)
}

const fn sides(s: Size) -> Sides {
    [s.width.nm(), s.depth.nm(), s.height.nm()]
}

fn size([width, depth, height]: Sides) -> Size {
    let l = Length::from_nm;
    Size { width: l(width), depth: l(depth), height: l(height) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(width: i64, depth: i64, height: i64) -> Size {
        Size { width: Length::mm(width), depth: Length::mm(depth), height: Length::mm(height) }
    }

    fn block(w: i64, d: i64, h: i64, count: u32, turns: Turns) -> Block {
        Block { size: mm(w, d, h), count, turns }
    }

    #[test]
    fn one_gift_has_the_turns_that_it_allows() {
        let any = arrange(&[block(1, 2, 3, 1, Turns::Any)]).expect("it is arranged");
        assert_eq!(any.sizes.len(), 6);
        let up = arrange(&[block(1, 2, 3, 1, Turns::Upright)]).expect("it is arranged");
        assert_eq!(up.sizes, [mm(1, 2, 3), mm(2, 1, 3)]);
    }

    /// Eight unit cubes make a cube, and two rows, and one row.
    #[test]
    fn cubes_make_every_block_of_their_number() {
        let found = arrange(&[block(10, 10, 10, 8, Turns::Any)]).expect("they are arranged");
        let has = |s| found.sizes.contains(&s);
        assert!(has(mm(20, 20, 20)) && has(mm(10, 20, 40)) && has(mm(80, 10, 10)));
        assert_eq!(found.search, Search::Whole);
    }

    /// Blocks cut out of a 60 × 40 × 20 block by straight cuts go back into it.
    #[test]
    fn a_block_that_was_cut_up_is_put_together() {
        let cut = [(60, 40, 5), (20, 40, 15), (40, 10, 15), (15, 30, 15), (25, 30, 7), (25, 30, 8)]
            .map(|(w, d, h)| block(h, w, d, 1, Turns::Any));
        let found = arrange(&cut).expect("they are arranged");
        assert_eq!(found.search, Search::Whole);
        assert_eq!(volume(sides(found.sizes[0])), volume(sides(mm(60, 40, 20))));
        assert!(found.sizes.contains(&mm(60, 40, 20)));
    }

    #[test]
    fn fifty_and_mixed_gifts_are_answered_and_bad_ones_are_not() {
        assert!(arrange(&[block(30, 30, 30, 50, Turns::Any)]).is_some_and(
            |a| a.sizes[0] == mm(30, 150, 300) || volume(sides(a.sizes[0])) == volume(sides(mm(150, 300, 30)))
        ));
        let mixed = arrange(&[block(30, 20, 10, 25, Turns::Any), block(15, 15, 40, 25, Turns::Upright)]);
        assert!(mixed.is_some_and(|a| a.search == Search::Blocks));
        assert_eq!(arrange(&[]), None);
        assert_eq!(arrange(&[block(0, 1, 1, 1, Turns::Any)]), None);
        assert_eq!(arrange(&[block(1, 1, 1, 51, Turns::Any)]), None);
    }
}
