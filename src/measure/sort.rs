//! Putting things in order, in one copy: the standard library's sort is built anew for each type, and its sixty copies
//! were a twentieth of what a visitor downloads. Not for loops that run millions of times.

use std::cmp::Ordering;

/// Puts `all` in order; what is alike stays as it was.
///
/// ```
/// use snugfold::measure::sort::sort_by;
/// let mut words = ["bb", "c", "aa", "d"];
/// sort_by(&mut words, |a, b| a.len().cmp(&b.len()));
/// assert_eq!(words, ["c", "d", "bb", "aa"]);
/// ```
pub fn sort_by<T>(all: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    let mut order: Vec<usize> = (0..all.len()).collect();
    places(&mut order, &|a, b| compare(&all[a], &all[b]));
    // `order` says what comes to each place: follow each ring of exchanges once.
    for start in 0..order.len() {
        let mut at = start;
        while order[at] != start {
            let next = order[at];
            all.swap(at, next);
            order[at] = at;
            at = next;
        }
        order[at] = at;
    }
}

/// As [`sort_by`], by a key.
pub fn sort_by_key<T, K: Ord>(all: &mut [T], key: impl Fn(&T) -> K) {
    sort_by(all, |a, b| key(a).cmp(&key(b)));
}

/// The one sort.
#[inline(never)]
fn places(order: &mut [usize], compare: &dyn Fn(usize, usize) -> Ordering) {
    order.sort_by(|&a, &b| compare(a, b));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_does_what_the_standard_sort_does() {
        let mut seed = 1_u64;
        for n in 0..60 {
            let mut all: Vec<(u64, usize)> = (0..n)
                .map(|i| {
                    seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
                    (seed >> 60, i)
                })
                .collect();
            let mut expected = all.clone();
            expected.sort_by_key(|p| p.0);
            sort_by_key(&mut all, |p| p.0);
            assert_eq!(all, expected);
        }
    }
}
