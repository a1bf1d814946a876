//! The link to the design on the screen, and the design of the link that the page was opened with.

use leptos::prelude::window;

use crate::keep::link::{self, LinkError};
use crate::project::request::Project;

/// The address of this page with the whole of `project` behind its `#`, but for what is private.
///
/// # Errors
/// Where the design is too large for a link.
pub fn address(project: &Project) -> Result<String, LinkError> {
    let fragment = link::write(&project.for_others())?;
    let here = window().location().href().unwrap_or_default();
    let page = here.split('#').next().unwrap_or_default();
    Ok(format!("{page}#{fragment}"))
}

/// Fewer characters than the shortest link has: a place on the page, such as `#content`.
const SHORT: usize = 24;

/// The design in this page's address; nothing where there is no fragment, or one of a place on the page.
#[must_use]
pub fn opened_with() -> Option<Result<Project, LinkError>> {
    let fragment = window().location().hash().unwrap_or_default();
    match link::read(&fragment) {
        Err(LinkError::NotALink) if fragment.len() < SHORT => None,
        read => Some(read),
    }
}

/// Takes the design out of this page's address, once it is on the screen: a later reload opens what is saved.
pub fn leave() {
    let here = window().location();
    let page = here.pathname().unwrap_or_default() + &here.search().unwrap_or_default();
    if let Ok(history) = window().history() {
        // An address that stays as it is only opens the link once more.
        let _ = history.replace_state_with_url(&wasm_bindgen::JsValue::NULL, "", Some(&page));
    }
}
