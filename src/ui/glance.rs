//! One step at a time, in type that is read at two metres.

use leptos::ev::KeyboardEvent;
use leptos::html::Div;
use leptos::prelude::*;

use super::desk::desk;
use super::picture::Picture;
use super::said::said;
use super::steps_view::{Ticks, picture, times, toggle, words};
use crate::say::page;
use crate::web::wake;

/// The large view; `large` closes it.
#[component]
pub fn Glance(
    /// The ticks.
    done: Ticks,
    /// Whether it is open.
    large: RwSignal<bool>,
) -> impl IntoView {
    let desk = desk();
    let awake = wake::keep();
    on_cleanup(wake::release);
    let count = Memo::new(move |_| desk.good.with(|p| p.steps.len()));
    // Begins at the first step that is not done.
    let first = desk
        .good
        .with_untracked(|p| p.steps.iter().position(|s| done.with_untracked(|d| !d.contains(&s.key))).unwrap_or(0));
    let at = RwSignal::new(first);
    let here = Memo::new(move |_| at.get().min(count.get().saturating_sub(1)));
    let go = move |by: isize| {
        at.set(here.get_untracked().saturating_add_signed(by).min(count.get_untracked().saturating_sub(1)));
    };
    let key = Memo::new(move |_| desk.good.with(|p| p.steps.get(here.get()).map_or(String::new(), |s| s.key.clone())));
    let ticked = move || key.with(|k| done.with(|d| d.contains(k)));
    let next = move || {
        let key = key.get_untracked();
        if !done.with_untracked(|d| d.contains(&key)) {
            toggle(done, &key);
        }
        go(1);
    };
    let keys = move |event: KeyboardEvent| {
        match event.key().as_str() {
            "PageDown" | "ArrowRight" => next(),
            "PageUp" | "ArrowLeft" => go(-1),
            "Escape" => large.set(false),
            _ => return,
        }
        event.prevent_default();
    };
    let svg = Memo::new(move |_| {
        desk.good.with(|p| p.steps.get(here.get()).map_or_else(String::new, |s| picture(desk, p, s)))
    });
    let text = move || {
        desk.good.with(|p| {
            p.steps.get(here.get()).map(|s| {
                let w = words(desk, p, s);
                view! {
                    <p class="place">{page::step_of(here.get() + 1, count.get(), &w.place)}</p>
                    <h2>{said(w.title)}</h2>
                    {times(s.times)}
                    {w.lines.into_iter().map(|l| view! { <p>{said(l)}</p> }).collect_view()}
                    {w.caution.map(|c| view! { <p class="note caution">{c}</p> })}
                }
            })
        })
    };
    let frame = NodeRef::<Div>::new();
    Effect::new(move |_| {
        if let Some(frame) = frame.get() {
            // Keys work at once, without a first tap.
            let _ = frame.focus();
        }
    });
    view! {
        <div class="glance" tabindex="-1" node_ref=frame on:keydown=keys>
            <div class="words" aria-live="polite">{text}</div>
            <Picture svg=svg />
            <div class="controls">
                <button type="button" on:click=move |_| go(-1) disabled=move || here.get() == 0>{page::BACK}</button>
                <button
                    type="button"
                    aria-pressed=move || if ticked() { "true" } else { "false" }
                    on:click=move |_| toggle(done, &key.get_untracked())
                >
                    <span class="box" aria-hidden="true">{move || if ticked() { "✓" } else { "" }}</span>
                    {page::DONE}
                </button>
                <button type="button" class="main" on:click=move |_| next()>{page::NEXT}</button>
                <button type="button" on:click=move |_| large.set(false)>{page::AS_LIST}</button>
            </div>
            <p class="hint" role="status">{move || match awake.get() {
                Some(true) => page::AWAKE,
                Some(false) => page::MAY_SLEEP,
                None => "",
            }}</p>
        </div>
    }
}
