//! `Picture`: a small picture of the finished set, as the page keeps it.

use std::sync::Arc;

use crate::measure::slot::tree::Tree;
use crate::measure::slot::{Empty, Slot};

/// A picture as an address that holds all of it (RFC 2397), always a JPEG; empty where there is none. Copies share it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Picture(Arc<str>);

/// What every such address begins with.
const BEGIN: &str = "data:image/jpeg;base64,";
/// The most characters: a picture of 640 dots takes a third of them.
pub const MOST: usize = 250_000;

impl Picture {
    /// The picture of such an address; nothing where it is another, or too large to be kept with a design.
    ///
    /// ```
    /// use snugfold::project::picture::Picture;
    /// assert!(Picture::read("data:image/jpeg;base64,/9j/4AAQ").is_some());
    /// assert!(Picture::read("data:image/svg+xml,<svg/>").is_none());
    /// assert!(Picture::read("data:image/jpeg;base64,\" onload=\"alert(1)").is_none());
    /// ```
    #[must_use]
    pub fn read(address: &str) -> Option<Self> {
        let plain = |c: u8| c.is_ascii_alphanumeric() || matches!(c, b'+' | b'/' | b'=');
        let fits = address.len() <= MOST && address.strip_prefix(BEGIN).is_some_and(|rest| rest.bytes().all(plain));
        fits.then(|| Self(address.into()))
    }

    /// True where there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Its address, for an image on the page.
    #[must_use]
    pub fn address(&self) -> &str {
        &self.0
    }
}

impl Slot for Picture {
    fn expects(&self) -> &'static str {
        "a string"
    }
    fn text(&mut self, text: &str) -> Result<(), Option<String>> {
        *self = Self::read(text).ok_or_else(|| Some("that is no small picture of the kind that is kept".to_owned()))?;
        Ok(())
    }
    fn tree(&self) -> Tree {
        if self.is_empty() { Tree::None } else { Tree::Text(self.0.to_string()) }
    }
}

impl Empty for Picture {
    fn empty() -> Self {
        Self::default()
    }
}
