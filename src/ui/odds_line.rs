//! One line: how sure it is that the boxes slide in.

use leptos::prelude::*;

use super::child::live;
use super::desk::desk;
use super::said::said;
use super::tag::classed;
use super::value::fact;
use crate::fit::odds::Accuracy;
use crate::make::slides;
use crate::say::odds::odds;

/// How sure the fit is, where a row of boxes stands in a holder.
#[must_use]
pub fn odds_line() -> AnyView {
    let desk = desk();
    let line = fact(move || {
        desk.shapes.with(|plan| {
            let hand = desk.project.with(|p| Accuracy::of(&p.trimmer, plan.system));
            let sure = slides::odds(&plan.boxes, plan.holder.as_ref()?, plan.system, &hand)?;
            Some(odds(&sure, &hand, plan.system))
        })
    });
    live(move || line.get().map(|l| classed("p", "hint").with(said(l))))
}
