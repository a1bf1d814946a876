//! The browser's local storage as a shelf.

use gloo_storage::{LocalStorage, Storage as _};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{DomException, Storage};

use super::keys;
use crate::keep::shelf::{Refused, Shelf};

/// What each key begins with, behind the page's own folder: two copies of the page on one host keep apart.
const BEGIN: &str = "snugfold:";
/// Written and taken away again, to see whether anything can be.
const PROBE: &str = "snugfold:probe";

/// The browser's local storage, as far as it belongs to this page.
#[derive(Clone, Debug)]
pub struct LocalShelf {
    storage: Storage,
    begin: String,
}

impl LocalShelf {
    /// The storage of this page.
    ///
    /// # Errors
    /// [`Refused::Forbidden`] where the browser allows none, as in some private windows.
    pub fn of_page() -> Result<Self, Refused> {
        // gloo's own way to storage panics where it is forbidden, so it is asked only once the browser has said yes.
        keys::storage().ok_or(Refused::Forbidden)?;
        let shelf = Self { storage: LocalStorage::raw(), begin: keys::key(BEGIN) };
        let probe = keys::key(PROBE);
        match shelf.storage.set_item(&probe, "1").map_err(|e| refused(&e)) {
            Ok(()) => shelf.storage.remove_item(&probe).map_err(|e| refused(&e))?,
            // Full of what was kept before: that can still be read.
            Err(Refused::Full) if shelf.storage.length().is_ok_and(|n| n > 0) => {}
            Err(_) => return Err(Refused::Forbidden),
        }
        Ok(shelf)
    }

    fn full(&self, key: &str) -> String {
        format!("{}{key}", self.begin)
    }
}

/// What a browser means by the exception that it throws.
fn refused(thrown: &JsValue) -> Refused {
    let name = thrown.dyn_ref::<DomException>().map(DomException::name).unwrap_or_default();
    // “QuotaExceededError”, and in older browsers “NS_ERROR_DOM_QUOTA_REACHED”.
    if name.to_ascii_lowercase().contains("quota") { Refused::Full } else { Refused::Forbidden }
}

impl Shelf for LocalShelf {
    fn read(&self, key: &str) -> Result<Option<String>, Refused> {
        self.storage.get_item(&self.full(key)).map_err(|e| refused(&e))
    }

    fn write(&mut self, key: &str, text: &str) -> Result<(), Refused> {
        self.storage.set_item(&self.full(key), text).map_err(|e| refused(&e))
    }

    fn remove(&mut self, key: &str) -> Result<(), Refused> {
        self.storage.remove_item(&self.full(key)).map_err(|e| refused(&e))
    }

    fn keys(&self) -> Result<Vec<String>, Refused> {
        let count = self.storage.length().map_err(|e| refused(&e))?;
        let mut mine = Vec::new();
        for i in 0..count {
            let key = self.storage.key(i).map_err(|e| refused(&e))?;
            mine.extend(key.as_deref().and_then(|k| k.strip_prefix(&self.begin)).map(str::to_owned));
        }
        Ok(mine)
    }
}
