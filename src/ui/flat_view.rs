//! Flat and folded: all parts at one scale, the finished set, and the part that was touched.

use leptos::prelude::*;

use super::desk::desk;
use super::finished::{Look, finished};
use super::patterns_view::patterns_view;
use super::picture::touchable;
use super::stage::stage;
use super::tag::{Tag, classed, tag};
use super::value::{State, fact};
use crate::draw::drawing::Touch;
use crate::draw::overview::overview;
use crate::draw::svg::paint;
use crate::project::request::Tint;
use crate::say::page;

/// How far a drawing of the set is turned at most, in degrees each way.
const TURN: f64 = 80.0;

/// Everything that is drawn of the set.
#[must_use]
pub fn flat_view() -> Tag {
    let desk = desk();
    let all = fact(move || {
        desk.good.with(|plan| {
            desk.project.with(|p| paint(&overview(plan, &|c| p.card(c).map_or_else(Tint::default, |c| c.tint))))
        })
    });
    let touched = move |touch: Touch| {
        if let Some(place) = desk.good.with_untracked(|p| p.parts().nth(touch.part).map(|p| p.place)) {
            desk.place.set(place);
        }
    };
    let look = Look::at(60.0);
    let parts = classed("section", "sheet-of-paper")
        .with(tag("h2").with(page::ALL_PARTS))
        .with(touchable(move || all.get(), touched))
        .with(classed("p", "hint").with(page::TOUCH_PART));
    let whole = classed("section", "sheet-of-paper finished")
        .with(tag("h2").with(page::FINISHED_SET))
        .with(finished(look))
        .with(slider("set-lift", page::LIFT, 0.0, 100.0, look.out))
        .with(slider("set-turn", page::TURN, -TURN, TURN, look.turn));
    classed("div", "bench wide")
        .with(classed("div", "request").with(parts).with(whole).with(patterns_view()))
        .with(stage(None))
}

/// A slider with its label.
#[must_use]
pub fn slider(id: &'static str, label: &'static str, least: f64, most: f64, value: State<f64>) -> Tag {
    let slide = move |event| {
        // In whole steps: reading any number there is would be ten kilobytes of tables.
        if let Ok(at) = event_target_value(&event).parse::<i32>() {
            value.set(f64::from(at).clamp(least, most));
        }
    };
    let input = tag("input")
        .is("id", id)
        .is("type", "range")
        .is("min", (least as i64).to_string())
        .is("max", (most as i64).to_string())
        .is("step", "1")
        .value(move || (value.get() as i64).to_string())
        .on("input", slide);
    classed("div", "fold").with(tag("label").is("for", id).with(label)).with(input)
}
