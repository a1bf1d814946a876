//! The score-and-cut recipe; on request in both systems, in two columns.

use leptos::prelude::*;

use super::desk::{Desk, desk};
use super::late::after_the_drawing;
use super::said::said;
use super::shared::Shared;
use crate::measure::system::System;
use crate::plan::{Plan, plan};
use crate::project::finding::Place;
use crate::say::page;
use crate::say::phrase::Phrase;
use crate::say::recipe::recipe;
use crate::web::here;

/// The recipe of the box or holder at `place`.
#[component]
pub fn RecipeText(
    /// Which one.
    #[prop(into)]
    place: Signal<Place>,
) -> impl IntoView {
    let desk = desk();
    let both = RwSignal::new(false);
    let shown = desk.shown(place);
    let now = Memo::new(move |_| (shown.get(), place.get()));
    let late = after_the_drawing(now.into());
    let mine = Memo::new(move |_| late.with(|(p, at)| words(p, *at, desk)));
    // Planned only while it is looked at.
    let other = Memo::new(move |_| both.get().then(|| desk.project.with(|p| Shared::new(plan(p, p.system.other())))));
    let system = desk.system();
    let column = move |system: System, lines: Vec<PartLines>| {
        let name = match system {
            System::Inch => page::INCHES,
            System::Metric => page::spelt(page::MILLIMETRES, desk.spelling.get()),
        };
        view! {
            <section class="column">
                <h4>{page::RECIPE_IN}{name}</h4>
                {list(lines)}
            </section>
        }
    };
    view! {
        <details class="recipe" open=here::is_wide()>
            <summary>{page::RECIPE}</summary>
            <Show when=move || both.get() fallback=move || list(mine.get())>
                <p class="hint">{page::BOTH_HINT}</p>
                <div class="columns">
                    {move || column(system.get(), mine.get())}
                    {move || other.get().map(|o| column(o.system, words(&o, place.get(), desk)))}
                </div>
            </Show>
            <label class="tick">
                <input type="checkbox" prop:checked=both on:change=move |_| both.update(|b| *b = !*b) />
                <span>{page::BOTH_RECIPES}</span>
            </label>
        </details>
    }
}

fn words(plan: &Plan, place: Place, desk: Desk) -> Vec<PartLines> {
    let Some(part) = plan.part(place) else {
        return Vec::new();
    };
    let parts = part.assembly.iter().flat_map(|a| &a.parts);
    let several = part.recipes.len() > 1;
    let each = parts.zip(&part.recipes).map(|(p, r)| {
        let lines = recipe(&p.net, r, plan.system, desk.spelling.get());
        (several.then_some(p.name), lines)
    });
    each.collect()
}

/// What is said of one part, under its name where there are several.
type PartLines = (Option<&'static str>, Vec<Phrase>);

fn list(parts: Vec<PartLines>) -> impl IntoView {
    let each = parts.into_iter().map(|(name, lines)| {
        view! {
            {name.map(|n| view! { <h4 class="part-name">{n}</h4> })}
            {sentences(lines)}
        }
    });
    each.collect_view()
}

/// Sentences; those that begin with a dash belong to the one before.
fn sentences(lines: Vec<Phrase>) -> impl IntoView {
    let each = lines.into_iter().map(|line| {
        let under = line.to_string().starts_with('—');
        view! { <li class=if under { "under" } else { "" }>{said(line)}</li> }
    });
    view! { <ol class="sentences">{each.collect_view()}</ol> }
}
