//! The panels of a part in words: what the drawing shows, for those who hear it, and a way to choose by key.

use super::child::live;
use super::opened::opened;
use super::said::said;
use super::shared::Shared;
use super::tag::{Tag, button, tag};
use super::value::{Fact, State};
use crate::net::flat::PanelId;
use crate::project::finding::Place;
use crate::say::{names, page};

/// Each panel of part `part` of a box or holder with its size, as it is in `shown`; pressing it chooses it in the drawing.
#[must_use]
pub fn panel_list(
    (place, part): (Fact<Place>, Fact<usize>),
    shown: Fact<Shared>,
    chosen: State<Option<PanelId>>,
) -> Tag {
    // Worded only while it is looked at.
    let open = State::new(false);
    let list = move || {
        if !open.get() {
            return Vec::new();
        }
        let words = shown.with(|plan| {
            plan.part(place.get()).map_or_else(Vec::new, |p| names::panel_list(p, part.get(), plan.system))
        });
        let each = words.into_iter().enumerate().map(|(i, words)| {
            let id = PanelId(i);
            let choose = move || chosen.update(|c| *c = (*c != Some(id)).then_some(id));
            tag("li").with(button(said(words), choose).says("aria-pressed", move || chosen.get() == Some(id)))
        });
        each.collect::<Vec<_>>()
    };
    opened("panels", page::PANELS, open).with(tag("ol").with(live(list)))
}
