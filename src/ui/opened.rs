//! A line that opens into more, which knows whether it is open.

use wasm_bindgen::JsCast;

use super::tag::{Tag, classed, tag};
use super::value::State;

/// Under this line; `open` follows the maker.
#[must_use]
pub fn opened(class: &'static str, line: &'static str, open: State<bool>) -> Tag {
    let toggled = move |event: web_sys::Event| {
        let details = event.current_target().and_then(|t| t.dyn_into::<web_sys::HtmlDetailsElement>().ok());
        open.set(details.is_some_and(|d| d.open()));
    };
    classed("details", class).while_so("open", move || open.get()).on("toggle", toggled).with(tag("summary").with(line))
}
