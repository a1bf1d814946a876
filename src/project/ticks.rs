//! `Ticks`: which steps are done, by what each step is, how far those are that are done many times, and by whom.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

use crate::measure::json::value::list;

/// Steps that are done, each once, in order, as they are kept: `key` is done, `key*37` is done 37 times so far; of a
/// second maker at the same table it is `2/key`, and `2/` says that this one is at work now.
///
/// ```
/// use snugfold::project::ticks::Ticks;
/// let mut ticks: Ticks = ["b", "a", "b"].map(str::to_owned).into_iter().collect();
/// assert!(ticks.contains("a") && ticks.toggle("a"));
/// ticks.work_as(2);
/// assert!(!ticks.contains("b") && ticks.by_anyone("b"));
/// ticks.count("b", 37);
/// assert_eq!(ticks.tally("b"), 37);
/// assert_eq!(ticks.iter().collect::<Vec<_>>(), ["2/", "2/b*37", "b"]);
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Ticks(#[serde(deserialize_with = "list")] BTreeSet<String>);

/// The most makers at one table.
pub const MAKERS: u32 = 9;

/// Who an entry is of, and the rest of it.
fn parted(entry: &str) -> (u32, &str) {
    let other = entry.split_once('/').and_then(|(n, rest)| Some((n.parse().ok()?, rest)));
    other.filter(|(n, _)| (2..=MAKERS).contains(n)).unwrap_or((1, entry))
}

impl Ticks {
    /// The maker who is at work, from 1.
    #[must_use]
    pub fn maker(&self) -> u32 {
        self.0.iter().map(|entry| parted(entry)).find(|(_, rest)| rest.is_empty()).map_or(1, |(maker, _)| maker)
    }

    /// How many makers there are steps of, or are at work.
    #[must_use]
    pub fn makers(&self) -> u32 {
        self.0.iter().map(|entry| parted(entry).0).max().unwrap_or(1)
    }

    /// Lets another maker be at work.
    pub fn work_as(&mut self, maker: u32) {
        self.0.retain(|entry| !parted(entry).1.is_empty());
        if (2..=MAKERS).contains(&maker) {
            self.0.insert(format!("{maker}/"));
        }
    }

    /// A step's key, as it stands here for the maker at work.
    fn mine(&self, key: &str) -> String {
        match self.maker() {
            1 => key.to_owned(),
            maker => format!("{maker}/{key}"),
        }
    }

    /// What stands here of a step that is done many times, for the maker at work.
    fn counted(&self, key: &str) -> impl Fn(&str) -> Option<u64> + use<> {
        let begin = self.mine(key) + "*";
        move |entry| entry.strip_prefix(&begin)?.parse().ok()
    }

    /// Takes the tick off a ticked step, and ticks another; whether it was ticked.
    pub fn toggle(&mut self, key: &str) -> bool {
        let was = self.contains(key);
        self.count(key, 0);
        let mine = self.mine(key);
        if was {
            self.0.remove(&mine);
        } else {
            self.0.insert(mine);
        }
        was
    }

    /// Whether the maker at work has ticked a step.
    #[must_use]
    pub fn contains(&self, key: &str) -> bool {
        self.0.contains(&self.mine(key))
    }

    /// Whether any maker has ticked or begun a step.
    #[must_use]
    pub fn by_anyone(&self, key: &str) -> bool {
        self.0.iter().any(|entry| parted(entry).1.split('*').next() == Some(key))
    }

    /// How often the maker at work has done a step that is not done yet.
    #[must_use]
    pub fn tally(&self, key: &str) -> u64 {
        let counted = self.counted(key);
        self.0.iter().filter_map(|entry| counted(entry)).max().unwrap_or(0)
    }

    /// Says how often a step is done so far; it is not ticked then.
    pub fn count(&mut self, key: &str, done: u64) {
        let (counted, mine) = (self.counted(key), self.mine(key));
        self.0.retain(|entry| counted(entry).is_none() && (done == 0 || *entry != mine));
        if done > 0 {
            self.0.insert(format!("{mine}*{done}"));
        }
    }

    /// True where no step is.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// How many entries there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// All entries as they are kept, in order.
    pub fn iter(&self) -> impl Iterator<Item = &String> {
        self.0.iter()
    }

    /// Takes off all of the maker at work.
    pub fn clear(&mut self) {
        let now = self.maker();
        self.0.retain(|entry| {
            let (maker, rest) = parted(entry);
            maker != now || rest.is_empty()
        });
    }
}

impl Extend<String> for Ticks {
    fn extend<I: IntoIterator<Item = String>>(&mut self, keys: I) {
        self.0.extend(keys);
    }
}

impl FromIterator<String> for Ticks {
    fn from_iter<I: IntoIterator<Item = String>>(keys: I) -> Self {
        Self(keys.into_iter().collect())
    }
}

impl IntoIterator for Ticks {
    type Item = String;
    type IntoIter = std::collections::btree_set::IntoIter<String>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn makers_do_not_mix() {
        let mut ticks = Ticks::default();
        for maker in 1..=MAKERS {
            ticks.work_as(maker);
            assert_eq!((ticks.maker(), ticks.tally("a")), (maker, 0));
            ticks.count("a", u64::from(maker));
            ticks.toggle("b");
        }
        for maker in 1..=MAKERS {
            ticks.work_as(maker);
            assert_eq!(ticks.tally("a"), u64::from(maker));
            assert!(ticks.contains("b") && !ticks.contains("a"));
        }
        ticks.clear();
        assert!(!ticks.contains("b") && ticks.by_anyone("b") && ticks.maker() == MAKERS);
    }

    #[test]
    fn what_two_pages_saved_is_all_there() {
        let both: Ticks =
            ["a*3", "a*5", "2/", "3/", "9/b", "77/c", "*", "/", "2/*4"].map(str::to_owned).into_iter().collect();
        assert_eq!(both.maker(), 2);
        assert_eq!((both.tally(""), both.makers()), (4, MAKERS));
        let mut first = both;
        first.work_as(1);
        assert_eq!(first.tally("a"), 5);
        first.count("a", 6);
        assert_eq!((first.tally("a"), first.iter().filter(|e| e.starts_with("a*")).count()), (6, 1));
    }
}
