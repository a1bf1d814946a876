//! The sheets of each card: what to cut from how many, and the cuts in order.

use leptos::prelude::*;

use super::desk::{Desk, desk};
use super::notes::Notes;
use super::picture::Picture;
use super::said::said;
use crate::cut::order::order;
use crate::draw::sheet::{Cutting, sheet};
use crate::draw::svg::paint;
use crate::make::pieces::Piece;
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
            {cards}
        </div>
    }
}

fn one_card(desk: Desk, plan: &Plan, sheets: &CardSheets) -> impl IntoView + use<> {
    let card = sheets.job.card;
    let (name, tint) =
        desk.project.with(|p| (names::card(p, card), p.card(card).map_or_else(Tint::default, |c| c.tint)));
    let pieces = plan.pieces.iter().filter(|p| p.card == card);
    let pieces = pieces.map(|p| view! { <li>{said(names::piece(plan, p, plan.system))}</li> }).collect_view();
    let letter = |id: u32| plan.pieces.iter().find(|p| p.id == id).map_or(String::new(), Piece::letter);
    let patterns = sheets.layout.patterns.iter().filter_map(|pattern| {
        let bare = sheets.sheet(pattern.sheet)?;
        let cuts = order(pattern, bare);
        let c = Cutting { sheet: bare, pattern, cuts: &cuts, tint, system: plan.system, letter: &letter };
        let svg = Signal::stored(paint(&sheet(&c)));
        let lines =
            cuts.iter().map(|c| view! { <li>{said(cutting::cut(c, plan.system, &letter))}</li> }).collect_view();
        Some(view! {
            <article class="pattern">
                <h3>{cutting::copies(pattern.copies)}</h3>
                <Picture svg=svg />
                <details open>
                    <summary>{page::CUTS}</summary>
                    <ol class="cuts">{lines}</ol>
                </details>
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
