//! A line that says that what is shown is from before the last edit.

use super::child::{Inside, shown};
use super::desk::desk;
use super::tag::classed;
use crate::say::page;

/// Shown while the design as it stands cannot be made.
#[must_use]
pub fn before() -> Inside {
    let plan = desk().plan;
    shown(move || plan.with(|p| p.stopped()), || classed("p", "note stop").is("role", "status").with(page::BEFORE))
}
