//! What stops the set or needs care somewhere else than where the maker is, with the way there.

use leptos::prelude::*;

use super::desk::desk;
use super::part_fields::id;
use super::said::said;
use crate::project::finding::{Finding, Weight};
use crate::say::finding::{finding, weight};
use crate::say::{names, page};
use crate::web::here;

/// So many are shown at once; the rest is counted.
const SHOWN: usize = 2;

/// Stops and cautions of other places.
#[component]
pub fn Alerts() -> impl IntoView {
    let desk = desk();
    let elsewhere = Memo::new(move |_| {
        let here = desk.place.get();
        desk.plan.with(|p| {
            let grave = p.findings.iter().filter(|f| f.weight != Weight::Note);
            grave.filter(|f| f.place != here).cloned().collect::<Vec<_>>()
        })
    });
    let one = move |f: Finding| {
        let place = f.place;
        let name = desk.project.with(|p| names::place(p, place));
        let class = if f.weight == Weight::Stop { "note stop" } else { "note caution" };
        let go = move |_| {
            desk.place.set(place);
            here::reveal(id(place, "head"));
        };
        view! {
            <li class=class>
                <p><strong>{weight(f.weight)}": "</strong>{name}". "{said(finding(&f, desk.system().get()))}</p>
                <button type="button" on:click=go>{page::GO_THERE}</button>
            </li>
        }
    };
    let more = move || elsewhere.with(Vec::len).saturating_sub(SHOWN);
    view! {
        <div role="status">
            <ul class="alerts">{move || elsewhere.get().into_iter().take(SHOWN).map(one).collect_view()}</ul>
            <Show when=move || { more() > 0 }><p class="hint">{move || page::and_more(more())}</p></Show>
        </div>
    }
}
