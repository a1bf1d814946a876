//! A box to tick.

use leptos::prelude::*;

use super::child::Child;
use super::tag::{Tag, classed, tag};

/// A box to tick that says this; `toggled` is told what it is now.
#[must_use]
pub fn tick(
    says: impl Child,
    checked: impl Fn() -> bool + Send + 'static,
    toggled: impl Fn(bool) + Send + 'static,
) -> Tag {
    let input = tag("input")
        .is("type", "checkbox")
        .checked(checked)
        .on("change", move |event| toggled(event_target_checked(&event)));
    classed("label", "tick").with(input).with(tag("span").with(says))
}
