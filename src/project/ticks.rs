//! `Ticks`: which steps are done, by what each step is.

use serde::Serialize;

/// Keys of steps that are done, each once, in order.
///
/// ```
/// use snugfold::project::ticks::Ticks;
/// let mut ticks: Ticks = ["b", "a", "b"].map(str::to_owned).into_iter().collect();
/// assert!(ticks.contains("a") && ticks.toggle("a".to_owned()));
/// assert_eq!(ticks.iter().collect::<Vec<_>>(), ["b"]);
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(transparent)]
pub struct Ticks(Vec<String>);

impl Ticks {
    /// Ticks a step; whether it was not ticked.
    pub fn insert(&mut self, key: String) -> bool {
        let place = self.0.binary_search(&key);
        if let Err(at) = place {
            self.0.insert(at, key);
        }
        place.is_err()
    }

    /// Takes the tick off a ticked step, and ticks another; whether it was ticked.
    pub fn toggle(&mut self, key: String) -> bool {
        match self.0.binary_search(&key) {
            Ok(at) => {
                self.0.remove(at);
                true
            }
            Err(at) => {
                self.0.insert(at, key);
                false
            }
        }
    }

    /// Whether a step is ticked.
    #[must_use]
    pub fn contains(&self, key: &str) -> bool {
        self.0.binary_search_by(|k| k.as_str().cmp(key)).is_ok()
    }

    /// True where no step is.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// How many are.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.0.len()
    }

    /// All keys, in order.
    pub fn iter(&self) -> std::slice::Iter<'_, String> {
        self.0.iter()
    }

    /// Takes off all.
    pub fn clear(&mut self) {
        self.0.clear();
    }
}

impl Extend<String> for Ticks {
    fn extend<I: IntoIterator<Item = String>>(&mut self, keys: I) {
        for key in keys {
            self.insert(key);
        }
    }
}

impl FromIterator<String> for Ticks {
    fn from_iter<I: IntoIterator<Item = String>>(keys: I) -> Self {
        let mut all = Self::default();
        all.extend(keys);
        all
    }
}

impl IntoIterator for Ticks {
    type Item = String;
    type IntoIter = std::vec::IntoIter<String>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}
