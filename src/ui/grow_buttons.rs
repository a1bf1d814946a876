//! Makes a box as large as the sheets of its card allow.

use super::child::shown;
use super::desk::desk;
use super::tag::{Tag, button, classed};
use super::value::{State, fact};
use crate::fit::largest::{Grow, SIDES};
use crate::plan::largest;
use crate::project::finding::Place;
use crate::say::fitting;

/// One button for each way to grow, where the form of the box at `place` is sized in all three directions.
#[must_use]
pub fn grow_buttons(place: Place) -> Option<Tag> {
    let Place::Box(id) = place else {
        return None;
    };
    let desk = desk();
    let sized =
        fact(move || desk.shapes.with(|p| p.part(place).is_some_and(|p| SIDES.iter().all(|s| p.used.contains_key(s)))));
    let nothing = State::new(false);
    let grow = move |to| {
        let found = desk.project.with_untracked(|p| largest(p, p.system, id, to));
        nothing.set(found.is_none());
        if let Some((_, larger)) = found {
            desk.edit_part(place, "", |part| *part = larger);
            desk.epoch.update(|e| *e = e.wrapping_add(1));
        }
    };
    let buttons = move || {
        let [proportion, height] = fitting::GROW;
        classed("div", "actions")
            .with(button(proportion, move || grow(Grow::InProportion)))
            .with(button(height, move || grow(Grow::Height)))
            .with(shown(move || nothing.get(), || classed("p", "note").is("role", "status").with(fitting::NO_LARGEST)))
    };
    Some(classed("div", "grow").with(shown(move || sized.get(), buttons)))
}
