//! Buttons of which one is pressed.

use super::tag::{Tag, classed, tag};

/// The buttons under a heading.
#[must_use]
pub fn either(legend: &'static str, buttons: Vec<Tag>) -> Tag {
    classed("fieldset", "field").with(tag("legend").with(legend)).with(classed("div", "either").with(buttons))
}
