//! One line: how sure it is that the boxes slide in.

use super::child::{Inside, live};
use super::desk::desk;
use super::said::said;
use super::tag::classed;
use super::value::fact;
use crate::fit::odds::Accuracy;
use crate::make::slides;
use crate::project::finding::Place;
use crate::say::odds::{goes, odds};
use crate::say::phrase::Phrase;

/// How sure the fit is, where a row of boxes stands in a holder, and where parts of `place` go into each other.
#[must_use]
pub fn odds_line(place: Place) -> Inside {
    let desk = desk();
    let lines = fact(move || {
        desk.shapes.with(|plan| {
            let hand = desk.project.with(|p| Accuracy::of(&p.trimmer, plan.system));
            let mut lines: Vec<Phrase> = Vec::new();
            if let Some(holder) = plan.holder.as_ref().filter(|h| h.place == place) {
                let row = slides::odds(&plan.boxes, holder, plan.system, &hand);
                lines.extend(row.map(|sure| odds(&sure, &hand, plan.system)));
                let seats = slides::seated(&plan.boxes, holder, plan.system, &hand);
                lines.extend(seats.and_then(|sure| goes(&sure, &hand, plan.system)));
            }
            if let Some(part) = plan.part(place) {
                let joins = slides::joins(part, plan.system, &hand);
                lines.extend(joins.iter().filter_map(|j| goes(j, &hand, plan.system)));
            }
            lines
        })
    });
    live(move || lines.get().into_iter().map(|l| classed("p", "hint").with(said(l))).collect::<Vec<_>>())
}
