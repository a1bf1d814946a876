//! All states of one record that a shelf has, and how the next one is written.
//!
//! **Write order.** A new state goes under a key of its own and is read back; only then the states that it takes the
//! place of are taken away, the oldest first. Cut off anywhere, the shelf holds the old state, the new one, or both, and
//! the new one says that it comes after the old. What cannot be read is never written over or taken away. Two pages that
//! save at once leave two newest states, so that neither is lost ([`super::notebook`] makes two sets of them).

use super::file::FileError;
use super::record::{Content, Key, Kind, Record, SetId, State};
use super::shelf::{Refused, Shelf};

/// One state that can be read.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// Which one it is.
    pub state: State,
    /// What it says.
    pub record: Record,
    /// How many bytes its text has.
    pub size: usize,
}

/// All states of one record.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    /// Those that no other takes the place of, the newest last. More than one where two pages saved at once.
    pub heads: Vec<Found>,
    /// Those that another takes the place of, the oldest first.
    pub superseded: Vec<State>,
    /// Those that cannot be read, and why.
    pub unreadable: Vec<(State, FileError)>,
}

impl History {
    /// Reads all states of a record; `keys` are those of the shelf, in their order ([`keys`]).
    ///
    /// # Errors
    /// [`Refused`] where the shelf cannot be read.
    pub fn look(shelf: &impl Shelf, keys: &[Key], kind: Kind, id: SetId) -> Result<Self, Refused> {
        let mut found = Vec::new();
        let mut history = Self::default();
        let mine = (kind, id);
        let first = keys.partition_point(|k| (k.kind, k.id) < mine);
        for key in keys[first..].iter().take_while(|k| (k.kind, k.id) == mine) {
            // Another page may have taken it away since the keys were read.
            let Some(text) = shelf.read(&key.to_string())? else {
                continue;
            };
            match Record::read(kind, &text) {
                Ok(record) => found.push(Found { state: key.state, record, size: text.len() }),
                Err(why) => history.unreadable.push((key.state, why)),
            }
        }
        // Few: what stays behind of one set.
        let after: Vec<State> = found.iter().flat_map(|f| f.record.after.iter().copied()).collect();
        let (superseded, mut heads): (Vec<_>, Vec<_>) = found.into_iter().partition(|f| after.contains(&f.state));
        history.superseded = superseded.into_iter().map(|f| f.state).collect();
        heads.sort_by_key(|f| (f.state.revision, f.record.saved_at, f.state.writer));
        history.heads = heads;
        Ok(history)
    }

    /// The newest state.
    #[must_use]
    pub fn newest(&self) -> Option<&Found> {
        self.heads.last()
    }

    /// The highest number of any state, read or not.
    fn highest(&self) -> u64 {
        let heads = self.heads.iter().map(|f| f.state);
        let all = heads.chain(self.superseded.iter().copied()).chain(self.unreadable.iter().map(|u| u.0));
        all.map(|s| s.revision).max().unwrap_or(0)
    }
}

/// Who writes, and where to.
#[derive(Clone, Copy, Debug)]
pub struct Place {
    /// What is written.
    pub kind: Kind,
    /// The set it belongs to.
    pub id: SetId,
    /// What the page calls itself.
    pub writer: u32,
}

/// Writes the next state of a record, in place of `after`. What stays behind of the states before, because it could not
/// be taken away, is taken away the next time.
///
/// # Errors
/// [`Refused`] where the new state was not kept; the ones before are then as they were.
pub fn write(
    shelf: &mut impl Shelf,
    history: &History,
    Place { kind, id, writer }: Place,
    after: &[State],
    saved_at: u64,
    content: Content,
) -> Result<State, Refused> {
    let state = State { revision: history.highest().saturating_add(1), writer };
    let record = Record { after: after.to_vec(), saved_at, content };
    let key = Key { kind, id, state }.to_string();
    let text = record.text();
    shelf.write(&key, &text)?;
    if shelf.read(&key)?.as_deref() != Some(&text) {
        return Err(Refused::Forbidden);
    }
    for state in history.superseded.iter().chain(after) {
        if shelf.remove(&Key { kind, id, state: *state }.to_string()).is_err() {
            break;
        }
    }
    Ok(state)
}

/// The keys of all records on a shelf in their order, and the keys that look like one and are none.
///
/// # Errors
/// [`Refused`] where the shelf cannot be read.
pub fn keys(shelf: &impl Shelf) -> Result<(Vec<Key>, Vec<String>), Refused> {
    let mut found = Vec::new();
    let mut odd = Vec::new();
    for text in shelf.keys()? {
        match Key::read(&text) {
            Some(key) => found.push(key),
            None if Kind::of_key(&text).is_some() => odd.push(text),
            None => {}
        }
    }
    found.sort();
    Ok((found, odd))
}
