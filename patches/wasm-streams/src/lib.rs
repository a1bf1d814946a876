//! Stands in for the crate of this name, through which the page's library would stream the bodies of server functions.
//! The page has no server; but the crate's exports are kept in the program whether they are called or not, with all
//! that they need. What the library's code names is here, and holds nothing.

use futures_util::stream::{Empty, Stream, empty};
use wasm_bindgen::{JsCast, JsValue};

/// A stream of a browser that is never read.
pub struct ReadableStream(web_sys::ReadableStream);

impl ReadableStream {
    /// Takes a stream of ours, and reads nothing of it.
    pub fn from_stream(_: impl Stream<Item = Result<JsValue, JsValue>> + 'static) -> Self {
        Self(JsValue::UNDEFINED.unchecked_into())
    }

    /// Takes a stream of the browser.
    #[must_use]
    pub const fn from_raw(raw: web_sys::ReadableStream) -> Self {
        Self(raw)
    }

    /// The stream of the browser.
    #[must_use]
    pub fn into_raw(self) -> web_sys::ReadableStream {
        self.0
    }

    /// Nothing of it.
    #[must_use]
    pub fn into_stream(self) -> Empty<Result<JsValue, JsValue>> {
        empty()
    }
}
