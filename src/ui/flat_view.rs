//! Flat and folded: all parts at one scale, the finished set, and the part that was touched.

use leptos::prelude::*;

use super::desk::desk;
use super::picture::Picture;
use super::stage::Stage;
use crate::draw::drawing::Touch;
use crate::draw::folded::set;
use crate::draw::overview::overview;
use crate::draw::solid::View;
use crate::draw::svg::paint;
use crate::project::request::Tint;
use crate::say::page;

/// How far a drawing of the set is turned at most, in degrees each way.
const TURN: f64 = 80.0;

/// Everything that is drawn of the set.
#[component]
pub fn FlatView() -> impl IntoView {
    let desk = desk();
    let all = Memo::new(move |_| {
        desk.good.with(|plan| {
            desk.project.with(|p| paint(&overview(plan, &|c| p.card(c).map_or_else(Tint::default, |c| c.tint))))
        })
    });
    let touched = move |touch: Touch| {
        if let Some(place) = desk.good.with_untracked(|p| p.parts().nth(touch.part).map(|p| p.place)) {
            desk.place.set(place);
        }
    };
    let (out, turn) = (RwSignal::new(60.0_f64), RwSignal::new(View::default().turn));
    let finished = Memo::new(move |_| {
        let view = View { turn: turn.get(), ..View::default() };
        desk.good.with(|plan| {
            desk.project.with(|p| {
                let tint = |c| p.card(c).map_or_else(Tint::default, |c| c.tint);
                paint(&set(&plan.boxes, plan.holder.as_ref(), &tint, out.get() / 100.0, view))
            })
        })
    });
    view! {
        <div class="bench wide">
            <div class="request">
                <section class="sheet-of-paper">
                    <h2>{page::ALL_PARTS}</h2>
                    <Picture svg=all touched=touched />
                    <p class="hint">{page::TOUCH_PART}</p>
                </section>
                <section class="sheet-of-paper finished">
                    <h2>{page::FINISHED_SET}</h2>
                    <Picture svg=finished />
                    {slider("set-lift", page::LIFT, 0.0, 100.0, out)}
                    {slider("set-turn", page::TURN, -TURN, TURN, turn)}
                </section>
            </div>
            <Stage />
        </div>
    }
}

/// A slider with its label.
pub fn slider(id: &'static str, label: &'static str, least: f64, most: f64, value: RwSignal<f64>) -> impl IntoView {
    let slide = move |event| {
        if let Ok(at) = event_target_value(&event).parse::<f64>() {
            value.set(at.clamp(least, most));
        }
    };
    view! {
        <div class="fold">
            <label for=id>{label}</label>
            <input id=id type="range" min=least as i64 max=most as i64 step="1" prop:value=move || (value.get() as i64).to_string() on:input=slide />
        </div>
    }
}
