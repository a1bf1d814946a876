//! The sheets of each card: what to cut from how many, and the cuts in order.

use leptos::prelude::*;

use super::desk::{Desk, desk};
use super::look_bar::LookBar;
use super::notes::Notes;
use super::picture::Picture;
use super::said::said;
use crate::cut::order::order;
use crate::draw::sheet::{Cutting, sheet};
use crate::make::sheets::CardSheets;
use crate::plan::Plan;
use crate::project::finding::Place;
use crate::project::request::Tint;
use crate::say::{cutting, names, page};

/// All sheets.
#[component]
pub fn SheetsView() -> impl IntoView {
    let desk = desk();
    let stopped = Memo::new(move |_| desk.plan.with(|p| p.stopped()));
    let cards = move || desk.good.with(|plan| plan.sheets.iter().map(|s| one_card(desk, plan, s)).collect_view());
    view! {
        <div class="sheets">
            <Show when=move || stopped.get()><p class="note stop" role="status">{page::BEFORE}</p></Show>
            <LookBar />
            <ToBuy />
            {cards}
        </div>
    }
}

/// What to buy for all sets, and how far the drawer goes.
#[component]
fn ToBuy() -> impl IntoView {
    let desk = desk();
    let name = move |card: u16| desk.project.with(|p| names::card(p, card));
    let lines = move || {
        desk.good.with(|plan| {
            let all = plan.sheets.iter();
            all.map(|s| view! { <li>{said(cutting::buy(s, &name(s.job.card), plan.system))}</li> }).collect_view()
        })
    };
    let enough = move || {
        let all = desk.better.enough.get().into_iter();
        all.map(|(card, sets)| view! { <li>{cutting::enough(&name(card), sets)}</li> }).collect_view()
    };
    view! {
        <section class="sheet-of-paper">
            <h2>{page::TO_BUY}</h2>
            <ul class="pieces">{lines}{enough}</ul>
        </section>
    }
}

fn one_card(desk: Desk, plan: &Plan, sheets: &CardSheets) -> impl IntoView + use<> {
    let card = sheets.job.card;
    let (name, tint) =
        desk.project.with(|p| (names::card(p, card), p.card(card).map_or_else(Tint::default, |c| c.tint)));
    let pieces = plan.pieces.iter().filter(|p| p.card == card);
    let pieces = pieces.map(|p| view! { <li>{said(names::piece(plan, p, plan.system))}</li> }).collect_view();
    let letter = |id: u32| names::letter(plan, id);
    let patterns = sheets.layout.patterns.iter().filter_map(|pattern| {
        let bare = sheets.sheet(pattern.sheet)?;
        let cuts = order(pattern, bare);
        let c = Cutting { sheet: bare, pattern, cuts: &cuts, tint, system: plan.system, letter: &letter };
        let drawing = Signal::stored(Some(sheet(&c)));
        let lines = cutting::lines(&cuts, plan.system, &letter)
            .into_iter()
            .map(|l| view! { <li>{said(l)}</li> })
            .collect_view();
        Some(view! {
            <article class="pattern">
                <h3>{cutting::copies(pattern.copies)}</h3>
                <p>{said(cutting::gives(pattern, bare, &letter))}</p>
                <Picture drawing=drawing />
                <details open>
                    <summary>{page::CUTS}</summary>
                    <ul class="cuts">{lines}</ul>
                </details>
                {cutting::keep(pattern, bare, plan.system).map(|k| view! { <p>{said(k)}</p> })}
            </article>
        })
    });
    let patterns = patterns.collect_view();
    view! {
        <section class="sheet-of-paper">
            <h2>{name}</h2>
            <p class="lead">{said(cutting::need(sheets, plan.system))}</p>
            <Notes findings=desk.findings(Place::Card(card), Some("sheet-width")) />
            <details>
                <summary>{page::PIECES}</summary>
                <ul class="pieces">{pieces}</ul>
            </details>
            <div class="patterns">{patterns}</div>
        </section>
    }
}
