//! How far each size of a drawn form goes: by the proof, with the other sizes as they are.

use super::Bench;
use crate::form::own::build::LARGEST;
use crate::form::own::drawn::{Drawn, SizeName};
use crate::form::own::shape::{make, told};
use crate::measure::length::Length;
use crate::project::finding::Weight;

/// From where to where a size folds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reach {
    /// Which size.
    pub name: SizeName,
    /// The least.
    pub least: Length,
    /// The most, up to [`MOST`].
    pub most: Length,
}

/// The largest size that is tried.
pub const MOST: Length = Length::mm(600);

/// The range of each size around what it is now, on the board's grooves; nothing where the form does not fold as it is.
///
/// Between its ends the range is taken to be whole: halving finds the end next to what is known to fold.
#[must_use]
pub fn reach(drawn: &Drawn, typed: &[(SizeName, Length)], bench: &Bench) -> Option<Vec<Reach>> {
    let folds = |typed: &[(SizeName, Length)]| folds(drawn, typed, bench);
    if !folds(typed) {
        return None;
    }
    let step = bench.score.step();
    let each = drawn.sizes.iter().map(|(name, given)| {
        let now = typed.iter().find(|t| t.0 == *name).map_or(given.length(), |t| t.1);
        let with = |length: Length| {
            let mut with: Vec<_> = typed.iter().copied().filter(|t| t.0 != *name).collect();
            with.push((*name, length));
            folds(&with)
        };
        let at = bench.score.up(now) / step;
        let (mut low, mut good) = (0, at);
        while good - low > 1 {
            let middle = i64::midpoint(low, good);
            if with(step * middle) { good = middle } else { low = middle }
        }
        let least = step * good;
        let (mut good, mut high) = (at, (MOST.min(LARGEST) / step).max(at) + 1);
        while high - good > 1 {
            let middle = i64::midpoint(good, high);
            if with(step * middle) { good = middle } else { high = middle }
        }
        Reach { name: *name, least, most: step * good }
    });
    Some(each.collect())
}

/// Whether the form folds with these sizes: nothing is said of it but notes.
#[must_use]
pub fn folds(drawn: &Drawn, typed: &[(SizeName, Length)], bench: &Bench) -> bool {
    let sizes = bench.sizes(drawn, typed);
    let made = make(drawn, &bench.measures(&sizes), bench.clear);
    made.is_ok_and(|m| told(&m, bench.thickness).iter().all(|s| s.0 == Weight::Note))
}
