//! The steps as a list, or one at a time in big type.

use crate::project::ticks::Ticks;

use leptos::prelude::*;

use super::before::before;
use super::child::{Inside, live, words};
use super::desk::{Desk, desk};
use super::glance::glance;
use super::picture::picture;
use super::said::said;
use super::tag::{Tag, button, classed, tag};
use super::tick::tick;
use super::value::{State, fact};
use crate::draw::step::step as draw;
use crate::draw::svg::paint;
use crate::make::step::Step;
use crate::plan::Plan;
use crate::project::request::Tint;
use crate::say::page;
use crate::say::step::step as say;

/// Which steps are done, by their keys.
pub type Ticked = State<Ticks>;

/// The making, step by step.
#[must_use]
pub fn steps_view() -> Tag {
    let desk = desk();
    let (done, large): (Ticked, _) = (desk.ticks, desk.large);
    on_cleanup(move || large.set(false));
    let count = fact(move || {
        desk.good.with(|p| (p.steps.iter().filter(|s| done.with(|d| d.contains(&s.key))).count(), p.steps.len()))
    });
    let how_many = move || {
        let (n, all) = count.get();
        page::done_of(n, all)
    };
    let whole = move || {
        let again = button(page::START_AGAIN, move || done.update(Ticks::clear));
        let actions = classed("p", "actions")
            .with(button(page::ONE_AT_A_TIME, move || large.set(true)).class("main"))
            .with(again.while_so("disabled", move || count.get().0 == 0))
            .with(tag("span").is("role", "status").with(words(how_many)));
        classed("div", "steps").with(before()).with(actions).with(live(move || list(desk, &desk.good.get(), done)))
    };
    tag("div").with(live(move || if large.get() { glance(done, large) } else { whole() }))
}

fn list(desk: Desk, plan: &Plan, done: Ticked) -> Vec<Tag> {
    let mut last = None;
    let rows = plan.steps.iter().enumerate().flat_map(|(i, step)| {
        let (place, title, lines) = step_words(desk, plan, step);
        let head = (last != Some(step.place)).then(|| tag("h2").with(place));
        last = Some(step.place);
        let svg = drawing(desk, plan, step);
        let (key, same) = (step.key.clone(), step.key.clone());
        let ticked = fact(move || done.with(|d| d.contains(&key)));
        let number = classed("span", "number").with((i + 1).to_string());
        let words = classed("div", "words")
            .with(tag("h3").with(number).with(tag("span").with(title)))
            .with(lines)
            .with(tick(page::DONE, move || ticked.get(), move |_| toggle(done, &same)));
        let row = classed("article", "step sheet-of-paper")
            .class_while("done", move || ticked.get())
            .with(words)
            .with(picture(move || svg.clone()));
        head.into_iter().chain([row])
    });
    rows.collect()
}

/// Where a step is made, what it is called, and what is said about it.
pub fn step_words(desk: Desk, plan: &Plan, step: &Step) -> (String, Inside, Vec<Tag>) {
    let words = desk.project.with(|p| say(step, plan, p, desk.spelling.get()));
    let times = (step.times > 1).then(|| classed("p", "times").with(page::times(step.times)));
    let lines = words.lines.into_iter().map(|l| tag("p").with(said(l)));
    let caution = words.caution.map(|c| classed("p", "note caution").with(c));
    (words.place, said(words.title), times.into_iter().chain(lines).chain(caution).collect())
}

/// The drawing of a step.
pub fn drawing(desk: Desk, plan: &Plan, step: &Step) -> String {
    let drawing = desk.project.with(|p| draw(step, plan, &|card| p.card(card).map_or_else(Tint::default, |c| c.tint)));
    drawing.as_ref().map(paint).unwrap_or_default()
}

/// Ticked a step, or takes its tick off.
pub fn toggle(done: Ticked, key: &str) {
    done.update(|d| {
        d.toggle(key.to_owned());
    });
}
