//! One step at a time, in type that is read at two metres.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::KeyboardEvent;

use super::child::{live, words};
use super::desk::desk;
use super::explained::explained_in;
use super::picture::picture;
use super::steps_view::{Ticked, drawing, step_words, toggle};
use super::tag::{Tag, button, classed, tag};
use super::value::{State, fact};
use crate::say::hand::Hand;
use crate::say::{making, page};
use crate::web::{here, wake};

/// The large view of the steps with these ticks; `large` closes it.
#[must_use]
pub fn glance(done: Ticked, large: State<bool>) -> Tag {
    let desk = desk();
    wake::keep();
    on_cleanup(wake::release);
    let count = fact(move || desk.good.with(|p| p.steps.len()));
    // Begins at the first step that is not done.
    let first = desk
        .good
        .with_untracked(|p| p.steps.iter().position(|s| done.with_untracked(|d| !d.contains(&s.key))).unwrap_or(0));
    let at = State::new(first);
    let now = fact(move || at.get().min(count.get().saturating_sub(1)));
    let go = move |by: isize| {
        at.set(now.get_untracked().saturating_add_signed(by).min(count.get_untracked().saturating_sub(1)));
    };
    let key = fact(move || desk.good.with(|p| p.steps.get(now.get()).map_or(String::new(), |s| s.key.clone())));
    let ticked = move || key.with(|k| done.with(|d| d.contains(k)));
    let next = move || {
        let key = key.get_untracked();
        // What is counted one by one is ticked by the last one.
        if !done.with_untracked(|d| d.contains(&key) || d.tally(&key) > 0) {
            toggle(desk, &key);
        }
        go(1);
    };
    let keys = move |event: web_sys::Event| {
        let Some(event) = event.dyn_ref::<KeyboardEvent>() else {
            return;
        };
        match event.key().as_str() {
            "PageDown" | "ArrowRight" => next(),
            "PageUp" | "ArrowLeft" => go(-1),
            "Escape" => large.set(false),
            _ => return,
        }
        event.prevent_default();
    };
    let svg =
        fact(move || desk.good.with(|p| p.steps.get(now.get()).map_or_else(String::new, |s| drawing(desk, p, s))));
    let text = move || {
        desk.good.with(|p| {
            let step = p.steps.get(now.get())?;
            let said = step_words(desk, p, step, done);
            let mut all = vec![
                classed("p", "place").with(page::step_of(now.get() + 1, count.get(), &said.place)),
                tag("h2").with(said.title),
            ];
            all.extend(said.lines);
            all.extend(said.notes.into_iter().map(|n| classed("p", "note own").with(n)));
            Some(all)
        })
    };
    let mark = words(move || if ticked() { "✓" } else { "" }.to_owned());
    let tick = button(classed("span", "box").is("aria-hidden", "true").with(mark), move || {
        toggle(desk, &key.get_untracked());
    });
    // One by one, where it is done many times.
    let count_by = move |by: i64| {
        let times = desk.good.with_untracked(|p| p.steps.get(now.get_untracked()).map_or(1, |s| s.times));
        let key = key.get_untracked();
        desk.tick(|d| {
            let was = if d.contains(&key) { times } else { d.tally(&key) };
            let is = was.saturating_add_signed(by);
            d.count(&key, is.min(times));
            if is >= times {
                d.toggle(&key);
            }
        });
    };
    let made = move || {
        let times = desk.good.with(|p| p.steps.get(now.get()).map_or(1, |s| s.times));
        let made = key.with(|k| done.with(|d| if d.contains(k) { times } else { d.tally(k) }));
        page::made(made)
    };
    let tallied = move || {
        let times = desk.good.with(|p| p.steps.get(now.get()).map_or(1, |s| s.times));
        (times > 1).then(|| {
            classed("span", "count")
                .with(button("−", move || count_by(-1)).is("aria-label", page::ONE_LESS))
                .with(tag("span").is("role", "status").with(words(made)))
                .with(button("+", move || count_by(1)).is("aria-label", page::ONE_MORE))
        })
    };
    let tapped = move |event: web_sys::Event| {
        let at = event.dyn_ref::<web_sys::MouseEvent>().map_or(0, web_sys::MouseEvent::client_x);
        // The edge at the side of the holding hand leads back.
        let from = if desk.hand.get_untracked() == Hand::Left { here::width() - at } else { at };
        if from * 4 < here::width() { go(-1) } else { next() }
    };
    let light = move || match wake::awake() {
        Some(true) => page::AWAKE,
        Some(false) => page::MAY_SLEEP,
        None => "",
    };
    let controls = classed("div", "controls")
        .with(button(page::BACK, move || go(-1)).while_so("disabled", move || now.get() == 0))
        .with(tick.says("aria-pressed", ticked).with(page::DONE))
        .with(live(tallied))
        .with(button(page::NEXT, next).class("main"))
        .with(button(page::AHEAD, move || go(1)))
        .with(button(page::AS_LIST, move || large.set(false)));
    // Keys work at once, without a first tap.
    here::focus("glance".to_owned());
    classed("div", "glance")
        .is("id", "glance")
        .is("tabindex", "-1")
        .on("keydown", keys)
        .with(classed("div", "words").is("aria-live", "polite").on("click", tapped).with(live(text)))
        .with(picture(move || svg.get()).on("click", tapped))
        .with(controls)
        .with(explained_in(".glance .words", fact(move || (key.get(), desk.good.get()))))
        .with(classed("p", "hint").is("role", "status").with(words(move || format!("{} {}", making::TAP, light()))))
}
