//! `Shelf`: a place that keeps texts under keys, such as a browser's storage, and may refuse to.

use std::collections::BTreeMap;
use std::fmt;

/// A place that keeps texts under keys. One write changes one text; nothing more is asked of it.
pub trait Shelf {
    /// The text under `key`, where there is one.
    ///
    /// # Errors
    /// [`Refused`] where the place cannot be read.
    fn read(&self, key: &str) -> Result<Option<String>, Refused>;

    /// Puts `text` under `key`.
    ///
    /// # Errors
    /// [`Refused`] where it was not kept.
    fn write(&mut self, key: &str, text: &str) -> Result<(), Refused>;

    /// Takes away what is under `key`, if anything is.
    ///
    /// # Errors
    /// [`Refused`] where the place cannot be written to.
    fn remove(&mut self, key: &str) -> Result<(), Refused>;

    /// All keys, in any order.
    ///
    /// # Errors
    /// [`Refused`] where the place cannot be read.
    fn keys(&self) -> Result<Vec<String>, Refused>;
}

impl<S: Shelf + ?Sized> Shelf for Box<S> {
    fn read(&self, key: &str) -> Result<Option<String>, Refused> {
        (**self).read(key)
    }
    fn write(&mut self, key: &str, text: &str) -> Result<(), Refused> {
        (**self).write(key, text)
    }
    fn remove(&mut self, key: &str) -> Result<(), Refused> {
        (**self).remove(key)
    }
    fn keys(&self) -> Result<Vec<String>, Refused> {
        (**self).keys()
    }
}

/// Why a shelf does not do what it is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refused {
    /// There is no room left.
    Full,
    /// It may not be used, or not any more.
    Forbidden,
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Full => "There is no room left in this browser’s storage: save this set as a file, then delete sets that you no longer need",
            Self::Forbidden => "This browser keeps nothing for this page: save this set as a file before you close it, or allow the page to store data",
        })
    }
}

impl std::error::Error for Refused {}

/// A shelf that lasts as long as the page is open.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct MemoryShelf {
    /// What it keeps.
    pub texts: BTreeMap<String, String>,
}

impl Shelf for MemoryShelf {
    fn read(&self, key: &str) -> Result<Option<String>, Refused> {
        Ok(self.texts.get(key).cloned())
    }
    fn write(&mut self, key: &str, text: &str) -> Result<(), Refused> {
        self.texts.insert(key.to_owned(), text.to_owned());
        Ok(())
    }
    fn remove(&mut self, key: &str) -> Result<(), Refused> {
        self.texts.remove(key);
        Ok(())
    }
    fn keys(&self) -> Result<Vec<String>, Refused> {
        Ok(self.texts.keys().cloned().collect())
    }
}
