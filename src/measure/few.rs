//! `Few`: a map of few entries in the order of their keys. The standard map's code is built anew for each type, four
//! kilobytes of download a time.

use std::borrow::Borrow;

/// Keys, each once, with what belongs to them; found by halving, put in by moving the rest.
///
/// ```
/// use snugfold::measure::few::Few;
/// let mut counts: Few<char, u32> = Few::default();
/// "banana".chars().for_each(|c| *counts.at(c) += 1);
/// assert_eq!(counts.get(&'a'), Some(&3));
/// assert_eq!(counts.iter().map(|(c, _)| *c).collect::<String>(), "abn");
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Few<K, V>(Vec<(K, V)>);

impl<K, V> Default for Few<K, V> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<K: Ord, V> Few<K, V> {
    /// Where a key is, or would be.
    fn place<Q: Ord + ?Sized>(&self, key: &Q) -> Result<usize, usize>
    where
        K: Borrow<Q>,
    {
        self.0.binary_search_by(|(k, _)| k.borrow().cmp(key))
    }

    /// What belongs to a key.
    #[must_use]
    pub fn get<Q: Ord + ?Sized>(&self, key: &Q) -> Option<&V>
    where
        K: Borrow<Q>,
    {
        self.place(key).ok().and_then(|at| self.0.get(at)).map(|(_, v)| v)
    }

    /// Whether a key is there.
    #[must_use]
    pub fn contains_key<Q: Ord + ?Sized>(&self, key: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        self.place(key).is_ok()
    }

    /// Puts a value in the place of what belonged to the key, which comes back.
    pub fn insert(&mut self, key: K, value: V) -> Option<V> {
        match self.place(&key) {
            Ok(at) => Some(std::mem::replace(&mut self.0[at].1, value)),
            Err(at) => {
                self.0.insert(at, (key, value));
                None
            }
        }
    }

    /// What belongs to a key, nothing yet where it is new.
    pub fn at(&mut self, key: K) -> &mut V
    where
        V: Default,
    {
        let at = match self.place(&key) {
            Ok(at) => at,
            Err(at) => {
                self.0.insert(at, (key, V::default()));
                at
            }
        };
        &mut self.0[at].1
    }

    /// What belongs to a key, to be changed.
    pub fn get_mut<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<&mut V>
    where
        K: Borrow<Q>,
    {
        self.place(key).ok().and_then(|at| self.0.get_mut(at)).map(|(_, v)| v)
    }

    /// Takes a key away, and what belongs to it.
    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<V>
    where
        K: Borrow<Q>,
    {
        self.place(key).ok().map(|at| self.0.remove(at).1)
    }

    /// The entries whose keys come before this one.
    #[must_use]
    pub fn before(&self, key: &K) -> &[(K, V)] {
        let end = self.0.partition_point(|(k, _)| k < key);
        &self.0[..end]
    }

    /// The entries from this key on.
    #[must_use]
    pub fn from(&self, key: &K) -> &[(K, V)] {
        let start = self.0.partition_point(|(k, _)| k < key);
        &self.0[start..]
    }
}

impl<K, V> Few<K, V> {
    /// True where there is none.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// How many there are.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.0.len()
    }

    /// Takes away all.
    pub fn clear(&mut self) {
        self.0.clear();
    }

    /// Takes away all but those of which this holds.
    pub fn retain(&mut self, keep: impl Fn(&K, &V) -> bool) {
        self.0.retain(|(k, v)| keep(k, v));
    }

    /// All of them, in order.
    pub fn iter(&self) -> std::slice::Iter<'_, (K, V)> {
        self.0.iter()
    }
}

impl<'a, K, V> IntoIterator for &'a Few<K, V> {
    type Item = &'a (K, V);
    type IntoIter = std::slice::Iter<'a, (K, V)>;
    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

impl<K: Ord, V> Extend<(K, V)> for Few<K, V> {
    fn extend<I: IntoIterator<Item = (K, V)>>(&mut self, entries: I) {
        for (key, value) in entries {
            self.insert(key, value);
        }
    }
}

impl<K: Ord, V> FromIterator<(K, V)> for Few<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(entries: I) -> Self {
        let mut all = Self::default();
        all.extend(entries);
        all
    }
}
