//! The steps as a list, or one at a time in big type.

use std::collections::BTreeSet;

use leptos::prelude::*;

use super::desk::{Desk, desk};
use super::glance::Glance;
use super::picture::Picture;
use super::said::said;
use crate::draw::step::step as draw;
use crate::draw::svg::paint;
use crate::make::step::Step;
use crate::plan::Plan;
use crate::project::request::Tint;
use crate::say::page;
use crate::say::step::{Said, step as say};

/// Which steps are done, by their keys.
pub type Ticks = RwSignal<BTreeSet<String>>;

/// The making, step by step.
#[component]
pub fn StepsView() -> impl IntoView {
    let desk = desk();
    let done: Ticks = desk.ticks;
    let large = desk.large;
    on_cleanup(move || large.set(false));
    let stopped = Memo::new(move |_| desk.plan.with(|p| p.stopped()));
    let count = Memo::new(move |_| {
        desk.good.with(|p| (p.steps.iter().filter(|s| done.with(|d| d.contains(&s.key))).count(), p.steps.len()))
    });
    view! {
        <Show when=move || !large.get() fallback=move || view! { <Glance done=done large=large /> }>
            <div class="steps">
                <Show when=move || stopped.get()><p class="note stop" role="status">{page::BEFORE}</p></Show>
                <p class="actions">
                    <button type="button" class="main" on:click=move |_| large.set(true)>{page::ONE_AT_A_TIME}</button>
                    <button
                        type="button"
                        disabled=move || count.get().0 == 0
                        on:click=move |_| done.update(BTreeSet::clear)
                    >{page::START_AGAIN}</button>
                    <span role="status">{move || { let (n, all) = count.get(); page::done_of(n, all) }}</span>
                </p>
                {move || { let plan = desk.good.get(); list(desk, &plan, done) }}
            </div>
        </Show>
    }
}

fn list(desk: Desk, plan: &Plan, done: Ticks) -> impl IntoView + use<> {
    let mut last = None;
    let rows = plan.steps.iter().enumerate().map(|(i, step)| {
        let words = words(desk, plan, step);
        let head = (last != Some(step.place)).then(|| view! { <h2>{words.place.clone()}</h2> });
        last = Some(step.place);
        let svg = Signal::stored(picture(desk, plan, step));
        let key = StoredValue::new(step.key.clone());
        let ticked = move || key.with_value(|k| done.with(|d| d.contains(k)));
        let lines = words.lines.into_iter().map(|l| view! { <p>{said(l)}</p> }).collect_view();
        view! {
            {head}
            <article class="step sheet-of-paper" class:done=ticked>
                <div class="words">
                    <h3><span class="number">{i + 1}</span><span>{said(words.title)}</span></h3>
                    {times(step.times)}
                    {lines}
                    {words.caution.map(|c| view! { <p class="note caution">{c}</p> })}
                    <label class="tick">
                        <input type="checkbox" prop:checked=ticked on:change=move |_| key.with_value(|k| toggle(done, k)) />
                        <span>{page::DONE}</span>
                    </label>
                </div>
                <Picture svg=svg />
            </article>
        }
    });
    rows.collect_view()
}

/// The words of a step.
pub fn words(desk: Desk, plan: &Plan, step: &Step) -> Said {
    desk.project.with(|p| say(step, plan, p, desk.spelling.get()))
}

/// The drawing of a step.
pub fn picture(desk: Desk, plan: &Plan, step: &Step) -> String {
    let drawing = desk.project.with(|p| draw(step, plan, &|card| p.card(card).map_or_else(Tint::default, |c| c.tint)));
    drawing.as_ref().map(paint).unwrap_or_default()
}

/// How often, where it is more than once.
pub fn times(times: u64) -> Option<impl IntoView + use<>> {
    (times > 1).then(|| view! { <p class="times">{page::times(times)}</p> })
}

/// Ticks a step, or takes its tick off.
pub fn toggle(done: Ticks, key: &str) {
    done.update(|d| {
        if !d.remove(key) {
            d.insert(key.to_owned());
        }
    });
}
