//! `Picture`: a small picture of the finished set, as the page keeps it.

use std::sync::Arc;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::measure::json::value::text;

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

impl Serialize for Picture {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&self.0)
    }
}

impl<'de> Deserialize<'de> for Picture {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        text(from, |address| {
            Self::read(address).ok_or_else(|| {
                "this is no picture of the kind that is kept, a small JPEG: take this field out".to_owned()
            })
        })
    }
}
