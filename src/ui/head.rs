//! The head of the page: its name, the walk, and the way back.

use super::desk::desk;
use super::tag::{Tag, button, classed, tag};
use super::value::State;
use super::walk::Walk;
use crate::say::page;
use crate::web::here;

/// Name, walk, undo and redo; `walk` is the part that is looked at.
#[must_use]
pub fn head(walk: State<Walk>) -> Tag {
    let desk = desk();
    let step = move |one: Walk| {
        let go = move || {
            walk.set(one);
            here::to_top();
        };
        let current = move || (walk.get() == one).then(|| "page".to_owned());
        tag("li").with(button(one.name(), go).follows("aria-current", current))
    };
    let back = button(page::UNDO, move || desk.undo()).while_so("disabled", move || desk.ways.get().0 == 0);
    let forth = button(page::REDO, move || desk.redo()).while_so("disabled", move || desk.ways.get().1 == 0);
    let walk = tag("ul").with(Walk::ALL.map(step).into_iter().collect::<Vec<_>>());
    classed("header", "head")
        .while_so("inert", move || desk.large.get())
        .with(tag("h1").with(page::SNUGFOLD))
        .with(tag("nav").is("aria-label", page::WALK).with(walk))
        .with(classed("div", "ways").with(back).with(forth))
}
