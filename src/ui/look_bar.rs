//! What the search for better sheets is doing, with a button that stops it.

use super::child::{live, words};
use super::desk::desk;
use super::looking::Standing;
use super::tag::{Tag, button, classed, tag};
use crate::say::page;

/// A line about the search.
#[must_use]
pub fn look_bar() -> Tag {
    let better = desk().better;
    let standing = better.standing;
    let says = move || match standing.get() {
        Standing::Waiting => String::new(),
        Standing::Working(_) => page::LOOKING.to_owned(),
        Standing::Stopped(work) => page::looked_until(work),
        Standing::Finished => page::LOOKED.to_owned(),
    };
    let how_far = move || if let Standing::Working(n) = standing.get() { Some(n.to_string()) } else { None };
    let tools = move || match standing.get() {
        Standing::Working(_) => {
            let bar = tag("progress").is("max", "100").is("aria-label", page::LOOKING).follows("value", how_far);
            vec![bar, button(page::STOP_LOOKING, move || better.stop())]
        }
        Standing::Stopped(_) => vec![button(page::LOOK_ON, move || better.go_on())],
        Standing::Waiting | Standing::Finished => Vec::new(),
    };
    // Its place is kept while it says nothing: what stands below must not move under a finger.
    classed("p", "actions looking").with(tag("span").is("role", "status").with(words(says))).with(live(tools))
}
