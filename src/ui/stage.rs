//! The stage: the box or holder at hand, drawn flat, and folded by one control.

use leptos::prelude::*;

use super::alerts::Alerts;
use super::desk::{Desk, desk};
use super::flat_view::slider;
use super::fold_control::FoldControl;
use super::legend::Legend;
use super::panel_list::PanelList;
use super::picture::Picture;
use super::recipe::RecipeText;
use super::said::said;
use crate::draw::drawing::{Drawing, Touch};
use crate::draw::flat::{Look, flat};
use crate::draw::folded::{Dress, folded};
use crate::draw::solid::View;
use crate::draw::svg::paint;
use crate::net::flat::PanelId;
use crate::plan::Plan;
use crate::project::finding::Place;
use crate::project::request::{Project, Tint};
use crate::say::{names, page};

/// The drawing of what is at hand, with its recipe.
#[component]
pub fn Stage() -> impl IntoView {
    let desk = desk();
    // Where a card or the board is edited, the box looked at last stays.
    let place = Memo::new(move |last: Option<&Place>| match desk.place.get() {
        at @ (Place::Box(_) | Place::Holder) => at,
        _ => last.copied().unwrap_or_else(|| {
            desk.project.with_untracked(|p| p.boxes.first().map_or(Place::Holder, |b| Place::Box(b.id)))
        }),
    });
    let fresh = Memo::new(move |_| desk.shapes.with(|p| drawn(p, place.get())));
    let old = Memo::new(move |_| !fresh.get() && desk.good.with(|p| drawn(p, place.get())));
    let shown = desk.shown(place.into());
    let title = Memo::new(move |_| desk.project.with(|p| names::place(p, place.get())));
    let progress = RwSignal::new(0.0_f64);
    let turn = RwSignal::new(View::default().turn);
    let chosen = RwSignal::new(None::<PanelId>);
    let piece = RwSignal::new(0_usize);
    Effect::new(move |_| {
        place.track();
        piece.set(0);
    });
    Effect::new(move |_| {
        place.track();
        piece.track();
        progress.set(0.0);
        chosen.set(None);
    });
    // An edit may leave fewer parts than were looked at.
    let names = Memo::new(move |_| shown.with(|p| part_names(p, place.get())));
    let part = Memo::new(move |_| piece.get().min(names.with(Vec::len).saturating_sub(1)));
    let svg = Memo::new(move |_| {
        let (at, by) = (place.get(), progress.get());
        let view = View { turn: turn.get(), ..View::default() };
        shown.with(|plan| {
            desk.project.with(|project| {
                draw(plan, project, (at, part.get()), by, chosen.get(), view).as_ref().map(paint).unwrap_or_default()
            })
        })
    });
    let moves = Memo::new(move |_| {
        shown.with(|p| {
            let parts = p.part(place.get()).and_then(|p| p.assembly.as_ref()).map(|a| &a.parts);
            parts.and_then(|p| p.get(part.get())).map_or(0, |p| p.moves.len())
        })
    });
    let touched = move |touch: Touch| {
        let panel = PanelId(touch.panel);
        chosen.update(|c| *c = (*c != Some(panel)).then_some(panel));
    };
    let panel = move || chosen.get().and_then(|id| panel_words(desk, (place.get(), part.get()), id));
    view! {
        <div class="right">
        <section class="stage" aria-label=title>
            <h2>{title}</h2>
            <Alerts />
            <Show when=move || old.get()><p class="note stop" role="status">{page::BEFORE}</p></Show>
            <Show
                when=move || !svg.with(String::is_empty)
                fallback=|| view! { <p class="empty">{page::NOTHING_YET}</p> }
            >
                <Show when=move || { names.with(Vec::len) > 1 }>
                    <div class="either" role="group" aria-label=page::PARTS>
                        {move || part_buttons(&names.get(), part, piece)}
                    </div>
                </Show>
                <Picture svg=svg touched=touched />
                <p class="spoken" role="status">
                    {move || panel().unwrap_or_else(|| view! { <span>{page::TOUCH}</span> }.into_any())}
                </p>
                <FoldControl progress=progress moves=moves />
                <Show when=move || { progress.get() > 0.0 }>{slider("stage-turn", page::TURN, -180.0, 180.0, turn)}</Show>
            </Show>
        </section>
        <section class="reading" aria-label=page::RECIPE>
            <RecipeText place=place />
            <PanelList place=place part=part chosen=chosen />
            <Legend />
        </section>
        </div>
    }
}

fn drawn(plan: &Plan, place: Place) -> bool {
    plan.part(place).is_some_and(|p| p.assembly.is_some())
}

/// The names of the parts of a box or holder, in the order in which they are made.
fn part_names(plan: &Plan, place: Place) -> Vec<&'static str> {
    let parts = plan.part(place).and_then(|p| p.assembly.as_ref()).map(|a| &a.parts);
    parts.map_or_else(Vec::new, |parts| parts.iter().map(|p| p.name).collect())
}

fn part_buttons(names: &[&'static str], part: Memo<usize>, piece: RwSignal<usize>) -> impl IntoView + use<> {
    let each = names.iter().enumerate().map(|(i, &name)| {
        view! {
            <button
                type="button"
                aria-pressed=move || if part.get() == i { "true" } else { "false" }
                on:click=move |_| piece.set(i)
            >
                {name}
            </button>
        }
    });
    each.collect_view()
}

fn draw(
    plan: &Plan,
    project: &Project,
    (place, index): (Place, usize),
    progress: f64,
    chosen: Option<PanelId>,
    view: View,
) -> Option<Drawing> {
    let part = plan.part(place)?;
    let tint = |card: Option<u16>| card.and_then(|c| project.card(c)).map_or_else(Tint::default, |c| c.tint);
    let (card, mats) = (tint(Some(part.card)), tint(part.mat_card));
    if progress > 0.0 {
        folded(part, index, progress, &Dress { card, mats, chosen: chosen.into_iter().collect() }, view)
    } else {
        flat(part, index, Look { card, mats, chosen, system: plan.system })
    }
}

fn panel_words(desk: Desk, (place, part): (Place, usize), panel: PanelId) -> Option<AnyView> {
    desk.shapes.with(|plan| {
        let words = names::panel_list(plan.part(place)?, part, plan.system);
        Some(said(words.get(panel.0)?.clone()).into_any())
    })
}
