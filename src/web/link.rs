//! The link to the design on the screen, and the design of the link in this page's address.

use leptos::prelude::window;

use super::guard;
use crate::keep::limits;
use crate::keep::link::{self, LinkError};
use crate::project::request::Project;

/// The address of this page with the whole of `project` behind its `#`, but for what is private.
///
/// # Errors
/// Where the design is too large for a link.
pub fn address(project: &Project) -> Result<String, LinkError> {
    limits::planned(project).map_err(LinkError::Excess)?;
    let fragment = link::write(&project.for_others())?;
    let here = window().location().href().unwrap_or_default();
    let page = here.split('#').next().unwrap_or_default();
    Ok(format!("{page}#{fragment}"))
}

/// Fewer characters than the shortest link has: a place on the page, such as `#content`.
const SHORT: usize = 24;

/// A link in this page's address.
pub struct Came {
    /// Its name for [`guard`].
    pub name: String,
    /// Its design, of which no more is asked than can be planned.
    pub design: Result<Project, LinkError>,
}

/// The link in this page's address; nothing where there is no fragment, or one of a place on the page.
#[must_use]
pub fn in_address() -> Option<Came> {
    let fragment = window().location().hash().unwrap_or_default();
    let design = match link::read(&fragment) {
        Err(LinkError::NotALink) if fragment.len() < SHORT => return None,
        Ok(project) => limits::planned(&project).map_err(LinkError::Excess).map(|()| project),
        unread => unread,
    };
    Some(Came { name: guard::link(&fragment), design })
}

/// Takes the link out of this page's address, once its design is kept or put away: a later reload opens what is saved.
pub fn leave() {
    let here = window().location();
    let page = here.pathname().unwrap_or_default() + &here.search().unwrap_or_default();
    if let Ok(history) = window().history() {
        // An address that stays as it is only opens the link once more.
        let _ = history.replace_state_with_url(&wasm_bindgen::JsValue::NULL, "", Some(&page));
    }
}
